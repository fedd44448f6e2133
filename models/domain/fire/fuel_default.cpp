#include "models/domain/fire/fuel_default.h"

#include <QSet>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace rickyard::domain
{

namespace
{

constexpr double kMillilitresPerGallon = 3785.411784; // US liquid gallon, exact

// Pounds at 17 % wet basis (20.5 % dry basis), which a seasoned pound equals within 1 %.
struct SizeRow {
    double gallons;
    double hourly;
    double hourlyLower;
    double hourlyUpper;
    double startLower;
    double startUpper;
};
// The first row is a 20 in pit, taken as 40 in long; the second a 24 in pit of 94 to 120 gallons.
constexpr std::array<SizeRow, 5> kSizes = {{{54, 5.6, 3, 9, 8, 12},
                                            {107, 8, 5, 12, 12, 18},
                                            {250, 11, 8, 18, 20, 30},
                                            {500, 17, 11, 26, 30, 45},
                                            {1000, 23, 15, 36, 45, 70}}};

double interpolated(double gallons, double SizeRow::*column)
{
    std::size_t upper = 1;
    while (upper + 1 < kSizes.size() && gallons > kSizes[upper].gallons)
        ++upper;
    const SizeRow &a = kSizes[upper - 1];
    const SizeRow &b = kSizes[upper];
    const double share = std::log(gallons / a.gallons) / std::log(b.gallons / a.gallons);
    return a.*column * std::pow(b.*column / (a.*column), share);
}

double insulationFactor(Insulation insulation)
{
    switch (insulation) {
    case Insulation::Bare:
        return 1.0;
    case Insulation::FireboxOnly:
        return 0.6;
    case Insulation::Whole:
        return 0.5;
    }
    return 1.0;
}

} // namespace

double shellArea(const Pit &pit)
{
    const double d = metres(pit.diameter);
    const double l = metres(pit.length);
    const double side = metres(pit.fireboxSide.value_or(pit.diameter));
    return std::numbers::pi * d * l + std::numbers::pi * d * d / 2.0 + 5.0 * side * side;
}

double chamberGallons(const Pit &pit)
{
    const double d = metres(pit.diameter);
    return std::numbers::pi * d * d / 4.0 * metres(pit.length) * 1e6 / kMillilitresPerGallon;
}

WorkingDefault workingDefault(const Pit &pit)
{
    // A pit without a size yet is taken as the smallest of the table.
    const double measured = chamberGallons(pit);
    const double gallons = measured > 1.0 ? measured : kSizes.front().gallons;
    const double factor = insulationFactor(pit.insulation);
    const auto hourly = [&](double SizeRow::*column) {
        return heatFromSeasonedPounds(interpolated(gallons, column) * factor);
    };
    const auto start = [&](double SizeRow::*column) {
        return heatFromSeasonedPounds(interpolated(gallons, column));
    };
    WorkingDefault d;
    d.hourly = hourly(&SizeRow::hourly);
    d.hourlyLower = hourly(&SizeRow::hourlyLower);
    d.hourlyUpper = hourly(&SizeRow::hourlyUpper);
    d.startLower = start(&SizeRow::startLower);
    d.startUpper = start(&SizeRow::startUpper);
    d.start = (d.startLower + d.startUpper) * 0.5;
    return d;
}

PooledUse pooledUse(const Books &books, const QVector<CookFuel> &cooks)
{
    double heat = 0;
    double exposure = 0; // kelvin-hours times square metres
    QVector<double> each;
    QSet<RecordId> pits;
    for (const CookFuel &cook : cooks) {
        const double area = shellArea(books.pits.value(cook.pit));
        if (!cook.complete() || area <= 0)
            continue;
        heat += cook.netHeat.toDouble();
        exposure += *cook.degreeHours * area;
        each << cook.netHeat.toDouble() / (*cook.degreeHours * area);
        pits << cook.pit;
    }
    PooledUse pooled;
    pooled.cooks = static_cast<int>(each.size());
    pooled.pits = static_cast<int>(pits.size());
    if (each.isEmpty())
        return pooled;
    pooled.mean = heat / exposure;
    double squares = 0;
    for (const double e : each)
        squares += (e - pooled.mean) * (e - pooled.mean);
    if (each.size() > 1)
        pooled.sd = std::sqrt(squares / static_cast<double>(each.size() - 1));
    return pooled;
}

} // namespace rickyard::domain
