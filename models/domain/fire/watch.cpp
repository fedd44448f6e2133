#include "models/domain/fire/watch.h"

#include "models/domain/statistics/descriptive.h"
#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {
namespace {

struct WatchWords {
    Q_DECLARE_TR_FUNCTIONS(FuelWatch)
};

// Beyond this score a cook says more about itself than about the pit.
constexpr double kSurprise = 3.0;

// Crew: the whole, then wind, lighting, food, rain. Pit: the whole, wind, lighting.
constexpr int kCrewTerms = 5;
constexpr int kPitTerms = 3;

statistics::BayesRegression startingNorm(const WatchSettings &s)
{
    Eigen::VectorXd mean = Eigen::VectorXd::Zero(kCrewTerms);
    mean[0] = 1.0;
    Eigen::VectorXd sd = Eigen::VectorXd::Constant(kCrewTerms, s.crewTerm);
    sd[0] = s.crewWhole;
    const auto norm = statistics::BayesRegression::start(
        statistics::RegressionPrior::independent(mean, sd, s.scatterWorth, s.scatter));
    Q_ASSERT(norm.ok()); // settings out of range are a defect of the caller
    return norm.value();
}

// A relative standard deviation as the variance of a logarithm.
double logVariance(double relativeSd)
{
    return std::log1p(relativeSd * relativeSd);
}

// Score of actual over expected on a predictive t about 1.
double scoreOf(double relative, double relativeSd, double dof)
{
    const double v = logVariance(relativeSd);
    return statistics::normalScore((std::log(relative) + 0.5 * v) / std::sqrt(v), dof);
}

bool usable(const WatchCook &cook)
{
    const bool finite = std::all_of(cook.columns.begin(), cook.columns.end(),
                                    [](double v) { return std::isfinite(v) && v >= 0.0; });
    return finite && totalHeat(cook.columns) > 0.0;
}

} // namespace

FuelWatch::FuelWatch(WatchSettings settings) : m_settings(settings), m_norm(startingNorm(settings))
{
    const auto h = statistics::decisionInterval(settings.cooksPerFalseAlarm);
    Q_ASSERT(h.ok());
    m_baseLimit = h ? h.value() : 0.0;
}

std::vector<double> FuelWatch::rowFor(int block, const HeatColumns &shares) const
{
    std::vector<double> row(static_cast<std::size_t>(m_norm.coefficientCount()), 0.0);
    const double whole = totalHeat(shares);
    row[0] = whole;
    row[1] = shares[WindColumn];
    row[2] = shares[LightingColumn];
    row[3] = shares[FoodColumn];
    row[4] = shares[RainColumn];
    if (block >= 0) {
        const auto b = static_cast<std::size_t>(block);
        row[b] = whole;
        row[b + 1] = shares[WindColumn];
        row[b + 2] = shares[LightingColumn];
    }
    return row;
}

std::optional<statistics::PredictiveT> FuelWatch::predictive(int block, const HeatColumns &shares,
                                                             double weight) const
{
    auto t = m_norm.predict(rowFor(block, shares), weight);
    if (!t)
        return {};
    statistics::PredictiveT p = t.value();
    if (block < 0) {
        // A pit not seen yet has a whole, a wind and a lighting of its own, of which only the
        // spread is known.
        const auto sq = [](double v) { return v * v; };
        const double s2 = sq(m_settings.scatter);
        const double own = (sq(m_settings.pitWhole * totalHeat(shares)) +
                            sq(m_settings.pitTerm * shares[WindColumn]) +
                            sq(m_settings.pitTerm * shares[LightingColumn])) /
                           s2;
        p.leverage += own;
        p.scale = m_norm.scale() * std::sqrt(1.0 / weight + p.leverage);
    }
    return p;
}

double FuelWatch::limitFor(double leverage, double weight) const
{
    const double rho = leverage / (1.0 / weight + leverage);
    return m_baseLimit + m_settings.limitPerShare * rho;
}

namespace {

HeatColumns divided(HeatColumns columns, double by)
{
    for (double &c : columns)
        c /= by;
    return columns;
}

} // namespace

std::optional<WatchForecast> FuelWatch::expect(RecordId pit, const HeatColumns &columns,
                                               double trust) const
{
    const int block = m_pits.contains(pit) ? m_pits.constFind(pit)->block : -1;
    // Once to learn how large the cook is, once in units of that size.
    const HeatColumns wanted = divided(columns, m_settings.efficiency);
    const double crude = totalHeat(wanted);
    if (!(crude > 0.0) || !std::isfinite(crude) || !(trust > 0.0))
        return {};
    const auto first = predictive(block, divided(wanted, crude), trust);
    if (!first || !(first->location > 0.0))
        return {};
    const double size = crude * first->location;
    const auto t = predictive(block, divided(wanted, size), trust);
    if (!t)
        return {};
    const double v = logVariance(t->scale);
    const auto quantile = statistics::twoSided(statistics::StudentT{t->dof}, m_settings.level);
    if (!quantile)
        return {};
    WatchForecast f;
    f.expected = size;
    f.relativeSd = t->scale;
    f.dof = t->dof;
    f.lower = size * std::exp(-0.5 * v - quantile.value() * std::sqrt(v));
    f.upper = size * std::exp(-0.5 * v + quantile.value() * std::sqrt(v));
    return f;
}

std::optional<HeatColumns> FuelWatch::expectedParts(RecordId pit, const HeatColumns &columns) const
{
    const auto b = m_norm.coefficients();
    if (!b)
        return {};
    const int block = m_pits.contains(pit) ? m_pits.constFind(pit)->block : -1;
    const Eigen::VectorXd &c = b.value();
    const double whole = c[0] + (block >= 0 ? c[block] : 0.0);
    HeatColumns parts = divided(columns, m_settings.efficiency);
    parts[ShellColumn] *= whole;
    parts[WindColumn] *= whole + c[1] + (block >= 0 ? c[block + 1] : 0.0);
    parts[LightingColumn] *= whole + c[2] + (block >= 0 ? c[block + 2] : 0.0);
    parts[FoodColumn] *= whole + c[3];
    parts[RainColumn] *= whole + c[4];
    return parts;
}

void FuelWatch::openBlock(PitBook &book)
{
    book.block = m_norm.coefficientCount();
    const double s = m_settings.scatter;
    const std::array<double, kPitTerms> mean{};
    const std::array<double, kPitTerms> sd{m_settings.pitWhole / s, m_settings.pitTerm / s,
                                           m_settings.pitTerm / s};
    m_norm.append(mean, sd);
}

void FuelWatch::learn(const PitBook &book, const Row &row)
{
    // Rows were checked when the cook came in: nothing to refuse.
    [[maybe_unused]] const auto refusal =
        m_norm.learn(rowFor(book.block, row.shares), row.learned, row.weight);
    Q_ASSERT(!refusal);
}

void FuelWatch::giveBack(PitBook &book)
{
    for (const Row &row : std::as_const(book.held))
        learn(book, row);
    book.held.clear();
}

WatchVerdict FuelWatch::add(const WatchCook &cook)
{
    WatchVerdict verdict;
    verdict.cook = cook.cook;
    verdict.pit = cook.pit;
    if (!usable(cook)) {
        verdict.leftOut = WatchWords::tr("Its hours, temperatures or pit size are missing, so what "
                                         "it should have burned is not known.");
        return verdict;
    }
    if (!std::isfinite(cook.actual) || cook.actual <= 0.0 || !(cook.trust > 0.0)) {
        verdict.leftOut = WatchWords::tr("What it burned is not known.");
        return verdict;
    }
    const double trust = std::min(1.0, cook.trust);
    PitBook &book = m_pits[cook.pit];
    if (book.block < 0)
        openBlock(book);
    const auto forecast = expect(cook.pit, cook.columns, trust);
    if (!forecast) {
        verdict.leftOut = WatchWords::tr("The norm gives no expectation for such a cook.");
        return verdict;
    }
    verdict.forecast = *forecast;
    Row row;
    row.cook = cook.cook;
    row.size = forecast->expected;
    row.relative = cook.actual / forecast->expected;
    row.shares = divided(cook.columns, m_settings.efficiency * forecast->expected);
    verdict.excess = row.relative - 1.0;
    verdict.score = scoreOf(row.relative, forecast->relativeSd, forecast->dof);
    const double far = std::abs(verdict.score);
    const double clipped = std::clamp(verdict.score, -kSurprise, kSurprise);
    row.score = clipped;
    row.learned = row.relative;
    row.weight = trust;
    row.trust = trust;
    if (far > kSurprise) {
        const double v = logVariance(forecast->relativeSd);
        row.learned = std::exp(-0.5 * v + clipped * std::sqrt(v));
        row.weight *= kSurprise / far;
    }
    const auto t = predictive(book.block, row.shares, trust);
    verdict.limit = limitFor(t ? t->leverage : 0.0, trust);
    chart(book, cook, row, clipped, verdict);
    return verdict;
}

void FuelWatch::chart(PitBook &book, const WatchCook &cook, const Row &row, double score,
                      WatchVerdict &verdict)
{
    const WatchFlag before = book.flag;
    if (cook.knownGood) {
        book.chart = {};
        book.flag = WatchFlag::None;
    } else {
        book.chart.add(score);
        if (book.chart.up.sum > verdict.limit)
            book.flag = WatchFlag::More;
        else if (book.chart.down.sum > verdict.limit)
            book.flag = WatchFlag::Less;
        else if ((book.flag == WatchFlag::More && book.chart.up.run == 0) ||
                 (book.flag == WatchFlag::Less && book.chart.down.run == 0))
            book.flag = WatchFlag::None;
    }
    const auto follow = [&](QVector<Row> &climb, const statistics::CusumSide &side) {
        if (side.run == 0)
            climb.clear();
        else
            climb << row;
    };
    follow(book.up, book.chart.up);
    follow(book.down, book.chart.down);
    if (book.chart.up.sum > m_settings.holdAbove || !book.held.isEmpty())
        book.held << row;
    else
        learn(book, row);
    if (book.chart.up.run == 0)
        giveBack(book);
    verdict.heldBack = !book.held.isEmpty();
    verdict.up = book.chart.up.sum;
    verdict.down = book.chart.down.sum;
    verdict.flag = book.flag;
    verdict.raised = book.flag != WatchFlag::None && book.flag != before;
}

void FuelWatch::nothingFound(RecordId pit)
{
    const auto book = m_pits.find(pit);
    if (book == m_pits.end())
        return;
    giveBack(*book);
    book->chart = {};
    book->up.clear();
    book->down.clear();
    book->flag = WatchFlag::None;
}

void FuelWatch::repaired(RecordId pit)
{
    const auto book = m_pits.find(pit);
    if (book == m_pits.end())
        return;
    const double s = m_settings.scatter;
    const std::array<int, kPitTerms> which{book->block, book->block + 1, book->block + 2};
    const std::array<double, kPitTerms> sd{m_settings.repairWhole / s, m_settings.repairTerm / s,
                                           m_settings.repairTerm / s};
    m_norm.loosen(which, sd);
    book->held.clear();
    book->chart = {};
    book->up.clear();
    book->down.clear();
    book->flag = WatchFlag::None;
}

qsizetype FuelWatch::startOfShift(const QVector<Row> &climb, double sign)
{
    qsizetype best = climb.size() - 1;
    double sum = 0.0;
    double most = 0.0;
    for (qsizetype i = climb.size() - 1; i >= 0; --i) {
        sum += sign * climb.at(i).score;
        const double likelihood = sum > 0.0 ? sum * sum / double(climb.size() - i) : 0.0;
        if (likelihood > most) {
            most = likelihood;
            best = i;
        }
    }
    return best;
}

std::optional<WatchExcess> FuelWatch::excess(RecordId pit, WatchFlag direction) const
{
    const auto book = m_pits.constFind(pit);
    if (book == m_pits.constEnd())
        return {};
    const QVector<Row> &climb = direction == WatchFlag::Less ? book->down : book->up;
    if (climb.isEmpty())
        return {};
    const qsizetype first = startOfShift(climb, direction == WatchFlag::Less ? -1.0 : 1.0);
    // The mean of its cooks against the mean of what today's norm expects of them: one
    // predictive t for a row that is their average and has the weight of all together.
    const QVector<Row> shift = climb.mid(first);
    // One absurd cook among them counts as a surprise away from their middle, not from the norm.
    std::vector<double> ratios;
    for (const Row &row : shift)
        ratios.push_back(row.relative);
    const auto middle = statistics::median(ratios);
    if (!middle)
        return {};
    const double reach = std::exp(kSurprise * std::sqrt(logVariance(m_norm.scale())));
    HeatColumns shares{};
    double relative = 0.0;
    double joules = 0.0;
    double weight = 0.0;
    for (const Row &row : shift) {
        const double ratio =
            std::clamp(row.relative, middle.value() / reach, middle.value() * reach);
        for (std::size_t j = 0; j < shares.size(); ++j)
            shares[j] += row.trust * row.shares[j];
        relative += row.trust * ratio;
        joules += (ratio - 1.0) * row.size;
        weight += row.trust;
    }
    shares = divided(shares, weight);
    relative /= weight;
    const auto t = predictive(book->block, shares, weight);
    const auto q = t ? statistics::twoSided(statistics::StudentT{t->dof}, m_settings.level)
                     : statistics::Answer<double>(0.0);
    if (!t || !q || !(t->location > 0.0))
        return {};
    const double half = q.value() * std::sqrt(logVariance(t->scale / t->location));
    const double ratio = relative / t->location;
    WatchExcess e;
    e.since = climb.at(first).cook;
    e.cooks = static_cast<int>(shift.size());
    e.percent = 100.0 * (ratio - 1.0);
    e.lower = 100.0 * (ratio * std::exp(-half) - 1.0);
    e.upper = 100.0 * (ratio * std::exp(half) - 1.0);
    e.joulesPerCook = joules / e.cooks;
    return e;
}

WatchFlag FuelWatch::flag(RecordId pit) const
{
    const auto book = m_pits.constFind(pit);
    return book == m_pits.constEnd() ? WatchFlag::None : book->flag;
}

int FuelWatch::heldBack(RecordId pit) const
{
    const auto book = m_pits.constFind(pit);
    return book == m_pits.constEnd() ? 0 : static_cast<int>(book->held.size());
}

} // namespace rickyard::domain
