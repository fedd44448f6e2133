#include "views/weather/weather_course.h"

#include "models/domain/statistics/decimate.h"

#include <algorithm>

namespace rickyard::views {

namespace {

constexpr qint64 kGap = 3 * 3600;
// A chart shows no more than this many silences; shorter ones are narrower than its line.
constexpr qint64 kVisibleShare = 120;

std::vector<WeatherSample> thinned(const std::vector<WeatherSample> &piece, std::size_t most)
{
    std::vector<double> x;
    std::vector<double> y;
    for (const WeatherSample &sample : piece) {
        x.push_back(static_cast<double>(sample.time));
        y.push_back(sample.value);
    }
    const auto kept = domain::statistics::minMaxDecimation(x, y, std::max<std::size_t>(4, most));
    if (!kept.ok())
        return piece;
    std::vector<WeatherSample> out;
    for (std::size_t index : kept.value())
        out.push_back(piece[index]);
    return out;
}

} // namespace

std::vector<WeatherSample> weatherSamples(const domain::Books &books, const WeatherStretch &stretch,
                                          const WeatherValue &value)
{
    std::vector<WeatherSample> samples;
    for (const domain::Weather &record : books.weather) {
        if (record.normal != stretch.normals || record.time < stretch.from ||
            record.time > stretch.to || (!stretch.place.isNull() && record.place != stretch.place))
            continue;
        if (const auto v = value(record))
            samples.push_back({record.time.seconds(), *v});
    }
    std::stable_sort(
        samples.begin(), samples.end(),
        [](const WeatherSample &a, const WeatherSample &b) { return a.time < b.time; });
    return samples;
}

std::vector<std::vector<WeatherSample>> drawnPieces(const std::vector<WeatherSample> &samples,
                                                    std::size_t most)
{
    std::vector<std::vector<WeatherSample>> pieces;
    if (samples.empty())
        return pieces;
    const qint64 span = samples.back().time - samples.front().time;
    const qint64 gap = std::max(kGap, span / kVisibleShare);
    for (std::size_t i = 0; i < samples.size(); ++i) {
        if (i == 0 || samples[i].time - samples[i - 1].time > gap)
            pieces.emplace_back();
        pieces.back().push_back(samples[i]);
    }
    for (auto &piece : pieces)
        piece = thinned(piece, most * piece.size() / samples.size());
    return pieces;
}

} // namespace rickyard::views
