#include "models/domain/plan/lead_record.h"

#include <algorithm>
#include <array>

namespace rickyard::domain {

namespace {

using Atoms = std::vector<std::pair<double, double>>; // days late, weight

constexpr std::array<std::pair<double, double>, 6> kDefaultLateness = {
    {{0, 0.50}, {2, 0.12}, {5, 0.12}, {10, 0.10}, {21, 0.08}, {42, 0.05}}};

// Weights sum to the orders that come; what is missing to the orders in all is `never`.
Atoms atomsOf(const LeadRecord &record)
{
    Atoms atoms;
    for (const auto &[days, share] : kDefaultLateness)
        atoms.emplace_back(days, kDefaultOrders * share);
    for (const double days : record.daysLate)
        atoms.emplace_back(days, 1.0);
    return atoms;
}

double neverWeight(const LeadRecord &record)
{
    return record.neverCame + kDefaultOrders * kDefaultNever;
}

double totalOf(const Atoms &atoms)
{
    double sum = 0;
    for (const auto &atom : atoms)
        sum += atom.second;
    return sum;
}

Spread shifted(const Atoms &atoms, double by)
{
    Atoms moved = atoms;
    for (auto &atom : moved)
        atom.first += by;
    return Spread::sample(moved);
}

QString basisOf(const LeadRecord &record)
{
    const auto orders = int(record.daysLate.size()) + record.neverCame;
    if (orders == 0)
        return QStringLiteral("no delivery on record, so a default is taken: half the loads on the "
                              "day, some weeks late, 3 in 100 never");
    const auto late = std::count_if(record.daysLate.cbegin(), record.daysLate.cend(),
                                    [](double days) { return days > 0; });
    QString words = QString::number(late) + QStringLiteral(" of ") + QString::number(orders) +
                    (orders == 1 ? QStringLiteral(" order late") : QStringLiteral(" orders late"));
    if (record.neverCame > 0)
        words += QStringLiteral(", ") + QString::number(record.neverCame) +
                 QStringLiteral(" never delivered");
    return QString(words + QStringLiteral(", mixed with the default as if it were 2 orders more"));
}

} // namespace

Lateness latenessOf(const LeadRecord &record)
{
    const Atoms atoms = atomsOf(record);
    const double never = neverWeight(record);
    return {Spread::sample(atoms), never / (never + totalOf(atoms)),
            int(record.daysLate.size()) + record.neverCame, basisOf(record)};
}

ExpectedArrival arrivalOf(const LeadRecord &record, double promisedDay)
{
    Atoms atoms = atomsOf(record);
    std::erase_if(atoms, [&](const auto &atom) { return promisedDay + atom.first < 0; });
    const double never = neverWeight(record);
    return {shifted(atoms, promisedDay), never / (never + totalOf(atoms))};
}

Spread leadDays(const LeadRecord &record, double promisedDays)
{
    Atoms atoms = atomsOf(record);
    for (auto &atom : atoms)
        atom.first = std::max(atom.first, -promisedDays); // nobody delivers before being asked
    return shifted(atoms, promisedDays);
}

} // namespace rickyard::domain
