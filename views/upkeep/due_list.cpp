#include "views/upkeep/due_list.h"

#include "models/items/derived_model.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/due_delegate.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QButtonGroup>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

// When it is due, and first what it stands in the way of.
QString whenText(const Books &books, const TaskDue &task, const TaskBlock &block, Instant now)
{
    const QString when = dueText(books, task, now, true);
    if (!block.planned())
        return when;
    const QString text = QString(block.shortWords + QStringLiteral(" · ") + when);
    return block.overridden.isEmpty() ? text : DueList::tr("set aside: %1").arg(text);
}

} // namespace

DueList::DueList(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext),
      m_model(new items::DerivedModel({{tr("Task")}}, this)), m_view(new QListView(this)),
      m_filterRow(new QWidget(this)), m_filterFlow(new FlowLayout(m_filterRow)),
      m_filter(new QButtonGroup(this)),
      m_nothing(new TextLabel(tr("No task here."), TextStyle::Body, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_filterFlow->setSpacingSteps(1, 1);
    column->addWidget(m_filterRow);
    column->addWidget(m_nothing);
    column->addWidget(m_view, 1);
    m_view->setModel(m_model);
    m_view->setAccessibleName(tr("Tasks, most urgent first"));
    m_view->setFrameShape(QFrame::NoFrame);
    m_view->setMouseTracking(true);
    m_view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->setItemDelegate(new DueDelegate(
        [this](const QModelIndex &index) {
            const RecordId id = m_model->linkAt(index.row()).id;
            const Books &books = m_context.books();
            const Instant now = m_context.verbs.now();
            for (const TaskDue &task : m_context.answers.answers().upkeep.tasks) {
                if (task.task != id)
                    continue;
                const DueState state = dueStateOf(books, task, now);
                return DueDelegate::Entry{books.tasks.value(id).name,
                                          pitName(books, task.pit),
                                          whenText(books, task, m_blocks.value(id), now),
                                          static_cast<int>(state.role),
                                          state.word,
                                          task.meters,
                                          true};
            }
            return DueDelegate::Entry{};
        },
        m_view));
    connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex &current) {
                if (m_filling || !current.isValid())
                    return;
                m_chosen = m_model->linkAt(current.row()).id;
                Q_EMIT chosenChanged(m_chosen);
            });
    connect(m_view, &QAbstractItemView::activated, this, [this](const QModelIndex &index) {
        Q_EMIT activated(m_model->linkAt(index.row()).id);
    });
    m_filter->setExclusive(true);
}

void DueList::refresh()
{
    buildFilter();
    fill();
}

// One button a pit; built anew only when the pits or their names change.
void DueList::buildFilter()
{
    QVector<std::pair<qint64, QString>> wantedButtons{{kAll, tr("All")}};
    const Books &books = m_context.books();
    QSet<RecordId> pits;
    for (const UpkeepTask &task : books.tasks)
        if (!task.retired)
            pits.insert(task.pit.value_or(0));
    for (const Pit &pit : books.pits)
        if (pits.contains(pit.id))
            wantedButtons.append({pit.id, pit.name});
    if (pits.contains(0))
        wantedButtons.append({0, tr("Trailer and kit")});
    QVector<std::pair<qint64, QString>> present;
    for (const QAbstractButton *button : m_filter->buttons())
        present.append({button->property("pit").toLongLong(), button->text()});
    m_filterRow->setVisible(wantedButtons.size() > 2);
    if (present == wantedButtons)
        return;
    qDeleteAll(m_filter->buttons());
    if (std::none_of(wantedButtons.begin(), wantedButtons.end(),
                     [this](const auto &b) { return b.first == m_pit; }))
        m_pit = kAll;
    for (const auto &[pit, name] : wantedButtons) {
        auto *button = new QPushButton(name, m_filterRow);
        button->setCheckable(true);
        button->setProperty("role", "quiet");
        button->setProperty("pit", pit);
        button->setAccessibleName(tr("Show the tasks of: %1").arg(name));
        button->setChecked(pit == m_pit);
        m_filter->addButton(button);
        m_filterFlow->addWidget(button);
        connect(button, &QAbstractButton::clicked, this, [this, pit = pit] {
            m_pit = pit;
            fill();
        });
        button->show();
    }
}

bool DueList::wanted(const TaskDue &task) const
{
    return m_pit == kAll || task.pit == m_pit;
}

void DueList::fill()
{
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    m_blocks = taskBlocks(books, m_context.answers.answers().upkeep, now);
    QVector<items::DerivedRow> rows;
    int chosenRow = -1;
    for (const TaskDue &task : m_context.answers.answers().upkeep.tasks) {
        if (!wanted(task) || !books.tasks.contains(task.task))
            continue;
        if (task.task == m_chosen)
            chosenRow = static_cast<int>(rows.size());
        const DueState state = dueStateOf(books, task, now);
        QStringList run;
        for (const Meter &meter : task.meters)
            run << meterText(meter);
        const QString name = books.tasks.value(task.task).name;
        items::DerivedRow row;
        row.link = {TableId::UpkeepTask, task.task};
        row.cells = {{name, QVariant(),
                      tr("%1, %2: %3, %4; %5")
                          .arg(name, pitName(books, task.pit), state.word,
                               whenText(books, task, m_blocks.value(task.task), now),
                               run.join(QStringLiteral(", ")))}};
        row.standing = task.overdue ? Standing::Act : Standing::Good;
        rows << row;
    }
    m_filling = true;
    m_model->setRows(rows);
    m_filling = false;
    m_nothing->setVisible(rows.isEmpty());
    m_view->setVisible(!rows.isEmpty());
    if (rows.isEmpty()) {
        m_chosen = 0;
        Q_EMIT chosenChanged(0);
        return;
    }
    const int at = std::max(0, chosenRow);
    m_filling = chosenRow >= 0; // the same task again is no news
    m_view->setCurrentIndex(m_model->index(at, 0));
    m_filling = false;
}

RecordId DueList::chosen() const
{
    return m_chosen;
}

int DueList::shown() const
{
    return m_model->rowCount();
}

bool DueList::choose(RecordId task)
{
    const auto rowOf = [this](RecordId id) {
        for (int row = 0; row < m_model->rowCount(); ++row)
            if (m_model->linkAt(row).id == id)
                return row;
        return -1;
    };
    if (rowOf(task) < 0 && m_pit != kAll) {
        m_pit = kAll;
        for (QAbstractButton *button : m_filter->buttons())
            button->setChecked(button->property("pit").toLongLong() == kAll);
        fill();
    }
    const int row = rowOf(task);
    if (row < 0)
        return false;
    m_view->setCurrentIndex(m_model->index(row, 0));
    m_view->scrollTo(m_model->index(row, 0));
    return true;
}

void DueList::startSearch()
{
    m_view->setFocus(Qt::ShortcutFocusReason);
}

} // namespace rickyard::views
