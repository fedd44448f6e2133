#include "views/fire/temperature_entry.h"

#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/unit_line_edit.h"

#include <QComboBox>
#include <QHBoxLayout>

namespace rickyard::views {

using domain::Dimension;

TemperatureEntry::TemperatureEntry(PageContext &context, domain::RecordId cook, QWidget *parent)
    : QWidget(parent), m_context(context), m_cook(cook)
{
    const Theme &look = theme(this);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    m_number = new UnitLineEdit(FireWords(context.books()).unit(Dimension::Temperature).symbol);
    m_number->setAccessibleName(tr("Temperature read now"));
    m_number->setMinimumHeight(look.px(44));
    m_number->setPlaceholderText(tr("Enter notes it"));
    m_number->setEnabled(!context.readOnly());
    m_row = new FieldRow(tr("Temperature now"), m_number, this);
    row->addWidget(m_row, 3);
    m_probe = new QComboBox;
    m_probe->setAccessibleName(tr("Where it was read"));
    m_probe->setMinimumHeight(look.px(44));
    // Places as the records know them; only those of the pit count for its heat.
    m_probe->addItem(tr("Grate"), QStringLiteral("grate"));
    m_probe->addItem(tr("Door gauge"), QStringLiteral("door gauge"));
    m_probe->addItem(tr("Food"), QStringLiteral("food"));
    row->addWidget(new FieldRow(tr("Where"), m_probe, this), 2);
    connect(m_number, &QLineEdit::textEdited, this, [this] { m_row->clearProblem(); });
    connect(m_number, &QLineEdit::returnPressed, this, &TemperatureEntry::enter);
}

void TemperatureEntry::focusEntry()
{
    m_number->setFocus(Qt::OtherFocusReason);
}

void TemperatureEntry::enter()
{
    const QString text = m_number->text().trimmed();
    const FireWords words(m_context.books());
    const domain::Unit &unit = words.unit(Dimension::Temperature);
    const auto parsed = domain::parseQuantity(text, Dimension::Temperature, unit, words.locale());
    if (!parsed) {
        m_row->setProblem(text.isEmpty()
                              ? tr("Type the temperature first, such as 250.")
                              : tr("“%1” is not a temperature in %2.").arg(text, unit.symbol));
        return;
    }
    const auto temperature = domain::Temperature::ofBase(parsed->base);
    const auto noted =
        m_context.verbs.noteTemperature(m_cook, temperature, m_probe->currentData().toString());
    if (!noted) {
        m_row->setProblem(noted.message());
        return;
    }
    m_number->clear();
    m_row->clearProblem();
    Q_EMIT done(tr("%1 %2 at %3.")
                    .arg(m_probe->currentText(), words.temperature(temperature).text(),
                         words.clock(m_context.verbs.now())),
                {domain::TableId::CookTemperature, noted.value()});
}

} // namespace rickyard::views
