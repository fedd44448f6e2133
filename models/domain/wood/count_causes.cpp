#include "models/domain/wood/count_causes.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/stock.h"
#include "models/domain/wood/supplier_record.h"

#include <QSet>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// Shares beforehand and scatters: our own rule, no source.
constexpr double kPriorCounting = 0.35;
constexpr double kPriorFeeds = 0.25;
constexpr double kPriorSplits = 0.15;
constexpr double kPriorDried = 0.15;
constexpr double kPriorTaken = 0.04;
constexpr double kForgotten = 0.03;    // of what was burned, where no gap shows
constexpr double kTakenScatter = 0.35; // of the book
constexpr double kLeastTaken = 20;     // kilograms
constexpr double kOftenWeighed = 0.05; // splits by weight, from one armful to the next
constexpr qint64 kSameFeeding = 120;   // seconds

struct DeliveryTrust {
    double prior;
    double scatter; // of what was booked
    const char *words;
};

DeliveryTrust trustIn(Measure measure)
{
    switch (measure) {
    case Measure::Claimed:
        return {0.30, 0.12, "the amount paid for was taken as true"};
    case Measure::Loose:
        return {0.18, 0.08, "it was measured as a loose load"};
    case Measure::Stack:
        return {0.12, 0.05, "it was measured as a stack"};
    case Measure::Weighed:
        break;
    }
    return {0.08, 0.04, "it was weighed with its water"};
}

// What the ledger says of the rick since it was last known: received or counted.
struct Since {
    Instant from;
    bool counted = false; // the last thing known is a count
    double received = 0;  // kilograms, dry
    double burned = 0;    // since
    double byPieces = 0;  // of that, by splits that were not weighed
    int pieces = 0;
    QVector<RecordId> cooks; // that burned of it
};

Since sinceKnown(const DriftCase &c)
{
    Since since;
    since.from = c.books.lots.value(c.lot).received;
    for (const Movement &m : c.books.movements) {
        if (m.lot != c.lot || m.time > c.now)
            continue;
        if (m.kind == MovementKind::Received)
            since.received += kilograms(m.dryMass);
        if (m.kind == MovementKind::Counted && m.time >= since.from) {
            since.from = m.time;
            since.counted = true;
        }
    }
    for (const Movement &m : c.books.movements) {
        if (m.lot != c.lot || m.kind != MovementKind::Burned || m.time < since.from ||
            m.time > c.now)
            continue;
        since.burned -= kilograms(m.dryMass);
        if (m.cook && !since.cooks.contains(*m.cook))
            since.cooks << *m.cook;
        if (m.feed && m.pieces && !c.books.feeds.value(*m.feed).weight) {
            since.byPieces -= kilograms(m.dryMass);
            since.pieces += *m.pieces;
        }
    }
    return since;
}

QString massWords(double kilogramsOf, const Wording &wording, int decimals = 0)
{
    return show(massFromKilograms(std::abs(kilogramsOf)),
                wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary, localeOf(wording),
                decimals);
}

QString times(int count, const char *one, const char *many)
{
    return QString(QString::number(count) + QLatin1Char(' ') +
                   QString::fromLatin1(count == 1 ? one : many));
}

SuspectedCause counting(const DriftCase &c)
{
    const QString much = massWords(2 * kilograms(c.counted.error), c.wording);
    return {DriftCause::CountError,
            kPriorCounting,
            0,
            0,
            0,
            c.way == CountWay::Stack
                ? QString(QStringLiteral("No more than the stack leaves open: splits lie closer or "
                                         "looser, give or take ") +
                          much + QLatin1Char('.'))
                : QString(QStringLiteral("No more than this way of counting leaves open, give or "
                                         "take ") +
                          much + QLatin1Char('.'))};
}

// Cooks that burned something since, with nothing of it written down.
int cooksWithoutWood(const DriftCase &c, Instant from)
{
    QSet<RecordId> fed;
    for (const Movement &m : c.books.movements)
        if (m.kind == MovementKind::Burned && m.cook)
            fed << *m.cook;
    int bare = 0;
    for (const Cook &cook : c.books.cooks)
        if (cook.fireOut && *cook.fireOut >= from && *cook.fireOut <= c.now &&
            !fed.contains(cook.id))
            ++bare;
    return bare;
}

std::optional<SuspectedCause> unloggedFeeds(const DriftCase &c, const Since &since)
{
    const int bare = cooksWithoutWood(c, since.from);
    if (since.burned <= 0 && bare == 0)
        return std::nullopt;
    const double split = kilograms(splitWeight(c.books, c.books.lots.value(c.lot)).dry);
    int missing = 0;
    for (const RecordId cook : since.cooks)
        missing += feedsMissing(c.books, cook, c.now);
    const double aCook =
        since.cooks.isEmpty() ? 15 * split : since.burned / static_cast<double>(since.cooks.size());
    const double lost = missing * split + bare * aCook;
    QStringList shows;
    if (missing > 0)
        shows << QString(QStringLiteral("gaps in the log where ") +
                         times(missing, "feed", "feeds") + QStringLiteral(" would stand"));
    if (bare > 0)
        shows << QString(times(bare, "cook", "cooks") + QStringLiteral(" without any wood"));
    const QString words =
        shows.isEmpty()
            ? QStringLiteral("Feeds not logged, though the logs of its cooks show no gap.")
            : QString(QStringLiteral("Feeds not logged: ") + shows.join(QStringLiteral(" and ")) +
                      QStringLiteral(". Add them to the cook first if you know them."));
    return SuspectedCause{DriftCause::FeedsNotLogged,
                          kPriorFeeds,
                          -lost,
                          std::max({0.5 * lost, kForgotten * since.burned, 0.5 * split}),
                          -1,
                          words};
}

std::optional<SuspectedCause> delivery(const DriftCase &c, const Since &since)
{
    if (since.counted || since.received <= 0)
        return std::nullopt;
    const Lot lot = c.books.lots.value(c.lot);
    const DeliveryTrust trust = trustIn(lot.measuredBy);
    double shortBy = 0;
    double scatter = trust.scatter;
    QString theirs;
    if (lot.supplier && lot.measuredBy == Measure::Claimed) {
        const Expectation expected =
            expectedShort(supplierRecord(c.books, *lot.supplier, c.wording));
        shortBy = expected.mean;
        scatter = std::hypot(scatter, expected.scale);
        if (expected.deliveries > 0 && shortBy > 0.01)
            theirs = QString(QStringLiteral("; this supplier is ") +
                             formatNumber(100 * shortBy, 0, localeOf(c.wording)) +
                             QStringLiteral(" % short on average"));
    }
    const bool less = c.found.drift().base() < 0;
    return SuspectedCause{DriftCause::Delivery,
                          trust.prior,
                          -shortBy * since.received,
                          scatter * since.received,
                          0,
                          QString((less ? QStringLiteral("The delivery was short: ")
                                        : QStringLiteral("More came than was booked: ")) +
                                  QString::fromLatin1(trust.words) + theirs + QLatin1Char('.'))};
}

std::optional<SuspectedCause> splits(const DriftCase &c, const Since &since)
{
    if (since.byPieces <= 0)
        return std::nullopt;
    const Lot lot = c.books.lots.value(c.lot);
    const SplitWeight split = splitWeight(c.books, lot);
    const double sd = std::hypot(split.error, kOftenWeighed) * since.byPieces;
    const double drift = kilograms(c.found.drift());
    const double explains = (since.byPieces - drift) / since.pieces;
    const bool heavier = drift < 0;
    const QString weighed = lot.splitMass
                                ? QString(times(lot.splitsWeighed, "split was", "splits were") +
                                          QStringLiteral(" weighed"))
                                : QStringLiteral("none was weighed");
    QString words = (heavier ? QStringLiteral("Splits heavier than booked: ")
                             : QStringLiteral("Splits lighter than booked: ")) +
                    weighed;
    if (explains > 0)
        words += QString(QStringLiteral("; at ") + massWords(explains, c.wording, 1) +
                         QStringLiteral(" of dry wood each, not ") +
                         massWords(since.byPieces / since.pieces, c.wording, 1) +
                         QStringLiteral(", it would be right"));
    return SuspectedCause{DriftCause::SplitWeight,
                          kPriorSplits,
                          0,
                          sd,
                          0,
                          QString(words + QStringLiteral(". Weigh ten more."))};
}

// The count is of the wood as it lies; the moisture that turns it into dry wood is the last read.
std::optional<SuspectedCause> driedOut(const DriftCase &c)
{
    if (!c.moistureNow || !c.counted.moisture || *c.moistureNow >= *c.counted.moisture)
        return std::nullopt;
    const Species species = c.books.species.value(c.books.lots.value(c.lot).species);
    const Moisture used = *c.counted.moisture;
    const double counted = kilograms(c.counted.dry);
    const double factor =
        c.way == CountWay::Weight
            ? (1 + dryFraction(used)) / (1 + dryFraction(*c.moistureNow))
            : (1 - shrinkageAt(species, used)) / (1 - shrinkageAt(species, *c.moistureNow));
    const double hidden = counted * (factor - 1);
    if (hidden < 0.01 * counted)
        return std::nullopt;
    const auto sample = latestMoisture(c.books, c.lot, c.now);
    const QString read = sample
                             ? QString(QStringLiteral("read ") +
                                       daysWords(((c.now - sample->time).base() + 43200) / 86400) +
                                       QStringLiteral(" ago"))
                             : QStringLiteral("never read");
    return SuspectedCause{DriftCause::DriedOut,
                          kPriorDried,
                          -hidden,
                          std::max(0.5 * hidden, 0.01 * counted),
                          -1,
                          QString(QStringLiteral("Dried out: its moisture was ") + read +
                                  QStringLiteral(", and about ") +
                                  moistureWords(*c.moistureNow, c.wording) +
                                  QStringLiteral(" is expected by now, so the same wood ") +
                                  (c.way == CountWay::Weight ? QStringLiteral("weighs less")
                                                             : QStringLiteral("takes less room")) +
                                  QStringLiteral(". Read it before correcting."))};
}

SuspectedCause elsewhere(const DriftCase &c)
{
    const double sd =
        std::max(kTakenScatter * kilograms(std::max(c.found.book, c.found.counted)), kLeastTaken);
    if (c.found.drift().base() < 0)
        return {DriftCause::TakenOrLost,
                kPriorTaken,
                0,
                sd,
                -1,
                QStringLiteral("Taken, sold, moved to another rick or lost without an entry.")};
    return {DriftCause::PutThere,
            kPriorTaken,
            0,
            sd,
            1,
            QStringLiteral("Put there without an entry: from another rick, or a delivery that was "
                           "not received.")};
}

} // namespace

int feedsMissing(const Books &books, RecordId cook, Instant now)
{
    QVector<Instant> times;
    for (const Feed &feed : books.feeds)
        if (feed.cook == cook && feed.time <= now)
            times << feed.time;
    std::sort(times.begin(), times.end());
    std::vector<double> gaps;
    for (qsizetype i = 1; i < times.size(); ++i)
        if (const qint64 gap = (times.at(i) - times.at(i - 1)).base(); gap > kSameFeeding)
            gaps.push_back(static_cast<double>(gap));
    if (gaps.size() < 3) // too few to know its rhythm
        return 0;
    const double middle = statistics::median(gaps).value();
    int missing = 0;
    for (const double gap : gaps)
        if (gap >= 2 * middle)
            missing += static_cast<int>(std::lround(gap / middle)) - 1;
    return missing;
}

QVector<SuspectedCause> suspectedCauses(const DriftCase &drift)
{
    const Since since = sinceKnown(drift);
    QVector<SuspectedCause> all{counting(drift)};
    for (const auto &cause : {unloggedFeeds(drift, since), delivery(drift, since),
                              splits(drift, since), driedOut(drift)})
        if (cause)
            all << *cause;
    all << elsewhere(drift);
    return all;
}

} // namespace rickyard::domain
