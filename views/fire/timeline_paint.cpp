// Frame, scales and the lane of temperatures; timeline_lanes.cpp draws the lanes below it.
#include "views/fire/timeline_paint.h"

#include "views/charts/chart_style.h"
#include "views/fire/cook_timeline.h"
#include "views/widgets/shape_glyph.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using domain::toUnit;

namespace {

constexpr qsizetype kPiece = 24; // points of a smooth line drawn at once
constexpr int kFaintTicks = 4;   // steps that the scale of temperatures is cut into, about

// A step of 1, 2 or 5 times a power of ten that cuts the span into about `parts`.
double roundStep(double span, int parts)
{
    const double rough = std::max(span, 1e-9) / parts;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= rough)
            return factor * power;
    return 10.0 * power;
}

// Seconds between the clock times on the axis.
double clockStep(double span, double width, double label)
{
    const double most = std::max(1.0, width / (label * 1.5));
    for (const double step : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 900.0,
                              1800.0, 3600.0, 7200.0, 10800.0, 21600.0, 43200.0, 86400.0})
        if (span / step <= most)
            return step;
    return 86400.0 * std::ceil(span / 86400.0 / most);
}

} // namespace

TimelinePainter::TimelinePainter(const TimelineContent &content, const Theme &look)
    : m_content(content), m_look(look), m_probes(content.probes())
{
    findRange();
}

// Of the whole cook, so that the scale stands still while it is moved.
void TimelinePainter::findRange()
{
    const domain::Unit &unit = m_content.temperature;
    double low = toUnit(domain::temperatureFromFahrenheit(100).base(), unit);
    double high = toUnit(domain::temperatureFromFahrenheit(300).base(), unit);
    const auto include = [&](double milli) {
        const double value = toUnit(std::llround(milli), unit);
        low = std::min(low, value);
        high = std::max(high, value);
    };
    if (m_content.curves)
        for (const ProbeCurve &probe : m_content.curves->probes) {
            if (probe.y.isEmpty())
                continue;
            const auto extremes = probe.y.extremes(0, probe.y.size());
            include(probe.y.value(extremes.lowest));
            include(probe.y.value(extremes.highest));
        }
    for (const TypedReading &reading : m_content.typed)
        include(reading.milli);
    if (m_content.target)
        include(*m_content.target + domain::kTargetBand.toDouble());
    m_step = roundStep(high - low, kFaintTicks);
    m_low = std::floor(low / m_step) * m_step;
    m_high = std::ceil(high / m_step) * m_step;
}

bool TimelinePainter::hasAir() const
{
    return m_content.typedOutside || m_content.typedWind ||
           (m_content.curves &&
            (!m_content.curves->outside.isEmpty() || !m_content.curves->wind.isEmpty()));
}

QVector<TimelinePainter::KeyEntry> TimelinePainter::keyEntries() const
{
    QVector<KeyEntry> entries;
    for (qsizetype i = 0; i < m_probes.size(); ++i)
        entries.append({m_probes.at(i), static_cast<int>(i)});
    if (m_content.target)
        entries.append({m_content.targetWords(), -1});
    return entries;
}

template <class Place>
int TimelinePainter::flowKey(double width, Place place) const
{
    const QFontMetricsF metrics(m_look.font(TextStyle::Caption));
    const double swatch = m_look.px(18);
    const double gap = m_look.space(4);
    double x = 0;
    int row = 0;
    const QVector<KeyEntry> entries = keyEntries();
    for (const KeyEntry &entry : entries) {
        const double wide = swatch + m_look.space(1) + metrics.horizontalAdvance(entry.words);
        if (x > 0 && x + wide > width) {
            x = 0;
            ++row;
        }
        place(entry, x, row);
        x += wide + gap;
    }
    return entries.isEmpty() ? 0 : row + 1;
}

TimelineFrame TimelinePainter::frame(const QSizeF &size, double from, double to) const
{
    const QFontMetricsF metrics(m_look.font(TextStyle::Caption));
    const double left = metrics.horizontalAdvance(QStringLiteral("0000")) + m_look.space(1);
    const double right = m_look.space(2);
    const double gap = m_look.space(1);
    TimelineFrame frame;
    frame.whole = QRectF(QPointF(0, 0), size);
    frame.from = from;
    frame.to = std::max(to, from + 1);
    const double width = std::max(10.0, size.width() - left - right);
    const int rows = flowKey(width, [](const KeyEntry &, double, int) {});
    frame.key = QRectF(left, gap, width, rows * (metrics.height() + gap));
    const double axis = metrics.height() + m_look.space(2);
    const double air = hasAir() ? m_look.px(54) : 0;
    const double feeds = m_look.px(44);
    frame.axis = QRectF(left, size.height() - axis, width, axis);
    frame.air = QRectF(left, frame.axis.top() - air, width, air);
    frame.feeds = QRectF(left, frame.air.top() - feeds, width, feeds);
    // Room for the words above it, and for half a figure at its foot.
    const double top = frame.key.bottom() + metrics.height() + gap;
    frame.temperatures =
        QRectF(left, top, width, std::max(20.0, frame.feeds.top() - metrics.height() / 2 - top));
    return frame;
}

double TimelinePainter::leastHeight(double width) const
{
    const TimelineFrame tall = frame({width, 1000}, 0, 1);
    return 1000 - tall.temperatures.height() + m_look.px(96);
}

double TimelinePainter::yOf(const TimelineFrame &frame, double milli) const
{
    const domain::Unit &unit = m_content.temperature;
    const double value = (milli - unit.offset) / unit.scale;
    return frame.temperatures.bottom() -
           (value - m_low) / (m_high - m_low) * frame.temperatures.height();
}

void TimelinePainter::paint(QPainter &painter, const TimelineFrame &frame) const
{
    painter.setFont(m_look.font(TextStyle::Caption));
    paintKey(painter, frame);
    paintScale(painter, frame);
    paintAxis(painter, frame);
    painter.save();
    painter.setClipRect(QRectF(frame.temperatures.left(), frame.key.bottom(),
                               frame.temperatures.width(), frame.axis.top() - frame.key.bottom()));
    paintTarget(painter, frame);
    paintFaults(painter, frame);
    paintOwnMarks(painter, frame);
    if (m_content.curves) {
        int hue = 0;
        for (const ProbeCurve &probe : m_content.curves->probes)
            paintProbe(painter, frame, probe, hue++);
    }
    paintTyped(painter, frame);
    paintFeeds(painter, frame);
    paintNotes(painter, frame);
    paintAir(painter, frame);
    painter.restore();
}

void TimelinePainter::paintKey(QPainter &painter, const TimelineFrame &frame) const
{
    const QFontMetricsF metrics(painter.font());
    const double row = metrics.height() + m_look.space(1);
    painter.setRenderHint(QPainter::Antialiasing);
    flowKey(frame.key.width(), [&](const KeyEntry &entry, double x, int at) {
        const double middle = frame.key.top() + at * row + metrics.height() / 2;
        const double start = frame.key.left() + x;
        const double swatch = m_look.px(18);
        if (entry.hue < 0) {
            painter.fillRect(QRectF(start, middle - m_look.px(5), swatch, m_look.px(10)),
                             m_look.color(Role::Band));
            painter.setPen(seriesPen(-1, m_look, true));
        } else {
            painter.setPen(seriesPen(entry.hue, m_look));
        }
        painter.drawLine(QPointF(start, middle), QPointF(start + swatch, middle));
        painter.setPen(m_look.color(Role::InkMuted));
        painter.drawText(QPointF(start + swatch + m_look.space(1),
                                 frame.key.top() + at * row + metrics.ascent()),
                         entry.words);
    });
}

void TimelinePainter::paintScale(QPainter &painter, const TimelineFrame &frame) const
{
    const QFontMetricsF metrics(painter.font());
    painter.setRenderHint(QPainter::Antialiasing, false);
    const QRectF &lane = frame.temperatures;
    for (double value = m_low; value <= m_high + m_step / 2; value += m_step) {
        const double y = lane.bottom() - (value - m_low) / (m_high - m_low) * lane.height();
        painter.setPen(QPen(m_look.color(Role::Hairline), 1));
        painter.drawLine(QPointF(lane.left(), y), QPointF(lane.right(), y));
        painter.setPen(m_look.color(Role::InkMuted));
        const QString words = domain::formatNumber(value, 0, m_content.locale);
        painter.drawText(
            QRectF(0, y - metrics.height() / 2, lane.left() - m_look.space(1), metrics.height()),
            Qt::AlignRight | Qt::AlignVCenter, words);
    }
    painter.drawText(QRectF(0, lane.top() - metrics.height() * 1.6, lane.left() - m_look.space(1),
                            metrics.height()),
                     Qt::AlignRight | Qt::AlignVCenter, m_content.temperature.symbol);
}

void TimelinePainter::paintAxis(QPainter &painter, const TimelineFrame &frame) const
{
    const QFontMetricsF metrics(painter.font());
    const double span = frame.to - frame.from;
    const bool seconds = span < 600;
    const QString format = seconds        ? QStringLiteral("h:mm:ss AP")
                           : span < 36000 ? QStringLiteral("h:mm AP")
                                          : QStringLiteral("h AP");
    const double label = metrics.horizontalAdvance(seconds        ? QStringLiteral("10:00:00 PM")
                                                   : span < 36000 ? QStringLiteral("10:00 PM")
                                                                  : QStringLiteral("10 PM"));
    const double step = clockStep(span, frame.axis.width(), label);
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(m_look.color(Role::FieldEdge), 1));
    painter.drawLine(frame.axis.topLeft(), frame.axis.topRight());
    // Round times of the clock on the wall where the axis begins.
    const double begin = static_cast<double>(m_content.lit.seconds()) + frame.from;
    const double offset = m_content.zone.offsetFromUtc(
        QDateTime::fromSecsSinceEpoch(static_cast<qint64>(begin), Qt::UTC));
    const double local = std::ceil((begin + offset) / step) * step;
    for (double at = frame.from + local - (begin + offset); at <= frame.to; at += step) {
        const double x = frame.xOf(at);
        painter.setPen(QPen(m_look.color(Role::FieldEdge), 1));
        painter.drawLine(QPointF(x, frame.axis.top()), QPointF(x, frame.axis.top() + m_look.px(4)));
        const QDateTime time = QDateTime::fromSecsSinceEpoch(
            m_content.lit.seconds() + std::llround(at), m_content.zone);
        painter.setPen(m_look.color(Role::InkMuted));
        const double half = label / 2;
        if (x - half < 0 || x + half > frame.whole.right())
            continue;
        painter.drawText(
            QRectF(x - label, frame.axis.top() + m_look.px(5), 2 * label, metrics.height()),
            Qt::AlignHCenter | Qt::AlignTop, m_content.locale.toString(time.time(), format));
    }
}

void TimelinePainter::paintTarget(QPainter &painter, const TimelineFrame &frame) const
{
    if (!m_content.target)
        return;
    const double half = domain::kTargetBand.toDouble();
    const double top = yOf(frame, *m_content.target + half);
    const double bottom = yOf(frame, *m_content.target - half);
    painter.fillRect(
        QRectF(frame.temperatures.left(), top, frame.temperatures.width(), bottom - top),
        m_look.color(Role::Band));
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen = seriesPen(-1, m_look, true);
    pen.setWidthF(m_look.px(1));
    painter.setPen(pen);
    const double y = yOf(frame, *m_content.target);
    painter.drawLine(QPointF(frame.temperatures.left(), y), QPointF(frame.temperatures.right(), y));
}

// A stretch that is left out of the figures: hatched, with the shape and a word at its head.
void TimelinePainter::paintFaults(QPainter &painter, const TimelineFrame &frame) const
{
    if (!m_content.curves)
        return;
    const QRectF &lane = frame.temperatures;
    QVector<std::pair<double, QString>> heads; // left edge and probe
    for (const ProbeCurve &probe : m_content.curves->probes)
        for (const domain::ProbeFault &fault : probe.faults) {
            const double left = std::max(lane.left(), frame.xOf(static_cast<double>(fault.from)));
            const double right = std::min(lane.right(), frame.xOf(static_cast<double>(fault.to)));
            if (right < lane.left() || left > lane.right())
                continue;
            const QRectF stretch(left, lane.top(), std::max(2.0, right - left), lane.height());
            painter.fillRect(stretch, m_look.soft(Role::Watch));
            QColor hatch = m_look.color(Role::Watch);
            hatch.setAlphaF(0.35F);
            painter.fillRect(stretch, QBrush(hatch, Qt::BDiagPattern));
            heads.append({left, probe.name});
        }
    std::sort(heads.begin(), heads.end());
    const QFontMetricsF metrics(painter.font());
    const double glyph = metrics.ascent();
    painter.setRenderHint(QPainter::Antialiasing);
    double taken = lane.left(); // words stand beside each other, not on each other
    for (const auto &[left, probe] : std::as_const(heads)) {
        const QString words = CookTimeline::tr("%1 left out").arg(probe);
        const double wide = glyph + metrics.horizontalAdvance(words) + 3 * m_look.space(1);
        const double x = std::min(std::max(left, taken), lane.right() - wide);
        if (x < taken)
            continue;
        const double y = lane.top() + m_look.space(1);
        paintShape(&painter, QRectF(x + m_look.space(1), y, glyph, glyph), Role::Watch,
                   m_look.color(Role::Watch));
        painter.setPen(m_look.color(Role::Ink));
        painter.drawText(QPointF(x + 2 * m_look.space(1) + glyph, y + metrics.ascent()), words);
        taken = x + wide + m_look.space(1);
    }
}

void TimelinePainter::paintProbe(QPainter &painter, const TimelineFrame &frame,
                                 const ProbeCurve &probe, int hue) const
{
    const QRectF &lane = frame.temperatures;
    const auto columns = static_cast<std::size_t>(std::max(2.0, lane.width()));
    const std::vector<std::size_t> kept =
        domain::statistics::columnExtremes(probe.x, probe.y, frame.from, frame.to, columns);
    if (kept.empty())
        return;
    // Where readings stand closer than pixels the line fills a shape. Two thin lines, one below the
    // other, draw the same shape as one smooth thick one in a fraction of the time.
    const bool dense = kept.size() > columns * 2;
    painter.setRenderHint(QPainter::Antialiasing, !dense);
    QPen pen = seriesPen(hue, m_look);
    pen.setWidthF(dense ? 1 : m_look.px(1.75));
    pen.setCapStyle(dense ? Qt::FlatCap : Qt::RoundCap);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    QPolygonF line;
    line.reserve(dense ? static_cast<qsizetype>(kept.size()) : kPiece);
    const auto draw = [&] {
        if (line.size() > 1)
            painter.drawPolyline(line);
        else if (line.size() == 1)
            painter.drawPoint(line.first());
        for (int below = 1; dense && below < m_look.px(1.75); ++below) {
            line.translate(0, 1);
            painter.drawPolyline(line);
        }
        line.clear();
    };
    auto gap = std::lower_bound(probe.breaks.begin(), probe.breaks.end(), kept.front() + 1);
    for (const std::size_t i : kept) {
        if (gap != probe.breaks.end() && i >= *gap) {
            draw();
            gap = std::upper_bound(gap, probe.breaks.end(), i);
        }
        line.append(QPointF(frame.xOf(probe.x[i]), yOf(frame, probe.y.value(i))));
        // In pieces that share an end: the rasteriser searches each row of a smooth path from its
        // start, so that one long wild path costs the square of its length.
        if (!dense && line.size() == kPiece) {
            const QPointF end = line.last();
            draw();
            line.append(end);
        }
    }
    draw();
}

void TimelinePainter::paintTyped(QPainter &painter, const TimelineFrame &frame) const
{
    painter.setRenderHint(QPainter::Antialiasing);
    const double radius = m_look.px(3.5);
    for (const TypedReading &reading : m_content.typed) {
        const double x = frame.xOf(reading.at);
        if (x < frame.temperatures.left() - radius || x > frame.temperatures.right() + radius)
            continue;
        int hue = 0;
        while (hue < m_probes.size() - 1 &&
               m_probes.at(hue).compare(reading.probe, Qt::CaseInsensitive) != 0)
            ++hue;
        painter.setPen(QPen(m_look.color(Role::Surface), 1));
        painter.setBrush(seriesColor(hue, m_look));
        painter.drawEllipse(QPointF(x, yOf(frame, reading.milli)), radius, radius);
    }
}

// At temperature, food on and off, fire out: upright lines with their words above the lane.
void TimelinePainter::paintOwnMarks(QPainter &painter, const TimelineFrame &frame) const
{
    const QFontMetricsF metrics(painter.font());
    double taken = frame.temperatures.left();
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (const TimelineMark &mark : m_content.marks) {
        const double x = frame.xOf(mark.at);
        if (!mark.upright || x < frame.temperatures.left() || x > frame.temperatures.right())
            continue;
        painter.setPen(QPen(m_look.color(Role::FieldEdge), 1, Qt::DashLine));
        painter.drawLine(QPointF(x, frame.temperatures.top() - m_look.px(3)),
                         QPointF(x, frame.feeds.bottom()));
        const double wide = metrics.horizontalAdvance(mark.words);
        double start = std::min(x, frame.temperatures.right() - wide);
        if (start < taken)
            continue;
        painter.setPen(m_look.color(Role::InkMuted));
        painter.drawText(QPointF(start, frame.temperatures.top() - m_look.px(5)), mark.words);
        taken = start + wide + m_look.space(2);
    }
}

void TimelinePainter::paintReading(QPainter &painter, const TimelineFrame &frame, double at) const
{
    const double x = frame.xOf(at);
    if (x < frame.temperatures.left() || x > frame.temperatures.right())
        return;
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(m_look.color(Role::Accent), 1));
    painter.drawLine(QPointF(x, frame.temperatures.top()), QPointF(x, frame.axis.top()));
}

} // namespace rickyard::views
