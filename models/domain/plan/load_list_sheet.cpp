#include "models/domain/plan/load_list_sheet.h"

#include "models/domain/upkeep/local_time.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

struct SheetWords {
    Q_DECLARE_TR_FUNCTIONS(LoadList)
};

PlannedFire fireFor(const Books &books, const WeatherSeries &weather, const PlannedUse &use,
                    const PlannedCook &cook)
{
    PlannedFire fire;
    fire.pit = cook.pit;
    fire.length = cook.length;
    fire.target =
        cook.target.value_or(books.pits.value(cook.pit).usualTemperature.value_or(usualPit()));
    fire.outside = use.outside;
    fire.wind =
        cook.wind ? cook.wind : weather.climatology(cook.light, cook.light + cook.length).wind;
    fire.food = cook.foodMass;
    return fire;
}

bool wanted(const PlannedUse &use, Link about)
{
    return about.table == TableId::Event ? use.event == about.id : use.plannedCook == about.id;
}

QString whyNothing(const Books &books, Link about)
{
    if (!contains(books, about.table, about.id))
        return SheetWords::tr("It was deleted meanwhile.");
    if (about.table != TableId::Event)
        return SheetWords::tr("This cook is cancelled, lit or over: there is nothing to load.");
    const bool any =
        std::any_of(books.plannedCooks.begin(), books.plannedCooks.end(),
                    [&](const PlannedCook &c) { return c.event == about.id && !c.cancelled; });
    return any ? SheetWords::tr("Its cooks are lit or over already, or the event is done or "
                                "cancelled: there is nothing to load.")
               : SheetWords::tr("No cook is planned for it yet. Plan its cooks: each says how much "
                                "wood it takes.");
}

// What a joule of the wood pulled weighs; else of any dry lot.
std::optional<double> massPerJoule(const QVector<LoadFire> &fires, const Stock &stock)
{
    double joules = 0;
    double mass = 0;
    for (const LoadFire &fire : fires)
        for (const LoadLine &line : fire.list.lines) {
            joules += line.heat.toDouble();
            mass += line.asIs.toDouble();
        }
    for (const LotStock &lot : stock.lots)
        if (joules <= 0 && lot.readiness == Readiness::Dry && lot.asIs && lot.netHeat > Heat()) {
            joules = lot.netHeat.toDouble();
            mass = lot.asIs->toDouble();
        }
    return joules > 0 ? std::optional(mass / joules) : std::nullopt;
}

class Bars
{
public:
    Bars(const Books &books, const UpkeepAnswer &upkeep, Instant now)
        : m_books(books), m_upkeep(upkeep), m_now(now), m_local(books.yard().timeZone)
    {
    }
    void lighting(RecordId pit, Instant light)
    {
        for (const TaskDue &due : m_upkeep.tasks)
            if (m_books.tasks.value(due.task).blocksLighting && (due.pit == 0 || due.pit == pit))
                add(due, light, false);
    }
    void towing(Instant leaves)
    {
        for (const TaskDue &due : m_upkeep.tasks)
            if (m_books.tasks.value(due.task).blocksTowing)
                add(due, leaves, true);
    }
    [[nodiscard]] QVector<LoadBar> found() const { return m_bars; }

private:
    void add(const TaskDue &due, Instant by, bool towing)
    {
        const bool then = due.due.isValid() && m_local.dateOf(by) > due.due;
        if (!due.overdue && !then)
            return;
        for (const LoadBar &bar : std::as_const(m_bars))
            if (bar.task == due.task && bar.towing == towing)
                return;
        LoadBar bar;
        bar.task = due.task;
        bar.pit = due.pit;
        bar.towing = towing;
        bar.overdue = due.overdue;
        bar.due = due.due;
        for (const Placement &p : m_upkeep.placements) {
            if (p.task != due.task || std::max(p.end, p.freeFrom) > by || p.end <= m_now)
                continue;
            bar.placed = p.start;
            bar.agreed = p.booked;
            break;
        }
        m_bars << bar;
    }

    const Books &m_books;
    const UpkeepAnswer &m_upkeep;
    Instant m_now;
    LocalTime m_local;
    QVector<LoadBar> m_bars;
};

// Everything of the sheet but the wood itself.
class SheetMaker
{
public:
    SheetMaker(const Books &books, const Answers &answers, const WeatherSeries &weather,
               Instant now)
        : m_books(books), m_answers(answers), m_weather(weather), m_now(now),
          m_stock(stockAt(books, now))
    {
    }
    void pullWood(LoadSheet &sheet) const;
    void sumUp(LoadSheet &sheet) const;
    void findBars(LoadSheet &sheet) const;
    void weigh(LoadSheet &sheet) const;
    void findDrying(LoadSheet &sheet) const;

private:
    const Books &m_books;
    const Answers &m_answers;
    const WeatherSeries &m_weather;
    Instant m_now;
    Stock m_stock;
};

void SheetMaker::pullWood(LoadSheet &sheet) const
{
    const QVector<PlannedUse> &uses = m_answers.wood.uses;
    qsizetype last = -1;
    for (qsizetype i = 0; i < uses.size(); ++i)
        if (wanted(uses.at(i), sheet.about))
            last = i;
    DryWood wood(m_books, m_stock);
    for (qsizetype i = 0; i <= last; ++i) {
        const PlannedUse &use = uses.at(i);
        const QVector<BurnChoice> order = burnFirst(m_books, m_stock, uses.mid(i));
        if (!wanted(use, sheet.about)) {
            wood.burn(use.middle, order, use.event);
            ++sheet.earlierFires;
            continue;
        }
        const PlannedCook cook = m_books.plannedCooks.value(use.plannedCook);
        LoadFire fire;
        fire.cook = cook.id;
        fire.light = cook.light;
        fire.length = cook.length;
        const ExpectedUse expected =
            expectedUse(m_books, m_answers.fuel, fireFor(m_books, m_weather, use, cook));
        fire.list = wood.pull(expected, cook.pit, order, use.event, sheet.chance);
        sheet.fires << fire;
    }
}

void SheetMaker::sumUp(LoadSheet &sheet) const
{
    const auto perJoule = massPerJoule(sheet.fires, m_stock);
    const Yard yard = m_books.yard();
    sheet.box = yard.boxMass;
    if (yard.boxMass && yard.boxMass->base() > 0)
        sheet.boxes = 0;
    for (LoadFire &fire : sheet.fires) {
        sheet.wood += fire.list.asIs;
        sheet.splits += fire.list.splits;
        sheet.missing += fire.list.missing;
        if (fire.list.missing <= Heat())
            fire.missing = Mass();
        else if (perJoule)
            fire.missing = Mass::rounded(fire.list.missing.toDouble() * *perJoule);
        for (const LoadPhase phase : {LoadPhase::Lighting, LoadPhase::Hold, LoadPhase::Reserve})
            if (sheet.boxes)
                *sheet.boxes += fire.boxesOf(phase, sheet.box).value_or(0);
    }
    if (perJoule)
        sheet.missingWood = Mass::rounded(sheet.missing.toDouble() * *perJoule);
    if (yard.kindling)
        sheet.kindling = *yard.kindling * static_cast<double>(sheet.fires.size());
}

void SheetMaker::findBars(LoadSheet &sheet) const
{
    Bars bars(m_books, m_answers.upkeep, m_now);
    for (const LoadFire &fire : sheet.fires)
        bars.lighting(fire.list.pit, fire.light);
    const Event event = m_books.events.value(sheet.event);
    if (sheet.towed)
        bars.towing(event.start - event.travel.value_or(Duration()));
    sheet.bars = bars.found();
}

void SheetMaker::weigh(LoadSheet &sheet) const
{
    if (!sheet.towed)
        return;
    const Yard yard = m_books.yard();
    LoadTrailer &trailer = sheet.trailer;
    trailer.empty = yard.trailerEmpty;
    trailer.limit = yard.trailerLimit;
    trailer.wood = sheet.wood;
    trailer.kindling = sheet.kindling;
    for (const LoadFire &fire : sheet.fires) {
        const auto food = m_books.plannedCooks.value(fire.cook).foodMass;
        trailer.food += food.value_or(Mass());
        trailer.foodUnknown += food ? 0 : 1;
    }
    if (trailer.empty)
        trailer.total =
            *trailer.empty + trailer.wood + trailer.kindling.value_or(Mass()) + trailer.food;
}

void SheetMaker::findDrying(LoadSheet &sheet) const
{
    const LocalTime local(m_books.yard().timeZone);
    const QDate by = local.dateOf(sheet.fires.first().light);
    for (const LotStock &lot : m_stock.lots) {
        const auto forecast = m_answers.seasoning.constFind(lot.lot);
        if (lot.readiness != Readiness::Wet || forecast == m_answers.seasoning.constEnd() ||
            !forecast->readyLikely)
            continue;
        if (dateOfDay(*forecast->readyLikely) <= by)
            sheet.dryingLots << lot.lot;
    }
}

} // namespace

std::optional<int> LoadFire::boxesOf(LoadPhase phase, std::optional<Mass> box) const
{
    if (!box || box->base() <= 0)
        return {};
    return static_cast<int>(std::ceil(list.asIsOf(phase) / *box - 1e-9));
}

Outcome<LoadSheet> loadSheet(const Books &books, const Answers &answers,
                             const WeatherSeries &weather, Instant now, Link about, double chance)
{
    LoadSheet sheet;
    sheet.about = about;
    sheet.chance = chance;
    sheet.event = about.table == TableId::Event
                      ? about.id
                      : books.plannedCooks.value(about.id).event.value_or(0);
    sheet.towed = books.events.value(sheet.event).towed;
    const SheetMaker maker(books, answers, weather, now);
    maker.pullWood(sheet);
    if (sheet.fires.isEmpty())
        return Outcome<LoadSheet>::failed(whyNothing(books, about));
    maker.sumUp(sheet);
    maker.findBars(sheet);
    maker.weigh(sheet);
    maker.findDrying(sheet);
    return sheet;
}

QString loadPhaseWord(LoadPhase phase)
{
    switch (phase) {
    case LoadPhase::Lighting:
        return SheetWords::tr("Lighting");
    case LoadPhase::Hold:
        return SheetWords::tr("Hold");
    case LoadPhase::Reserve:
        break;
    }
    return SheetWords::tr("Reserve");
}

} // namespace rickyard::domain
