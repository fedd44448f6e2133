#include "models/exchange/upkeep_json.h"

#include "models/domain/upkeep/ash.h"
#include "models/domain/upkeep/blocks.h"
#include "models/exchange/answers_json.h"
#include "models/exchange/json_values.h"

#include <QJsonArray>

namespace rickyard::exchange {

using domain::Books;
using domain::TableId;

namespace {

QString blockKey(domain::BlockKind kind)
{
    switch (kind) {
    case domain::BlockKind::Overdue:
        return QStringLiteral("overdue");
    case domain::BlockKind::Underway:
        return QStringLiteral("underway");
    case domain::BlockKind::Curing:
        return QStringLiteral("curing");
    case domain::BlockKind::OpenFinding:
        return QStringLiteral("open_finding");
    }
    return {};
}

QJsonObject blockJson(const domain::Block &block, const Books &books)
{
    JsonFields json;
    json.set("kind", blockKey(block.kind));
    json.record("task", books, TableId::UpkeepTask, block.task);
    json.record("visit", books, TableId::Visit, block.visit);
    json.record("finding", books, TableId::Finding, block.finding);
    json.record("pit", books, TableId::Pit, block.pit);
    json.set("why", block.why);
    json.time("until", block.until);
    json.set("stands", block.stands());
    json.set("override_reason", block.overrideReason);
    return json.object();
}

QJsonObject actJson(const domain::BlockedAct &act, const Books &books)
{
    JsonFields json;
    json.set("act", act.towing ? QStringLiteral("towing") : QStringLiteral("lighting"));
    json.record("pit", books, TableId::Pit, act.pit);
    json.record("planned_cook", books, TableId::PlannedCook, act.plannedCook);
    json.record("event", books, TableId::Event, act.event);
    json.time("at", act.at);
    QJsonArray blocks;
    for (const domain::Block &block : act.blocks)
        blocks.append(blockJson(block, books));
    json.set("blocks", blocks);
    return json.object();
}

QJsonObject ashJson(const domain::Answers &answers, const Books &books)
{
    const domain::LocalTime local(books.yard().timeZone);
    QJsonArray loads;
    for (const domain::AshState &state : domain::ashStates(books, answers.asOf, local)) {
        JsonFields row;
        row.record("load", books, TableId::AshLoad, state.load);
        row.record("pit", books, TableId::Pit, state.pit);
        row.set("can", state.can);
        row.set("tipped", state.tipped);
        row.set("tipped_early", state.tippedEarly);
        row.time("not_to_be_tipped_before", state.notBefore);
        row.set("in_words", state.words);
        loads.append(row.object());
    }
    QJsonArray pits;
    for (const domain::Pit &pit : books.pits) {
        if (pit.retired)
            continue;
        const auto ash = domain::ashInPit(books, answers.fuel, pit.id, answers.asOf, local);
        JsonFields row;
        row.record("pit", books, TableId::Pit, pit.id);
        row.mass("ash", ash.ash);
        row.time("since", ash.since);
        row.set("cooks", ash.cooks);
        row.set("cooks_without_wood", ash.withoutWood);
        row.set("in_words", ash.words);
        pits.append(row.object());
    }
    JsonFields json;
    json.set("loads", loads);
    json.set("pits", pits);
    return json.object();
}

} // namespace

QJsonObject upkeepReport(const domain::Answers &answers, const Books &books)
{
    QJsonObject report = toJson(answers.upkeep, books);
    QJsonArray acts;
    for (const domain::BlockedAct &act : domain::blockedActs(books, answers.upkeep, answers.asOf))
        acts.append(actJson(act, books));
    report.insert(QStringLiteral("blocked"), acts);
    report.insert(QStringLiteral("ash"), ashJson(answers, books));
    return report;
}

} // namespace rickyard::exchange
