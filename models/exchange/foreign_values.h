// Numbers and times as foreign files write them. Strict: what is not understood is not guessed.
#pragma once

#include <QDateTime>
#include <QString>
#include <QTimeZone>

#include <optional>

namespace rickyard::exchange
{

// "12", "-1.5", "+3e2", with the given decimal sign and no thousands separator; a true minus sign
// is taken too.
std::optional<double> readNumber(const QString &text, QChar decimal);

// A calendar day and a time of day, and what the text says about its offset from UTC.
struct CivilTime {
    QDate date;
    QTime time;
    std::optional<int> offsetSeconds; // given by Z or +hh:mm
};
// ISO 8601: "2013-01-01T06:00:00Z", "2013-01-01 06:00", "20130101T0600+0100", fractions of a
// second cut. A time is required.
std::optional<CivilTime> readIsoTime(const QString &text);
// "2013-01-01T06:00:00Z"; seconds outside the years 1 to 9999 come out as a bare number.
QString isoUtc(qint64 seconds);

enum class LocalTime { Unique, Ambiguous, Missing };
struct ResolvedTime {
    LocalTime kind = LocalTime::Unique;
    qint64 seconds = 0; // the first of two; undefined when missing
    qint64 second = 0;  // the second of two, when ambiguous
};
// What an instant a wall clock of the zone shows as that civil time: none in the hour a clock
// change skips, two in the hour it repeats.
class ZoneClock
{
public:
    explicit ZoneClock(const QByteArray &ianaZone) : m_zone(ianaZone) {}
    [[nodiscard]] bool isValid() const { return m_zone.isValid(); }
    ResolvedTime resolve(const QDate &date, const QTime &time);
    // Offset of the zone's standard time, in seconds east of UTC.
    [[nodiscard]] int standardOffset(const QDate &date) const;

private:
    [[nodiscard]] int offsetAt(qint64 utc) const;
    QTimeZone m_zone;
    // Offsets around a day, kept because looking them up is slow and rows come day by day.
    qint64 m_day = 0;
    int m_before = 0;
    int m_after = 0;
    bool m_known = false;
};

} // namespace rickyard::exchange
