// Menus, tabs and headers.
#include "views/theme/style_paint.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"

#include <QHeaderView>
#include <QPainter>
#include <QWidget>

namespace rickyard::views::paint {

namespace {

void menuMark(const QStyleOptionMenuItem *item, QPainter *painter, const Theme &look,
              const QRect &place, const QColor &ink)
{
    if (item->checked) {
        paintIcon(painter, QRectF(place), QStringLiteral("check"), look.color(Role::Accent));
    } else if (!item->icon.isNull()) {
        const bool enabled = item->state & QStyle::State_Enabled;
        item->icon.paint(painter, place, Qt::AlignCenter,
                         enabled ? QIcon::Normal : QIcon::Disabled);
    }
    painter->setPen(ink);
}

} // namespace

bool menuItem(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(option);
    if (item == nullptr)
        return false;
    const Theme &look = theme(widget);
    const QRect rect = item->rect;
    if (item->menuItemType == QStyleOptionMenuItem::Separator) {
        painter->fillRect(QRect(rect.left() + look.space(2), rect.center().y(),
                                rect.width() - 2 * look.space(2), 1),
                          look.color(Role::Hairline));
        return true;
    }
    const bool enabled = item->state & QStyle::State_Enabled;
    const bool selected = enabled && (item->state & QStyle::State_Selected);
    painter->save();
    if (selected)
        panel(painter, QRectF(rect).adjusted(look.px(4), look.px(1), -look.px(4), -look.px(1)),
              look.px(5), look.color(Role::Selection), QColor(), 0.0);
    const QColor ink = look.color(enabled ? Role::Ink : Role::InkFaint);
    const int side = look.px(18);
    const QRect mark(rect.left() + look.space(3), rect.center().y() - side / 2, side, side);
    menuMark(item, painter, look, mark, ink);
    const int left = mark.right() + look.space(2) + look.px(2);
    const int right = rect.right() - look.space(4) - look.px(8);
    const QRect textBox(left, rect.top(), right - left, rect.height());
    const qsizetype tab = item->text.indexOf(u'\t');
    painter->setFont(look.font(TextStyle::Body));
    painter->drawText(textBox, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextShowMnemonic,
                      tab < 0 ? item->text : item->text.left(tab));
    if (tab >= 0) {
        painter->setPen(look.color(enabled ? Role::InkMuted : Role::InkFaint));
        painter->setFont(look.font(TextStyle::Caption));
        painter->drawText(textBox, Qt::AlignRight | Qt::AlignVCenter, item->text.mid(tab + 1));
    }
    if (item->menuItemType == QStyleOptionMenuItem::SubMenu)
        chevron(painter,
                QRectF(rect.right() - look.space(4) - look.px(4), rect.center().y() - look.px(8),
                       look.px(16), look.px(16)),
                Direction::Right, look.color(Role::InkMuted), look.px(1.5));
    painter->restore();
    return true;
}

bool menuBarItem(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(option);
    if (item == nullptr)
        return false;
    const Theme &look = theme(widget);
    painter->fillRect(item->rect, look.color(Role::Ground));
    const bool enabled = item->state & QStyle::State_Enabled;
    if (enabled && (item->state & QStyle::State_Selected))
        panel(painter, QRectF(item->rect).adjusted(0, look.px(3), 0, -look.px(3)), look.px(5),
              look.color(Role::Selection), QColor(), 0.0);
    painter->setPen(look.color(enabled ? Role::Ink : Role::InkFaint));
    const bool underline =
        widget != nullptr &&
        widget->style()->styleHint(QStyle::SH_UnderlineShortcut, option, widget) != 0;
    painter->drawText(item->rect,
                      Qt::AlignCenter | (underline ? Qt::TextShowMnemonic : Qt::TextHideMnemonic),
                      item->text);
    return true;
}

bool tabShape(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const auto *tab = qstyleoption_cast<const QStyleOptionTab *>(option);
    if (tab == nullptr)
        return false;
    const Theme &look = theme(widget);
    const bool selected = tab->state & QStyle::State_Selected;
    const bool hover =
        (tab->state & QStyle::State_MouseOver) && (tab->state & QStyle::State_Enabled);
    const QRect rect = tab->rect;
    if (tab->state & QStyle::State_HasFocus)
        panel(painter, QRectF(rect).adjusted(look.px(2), look.px(3), -look.px(2), -look.px(5)),
              look.px(5), QColor(), look.color(Role::Focus), look.px(2));
    if (selected || hover) {
        const int thick = look.px(2.5);
        painter->fillRect(QRect(rect.left() + look.space(2), rect.bottom() - thick + 1,
                                rect.width() - 2 * look.space(2), thick),
                          look.color(selected ? Role::Accent : Role::FieldEdge));
    }
    return true;
}

bool headerSection(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const Theme &look = theme(widget);
    painter->fillRect(option->rect, look.color(Role::Surface));
    const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
    if (header != nullptr && header->orientation == Qt::Vertical)
        return true;
    painter->fillRect(QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1),
                      look.color(Role::FieldEdge));
    const auto *view = qobject_cast<const QHeaderView *>(widget);
    const bool clickable = view != nullptr && view->sectionsClickable();
    // Column borders are felt only where they can be dragged: under the pointer.
    if (clickable && (option->state & QStyle::State_MouseOver) && header != nullptr)
        painter->fillRect(QRect(option->rect.right(), option->rect.top() + look.space(2), 1,
                                option->rect.height() - 2 * look.space(2)),
                          look.color(Role::FieldEdge));
    return true;
}

bool headerLabel(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(option);
    if (header == nullptr)
        return false;
    const Theme &look = theme(widget);
    QRect box = header->rect;
    painter->save();
    QFont font = look.font(TextStyle::Caption);
    const bool hover = header->state & QStyle::State_MouseOver;
    const bool sorted = header->sortIndicator != QStyleOptionHeader::None;
    painter->setPen(look.color(hover || sorted ? Role::Ink : Role::InkMuted));
    painter->setFont(font);
    if (!header->icon.isNull()) {
        const int side = look.px(16);
        header->icon.paint(painter, QRect(box.left(), box.center().y() - side / 2, side, side));
        box.setLeft(box.left() + side + look.space(1));
    }
    const QFontMetrics metrics(font);
    painter->drawText(box, static_cast<int>(header->textAlignment) | Qt::AlignVCenter,
                      metrics.elidedText(header->text, Qt::ElideRight, box.width()));
    painter->restore();
    return true;
}

} // namespace rickyard::views::paint
