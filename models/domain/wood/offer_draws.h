// Draws for comparing offers. A stream is known by what it is about, so that offers that share a
// thing share its draws, and one offer more or less changes no other's.
#pragma once

#include <QtGlobal>

#include <random>
#include <vector>

namespace rickyard::domain {

enum class DrawSubject : quint64 {
    GrossHeat = 1,
    Measure = 2,  // of a supplier: does the amount come
    Stacking = 3, // of a supplier
    Promise = 4,  // of one wood of a supplier
    Density = 5,
};

// One stream of pseudo-random numbers. Written out rather than taken from <random>'s distributions,
// whose algorithms differ between standard libraries: the same seed gives the same answer anywhere.
class DrawStream
{
public:
    DrawStream(quint64 seed, DrawSubject subject, qint64 first = 0, qint64 second = 0);

    double uniform(); // in (0, 1)
    double normal();  // Marsaglia's polar method
    // Student t by Bailey's polar method (1994, Mathematics of Computation 62:779; from memory).
    double studentT(double degreesOfFreedom);

private:
    std::mt19937_64 m_engine;
};

// Quantile of the triangular distribution on [least, most] with its peak at `likeliest`.
double triangularQuantile(double least, double likeliest, double most, double p);

} // namespace rickyard::domain
