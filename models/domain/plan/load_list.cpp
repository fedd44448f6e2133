#include "models/domain/plan/load_list.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

struct LoadWords {
    Q_DECLARE_TR_FUNCTIONS(LoadList)
};

} // namespace

std::optional<Heat> enoughFor(const ExpectedUse &use, double chance)
{
    const double middle = use.middle.toDouble();
    if (!(middle > 0) || !(use.relativeSd > 0) || !(use.dof > 0))
        return {};
    const auto t = statistics::quantile(statistics::StudentT{use.dof}, chance);
    if (!t)
        return {};
    const double v = std::log1p(use.relativeSd * use.relativeSd);
    return Heat::rounded(std::max(middle, middle * std::exp(-0.5 * v + t.value() * std::sqrt(v))));
}

DryWood::DryWood(const Books &books, const Stock &stock)
{
    for (const LotStock &lot : stock.lots) {
        if (lot.readiness != Readiness::Dry || lot.netHeat <= Heat() || !lot.asIs)
            continue;
        const Lot record = books.lots.value(lot.lot);
        Pile pile;
        pile.lot = lot.lot;
        pile.keptFor = record.reservedFor.value_or(0);
        pile.joules = lot.netHeat.toDouble();
        pile.asIsPerJoule = lot.asIs->toDouble() / pile.joules;
        if (lot.splits && *lot.splits > 0)
            pile.joulesPerSplit = pile.joules / *lot.splits;
        pile.weighed = record.splitMass.has_value();
        m_piles << pile;
    }
}

QVector<int> DryWood::inOrder(const QVector<BurnChoice> &order, RecordId event) const
{
    QVector<int> kept;
    QVector<int> free;
    for (const BurnChoice &choice : order) {
        if (choice.rank == 0)
            continue;
        for (int i = 0; i < m_piles.size(); ++i) {
            const Pile &pile = m_piles.at(i);
            if (pile.lot != choice.lot)
                continue;
            if (pile.keptFor == 0)
                free << i;
            else if (pile.keptFor == event)
                kept << i;
        }
    }
    return kept + free;
}

double DryWood::take(const QVector<int> &piles, LoadPhase phase, double joules, LoadList *list)
{
    for (const int index : piles) {
        Pile &pile = m_piles[index];
        if (joules <= 0)
            break;
        const double taken = std::min(joules, pile.joules);
        if (taken <= 0)
            continue;
        pile.joules -= taken;
        joules -= taken;
        if (list == nullptr)
            continue;
        LoadLine line;
        line.lot = pile.lot;
        line.phase = phase;
        line.heat = Heat::rounded(taken);
        line.asIs = Mass::rounded(taken * pile.asIsPerJoule);
        line.splitsWeighed = pile.weighed;
        if (pile.joulesPerSplit > 0)
            line.splits = static_cast<int>(std::ceil(taken / pile.joulesPerSplit - 1e-9));
        list->asIs += line.asIs;
        list->splits += line.splits;
        list->lines << line;
    }
    return std::max(0.0, joules);
}

LoadList DryWood::pull(const ExpectedUse &use, RecordId pit, const QVector<BurnChoice> &order,
                       RecordId event, double chance)
{
    LoadList list;
    list.pit = pit;
    list.basis = use.basis;
    const double middle = std::max(0.0, use.middle.toDouble());
    const double most = enoughFor(use, chance).value_or(Heat::rounded(middle)).toDouble();
    const double lighting = std::clamp(use.parts[LightingColumn], 0.0, middle);
    const QVector<int> piles = inOrder(order, event);
    double missing = take(piles, LoadPhase::Lighting, lighting, &list);
    missing += take(piles, LoadPhase::Hold, middle - lighting, &list);
    list.missingExpected = Heat::rounded(missing);
    missing += take(piles, LoadPhase::Reserve, most - middle, &list);
    list.missing = Heat::rounded(missing);
    list.wanted = Heat::rounded(most);
    return list;
}

void DryWood::burn(Heat heat, const QVector<BurnChoice> &order, RecordId event)
{
    take(inOrder(order, event), LoadPhase::Hold, heat.toDouble(), nullptr);
}

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
                            const QVector<BurnChoice> &order, const QVector<PlannedFire> &fires,
                            double chance)
{
    DryWood wood(books, stock);
    QVector<LoadList> lists;
    for (const PlannedFire &fire : fires)
        lists << wood.pull(expectedUse(books, fuel, fire), fire.pit, order, 0, chance);
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
