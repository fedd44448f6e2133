// The traces of one cook, probe by probe, and what each says in a few figures. The figures
// themselves are those of trace_facts.h; here is said over which hours each is taken.
#pragma once

#include "models/domain/fire/trace_facts.h"
#include "models/domain/records/books.h"
#include "models/domain/weather/series.h"

namespace rickyard::domain {

// Half the width of the target band: 15 °F, a difference. A working figure, common practice, no
// source.
constexpr Temperature kTargetBand = Temperature::ofBase(8333);

struct ProbeTrace {
    QString probe;
    ProbePoints points; // seconds after lighting, by time
};

struct CookTraces {
    QVector<ProbeTrace> probes;
    QStringList problems; // blocks that could not be read, in words
};
// All blocks of one probe joined.
CookTraces tracesOf(const Books &books, const Cook &cook);

// Hourly over the seconds after `start`; empty unless every hour has a record near it.
ProbePoints outsideOver(const WeatherSeries &weather, Instant start, qint64 from, qint64 to);

struct ProbeSummary {
    QString probe;
    qsizetype readings = 0;
    // From lighting until the fire was out, or the last reading; faults left out.
    Duration covered;
    std::optional<Temperature> mean;
    std::optional<double> degreeHours;     // K h above the outside air
    std::optional<Duration> toTemperature; // from lighting to the cook's target
    // A probe that reached the cook's target is one of the pit; meat never does.
    bool ofPit = false;
    // Pit probes, from at temperature until the food was off: share of the time within kTargetBand
    // of the target, and the median time from a feeding until the probe was back.
    std::optional<double> steady;
    std::optional<Duration> recovery;
    int recovered = 0;    // feedings after which it came back
    int notRecovered = 0; // before the next, or within an hour
    QVector<ProbeFault> faults;
};

// `feeds`: seconds after lighting, by time; those within two minutes count as one feeding.
QVector<ProbeSummary> summariseProbes(const QVector<ProbeTrace> &probes, const Cook &cook,
                                      const QVector<qint64> &feeds, const ProbePoints &outside);

// Seconds after lighting of a cook's feeds, by time.
QVector<qint64> feedTimes(const Books &books, const Cook &cook);

} // namespace rickyard::domain
