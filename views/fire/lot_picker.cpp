#include "views/fire/lot_picker.h"

#include "views/fire/run_facts.h"
#include "views/theme/theme_hub.h"

#include <QStylePainter>

namespace rickyard::views {

LotPicker::LotPicker(PageContext &context, QWidget *parent) : QComboBox(parent), m_context(context)
{
    setAccessibleName(tr("Lot to burn"));
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(16);
    setMinimumHeight(theme(this).px(44));
    refill();
}

void LotPicker::refill()
{
    const domain::RecordId before = lot();
    const QSignalBlocker quiet(this);
    clear();
    const QVector<LotChoice> choices = lotChoices(m_context.books(), m_context.verbs.now());
    for (const LotChoice &choice : choices) {
        addItem(choice.text, QVariant::fromValue<qint64>(choice.lot));
        setItemData(count() - 1, choice.text, Qt::ToolTipRole);
    }
    setPlaceholderText(choices.isEmpty() ? tr("No wood on hand: log a delivery on Wood")
                                         : tr("Choose a lot"));
    choose(before);
    if (currentIndex() < 0 && count() > 0)
        setCurrentIndex(0); // the readiest
    setToolTip(currentText().toHtmlEscaped());
}

void LotPicker::choose(domain::RecordId lot)
{
    const int at = findData(QVariant::fromValue<qint64>(lot));
    if (at >= 0)
        setCurrentIndex(at);
}

// A long text ends in an ellipsis rather than in half a letter; the tool tip has all of it.
void LotPicker::paintEvent(QPaintEvent *)
{
    QStylePainter painter(this);
    QStyleOptionComboBox option;
    initStyleOption(&option);
    const QRect room =
        style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this);
    const QString text = lot() == 0 ? placeholderText() : currentText();
    option.currentText =
        fontMetrics().elidedText(text, Qt::ElideRight, room.width() - theme(this).space(1));
    painter.drawComplexControl(QStyle::CC_ComboBox, option);
    painter.drawControl(QStyle::CE_ComboBoxLabel, option);
}

} // namespace rickyard::views
