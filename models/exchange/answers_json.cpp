#include "models/exchange/answers_json.h"

#include "models/domain/answers/wording.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/json_values.h"

#include <QJsonArray>

#include <cmath>

namespace rickyard::exchange {

using domain::Books;
using domain::RecordId;
using domain::TableId;

namespace {

QJsonObject columnsJson(const domain::HeatColumns &columns)
{
    JsonFields json;
    json.set("shell_J", columns[domain::ShellColumn]);
    json.set("wind_J", columns[domain::WindColumn]);
    json.set("lighting_J", columns[domain::LightingColumn]);
    json.set("food_J", columns[domain::FoodColumn]);
    json.set("rain_J", columns[domain::RainColumn]);
    return json.object();
}

QJsonObject verdictJson(const domain::WatchVerdict &verdict)
{
    JsonFields json;
    json.set("score", verdict.score);
    json.set("cusum_more", verdict.up);
    json.set("cusum_less", verdict.down);
    json.set("limit", verdict.limit);
    json.set("flag", flagKey(verdict.flag));
    json.set("raised", verdict.raised);
    json.set("held_back", verdict.heldBack);
    json.set("expected_sd_fraction", verdict.forecast.relativeSd);
    json.set("degrees_of_freedom", verdict.forecast.dof);
    return json.object();
}

QJsonValue excessJson(const std::optional<domain::WatchExcess> &excess, const Books &books)
{
    if (!excess)
        return {};
    JsonFields json;
    json.record("since_cook", books, TableId::Cook, excess->since);
    json.set("cooks", excess->cooks);
    json.set("percent", excess->percent);
    json.set("lower_percent", excess->lower);
    json.set("upper_percent", excess->upper);
    json.set("extra_per_cook_J", excess->joulesPerCook);
    return json.object();
}

QJsonObject cookJson(const domain::CookFuel &cook, const Books &books)
{
    JsonFields json;
    json.record("cook", books, TableId::Cook, cook.cook);
    json.record("pit", books, TableId::Pit, cook.pit);
    json.time("lit", cook.lit);
    json.set("finished", cook.finished);
    json.mass("dry", cook.dryMass);
    json.heat("actual", cook.netHeat);
    json.set("length_h", domain::hours(cook.length));
    json.number("degree_hours_K_h", cook.degreeHours);
    json.temperature("mean_pit", cook.meanPit);
    json.temperature("mean_outside", cook.meanOutside);
    json.speed("mean_wind", cook.meanWind);
    json.heat("expected", cook.expected);
    json.heat("lower", cook.lower);
    json.heat("upper", cook.upper);
    json.number("excess_fraction", cook.excess);
    json.set("above_interval", cook.high());
    json.set("watch", cook.verdict ? QJsonValue(verdictJson(*cook.verdict)) : QJsonValue());
    json.set("known_good", cook.knownGood);
    json.set("doubt_sd_fraction", std::sqrt(cook.doubt));
    json.set("cost_usd", cook.priced > 0 ? QJsonValue(cook.cost / 100.0) : QJsonValue());
    json.set("balance", columnsJson(cook.columns));
    json.set("missing", QJsonArray::fromStringList(cook.missing));
    json.set("assumptions", QJsonArray::fromStringList(cook.assumptions));
    return json.object();
}

QJsonObject pitJson(const domain::PitFuel &pit, const Books &books)
{
    JsonFields json;
    json.record("pit", books, TableId::Pit, pit.pit);
    json.set("cooks_judged", pit.cooksEver);
    json.set("cooks_judged_since_mending", pit.cooks);
    json.set("excess_of_last_fraction", pit.excessOfLast);
    json.heat("extra_of_last", pit.extraOfLast);
    json.set("cusum_more", pit.up);
    json.set("cusum_less", pit.down);
    json.set("limit", pit.limit);
    json.set("flag", flagKey(pit.flag));
    json.record("raised_by", books, TableId::Cook, pit.raisedBy);
    json.set("climb", excessJson(pit.climb, books));
    json.set("fall", excessJson(pit.fall, books));
    json.set("held_back", pit.heldBack);
    json.heat("hourly", pit.hourly);
    json.time("mended", pit.mended);
    json.time("found_sound", pit.foundSound);
    return json.object();
}

QJsonObject taskJson(const domain::TaskDue &task, const Books &books)
{
    JsonFields json;
    json.record("task", books, TableId::UpkeepTask, task.task);
    json.record("pit", books, TableId::Pit, task.pit);
    json.time("last_done", task.lastDone);
    QJsonArray meters;
    for (const domain::Meter &meter : task.meters)
        meters.append(QJsonObject{{QStringLiteral("unit"), meter.unit},
                                  {QStringLiteral("used"), meter.used},
                                  {QStringLiteral("limit"), meter.limit}});
    json.set("meters", meters);
    json.set("worst_used_fraction", task.worst);
    json.day("due", task.due);
    json.day("due_with_chance_10", task.dueEarly);
    json.day("due_with_chance_90", task.dueLate);
    json.set("due_certain", task.certain);
    if (task.due.isValid())
        json.time("overdue_from", task.dueAt);
    else
        json.time("overdue_from", std::optional<domain::Instant>());
    QJsonArray lightings;
    for (const domain::LightingChance &lighting : task.lightings) {
        JsonFields row;
        row.record("planned_cook", books, TableId::PlannedCook, lighting.plannedCook);
        row.time("light", lighting.light);
        row.set("chance_overdue", lighting.chance);
        lightings.append(row.object());
    }
    json.set("lightings", lightings);
    json.set("due_reason", task.dueReason);
    json.set("overdue", task.overdue);
    json.set("put_off", task.snoozed);
    json.day("put_off_until", task.snoozedUntil);
    json.set("put_off_reason", task.snoozeReason);
    json.record("before_event", books, TableId::Event, task.beforeEvent);
    json.record("before_cook", books, TableId::PlannedCook, task.beforeCook);
    json.set("blocks_next_cook", task.blocksNextCook);
    return json.object();
}

QJsonObject placementJson(const domain::Placement &placement, const Books &books)
{
    JsonFields json;
    json.record("task", books, TableId::UpkeepTask, placement.task);
    json.time("start", placement.start);
    json.time("end", placement.end);
    json.time("free_from", placement.freeFrom);
    json.set("late", placement.late);
    json.set("booked", placement.booked);
    return json.object();
}

} // namespace

QString flagKey(domain::WatchFlag flag)
{
    switch (flag) {
    case domain::WatchFlag::More:
        return QStringLiteral("more");
    case domain::WatchFlag::Less:
        return QStringLiteral("less");
    case domain::WatchFlag::None:
        break;
    }
    return QString();
}

QJsonObject toJson(const domain::Headline &headline)
{
    JsonFields json;
    json.set("sentence", headline.plainSentence());
    json.set("figure", headline.figure);
    json.set("figure_unit", headline.figureUnit);
    json.set("standing", domain::standingKey(headline.standing));
    QJsonArray reasons;
    for (const domain::Reason &reason : headline.reasons) {
        JsonFields row;
        row.set("label", reason.label);
        row.set("value", reason.value);
        row.set("assumption", reason.assumption);
        if (reason.link.id != 0) {
            row.set("table", domain::specOf(reason.link.table).key);
            row.set("id", reason.link.id);
        }
        reasons.append(row.object());
    }
    json.set("reasons", reasons);
    return json.object();
}

QJsonObject toJson(const domain::FuelAnswer &answer, const Books &books)
{
    JsonFields json;
    json.set("headline", toJson(answer.headline));
    QJsonArray cooks;
    for (const domain::CookFuel &cook : answer.cooks)
        cooks.append(cookJson(cook, books));
    json.set("cooks", cooks);
    QJsonArray pits;
    for (const domain::PitFuel &pit : answer.pits)
        pits.append(pitJson(pit, books));
    json.set("pits", pits);
    return json.object();
}

QJsonObject toJson(const domain::UpkeepAnswer &answer, const Books &books)
{
    JsonFields json;
    json.set("headline", toJson(answer.headline));
    QJsonArray tasks;
    for (const domain::TaskDue &task : answer.tasks)
        tasks.append(taskJson(task, books));
    json.set("tasks", tasks);
    QJsonArray placements;
    for (const domain::Placement &placement : answer.placements)
        placements.append(placementJson(placement, books));
    json.set("placements", placements);
    QJsonArray unplaced;
    for (const domain::Unplaced &left : answer.unplaced) {
        JsonFields row;
        row.record("task", books, TableId::UpkeepTask, left.task);
        row.set("why", left.why);
        row.set("help", left.help);
        unplaced.append(row.object());
    }
    json.set("unplaced", unplaced);
    return json.object();
}

QJsonObject toJson(const QMap<domain::RecordId, domain::SeasoningForecast> &lots,
                   const Books &books)
{
    QJsonArray rows;
    const auto date = [](std::optional<qint64> day) {
        return day ? domain::dateOfDay(*day) : QDate();
    };
    for (auto it = lots.cbegin(); it != lots.cend(); ++it) {
        const domain::SeasoningForecast &forecast = *it;
        const domain::SeasoningPoint now = forecast.at(forecast.today);
        JsonFields row;
        row.record("lot", books, TableId::Lot, it.key());
        row.set("in_words", domain::readyWords(forecast));
        row.set("moisture_now_pct_dry", now.middle);
        row.set("moisture_now_low_pct_dry", now.low);
        row.set("moisture_now_high_pct_dry", now.high);
        row.set("chance_dry_now", forecast.chanceNow);
        row.day("dry_with_chance_10", date(forecast.readyEarly));
        row.day("dry_with_chance_50", date(forecast.readyLikely));
        row.day("dry_with_chance_90", date(forecast.readyLate));
        row.set("drying_time_d", forecast.tau);
        row.set("drying_time_low_d", forecast.tauLow);
        row.set("drying_time_high_d", forecast.tauHigh);
        row.set("readings", forecast.readings.size());
        row.set("assumptions", QJsonArray::fromStringList(forecast.assumptions));
        rows.append(row.object());
    }
    JsonFields json;
    json.set("lots", rows);
    return json.object();
}

QJsonObject toJson(const domain::Answers &answers, const Books &books)
{
    JsonFields json;
    const domain::Yard yard = books.yard();
    json.set("format", QStringLiteral("rickyard-answers"));
    json.set("version", 1);
    json.time("as_of", answers.asOf);
    json.set("yard", yard.name);
    json.set("time_zone", yard.timeZone);
    json.set("invented", yard.invented);
    json.set("wood", toJson(answers.wood, books));
    json.set("fuel", toJson(answers.fuel, books));
    json.set("upkeep", toJson(answers.upkeep, books));
    json.set("seasoning", toJson(answers.seasoning, books));
    return json.object();
}

} // namespace rickyard::exchange
