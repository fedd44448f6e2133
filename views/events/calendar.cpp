#include "views/events/calendar.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/item_tip.h"

#include <QAccessible>
#include <QApplication>
#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

namespace {

constexpr int kQuietWeeksInSight = 8;

QString inOneLine(const CalendarItem &item)
{
    return QString(item.item.detail).replace(u'\n', QLatin1String(", "));
}

QString longDay(QDate day)
{
    return QLocale(QStringLiteral("en_US")).toString(day, QStringLiteral("dddd d MMMM yyyy"));
}

} // namespace

Calendar::Calendar(QWidget *parent) : QAbstractScrollArea(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
    setAccessibleName(tr("Calendar of the coming weeks"));
    onTheme(this, [this] { arrange(); });
}

void Calendar::setItems(QDate from, int weeks, QDate today, QVector<CalendarItem> items)
{
    const QDate shown = m_weeks.isEmpty() ? QDate() : firstDayShown();
    const domain::Link chosen = m_current >= 0 ? m_items.at(m_current).item.link : domain::Link();
    m_from = from;
    m_weekCount = weeks;
    m_today = today;
    m_items = std::move(items);
    m_hovered = -1;
    m_drag = {};
    m_current = -1;
    for (int i = 0; chosen.id != 0 && i < m_items.size(); ++i)
        if (m_items.at(i).item.link.table == chosen.table &&
            m_items.at(i).item.link.id == chosen.id)
            m_current = i;
    if (!m_day.isValid())
        m_day = today;
    if (m_current >= 0 && !itemsOn(m_items, m_day).contains(m_current))
        m_current = -1;
    arrange();
    showWeekOf(shown.isValid() ? shown : today);
    describe();
}

int Calendar::headHeight() const
{
    const Theme &look = theme(this);
    return static_cast<int>(std::ceil(QFontMetricsF(look.font(TextStyle::Caption)).height())) +
           look.space(2);
}

double Calendar::dayWidth() const
{
    return std::max(1.0, viewport()->width() / 7.0);
}

RibbonMetrics Calendar::metrics() const
{
    const Theme &look = theme(this);
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    RibbonMetrics m;
    m.width = std::max(1, viewport()->width() - 1);
    m.top = std::ceil(caption.height()) + look.px(5);
    m.row = std::max<double>(look.px(18), std::ceil(caption.height()) + look.px(3));
    m.laneGap = 0;
    m.mark =
        std::max<double>(look.px(16), std::ceil(caption.horizontalAdvance(QStringLiteral("MM"))));
    m.gap = look.px(5);
    m.leastLabel = look.px(72);
    m.textWidth = [caption](const QString &text) {
        return std::ceil(caption.horizontalAdvance(text)) + 1;
    };
    return m;
}

// Each week is a ribbon of seven days; weeks with much in them are taller.
void Calendar::arrange()
{
    const RibbonMetrics m = metrics();
    // Eight quiet weeks fill the view, so that six are in sight when some are full.
    const double least = std::max(m.top + m.row, std::floor((viewport()->height() - headHeight()) /
                                                            double(kQuietWeeksInSight)));
    m_weeks.clear();
    double top = headHeight();
    for (int w = 0; w < m_weekCount; ++w) {
        Week week;
        week.monday = m_from.addDays(7 * w);
        week.top = top;
        QVector<RibbonItem> bars;
        for (int i = 0; i < m_items.size(); ++i) {
            const RibbonItem &item = m_items.at(i).item;
            const QDate last =
                item.end > item.start ? item.end.addSecs(-1).date() : item.end.date();
            if (last < week.monday || item.start.date() > week.monday.addDays(6))
                continue;
            week.items << i;
            bars << item;
            bars.last().lane = Lane::Events; // rows are shared: a week has no lanes
        }
        week.layout = layOutRibbon(bars, week.monday, 7, m);
        week.height = std::max(least, week.layout.height + theme(this).px(3));
        top += week.height;
        m_weeks << week;
    }
    m_height = top;
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(static_cast<int>(least));
    verticalScrollBar()->setRange(0,
                                  std::max(0, static_cast<int>(m_height) - viewport()->height()));
    viewport()->update();
}

QSize Calendar::sizeHint() const
{
    return {theme(this).px(760), theme(this).px(400)};
}

QSize Calendar::minimumSizeHint() const
{
    return {theme(this).px(420), theme(this).px(300)};
}

void Calendar::resizeEvent(QResizeEvent *event)
{
    QAbstractScrollArea::resizeEvent(event);
    const QDate shown = m_weeks.isEmpty() ? QDate() : firstDayShown();
    arrange();
    if (shown.isValid())
        showWeekOf(shown);
}

void Calendar::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        arrange();
    QAbstractScrollArea::changeEvent(event);
}

double Calendar::scrolled() const
{
    return verticalScrollBar()->value();
}

int Calendar::weekOf(QDate day) const
{
    const qint64 days = m_from.isValid() ? m_from.daysTo(day) : -1;
    return days < 0 || days >= qint64{7} * m_weekCount ? -1 : static_cast<int>(days / 7);
}

QDate Calendar::firstDayShown() const
{
    for (const Week &week : m_weeks)
        if (week.top - headHeight() >= scrolled() - 1)
            return week.monday;
    return m_from;
}

void Calendar::showWeekOf(QDate day)
{
    const int week = weekOf(day);
    if (week >= 0)
        verticalScrollBar()->setValue(static_cast<int>(m_weeks.at(week).top) - headHeight());
    viewport()->update();
}

QRectF Calendar::rectOf(QDate day) const
{
    const int index = weekOf(day);
    if (index < 0)
        return {};
    const Week &week = m_weeks.at(index);
    const double wide = dayWidth();
    return {wide * double(week.monday.daysTo(day)), week.top - scrolled(), wide, week.height};
}

QRectF Calendar::rectOf(int item) const
{
    for (const Week &week : m_weeks)
        for (qsizetype k = 0; k < week.items.size(); ++k)
            if (week.items.at(k) == item)
                return week.layout.places.at(k).bar.translated(0, week.top - scrolled());
    return {};
}

QDate Calendar::dayAt(const QPointF &at) const
{
    if (at.y() < headHeight() || at.x() < 0 || at.x() >= viewport()->width())
        return {};
    for (const Week &week : m_weeks)
        if (at.y() + scrolled() >= week.top && at.y() + scrolled() < week.top + week.height)
            return week.monday.addDays(std::min(6, static_cast<int>(at.x() / dayWidth())));
    return {};
}

int Calendar::itemAt(const QPointF &at) const
{
    if (at.y() < headHeight())
        return -1;
    for (const Week &week : m_weeks)
        for (qsizetype k = 0; k < week.items.size(); ++k)
            if (week.layout.places.at(k).hit.translated(0, week.top - scrolled()).contains(at))
                return week.items.at(k);
    return -1;
}

bool Calendar::viewportEvent(QEvent *event)
{
    if (event->type() != QEvent::ToolTip)
        return QAbstractScrollArea::viewportEvent(event);
    auto *help = static_cast<QHelpEvent *>(event);
    const int item = itemAt(help->pos());
    showItemTip(help, item < 0 ? QString() : m_items.at(item).item.detail, this);
    return true;
}

void Calendar::mousePressEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton)
        return;
    const QDate day = dayAt(event->position());
    if (!day.isValid())
        return;
    m_drag = {};
    m_drag.item = itemAt(event->position());
    m_drag.from = day;
    m_drag.pressed = event->pos();
    choose(day, m_drag.item);
}

void Calendar::mouseMoveEvent(QMouseEvent *event)
{
    if ((event->buttons() & Qt::LeftButton) == 0 || m_drag.item < 0) {
        const int item = itemAt(event->position());
        if (item != m_hovered) {
            m_hovered = item;
            viewport()->setCursor(item < 0 ? Qt::ArrowCursor : Qt::PointingHandCursor);
            viewport()->update();
        }
        return;
    }
    if (!m_drag.moving &&
        (event->pos() - m_drag.pressed).manhattanLength() < QApplication::startDragDistance())
        return;
    m_drag.moving = true;
    const int edge = theme(this).space(4);
    if (event->pos().y() > viewport()->height() - edge)
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderSingleStepAdd);
    else if (event->pos().y() < headHeight() + edge / 2)
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderSingleStepSub);
    m_drag.over = dayAt(event->position());
    viewport()->setCursor(m_items.at(m_drag.item).movable ? Qt::ClosedHandCursor
                                                          : Qt::ForbiddenCursor);
    viewport()->update();
}

void Calendar::mouseReleaseEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton || m_drag.item < 0)
        return;
    const Drag drag = m_drag;
    endDrag();
    const CalendarItem item = m_items.at(drag.item);
    if (!drag.moving) {
        if (itemAt(event->position()) == drag.item)
            Q_EMIT opened(item.item.link);
        return;
    }
    if (!drag.over.isValid() || drag.over == drag.from)
        return;
    if (item.movable)
        Q_EMIT moveAsked(item.item.link, static_cast<int>(drag.from.daysTo(drag.over)));
    else
        Q_EMIT notMovable(item.item.link);
}

void Calendar::endDrag()
{
    m_drag = {};
    viewport()->setCursor(Qt::ArrowCursor);
    viewport()->update();
}

void Calendar::mouseDoubleClickEvent(QMouseEvent *event)
{
    const QDate day = dayAt(event->position());
    if (event->button() == Qt::LeftButton && day.isValid() && itemAt(event->position()) < 0)
        Q_EMIT addAsked(day);
}

void Calendar::leaveEvent(QEvent *event)
{
    QAbstractScrollArea::leaveEvent(event);
    m_hovered = -1;
    viewport()->update();
}

void Calendar::setDay(QDate day)
{
    choose(day, -1);
}

void Calendar::choose(QDate day, int item)
{
    if (weekOf(day) < 0)
        return;
    const bool moved = day != m_day;
    m_day = day;
    m_current = item;
    describe();
    viewport()->update();
    if (moved)
        Q_EMIT dayChanged(day);
}

void Calendar::bringIntoSight(QDate day)
{
    const QRectF place = rectOf(day);
    if (place.isEmpty())
        return;
    if (place.top() < headHeight())
        showWeekOf(day);
    else if (place.bottom() > viewport()->height())
        verticalScrollBar()->setValue(
            static_cast<int>(std::ceil(scrolled() + place.bottom() - viewport()->height())));
}

void Calendar::stepItem()
{
    const QVector<int> on = itemsOn(m_items, m_day);
    if (on.isEmpty())
        return;
    const auto at = on.indexOf(m_current);
    choose(m_day, on.at((at + 1) % on.size()));
}

void Calendar::moveCurrent(int days)
{
    const QVector<int> on = itemsOn(m_items, m_day);
    const int item = m_current >= 0 ? m_current : on.value(0, -1);
    if (item < 0)
        return;
    const CalendarItem chosen = m_items.at(item);
    m_current = item;
    if (!chosen.movable) {
        Q_EMIT notMovable(chosen.item.link);
        return;
    }
    Q_EMIT moveAsked(chosen.item.link, days);
}

bool Calendar::moveByKey(int key, bool shift)
{
    const int days = key == Qt::Key_Left    ? -1
                     : key == Qt::Key_Right ? 1
                     : key == Qt::Key_Up    ? -7
                     : key == Qt::Key_Down  ? 7
                                            : 0;
    if (days == 0)
        return false;
    if (shift) {
        moveCurrent(days);
        return true;
    }
    choose(m_day.addDays(days), -1);
    bringIntoSight(m_day);
    return true;
}

void Calendar::keyPressEvent(QKeyEvent *event)
{
    if (moveByKey(event->key(), event->modifiers().testFlag(Qt::ShiftModifier)))
        return;
    const QVector<int> on = itemsOn(m_items, m_day);
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!on.isEmpty())
            Q_EMIT opened(m_items.at(m_current >= 0 ? m_current : on.first()).item.link);
        return;
    case Qt::Key_Space:
        stepItem();
        return;
    case Qt::Key_N:
        Q_EMIT addAsked(m_day);
        return;
    case Qt::Key_Home:
        choose(m_today, -1);
        bringIntoSight(m_day);
        return;
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        choose(m_day.addDays(event->key() == Qt::Key_PageDown ? 28 : -28), -1);
        bringIntoSight(m_day);
        return;
    case Qt::Key_Escape:
        if (m_drag.moving) {
            endDrag();
            return;
        }
        break;
    default:
        break;
    }
    QAbstractScrollArea::keyPressEvent(event);
}

void Calendar::describe()
{
    const QVector<int> on = itemsOn(m_items, m_day);
    QString text = longDay(m_day);
    if (m_day == m_today)
        text = tr("Today, %1").arg(text);
    if (const int clashes = clashesOn(m_day); clashes > 0)
        text += clashes == 1 ? tr(", 1 clash") : tr(", %1 clashes").arg(clashes);
    const auto at = on.indexOf(m_current);
    if (at >= 0)
        text = tr("%1; %2 of %3: %4")
                   .arg(text)
                   .arg(at + 1)
                   .arg(on.size())
                   .arg(inOneLine(m_items.at(m_current)));
    else if (on.isEmpty())
        text = tr("%1; nothing planned. N adds an event.").arg(text);
    else
        text = tr("%1; %2 entries, Space goes through them, Enter opens.").arg(text).arg(on.size());
    setAccessibleDescription(text);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
}

int Calendar::clashesOn(QDate day) const
{
    QSet<QString> said;
    for (const int i : itemsOn(m_items, day))
        for (const domain::Clash &clash : m_items.at(i).clashes)
            said.insert(clash.what);
    return static_cast<int>(said.size());
}

void Calendar::focusInEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void Calendar::focusOutEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

} // namespace rickyard::views
