#include "models/domain/wood/moisture.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/meter.h"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

MoistureSample sampleOf(const Books &books, const MoistureReading &reading)
{
    MoistureSample sample;
    sample.time = reading.time;
    CorrectedReading used = corrected(books, reading);
    sample.pieces = used.pieces;
    sample.correction = used.note;
    sample.unreliable = reading.face != Face::Fresh;
    sample.indicative = sample.mean() > kFibreSaturation;
    if (reading.face == Face::Old)
        sample.note = QStringLiteral("read on an old face, which reads low");
    else if (reading.face == Face::End)
        sample.note = QStringLiteral("read on end grain, which is unreliable");
    else if (sample.indicative)
        sample.note = QStringLiteral("above fibre saturation (about 30 %), where a pin meter only "
                                     "hints");
    return sample;
}

MoistureSample sampleOf(const OvenTest &test, Moisture moisture)
{
    MoistureSample sample;
    sample.time = test.time;
    sample.pieces = {moisture};
    sample.ovenTest = true;
    return sample;
}

} // namespace

Moisture MoistureSample::mean() const
{
    double sum = 0;
    for (Moisture piece : pieces)
        sum += piece.toDouble();
    return Moisture::rounded(sum / static_cast<double>(pieces.size()));
}

std::optional<Moisture> MoistureSample::halfWidth() const
{
    if (pieces.size() < 2)
        return std::nullopt;
    const double n = static_cast<double>(pieces.size());
    double sum = 0;
    for (Moisture piece : pieces)
        sum += piece.toDouble();
    double squares = 0;
    for (Moisture piece : pieces)
        squares += std::pow(piece.toDouble() - sum / n, 2);
    const boost::math::students_t t(n - 1);
    return Moisture::rounded(boost::math::quantile(t, 0.975) * std::sqrt(squares / (n - 1) / n));
}

QVector<MoistureSample> moistureSessions(const Books &books, RecordId lot)
{
    QVector<MoistureSample> all;
    for (const MoistureReading &reading : books.readings)
        if (reading.lot == lot && !reading.pieces.isEmpty())
            all << sampleOf(books, reading);
    for (const OvenTest &test : books.ovenTests)
        if (test.lot == lot)
            if (const auto moisture = moistureOf(test))
                all << sampleOf(test, *moisture);
    std::stable_sort(all.begin(), all.end(), [](const MoistureSample &a, const MoistureSample &b) {
        return a.time != b.time ? a.time < b.time : a.ovenTest < b.ovenTest;
    });
    return all;
}

std::optional<QString> oddReading(const Books &books, const MoistureReading &reading)
{
    if (reading.pieces.isEmpty())
        return std::nullopt;
    const MoistureSample now = sampleOf(books, reading);
    std::optional<MoistureSample> before;
    for (const MoistureSample &other : moistureSessions(books, reading.lot))
        if (other.time <= reading.time && (reading.time - other.time).base() <= 7 * 86400)
            before = other;
    if (!before)
        return std::nullopt;
    const double jump = (now.mean() - before->mean()).toDouble() / 1000;
    if (std::abs(jump) <= kOddJump)
        return std::nullopt;
    const QLocale locale(QLocale::English);
    const double wet = now.mean().toDouble() / 1000;
    // Read as wet basis, the same figures would fit the week before.
    const double other = before->mean().toDouble() / 1000;
    const bool basis = std::abs(100 * wet / (100 - std::min(wet, 99.0)) - other) <= kOddJump / 2 ||
                       std::abs(100 * wet / (100 + wet) - other) <= kOddJump / 2;
    return QString(formatNumber(std::abs(jump), 0, locale) +
                   (jump > 0 ? QStringLiteral(" points wetter") : QStringLiteral(" points drier")) +
                   QStringLiteral(" than a week ago at the most (") +
                   formatNumber(other, 1, locale) +
                   (basis ? QStringLiteral(" % dry). Is the basis of the meter the right one?")
                          : QStringLiteral(" % dry). Is it this lot, and a freshly split face?")));
}

std::optional<MoistureSample> latestMoisture(const Books &books, RecordId lot, Instant time)
{
    const QVector<MoistureSample> all = moistureSessions(books, lot);
    std::optional<MoistureSample> latest;
    for (const MoistureSample &sample : all) {
        if (sample.time > time)
            break;
        const bool sameSession = latest && latest->ovenTest && sample.ovenTest &&
                                 (sample.time - latest->time).base() <= 86400;
        const PieceMoistures before = sameSession ? latest->pieces : PieceMoistures();
        latest = sample;
        latest->pieces = before + sample.pieces;
    }
    return latest;
}

std::optional<MoistureSample> firstMoistureAfter(const Books &books, RecordId lot, Instant time)
{
    const QVector<MoistureSample> all = moistureSessions(books, lot);
    for (const MoistureSample &sample : all)
        if (sample.time > time)
            return sample;
    return std::nullopt;
}

QString bothBases(Moisture moisture, const Wording &wording)
{
    return QString(formatNumber(100.0 * dryFraction(moisture), 0, localeOf(wording)) +
                   QStringLiteral(" % dry basis (") +
                   formatNumber(100.0 * wetFraction(moisture), 0, localeOf(wording)) +
                   QStringLiteral(" % wet basis)"));
}

std::optional<Moisture> moistureOf(const OvenTest &test)
{
    if (test.dry.base() <= 0 || test.wet < test.dry)
        return std::nullopt;
    return moistureFromDryFraction((test.wet - test.dry) / test.dry);
}

} // namespace rickyard::domain
