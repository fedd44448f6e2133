#include "models/domain/plan/stock_paths.h"

#include "models/domain/plan/stock_run.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace rickyard::domain {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr int kFewestPaths = 100;
constexpr int kMostPaths = 1000000;

Problem spoiled(const char *what)
{
    return {QString::fromLatin1(what),
            QStringLiteral("The plan of the wood holds a number that is missing or out of range "
                           "(%1). Correct the record it comes from.")
                .arg(QString::fromLatin1(what))};
}

bool isChance(double chance)
{
    return chance >= 0 && chance <= 1;
}

Problems problemsOf(const StockPlan &plan, int paths)
{
    Problems problems;
    const auto eventOk = [&](int event) { return event >= -1 && event < plan.events; };
    if (plan.days < 1 || plan.days > kMostStockDays)
        problems << spoiled("days");
    if (paths < kFewestPaths || paths > kMostPaths)
        problems << spoiled("paths");
    for (const StockNeed &need : plan.needs)
        if (!need.heat.finite() || !eventOk(need.event) || !isChance(need.shared) ||
            !isChance(need.spellShared) || !isChance(need.shared + need.spellShared))
            problems << spoiled("need");
    for (const StockLot &lot : plan.lots)
        if (!lot.heat.finite() || !lot.readyDay.finite() || !eventOk(lot.reservedFor))
            problems << spoiled("lot");
    for (const StockDelivery &d : plan.deliveries)
        if (!d.heat.finite() || !d.arrivalDay.finite() || !d.dryingDays.finite() ||
            !isChance(d.never) || !eventOk(d.reservedFor))
            problems << spoiled("order");
    for (const StockOffer &offer : plan.offers)
        if (!offer.share.finite() || !offer.leadDays.finite() || !offer.dryingDays.finite() ||
            !isChance(offer.never) || !(offer.againAfter >= 0))
            problems << spoiled("offer");
    if (!isChance(plan.unplanned.chance) || !plan.unplanned.heat.finite())
        problems << spoiled("unplanned");
    return problems;
}

void notBelowZero(std::vector<double> &row)
{
    for (double &x : row)
        x = std::max(x, 0.0);
}

// The normal scores that needs have in common, one a path.
class SharedScores
{
public:
    SharedScores(quint64 seed, size_t size) : m_seed(seed), m_size(size) {}

    // What a need shares with others, of group and spell together, and how much of its variance.
    std::vector<double> of(const StockNeed &need, double &share)
    {
        const double group = need.group >= 0 ? need.shared : 0.0;
        const double spell = need.spell >= 0 ? need.spellShared : 0.0;
        share = group + spell;
        if (!(share > 0))
            return {};
        if (!(spell > 0))
            return drawn(need.group, 0);
        std::vector<double> sum = drawn(need.spell, 1);
        const double ofSpell = std::sqrt(spell / share);
        const double ofGroup = std::sqrt(group / share);
        if (!(group > 0))
            return sum;
        const std::vector<double> &norm = drawn(need.group, 0);
        for (size_t i = 0; i < m_size; ++i)
            sum[i] = ofSpell * sum[i] + ofGroup * norm[i];
        return sum;
    }

private:
    const std::vector<double> &drawn(int number, int kind)
    {
        std::vector<double> &scores = m_scores[{number, kind}];
        if (scores.empty()) {
            scores.resize(m_size);
            DrawStream stream(m_seed, DrawSubject::SharedNeed, number, kind);
            std::generate(scores.begin(), scores.end(), [&] { return stream.normal(); });
        }
        return scores;
    }

    quint64 m_seed;
    size_t m_size;
    std::map<std::pair<int, int>, std::vector<double>> m_scores;
};

} // namespace

Outcome<StockPaths> StockPaths::draw(StockPlan plan, quint64 seed, int paths)
{
    const Problems problems = problemsOf(plan, paths);
    if (!problems.isEmpty())
        return problems;
    StockPaths drawn;
    drawn.m_plan = std::move(plan);
    drawn.m_seed = seed;
    drawn.m_paths = paths;
    drawn.m_padded = (paths + StockRun::kLanes - 1) / StockRun::kLanes * StockRun::kLanes;
    drawn.drawNeeds();
    drawn.drawUnplanned();
    drawn.drawSources();
    return drawn;
}

void StockPaths::drawNeeds()
{
    const auto size = static_cast<size_t>(m_padded);
    SharedScores scores(m_seed, size);
    m_needs.resize(m_plan.needs.size());
    for (size_t i = 0; i < m_plan.needs.size(); ++i) {
        const StockNeed &need = m_plan.needs[i];
        if (need.day < 0 || need.day >= m_plan.days)
            continue;
        m_order.push_back(i);
        DrawStream stream(m_seed, DrawSubject::Need, need.key);
        m_needs[i].resize(size);
        double share = 0;
        const Row common = scores.of(need, share);
        if (share > 0)
            need.heat.fillShared(stream, common.data(), share, m_needs[i].data(), m_padded);
        else
            need.heat.fill(stream, m_needs[i].data(), m_padded);
        notBelowZero(m_needs[i]);
    }
    std::stable_sort(m_order.begin(), m_order.end(), [this](size_t a, size_t b) {
        return m_plan.needs[a].day < m_plan.needs[b].day;
    });
}

// The days between two fires follow the geometric distribution, so a path draws as often as it
// has fires and not once a day.
void StockPaths::drawUnplanned()
{
    const double chance = m_plan.unplanned.chance;
    if (!(chance > 0))
        return;
    const double perDay = std::log1p(-chance); // of no fire; minus infinity at a chance of 1
    const Spread &heat = m_plan.unplanned.heat;
    for (qsizetype path = 0; path < m_padded; ++path) {
        m_firstFire.push_back(m_fireDay.size());
        DrawStream stream(m_seed, DrawSubject::Unplanned, path);
        for (double day = 0;; ++day) {
            day += std::floor(std::log(stream.uniform()) / perDay);
            if (day >= m_plan.days)
                break;
            m_fireDay.push_back(static_cast<int>(day));
            m_fireHeat.push_back(std::max(0.0, heat.atScore(stream.normal())));
        }
    }
    m_firstFire.push_back(m_fireDay.size());
}

void StockPaths::drawSources()
{
    const auto size = static_cast<size_t>(m_padded);
    for (const StockLot &lot : m_plan.lots) {
        Source source;
        source.heat.resize(size);
        source.ready.resize(size);
        DrawStream heat(m_seed, DrawSubject::LotHeat, lot.key);
        lot.heat.fill(heat, source.heat.data(), m_padded);
        notBelowZero(source.heat);
        DrawStream ready(m_seed, DrawSubject::LotReady, lot.key);
        lot.readyDay.fill(ready, source.ready.data(), m_padded);
        source.reservedFor = lot.reservedFor;
        m_lots.push_back(std::move(source));
    }
    for (const StockDelivery &d : m_plan.deliveries) {
        DrawStream stream(m_seed, DrawSubject::Delivery, d.key);
        m_comings.push_back(
            arriving(stream, d.heat, 1.0, d.arrivalDay, 0.0, d.never, d.dryingDays));
        m_comings.back().reservedFor = d.reservedFor;
    }
}

void StockPaths::drawOrder(const PlacedOrder &order, std::vector<Source> &sources) const
{
    const StockOffer &offer = m_plan.offers.at(order.offer);
    const auto load = [&](int number, double day) {
        DrawStream stream(m_seed, DrawSubject::Offer, offer.key, number);
        return arriving(stream, offer.share, order.heat, offer.leadDays, day, offer.never,
                        offer.dryingDays);
    };
    sources.push_back(load(2 * order.load, order.day + order.lateBy));
    if (!std::isfinite(offer.againAfter))
        return;
    const double again = order.day + offer.againAfter;
    Source second = load(2 * order.load + 1, again);
    const Source &first = sources.back();
    for (size_t i = 0; i < second.arrival.size(); ++i) {
        const double came = first.arrival[i];
        if (came > again)
            continue;
        if (offer.againWhenWet && first.ready[i] > came + 1.0) { // asked for on that day
            second.arrival[i] -= again - came;
            second.ready[i] -= again - came;
        } else {
            second.arrival[i] = second.ready[i] = kNever;
            second.heat[i] = 0;
        }
    }
    sources.push_back(std::move(second));
}

StockPaths::Source StockPaths::arriving(DrawStream &stream, const Spread &amount, double times,
                                        const Spread &day, double plus, double never,
                                        const Spread &drying) const
{
    const auto size = static_cast<size_t>(m_padded);
    Source source;
    source.heat.resize(size);
    source.arrival.resize(size);
    source.ready.resize(size);
    amount.fill(stream, source.heat.data(), m_padded);
    for (double &heat : source.heat)
        heat = std::max(heat * times, 0.0);
    day.fill(stream, source.arrival.data(), m_padded);
    if (never > 0)
        for (double &arrival : source.arrival)
            arrival = stream.uniform() < never ? kNever : arrival;
    drying.fill(stream, source.ready.data(), m_padded);
    for (size_t i = 0; i < size; ++i) {
        source.arrival[i] = std::max(0.0, std::floor(source.arrival[i] + plus));
        source.ready[i] = source.arrival[i] + 1.0 + std::max(0.0, source.ready[i]);
        if (source.arrival[i] == kNever)
            source.heat[i] = 0; // no wood at all, not wood that is left
    }
    return source;
}

StockOutcome StockPaths::run(const WhatIf &whatIf, const CancelCheck &cancel) const
{
    return StockRun(*this, whatIf).run(cancel);
}

int StockOutcome::worstEvent() const
{
    int worst = -1;
    for (size_t e = 0; e < events.size(); ++e)
        if (events[e].judged &&
            (worst < 0 || events[e].chance > events[static_cast<size_t>(worst)].chance))
            worst = static_cast<int>(e);
    return worst;
}

double StockOutcome::worstChance() const
{
    const int worst = worstEvent();
    return worst < 0 ? 0.0 : events[static_cast<size_t>(worst)].chance;
}

double shownStep(double error)
{
    double decade = 0.001;
    while (true) {
        for (const double step : {1.0, 2.0, 5.0})
            if (step * decade >= 4.0 * error || step * decade >= 1.0)
                return step * decade;
        decade *= 10.0;
    }
}

double shownChance(const EventRisk &risk)
{
    const double step = shownStep(risk.error);
    return std::round(risk.chance / step) * step;
}

} // namespace rickyard::domain
