#include "models/items/search_proxy.h"

#include "models/items/record_model.h"

namespace rickyard::items {

SearchProxy::SearchProxy(QObject *parent) : QSortFilterProxyModel(parent)
{
    setSortRole(SortRole);
    setDynamicSortFilter(true);
}

// Connected before the base class listens, so that no key outlives its row.
void SearchProxy::setSourceModel(QAbstractItemModel *model)
{
    if (sourceModel() != nullptr)
        disconnect(sourceModel(), nullptr, this, nullptr);
    forgetKeys();
    if (model != nullptr) {
        connect(model, &QAbstractItemModel::dataChanged, this, &SearchProxy::forgetKeys);
        connect(model, &QAbstractItemModel::rowsInserted, this, &SearchProxy::forgetKeys);
        connect(model, &QAbstractItemModel::rowsRemoved, this, &SearchProxy::forgetKeys);
        connect(model, &QAbstractItemModel::modelReset, this, &SearchProxy::forgetKeys);
        connect(model, &QAbstractItemModel::layoutChanged, this, &SearchProxy::forgetKeys);
    }
    QSortFilterProxyModel::setSourceModel(model);
}

void SearchProxy::forgetKeys()
{
    m_keys.clear();
}

const QVariant &SearchProxy::keyOf(const QModelIndex &index) const
{
    if (index.column() != m_keyColumn) {
        m_keys.clear();
        m_keyColumn = index.column();
    }
    const auto known = m_keys.constFind(index.row());
    return known != m_keys.constEnd() ? *known : *m_keys.insert(index.row(), index.data(SortRole));
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
    const QVariant a = keyOf(left);
    const QVariant b = keyOf(right);
    // Missing values stand last in either direction.
    if (a.isValid() != b.isValid())
        return (sortOrder() == Qt::AscendingOrder) == a.isValid();
    if (a.userType() == QMetaType::QString)
        return a.toString().compare(b.toString(), sortCaseSensitivity()) < 0;
    return QVariant::compare(a, b) == QPartialOrdering::Less;
}

} // namespace rickyard::items
