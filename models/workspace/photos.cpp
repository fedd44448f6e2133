#include "models/workspace/photos.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QFutureWatcher>
#include <QImageReader>
#include <QMap>
#include <QTemporaryFile>
#include <QtConcurrent/QtConcurrentRun>

namespace rickyard::workspace {

using domain::Outcome;

namespace {

// What is decoded for the check: a picture that shows this can be shown.
constexpr int kCheckSide = 512;
// Decoding 100 megapixels of four bytes, with some room; the toolkit's own limit is lower.
constexpr int kMostMegabytes = 420;

QString tr(const char *text)
{
    return QCoreApplication::translate("Photos", text);
}

// Only formats of pixels: a drawing may name other files.
const QMap<QByteArray, QString> &formats()
{
    static const QMap<QByteArray, QString> known{
        {"jpeg", QStringLiteral("jpg")}, {"jpg", QStringLiteral("jpg")},
        {"png", QStringLiteral("png")},  {"webp", QStringLiteral("webp")},
        {"tiff", QStringLiteral("tif")}, {"tif", QStringLiteral("tif")},
        {"gif", QStringLiteral("gif")},  {"bmp", QStringLiteral("bmp")}};
    return known;
}

Outcome<QByteArray> contentOf(const QString &path)
{
    const QString name = QFileInfo(path).fileName();
    if (!QFileInfo(path).isFile())
        return Outcome<QByteArray>::failed(tr("There is no file “%1”.").arg(name));
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return Outcome<QByteArray>::failed(
            tr("“%1” cannot be read: %2").arg(name, file.errorString()));
    // One byte more than is allowed tells; the size of a file is only a claim.
    QByteArray bytes = file.read(kMostPhotoBytes + 1);
    if (file.error() != QFileDevice::NoError)
        return Outcome<QByteArray>::failed(
            tr("“%1” cannot be read: %2").arg(name, file.errorString()));
    if (bytes.size() > kMostPhotoBytes)
        return Outcome<QByteArray>::failed(
            tr("“%1” is larger than 25 MB. Attach a smaller picture of it.").arg(name));
    if (bytes.isEmpty())
        return Outcome<QByteArray>::failed(tr("“%1” is empty.").arg(name));
    return bytes;
}

struct Decoded {
    QByteArray format;
    QSize size;
    QImage picture;
};

Outcome<Decoded> decode(QByteArray bytes, const QString &name, int side)
{
    static const bool limited = [] {
        QImageReader::setAllocationLimit(kMostMegabytes);
        return true;
    }();
    Q_UNUSED(limited);
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setDecideFormatFromContent(true);
    reader.setAutoTransform(true);
    Decoded found;
    found.format = reader.format().toLower();
    if (!formats().contains(found.format))
        return Outcome<Decoded>::failed(
            tr("“%1” is not a picture that can be shown: JPEG, PNG, WebP, TIFF, GIF and BMP can.")
                .arg(name));
    found.size = reader.size();
    const qint64 pixels = qint64{found.size.width()} * found.size.height();
    if (pixels > kMostPhotoPixels)
        return Outcome<Decoded>::failed(
            tr("“%1” has more than 100 megapixels. Attach a smaller picture of it.").arg(name));
    if (found.size.isValid() && std::max(found.size.width(), found.size.height()) > side)
        reader.setScaledSize(
            found.size.scaled(side, side, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    found.picture = reader.read();
    if (found.picture.isNull())
        return Outcome<Decoded>::failed(
            tr("“%1” is damaged or no picture: it cannot be shown.").arg(name));
    if (!found.size.isValid())
        found.size = found.picture.size();
    return found;
}

QString digestOf(const QByteArray &bytes)
{
    return QString::fromLatin1(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
}

Outcome<domain::Done> store(const QByteArray &bytes, const QString &digest, const QString &path)
{
    const auto failed = [](const QString &why) {
        return Outcome<domain::Done>::failed(
            tr("The picture cannot be copied beside the yard: %1").arg(why));
    };
    if (QFileInfo::exists(path)) {
        QFile there(path);
        if (there.open(QIODevice::ReadOnly) && digestOf(there.read(kMostPhotoBytes + 1)) == digest)
            return domain::Done{};
        return failed(tr("a file of its name holds something else: %1").arg(path));
    }
    if (!QDir().mkpath(QFileInfo(path).absolutePath()))
        return failed(tr("the folder %1 cannot be made").arg(QFileInfo(path).absolutePath()));
    // Under another name until it is whole; a rename never takes the place of a file.
    QTemporaryFile part(QString(path + QStringLiteral(".XXXXXX.part")));
    if (!part.open())
        return failed(part.errorString());
    if (part.write(bytes) != bytes.size() || !part.flush())
        return failed(part.errorString());
    part.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ReadGroup |
                        QFileDevice::ReadOther);
    part.close();
    if (!part.rename(path))
        return failed(part.errorString());
    part.setAutoRemove(false);
    return domain::Done{};
}

template <class T>
void inBackground(QObject *owner, const std::function<T()> &work,
                  const std::function<void(T)> &finished)
{
    auto *watcher = new QFutureWatcher<T>(owner);
    QObject::connect(watcher, &QFutureWatcherBase::finished, owner, [watcher, finished] {
        watcher->deleteLater();
        finished(watcher->result());
    });
    watcher->setFuture(QtConcurrent::run(work));
}

} // namespace

QString photoFolderOf(const QString &yardPath)
{
    const QFileInfo info(yardPath);
    return info.absoluteDir().filePath(
        QString(info.completeBaseName() + QStringLiteral(" photos")));
}

QString photoPath(const QString &folder, const domain::Photo &photo)
{
    // A record may come from a file that somebody else wrote.
    if (photo.file.isEmpty() || photo.file.startsWith(QLatin1Char('.')) ||
        photo.file.contains(QLatin1Char('/')) || photo.file.contains(QLatin1Char('\\')))
        return {};
    return QDir(folder).filePath(photo.file);
}

Outcome<KeptPhoto> keepPhoto(const QString &source, const QString &folder)
{
    const auto bytes = contentOf(source);
    if (!bytes)
        return Outcome<KeptPhoto>(bytes.problems());
    const auto decoded = decode(bytes.value(), QFileInfo(source).fileName(), kCheckSide);
    if (!decoded)
        return Outcome<KeptPhoto>(decoded.problems());
    KeptPhoto kept;
    kept.sha256 = digestOf(bytes.value());
    kept.bytes = static_cast<int>(bytes.value().size());
    kept.size = decoded->size;
    kept.file = QString(kept.sha256 + QLatin1Char('.') + formats().value(decoded->format));
    const auto stored = store(bytes.value(), kept.sha256, QDir(folder).filePath(kept.file));
    if (!stored)
        return Outcome<KeptPhoto>(stored.problems());
    return kept;
}

PhotoLook lookAtPhoto(const QString &folder, const domain::Photo &photo, int side)
{
    PhotoLook look;
    const QString path = photoPath(folder, photo);
    if (path.isEmpty() || !QFileInfo(path).isFile())
        return look;
    look.state = PhotoState::Changed;
    const auto bytes = contentOf(path);
    if (!bytes || digestOf(bytes.value()) != photo.sha256)
        return look;
    const auto decoded = decode(bytes.value(), photo.file, side);
    if (!decoded)
        return look;
    look.state = PhotoState::Present;
    look.picture = decoded->picture;
    return look;
}

void keepPhotoInBackground(QObject *owner, const QString &source, const QString &folder,
                           const std::function<void(Outcome<KeptPhoto>)> &finished)
{
    inBackground<Outcome<KeptPhoto>>(
        owner, [source, folder] { return keepPhoto(source, folder); }, finished);
}

void lookAtPhotoInBackground(QObject *owner, const QString &folder, const domain::Photo &photo,
                             int side, const std::function<void(PhotoLook)> &finished)
{
    inBackground<PhotoLook>(
        owner, [folder, photo, side] { return lookAtPhoto(folder, photo, side); }, finished);
}

} // namespace rickyard::workspace
