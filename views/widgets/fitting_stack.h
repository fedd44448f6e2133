// A stack that is as tall as its current page asks for, not as its tallest: what stands below moves
// up, and a short page does not scroll through nothing.
#pragma once

#include <QStackedWidget>

namespace rickyard::views {

class FittingStack : public QStackedWidget
{
    Q_OBJECT

public:
    explicit FittingStack(QWidget *parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override;
    [[nodiscard]] int heightForWidth(int width) const override;
};

} // namespace rickyard::views
