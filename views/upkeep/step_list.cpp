#include "views/upkeep/step_list.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"

#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

StepTick::StepTick(int number, const QString &text, QWidget *parent)
    : QAbstractButton(parent), m_number(QString::number(number))
{
    setText(text);
    setCheckable(true);
    setAccessibleName(tr("Step %1: %2").arg(number).arg(text));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    onTheme(this, [this] { updateGeometry(); });
}

QRect StepTick::wordsIn(int width) const
{
    const Theme &look = theme(this);
    const int left = look.px(64);
    const QFontMetrics body(look.font(TextStyle::Body));
    const int room = std::max(1, width - left - look.space(3));
    const QRect words = body.boundingRect(QRect(0, 0, room, 100000), Qt::TextWordWrap, text());
    return {left, 0, room, words.height()};
}

int StepTick::heightForWidth(int width) const
{
    const Theme &look = theme(this);
    return std::max(look.px(52), wordsIn(width).height() + 2 * look.space(3));
}

QSize StepTick::sizeHint() const
{
    const int wide = theme(this).px(420);
    return {wide, heightForWidth(std::max(wide, width()))};
}

QSize StepTick::minimumSizeHint() const
{
    return {theme(this).px(220), theme(this).px(52)};
}

void StepTick::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Down)
        Q_EMIT stepped(1);
    else if (event->key() == Qt::Key_Up)
        Q_EMIT stepped(-1);
    else
        QAbstractButton::keyPressEvent(event);
}

void StepTick::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool on = isChecked();
    const QRectF all = QRectF(rect()).adjusted(1, 1, -1, -1);
    if ((underMouse() || isDown()) && isEnabled()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Hover));
        painter.drawRoundedRect(all, look.radius(), look.radius());
    }
    const double side = look.px(32);
    const QRectF box(look.space(3), (height() - side) / 2.0, side, side);
    painter.setPen(QPen(look.color(on ? Role::Good : Role::FieldEdge), look.px(1.5)));
    painter.setBrush(on ? look.soft(Role::Good) : look.color(Role::Field));
    painter.drawRoundedRect(box, look.px(6), look.px(6));
    if (on) {
        paintIcon(&painter, box.adjusted(side / 6, side / 6, -side / 6, -side / 6),
                  QStringLiteral("check"), look.color(Role::Good));
    } else {
        painter.setFont(look.font(TextStyle::Figures));
        painter.setPen(look.color(Role::InkMuted));
        painter.drawText(box, Qt::AlignCenter, m_number);
    }
    painter.setFont(look.font(TextStyle::Body));
    painter.setPen(look.color(on || !isEnabled() ? Role::InkMuted : Role::Ink));
    const QRect words = wordsIn(width());
    painter.drawText(QRect(words.left(), 0, words.width(), height()),
                     Qt::TextWordWrap | Qt::AlignVCenter | Qt::AlignLeft, text());
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(all, look.radius(), look.radius());
    }
}

StepList::StepList(QWidget *parent) : QWidget(parent), m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(theme(this).px(2));
}

void StepList::setSteps(const QStringList &steps)
{
    if (steps == m_steps)
        return;
    m_steps = steps;
    clearLayout(m_column);
    m_ticks.clear();
    for (int i = 0; i < steps.size(); ++i) {
        auto *tick = new StepTick(i + 1, steps.at(i), this);
        connect(tick, &QAbstractButton::clicked, this, [this, i](bool on) {
            Q_EMIT ticked(i, on);
            if (on)
                focusNext();
        });
        connect(tick, &StepTick::stepped, this, [this, i](int by) {
            const int to = std::clamp(i + by, 0, count() - 1);
            m_ticks.at(to)->setFocus(Qt::TabFocusReason);
        });
        m_column->addWidget(tick);
        m_ticks << tick;
    }
}

void StepList::setTicked(const QVector<int> &steps)
{
    for (int i = 0; i < count(); ++i)
        m_ticks.at(i)->setChecked(steps.contains(i));
}

void StepList::setEditable(bool editable)
{
    for (StepTick *tick : std::as_const(m_ticks))
        tick->setEnabled(editable);
}

void StepList::focusNext()
{
    for (StepTick *tick : std::as_const(m_ticks))
        if (!tick->isChecked()) {
            tick->setFocus(Qt::OtherFocusReason);
            return;
        }
}

} // namespace rickyard::views
