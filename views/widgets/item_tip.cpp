#include "views/widgets/item_tip.h"

#include <QHelpEvent>
#include <QToolTip>

namespace rickyard::views {

void showItemTip(QHelpEvent *event, const QString &detail, QWidget *widget)
{
    if (detail.isEmpty()) {
        QToolTip::hideText();
        event->ignore();
        return;
    }
    // A tool tip guesses rich text from its content: escape, so that a name stays a name.
    QToolTip::showText(event->globalPos(),
                       detail.toHtmlEscaped().replace(u'\n', QLatin1String("<br>")), widget);
}

} // namespace rickyard::views
