#include "views/widgets/utc_offset.h"

#include <QStringList>

namespace rickyard::views {

std::optional<int> utcOffsetOf(const QString &text)
{
    QString digits = text.trimmed();
    digits.replace(QChar(0x2212), QLatin1Char('-'));
    const bool west = digits.startsWith(QLatin1Char('-'));
    if (west || digits.startsWith(QLatin1Char('+')))
        digits.remove(0, 1);
    const QStringList parts = digits.split(QLatin1Char(':'));
    bool hoursOk = false;
    bool minutesOk = true;
    const int hours = parts.value(0).toInt(&hoursOk);
    const int minutes = parts.size() > 1 ? parts.at(1).toInt(&minutesOk) : 0;
    if (!hoursOk || !minutesOk || parts.size() > 2 || hours > 14 || minutes > 59)
        return std::nullopt;
    const int seconds = hours * 3600 + minutes * 60;
    return west ? -seconds : seconds;
}

QString utcOffsetText(int seconds)
{
    const int minutes = std::abs(seconds) / 60;
    return QStringLiteral("%1%2:%3")
        .arg(seconds < 0 ? QLatin1Char('-') : QLatin1Char('+'))
        .arg(minutes / 60, 2, 10, QLatin1Char('0'))
        .arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

} // namespace rickyard::views
