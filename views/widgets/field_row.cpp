#include "views/widgets/field_row.h"

#include "views/theme/style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"
#include "views/widgets/text_label.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

namespace rickyard::views {

namespace {

// The diamond before a refusal, so that it is not told by colour alone.
class ProblemMark : public QWidget
{
public:
    using QWidget::QWidget;
    QSize sizeHint() const override
    {
        const int side = theme(this).px(14);
        return {side, side};
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        const Theme &look = theme(this);
        QPainter painter(this);
        const double side = look.px(10);
        paintShape(&painter, QRectF(0, (height() - side) / 2.0, side, side), Role::Act,
                   look.color(Role::Act));
    }
};

} // namespace

FieldRow::FieldRow(const QString &label, QWidget *editor, QWidget *parent)
    : QWidget(parent), name_(label), label_(new TextLabel(label, TextStyle::Label, Role::InkMuted)),
      editor_(editor), mark_(new ProblemMark),
      message_(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(label_);
    column->addWidget(editor_);
    auto *below = new QHBoxLayout;
    below->addWidget(mark_, 0, Qt::AlignTop);
    below->addWidget(message_, 1);
    column->addLayout(below);
    message_->setWordWrap(true);
    label_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    message_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    label_->setBuddy(editor_);
    if (editor_->accessibleName().isEmpty())
        editor_->setAccessibleName(label);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    setSizePolicy(policy);
    onTheme(this, [this, column, below] {
        const Theme &look = theme(this);
        column->setSpacing(look.px(5));
        below->setSpacing(look.px(2));
        mark_->setFixedHeight(QFontMetrics(look.font(TextStyle::Caption)).height());
        mark_->setFixedWidth(look.px(14));
    });
    showMessage();
}

void FieldRow::setHelp(const QString &help)
{
    help_ = help;
    showMessage();
}

void FieldRow::setProblem(const QString &message)
{
    if (problem_ == message)
        return;
    problem_ = message;
    showMessage();
}

QString FieldRow::message() const
{
    return message_->text();
}

void FieldRow::setOptional(bool optional)
{
    label_->setText(optional ? tr("%1 (optional)").arg(name_) : name_);
}

void FieldRow::showMessage()
{
    const bool refused = hasProblem();
    const QString text = refused ? problem_ : help_;
    message_->setText(text);
    message_->setLook(TextStyle::Caption, refused ? Role::Act : Role::InkMuted);
    message_->setVisible(!text.isEmpty());
    mark_->setVisible(refused);
    setInvalid(editor_, refused);
    // QLineEdit with a unit describes itself by it; the message is said before.
    if (refused || !help_.isEmpty())
        editor_->setAccessibleDescription(text);
    QAccessibleEvent told(editor_, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&told);
}

} // namespace rickyard::views
