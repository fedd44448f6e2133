#include "views/wood/rick_view.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/item_tip.h"
#include "views/widgets/shape_glyph.h"
#include "views/wood/rick_paint.h"
#include "views/wood/wood_words.h"

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>

namespace rickyard::views {

using domain::Cover;
using domain::Lot;
using domain::Readiness;

namespace {

QString coverWord(Cover cover)
{
    switch (cover) {
    case Cover::Open:
        return RickView::tr("open rick");
    case Cover::TopCover:
        return RickView::tr("top cover");
    case Cover::Shed:
        return RickView::tr("in the shed");
    case Cover::KilnDried:
        return RickView::tr("kiln-dried, kept dry");
    }
    return {};
}

} // namespace

QString RickStack::sentence() const
{
    QStringList parts{name, readinessWord(readiness), moisture, amount, coverWord(cover)};
    if (hold && readiness != Readiness::OnHold)
        parts << RickView::tr("on hold");
    return parts.join(QStringLiteral(", "));
}

QVector<RickStack> rickStacks(const domain::Books &books, const domain::Stock &stock)
{
    const bool metric = books.yard().metric;
    QVector<RickStack> stacks;
    for (const domain::LotStock &s : stock.lots) {
        if (s.readiness == Readiness::Empty || !books.lots.contains(s.lot))
            continue;
        const Lot lot = books.lots.value(s.lot);
        RickStack stack;
        stack.lot = s.lot;
        stack.name = lot.name;
        stack.moisture = s.moisture ? dryBasis(*s.moisture) : RickView::tr("not read");
        stack.amount = stackedAmount(s.stacked, metric).text();
        stack.cubicFeet = qMax(0.0, domain::cubicFeet(s.stacked));
        stack.dryPercent = s.moisture ? 100 * domain::dryFraction(*s.moisture) : -1;
        stack.readiness = s.readiness;
        stack.cover = lot.cover;
        stack.hold = lot.hold;
        stacks << stack;
    }
    std::stable_sort(stacks.begin(), stacks.end(), [](const RickStack &a, const RickStack &b) {
        return a.readiness < b.readiness;
    });
    return stacks;
}

RickView::RickView(QWidget *parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("The ricks"));
    onTheme(this, [this] { arrange(); });
}

void RickView::setStacks(const QVector<RickStack> &stacks)
{
    const domain::RecordId kept = focused();
    m_stacks = stacks;
    m_focused = 0;
    for (int i = 0; i < m_stacks.size(); ++i)
        if (m_stacks.at(i).lot == kept)
            m_focused = i;
    m_hovered = -1;
    arrange();
    describe();
}

void RickView::setChosen(domain::RecordId lot)
{
    m_chosen = lot;
    for (int i = 0; i < m_stacks.size(); ++i)
        if (m_stacks.at(i).lot == lot)
            m_focused = i;
    update();
}

domain::RecordId RickView::focused() const
{
    return m_focused < m_stacks.size() ? m_stacks.at(m_focused).lot : 0;
}

QRect RickView::cellOf(domain::RecordId lot) const
{
    for (int i = 0; i < m_stacks.size() && i < m_cells.size(); ++i)
        if (m_stacks.at(i).lot == lot)
            return m_cells.at(i).area;
    return {};
}

int RickView::place(int width, QVector<Cell> &cells) const
{
    const Theme &look = theme(this);
    const QFontMetrics caption(look.font(TextStyle::Caption));
    const QFontMetrics strong(look.font(TextStyle::BodyStrong));
    const int gap = look.space(4);
    const int words = look.px(132);
    const int height = look.space(2) + paint::coverHeight(look) + look.px(76) + look.space(2) +
                       strong.lineSpacing() + 2 * caption.lineSpacing() + look.space(2);
    double widest = 0;
    for (const RickStack &stack : m_stacks)
        widest = qMax(widest, stack.cubicFeet);
    const double full = qMin(look.px(280), qMax(words, width / 3));
    int x = 0;
    int y = 0;
    for (const RickStack &stack : m_stacks) {
        Cell cell;
        cell.stackWidth =
            widest <= 0 ? look.px(14)
                        : qMax(look.px(14), static_cast<int>(full * stack.cubicFeet / widest));
        const int cellWidth = qMax(words, cell.stackWidth + look.space(5));
        if (x > 0 && x + cellWidth > width) {
            x = 0;
            y += height + gap;
        }
        cell.area = QRect(x, y, qMin(cellWidth, width), height);
        cells << cell;
        x += cellWidth + gap;
    }
    return m_stacks.isEmpty() ? 0 : y + height;
}

void RickView::arrange()
{
    m_cells.clear();
    place(qMax(1, width()), m_cells);
    updateGeometry();
    update();
}

int RickView::heightForWidth(int width) const
{
    QVector<Cell> cells;
    return place(qMax(1, width), cells);
}

QSize RickView::sizeHint() const
{
    return {theme(this).px(600), heightForWidth(width() > 100 ? width() : theme(this).px(900))};
}

QSize RickView::minimumSizeHint() const
{
    return {theme(this).px(150), heightForWidth(width() > 100 ? width() : theme(this).px(900))};
}

void RickView::paintCell(QPainter &painter, int index) const
{
    const Theme &look = theme(this);
    const RickStack &stack = m_stacks.at(index);
    const Cell &cell = m_cells.at(index);
    const QRect area = cell.area;
    painter.setRenderHint(QPainter::Antialiasing);
    if (stack.lot == m_chosen || index == m_hovered) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(stack.lot == m_chosen ? Role::Selection : Role::Hover));
        painter.drawRoundedRect(area, look.radius(), look.radius());
    }
    const int inset = look.space(2) + look.px(2);
    const QRectF wood(area.left() + inset, area.top() + look.space(2) + paint::coverHeight(look),
                      cell.stackWidth, look.px(76));
    paint::rick(painter, wood, stack, look);
    QRect line(area.left() + inset, static_cast<int>(wood.bottom()) + look.space(2),
               area.width() - 2 * inset, 0);
    const auto write = [&](const QFont &font, Role role, const QString &text, int indent) {
        const QFontMetrics metrics(font);
        line.setHeight(metrics.lineSpacing());
        painter.setFont(font);
        painter.setPen(look.color(role));
        const QRect box = line.adjusted(indent, 0, 0, 0);
        painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(text, Qt::ElideRight, box.width()));
        line.translate(0, line.height());
    };
    write(look.font(TextStyle::BodyStrong), Role::Ink, stack.name, 0);
    const double side = look.px(11);
    const QFontMetrics caption(look.font(TextStyle::Caption));
    const Role role = readinessRole(stack.readiness);
    paintShape(&painter,
               QRectF(line.left(), line.top() + (caption.lineSpacing() - side) / 2, side, side),
               role, look.color(role));
    write(look.font(TextStyle::Caption), Role::Ink, readinessWord(stack.readiness), look.px(16));
    write(look.font(TextStyle::Caption), Role::InkMuted,
          QString(stack.moisture + QStringLiteral(" · ") + stack.amount), 0);
    if (hasFocus() && index == m_focused) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(QRectF(area).adjusted(1, 1, -1, -1), look.radius(), look.radius());
    }
}

void RickView::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    for (int i = 0; i < m_cells.size(); ++i)
        paintCell(painter, i);
}

int RickView::at(const QPoint &point) const
{
    for (int i = 0; i < m_cells.size(); ++i)
        if (m_cells.at(i).area.contains(point))
            return i;
    return -1;
}

void RickView::mousePressEvent(QMouseEvent *event)
{
    const int index = at(event->pos());
    if (index < 0 || event->button() != Qt::LeftButton)
        return;
    focusOn(index);
    Q_EMIT opened(m_stacks.at(index).lot);
}

void RickView::mouseMoveEvent(QMouseEvent *event)
{
    const int index = at(event->pos());
    setCursor(index < 0 ? Qt::ArrowCursor : Qt::PointingHandCursor);
    if (index != m_hovered) {
        m_hovered = index;
        update();
    }
}

void RickView::leaveEvent(QEvent *event)
{
    QWidget::leaveEvent(event);
    m_hovered = -1;
    update();
}

void RickView::keyPressEvent(QKeyEvent *event)
{
    const int last = static_cast<int>(m_stacks.size()) - 1;
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Up:
        focusOn(qMax(0, m_focused - 1));
        return;
    case Qt::Key_Right:
    case Qt::Key_Down:
        focusOn(qMin(last, m_focused + 1));
        return;
    case Qt::Key_Home:
        focusOn(0);
        return;
    case Qt::Key_End:
        focusOn(last);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (focused() != 0)
            Q_EMIT opened(focused());
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void RickView::focusOn(int index)
{
    if (index < 0 || index >= m_stacks.size())
        return;
    m_focused = index;
    describe();
    update();
}

// The stack in focus first, then the whole picture in one sentence each.
void RickView::describe()
{
    QStringList lines;
    if (m_focused < m_stacks.size())
        lines << tr("%1 of %2: %3.")
                     .arg(m_focused + 1)
                     .arg(m_stacks.size())
                     .arg(m_stacks.at(m_focused).sentence());
    for (int i = 0; i < m_stacks.size(); ++i)
        if (i != m_focused)
            lines << QString(m_stacks.at(i).sentence() + QLatin1Char('.'));
    setAccessibleDescription(lines.isEmpty() ? tr("No wood on hand.")
                                             : lines.join(QLatin1Char(' ')));
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
}

void RickView::focusInEvent(QFocusEvent *event)
{
    QWidget::focusInEvent(event);
    update();
}

void RickView::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void RickView::changeEvent(QEvent *event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        arrange();
}

bool RickView::event(QEvent *event)
{
    if (event->type() == QEvent::ToolTip) {
        auto *help = static_cast<QHelpEvent *>(event);
        const int index = at(help->pos());
        showItemTip(help, index < 0 ? QString() : m_stacks.at(index).sentence(), this);
        return true;
    }
    return QWidget::event(event);
}

} // namespace rickyard::views
