// Two cooks as columns: label, first, second, and in words how they differ.
#pragma once

#include "views/fire/compare_rows.h"

#include <QWidget>

class QGridLayout;

namespace rickyard::views {

class CompareGrid : public QWidget
{
    Q_OBJECT

public:
    explicit CompareGrid(QWidget *parent = nullptr);
    void showRows(const QString &first, const QString &second, const QVector<CompareRow> &rows);

private:
    void addRow(int at, const CompareRow &row);

    QGridLayout *m_grid;
};

} // namespace rickyard::views
