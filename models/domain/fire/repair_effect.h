// What a repair did to a pit's fuel: the cooks before it against those after it.
//
// Every cook is judged by one common norm (FuelWatch::expect with the columns of that cook, from
// whatever is known now). A norm that is wrong about the pit as a whole is wrong by the same factor
// before and after, so it drops out of the difference; what is left is that the weather before and
// after may have been different, and the norm takes care of that.
//
//   r = ln(actual / expected), normal about its mean before or after, variance s^2 / trust
//   effect = mean after - mean before, Student t
//
// s^2 is inverse chi-squared: a belief worth `scatterWorth` cooks (the watch's own scatter) and the
// cooks themselves. Without the belief and with equal trust it is the pooled two-sample t interval
// (any textbook of statistics), with trust weighted least squares on two groups.
//
// Cooks before that were chosen for being high lean high, and make a repair look better than it is;
// take all since the fault began, not the highest. That lean is measured in
// docs/method-fuel-watch.md.
#pragma once

#include "models/domain/answers/headline.h"

#include <QString>
#include <QVector>

#include <optional>

namespace rickyard::domain {

struct RepairCook {
    double actual = 0.0;   // joules net, above 0
    double expected = 0.0; // joules, by the common norm, above 0
    double trust = 1.0;    // as of WatchCook
};

struct RepairQuestion {
    QVector<RepairCook> before; // since the fault began, or the last before the repair; by time
    QVector<RepairCook> after;
    double scatter = 0.0;      // relative, of an ordinary cook (the norm's scale)
    double scatterWorth = 0.0; // in cooks (the norm's degrees of freedom); 0: not believed
    double fault = 0.10;       // relative excess that the repair was to cure, above 0
    double centsPerJoule = 0.0;
    std::optional<double> costCents; // of the repair
    double level = 0.90;
};

enum class RepairVerdict {
    TooFew,      // no cook before or after, or no scatter to go by
    PaidBack,    // saves, and has saved what it cost
    Saves,       // burns less than before, beyond chance
    NoEffectYet, // the interval still has room for none and for a full cure
    NoEffect,    // no less than before, and the interval has no room for a full cure
    BurnsMore    // more than before, beyond chance
};

struct RepairEffect {
    RepairVerdict verdict = RepairVerdict::TooFew;
    // Change of what a cook burns; -13 saves 13 %.
    double percent = 0.0;
    double lower = 0.0;
    double upper = 0.0;
    double dof = 0.0;
    // An average cook since the repair against the same cook on the pit as it was; negative: more.
    double joulesSaved = 0.0;
    double joulesLower = 0.0;
    double joulesUpper = 0.0;
    double centsSaved = 0.0;
    // Cooks until the savings make up for the cost; none while it does not save, no latest while
    // the interval has room for no saving.
    std::optional<double> payback;
    std::optional<double> paybackSoonest;
    std::optional<double> paybackLatest;
    int paidAtCook = 0; // of PaidBack: the cook since the repair with which it was paid
    // Cooks to go until the interval is no wider than the fault: then it has no room for both none
    // and a full cure. Nothing: no number of cooks after would do, those before are too few.
    std::optional<int> cooksToTell;
};

// Cooks with a missing or impossible number are passed over.
RepairEffect repairEffect(const RepairQuestion &question);

// "The new gasket paid for itself in 5 cooks: 13 % less wood a cook (8 to 18 %)." `what` begins a
// sentence.
QString repairSentence(const RepairEffect &effect, const QString &what, const Wording &wording);

} // namespace rickyard::domain
