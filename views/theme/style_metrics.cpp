// Lengths, hints and sizes of the style.
#include "views/theme/style.h"

#include "views/theme/theme_hub.h"

#include <QAbstractSpinBox>
#include <QCalendarWidget>
#include <QComboBox>
#include <QPlainTextEdit>
#include <QStyleOption>
#include <QTextEdit>

namespace rickyard::views {

int RickyardStyle::pixelMetric(PixelMetric metric, const QStyleOption *option,
                               const QWidget *widget) const
{
    const Theme &look = theme(widget);
    switch (metric) {
    case PM_ButtonMargin:
        return look.space(4);
    case PM_ButtonIconSize:
    case PM_SmallIconSize:
    case PM_ListViewIconSize:
    case PM_TabBarIconSize:
        return look.px(18);
    case PM_ToolBarIconSize:
        return look.iconSize();
    case PM_MessageBoxIconSize:
    case PM_LargeIconSize:
        return look.px(32);
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
    case PM_TabBarTabShiftVertical:
    case PM_TabBarBaseOverlap:
    case PM_TabBarTabOverlap:
    case PM_MenuBarPanelWidth:
        return 0;
    case PM_DefaultFrameWidth:
        if (qobject_cast<const QPlainTextEdit *>(widget) != nullptr ||
            qobject_cast<const QTextEdit *>(widget) != nullptr)
            return look.px(6);
        return qobject_cast<const QAbstractScrollArea *>(widget) != nullptr ? 0 : look.px(1);
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return look.px(18);
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
        return look.space(2);
    case PM_SliderThickness:
    case PM_SliderControlThickness:
    case PM_SliderLength:
        return look.px(24);
    case PM_ScrollBarExtent:
        return look.px(12);
    case PM_ScrollBarSliderMin:
        return look.px(32);
    case PM_SplitterWidth:
        return look.space(4);
    case PM_FocusFrameHMargin:
        return qobject_cast<const QCalendarWidget *>(widget != nullptr ? widget->parentWidget()
                                                                       : nullptr) != nullptr
                   ? look.px(2)
                   : look.space(3) - 1;
    case PM_HeaderMargin:
        return look.space(3);
    case PM_HeaderMarkSize:
        return look.px(14);
    case PM_HeaderDefaultSectionSizeHorizontal:
        return look.px(120);
    case PM_HeaderDefaultSectionSizeVertical:
        return look.rowHeight();
    case PM_TabBarTabHSpace:
        return look.space(4) + look.space(3);
    case PM_TabBarTabVSpace:
        return look.space(4) + look.px(4);
    case PM_MenuPanelWidth:
        return 1;
    case PM_MenuVMargin:
        return look.px(5);
    case PM_MenuHMargin:
        return 0;
    case PM_MenuBarItemSpacing:
        return look.px(2);
    case PM_ToolTipLabelFrameWidth:
        return look.px(7);
    case PM_LayoutLeftMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutBottomMargin:
        return look.space(4);
    case PM_LayoutHorizontalSpacing:
        return look.space(3);
    case PM_LayoutVerticalSpacing:
        return look.space(2) + look.px(2);
    case PM_TextCursorWidth:
        return look.px(1.5);
    case PM_TreeViewIndentation:
        return look.px(22);
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int RickyardStyle::styleHint(StyleHint hint, const QStyleOption *option, const QWidget *widget,
                             QStyleHintReturn *returned) const
{
    switch (hint) {
    case SH_EtchDisabledText:
    case SH_DialogButtonBox_ButtonsHaveIcons:
    case SH_MessageBox_CenterButtons:
    case SH_ComboBox_Popup:
    case SH_Widget_Animation_Duration:
    case SH_ScrollBar_Transient:
        return 0;
    case SH_ItemView_ShowDecorationSelected:
    case SH_ScrollBar_LeftClickAbsolutePosition:
        return 1;
    case SH_Table_GridLineColor:
        return static_cast<int>(theme(widget).color(Role::Hairline).rgb());
    case SH_ToolTip_WakeUpDelay:
        return 450;
    default:
        return QProxyStyle::styleHint(hint, option, widget, returned);
    }
}

QSize RickyardStyle::sizeFromContents(ContentsType type, const QStyleOption *option,
                                      const QSize &size, const QWidget *widget) const
{
    const Theme &look = theme(widget);
    switch (type) {
    case CT_PushButton: {
        const auto *button = qstyleoption_cast<const QStyleOptionButton *>(option);
        int width = size.width() + 2 * look.space(4);
        if (button != nullptr && !button->icon.isNull())
            width += look.space(1);
        if (button != nullptr && (button->features & QStyleOptionButton::HasMenu))
            width += look.px(14);
        return {width, std::max(size.height() + look.space(3), look.controlHeight())};
    }
    case CT_ToolButton:
        return {std::max(size.width() + look.space(3), look.controlHeight()),
                std::max(size.height() + look.space(2), look.controlHeight())};
    case CT_LineEdit:
        return {size.width() + 2 * look.space(2),
                std::max(size.height() + look.space(3), look.controlHeight())};
    case CT_ComboBox:
        return {size.width() + look.space(3) + look.px(30),
                std::max(size.height() + look.space(3), look.controlHeight())};
    case CT_SpinBox:
        // The editor inside has its own padding already.
        return {size.width() + look.space(3) + look.px(26),
                std::max(size.height(), look.controlHeight())};
    case CT_MenuItem: {
        const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(option);
        if (item != nullptr && item->menuItemType == QStyleOptionMenuItem::Separator)
            return {look.px(10), look.px(11)};
        const bool shortcut = item != nullptr && item->text.contains(u'\t');
        return {size.width() + look.space(3) + look.px(18) + look.space(2) + look.space(6) +
                    (shortcut ? look.space(6) : 0),
                std::max(size.height() + look.space(2), look.px(32))};
    }
    case CT_MenuBarItem:
        return {size.width() + 2 * look.px(10), size.height() + look.px(14)};
    case CT_HeaderSection: {
        const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
        const QFontMetrics metrics(look.font(TextStyle::Caption));
        const int text = header == nullptr ? size.width() : metrics.horizontalAdvance(header->text);
        return {text + 2 * look.space(3) + look.px(18),
                std::max(metrics.height() + look.space(3), look.px(36))};
    }
    case CT_ItemViewItem: {
        QSize wanted = QProxyStyle::sizeFromContents(type, option, size, widget);
        wanted.setHeight(std::max(wanted.height() + look.px(6), look.px(32)));
        return wanted;
    }
    case CT_ProgressBar:
        return {size.width(), std::max(size.height(), look.px(20))};
    default:
        return QProxyStyle::sizeFromContents(type, option, size, widget);
    }
}

QRect RickyardStyle::subElementRect(SubElement element, const QStyleOption *option,
                                    const QWidget *widget) const
{
    const Theme &look = theme(widget);
    switch (element) {
    case SE_LineEditContents: {
        const auto *frame = qstyleoption_cast<const QStyleOptionFrame *>(option);
        if (frame == nullptr || frame->lineWidth <= 0)
            return option->rect;
        return option->rect.adjusted(look.space(2) + 1, 1, -look.space(2) - 1, -1);
    }
    case SE_HeaderLabel:
    case SE_HeaderArrow: {
        const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
        const QRect inner = option->rect.adjusted(look.space(3), 0, -look.space(3), 0);
        if (header == nullptr || header->sortIndicator == QStyleOptionHeader::None)
            return inner;
        // The mark stands on the side away from the figures, so that heads stay above columns.
        const int mark = look.px(14);
        const bool right = header->textAlignment & Qt::AlignRight;
        const int text =
            QFontMetrics(look.font(TextStyle::Caption)).horizontalAdvance(header->text);
        if (element == SE_HeaderLabel)
            return right ? inner.adjusted(mark + look.px(2), 0, 0, 0)
                         : inner.adjusted(0, 0, -mark - look.px(2), 0);
        const int left = right ? std::max(inner.left(), inner.right() - text - mark - look.px(3))
                               : std::min(inner.right() - mark, inner.left() + text + look.px(4));
        return {left, inner.center().y() - mark / 2 + 1, mark, mark};
    }
    default:
        return QProxyStyle::subElementRect(element, option, widget);
    }
}

QRect RickyardStyle::subControlRect(ComplexControl control, const QStyleOptionComplex *option,
                                    SubControl part, const QWidget *widget) const
{
    const Theme &look = theme(widget);
    const QRect rect = option->rect;
    const int arrow = look.px(30);
    const int pad = look.space(2) + 1;
    if (control == CC_ComboBox) {
        if (part == SC_ComboBoxArrow)
            return visualRect(option->direction, rect,
                              QRect(rect.right() - arrow + 1, rect.top(), arrow, rect.height()));
        if (part == SC_ComboBoxEditField)
            return visualRect(option->direction, rect,
                              rect.adjusted(pad, look.px(2), -arrow, -look.px(2)));
    }
    if (control == CC_SpinBox) {
        const auto *spin = qstyleoption_cast<const QStyleOptionSpinBox *>(option);
        const bool bare = spin != nullptr && spin->buttonSymbols == QAbstractSpinBox::NoButtons;
        const int width = bare ? 0 : look.px(26);
        const int half = rect.height() / 2;
        const QRect column(rect.right() - width + 1, rect.top(), width, rect.height());
        switch (part) {
        case SC_SpinBoxUp:
            return bare ? QRect()
                        : visualRect(option->direction, rect,
                                     column.adjusted(0, look.px(4), 0, half - rect.height()));
        case SC_SpinBoxDown:
            return bare ? QRect()
                        : visualRect(option->direction, rect,
                                     column.adjusted(0, half, 0, -look.px(4)));
        case SC_SpinBoxEditField:
            return visualRect(
                option->direction, rect,
                rect.adjusted(pad - look.px(2), look.px(2), bare ? -pad : -width, -look.px(2)));
        default:
            break;
        }
    }
    if (control == CC_ScrollBar) {
        const auto *slider = qstyleoption_cast<const QStyleOptionSlider *>(option);
        if (slider != nullptr && (part == SC_ScrollBarAddLine || part == SC_ScrollBarSubLine))
            return {};
        if (slider != nullptr && part == SC_ScrollBarGroove)
            return rect;
        if (slider != nullptr && part == SC_ScrollBarSlider) {
            const bool upright = slider->orientation == Qt::Vertical;
            const int length = upright ? rect.height() : rect.width();
            const double range = static_cast<double>(slider->maximum) - slider->minimum;
            const double whole = range + slider->pageStep;
            const int handle = range <= 0
                                   ? length
                                   : std::max(std::min(length, look.px(32)),
                                              static_cast<int>(length * slider->pageStep / whole));
            const int at =
                sliderPositionFromValue(slider->minimum, slider->maximum, slider->sliderPosition,
                                        length - handle, slider->upsideDown);
            return upright ? QRect(rect.left(), rect.top() + at, rect.width(), handle)
                           : QRect(rect.left() + at, rect.top(), handle, rect.height());
        }
    }
    return QProxyStyle::subControlRect(control, option, part, widget);
}

} // namespace rickyard::views
