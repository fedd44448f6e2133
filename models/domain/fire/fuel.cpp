#include "models/domain/fire/fuel.h"

#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/fuel_default.h"
#include "models/domain/fire/fuel_norm.h"
#include "models/domain/fire/fuel_words.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

QString pitName(const Books &books, RecordId pit)
{
    const QString name = books.pits.value(pit).name;
    return name.isEmpty() ? QStringLiteral("this pit") : name;
}

// A planned cook is counted as a cold start, the dearer of the two.
std::optional<ExpectedUse> byNorm(const Books &books, const PitNorm &norm, double degreeHours)
{
    if (!norm.fitted || !norm.line)
        return std::nullopt;
    const auto interval = predictedHeat(*norm.line, degreeHours, StartKind::Cold);
    if (!interval || interval->centre <= 0)
        return std::nullopt;
    ExpectedUse use;
    use.middle = Heat::rounded(interval->centre);
    use.lower = Heat::rounded(std::max(0.0, interval->lower));
    use.upper = Heat::rounded(interval->upper);
    use.fromNorm = true;
    use.basis = QString(QStringLiteral("The norm of ") + pitName(books, norm.pit) +
                        QStringLiteral(", from ") + QString::number(norm.cooks) +
                        QStringLiteral(" cooks, started cold."));
    return use;
}

std::optional<ExpectedUse> byCrew(const Books &books, const QVector<CookFuel> &cooks,
                                  const Pit &pit, double degreeHours)
{
    const PooledUse pooled = pooledUse(books, cooks);
    const double area = shellArea(pit);
    if (pooled.cooks == 0 || area <= 0)
        return std::nullopt;
    // Wide on purpose: pits differ in more than their size, and a few cooks say little of that.
    constexpr double atLeast = 0.3;
    constexpr double normal90 = 1.645;
    const double middle = pooled.mean * degreeHours * area;
    const double spread = std::max(atLeast, normal90 * pooled.sd / pooled.mean);
    ExpectedUse use;
    use.middle = Heat::rounded(middle);
    use.lower = Heat::rounded(std::max(0.0, middle * (1.0 - spread)));
    use.upper = Heat::rounded(middle * (1.0 + spread));
    use.basis = QString(QStringLiteral("Assumed: ") + pitName(books, pit.id) +
                        QStringLiteral(" has no norm yet, so the crew's pooled use for its steel "
                                       "surface stands in (") +
                        countOf(pooled.cooks, QStringLiteral("cook")) + QStringLiteral(" on ") +
                        countOf(pooled.pits, QStringLiteral("pit")) + QStringLiteral(")."));
    return use;
}

ExpectedUse bySize(const Books &books, const Pit &pit, double length, double degreeHours)
{
    // The table holds for 250 °F inside and 70 °F outside: 100 kelvin apart.
    constexpr double tableDifference = 100.0;
    const WorkingDefault d = workingDefault(pit);
    const double tableHours = length > 0 ? degreeHours / tableDifference : 0.0;
    ExpectedUse use;
    use.middle = d.start + d.hourly * tableHours;
    use.lower = d.startLower + d.hourlyLower * tableHours;
    use.upper = d.startUpper + d.hourlyUpper * tableHours;
    use.basis = QString(QStringLiteral("Assumed: a working default for a pit of ") +
                        pitName(books, pit.id) +
                        QStringLiteral("'s size, calculated and not measured, until cooks are "
                                       "logged."));
    return use;
}

} // namespace

FuelAnswer fuelAnswer(const Books &books, Instant now, const Wording &wording)
{
    const WeatherSeries weather(books);
    const CookReader reader(books, weather, now);
    FuelAnswer answer;
    for (const Cook &cook : books.cooks)
        if (cook.lit <= now)
            answer.cooks << reader.read(cook);
    std::stable_sort(answer.cooks.begin(), answer.cooks.end(),
                     [](const CookFuel &a, const CookFuel &b) { return a.lit < b.lit; });
    for (const Pit &pit : books.pits)
        answer.pits << normOf(books, pit, answer.cooks, now);
    answer.headline = fuelHeadline(books, answer, now, wording);
    return answer;
}

ExpectedUse expectedUse(const Books &books, const FuelAnswer &fuel, RecordId pit, Duration length,
                        Temperature target, Temperature outside)
{
    const double span = std::max(0.0, hours(length));
    const double degreeHours = std::max(0.0, celsius(target) - celsius(outside)) * span;
    for (const PitNorm &norm : fuel.pits)
        if (norm.pit == pit)
            if (auto use = byNorm(books, norm, degreeHours))
                return *use;
    const Pit record = books.pits.value(pit);
    if (auto use = byCrew(books, fuel.cooks, record, degreeHours))
        return *use;
    return bySize(books, record, span, degreeHours);
}

} // namespace rickyard::domain
