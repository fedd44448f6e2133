#include "views/ribbon/ribbon.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/item_tip.h"

#include <QAccessible>
#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

Ribbon::Ribbon(QWidget *parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("The coming weeks"));
    onTheme(this, [this] { arrange(); });
    describe();
}

void Ribbon::setItems(QDate from, int days, QVector<RibbonItem> items)
{
    m_from = from;
    m_days = days;
    m_items = std::move(items);
    m_hovered = -1;
    m_pressed = -1;
    m_current = m_current < m_items.size() ? m_current : -1;
    arrange();
    describe();
}

RibbonMetrics Ribbon::metrics(int width) const
{
    const Theme &look = theme(this);
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    RibbonMetrics m;
    m.left = std::ceil(std::max(caption.horizontalAdvance(tr("Upkeep")),
                                caption.horizontalAdvance(tr("Events")))) +
             look.space(3);
    m.width = std::max(1.0, width - m.left - 1);
    m.top = std::ceil(caption.height()) + look.space(2);
    m.row = std::max<double>(look.px(26), std::ceil(caption.height()) + look.px(8));
    m.laneGap = look.px(4);
    m.mark =
        std::max<double>(look.px(16), std::ceil(caption.horizontalAdvance(QStringLiteral("MM"))));
    m.gap = look.px(5);
    m.leastLabel = look.px(64);
    m.textWidth = [caption](const QString &text) {
        return std::ceil(caption.horizontalAdvance(text)) + 1;
    };
    return m;
}

RibbonLayout Ribbon::layoutFor(int width) const
{
    const RibbonMetrics m = metrics(width);
    RibbonLayout layout = layOutRibbon(m_items, m_from, m_days, m);
    if (m_items.isEmpty())
        layout.height = m.top + m.row;
    return layout;
}

void Ribbon::arrange()
{
    m_layout = layoutFor(width());
    updateGeometry();
    update();
}

QSize Ribbon::sizeHint() const
{
    const int wide = theme(this).px(760);
    return {wide, heightForWidth(std::max(wide, width()))};
}

QSize Ribbon::minimumSizeHint() const
{
    return {theme(this).px(420), static_cast<int>(std::ceil(m_layout.height))};
}

int Ribbon::heightForWidth(int width) const
{
    return static_cast<int>(std::ceil(layoutFor(width).height));
}

void Ribbon::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void Ribbon::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        arrange();
    QWidget::changeEvent(event);
}

int Ribbon::itemAt(const QPointF &at) const
{
    for (int i = 0; i < m_layout.places.size(); ++i)
        if (m_layout.places.at(i).hit.contains(at))
            return i;
    return -1;
}

bool Ribbon::event(QEvent *event)
{
    if (event->type() != QEvent::ToolTip)
        return QWidget::event(event);
    auto *help = static_cast<QHelpEvent *>(event);
    const int item = itemAt(help->pos());
    showItemTip(help, item < 0 ? QString() : m_items.at(item).detail, this);
    return true;
}

void Ribbon::mouseMoveEvent(QMouseEvent *event)
{
    const int item = itemAt(event->position());
    if (item == m_hovered)
        return;
    m_hovered = item;
    setCursor(item < 0 ? Qt::ArrowCursor : Qt::PointingHandCursor);
    update();
}

void Ribbon::mousePressEvent(QMouseEvent *event)
{
    m_pressed = event->button() == Qt::LeftButton ? itemAt(event->position()) : -1;
    if (m_pressed >= 0)
        setCurrent(m_pressed);
}

void Ribbon::mouseReleaseEvent(QMouseEvent *event)
{
    const int pressed = std::exchange(m_pressed, -1);
    if (pressed >= 0 && pressed == itemAt(event->position()))
        Q_EMIT opened(m_items.at(pressed).link);
}

void Ribbon::leaveEvent(QEvent *event)
{
    QWidget::leaveEvent(event);
    m_hovered = -1;
    update();
}

void Ribbon::keyPressEvent(QKeyEvent *event)
{
    const int last = static_cast<int>(m_items.size()) - 1;
    if (last < 0) {
        QWidget::keyPressEvent(event);
        return;
    }
    switch (event->key()) {
    case Qt::Key_Right:
        setCurrent(std::min(m_current + 1, last));
        return;
    case Qt::Key_Left:
        setCurrent(std::max(m_current - 1, 0));
        return;
    case Qt::Key_Down:
        moveLane(1);
        return;
    case Qt::Key_Up:
        moveLane(-1);
        return;
    case Qt::Key_Home:
        setCurrent(0);
        return;
    case Qt::Key_End:
        setCurrent(last);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (m_current >= 0)
            Q_EMIT opened(m_items.at(m_current).link);
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

// To the item of the next lane that stands nearest.
void Ribbon::moveLane(int by)
{
    if (m_current < 0) {
        setCurrent(0);
        return;
    }
    const QRectF here = m_layout.places.value(m_current).bar;
    int best = -1;
    double bestDistance = 0;
    for (int i = 0; i < m_items.size(); ++i) {
        const QRectF there = m_layout.places.at(i).bar;
        const double down = (there.top() - here.top()) * by;
        if (down < 1)
            continue;
        const double distance = down * 1000 + std::abs(there.left() - here.left());
        if (best < 0 || distance < bestDistance) {
            best = i;
            bestDistance = distance;
        }
    }
    if (best >= 0)
        setCurrent(best);
}

void Ribbon::setCurrent(int item)
{
    m_current = item;
    describe();
    update();
}

QString Ribbon::emptyWords() const
{
    return m_from.isValid() ? tr("Nothing planned in these weeks.") : tr("Reading the books…");
}

void Ribbon::describe()
{
    QString text;
    if (m_current >= 0)
        text = tr("%1 of %2: %3")
                   .arg(m_current + 1)
                   .arg(m_items.size())
                   .arg(QString(m_items.at(m_current).detail).replace(u'\n', QLatin1String(", ")));
    else if (m_items.isEmpty())
        text = emptyWords();
    else
        text = tr("%1 items; the arrow keys move between them").arg(m_items.size());
    setAccessibleDescription(text);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
}

void Ribbon::focusInEvent(QFocusEvent *event)
{
    QWidget::focusInEvent(event);
    if (m_current < 0 && !m_items.isEmpty() && event->reason() != Qt::MouseFocusReason)
        setCurrent(0);
    update();
}

void Ribbon::focusOutEvent(QFocusEvent *event)
{
    QWidget::focusOutEvent(event);
    update();
}

} // namespace rickyard::views
