// Quantities are 64-bit integers in one base unit each, so that sums are exact and two files with
// the same records hold the same bytes. A missing value is std::optional, never a magic number.
#pragma once

#include <QtGlobal>

#include <cmath>
#include <compare>

namespace rickyard::domain {

enum class Dimension {
    Mass,        // milligrams
    Volume,      // millilitres
    Length,      // micrometres
    Temperature, // thousandths of a degree Celsius
    Duration,    // seconds
    Money,       // cents of the yard's currency
    Moisture,    // thousandths of a per cent of oven-dry mass (dry basis, always)
    Ratio,       // millionths of one
    Speed,       // millimetres a second
    Pressure,    // pascals
    Heat,        // joules
    HeatContent, // joules a kilogram
    Angle,       // degrees clockwise from north
    Plain,       // millionths, a pure number shown without a unit
};

// One quantity of one dimension. Arithmetic stays within the dimension; ratios are doubles.
template <Dimension D>
class Quantity
{
public:
    static constexpr Dimension dimension = D;

    constexpr Quantity() = default;
    static constexpr Quantity ofBase(qint64 base) { return Quantity(base); }
    static Quantity rounded(double base) { return Quantity(std::llround(base)); }

    [[nodiscard]] constexpr qint64 base() const { return m_base; }
    [[nodiscard]] constexpr double toDouble() const { return static_cast<double>(m_base); }
    [[nodiscard]] constexpr bool isZero() const { return m_base == 0; }

    constexpr Quantity operator+(Quantity o) const { return Quantity(m_base + o.m_base); }
    constexpr Quantity operator-(Quantity o) const { return Quantity(m_base - o.m_base); }
    constexpr Quantity operator-() const { return Quantity(-m_base); }
    constexpr Quantity &operator+=(Quantity o)
    {
        m_base += o.m_base;
        return *this;
    }
    constexpr Quantity &operator-=(Quantity o)
    {
        m_base -= o.m_base;
        return *this;
    }
    Quantity operator*(double factor) const { return rounded(toDouble() * factor); }
    double operator/(Quantity o) const { return toDouble() / o.toDouble(); }
    constexpr auto operator<=>(const Quantity &) const = default;

private:
    constexpr explicit Quantity(qint64 base) : m_base(base) {}
    qint64 m_base = 0;
};

using Mass = Quantity<Dimension::Mass>;
using Volume = Quantity<Dimension::Volume>;
using Length = Quantity<Dimension::Length>;
using Temperature = Quantity<Dimension::Temperature>;
using Duration = Quantity<Dimension::Duration>;
using Money = Quantity<Dimension::Money>;
using Moisture = Quantity<Dimension::Moisture>;
using Ratio = Quantity<Dimension::Ratio>;
using Speed = Quantity<Dimension::Speed>;
using Pressure = Quantity<Dimension::Pressure>;
using Heat = Quantity<Dimension::Heat>;
using HeatContent = Quantity<Dimension::HeatContent>;
using Angle = Quantity<Dimension::Angle>;
using Plain = Quantity<Dimension::Plain>;

// An instant in UTC, whole seconds since 1970-01-01. The yard's time zone is kept in the file and
// applied only when a time is shown or typed.
class Instant
{
public:
    constexpr Instant() = default;
    static constexpr Instant ofSeconds(qint64 s) { return Instant(s); }
    [[nodiscard]] constexpr qint64 seconds() const { return m_seconds; }
    constexpr Duration operator-(Instant o) const
    {
        return Duration::ofBase(m_seconds - o.m_seconds);
    }
    constexpr Instant operator+(Duration d) const { return Instant(m_seconds + d.base()); }
    constexpr Instant operator-(Duration d) const { return Instant(m_seconds - d.base()); }
    constexpr auto operator<=>(const Instant &) const = default;

private:
    constexpr explicit Instant(qint64 s) : m_seconds(s) {}
    qint64 m_seconds = 0;
};

// Conversions that the methods need; factors are exact by definition unless said.
constexpr double kKilogramsPerPound = 0.45359237;         // international pound, exact
constexpr double kMillilitresPerCubicFoot = 28316.846592; // exact
constexpr double kMicrometresPerInch = 25400.0;           // exact
constexpr double kJoulesPerBtu = 1055.05585262;           // International Table Btu
constexpr double kCubicFeetPerCord = 128.0;               // NIST Handbook 130, section 2.4.1

inline double kilograms(Mass m)
{
    return m.toDouble() / 1e6;
}
inline Mass massFromKilograms(double kg)
{
    return Mass::rounded(kg * 1e6);
}
inline double pounds(Mass m)
{
    return kilograms(m) / kKilogramsPerPound;
}
inline Mass massFromPounds(double lb)
{
    return massFromKilograms(lb * kKilogramsPerPound);
}
inline double cubicFeet(Volume v)
{
    return v.toDouble() / kMillilitresPerCubicFoot;
}
inline Volume volumeFromCubicFeet(double ft3)
{
    return Volume::rounded(ft3 * kMillilitresPerCubicFoot);
}
inline double cords(Volume v)
{
    return cubicFeet(v) / kCubicFeetPerCord;
}
inline double celsius(Temperature t)
{
    return t.toDouble() / 1e3;
}
inline Temperature temperatureFromCelsius(double c)
{
    return Temperature::rounded(c * 1e3);
}
inline double fahrenheit(Temperature t)
{
    return celsius(t) * 9.0 / 5.0 + 32.0;
}
inline Temperature temperatureFromFahrenheit(double f)
{
    return temperatureFromCelsius((f - 32.0) * 5.0 / 9.0);
}
inline double hours(Duration d)
{
    return d.toDouble() / 3600.0;
}
inline Duration durationFromHours(double h)
{
    return Duration::rounded(h * 3600.0);
}
inline double metres(Length l)
{
    return l.toDouble() / 1e6;
}
inline double inches(Length l)
{
    return l.toDouble() / kMicrometresPerInch;
}
inline double fraction(Ratio r)
{
    return r.toDouble() / 1e6;
}
inline double number(Plain p)
{
    return p.toDouble() / 1e6;
}
// Water mass over oven-dry mass, as a fraction (0.20 for 20 % dry basis).
inline double dryFraction(Moisture u)
{
    return u.toDouble() / 1e5;
}
inline Moisture moistureFromDryFraction(double u)
{
    return Moisture::rounded(u * 1e5);
}
// Wet basis, as a fraction: M = u / (1 + u).
inline double wetFraction(Moisture u)
{
    return dryFraction(u) / (1.0 + dryFraction(u));
}
inline Moisture moistureFromWetFraction(double m)
{
    return moistureFromDryFraction(m / (1.0 - m));
}
inline double metresPerSecond(Speed s)
{
    return s.toDouble() / 1e3;
}
inline double milesPerHour(Speed s)
{
    return metresPerSecond(s) / 0.44704;
}

// Seasoned pound: the net heat of 1 lb of hardwood at 20 % dry basis, for the default hardwood of
// models/domain/wood/heat_value.h (19.8 MJ/kg gross, 6.2 % hydrogen); a test derives it again.
constexpr double kJoulesPerSeasonedPound = 14.9670667e6 * kKilogramsPerPound;
inline double seasonedPounds(Heat h)
{
    return h.toDouble() / kJoulesPerSeasonedPound;
}
inline Heat heatFromSeasonedPounds(double lb)
{
    return Heat::rounded(lb * kJoulesPerSeasonedPound);
}

} // namespace rickyard::domain
