// How the plan board is drawn.
#include "views/charts/chart_style.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/plan_board.h"
#include "views/upkeep/plan_key.h"
#include "views/widgets/shape_glyph.h"

#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QColor laneInk(const PlanLane &lane, const Theme &look)
{
    return lane.hue >= 0 ? seriesColor(lane.hue, look) : look.color(Role::InkMuted);
}

} // namespace

void PlanBoard::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Caption));
    const Measures &m = measures();
    for (int lane = 0; lane < m_content.lanes.size(); ++lane) {
        painter.setPen(look.color(Role::Ink));
        painter.setFont(look.font(TextStyle::Label));
        const QRectF name(0, m.top + lane * (m.lane + m.gap), m.left - look.space(3), m.lane);
        painter.drawText(
            name, Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetricsF(painter.font())
                .elidedText(m_content.lanes.at(lane).name, Qt::ElideRight, name.width()));
    }
    painter.setFont(look.font(TextStyle::Caption));
    painter.setClipRect(QRectF(m.left, 0, width() - m.left, height()));
    paintDays(painter, look);
    for (int lane = 0; lane < m_content.lanes.size(); ++lane)
        paintLane(painter, look, lane);
    for (int i = 0; i < m_content.blocks.size(); ++i)
        paintBlock(painter, look, i);
    if (m_lifted || m_dragging || m_awaited)
        paintGhost(painter, look);
}

void PlanBoard::paintDays(QPainter &painter, const Theme &look) const
{
    const Measures &m = measures();
    const QLocale locale(QStringLiteral("en_US"));
    for (int d = 0; d < kDays; ++d) {
        const QDate day = m_first.addDays(d);
        const double x = m.left + d * m.day;
        const bool today = day == m_today;
        painter.setPen(QPen(look.color(today ? Role::Accent : Role::Hairline), look.px(1)));
        painter.drawLine(QPointF(x, today ? 0 : m.top - look.px(4)), QPointF(x, height()));
        painter.setPen(look.color(today                  ? Role::Accent
                                  : day.dayOfWeek() >= 6 ? Role::InkFaint
                                                         : Role::InkMuted));
        const QString name = today ? tr("Today")
                             : d == 0 || day.day() == 1
                                 ? locale.toString(day, QStringLiteral("ddd d MMM"))
                                 : locale.toString(day, QStringLiteral("ddd d"));
        painter.drawText(QRectF(x + look.px(4), 0, m.day - look.px(4), m.top - look.space(1)),
                         Qt::AlignLeft | Qt::AlignVCenter, name);
    }
}

void PlanBoard::paintLane(QPainter &painter, const Theme &look, int lane) const
{
    const Measures &m = measures();
    const double top = m.top + lane * (m.lane + m.gap);
    // The crew's hours are the ground that work may stand on.
    const Instant from = m_local.startOf(m_first);
    const Instant until = m_local.startOf(m_first.addDays(kDays));
    for (const WorkWindow &w : m_content.crew) {
        if (w.end < from || w.start >= until)
            continue;
        const double x = xOf(w.start);
        painter.fillRect(QRectF(x, top, std::max<double>(look.px(3), xOf(w.end) - x), m.lane),
                         look.soft(Role::Accent));
    }
    painter.setPen(QPen(look.color(Role::Hairline), 1));
    painter.drawLine(QPointF(m.left, top + m.lane + m.gap / 2),
                     QPointF(width(), top + m.lane + m.gap / 2));
    for (const PlanFire &fire : m_content.lanes.at(lane).fires)
        if (fire.coldAt >= from && fire.start < until)
            paintFire(painter, look, lane, fire);
}

void PlanBoard::paintFire(QPainter &painter, const Theme &look, int lane,
                          const PlanFire &fire) const
{
    const QColor ink = laneInk(m_content.lanes.at(lane), look);
    const QRectF bar = barOf(lane, fire.start, fire.end, look.px(4));
    const QRectF cooling(bar.right(), bar.top(), std::max(0.0, xOf(fire.coldAt) - bar.right()),
                         bar.height());
    paintHatch(painter, cooling, ink, look.px(6), true);
    QColor fill = ink;
    fill.setAlphaF(0.22F);
    painter.setPen(QPen(ink, look.px(1.5)));
    painter.setBrush(fill);
    painter.drawRoundedRect(bar.adjusted(0.75, 0.75, -0.75, -0.75), look.px(4), look.px(4));
    const QFontMetricsF caption(painter.font());
    const double room = bar.width() - 2 * look.px(4);
    if (room < caption.horizontalAdvance(QStringLiteral("MMM")))
        return;
    painter.setPen(look.color(Role::Ink));
    painter.drawText(bar, Qt::AlignCenter, caption.elidedText(fire.name, Qt::ElideRight, room));
}

void PlanBoard::paintBlock(QPainter &painter, const Theme &look, int index) const
{
    const PlanBlock &block = m_content.blocks.at(index);
    const QRectF bar = rectOf(index);
    const bool leaving = index == m_current && (m_lifted || m_dragging || m_awaited);
    if (block.freeFrom > block.end) {
        const QRectF curing(bar.right(), bar.top(),
                            std::max(0.0, xOf(block.freeFrom) - bar.right()), bar.height());
        paintHatch(painter, curing, look.color(Role::Accent), look.px(6), false);
    }
    const QColor accent = look.color(block.late ? Role::Watch : Role::Accent);
    painter.save();
    if (leaving)
        painter.setOpacity(0.35);
    QPen edge(accent, look.px(1.5));
    if (!block.booked)
        edge.setDashPattern({2.5, 2.0});
    painter.setPen(edge);
    painter.setBrush(block.booked ? look.soft(block.late ? Role::Watch : Role::Accent)
                                  : look.color(Role::Surface));
    const QRectF body = bar.adjusted(0.75, 0.75, -0.75, -0.75);
    painter.drawRoundedRect(body, look.px(4), look.px(4));
    if (index == m_hovered) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Hover));
        painter.drawRoundedRect(body, look.px(4), look.px(4));
    }
    painter.setPen(look.color(Role::Ink));
    painter.setFont(look.font(TextStyle::Caption));
    painter.drawText(bar, Qt::AlignCenter, QString::number(block.visits.size()));
    if (block.pinned || block.started) {
        // A pin's head: put there by hand, or under way.
        painter.setPen(Qt::NoPen);
        painter.setBrush(accent);
        painter.drawEllipse(QPointF(bar.right() - look.px(3), bar.top() + look.px(3)), look.px(3.5),
                            look.px(3.5));
    }
    if (block.late)
        paintShape(
            &painter,
            QRectF(bar.left() - look.px(4), bar.top() - look.px(5), look.px(11), look.px(11)),
            Role::Watch, look.color(Role::Watch));
    painter.restore();
    if (index == m_current && !leaving) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(hasFocus() ? Role::Focus : Role::Ink), look.px(2)));
        painter.drawRoundedRect(bar.adjusted(-2, -2, 2, 2), look.px(5), look.px(5));
    }
}

void PlanBoard::paintGhost(QPainter &painter, const Theme &look) const
{
    const PlanBlock &block = m_content.blocks.at(m_current);
    const QVector<PlanVisit> visits = chosenVisits();
    const Duration by = m_target - chosenStart();
    const bool trouble = std::any_of(visits.begin(), visits.end(), [&](const PlanVisit &visit) {
        return !m_speech.trouble(visit.task, visit.start + by, visit.end + by).isEmpty();
    });
    const Measures &m = measures();
    const QRectF bar = barOf(block.lane, m_target, m_target + chosenLength(), m.least);
    const Role role = trouble ? Role::Act : Role::Focus;
    painter.setPen(QPen(look.color(role), look.px(2)));
    painter.setBrush(look.soft(trouble ? Role::Act : Role::Accent));
    painter.drawRoundedRect(bar, look.px(4), look.px(4));
    painter.setPen(look.color(Role::Ink));
    painter.drawText(bar, Qt::AlignCenter, QString::number(visits.size()));
    if (trouble)
        paintShape(
            &painter,
            QRectF(bar.left() - look.px(5), bar.top() - look.px(6), look.px(13), look.px(13)),
            Role::Act, look.color(Role::Act));
}

} // namespace rickyard::views
