#include "views/widgets/text_label.h"

#include "views/theme/theme_hub.h"

namespace rickyard::views {

TextLabel::TextLabel(const QString &text, TextStyle style, Role role, QWidget *parent)
    : QLabel(parent), style_(style), role_(role)
{
    setTextFormat(Qt::PlainText);
    setText(text);
    onTheme(this, [this] { restyle(); });
}

void TextLabel::setLook(TextStyle style, Role role)
{
    style_ = style;
    role_ = role;
    restyle();
}

void TextLabel::showEvent(QShowEvent *event)
{
    if (shown_ != &theme(this))
        restyle();
    QLabel::showEvent(event);
}

void TextLabel::restyle()
{
    const Theme &look = theme(this);
    shown_ = &look;
    setFont(look.font(style_));
    QPalette colors = look.palette();
    colors.setColor(QPalette::Active, QPalette::WindowText, look.color(role_));
    colors.setColor(QPalette::Inactive, QPalette::WindowText, look.color(role_));
    setPalette(colors);
}

} // namespace rickyard::views
