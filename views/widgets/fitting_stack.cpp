#include "views/widgets/fitting_stack.h"

namespace rickyard::views {

FittingStack::FittingStack(QWidget *parent) : QStackedWidget(parent)
{
    connect(this, &QStackedWidget::currentChanged, this, [this] { updateGeometry(); });
}

QSize FittingStack::sizeHint() const
{
    return currentWidget() == nullptr ? QSize() : currentWidget()->sizeHint();
}

QSize FittingStack::minimumSizeHint() const
{
    return currentWidget() == nullptr ? QSize() : currentWidget()->minimumSizeHint();
}

bool FittingStack::hasHeightForWidth() const
{
    return currentWidget() != nullptr && currentWidget()->hasHeightForWidth();
}

int FittingStack::heightForWidth(int width) const
{
    return hasHeightForWidth() ? currentWidget()->heightForWidth(width) : -1;
}

} // namespace rickyard::views
