#include "models/domain/fire/fuel_words.h"

#include "models/domain/quantities/units.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

// Wood above this hisses and smoulders beyond what its water alone explains (dry basis, common
// practice, no source).
constexpr Moisture kSmoulders = Moisture::ofBase(25000);
// Wind that much above that of the norm's cooks can explain a fifth more use by itself.
constexpr Speed kMuchWindier = Speed::ofBase(2000);

// Other pits that much over what was to be expected burn more too.
constexpr double kTooMuch = 0.075;

struct Conditions {
    std::optional<Moisture> moisture;
    std::optional<Speed> wind;
};

template <class Q>
std::optional<Q> meanOf(const QVector<Q> &values)
{
    if (values.isEmpty())
        return std::nullopt;
    double sum = 0;
    for (const Q value : values)
        sum += value.toDouble();
    return Q::rounded(sum / static_cast<double>(values.size()));
}

Conditions conditionsOf(const QVector<const CookFuel *> &cooks)
{
    QVector<Moisture> moistures;
    QVector<Speed> winds;
    for (const CookFuel *cook : cooks) {
        if (cook->meanMoisture)
            moistures << *cook->meanMoisture;
        if (cook->meanWind)
            winds << *cook->meanWind;
    }
    return {meanOf(moistures), meanOf(winds)};
}

QVector<const CookFuel *> lastOf(const FuelAnswer &answer, const PitFuel &pit)
{
    QVector<const CookFuel *> cooks;
    for (const CookFuel &cook : answer.cooks)
        if (pit.last.contains(cook.cook))
            cooks << &cook;
    return cooks;
}

// Every other pit that has a norm burned more than usual too, and shares a lot with this one.
bool othersTooWithItsWood(const FuelAnswer &answer, const PitFuel &pit)
{
    QVector<RecordId> lots;
    for (const CookFuel *cook : lastOf(answer, pit))
        lots << cook->lots.keys();
    int others = 0;
    for (const PitFuel &other : answer.pits) {
        if (other.pit == pit.pit || other.last.isEmpty())
            continue;
        ++others;
        bool shares = false;
        for (const CookFuel *cook : lastOf(answer, other))
            shares = shares || std::any_of(lots.begin(), lots.end(),
                                           [&](RecordId lot) { return cook->lots.contains(lot); });
        if (!shares || other.excessOfLast <= kTooMuch)
            return false;
    }
    return others > 0;
}

} // namespace

Suspicion suspicionOf(const FuelAnswer &answer, const PitFuel &pit, const Wording &wording)
{
    const QLocale locale(wording.locale);
    const UnitSystem system = wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    QVector<const CookFuel *> learned;
    for (const CookFuel &cook : answer.cooks)
        if (cook.pit == pit.pit && cook.verdict && !pit.last.contains(cook.cook))
            learned << &cook;
    const Conditions last = conditionsOf(lastOf(answer, pit));
    const Conditions usual = conditionsOf(learned);
    Suspicion s;
    if (last.moisture)
        s.reasons << Reason{
            QStringLiteral("Wood of those cooks"), show(*last.moisture, system, locale), false, {}};
    if (last.wind && usual.wind)
        s.reasons << Reason{QStringLiteral("Wind"),
                            QString(show(*last.wind, system, locale) + QStringLiteral(" against ") +
                                    show(*usual.wind, system, locale) +
                                    QStringLiteral(" in the norm's cooks")),
                            false,
                            {}};
    const auto next = [&s](const QString &words) {
        s.reasons << Reason{QStringLiteral("Then look at"), words, false, {}};
    };
    const QString gasket = QStringLiteral("the door gasket and the seams (paper strip at eight "
                                          "points; common practice, no source)");
    if (last.moisture && *last.moisture > kSmoulders) {
        s.sentence = QStringLiteral("Look at the wood first: it was wet.");
        next(gasket);
    } else if (othersTooWithItsWood(answer, pit)) {
        s.sentence = QStringLiteral("Look at the wood and how it is measured first: every pit "
                                    "burns more.");
        next(gasket);
    } else if (last.wind && usual.wind && *last.wind - *usual.wind > kMuchWindier) {
        s.sentence = QStringLiteral("Look at the wind first: it blew harder than usual.");
        next(gasket);
    } else {
        s.sentence = QStringLiteral("Look at the door gasket first.");
        next(QStringLiteral("the ash under the grate, the intake and the soot in the stack (common "
                            "practice, no source)"));
    }
    return s;
}

} // namespace rickyard::domain
