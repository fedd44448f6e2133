#include "views/events/load_list_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_words.h"
#include "views/events/event_words.h"
#include "views/widgets/caution_note.h"

#include <QCoreApplication>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString loadTr(const char *text)
{
    return QCoreApplication::translate("LoadListView", text);
}

QLocale loadLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

QString splitText(int splits)
{
    if (splits <= 0)
        return {};
    return splits == 1 ? loadTr("1 split") : loadTr("%1 splits").arg(splits);
}

} // namespace

QString LoadRow::line() const
{
    QStringList parts;
    for (const QString &part : {splits, weight, boxes})
        if (!part.isEmpty())
            parts << part;
    QString text = what;
    if (!place.isEmpty())
        text += QString(QStringLiteral(" (") + place + QLatin1Char(')'));
    if (!parts.isEmpty())
        text += QString(QStringLiteral(": ") + parts.join(QStringLiteral(", ")));
    return text;
}

LoadWords::LoadWords(const Books &books, const LoadSheet &sheet)
    : m_books(books), m_sheet(sheet), m_local(books.yard().timeZone)
{
}

QString LoadWords::mass(Mass mass) const
{
    return show(mass, m_books.yard().metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                loadLocale(), 0);
}

QString LoadWords::when(Instant time) const
{
    return QString(m_local.dayText(m_local.dateOf(time)) + QStringLiteral(", ") +
                   clockText(m_books, time));
}

QString LoadWords::boxText(std::optional<int> boxes) const
{
    if (!boxes)
        return {};
    return *boxes == 1 ? loadTr("1 box") : loadTr("%1 boxes").arg(*boxes);
}

QString LoadWords::chanceWords(double chance)
{
    if (chance >= 0.985)
        return loadTr("99 such cooks of 100 (99 %)");
    if (chance >= 0.925)
        return loadTr("19 such cooks of 20 (95 %)");
    return chance >= 0.85 ? loadTr("9 such cooks of 10 (90 %)")
                          : loadTr("8 such cooks of 10 (80 %)");
}

QString LoadWords::title() const
{
    if (m_sheet.about.table == TableId::Event)
        return loadTr("Load list: %1").arg(m_books.events.value(m_sheet.event).name);
    const LoadFire &fire = m_sheet.fires.first();
    return loadTr("Load list: %1, %2")
        .arg(m_books.pits.value(fire.list.pit).name, m_local.dayText(m_local.dateOf(fire.light)));
}

QString LoadWords::subtitle() const
{
    QStringList parts;
    const auto event = m_books.events.constFind(m_sheet.event);
    if (event != m_books.events.constEnd()) {
        if (m_sheet.about.table != TableId::Event)
            parts << loadTr("For %1").arg(event->name);
        if (!event->place.isEmpty())
            parts << event->place;
        parts << loadTr("Serving %1").arg(when(event->start));
    }
    return parts.join(QStringLiteral(" · "));
}

QString LoadWords::amount() const
{
    QString text = m_sheet.splits > 0
                       ? loadTr("%1 (%2)").arg(splitText(m_sheet.splits), mass(m_sheet.wood))
                       : mass(m_sheet.wood);
    if (m_sheet.boxes)
        text += loadTr(" in %1").arg(boxText(m_sheet.boxes));
    return text;
}

LoadGroup LoadWords::fireGroup(const LoadFire &fire) const
{
    LoadGroup group;
    group.heading = loadTr("%1: light %2, for %3")
                        .arg(m_books.pits.value(fire.list.pit).name, when(fire.light),
                             formatDuration(fire.length));
    LoadPhase before = LoadPhase::Reserve;
    bool first = true;
    for (const LoadLine &line : fire.list.lines) {
        const Lot lot = m_books.lots.value(line.lot);
        LoadRow row;
        row.what = loadTr("%1: %2").arg(loadPhaseWord(line.phase), lot.name);
        row.place = lot.place;
        row.splits = splitText(line.splits);
        row.weight = mass(line.asIs);
        // Boxes are whole ones of a phase, whichever ricks fill them.
        if (first || line.phase != before)
            row.boxes = boxText(fire.boxesOf(line.phase, m_sheet.box));
        first = false;
        before = line.phase;
        row.key = QStringLiteral("%1-%2-%3-%4")
                      .arg(fire.cook)
                      .arg(static_cast<int>(line.phase))
                      .arg(line.lot)
                      .arg(line.asIs.base() / 1000000);
        group.rows << row;
    }
    return group;
}

LoadGroup LoadWords::otherGroup() const
{
    LoadGroup group;
    group.heading = loadTr("Besides the wood");
    if (m_sheet.kindling) {
        LoadRow row;
        row.what = m_sheet.fires.size() == 1
                       ? loadTr("Kindling for 1 fire")
                       : loadTr("Kindling for %1 fires").arg(m_sheet.fires.size());
        row.weight = mass(*m_sheet.kindling);
        row.key = QStringLiteral("kindling-%1").arg(m_sheet.kindling->base() / 1000000);
        group.rows << row;
    }
    for (const LoadFire &fire : m_sheet.fires) {
        const PlannedCook cook = m_books.plannedCooks.value(fire.cook);
        if (cook.foods.isEmpty() && !cook.foodMass)
            continue;
        LoadRow row;
        row.what = loadTr("Food for %1: %2")
                       .arg(m_books.pits.value(cook.pit).name,
                            cook.foods.isEmpty() ? loadTr("not named") : cook.foods);
        if (cook.foodMass)
            row.weight = mass(*cook.foodMass);
        row.key = QStringLiteral("food-%1").arg(cook.id);
        group.rows << row;
    }
    return group;
}

QVector<LoadGroup> LoadWords::groups() const
{
    QVector<LoadGroup> groups;
    for (const LoadFire &fire : m_sheet.fires)
        groups << fireGroup(fire);
    if (const LoadGroup other = otherGroup(); !other.rows.isEmpty())
        groups << other;
    return groups;
}

QString LoadWords::shortage() const
{
    if (m_sheet.missing <= Heat())
        return {};
    const Wording wording = wordingOf(m_books);
    QString text = m_sheet.missingWood
                       ? loadTr("Wood is short: %1 of dry wood is missing (%2).")
                             .arg(mass(*m_sheet.missingWood), heatWords(m_sheet.missing, wording))
                       : loadTr("Wood is short: there is no dry wood, and %1 is wanted.")
                             .arg(heatWords(m_sheet.missing, wording));
    Heat expected;
    QStringList pits;
    for (const LoadFire &fire : m_sheet.fires) {
        expected += fire.list.missingExpected;
        if (fire.list.missing > Heat())
            pits << m_books.pits.value(fire.list.pit).name;
    }
    text += expected > Heat()
                ? loadTr(" Even what the fires should take is not there (%1).")
                      .arg(pits.join(QStringLiteral(", ")))
                : loadTr(" What the fires should take is there; part of the reserve is not (%1).")
                      .arg(pits.join(QStringLiteral(", ")));
    if (!m_sheet.dryingLots.isEmpty()) {
        QStringList names;
        for (const RecordId lot : m_sheet.dryingLots)
            names << m_books.lots.value(lot).name;
        text += loadTr(" Likely dry by then: %1. Split a piece and read it before counting on it.")
                    .arg(names.join(QStringLiteral(", ")));
    }
    return text;
}

Role LoadWords::barRole(const LoadBar &bar) const
{
    return bar.overdue || !bar.placed ? Role::Act : Role::Watch;
}

QString LoadWords::bar(const LoadBar &bar) const
{
    QString task = taskPhrase(m_books, bar.task);
    task[0] = task.at(0).toUpper();
    QString text =
        bar.overdue ? loadTr("%1: overdue since %2") : loadTr("%1: due %2, overdue by then");
    text = text.arg(task, bar.due.isValid() ? m_local.dayText(bar.due) : loadTr("long ago"));
    text += bar.towing ? loadTr("; do not tow before it is done.")
                       : loadTr("; do not light before it is done.");
    if (bar.placed)
        text += (bar.agreed ? loadTr(" Placed for %1.") : loadTr(" A time is proposed: %1."))
                    .arg(when(*bar.placed));
    return text;
}

QStringList LoadWords::notes() const
{
    QStringList notes;
    if (!m_sheet.box)
        notes << loadTr("How much wood a box holds is not entered (Settings, the yard): no boxes "
                        "are counted.");
    if (!m_sheet.kindling)
        notes << loadTr("Kindling is not counted: how much a fire takes is not entered.");
    if (m_sheet.earlierFires > 0)
        notes << (m_sheet.earlierFires == 1
                      ? loadTr("The wood that 1 earlier cook should take is left on the ricks.")
                      : loadTr("The wood that %1 earlier cooks should take is left on the ricks.")
                            .arg(m_sheet.earlierFires));
    for (const LoadFire &fire : m_sheet.fires)
        if (!notes.contains(fire.list.basis) && !fire.list.basis.isEmpty())
            notes << fire.list.basis;
    return notes;
}

QStringList LoadWords::trailer() const
{
    QStringList lines;
    if (!m_sheet.towed)
        return lines;
    const LoadTrailer &trailer = m_sheet.trailer;
    if (!trailer.total) {
        lines << loadTr("What the trailer weighs without wood and food is not entered, so its "
                        "weight is not known. The wood is %1 of it.")
                     .arg(mass(trailer.wood));
        return lines;
    }
    lines << loadTr("Trailer, pits and gear: %1").arg(mass(*trailer.empty));
    lines << loadTr("Wood: %1").arg(mass(trailer.wood));
    if (trailer.kindling)
        lines << loadTr("Kindling: %1").arg(mass(*trailer.kindling));
    if (trailer.food > Mass())
        lines << loadTr("Food: %1").arg(mass(trailer.food));
    if (trailer.foodUnknown > 0)
        lines << (trailer.foodUnknown == 1
                      ? loadTr("The food of 1 cook has no weight and is not counted.")
                      : loadTr("The food of %1 cooks has no weight and is not counted.")
                            .arg(trailer.foodUnknown));
    lines << loadTr("Together %1, of which the wood is %2 %.")
                 .arg(mass(*trailer.total))
                 .arg(std::lround(100 * trailer.woodShare().value_or(0)));
    return lines;
}

QString LoadWords::trailerVerdict() const
{
    if (!m_sheet.towed || !m_sheet.trailer.total)
        return {};
    const auto over = m_sheet.trailer.over();
    if (!over)
        return loadTr("The most it may weigh is not entered.");
    const QString limit = mass(*m_sheet.trailer.limit);
    if (*over > Mass())
        return loadTr("%1 over the limit entered (%2). Take less along, or go twice.")
            .arg(mass(*over), limit);
    return loadTr("%1 under the limit entered (%2), if the weights entered are right.")
        .arg(mass(-*over), limit);
}

QString LoadWords::towingCaution()
{
    return loadTr("Weigh the loaded trailer on a scale before it goes on a road: wet wood, water "
                  "and gear add up, and weight behind the axle makes a trailer sway. Never tow "
                  "with fire, coals or warm ash on board. Tie the wood down, check hitch, chains, "
                  "tyres, lights and brakes.");
}

Paper LoadWords::paper() const
{
    Paper paper;
    paper.title = title();
    paper.subtitle = subtitle();
    QStringList first{amount(), loadTr("Enough for %1.").arg(chanceWords(m_sheet.chance))};
    if (const QString missing = shortage(); !missing.isEmpty())
        first << missing;
    paper.sections << PaperSection{loadTr("To load"), first, false};
    QStringList bars;
    for (const LoadBar &one : m_sheet.bars)
        bars << bar(one);
    if (!bars.isEmpty())
        paper.sections << PaperSection{loadTr("Before lighting or towing"), bars, true};
    for (const LoadGroup &group : groups()) {
        QStringList lines;
        for (const LoadRow &row : group.rows)
            lines << row.line();
        if (lines.isEmpty())
            lines << loadTr("There is no dry wood to pull.");
        paper.sections << PaperSection{group.heading, lines, !group.rows.isEmpty()};
    }
    if (m_sheet.towed) {
        QStringList lines = trailer();
        if (const QString verdict = trailerVerdict(); !verdict.isEmpty())
            lines << verdict;
        lines << towingCaution() << CautionNote::closing();
        paper.sections << PaperSection{loadTr("Trailer"), lines, false};
    }
    paper.sections << PaperSection{loadTr("Rests on"), notes(), false};
    return paper;
}

} // namespace rickyard::views
