// Editors, scroll bars and progress.
#include "views/theme/style_paint.h"

#include "views/theme/theme_hub.h"

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QPainter>
#include <QStyle>

namespace rickyard::views::paint {

void field(QPainter *painter, const QRect &rectangle, const QStyleOption *option,
           const QWidget *widget)
{
    const Theme &look = theme(widget);
    const bool enabled = option->state & QStyle::State_Enabled;
    const bool focus = enabled && (option->state & QStyle::State_HasFocus);
    const bool hover = enabled && (option->state & QStyle::State_MouseOver);
    const bool refused = isInvalid(widget);
    QColor fill = look.color(focus ? Role::Surface : Role::Field);
    if (!enabled)
        fill = look.color(Role::Ground);
    if (refused)
        fill = look.soft(Role::Act);
    Role edge = !enabled ? Role::Hairline : hover ? Role::InkFaint : Role::FieldEdge;
    if (refused)
        edge = Role::Act;
    else if (focus)
        edge = Role::Focus;
    const double width = focus ? look.px(2) : look.px(1);
    panel(painter, QRectF(rectangle), look.radius(), fill, look.color(edge), width);
}

bool comboBox(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget)
{
    const auto *combo = qstyleoption_cast<const QStyleOptionComboBox *>(option);
    if (combo == nullptr)
        return false;
    const Theme &look = theme(widget);
    QStyleOptionComboBox own(*combo);
    if (combo->editable && widget != nullptr && widget->hasFocus())
        own.state |= QStyle::State_HasFocus;
    if (combo->frame)
        field(painter, combo->rect, &own, widget);
    const QRect arrow = widget->style()->subControlRect(QStyle::CC_ComboBox, combo,
                                                        QStyle::SC_ComboBoxArrow, widget);
    const double side = look.px(16);
    const QRectF box(arrow.center().x() - side / 2, arrow.center().y() - side / 2, side, side);
    const bool enabled = combo->state & QStyle::State_Enabled;
    chevron(painter, box, Direction::Down, look.color(enabled ? Role::InkMuted : Role::InkFaint),
            look.px(1.75));
    return true;
}

bool spinBox(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget)
{
    const auto *spin = qstyleoption_cast<const QStyleOptionSpinBox *>(option);
    if (spin == nullptr)
        return false;
    const Theme &look = theme(widget);
    if (spin->frame)
        field(painter, spin->rect, spin, widget);
    if (spin->buttonSymbols == QAbstractSpinBox::NoButtons)
        return true;
    const auto arrow = [&](QStyle::SubControl part, QAbstractSpinBox::StepEnabledFlag flag,
                           Direction direction) {
        const QRect box = widget->style()->subControlRect(QStyle::CC_SpinBox, spin, part, widget);
        const bool can = (spin->stepEnabled & flag) && (spin->state & QStyle::State_Enabled);
        const bool hot = can && (spin->activeSubControls & part);
        const double side = look.px(13);
        const QRectF square(box.center().x() - side / 2.0, box.center().y() - side / 2.0, side,
                            side);
        chevron(painter, square, direction,
                look.color(!can  ? Role::InkFaint
                           : hot ? Role::Accent
                                 : Role::InkMuted),
                look.px(1.5));
    };
    arrow(QStyle::SC_SpinBoxUp, QAbstractSpinBox::StepUpEnabled, Direction::Up);
    arrow(QStyle::SC_SpinBoxDown, QAbstractSpinBox::StepDownEnabled, Direction::Down);
    return true;
}

bool scrollBar(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget)
{
    const auto *slider = qstyleoption_cast<const QStyleOptionSlider *>(option);
    if (slider == nullptr || widget == nullptr)
        return false;
    const Theme &look = theme(widget);
    const QRect handle = widget->style()->subControlRect(QStyle::CC_ScrollBar, slider,
                                                         QStyle::SC_ScrollBarSlider, widget);
    if (slider->maximum <= slider->minimum)
        return true;
    const bool hot = slider->state & (QStyle::State_MouseOver | QStyle::State_Sunken);
    const double inset = look.px(hot ? 2.5 : 3.5);
    QRectF bar(handle);
    bar = slider->orientation == Qt::Vertical
              ? bar.adjusted(inset, look.px(2), -inset, -look.px(2))
              : bar.adjusted(look.px(2), inset, -look.px(2), -inset);
    const double radius = std::min(bar.width(), bar.height()) / 2.0;
    const bool held = slider->state & QStyle::State_Sunken;
    panel(painter, bar, radius,
          look.color(held  ? Role::InkMuted
                     : hot ? Role::InkFaint
                           : Role::FieldEdge),
          QColor(), 0.0);
    return true;
}

bool progress(QStyle::ControlElement element, const QStyleOption *option, QPainter *painter,
              const QWidget *widget)
{
    const auto *bar = qstyleoption_cast<const QStyleOptionProgressBar *>(option);
    if (bar == nullptr)
        return false;
    const Theme &look = theme(widget);
    const double thick = look.px(6);
    // Text stands right of the bar, never upon it.
    const int label = bar->textVisible ? QFontMetrics(look.font(TextStyle::Caption))
                                                 .horizontalAdvance(QStringLiteral("100%")) +
                                             look.space(2)
                                       : 0;
    const QRectF groove(bar->rect.left(), bar->rect.center().y() + 0.5 - thick / 2.0,
                        bar->rect.width() - label, thick);
    if (element == QStyle::CE_ProgressBarGroove) {
        panel(painter, groove, thick / 2.0, look.color(Role::Hairline), QColor(), 0.0);
        return true;
    }
    if (element == QStyle::CE_ProgressBarContents) {
        const double range = static_cast<double>(bar->maximum) - bar->minimum;
        // Unknown length: a still bar over the middle; the program does not run animations for it.
        const double share = range > 0.0 ? (bar->progress - bar->minimum) / range : 0.4;
        QRectF done = groove;
        if (range <= 0.0)
            done.translate(groove.width() * 0.3, 0.0);
        done.setWidth(std::max(thick, groove.width() * share));
        if (share > 0.0)
            panel(painter, done, thick / 2.0, look.color(Role::Accent), QColor(), 0.0);
        return true;
    }
    if (!bar->textVisible)
        return true;
    painter->save();
    painter->setPen(look.color(Role::InkMuted));
    painter->setFont(look.font(TextStyle::Caption));
    painter->drawText(bar->rect, Qt::AlignRight | Qt::AlignVCenter, bar->text);
    painter->restore();
    return true;
}

} // namespace rickyard::views::paint
