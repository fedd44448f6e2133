#include "models/domain/wood/meter.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/wood_names.h"

#include <array>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr size_t kColumns = 7;
constexpr double kNone = 0; // no figure in the table

struct ResistanceRow {
    double percent;
    std::array<double, kColumns> megohms; // in the order of MeterScale
};

// James, FPL-GTR-6, needle electrodes along the grain at 80 °F; from memory.
constexpr std::array<ResistanceRow, 14> kResistance{{
    {7, {12000, kNone, 72400, 14400, 17400, 51300, 22400}},
    {8, {2190, 31600, 13800, 4790, 3550, 9770, 4780}},
    {9, {690, 2190, 3160, 1590, 1100, 2630, 1660}},
    {10, {250, 340, 690, 630, 415, 890, 630}},
    {11, {105, 115, 250, 265, 170, 355, 265}},
    {12, {55, 50, 105, 125, 80, 155, 120}},
    {13, {28, 21, 53, 63, 42, 78, 60}},
    {14, {14, 11, 29, 32, 22, 41, 33}},
    {15, {8.3, 6.3, 16.6, 18.2, 12.6, 22, 18.6}},
    {16, {5.0, 3.7, 10.2, 11.3, 7.2, 12.9, 11.2}},
    {18, {2.0, 1.5, 4.5, 4.6, 2.7, 4.9, 4.6}},
    {20, {0.89, 0.71, 2.24, 2.09, 1.15, 2.14, 2.14}},
    {22, {0.50, 0.44, 1.23, 0.95, 0.60, 1.02, 1.10}},
    {24, {0.40, 0.40, 0.75, 0.63, 0.44, 0.51, 0.60}},
}};
constexpr size_t kRows = kResistance.size();

size_t columnOf(MeterScale scale)
{
    return static_cast<size_t>(scale);
}

size_t firstRow(size_t column)
{
    size_t row = 0;
    while (kResistance.at(row).megohms.at(column) == kNone)
        ++row;
    return row;
}

double lowest(MeterScale scale)
{
    return kResistance.at(firstRow(columnOf(scale))).percent;
}

// The moisture on a scale that has that resistance; the ends of the scale beyond them.
double percentAt(MeterScale scale, double megohm)
{
    const size_t column = columnOf(scale);
    const size_t first = firstRow(column);
    if (megohm >= kResistance.at(first).megohms.at(column))
        return kResistance.at(first).percent;
    for (size_t i = first + 1; i < kRows; ++i) {
        const double above = kResistance.at(i - 1).megohms.at(column);
        const double below = kResistance.at(i).megohms.at(column);
        if (megohm < below)
            continue;
        const double part = std::log(above / megohm) / std::log(above / below);
        return kResistance.at(i - 1).percent +
               part * (kResistance.at(i).percent - kResistance.at(i - 1).percent);
    }
    return kResistance.back().percent;
}

QString pointsText(double points)
{
    return QString((points < 0 ? QStringLiteral("−") : QStringLiteral("+")) +
                   formatNumber(std::abs(points), 1, QLocale(QLocale::English)) +
                   QStringLiteral(" points"));
}

} // namespace

double correctedForTemperature(double percent, double woodCelsius)
{
    const double away = woodCelsius - 20.0;
    return std::abs(away) > 5.0 ? percent - 0.1 * away : percent;
}

QString scaleName(MeterScale scale)
{
    switch (scale) {
    case MeterScale::WhiteAsh:
        return QStringLiteral("White ash");
    case MeterScale::Hickory:
        return QStringLiteral("Hickory");
    case MeterScale::HardMaple:
        return QStringLiteral("Hard maple");
    case MeterScale::RedOak:
        return QStringLiteral("Red oak");
    case MeterScale::WhiteOak:
        return QStringLiteral("White oak");
    case MeterScale::BlackWalnut:
        return QStringLiteral("Black walnut");
    case MeterScale::DouglasFir:
        return QStringLiteral("Douglas-fir");
    }
    return {};
}

QVector<MeterScale> meterScales()
{
    return {MeterScale::DouglasFir, MeterScale::Hickory,   MeterScale::RedOak,
            MeterScale::WhiteOak,   MeterScale::HardMaple, MeterScale::WhiteAsh,
            MeterScale::BlackWalnut};
}

std::optional<MeterScale> scaleOf(const QString &words)
{
    switch (woodGroupOf(words)) {
    case WoodGroup::WhiteOak:
        return MeterScale::WhiteOak;
    case WoodGroup::RedOak:
        return MeterScale::RedOak;
    case WoodGroup::Hickory:
        return MeterScale::Hickory;
    case WoodGroup::HardMaple:
        return MeterScale::HardMaple;
    case WoodGroup::Ash:
        return MeterScale::WhiteAsh;
    case WoodGroup::Walnut:
        return MeterScale::BlackWalnut;
    case WoodGroup::DouglasFir:
        return MeterScale::DouglasFir;
    case WoodGroup::Beech:
    case WoodGroup::Cherry:
    case WoodGroup::Other:
        break;
    }
    return std::nullopt;
}

std::optional<double> megohms(MeterScale scale, double percent)
{
    const size_t column = columnOf(scale);
    for (size_t i = firstRow(column) + 1; i < kRows; ++i) {
        const ResistanceRow &low = kResistance.at(i - 1);
        const ResistanceRow &high = kResistance.at(i);
        if (percent < low.percent || percent > high.percent)
            continue;
        const double part = (percent - low.percent) / (high.percent - low.percent);
        return low.megohms.at(column) *
               std::pow(high.megohms.at(column) / low.megohms.at(column), part);
    }
    return std::nullopt;
}

double correctedForSpecies(double percent, MeterScale meter, MeterScale wood)
{
    const double low = std::max(lowest(meter), lowest(wood));
    const double within = std::clamp(percent, low, kResistance.back().percent);
    const auto resistance = megohms(meter, within);
    return resistance ? percent + percentAt(wood, *resistance) - within : percent;
}

CorrectedReading corrected(const Books &books, const MoistureReading &reading)
{
    CorrectedReading result{reading.pieces, {}};
    const Yard yard = books.yard();
    const auto meter = scaleOf(reading.scale.isEmpty() ? yard.meterScale : reading.scale);
    const auto wood = scaleOf(books.species.value(books.lots.value(reading.lot).species).name);
    const bool bySpecies = yard.correctSpecies && meter && wood && *meter != *wood;
    const bool byTemperature = yard.correctTemperature && reading.woodTemperature &&
                               std::abs(celsius(*reading.woodTemperature) - 20.0) > 5.0;
    if (!bySpecies && !byTemperature)
        return result;
    double before = 0;
    double after = 0;
    for (Moisture &piece : result.pieces) {
        double percent = piece.toDouble() / 1000;
        before += percent;
        // The meter's scale belongs to the resistance; the temperature rule to what it shows.
        if (bySpecies)
            percent = correctedForSpecies(percent, *meter, *wood);
        if (byTemperature)
            percent = correctedForTemperature(percent, celsius(*reading.woodTemperature));
        percent = std::max(percent, 0.0);
        after += percent;
        piece = Moisture::rounded(percent * 1000);
    }
    QStringList why;
    if (byTemperature)
        why << QString(QStringLiteral("wood at ") +
                       show(*reading.woodTemperature,
                            yard.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                            QLocale(QLocale::English), 0));
    if (bySpecies)
        why << QString(scaleName(*wood).toLower() + QStringLiteral(" read on the ") +
                       scaleName(*meter) + QStringLiteral(" scale (figures from memory)"));
    const double shift = reading.pieces.isEmpty()
                             ? 0
                             : (after - before) / static_cast<double>(reading.pieces.size());
    result.note = QString(QStringLiteral("corrected for ") + why.join(QStringLiteral(" and ")) +
                          QStringLiteral(": ") + pointsText(shift));
    return result;
}

} // namespace rickyard::domain
