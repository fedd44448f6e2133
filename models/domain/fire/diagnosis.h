// Pit, wood or weather? Which single cause best explains that a pit burns more (or less) than it
// should, from the cooks of the whole yard before and since the change.
//
// Model. y = ln(actual / expected) + v / 2 of each cook, one step ahead, with the known variance
// v = ln(1 + sd^2) of its forecast; a cook beyond kDiagnosisCut of them counts as one just there.
// Under a cause
//
//   y = effect * x + what is always at work + scatter N(0, v)
//
// where x says how far the cause can have touched that cook:
//
//   this pit        1 on this pit since the change
//   this lot        the lot's share of the cook's wood, on every pit and at any time
//   wind, shelter   on this pit since the change, its wind above 1 m/s (or, where a wind is
//   missing,
//                   the root of the wind's share of the expected heat) over the mean of that
//   preheat, doors, feed gaps
//                   how far the cook lies above its pit's usual, on every pit and at any time, in
//                   units of how far this pit's cooks since the change do
//   thermometer     the same of the dial's error, on this pit; the effect to be expected is known
//                   then: 1.3 % a kelvin
//   wood            1 on every pit since the change
//   chance          0
//
// The effect has the direction of the question; its size is half-normal with kDiagnosisEffect.
// Always at work: a drift of each pit since the change, N(0, kDiagnosisDrift^2), which forecasts
// from one norm have in common; a difference of each lot, kDiagnosisLots; and what habits cost
// within their usual range, kDiagnosisHabit for a usual shift. All normal with known variances, so
// marginal likelihoods and posteriors come in closed form (conjugate normal model: Gelman et al.,
// Bayesian Data Analysis, section 2.5, from memory; the marginal of a truncated prior follows from
// its definition). Probabilities are those of the causes listed, one alone at work, after the prior
// odds of `priorOf`.
//
// When it began is not known to the cook: starts at the pit's cooks round the given first one are
// weighed, the nearer the more, and averaged. A start that was picked for looking high makes a step
// look likelier than it is, so causes that begin at the change (this pit, wind, wood) pay
// kDiagnosisPicked.
//
// A habit (preheat, doors, gaps), the dial or the wood's moisture that moved at the change is under
// suspicion for that alone, and one that stayed where it was is cleared: the chance of its
// movement, if it is the cause, over that if it is not (then it moves by itself once in ten).
//
// Assumptions: one cause at a time; earlier cooks were sound; the norm does not know the lots; the
// prior odds, widths and usual shifts are our own (no source). A habit or a dial without three
// records before and one since on this pit cannot be judged and is named in `notJudged`.
#pragma once

#include "models/domain/fire/watch_verdict.h"
#include "models/domain/quantities/quantity.h"

#include <QMap>
#include <QVector>

#include <optional>

namespace rickyard::domain {

// In standard deviations of the forecast. Not nearer: on windy cooks a lost shelter goes that far.
constexpr double kDiagnosisCut = 5.0;
constexpr double kDiagnosisEffect = 0.15;
constexpr double kDiagnosisDrift = 0.03;
constexpr double kDiagnosisLots = 0.03;
constexpr double kDiagnosisHabit = 0.10;
constexpr double kDiagnosisUnflagged = 0.25; // prior weight of chance on a pit that is not flagged
constexpr double kDiagnosisPicked = 0.5;

// A judged cook (one that the watch left out is no evidence).
struct EvidenceCook {
    RecordId cook = 0;
    RecordId pit = 0;
    Instant lit;
    double logRatio = 0.0;          // ln(actual / expected), one step ahead
    double sd = 0.0;                // relative, of that forecast; above 0
    QMap<RecordId, double> lots;    // share of the dry mass burned, 0 to 1
    std::optional<double> moisture; // of the wood, dry basis, 0.2 for 20 %
    double windShare = 0.0;         // of the expected heat
    std::optional<double> wind;     // m/s
    std::optional<double> preheat;  // hours from lighting to temperature; of cold starts only
    std::optional<double> doors;    // openings an hour
    std::optional<double> feedGap;  // longest feed interval over the median one
    std::optional<double> dialOff;  // kelvin: logged probe minus what was read on the dial
    bool startCold = true;          // the preheat of a warm start is left out
};

enum class CauseKind {
    ThisPit,
    ThisLot,
    WindShelter,
    Preheat,
    DoorOpenings,
    FeedGaps,
    Thermometer,
    Wood,
    Chance
};

// Before the cooks are looked at; lots share theirs.
double priorOf(CauseKind kind);

// What speaks for a cause, for its words. Means are excesses (0.15 for 15 %) of cooks since the
// change: those that the cause touches and the others. This lot: cooks with at least half of it.
// Wind: the windier and the calmer half of this pit's. Habits, thermometer, wood: what was recorded
// (hours, openings an hour, ratio, kelvin, dry basis) on average before and since, on this pit.
struct CauseEvidence {
    int touched = 0;
    double touchedMean = 0.0;
    int others = 0;
    double othersMean = 0.0;
    std::optional<double> before;
    std::optional<double> since;
};

struct Cause {
    CauseKind kind = CauseKind::Chance;
    RecordId lot = 0; // of ThisLot
    double probability = 0.0;
    // If it is the cause: excess on this pit's average cook since the change; of ThisLot on a cook
    // with nothing else. Normal posterior, so the interval may reach across 0. Chance: 0.
    double percent = 0.0;
    double lower = 0.0;
    double upper = 0.0;
    // Of the cooks alone, natural logarithm over that of chance, at the start that suits it best.
    double logEvidence = 0.0;
    CauseEvidence evidence;
};

struct DiagnosisQuestion {
    RecordId pit = 0;
    RecordId since = 0; // first cook of the climb, on that pit
    WatchFlag direction = WatchFlag::More;
    bool flagged = true; // by the watch; otherwise chance is likelier from the start
    double level = 0.90;
};

struct Diagnosis {
    QVector<Cause> causes; // likeliest first
    int cooksSince = 0;    // of the pit
    QVector<CauseKind> notJudged;
    // The second cause explains the cooks about as well as the first (evidence within a factor of
    // three) and is not out of the question (one in ten): an experiment must tell.
    bool toldApart = true;

    [[nodiscard]] bool empty() const { return causes.isEmpty(); }
};

// `cooks` in any order. Empty when the pit has no judged cook from `since` on.
Diagnosis diagnosisOf(const QVector<EvidenceCook> &cooks, const DiagnosisQuestion &question);

} // namespace rickyard::domain
