#include "views/fire/run_facts.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/feedings.h"

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

void readFeeds(const Books &books, const Cook &cook, Instant now, RunFacts &facts)
{
    QVector<const Feed *> feeds;
    for (const Feed &feed : books.feeds)
        if (feed.cook == cook.id && feed.time <= now)
            feeds << &feed;
    std::stable_sort(feeds.begin(), feeds.end(),
                     [](const Feed *a, const Feed *b) { return a->time < b->time; });
    QVector<Instant> times;
    for (const Feed *feed : std::as_const(feeds)) {
        times << feed->time;
        facts.lastFeed = feed->time;
        facts.lastLot = feed->lot;
        facts.pieces += feed->pieces;
    }
    facts.feedings = feedingStarts(times);
    if (facts.feedings.size() < 2)
        return;
    const Duration all = facts.feedings.last() - facts.feedings.first();
    facts.interval = all * (1.0 / static_cast<double>(facts.feedings.size() - 1));
    facts.nextFeed = *facts.lastFeed + *facts.interval;
}

QString readinessWords(const LotStock &stock, const Lot &lot)
{
    switch (stock.readiness) {
    case Readiness::Dry:
        return QStringLiteral("dry enough");
    case Readiness::Wet:
        return QStringLiteral("too wet");
    case Readiness::NoReading:
        return QStringLiteral("no moisture reading");
    case Readiness::OnHold:
        return QStringLiteral("on hold (%1)").arg(lot.holdReason);
    case Readiness::NeverBurn:
    case Readiness::Empty:
        break;
    }
    return QStringLiteral("empty");
}

} // namespace

RunFacts runFacts(const Books &books, const Cook &cook, Instant now)
{
    RunFacts facts;
    facts.lit = cook.lit;
    readFeeds(books, cook, now, facts);
    for (const Movement &m : books.movements) {
        if (m.kind != MovementKind::Burned || m.cook != cook.id || m.time > now)
            continue;
        facts.asIs += m.asIs.value_or(Mass());
        facts.assumed = facts.assumed || m.assumed;
    }
    for (const CookTemperature &t : books.temperatures)
        if (t.cook == cook.id && t.time <= now &&
            (!facts.lastTemperature || t.time >= facts.lastTemperature->time))
            facts.lastTemperature = t;
    // The wood's heat does not depend on the weather, whose records are many: leave them out.
    Books slim = books;
    slim.weather.clear();
    facts.heat = cookSummary(slim, WeatherSeries(slim), cook, now).netHeat;
    return facts;
}

Duration aheadOfClock(const Books &books, RecordId cook, Instant now)
{
    Instant latest = now;
    const auto look = [&](const auto &shelf) {
        for (const auto &record : shelf)
            if (record.cook == cook)
                latest = std::max(latest, record.time);
    };
    look(books.feeds);
    look(books.temperatures);
    look(books.notes);
    return latest - now;
}

QVector<LotChoice> lotChoices(const Books &books, Instant now)
{
    const Wording wording = wordingOf(books);
    QVector<LotChoice> choices;
    const Stock stock = stockAt(books, now);
    for (const LotStock &s : stock.lots) {
        if (s.readiness == Readiness::Empty || s.readiness == Readiness::NeverBurn)
            continue;
        const Lot lot = books.lots.value(s.lot);
        QString text = QString(lot.name + QStringLiteral(": ") + readinessWords(s, lot));
        if (s.moisture)
            text += QString(QStringLiteral(", ") + moistureWords(*s.moisture, wording));
        choices.append({s.lot, s.readiness, s.netHeat, text});
    }
    const auto rank = [](Readiness r) {
        return r == Readiness::Dry         ? 0
               : r == Readiness::NoReading ? 1
               : r == Readiness::Wet       ? 2
                                           : 3;
    };
    std::stable_sort(choices.begin(), choices.end(), [&](const LotChoice &a, const LotChoice &b) {
        return rank(a.readiness) < rank(b.readiness);
    });
    return choices;
}

QVector<Cook> burningCooks(const Books &books)
{
    QVector<Cook> burning;
    for (const Cook &cook : books.cooks)
        if (!cook.fireOut)
            burning << cook;
    std::stable_sort(burning.begin(), burning.end(),
                     [](const Cook &a, const Cook &b) { return a.lit < b.lit; });
    return burning;
}

} // namespace rickyard::views
