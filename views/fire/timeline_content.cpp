#include "views/fire/timeline_content.h"

#include "models/domain/upkeep/blocks.h"
#include "models/items/wording.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr double kNear = 600; // seconds: a reading further away says nothing of a moment

double after(const Cook &cook, Instant t)
{
    return (t - cook.lit).toDouble();
}

void takeFeeds(const Books &books, const Cook &cook, TimelineContent &content)
{
    const FireWords words(books);
    for (const Feed &feed : books.feeds) {
        if (feed.cook != cook.id)
            continue;
        const Lot lot = books.lots.value(feed.lot);
        std::optional<Mass> weight = feed.weight;
        if (!weight && lot.splitMass)
            weight = *lot.splitMass * feed.pieces;
        QString what = feed.pieces == 1 ? CookTimeline::tr("fed 1 split")
                                        : CookTimeline::tr("fed %1 splits").arg(feed.pieces);
        if (!lot.name.isEmpty())
            what += CookTimeline::tr(" of %1").arg(lot.name);
        if (weight)
            what += QString(QStringLiteral(", ") + words.mass(*weight, 1).text());
        content.feeds.append({after(cook, feed.time), weight ? kilograms(*weight) : 0.0, what});
    }
    std::stable_sort(content.feeds.begin(), content.feeds.end(),
                     [](const auto &a, const auto &b) { return a.at < b.at; });
}

QString noteIcon(NoteKind kind)
{
    switch (kind) {
    case NoteKind::Rain:
        return QStringLiteral("weather");
    case NoteKind::WindTurned:
        return QStringLiteral("wind");
    case NoteKind::Grease:
        return QStringLiteral("drop");
    case NoteKind::Ash:
        return QStringLiteral("ash-can");
    case NoteKind::HandOver:
        return QStringLiteral("people");
    case NoteKind::Door:
    case NoteKind::Wrapped:
    case NoteKind::Turned:
    case NoteKind::Remark:
        break;
    }
    return QStringLiteral("note");
}

QString noteWords(NoteKind kind)
{
    switch (kind) {
    case NoteKind::Door:
        return CookTimeline::tr("door opened");
    case NoteKind::Wrapped:
        return CookTimeline::tr("wrapped");
    case NoteKind::Turned:
        return CookTimeline::tr("turned");
    case NoteKind::Rain:
        return CookTimeline::tr("rain");
    case NoteKind::WindTurned:
        return CookTimeline::tr("wind turned");
    case NoteKind::Grease:
        return CookTimeline::tr("grease drain looked at");
    case NoteKind::Ash:
        return CookTimeline::tr("ash raked");
    case NoteKind::HandOver:
        return CookTimeline::tr("hand-over");
    case NoteKind::Remark:
        break;
    }
    return CookTimeline::tr("note");
}

void takeMarks(const Books &books, const Cook &cook, TimelineContent &content)
{
    const std::pair<std::optional<Instant>, QString> own[] = {
        {cook.atTemperature, CookTimeline::tr("at temperature")},
        {cook.foodOn, CookTimeline::tr("food on")},
        {cook.foodOff, CookTimeline::tr("food off")},
        {cook.fireOut, CookTimeline::tr("fire out")}};
    for (const auto &[time, words] : own)
        if (time)
            content.marks.append({after(cook, *time), true, {}, words});
    for (const CookNote &note : books.notes) {
        if (note.cook != cook.id)
            continue;
        QString words = noteWords(note.kind);
        if (!note.text.trimmed().isEmpty() &&
            note.text.trimmed().compare(words, Qt::CaseInsensitive) != 0)
            words += QString(QStringLiteral(": ") + note.text.simplified());
        content.marks.append({after(cook, note.time), false, noteIcon(note.kind), words});
    }
    for (const Override &record : litDespite(books, cook))
        content.marks.append({after(cook, cook.lit), false, noteIcon(NoteKind::Remark),
                              despiteWords(books, record)});
    std::stable_sort(content.marks.begin(), content.marks.end(),
                     [](const auto &a, const auto &b) { return a.at < b.at; });
}

QString rangeWords(double low, double high, const Unit &unit, const QLocale &locale)
{
    const QString from = trueMinus(formatNumber(toUnit(std::llround(low), unit), 0, locale));
    const QString to = trueMinus(formatNumber(toUnit(std::llround(high), unit), 0, locale));
    return withUnit(from == to ? to : rangeText(from, to), unit.symbol);
}

const AirPoint *nearest(const QVector<AirPoint> &course, double at)
{
    const AirPoint *best = nullptr;
    for (const AirPoint &point : course)
        if (best == nullptr || std::abs(point.at - at) < std::abs(best->at - at))
            best = &point;
    return best;
}

} // namespace

QStringList TimelineContent::probes() const
{
    QStringList names;
    if (curves)
        for (const ProbeCurve &probe : curves->probes)
            names << probe.name;
    for (const TypedReading &reading : typed)
        if (!names.contains(reading.probe, Qt::CaseInsensitive))
            names << reading.probe;
    return names;
}

double TimelineContent::first() const
{
    double at = 0;
    if (curves)
        for (const ProbeCurve &probe : curves->probes)
            if (!probe.x.empty())
                at = std::min(at, probe.x.front());
    return at;
}

double TimelineContent::last() const
{
    double at = std::max({end, first() + 60, atLeast});
    if (curves)
        for (const ProbeCurve &probe : curves->probes)
            if (!probe.x.empty())
                at = std::max(at, probe.x.back());
    for (const TypedReading &reading : typed)
        at = std::max(at, reading.at);
    return at;
}

QString TimelineContent::clock(double at) const
{
    const QDateTime time =
        QDateTime::fromSecsSinceEpoch(lit.seconds() + static_cast<qint64>(std::floor(at)), zone);
    return locale.toString(time.time(), QStringLiteral("h:mm AP"));
}

QString TimelineContent::degrees(double milli) const
{
    return withUnit(trueMinus(formatNumber(toUnit(std::llround(milli), temperature), 0, locale)),
                    temperature.symbol);
}

QString TimelineContent::windWords(double value) const
{
    return withUnit(formatNumber(toUnit(std::llround(value), speed), 0, locale), speed.symbol);
}

QString TimelineContent::windRange(double low, double high) const
{
    return rangeWords(low, high, speed, locale);
}

QString TimelineContent::degreesRange(double low, double high) const
{
    return rangeWords(low, high, temperature, locale);
}

QString TimelineContent::targetWords() const
{
    if (!target)
        return {};
    // A difference has no zero of its own.
    const double half = kTargetBand.toDouble() / temperature.scale;
    return CookTimeline::tr("target %1 ± %2").arg(degrees(*target), formatNumber(half, 0, locale));
}

QString TimelineContent::reading(double at, double reach) const
{
    QStringList values;
    if (curves)
        for (const ProbeCurve &probe : curves->probes) {
            const auto next = std::lower_bound(probe.x.begin(), probe.x.end(), at);
            std::size_t i = static_cast<std::size_t>(next - probe.x.begin());
            if (i == probe.x.size() || (i > 0 && at - probe.x[i - 1] < probe.x[i] - at))
                i = i == 0 ? 0 : i - 1;
            if (probe.x.empty() || std::abs(probe.x[i] - at) > kNear)
                continue;
            QString words = QStringLiteral("%1 %2").arg(probe.name, degrees(probe.y.value(i)));
            for (const ProbeFault &fault : probe.faults)
                if (at >= static_cast<double>(fault.from) && at <= static_cast<double>(fault.to))
                    words += CookTimeline::tr(" (left out: %1)").arg(fault.words());
            values << words;
        }
    for (const TypedReading &one : typed)
        if (std::abs(one.at - at) <= reach)
            values << CookTimeline::tr("%1 %2, as typed").arg(one.probe, degrees(one.milli));
    if (curves) {
        const AirPoint *outside = nearest(curves->outside, at);
        if (outside != nullptr && outside->value)
            values << CookTimeline::tr("outside %1").arg(degrees(*outside->value));
        const AirPoint *wind = nearest(curves->wind, at);
        if (wind != nullptr && wind->value)
            values << CookTimeline::tr("wind %1").arg(windWords(*wind->value));
    }
    for (const TimelineFeed &feed : feeds)
        if (std::abs(feed.at - at) <= reach)
            values << feed.words;
    for (const TimelineMark &mark : marks)
        if (std::abs(mark.at - at) <= reach)
            values << mark.words;
    const Duration since = Duration::rounded(std::abs(at));
    const QString when =
        at < 0 ? CookTimeline::tr("%1, %2 before lighting").arg(clock(at), FireWords::span(since))
               : CookTimeline::tr("%1, %2 after lighting").arg(clock(at), FireWords::span(since));
    return values.isEmpty()
               ? when
               : QString(when + QStringLiteral(": ") + values.join(QStringLiteral(", ")));
}

std::vector<double> TimelineContent::events() const
{
    std::vector<double> times;
    for (const TimelineFeed &feed : feeds)
        times.push_back(feed.at);
    for (const TimelineMark &mark : marks)
        times.push_back(mark.at);
    if (curves)
        for (const ProbeCurve &probe : curves->probes)
            for (const ProbeFault &fault : probe.faults)
                times.push_back(static_cast<double>(fault.from));
    std::sort(times.begin(), times.end());
    return times;
}

TimelineContent timelineContent(const Books &books, const Cook &cook, Instant now)
{
    const FireWords words(books);
    TimelineContent content;
    content.cook = cook.id;
    content.lit = cook.lit;
    content.end = std::max(3600.0, after(cook, cook.fireOut.value_or(now)));
    content.temperature = words.unit(Dimension::Temperature);
    content.speed = words.unit(Dimension::Speed);
    content.locale = words.locale();
    content.zone = QTimeZone(books.yard().timeZone.toUtf8());
    if (!content.zone.isValid())
        content.zone = QTimeZone::utc();
    if (cook.target)
        content.target = cook.target->toDouble();
    if (cook.outside)
        content.typedOutside = cook.outside->toDouble();
    if (cook.wind)
        content.typedWind = cook.wind->toDouble();
    takeFeeds(books, cook, content);
    takeMarks(books, cook, content);
    for (const CookTemperature &t : books.temperatures)
        if (t.cook == cook.id)
            content.typed.append({after(cook, t.time), t.temperature.toDouble(),
                                  t.probe.isEmpty() ? CookTimeline::tr("pit") : t.probe});
    std::stable_sort(content.typed.begin(), content.typed.end(),
                     [](const auto &a, const auto &b) { return a.at < b.at; });
    return content;
}

} // namespace rickyard::views
