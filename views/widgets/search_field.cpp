#include "views/widgets/search_field.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"

#include <QAction>
#include <QKeyEvent>

namespace rickyard::views {

SearchField::SearchField(const QString &placeholder, QWidget *parent) : QLineEdit(parent)
{
    setPlaceholderText(placeholder);
    setAccessibleName(placeholder);
    addAction(icon(QStringLiteral("search"), Role::InkMuted), QLineEdit::LeadingPosition);
    setClearButtonEnabled(true);
}

QSize SearchField::sizeHint() const
{
    return {theme(this).px(240), QLineEdit::sizeHint().height()};
}

void SearchField::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape && !text().isEmpty()) {
        clear();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

} // namespace rickyard::views
