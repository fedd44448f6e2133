// What stands in the way of lighting a pit or towing to an event: the one place that says so, for
// Fire, the load list, Upkeep and the command line. It reports what the records say; an empty list
// does not mean that anything is in order.
#pragma once

#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

enum class BlockKind {
    Overdue,     // a task that blocks it is due by then
    Underway,    // a visit on the pit was started and is not finished
    Curing,      // a visit is done, its cure is not over
    OpenFinding, // what a visit of a blocking task found is still open
};

struct Block {
    BlockKind kind = BlockKind::Overdue;
    RecordId task = 0;
    RecordId visit = 0;           // Underway, Curing
    RecordId finding = 0;         // OpenFinding
    RecordId pit = 0;             // 0: trailer or kit
    QString name;                 // "Grease drain"
    QString why;                  // "6 cooks since the last time, limit 5"
    std::optional<Instant> until; // it lifts by itself then (Curing)
    // Lifted for this cook or event alone, with a reason that is kept.
    RecordId overriddenBy = 0;
    QString overrideReason;

    [[nodiscard]] bool stands() const { return overriddenBy == 0; }
};

// An override without a cook and an event is for a fire that nobody planned; it counts for so long
// after it was written. Our own rule, no source.
constexpr Duration kOverrideHolds = Duration::ofBase(12 * 3600);

// Blocks of a lighting of the pit at `at`, of the planned cook it fulfils (0: none). `upkeep` is
// the answer as of `now`; for a later `at`, what falls due by then by the middle of its spread
// counts when nothing is done before.
QVector<Block> lightingBlocks(const Books &books, const UpkeepAnswer &upkeep, RecordId pit,
                              Instant at, Instant now, RecordId plannedCook = 0);
// Blocks of leaving for an event with the trailer at `at`: tasks of the trailer and of every pit
// that goes along. Not asked for events that are not towed.
QVector<Block> towingBlocks(const Books &books, const UpkeepAnswer &upkeep, RecordId event,
                            Instant at, Instant now);

// What is blocked next, for a list: each pit that could be lit now (without a plan), then each
// pit's next planned lighting and the next departure with the trailer, by time. Acts without a
// block are left out; a block that was overridden is there with its reason.
struct BlockedAct {
    bool towing = false;
    RecordId pit = 0;         // lit
    RecordId plannedCook = 0; // 0: now, without a plan
    RecordId event = 0;       // towed to, or of the planned cook
    Instant at;
    QVector<Block> blocks;
};
QVector<BlockedAct> blockedActs(const Books &books, const UpkeepAnswer &upkeep, Instant now);

// Overrides that let this cook be lit: named for the plan it fulfils, or written for a fire that
// nobody planned within kOverrideHolds before it, on its pit. By id.
QVector<Override> litDespite(const Books &books, const Cook &cook);

// "Lit all the same, without: grease drain on Barge. Guests were waiting"
QString despiteWords(const Books &books, const Override &record);

// "Grease drain: 6 cooks since the last time, limit 5", and the override with its reason.
QString blockWords(const Block &block);

} // namespace rickyard::domain
