#include "views/wood/count_panel.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/count_drift.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stock.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/wood_words.h"

#include <QComboBox>
#include <QGridLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Dimension;
using domain::Length;
using domain::Mass;

CountPanel::CountPanel(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
    showWay();
}

CountPanel::Measure CountPanel::addMeasure(const QString &label, Dimension dimension,
                                           const char *us, const char *metric)
{
    Measure measure;
    measure.dimension = dimension;
    measure.unitKey = QString::fromLatin1(m_context.books().yard().metric ? metric : us);
    measure.edit = new UnitLineEdit(domain::findUnit(dimension, measure.unitKey)->symbol);
    measure.edit->setAccessibleName(label);
    measure.row = new FieldRow(label, measure.edit, this);
    connect(measure.edit, &QLineEdit::textEdited, this, &CountPanel::compare);
    return measure;
}

void CountPanel::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(new TextLabel(tr("Count what is there"), TextStyle::Heading));
    m_way = new QComboBox;
    m_way->addItems(
        {tr("Stack, length × height × depth"), tr("Weight as it is"), tr("Oven-dry weight")});
    m_way->setAccessibleName(tr("Counted by"));
    column->addWidget(new FieldRow(tr("Counted by"), m_way));
    connect(m_way, &QComboBox::activated, this, &CountPanel::showWay);
    m_length = addMeasure(tr("Length"), Dimension::Length, "ft", "m");
    m_height = addMeasure(tr("Height"), Dimension::Length, "ft", "m");
    m_depth = addMeasure(tr("Depth"), Dimension::Length, "in", "cm");
    m_mass = addMeasure(tr("Weight"), Dimension::Mass, "lb", "kg");
    auto *measures = new QGridLayout;
    measures->setHorizontalSpacing(look.space(2));
    measures->addWidget(m_length.row, 0, 0);
    measures->addWidget(m_height.row, 0, 1);
    measures->addWidget(m_depth.row, 0, 2);
    measures->addWidget(m_mass.row, 1, 0, 1, 3);
    column->addLayout(measures);
    m_comparison = new TextLabel(QString(), TextStyle::BodyStrong);
    m_comparison->setWordWrap(true);
    m_basis = new TextLabel(QString(), TextStyle::Caption, Role::InkMuted);
    m_basis->setWordWrap(true);
    column->addWidget(m_comparison);
    column->addWidget(m_basis);
    m_note = new QLineEdit;
    m_note->setAccessibleName(tr("Note on the count"));
    column->addWidget(new FieldRow(tr("Note"), m_note));
    auto *buttons = new QHBoxLayout;
    m_save = new QPushButton(tr("Set stock to the count"));
    m_save->setAccessibleName(tr("Set the stock of this lot to the count"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the count without saving"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_save, &QPushButton::clicked, this, &CountPanel::save);
    connect(close, &QPushButton::clicked, this, &CountPanel::closed);
}

void CountPanel::start(domain::RecordId lot)
{
    if (lot != m_lot) {
        for (const Measure *m : {&m_length, &m_height, &m_depth, &m_mass})
            m->edit->clear();
        m_note->clear();
    }
    m_lot = lot;
    showWay();
    (way() == Way::Stack ? m_length : m_mass).edit->setFocus(Qt::OtherFocusReason);
}

void CountPanel::setWay(Way way)
{
    m_way->setCurrentIndex(static_cast<int>(way));
    showWay();
}

CountPanel::Way CountPanel::way() const
{
    return static_cast<Way>(m_way->currentIndex());
}

void CountPanel::showWay()
{
    const bool stack = way() == Way::Stack;
    m_length.row->setVisible(stack);
    m_height.row->setVisible(stack);
    m_depth.row->setVisible(stack);
    m_mass.row->setVisible(!stack);
    compare();
}

std::optional<qint64> CountPanel::read(const Measure &measure)
{
    const QString text = measure.edit->text().trimmed();
    measure.row->clearProblem();
    if (text.isEmpty())
        return std::nullopt;
    const domain::Unit *unit = domain::findUnit(measure.dimension, measure.unitKey);
    const auto parsed = domain::parseQuantity(text, measure.dimension, *unit, woodLocale());
    if (parsed && parsed->base >= 0)
        return parsed->base;
    measure.row->setProblem(tr("“%1” is not an amount. Expected a number in %2, zero or more.")
                                .arg(text, unit->symbol));
    return std::nullopt;
}

std::optional<Mass> CountPanel::counted() const
{
    domain::RickCount count;
    count.lot = m_lot;
    if (way() == Way::Stack) {
        const auto l = read(m_length);
        const auto h = read(m_height);
        const auto d = read(m_depth);
        if (!l || !h || !d)
            return std::nullopt;
        count.stacks = {{Length::ofBase(*l), Length::ofBase(*h), Length::ofBase(*d)}};
    } else {
        const auto mass = read(m_mass);
        if (!mass || way() == Way::Dry)
            return mass ? std::optional(Mass::ofBase(*mass)) : std::nullopt;
        count.way = domain::CountWay::Weight;
        count.weight = Mass::ofBase(*mass);
    }
    const auto wood = domain::countedWood(m_context.books(), count, m_context.verbs.now());
    return wood ? std::optional(wood->dry) : std::nullopt;
}

QString CountPanel::comparison() const
{
    return m_comparison->text();
}

void CountPanel::compare()
{
    const bool metric = m_context.books().yard().metric;
    const domain::LotStock book =
        domain::lotStockAt(m_context.books(), m_lot, m_context.verbs.now());
    const QString bookText = massAmount(book.dryMass, metric).text();
    const std::optional<Mass> count = counted();
    m_save->setEnabled(count.has_value() && !m_context.readOnly());
    if (!count) {
        m_comparison->setText(tr("The books say %1 of dry wood.").arg(bookText));
    } else {
        const Mass drift = *count - book.dryMass;
        const QString share = book.dryMass.base() > 0
                                  ? tr(" (%1 %)").arg(domain::formatNumber(
                                        100 * (drift / book.dryMass), 0, woodLocale()))
                                  : QString();
        m_comparison->setText(
            tr("Books %1, count %2: %3%4 %5.")
                .arg(bookText, massAmount(*count, metric).text(),
                     massAmount(drift < Mass() ? -drift : drift, metric).text(), share,
                     drift < Mass() ? tr("less than the books") : tr("more than the books")));
    }
    const auto used = domain::moistureOrAssumed(m_context.books(), m_lot, m_context.verbs.now());
    const QString moisture = used.moisture ? bothBases(*used.moisture) : tr("20 % dry basis");
    m_basis->setText(way() == Way::Dry ? tr("Oven-dry weight is taken as it is.")
                     : used.assumed
                         ? tr("Reckoned at %1, which is assumed: %2").arg(moisture, used.assumption)
                         : tr("Reckoned at the latest moisture, %1.").arg(moisture));
}

void CountPanel::save()
{
    const std::optional<Mass> count = counted();
    if (!count)
        return;
    const auto done = m_context.verbs.count(m_lot, *count, m_note->text().trimmed());
    if (!done) {
        (way() == Way::Stack ? m_length : m_mass).row->setProblem(done.message());
        return;
    }
    for (const Measure *m : {&m_length, &m_height, &m_depth, &m_mass})
        m->edit->clear();
    m_note->clear();
    m_context.say(tr("Counted. The drift stays visible in the ledger; Undo takes it back."));
    Q_EMIT saved(done.value());
}

} // namespace rickyard::views
