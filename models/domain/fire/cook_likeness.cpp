#include "models/domain/fire/cook_likeness.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kStep = 1.0;
constexpr double kLengthStep = 1.25; // a quarter longer
constexpr double kAirStep = 10.0 * 5.0 / 9.0;
constexpr double kFoodStep = 1.5; // half as much again
constexpr double kNoFoodSteps = 3.0;

// Steps between two amounts on a scale of ratios.
double ratioSteps(double a, double b, double step)
{
    if (a <= 0 && b <= 0)
        return 0;
    if (a <= 0 || b <= 0)
        return kNoFoodSteps;
    return std::log(a / b) / std::log(step);
}

double distanceTo(const CookWish &wish, const Cook &cook, const CookFuel &fuel)
{
    double sum = 0;
    const auto add = [&sum](double steps) { sum += steps * steps; };
    if (wish.pit)
        add(cook.pit == *wish.pit ? 0.0 : kStep);
    if (wish.length)
        add(ratioSteps(hours(fuel.length), hours(*wish.length), kLengthStep));
    if (wish.outside)
        add(fuel.meanOutside ? (celsius(*fuel.meanOutside) - celsius(*wish.outside)) / kAirStep
                             : kStep);
    if (wish.food)
        add(cook.foodMass ? ratioSteps(kilograms(*cook.foodMass), kilograms(*wish.food), kFoodStep)
                          : kStep);
    return std::sqrt(sum);
}

} // namespace

CookWish wishOf(const Cook &cook, const CookFuel &fuel)
{
    CookWish wish;
    wish.pit = cook.pit;
    if (fuel.finished && fuel.length > Duration())
        wish.length = fuel.length;
    wish.outside = fuel.meanOutside;
    wish.food = cook.foodMass;
    return wish;
}

QVector<CookLikeness> mostLike(const Books &books, const QVector<CookFuel> &cooks,
                               const CookWish &wish, RecordId except, int most)
{
    struct Candidate {
        CookLikeness likeness;
        Instant lit;
    };
    QVector<Candidate> found;
    if (wish.empty())
        return {};
    for (const CookFuel &fuel : cooks) {
        const auto cook = books.cooks.constFind(fuel.cook);
        if (!fuel.finished || fuel.length <= Duration() || fuel.cook == except ||
            cook == books.cooks.constEnd())
            continue;
        found.append({{fuel.cook, distanceTo(wish, *cook, fuel)}, fuel.lit});
    }
    std::stable_sort(found.begin(), found.end(), [](const Candidate &a, const Candidate &b) {
        if (a.likeness.distance != b.likeness.distance)
            return a.likeness.distance < b.likeness.distance;
        return a.lit > b.lit;
    });
    QVector<CookLikeness> nearest;
    for (const Candidate &candidate : std::as_const(found).mid(0, std::max(0, most)))
        nearest << candidate.likeness;
    return nearest;
}

} // namespace rickyard::domain
