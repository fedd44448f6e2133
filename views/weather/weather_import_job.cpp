#include "views/weather/weather_import_job.h"

#include <QFile>
#include <QFileInfo>

namespace rickyard::views {

using exchange::WeatherImport;

namespace {

constexpr qint64 kMostBytes = 512LL << 20U;

// Guesses what the columns of a table are.
void mapColumns(OpenedWeatherFile &file, const QString &yardZone)
{
    file.guess = exchange::guessMapping(file.bytes, yardZone);
    file.preview =
        exchange::preview(file.bytes, file.guess.mapping.separator, file.guess.mapping.headerLine);
    if (file.preview.header.isEmpty() && file.preview.rows.isEmpty())
        file.problem = file.preview.note.isEmpty()
                           ? WeatherImportJob::tr("%1 holds no rows.").arg(file.name)
                           : file.preview.note;
}

OpenedWeatherFile openFile(const QString &path, const QString &yardZone)
{
    OpenedWeatherFile file;
    file.path = path;
    file.name = QFileInfo(path).fileName();
    QFile device(path);
    if (!device.open(QIODevice::ReadOnly)) {
        file.problem = WeatherImportJob::tr("%1 could not be opened: %2.")
                           .arg(file.name, device.errorString());
        return file;
    }
    if (device.size() > kMostBytes) {
        file.problem =
            WeatherImportJob::tr("%1 is larger than 512 MB. Split it by year.").arg(file.name);
        return file;
    }
    file.bytes = device.readAll();
    if (device.error() != QFileDevice::NoError) {
        file.problem =
            WeatherImportJob::tr("%1 could not be read: %2.").arg(file.name, device.errorString());
        return file;
    }
    file.format = exchange::recogniseWeather(file.bytes);
    if (file.format != exchange::WeatherFormat::Mapped)
        return file;
    mapColumns(file, yardZone);
    return file;
}

WeatherChangesToWrite changesOf(const domain::Books &books, const QVector<domain::Weather> &rows)
{
    const exchange::WeatherMerge merge = exchange::mergeWeather(books, rows);
    WeatherChangesToWrite changes;
    changes.fresh = merge.fresh.size();
    changes.updated = merge.updated.size();
    changes.identical = merge.identical;
    changes.rows.reserve(merge.fresh.size() + merge.updated.size());
    for (const domain::Weather &record : merge.fresh)
        changes.rows << domain::toRow(record);
    for (const domain::Weather &record : merge.updated)
        changes.rows << domain::toRow(record);
    return changes;
}

} // namespace

WeatherImportJob::WeatherImportJob(QObject *parent)
    : QObject(parent),
      m_work(this, [this](qint64 done, qint64 total) { Q_EMIT progressed(done, total); })
{
}

void WeatherImportJob::open(const QString &path, const QString &yardZone)
{
    m_work.run<OpenedWeatherFile>(
        [path, yardZone](LatestWork::Watch &) { return openFile(path, yardZone); },
        [this](const OpenedWeatherFile &file) { Q_EMIT opened(file); });
}

void WeatherImportJob::read(const QByteArray &bytes, const exchange::WeatherMapping &mapping,
                            const QString &fileName)
{
    m_work.run<WeatherImport>(
        [bytes, mapping, fileName](LatestWork::Watch &watch) {
            return exchange::readWeather(
                bytes, mapping, fileName,
                [&watch](qint64 done, qint64 total) {
                    watch.done = done;
                    watch.total = total;
                },
                &watch.cancelled);
        },
        [this](const WeatherImport &result) { Q_EMIT wasRead(result); });
}

void WeatherImportJob::readKnown(exchange::WeatherFormat format, const QByteArray &bytes,
                                 const exchange::WeatherReadOptions &options,
                                 const QString &fileName)
{
    m_work.run<WeatherImport>(
        [format, bytes, options, fileName](LatestWork::Watch &watch) {
            return exchange::readWeatherAs(
                format, bytes, options, fileName,
                [&watch](qint64 done, qint64 total) {
                    watch.done = done;
                    watch.total = total;
                },
                &watch.cancelled);
        },
        [this](const WeatherImport &result) { Q_EMIT wasRead(result); });
}

void WeatherImportJob::compare(const domain::Books &books, const QVector<domain::Weather> &rows)
{
    m_work.run<WeatherChangesToWrite>(
        [books, rows](LatestWork::Watch &) { return changesOf(books, rows); },
        [this](const WeatherChangesToWrite &changes) { Q_EMIT compared(changes); });
}

} // namespace rickyard::views
