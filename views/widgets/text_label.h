// A label that takes its font and colour from the theme and keeps them when the theme changes.
// Always plain text.
#pragma once

#include "views/theme/theme.h"

#include <QLabel>

namespace rickyard::views {

class TextLabel : public QLabel
{
    Q_OBJECT

public:
    explicit TextLabel(const QString &text, TextStyle style = TextStyle::Body,
                       Role role = Role::Ink, QWidget *parent = nullptr);

    void setLook(TextStyle style, Role role);
    TextStyle textStyle() const { return style_; }
    Role role() const { return role_; }

protected:
    // Made before it had its place, it may come to stand in another theme.
    void showEvent(QShowEvent *event) override;

private:
    void restyle();

    TextStyle style_;
    Role role_;
    const Theme *shown_ = nullptr;
};

} // namespace rickyard::views
