// Sorts by value and keeps the rows in which every typed word occurs in some column.
#pragma once

#include <QSortFilterProxyModel>

namespace rickyard::items {

class SearchProxy : public QSortFilterProxyModel
{
    Q_OBJECT

public:
    explicit SearchProxy(QObject *parent = nullptr);
    void setWords(const QString &text);
    void setSourceModel(QAbstractItemModel *model) override;

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex &parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex &left, const QModelIndex &right) const override;

private:
    void forgetKeys();
    [[nodiscard]] const QVariant &keyOf(const QModelIndex &index) const;

    QStringList m_words;
    // What a column sorts by, asked for once a row: a sort compares each row a score of times, and
    // making the value is the slow part.
    mutable QHash<int, QVariant> m_keys;
    mutable int m_keyColumn = -1;
};

} // namespace rickyard::items
