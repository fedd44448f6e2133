#include "models/domain/fire/repairs.h"

#include "models/domain/fire/cook_doubts.h"
#include "models/domain/fire/fuel_replay.h"
#include "models/domain/fire/watch.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr qsizetype kUsualBefore = 6;
constexpr double kLeastFault = 0.08;

Instant outOfCook(const CookFuel &cook)
{
    return cook.lit + cook.length;
}

// The pit's judged cooks by the time the fire went out.
QVector<const CookFuel *> judgedOf(const FuelAnswer &fuel, RecordId pit)
{
    QVector<const CookFuel *> cooks;
    for (const CookFuel &cook : fuel.cooks)
        if (cook.pit == pit && cook.verdict)
            cooks << &cook;
    std::stable_sort(cooks.begin(), cooks.end(), [](const CookFuel *a, const CookFuel *b) {
        return outOfCook(*a) < outOfCook(*b);
    });
    return cooks;
}

// Of the cooks up to a mending those that it has to be compared with.
QVector<const CookFuel *> climbBefore(const QVector<const CookFuel *> &earlier)
{
    qsizetype run = 0;
    while (run < earlier.size() && earlier.at(earlier.size() - 1 - run)->verdict->up > 0)
        ++run;
    const bool flagged = std::any_of(earlier.end() - run, earlier.end(), [](const CookFuel *cook) {
        return cook->verdict->flag == WatchFlag::More;
    });
    return earlier.last(flagged ? run : std::min(kUsualBefore, earlier.size()));
}

QVector<RepairCook> against(const FuelWatch &watch, const WatchSettings &settings,
                            const QVector<const CookFuel *> &cooks)
{
    QVector<RepairCook> judged;
    for (const CookFuel *cook : cooks) {
        const double trust = trustOf(cook->doubt, settings.scatter);
        if (const auto forecast = watch.expect(cook->pit, cook->columns, trust))
            judged.append({cook->netHeat.toDouble(), forecast->expected, trust});
    }
    return judged;
}

double faultOf(const QVector<RepairCook> &before)
{
    double actual = 0;
    double expected = 0;
    for (const RepairCook &cook : before) {
        actual += cook.actual;
        expected += cook.expected;
    }
    return std::max(kLeastFault, expected > 0 ? actual / expected - 1.0 : 0.0);
}

} // namespace

QVector<Repair> repairsOf(const Books &books, const FuelAnswer &fuel, Instant now,
                          const Wording &wording)
{
    QVector<Repair> repairs;
    if (!fuel.watch)
        return repairs;
    const WatchSettings settings = watchSettingsOf(books);
    const QVector<PitTurn> turns = pitTurns(books, now);
    for (qsizetype i = 0; i < turns.size(); ++i) {
        const PitTurn &turn = turns.at(i);
        if (turn.kind != PitTurnKind::Mended)
            continue;
        const auto sameBefore = [&](const PitTurn &other) {
            return other.kind == PitTurnKind::Mended && other.pit == turn.pit;
        };
        const auto next = std::find_if(turns.begin() + i + 1, turns.end(), sameBefore);
        const auto last =
            std::find_if(turns.rbegin() + (turns.size() - i), turns.rend(), sameBefore);
        QVector<const CookFuel *> earlier;
        QVector<const CookFuel *> later;
        for (const CookFuel *cook : judgedOf(fuel, turn.pit)) {
            const Instant out = outOfCook(*cook);
            if (last != turns.rend() && out < last->at)
                continue;
            if (out < turn.at)
                earlier << cook;
            else if (next == turns.end() || out < next->at)
                later << cook;
        }
        RepairQuestion question;
        question.before = against(*fuel.watch, settings, climbBefore(earlier));
        question.after = against(*fuel.watch, settings, later);
        question.scatter = fuel.watch->norm().scale();
        question.scatterWorth = fuel.watch->norm().dof();
        question.fault = faultOf(question.before);
        question.centsPerJoule = centsPerJoule(fuel, turn.pit);
        const Finding finding = books.findings.value(turn.finding);
        const Visit visit = books.visits.value(finding.mendedBy.value_or(0));
        if (visit.cost)
            question.costCents = visit.cost->toDouble();
        Repair repair;
        repair.finding = turn.finding;
        repair.pit = turn.pit;
        repair.at = turn.at;
        repair.before = static_cast<int>(question.before.size());
        repair.after = static_cast<int>(question.after.size());
        repair.effect = repairEffect(question);
        repair.sentence = repairSentence(repair.effect, finding.text, wording);
        repairs.prepend(repair);
    }
    return repairs;
}

} // namespace rickyard::domain
