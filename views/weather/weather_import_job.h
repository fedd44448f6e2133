// The slow steps of a weather import, each on a thread: opening a file and guessing its mapping,
// reading it, and working out what its rows change in the yard. A new reading supersedes the one
// that still runs.
#pragma once

#include "models/domain/records/books.h"
#include "models/exchange/weather_formats.h"
#include "views/latest_work.h"

namespace rickyard::views {

struct OpenedWeatherFile {
    QString path;
    QString name;
    QByteArray bytes;
    QString problem; // in words; empty when it could be read
    // Other than Mapped: the file says itself what its columns are, and neither preview nor guess
    // is filled.
    exchange::WeatherFormat format = exchange::WeatherFormat::Mapped;
    exchange::WeatherPreview preview;
    exchange::MappingGuess guess;
};

struct WeatherChangesToWrite {
    QVector<domain::Row> rows;
    qint64 fresh = 0;
    qint64 updated = 0;
    qint64 identical = 0;
};

class WeatherImportJob : public QObject
{
    Q_OBJECT

public:
    explicit WeatherImportJob(QObject *parent = nullptr);

    void open(const QString &path, const QString &yardZone);
    void read(const QByteArray &bytes, const exchange::WeatherMapping &mapping,
              const QString &fileName);
    void readKnown(exchange::WeatherFormat format, const QByteArray &bytes,
                   const exchange::WeatherReadOptions &options, const QString &fileName);
    void compare(const domain::Books &books, const QVector<domain::Weather> &rows);
    void cancel() { m_work.cancel(); }

Q_SIGNALS:
    void opened(const rickyard::views::OpenedWeatherFile &file);
    void progressed(qint64 done, qint64 total);
    void wasRead(const rickyard::exchange::WeatherImport &result);
    void compared(const rickyard::views::WeatherChangesToWrite &changes);

private:
    LatestWork m_work;
};

} // namespace rickyard::views
