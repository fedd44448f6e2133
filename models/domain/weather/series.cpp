#include "models/domain/weather/series.h"

#include <QDate>

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr qint64 kReach = 90 * 60; // seconds a record speaks for, either side
constexpr int kWindowDays = 15;
constexpr qint64 kDay = 86400;
constexpr qint64 kHour = 3600;

struct Calendar {
    int day;  // 0 ... 365, counted in a leap year so that a date has one number in every year
    int hour; // 0 ... 23, UTC
};

qint64 floorDiv(qint64 a, qint64 b)
{
    return a >= 0 ? a / b : -((-a + b - 1) / b);
}

Calendar calendarOf(qint64 seconds)
{
    constexpr qint64 kJulianOf1970 = 2440588;
    const qint64 days = floorDiv(seconds, kDay);
    const QDate date = QDate::fromJulianDay(kJulianOf1970 + days);
    const bool afterMissingLeapDay = !QDate::isLeapYear(date.year()) && date.month() > 2;
    const int day = date.dayOfYear() - 1 + (afterMissingLeapDay ? 1 : 0);
    return {day, static_cast<int>((seconds - days * kDay) / kHour)};
}

QString percent(double share)
{
    return QString::number(std::lround(100.0 * share));
}

} // namespace

WeatherSeries::WeatherSeries(const Books &books)
{
    for (const Weather &w : books.weather) {
        const qint64 t = w.time.seconds();
        if (w.rain && !w.normal)
            m_rain.push_back({t, w.rain->toDouble() / 1000.0});
        if (!w.temperature && !w.wind)
            continue;
        const Calendar when = calendarOf(t);
        m_anyClimate = true;
        m_anyNormal = m_anyNormal || w.normal;
        if (w.temperature) {
            m_temperatureClimate.add(when.day, when.hour, w.temperature->toDouble());
            if (!w.normal)
                m_temperature.push_back({t, w.temperature->toDouble()});
        }
        if (w.wind) {
            m_windClimate.add(when.day, when.hour, w.wind->toDouble());
            if (!w.normal)
                m_wind.push_back({t, w.wind->toDouble()});
        }
    }
    settle(m_temperature);
    settle(m_wind);
    settle(m_rain);
    m_temperatureClimate.accumulate();
    m_windClimate.accumulate();
}

void WeatherSeries::settle(Course &course)
{
    std::stable_sort(course.begin(), course.end(),
                     [](const Point &a, const Point &b) { return a.time < b.time; });
    std::size_t kept = 0;
    for (std::size_t i = 0; i < course.size();) {
        const qint64 t = course[i].time;
        double sum = 0;
        double n = 0;
        for (; i < course.size() && course[i].time == t; ++i, ++n)
            sum += course[i].value;
        course[kept++] = {t, sum / n};
    }
    course.resize(kept);
}

std::optional<double> WeatherSeries::at(const Course &course, qint64 t)
{
    const auto after = std::lower_bound(course.begin(), course.end(), t,
                                        [](const Point &p, qint64 time) { return p.time < time; });
    std::optional<double> found;
    qint64 distance = kReach + 1;
    if (after != course.begin()) {
        const Point &before = *(after - 1);
        distance = t - before.time;
        if (distance <= kReach)
            found = before.value;
    }
    if (after != course.end() && after->time - t < distance && after->time - t <= kReach)
        found = after->value;
    return found;
}

// Each record speaks for the time nearer to it than to its neighbours, within its reach.
WeatherSeries::StretchMean WeatherSeries::stretchMean(const Course &course, qint64 from, qint64 to)
{
    if (to <= from) {
        const std::optional<double> value = at(course, from);
        return value ? StretchMean{*value, 1.0} : StretchMean{};
    }
    auto p = std::lower_bound(course.begin(), course.end(), from - kReach,
                              [](const Point &point, qint64 t) { return point.time < t; });
    double sum = 0;
    double seconds = 0;
    for (; p != course.end() && p->time <= to + kReach; ++p) {
        double begin = static_cast<double>(std::max(from, p->time - kReach));
        double end = static_cast<double>(std::min(to, p->time + kReach));
        if (p != course.begin())
            begin = std::max(begin, static_cast<double>((p - 1)->time + p->time) / 2.0);
        if (p + 1 != course.end())
            end = std::min(end, static_cast<double>(p->time + (p + 1)->time) / 2.0);
        if (end <= begin)
            continue;
        sum += p->value * (end - begin);
        seconds += end - begin;
    }
    if (seconds <= 0)
        return {};
    return {sum / seconds, seconds / static_cast<double>(to - from)};
}

WeatherMean WeatherSeries::mean(Instant from, Instant to) const
{
    const StretchMean temperature = stretchMean(m_temperature, from.seconds(), to.seconds());
    const StretchMean wind = stretchMean(m_wind, from.seconds(), to.seconds());
    WeatherMean result;
    result.covered = temperature.covered;
    if (temperature.covered > 0)
        result.temperature = Temperature::rounded(temperature.mean);
    if (wind.covered > 0)
        result.wind = Speed::rounded(wind.mean);
    if (result.covered <= 0)
        result.basis = QStringLiteral("No weather is recorded for this time.");
    else if (result.covered > 0.995)
        result.basis = QStringLiteral("Weather records cover the whole time.");
    else
        result.basis = QString(QStringLiteral("Weather records cover ") + percent(result.covered) +
                               QStringLiteral(" % of the time."));
    return result;
}

double WeatherSeries::rainOver(Instant from, Instant to) const
{
    double sum = 0;
    for (auto p = std::lower_bound(m_rain.begin(), m_rain.end(), from.seconds(),
                                   [](const Point &point, qint64 t) { return point.time < t; });
         p != m_rain.end() && p->time < to.seconds() + kHour; ++p) {
        // A record sooner than an hour after another tells of what fell since that one.
        qint64 begins = p->time - kHour;
        if (p != m_rain.begin())
            begins = std::max(begins, (p - 1)->time);
        const qint64 shared = std::min(p->time, to.seconds()) - std::max(begins, from.seconds());
        if (shared > 0)
            sum += p->value * static_cast<double>(shared) / static_cast<double>(p->time - begins);
    }
    return sum;
}

std::optional<Temperature> WeatherSeries::temperatureAt(Instant t) const
{
    const std::optional<double> value = at(m_temperature, t.seconds());
    return value ? std::optional(Temperature::rounded(*value)) : std::nullopt;
}

std::optional<Speed> WeatherSeries::windAt(Instant t) const
{
    const std::optional<double> value = at(m_wind, t.seconds());
    return value ? std::optional(Speed::rounded(*value)) : std::nullopt;
}

void WeatherSeries::Climate::add(int day, int hour, double value)
{
    Cell &cell = running[rowAt(hour) + static_cast<std::size_t>(day + 1)];
    cell.sum += value;
    ++cell.count;
}

void WeatherSeries::Climate::accumulate()
{
    for (int hour = 0; hour < 24; ++hour) {
        Cell *row = &running[rowAt(hour)];
        for (int day = 1; day <= kDays; ++day) {
            row[day].sum += row[day - 1].sum;
            row[day].count += row[day - 1].count;
        }
    }
}

WeatherSeries::Climate::Cell WeatherSeries::Climate::window(int day, int hour) const
{
    const Cell *row = &running[rowAt(hour)];
    const auto between = [row](int first, int last) { // days first ... last, both within the year
        return Cell{row[last + 1].sum - row[first].sum, row[last + 1].count - row[first].count};
    };
    const int first = day - kWindowDays;
    const int last = day + kWindowDays;
    Cell inside = between(std::max(first, 0), std::min(last, kDays - 1));
    Cell around;
    if (first < 0)
        around = between(kDays + first, kDays - 1);
    else if (last >= kDays)
        around = between(0, last - kDays);
    return {inside.sum + around.sum, inside.count + around.count};
}

// The mean over the stretch of what each of its hours usually has.
WeatherSeries::ClimateMean WeatherSeries::climateMean(const Climate &climate, qint64 from,
                                                      qint64 to, bool anyHour)
{
    ClimateMean result;
    double sum = 0;
    double seconds = 0;
    const qint64 end = std::max(to, from + 1);
    for (qint64 t = from; t < end;) {
        const qint64 next = std::min(end, (floorDiv(t, kHour) + 1) * kHour);
        const Calendar when = calendarOf(t);
        Climate::Cell cell;
        for (int hour = 0; hour < 24; ++hour) {
            if (hour != when.hour && !anyHour)
                continue;
            const Climate::Cell one = climate.window(when.day, hour);
            cell.sum += one.sum;
            cell.count += one.count;
        }
        if (cell.count > 0) {
            const double length = static_cast<double>(next - t);
            sum += cell.sum / static_cast<double>(cell.count) * length;
            seconds += length;
            result.records += cell.count;
        }
        t = next;
    }
    if (seconds > 0) {
        result.value = sum / seconds;
        result.covered = seconds / static_cast<double>(end - from);
    }
    return result;
}

WeatherMean WeatherSeries::climatology(Instant from, Instant to) const
{
    const auto ask = [&](const Climate &climate, bool anyHour) {
        return climateMean(climate, from.seconds(), to.seconds(), anyHour);
    };
    ClimateMean temperature = ask(m_temperatureClimate, false);
    // Records of one hour a day still say something of the season.
    const bool anyHour = !temperature.value.has_value();
    if (anyHour)
        temperature = ask(m_temperatureClimate, true);
    ClimateMean wind = ask(m_windClimate, false);
    if (!wind.value)
        wind = ask(m_windClimate, true);
    WeatherMean result;
    result.covered = temperature.covered;
    if (wind.value)
        result.wind = Speed::rounded(*wind.value);
    if (!temperature.value) {
        result.basis = QStringLiteral("No weather is recorded for this time of the year.");
        return result;
    }
    result.temperature = Temperature::rounded(*temperature.value);
    result.basis = QString(
        QStringLiteral("Usual weather: records within 15 days of the date in any year, ") +
        (anyHour ? QStringLiteral("at whatever hours there are")
                 : QStringLiteral("between the same hours")) +
        (m_anyNormal ? QStringLiteral(", climate normals included.") : QStringLiteral(".")));
    return result;
}

} // namespace rickyard::domain
