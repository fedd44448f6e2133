// The work of the diagnosis at one supposed start of the change: which cooks lie before and since,
// what each cause would have touched, what is always at work. Used by diagnosis.cpp alone; the
// model is described in diagnosis.h.
#pragma once

#include "models/domain/fire/diagnosis.h"
#include "models/domain/statistics/effect_evidence.h"

#include <array>
#include <optional>
#include <vector>

namespace rickyard::domain::diagnosing {

// Something recorded of a cook whose movement can be a cause.
struct Covariate {
    CauseKind kind;
    std::optional<double> EvidenceCook::*field;
    double usualShift; // what a changed habit amounts to
    double least;      // standard deviation below which a record is not believed
};
constexpr std::array kCovariates{
    Covariate{CauseKind::Preheat, &EvidenceCook::preheat, 0.75, 0.15},
    Covariate{CauseKind::DoorOpenings, &EvidenceCook::doors, 2.0, 0.4},
    Covariate{CauseKind::FeedGaps, &EvidenceCook::feedGap, 1.0, 0.25},
    Covariate{CauseKind::Thermometer, &EvidenceCook::dialOff, 12.0, 2.0},
    Covariate{CauseKind::Wood, &EvidenceCook::moisture, 0.06, 0.015},
};

struct EvidenceRow {
    const EvidenceCook *cook = nullptr;
    double y = 0.0; // in the direction of the question
    double variance = 1.0;
    bool since = false;
};
using Rows = std::vector<EvidenceRow>;

// One way to explain the cooks, at one start.
struct Explanation {
    CauseKind kind;
    RecordId lot;
    std::vector<double> x;
    statistics::EffectPrior prior{0.0, kDiagnosisEffect};
    double logSupport = 0.0; // of records other than the heat
    double logPrior = 0.0;
    double scale = 1.0; // effect on the pit's average cook since, per effect
};

class Case
{
public:
    // `cooks` by time; `sign` -1 when the pit burns less.
    Case(const QVector<const EvidenceCook *> &cooks, Instant from, RecordId pit, double sign);

    [[nodiscard]] const statistics::EffectEvidence &work() const { return m_work; }
    [[nodiscard]] int count() const;                   // of the pit's cooks since
    [[nodiscard]] QVector<RecordId> lotsSince() const; // burned on the pit, half a cook or more
    // Nothing when the cause's record is missing.
    [[nodiscard]] std::optional<Explanation> explanation(CauseKind kind, RecordId lot) const;
    [[nodiscard]] CauseEvidence evidence(CauseKind kind, RecordId lot) const;

private:
    [[nodiscard]] bool recorded(const Covariate &covariate) const;
    [[nodiscard]] statistics::EffectEvidence workOf() const;
    [[nodiscard]] double share(std::size_t row, RecordId lot) const
    {
        return m_rows[row].cook->lots.value(lot, 0.0);
    }
    [[nodiscard]] bool sinceHere(std::size_t row) const
    {
        return m_rows[row].since && m_rows[row].cook->pit == m_pit;
    }
    [[nodiscard]] double logMoved(const Covariate &covariate) const;
    [[nodiscard]] bool moved(const Covariate &covariate, Explanation &e) const;
    [[nodiscard]] std::vector<double> deviations(const Covariate &covariate) const;
    [[nodiscard]] std::vector<std::vector<double>> nuisances() const;
    void windy(Explanation &e) const;

    Rows m_rows;
    RecordId m_pit;
    double m_sign;
    statistics::EffectEvidence m_work;
};

} // namespace rickyard::domain::diagnosing
