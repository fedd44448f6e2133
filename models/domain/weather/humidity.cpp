#include "models/domain/weather/humidity.h"

#include <cmath>

namespace rickyard::domain
{

namespace
{

constexpr double kA = 6.112; // hPa
constexpr double kB = 17.62;
constexpr double kC = 243.12; // degrees Celsius

} // namespace

double saturationPressure(double celsius)
{
    return kA * std::exp(kB * celsius / (kC + celsius));
}

double relativeHumidityPercent(double celsius, double dewPointCelsius)
{
    return 100.0 * saturationPressure(dewPointCelsius) / saturationPressure(celsius);
}

Ratio relativeHumidity(Temperature temperature, Temperature dewPoint)
{
    return Ratio::rounded(1e4 * relativeHumidityPercent(celsius(temperature), celsius(dewPoint)));
}

std::optional<Temperature> dewPointFrom(Temperature temperature, Ratio humidity)
{
    if (humidity <= Ratio())
        return std::nullopt;
    const double t = celsius(temperature);
    const double g = std::log(fraction(humidity)) + kB * t / (kC + t);
    if (g >= kB) // no finite temperature reaches it
        return std::nullopt;
    return temperatureFromCelsius(kC * g / (kB - g));
}

std::optional<Ratio> humidityOf(const Weather &weather)
{
    if (weather.temperature && weather.dewPoint)
        return relativeHumidity(*weather.temperature, *weather.dewPoint);
    return weather.humidity;
}

std::optional<double> humidityDisagreement(const Weather &weather)
{
    if (!weather.temperature || !weather.dewPoint || !weather.humidity)
        return std::nullopt;
    return 100.0 * fraction(*weather.humidity) -
           relativeHumidityPercent(celsius(*weather.temperature), celsius(*weather.dewPoint));
}

bool humidityContradictsDewPoint(const Weather &weather)
{
    const std::optional<double> points = humidityDisagreement(weather);
    return points && std::abs(*points) > kHumidityTolerance;
}

} // namespace rickyard::domain
