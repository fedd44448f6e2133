// What a reading of a task may be, and how one stands against it.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::views {

struct CheckLimits {
    std::optional<double> low;
    std::optional<double> high;
    QString unit;
    QString note; // what the limits were corrected for

    [[nodiscard]] bool holds(double value) const
    {
        return (!low || value >= *low) && (!high || value <= *high);
    }
    // "30 to 34 °F", "2 mm at least"; empty without limits.
    [[nodiscard]] QString words() const;
};

// The task's limits as they hold in this yard (models/domain/upkeep/readings.h).
CheckLimits checkLimits(const domain::Books &books, const domain::UpkeepTask &task);
// "Ice water", "Boiling water", "Paper at point 3", "Plate at point 2".
QString pointName(const domain::UpkeepTask &task, int point);
QString checkValueText(double value, const QString &unit);
// A number as typed, with or without the unit; nothing when it is none. Empty text is no number.
std::optional<double> typedNumber(const QString &text, const QString &unit);

} // namespace rickyard::views
