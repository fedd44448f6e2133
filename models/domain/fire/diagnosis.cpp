#include "models/domain/fire/diagnosis.h"

#include "models/domain/fire/diagnosis_case.h"
#include "models/domain/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rickyard::domain {
namespace {

using diagnosing::Case;

// Starts that are weighed, in cooks of the pit from the given one.
constexpr int kStartsEarlier = 10;
constexpr int kStartsLater = 2;
constexpr double kStartSpread = 5.0;

struct Start {
    double weight;
    Case yard;
};

double signOf(const DiagnosisQuestion &question)
{
    return question.direction == WatchFlag::Less ? -1.0 : 1.0;
}

// The given first cook and its neighbours on the pit.
std::vector<Start> startsAround(const QVector<const EvidenceCook *> &cooks,
                                const DiagnosisQuestion &question)
{
    QVector<Instant> lit;
    qsizetype given = -1;
    for (const EvidenceCook *cook : cooks)
        if (cook->pit == question.pit) {
            if (cook->cook == question.since)
                given = lit.size();
            lit << cook->lit;
        }
    std::vector<Start> starts;
    if (given < 0)
        return starts;
    // At least one cook before, as far as there is one, and one since.
    const qsizetype first = std::max<qsizetype>(given == 0 ? 0 : 1, given - kStartsEarlier);
    const qsizetype last = std::min(lit.size() - 1, given + kStartsLater);
    double whole = 0.0;
    for (qsizetype at = first; at <= last; ++at) {
        const double weight = std::exp(-std::abs(double(at - given)) / kStartSpread);
        starts.push_back({weight, Case(cooks, lit.at(at), question.pit, signOf(question))});
        whole += weight;
    }
    for (Start &start : starts)
        start.weight /= whole;
    return starts;
}

struct Candidate {
    CauseKind kind;
    RecordId lot;
    double logLots = 0.0; // the lots share the prior
};

QVector<Candidate> candidatesOf(const Case &given)
{
    QVector<Candidate> candidates;
    for (const CauseKind kind :
         {CauseKind::ThisPit, CauseKind::WindShelter, CauseKind::Preheat, CauseKind::DoorOpenings,
          CauseKind::FeedGaps, CauseKind::Thermometer, CauseKind::Wood})
        candidates << Candidate{kind, 0};
    const auto lots = given.lotsSince();
    for (const RecordId lot : lots)
        candidates << Candidate{CauseKind::ThisLot, lot, -std::log(double(lots.size()))};
    return candidates;
}

void size(Cause &cause, const statistics::Effect &effect, double scale,
          const DiagnosisQuestion &question)
{
    const auto q = statistics::twoSided(statistics::Normal{}, question.level);
    const double half = q ? q.value() * effect.sd : 0.0;
    const auto percent = [&](double log) {
        return 100.0 * std::expm1(signOf(question) * scale * log);
    };
    cause.percent = percent(effect.mean);
    cause.lower = percent(effect.mean - half);
    cause.upper = percent(effect.mean + half);
    if (cause.lower > cause.upper)
        std::swap(cause.lower, cause.upper);
}

struct Weighed {
    Cause cause;
    double log; // prior odds and evidence of every kind
};

std::optional<Weighed> weigh(const Candidate &candidate, const std::vector<Start> &starts,
                             const Case &given, const DiagnosisQuestion &question)
{
    const auto central = given.explanation(candidate.kind, candidate.lot);
    if (!central)
        return {};
    double best = -INFINITY;
    std::vector<double> all;
    for (const Start &start : starts) {
        const auto e = start.yard.explanation(candidate.kind, candidate.lot);
        if (!e)
            continue; // not recorded on so few cooks
        const double evidence = start.yard.work().explain(e->x, e->prior).logEvidence;
        best = std::max(best, evidence);
        all.push_back(evidence + std::log(start.weight) + e->logSupport + e->logPrior +
                      candidate.logLots);
    }
    Weighed weighed;
    weighed.cause.kind = candidate.kind;
    weighed.cause.lot = candidate.lot;
    weighed.cause.logEvidence = best;
    size(weighed.cause, given.work().explain(central->x, central->prior), central->scale, question);
    weighed.cause.evidence = given.evidence(candidate.kind, candidate.lot);
    weighed.log = statistics::logSum(all);
    return weighed;
}

void rank(Diagnosis &d, std::vector<double> &logs)
{
    const double whole = statistics::logSum(logs);
    for (qsizetype i = 0; i < d.causes.size(); ++i)
        d.causes[i].probability = std::exp(logs[static_cast<std::size_t>(i)] - whole);
    std::stable_sort(d.causes.begin(), d.causes.end(),
                     [](const Cause &a, const Cause &b) { return a.probability > b.probability; });
    if (d.causes.size() < 2)
        return;
    const Cause &first = d.causes.at(0);
    const Cause &second = d.causes.at(1);
    d.toldApart = second.probability < 0.1 ||
                  std::abs(first.logEvidence - second.logEvidence) > std::log(3.0);
}

} // namespace

double priorOf(CauseKind kind)
{
    switch (kind) {
    case CauseKind::ThisPit:
        return 0.27;
    case CauseKind::ThisLot:
        return 0.18;
    case CauseKind::WindShelter:
        return 0.18;
    case CauseKind::Preheat:
    case CauseKind::DoorOpenings:
    case CauseKind::FeedGaps:
    case CauseKind::Wood:
        return 0.06;
    case CauseKind::Thermometer:
        return 0.04;
    case CauseKind::Chance:
        return 0.09;
    }
    return 0.0;
}

Diagnosis diagnosisOf(const QVector<EvidenceCook> &cooks, const DiagnosisQuestion &question)
{
    QVector<const EvidenceCook *> ordered;
    for (const EvidenceCook &cook : cooks)
        if (std::isfinite(cook.logRatio) && std::isfinite(cook.sd) && cook.sd > 0.0)
            ordered << &cook;
    std::stable_sort(ordered.begin(), ordered.end(), [](const auto *a, const auto *b) {
        return a->lit != b->lit ? a->lit < b->lit : a->cook < b->cook;
    });
    const std::vector<Start> starts = startsAround(ordered, question);
    Diagnosis d;
    if (starts.empty())
        return d;
    const Case &given =
        std::max_element(starts.begin(), starts.end(), [](const auto &a, const auto &b) {
            return a.weight < b.weight;
        })->yard;
    d.cooksSince = given.count();
    std::vector<double> logs;
    for (const Candidate &candidate : candidatesOf(given)) {
        if (const auto weighed = weigh(candidate, starts, given, question)) {
            d.causes << weighed->cause;
            logs.push_back(weighed->log);
        } else {
            d.notJudged << candidate.kind;
        }
    }
    Cause chance;
    chance.evidence = given.evidence(CauseKind::Chance, 0);
    d.causes << chance;
    logs.push_back(std::log(question.flagged ? priorOf(CauseKind::Chance) : kDiagnosisUnflagged));
    rank(d, logs);
    return d;
}

} // namespace rickyard::domain
