#include "views/theme/style.h"

#include "views/theme/icons.h"
#include "views/theme/style_paint.h"
#include "views/theme/theme_hub.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QCalendarWidget>
#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QScrollBar>
#include <QTabBar>
#include <QTableView>
#include <QTextCharFormat>
#include <QTextEdit>
#include <QTreeView>
#include <QVariant>

namespace rickyard::views {

void setButtonKind(QAbstractButton *button, ButtonKind kind)
{
    static const char *const names[] = {"", "primary", "quiet", "danger"};
    button->setProperty("role", QLatin1String(names[static_cast<int>(kind)]));
    button->update();
}

void setInvalid(QWidget *editor, bool invalid)
{
    if (isInvalid(editor) == invalid)
        return;
    editor->setProperty("invalid", invalid);
    editor->update();
}

bool isInvalid(const QWidget *editor)
{
    return editor != nullptr && editor->property("invalid").toBool();
}

RickyardStyle::RickyardStyle() : QProxyStyle(QStringLiteral("Fusion"))
{
    setObjectName(QStringLiteral("rickyard"));
}

void RickyardStyle::polish(QWidget *widget)
{
    QProxyStyle::polish(widget);
    if (qobject_cast<QAbstractButton *>(widget) != nullptr ||
        qobject_cast<QLineEdit *>(widget) != nullptr ||
        qobject_cast<QComboBox *>(widget) != nullptr ||
        qobject_cast<QAbstractSpinBox *>(widget) != nullptr ||
        qobject_cast<QScrollBar *>(widget) != nullptr ||
        qobject_cast<QTabBar *>(widget) != nullptr ||
        qobject_cast<QHeaderView *>(widget) != nullptr)
        widget->setAttribute(Qt::WA_Hover);
    if (auto *table = qobject_cast<QTableView *>(widget)) {
        const bool calendar = qobject_cast<QCalendarWidget *>(table->parentWidget()) != nullptr;
        table->setShowGrid(false);
        table->setWordWrap(false);
        if (!calendar) {
            table->verticalHeader()->setVisible(false);
            table->verticalHeader()->setDefaultSectionSize(theme(widget).rowHeight());
            table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        }
        table->horizontalHeader()->setHighlightSections(false);
    }
    // The field painted behind is the ground of the text.
    if (auto *area = qobject_cast<QAbstractScrollArea *>(widget);
        area != nullptr && (qobject_cast<QPlainTextEdit *>(widget) != nullptr ||
                            qobject_cast<QTextEdit *>(widget) != nullptr))
        area->viewport()->setAutoFillBackground(false);
    if (auto *calendar = qobject_cast<QCalendarWidget *>(widget)) {
        QTextCharFormat plain;
        plain.setForeground(theme(widget).color(Role::InkMuted));
        calendar->setWeekdayTextFormat(Qt::Saturday, plain);
        calendar->setWeekdayTextFormat(Qt::Sunday, plain);
        calendar->setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
    }
    if (auto *view = qobject_cast<QAbstractItemView *>(widget))
        view->viewport()->setAttribute(Qt::WA_Hover);
}

QIcon RickyardStyle::standardIcon(StandardPixmap which, const QStyleOption *option,
                                  const QWidget *widget) const
{
    switch (which) {
    case SP_MessageBoxWarning:
        return icon(QStringLiteral("warning"), Role::Watch);
    case SP_MessageBoxCritical:
        return icon(QStringLiteral("warning"), Role::Act);
    case SP_MessageBoxInformation:
    case SP_MessageBoxQuestion:
        return icon(QStringLiteral("info"), Role::Info);
    case SP_ArrowLeft:
    case SP_ArrowBack:
        return icon(QStringLiteral("previous"), Role::InkMuted);
    case SP_ArrowRight:
    case SP_ArrowForward:
        return icon(QStringLiteral("next"), Role::InkMuted);
    case SP_LineEditClearButton:
    case SP_TitleBarCloseButton:
        return icon(QStringLiteral("close"), Role::InkMuted);
    default:
        return QProxyStyle::standardIcon(which, option, widget);
    }
}

void RickyardStyle::drawItemRow(const QStyleOption *option, QPainter *painter,
                                const QWidget *widget) const
{
    const Theme &look = theme(widget);
    const bool enabled = option->state & State_Enabled;
    if (option->state & State_Selected)
        painter->fillRect(option->rect, look.color(Role::Selection));
    else if (enabled && (option->state & State_MouseOver))
        painter->fillRect(option->rect, look.color(Role::Hover));
}

void RickyardStyle::drawPrimitive(PrimitiveElement element, const QStyleOption *option,
                                  QPainter *painter, const QWidget *widget) const
{
    const Theme &look = theme(widget);
    const QRectF box(option->rect);
    switch (element) {
    case PE_PanelButtonCommand:
        paint::buttonPanel(option, painter, widget);
        return;
    case PE_PanelButtonTool:
        paint::toolButtonPanel(option, painter, widget);
        return;
    case PE_PanelLineEdit: {
        const auto *frame = qstyleoption_cast<const QStyleOptionFrame *>(option);
        if (frame != nullptr && frame->lineWidth > 0)
            paint::field(painter, option->rect, option, widget);
        return;
    }
    case PE_Frame:
        if (qobject_cast<const QPlainTextEdit *>(widget) != nullptr ||
            qobject_cast<const QTextEdit *>(widget) != nullptr) {
            QStyleOption own(*option);
            if (widget->hasFocus())
                own.state |= State_HasFocus;
            paint::field(painter, option->rect, &own, widget);
        }
        return;
    case PE_FrameMenu:
        painter->setPen(look.color(Role::FieldEdge));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
        return;
    case PE_PanelMenu:
        painter->fillRect(option->rect, look.color(Role::SurfaceRaised));
        return;
    case PE_PanelTipLabel:
        painter->fillRect(option->rect, look.color(Role::SurfaceRaised));
        painter->setPen(look.color(Role::FieldEdge));
        painter->drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
        return;
    case PE_PanelMenuBar:
    case PE_FrameLineEdit:
    case PE_FrameDefaultButton:
    case PE_FrameTabWidget:
    case PE_FrameStatusBarItem:
    case PE_FrameGroupBox:
    case PE_FrameDockWidget:
    case PE_PanelItemViewRow:
    case PE_IndicatorTabClose:
        if (element == PE_PanelItemViewRow)
            drawItemRow(option, painter, widget);
        return;
    case PE_PanelItemViewItem:
        drawItemRow(option, painter, widget);
        return;
    case PE_FrameTabBarBase:
        painter->fillRect(
            QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1),
            look.color(Role::Hairline));
        return;
    case PE_FrameFocusRect:
        // Buttons and fields carry their own ring; check boxes and cells get this one.
        if (qobject_cast<const QTabBar *>(widget) == nullptr)
            paint::panel(painter, box.adjusted(1, 1, -1, -1), look.px(4), QColor(),
                         look.color(Role::Focus), look.px(1.5));
        return;
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        paint::checkBox(option, painter, widget);
        return;
    case PE_IndicatorRadioButton:
        paint::radioButton(option, painter, widget);
        return;
    case PE_IndicatorArrowUp:
    case PE_IndicatorArrowDown:
    case PE_IndicatorArrowLeft:
    case PE_IndicatorArrowRight: {
        const auto direction = element == PE_IndicatorArrowUp     ? paint::Direction::Up
                               : element == PE_IndicatorArrowDown ? paint::Direction::Down
                               : element == PE_IndicatorArrowLeft ? paint::Direction::Left
                                                                  : paint::Direction::Right;
        paint::chevron(painter, box, direction, look.color(Role::InkMuted), look.px(1.5));
        return;
    }
    case PE_IndicatorHeaderArrow: {
        const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
        const bool up = header != nullptr && header->sortIndicator == QStyleOptionHeader::SortUp;
        paint::chevron(painter, box, up ? paint::Direction::Up : paint::Direction::Down,
                       look.color(Role::Accent), look.px(1.75));
        return;
    }
    case PE_IndicatorBranch:
        drawItemRow(option, painter, widget);
        if (option->state & State_Children) {
            const double side = look.px(16);
            const QRectF square(box.center().x() - side / 2, box.center().y() - side / 2, side,
                                side);
            paint::chevron(painter, square,
                           option->state & State_Open ? paint::Direction::Down
                                                      : paint::Direction::Right,
                           look.color(Role::InkMuted), look.px(1.5));
        }
        return;
    default:
        QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

} // namespace rickyard::views
