#include "models/exchange/ics/recurrence_rule.h"

#include <QMap>
#include <QRegularExpression>

#include <array>
#include <optional>

namespace rickyard::exchange {

using domain::Outcome;

namespace {

constexpr qsizetype kLongestRule = 2000; // letters; the longest sensible rule is far shorter
using Parts = QMap<QString, QString>;
using Sentence = std::optional<QString>; // what is wrong

struct NumberPart {
    const char *key;
    int least;
    int most;
    bool fromEnd; // negative numbers count from the end
};
constexpr std::array<NumberPart, 8> kNumberParts = {{{"BYSECOND", 0, 60, false},
                                                     {"BYMINUTE", 0, 59, false},
                                                     {"BYHOUR", 0, 23, false},
                                                     {"BYMONTHDAY", 1, 31, true},
                                                     {"BYYEARDAY", 1, 366, true},
                                                     {"BYWEEKNO", 1, 53, true},
                                                     {"BYMONTH", 1, 12, false},
                                                     {"BYSETPOS", 1, 366, true}}};

QString weekdayPattern()
{
    return QStringLiteral("(SU|MO|TU|WE|TH|FR|SA)");
}

Sentence wrong(const QString &key, const QString &value, const QString &expected)
{
    return QStringLiteral("In the repeat rule, %1=%2 cannot be: expected %3.")
        .arg(key, value.left(40), expected);
}

Sentence checkNumbers(const NumberPart &part, const QString &value)
{
    const QString key = QLatin1String(part.key);
    static const QRegularExpression whole(QStringLiteral("^[+-]?\\d{1,3}$"));
    for (const QString &text : value.split(QLatin1Char(','))) {
        const int number = text.toInt();
        const bool signedOk = part.fromEnd || number >= 0;
        if (!whole.match(text).hasMatch() || !signedOk || std::abs(number) < part.least ||
            std::abs(number) > part.most)
            return wrong(key, value,
                         QStringLiteral("whole numbers from %1 to %2%3, with commas between them")
                             .arg(part.least)
                             .arg(part.most)
                             .arg(part.fromEnd ? QStringLiteral(", or negative ones that count "
                                                                "from the end")
                                               : QString()));
    }
    return std::nullopt;
}

Sentence checkWhole(const QString &key, const QString &value, int most)
{
    bool ok = false;
    const int number = value.toInt(&ok);
    if (ok && number >= 1 && number <= most)
        return std::nullopt;
    return wrong(key, value, QStringLiteral("a whole number from 1 to %1").arg(most));
}

Sentence checkDays(const QString &value)
{
    static const QRegularExpression day(
        QString(QStringLiteral("^([+-]?[1-9]\\d?)?") + weekdayPattern() + QLatin1Char('$')));
    for (const QString &text : value.split(QLatin1Char(','))) {
        const auto match = day.match(text);
        if (!match.hasMatch() || std::abs(match.captured(1).toInt()) > 53)
            return wrong(QStringLiteral("BYDAY"), value,
                         QStringLiteral("days such as SA, or 1SA for the first Saturday and -1SA "
                                        "for the last"));
    }
    return std::nullopt;
}

Sentence checkUntil(const QString &value)
{
    static const QRegularExpression until(QStringLiteral("^(\\d{8})(T(\\d{6})Z?)?$"));
    const auto match = until.match(value);
    const bool ok = match.hasMatch() &&
                    QDate::fromString(match.captured(1), QStringLiteral("yyyyMMdd")).isValid() &&
                    (match.captured(3).isEmpty() ||
                     QTime::fromString(match.captured(3), QStringLiteral("HHmmss")).isValid());
    if (ok)
        return std::nullopt;
    return wrong(QStringLiteral("UNTIL"), value,
                 QStringLiteral("a day such as 20261224, or a time such as 20261224T180000Z"));
}

Sentence checkPart(const QString &key, const QString &value)
{
    for (const NumberPart &part : kNumberParts)
        if (key == QLatin1String(part.key))
            return checkNumbers(part, value);
    if (key == QLatin1String("BYDAY"))
        return checkDays(value);
    if (key == QLatin1String("UNTIL"))
        return checkUntil(value);
    if (key == QLatin1String("COUNT"))
        return checkWhole(key, value, 1'000'000);
    if (key == QLatin1String("INTERVAL"))
        return checkWhole(key, value, 32'767); // libical's short
    static const QStringList frequencies = {QStringLiteral("SECONDLY"), QStringLiteral("MINUTELY"),
                                            QStringLiteral("HOURLY"),   QStringLiteral("DAILY"),
                                            QStringLiteral("WEEKLY"),   QStringLiteral("MONTHLY"),
                                            QStringLiteral("YEARLY")};
    if (key == QLatin1String("FREQ"))
        return frequencies.contains(value)
                   ? std::nullopt
                   : wrong(key, value, QStringLiteral("DAILY, WEEKLY, MONTHLY or YEARLY"));
    static const QRegularExpression weekday(
        QString(QLatin1Char('^') + weekdayPattern() + QLatin1Char('$')));
    if (key == QLatin1String("WKST"))
        return weekday.match(value).hasMatch()
                   ? std::nullopt
                   : wrong(key, value, QStringLiteral("a day such as MO"));
    return QStringLiteral("The repeat rule has a part \"%1\" that RFC 5545 does not know. Take it "
                          "out.")
        .arg(key.left(40));
}

// BYSETPOS beyond what its period can hold names nothing; libical would look for it for seconds.
Sentence checkPositions(const Parts &parts)
{
    static const QMap<QString, int> daysOf = {{QStringLiteral("DAILY"), 1},
                                              {QStringLiteral("WEEKLY"), 7},
                                              {QStringLiteral("MONTHLY"), 31},
                                              {QStringLiteral("YEARLY"), 366}};
    const QString value = parts.value(QStringLiteral("BYSETPOS"));
    const int days = daysOf.value(parts.value(QStringLiteral("FREQ")));
    if (value.isEmpty() || days == 0)
        return std::nullopt;
    qsizetype most = days;
    for (const char *key : {"BYHOUR", "BYMINUTE", "BYSECOND"})
        if (parts.contains(QLatin1String(key)))
            most *= parts.value(QLatin1String(key)).count(QLatin1Char(',')) + 1;
    for (const QString &position : value.split(QLatin1Char(',')))
        if (std::abs(position.toInt()) > most)
            return wrong(QStringLiteral("BYSETPOS"), value,
                         QStringLiteral("at most the %1 times that one period holds").arg(most));
    return std::nullopt;
}

// What may not stand together (RFC 5545 section 3.3.10).
Sentence checkTogether(const Parts &parts)
{
    const auto has = [&parts](const char *key) { return parts.contains(QLatin1String(key)); };
    const QString frequency = parts.value(QStringLiteral("FREQ"));
    if (frequency.isEmpty())
        return QStringLiteral("The repeat rule does not say how often: begin it with FREQ=DAILY, "
                              "FREQ=WEEKLY, FREQ=MONTHLY or FREQ=YEARLY.");
    if (has("COUNT") && has("UNTIL"))
        return QStringLiteral("The repeat rule ends twice, by COUNT and by UNTIL. Leave one out.");
    const bool yearly = frequency == QLatin1String("YEARLY");
    const bool monthly = frequency == QLatin1String("MONTHLY");
    const bool weekly = frequency == QLatin1String("WEEKLY");
    const auto notWith = [&frequency](const char *key) {
        return QStringLiteral("In a repeat rule %1 cannot stand with FREQ=%2.")
            .arg(QLatin1String(key), frequency);
    };
    if (has("BYWEEKNO") && !yearly)
        return notWith("BYWEEKNO");
    if (has("BYYEARDAY") && (monthly || weekly || frequency == QLatin1String("DAILY")))
        return notWith("BYYEARDAY");
    if (has("BYMONTHDAY") && weekly)
        return notWith("BYMONTHDAY");
    static const QRegularExpression digit(QStringLiteral("\\d"));
    if (parts.value(QStringLiteral("BYDAY")).contains(digit) &&
        ((!yearly && !monthly) || has("BYWEEKNO")))
        return QStringLiteral("A numbered day such as 1SA needs FREQ=MONTHLY or FREQ=YEARLY, "
                              "without BYWEEKNO.");
    bool other = has("BYDAY");
    for (const NumberPart &part : kNumberParts)
        other = other || (QLatin1String(part.key) != QLatin1String("BYSETPOS") && has(part.key));
    if (has("BYSETPOS") && !other)
        return QStringLiteral("BYSETPOS chooses among days that another part of the rule names; "
                              "there is none.");
    return checkPositions(parts);
}

Outcome<Parts> partsOf(const QString &text)
{
    Parts parts;
    if (text.size() > kLongestRule)
        return Outcome<Parts>::failed(
            QStringLiteral("The repeat rule is longer than %1 letters.").arg(kLongestRule));
    for (const QString &part : text.split(QLatin1Char(';'))) {
        const QString key = part.section(QLatin1Char('='), 0, 0);
        const QString value = part.section(QLatin1Char('='), 1);
        if (key.isEmpty() || value.isEmpty())
            return Outcome<Parts>::failed(
                QStringLiteral("\"%1\" is no part of a repeat rule. Write it as "
                               "FREQ=WEEKLY;INTERVAL=2;BYDAY=SA.")
                    .arg(part.left(40)));
        if (parts.contains(key))
            return Outcome<Parts>::failed(
                QStringLiteral("The repeat rule says %1 twice. Leave one out.").arg(key.left(40)));
        if (const Sentence sentence = checkPart(key, value))
            return Outcome<Parts>::failed(*sentence);
        parts.insert(key, value);
    }
    if (const Sentence sentence = checkTogether(parts))
        return Outcome<Parts>::failed(*sentence);
    return parts;
}

} // namespace

Outcome<RecurrenceRule> readRule(const QString &rrule)
{
    const QString text = rrule.trimmed().toUpper();
    const Outcome<Parts> parts = partsOf(text);
    if (!parts)
        return parts.problems();
    RecurrenceRule read;
    read.rule = icalrecurrencetype_from_string(text.toLatin1().constData());
    if (read.rule.freq == ICAL_NO_RECURRENCE)
        return Outcome<RecurrenceRule>::failed(
            QStringLiteral("The repeat rule \"%1\" cannot be read. Write it as "
                           "FREQ=WEEKLY;INTERVAL=2;BYDAY=SA.")
                .arg(rrule.left(80)));
    read.count = parts->value(QStringLiteral("COUNT")).toInt();
    const QString until = parts->value(QStringLiteral("UNTIL"));
    const QDate day = QDate::fromString(until.left(8), QStringLiteral("yyyyMMdd"));
    if (until.size() == 8)
        read.untilDate = day;
    else if (!until.isEmpty())
        read.until =
            QDateTime(day, QTime::fromString(until.mid(9, 6), QStringLiteral("HHmmss")), Qt::UTC);
    read.untilIsUtc = until.endsWith(QLatin1Char('Z'));
    read.rule.count = 0;
    read.rule.until = icaltime_null_time();
    return read;
}

} // namespace rickyard::exchange
