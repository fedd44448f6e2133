// A probe's temperatures as one compressed block, the form in which a trace is kept.
//
// Block: "RYT", a version byte (1), the number of points (32 bits, big-endian), a CRC-16 of the
// rest (ISO 3309, big-endian), then zlib data with Qt's length prefix. Inside: all time steps, then
// all temperature steps, each the difference to the one before as a zigzag variable-length integer.
// Times are seconds after the trace's start, temperatures thousandths of a degree Celsius.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/quantities/quantity.h"

#include <QByteArray>
#include <QVector>

namespace rickyard::domain
{

struct TracePoint {
    qint64 offset = 0; // seconds after the start
    Temperature temperature;

    bool operator==(const TracePoint &) const = default;
};

// A probe logging every second for eleven days.
constexpr int kMaxTracePoints = 1000000;

// Refused: points out of time order, offsets beyond +-2^40 s, temperatures beyond +-2^40, more than
// kMaxTracePoints points.
Outcome<QByteArray> encodeTrace(const QVector<TracePoint> &points);
// Any bytes are safe: what is not a whole block of a known version is a problem in words.
Outcome<QVector<TracePoint>> decodeTrace(const QByteArray &block);

} // namespace rickyard::domain
