// A probe-log mapping as it is kept in an import profile, with the headers it was made for, so that
// the next file of the same logger finds it again (docs/file-formats.md).
#pragma once

#include "models/domain/records/books.h"
#include "models/exchange/probe_log.h"

namespace rickyard::exchange {

// ImportProfile::kind of a saved probe-log mapping.
constexpr char kTraceProfileKind[] = "trace";

struct ProbeProfile {
    ProbeLogMapping mapping; // without `start`, `from` and `to`: those belong to one cook
    QStringList header;
};
QString toText(const ProbeProfile &profile); // for ImportProfile::mapping
domain::Outcome<ProbeProfile> probeProfileFromText(const QString &text);

// The headers of a file as a mapping sees them, from its first lines: numbers without a row of
// headers.
QStringList probeHeader(const QByteArray &head, QChar separator, int headerLine);
// The newest profile made for a file with these headers; 0 when there is none.
domain::RecordId profileFor(const domain::Books &books, const QByteArray &head);

// The first rows of a file as a mapping understands them.
struct ProbePreviewRow {
    qint64 line = 0;
    QStringList cells;                                    // as written
    std::optional<domain::Instant> time;                  // missing when the row is refused
    QVector<std::optional<domain::Temperature>> readings; // in the order of the mapping's probes
    QString refused; // what is wrong, in words; empty when nothing is
};
QVector<ProbePreviewRow> previewProbeLog(const QByteArray &head, const ProbeLogMapping &mapping,
                                         int rows);

} // namespace rickyard::exchange
