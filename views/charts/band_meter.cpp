#include "views/charts/band_meter.h"

#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>

namespace rickyard::views {

BandMeter::BandMeter(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void BandMeter::setValues(double now, double low, double middle, double high,
                          const QString &nowText, const QString &bandText)
{
    m_now = now;
    m_low = low;
    m_middle = middle;
    m_high = high;
    m_nowText = nowText;
    m_bandText = bandText;
    setAccessibleName(QStringLiteral("%1, %2").arg(nowText, bandText));
    updateGeometry();
    update();
}

QSize BandMeter::sizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetrics metrics(look.font(TextStyle::Body));
    return {look.px(240), metrics.height() + look.space(2) + look.px(22)};
}

void BandMeter::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

void BandMeter::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Body));
    const double text = painter.fontMetrics().height();
    const bool outside = m_now < m_low || m_now > m_high;
    painter.setPen(look.color(outside ? Role::Watch : Role::Ink));
    painter.drawText(QRectF(0, 0, width(), text), Qt::AlignLeft, m_nowText);
    painter.setPen(look.color(Role::InkMuted));
    painter.drawText(QRectF(0, 0, width(), text), Qt::AlignRight, m_bandText);
    const double whole = std::max(m_now, m_high) * 1.08;
    if (!(whole > 0.0))
        return;
    const double middle = text + look.space(2) + look.px(11);
    const auto at = [&](double value) { return width() * std::clamp(value / whole, 0.0, 1.0); };
    const double thin = look.px(4);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.color(Role::Hairline));
    painter.drawRoundedRect(QRectF(0, middle - thin / 2, width(), thin), thin / 2, thin / 2);
    const double thick = look.px(14);
    painter.setBrush(look.soft(Role::Accent));
    painter.drawRoundedRect(QRectF(at(m_low), middle - thick / 2, at(m_high) - at(m_low), thick),
                            look.px(3), look.px(3));
    painter.setBrush(look.color(Role::Accent));
    painter.drawRect(QRectF(at(m_middle) - look.px(1), middle - thick / 2, look.px(2), thick));
    const double side = look.px(12);
    painter.setBrush(look.color(outside ? Role::Watch : Role::Ink));
    painter.drawEllipse(QRectF(at(m_now) - side / 2, middle - side / 2, side, side));
}

} // namespace rickyard::views
