#include "views/widgets/scroll_column.h"
#include "views/widgets/column_scroll.h"

#include "views/theme/theme_hub.h"

#include <QVBoxLayout>

namespace rickyard::views {

QVBoxLayout *addScrollColumn(QVBoxLayout *column, QWidget *parent, int spacing)
{
    auto *scroll = new ColumnScroll(parent);
    auto *body = new QWidget(scroll);
    auto *inner = new QVBoxLayout(body);
    inner->setContentsMargins(0, 0, theme(parent).space(2), 0);
    inner->setSpacing(spacing);
    scroll->setWidget(body);
    column->addWidget(scroll, 1);
    return inner;
}

} // namespace rickyard::views
