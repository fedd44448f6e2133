#include "models/domain/wood/moisture.h"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>

namespace rickyard::domain
{

namespace
{

MoistureSample sampleOf(const MoistureReading &reading)
{
    MoistureSample sample;
    sample.time = reading.time;
    sample.pieces = reading.pieces;
    sample.unreliable = reading.face != Face::Fresh;
    if (reading.face == Face::Old)
        sample.note = QStringLiteral("read on an old face, which reads low");
    if (reading.face == Face::End)
        sample.note = QStringLiteral("read on end grain, which is unreliable");
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

// All sessions of a lot by time; at one time the oven test stands last.
QVector<MoistureSample> sessionsOf(const Books &books, RecordId lot)
{
    QVector<MoistureSample> all;
    for (const MoistureReading &reading : books.readings)
        if (reading.lot == lot && !reading.pieces.isEmpty())
            all << sampleOf(reading);
    for (const OvenTest &test : books.ovenTests)
        if (test.lot == lot)
            if (const auto moisture = moistureOf(test))
                all << sampleOf(test, *moisture);
    std::stable_sort(all.begin(), all.end(), [](const MoistureSample &a, const MoistureSample &b) {
        return a.time != b.time ? a.time < b.time : a.ovenTest < b.ovenTest;
    });
    return all;
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

std::optional<MoistureSample> latestMoisture(const Books &books, RecordId lot, Instant time)
{
    const QVector<MoistureSample> all = sessionsOf(books, lot);
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
    const QVector<MoistureSample> all = sessionsOf(books, lot);
    for (const MoistureSample &sample : all)
        if (sample.time > time)
            return sample;
    return std::nullopt;
}

std::optional<Moisture> moistureOf(const OvenTest &test)
{
    if (test.dry.base() <= 0 || test.wet < test.dry)
        return std::nullopt;
    return moistureFromDryFraction((test.wet - test.dry) / test.dry);
}

} // namespace rickyard::domain
