#include "app/cli/trace_plan.h"

#include "app/cli/yard_access.h"
#include "models/domain/fire/trace_facts.h"
#include "models/domain/quantities/units.h"
#include "models/domain/weather/series.h"
#include "models/exchange/time_pattern.h"
#include "models/exchange/trace_merge.h"

#include <QDateTime>
#include <QIODevice>
#include <QTimeZone>

namespace rickyard::app {

using domain::Books;
using domain::Cook;
using domain::Instant;
using domain::ProbePoints;
using domain::Problem;
using exchange::ProbeLog;
using exchange::ProbeLogMapping;

namespace {

constexpr qint64 kHeadBytes = 64 * 1024;
// The hours around a cook of which a longer log is kept: what is outside is another cook's.
constexpr qint64 kBeforeLighting = 2 * 3600;
constexpr qint64 kAfterFireOut = 6 * 3600;
constexpr qint64 kLongestCook = 72 * 3600; // of one without an end

std::optional<Cook> findCook(const Books &books, const QString &wanted, ImportPlan &plan)
{
    bool isId = false;
    const domain::RecordId id = wanted.toLongLong(&isId);
    QVector<Cook> found;
    for (const Cook &cook : books.cooks)
        if ((isId && cook.id == id) || cook.name.compare(wanted, Qt::CaseInsensitive) == 0)
            found << cook;
    if (found.size() == 1)
        return found.first();
    plan.refused << Problem{
        QStringLiteral("cook"),
        found.isEmpty()
            ? QStringLiteral("There is no cook \"%1\". Give its id or its name with --cook; "
                             "\"rickyard fuel\" lists them.")
                  .arg(wanted)
            : QStringLiteral("%1 cooks are named \"%2\". Give the id.")
                  .arg(found.size())
                  .arg(wanted)};
    return std::nullopt;
}

// "NAME=COLUMN" or "NAME", with commas between; a name alone is a column of that name, or the only
// one there is.
bool chooseProbes(const QString &text, ProbeLogMapping &mapping, const QStringList &header,
                  ImportPlan &plan)
{
    if (text.isEmpty())
        return true;
    const QVector<exchange::ProbeColumn> guessed = mapping.probes;
    mapping.probes.clear();
    for (const QString &part : text.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        const QString name = part.section(QLatin1Char('='), 0, 0).trimmed();
        QString column = part.section(QLatin1Char('='), 1).trimmed();
        if (column.isEmpty() && header.contains(name))
            column = name;
        if (column.isEmpty() && guessed.size() == 1)
            column = guessed.first().column;
        if (!header.contains(column)) {
            plan.refused << Problem{
                QStringLiteral("probe"),
                QStringLiteral("Which column is \"%1\"? Write --probe \"%1=COLUMN\". The columns "
                               "are: %2.")
                    .arg(name, header.join(QStringLiteral(", ")))};
            return false;
        }
        mapping.probes << exchange::ProbeColumn{name, column};
    }
    return true;
}

bool chooseTime(const TraceRequest &request, const Cook &cook, ProbeLogMapping &mapping,
                ImportPlan &plan)
{
    if (!request.timeStyle.isEmpty()) {
        mapping.timeFormat = request.timeStyle;
        mapping.time = exchange::TimePattern(request.timeStyle).holdsDate()
                           ? exchange::ProbeTime::Clock
                           : exchange::ProbeTime::TimeOfDay;
    }
    if (!request.zone.isEmpty() && !QTimeZone(request.zone.toUtf8()).isValid()) {
        plan.refused << Problem{QStringLiteral("zone"),
                                QStringLiteral("There is no time zone \"%1\". Write it as "
                                               "America/Chicago or UTC.")
                                    .arg(request.zone)};
        return false;
    }
    if (mapping.time == exchange::ProbeTime::Clock)
        return true;
    if (request.start.isEmpty()) {
        mapping.start = cook.lit;
        plan.said << QStringLiteral("The log holds no dates: it is taken to begin when the cook "
                                    "was lit. --start TIME sets it.");
        return true;
    }
    mapping.start = readMoment(request.start, mapping.zone);
    if (!mapping.start)
        plan.refused << Problem{QStringLiteral("start"),
                                QStringLiteral("--start %1 is not a time. Write it as "
                                               "2026-11-30T18:00.")
                                    .arg(request.start)};
    return mapping.start.has_value();
}

QString mappingInWords(const ProbeLogMapping &mapping)
{
    QStringList probes;
    for (const exchange::ProbeColumn &probe : mapping.probes)
        probes << QStringLiteral("%1 from \"%2\"").arg(probe.probe, probe.column);
    QString time = QStringLiteral("\"%1\"").arg(mapping.timeColumn);
    if (!mapping.dateColumn.isEmpty())
        time = QStringLiteral("\"%1\" and %2").arg(mapping.dateColumn, time);
    if (mapping.time == exchange::ProbeTime::Elapsed)
        time += QStringLiteral(", since the start");
    else if (mapping.zoneKind == exchange::TimeZoneKind::Zone)
        time += QStringLiteral(" in %1").arg(mapping.zone);
    return QStringLiteral("Time from %1; %2, in %3.")
        .arg(time, probes.join(QStringLiteral(", ")),
             mapping.fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C"));
}

// Hourly, over the log; empty unless every hour has a record near it.
ProbePoints outsideCourse(const Books &books, const ProbeLog &log, qint64 last)
{
    const domain::WeatherSeries weather(books);
    ProbePoints course;
    for (qint64 t = 0; t <= last + 3599; t += 3600) {
        const auto air = weather.temperatureAt(log.start + domain::Duration::ofBase(t));
        if (!air)
            return {};
        course.append({t, *air});
    }
    return course;
}

void sayFacts(const Books &books, const Cook &cook, const ProbeLog &log, ImportPlan &plan)
{
    const domain::Yard yard = books.yard();
    const auto system = yard.metric ? domain::UnitSystem::Metric : domain::UnitSystem::UsCustomary;
    const QLocale locale = QLocale::c();
    QVector<ProbePoints> all;
    qint64 last = 0;
    for (const exchange::ProbeSeries &series : log.series) {
        all << series.points;
        if (!series.points.isEmpty())
            last = std::max(last, series.points.last().offset);
    }
    const ProbePoints outside = outsideCourse(books, log, last);
    for (qsizetype i = 0; i < all.size(); ++i) {
        QVector<ProbePoints> others = all;
        others.removeAt(i);
        const auto faults = domain::probeFaults(all.at(i), others, outside);
        const domain::TraceCourse course(all.at(i), faults);
        const auto mean = course.mean(0, last);
        QStringList parts{QStringLiteral("%1 readings").arg(all.at(i).size())};
        if (mean)
            parts << QStringLiteral("mean %1 over %2")
                         .arg(domain::show(*mean, system, locale),
                              domain::formatDuration(course.covered(0, last)));
        if (const auto degreeHours = course.degreeHours(outside, 0, last))
            parts << QStringLiteral("%1 K h above the outside air")
                         .arg(QString::number(*degreeHours, 'f', 0));
        if (cook.target) {
            const auto took = course.timeToTemperature(*cook.target, (cook.lit - log.start).base());
            if (took)
                parts << QStringLiteral("at %1 after %2")
                             .arg(domain::show(*cook.target, system, locale),
                                  domain::formatDuration(*took));
        }
        plan.said << QStringLiteral("%1: %2.").arg(log.series.at(i).probe,
                                                   parts.join(QStringLiteral(", ")));
        for (const domain::ProbeFault &fault : faults)
            plan.said << QStringLiteral("  from %1: %2; left out of these figures.")
                             .arg(QDateTime::fromSecsSinceEpoch(log.start.seconds() + fault.from,
                                                                QTimeZone(yard.timeZone.toUtf8()))
                                      .toString(QStringLiteral("yyyy-MM-dd HH:mm")),
                                  fault.words());
    }
}

std::optional<ProbeLogMapping> mappingOf(const Books &books, QIODevice &device, const Cook &cook,
                                         const TraceRequest &request, ImportPlan &plan)
{
    const QString zone = request.zone.isEmpty() ? books.yard().timeZone : request.zone;
    const exchange::ProbeLogGuess guess = exchange::guessProbeLog(device.peek(kHeadBytes), zone);
    ProbeLogMapping mapping = guess.mapping;
    if (!chooseProbes(request.probes, mapping, guess.header, plan) ||
        !chooseTime(request, cook, mapping, plan))
        return std::nullopt;
    plan.said << guess.notes;
    if (!request.unit.isEmpty())
        mapping.fahrenheit = request.unit == QLatin1String("degF");
    else if (!guess.unitNote.isEmpty())
        plan.said << guess.unitNote;
    mapping.from = cook.lit - domain::Duration::ofBase(kBeforeLighting);
    mapping.to = cook.fireOut ? *cook.fireOut + domain::Duration::ofBase(kAfterFireOut)
                              : cook.lit + domain::Duration::ofBase(kLongestCook);
    plan.said << mappingInWords(mapping);
    return mapping;
}

} // namespace

ImportPlan planTrace(const Books &books, QIODevice &device, const QString &fileName,
                     const TraceRequest &request)
{
    ImportPlan plan;
    if (!request.unit.isEmpty() && request.unit != QLatin1String("degF") &&
        request.unit != QLatin1String("degC")) {
        plan.refused << Problem{
            QStringLiteral("unit"),
            QStringLiteral("--unit is degF or degC, not \"%1\".").arg(request.unit)};
        return plan;
    }
    const auto cook = findCook(books, request.cook, plan);
    if (!cook)
        return plan;
    const auto mapping = mappingOf(books, device, *cook, request, plan);
    if (!mapping)
        return plan;
    const ProbeLog log = exchange::readProbeLog(device, *mapping, fileName);
    if (!log.ok) {
        plan.refused = log.refused.problems();
        return plan;
    }
    plan.said << log.report.lines();
    const auto merge = exchange::mergeTraces(books, cook->id, log, fileName);
    if (!merge) {
        plan.refused = merge.problems();
        return plan;
    }
    for (const domain::Trace &trace : merge->updated)
        plan.rows << domain::toRow(trace);
    for (const domain::Trace &trace : merge->fresh)
        plan.rows << domain::toRow(trace);
    plan.changed = merge->updated.size();
    plan.added = merge->fresh.size();
    plan.same = merge->identical;
    sayFacts(books, *cook, log, plan);
    return plan;
}

} // namespace rickyard::app
