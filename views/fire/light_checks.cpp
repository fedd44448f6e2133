#include "views/fire/light_checks.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/blocks.h"
#include "views/fire/fire_words.h"

#include <cstdlib>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {
constexpr qint64 kNearSeconds = 18LL * 3600;
constexpr Duration kStaysWarm = Duration::ofBase(8LL * 3600);
} // namespace

std::optional<PlannedCook> plannedNear(const Books &books, RecordId pit, Instant now)
{
    std::optional<PlannedCook> nearest;
    const auto distance = [now](const PlannedCook &p) {
        return std::llabs((p.light - now).base());
    };
    for (const PlannedCook &planned : books.plannedCooks) {
        if (planned.cancelled || planned.pit != pit || distance(planned) > kNearSeconds)
            continue;
        bool fulfilled = false;
        for (const Cook &cook : books.cooks)
            fulfilled = fulfilled || cook.planned == planned.id;
        if (!fulfilled && (!nearest || distance(planned) < distance(*nearest)))
            nearest = planned;
    }
    return nearest;
}

QString plannedWords(const Books &books, const PlannedCook &planned, Instant now)
{
    const FireWords words(books);
    const QString what = planned.event             ? books.events.value(*planned.event).name
                         : planned.foods.isEmpty() ? QStringLiteral("planned cook")
                                                   : planned.foods;
    return QStringLiteral("%1, to be lit %2 for %3")
        .arg(what, words.clock(planned.light, now), formatDuration(planned.length));
}

QVector<Blocking> blockingTasks(const Books &books, const UpkeepAnswer &upkeep, RecordId pit,
                                Instant now, RecordId plannedCook)
{
    QVector<Blocking> blocking;
    for (const Block &block : lightingBlocks(books, upkeep, pit, now, now, plannedCook))
        if (block.stands())
            blocking.append({block.task, blockWords(block)});
    return blocking;
}

StartKind likelyStart(const Books &books, RecordId pit, Instant now)
{
    for (const Cook &cook : books.cooks)
        if (cook.pit == pit && cook.fireOut && *cook.fireOut <= now &&
            now - *cook.fireOut < kStaysWarm)
            return StartKind::Warm;
    return StartKind::Cold;
}

} // namespace rickyard::views
