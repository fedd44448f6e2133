#include "models/domain/plan/load_list.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

struct LoadWords {
    Q_DECLARE_TR_FUNCTIONS(LoadList)
};

// A lot on the way out: what is left of its heat, and what a joule of it weighs.
struct Pile {
    RecordId lot = 0;
    double joules = 0;
    double asIsPerJoule = 0;
    double joulesPerSplit = 0;
    bool weighed = false;
};

QVector<Pile> pilesOf(const Books &books, const Stock &stock, const QVector<BurnChoice> &order)
{
    QVector<Pile> piles;
    for (const BurnChoice &choice : order) {
        if (choice.rank == 0)
            continue;
        for (const LotStock &lot : stock.lots) {
            if (lot.lot != choice.lot || lot.readiness != Readiness::Dry || lot.netHeat <= Heat() ||
                !lot.asIs)
                continue;
            Pile pile;
            pile.lot = lot.lot;
            pile.joules = lot.netHeat.toDouble();
            pile.asIsPerJoule = lot.asIs->toDouble() / pile.joules;
            if (lot.splits && *lot.splits > 0)
                pile.joulesPerSplit = pile.joules / *lot.splits;
            pile.weighed = books.lots.value(lot.lot).splitMass.has_value();
            piles << pile;
        }
    }
    return piles;
}

// Takes heat from the piles in turn; what they lack is returned.
double draw(QVector<Pile> &piles, LoadPhase phase, double joules, LoadList &list)
{
    for (Pile &pile : piles) {
        if (joules <= 0)
            break;
        const double taken = std::min(joules, pile.joules);
        if (taken <= 0)
            continue;
        LoadLine line;
        line.lot = pile.lot;
        line.phase = phase;
        line.heat = Heat::rounded(taken);
        line.asIs = Mass::rounded(taken * pile.asIsPerJoule);
        line.splitsWeighed = pile.weighed;
        if (pile.joulesPerSplit > 0)
            line.splits = static_cast<int>(std::ceil(taken / pile.joulesPerSplit - 1e-9));
        pile.joules -= taken;
        joules -= taken;
        list.asIs += line.asIs;
        list.splits += line.splits;
        list.lines << line;
    }
    return std::max(0.0, joules);
}

LoadList listFor(const Books &books, const FuelAnswer &fuel, QVector<Pile> &piles,
                 const PlannedFire &fire)
{
    const ExpectedUse use = expectedUse(books, fuel, fire);
    LoadList list;
    list.pit = fire.pit;
    list.basis = use.basis;
    const double lighting = std::min(use.parts[LightingColumn], use.middle.toDouble());
    double missing = draw(piles, LoadPhase::Lighting, lighting, list);
    missing += draw(piles, LoadPhase::Hold, use.middle.toDouble() - lighting, list);
    missing += draw(piles, LoadPhase::Reserve, (use.upper - use.middle).toDouble(), list);
    list.missing = Heat::rounded(missing);
    return list;
}

} // namespace

Mass LoadList::asIsOf(LoadPhase phase) const
{
    Mass sum;
    for (const LoadLine &line : lines)
        sum += line.phase == phase ? line.asIs : Mass();
    return sum;
}

int LoadList::splitsOf(LoadPhase phase) const
{
    int sum = 0;
    for (const LoadLine &line : lines)
        sum += line.phase == phase ? line.splits : 0;
    return sum;
}

QVector<LoadList> loadLists(const Books &books, const FuelAnswer &fuel, const Stock &stock,
                            const QVector<BurnChoice> &order, const QVector<PlannedFire> &fires)
{
    QVector<Pile> piles = pilesOf(books, stock, order);
    QVector<LoadList> lists;
    for (const PlannedFire &fire : fires)
        lists << listFor(books, fuel, piles, fire);
    return lists;
}

QString pullWords(const Books &books, const LoadList &list, const Wording &wording)
{
    const UnitSystem system = wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    const QLocale locale = localeOf(wording);
    if (list.lines.isEmpty())
        return LoadWords::tr("There is no dry wood to pull.");
    QStringList names;
    for (const LoadLine &line : list.lines)
        if (const QString name = books.lots.value(line.lot).name; !names.contains(name))
            names << name;
    const auto phase = [&](LoadPhase one, const QString &what) {
        return list.splits > 0 ? what.arg(list.splitsOf(one))
                               : what.arg(show(list.asIsOf(one), system, locale, 0));
    };
    const QString amount = list.splits > 0 ? LoadWords::tr("%1 splits (%2)")
                                                 .arg(list.splits)
                                                 .arg(show(list.asIs, system, locale, 0))
                                           : show(list.asIs, system, locale, 0);
    QString words = LoadWords::tr("Pull %1 of %2: %3, %4, %5.")
                        .arg(amount, names.join(LoadWords::tr(", then ")),
                             phase(LoadPhase::Lighting, LoadWords::tr("%1 to light")),
                             phase(LoadPhase::Hold, LoadWords::tr("%1 to hold")),
                             phase(LoadPhase::Reserve, LoadWords::tr("%1 in reserve")));
    if (list.missing > Heat())
        words +=
            LoadWords::tr(" Dry wood for %1 is missing.").arg(heatWords(list.missing, wording));
    return words;
}

} // namespace rickyard::domain
