// The slow steps of bringing in a probe's log, each on a thread: opening the file, reading it with
// a mapping, and working out what it changes in the traces of the cook. A new reading takes the
// place of the one that still runs.
#pragma once

#include "models/exchange/probe_profile.h"
#include "models/exchange/trace_merge.h"
#include "views/latest_work.h"

namespace rickyard::views {

struct OpenedTraceFile {
    QString path;
    QString name;
    QByteArray head; // the first 64 kB: enough to guess from and to show
    QString problem; // in words; empty when it could be read
};

struct TraceChangesToWrite {
    QVector<domain::Row> rows;
    qint64 readings = 0; // in the rows
    qint64 identical = 0;
    QString problem;
};

class TraceImportJob : public QObject
{
    Q_OBJECT

public:
    explicit TraceImportJob(QObject *parent = nullptr);

    void open(const QString &path);
    // Reads the file in chunks: it may be larger than the memory.
    void read(const QString &path, const exchange::ProbeLogMapping &mapping);
    void compare(const domain::Books &books, domain::RecordId cook, const exchange::ProbeLog &log,
                 const QString &source);
    void cancel() { m_work.cancel(); }

Q_SIGNALS:
    void opened(const rickyard::views::OpenedTraceFile &file);
    void progressed(qint64 done, qint64 total);
    void wasRead(const rickyard::exchange::ProbeLog &log);
    void compared(const rickyard::views::TraceChangesToWrite &changes);

private:
    LatestWork m_work;
};

} // namespace rickyard::views
