#include "models/domain/fire/evidence.h"

#include "models/domain/fire/feedings.h"
#include "models/domain/fire/pit_course.h"
#include "models/domain/fire/trace_codec.h"
#include "models/domain/statistics/descriptive.h"

#include <QHash>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr Duration kBurnDown = Duration::ofBase(3600);
constexpr qint64 kSameTime = 300; // seconds

// Records sorted by cook once.
struct ByCook {
    QHash<RecordId, QVector<Instant>> feeds;
    QHash<RecordId, int> doors;
    QHash<RecordId, QVector<const Trace *>> traces;
    QHash<RecordId, QVector<const CookTemperature *>> typed;

    explicit ByCook(const Books &books)
    {
        for (const Feed &feed : books.feeds)
            feeds[feed.cook] << feed.time;
        for (const CookNote &note : books.notes)
            doors[note.cook] += note.kind == NoteKind::Door ? 1 : 0;
        for (const Trace &trace : books.traces)
            traces[trace.cook] << &trace;
        for (const CookTemperature &t : books.temperatures)
            typed[t.cook] << &t;
    }
};

std::optional<double> feedGapOf(const QVector<Instant> &times, Instant fireOut)
{
    const QVector<Instant> feedings = feedingStarts(times);
    std::vector<double> gaps;
    for (qsizetype i = 1; i < feedings.size() && feedings.at(i) <= fireOut - kBurnDown; ++i)
        gaps.push_back((feedings.at(i) - feedings.at(i - 1)).toDouble());
    if (gaps.size() < 3)
        return std::nullopt;
    const auto middle = statistics::median(gaps);
    if (!middle || middle.value() <= 0)
        return std::nullopt;
    return *std::max_element(gaps.begin(), gaps.end()) / middle.value();
}

// A reading of the dial is one that was typed without a probe's name or for door, gauge or dial.
bool isDial(const CookTemperature &t)
{
    const QString name = t.probe.trimmed().toLower();
    return name.isEmpty() || name.contains(QLatin1String("dial")) ||
           name.contains(QLatin1String("gauge")) || name.contains(QLatin1String("door"));
}

std::optional<double> dialOffOf(const Cook &cook, const ByCook &by)
{
    const auto &traces = by.traces.value(cook.id);
    const auto &typed = by.typed.value(cook.id);
    if (traces.isEmpty() || typed.isEmpty() || !cook.fireOut)
        return std::nullopt;
    const PitCourse logged = pitCourse(cook, *cook.fireOut, traces, {});
    if (logged.readings.isEmpty())
        return std::nullopt;
    std::vector<double> off;
    for (const CookTemperature *t : typed) {
        const qint64 at = t->time.seconds();
        if (!isDial(*t) || at < logged.readings.first().time - kSameTime ||
            at > logged.readings.last().time + kSameTime)
            continue;
        off.push_back(logged.celsiusOver(at - kSameTime / 2, at + kSameTime / 2) -
                      celsius(t->temperature));
    }
    const auto middle = statistics::median(off);
    return off.size() >= 3 && middle ? std::optional(middle.value()) : std::nullopt;
}

EvidenceCook evidenceOn(const Books &books, const CookFuel &fuel, const ByCook &by)
{
    const Cook cook = books.cooks.value(fuel.cook);
    const WatchVerdict &verdict = *fuel.verdict;
    EvidenceCook e;
    e.cook = fuel.cook;
    e.pit = fuel.pit;
    e.lit = fuel.lit;
    e.logRatio = std::log1p(verdict.excess);
    e.sd = verdict.forecast.relativeSd;
    e.lots = fuel.lots;
    if (fuel.meanMoisture)
        e.moisture = dryFraction(*fuel.meanMoisture);
    const double whole = totalHeat(fuel.columns);
    e.windShare = whole > 0 ? fuel.columns[WindColumn] / whole : 0.0;
    if (fuel.meanWind)
        e.wind = fuel.meanWind->toDouble() / 1000.0;
    if (cook.atTemperature && *cook.atTemperature > cook.lit)
        e.preheat = hours(*cook.atTemperature - cook.lit);
    const double length = hours(fuel.length);
    // Nobody notes every opening on every cook: none noted says nothing.
    if (const int doors = by.doors.value(fuel.cook); doors > 0 && length > 0)
        e.doors = doors / length;
    e.feedGap = feedGapOf(by.feeds.value(fuel.cook), cook.fireOut.value_or(fuel.lit));
    e.dialOff = dialOffOf(cook, by);
    e.startCold = fuel.start == StartKind::Cold;
    return e;
}

} // namespace

QVector<EvidenceCook> evidenceOf(const Books &books, const FuelAnswer &fuel)
{
    const ByCook by(books);
    QVector<EvidenceCook> cooks;
    for (const CookFuel &cook : fuel.cooks)
        if (cook.verdict)
            cooks << evidenceOn(books, cook, by);
    return cooks;
}

std::optional<DiagnosisQuestion> questionOf(const FuelAnswer &fuel, RecordId pit)
{
    for (const PitFuel &one : fuel.pits) {
        if (one.pit != pit)
            continue;
        DiagnosisQuestion question;
        question.pit = pit;
        question.flagged = one.flag != WatchFlag::None;
        const bool less =
            one.flag == WatchFlag::Less || (one.flag == WatchFlag::None && one.down > one.up);
        question.direction = less ? WatchFlag::Less : WatchFlag::More;
        const auto &moved = less ? one.fall : one.climb;
        if (!moved)
            return std::nullopt;
        question.since = moved->since;
        return question;
    }
    return std::nullopt;
}

} // namespace rickyard::domain
