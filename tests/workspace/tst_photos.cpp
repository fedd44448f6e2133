// Photographs beside the yard: only pictures come in, whole and under a name from their content;
// what is missing or changed is noticed.
#include "models/workspace/photos.h"
#include "tests/support/registry.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QThread>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::workspace;

namespace {

// Two by two pixels, written with Python's zlib.
QByteArray smallPng()
{
    return QByteArray::fromBase64(
        "iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAFUlEQVR42mM4EaChEXCCIeCEBhAAACGmBDkAQYkW"
        "AAAAAElFTkSuQmCC");
}
// Of these bytes, by sha256sum of GNU coreutils.
const QString kSmallSum =
    QStringLiteral("e497cfe1d9b624fb1f808af8d472a32c08e9be69201166d5b4d39bf1ddf6a5be");

struct Folders {
    QTemporaryDir scratch;
    QString photos = scratch.filePath(QStringLiteral("Our yard photos"));

    QString write(const QString &name, const QByteArray &bytes)
    {
        const QString path = scratch.filePath(name);
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size())
            qFatal("cannot write %s", qPrintable(path));
        return path;
    }
    [[nodiscard]] QStringList kept() const
    {
        return QDir(photos).entryList(QDir::Files | QDir::Hidden);
    }
};

Photo recordOf(const KeptPhoto &kept)
{
    Photo photo;
    photo.file = kept.file;
    photo.sha256 = kept.sha256;
    photo.bytes = kept.bytes;
    return photo;
}

} // namespace

class TstPhotos : public QObject
{
    Q_OBJECT

private slots:
    void theFolderStandsBesideTheYard()
    {
        QCOMPARE(photoFolderOf(QStringLiteral("/yards/Our yard.rickyard")),
                 QStringLiteral("/yards/Our yard photos"));
    }

    void aPictureIsCopiedUnderItsSum()
    {
        Folders f;
        const QString source = f.write(QStringLiteral("door.PNG"), smallPng());
        const auto kept = keepPhoto(source, f.photos);
        QVERIFY2(kept, qPrintable(kept.message()));
        QCOMPARE(kept->sha256, kSmallSum);
        QCOMPARE(kept->file, QString(kSmallSum + QStringLiteral(".png")));
        QCOMPARE(kept->bytes, 78);
        QCOMPARE(kept->size, QSize(2, 2));
        QFile copy(QDir(f.photos).filePath(kept->file));
        QVERIFY(copy.open(QIODevice::ReadOnly));
        QCOMPARE(copy.readAll(), smallPng());
        QCOMPARE(f.kept().size(), 1); // no part is left behind
        // The same again is the same file.
        QVERIFY(keepPhoto(source, f.photos));
        QCOMPARE(f.kept().size(), 1);
        // The name says nothing about what a file holds.
        const QString misnamed = f.write(QStringLiteral("door.jpg"), smallPng());
        QCOMPARE(keepPhoto(misnamed, f.photos)->file, kept->file);
    }

    void nothingIsEverOverwritten()
    {
        Folders f;
        const QString source = f.write(QStringLiteral("door.png"), smallPng());
        QVERIFY(QDir().mkpath(f.photos));
        const QString taken = QDir(f.photos).filePath(QString(kSmallSum + QStringLiteral(".png")));
        QFile other(taken);
        QVERIFY(other.open(QIODevice::WriteOnly));
        other.write("somebody else's");
        other.close();
        const auto kept = keepPhoto(source, f.photos);
        QVERIFY(!kept);
        QVERIFY(kept.message().contains(QStringLiteral("holds something else")));
        QVERIFY(other.open(QIODevice::ReadOnly));
        QCOMPARE(other.readAll(), QByteArray("somebody else's"));
    }

    void whatIsNoPictureIsRefusedInWords_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("says");
        QTest::newRow("text") << QByteArray("not a picture at all")
                              << QStringLiteral("is not a picture");
        QTest::newRow("empty") << QByteArray() << QStringLiteral("is empty");
        QTest::newRow("drawing that may name files")
            << QByteArray("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>")
            << QStringLiteral("is not a picture");
        QTest::newRow("head of a picture") << smallPng().left(40) << QStringLiteral("damaged");
        QByteArray broken = smallPng();
        broken[45] = static_cast<char>(broken.at(45) ^ 0x5a);
        QTest::newRow("bits turned") << broken << QStringLiteral("damaged");
        QTest::newRow("program") << QByteArray("\x7f"
                                               "ELF\2\1\1\0\0\0\0\0\0\0\0\0",
                                               16)
                                 << QStringLiteral("is not a picture");
    }
    void whatIsNoPictureIsRefusedInWords()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, says);
        Folders f;
        const auto kept = keepPhoto(f.write(QStringLiteral("it.jpg"), bytes), f.photos);
        QVERIFY(!kept);
        QVERIFY2(kept.message().contains(says), qPrintable(kept.message()));
        QVERIFY(kept.message().contains(QStringLiteral("it.jpg")));
        QVERIFY(!QFileInfo::exists(f.photos));
    }

    void missingFoldersAndWhatCannotBeRead()
    {
        Folders f;
        const auto missing = keepPhoto(f.scratch.filePath(QStringLiteral("gone.jpg")), f.photos);
        QVERIFY(missing.message().contains(QStringLiteral("There is no file")));
        QVERIFY(!keepPhoto(f.scratch.path(), f.photos)); // a folder
        const QString source = f.write(QStringLiteral("door.png"), smallPng());
        if (QFile::setPermissions(source, {}) && !QFile(source).open(QIODevice::ReadOnly)) {
            const auto locked = keepPhoto(source, f.photos);
            QVERIFY(locked.message().contains(QStringLiteral("cannot be read")));
        }
        QFile::setPermissions(source, QFile::ReadOwner | QFile::WriteOwner);
        // A file stands where the folder should be.
        f.write(QStringLiteral("Our yard photos"), "in the way");
        const auto nowhere = keepPhoto(source, f.photos);
        QVERIFY2(nowhere.message().contains(QStringLiteral("cannot be made")),
                 qPrintable(nowhere.message()));
    }

    void whatIsHugeIsRefused()
    {
        Folders f;
        // 25 MB and a byte; the file has holes, so this costs nothing.
        const QString large = f.write(QStringLiteral("large.png"), smallPng());
        QVERIFY(QFile::resize(large, kMostPhotoBytes + 1));
        const auto heavy = keepPhoto(large, f.photos);
        QVERIFY2(heavy.message().contains(QStringLiteral("larger than 25 MB")),
                 qPrintable(heavy.message()));
        QVERIFY(QFile::resize(large, kMostPhotoBytes)); // the limit itself is no refusal
        const auto atLimit = keepPhoto(large, f.photos);
        QVERIFY2(atLimit, qPrintable(atLimit.message()));
        // One line of pixels over 100 megapixels, a few kilobytes on disk.
        QImage wide(10000, 10001, QImage::Format_Mono);
        wide.fill(0);
        const QString vast = f.scratch.filePath(QStringLiteral("vast.png"));
        QVERIFY(wide.save(vast));
        QVERIFY(QFileInfo(vast).size() < 1'000'000);
        const auto bomb = keepPhoto(vast, f.photos);
        QVERIFY2(bomb.message().contains(QStringLiteral("more than 100 megapixels")),
                 qPrintable(bomb.message()));
        QCOMPARE(f.kept().size(), 1);
    }

    void missingAndChangedFilesAreNoticed()
    {
        Folders f;
        QImage picture(1200, 600, QImage::Format_RGB32);
        picture.fill(Qt::darkGreen);
        const QString source = f.scratch.filePath(QStringLiteral("pit.jpg"));
        QVERIFY(picture.save(source));
        const Photo record = recordOf(keepPhoto(source, f.photos).value());
        const PhotoLook there = lookAtPhoto(f.photos, record, 200);
        QCOMPARE(there.state, PhotoState::Present);
        QCOMPARE(there.picture.size(), QSize(200, 100));
        const QString path = photoPath(f.photos, record);
        QFile file(path);
        QVERIFY(file.open(QIODevice::Append));
        file.write("x");
        file.close();
        QCOMPARE(lookAtPhoto(f.photos, record, 200).state, PhotoState::Changed);
        QVERIFY(lookAtPhoto(f.photos, record, 200).picture.isNull());
        QVERIFY(QFile::remove(path));
        QCOMPARE(lookAtPhoto(f.photos, record, 200).state, PhotoState::Missing);
    }

    void aRecordCannotNameAnotherFolder_data()
    {
        QTest::addColumn<QString>("name");
        QTest::newRow("up") << QStringLiteral("../secret.png");
        QTest::newRow("absolute") << QStringLiteral("/etc/hostname");
        QTest::newRow("backslash") << QStringLiteral("..\\secret.png");
        QTest::newRow("hidden") << QStringLiteral(".secret.png");
        QTest::newRow("none") << QString();
    }
    void aRecordCannotNameAnotherFolder()
    {
        QFETCH(QString, name);
        Folders f;
        f.write(QStringLiteral("secret.png"), smallPng());
        Photo photo;
        photo.file = name;
        photo.sha256 = kSmallSum;
        QVERIFY(photoPath(f.photos, photo).isEmpty());
        QCOMPARE(lookAtPhoto(f.photos, photo, 64).state, PhotoState::Missing);
    }

    void itIsDoneOnAThread()
    {
        Folders f;
        const QString source = f.write(QStringLiteral("door.png"), smallPng());
        QObject owner;
        bool finished = false;
        QThread *where = nullptr;
        keepPhotoInBackground(&owner, source, f.photos, [&](const Outcome<KeptPhoto> &kept) {
            finished = kept.ok();
            where = QThread::currentThread();
        });
        QVERIFY(!finished); // it comes back by the event loop
        QTRY_VERIFY(finished);
        QCOMPARE(where, owner.thread());
        // An owner that is gone is not called.
        bool called = false;
        {
            QObject gone;
            keepPhotoInBackground(&gone, source, f.photos,
                                  [&](const Outcome<KeptPhoto> &) { called = true; });
        }
        QTest::qWait(50);
        QVERIFY(!called);
    }
};

RICKYARD_TEST(TstPhotos)
#include "tst_photos.moc"
