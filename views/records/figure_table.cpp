#include "views/records/figure_table.h"

#include "models/items/search_proxy.h"
#include "views/records/column_fit.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QHeaderView>

#include <numeric>

namespace rickyard::views {

FigureTable::FigureTable(const QVector<items::DerivedModel::Column> &columns, const QString &name,
                         QWidget *parent)
    : QTableView(parent), m_model(new items::DerivedModel(columns, this)),
      m_proxy(new items::SearchProxy(this)), m_fit(new ColumnFit(this, false))
{
    m_proxy->setSourceModel(m_model);
    setModel(m_proxy);
    QVector<int> all(m_model->columnCount());
    std::iota(all.begin(), all.end(), 0);
    m_fit->setShown(all);
    m_fit->setWidest(150);
    setAccessibleName(name);
    setSelectionBehavior(SelectRows);
    setSelectionMode(SingleSelection);
    setEditTriggers(NoEditTriggers);
    setShowGrid(false);
    setWordWrap(false);
    setTabKeyNavigation(false);
    setSortingEnabled(true);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(theme(this).rowHeight());
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    connect(this, &QTableView::activated, this, [this](const QModelIndex &index) {
        const domain::Link link = m_model->linkAt(m_proxy->mapToSource(index).row());
        if (link.id != 0)
            Q_EMIT opened(link);
    });
}

void FigureTable::setRows(const QVector<items::DerivedRow> &rows)
{
    m_model->setRows(rows);
    m_fit->fit();
}

void FigureTable::setWidest(int pixels)
{
    m_fit->setWidest(pixels);
}

void FigureTable::setWords(const QString &words)
{
    m_proxy->setWords(words);
}

items::DerivedCell FigureTable::figure(const QString &text, std::optional<double> sort)
{
    return {sort ? text : missingMark(), sort ? QVariant(*sort) : QVariant(), QString()};
}

} // namespace rickyard::views
