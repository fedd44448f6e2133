#include "models/domain/fire/pit_course.h"

#include "models/domain/fire/trace_codec.h"

#include <QMap>

#include <algorithm>
#include <array>

namespace rickyard::domain
{

namespace
{

constexpr qint64 kReach = 90 * 60;     // seconds a reading speaks for, either side
constexpr double kTraceCovers = 0.75;  // share of the cook that a log must cover to be used
constexpr double kTypedCovers = 0.5;   // typed readings are sparser by nature
constexpr double kNearlyWhole = 0.995; // below it the gap is mentioned
constexpr int kNotThePit = 99;

struct Reading {
    qint64 time;
    double temperature; // thousandths of a degree Celsius
};
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

double valueAt(const Readings &readings, qint64 t)
{
    if (t <= readings.first().time)
        return readings.first().temperature;
    for (qsizetype i = 1; i < readings.size(); ++i) {
        const Reading &a = readings.at(i - 1);
        const Reading &b = readings.at(i);
        if (t > b.time)
            continue;
        const double share = static_cast<double>(t - a.time) / static_cast<double>(b.time - a.time);
        return a.temperature + share * (b.temperature - a.temperature);
    }
    return readings.last().temperature;
}

// Trapezoids between the readings that fall inside, and the interpolated ends.
double meanOver(const Readings &readings, qint64 from, qint64 to)
{
    Readings inside{{from, valueAt(readings, from)}};
    for (const Reading &r : readings)
        if (r.time > from && r.time < to)
            inside.append(r);
    inside.append({to, valueAt(readings, to)});
    double sum = 0;
    for (qsizetype i = 1; i < inside.size(); ++i)
        sum += (inside.at(i - 1).temperature + inside.at(i).temperature) / 2.0 *
               static_cast<double>(inside.at(i).time - inside.at(i - 1).time);
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

QMap<QString, Readings> logged(const QVector<const Trace *> &traces, QStringList &assumptions)
{
    QMap<QString, Readings> probes;
    for (const Trace *trace : traces) {
        if (rankOf(trace->probe) == kNotThePit || trace->probe.trimmed().isEmpty())
            continue;
        const auto points = decodeTrace(trace->block);
        if (!points) {
            assumptions << QString(QStringLiteral("The log of probe “") + trace->probe +
                                   QStringLiteral("” cannot be read and is left out."));
            continue;
        }
        for (const TracePoint &p : points.value())
            probes[trace->probe].append(
                {trace->start.seconds() + p.offset, p.temperature.toDouble()});
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
    return {Temperature::rounded(meanOver(best.readings, from, to)), assumptions};
}

} // namespace

PitCourse pitCourse(const Cook &cook, Instant end, const QVector<const Trace *> &traces,
                    const QVector<const CookTemperature *> &typed)
{
    const qint64 from = cook.lit.seconds();
    const qint64 to = end.seconds();
    QStringList assumptions;
    if (to <= from)
        return {std::nullopt, assumptions};
    const Best log = bestOf(logged(traces, assumptions), from, to);
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
        return {cook.target, assumptions};
    }
    if (log.covered > 0 && log.covered >= hand.covered)
        return fromReadings(log, from, to, logName, assumptions);
    if (hand.covered > 0)
        return fromReadings(hand, from, to, handName, assumptions);
    return {std::nullopt, assumptions};
}

} // namespace rickyard::domain
