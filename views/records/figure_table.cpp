#include "views/records/figure_table.h"

#include "models/items/search_proxy.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QHeaderView>

#include <algorithm>

namespace rickyard::views {

FigureTable::FigureTable(const QVector<items::DerivedModel::Column> &columns, const QString &name,
                         QWidget *parent)
    : QTableView(parent), m_model(new items::DerivedModel(columns, this)),
      m_proxy(new items::SearchProxy(this))
{
    m_proxy->setSourceModel(m_model);
    setModel(m_proxy);
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
    horizontalHeader()->setStretchLastSection(true);
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
    if (m_fitted || rows.isEmpty())
        return;
    m_fitted = true;
    for (int c = 0; c + 1 < m_model->columnCount(); ++c) {
        resizeColumnToContents(c);
        setColumnWidth(c, std::min(columnWidth(c), theme(this).px(m_widest)));
    }
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
