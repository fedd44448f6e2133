#include "models/domain/fire/wood_measure.h"

#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"

#include <boost/math/distributions/chi_squared.hpp>

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

struct MeasureWords {
    Q_DECLARE_TR_FUNCTIONS(WoodMeasure)
};

// Nothing is surer than a tenth of a kilogram: a weight of zero error would silence the rest.
constexpr double kSurest = 0.1;

double sq(double v)
{
    return v * v;
}

QVector<Feed> feedsOf(const Books &books, RecordId cook)
{
    QVector<Feed> feeds;
    for (const Feed &feed : books.feeds)
        if (feed.cook == cook)
            feeds << feed;
    return feeds;
}

// What the splits of one lot weigh together, and how surely.
struct LotTally {
    double dry = 0; // kilograms, of the splits counted
    int pieces = 0;
};

std::optional<WoodEstimate> byTally(const Books &books, const Cook &cook, QStringList &problems)
{
    QMap<RecordId, LotTally> counted;
    double weighed = 0;
    int weighedFeeds = 0;
    int pieces = 0;
    for (const Feed &feed : feedsOf(books, cook.id)) {
        const auto dry = dryMassOfFeed(books, feed);
        if (!dry) {
            problems << dry.message();
            continue;
        }
        if (feed.weight) {
            weighed += kilograms(dry->dryMass);
            ++weighedFeeds;
            continue;
        }
        LotTally &lot = counted[feed.lot];
        lot.dry += kilograms(dry->dryMass);
        lot.pieces += feed.pieces;
        pieces += feed.pieces;
    }
    if (pieces == 0 && weighedFeeds == 0)
        return std::nullopt;
    double variance = sq(kFeedScale * weighed);
    double dry = weighed;
    for (auto it = counted.cbegin(); it != counted.cend(); ++it) {
        const Lot lot = books.lots.value(it.key());
        const double scatter = lot.splitSpread && lot.splitMass && lot.splitMass->base() > 0
                                   ? *lot.splitSpread / *lot.splitMass
                                   : kSplitScatter;
        variance += sq(it->dry) * (sq(splitWeight(books, lot).error) + sq(kMiscount) +
                                   sq(scatter) / std::max(1, it->pieces));
        dry += it->dry;
    }
    QStringList words;
    if (pieces > 0)
        words << MeasureWords::tr("%1 splits counted").arg(pieces);
    if (weighedFeeds > 0)
        words << MeasureWords::tr("%1 feeds weighed").arg(weighedFeeds);
    return WoodEstimate{WoodWay::Tally, massFromKilograms(dry),
                        massFromKilograms(std::sqrt(variance)), words.join(QStringLiteral(", "))};
}

// Lot of crate or stack, with its share: the one named, else those fed.
QMap<RecordId, double> lotsOf(const Books &books, const Cook &cook)
{
    if (cook.woodLot)
        return {{*cook.woodLot, 1.0}};
    QMap<RecordId, double> shares;
    double all = 0;
    for (const Feed &feed : feedsOf(books, cook.id)) {
        const auto dry = dryMassOfFeed(books, feed);
        const double mass = dry ? kilograms(dry->dryMass) : 0.0;
        shares[feed.lot] += mass;
        all += mass;
    }
    for (double &share : shares)
        share = all > 0 ? share / all : 0.0;
    return all > 0 ? shares : QMap<RecordId, double>();
}

std::optional<WoodEstimate> byCrate(const Books &books, const Cook &cook, QStringList &problems)
{
    if (!cook.crateBefore || !cook.crateAfter)
        return std::nullopt;
    const double asIs = kilograms(*cook.crateBefore - *cook.crateAfter);
    if (asIs < 0) {
        problems << MeasureWords::tr(
            "The crate weighs more after the cook than before: check both.");
        return std::nullopt;
    }
    const auto lots = lotsOf(books, cook);
    if (lots.isEmpty()) {
        problems << MeasureWords::tr("Say which lot the crate held, so that its water is known.");
        return std::nullopt;
    }
    double water = 0; // of dry mass; mean over the lots
    for (auto it = lots.cbegin(); it != lots.cend(); ++it) {
        const DryMassResult known = moistureOrAssumed(books, it.key(), cook.lit);
        water += it.value() * dryFraction(known.moisture.value_or(Moisture::ofBase(20000)));
    }
    const double dry = asIs / (1.0 + water);
    return WoodEstimate{WoodWay::Crate, massFromKilograms(dry),
                        massFromKilograms(std::sqrt(2.0) * kCrateScale / (1.0 + water)),
                        MeasureWords::tr("crate weighed before and after")};
}

std::optional<WoodEstimate> byStack(const Books &books, const Cook &cook, QStringList &problems)
{
    if (!cook.stackBefore || !cook.stackAfter)
        return std::nullopt;
    const Volume gone = *cook.stackBefore - *cook.stackAfter;
    if (gone < Volume()) {
        problems << MeasureWords::tr("The stack is larger after the cook than before: check both.");
        return std::nullopt;
    }
    const auto lots = lotsOf(books, cook);
    if (lots.isEmpty()) {
        problems << MeasureWords::tr("Say which lot the stack is of, so that its weight is known.");
        return std::nullopt;
    }
    double dry = 0;
    for (auto it = lots.cbegin(); it != lots.cend(); ++it) {
        const Lot lot = books.lots.value(it.key());
        const DryMassResult known = moistureOrAssumed(books, it.key(), cook.lit);
        dry += it.value() *
               kilograms(dryMassOfSolid(solidFromStacked(gone), books.species.value(lot.species),
                                        known.moisture.value_or(Moisture::ofBase(20000))));
    }
    const double perVolume = gone > Volume() ? dry / gone.toDouble() : 0.0;
    const double measured = perVolume * kStackMeasure *
                            std::hypot(cook.stackBefore->toDouble(), cook.stackAfter->toDouble());
    return WoodEstimate{WoodWay::Stack, massFromKilograms(dry),
                        massFromKilograms(std::hypot(measured, kStackFill * dry)),
                        MeasureWords::tr("stack measured before and after")};
}

void reconcile(WoodReckoning &reckoning)
{
    double weights = 0;
    double sum = 0;
    const auto errorOf = [](const WoodEstimate &way) {
        return std::max(kSurest, kilograms(way.error));
    };
    for (const WoodEstimate &way : std::as_const(reckoning.ways)) {
        const double w = 1.0 / sq(errorOf(way));
        weights += w;
        sum += w * kilograms(way.dry);
    }
    if (weights <= 0)
        return;
    const double mean = sum / weights;
    reckoning.dry = massFromKilograms(mean);
    reckoning.error = massFromKilograms(1.0 / std::sqrt(weights));
    double chi = 0;
    for (const WoodEstimate &way : std::as_const(reckoning.ways))
        chi += sq((kilograms(way.dry) - mean) / errorOf(way));
    if (reckoning.ways.size() > 1) {
        const boost::math::chi_squared spread(static_cast<double>(reckoning.ways.size() - 1));
        reckoning.agreement = boost::math::cdf(boost::math::complement(spread, chi));
    }
}

} // namespace

WoodReckoning woodReckoning(const Books &books, const Cook &cook)
{
    WoodReckoning reckoning;
    for (const auto &way :
         {byTally(books, cook, reckoning.problems), byCrate(books, cook, reckoning.problems),
          byStack(books, cook, reckoning.problems)})
        if (way)
            reckoning.ways << *way;
    for (const Movement &m : books.movements)
        if (m.kind == MovementKind::Burned && m.cook == cook.id)
            reckoning.booked -= m.dryMass;
    reconcile(reckoning);
    return reckoning;
}

QVector<Movement> trueUpOf(const Books &books, const Cook &cook, const WoodReckoning &reckoning,
                           Instant at)
{
    QVector<Movement> entries;
    // Less than a tenth of a kilogram is nobody's wood.
    if (!reckoning.dry || std::abs(kilograms(reckoning.difference())) < 0.1)
        return entries;
    const auto lots = lotsOf(books, cook);
    for (auto it = lots.cbegin(); it != lots.cend(); ++it) {
        if (it.value() <= 0)
            continue;
        Movement m;
        m.lot = it.key();
        m.time = at;
        m.kind = MovementKind::Burned;
        m.cook = cook.id;
        m.dryMass = Mass::rounded(-it.value() * reckoning.difference().toDouble());
        m.moisture = moistureOrAssumed(books, it.key(), cook.lit).moisture;
        m.note = MeasureWords::tr("True-up of the cook: %1 ways of measuring reconciled")
                     .arg(reckoning.ways.size());
        entries << m;
    }
    return entries;
}

} // namespace rickyard::domain
