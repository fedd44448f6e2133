#include "models/domain/wood/burn_first.h"

#include "models/domain/answers/wording.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr double kLeastFreeShare = 0.05;

struct Claim {
    Heat heat;
    RecordId cook = 0;
};

// Later cooks claim the dry lots of the species they ask for, the oldest first.
QMap<RecordId, Claim> claims(const Books &books, const Stock &stock,
                             const QVector<PlannedUse> &uses)
{
    QMap<RecordId, Claim> claimed;
    for (qsizetype i = 1; i < uses.size(); ++i) {
        const PlannedUse &use = uses.at(i);
        const auto wanted = books.plannedCooks.value(use.plannedCook).species;
        if (!wanted)
            continue;
        Heat need = use.upper;
        for (const LotStock &lot : stock.lots) {
            if (lot.readiness != Readiness::Dry || books.lots.value(lot.lot).species != *wanted)
                continue;
            Claim &claim = claimed[lot.lot];
            const Heat taken = std::min(need, lot.netHeat - claim.heat);
            if (taken.base() <= 0)
                continue;
            if (claim.cook == 0)
                claim.cook = use.plannedCook;
            claim.heat += taken;
            need -= taken;
        }
    }
    return claimed;
}

QString cookWords(const Books &books, RecordId plannedCook, const Wording &wording)
{
    const PlannedCook cook = books.plannedCooks.value(plannedCook);
    const QString what =
        cook.event ? books.events.value(*cook.event).name : books.pits.value(cook.pit).name;
    return QString(what + QStringLiteral(" on ") +
                   dayWithWeekday(dayOf(cook.light, zoneOf(wording)), wording));
}

QString notNow(const LotStock &lot, const Lot &record)
{
    switch (lot.readiness) {
    case Readiness::Wet:
        return QStringLiteral("too wet to burn clean");
    case Readiness::NoReading:
        return QStringLiteral("not read yet: split a piece and read the fresh face");
    case Readiness::OnHold:
        return QString(QStringLiteral("on hold: ") + record.holdReason);
    case Readiness::NeverBurn:
        return QStringLiteral("never burned for food");
    case Readiness::Dry:
    case Readiness::Empty:
        break;
    }
    return {};
}

// Wood that the next cook asks for, then free wood, then wood kept for later; each oldest first.
int groupOf(const BurnChoice &choice, bool wantedNow)
{
    if (choice.keptFor != 0)
        return 2;
    return wantedNow ? 0 : 1;
}

} // namespace

QVector<BurnChoice> burnFirst(const Books &books, const Stock &stock,
                              const QVector<PlannedUse> &uses)
{
    const Wording wording{books.yard().metric, books.yard().timeZone, QStringLiteral("en_US")};
    const QMap<RecordId, Claim> claimed = claims(books, stock, uses);
    const auto wanted =
        uses.isEmpty() ? std::nullopt : books.plannedCooks.value(uses.first().plannedCook).species;
    struct Placed {
        BurnChoice choice;
        int group;
    };
    QVector<Placed> dry;
    QVector<BurnChoice> rest;
    for (const LotStock &lot : stock.lots) {
        if (lot.readiness == Readiness::Empty)
            continue;
        const Lot record = books.lots.value(lot.lot);
        BurnChoice choice;
        choice.lot = lot.lot;
        if (lot.readiness != Readiness::Dry) {
            choice.reason = notNow(lot, record);
            rest << choice;
            continue;
        }
        const Claim claim = claimed.value(lot.lot);
        choice.spokenFor = claim.heat;
        choice.free = lot.netHeat - claim.heat;
        if (claim.cook != 0 && choice.free < lot.netHeat * kLeastFreeShare)
            choice.keptFor = claim.cook;
        const bool now = wanted && record.species == *wanted;
        const QString came =
            QString(QStringLiteral("came ") +
                    dayWithWeekday(dayOf(record.received, zoneOf(wording)), wording));
        if (choice.keptFor != 0)
            choice.reason =
                QString(QStringLiteral("kept for ") + cookWords(books, choice.keptFor, wording) +
                        QStringLiteral(", which asks for this wood"));
        else if (now)
            choice.reason = QString(QStringLiteral("the wood that ") +
                                    cookWords(books, uses.first().plannedCook, wording) +
                                    QStringLiteral(" asks for; ") + came);
        else
            choice.reason =
                QString((claim.cook != 0 ? QStringLiteral("dry, part of it kept for later; ")
                                         : QStringLiteral("dry, and no later cook asks for it; ")) +
                        came);
        dry << Placed{choice, groupOf(choice, now)};
    }
    std::stable_sort(dry.begin(), dry.end(),
                     [](const Placed &a, const Placed &b) { return a.group < b.group; });
    QVector<BurnChoice> order;
    for (Placed &placed : dry) {
        placed.choice.rank = static_cast<int>(order.size()) + 1;
        order << placed.choice;
    }
    return order + rest;
}

} // namespace rickyard::domain
