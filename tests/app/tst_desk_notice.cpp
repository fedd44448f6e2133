// The chime of a feed that is due: soft, without a click at either end, and of the two tones it is
// meant to have (by Goertzel's recurrence, the discrete Fourier transform at one frequency).
#include "app/window/desk_notice.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <numbers>
#include <vector>

using namespace rickyard;

namespace {

constexpr int kRate = 8000;

std::vector<double> samples()
{
    const QByteArray bytes = app::chimeSamples(kRate);
    const auto *raw = reinterpret_cast<const qint16 *>(bytes.constData());
    std::vector<double> all;
    for (qsizetype i = 0; i < bytes.size() / 2; ++i)
        all.push_back(raw[i] / 32767.0);
    return all;
}

double strengthAt(const std::vector<double> &x, double hertz)
{
    const double w = 2 * std::cos(2 * std::numbers::pi * hertz / kRate);
    double a = 0;
    double b = 0;
    for (const double v : x) {
        const double c = v + w * a - b;
        b = a;
        a = c;
    }
    return std::sqrt(std::max(0.0, a * a + b * b - w * a * b));
}

} // namespace

class TstDeskNotice : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void theChimeIsSoft()
    {
        const auto x = samples();
        QVERIFY(x.size() > kRate);
        double loudest = 0;
        double step = 0;
        for (std::size_t i = 0; i < x.size(); ++i) {
            loudest = std::max(loudest, std::abs(x[i]));
            if (i > 0)
                step = std::max(step, std::abs(x[i] - x[i - 1]));
        }
        QVERIFY(loudest > 0.05 && loudest < 0.3);
        QVERIFY(std::abs(x.front()) < 0.001 && std::abs(x.back()) < 0.001);
        QVERIFY(step < 0.12); // no click
    }

    void theChimeHasItsTones()
    {
        const auto x = samples();
        const double fifth = strengthAt(x, 660);
        const double ground = strengthAt(x, 440);
        for (const double other : {220.0, 350.0, 550.0, 800.0, 1320.0})
            QVERIFY2(strengthAt(x, other) < 0.2 * std::min(ground, fifth),
                     qPrintable(QString::number(other)));
    }
};

RICKYARD_TEST(TstDeskNotice)
#include "tst_desk_notice.moc"
