#include "models/domain/plan/order_question.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/order_supply.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kScore90 = 1.6448536269514722; // standard normal, 5 % above
constexpr int kSpellGap = 3; // days between fires that still lie in one stretch of weather
constexpr int kMarginDays = 14;
constexpr int kMostLeadDays = 180;
constexpr int kLookBackDays = 365;
constexpr int kLeastLookBack = 30;

void say(BookQuestion &asked, const QString &label, const QString &value, bool assumption,
         Link link = {})
{
    asked.reasons << Reason{label, value, assumption, link};
}

int dayIndex(const QuestionGrounds &grounds, const BookQuestion &asked, Instant light)
{
    const QDate day = dayOf(light, zoneOf(grounds.wording));
    return static_cast<int>(std::max<qint64>(0, asked.today.daysTo(day)));
}

QString nameOf(const Books &books, const PlannedUse &use)
{
    const QString event = books.events.value(use.event).name;
    if (!event.isEmpty())
        return event;
    const QString pit = books.pits.value(use.pit).name;
    return pit.isEmpty() ? QStringLiteral("the cook")
                         : QString(QStringLiteral("the cook on ") + pit);
}

// Its event's index, made when it is met first: uses come by day, so events do too.
int eventOf(const PlannedUse &use, BookQuestion &asked, const QuestionGrounds &grounds)
{
    for (qsizetype i = 0; i < asked.events.size(); ++i)
        if (use.event != 0 && asked.events.at(i).event == use.event)
            return static_cast<int>(i);
    const QString name = nameOf(grounds.books, use);
    asked.events << AskedEvent{use.event, use.plannedCook,
                               dayOf(use.light, zoneOf(grounds.wording)), name};
    asked.question.eventNames << name;
    return static_cast<int>(asked.events.size()) - 1;
}

void addNeeds(BookQuestion &asked, const QuestionGrounds &grounds)
{
    StockPlan &plan = asked.question.plan;
    int spell = -1;
    int last = -kSpellGap - 1;
    for (const PlannedUse &use : grounds.uses) {
        StockNeed need;
        need.day = dayIndex(grounds, asked, use.light);
        if (need.day >= kMostDaysAhead) {
            asked.notes << QString(
                nameOf(grounds.books, use) +
                QStringLiteral(" is more than two years ahead and is left out."));
            continue;
        }
        spell += need.day - last > kSpellGap ? 1 : 0;
        last = need.day;
        const NeedSpread spread = needSpread(use);
        need.event = eventOf(use, asked, grounds);
        need.heat = spread.heat;
        need.key = use.plannedCook;
        need.group = static_cast<int>(use.pit);
        need.shared = spread.ofPit;
        need.spell = spell;
        need.spellShared = spread.ofWeather;
        plan.needs.push_back(need);
        asked.question.colder.push_back(use.middle > Heat() ? std::max(1.0, use.colder / use.middle)
                                                            : 1.0);
    }
    plan.events = static_cast<int>(asked.events.size());
}

void addUnplanned(BookQuestion &asked, const QuestionGrounds &grounds)
{
    const UnplannedFires found = unplannedFires(grounds.books, grounds.fuel, grounds.now);
    asked.question.plan.unplanned = found.fires;
    const QString label = QStringLiteral("Fires nobody plans");
    if (found.days == 0)
        say(asked, label,
            QStringLiteral("not foreseen: the log does not yet tell planned cooks from others"),
            true, {TableId::Cook, 0});
    else if (found.count == 0)
        say(asked, label,
            QString(QStringLiteral("none in the last ") + daysWords(found.days) +
                    QStringLiteral(", so none foreseen")),
            true, {TableId::Cook, 0});
    else
        say(asked, label,
            QString(
                QString::number(found.count) + QStringLiteral(" in the last ") +
                daysWords(found.days) + QStringLiteral(", about ") +
                heatWords(heatFromSeasonedPounds(found.fires.heat.quantile(0.5)), grounds.wording) +
                QStringLiteral(" each; as many are foreseen")),
            true, {TableId::Cook, 0});
}

// The days whose events an order is to serve, from the slowest supplier of dry wood.
int servedDays(const BookQuestion &asked, const QuestionGrounds &grounds)
{
    double lead = 0;
    double slow = 0;
    bool any = false;
    for (const OfferTerms &terms : asked.question.offers) {
        if (terms.green)
            continue;
        any = true;
        lead = std::max(lead, terms.load.leadDays.quantile(0.5));
        slow = std::max(slow, terms.load.leadDays.quantile(1.0 - asked.question.acceptedRisk));
    }
    if (!any)
        lead = slow = hours(grounds.books.yard().orderLead) / 24.0;
    lead = std::min<double>(lead, kMostLeadDays);
    slow = std::min<double>(slow, kMostLeadDays);
    return static_cast<int>(std::ceil(std::max(lead + kServedDays, slow + kMarginDays)));
}

// First day of the first season that starts after the days served: what is served is dry wood's.
int nextSeasonDay(QDate today, int month, int served)
{
    QDate start(today.year(), month, 1);
    while (today.daysTo(start) <= served)
        start = start.addYears(1);
    return static_cast<int>(today.daysTo(start));
}

void setSeason(BookQuestion &asked, const QuestionGrounds &grounds)
{
    OrderQuestion &question = asked.question;
    const int served = servedDays(asked, grounds);
    question.judgedUntil = served + 1;
    say(asked, QStringLiteral("Looked ahead"),
        QString(QStringLiteral("events until ") +
                shortDay(asked.today.addDays(served), grounds.wording) +
                QStringLiteral(" can ask for an order; later ones only take wood")),
        true);
    const auto month = grounds.books.yard().seasonMonth;
    if (month && *month >= 1 && *month <= 12) {
        question.nextSeason = nextSeasonDay(asked.today, *month, served);
        const QDate start = asked.today.addDays(question.nextSeason);
        say(asked, QStringLiteral("Next season"),
            QString(QStringLiteral("from ") + shortDay(start, grounds.wording) +
                    QStringLiteral(": green wood is judged by its events alone")),
            false, {TableId::Yard, 1});
        const bool booked =
            std::any_of(asked.events.cbegin(), asked.events.cend(),
                        [&](const AskedEvent &event) { return event.day >= start; });
        if (!booked)
            asked.notes << QStringLiteral("Nothing is booked for the season that starts on %1, so "
                                          "no green wood is proposed for it.")
                               .arg(shortDay(start, grounds.wording));
    }
    int last = std::max(served, kServedDays);
    for (const StockNeed &need : question.plan.needs)
        last = std::max(last, need.day);
    question.plan.days = last + 1;
}

void setRoom(BookQuestion &asked, const QuestionGrounds &grounds)
{
    const auto room = grounds.books.yard().woodRoom;
    if (room) {
        asked.question.storage = cubicFeet(*room);
        say(asked, QStringLiteral("Room for wood"), stackedWords(*room, grounds.wording), false,
            {TableId::Yard, 1});
    } else {
        say(asked, QStringLiteral("Room for wood"), QStringLiteral("not given, so taken as enough"),
            true, {TableId::Yard, 1});
    }
}

// Mean need of a day over the days served, and its scatter from day to day.
void setDailyNeed(BookQuestion &asked)
{
    const OrderQuestion &question = asked.question;
    const int days = std::max(1, std::min(question.judgedUntil, question.plan.days));
    std::vector<double> byDay(static_cast<size_t>(days), 0.0);
    for (size_t i = 0; i < question.plan.needs.size(); ++i) {
        const StockNeed &need = question.plan.needs[i];
        if (need.day < days)
            byDay[static_cast<size_t>(need.day)] += need.heat.quantile(0.5);
    }
    double sum = 0;
    double squares = 0;
    for (const double x : byDay) {
        sum += x;
        squares += x * x;
    }
    const StockUnplanned &fires = question.plan.unplanned;
    const double fire = fires.chance > 0 ? fires.heat.quantile(0.5) : 0.0;
    const double mean = sum / days;
    asked.dailyNeed = mean + fires.chance * fire;
    asked.dailyNeedSd = std::sqrt(std::max(0.0, squares / days - mean * mean) +
                                  fires.chance * (1 - fires.chance) * fire * fire);
}

// Booked events that lie in the past though none of their cooks was lit, and cooks set for after
// their event: moved by mistake, or not marked done.
void notePast(BookQuestion &asked, const QuestionGrounds &grounds)
{
    const Books &books = grounds.books;
    QStringList past;
    for (const Event &event : books.events) {
        const bool open = event.state == EventState::Booked || event.state == EventState::Proposed;
        if (!open || event.end >= grounds.now)
            continue;
        bool unlit = false;
        bool lit = false;
        for (const PlannedCook &planned : books.plannedCooks) {
            if (planned.event != event.id || planned.cancelled)
                continue;
            const bool was =
                std::any_of(books.cooks.cbegin(), books.cooks.cend(),
                            [&](const Cook &cook) { return cook.planned == planned.id; });
            (was ? lit : unlit) = true;
        }
        if (unlit && !lit)
            past << event.name;
    }
    if (!past.isEmpty())
        asked.notes << QString(
            past.join(QStringLiteral(", ")) +
            (past.size() == 1 ? QStringLiteral(" lies in the past")
                              : QStringLiteral(" lie in the past")) +
            QStringLiteral(" and no fire of it was logged: cooks that are over take no wood. Mark "
                           "it done, or correct its day."));
    for (const PlannedUse &use : grounds.uses)
        if (books.events.contains(use.event) && books.events.value(use.event).end < use.light)
            asked.notes << QString(QStringLiteral("A cook for ") + nameOf(books, use) +
                                   QStringLiteral(" is set for after the event: it still counts. "
                                                  "Correct the day of one of them."));
}

void sayNeeds(BookQuestion &asked, const QuestionGrounds &grounds)
{
    const Wording &wording = grounds.wording;
    if (grounds.uses.isEmpty())
        return;
    const PlannedUse &last = grounds.uses.last();
    say(asked, QStringLiteral("Booked cooks"),
        QString(QString::number(grounds.uses.size()) + QStringLiteral(" until ") +
                shortDay(dayOf(last.light, zoneOf(wording)), wording)),
        false, {TableId::PlannedCook, 0});
    Heat sum;
    double strays = 0;
    for (const PlannedUse &use : grounds.uses) {
        sum += use.middle;
        strays = std::max(strays, use.weatherSd);
    }
    say(asked, QStringLiteral("Their expected use"),
        QString(heatWords(sum, wording) +
                QStringLiteral(" in all; each cook strays by its own interval, with its pit and "
                               "with the weather of its days")),
        false, {TableId::PlannedCook, 0});
    QStringList said;
    const auto once = [&](const QString &label, const QString &basis, bool assumed, RecordId cook) {
        if (basis.isEmpty() || said.contains(basis))
            return;
        said << basis;
        say(asked, label, basis, assumed, {TableId::PlannedCook, cook});
    };
    for (const PlannedUse &use : grounds.uses) {
        for (const QString &standIn : use.standIns)
            once(QStringLiteral("Assumed"), standIn, true, use.plannedCook);
        once(QStringLiteral("Use reckoned from"), use.useBasis, false, use.plannedCook);
        once(QStringLiteral("Weather"), use.weatherBasis, false, use.plannedCook);
    }
    if (strays > 0)
        say(asked, QStringLiteral("Weather of the day"),
            QString(QStringLiteral("makes a cook stray by another ") +
                    QString::number(std::lround(100 * strays)) + QStringLiteral(" % at most")),
            false);
}

RecordId mostWanted(const QuestionGrounds &grounds)
{
    QMap<RecordId, Heat> asked;
    for (const PlannedUse &use : grounds.uses)
        if (const auto species = grounds.books.plannedCooks.value(use.plannedCook).species)
            asked[*species] += use.middle;
    RecordId most = 0;
    for (auto it = asked.cbegin(); it != asked.cend(); ++it)
        if (most == 0 || *it > asked.value(most))
            most = it.key();
    return most;
}

void noteSources(BookQuestion &asked)
{
    bool unknown = false;
    for (const WoodSource &source : asked.sources)
        unknown = unknown || source.species == 0;
    if (unknown)
        asked.notes << QStringLiteral("No wood is known that the suppliers bring: it is reckoned "
                                      "as oak. Name the wood you want at a planned cook, or enter "
                                      "an offer.");
}

} // namespace

NeedSpread needSpread(const PlannedUse &use)
{
    const double middle = seasonedPounds(use.middle);
    const double upper = seasonedPounds(use.upper);
    if (!(middle > 0))
        return {};
    const double lower = use.lower > Heat() ? seasonedPounds(use.lower) : middle * middle / upper;
    const double own = std::log(upper / lower) / (2 * kScore90);
    const double sd = std::hypot(own, use.weatherSd);
    if (!std::isfinite(sd))
        return {Spread::fixed(sd), 0, 0}; // refused when it is drawn
    if (sd < 1e-9)
        return {Spread::fixed(middle), 0, 0};
    const double median = std::sqrt(lower * upper);
    const double reach = std::exp(kScore90 * sd);
    NeedSpread need;
    need.heat = Spread::lognormal(median, median / reach, median * reach);
    need.ofWeather = std::pow(use.weatherSd / sd, 2);
    need.ofPit = use.normShare * (1.0 - need.ofWeather);
    return need;
}

UnplannedFires unplannedFires(const Books &books, const FuelAnswer &fuel, Instant now)
{
    UnplannedFires found;
    const Instant begin = now - durationFromHours(24.0 * kLookBackDays);
    std::optional<Instant> first;
    for (const Cook &cook : books.cooks)
        if (cook.planned && cook.lit <= now && (!first || cook.lit < *first))
            first = cook.lit;
    if (!first)
        return found;
    const Instant from = std::max(*first, begin);
    const int days = static_cast<int>(hours(now - from) / 24.0);
    if (days < kLeastLookBack)
        return found;
    found.days = days;
    std::vector<std::pair<double, double>> sizes;
    for (const CookFuel &cook : fuel.cooks) {
        if (cook.lit < from || cook.lit > now || books.cooks.value(cook.cook).planned)
            continue;
        ++found.count;
        if (cook.finished && cook.netHeat > Heat())
            sizes.emplace_back(seasonedPounds(cook.netHeat), 1.0);
    }
    if (sizes.empty())
        return found;
    found.fires.chance = std::min(0.5, found.count / static_cast<double>(days));
    found.fires.heat = Spread::sample(sizes);
    return found;
}

BookQuestion orderQuestion(const QuestionGrounds &grounds, double acceptedRisk)
{
    BookQuestion asked;
    asked.today = dayOf(grounds.now, zoneOf(grounds.wording));
    asked.question.acceptedRisk = acceptedRisk;
    // The yard's own seed, always the same: the answer changes with the books and not with luck.
    asked.question.seed = static_cast<quint64>(grounds.books.yard().id);
    DryingAhead drying(grounds.books, grounds.now);
    addNeeds(asked, grounds);
    addLots(asked, grounds);
    addDeliveries(asked, grounds, drying);
    sayNeeds(asked, grounds);
    addUnplanned(asked, grounds);
    asked.sources = woodSources(grounds.books, mostWanted(grounds), grounds.wording, asked.notes);
    addOffers(asked, grounds, drying);
    setSeason(asked, grounds);
    setRoom(asked, grounds);
    setDailyNeed(asked);
    notePast(asked, grounds);
    noteSources(asked);
    return asked;
}

} // namespace rickyard::domain
