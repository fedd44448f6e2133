#include "views/widgets/section_tabs.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/fitting_stack.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QVBoxLayout>

namespace rickyard::views {

SectionTab::SectionTab(const QString &name, QWidget *parent) : QAbstractButton(parent)
{
    setText(name);
    setAccessibleName(name);
    setCheckable(true);
    setAutoExclusive(true);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    onTheme(this, [this] {
        setFont(theme(this).font(TextStyle::BodyStrong));
        updateGeometry();
    });
}

void SectionTab::setFigure(const QString &figure)
{
    if (m_figure == figure)
        return;
    m_figure = figure;
    updateGeometry();
    update();
}

QSize SectionTab::sizeHint() const
{
    const Theme &look = theme(this);
    int width = QFontMetrics(look.font(TextStyle::BodyStrong)).horizontalAdvance(text());
    if (!m_figure.isEmpty())
        width +=
            look.space(2) + QFontMetrics(look.font(TextStyle::Figures)).horizontalAdvance(m_figure);
    return {width + 2 * look.px(4), look.controlHeight() + look.px(4)};
}

void SectionTab::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const int inset = look.px(4);
    const bool strong = isChecked() || underMouse();
    painter.setFont(look.font(TextStyle::BodyStrong));
    painter.setPen(look.color(strong ? Role::Ink : Role::InkMuted));
    const QRect area = rect().adjusted(inset, 0, -inset, -look.px(4));
    painter.drawText(area, Qt::AlignLeft | Qt::AlignVCenter, text());
    if (!m_figure.isEmpty()) {
        painter.setFont(look.font(TextStyle::Figures));
        painter.setPen(look.color(Role::InkMuted));
        painter.drawText(area, Qt::AlignRight | Qt::AlignVCenter, m_figure);
    }
    if (isChecked()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Accent));
        painter.drawRect(QRect(inset, height() - look.px(3), width() - 2 * inset, look.px(3)));
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 4, -1, -look.px(5)), look.radius(),
                                look.radius());
    }
}

void SectionTab::enterEvent(QEnterEvent *event)
{
    QAbstractButton::enterEvent(event);
    update();
}

void SectionTab::leaveEvent(QEvent *event)
{
    QAbstractButton::leaveEvent(event);
    update();
}

void SectionTab::focusInEvent(QFocusEvent *event)
{
    QAbstractButton::focusInEvent(event);
    update();
}

void SectionTab::focusOutEvent(QFocusEvent *event)
{
    QAbstractButton::focusOutEvent(event);
    update();
}

SectionTabs::SectionTabs(QWidget *parent)
    : QWidget(parent), m_row(new QWidget(this)), m_stack(new FittingStack(this))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_row);
    layout->addWidget(m_stack, 1);
    m_row->setAccessibleName(tr("Sections"));
    onTheme(this, [this, layout] {
        layout->setSpacing(theme(this).space(3));
        arrange();
    });
}

int SectionTabs::addSection(const QString &name, QWidget *page)
{
    auto *tab = new SectionTab(name, m_row);
    tab->installEventFilter(this);
    tab->show();
    const int index = m_stack->addWidget(page);
    m_tabs.append(tab);
    connect(tab, &QAbstractButton::clicked, this, [this, index] { setCurrent(index); });
    if (index == 0)
        tab->setChecked(true);
    describe();
    arrange();
    return index;
}

int SectionTabs::current() const
{
    return m_stack->currentIndex();
}

QWidget *SectionTabs::page(int index) const
{
    return m_stack->widget(index);
}

void SectionTabs::setFigure(int index, const QString &figure)
{
    if (SectionTab *tab = m_tabs.value(index)) {
        tab->setFigure(figure);
        arrange();
    }
}

void SectionTabs::setCurrent(int index)
{
    if (index < 0 || index >= count())
        return;
    m_tabs.at(index)->setChecked(true);
    if (index == m_stack->currentIndex())
        return;
    m_stack->setCurrentIndex(index);
    describe();
    Q_EMIT currentChanged(index);
}

bool SectionTabs::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    int to = static_cast<int>(m_tabs.indexOf(static_cast<SectionTab *>(watched)));
    const bool mirrored = isRightToLeft();
    switch (static_cast<QKeyEvent *>(event)->key()) {
    case Qt::Key_Left:
        to += mirrored ? 1 : -1;
        break;
    case Qt::Key_Right:
        to += mirrored ? -1 : 1;
        break;
    case Qt::Key_Home:
        to = 0;
        break;
    case Qt::Key_End:
        to = count() - 1;
        break;
    default:
        return QWidget::eventFilter(watched, event);
    }
    to = (to + count()) % count();
    setCurrent(to);
    m_tabs.at(to)->setFocus(Qt::TabFocusReason);
    return true;
}

// Only the current name takes the tab key; a reader hears where in the row it stands.
void SectionTabs::describe()
{
    for (int i = 0; i < count(); ++i) {
        const bool here = i == m_stack->currentIndex();
        m_tabs.at(i)->setFocusPolicy(here ? Qt::StrongFocus : Qt::ClickFocus);
        m_tabs.at(i)->setAccessibleDescription(
            tr("Section %1 of %2%3").arg(i + 1).arg(count()).arg(here ? tr(", shown") : QString()));
    }
}

int SectionTabs::rowHeight() const
{
    return m_tabs.isEmpty() ? 0 : m_tabs.first()->sizeHint().height();
}

void SectionTabs::arrange()
{
    const Theme &look = theme(this);
    const int gap = look.space(4);
    int x = 0;
    int y = 0;
    for (SectionTab *tab : std::as_const(m_tabs)) {
        const QSize size = tab->sizeHint();
        if (x > 0 && x + size.width() > width()) {
            x = 0;
            y += rowHeight();
        }
        tab->setGeometry(QStyle::visualRect(layoutDirection(), QRect(0, 0, width(), 0),
                                            QRect(QPoint(x, y), size)));
        x += size.width() + gap;
    }
    m_row->setFixedHeight(y + rowHeight());
    update();
}

void SectionTabs::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrange();
}

QSize SectionTabs::minimumSizeHint() const
{
    int widest = 0;
    for (const SectionTab *tab : m_tabs)
        widest = qMax(widest, tab->sizeHint().width());
    const QSize page = m_stack->minimumSizeHint();
    return {qMax(widest, page.width()), m_row->height() + page.height()};
}

void SectionTabs::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.fillRect(QRect(0, m_row->height() - 1, width(), 1), theme(this).color(Role::Hairline));
}

} // namespace rickyard::views
