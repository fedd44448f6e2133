#include "views/fire/timeline_view.h"

#include "views/fire/timeline_paint.h"
#include "views/theme/theme_hub.h"

#include <QAccessible>
#include <QDir>
#include <QFileInfo>
#include <QImage>
#include <QKeyEvent>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

namespace {

constexpr double kShortest = 20; // seconds

} // namespace

TimelineView::TimelineView(QWidget *parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    onTheme(this, [this] { update(); });
}

QSize TimelineView::sizeHint() const
{
    return {theme(this).px(560), theme(this).px(320)};
}

QSize TimelineView::minimumSizeHint() const
{
    const Theme &look = theme(this);
    const double across = std::max(width(), look.px(260));
    return {look.px(260),
            static_cast<int>(std::ceil(TimelinePainter(m_content, look).leastHeight(across)))};
}

void TimelineView::setContent(const TimelineContent &content)
{
    const bool whole = content.cook != m_content.cook || isWhole();
    if (content.cook != m_content.cook)
        m_reading.reset();
    m_content = content;
    if (whole)
        showWhole();
    else
        showStretch(m_from, m_to);
    updateGeometry();
    update();
}

bool TimelineView::isWhole() const
{
    return m_from <= m_content.first() && m_to >= m_content.last();
}

void TimelineView::showWhole()
{
    showStretch(m_content.first(), m_content.last());
}

void TimelineView::showStretch(double from, double to)
{
    const double first = m_content.first();
    const double last = m_content.last();
    const double span = std::clamp(to - from, std::min(kShortest, last - first), last - first);
    m_from = std::clamp(from, first, last - span);
    m_to = m_from + span;
    update();
    Q_EMIT stretchChanged();
}

void TimelineView::zoom(double factor, double at)
{
    const double whole = m_content.last() - m_content.first();
    const double span = std::clamp((m_to - m_from) / factor, std::min(kShortest, whole), whole);
    const double share = std::clamp((at - m_from) / (m_to - m_from), 0.0, 1.0);
    const double from = m_from + share * (m_to - m_from - span);
    showStretch(from, from + span);
}

double TimelineView::secondsAPixel() const
{
    const TimelineFrame frame = TimelinePainter(m_content, theme(this)).frame(size(), m_from, m_to);
    return (m_to - m_from) / frame.temperatures.width();
}

double TimelineView::momentAt(double x) const
{
    return TimelinePainter(m_content, theme(this)).frame(size(), m_from, m_to).atOf(x);
}

void TimelineView::read(std::optional<double> at)
{
    if (at)
        at = std::clamp(*at, m_content.first(), m_content.last());
    m_reading = at;
    const QString words =
        at ? m_content.reading(*at, theme(this).px(5) * secondsAPixel()) : QString();
    setAccessibleDescription(words);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
    update();
    Q_EMIT readingChanged(words);
}

// The next or the previous feed, mark or fault; what lies outside is moved into sight.
void TimelineView::readEvent(int direction)
{
    const std::vector<double> times = m_content.events();
    const double now = m_reading.value_or(direction > 0 ? m_from - 1 : m_to + 1);
    std::optional<double> found;
    for (const double time : times) {
        if (direction > 0 && time > now && !found)
            found = time;
        if (direction < 0 && time < now)
            found = time;
    }
    if (!found)
        return;
    if (*found < m_from || *found > m_to) {
        const double half = (m_to - m_from) / 2;
        showStretch(*found - half, *found + half);
    }
    read(*found);
}

bool TimelineView::event(QEvent *event)
{
    // Single keys of the page around it (a digit feeds splits) are the timeline's while it has
    // the focus.
    if (event->type() == QEvent::ShortcutOverride) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        for (const int own : {Qt::Key_Plus, Qt::Key_Equal, Qt::Key_Minus, Qt::Key_0, Qt::Key_Left,
                              Qt::Key_Right, Qt::Key_Home, Qt::Key_End})
            if (key == own &&
                (static_cast<QKeyEvent *>(event)->modifiers() &
                 (Qt::AltModifier | Qt::MetaModifier)) == 0 &&
                (key == Qt::Key_Left || key == Qt::Key_Right ||
                 !(static_cast<QKeyEvent *>(event)->modifiers() & Qt::ControlModifier))) {
                event->accept();
                return true;
            }
    }
    return QWidget::event(event);
}

void TimelineView::keyPressEvent(QKeyEvent *event)
{
    const double span = m_to - m_from;
    const int direction = event->key() == Qt::Key_Left ? -1 : 1;
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoomIn();
        return;
    case Qt::Key_Minus:
        zoomOut();
        return;
    case Qt::Key_0:
        showWhole();
        return;
    case Qt::Key_Left:
    case Qt::Key_Right:
        if (event->modifiers() & Qt::ControlModifier)
            readEvent(direction);
        else if (event->modifiers() & Qt::ShiftModifier)
            read(std::clamp(middle() + direction * 4 * secondsAPixel(), m_from, m_to));
        else
            moveBy(direction * span / 8);
        return;
    case Qt::Key_Home:
        showStretch(m_content.first(), m_content.first() + span);
        return;
    case Qt::Key_End:
        showStretch(m_content.last() - span, m_content.last());
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void TimelineView::wheelEvent(QWheelEvent *event)
{
    const bool ours = hasFocus() || (event->modifiers() & Qt::ControlModifier);
    const QPoint angle = event->angleDelta();
    if (!ours || angle.isNull()) {
        event->ignore();
        return;
    }
    if (std::abs(angle.x()) > std::abs(angle.y()) || (event->modifiers() & Qt::ShiftModifier))
        moveBy(-(angle.x() != 0 ? angle.x() : angle.y()) / 120.0 * (m_to - m_from) / 10);
    else
        zoom(std::pow(1.25, angle.y() / 120.0), momentAt(event->position().x()));
    event->accept();
}

void TimelineView::mousePressEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton) {
        QWidget::mousePressEvent(event);
        return;
    }
    m_dragX = event->position().x();
    setCursor(Qt::ClosedHandCursor);
}

void TimelineView::mouseMoveEvent(QMouseEvent *event)
{
    const double x = event->position().x();
    if (m_dragX && (event->buttons() & Qt::LeftButton)) {
        moveBy((*m_dragX - x) * secondsAPixel());
        m_dragX = x;
        return;
    }
    read(momentAt(x));
}

void TimelineView::mouseReleaseEvent(QMouseEvent *event)
{
    m_dragX.reset();
    setCursor(Qt::CrossCursor);
    read(momentAt(event->position().x()));
}

void TimelineView::mouseDoubleClickEvent(QMouseEvent *event)
{
    zoom(4, momentAt(event->position().x()));
}

void TimelineView::leaveEvent(QEvent *)
{
    if (!hasFocus())
        read(std::nullopt);
}

void TimelineView::focusInEvent(QFocusEvent *)
{
    update();
}

void TimelineView::focusOutEvent(QFocusEvent *)
{
    read(std::nullopt);
}

void TimelineView::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    if (m_content.cook == 0)
        return;
    const TimelinePainter timeline(m_content, look);
    const TimelineFrame frame = timeline.frame(size(), m_from, m_to);
    timeline.paint(painter, frame);
    if (m_reading)
        timeline.paintReading(painter, frame, *m_reading);
    if (!hasFocus())
        return;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), look.radius(), look.radius());
}

std::optional<QString> TimelineView::exportPicture(const QString &path) const
{
    const Theme paper = Theme::make(Mode::Light, 14.0 * theme(this).scale());
    const QString kind = QFileInfo(path).suffix().toLower();
    const TimelinePainter timeline(m_content, paper);
    const auto draw = [&](QPaintDevice *device, double scale) {
        QPainter painter(device);
        if (!painter.isActive())
            return false;
        painter.scale(scale, scale);
        painter.fillRect(QRectF(rect()), paper.color(Role::SurfaceRaised));
        timeline.paint(painter, timeline.frame(size(), m_from, m_to));
        return painter.end();
    };
    const QString refused = tr("The picture could not be written to %1. Choose a folder that can "
                               "be written to and has space.")
                                .arg(QDir::toNativeSeparators(path));
    if (kind == QLatin1String("svg")) {
        QSaveFile file(path);
        QSvgGenerator generator;
        generator.setSize(size());
        generator.setViewBox(rect());
        generator.setTitle(accessibleName());
        generator.setOutputDevice(&file);
        if (!file.open(QIODevice::WriteOnly) || !draw(&generator, 1) || !file.commit())
            return refused;
        return std::nullopt;
    }
    if (kind == QLatin1String("png")) {
        QImage image(size() * 2, QImage::Format_RGB32);
        if (!draw(&image, 2) || !image.save(path, "PNG"))
            return refused;
        return std::nullopt;
    }
    return tr("Pictures are written as .png or .svg; “%1” is neither. Give the file one of these "
              "endings.")
        .arg(kind);
}

} // namespace rickyard::views
