#include "views/charts/share_bar.h"

#include "views/theme/theme_hub.h"

#include <QFontMetrics>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace rickyard::views {

ShareBar::ShareBar(const QString &name, QWidget *parent) : QWidget(parent), m_name(name)
{
    setAccessibleName(name);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void ShareBar::setParts(const QVector<Part> &parts)
{
    m_parts = parts;
    QStringList words;
    for (const Part &part : parts)
        words << QString(part.label + QLatin1Char(' ') + part.text);
    setAccessibleDescription(words.join(QStringLiteral(", ")));
    update();
}

QSize ShareBar::sizeHint() const
{
    const Theme &look = theme(this);
    const int line = QFontMetrics(look.font(TextStyle::Caption)).height();
    return {look.px(240), look.px(12) + look.space(2) + 2 * line};
}

void ShareBar::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF bar(0, 0, width(), look.px(12));
    QPainterPath round;
    round.addRoundedRect(bar, bar.height() / 2.0, bar.height() / 2.0);
    painter.setClipPath(round);
    double left = 0;
    for (int i = 0; i < m_parts.size(); ++i) {
        const double wide = m_parts.at(i).share * width();
        painter.fillRect(QRectF(left, 0, std::max(1.0, wide - look.px(2)), bar.height()),
                         look.color(Theme::chartRole(i)));
        left += wide;
    }
    painter.setClipping(false);
    painter.setFont(look.font(TextStyle::Caption));
    const QFontMetrics metrics = painter.fontMetrics();
    const double top = bar.height() + look.space(2) + metrics.ascent();
    const QVector<double> places = wordPlaces(metrics);
    for (int i = 0; i < places.size(); ++i) {
        painter.setPen(look.color(Role::InkMuted));
        painter.drawText(QPointF(places.at(i), top), m_parts.at(i).label);
        painter.setPen(look.color(Theme::chartRole(i)));
        painter.drawText(QPointF(places.at(i), top + metrics.height()), m_parts.at(i).text);
    }
}

// Each under the start of its part, or as far to the left as those on the right need.
QVector<double> ShareBar::wordPlaces(const QFontMetrics &metrics) const
{
    const int gap = theme(this).space(3);
    QVector<double> places(m_parts.size());
    double start = width();
    for (const Part &part : m_parts)
        start -= part.share * width();
    for (int i = 0; i < m_parts.size(); ++i) {
        places[i] = std::max(0.0, start);
        start += m_parts.at(i).share * width();
    }
    double right = width() + gap;
    for (qsizetype i = m_parts.size() - 1; i >= 0; --i) {
        const double needs = std::max(metrics.horizontalAdvance(m_parts.at(i).label),
                                      metrics.horizontalAdvance(m_parts.at(i).text));
        places[i] = std::min(places.at(i), right - gap - needs);
        right = places.at(i);
    }
    return places;
}

} // namespace rickyard::views
