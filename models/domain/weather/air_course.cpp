#include "models/domain/weather/air_course.h"

#include "models/domain/weather/humidity.h"
#include "models/domain/wood/emc.h"

#include <QDate>
#include <QHash>

#include <cmath>

namespace rickyard::domain {

namespace {

constexpr qint64 kSecondsADay = 86400;
constexpr int kLeastHours = 8;
constexpr int kYearDays = 366;
constexpr int kWindow = 15;
// Fewer days than this within the window say nothing of the season.
constexpr int kLeastDays = 5;
constexpr AirDay kMildAir{12.5, 0.9, 2.5};

// Day of a leap year, 0 ... 365, so that a date falls on one place in every year.
int placeInYear(qint64 day)
{
    const QDate date = QDate(1970, 1, 1).addDays(day);
    return QDate(2000, date.month(), date.day()).dayOfYear() - 1;
}

} // namespace

struct AirCourse::Hours {
    struct Mean {
        double sum = 0;
        int count = 0;
        void add(double value)
        {
            sum += value;
            ++count;
        }
        void merge(const Mean &other)
        {
            sum += other.sum;
            count += other.count;
        }
        [[nodiscard]] double mean() const { return count == 0 ? 0.0 : sum / count; }
    };

    struct HourAir {
        Mean emc;
        Mean speed;
        Mean rain;
    };

    struct DaySums {
        Mean emc;
        Mean speed;
        Mean rain;
        void merge(const DaySums &other)
        {
            emc.merge(other.emc);
            speed.merge(other.speed);
            rain.merge(other.rain);
        }
    };

    QHash<qint64, HourAir> hours; // hours since 1970

    void add(const Weather &record)
    {
        HourAir &hour =
            hours[dayNumber(record.time) * 24 +
                  (record.time.seconds() - dayNumber(record.time) * kSecondsADay) / 3600];
        const auto humidity = humidityOf(record);
        if (record.temperature && humidity)
            hour.emc.add(
                equilibriumMoisturePercent(celsius(*record.temperature), fraction(*humidity)));
        if (record.temperature)
            hour.speed.add(dryingSpeed(celsius(*record.temperature)));
        if (record.rain)
            hour.rain.add(metres(*record.rain) * 1000);
    }
    // Averages of the stations make the hour, averages of the hours the day.
    [[nodiscard]] QHash<qint64, DaySums> days() const
    {
        QHash<qint64, DaySums> all;
        for (auto it = hours.cbegin(); it != hours.cend(); ++it) {
            DaySums &day = all[it.key() / 24];
            if (it->emc.count > 0)
                day.emc.add(it->emc.mean());
            if (it->speed.count > 0)
                day.speed.add(it->speed.mean());
            if (it->rain.count > 0)
                day.rain.add(it->rain.mean());
        }
        return all;
    }
};

qint64 dayNumber(Instant time)
{
    return static_cast<qint64>(std::floor(static_cast<double>(time.seconds()) / kSecondsADay));
}

double boardDryingTime(double thicknessInches, double celsius)
{
    constexpr double a = 0.0575;
    constexpr double b = 0.00142;
    const double mmHg = std::pow(10.0, 8.07131 - 1730.63 / (233.426 + celsius));
    return std::pow(thicknessInches, kThicknessPower) / (a + b * mmHg);
}

double dryingSpeed(double celsius)
{
    static const double usual = boardDryingTime(1.0, (70.0 - 32.0) / 1.8);
    return usual / boardDryingTime(1.0, celsius);
}

AirCourse::AirCourse(const Books &books)
{
    Hours observations;
    Hours normals;
    for (const Weather &record : books.weather)
        (record.normal ? normals : observations).add(record);
    settle(observations, normals);
}

AirCourse AirCourse::constant(AirDay air)
{
    AirCourse course;
    std::fill(course.m_year.begin(), course.m_year.end(), air);
    course.m_yearCovered = kYearDays;
    return course;
}

void AirCourse::settle(const Hours &observations, const Hours &normals)
{
    const QHash<qint64, Hours::DaySums> days = observations.days();
    qint64 first = 0;
    qint64 last = -1;
    for (auto it = days.cbegin(); it != days.cend(); ++it) {
        if (it->emc.count < kLeastHours)
            continue;
        first = last < first ? it.key() : std::min(first, it.key());
        last = std::max(last, it.key());
    }
    fillYear(observations, normals);
    if (last < first)
        return;
    m_first = first;
    m_days.resize(static_cast<size_t>(last - first + 1));
    m_known.assign(m_days.size(), 0);
    for (auto it = days.cbegin(); it != days.cend(); ++it) {
        if (it->emc.count < kLeastHours)
            continue;
        const auto place = static_cast<size_t>(it.key() - first);
        const double usualRain = usual(it.key()).rain;
        m_days[place] = {it->emc.mean(), it->speed.mean(),
                         it->rain.count == 0 ? usualRain : it->rain.sum};
        m_known[place] = 1;
        ++m_observedDays;
    }
}

void AirCourse::fillYear(const Hours &observations, const Hours &normals)
{
    std::vector<Hours::DaySums> places(kYearDays);
    for (const Hours *source : {&observations, &normals}) {
        const QHash<qint64, Hours::DaySums> days = source->days();
        for (auto it = days.cbegin(); it != days.cend(); ++it) {
            Hours::DaySums &place = places[static_cast<size_t>(placeInYear(it.key()))];
            if (it->emc.count >= kLeastHours) {
                place.emc.add(it->emc.mean());
                place.speed.add(it->speed.mean());
            }
            if (it->rain.count > 0)
                place.rain.add(it->rain.sum);
        }
    }
    Hours::DaySums whole;
    for (const Hours::DaySums &place : places)
        whole.merge(place);
    m_assumed = whole.emc.count == 0;
    const AirDay fallback{m_assumed ? kMildAir.emc : whole.emc.mean(),
                          m_assumed ? kMildAir.speed : whole.speed.mean(),
                          whole.rain.count == 0 ? kMildAir.rain : whole.rain.mean()};
    for (int day = 0; day < kYearDays; ++day) {
        Hours::DaySums near;
        for (int away = -kWindow; away <= kWindow; ++away)
            near.merge(places[static_cast<size_t>((day + away + kYearDays) % kYearDays)]);
        const bool own = near.emc.count >= kLeastDays;
        m_yearCovered += own ? 1 : 0;
        m_year[static_cast<size_t>(day)] = {
            own ? near.emc.mean() : fallback.emc, own ? near.speed.mean() : fallback.speed,
            near.rain.count >= kLeastDays ? near.rain.mean() : fallback.rain};
    }
}

bool AirCourse::observed(qint64 day) const
{
    const qint64 place = day - m_first;
    return place >= 0 && place < static_cast<qint64>(m_days.size()) &&
           m_known[static_cast<size_t>(place)] != 0;
}

AirDay AirCourse::usual(qint64 day) const
{
    return m_year[static_cast<size_t>(placeInYear(day))];
}

AirDay AirCourse::dayAt(qint64 day) const
{
    return observed(day) ? m_days[static_cast<size_t>(day - m_first)] : usual(day);
}

} // namespace rickyard::domain
