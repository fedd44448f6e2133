#include "models/domain/wood/offer_draws.h"

#include <boost/random/normal_distribution.hpp>

#include <cmath>

namespace rickyard::domain {

namespace {

constexpr quint64 kGolden = 0x9e3779b97f4a7c15ULL;

// SplitMix64's step and finaliser. For keys it spreads neighbours over all seeds, so that supplier
// 1 and supplier 2 do not draw alike.
quint64 spread64(quint64 value)
{
    value += kGolden;
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

// The stream as Boost.Random wants it.
class Bits
{
public:
    using result_type = quint64;
    explicit Bits(quint64 &state) : m_state(state) {}
    static constexpr quint64 min() { return 0; }
    static constexpr quint64 max() { return ~quint64(0); }
    quint64 operator()()
    {
        const quint64 bits = spread64(m_state);
        m_state += kGolden;
        return bits;
    }

private:
    quint64 &m_state;
};

} // namespace

DrawStream::DrawStream(quint64 seed, DrawSubject subject, qint64 first, qint64 second)
    : m_state(keyOf(seed, subject, first, second))
{
}

double DrawStream::uniform()
{
    return (static_cast<double>(Bits(m_state)() >> 11) + 0.5) / 9007199254740992.0; // 2^53
}

double DrawStream::normal()
{
    Bits bits(m_state);
    return boost::random::normal_distribution<double>()(bits);
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
