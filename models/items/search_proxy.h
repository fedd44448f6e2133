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

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex &parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex &left, const QModelIndex &right) const override;

private:
    QStringList m_words;
};

} // namespace rickyard::items
