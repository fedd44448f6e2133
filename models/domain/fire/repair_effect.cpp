#include "models/domain/fire/repair_effect.h"

#include "models/domain/answers/wording.h"
#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {
namespace {

struct RepairWords {
    Q_DECLARE_TR_FUNCTIONS(RepairEffect)
};

constexpr int kMostCooksToTell = 60;

// The cooks of one side.
struct RepairSide {
    int cooks = 0;
    double weight = 0.0;
    double mean = 0.0;
    double squares = 0.0; // weighted, about the mean
    double actual = 0.0;  // joules a cook
};

double logRatio(const RepairCook &cook)
{
    return std::log(cook.actual / cook.expected);
}

bool comparable(const RepairCook &cook)
{
    return std::isfinite(cook.actual) && std::isfinite(cook.expected) && cook.actual > 0.0 &&
           cook.expected > 0.0 && cook.trust > 0.0;
}

RepairSide sideOf(const QVector<RepairCook> &cooks)
{
    RepairSide side;
    for (const RepairCook &cook : cooks) {
        if (!comparable(cook))
            continue;
        ++side.cooks;
        side.actual += cook.actual;
        side.weight += cook.trust;
        const double off = logRatio(cook) - side.mean;
        side.mean += off * cook.trust / side.weight;
        side.squares += cook.trust * off * (logRatio(cook) - side.mean);
    }
    if (side.cooks > 0)
        side.actual /= side.cooks;
    return side;
}

// Half the interval when `more` cooks follow and scatter as the others did.
double halfWidth(const RepairSide &before, const RepairSide &after, double scatter, double dof,
                 double level, int more = 0)
{
    const auto t = statistics::twoSided(statistics::StudentT{dof + more}, level);
    return t ? t.value() * scatter * std::sqrt(1.0 / before.weight + 1.0 / (after.weight + more))
             : INFINITY;
}

// The cook since the repair with which the savings make up for the cost; 0: not yet.
int paidAt(const RepairQuestion &question, double saving)
{
    double saved = 0.0;
    int number = 0;
    for (const RepairCook &cook : question.after) {
        if (!comparable(cook))
            continue;
        ++number;
        saved += cook.actual * saving * question.centsPerJoule;
        if (saved >= *question.costCents)
            return number;
    }
    return 0;
}

void payBack(RepairEffect &effect, const RepairQuestion &question)
{
    if (!question.costCents || !(question.centsPerJoule > 0.0))
        return;
    const auto cooks = [&](double joules) -> std::optional<double> {
        if (!(joules > 0.0))
            return {};
        return *question.costCents / (joules * question.centsPerJoule);
    };
    effect.payback = cooks(effect.joulesSaved);
    effect.paybackSoonest = cooks(effect.joulesUpper);
    effect.paybackLatest = cooks(effect.joulesLower);
}

} // namespace

RepairEffect repairEffect(const RepairQuestion &question)
{
    RepairEffect effect;
    const RepairSide before = sideOf(question.before);
    const RepairSide after = sideOf(question.after);
    const double free = question.scatterWorth + before.cooks + after.cooks - 2;
    if (before.cooks == 0 || after.cooks == 0 || !(free > 0.0))
        return effect;
    const double believed = question.scatterWorth * question.scatter * question.scatter;
    const double scatter = std::sqrt((believed + before.squares + after.squares) / free);
    const double change = after.mean - before.mean;
    const double half = halfWidth(before, after, scatter, free, question.level);
    effect.dof = free;
    effect.percent = 100.0 * std::expm1(change);
    effect.lower = 100.0 * std::expm1(change - half);
    effect.upper = 100.0 * std::expm1(change + half);
    effect.joulesSaved = after.actual * std::expm1(-change);
    effect.joulesLower = after.actual * std::expm1(-change - half);
    effect.joulesUpper = after.actual * std::expm1(-change + half);
    effect.centsSaved = effect.joulesSaved * question.centsPerJoule;
    payBack(effect, question);
    const double wanted = 0.5 * std::log1p(std::max(0.01, question.fault));
    for (int more = 0; more <= kMostCooksToTell && !effect.cooksToTell; ++more)
        if (halfWidth(before, after, scatter, free, question.level, more) <= wanted)
            effect.cooksToTell = more;
    if (change - half > 0.0) {
        effect.verdict = RepairVerdict::BurnsMore;
    } else if (change + half < 0.0) {
        if (effect.payback)
            effect.paidAtCook = paidAt(question, std::expm1(-change));
        effect.verdict = effect.paidAtCook > 0 ? RepairVerdict::PaidBack : RepairVerdict::Saves;
    } else {
        effect.verdict =
            effect.cooksToTell == 0 ? RepairVerdict::NoEffect : RepairVerdict::NoEffectYet;
    }
    return effect;
}

namespace {

QString cooksInWords(int count)
{
    return count == 1 ? RepairWords::tr("1 cook") : RepairWords::tr("%1 cooks").arg(count);
}

// "13 % less wood a cook (8 to 18 %)".
QString changeWords(const RepairEffect &effect, const QLocale &locale)
{
    const bool less = effect.percent < 0.0;
    const auto whole = [&](double percent) {
        return locale.toString(qRound(less ? -percent : percent));
    };
    const QString text = less ? RepairWords::tr("%1 % less wood a cook (%2 to %3 %)")
                              : RepairWords::tr("%1 % more wood a cook (%2 to %3 %)");
    return text.arg(whole(effect.percent), whole(less ? effect.upper : effect.lower),
                    whole(less ? effect.lower : effect.upper));
}

QString paybackWords(const RepairEffect &effect)
{
    const auto up = [](double cooks) { return static_cast<int>(std::ceil(cooks)); };
    if (!effect.payback)
        return {};
    if (!effect.paybackLatest)
        return RepairWords::tr(" It should pay for itself in about %1.")
            .arg(cooksInWords(up(*effect.payback)));
    return RepairWords::tr(" It should pay for itself in about %1 (%2 to %3).")
        .arg(cooksInWords(up(*effect.payback)))
        .arg(up(*effect.paybackSoonest))
        .arg(up(*effect.paybackLatest));
}

} // namespace

QString repairSentence(const RepairEffect &effect, const QString &what, const Wording &wording)
{
    const QLocale locale = localeOf(wording);
    switch (effect.verdict) {
    case RepairVerdict::TooFew:
        return RepairWords::tr("%1: too few cooks before or since to compare.").arg(what);
    case RepairVerdict::PaidBack:
        return RepairWords::tr("%1 paid for itself in %2: %3.")
            .arg(what, cooksInWords(effect.paidAtCook), changeWords(effect, locale));
    case RepairVerdict::Saves:
        return RepairWords::tr("%1 helped: %2.%3")
            .arg(what, changeWords(effect, locale), paybackWords(effect));
    case RepairVerdict::NoEffectYet:
        if (!effect.cooksToTell)
            return RepairWords::tr("%1: no effect seen, and too few cooks before it to tell.")
                .arg(what);
        return RepairWords::tr("%1: no effect seen yet; %2 more would tell.")
            .arg(what, cooksInWords(*effect.cooksToTell));
    case RepairVerdict::NoEffect:
        return RepairWords::tr("%1 did not cure it: the pit burns as before. Look for another "
                               "cause.")
            .arg(what);
    case RepairVerdict::BurnsMore:
        return RepairWords::tr("%1: the pit burns more than before, %2. Look at it again.")
            .arg(what, changeWords(effect, locale));
    }
    return {};
}

} // namespace rickyard::domain
