// Days, heats and amounts in words for the answers, by the yard's units, zone and locale.
#pragma once

#include "models/domain/answers/headline.h"

#include <QDate>
#include <QLocale>
#include <QTimeZone>

namespace rickyard::domain {

// "unknown", "good", "watch" or "act": in files and on the command line.
QString standingKey(Standing standing);

QLocale localeOf(const Wording &wording);
// UTC when the name is unknown.
QTimeZone zoneOf(const Wording &wording);
QDate dayOf(Instant instant, const QTimeZone &zone);
Instant startOf(QDate day, const QTimeZone &zone);

QString dayWithWeekday(QDate day, const Wording &wording); // "Thu 3 Dec"
QString shortDay(QDate day, const Wording &wording);       // "3 Dec"

QString heatWords(Heat heat, const Wording &wording);             // "412 seasoned lb" or "2,797 MJ"
QString stackedWords(Volume volume, const Wording &wording);      // "0.14 cord" or "0.51 m³"
QString moistureWords(Moisture moisture, const Wording &wording); // "18 % dry basis"
QString moneyWords(double cents, const Wording &wording, int decimals = 2);
QString daysWords(qint64 days); // "1 day", "14 days"

} // namespace rickyard::domain
