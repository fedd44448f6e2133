#include "views/widgets/caution_note.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QPainter>
#include <QVBoxLayout>

namespace rickyard::views {

CautionNote::CautionNote(const QString &caution, QWidget *parent)
    : QWidget(parent), caution_(new TextLabel(QString())),
      closing_(new TextLabel(closing(), TextStyle::Caption, Role::InkMuted))
{
    auto *column = new QVBoxLayout(this);
    column->addWidget(caution_);
    column->addWidget(closing_);
    caution_->setWordWrap(true);
    closing_->setWordWrap(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    onTheme(this, [this, column] {
        const Theme &look = theme(this);
        column->setContentsMargins(look.space(4) + look.px(32), look.space(3), look.space(4),
                                   look.space(3));
        column->setSpacing(look.px(3));
    });
    setCaution(caution);
}

void CautionNote::setCaution(const QString &caution)
{
    caution_->setText(caution);
    setAccessibleName(tr("Caution: %1 %2").arg(caution, closing()));
}

QString CautionNote::closing()
{
    return tr("Local code and the authority having jurisdiction decide.");
}

void CautionNote::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.soft(Role::Watch));
    painter.drawRoundedRect(QRectF(rect()), look.px(8), look.px(8));
    const double side = look.px(20);
    paintIcon(&painter, QRectF(look.space(4), look.space(3), side, side), QStringLiteral("warning"),
              look.color(Role::Watch));
}

} // namespace rickyard::views
