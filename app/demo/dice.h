// Chance from a seed, the same on every machine: the standard library's distributions are not.
#pragma once

#include <QtGlobal>

#include <cmath>
#include <numbers>

namespace rickyard::app::demo {

class Dice
{
public:
    explicit Dice(quint64 seed) : m_state(seed) {}

    // A stream of its own, so that more throws in one part of the demo leave the others alone.
    [[nodiscard]] Dice fork(quint64 subject) const
    {
        Dice child(m_state ^ (subject * 0xD1B54A32D192ED03ULL));
        child.next();
        return child;
    }
    // SplitMix64 (Steele, Lea and Flood 2014; constants from memory).
    quint64 next()
    {
        m_state += 0x9E3779B97F4A7C15ULL;
        quint64 z = m_state;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
        return z ^ (z >> 31U);
    }
    double uniform() { return static_cast<double>(next() >> 11U) * 0x1.0p-53; } // [0, 1)
    double between(double low, double high) { return low + (high - low) * uniform(); }
    int whole(int low, int high) // both ends included
    {
        return low + static_cast<int>(uniform() * (high - low + 1));
    }
    bool chance(double p) { return uniform() < p; }
    double normal() // Box and Muller, one of the pair
    {
        const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
        return radius * std::cos(2.0 * std::numbers::pi * uniform());
    }
    double lognormal(double sigma) { return std::exp(sigma * normal()); }

private:
    quint64 m_state;
};

} // namespace rickyard::app::demo
