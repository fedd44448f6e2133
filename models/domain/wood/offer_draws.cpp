#include "models/domain/wood/offer_draws.h"

#include <cmath>

namespace rickyard::domain {

namespace {

// The finaliser of SplitMix64 (public domain; from memory): spreads neighbouring keys over all
// seeds, so that supplier 1 and supplier 2 do not draw alike.
quint64 spread64(quint64 value)
{
    value += 0x9e3779b97f4a7c15ULL;
    value = (value ^ (value >> 30)) * 0xbf58476d1ce4e5b9ULL;
    value = (value ^ (value >> 27)) * 0x94d049bb133111ebULL;
    return value ^ (value >> 31);
}

quint64 keyOf(quint64 seed, DrawSubject subject, qint64 first, qint64 second)
{
    quint64 key = spread64(seed);
    key = spread64(key ^ static_cast<quint64>(subject));
    key = spread64(key ^ static_cast<quint64>(first));
    return spread64(key ^ static_cast<quint64>(second));
}

} // namespace

DrawStream::DrawStream(quint64 seed, DrawSubject subject, qint64 first, qint64 second)
    : m_engine(keyOf(seed, subject, first, second))
{
}

double DrawStream::uniform()
{
    return (static_cast<double>(m_engine() >> 11) + 0.5) / 9007199254740992.0; // 2^53
}

double DrawStream::normal()
{
    while (true) {
        const double u = 2.0 * uniform() - 1.0;
        const double v = 2.0 * uniform() - 1.0;
        const double w = u * u + v * v;
        if (w > 0.0 && w < 1.0)
            return u * std::sqrt(-2.0 * std::log(w) / w);
    }
}

double DrawStream::studentT(double degreesOfFreedom)
{
    while (true) {
        const double u = 2.0 * uniform() - 1.0;
        const double v = 2.0 * uniform() - 1.0;
        const double w = u * u + v * v;
        if (w > 0.0 && w < 1.0)
            return u *
                   std::sqrt(degreesOfFreedom * (std::pow(w, -2.0 / degreesOfFreedom) - 1.0) / w);
    }
}

double triangularQuantile(double least, double likeliest, double most, double p)
{
    const double width = most - least;
    if (width <= 0)
        return least;
    const double peak = (likeliest - least) / width;
    if (p < peak)
        return least + std::sqrt(p * width * (likeliest - least));
    return most - std::sqrt((1.0 - p) * width * (most - likeliest));
}

} // namespace rickyard::domain
