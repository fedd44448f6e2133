// Seeded draws, for comparing offers and for the paths of the stock. A stream is known by what it
// is about, so that offers that share a thing share its draws, and one offer more or less changes
// no other's.
#pragma once

#include <QtGlobal>

namespace rickyard::domain {

enum class DrawSubject : quint64 {
    GrossHeat = 1,
    Measure = 2,  // of a supplier: does the amount come
    Stacking = 3, // of a supplier
    Promise = 4,  // of one wood of a supplier
    Density = 5,
    Need = 6,       // of a planned cook
    SharedNeed = 7, // what the cooks of a group have in common
    Unplanned = 8,
    LotHeat = 9,
    LotReady = 10,
    Delivery = 11, // of an open order: amount, day, drying
    Offer = 12,    // of a load that may be ordered: amount, lead time, drying
};

// One stream of pseudo-random numbers: SplitMix64 (Steele, Lea and Flood 2014, OOPSLA; from
// memory), which starts in no time, so that there may be a stream for every path. Not <random>'s
// distributions, whose algorithms differ between standard libraries: the same seed gives the same
// answer anywhere.
class DrawStream
{
public:
    DrawStream(quint64 seed, DrawSubject subject, qint64 first = 0, qint64 second = 0);

    double uniform(); // in (0, 1)
    double normal();  // Boost.Random's ziggurat
    // Student t by Bailey's polar method (1994, Mathematics of Computation 62:779; from memory).
    double studentT(double degreesOfFreedom);

private:
    quint64 m_state = 0;
};

// Quantile of the triangular distribution on [least, most] with its peak at `likeliest`.
double triangularQuantile(double least, double likeliest, double most, double p);

} // namespace rickyard::domain
