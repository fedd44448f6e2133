#include "models/domain/fire/pit_course.h"

#include "models/domain/fire/trace_facts.h"

#include <QMap>

#include <algorithm>
#include <array>
#include <limits>

namespace rickyard::domain {

namespace {

constexpr qint64 kReach = 90 * 60;     // seconds a reading speaks for, either side
constexpr double kTraceCovers = 0.75;  // share of the cook that a log must cover to be used
constexpr double kTypedCovers = 0.5;   // typed readings are sparser by nature
constexpr double kNearlyWhole = 0.995; // below it the gap is mentioned
constexpr int kNotThePit = 99;

using Reading = PitReading;
using Readings = QVector<Reading>;

// Lower is better.
int rankOf(const QString &probe)
{
    static const std::array<QString, 7> words = {
        QStringLiteral("grate"),  QStringLiteral("pit"),  QStringLiteral("chamber"),
        QStringLiteral("cooker"), QStringLiteral("door"), QStringLiteral("gauge"),
        QStringLiteral("dial")};
    const QString name = probe.trimmed().toLower();
    for (std::size_t i = 0; i < words.size(); ++i)
        if (name.contains(words[i]))
            return static_cast<int>(i);
    return name.isEmpty() ? static_cast<int>(words.size()) : kNotThePit;
}

double coverage(const Readings &readings, qint64 from, qint64 to)
{
    qint64 covered = 0;
    qint64 reached = from;
    for (const Reading &r : readings) {
        const qint64 begin = std::max(reached, r.time - kReach);
        const qint64 end = std::min(to, r.time + kReach);
        if (end > begin) {
            covered += end - begin;
            reached = end;
        }
    }
    return static_cast<double>(covered) / static_cast<double>(to - from);
}

bool isBefore(const Reading &reading, qint64 t)
{
    return reading.time < t;
}

double valueAt(const Readings &readings, qint64 t)
{
    const auto next = std::lower_bound(readings.begin(), readings.end(), t, isBefore);
    if (next == readings.begin())
        return readings.first().temperature;
    if (next == readings.end())
        return readings.last().temperature;
    const Reading &a = *(next - 1);
    const double share = static_cast<double>(t - a.time) / static_cast<double>(next->time - a.time);
    return a.temperature + share * (next->temperature - a.temperature);
}

// Trapezoids between the readings that fall inside, and the interpolated ends.
double meanOver(const Readings &readings, qint64 from, qint64 to)
{
    Reading last{from, valueAt(readings, from)};
    double sum = 0;
    const auto take = [&](const Reading &r) {
        sum += (last.temperature + r.temperature) / 2.0 * static_cast<double>(r.time - last.time);
        last = r;
    };
    for (auto r = std::lower_bound(readings.begin(), readings.end(), from + 1, isBefore);
         r != readings.end() && r->time < to; ++r)
        take(*r);
    take({to, valueAt(readings, to)});
    return sum / static_cast<double>(to - from);
}

// By time, one reading a moment (the mean of those that share it).
void settle(Readings &readings)
{
    std::stable_sort(readings.begin(), readings.end(),
                     [](const Reading &a, const Reading &b) { return a.time < b.time; });
    Readings kept;
    for (qsizetype i = 0; i < readings.size();) {
        const qint64 t = readings.at(i).time;
        double sum = 0;
        double n = 0;
        for (; i < readings.size() && readings.at(i).time == t; ++i, ++n)
            sum += readings.at(i).temperature;
        kept.append({t, sum / n});
    }
    readings = kept;
}

struct Best {
    QString probe;
    Readings readings;
    double covered = 0;
};

Best bestOf(QMap<QString, Readings> probes, qint64 from, qint64 to)
{
    Best best;
    int bestRank = kNotThePit;
    for (auto it = probes.begin(); it != probes.end(); ++it) {
        settle(it.value());
        const double covered = coverage(it.value(), from, to);
        const int rank = rankOf(it.key());
        if (covered <= 0 || rank > bestRank || (rank == bestRank && covered <= best.covered))
            continue;
        bestRank = rank;
        best = {it.key(), it.value(), covered};
    }
    return best;
}

// One probe may come in several blocks: their points on one clock.
QMap<QString, ProbePoints> decoded(const QVector<const Trace *> &traces, qint64 from,
                                   QStringList &assumptions)
{
    QMap<QString, ProbePoints> probes;
    for (const Trace *trace : traces) {
        if (trace->probe.trimmed().isEmpty())
            continue;
        const auto points = decodeTrace(trace->block);
        if (!points) {
            if (rankOf(trace->probe) != kNotThePit)
                assumptions << QString(QStringLiteral("The log of probe “") + trace->probe +
                                       QStringLiteral("” cannot be read and is left out."));
            continue;
        }
        ProbePoints &all = probes[trace->probe];
        for (TracePoint p : points.value()) {
            p.offset += trace->start.seconds() - from;
            all.append(p);
        }
    }
    for (ProbePoints &points : probes)
        std::stable_sort(
            points.begin(), points.end(),
            [](const TracePoint &a, const TracePoint &b) { return a.offset < b.offset; });
    return probes;
}

QMap<QString, Readings> logged(const QVector<const Trace *> &traces, qint64 from,
                               QStringList &assumptions)
{
    const QMap<QString, ProbePoints> all = decoded(traces, from, assumptions);
    QMap<QString, Readings> probes;
    for (auto it = all.cbegin(); it != all.cend(); ++it) {
        if (rankOf(it.key()) == kNotThePit)
            continue;
        QVector<ProbePoints> others;
        for (auto other = all.cbegin(); other != all.cend(); ++other)
            if (other != it)
                others << *other;
        const QVector<ProbeFault> faults = probeFaults(*it, others, {});
        for (const ProbeFault &fault : faults)
            assumptions << QString(QStringLiteral("Probe “") + it.key() + QStringLiteral("”: ") +
                                   fault.words() + QStringLiteral("; that stretch is left out."));
        Readings &readings = probes[it.key()];
        for (const TracePoint &p : *it)
            if (std::none_of(faults.begin(), faults.end(), [&](const ProbeFault &f) {
                    return p.offset >= f.from && p.offset <= f.to;
                }))
                readings.append({from + p.offset, p.temperature.toDouble()});
    }
    return probes;
}

QString percent(double share)
{
    return QString(QString::number(std::lround(100.0 * share)) + QStringLiteral(" %"));
}

PitCourse fromReadings(const Best &best, qint64 from, qint64 to, const QString &what,
                       QStringList assumptions)
{
    if (best.covered < kNearlyWhole)
        assumptions << QString(what + QStringLiteral(" covers ") + percent(best.covered) +
                               QStringLiteral(" of the cook; the pit is taken to run straight "
                                              "through the rest."));
    return {Temperature::rounded(meanOver(best.readings, from, to)), assumptions, best.readings,
            best.covered};
}

} // namespace

double PitCourse::celsiusOver(qint64 from, qint64 to) const
{
    if (!mean)
        return std::numeric_limits<double>::quiet_NaN();
    if (readings.isEmpty() || to <= from)
        return celsius(*mean);
    return meanOver(readings, from, to) / 1000.0;
}

PitCourse pitCourse(const Cook &cook, Instant end, const QVector<const Trace *> &traces,
                    const QVector<const CookTemperature *> &typed)
{
    const qint64 from = cook.lit.seconds();
    const qint64 to = end.seconds();
    QStringList assumptions;
    if (to <= from)
        return {std::nullopt, assumptions, {}, 0};
    const Best log = bestOf(logged(traces, from, assumptions), from, to);
    QMap<QString, Readings> typedProbes;
    for (const CookTemperature *t : typed)
        if (rankOf(t->probe) != kNotThePit)
            typedProbes[t->probe].append({t->time.seconds(), t->temperature.toDouble()});
    const Best hand = bestOf(typedProbes, from, to);
    const QString logName =
        QString(QStringLiteral("The log of probe “") + log.probe + QStringLiteral("”"));
    const QString handName = QStringLiteral("What was read and typed");

    if (log.covered >= kTraceCovers)
        return fromReadings(log, from, to, logName, assumptions);
    if (hand.covered >= kTypedCovers)
        return fromReadings(hand, from, to, handName, assumptions);
    if (cook.target) {
        assumptions << QStringLiteral("The pit is taken to have run at its target: too few "
                                      "temperatures were logged or typed.");
        return {cook.target, assumptions, {}, 0};
    }
    if (log.covered > 0 && log.covered >= hand.covered)
        return fromReadings(log, from, to, logName, assumptions);
    if (hand.covered > 0)
        return fromReadings(hand, from, to, handName, assumptions);
    return {std::nullopt, assumptions, {}, 0};
}

} // namespace rickyard::domain
