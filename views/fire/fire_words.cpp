#include "views/fire/fire_words.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/items/wording.h"
#include "views/theme/number_style.h"

#include <cmath>

namespace rickyard::views {

using domain::Dimension;
using domain::Duration;
using domain::Instant;

QString Figure::text() const
{
    return unit.isEmpty() ? value : withUnit(value, unit);
}

FireWords::FireWords(const domain::Books &books)
    : m_books(books), m_locale(domain::localeOf(domain::wordingOf(books))),
      m_zone(domain::zoneOf(domain::wordingOf(books))), m_metric(books.yard().metric)
{
}

const domain::Unit &FireWords::unit(Dimension dimension) const
{
    return domain::defaultUnit(dimension, m_metric ? domain::UnitSystem::Metric
                                                   : domain::UnitSystem::UsCustomary);
}

QString FireWords::clock(Instant t) const
{
    return m_locale.toString(items::toLocal(m_books, t).time(), QStringLiteral("h:mm AP"));
}

QString FireWords::clock(Instant t, Instant now) const
{
    if (domain::dayOf(t, m_zone) == domain::dayOf(now, m_zone))
        return clock(t);
    return m_locale.toString(items::toLocal(m_books, t), QStringLiteral("ddd h:mm AP"));
}

QString FireWords::day(Instant t) const
{
    return m_locale.toString(domain::dayOf(t, m_zone), QStringLiteral("d MMM"));
}

Figure FireWords::heat(domain::Heat heat, int decimals) const
{
    const domain::Unit &shown = unit(Dimension::Heat);
    return {domain::formatNumber(domain::toUnit(heat.base(), shown), decimals, m_locale),
            shown.symbol};
}

Figure FireWords::mass(domain::Mass mass, int decimals) const
{
    const domain::Unit &shown = unit(Dimension::Mass);
    return {domain::formatNumber(domain::toUnit(mass.base(), shown), decimals, m_locale),
            shown.symbol};
}

Figure FireWords::temperature(domain::Temperature t) const
{
    const domain::Unit &shown = unit(Dimension::Temperature);
    return {domain::formatNumber(domain::toUnit(t.base(), shown), 0, m_locale), shown.symbol};
}

QString FireWords::percent(double fraction) const
{
    const double rounded = std::round(100.0 * fraction);
    const QString number = trueMinus(domain::formatNumber(rounded, 0, m_locale));
    return withUnit(rounded > 0 ? QString(QLatin1Char('+') + number) : number, QStringLiteral("%"));
}

QString FireWords::share(double fraction) const
{
    return withUnit(domain::formatNumber(100.0 * fraction, 0, m_locale), QStringLiteral("%"));
}

QString FireWords::span(Duration duration)
{
    const qint64 minutes = duration.base() / 60;
    return QStringLiteral("%1:%2 h").arg(minutes / 60).arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

QString FireWords::tickingUnit(Duration duration)
{
    return std::abs(duration.base()) >= 3600 ? QStringLiteral("h") : QStringLiteral("min");
}

QString FireWords::ticking(Duration duration)
{
    const qint64 all = std::abs(duration.base());
    const QLatin1Char zero('0');
    QString text = all >= 3600 ? QStringLiteral("%1:%2:%3")
                                     .arg(all / 3600)
                                     .arg(all / 60 % 60, 2, 10, zero)
                                     .arg(all % 60, 2, 10, zero)
                               : QStringLiteral("%1:%2").arg(all / 60).arg(all % 60, 2, 10, zero);
    if (duration.base() < 0)
        text.prepend(QChar(0x2212));
    return text;
}

QString cookTitle(const domain::Books &books, const domain::Cook &cook)
{
    if (!cook.name.trimmed().isEmpty())
        return cook.name;
    return QStringLiteral("%1, %2").arg(books.pits.value(cook.pit).name,
                                        FireWords(books).day(cook.lit));
}

} // namespace rickyard::views
