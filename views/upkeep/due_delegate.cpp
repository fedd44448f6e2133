#include "views/upkeep/due_delegate.h"

#include "views/theme/theme_hub.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/status_pill.h"

#include <QPainter>

#include <algorithm>

namespace rickyard::views {

namespace {

// A bar to its limit: what is over runs past the mark, at most half as far again.
void paintMeter(QPainter *painter, const QRectF &area, const domain::Meter &meter,
                const Theme &look)
{
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    painter->setFont(look.font(TextStyle::Caption));
    painter->setPen(look.color(Role::InkMuted));
    const double words = caption.height();
    painter->drawText(QRectF(area.left(), area.top(), area.width(), words),
                      Qt::AlignLeft | Qt::AlignVCenter,
                      caption.elidedText(meterText(meter), Qt::ElideRight, area.width()));
    const double thick = look.px(5);
    const QRectF groove(area.left(), area.top() + words + look.px(3), area.width(), thick);
    painter->setPen(Qt::NoPen);
    painter->setBrush(look.color(Role::Hairline));
    painter->drawRoundedRect(groove, thick / 2, thick / 2);
    const double share = meter.limit > 0 ? meter.used / meter.limit : 0.0;
    const double limitAt = groove.width() / 1.5;
    const double wide = std::clamp(share, 0.0, 1.5) * limitAt;
    if (wide > 0) {
        const Role role = share >= 1 ? Role::Act : share >= 0.75 ? Role::Watch : Role::Accent;
        painter->setBrush(look.color(role));
        painter->drawRoundedRect(QRectF(groove.left(), groove.top(), std::max(thick, wide), thick),
                                 thick / 2, thick / 2);
    }
    painter->setBrush(look.color(Role::Ink));
    painter->drawRect(QRectF(groove.left() + limitAt - look.px(1), groove.top() - look.px(2),
                             look.px(1.5), thick + look.px(4)));
}

QVector<domain::Meter> farthest(const QVector<domain::Meter> &meters)
{
    const auto share = [](const domain::Meter &m) { return m.limit > 0 ? m.used / m.limit : 0.0; };
    const auto most = std::max_element(
        meters.begin(), meters.end(),
        [&](const domain::Meter &a, const domain::Meter &b) { return share(a) < share(b); });
    return most == meters.end() ? QVector<domain::Meter>() : QVector<domain::Meter>{*most};
}

} // namespace

DueDelegate::DueDelegate(Lookup lookup, QObject *parent)
    : QStyledItemDelegate(parent), m_lookup(std::move(lookup))
{
}

QSize DueDelegate::sizeHint(const QStyleOptionViewItem &option, const QModelIndex &) const
{
    const Theme &look = theme(option.widget);
    const QFontMetrics body(look.font(TextStyle::BodyStrong));
    const QFontMetrics caption(look.font(TextStyle::Caption));
    return {look.px(300), body.height() + caption.height() + look.px(6) + 2 * look.space(2)};
}

void DueDelegate::paint(QPainter *painter, const QStyleOptionViewItem &option,
                        const QModelIndex &index) const
{
    const Entry entry = m_lookup(index);
    const Theme &look = theme(option.widget);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF cell(option.rect);
    if ((option.state & QStyle::State_Selected) != 0)
        painter->fillRect(cell, look.color(Role::Selection));
    else if ((option.state & QStyle::State_MouseOver) != 0)
        painter->fillRect(cell, look.color(Role::Hover));
    painter->setPen(QPen(look.color(Role::Hairline), 1));
    painter->drawLine(cell.bottomLeft(), cell.bottomRight());
    const QRectF inside =
        cell.adjusted(look.space(3), look.space(2), -look.space(3), -look.space(2));
    const double pillWidth = StatusPill::sizeFor(entry.state, look).width();
    // Three columns: what, how far, how it stands.
    // Where it is narrow, only the trigger that has run farthest is drawn.
    const bool narrow = inside.width() < look.px(680);
    const double meters =
        std::min(inside.width() * (narrow ? 0.24 : 0.36), static_cast<double>(look.px(300)));
    const double stateWidth = narrow ? pillWidth : std::max<double>(look.px(128), pillWidth);
    const double name = inside.width() - meters - stateWidth - 2 * look.space(3);

    const QFontMetricsF strong(look.font(TextStyle::BodyStrong));
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    painter->setFont(look.font(TextStyle::BodyStrong));
    painter->setPen(look.color(Role::Ink));
    painter->drawText(QRectF(inside.left(), inside.top(), name, strong.height()),
                      Qt::AlignLeft | Qt::AlignVCenter,
                      strong.elidedText(entry.name, Qt::ElideRight, name));
    painter->setFont(look.font(TextStyle::Caption));
    painter->setPen(look.color(Role::InkMuted));
    const QString under = QString(entry.pit + QStringLiteral(" · ") + entry.due);
    painter->drawText(
        QRectF(inside.left(), inside.top() + strong.height() + look.px(4), name, caption.height()),
        Qt::AlignLeft | Qt::AlignVCenter, caption.elidedText(under, Qt::ElideRight, name));

    const QVector<domain::Meter> drawn = narrow ? farthest(entry.meters) : entry.meters;
    const auto count = std::max<qsizetype>(1, drawn.size());
    const double gap = look.space(3);
    const double each =
        (meters - gap * static_cast<double>(count - 1)) / static_cast<double>(count);
    double x = inside.left() + name + look.space(3);
    const double meterHeight = caption.height() + look.px(8);
    for (const domain::Meter &meter : drawn) {
        paintMeter(painter, QRectF(x, inside.center().y() - meterHeight / 2, each, meterHeight),
                   meter, look);
        x += each + gap;
    }
    StatusPill::paint(painter,
                      QRect(static_cast<int>(inside.right() - stateWidth),
                            static_cast<int>(inside.top()), static_cast<int>(stateWidth),
                            static_cast<int>(inside.height())),
                      static_cast<Role>(entry.role), entry.state, look);
    if ((option.state & QStyle::State_HasFocus) != 0) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter->drawRoundedRect(cell.adjusted(1, 1, -1, -2), look.radius(), look.radius());
    }
    painter->restore();
}

} // namespace rickyard::views
