#include "models/exchange/foreign_values.h"

#include <QLocale>
#include <QRegularExpression>
#include <QTimeZone>

#include <cmath>

namespace rickyard::exchange
{

std::optional<double> readNumber(const QString &text, QChar decimal)
{
    static const QRegularExpression form(
        QStringLiteral("^[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?$"));
    QString body = text.trimmed();
    body.replace(QChar(0x2212), QLatin1Char('-'));
    if (decimal != QLatin1Char('.')) {
        if (body.contains(QLatin1Char('.')))
            return std::nullopt;
        body.replace(decimal, QLatin1Char('.'));
    }
    if (!form.match(body).hasMatch())
        return std::nullopt;
    bool ok = false;
    const double value = QLocale::c().toDouble(body, &ok);
    return ok && std::isfinite(value) ? std::optional<double>(value) : std::nullopt;
}

std::optional<CivilTime> readIsoTime(const QString &text)
{
    static const QRegularExpression form(
        QStringLiteral("^(\\d{4})-?(\\d{2})-?(\\d{2})[T ](\\d{2}):?(\\d{2})"
                       "(?::?(\\d{2})(?:[.,]\\d+)?)?\\s?(Z|z|UTC|[+-]\\d{2}(?::?\\d{2})?)?$"));
    const QRegularExpressionMatch m = form.match(text.trimmed());
    if (!m.hasMatch())
        return std::nullopt;
    CivilTime t;
    t.date = QDate(m.captured(1).toInt(), m.captured(2).toInt(), m.captured(3).toInt());
    int hour = m.captured(4).toInt();
    if (hour == 24 && m.captured(5).toInt() == 0 && m.captured(6).toInt() == 0) {
        t.date = t.date.addDays(1); // the midnight that ends a day
        hour = 0;
    }
    t.time = QTime(hour, m.captured(5).toInt(), m.captured(6).toInt());
    if (!t.date.isValid() || !t.time.isValid())
        return std::nullopt;
    QString offset = m.captured(7);
    if (offset.isEmpty())
        return t;
    if (!offset.at(0).isLetter()) {
        const int sign = offset.at(0) == QLatin1Char('-') ? -1 : 1;
        offset.remove(QLatin1Char(':'));
        const int hours = offset.mid(1, 2).toInt();
        const int minutes = offset.mid(3, 2).toInt();
        if (hours > 14 || minutes > 59)
            return std::nullopt;
        t.offsetSeconds = sign * (hours * 3600 + minutes * 60);
    } else {
        t.offsetSeconds = 0;
    }
    return t;
}

QString isoUtc(qint64 seconds)
{
    // 0001-01-01 and 9999-12-31T23:59:59, the years that four digits can write.
    constexpr qint64 earliest = -62135596800;
    constexpr qint64 latest = 253402300799;
    if (seconds < earliest || seconds > latest)
        return QString::number(seconds);
    return QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC).toString(Qt::ISODate);
}

int ZoneClock::offsetAt(qint64 utc) const
{
    return m_zone.offsetFromUtc(QDateTime::fromSecsSinceEpoch(utc, Qt::UTC));
}

int ZoneClock::standardOffset(const QDate &date) const
{
    return m_zone.standardTimeOffset(date.startOfDay(Qt::UTC));
}

// A civil time is tried with the offset of the day before and of the day after; each that leads
// back to itself is a true reading. Clock changes lie months apart, so two offsets are enough.
ResolvedTime ZoneClock::resolve(const QDate &date, const QTime &time)
{
    const qint64 day = date.toJulianDay();
    const qint64 naive = QDateTime(date, time, Qt::UTC).toSecsSinceEpoch();
    const qint64 midnight = naive - QTime(0, 0).secsTo(time);
    if (!m_known || day != m_day) {
        m_before = offsetAt(midnight - 86400);
        m_after = offsetAt(midnight + 2 * 86400);
        m_day = day;
        m_known = true;
    }
    if (m_before == m_after)
        return {LocalTime::Unique, naive - m_before, 0};
    QVector<qint64> readings;
    for (const int offset : {m_before, m_after})
        if (offsetAt(naive - offset) == offset)
            readings << naive - offset;
    if (readings.isEmpty())
        return {LocalTime::Missing, 0, 0};
    if (readings.size() == 1)
        return {LocalTime::Unique, readings.first(), 0};
    return {LocalTime::Ambiguous, std::min(readings.at(0), readings.at(1)),
            std::max(readings.at(0), readings.at(1))};
}

} // namespace rickyard::exchange
