#include "models/exchange/ics/calendar_zone.h"

#include <QMap>
#include <QVector>

#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

namespace rickyard::exchange {

namespace {

// A rule is written for good when it has held, or is known to hold, for so many years.
constexpr int kYearsOfRule = 10;

struct ClockChange {
    QDateTime at; // wall clock before the change; digits as UTC
    int from = 0; // seconds east of UTC
    int to = 0;
    bool daylight = false;
    QString name;

    [[nodiscard]] auto kind() const { return std::make_tuple(from, to, daylight, name); }
};

QVector<ClockChange> clockChanges(const QTimeZone &zone, QDate from, QDate to)
{
    QVector<ClockChange> changes;
    const auto all = zone.transitions(from.startOfDay(Qt::UTC), to.startOfDay(Qt::UTC));
    for (const QTimeZone::OffsetData &data : all) {
        ClockChange change;
        change.from = zone.offsetFromUtc(data.atUtc.addSecs(-1));
        change.to = data.offsetFromUtc;
        change.daylight = data.daylightTimeOffset != 0;
        change.name = data.abbreviation;
        change.at =
            QDateTime::fromSecsSinceEpoch(data.atUtc.toSecsSinceEpoch() + change.from, Qt::UTC);
        if (change.from != change.to)
            changes << change;
    }
    return changes;
}

struct YearlyRule {
    int month = 0;
    int weekday = 0; // Qt's, 1 Monday
    int which = 0;   // 1 the first of the month, -1 the last
};

bool follows(const ClockChange &change, const YearlyRule &rule, QTime time)
{
    const QDate day = change.at.date();
    const int which =
        rule.which > 0 ? (day.day() + 6) / 7 : (day.day() + 7 > day.daysInMonth() ? -1 : 0);
    return day.month() == rule.month && day.dayOfWeek() == rule.weekday && which == rule.which &&
           change.at.time() == time;
}

// The rule that all of these follow, one a year, for the years of a rule at least.
std::optional<YearlyRule> ruleOf(const QVector<ClockChange> &changes)
{
    if (changes.size() <= kYearsOfRule)
        return std::nullopt;
    const QDate first = changes.first().at.date();
    const QTime time = changes.first().at.time();
    for (const int which : {(first.day() + 6) / 7, -1}) {
        const YearlyRule rule{first.month(), first.dayOfWeek(), which};
        bool all = true;
        for (int i = 0; i < changes.size() && all; ++i)
            all = follows(changes.at(i), rule, time) &&
                  changes.at(i).at.date().year() == first.year() + i;
        if (all)
            return rule;
    }
    return std::nullopt;
}

ComponentHandle observance(const ClockChange &change)
{
    ComponentHandle part(change.daylight ? icalcomponent_new_xdaylight()
                                         : icalcomponent_new_xstandard());
    icalcomponent_add_property(part.get(), icalproperty_new_dtstart(digitsOf(change.at)));
    icalcomponent_add_property(part.get(), icalproperty_new_tzoffsetfrom(change.from));
    icalcomponent_add_property(part.get(), icalproperty_new_tzoffsetto(change.to));
    if (!change.name.isEmpty())
        icalcomponent_add_property(part.get(),
                                   icalproperty_new_tzname(change.name.toUtf8().constData()));
    return part;
}

void addRule(icalcomponent *part, const YearlyRule &rule)
{
    static constexpr std::array<const char *, 7> days = {"MO", "TU", "WE", "TH", "FR", "SA", "SU"};
    const QByteArray text = "FREQ=YEARLY;BYMONTH=" + QByteArray::number(rule.month) +
                            ";BYDAY=" + QByteArray::number(rule.which) +
                            days.at(static_cast<std::size_t>(rule.weekday - 1));
    icalcomponent_add_property(
        part, icalproperty_new_rrule(icalrecurrencetype_from_string(text.constData())));
}

} // namespace

ComponentHandle zoneComponent(const QTimeZone &zone, QDate from, QDate to)
{
    ComponentHandle component(icalcomponent_new_vtimezone());
    icalcomponent_add_property(component.get(), icalproperty_new_tzid(zone.id().constData()));
    // From the change before the first moment on, which is a year back where clocks change.
    const QDate begin = from.addDays(-400);
    const QDate end = to.addDays(400);
    const QVector<ClockChange> changes =
        clockChanges(zone, begin, std::max(end, begin.addYears(kYearsOfRule + 3)));
    if (changes.isEmpty() || changes.first().at.date() >= from.addDays(-1)) {
        const QDateTime start = begin.startOfDay(Qt::UTC);
        ClockChange before;
        before.at = QDateTime(QDate(1970, 1, 1), QTime(0, 0), Qt::UTC);
        before.from = before.to = zone.offsetFromUtc(start);
        before.daylight = zone.isDaylightTime(start);
        before.name = zone.abbreviation(start);
        icalcomponent_add_component(component.get(), observance(before).release());
    }
    using Kind = std::tuple<int, int, bool, QString>;
    QMap<Kind, QVector<ClockChange>> kinds;
    for (const ClockChange &change : changes)
        kinds[change.kind()] << change;
    for (const QVector<ClockChange> &same : kinds) {
        const auto rule = ruleOf(same);
        ComponentHandle part = observance(same.first());
        if (rule)
            addRule(part.get(), *rule);
        for (qsizetype i = 1; !rule && i < same.size(); ++i) {
            if (same.at(i).at.date() > end)
                break;
            icaldatetimeperiodtype when{};
            when.time = digitsOf(same.at(i).at);
            icalcomponent_add_property(part.get(), icalproperty_new_rdate(when));
        }
        icalcomponent_add_component(component.get(), part.release());
    }
    return component;
}

} // namespace rickyard::exchange
