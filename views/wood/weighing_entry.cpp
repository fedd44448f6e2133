#include "views/wood/weighing_entry.h"

#include "models/domain/wood/moisture.h"
#include "models/items/wording.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/wood/wood_words.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::OvenTest;
using domain::TableId;

WeighingEntry::WeighingEntry(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_fields(new FieldSet(context, TableId::OvenTest, this))
{
    build();
    showSummary();
}

void WeighingEntry::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(m_fields->add(QStringLiteral("method"), tr("How the dry weight is known")));
    FieldRow *piece = m_fields->add(QStringLiteral("piece"));
    piece->setHelp(tr("With a mark the piece can be weighed again in the rick later on."));
    column->addWidget(piece);
    auto *weights = new QGridLayout;
    weights->setHorizontalSpacing(look.space(3));
    weights->setColumnStretch(0, 1);
    weights->setColumnStretch(1, 1);
    weights->addWidget(m_fields->add(QStringLiteral("wet"), tr("Weight now")), 0, 0, Qt::AlignTop);
    weights->addWidget(m_fields->add(QStringLiteral("dry"), tr("Weight oven-dry")), 0, 1,
                       Qt::AlignTop);
    column->addLayout(weights);
    m_moisture = new TextLabel(QString(), TextStyle::BodyStrong);
    m_moisture->setWordWrap(true);
    column->addWidget(m_moisture);
    auto *buttons = new QHBoxLayout;
    m_save = new QPushButton(tr("Save weighings"));
    m_save->setAccessibleName(tr("Save the two weighings"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the weighings without saving"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_save, &QPushButton::clicked, this, &WeighingEntry::save);
    connect(close, &QPushButton::clicked, this, &WeighingEntry::closed);
    connect(m_fields, &FieldSet::edited, this, &WeighingEntry::heed);
}

void WeighingEntry::start(domain::RecordId lot)
{
    if (lot != m_lot) {
        m_fields->show(domain::emptyRow(TableId::OvenTest));
        m_dryTyped = false;
    }
    m_lot = lot;
    m_save->setEnabled(!m_context.readOnly());
    showSummary();
}

void WeighingEntry::heed(const QString &key)
{
    if (key == QStringLiteral("dry"))
        m_dryTyped = true;
    else if (key == QStringLiteral("method") || key == QStringLiteral("piece"))
        prefill();
    showSummary();
}

// The oven-dry weight of a marked piece is that of its last test.
void WeighingEntry::prefill()
{
    FieldRow *row = m_fields->row(QStringLiteral("dry"));
    row->setHelp(QString());
    const OvenTest now = test();
    if (now.method != domain::DryWeight::Reference || now.piece.isEmpty())
        return;
    const OvenTest *last = nullptr;
    for (const OvenTest &other : m_context.books().ovenTests)
        if (other.lot == m_lot && other.piece.compare(now.piece, Qt::CaseInsensitive) == 0 &&
            (last == nullptr || other.time > last->time))
            last = &other;
    if (last == nullptr) {
        row->setHelp(tr("No weighing of “%1” in this lot yet.").arg(now.piece));
        return;
    }
    if (!m_dryTyped)
        m_fields->setValue(QStringLiteral("dry"), domain::toValue(last->dry));
    row->setHelp(tr("From %1.")
                     .arg(items::dayText(items::toLocal(m_context.books(), last->time).date(),
                                         woodLocale())));
}

OvenTest WeighingEntry::test(domain::Problems *problems) const
{
    domain::Row row = domain::emptyRow(TableId::OvenTest);
    const domain::Problems unread = m_fields->readInto(row);
    if (problems != nullptr)
        *problems = unread;
    auto test = domain::fromRow<OvenTest>(row);
    test.lot = m_lot;
    test.time = m_context.verbs.now();
    return test;
}

QString WeighingEntry::summary() const
{
    return m_moisture->text();
}

void WeighingEntry::showSummary()
{
    const auto moisture = domain::moistureOf(test());
    m_moisture->setText(moisture ? tr("Moisture %1.").arg(bothBases(*moisture))
                                 : tr("Weigh the piece as it is and oven-dry: the difference is "
                                      "its water."));
}

void WeighingEntry::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape)
        Q_EMIT closed();
    else if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) &&
             qobject_cast<QLineEdit *>(focusWidget()) != nullptr)
        save(); // from a field; a button has its own meaning
    else
        QWidget::keyPressEvent(event);
}

void WeighingEntry::save()
{
    m_fields->clearProblems();
    domain::Problems problems;
    const OvenTest weighed = test(&problems);
    if (!problems.isEmpty()) {
        m_fields->showProblems(problems);
        return;
    }
    const auto added = m_context.verbs.add(weighed, tr("log two weighings"));
    if (!added) {
        const domain::Problems others = m_fields->showProblems(added.problems());
        if (!others.isEmpty())
            m_context.refuse(others);
        return;
    }
    m_lot = 0; // the next one starts empty
    m_context.say(tr("Weighings saved. Undo takes them back."));
    Q_EMIT saved(added.value());
}

} // namespace rickyard::views
