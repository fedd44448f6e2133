#include "models/items/search_proxy.h"

#include "models/items/record_model.h"

namespace rickyard::items {

SearchProxy::SearchProxy(QObject *parent) : QSortFilterProxyModel(parent)
{
    setSortRole(SortRole);
    setDynamicSortFilter(true);
}

void SearchProxy::setWords(const QString &text)
{
    m_words = text.toLower().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    invalidateFilter();
}

bool SearchProxy::filterAcceptsRow(int row, const QModelIndex &parent) const
{
    if (m_words.isEmpty())
        return true;
    QString line;
    for (int c = 0; c < sourceModel()->columnCount(parent); ++c) {
        line += sourceModel()->index(row, c, parent).data().toString().toLower();
        line += QLatin1Char('\n');
    }
    return std::all_of(m_words.cbegin(), m_words.cend(),
                       [&](const QString &word) { return line.contains(word); });
}

bool SearchProxy::lessThan(const QModelIndex &left, const QModelIndex &right) const
{
    const QVariant a = left.data(SortRole);
    const QVariant b = right.data(SortRole);
    // Missing values stand last in either direction.
    if (a.isValid() != b.isValid())
        return (sortOrder() == Qt::AscendingOrder) == a.isValid();
    return QSortFilterProxyModel::lessThan(left, right);
}

} // namespace rickyard::items
