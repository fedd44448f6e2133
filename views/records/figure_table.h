// A table of computed rows: sorted by any column, found by words, Enter or a double click opens
// what a row is about. Widths follow the first rows that come.
#pragma once

#include "models/items/derived_model.h"

#include <QTableView>

#include <optional>

namespace rickyard::items {
class SearchProxy;
}

namespace rickyard::views {

class ColumnFit;

class FigureTable : public QTableView
{
    Q_OBJECT

public:
    // `name` for screen readers.
    FigureTable(const QVector<items::DerivedModel::Column> &columns, const QString &name,
                QWidget *parent = nullptr);
    // Columns are as wide as their contents, at most so many pixels at 100 %.
    void setWidest(int pixels);
    void setRows(const QVector<items::DerivedRow> &rows);
    void setWords(const QString &words);

    // A number and what it sorts by. A missing one shows the mark and sorts last either way.
    static items::DerivedCell figure(const QString &text, std::optional<double> sort);

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    items::DerivedModel *m_model;
    items::SearchProxy *m_proxy;
    ColumnFit *m_fit;
};

} // namespace rickyard::views
