#include "views/records/record_list.h"

#include "views/records/list_columns.h"
#include "views/records/record_form.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/search_field.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>
#include <QToolButton>

namespace rickyard::views {

using domain::RecordId;
using domain::TableId;

namespace {

QString capitalised(const QString &text)
{
    return QString(text.left(1).toUpper() + text.mid(1));
}

} // namespace

RecordList::RecordList(PageContext &context, TableId table, const QString &iconName,
                       const QString &emptyText, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_model(new items::RecordModel(context.verbs.yard(), table, this)),
      m_proxy(new items::SearchProxy(this))
{
    m_proxy->setSourceModel(m_model);
    auto *outer = new QHBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_splitter = new QSplitter(Qt::Horizontal, this);
    m_splitter->setChildrenCollapsible(false);
    outer->addWidget(m_splitter);
    buildList(iconName, emptyText);
    buildDetail();
    m_splitter->setStretchFactor(0, 3);
    m_splitter->setStretchFactor(1, 2);
    const QString key =
        QString(QStringLiteral("lists/") + domain::specOf(table).key + QStringLiteral("/splitter"));
    m_splitter->restoreState(m_context.settings.value(key).toByteArray());
    connect(m_splitter, &QSplitter::splitterMoved, this,
            [this, key] { m_context.settings.setValue(key, m_splitter->saveState()); });
    connect(m_model, &QAbstractItemModel::rowsInserted, this, &RecordList::followCount);
    connect(m_model, &QAbstractItemModel::rowsRemoved, this, &RecordList::followCount);
    connect(m_model, &QAbstractItemModel::modelReset, this, &RecordList::followCount);
    followCount();
}

RecordList::~RecordList() = default;

void RecordList::buildList(const QString &iconName, const QString &emptyText)
{
    const Theme &look = theme(this);
    const domain::TableSpec &spec = domain::specOf(m_model->table());
    auto *left = new QWidget(m_splitter);
    auto *column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));

    m_tools = new QWidget(left);
    auto *bar = new QHBoxLayout(m_tools);
    bar->setContentsMargins(0, 0, 0, 0);
    bar->setSpacing(look.space(2));
    m_search = new SearchField(tr("Find in %1").arg(spec.plural), m_tools);
    m_search->setAccessibleName(tr("Find in %1").arg(spec.plural));
    connect(m_search, &QLineEdit::textChanged, m_proxy, &items::SearchProxy::setWords);
    m_add = new QPushButton(icon(QStringLiteral("add"), Role::AccentInk),
                            tr("Add %1").arg(spec.singular), m_tools);
    m_add->setProperty("role", "primary");
    m_add->setAccessibleName(tr("Add %1").arg(spec.singular));
    m_add->setEnabled(!m_context.readOnly());
    connect(m_add, &QPushButton::clicked, this, [this] { addNew(); });
    auto *columns = new QToolButton(m_tools);
    columns->setIcon(icon(QStringLiteral("columns"), Role::Ink));
    columns->setToolTip(tr("Columns of the list"));
    columns->setAccessibleName(tr("Columns of the list of %1").arg(spec.plural));
    columns->setPopupMode(QToolButton::InstantPopup);
    auto *menu = new QMenu(columns);
    connect(menu, &QMenu::aboutToShow, this, [this, menu] {
        menu->clear();
        m_columns->fillMenu(*menu);
    });
    columns->setMenu(menu);
    bar->addWidget(m_search, 1);
    bar->addWidget(m_add);
    bar->addWidget(columns);
    column->addWidget(m_tools);

    m_stack = new QStackedWidget(left);
    m_view = new QTableView(m_stack);
    m_view->setModel(m_proxy);
    m_view->setAccessibleName(capitalised(spec.plural));
    m_view->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_view->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_view->horizontalHeader()->setResizeContentsPrecision(40);
    m_columns = new ListColumns(m_view, *m_model, m_context.settings);
    m_view->setSortingEnabled(true);
    m_view->setShowGrid(false);
    m_view->setWordWrap(false);
    m_view->setTabKeyNavigation(false);
    m_view->verticalHeader()->hide();
    m_view->verticalHeader()->setDefaultSectionSize(look.rowHeight());
    m_view->horizontalHeader()->setHighlightSections(false);
    connect(m_view->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex &current) { choose(current); });
    auto *remove = new QShortcut(QKeySequence::Delete, m_view);
    remove->setContext(Qt::WidgetShortcut);
    connect(remove, &QShortcut::activated, this, &RecordList::deleteChosen);
    m_empty = new EmptyState(iconName, tr("No %1 yet").arg(spec.plural), emptyText, m_stack);
    m_empty->setAction(tr("Add %1").arg(spec.singular));
    m_empty->actionButton()->setEnabled(!m_context.readOnly());
    connect(m_empty, &EmptyState::triggered, this, [this] { addNew(); });
    m_stack->addWidget(m_view);
    m_stack->addWidget(m_empty);
    column->addWidget(m_stack, 1);
    m_splitter->addWidget(left);
}

void RecordList::buildDetail()
{
    const Theme &look = theme(this);
    m_side = new QStackedWidget(m_splitter);
    auto *none = new QWidget(m_side);
    auto *noneLayout = new QVBoxLayout(none);
    auto *hint = new TextLabel(tr("Choose one of the %1 to see and change it.")
                                   .arg(domain::specOf(m_model->table()).plural),
                               TextStyle::Body, Role::InkMuted, none);
    hint->setWordWrap(true);
    hint->setAlignment(Qt::AlignCenter);
    noneLayout->addWidget(hint);
    auto *some = new QWidget(m_side);
    auto *layout = new QVBoxLayout(some);
    layout->setContentsMargins(look.space(4), 0, 0, 0);
    layout->setSpacing(look.space(3));
    m_detailHolder = new QWidget(some);
    auto *holder = new QVBoxLayout(m_detailHolder);
    holder->setContentsMargins(0, 0, 0, 0);
    m_detailHolder->hide();
    m_form = new RecordForm(m_context, m_model->table(), some);
    layout->addWidget(m_detailHolder);
    layout->addWidget(m_form, 1);
    m_side->addWidget(none);
    m_side->addWidget(some);
    m_side->setMinimumWidth(look.px(300));
    m_splitter->addWidget(m_side);
    connect(m_form, &RecordForm::saved, this, [this](qint64 id) {
        m_context.say(tr("Saved."));
        show(id);
    });
    connect(m_form, &RecordForm::cancelled, this, [this] {
        if (m_form->id() == 0)
            m_side->setCurrentIndex(0);
    });
    connect(m_form, &RecordForm::deleteAsked, this, [this] { deleteChosen(); });
    // An undo elsewhere may change or take away what the form shows.
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (const workspace::Change &c : changes.set) {
                    if (c.table != m_model->table() || c.id != m_form->id() || c.id == 0)
                        continue;
                    if (!c.after)
                        m_side->setCurrentIndex(0);
                    else if (!m_form->dirty())
                        m_form->load(c.id);
                }
            });
}

void RecordList::setDetail(QWidget *detail)
{
    m_detailHolder->layout()->addWidget(detail);
    m_detailHolder->show();
}

void RecordList::setTallDetail(QWidget *detail)
{
    m_form->setHead(detail);
    m_side->setMinimumWidth(theme(this).px(400)); // figures beside each other, and a chart
}

void RecordList::addTool(QWidget *tool)
{
    static_cast<QHBoxLayout *>(m_tools->layout())->insertWidget(1, tool);
}

void RecordList::sortBy(const QString &fieldKey, Qt::SortOrder order)
{
    m_columns->sortAtFirst(m_model->columnOfField(fieldKey), order);
}

void RecordList::followCount()
{
    m_stack->setCurrentWidget(m_model->rowCount() == 0 ? static_cast<QWidget *>(m_empty) : m_view);
    m_tools->setVisible(m_model->rowCount() > 0);
}

void RecordList::choose(const QModelIndex &index)
{
    const RecordId id = index.data(items::RecordIdRole).toLongLong();
    if (id == 0 || (id == m_form->id() && m_side->currentIndex() == 1))
        return;
    if (!leaveForm())
        return;
    m_form->load(id);
    m_side->setCurrentIndex(1);
    Q_EMIT chosenChanged(id);
}

// Nothing typed is lost by a click: what is complete is saved, what is refused stays in sight.
bool RecordList::leaveForm()
{
    if (m_side->currentIndex() != 1 || !m_form->dirty() || m_context.readOnly())
        return true;
    if (m_form->save())
        return true;
    m_context.say(tr("The form is not saved yet: see the messages at its fields."));
    return false;
}

bool RecordList::show(RecordId id)
{
    const int row = m_model->rowOfId(id);
    if (row < 0)
        return false;
    m_search->clear();
    const QModelIndex index = m_proxy->mapFromSource(m_model->index(row, 0));
    int column = 0;
    while (column < m_model->columnCount() - 1 && m_view->isColumnHidden(column))
        ++column;
    m_view->setCurrentIndex(index.siblingAtColumn(column));
    m_view->scrollTo(index.siblingAtColumn(column));
    choose(index);
    return true;
}

void RecordList::addedBy(const std::function<void()> &way)
{
    m_way = way;
    m_add->hide();
}

void RecordList::addNew()
{
    if (m_way)
        m_way();
    else
        addNew(domain::emptyRow(m_model->table()));
}

void RecordList::addNew(const domain::Row &prefilled)
{
    if (m_context.readOnly() || !leaveForm())
        return;
    m_side->setCurrentIndex(1);
    m_form->startNew(prefilled);
    m_view->clearSelection();
    Q_EMIT chosenChanged(0);
}

void RecordList::startSearch()
{
    m_search->setFocus(Qt::ShortcutFocusReason);
}

RecordId RecordList::chosen() const
{
    return m_side->currentIndex() == 1 ? m_form->id() : 0;
}

void RecordList::deleteChosen()
{
    QVector<RecordId> ids;
    const QModelIndexList rows =
        m_view->selectionModel()->selectedRows(m_view->horizontalHeader()->logicalIndex(0));
    for (const QModelIndex &index : rows)
        ids << index.data(items::RecordIdRole).toLongLong();
    if (ids.isEmpty() && m_form->id() != 0)
        ids << m_form->id();
    if (ids.isEmpty() || m_context.readOnly())
        return;
    // No question asked: a deletion is one step that Undo takes back, and the notice says so.
    const auto done = m_context.verbs.remove(m_model->table(), ids);
    if (!done) {
        m_context.refuse(done.problems());
        return;
    }
    m_side->setCurrentIndex(0);
    m_context.say(ids.size() == 1 ? tr("Deleted. Undo brings it back.")
                                  : tr("%1 deleted. Undo brings them back.").arg(ids.size()));
}

} // namespace rickyard::views
