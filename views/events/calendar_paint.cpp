// How the calendar is drawn.
#include "views/events/calendar.h"
#include "views/ribbon/ribbon_bar.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"

#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

namespace {

QLocale calendarLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

QString dayNumber(QDate day, bool withMonth)
{
    return calendarLocale().toString(day,
                                     withMonth ? QStringLiteral("d MMM") : QStringLiteral("d"));
}

} // namespace

void Calendar::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(viewport());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Caption));
    painter.save();
    painter.setClipRect(QRectF(0, headHeight(), viewport()->width(), viewport()->height()));
    for (const Week &week : m_weeks) {
        const double top = week.top - scrolled();
        if (top + week.height < headHeight() || top > viewport()->height())
            continue;
        painter.save();
        painter.translate(0, top);
        paintWeek(painter, look, week);
        painter.restore();
    }
    paintTarget(painter, look);
    painter.restore();
    paintHead(painter, look);
}

void Calendar::paintHead(QPainter &painter, const Theme &look) const
{
    painter.setPen(look.color(Role::InkMuted));
    for (int d = 0; d < 7; ++d)
        painter.drawText(QRectF(d * dayWidth() + look.px(6), 0, dayWidth() - look.px(6),
                                headHeight() - look.px(6)),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         calendarLocale().dayName(d + 1, QLocale::ShortFormat));
    painter.setPen(QPen(look.color(Role::Hairline), look.px(1)));
    painter.drawLine(QPointF(0, headHeight()), QPointF(viewport()->width(), headHeight()));
}

void Calendar::paintWeek(QPainter &painter, const Theme &look, const Week &week) const
{
    for (int d = 0; d < 7; ++d)
        paintDay(painter, look, week, week.monday.addDays(d));
    painter.setPen(QPen(look.color(Role::Hairline), look.px(1)));
    painter.drawLine(QPointF(0, week.height), QPointF(viewport()->width(), week.height));
    paintItems(painter, look, week);
}

void Calendar::paintDay(QPainter &painter, const Theme &look, const Week &week, QDate day) const
{
    const double wide = dayWidth();
    const QRectF cell(wide * double(week.monday.daysTo(day)), 0, wide, week.height);
    if (day.dayOfWeek() >= 6)
        painter.fillRect(cell, look.color(Role::Field));
    if (day == m_day)
        painter.fillRect(cell, look.color(Role::Selection));
    painter.setPen(QPen(look.color(Role::Hairline), look.px(1)));
    if (day.dayOfWeek() > 1)
        painter.drawLine(cell.topLeft(), cell.bottomLeft());
    const QFontMetricsF caption(painter.font());
    const bool today = day == m_today;
    const QString number = dayNumber(day, today || day.day() == 1 || day.dayOfWeek() == 1);
    const QRectF line(cell.left() + look.px(6), look.px(3), cell.width() - look.px(10),
                      std::ceil(caption.height()) + look.px(2));
    const QString text = today ? tr("Today %1").arg(number) : number;
    if (today) {
        const double room = caption.horizontalAdvance(text) + look.px(10);
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Accent));
        painter.drawRoundedRect(QRectF(line.left() - look.px(3), line.top(),
                                       std::min(room, line.width()), line.height()),
                                look.px(4), look.px(4));
        painter.setPen(look.color(Role::AccentInk));
        painter.drawText(line.adjusted(look.px(2), 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                         text);
    } else {
        painter.setPen(look.color(day < m_today ? Role::InkMuted : Role::Ink));
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, text);
    }
    if (const int clashes = clashesOn(day); clashes > 0) {
        const QString word = clashes == 1 ? tr("1 clash") : tr("%1 clashes").arg(clashes);
        const double side = look.px(9);
        const double room = caption.horizontalAdvance(word) + side + look.px(4);
        const double taken = caption.horizontalAdvance(text) + look.px(14);
        QRectF mark(0, 0, side, side);
        if (line.width() - taken >= room) {
            painter.setPen(look.color(Role::Act));
            painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, word);
            mark.moveCenter(QPointF(line.right() - room + side / 2, line.center().y()));
        } else {
            mark.moveCenter(QPointF(line.right() - side / 2, line.center().y()));
        }
        paintShape(&painter, mark, Role::Act, look.color(Role::Act));
    }
    if (day == m_day && hasFocus() && m_current < 0) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRect(cell.adjusted(1, 1, -1, -1));
    }
}

// A thin line with feet from leaving to coming back; the bar of the event lies on it.
void Calendar::paintTravel(QPainter &painter, const Theme &look, const Week &week, int index) const
{
    const CalendarItem &item = m_items.at(week.items.at(index));
    const QRectF bar = week.layout.places.at(index).bar;
    const RibbonMetrics m = metrics();
    const auto x = [&](const QDateTime &time) { return ribbonX(time, week.monday, 7, m); };
    const double middle = bar.center().y();
    const double foot = bar.height() * 0.22;
    painter.setPen(QPen(ribbonInk(item.item, look), look.px(1.5)));
    const auto leg = [&](double from, double to, double end) {
        if (to - from < 1)
            return;
        painter.drawLine(QPointF(from, middle), QPointF(to, middle));
        painter.drawLine(QPointF(end, middle - foot), QPointF(end, middle + foot));
    };
    leg(x(item.item.start), x(item.start), x(item.item.start));
    leg(x(item.end), x(item.item.end), x(item.item.end));
}

void Calendar::paintItems(QPainter &painter, const Theme &look, const Week &week) const
{
    const RibbonMetrics m = metrics();
    const double round = look.px(4);
    for (int k = 0; k < week.items.size(); ++k) {
        const int index = week.items.at(k);
        const CalendarItem &item = m_items.at(index);
        const RibbonPlace &place = week.layout.places.at(k);
        if (index == m_hovered) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(look.color(Role::Hover));
            painter.drawRoundedRect(place.hit.adjusted(-2, -1, 2, 1), round, round);
        }
        QRectF bar = place.bar;
        const bool travels = item.item.start != item.start;
        if (travels) {
            paintTravel(painter, look, week, k);
            const double left = std::max(bar.left(), ribbonX(item.start, week.monday, 7, m));
            const double right = std::min(bar.right(), ribbonX(item.end, week.monday, 7, m));
            bar = QRectF(left, bar.top(), std::max(right - left, m.mark / 3), bar.height());
        }
        paintRibbonBar(painter, look, item.item, bar);
        if (!place.label.isEmpty()) {
            const bool loud =
                !item.clashes.isEmpty() || hasShape(item.item) || item.item.lane == Lane::Events;
            painter.setPen(look.color(loud ? Role::Ink : Role::InkMuted));
            painter.drawText(place.label, Qt::AlignLeft | Qt::AlignVCenter,
                             QFontMetricsF(painter.font())
                                 .elidedText(item.item.label, Qt::ElideRight, place.label.width()));
        }
        if (!item.clashes.isEmpty()) {
            QRectF mark(0, 0, look.px(9), look.px(9));
            mark.moveCenter(bar.topRight() + QPointF(-look.px(1), look.px(2)));
            paintShape(&painter, mark, Role::Act, look.color(Role::Act));
        }
        if (index == m_current && hasFocus()) {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
            painter.drawRoundedRect(place.hit.adjusted(-2, -1, 2, 1), round, round);
        }
    }
}

// Where what is dragged would stand.
void Calendar::paintTarget(QPainter &painter, const Theme &look) const
{
    if (!m_drag.moving || !m_drag.over.isValid())
        return;
    const CalendarItem &item = m_items.at(m_drag.item);
    const QRectF cell = rectOf(m_drag.over);
    const bool can = item.movable;
    const QColor ink = look.color(can ? Role::Accent : Role::Act);
    painter.setPen(QPen(ink, look.px(2)));
    painter.setBrush(look.soft(can ? Role::Accent : Role::Act));
    painter.drawRoundedRect(cell.adjusted(1, 1, -1, -1), look.px(4), look.px(4));
    const QString word = !can                         ? tr("Not moved here")
                         : m_drag.over == m_drag.from ? tr("Stays here")
                         : m_drag.over < m_today ? tr("Past: %1").arg(dayNumber(m_drag.over, true))
                                                 : tr("To %1").arg(dayNumber(m_drag.over, true));
    painter.setPen(look.color(Role::Ink));
    painter.drawText(cell.adjusted(look.px(6), 0, -look.px(4), -look.px(5)),
                     Qt::AlignLeft | Qt::AlignBottom, word);
}

} // namespace rickyard::views
