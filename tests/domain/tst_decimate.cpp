// Properties of the thinning of a series, over many random series. There is no outside value to
// compare with: what is promised is the envelope, and the test recomputes it from the full series.
#include "models/domain/statistics/decimate.h"
#include "tests/support/registry.h"

#include <QTest>

#include <algorithm>
#include <cmath>
#include <random>

using namespace rickyard::domain::statistics;

namespace
{

struct Series {
    std::vector<double> x;
    std::vector<double> y;
};

// A probe trace of sorts: uneven times with repeats and long pauses, a random walk in coarse steps
// (so that readings tie), rare spikes; some series are flat.
Series randomSeries(std::mt19937 &random, std::size_t count)
{
    std::uniform_real_distribution<double> uniform(0.0, 1.0);
    std::normal_distribution<double> normal;
    const bool flat = uniform(random) < 0.1;
    Series s;
    double t = 1e9 * uniform(random);
    double v = 225.0;
    for (std::size_t i = 0; i < count; ++i) {
        const double kind = uniform(random);
        t += kind < 0.1 ? 0.0 : (kind > 0.995 ? 5000.0 : 10.0 * uniform(random));
        v += flat ? 0.0 : std::round(normal(random) * 2.0) / 2.0;
        s.x.push_back(t);
        s.y.push_back(!flat && uniform(random) < 0.003 ? v + 300.0 * normal(random) : v);
    }
    return s;
}

} // namespace

class TstDecimate : public QObject
{
    Q_OBJECT
private slots:
    void keepsEndsOrderAndLimit();
    void keepsTheEnvelope();
    void keepsALoneSpike();
    void shortSeriesComeBackWhole();
    void sameTimeThroughout();
    void columnsCoverTheRange();
    void refusals();
};

void TstDecimate::keepsEndsOrderAndLimit()
{
    std::mt19937 random(1);
    for (int round = 0; round < 300; ++round) {
        const std::size_t count = 1 + random() % 3000;
        const std::size_t most = 4 + random() % 400;
        const Series s = randomSeries(random, count);
        const auto kept = minMaxDecimation(s.x, s.y, most);
        QVERIFY(kept.ok());
        const auto &at = kept.value();
        QVERIFY(at.size() <= most);
        QCOMPARE(at.front(), std::size_t{0});
        QCOMPARE(at.back(), count - 1);
        // Strictly ascending: in order, and no point twice.
        QVERIFY(std::adjacent_find(at.begin(), at.end(), std::greater_equal<>()) == at.end());
        QCOMPARE(minMaxDecimation(s.x, s.y, most).value(), at);
    }
}

// Column by column, the lowest and the highest reading of what is kept are those of the whole.
void TstDecimate::keepsTheEnvelope()
{
    std::mt19937 random(2);
    for (int round = 0; round < 200; ++round) {
        const std::size_t count = 500 + random() % 3000;
        const std::size_t most = 4 + random() % 300;
        const Series s = randomSeries(random, count);
        const auto kept = minMaxDecimation(s.x, s.y, most);
        QVERIFY(kept.ok());
        const std::size_t columns = (most - 2) / 2;
        const double width = (s.x.back() - s.x.front()) / static_cast<double>(columns);
        struct Range {
            double low = HUGE_VAL;
            double high = -HUGE_VAL;
        };
        std::vector<Range> whole(columns);
        std::vector<Range> thinned(columns);
        // Times within rounding of a column's edge may be counted on either side. They are left
        // out of what is demanded, and what is kept there serves both columns.
        const auto widen = [&](std::vector<Range> &ranges, std::size_t i, bool demanded) {
            const double place = (s.x[i] - s.x.front()) / width;
            const bool onEdge = std::abs(place - std::round(place)) < 1e-6;
            if (onEdge && demanded)
                return;
            const double slack = onEdge ? 0.5 : 0.0;
            for (const double side : {place - slack, place + slack}) {
                const auto c = static_cast<std::size_t>(std::max(0.0, side));
                Range &r = ranges[std::min(c, columns - 1)];
                r.low = std::min(r.low, s.y[i]);
                r.high = std::max(r.high, s.y[i]);
            }
        };
        for (std::size_t i = 0; i < count; ++i)
            widen(whole, i, true);
        for (const std::size_t i : kept.value())
            widen(thinned, i, false);
        for (std::size_t c = 0; c < columns; ++c) {
            QVERIFY(thinned[c].low <= whole[c].low);
            QVERIFY(thinned[c].high >= whole[c].high);
        }
        // And so the extremes of all.
        const auto [low, high] = std::minmax_element(s.y.begin(), s.y.end());
        double keptLow = HUGE_VAL;
        double keptHigh = -HUGE_VAL;
        for (const std::size_t i : kept.value()) {
            keptLow = std::min(keptLow, s.y[i]);
            keptHigh = std::max(keptHigh, s.y[i]);
        }
        QCOMPARE(keptLow, *low);
        QCOMPARE(keptHigh, *high);
    }
}

void TstDecimate::keepsALoneSpike()
{
    for (const double spike : {500.0, -500.0}) {
        for (std::size_t at = 0; at < 2000; at += 37) {
            Series s;
            for (int i = 0; i < 2000; ++i) {
                s.x.push_back(i);
                s.y.push_back(250.0);
            }
            s.y[at] = spike;
            const auto kept = minMaxDecimation(s.x, s.y, 20);
            QVERIFY(kept.ok());
            QVERIFY(std::binary_search(kept->begin(), kept->end(), at));
        }
    }
}

void TstDecimate::shortSeriesComeBackWhole()
{
    const std::vector<double> ten{0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    QCOMPARE(minMaxDecimation(ten, ten, 10)->size(), std::size_t{10});
    QVERIFY(minMaxDecimation(ten, ten, 9)->size() <= 9);
    QVERIFY(minMaxDecimation({}, {}, 4)->empty());
    const std::vector<double> one{5};
    QCOMPARE(minMaxDecimation(one, one, 4).value(), std::vector<std::size_t>{0});
}

void TstDecimate::sameTimeThroughout()
{
    const std::vector<double> x(100, 7.0);
    std::vector<double> y(100, 1.0);
    y[40] = 9.0;
    y[70] = -3.0;
    const std::vector<std::size_t> expected{0, 40, 70, 99};
    QCOMPARE(minMaxDecimation(x, y, 50).value(), expected);
}

void TstDecimate::columnsCoverTheRange()
{
    QCOMPARE(columnsFor(3), std::size_t{0});
    QCOMPARE(columnsFor(4), std::size_t{1});
    QCOMPARE(columnsFor(202), std::size_t{100});
    QCOMPARE(columnOf(0.0, 0.0, 10.0, 5), std::size_t{0});
    QCOMPARE(columnOf(5.0, 0.0, 10.0, 5), std::size_t{2});
    QCOMPARE(columnOf(10.0, 0.0, 10.0, 5), std::size_t{4});
    QCOMPARE(columnOf(1.7e308, -1.7e308, 1.7e308, 5), std::size_t{4});
    QCOMPARE(columnOf(0.0, -1.7e308, 1.7e308, 5), std::size_t{2});
}

void TstDecimate::refusals()
{
    const auto reasonOf = [](const std::vector<double> &x, const std::vector<double> &y,
                             std::size_t most) {
        const auto answer = minMaxDecimation(x, y, most);
        return answer ? -1 : static_cast<int>(answer.refusal().reason);
    };
    QCOMPARE(reasonOf({1, 2}, {1}, 10), static_cast<int>(Reason::ShapeMismatch));
    QCOMPARE(reasonOf({1, 2}, {1, 2}, 3), static_cast<int>(Reason::OutOfRange));
    QCOMPARE(reasonOf({2, 1}, {1, 2}, 10), static_cast<int>(Reason::OutOfRange));
    QCOMPARE(reasonOf({1, 2}, {1, std::nan("")}, 10), static_cast<int>(Reason::NotFinite));
    QCOMPARE(reasonOf({1, HUGE_VAL}, {1, 2}, 10), static_cast<int>(Reason::NotFinite));
    QCOMPARE(reasonOf({1, 1, 2}, {1, 2, 3}, 4), -1);
}

RICKYARD_TEST(TstDecimate)
#include "tst_decimate.moc"
