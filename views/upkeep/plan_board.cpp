#include "views/upkeep/plan_board.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/item_tip.h"

#include <QAccessible>
#include <QApplication>
#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {
constexpr Duration kGrain = Duration::ofBase(15 * 60);
constexpr Duration kDay = Duration::ofBase(86400);
} // namespace

PlanBoard::PlanBoard(const QString &timeZone, Speech speech, QWidget *parent)
    : QWidget(parent), m_speech(std::move(speech)), m_local(timeZone)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("The plan, a lane a pit"));
    onTheme(this, [this] { measure(); });
}

void PlanBoard::setContent(PlanContent content, QDate today)
{
    // The same visit stays chosen while the plan around it changes.
    const QVector<PlanVisit> chosen = chosenVisits();
    const bool whole = m_part < 0;
    m_content = std::move(content);
    if (!m_first.isValid() || m_first < today)
        m_first = today;
    m_today = today;
    m_current = -1;
    m_part = -1;
    m_hovered = -1;
    m_pressed = -1;
    m_lifted = false;
    m_dragging = false;
    m_awaited = false;
    if (!chosen.isEmpty()) {
        choose(chosen.first().task);
        if (whole || chosen.size() > 1)
            m_part = -1;
    }
    measure();
    Q_EMIT currentChanged();
    say();
}

void PlanBoard::setFirst(QDate first)
{
    m_first = std::max(first, m_today);
    update();
    Q_EMIT firstChanged();
}

void PlanBoard::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    measure();
}

void PlanBoard::measure()
{
    const Theme &look = theme(this);
    const QFontMetricsF body(look.font(TextStyle::Label));
    double names = look.px(90);
    for (const PlanLane &lane : m_content.lanes)
        names = std::max(names, std::ceil(body.horizontalAdvance(lane.name)));
    Measures &m = m_measures;
    m.left = std::min<double>(names, look.px(150)) + look.space(3);
    m.day = std::max(1.0, (width() - m.left - 1) / kDays);
    m.top = std::ceil(QFontMetricsF(look.font(TextStyle::Caption)).height()) + look.space(2);
    m.lane = look.px(32);
    m.gap = look.px(5);
    m.least = look.px(26);
    updateGeometry();
    update();
}

QSize PlanBoard::sizeHint() const
{
    const Measures &m = measures();
    const auto lanes = std::max<qsizetype>(1, m_content.lanes.size());
    return {theme(this).px(760),
            static_cast<int>(std::ceil(m.top + static_cast<double>(lanes) * (m.lane + m.gap)))};
}

QSize PlanBoard::minimumSizeHint() const
{
    return {theme(this).px(420), sizeHint().height()};
}

double PlanBoard::xOf(Instant time) const
{
    const Measures &m = measures();
    const QDate day = m_local.dateOf(time);
    const Instant start = m_local.startOf(day);
    const double share = (time - start) / (m_local.startOf(day.addDays(1)) - start);
    return m.left + (static_cast<double>(m_first.daysTo(day)) + share) * m.day;
}

Instant PlanBoard::timeAt(double x) const
{
    const Measures &m = measures();
    const double days = (x - m.left) / m.day;
    const double whole = std::floor(days);
    const QDate day = m_first.addDays(static_cast<qint64>(whole));
    const Instant start = m_local.startOf(day);
    return start + (m_local.startOf(day.addDays(1)) - start) * (days - whole);
}

QRectF PlanBoard::barOf(int lane, Instant start, Instant end, double least) const
{
    const Measures &m = measures();
    const double x = xOf(start);
    const double wide = std::max(least, xOf(end) - x);
    return {x, m.top + lane * (m.lane + m.gap) + m.lane * 0.14, wide, m.lane * 0.72};
}

QRectF PlanBoard::rectOf(int block) const
{
    if (block < 0 || block >= m_content.blocks.size())
        return {};
    const PlanBlock &b = m_content.blocks.at(block);
    return barOf(b.lane, b.start, b.end, measures().least);
}

int PlanBoard::blockAt(const QPointF &at) const
{
    if (at.x() < measures().left)
        return -1;
    for (int i = static_cast<int>(m_content.blocks.size()) - 1; i >= 0; --i)
        if (rectOf(i).adjusted(-1, -2, 1, 2).contains(at))
            return i;
    return -1;
}

const PlanFire *PlanBoard::fireAt(const QPointF &at) const
{
    if (at.x() < measures().left)
        return nullptr;
    for (int lane = 0; lane < m_content.lanes.size(); ++lane)
        for (const PlanFire &fire : m_content.lanes.at(lane).fires)
            if (barOf(lane, fire.start, fire.coldAt, 0).contains(at))
                return &fire;
    return nullptr;
}

QVector<PlanVisit> PlanBoard::chosenVisits() const
{
    if (m_current < 0 || m_current >= m_content.blocks.size())
        return {};
    const PlanBlock &block = m_content.blocks.at(m_current);
    return m_part < 0 ? block.visits : QVector<PlanVisit>{block.visits.value(m_part)};
}

Instant PlanBoard::chosenStart() const
{
    const QVector<PlanVisit> visits = chosenVisits();
    return visits.isEmpty() ? Instant() : visits.first().start;
}

Duration PlanBoard::chosenLength() const
{
    Instant end;
    const QVector<PlanVisit> visits = chosenVisits();
    for (const PlanVisit &visit : visits)
        end = std::max(end, visit.end);
    return end - chosenStart();
}

void PlanBoard::choose(RecordId task)
{
    int found = -1;
    int part = -1;
    for (int i = 0; i < m_content.blocks.size() && found < 0; ++i)
        for (int v = 0; v < m_content.blocks.at(i).visits.size(); ++v)
            if (m_content.blocks.at(i).visits.at(v).task == task) {
                found = i;
                part = m_content.blocks.at(i).visits.size() > 1 ? v : -1;
                break;
            }
    if (found == m_current && part == m_part)
        return;
    m_lifted = m_dragging = m_awaited = false;
    m_current = found;
    m_part = part;
    showCurrent();
    update();
    Q_EMIT currentChanged();
    say();
}

void PlanBoard::choosePart(int part)
{
    if (m_part == part)
        return;
    m_part = part;
    m_lifted = false;
    update();
    say();
}

void PlanBoard::setCurrent(int block)
{
    m_awaited = false;
    m_current = block;
    m_part = -1;
    showCurrent();
    update();
    Q_EMIT currentChanged();
    say();
}

// A chosen block that lies in another fortnight is turned to.
void PlanBoard::showCurrent()
{
    if (m_current < 0)
        return;
    const QDate day = m_local.dateOf(m_content.blocks.at(m_current).start);
    if (day < m_first || day >= m_first.addDays(kDays))
        setFirst(day.addDays(1 - day.dayOfWeek()));
}

QString PlanBoard::words() const
{
    const QVector<PlanVisit> visits = chosenVisits();
    if (visits.isEmpty())
        return m_content.blocks.isEmpty()
                   ? tr("No visit in these weeks.")
                   : tr("Choose a visit by a click or the arrow keys; drag it, or pick it up with "
                        "Space, to place it yourself.");
    if (!m_lifted && !m_dragging) {
        const PlanBlock &block = m_content.blocks.at(m_current);
        if (m_part < 0)
            return QString(block.words).replace(QLatin1Char('\n'), QStringLiteral(", "));
        return tr("%1 on %2, %3")
            .arg(visits.first().name, m_content.lanes.at(block.lane).name,
                 m_speech.span(visits.first().start, visits.first().end));
    }
    QString text = m_speech.span(m_target, m_target + chosenLength());
    const Duration by = m_target - chosenStart();
    for (const PlanVisit &visit : visits) {
        const QString trouble = m_speech.trouble(visit.task, visit.start + by, visit.end + by);
        if (trouble.isEmpty())
            continue;
        text += QString(QStringLiteral(". ") + trouble);
        break;
    }
    return m_lifted ? tr("%1  Arrows move it, Enter puts it down, Escape leaves it.").arg(text)
                    : text;
}

void PlanBoard::say()
{
    const QString text = words();
    setAccessibleDescription(text);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
    Q_EMIT wordsChanged(text);
}

// To the quarter hour; and into the crew's hours of that day where it is dropped by hand, since a
// day is all that a hand can aim at.
Instant PlanBoard::snapped(Instant start, bool toCrew) const
{
    const Instant midnight = m_local.startOf(m_local.dateOf(start));
    const qint64 grains = std::llround((start - midnight) / kGrain);
    Instant snappedStart = midnight + Duration::ofBase(grains * kGrain.base());
    if (!toCrew)
        return snappedStart;
    const QDate day = m_local.dateOf(start);
    std::optional<Instant> best;
    for (const WorkWindow &w : m_content.crew) {
        if (m_local.dateOf(w.start) != day)
            continue;
        const Instant last = std::max(w.start, w.end - chosenLength());
        const Instant inside = std::clamp(snappedStart, w.start, last);
        const auto away = [&](Instant t) { return std::abs((t - snappedStart).base()); };
        if (!best || away(inside) < away(*best))
            best = inside;
    }
    return best.value_or(snappedStart);
}

void PlanBoard::lift()
{
    if (!m_movable || m_current < 0 || m_content.blocks.at(m_current).started)
        return;
    m_lifted = true;
    m_target = chosenStart();
    update();
    say();
}

void PlanBoard::shift(Duration by)
{
    m_target = m_target + by;
    const QDate day = m_local.dateOf(m_target);
    if (day < m_first || day >= m_first.addDays(kDays))
        setFirst(day.addDays(-kDays / 2));
    update();
    say();
}

void PlanBoard::putDown()
{
    const Duration by = m_target - chosenStart();
    QVector<Visit> visits;
    const QVector<PlanVisit> chosen = chosenVisits();
    for (const PlanVisit &one : chosen) {
        Visit visit;
        visit.id = one.visit;
        visit.task = one.task;
        visit.start = one.start + by;
        visit.end = one.end + by;
        visits << visit;
    }
    leaveIt();
    if (by.isZero() || visits.isEmpty())
        return;
    m_awaited = true; // it stands where it was put until the new plan comes
    Q_EMIT moved(visits);
}

void PlanBoard::leaveIt()
{
    m_lifted = false;
    m_dragging = false;
    m_pressed = -1;
    update();
    say();
}

bool PlanBoard::event(QEvent *event)
{
    if (event->type() == QEvent::ShortcutOverride && m_lifted) {
        // Escape and the arrows belong to what is being moved.
        event->accept();
        return true;
    }
    if (event->type() != QEvent::ToolTip)
        return QWidget::event(event);
    auto *help = static_cast<QHelpEvent *>(event);
    const int block = blockAt(help->pos());
    const PlanFire *fire = block < 0 ? fireAt(help->pos()) : nullptr;
    showItemTip(help,
                block >= 0        ? m_content.blocks.at(block).words
                : fire != nullptr ? fire->words
                                  : QString(),
                this);
    return true;
}

void PlanBoard::mousePressEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton)
        return;
    if (m_lifted)
        leaveIt();
    m_pressed = blockAt(event->position());
    m_pressedAt = event->position();
    if (m_pressed >= 0 && m_pressed != m_current)
        setCurrent(m_pressed);
}

void PlanBoard::mouseMoveEvent(QMouseEvent *event)
{
    const QPointF at = event->position();
    if (m_pressed >= 0 && m_movable && !m_content.blocks.at(m_pressed).started &&
        (m_dragging || (at - m_pressedAt).manhattanLength() >= QApplication::startDragDistance())) {
        m_dragging = true;
        const double x = xOf(chosenStart()) + at.x() - m_pressedAt.x();
        const bool free = event->modifiers().testFlag(Qt::AltModifier);
        m_target = snapped(timeAt(std::max(measures().left, x)), !free);
        setCursor(Qt::ClosedHandCursor);
        update();
        say();
        return;
    }
    const int block = blockAt(at);
    setCursor(block >= 0 && m_movable               ? Qt::OpenHandCursor
              : block >= 0 || fireAt(at) != nullptr ? Qt::PointingHandCursor
                                                    : Qt::ArrowCursor);
    if (block != m_hovered) {
        m_hovered = block;
        update();
    }
}

void PlanBoard::mouseReleaseEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton)
        return;
    setCursor(Qt::ArrowCursor);
    if (m_dragging) {
        putDown();
        return;
    }
    const int pressed = std::exchange(m_pressed, -1);
    if (pressed >= 0)
        return;
    if (const PlanFire *fire = fireAt(event->position()); fire != nullptr)
        Q_EMIT opened(fire->link);
}

void PlanBoard::leaveEvent(QEvent *event)
{
    QWidget::leaveEvent(event);
    m_hovered = -1;
    update();
}

bool PlanBoard::moveKey(QKeyEvent *event)
{
    const bool day = event->modifiers().testFlag(Qt::ControlModifier);
    switch (event->key()) {
    case Qt::Key_Right:
        shift(day ? kDay : kGrain);
        return true;
    case Qt::Key_Left:
        shift(day ? -kDay : -kGrain);
        return true;
    case Qt::Key_Down:
        shift(kDay);
        return true;
    case Qt::Key_Up:
        shift(-kDay);
        return true;
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        putDown();
        return true;
    case Qt::Key_Escape:
        leaveIt();
        return true;
    default:
        return false;
    }
}

void PlanBoard::keyPressEvent(QKeyEvent *event)
{
    if (m_lifted && moveKey(event))
        return;
    switch (event->key()) {
    case Qt::Key_Right:
        step(1);
        return;
    case Qt::Key_Left:
        step(-1);
        return;
    case Qt::Key_Down:
        stepLane(1);
        return;
    case Qt::Key_Up:
        stepLane(-1);
        return;
    case Qt::Key_Home:
        step(-static_cast<int>(m_content.blocks.size()));
        return;
    case Qt::Key_End:
        step(static_cast<int>(m_content.blocks.size()));
        return;
    case Qt::Key_PageDown:
        setFirst(m_first.addDays(7));
        return;
    case Qt::Key_PageUp:
        setFirst(m_first.addDays(-7));
        return;
    case Qt::Key_Space:
        lift();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_current >= 0)
            Q_EMIT opened(Link{TableId::UpkeepTask, chosenVisits().first().task});
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void PlanBoard::step(int by)
{
    const int last = static_cast<int>(m_content.blocks.size()) - 1;
    if (last >= 0)
        setCurrent(m_current < 0 ? 0 : std::clamp(m_current + by, 0, last));
}

// To the block of the next lane that stands nearest.
void PlanBoard::stepLane(int by)
{
    if (m_current < 0) {
        step(1);
        return;
    }
    const PlanBlock &here = m_content.blocks.at(m_current);
    int best = -1;
    std::pair<int, qint64> bestAway;
    for (int i = 0; i < m_content.blocks.size(); ++i) {
        const PlanBlock &there = m_content.blocks.at(i);
        const int lanes = (there.lane - here.lane) * by;
        const std::pair<int, qint64> away{lanes, std::abs((there.start - here.start).base())};
        if (lanes > 0 && (best < 0 || away < bestAway)) {
            best = i;
            bestAway = away;
        }
    }
    if (best >= 0)
        setCurrent(best);
}

void PlanBoard::focusInEvent(QFocusEvent *event)
{
    QWidget::focusInEvent(event);
    if (m_current < 0 && !m_content.blocks.isEmpty() && event->reason() != Qt::MouseFocusReason)
        setCurrent(0);
    update();
}

void PlanBoard::focusOutEvent(QFocusEvent *event)
{
    QWidget::focusOutEvent(event);
    if (m_lifted)
        leaveIt();
    update();
}

} // namespace rickyard::views
