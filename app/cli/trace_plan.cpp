#include "app/cli/trace_plan.h"

#include "app/cli/yard_access.h"
#include "models/domain/fire/probe_summary.h"
#include "models/domain/quantities/units.h"
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

void sayFacts(const Books &books, const Cook &cook, const ProbeLog &log, ImportPlan &plan)
{
    const domain::Yard yard = books.yard();
    const auto system = yard.metric ? domain::UnitSystem::Metric : domain::UnitSystem::UsCustomary;
    const QLocale locale = QLocale::c();
    const qint64 shift = (log.start - cook.lit).base();
    QVector<domain::ProbeTrace> probes;
    qint64 last = shift;
    for (const exchange::ProbeSeries &series : log.series) {
        domain::ProbeTrace probe{series.probe, series.points};
        for (domain::TracePoint &point : probe.points)
            point.offset += shift;
        if (!probe.points.isEmpty())
            last = std::max(last, probe.points.last().offset);
        probes << probe;
    }
    const ProbePoints outside =
        domain::outsideOver(domain::WeatherSeries(books), cook.lit, shift, last);
    for (const domain::ProbeSummary &summary :
         domain::summariseProbes(probes, cook, domain::feedTimes(books, cook), outside)) {
        QStringList parts{QStringLiteral("%1 readings").arg(summary.readings)};
        if (summary.mean)
            parts << QStringLiteral("mean %1 over %2")
                         .arg(domain::show(*summary.mean, system, locale),
                              domain::formatDuration(summary.covered));
        if (summary.degreeHours)
            parts << QStringLiteral("%1 K h above the outside air")
                         .arg(QString::number(*summary.degreeHours, 'f', 0));
        if (summary.toTemperature)
            parts << QStringLiteral("at %1 after %2")
                         .arg(domain::show(*cook.target, system, locale),
                              domain::formatDuration(*summary.toTemperature));
        plan.said << QStringLiteral("%1: %2.").arg(summary.probe, parts.join(QStringLiteral(", ")));
        for (const domain::ProbeFault &fault : summary.faults)
            plan.said << QStringLiteral("  from %1: %2; left out of these figures.")
                             .arg(QDateTime::fromSecsSinceEpoch(cook.lit.seconds() + fault.from,
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
    exchange::keepHoursOf(cook, mapping);
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
