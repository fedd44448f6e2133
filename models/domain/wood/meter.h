// Corrections of a pin meter's reading for the wood's temperature and species. They are made when
// a reading is used, never in the record, and each has its switch in the yard's settings.
//
// Temperature: "add 0.5 % for every 5 °C below 20 °C, subtract 0.5 % for every 5 °C above, once the
// wood is more than 5 °C away", as two instrument manuals print it.
//
// Species: a meter measures resistance and turns it into moisture by one species' scale. The table
// of resistances at 80 °F is that of James, Electric Moisture Meters for Wood (FPL-GTR-6), from
// memory; an oven-dry test of a piece or two is the better judge.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// Per cent dry basis in, per cent dry basis out.
double correctedForTemperature(double percent, double woodCelsius);

// Columns of the resistance table.
enum class MeterScale { WhiteAsh, Hickory, HardMaple, RedOak, WhiteOak, BlackWalnut, DouglasFir };
QString scaleName(MeterScale scale);
QVector<MeterScale> meterScales();
// By the words of a setting or a species: "post oak" is a white oak, "pecan" a hickory. Missing for
// woods without a column.
std::optional<MeterScale> scaleOf(const QString &words);
// Megohms at a moisture on a scale, log-linear between the table's rows; missing outside of them.
std::optional<double> megohms(MeterScale scale, double percent);
// What a meter set to `meter` shows as `percent` is really in `wood`. Outside the table's 7 to 24 %
// the correction at its end is kept.
double correctedForSpecies(double percent, MeterScale meter, MeterScale wood);

// The pieces of a reading as they are to be used, on dry basis, and what was done to them.
struct CorrectedReading {
    PieceMoistures pieces;
    QString note; // "corrected for wood at 41 °F: +1.5 points"; empty when nothing was changed
};
CorrectedReading corrected(const Books &books, const MoistureReading &reading);

} // namespace rickyard::domain
