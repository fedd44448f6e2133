#include "views/wood/hold_panel.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

HoldPanel::HoldPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_heading(new TextLabel(QString(), TextStyle::Heading)),
      m_reason(new QLineEdit), m_usual(new QWidget),
      m_mould(new QPushButton(icon(QStringLiteral("warning")), tr("Mould: hold it now"))),
      m_save(new QPushButton(tr("Put on hold")))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(m_heading);
    // The commonest reason, and the one that does not wait.
    m_mould->setAccessibleName(tr("Mould seen: put this lot on hold now"));
    connect(m_mould, &QPushButton::clicked, this, [this] {
        m_reason->setText(tr("Mould seen"));
        save();
    });
    column->addWidget(m_mould, 0, Qt::AlignLeft);
    m_reason->setAccessibleName(tr("Reason for the hold"));
    m_row = new FieldRow(tr("Reason"), m_reason);
    column->addWidget(m_row);
    auto *flow = new FlowLayout(m_usual);
    flow->setContentsMargins(0, 0, 0, 0);
    for (const QString &reason : {tr("Kind of wood not certain"), tr("Paint, nails or treatment"),
                                  tr("Dispute with the supplier")}) {
        auto *button = new QPushButton(reason);
        button->setProperty("role", "quiet");
        button->setAccessibleName(tr("Take as the reason: %1").arg(reason));
        connect(button, &QPushButton::clicked, this, [this, reason] {
            m_reason->setText(reason);
            m_row->clearProblem();
        });
        flow->addWidget(button);
    }
    column->addWidget(m_usual);
    column->addWidget(new CautionNote(
        tr("Mouldy, painted, treated or unknown wood stays out of the fire and away from food. "
           "Brushing mould off does not settle it; wear a mask when moving it.")));
    auto *buttons = new QHBoxLayout;
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close without changing the hold"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_save, &QPushButton::clicked, this, &HoldPanel::save);
    connect(m_reason, &QLineEdit::returnPressed, this, &HoldPanel::save);
    connect(m_reason, &QLineEdit::textEdited, this, [this] { m_row->clearProblem(); });
    connect(close, &QPushButton::clicked, this, &HoldPanel::closed);
}

void HoldPanel::start(domain::RecordId lot)
{
    m_lot = lot;
    const domain::Lot record = m_context.books().lots.value(lot);
    m_heading->setText(record.hold ? tr("Lift the hold") : tr("Put on hold"));
    m_save->setText(record.hold ? tr("Lift the hold") : tr("Put on hold"));
    m_save->setAccessibleName(m_save->text());
    m_save->setEnabled(!m_context.readOnly());
    m_reason->setText(record.hold ? record.holdReason : QString());
    m_mould->setVisible(!record.hold);
    m_mould->setEnabled(!m_context.readOnly());
    m_row->setHelp(record.hold
                       ? tr("The crew decides, not this program: nothing here can tell that mouldy "
                            "or doubtful wood is safe. Say in the lot's note what was checked.")
                       : tr("It is kept out of every count of dry wood until it is lifted."));
    m_usual->setVisible(!record.hold);
    m_row->clearProblem();
    m_reason->setFocus(Qt::OtherFocusReason);
}

void HoldPanel::save()
{
    domain::Lot lot = m_context.books().lots.value(m_lot);
    const QString reason = m_reason->text().trimmed();
    if (!lot.hold && reason.isEmpty()) {
        m_row->setProblem(tr("Say why, so that the next shift knows."));
        return;
    }
    const bool lifting = lot.hold;
    lot.hold = !lot.hold;
    lot.holdReason = reason;
    const auto done = m_context.verbs.edit(lot, lifting ? tr("lift hold on %1").arg(lot.name)
                                                        : tr("hold %1").arg(lot.name));
    if (!done) {
        m_row->setProblem(done.message());
        return;
    }
    m_context.say(lifting ? tr("The hold on %1 is lifted by the crew.").arg(lot.name)
                          : tr("%1 is on hold.").arg(lot.name));
    Q_EMIT saved();
}

} // namespace rickyard::views
