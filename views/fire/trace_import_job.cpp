#include "views/fire/trace_import_job.h"

#include <QFile>
#include <QFileInfo>

namespace rickyard::views {

using exchange::ProbeLog;

namespace {

constexpr qint64 kTraceHeadBytes = 64 * 1024;

OpenedTraceFile openTraceFile(const QString &path)
{
    OpenedTraceFile file;
    file.path = path;
    file.name = QFileInfo(path).fileName();
    QFile device(path);
    if (!device.open(QIODevice::ReadOnly)) {
        file.problem =
            TraceImportJob::tr("%1 could not be opened: %2.").arg(file.name, device.errorString());
        return file;
    }
    file.head = device.read(kTraceHeadBytes);
    if (device.error() != QFileDevice::NoError)
        file.problem =
            TraceImportJob::tr("%1 could not be read: %2.").arg(file.name, device.errorString());
    else if (file.head.trimmed().isEmpty())
        file.problem =
            TraceImportJob::tr("%1 holds no rows. Choose the file that the logger wrote.")
                .arg(file.name);
    return file;
}

ProbeLog readTraceFile(const QString &path, const exchange::ProbeLogMapping &mapping,
                       LatestWork::Watch &watch)
{
    const QString name = QFileInfo(path).fileName();
    QFile device(path);
    if (!device.open(QIODevice::ReadOnly)) {
        ProbeLog log;
        log.refused.add({name, 0, 0, {}, {}, device.errorString(), {}});
        return log;
    }
    return exchange::readProbeLog(
        device, mapping, name,
        [&watch](qint64 done, qint64 total) {
            watch.done = done;
            watch.total = total;
        },
        &watch.cancelled);
}

TraceChangesToWrite traceChanges(const domain::Books &books, domain::RecordId cook,
                                 const ProbeLog &log, const QString &source)
{
    TraceChangesToWrite changes;
    const auto merge = exchange::mergeTraces(books, cook, log, source);
    if (!merge) {
        changes.problem = merge.message();
        return changes;
    }
    changes.identical = merge->identical;
    for (const QVector<domain::Trace> &traces : {merge->updated, merge->fresh})
        for (const domain::Trace &trace : traces) {
            changes.rows << domain::toRow(trace);
            changes.readings += trace.points;
        }
    return changes;
}

} // namespace

TraceImportJob::TraceImportJob(QObject *parent)
    : QObject(parent),
      m_work(this, [this](qint64 done, qint64 total) { Q_EMIT progressed(done, total); })
{
}

void TraceImportJob::open(const QString &path)
{
    m_work.run<OpenedTraceFile>([path](LatestWork::Watch &) { return openTraceFile(path); },
                                [this](const OpenedTraceFile &file) { Q_EMIT opened(file); });
}

void TraceImportJob::read(const QString &path, const exchange::ProbeLogMapping &mapping)
{
    m_work.run<ProbeLog>(
        [path, mapping](LatestWork::Watch &watch) { return readTraceFile(path, mapping, watch); },
        [this](const ProbeLog &log) { Q_EMIT wasRead(log); });
}

void TraceImportJob::compare(const domain::Books &books, domain::RecordId cook, const ProbeLog &log,
                             const QString &source)
{
    m_work.run<TraceChangesToWrite>(
        [books, cook, log, source](LatestWork::Watch &) {
            return traceChanges(books, cook, log, source);
        },
        [this](const TraceChangesToWrite &changes) { Q_EMIT compared(changes); });
}

} // namespace rickyard::views
