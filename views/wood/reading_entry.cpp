#include "views/wood/reading_entry.h"

#include "models/domain/wood/moisture.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/meter_fields.h"
#include "views/wood/piece_chips.h"
#include "views/wood/weighing_entry.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::MoistureReading;

ReadingEntry::ReadingEntry(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_ways(new SectionTabs),
      m_meter(new MeterFields(context)), m_weighings(new WeighingEntry(context)),
      m_question(new InlineQuestion(tr("Keep it"), tr("Change")))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(new TextLabel(tr("Log a moisture reading"), TextStyle::Heading));
    m_ways->addSection(tr("Meter"), buildMeter());
    m_ways->addSection(tr("Two weighings"), m_weighings);
    column->addWidget(m_ways, 1);
    connect(m_weighings, &WeighingEntry::saved, this, &ReadingEntry::saved);
    connect(m_weighings, &WeighingEntry::closed, this, &ReadingEntry::closed);
}

QWidget *ReadingEntry::buildMeter()
{
    const Theme &look = theme(this);
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, look.space(2), 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(m_meter);
    column->addWidget(m_question);
    auto *buttons = new QHBoxLayout;
    m_save = new QPushButton(tr("Save reading"));
    m_save->setAccessibleName(tr("Save the moisture reading"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the reading without saving"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addStretch(1);
    const auto allow = [this] {
        m_save->setEnabled(!m_meter->pieces().isEmpty() && !m_context.readOnly());
        m_question->dismiss(); // it was about another reading
    };
    allow();
    connect(m_meter, &MeterFields::changed, this, allow);
    connect(m_meter, &MeterFields::escaped, this, &ReadingEntry::closed);
    connect(m_save, &QPushButton::clicked, this, &ReadingEntry::save);
    connect(close, &QPushButton::clicked, this, &ReadingEntry::closed);
    connect(m_question, &InlineQuestion::wentOn, this,
            [this] { write(m_meter->reading(m_context.verbs.now())); });
    connect(m_question, &InlineQuestion::wentBack, this,
            [this] { field()->setFocus(Qt::OtherFocusReason); });
    return page;
}

void ReadingEntry::start(domain::RecordId lot)
{
    if (lot != m_meter->lot()) {
        m_meter->start(lot);
        m_save->setEnabled(false);
    }
    m_weighings->start(lot);
    m_question->dismiss();
    m_ways->setCurrent(0);
    m_meter->refresh();
    field()->setFocus(Qt::OtherFocusReason);
}

domain::MeterBasis ReadingEntry::basis() const
{
    return m_meter->basis();
}

const QVector<double> &ReadingEntry::shown() const
{
    return m_meter->chips().values();
}

domain::PieceMoistures ReadingEntry::pieces() const
{
    return m_meter->pieces();
}

UnitLineEdit *ReadingEntry::field() const
{
    return m_meter->chips().field();
}

QString ReadingEntry::summary() const
{
    return m_meter->summary();
}

void ReadingEntry::save()
{
    if (!m_meter->settle())
        return;
    const MoistureReading reading = m_meter->reading(m_context.verbs.now());
    if (const auto odd = domain::oddReading(m_context.books(), reading))
        m_question->ask(*odd);
    else
        write(reading);
}

void ReadingEntry::write(const MoistureReading &reading)
{
    const auto added = m_context.verbs.add(reading, tr("log moisture reading"));
    if (!added) {
        const domain::Problems others = m_meter->showProblems(added.problems());
        if (!others.isEmpty())
            m_meter->chips().row()->setProblem(domain::joined(others));
        return;
    }
    m_meter->start(reading.lot);
    m_save->setEnabled(false);
    m_context.say(tr("Reading saved. Undo takes it back."));
    Q_EMIT saved(added.value());
}

} // namespace rickyard::views
