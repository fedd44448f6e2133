#include "views/upkeep/plan_key.h"

#include "views/theme/theme_hub.h"

#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace rickyard::views {

namespace {

enum class KeyMark { Fire, Cooling, Curing, Crew, Proposed, ByHand };

struct KeyEntry {
    KeyMark mark;
    QString word;
};

QVector<KeyEntry> keyEntries()
{
    return {
        {KeyMark::Fire, PlanKey::tr("fire")},         {KeyMark::Cooling, PlanKey::tr("cooling")},
        {KeyMark::Curing, PlanKey::tr("curing")},     {KeyMark::Crew, PlanKey::tr("crew hours")},
        {KeyMark::Proposed, PlanKey::tr("proposed")}, {KeyMark::ByHand, PlanKey::tr("by hand")}};
}

void paintMark(QPainter &painter, const QRectF &box, KeyMark mark, const Theme &look)
{
    const double round = look.px(3);
    QColor fill = look.color(Role::InkMuted);
    fill.setAlphaF(0.22F);
    switch (mark) {
    case KeyMark::Fire:
        painter.setPen(QPen(look.color(Role::InkMuted), look.px(1.5)));
        painter.setBrush(fill);
        painter.drawRoundedRect(box, round, round);
        return;
    case KeyMark::Cooling:
        paintHatch(painter, box, look.color(Role::InkMuted), look.px(4), true);
        return;
    case KeyMark::Curing:
        paintHatch(painter, box, look.color(Role::Accent), look.px(4), false);
        return;
    case KeyMark::Crew:
        painter.fillRect(box.adjusted(box.width() * 0.3, -2, -box.width() * 0.3, 2),
                         look.soft(Role::Accent));
        return;
    case KeyMark::Proposed:
    case KeyMark::ByHand:
        break;
    }
    QPen edge(look.color(Role::Accent), look.px(1.5));
    if (mark == KeyMark::Proposed)
        edge.setDashPattern({2.5, 2.0});
    painter.setPen(edge);
    painter.setBrush(mark == KeyMark::Proposed ? look.color(Role::Surface)
                                               : look.soft(Role::Accent));
    painter.drawRoundedRect(box, round, round);
    if (mark == KeyMark::ByHand) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Accent));
        painter.drawEllipse(box.topRight() + QPointF(-look.px(2), look.px(2)), look.px(3),
                            look.px(3));
    }
}

} // namespace

void paintHatch(QPainter &painter, const QRectF &area, QColor ink, double gap, bool leansRight)
{
    if (area.width() < 1)
        return;
    painter.save();
    painter.setClipRect(area, Qt::IntersectClip);
    ink.setAlphaF(0.45F);
    painter.setPen(QPen(ink, 1));
    const double high = area.height();
    const int lines = static_cast<int>(std::ceil((area.width() + 2 * high) / gap));
    for (int i = 0; i < lines; ++i) {
        const double x = area.left() - high + i * gap;
        painter.drawLine(QPointF(leansRight ? x : x + high, area.bottom()),
                         QPointF(leansRight ? x + high : x, area.top()));
    }
    painter.restore();
}

PlanKey::PlanKey(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    QStringList words;
    for (const KeyEntry &entry : keyEntries())
        words << entry.word;
    setAccessibleName(tr("Key of the plan: %1").arg(words.join(QStringLiteral(", "))));
    onTheme(this, [this] {
        updateGeometry();
        update();
    });
}

QSize PlanKey::sizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    double wide = 0;
    for (const KeyEntry &entry : keyEntries())
        wide += look.px(20) + look.space(1) + caption.horizontalAdvance(entry.word) + look.space(3);
    return {static_cast<int>(std::ceil(wide)), static_cast<int>(std::ceil(caption.height()))};
}

QSize PlanKey::minimumSizeHint() const
{
    return {0, sizeHint().height()}; // a narrow window shows what fits
}

void PlanKey::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Caption));
    const QFontMetricsF caption(painter.font());
    double x = 1;
    for (const KeyEntry &entry : keyEntries()) {
        const double word = caption.horizontalAdvance(entry.word) + 1;
        const double swatch = look.px(20);
        if (x + swatch + look.space(1) + word > width())
            return; // whole entries only
        const double high = look.px(12);
        paintMark(painter, QRectF(x, (height() - high) / 2, swatch, high), entry.mark, look);
        painter.setPen(look.color(Role::InkMuted));
        painter.drawText(QRectF(x + swatch + look.space(1), 0, word, height()),
                         Qt::AlignLeft | Qt::AlignVCenter, entry.word);
        x += swatch + look.space(1) + word + look.space(3);
    }
}

} // namespace rickyard::views
