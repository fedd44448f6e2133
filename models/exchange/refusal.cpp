#include "models/exchange/refusal.h"

namespace rickyard::exchange
{

namespace
{

// A message that holds a whole mistaken file helps nobody.
constexpr qsizetype kLongestShown = 60;

QString shown(const QString &value)
{
    QString text = value;
    text.replace(QLatin1Char('\n'), QChar(0x23CE)).remove(QLatin1Char('\r'));
    if (text.size() > kLongestShown)
        text = QString(text.left(kLongestShown) + QChar(0x2026));
    return QString(QChar(0x201C) + text + QChar(0x201D));
}

} // namespace

QString Refusal::sentence() const
{
    QStringList place;
    if (!file.isEmpty())
        place << file;
    if (line > 0)
        place << QStringLiteral("line %1").arg(line);
    if (column > 0 && !name.isEmpty())
        place << QString(QStringLiteral("column %1 (").arg(column) + name + QLatin1Char(')'));
    else if (column > 0)
        place << QStringLiteral("column %1").arg(column);
    else if (!name.isEmpty())
        place << QString(QStringLiteral("column ") + name);
    QString text = place.join(QStringLiteral(", "));
    if (!text.isEmpty())
        text += QStringLiteral(": ");
    if (value.isEmpty() && (column > 0 || !name.isEmpty()))
        text += QStringLiteral("found nothing; ");
    else if (!value.isEmpty())
        text += QString(QStringLiteral("found ") + shown(value) + QStringLiteral("; "));
    return QString(text + QStringLiteral("expected ") + expected + QLatin1Char('.'));
}

void Refusals::add(Refusal refusal)
{
    ++count;
    if (list.size() < kMostRefusals)
        list.append(std::move(refusal));
}

void Refusals::add(const Refusals &others)
{
    count += others.count;
    for (const Refusal &refusal : others.list)
        if (list.size() < kMostRefusals)
            list.append(refusal);
}

domain::Problems Refusals::problems() const
{
    domain::Problems found;
    for (const Refusal &refusal : list)
        found.append(refusal.problem());
    if (count > list.size())
        found.append({QString(), QStringLiteral("and %1 more.").arg(count - list.size())});
    return found;
}

} // namespace rickyard::exchange
