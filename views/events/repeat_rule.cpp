#include "views/events/repeat_rule.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QMap>

namespace rickyard::views {

namespace {

QString ruleTr(const char *text)
{
    return QCoreApplication::translate("RepeatRule", text);
}

QLocale ruleLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

// RFC 5545 3.3.10, "weekday".
QString weekdayCode(QDate day)
{
    static const QStringList codes{QStringLiteral("MO"), QStringLiteral("TU"), QStringLiteral("WE"),
                                   QStringLiteral("TH"), QStringLiteral("FR"), QStringLiteral("SA"),
                                   QStringLiteral("SU")};
    return codes.at(day.dayOfWeek() - 1);
}

int placeInMonth(QDate day)
{
    return (day.day() - 1) / 7 + 1;
}

QString ordinal(int place)
{
    static const QStringList words{QStringLiteral("first"), QStringLiteral("second"),
                                   QStringLiteral("third"), QStringLiteral("fourth"),
                                   QStringLiteral("fifth")};
    return words.value(place - 1);
}

QString bareRule(RepeatKind kind, QDate first)
{
    switch (kind) {
    case RepeatKind::Weekly:
        return QString(QStringLiteral("FREQ=WEEKLY;BYDAY=") + weekdayCode(first));
    case RepeatKind::SecondWeek:
        return QString(QStringLiteral("FREQ=WEEKLY;INTERVAL=2;BYDAY=") + weekdayCode(first));
    case RepeatKind::MonthByWeekday:
        return QStringLiteral("FREQ=MONTHLY;BYDAY=%1%2")
            .arg(placeInMonth(first))
            .arg(weekdayCode(first));
    case RepeatKind::MonthLastWeekday:
        return QString(QStringLiteral("FREQ=MONTHLY;BYDAY=-1") + weekdayCode(first));
    case RepeatKind::Own:
        break;
    }
    return {};
}

QString typedRule(const QString &own)
{
    QString rule = own.simplified().remove(QLatin1Char(' ')).toUpper();
    if (rule.startsWith(QLatin1String("RRULE:")))
        rule.remove(0, 6);
    while (rule.endsWith(QLatin1Char(';')))
        rule.chop(1);
    return rule;
}

// The last day by the yard's calendar: the end itself stands in UTC.
QDate untilDay(const QString &text, const QTimeZone &zone)
{
    QDateTime end = QDateTime::fromString(text, QStringLiteral("yyyyMMdd'T'HHmmss'Z'"));
    if (!end.isValid())
        return QDate::fromString(text.left(8), QStringLiteral("yyyyMMdd"));
    end.setTimeSpec(Qt::UTC);
    return end.toTimeZone(zone).date();
}

bool hasEnd(const QString &rule)
{
    const QString parts = QString(QLatin1Char(';') + rule);
    return parts.contains(QLatin1String(";COUNT=")) || parts.contains(QLatin1String(";UNTIL="));
}

} // namespace

QVector<RepeatKind> repeatKindsFor(QDate first)
{
    QVector<RepeatKind> kinds{RepeatKind::Weekly, RepeatKind::SecondWeek};
    // A fifth one is not in every month.
    if (placeInMonth(first) < 5)
        kinds << RepeatKind::MonthByWeekday;
    if (first.day() + 7 > first.daysInMonth())
        kinds << RepeatKind::MonthLastWeekday;
    kinds << RepeatKind::Own;
    return kinds;
}

QString repeatKindWords(RepeatKind kind, QDate first)
{
    const QString day = ruleLocale().dayName(first.dayOfWeek());
    switch (kind) {
    case RepeatKind::Weekly:
        return ruleTr("Every %1").arg(day);
    case RepeatKind::SecondWeek:
        return ruleTr("Every second %1").arg(day);
    case RepeatKind::MonthByWeekday:
        return ruleTr("The %1 %2 of every month").arg(ordinal(placeInMonth(first)), day);
    case RepeatKind::MonthLastWeekday:
        return ruleTr("The last %1 of every month").arg(day);
    case RepeatKind::Own:
        break;
    }
    return ruleTr("Own rule (RFC 5545)");
}

QString repeatRule(const RepeatChoice &choice, QDate first, const QTimeZone &zone)
{
    QString rule =
        choice.kind == RepeatKind::Own ? typedRule(choice.own) : bareRule(choice.kind, first);
    if (rule.isEmpty() || hasEnd(rule))
        return rule;
    if (choice.byCount)
        return QStringLiteral("%1;COUNT=%2").arg(rule).arg(choice.count);
    const QDateTime end = choice.until.addDays(1).startOfDay(zone).addSecs(-1).toUTC();
    rule +=
        QString(QStringLiteral(";UNTIL=") + end.toString(QStringLiteral("yyyyMMdd'T'HHmmss'Z'")));
    return rule;
}

QString repeatRuleWords(const QString &rule, QDate first, const QTimeZone &zone)
{
    QStringList kept;
    QString end;
    for (const QString &part : rule.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
        if (part.startsWith(QLatin1String("COUNT=")))
            end = ruleTr(", %1 times").arg(part.mid(6));
        else if (part.startsWith(QLatin1String("UNTIL=")))
            end = ruleTr(", until %1")
                      .arg(ruleLocale().toString(untilDay(part.mid(6), zone),
                                                 QStringLiteral("d MMM yyyy")));
        else
            kept << part;
    }
    const QString bare = kept.join(QLatin1Char(';'));
    for (const RepeatKind kind : {RepeatKind::Weekly, RepeatKind::SecondWeek,
                                  RepeatKind::MonthByWeekday, RepeatKind::MonthLastWeekday})
        if (bareRule(kind, first) == bare) {
            QString words = repeatKindWords(kind, first);
            words[0] = words.at(0).toLower();
            return words + end;
        }
    return ruleTr("by the rule %1").arg(rule);
}

} // namespace rickyard::views
