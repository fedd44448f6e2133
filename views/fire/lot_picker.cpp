#include "views/fire/lot_picker.h"

#include "views/fire/run_facts.h"
#include "views/theme/theme_hub.h"

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
    if (before != 0)
        choose(before);
}

void LotPicker::choose(domain::RecordId lot)
{
    const int at = findData(QVariant::fromValue<qint64>(lot));
    if (at >= 0)
        setCurrentIndex(at);
}

} // namespace rickyard::views
