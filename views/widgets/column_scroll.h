// Scrolls a column up and down, never sideways: it asks for the width its content needs, so that
// whoever holds it gives way instead of cutting at the right.
#pragma once

#include <QScrollArea>

namespace rickyard::views {

class ColumnScroll : public QScrollArea
{
    Q_OBJECT

public:
    explicit ColumnScroll(QWidget *parent = nullptr);
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
};

} // namespace rickyard::views
