// Seasoning from the books: what is believed of each lot, what was read of it, and its forecast.
#include "models/domain/records/rules.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/seasoning.h"
#include "models/domain/wood/stock.h"
#include "models/domain/wood/wood_names.h"

#include <QDate>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kUsualTau = 105;     // days, red oak 4 in thick at 70 °F
constexpr double kUsualThickness = 4; // inches
constexpr double kTauScatter = 0.5;
constexpr double kThicknessScatter = 0.25; // of the logarithm, when it was not measured
constexpr double kMeterError = 1.5;        // points
constexpr double kUsualScatter = 2;        // points between the pieces of a lot
constexpr double kOldFaceError = 3;
constexpr double kAboveSaturation = 0.25;

// Geometric middle of the day ranges for 4/4 lumber to 20 %, relative to northern red oak's 70 to
// 200 days: white oak 80-250, hickory 60-200, beech and cherry 70-200, hard maple 50-200, white ash
// 60-200, black walnut 70-200 (FPL Technical Note 233, from memory).
double speciesFactor(WoodGroup group)
{
    const auto middle = [](double least, double most) { return std::sqrt(least * most); };
    const double oak = middle(70, 200);
    switch (group) {
    case WoodGroup::WhiteOak:
        return middle(80, 250) / oak;
    case WoodGroup::Hickory:
    case WoodGroup::Ash:
        return middle(60, 200) / oak;
    case WoodGroup::HardMaple:
        return middle(50, 200) / oak;
    case WoodGroup::RedOak:
    case WoodGroup::Beech:
    case WoodGroup::Cherry:
    case WoodGroup::Walnut:
    case WoodGroup::DouglasFir:
    case WoodGroup::Other:
        break;
    }
    return 1.0;
}

// How much of the rain gets into the wood, per millimetre: an inch on an open rick lifts wood at
// 20 % by some 3 points, on a covered one by a third of a point. Our own; a readings' posterior
// takes up what it misses.
double wettingOf(Cover cover)
{
    switch (cover) {
    case Cover::Open:
        return 0.0015;
    case Cover::TopCover:
        return 0.00015;
    case Cover::Shed:
    case Cover::KilnDried:
        break;
    }
    return 0;
}

void setStart(SeasoningPrior &prior, const Books &books, const Lot &lot)
{
    const Species species = books.species.value(lot.species);
    std::optional<Moisture> promised = lot.promisedMoisture;
    if (!promised && lot.supplier)
        promised = books.suppliers.value(*lot.supplier).promised;
    const double green = species.green ? species.green->toDouble() / 1000 : 70;
    if (lot.cover == Cover::KilnDried && !promised) {
        prior.start = 15;
        prior.startSd = 5;
        prior.assumptions << QStringLiteral("kiln-dried wood came at 15 ± 5 %");
    } else if (promised) {
        prior.start = promised->toDouble() / 1000;
        prior.startSd = 10;
        prior.assumptions << QStringLiteral("it came within 10 points of what was promised");
    } else {
        prior.start = 0.75 * green;
        prior.startSd = 0.35 * green;
        prior.assumptions << QStringLiteral("nothing was promised: between half dry and green");
    }
}

SeasoningReading readingOf(const MoistureSample &sample)
{
    const double mean = sample.mean().toDouble() / 1000;
    const auto n = static_cast<double>(sample.pieces.size());
    double squares = 0;
    for (const Moisture piece : sample.pieces)
        squares += std::pow(piece.toDouble() / 1000 - mean, 2);
    // Few pieces may agree by chance: their scatter counts as at least half of the usual.
    const double scatter = sample.pieces.size() < 3
                               ? kUsualScatter
                               : std::max(std::sqrt(squares / (n - 1)), kUsualScatter / 2);
    double variance = scatter * scatter / n;
    if (!sample.ovenTest)
        variance += kMeterError * kMeterError;
    if (sample.unreliable)
        variance += kOldFaceError * kOldFaceError;
    if (sample.indicative)
        variance += std::pow(kAboveSaturation * (mean - kFibreSaturation.toDouble() / 1000), 2);
    return {dayNumber(sample.time), mean, std::sqrt(variance)};
}

} // namespace

SeasoningPrior seasoningPrior(const Books &books, const Lot &lot)
{
    SeasoningPrior prior;
    const Species species = books.species.value(lot.species);
    double variance = kTauScatter * kTauScatter;
    double thickness = kUsualThickness;
    if (lot.splitThickness) {
        thickness = inches(*lot.splitThickness);
    } else {
        variance += std::pow(kThicknessPower * kThicknessScatter, 2);
        prior.assumptions << QStringLiteral("splits about 4 in thick (not measured)");
    }
    const double shed = lot.cover == Cover::Shed || lot.cover == Cover::KilnDried ? 1.2 : 1.0;
    prior.logTau = std::log(kUsualTau * std::pow(thickness / kUsualThickness, kThicknessPower) *
                            speciesFactor(woodGroupOf(species.name)) * shed);
    prior.logTauSd = std::sqrt(variance);
    const Moisture most = maximumMoisture(species.basicGravity);
    prior.most = most.base() > 0 ? most.toDouble() / 1000 : 110;
    prior.wetting = wettingOf(lot.cover);
    setStart(prior, books, lot);
    return prior;
}

QVector<SeasoningReading> seasoningReadings(const Books &books, RecordId lot)
{
    QVector<SeasoningReading> readings;
    for (const MoistureSample &sample : moistureSessions(books, lot))
        readings << readingOf(sample);
    return readings;
}

QMap<RecordId, SeasoningForecast> seasoningOf(const Books &books, Instant now)
{
    const Stock stock = stockAt(books, now);
    QVector<RecordId> lots;
    const qint64 today = dayNumber(now);
    qint64 first = today;
    for (const LotStock &lot : stock.lots) {
        if (lot.readiness == Readiness::Empty || lot.readiness == Readiness::NeverBurn)
            continue;
        lots << lot.lot;
        first = std::min(first, dayNumber(books.lots.value(lot.lot).received));
    }
    QMap<RecordId, SeasoningForecast> all;
    if (lots.isEmpty())
        return all;
    const AirCourse course(books);
    const qint64 horizon = today + kSeasoningHorizonDays;
    const SeasoningAir air(course, first, horizon);
    for (const RecordId id : lots) {
        const Lot lot = books.lots.value(id);
        SeasoningForecast forecast =
            forecastSeasoning(seasoningPrior(books, lot), dayNumber(lot.received),
                              seasoningReadings(books, id), air, today, horizon);
        if (course.assumed())
            forecast.assumptions << QStringLiteral("no weather on record: the air of a mild year");
        else if (course.yearCovered() < 330)
            forecast.assumptions << QStringLiteral("parts of the year have no weather on record: "
                                                   "the mean of the rest");
        all.insert(id, forecast);
    }
    return all;
}

QString readyWords(const SeasoningForecast &forecast)
{
    const auto percent = [](double chance) {
        return QString(QString::number(std::lround(100 * chance)) + QStringLiteral(" %"));
    };
    // "4 March", with the year when it is not the running one.
    const auto words = [&](qint64 day) {
        const QDate date = dateOfDay(day);
        const bool thisYear = date.year() == dateOfDay(forecast.today).year();
        return QLocale(QLocale::English)
            .toString(date, thisYear ? QStringLiteral("d MMMM") : QStringLiteral("d MMMM yyyy"));
    };
    if (forecast.chanceNow >= 0.9)
        return QString(QStringLiteral("dry now (") + percent(std::min(forecast.chanceNow, 0.99)) +
                       QStringLiteral(" sure)"));
    if (!forecast.readyEarly)
        return QStringLiteral("not dry within a year and a half");
    const QString late = forecast.readyLate ? words(*forecast.readyLate) : QString();
    if (*forecast.readyEarly <= forecast.today)
        return QString(QStringLiteral("perhaps dry now (") + percent(forecast.chanceNow) +
                       (late.isEmpty() ? QStringLiteral("), not sure within a year and a half")
                                       : QString(QStringLiteral("), sure by ") + late)));
    if (late.isEmpty())
        return QString(QStringLiteral("ready after ") + words(*forecast.readyEarly) +
                       QStringLiteral(" at the earliest, perhaps not within a year and a half"));
    return QString(QStringLiteral("ready between ") + words(*forecast.readyEarly) +
                   QStringLiteral(" and ") + late);
}

} // namespace rickyard::domain
