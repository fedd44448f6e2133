#include "models/domain/upkeep/readings.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/boiling.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

const Unit *temperatureUnit(const UpkeepTask &task)
{
    return findUnit(Dimension::Temperature, task.readingUnit.trimmed());
}

QLocale wordsLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

// As many digits as the figure needs: 0.188 in, 31.6 °F, 206.7 °F, 3.
QString figure(double value, const QString &unit, int most)
{
    QString text = formatNumber(value, most, wordsLocale());
    if (text.contains(QLatin1Char('.'))) {
        while (text.endsWith(QLatin1Char('0')))
            text.chop(1);
        if (text.endsWith(QLatin1Char('.')))
            text.chop(1);
    }
    const QString shown = unit.trimmed();
    return shown.isEmpty() ? text : QString(text % QLatin1Char(' ') % shown);
}

QString figure(double value, const QString &unit)
{
    const bool degrees = findUnit(Dimension::Temperature, unit.trimmed()) != nullptr;
    return figure(value, unit, degrees || std::abs(value) >= 10 ? 1 : 3);
}

QString limitText(const ReadingLimits &limits, const QString &unit)
{
    if (limits.low && limits.high)
        return figure(*limits.low, QString()) % QStringLiteral(" to ") % figure(*limits.high, unit);
    if (limits.low)
        return QStringLiteral("at least ") % figure(*limits.low, unit);
    return QStringLiteral("at most ") % figure(*limits.high, unit);
}

// "2.4 °F above 206.7 °F", against what the water itself has.
QString offText(double value, double truth, const QString &unit)
{
    const double off = value - truth;
    if (std::abs(off) < 0.05)
        return QStringLiteral("the same as the water");
    return figure(std::abs(off), unit) %
           (off > 0 ? QStringLiteral(" above ") : QStringLiteral(" below ")) % figure(truth, unit);
}

QString pointList(const QVector<int> &points)
{
    QStringList names;
    for (const int p : points)
        names << QString::number(p);
    if (names.size() < 2)
        return names.join(QString());
    const QString last = names.takeLast();
    return names.join(QStringLiteral(", ")) % QStringLiteral(" and ") % last;
}

QString checkName(const UpkeepTask &task)
{
    return task.name.trimmed().isEmpty() ? QStringLiteral("Check") : task.name.trimmed();
}

void sayThermometer(const UpkeepTask &task, const ReadingLimits &limits, ReadingVerdict &verdict)
{
    const Unit *unit = temperatureUnit(task);
    const bool boiling = task.reading == ReadingKind::BoilingPoint;
    QStringList reads;
    for (const JudgedPoint &point : std::as_const(verdict.points)) {
        QString text = QStringLiteral("reads ") % figure(point.value, task.readingUnit);
        if (unit != nullptr) {
            const Temperature truth =
                boiling ? limits.boils.value_or(boilingPoint(Length())) : temperatureFromCelsius(0);
            text += QStringLiteral(", ") %
                    offText(point.value, toUnit(truth.base(), *unit), task.readingUnit);
            text += boiling ? QStringLiteral(" of boiling water") : QStringLiteral(" of ice water");
        }
        if (task.readingPoints > 1)
            text =
                QStringLiteral("probe ") % QString::number(point.point) % QLatin1Char(' ') % text;
        reads << text;
    }
    verdict.words = reads.join(QStringLiteral("; "));
    if (limits.any())
        verdict.words += QStringLiteral(". Allowed: ") % limitText(limits, task.readingUnit);
    if (!limits.basis.isEmpty())
        verdict.words += QStringLiteral(" (") % limits.basis % QLatin1Char(')');
    if (verdict.failed)
        verdict.words += QStringLiteral(". Out of use until it is mended or renewed.");
}

void sayPaper(const UpkeepTask &task, const ReadingLimits &limits, ReadingVerdict &verdict)
{
    QVector<int> loose;
    for (const JudgedPoint &point : std::as_const(verdict.points))
        if (point.failed)
            loose << point.point;
    const auto read = verdict.points.size();
    verdict.words = QStringLiteral("%1 of %2 points hold the paper")
                        .arg(read - loose.size())
                        .arg(std::max<qsizetype>(task.readingPoints, read));
    if (!loose.isEmpty())
        verdict.words += QStringLiteral("; loose at ") % pointList(loose);
    if (limits.any())
        verdict.words += QStringLiteral(". Allowed: ") % limitText(limits, task.readingUnit);
}

void sayFigures(const UpkeepTask &task, const ReadingLimits &limits, ReadingVerdict &verdict)
{
    QStringList values;
    for (const JudgedPoint &point : std::as_const(verdict.points))
        values << figure(point.value, QString());
    verdict.words = QStringLiteral("read ") % values.join(QStringLiteral(", "));
    if (!task.readingUnit.trimmed().isEmpty())
        verdict.words += QLatin1Char(' ') % task.readingUnit.trimmed();
    if (limits.any())
        verdict.words += QStringLiteral(". Allowed: ") % limitText(limits, task.readingUnit);
}

void propose(const UpkeepTask &task, ReadingVerdict &verdict)
{
    QVector<int> failing;
    QStringList values;
    for (const JudgedPoint &point : std::as_const(verdict.points)) {
        if (!point.failed)
            continue;
        failing << point.point;
        values << figure(point.value, task.readingUnit);
    }
    if (task.reading == ReadingKind::PaperTest)
        verdict.finding =
            QStringLiteral("%1: loose at %2 %3 of %4")
                .arg(checkName(task),
                     failing.size() == 1 ? QStringLiteral("point") : QStringLiteral("points"),
                     pointList(failing))
                .arg(task.readingPoints);
    else if (task.readingPoints > 1)
        verdict.finding =
            QStringLiteral("%1: %2 at point %3")
                .arg(checkName(task), values.join(QStringLiteral(", ")), pointList(failing));
    else
        verdict.finding =
            QStringLiteral("%1: %2").arg(checkName(task), values.join(QStringLiteral(", ")));
}

} // namespace

ReadingLimits readingLimits(const Books &books, const UpkeepTask &task)
{
    ReadingLimits limits;
    if (task.readingLow)
        limits.low = number(*task.readingLow);
    if (task.readingHigh)
        limits.high = number(*task.readingHigh);
    const Unit *unit = temperatureUnit(task);
    if (task.reading != ReadingKind::BoilingPoint || unit == nullptr)
        return limits;
    const std::optional<Length> height = books.yard().elevation;
    limits.heightKnown = height.has_value();
    limits.boils = boilingPoint(height.value_or(Length()));
    limits.moved =
        toUnit(limits.boils->base(), *unit) - toUnit(boilingPoint(Length()).base(), *unit);
    if (limits.low)
        *limits.low += limits.moved;
    if (limits.high)
        *limits.high += limits.moved;
    const QString there = figure(toUnit(limits.boils->base(), *unit), task.readingUnit);
    limits.basis = limits.heightKnown
                       ? QString(QStringLiteral("water boils at ") % there %
                                 QStringLiteral(" at the yard's height; the weather moves it by "
                                                "about 1 °F (0.5 °C)"))
                       : QString(QStringLiteral("the yard's height is not recorded: sea level "
                                                "assumed, where water boils at ") %
                                 there);
    return limits;
}

ReadingVerdict judgeReadings(const Books &books, const UpkeepTask &task,
                             const QVector<CheckReading> &readings)
{
    const ReadingLimits limits = readingLimits(books, task);
    QMap<int, CheckReading> last; // a point read twice counts as it was left
    for (const CheckReading &reading : readings) {
        const auto known = last.constFind(reading.point);
        if (reading.task == task.id && (known == last.constEnd() || reading.time >= known->time))
            last.insert(reading.point, reading);
    }
    ReadingVerdict verdict;
    for (const CheckReading &reading : std::as_const(last)) {
        JudgedPoint point{reading.id, reading.point, number(reading.value), false};
        point.failed = !limits.holds(point.value);
        verdict.failed = verdict.failed || point.failed;
        verdict.points << point;
    }
    verdict.missing = std::max(0, task.readingPoints - static_cast<int>(verdict.points.size()));
    verdict.judged = limits.any() && !verdict.points.isEmpty();
    if (verdict.points.isEmpty()) {
        verdict.words = QStringLiteral("nothing read");
        return verdict;
    }
    if (task.reading == ReadingKind::IcePoint || task.reading == ReadingKind::BoilingPoint)
        sayThermometer(task, limits, verdict);
    else if (task.reading == ReadingKind::PaperTest)
        sayPaper(task, limits, verdict);
    else
        sayFigures(task, limits, verdict);
    if (!limits.any())
        verdict.words += QStringLiteral(". No limits are set for it");
    if (verdict.missing > 0)
        verdict.words += QStringLiteral(". Not read: %1 of %2 points")
                             .arg(verdict.missing)
                             .arg(task.readingPoints);
    if (verdict.failed)
        propose(task, verdict);
    return verdict;
}

QVector<CheckReading> readingsOfVisit(const Books &books, RecordId visit)
{
    QVector<CheckReading> readings;
    for (const CheckReading &reading : books.checkReadings)
        if (reading.visit == visit)
            readings << reading;
    return readings;
}

QVector<ReadingPoint> readingCourse(const Books &books, const UpkeepTask &task)
{
    const ReadingLimits limits = readingLimits(books, task);
    QVector<ReadingPoint> course;
    for (const CheckReading &reading : books.checkReadings)
        if (reading.task == task.id) {
            const double value = number(reading.value);
            course << ReadingPoint{reading.id, reading.time, reading.point, value,
                                   !limits.holds(value)};
        }
    std::stable_sort(course.begin(), course.end(),
                     [](const ReadingPoint &a, const ReadingPoint &b) {
                         return a.time != b.time ? a.time < b.time : a.point < b.point;
                     });
    return course;
}

} // namespace rickyard::domain
