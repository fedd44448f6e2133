// How the ribbon is drawn.
#include "views/ribbon/ribbon.h"
#include "views/ribbon/ribbon_bar.h"
#include "views/theme/theme_hub.h"

#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

namespace {

QString laneName(Lane lane)
{
    switch (lane) {
    case Lane::Cooks:
        return Ribbon::tr("Cooks");
    case Lane::Events:
        return Ribbon::tr("Events");
    case Lane::Upkeep:
        return Ribbon::tr("Upkeep");
    case Lane::Wood:
        return Ribbon::tr("Wood");
    case Lane::Due:
        break;
    }
    return Ribbon::tr("Due");
}

} // namespace

void Ribbon::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Caption));
    paintDays(painter, look);
    const RibbonMetrics m = metrics(width());
    painter.setPen(look.color(Role::InkMuted));
    for (const RibbonLane &lane : m_layout.lanes)
        painter.drawText(QRectF(0, lane.top, m.left - look.space(2), m.row * 0.78),
                         Qt::AlignLeft | Qt::AlignVCenter, laneName(lane.lane));
    if (m_items.isEmpty())
        painter.drawText(QRectF(m.left + look.space(2), m.top, m.width, m.row),
                         Qt::AlignLeft | Qt::AlignVCenter, emptyWords());
    for (int i = 0; i < m_items.size(); ++i)
        paintItem(painter, look, i);
}

void Ribbon::paintDays(QPainter &painter, const Theme &look) const
{
    const RibbonMetrics m = metrics(width());
    const double day = m.width / std::max(1, m_days);
    const double foot = height();
    const QLocale locale(QStringLiteral("en_US"));
    const QFontMetricsF caption(painter.font());
    double free = m.left; // where the next name of a week may begin
    for (int d = 0; d < m_days; ++d) {
        const QDate date = m_from.addDays(d);
        const double x = m.left + d * day;
        if (date.dayOfWeek() >= 6)
            painter.fillRect(QRectF(x, m.top - look.px(3), day, foot - m.top + look.px(3)),
                             look.color(Role::Field));
        const bool today = d == 0;
        if (!today && date.dayOfWeek() != 1)
            continue;
        painter.setPen(QPen(look.color(today ? Role::Accent : Role::Hairline), look.px(1)));
        painter.drawLine(QPointF(x, today ? 0 : m.top - look.px(3)), QPointF(x, foot));
        const QString name = today ? QString(tr("Today ") + locale.toString(date, u"d MMM"))
                                   : locale.toString(date, QStringLiteral("d MMM"));
        const double wide = caption.horizontalAdvance(name);
        if (x < free || x + look.px(4) + wide > m.left + m.width)
            continue;
        painter.setPen(look.color(today ? Role::Accent : Role::InkMuted));
        painter.drawText(QPointF(x + look.px(4), caption.ascent() + 1), name);
        free = x + wide + look.space(4);
    }
}

void Ribbon::paintItem(QPainter &painter, const Theme &look, int index) const
{
    const RibbonItem &item = m_items.at(index);
    const RibbonPlace &place = m_layout.places.at(index);
    const double round = look.px(4);
    if (index == m_hovered) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Hover));
        painter.drawRoundedRect(place.hit.adjusted(-2, -2, 2, 2), round, round);
    }
    paintRibbonBar(painter, look, item, place.bar);
    if (!place.label.isEmpty()) {
        painter.setPen(
            look.color(hasShape(item) || item.lane == Lane::Events ? Role::Ink : Role::InkMuted));
        const QString text = QFontMetricsF(painter.font())
                                 .elidedText(item.label, Qt::ElideRight, place.label.width());
        painter.drawText(place.label, Qt::AlignLeft | Qt::AlignVCenter, text);
    }
    if (index == m_current && hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(place.hit.adjusted(-2, -2, 2, 2), round, round);
    }
}

} // namespace rickyard::views
