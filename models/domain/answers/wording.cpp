#include "models/domain/answers/wording.h"

#include "models/domain/quantities/units.h"

#include <QDateTime>

namespace rickyard::domain {

QString standingKey(Standing standing)
{
    switch (standing) {
    case Standing::Unknown:
        return QStringLiteral("unknown");
    case Standing::Good:
        return QStringLiteral("good");
    case Standing::Watch:
        return QStringLiteral("watch");
    case Standing::Act:
        return QStringLiteral("act");
    }
    return {};
}

QLocale localeOf(const Wording &wording)
{
    return QLocale(wording.locale);
}

QTimeZone zoneOf(const Wording &wording)
{
    const QTimeZone zone(wording.timeZone.toUtf8());
    return zone.isValid() ? zone : QTimeZone::utc();
}

QDate dayOf(Instant instant, const QTimeZone &zone)
{
    return QDateTime::fromSecsSinceEpoch(instant.seconds(), zone).date();
}

Instant startOf(QDate day, const QTimeZone &zone)
{
    return Instant::ofSeconds(day.startOfDay(zone).toSecsSinceEpoch());
}

QString dayWithWeekday(QDate day, const Wording &wording)
{
    return localeOf(wording).toString(day, QStringLiteral("ddd d MMM"));
}

QString shortDay(QDate day, const Wording &wording)
{
    return localeOf(wording).toString(day, QStringLiteral("d MMM"));
}

QString heatWords(Heat heat, const Wording &wording)
{
    return show(heat, wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                localeOf(wording), 0);
}

QString stackedWords(Volume volume, const Wording &wording)
{
    const Unit *unit =
        findUnit(Dimension::Volume, wording.metric ? QStringLiteral("m3") : QStringLiteral("cord"));
    return formatQuantity(volume.base(), *unit, localeOf(wording), 2);
}

QString moistureWords(Moisture moisture, const Wording &wording)
{
    return QString(formatNumber(moisture.toDouble() / 1000.0, 0, localeOf(wording)) +
                   QStringLiteral(" % dry basis"));
}

QString moneyWords(double cents, const Wording &wording, int decimals)
{
    const QString amount = formatNumber(cents / 100.0, decimals, localeOf(wording));
    return QString(QLatin1Char('$') + amount);
}

QString daysWords(qint64 days)
{
    return QString(QString::number(days) +
                   (days == 1 ? QStringLiteral(" day") : QStringLiteral(" days")));
}

} // namespace rickyard::domain
