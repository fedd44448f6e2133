#include "views/widgets/unit_line_edit.h"

#include "views/theme/style_paint.h"
#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>

namespace rickyard::views {

UnitLineEdit::UnitLineEdit(QWidget *parent) : UnitLineEdit(QString(), parent) {}

UnitLineEdit::UnitLineEdit(const QString &unit, QWidget *parent) : QLineEdit(parent)
{
    setUnit(unit);
}

void UnitLineEdit::setUnit(const QString &unit)
{
    unit_ = unit;
    setAccessibleDescription(unit.isEmpty() ? QString() : tr("in %1").arg(unit));
    refit();
}

void UnitLineEdit::setUnits(const QStringList &units)
{
    units_ = units;
    if (!units.isEmpty() && !units.contains(unit_))
        setUnit(units.constFirst());
    refit();
}

QRect UnitLineEdit::unitRect() const
{
    const Theme &look = theme(this);
    const QFontMetrics metrics(look.font(TextStyle::Label));
    const int arrow = hasMenu() ? look.px(16) : 0;
    const int wide = unit_.isEmpty() ? 0 : metrics.horizontalAdvance(unit_) + arrow;
    return {width() - wide - look.space(2) - look.px(3), 0, wide + look.px(3), height()};
}

void UnitLineEdit::refit()
{
    const int margin = unit_.isEmpty() ? 0 : unitRect().width() + theme(this).px(6);
    if (textMargins().right() != margin)
        setTextMargins(0, 0, margin, 0);
    updateGeometry();
    update();
}

QSize UnitLineEdit::sizeHint() const
{
    QSize size = QLineEdit::sizeHint();
    size.setWidth(std::max(size.width(), theme(this).px(140)));
    return size;
}

void UnitLineEdit::paintEvent(QPaintEvent *event)
{
    QLineEdit::paintEvent(event);
    if (unit_.isEmpty())
        return;
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setFont(look.font(TextStyle::Label));
    painter.setPen(look.color(isEnabled() ? Role::InkMuted : Role::InkFaint));
    const QRect box = unitRect();
    painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, unit_);
    if (hasMenu()) {
        const double side = look.px(13);
        paint::chevron(
            &painter, QRectF(box.right() - side + 1, box.center().y() - side / 2.0 + 1, side, side),
            paint::Direction::Down, look.color(Role::InkMuted), look.px(1.5));
    }
}

void UnitLineEdit::openMenu()
{
    QMenu menu(this);
    for (const QString &unit : std::as_const(units_)) {
        QAction *action = menu.addAction(unit);
        action->setCheckable(true);
        action->setChecked(unit == unit_);
    }
    const QAction *chosen = menu.exec(mapToGlobal(QPoint(unitRect().left(), height())));
    if (chosen == nullptr || chosen->text() == unit_)
        return;
    setUnit(chosen->text());
    emit unitChanged(unit_);
}

void UnitLineEdit::mousePressEvent(QMouseEvent *event)
{
    if (hasMenu() && event->button() == Qt::LeftButton &&
        unitRect().contains(event->position().toPoint())) {
        openMenu();
        return;
    }
    QLineEdit::mousePressEvent(event);
}

void UnitLineEdit::mouseMoveEvent(QMouseEvent *event)
{
    const bool over = unitRect().contains(event->position().toPoint());
    setCursor(over ? Qt::ArrowCursor : Qt::IBeamCursor);
    QLineEdit::mouseMoveEvent(event);
}

void UnitLineEdit::keyPressEvent(QKeyEvent *event)
{
    if (hasMenu() && event->key() == Qt::Key_Down && (event->modifiers() & Qt::AltModifier)) {
        openMenu();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void UnitLineEdit::changeEvent(QEvent *event)
{
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        refit();
}

void UnitLineEdit::resizeEvent(QResizeEvent *event)
{
    QLineEdit::resizeEvent(event);
    refit();
}

} // namespace rickyard::views
