// Seasons of a crew of three pits in real weather, with one cause planted at a moment, for studying
// the diagnosis: what happens is worked out from the heat balance, what the crew records goes
// through the watch. Everything follows from the seed. All figures are invented.
#pragma once

#include "models/domain/fire/diagnosis.h"
#include "models/domain/fire/watch.h"
#include "tests/domain/watch_season.h"

#include <algorithm>
#include <vector>

namespace rickyard::test {

struct PlantedPlan {
    domain::CauseKind cause = domain::CauseKind::ThisPit;
    const std::vector<WeatherHour> *year = nullptr;
    std::uint64_t seed = 1;
    double scatter = 0.08;
    int pits = 3;
    int clean = 24;         // cooks of each pit before
    int after = 8;          // and since
    double shelter = 0.25;  // of the wind that reaches pit 1 as it stood; it comes to stand open
    double recorded = 0.75; // chance that a cook has its preheat, openings, gaps, dial, moisture
};

// The wood yard: two stacks open at a time, a cook takes from either or both.
class PlantedWood
{
public:
    PlantedWood(Dice &dice, int perLot) : m_dice(&dice), m_perLot(perLot) {}

    QMap<domain::RecordId, double> take()
    {
        const double pick = m_dice->uniform();
        const double share = pick < 0.35 ? 1.0 : pick < 0.7 ? 0.0 : m_dice->between(0.2, 0.8);
        QMap<domain::RecordId, double> taken;
        if (share > 0.0)
            taken[m_open[0]] += share;
        if (share < 1.0)
            taken[m_open[1]] += 1.0 - share;
        for (std::size_t s = 0; s < 2; ++s) {
            m_left[s] -= s == 0 ? share : 1.0 - share;
            if (m_left[s] <= 0.0)
                open(s);
        }
        return taken;
    }
    // A new delivery in place of the first stack, large enough for what is left of the season.
    domain::RecordId deliver()
    {
        open(0);
        m_left[0] = 1000.0;
        return m_open[0];
    }
    // What a lot's heat is really short of what is believed.
    double shortOf(domain::RecordId lot)
    {
        while (static_cast<domain::RecordId>(m_short.size()) <= lot)
            m_short.push_back(m_dice->lognormal(0.03));
        return m_short[static_cast<std::size_t>(lot)];
    }

private:
    void open(std::size_t stack)
    {
        m_open[stack] = ++m_last;
        m_left[stack] = m_dice->between(0.7, 1.5) * m_perLot;
    }

    Dice *m_dice;
    int m_perLot;
    std::array<domain::RecordId, 2> m_open{1, 2};
    std::array<double, 2> m_left{7.0, 15.0};
    domain::RecordId m_last = 2;
    std::vector<double> m_short;
};

struct PlantedCook {
    domain::WatchCook cook;
    domain::EvidenceCook evidence; // all but the ratio and its width
    bool since = false;
};

struct PlantedSeason {
    std::vector<PlantedCook> cooks; // in time order
    domain::RecordId badLot = 0;
};

inline PlantedSeason plantedSeason(const PlantedPlan &plan)
{
    using domain::CauseKind;
    Dice dice(plan.seed);
    constexpr int kGap = 80;
    const int each = plan.clean + plan.after;
    const auto weather = plan.year ? stretchOf(*plan.year, dice, each * kGap + 400)
                                   : inventedWeather(dice, each * kGap + 400);
    const double crew = dice.lognormal(0.2);
    const domain::HeatColumns terms = {1.0, dice.lognormal(0.25), dice.lognormal(0.25),
                                       dice.lognormal(0.2), dice.lognormal(0.3)};
    std::vector<PitTruth> pits;
    for (int p = 0; p < plan.pits; ++p)
        pits.push_back(inventedTruth(dice, p, crew, terms));
    if (plan.cause == CauseKind::WindShelter)
        pits.front().shape.windShare *= plan.shelter / 0.55;
    PlantedWood wood(dice, 9 * plan.pits);
    // How bad it is this season.
    const double size = dice.between(0.12, 0.22);
    PlantedSeason season;
    for (int n = 1; n <= each; ++n) {
        const bool since = n > plan.clean;
        if (n == plan.clean + 1 && plan.cause == CauseKind::ThisLot)
            season.badLot = wood.deliver();
        for (int p = 0; p < plan.pits; ++p) {
            const bool here = p == 0 && since;
            const auto planted = [&](CauseKind kind) { return since && plan.cause == kind; };
            const int start = (n - 1) * kGap + static_cast<int>(dice.between(0.0, 70.0));
            auto raw = inventedCook(dice, weather, start, p == 1 ? 121.0 : 110.0);
            const PitTruth &truth = pits[static_cast<std::size_t>(p)];
            PlantedCook c;
            auto &e = c.evidence;
            e.cook = static_cast<domain::RecordId>(season.cooks.size()) + 1;
            e.pit = p + 1;
            e.lit = domain::Instant::ofSeconds(3600LL * start);
            e.startCold = raw.start == domain::StartKind::Cold;
            c.since = since;
            c.cook.cook = e.cook;
            c.cook.pit = e.pit;
            c.cook.columns = domain::heatColumns(truth.shape, raw); // by the dial
            for (const auto &hour : raw.course)
                e.wind = e.wind.value_or(0.0) + hour.wind / static_cast<double>(raw.course.size());

            // What the crew did. Habits are the crew's: on every pit.
            double preheat = dice.between(0.8, 1.4);
            double doors = std::max(0.2, 1.5 + 0.4 * dice.normal());
            double gap = std::max(1.1, 1.7 + 0.25 * dice.normal());
            double off = 1.5 * dice.normal();
            double moisture = 0.20 + 0.012 * dice.normal();
            double ratio = 1.0;
            if (planted(CauseKind::Preheat))
                preheat += dice.between(0.8, 1.4);
            if (planted(CauseKind::DoorOpenings))
                doors += 3.0 * dice.between(0.7, 1.3);
            if (planted(CauseKind::FeedGaps))
                gap += 1.5 * dice.between(0.7, 1.3);
            if (here && plan.cause == CauseKind::Thermometer)
                off += 100.0 * size; // 12 to 22 K
            if (planted(CauseKind::Wood)) {
                moisture += 0.07 + 0.01 * dice.normal();
                ratio *= 1.0 + size;
            }
            // Each costs wood, on clean cooks too.
            ratio *= 1.0 + size * (preheat - 1.1) / 1.1;
            ratio *= 1.0 + size * (doors - 1.5) / 3.0;
            ratio *= 1.0 + size * (gap - 1.7) / 1.5;
            if (here && plan.cause == CauseKind::ThisPit)
                ratio *= 1.0 + size;
            e.lots = wood.take();
            for (auto it = e.lots.cbegin(); it != e.lots.cend(); ++it) {
                const double bad = it.key() == season.badLot ? 1.0 + size : 1.0;
                ratio += it.value() * (wood.shortOf(it.key()) * bad - 1.0);
            }

            // What it took.
            domain::HeatShape shape = truth.shape;
            if (here && plan.cause == CauseKind::WindShelter)
                shape.windShare /= plan.shelter;
            for (auto &hour : raw.course)
                hour.pit += off;
            const auto columns = domain::heatColumns(shape, raw);
            double heat = 0.0;
            for (std::size_t j = 0; j < columns.size(); ++j)
                heat += truth.factor[j] * columns[j] / domain::kEfficiency;
            c.cook.actual = heat * ratio * dice.lognormal(plan.scatter);

            // What was written down.
            const auto written = [&](double value) {
                return dice.uniform() < plan.recorded ? std::optional(value) : std::nullopt;
            };
            e.preheat = written(e.startCold ? preheat : 0.4 * preheat);
            e.doors = written(doors);
            e.feedGap = written(gap);
            e.dialOff = written(off + dice.normal());
            e.moisture = written(moisture);
            season.cooks.push_back(c);
        }
    }
    std::stable_sort(season.cooks.begin(), season.cooks.end(),
                     [](const auto &a, const auto &b) { return a.evidence.lit < b.evidence.lit; });
    return season;
}

struct PlantedOutcome {
    domain::Diagnosis diagnosis;
    bool flagged = false; // the pit that was asked about, at the end
    domain::RecordId badLot = 0;

    [[nodiscard]] bool right(domain::CauseKind cause) const
    {
        return !diagnosis.empty() && diagnosis.causes.first().kind == cause &&
               (cause != domain::CauseKind::ThisLot || diagnosis.causes.first().lot == badLot);
    }
};

// Through the watch: false alarms before are answered with "nothing found", later ones stand.
// Asked at the end of the season about the pit whose sum stands highest.
inline PlantedOutcome diagnosedSeason(const PlantedPlan &plan)
{
    const PlantedSeason season = plantedSeason(plan);
    domain::FuelWatch watch;
    PlantedOutcome outcome;
    outcome.badLot = season.badLot;
    QVector<domain::EvidenceCook> evidence;
    QHash<domain::RecordId, domain::RecordId> lastOfPit;
    QHash<domain::RecordId, double> stands;
    for (const PlantedCook &c : season.cooks) {
        domain::EvidenceCook e = c.evidence;
        if (const auto parts = watch.expectedParts(c.cook.pit, c.cook.columns))
            e.windShare = parts->at(domain::WindColumn) / domain::totalHeat(*parts);
        const auto verdict = watch.add(c.cook);
        e.logRatio = std::log1p(verdict.excess);
        e.sd = verdict.forecast.relativeSd;
        evidence << e;
        if (verdict.raised && !c.since)
            watch.nothingFound(c.cook.pit);
        lastOfPit[c.cook.pit] = c.cook.cook;
        stands[c.cook.pit] = verdict.up;
    }
    domain::DiagnosisQuestion question;
    for (auto it = stands.cbegin(); it != stands.cend(); ++it)
        if (question.pit == 0 || it.value() > stands.value(question.pit))
            question.pit = it.key();
    const auto climb = watch.excess(question.pit);
    question.since = climb ? climb->since : lastOfPit.value(question.pit);
    question.flagged = watch.flag(question.pit) == domain::WatchFlag::More;
    outcome.flagged = question.flagged;
    outcome.diagnosis = domain::diagnosisOf(evidence, question);
    return outcome;
}

} // namespace rickyard::test
