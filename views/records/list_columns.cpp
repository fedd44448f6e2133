#include "views/records/list_columns.h"

#include "views/records/column_fit.h"

#include <QHeaderView>
#include <QMenu>
#include <QTableView>

namespace rickyard::views {

namespace {
constexpr auto kState = "columns3"; // of the header, once a person has set it
constexpr auto kSortedBy = "sorted_by";
constexpr auto kOrder = "order";
} // namespace

ListColumns::ListColumns(QTableView *view, const items::RecordModel &model, QSettings &settings)
    : QObject(view), m_view(view), m_model(model), m_settings(settings),
      m_fit(new ColumnFit(view, true))
{
    QHeaderView *header = m_view->horizontalHeader();
    header->setSectionsMovable(true);
    header->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(header, &QWidget::customContextMenuRequested, this, [this, header](const QPoint &at) {
        QMenu menu(header);
        fillMenu(menu);
        menu.exec(header->mapToGlobal(at));
    });
    restore();
    connect(&m_model, &QAbstractItemModel::rowsInserted, m_fit, &ColumnFit::fit);
    connect(&m_model, &QAbstractItemModel::modelReset, m_fit, &ColumnFit::fit);
    connect(m_fit, &ColumnFit::taken, this, &ListColumns::remember);
    connect(header, &QHeaderView::sectionResized, this, &ListColumns::remember);
    connect(header, &QHeaderView::sectionMoved, this, &ListColumns::remember);
    connect(header, &QHeaderView::sortIndicatorChanged, this, &ListColumns::rememberOrder);
}

QString ListColumns::key(const char *name) const
{
    return QStringLiteral("lists/%1/%2")
        .arg(domain::specOf(m_model.table()).key, QLatin1String(name));
}

void ListColumns::restore()
{
    QHeaderView *header = m_view->horizontalHeader();
    if (header->restoreState(m_settings.value(key(kState)).toByteArray())) {
        m_fit->stop();
        return;
    }
    // In the order of the records until a column is chosen: sorting by the first one, as the view
    // would do by itself, costs time on every list that is never looked at.
    header->setSortIndicator(m_settings.value(key(kSortedBy), -1).toInt(),
                             static_cast<Qt::SortOrder>(m_settings.value(key(kOrder)).toInt()));
    asAtFirst();
}

void ListColumns::asAtFirst()
{
    QVector<int> shown;
    for (int c = 0; c < m_model.columnCount(); ++c) {
        m_view->setColumnHidden(c, !m_model.listedAtFirst(c));
        if (m_model.listedAtFirst(c))
            shown << c;
    }
    m_fit->setShown(shown);
}

void ListColumns::remember()
{
    if (!m_fit->running())
        m_settings.setValue(key(kState), m_view->horizontalHeader()->saveState());
}

void ListColumns::sortAtFirst(int column, Qt::SortOrder order)
{
    if (!m_settings.contains(key(kSortedBy)))
        m_view->sortByColumn(column, order);
}

void ListColumns::rememberOrder(int column, Qt::SortOrder order)
{
    if (!m_view->isVisible())
        return;
    m_settings.setValue(key(kSortedBy), column);
    m_settings.setValue(key(kOrder), static_cast<int>(order));
    remember();
}

void ListColumns::show(int column, bool on)
{
    m_fit->stop();
    m_view->setColumnHidden(column, !on);
    if (on)
        m_view->resizeColumnToContents(column);
    remember();
}

void ListColumns::fillMenu(QMenu &menu)
{
    for (int c = 0; c < m_model.columnCount(); ++c) {
        QAction *action =
            menu.addAction(m_model.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString());
        action->setCheckable(true);
        action->setChecked(!m_view->isColumnHidden(c));
        connect(action, &QAction::toggled, this, [this, c](bool on) { show(c, on); });
    }
    menu.addSeparator();
    QAction *first = menu.addAction(tr("As many as fit"));
    first->setEnabled(!m_fit->running());
    connect(first, &QAction::triggered, this, [this] {
        m_settings.remove(key(kState));
        asAtFirst();
        m_fit->start();
    });
}

} // namespace rickyard::views
