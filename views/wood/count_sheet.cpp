#include "views/wood/count_sheet.h"

#include "models/domain/wood/stock.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"
#include "views/wood/count_row.h"
#include "views/wood/wood_words.h"

#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::Mass;
using domain::RecordId;
using domain::TableId;

QVector<RecordId> ricksToCount(const domain::Books &books, domain::Instant now)
{
    QVector<domain::Lot> lots;
    for (const domain::LotStock &stock : domain::stockAt(books, now).lots)
        if (stock.dryMass >= domain::kLeastWood || stock.dryMass <= -domain::kLeastWood)
            lots << books.lots.value(stock.lot);
    std::stable_sort(lots.begin(), lots.end(), [](const domain::Lot &a, const domain::Lot &b) {
        if (a.place.isEmpty() != b.place.isEmpty())
            return b.place.isEmpty();
        const int byPlace = QString::localeAwareCompare(a.place.toLower(), b.place.toLower());
        return byPlace != 0 ? byPlace < 0 : a.name.localeAwareCompare(b.name) < 0;
    });
    QVector<RecordId> ids;
    for (const domain::Lot &lot : lots)
        ids << lot.id;
    return ids;
}

CountSheet::CountSheet(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &CountSheet::refresh);
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (TableId table :
                     {TableId::Lot, TableId::Movement, TableId::MoistureReading, TableId::OvenTest,
                      TableId::Species, TableId::Feed, TableId::Cook, TableId::Yard})
                    if (isVisible() && changes.touches(table)) {
                        m_soon.start();
                        return;
                    }
            });
    auto *leave = new QShortcut(QKeySequence(Qt::Key_Escape), this);
    leave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(leave, &QShortcut::activated, this, &CountSheet::closed);
    auto *quickSave = new QShortcut(QKeySequence::Save, this);
    quickSave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(quickSave, &QShortcut::activated, this, &CountSheet::save);
}

void CountSheet::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(look.space(3));
    m_scroll = new ColumnScroll;
    auto *body = new QWidget;
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, look.space(2), 0);
    m_card = new Card;
    auto *how = new TextLabel(tr("Walk along the ricks. Tab or Return goes on; leave a rick empty "
                                 "that you do not count."),
                              TextStyle::Body, Role::InkMuted);
    how->setWordWrap(true);
    m_card->body()->addWidget(how);
    m_none = new TextLabel(tr("The books hold no wood to count. Receive a delivery first."));
    m_card->body()->addWidget(m_none);
    m_column = new QVBoxLayout;
    m_column->setSpacing(0);
    m_card->body()->addLayout(m_column);
    column->addWidget(m_card);
    column->addStretch(1);
    m_scroll->setWidget(body);
    outer->addWidget(m_scroll, 1);
    outer->addWidget(buildFoot());
}

QWidget *CountSheet::buildFoot()
{
    const Theme &look = theme(this);
    auto *holder = new QWidget; // with the room that the scroll bar takes above
    auto *column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 0, look.space(2), 0);
    auto *foot = new Card;
    column->addWidget(foot);
    m_notice = new NoticeBar;
    foot->body()->addWidget(m_notice);
    m_summary = new TextLabel(QString(), TextStyle::BodyStrong);
    m_summary->setWordWrap(true);
    foot->body()->addWidget(m_summary);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(2));
    m_note = new QLineEdit;
    m_note->setPlaceholderText(tr("Note, kept with each entry"));
    m_note->setAccessibleName(tr("Note on the count"));
    m_save = new QPushButton(tr("Correct the ledger"));
    m_save->setProperty("role", "primary");
    m_save->setAccessibleName(tr("Correct the ledger to what was counted"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the count; what is typed waits"));
    row->addWidget(m_note, 1);
    row->addWidget(m_save);
    row->addWidget(close);
    foot->body()->addLayout(row);
    auto *rule = new TextLabel(
        tr("Causes are weighed by our own rule, from the feeds, the delivery, the splits weighed "
           "and the drying: a hint where to look, no proof."),
        TextStyle::Caption, Role::InkMuted);
    rule->setWordWrap(true);
    foot->body()->addWidget(rule);
    connect(m_save, &QPushButton::clicked, this, &CountSheet::save);
    connect(close, &QPushButton::clicked, this, &CountSheet::closed);
    return holder;
}

QVector<CountRow *> CountSheet::rows() const
{
    QVector<CountRow *> all;
    for (int i = 0; i < m_column->count(); ++i)
        if (auto *row = qobject_cast<CountRow *>(m_column->itemAt(i)->widget()))
            all << row;
    return all;
}

void CountSheet::open()
{
    m_notice->dismiss();
    refresh();
    if (!rows().isEmpty())
        rows().first()->focusFirst();
}

// Rows stay as long as their rick is to be counted or something is typed in them.
void CountSheet::refresh()
{
    QVector<RecordId> wanted = ricksToCount(m_context.books(), m_context.verbs.now());
    const QList<RecordId> shown = m_rows.keys();
    for (const RecordId id : shown) {
        if (wanted.contains(id))
            continue;
        if (m_context.books().lots.contains(id) && m_rows.value(id)->started()) {
            wanted << id;
            continue;
        }
        CountRow *gone = m_rows.take(id);
        m_column->removeWidget(gone);
        gone->hide();
        gone->deleteLater();
    }
    for (int i = 0; i < wanted.size(); ++i) {
        CountRow *row = m_rows.value(wanted.at(i));
        if (row == nullptr) {
            row = new CountRow(m_context, wanted.at(i));
            connect(row, &CountRow::edited, this, &CountSheet::sumUp);
            m_rows.insert(wanted.at(i), row);
        } else {
            row->refresh();
        }
        if (m_column->indexOf(row) != i) {
            m_column->removeWidget(row);
            m_column->insertWidget(i, row);
        }
        row->setHairline(i > 0);
        row->show();
    }
    m_none->setVisible(wanted.isEmpty());
    sumUp();
}

void CountSheet::sumUp()
{
    const bool metric = m_context.books().yard().metric;
    int counted = 0;
    int begun = 0;
    Mass drift;
    for (const CountRow *row : rows()) {
        begun += row->started() ? 1 : 0;
        if (const auto &found = row->drift()) {
            ++counted;
            drift += found->drift();
        }
    }
    m_save->setEnabled(begun > 0 && !m_context.readOnly());
    if (counted == 0) {
        m_summary->setText(tr("Nothing counted yet."));
        return;
    }
    const QString amount = massAmount(drift < Mass() ? -drift : drift, metric).text();
    m_summary->setText(
        drift < Mass() ? tr("%1 of %2 ricks counted: together %3 of dry wood less than the books.")
                             .arg(counted)
                             .arg(m_rows.size())
                             .arg(amount)
                       : tr("%1 of %2 ricks counted: together %3 of dry wood more than the books.")
                             .arg(counted)
                             .arg(m_rows.size())
                             .arg(amount));
}

QString CountSheet::summary() const
{
    return m_summary->text();
}

bool CountSheet::save()
{
    if (m_context.readOnly())
        return false;
    m_notice->dismiss();
    QVector<domain::RickCount> counts;
    CountRow *refused = nullptr;
    for (CountRow *row : rows()) {
        QString problem;
        if (const auto count = row->count(&problem))
            counts << *count;
        else if (!problem.isEmpty()) {
            row->showProblem(problem);
            refused = refused == nullptr ? row : refused;
        }
    }
    if (refused == nullptr) {
        const auto done = m_context.verbs.countRicks(counts, m_note->text().trimmed());
        if (done) {
            const auto many = counts.size();
            for (CountRow *row : rows())
                row->clear();
            m_note->clear();
            m_context.say(many == 1 ? tr("1 rick is counted; the difference stays in the ledger. "
                                         "Undo takes it back.")
                                    : tr("%1 ricks are counted; the differences stay in the "
                                         "ledger. Undo takes them back.")
                                          .arg(many));
            Q_EMIT saved();
            return true;
        }
        for (const domain::Problem &problem : done.problems()) {
            CountRow *row = m_rows.value(problem.field.toLongLong());
            if (row == nullptr) {
                m_notice->showProblem(problem.message);
                continue;
            }
            row->showProblem(problem.message);
            refused = refused == nullptr ? row : refused;
        }
    }
    if (refused != nullptr) {
        refused->focusFirst();
        m_scroll->ensureWidgetVisible(refused);
    }
    return false;
}

} // namespace rickyard::views
