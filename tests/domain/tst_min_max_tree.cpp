// Extremes of any stretch of a long series, against std::min_element and std::max_element of the
// standard library, and what a chart needs at every zoom.
#include "models/domain/statistics/min_max_tree.h"
#include "tests/support/registry.h"

#include <QTest>

#include <algorithm>
#include <numeric>
#include <random>

using namespace rickyard::domain::statistics;

namespace {

constexpr std::size_t kMillion = 1000000;

std::vector<double> seconds(std::size_t count)
{
    std::vector<double> x(count);
    std::iota(x.begin(), x.end(), 0.0);
    return x;
}

std::vector<double> noise(std::size_t count, unsigned seed)
{
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> level(0, 40); // few values, so that readings tie
    std::vector<double> y(count);
    std::generate(y.begin(), y.end(), [&] { return 250.0 + level(random); });
    return y;
}

} // namespace

class TstMinMaxTree : public QObject
{
    Q_OBJECT

private slots:
    void sameAsTheStandardLibrary()
    {
        std::mt19937 random(7);
        for (const std::size_t count : {1U, 2U, 15U, 16U, 17U, 255U, 256U, 257U, 4097U, 70000U}) {
            const std::vector<double> y = noise(count, static_cast<unsigned>(count));
            const MinMaxTree tree(y);
            QCOMPARE(tree.size(), count);
            for (int round = 0; round < 400; ++round) {
                const std::size_t a = random() % count;
                const std::size_t b = random() % count;
                const auto from = static_cast<std::ptrdiff_t>(std::min(a, b));
                const auto to = static_cast<std::ptrdiff_t>(std::max(a, b)) + 1;
                const auto low = std::min_element(y.begin() + from, y.begin() + to) - y.begin();
                const auto found =
                    tree.extremes(static_cast<std::size_t>(from), static_cast<std::size_t>(to));
                QCOMPARE(found.lowest, static_cast<std::size_t>(low));
                const auto high = std::max_element(y.begin() + from, y.begin() + to) - y.begin();
                QCOMPARE(found.highest, static_cast<std::size_t>(high));
            }
        }
    }

    // One reading of a million, in sight at every zoom from the whole to a few seconds.
    void aSpikeOfOneReadingSurvivesEveryZoom()
    {
        const std::vector<double> x = seconds(kMillion);
        std::mt19937 random(11);
        for (int round = 0; round < 4; ++round) {
            std::vector<double> y = noise(kMillion, 3);
            const std::size_t spike = random() % kMillion;
            y[spike] = round % 2 == 0 ? 400.0 : 20.0;
            const MinMaxTree tree(std::move(y));
            double span = static_cast<double>(kMillion - 1);
            while (span > 5) {
                // Anywhere in the window, its edges included.
                for (const double share : {0.0, 0.137, 0.5, 0.99, 1.0}) {
                    const double from = static_cast<double>(spike) - share * span;
                    for (const std::size_t columns : {320U, 1280U}) {
                        const auto kept = columnExtremes(x, tree, from, from + span, columns);
                        QVERIFY2(std::binary_search(kept.begin(), kept.end(), spike),
                                 qPrintable(QStringLiteral("%1 s, %2").arg(span).arg(share)));
                        QVERIFY(kept.size() <= columns * 4 + 2);
                    }
                }
                span /= 2.7;
            }
        }
    }

    // Every column shows exactly the lowest and highest of its readings; ends and order are kept.
    void everyColumnIsWhole()
    {
        std::mt19937 random(5);
        std::vector<double> x;
        double t = 0;
        for (int i = 0; i < 5000; ++i) {
            x.push_back(t);
            t += random() % 7 == 0 ? 0.0 : static_cast<double>(random() % 50) / 10.0;
        }
        const std::vector<double> y = noise(x.size(), 9);
        const MinMaxTree tree(y);
        const double from = 2000;
        const double to = 9000;
        const std::size_t columns = 100;
        const auto kept = columnExtremes(x, tree, from, to, columns);
        QVERIFY(std::is_sorted(kept.begin(), kept.end()));
        QVERIFY(std::adjacent_find(kept.begin(), kept.end()) == kept.end());
        QVERIFY(x[kept.front()] < from && x[kept.front() + 1] >= from);
        QVERIFY(x[kept.back()] > to && x[kept.back() - 1] <= to);
        const double width = (to - from) / static_cast<double>(columns);
        for (std::size_t column = 0; column < columns; ++column) {
            const double left = from + width * static_cast<double>(column);
            double low = 1e9;
            double high = -1e9;
            double shownLow = 1e9;
            double shownHigh = -1e9;
            for (std::size_t i = 0; i < x.size(); ++i) {
                if (x[i] < left || x[i] >= left + width)
                    continue;
                low = std::min(low, y[i]);
                high = std::max(high, y[i]);
                if (!std::binary_search(kept.begin(), kept.end(), i))
                    continue;
                shownLow = std::min(shownLow, y[i]);
                shownHigh = std::max(shownHigh, y[i]);
            }
            QCOMPARE(shownLow, low);
            QCOMPARE(shownHigh, high);
        }
    }

    void nothingToShow()
    {
        const MinMaxTree none;
        QVERIFY(columnExtremes({}, none, 0, 1, 10).empty());
        const std::vector<double> x{5.0};
        const MinMaxTree one(std::vector<double>{250.0});
        QCOMPARE(columnExtremes(x, one, 0, 10, 10), std::vector<std::size_t>{0});
        QCOMPARE(columnExtremes(x, one, 5, 6, 10), std::vector<std::size_t>{0});
        QVERIFY(columnExtremes(x, one, 10, 10, 10).empty());
        // What lies beside the window is there for the line to run to.
        QCOMPARE(columnExtremes(x, one, 6, 10, 10), std::vector<std::size_t>{0});
    }
};

RICKYARD_TEST(TstMinMaxTree)
#include "tst_min_max_tree.moc"
