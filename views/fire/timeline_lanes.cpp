// The lanes below the temperatures: feeds as ticks sized by weight, notes, and the air.
#include "views/charts/chart_style.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/timeline_paint.h"
#include "views/theme/icons.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>

namespace rickyard::views {

namespace {

constexpr int kFeedHue = 5;
constexpr int kAirHue = 4;

struct LaneRange {
    double low = 0;
    double high = 1;
};

LaneRange rangeOf(const QVector<AirPoint> &course, std::optional<double> typed)
{
    std::optional<LaneRange> range;
    const auto include = [&range](double value) {
        range = range ? LaneRange{std::min(range->low, value), std::max(range->high, value)}
                      : LaneRange{value, value};
    };
    for (const AirPoint &point : course)
        if (point.value)
            include(*point.value);
    if (course.isEmpty() && typed)
        include(*typed);
    return range.value_or(LaneRange());
}

} // namespace

// The tallest tick is the heaviest feed of the cook; one of unknown weight is a short open tick.
void TimelinePainter::paintFeeds(QPainter &painter, const TimelineFrame &frame) const
{
    painter.setRenderHint(QPainter::Antialiasing, false);
    double heaviest = 0;
    for (const TimelineFeed &feed : m_content.feeds)
        heaviest = std::max(heaviest, feed.kilograms);
    const double base = frame.feeds.bottom() - m_look.px(4);
    const double room = frame.feeds.height() - m_look.px(22);
    painter.setPen(QPen(m_look.color(Role::Hairline), 1));
    painter.drawLine(QPointF(frame.feeds.left(), base), QPointF(frame.feeds.right(), base));
    const QColor color = seriesColor(kFeedHue, m_look);
    const double wide = m_look.px(3);
    for (const TimelineFeed &feed : m_content.feeds) {
        const double x = frame.xOf(feed.at);
        if (x < frame.feeds.left() - wide || x > frame.feeds.right() + wide)
            continue;
        const bool known = feed.kilograms > 0 && heaviest > 0;
        const double tall = known ? std::max(3.0, room * feed.kilograms / heaviest) : room * 0.4;
        const QRectF tick(x - wide / 2, base - tall, wide, tall);
        if (known) {
            painter.fillRect(tick, color);
        } else {
            painter.setPen(QPen(color, 1));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(tick);
        }
    }
}

void TimelinePainter::paintNotes(QPainter &painter, const TimelineFrame &frame) const
{
    const double size = m_look.px(14);
    double taken = frame.feeds.left() - size;
    for (const TimelineMark &mark : m_content.marks) {
        const double x = frame.xOf(mark.at);
        if (mark.upright || x < frame.feeds.left() || x > frame.feeds.right())
            continue;
        // Notes closer than a picture is wide share the first one's; hovering tells them all.
        if (x - size / 2 < taken)
            continue;
        paintIcon(&painter, QRectF(x - size / 2, frame.feeds.top() + m_look.px(2), size, size),
                  mark.icon, m_look.color(Role::InkMuted));
        taken = x + size / 2 + 1;
    }
}

void TimelinePainter::paintAirCourse(QPainter &painter, const TimelineFrame &frame,
                                     const QVector<AirPoint> &course, double low, double high,
                                     const QPen &pen) const
{
    const QFontMetricsF metrics(painter.font());
    const double top = frame.air.top() + metrics.height() + m_look.px(4);
    const double room = frame.air.bottom() - m_look.px(5) - top;
    const double span = high > low ? high - low : 1;
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    QPolygonF line;
    const auto draw = [&] {
        if (line.size() > 1)
            painter.drawPolyline(line);
        line.clear();
    };
    const auto add = [&](double at, double value) {
        const double share = high > low ? (value - low) / span : 0.5;
        line.append(QPointF(frame.xOf(at), top + room * (1 - share)));
    };
    // Cut at the edges: the dots of a line that runs on for days beside the window would all be
    // worked out.
    for (qsizetype i = 0; i + 1 < course.size(); ++i) {
        const AirPoint &a = course.at(i);
        const AirPoint &b = course.at(i + 1);
        if (!a.value || !b.value || b.at <= frame.from || a.at >= frame.to || b.at <= a.at) {
            draw();
            continue;
        }
        const auto valueAt = [&](double at) {
            return *a.value + (*b.value - *a.value) * (at - a.at) / (b.at - a.at);
        };
        if (line.isEmpty())
            add(std::max(a.at, frame.from), valueAt(std::max(a.at, frame.from)));
        add(std::min(b.at, frame.to), valueAt(std::min(b.at, frame.to)));
    }
    draw();
}

void TimelinePainter::paintAir(QPainter &painter, const TimelineFrame &frame) const
{
    if (frame.air.isEmpty())
        return;
    const QFontMetricsF metrics(painter.font());
    static const QVector<AirPoint> none;
    const QVector<AirPoint> &outside = m_content.curves ? m_content.curves->outside : none;
    const QVector<AirPoint> &wind = m_content.curves ? m_content.curves->wind : none;
    painter.setRenderHint(QPainter::Antialiasing);
    const QPen air(seriesColor(kAirHue, m_look), m_look.px(1.75));
    QPen breeze(m_look.color(Role::InkMuted), m_look.px(1.5), Qt::DotLine);
    breeze.setCapStyle(Qt::RoundCap);
    double x = frame.air.left();
    const double base = frame.air.top() + metrics.ascent() + m_look.px(1);
    // A lane this low has no scale: its words say from where to where it goes.
    const auto label = [&](const QPen &pen, const QString &words) {
        const double middle = base - metrics.ascent() / 2 + m_look.px(1);
        painter.setPen(pen);
        painter.drawLine(QPointF(x, middle), QPointF(x + m_look.px(18), middle));
        painter.setPen(m_look.color(Role::InkMuted));
        x += m_look.px(18) + m_look.space(1);
        painter.drawText(QPointF(x, base), words);
        x += metrics.horizontalAdvance(words) + m_look.space(4);
    };
    if (!wind.isEmpty() || m_content.typedWind) {
        const LaneRange range = rangeOf(wind, m_content.typedWind);
        const bool typed = wind.isEmpty();
        const QString words =
            CookTimeline::tr("wind %1").arg(m_content.windRange(range.low, range.high));
        label(breeze, typed ? CookTimeline::tr("%1, as typed").arg(words) : words);
        paintAirCourse(painter, frame, wind, 0, std::max(range.high, 1.0), breeze);
    }
    if (!outside.isEmpty() || m_content.typedOutside) {
        const LaneRange range = rangeOf(outside, m_content.typedOutside);
        const bool typed = outside.isEmpty();
        const QString words =
            CookTimeline::tr("outside %1").arg(m_content.degreesRange(range.low, range.high));
        label(air, typed ? CookTimeline::tr("%1, as typed").arg(words) : words);
        paintAirCourse(painter, frame, outside, range.low, range.high, air);
    }
}

} // namespace rickyard::views
