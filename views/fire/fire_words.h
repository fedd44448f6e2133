// How figures, clocks and spans read on the Fire and Pits pages: in the yard's units and zone.
#pragma once

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"

#include <QLocale>
#include <QTimeZone>

namespace rickyard::views {

// A number and its unit apart, for large numerals.
struct Figure {
    QString value;
    QString unit;
    [[nodiscard]] QString text() const;
};

// A view of the books; the books must outlive it.
class FireWords
{
public:
    explicit FireWords(const domain::Books &books);

    [[nodiscard]] QString clock(domain::Instant t) const; // "3:12 AM"
    // With the weekday when it is not the day of `now`: "Thu 3:12 AM".
    [[nodiscard]] QString clock(domain::Instant t, domain::Instant now) const;
    [[nodiscard]] QString day(domain::Instant t) const; // "25 Nov"
    [[nodiscard]] Figure heat(domain::Heat heat, int decimals = 0) const;
    [[nodiscard]] Figure mass(domain::Mass mass, int decimals = 0) const;
    [[nodiscard]] Figure temperature(domain::Temperature t) const;
    // "+22 %", "−3 %", "0 %".
    [[nodiscard]] QString percent(double fraction) const;
    // Without a sign: "22 %".
    [[nodiscard]] QString share(double fraction) const;
    [[nodiscard]] const domain::Unit &unit(domain::Dimension dimension) const;
    [[nodiscard]] const QLocale &locale() const { return m_locale; }

    // "4:05 h", "26:10 h".
    static QString span(domain::Duration duration);
    // Counting by the second: "12:04", "1:02:03"; below zero with a minus.
    static QString ticking(domain::Duration duration);
    // What its first figure counts: "min", or "h" from an hour on.
    static QString tickingUnit(domain::Duration duration);

private:
    const domain::Books &m_books;
    QLocale m_locale;
    QTimeZone m_zone;
    bool m_metric;
};

// What a cook is called in lists of a few: its name, else its pit and day.
QString cookTitle(const domain::Books &books, const domain::Cook &cook);

} // namespace rickyard::views
