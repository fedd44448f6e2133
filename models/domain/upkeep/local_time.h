// The yard's wall clock: days and hours of the crew's own time zone, turned into instants and
// back. Clock changes are the time zone database's business: a day may have 23 or 25 hours.
#pragma once

#include "models/domain/answers/headline.h"

#include <QDate>
#include <QLocale>
#include <QTimeZone>

namespace rickyard::domain {

class LocalTime
{
public:
    // An unknown zone name falls back to UTC; valid() tells.
    explicit LocalTime(const QString &ianaZone, const QString &locale = QStringLiteral("en_US"));

    [[nodiscard]] bool valid() const { return m_valid; }
    [[nodiscard]] QLocale locale() const { return m_locale; }
    [[nodiscard]] QDate dateOf(Instant instant) const;
    // First instant of a local day (not always 00:00: some zones change clocks at midnight).
    [[nodiscard]] Instant startOf(QDate day) const;
    // The instant at which wall clocks show `afterMidnight` (0 to 24 h) on that day. A time that
    // a clock change skips is read with the offset before the change; one that comes twice is the
    // first.
    [[nodiscard]] Instant at(QDate day, Duration afterMidnight) const;

    [[nodiscard]] QString dayText(QDate day) const;        // "Tue 24 Nov"
    [[nodiscard]] QString shortDayText(QDate day) const;   // "9 Dec"
    [[nodiscard]] QString timeText(Instant instant) const; // "Tue 24 Nov, 6:00 PM"

private:
    QTimeZone m_zone;
    QLocale m_locale;
    bool m_valid = true;
};

} // namespace rickyard::domain
