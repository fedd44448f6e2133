#include "app/demo/air.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

using domain::Instant;

// Solar time of the made-up place is about six and a half hours behind UTC.
constexpr double kSolarOffset = -6.5 * 3600;
constexpr double kDay = 86400;
constexpr double kYear = 365.2425 * kDay;

// Cosine over a year, 1 in late July, -1 in late January.
double season(Instant t)
{
    const double intoYear = std::fmod(static_cast<double>(t.seconds()), kYear) / kYear;
    return std::cos(2 * std::numbers::pi * (intoYear - 0.56));
}

// Cosine over a day with its top at the given solar hour.
double dayCurve(Instant t, double topHour)
{
    const double solar = std::fmod(static_cast<double>(t.seconds()) + kSolarOffset, kDay) / 3600;
    return std::cos(2 * std::numbers::pi * (solar - topHour) / 24);
}

// x' = phi x + noise, with the standard deviation it keeps in the long run.
class Wander
{
public:
    Wander(double phi, double sd) : m_phi(phi), m_step(sd * std::sqrt(1 - phi * phi)) {}
    double next(Dice &dice)
    {
        m_value = m_phi * m_value + m_step * dice.normal();
        return m_value;
    }

private:
    double m_phi;
    double m_step;
    double m_value = 0;
};

} // namespace

double Air::usualCelsius(Instant t)
{
    return 18.5 + 10.0 * season(t) + 6.0 * dayCurve(t, 15.5);
}

Air::Air(Dice dice, Instant from, Instant to)
    : m_start(Instant::ofSeconds(from.seconds() / 3600 * 3600))
{
    Wander spell(0.992, 4.2);
    Wander moist(0.995, 3.5);
    Wander gale(0.93, 0.42);
    Wander glass(0.99, 550);
    Wander turn(0.97, 70);
    bool raining = false;
    for (Instant t = m_start; t <= to; t = t + domain::Duration::ofBase(3600)) {
        raining = dice.chance(raining ? 0.72 : 0.011 - 0.004 * season(t));
        Hour h;
        h.celsius =
            std::clamp(usualCelsius(t) + spell.next(dice) - (raining ? 2.5 : 0.0), -18.0, 43.0);
        const double dry = h.celsius - (raining ? 0.6 : 1.2);
        h.dewPoint = std::min(dry, 9.0 + 9.0 * season(t) + moist.next(dice));
        h.wind = std::min(22.0, 2.9 * (1 + 0.42 * dayCurve(t, 14.5)) * std::exp(gale.next(dice)));
        h.gust = h.wind * dice.between(1.3, 1.8);
        h.from = std::fmod(170 + turn.next(dice) + 720, 360);
        h.rain = raining ? -2.2 * std::log(1 - dice.uniform()) : 0.0;
        h.pascals = 99300 - 250 * season(t) + glass.next(dice);
        m_hours << h;
    }
}

const Air::Hour &Air::hourOf(Instant t) const
{
    const qint64 i = (t.seconds() - m_start.seconds()) / 3600;
    return m_hours.at(std::clamp<qint64>(i, 0, m_hours.size() - 1));
}

double Air::celsiusAt(Instant t) const
{
    const double part = static_cast<double>(t.seconds() % 3600) / 3600;
    const double here = hourOf(t).celsius;
    return here + part * (hourOf(t + domain::Duration::ofBase(3600)).celsius - here);
}

double Air::windAt(Instant t) const
{
    return hourOf(t).wind;
}

bool Air::rainAt(Instant t) const
{
    return hourOf(t).rain > 0;
}

QVector<domain::Weather> Air::records(const QString &place) const
{
    QVector<domain::Weather> rows;
    rows.reserve(m_hours.size());
    // A station writes tenths of a degree and of a metre a second.
    const auto tenths = [](double x) { return std::llround(x * 10) * 100; };
    for (qsizetype i = 0; i < m_hours.size(); ++i) {
        const Hour &h = m_hours.at(i);
        domain::Weather w;
        w.id = i + 1;
        w.place = place;
        w.time = Instant::ofSeconds(m_start.seconds() + i * 3600);
        w.temperature = domain::Temperature::ofBase(tenths(h.celsius));
        w.dewPoint = domain::Temperature::ofBase(tenths(h.dewPoint));
        w.wind = domain::Speed::ofBase(tenths(h.wind));
        w.gust = domain::Speed::ofBase(std::max(tenths(h.gust), tenths(h.wind)));
        w.windFrom = domain::Angle::ofBase(std::llround(h.from / 10) * 10 % 360);
        w.rain = domain::Length::ofBase(tenths(h.rain));
        w.pressure = domain::Pressure::ofBase(std::llround(h.pascals / 10) * 10);
        w.source = QStringLiteral("invented");
        rows << w;
    }
    return rows;
}

} // namespace rickyard::app::demo
