#include "models/domain/plan/reorder_point.h"

#include "models/domain/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace rickyard::domain {

namespace {

double normalDensity(double z)
{
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
}

double normalTail(double z) // above z
{
    return 0.5 * std::erfc(z * M_SQRT1_2);
}

statistics::Refusal outOfRange(const char *what)
{
    return {statistics::Reason::OutOfRange, QString(QString::fromLatin1(what))};
}

bool above(std::initializer_list<double> values)
{
    return std::all_of(values.begin(), values.end(),
                       [](double x) { return std::isfinite(x) && x > 0; });
}

QString percent(double chance)
{
    return QString(QString::number(100.0 * chance, 'g', 2) + QStringLiteral(" %"));
}

} // namespace

double normalLoss(double z)
{
    return normalDensity(z) - z * normalTail(z);
}

double normalSecondLoss(double z)
{
    return 0.5 * ((z * z + 1.0) * normalTail(z) - z * normalDensity(z));
}

double meanShortOf(double stock, double mean, double sd)
{
    return sd * normalLoss((stock - mean) / sd);
}

double meanLeftOf(double stock, double mean, double sd)
{
    return sd * normalLoss((mean - stock) / sd);
}

statistics::Answer<double> economicOrderQuantity(double orderCost, double holdingCost, double rate)
{
    if (!above({orderCost, holdingCost, rate}))
        return outOfRange("The cost of an order, the cost of keeping wood and the use a year must "
                          "all be above zero.");
    return std::sqrt(2.0 * orderCost * rate / holdingCost);
}

double orderingAndHoldingCost(double quantity, double orderCost, double holdingCost, double rate)
{
    return orderCost * rate / quantity + 0.5 * holdingCost * quantity;
}

statistics::Answer<double> newsvendorStock(double mean, double sd, double leftCost,
                                           double missingCost)
{
    if (!above({sd, leftCost, missingCost}) || !std::isfinite(mean))
        return outOfRange(
            "The scatter, the cost of wood left and the cost of wood missing must all "
            "be above zero.");
    const auto z =
        statistics::quantile(statistics::Normal{}, missingCost / (missingCost + leftCost));
    if (!z)
        return z.refusal();
    return mean + z.value() * sd;
}

double newsvendorCost(double stock, double mean, double sd, double leftCost, double missingCost)
{
    return leftCost * meanLeftOf(stock, mean, sd) + missingCost * meanShortOf(stock, mean, sd);
}

double LeadDemand::sd() const
{
    return std::sqrt(lead * dailySd * dailySd + daily * daily * leadSd * leadSd);
}

statistics::Answer<double> reorderPoint(const LeadDemand &demand, double risk)
{
    for (const double x : {demand.daily, demand.dailySd, demand.lead, demand.leadSd})
        if (!std::isfinite(x) || x < 0)
            return outOfRange("Use a day and days of delivery must be zero or more.");
    const auto z = statistics::upperQuantile(statistics::Normal{}, risk);
    if (!z)
        return z.refusal();
    return demand.mean() + z.value() * demand.sd();
}

namespace {

QString noteOf(const PointCheck &check)
{
    QString note = QStringLiteral("The textbook reorder point promises a risk of ") +
                   percent(check.nominal) +
                   QStringLiteral(". With this supplier's lead times it is really ") +
                   percent(check.simulated);
    note += check.simulated > check.nominal
                ? QStringLiteral(": loads that come late in lumps are not a bell curve.")
                : QStringLiteral(": the bell curve fears delays that do not happen.");
    return note;
}

} // namespace

statistics::Answer<PointCheck> checkReorderPoint(double daily, double dailySd, const Spread &lead,
                                                 double never, double risk, quint64 seed, int paths)
{
    std::vector<double> days(static_cast<size_t>(std::max(paths, 2)));
    DrawStream leads(seed, DrawSubject::Offer);
    lead.fill(leads, days.data(), qsizetype(days.size()));
    double sum = 0;
    double squares = 0;
    qsizetype come = 0;
    for (double &d : days) {
        d = leads.uniform() < never ? std::numeric_limits<double>::infinity() : std::max(d, 0.0);
        if (!std::isfinite(d))
            continue;
        ++come;
        const double step = d - sum;
        sum += step / double(come);
        squares += step * (d - sum);
    }
    if (come < 2)
        return outOfRange("No load of this supplier is expected to come at all.");
    LeadDemand demand{daily, dailySd, sum, std::sqrt(squares / double(come - 1))};
    const auto point = reorderPoint(demand, risk);
    if (!point)
        return point.refusal();
    PointCheck check;
    check.point = point.value();
    check.nominal = risk;
    DrawStream uses(seed, DrawSubject::Need);
    qsizetype isShort = 0;
    for (const double d : days) {
        // Over a lead time the sum of normal days is normal.
        const double use =
            std::isfinite(d) ? daily * d + dailySd * std::sqrt(d) * uses.normal() : HUGE_VAL;
        isShort += use > check.point ? 1 : 0;
    }
    const double n = double(days.size());
    check.simulated = double(isShort) / n;
    const double guarded = (double(isShort) + 2.0) / (n + 4.0);
    check.error = std::sqrt(guarded * (1.0 - guarded) / (n + 4.0));
    const double off = std::abs(check.simulated - risk);
    check.misleading = off > 0.25 * risk && off > 4.0 * check.error;
    if (check.misleading)
        check.note = noteOf(check);
    return check;
}

} // namespace rickyard::domain
