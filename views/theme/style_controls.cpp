// The composed elements of the style: controls, and what is handed on to Fusion in our colours.
#include "views/theme/style.h"

#include "views/theme/style_paint.h"
#include "views/theme/theme_hub.h"

#include <QAbstractItemView>
#include <QPainter>

namespace rickyard::views {

namespace {

// Fusion writes a button's text in the palette's ButtonText: give it the ink of the kind.
void drawButtonLabel(const RickyardStyle *style, const QStyleOption *option, QPainter *painter,
                     const QWidget *widget)
{
    const auto *button = qstyleoption_cast<const QStyleOptionButton *>(option);
    if (button == nullptr)
        return;
    const Theme &look = theme(widget);
    QStyleOptionButton own(*button);
    ButtonKind kind = paint::kindOf(widget);
    if (kind == ButtonKind::Plain && (button->features & QStyleOptionButton::DefaultButton))
        kind = ButtonKind::Primary;
    const bool enabled = button->state & QStyle::State_Enabled;
    const Role ink = !enabled                      ? Role::InkFaint
                     : kind == ButtonKind::Primary ? Role::AccentInk
                     : kind == ButtonKind::Danger  ? Role::Act
                     : kind == ButtonKind::Quiet   ? Role::Accent
                                                   : Role::Ink;
    const int side = look.px(18);
    const int gap = button->icon.isNull() ? 0 : look.space(2);
    const int textWidth = button->fontMetrics.size(Qt::TextShowMnemonic, button->text).width();
    const int whole = textWidth + (button->icon.isNull() ? 0 : side + gap);
    QRect box = button->rect;
    int left = box.center().x() - whole / 2;
    painter->save();
    if (!button->icon.isNull()) {
        const QRect place(button->text.isEmpty() ? box.center().x() - side / 2 : left,
                          box.center().y() - side / 2 + 1, side, side);
        QPixmap picture =
            button->icon.pixmap(place.size() * painter->device()->devicePixelRatioF());
        picture.setDevicePixelRatio(painter->device()->devicePixelRatioF());
        // An icon upon the accent has to take the accent's ink.
        QPainter tint(&picture);
        tint.setCompositionMode(QPainter::CompositionMode_SourceIn);
        tint.fillRect(picture.rect(), look.color(ink));
        tint.end();
        painter->drawPixmap(place, picture);
        left += side + gap;
    }
    painter->setPen(look.color(ink));
    const bool underline = style->styleHint(QStyle::SH_UnderlineShortcut, option, widget) != 0;
    painter->drawText(QRect(left, box.top(), textWidth + 1, box.height()),
                      Qt::AlignLeft | Qt::AlignVCenter |
                          (underline ? Qt::TextShowMnemonic : Qt::TextHideMnemonic),
                      button->text);
    if (button->features & QStyleOptionButton::HasMenu)
        paint::chevron(painter,
                       QRectF(box.right() - look.px(22), box.center().y() - look.px(7), look.px(14),
                              look.px(14)),
                       paint::Direction::Down, look.color(ink), look.px(1.5));
    painter->restore();
}

void drawTabLabel(const RickyardStyle *style, const QStyleOption *option, QPainter *painter,
                  const QWidget *widget)
{
    const auto *tab = qstyleoption_cast<const QStyleOptionTab *>(option);
    if (tab == nullptr)
        return;
    const Theme &look = theme(widget);
    const bool enabled = tab->state & QStyle::State_Enabled;
    const bool selected = tab->state & QStyle::State_Selected;
    painter->save();
    painter->setPen(look.color(!enabled ? Role::InkFaint : selected ? Role::Ink : Role::InkMuted));
    const bool underline = style->styleHint(QStyle::SH_UnderlineShortcut, option, widget) != 0;
    painter->drawText(tab->rect,
                      Qt::AlignCenter | (underline ? Qt::TextShowMnemonic : Qt::TextHideMnemonic),
                      tab->text);
    painter->restore();
}

} // namespace

void RickyardStyle::drawControl(ControlElement element, const QStyleOption *option,
                                QPainter *painter, const QWidget *widget) const
{
    const Theme &look = theme(widget);
    switch (element) {
    case CE_PushButtonLabel:
        drawButtonLabel(this, option, painter, widget);
        return;
    case CE_PushButtonBevel:
        proxy()->drawPrimitive(PE_PanelButtonCommand, option, painter, widget);
        return;
    case CE_PushButton:
        proxy()->drawControl(CE_PushButtonBevel, option, painter, widget);
        proxy()->drawControl(CE_PushButtonLabel, option, painter, widget);
        return;
    case CE_ComboBoxLabel: {
        const auto *combo = qstyleoption_cast<const QStyleOptionComboBox *>(option);
        if (combo == nullptr)
            return;
        // A long choice ends in an ellipsis rather than in half a letter.
        QStyleOptionComboBox part(*combo);
        const QRect field = subControlRect(CC_ComboBox, combo, SC_ComboBoxEditField, widget);
        part.currentText = combo->fontMetrics.elidedText(combo->currentText, Qt::ElideRight,
                                                         field.width() - look.px(4));
        QProxyStyle::drawControl(element, &part, painter, widget);
        return;
    }
    case CE_TabBarTabShape:
        paint::tabShape(option, painter, widget);
        return;
    case CE_TabBarTabLabel:
        drawTabLabel(this, option, painter, widget);
        return;
    case CE_Header: {
        const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
        if (header == nullptr)
            return;
        paint::headerSection(option, painter, widget);
        QStyleOptionHeader part(*header);
        part.rect = subElementRect(SE_HeaderLabel, header, widget);
        paint::headerLabel(&part, painter, widget);
        if (header->sortIndicator != QStyleOptionHeader::None) {
            part.rect = subElementRect(SE_HeaderArrow, header, widget);
            drawPrimitive(PE_IndicatorHeaderArrow, &part, painter, widget);
        }
        return;
    }
    case CE_HeaderSection:
        paint::headerSection(option, painter, widget);
        return;
    case CE_HeaderLabel:
        paint::headerLabel(option, painter, widget);
        return;
    case CE_HeaderEmptyArea:
        painter->fillRect(option->rect, look.color(Role::Surface));
        painter->fillRect(
            QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1),
            look.color(Role::FieldEdge));
        return;
    case CE_MenuItem:
        paint::menuItem(option, painter, widget);
        return;
    case CE_MenuEmptyArea:
        painter->fillRect(option->rect, look.color(Role::SurfaceRaised));
        return;
    case CE_MenuBarItem:
        paint::menuBarItem(option, painter, widget);
        return;
    case CE_MenuBarEmptyArea:
    case CE_ToolBar:
        painter->fillRect(option->rect, look.color(Role::Ground));
        return;
    case CE_ProgressBar:
        for (const ControlElement part :
             {CE_ProgressBarGroove, CE_ProgressBarContents, CE_ProgressBarLabel})
            paint::progress(part, option, painter, widget);
        return;
    case CE_Splitter:
        if (option->state & State_MouseOver) {
            const bool upright = option->rect.height() > option->rect.width();
            const QPoint middle = option->rect.center();
            painter->fillRect(upright
                                  ? QRect(middle.x(), option->rect.top(), 1, option->rect.height())
                                  : QRect(option->rect.left(), middle.y(), option->rect.width(), 1),
                              look.color(Role::FieldEdge));
        }
        return;
    case CE_SizeGrip:
        return;
    default:
        QProxyStyle::drawControl(element, option, painter, widget);
    }
}

void RickyardStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex *option,
                                       QPainter *painter, const QWidget *widget) const
{
    switch (control) {
    case CC_ComboBox:
        if (paint::comboBox(option, painter, widget))
            return;
        break;
    case CC_SpinBox:
        if (paint::spinBox(option, painter, widget))
            return;
        break;
    case CC_Slider:
        if (paint::slider(option, painter, widget))
            return;
        break;
    case CC_ScrollBar:
        if (paint::scrollBar(option, painter, widget))
            return;
        break;
    default:
        break;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

} // namespace rickyard::views
