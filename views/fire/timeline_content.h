// What a cook's timeline shows besides its traces: the target, feeds, marks and typed readings,
// with the units and the clock of the yard. Small, and made at once.
#pragma once

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"
#include "views/fire/cook_curves.h"

#include <QTimeZone>

namespace rickyard::views {

struct TimelineFeed {
    double at = 0;        // seconds after lighting, here and below
    double kilograms = 0; // 0: neither weighed nor known from its lot
    QString words;
};
struct TimelineMark {
    double at = 0;
    bool upright = false; // a line through the whole, for the times of the cook itself
    QString icon;         // of a note
    QString words;
};
struct TypedReading {
    double at = 0;
    double milli = 0; // thousandths of a degree Celsius
    QString probe;
};

struct TimelineContent {
    domain::RecordId cook = 0;
    domain::Instant lit;
    double end = 3600;                  // fire out, or now
    double atLeast = 0;                 // that the whole reaches to, beside another timeline
    std::optional<double> target;       // thousandths of a degree Celsius
    std::optional<double> typedOutside; // of a cook without weather records
    std::optional<double> typedWind;    // millimetres a second
    QVector<TimelineFeed> feeds;
    QVector<TimelineMark> marks;
    QVector<TypedReading> typed;
    domain::Unit temperature;
    domain::Unit speed;
    QLocale locale;
    QTimeZone zone;
    CookCurvesPtr curves; // null while they are read

    // Names of all probes, those with a trace first: the order of hues.
    [[nodiscard]] QStringList probes() const;
    // From first to last reading, at least from lighting to the end.
    [[nodiscard]] double first() const;
    [[nodiscard]] double last() const;
    [[nodiscard]] QString clock(double at) const;
    [[nodiscard]] QString degrees(double milli) const;
    [[nodiscard]] QString windWords(double speed) const;
    // "2–8 mph"; one figure when both round to the same.
    [[nodiscard]] QString windRange(double low, double high) const;
    [[nodiscard]] QString degreesRange(double low, double high) const;
    [[nodiscard]] QString targetWords() const;
    // All that is known at a moment; events count within `reach` seconds.
    [[nodiscard]] QString reading(double at, double reach) const;
    // Times of feeds, marks and faults, ascending.
    [[nodiscard]] std::vector<double> events() const;
};

TimelineContent timelineContent(const domain::Books &books, const domain::Cook &cook,
                                domain::Instant now);

} // namespace rickyard::views
