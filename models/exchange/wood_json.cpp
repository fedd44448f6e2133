// The wood answer for programs; see answers_json.h.
#include "models/domain/wood/sale.h"
#include "models/exchange/answers_json.h"
#include "models/exchange/json_values.h"

#include <QJsonArray>

namespace rickyard::exchange {

using domain::Books;
using domain::RecordId;
using domain::TableId;

namespace {

QString readinessKey(domain::Readiness readiness)
{
    switch (readiness) {
    case domain::Readiness::Dry:
        return QStringLiteral("dry");
    case domain::Readiness::Wet:
        return QStringLiteral("wet");
    case domain::Readiness::NoReading:
        return QStringLiteral("no_reading");
    case domain::Readiness::OnHold:
        return QStringLiteral("on_hold");
    case domain::Readiness::NeverBurn:
        return QStringLiteral("never_burn");
    case domain::Readiness::Empty:
        return QStringLiteral("empty");
    }
    return {};
}

QJsonObject stockJson(const domain::Stock &stock, const Books &books)
{
    JsonFields json;
    json.mass("dry", stock.dryMass);
    json.mass("ready_dry", stock.readyDryMass);
    json.heat("ready", stock.readyHeat);
    json.volume("ready_stacked", stock.readyStacked);
    json.heat("waiting", stock.waitingHeat);
    QJsonArray lots;
    for (const domain::LotStock &lot : stock.lots) {
        JsonFields row;
        row.record("lot", books, TableId::Lot, lot.lot);
        row.mass("dry", lot.dryMass);
        row.moisture("moisture", lot.moisture);
        row.moisture("moisture_half_width", lot.moistureHalfWidth);
        row.time("read_at", lot.readAt);
        row.set("readiness", readinessKey(lot.readiness));
        row.mass("as_is", lot.asIs);
        row.number("splits", lot.splits);
        row.volume("solid", lot.solid);
        row.volume("stacked", lot.stacked);
        row.heat("net", lot.netHeat);
        row.set("moisture_assumed", lot.moistureAssumed);
        lots.append(row.object());
    }
    json.set("lots", lots);
    return json.object();
}

QJsonObject useJson(const domain::PlannedUse &use, const Books &books)
{
    JsonFields json;
    json.record("planned_cook", books, TableId::PlannedCook, use.plannedCook);
    json.record("event", books, TableId::Event, use.event);
    json.record("pit", books, TableId::Pit, use.pit);
    json.time("light", use.light);
    json.heat("expected", use.middle);
    json.heat("lower", use.lower);
    json.heat("upper", use.upper);
    json.temperature("outside", use.outside);
    json.set("weather_basis", use.weatherBasis);
    json.set("assumed", QJsonArray::fromStringList(use.standIns));
    json.heat("stock_after", use.stockAfter);
    json.set("chance_short", use.chanceShort);
    json.set("short", use.shortOf);
    return json.object();
}

QJsonObject riskJson(const domain::WoodRisk &risk, const Books &books)
{
    JsonFields json;
    json.record("event", books, TableId::Event, risk.event);
    json.record("planned_cook", books, TableId::PlannedCook, risk.plannedCook);
    json.set("name", risk.name);
    json.day("day", risk.day);
    json.set("chance_short", risk.chance);
    json.set("chance_error", risk.error);
    json.heat("mean_short", risk.meanShort);
    json.heat("short_when_short", risk.whenShort);
    json.set("far_off", risk.farOff);
    json.set("next_season", risk.nextSeason);
    return json.object();
}

void setMoney(JsonFields &json, const char *key, std::optional<domain::Money> money)
{
    json.number(key, money ? std::optional(money->toDouble() / 100.0) : std::nullopt);
}

QJsonObject choiceJson(const domain::WoodOrderChoice &order, const domain::WoodAnswer &answer,
                       const Books &books)
{
    const domain::WoodSource &source = answer.sources.at(order.source);
    JsonFields json;
    json.record("supplier", books, TableId::Supplier, order.supplier);
    json.record("offer", books, TableId::Offer, source.offer);
    json.record("species", books, TableId::Species, order.species);
    json.set("green", order.green);
    json.set("unit", domain::unitName(source.unit, true));
    json.set("units", order.units);
    json.set("in_words", order.amount);
    json.volume("stacked", order.stacked);
    json.day("order_by", order.orderBy);
    json.day("arrival_likely", order.arrival);
    json.set("keeps_accepted_risk", order.keeps);
    QJsonArray lost;
    for (const int i : order.lost)
        lost.append(answer.risks.at(i).name);
    json.set("too_late_for", lost);
    json.set("most_at_risk", order.worst);
    json.set("chance_short", order.chance);
    json.set("chance_error", order.chanceError);
    json.set("chance_ordered_today", order.chanceToday);
    json.set("chance_week_late", order.chanceLate);
    json.number("chance_20_degF_colder", order.chanceColder);
    setMoney(json, "cost", order.cost);
    QJsonArray loads;
    for (const domain::WoodLoad &load : order.loads) {
        JsonFields row;
        row.day("order_by", load.order);
        row.set("units", load.units);
        row.set("straight_to_event", load.straightToEvent);
        loads.append(row.object());
    }
    json.set("loads", loads);
    json.set("lead_time_d", source.leadDays);
    json.set("lead_record", source.leadRecord);
    json.set("lead_assumed", source.leadAssumed);
    return json.object();
}

QJsonArray choicesJson(const QVector<domain::WoodOrderChoice> &orders,
                       const domain::WoodAnswer &answer, const Books &books)
{
    QJsonArray rows;
    for (const domain::WoodOrderChoice &order : orders)
        rows.append(choiceJson(order, answer, books));
    return rows;
}

QJsonArray courseJson(const QVector<domain::StockPoint> &course)
{
    QJsonArray rows;
    for (const domain::StockPoint &point : course) {
        JsonFields row;
        row.day("day", point.day);
        row.heat("expected", point.middle);
        row.heat("lower", point.lower);
        row.heat("upper", point.upper);
        rows.append(row.object());
    }
    return rows;
}

QJsonValue textbookJson(const domain::ReorderPointCheck &check)
{
    if (!check.known)
        return QJsonValue::Null;
    JsonFields json;
    json.heat("point", check.point);
    json.set("chance_by_own_lead_times", check.simulated);
    json.set("misleading", check.misleading);
    json.set("in_words", check.words);
    json.set("note", check.note);
    return json.object();
}

} // namespace

QJsonObject toJson(const domain::WoodAnswer &answer, const Books &books)
{
    JsonFields json;
    json.set("headline", toJson(answer.headline));
    json.set("stock", stockJson(answer.stock, books));
    QJsonArray uses;
    for (const domain::PlannedUse &use : answer.uses)
        uses.append(useJson(use, books));
    json.set("planned_cooks", uses);
    QJsonArray risks;
    for (const domain::WoodRisk &risk : answer.risks)
        risks.append(riskJson(risk, books));
    json.set("risks", risks);
    json.set("accepted_risk", answer.acceptedRisk);
    json.set("needed", answer.needed);
    json.set("course", courseJson(answer.course));
    json.set("course_with_order", courseJson(answer.withOrder));
    json.set("orders", choicesJson(answer.orders, answer, books));
    json.set("green_orders", choicesJson(answer.greenOrders, answer, books));
    json.set("textbook", textbookJson(answer.crossCheck));
    json.set("notes", QJsonArray::fromStringList(answer.notes));
    json.record("first_short_event", books, TableId::Event, answer.firstShortEvent);
    json.record("first_short_cook", books, TableId::PlannedCook, answer.firstShortCook);
    json.day("order_by", answer.orderBy);
    json.record("supplier", books, TableId::Supplier, answer.supplier);
    json.volume("order_stacked", answer.amount);
    json.set("order_in_words", answer.amountInUnit);
    json.set("lead_time_d", domain::hours(answer.leadTime) / 24.0);
    json.heat("missing", answer.missing);
    return json.object();
}

} // namespace rickyard::exchange
