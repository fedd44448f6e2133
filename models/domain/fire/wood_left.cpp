#include "models/domain/fire/wood_left.h"

#include "models/domain/fire/feedings.h"
#include "models/domain/upkeep/burns.h"
#include "models/domain/wood/heat_value.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr Duration kLighting = Duration::ofBase(1800);
constexpr Duration kWindow = Duration::ofBase(3 * 3600);
constexpr qsizetype kLeastFeedings = 5;
constexpr double kPaceChanges = 0.1;
constexpr double kTenPercent = 1.2815515655446004; // normal quantile at 90 %

struct Feeding {
    Instant first;
    Instant last;
    double joules = 0;
};

// Of the cook, by time, with the heat that the ledger says.
QVector<Feeding> feedingsOf(const Books &books, const Cook &cook, Instant now)
{
    struct Entry {
        Instant time;
        double joules;
    };
    QVector<Entry> entries;
    for (const Movement &m : books.movements) {
        if (m.kind != MovementKind::Burned || m.cook != cook.id || m.time > now)
            continue;
        const Species species = books.species.value(books.lots.value(m.lot).species);
        const Moisture moisture = m.moisture.value_or(Moisture::ofBase(20000));
        entries << Entry{m.time, netHeatOf(-m.dryMass, moisture, analysisOf(species)).toDouble()};
    }
    std::stable_sort(entries.begin(), entries.end(),
                     [](const Entry &a, const Entry &b) { return a.time < b.time; });
    QVector<Feeding> feedings;
    for (const Entry &entry : std::as_const(entries)) {
        if (feedings.isEmpty() || entry.time - feedings.last().last > kOneFeeding)
            feedings << Feeding{entry.time, entry.time, 0};
        feedings.last().last = entry.time;
        feedings.last().joules += entry.joules;
    }
    return feedings;
}

qsizetype firstOfWindow(const QVector<Feeding> &feedings, const Cook &cook, Instant now)
{
    const qsizetype byCount = std::max<qsizetype>(0, feedings.size() - kLeastFeedings);
    qsizetype first = feedings.size() - 1;
    while (first > 0 && (first > byCount || now - feedings.at(first - 1).first <= kWindow) &&
           feedings.at(first - 1).first - cook.lit >= kLighting)
        --first;
    return first;
}

} // namespace

std::optional<FeedPace> feedPace(const Books &books, const Cook &cook, Instant now)
{
    const QVector<Feeding> feedings = feedingsOf(books, cook, now);
    if (feedings.size() < 3 || now - cook.lit < kLighting)
        return std::nullopt;
    const qsizetype first = firstOfWindow(feedings, cook, now);
    const qsizetype gaps = feedings.size() - 1 - first;
    if (gaps < 2)
        return std::nullopt;
    // What went in at the start of a gap burned through it.
    const double seconds = (feedings.last().first - feedings.at(first).first).toDouble();
    double joules = 0;
    QVector<double> rates;
    for (qsizetype i = first; i + 1 < feedings.size(); ++i) {
        joules += feedings.at(i).joules;
        rates << feedings.at(i).joules /
                     std::max(60.0, (feedings.at(i + 1).first - feedings.at(i).first).toDouble());
    }
    if (seconds <= 0 || joules <= 0)
        return std::nullopt;
    const double rate = joules / seconds;
    double squares = 0;
    for (const double r : std::as_const(rates))
        squares += std::pow(r - rate, 2);
    const auto n = static_cast<double>(gaps);
    FeedPace pace;
    pace.lastFeed = feedings.last().last;
    pace.interval = Duration::rounded(seconds / n);
    pace.perHour = Heat::rounded(rate * 3600);
    pace.error = std::sqrt(squares / (n - 1) / n) / rate;
    pace.feedings = static_cast<int>(gaps) + 1;
    return pace;
}

WoodLeft woodLeft(Heat left, double leftError, const FeedPace &pace, Instant now,
                  std::optional<Instant> end, bool endAssumed)
{
    WoodLeft result;
    result.end = end;
    result.endAssumed = endAssumed;
    // The last feed still burns until the next is due.
    const double feeding = std::max(0.0, (pace.lastFeed + pace.interval - now).toDouble()) / 3600.0;
    const double hoursLeft = std::max(0.0, left.toDouble()) / pace.perHour.toDouble();
    const double sigma =
        std::sqrt(pace.error * pace.error + leftError * leftError + kPaceChanges * kPaceChanges);
    const double spread = std::exp(kTenPercent * sigma);
    result.lasts = durationFromHours(feeding + hoursLeft);
    result.least = durationFromHours(feeding + hoursLeft / spread);
    result.most = durationFromHours(feeding + hoursLeft * spread);
    if (!end)
        return result;
    const double toGo = std::max(0.0, (*end - now).toDouble() / 3600.0 - feeding);
    result.need = Heat::rounded(pace.perHour.toDouble() * toGo);
    if (toGo <= 0)
        return result;
    result.chanceEnough =
        hoursLeft <= 0 ? 0.0 : 0.5 * std::erfc(-std::log(hoursLeft / toGo) / sigma * M_SQRT1_2);
    return result;
}

std::optional<ExpectedEnd> expectedEnd(const Books &books, const Cook &cook, Instant now)
{
    for (const Burn &burn : burnsOf(books, cook.pit, now))
        if (burn.cook == cook.id && burn.running)
            return ExpectedEnd{burn.end, burn.endAssumed};
    return std::nullopt;
}

} // namespace rickyard::domain
