// The norm of a pit: a least-squares line of net heat on lighting and degree-hours, and what the
// pit's last cooks say against it. The first method; its rules are written out here.
//
//  - A cook counts when it is finished and its wood, pit and outside temperatures are known, and
//    when it was lit after the pit's last mending: a finding of that pit in state mended whose
//    visit is done. Mendings without such a visit have no date and change nothing.
//  - Fewer than six such cooks: no norm.
//  - The line learns from all of them but the last three, which therefore cannot pull it. Where the
//    crew has declared known-good periods that hold six cooks or more, it learns from those alone.
//  - Columns: 1 (lighting), degree-hours, and 1 for a cold start where at least two cooks of each
//    kind are learned from. A line with a negative term is not one of a fire: the columns are then
//    dropped in the order cold start, lighting, both, and if heat still does not rise with
//    degree-hours there is no norm.
//  - The pit is named when burned over expected, less one, is above 15 % on average over its last
//    three cooks. It is said to have begun with the first of the unbroken run of cooks, counted
//    back from the last, that each lie above half of that limit.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/statistics/least_squares.h"

namespace rickyard::domain
{

constexpr int kCooksForNorm = 6;
constexpr double kPredictionLevel = 0.90;

struct NormLine {
    statistics::Fit fit;
    bool lighting = true;   // has the constant term
    bool coldStart = false; // has the cold-start column
};

// 90 % prediction interval of a cook's heat, in joules; nothing where it cannot be given.
std::optional<statistics::Interval> predictedHeat(const NormLine &line, double degreeHours,
                                                  StartKind start);

// The moment of the pit's last mending up to `now`.
std::optional<Instant> lastMending(const Books &books, RecordId pit, Instant now);

// Fits the pit's line from `cooks` (all of the yard, by lighting time), fills in expected, lower,
// upper and excess of this pit's cooks, and judges its last three.
PitNorm normOf(const Books &books, const Pit &pit, QVector<CookFuel> &cooks, Instant now);

} // namespace rickyard::domain
