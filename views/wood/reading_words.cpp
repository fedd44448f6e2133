#include "views/wood/reading_words.h"

#include "models/domain/quantities/units.h"
#include "models/domain/records/rules.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/meter.h"
#include "models/domain/wood/stock.h"
#include "views/wood/wood_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace rickyard::views {

using domain::Moisture;
using domain::PieceMoistures;

namespace {

// The mean is worth this much: two points of dry-basis moisture either way.
constexpr double kWantedPoints = 2.0;

QString readingText(const char *text)
{
    return QCoreApplication::translate("Wood", text);
}

std::vector<double> dryPercents(const PieceMoistures &pieces)
{
    std::vector<double> values;
    for (Moisture piece : pieces)
        values.push_back(100 * domain::dryFraction(piece));
    return values;
}

Moisture meanOf(const PieceMoistures &pieces)
{
    return domain::moistureFromDryFraction(domain::statistics::mean(dryPercents(pieces)).value() /
                                           100);
}

QString spreadWords(const std::vector<double> &values)
{
    const auto sd = domain::statistics::sampleSd(values);
    const auto interval = domain::statistics::meanInterval(values, 0.95);
    if (!sd.ok() || !interval.ok())
        return readingText("One piece says nothing of the spread. Read at least three.");
    QString words =
        readingText("%1 pieces, spread %2 points (standard deviation), mean ± %3 points at "
                    "95 %, dry basis.")
            .arg(values.size())
            .arg(domain::formatNumber(sd.value(), 1, woodLocale()),
                 domain::formatNumber(interval->upper - interval->centre, 1, woodLocale()));
    const auto needed = domain::statistics::sampleSizeForMean(sd.value(), kWantedPoints);
    const int more = needed.ok() ? needed.value() - static_cast<int>(values.size()) : 0;
    if (sd.value() > 0 && more > 0)
        words += QString(
            QLatin1Char(' ') +
            readingText("Split about %1 more for ± %2 points.").arg(more).arg(kWantedPoints));
    return words;
}

} // namespace

ReadingWords readingWords(const domain::Books &books, const domain::MoistureReading &reading)
{
    if (reading.pieces.isEmpty())
        return {readingText("No piece read yet."),
                {},
                readingText("Read at least three pieces from different places in the rick."),
                {}};
    const domain::CorrectedReading used = domain::corrected(books, reading);
    const Moisture shown = meanOf(reading.pieces);
    const Moisture real = meanOf(used.pieces);
    const QString verdict = real <= domain::kDryEnough ? readingText("dry enough to burn")
                                                       : readingText("too wet to burn clean");
    ReadingWords words;
    if (used.note.isEmpty()) {
        words.mean = readingText("Mean %1: %2.").arg(bothBases(shown), verdict);
    } else {
        words.mean = readingText("Mean as shown %1.").arg(bothBases(shown));
        QString note = used.note;
        note[0] = note.at(0).toUpper();
        words.corrected = readingText("%1. Mean %2: %3.").arg(note, bothBases(real), verdict);
    }
    words.spread = spreadWords(dryPercents(used.pieces));
    const auto wet = std::count_if(reading.pieces.cbegin(), reading.pieces.cend(), isIndicative);
    if (wet > 0)
        words.indicative =
            readingText("≈ is indicative only: above fibre saturation, about 30 % dry basis "
                        "(23 % wet basis), a pin meter hints and does not measure.");
    return words;
}

bool isIndicative(Moisture piece)
{
    return piece > domain::kFibreSaturation;
}

QString overMaximum(const domain::Books &books, domain::RecordId lot, Moisture piece)
{
    const domain::Species species = books.species.value(books.lots.value(lot).species);
    if (species.basicGravity.base() <= 0)
        return {};
    const Moisture most = domain::maximumMoisture(species.basicGravity);
    if (piece <= most)
        return {};
    return readingText("%1 is more water than %2 can hold (%3). Check the basis of the meter.")
        .arg(bothBases(piece), species.name.toLower(), bothBases(most));
}

} // namespace rickyard::views
