// Temperature logs of probes, from any table of text by a mapping: a column of times (a date and
// time, a time of day, or the time since the start) and a column for each probe. Files of any size:
// they are read in chunks, and only the readings that are kept stand in memory.
//
// Readings come to whole seconds. Of two in one second the later one of the file stays; rows out
// of order are sorted. A last line that the end of the file cuts is left out, with a note.
#pragma once

#include "models/domain/fire/trace_codec.h"
#include "models/exchange/refusal.h"
#include "models/exchange/weather_import.h" // Progress

class QIODevice;

namespace rickyard::exchange {

enum class ProbeTime {
    Clock,     // a date and a time
    TimeOfDay, // no date: the first reading is the one nearest to `start`; midnights are counted
    Elapsed,   // since `start`
};

struct ProbeColumn {
    QString probe;  // name that the trace gets
    QString column; // header of the file, or its number from 1 in a file without headers
    bool operator==(const ProbeColumn &) const = default;
};

struct ProbeLogMapping {
    QChar separator; // null: found from the first lines
    QChar decimal = QLatin1Char('.');
    int headerLine = 1; // line of the headers, from 1; 0: the file has none
    QStringList missing = {QString(),
                           QStringLiteral("-"),
                           QStringLiteral("--"),
                           QStringLiteral("---"),
                           QStringLiteral("NA"),
                           QStringLiteral("NaN"),
                           QStringLiteral("ERR"),
                           QStringLiteral("OL"),
                           QStringLiteral("null")};
    ProbeTime time = ProbeTime::Clock;
    QString timeColumn;
    QString dateColumn;      // may be empty; else it stands before the time, a blank between them
    QString timeFormat;      // see TimePattern; empty: ISO 8601
    double elapsedScale = 1; // seconds in one of a bare number: 1, 60 or 3600
    std::optional<domain::Instant> start;
    // Of times that do not say their offset.
    TimeZoneKind zoneKind = TimeZoneKind::Utc;
    QString zone;
    int offsetSeconds = 0;
    bool fahrenheit = true;
    QVector<ProbeColumn> probes;
    // Readings outside are counted and passed over: a log of a month, a cook of a night.
    std::optional<domain::Instant> from;
    std::optional<domain::Instant> to;
    bool strict = true; // one refused row refuses the file; false: refused rows are left out

    [[nodiscard]] domain::Problems check() const;
    bool operator==(const ProbeLogMapping &) const = default;
};

struct ProbeSeries {
    QString probe;
    QVector<domain::TracePoint> points; // by time; offsets count from ProbeLog::start
};

struct ProbeLogReport {
    qint64 rowsRead = 0;
    qint64 missing = 0;        // cells without a reading
    qint64 impossible = 0;     // readings no probe in a pit can have: left out
    qint64 duplicates = 0;     // more than one reading of a probe in one second
    qint64 outOfOrder = 0;     // rows earlier than one before them
    qint64 outside = 0;        // rows before `from` or after `to`
    qint64 ambiguousTimes = 0; // in the hour that a clock change repeats; told apart by row order
    QStringList notes;
    [[nodiscard]] QStringList lines() const;
};

struct ProbeLog {
    domain::Instant start;       // of the earliest reading
    QVector<ProbeSeries> series; // those of the mapping, in its order; empty when refused
    ProbeLogReport report;
    Refusals refused;
    bool cancelled = false;
    bool ok = false;
};

// Colder or hotter than this is a broken probe, not a pit: -60 to 900 °F, as a typed reading may
// be (lower end -60 °C).
constexpr qint64 kColdestProbe = -60000; // thousandths of a degree Celsius
constexpr qint64 kHottestProbe = 482222;

ProbeLog readProbeLog(QIODevice &device, const ProbeLogMapping &mapping,
                      const QString &fileName = {}, const Progress &progress = {},
                      const std::atomic_bool *cancel = nullptr);

struct ProbeLogGuess {
    ProbeLogMapping mapping;
    QStringList header;
    QStringList notes; // what was taken for granted, in words
    QString unitNote;  // the same of the unit; empty when the file says it
};
// From the first lines of the file (64 kB are plenty). Every column of numbers that is not the time
// becomes a probe; `zone` is that of the times (IANA), UTC when empty. `headerLine` 0: the file
// has no headers, and its columns are called 1, 2, 3.
ProbeLogGuess guessProbeLog(const QByteArray &head, const QString &zone = {}, int headerLine = 1);

} // namespace rickyard::exchange
