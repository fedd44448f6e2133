// How quantities are typed and shown: the units of each dimension, parsing with a unit suffix and
// formatting with a true minus sign. Pure: the locale comes in as an argument.
#pragma once

#include "models/domain/quantities/quantity.h"

#include <QLocale>
#include <QString>
#include <QVector>

#include <optional>

namespace rickyard::domain {

enum class UnitSystem { UsCustomary, Metric };

// One unit: shown = (base - offset) / scale, except wet-basis moisture, which is not linear.
struct Unit {
    QString key;         // stable, used in files: "lb", "degF", "pct_dry"
    QString symbol;      // shown: "lb", "°F", "% dry"
    double scale;        // base units in one of this unit
    double offset;       // base value at zero of this unit
    int decimals;        // digits usually shown
    QStringList aliases; // also accepted when typed, lower case
    bool wetBasis = false;
};

// The units of a dimension; the first is the usual one for US customary.
const QVector<Unit> &unitsOf(Dimension dimension);
// The unit shown by default; large volumes of wood and heats have their own named helpers.
const Unit &defaultUnit(Dimension dimension, UnitSystem system);
// Null when the dimension has no such unit.
const Unit *findUnit(Dimension dimension, const QString &keyOrAlias);

double toUnit(qint64 base, const Unit &unit);
qint64 fromUnit(double value, const Unit &unit);

// "128 lb", "−1.5 °C", "20 % dry". decimals < 0 takes the unit's own.
QString formatQuantity(qint64 base, const Unit &unit, const QLocale &locale, int decimals = -1);
QString formatNumber(double value, int decimals, const QLocale &locale);

struct ParsedQuantity {
    qint64 base = 0;
    const Unit *unit = nullptr; // the unit that was typed, or the assumed one
    bool unitTyped = false;
};
// Reads "128", "128 lb", "6 ft 2 in" is not accepted. A unit of another dimension gives nothing.
std::optional<ParsedQuantity> parseQuantity(const QString &text, Dimension dimension,
                                            const Unit &assumed, const QLocale &locale);

// "12 h 30 min", "45 min".
QString formatDuration(Duration duration);

template <Dimension D>
QString show(Quantity<D> q, UnitSystem system, const QLocale &locale, int decimals = -1)
{
    return formatQuantity(q.base(), defaultUnit(D, system), locale, decimals);
}

} // namespace rickyard::domain
