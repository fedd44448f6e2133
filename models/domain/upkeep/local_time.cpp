#include "models/domain/upkeep/local_time.h"

#include <QDateTime>
#include <QLocale>

namespace rickyard::domain {

LocalTime::LocalTime(const QString &ianaZone, const QString &locale)
    : m_zone(ianaZone.toUtf8()), m_locale(locale)
{
    if (!m_zone.isValid()) {
        m_zone = QTimeZone::utc();
        m_valid = false;
    }
}

QDate LocalTime::dateOf(Instant instant) const
{
    return QDateTime::fromSecsSinceEpoch(instant.seconds(), m_zone).date();
}

Instant LocalTime::startOf(QDate day) const
{
    return Instant::ofSeconds(day.startOfDay(m_zone).toSecsSinceEpoch());
}

Instant LocalTime::at(QDate day, Duration afterMidnight) const
{
    // Start from the clock read as UTC and take off the offset in force; the offsets a day before
    // and after are the two candidates around a clock change.
    const QDateTime utc = day.addDays(afterMidnight.base() / 86400)
                              .startOfDay(Qt::UTC)
                              .addSecs(afterMidnight.base() % 86400);
    const int before = m_zone.offsetFromUtc(utc.addDays(-1));
    const int after = m_zone.offsetFromUtc(utc.addDays(1));
    for (const int offset : {before, after}) {
        const QDateTime candidate = utc.addSecs(-offset);
        if (m_zone.offsetFromUtc(candidate) == offset)
            return Instant::ofSeconds(candidate.toSecsSinceEpoch());
    }
    return Instant::ofSeconds(utc.toSecsSinceEpoch() - before);
}

QString LocalTime::dayText(QDate day) const
{
    return m_locale.toString(day, QStringLiteral("ddd d MMM"));
}

QString LocalTime::shortDayText(QDate day) const
{
    return m_locale.toString(day, QStringLiteral("d MMM"));
}

QString LocalTime::timeText(Instant instant) const
{
    const QDateTime local = QDateTime::fromSecsSinceEpoch(instant.seconds(), m_zone);
    const QString clock = m_locale.toString(local.time(), QStringLiteral("h:mm AP"));
    return dayText(local.date()) % QStringLiteral(", ") % clock;
}

} // namespace rickyard::domain
