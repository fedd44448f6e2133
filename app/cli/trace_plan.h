// What a probe log would change in a yard's traces, worked out before anything is written.
#pragma once

#include "app/cli/import_plan.h"

class QIODevice;

namespace rickyard::app {

struct TraceRequest {
    QString cook;      // id or name
    QString probes;    // "Grate", "Grate=Column 2,Meat=Column 3"; empty: every column of numbers
    QString timeStyle; // such as "M/d/yyyy h:mm:ss AP"; empty: guessed
    QString unit;      // "degF", "degC"; empty: guessed
    QString start;     // of a log without dates; empty: when the cook was lit
    QString zone;      // IANA; empty: the yard's
};
// Reads the device in chunks: a log may be larger than the memory.
ImportPlan planTrace(const domain::Books &books, QIODevice &device, const QString &fileName,
                     const TraceRequest &request);

} // namespace rickyard::app
