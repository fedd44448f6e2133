// Photographs, kept in a folder beside the yard file. A file is taken in only when it decodes as a
// picture; its name there comes from its content, so that nothing is ever overwritten and a changed
// file is noticed. The record (domain::Photo) is written by commands::addPhoto.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/upkeep.h"

#include <QImage>
#include <QObject>

#include <functional>

namespace rickyard::workspace {

constexpr qint64 kMostPhotoBytes = 25'000'000;
constexpr qint64 kMostPhotoPixels = 100'000'000;

// "/yards/Our yard.rickyard" -> "/yards/Our yard photos".
QString photoFolderOf(const QString &yardPath);
// Path of a photograph; empty when the record's file name is none (it names another folder).
QString photoPath(const QString &folder, const domain::Photo &photo);

struct KeptPhoto {
    QString file;   // name in the folder
    QString sha256; // of the content, in hexadecimal digits
    int bytes = 0;
    QSize size; // pixels, as stored
};
// Checks a picture (JPEG, PNG, WebP, TIFF, GIF or BMP by its content, at most 25 MB and 100
// megapixels) and copies it into the folder, which is made when it is missing. The same picture
// again is no second file. On a refusal nothing was written.
domain::Outcome<KeptPhoto> keepPhoto(const QString &source, const QString &folder);

enum class PhotoState { Present, Missing, Changed };
struct PhotoLook {
    PhotoState state = PhotoState::Missing;
    QImage picture; // turned upright, fitting into a square of the side asked for
};
// Reads a kept photograph again: is it there, is it the one that was kept?
PhotoLook lookAtPhoto(const QString &folder, const domain::Photo &photo, int side);

// The same on a thread. `finished` runs in the owner's thread, and not at all when it is gone.
void keepPhotoInBackground(QObject *owner, const QString &source, const QString &folder,
                           const std::function<void(domain::Outcome<KeptPhoto>)> &finished);
void lookAtPhotoInBackground(QObject *owner, const QString &folder, const domain::Photo &photo,
                             int side, const std::function<void(PhotoLook)> &finished);

} // namespace rickyard::workspace
