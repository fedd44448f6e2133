// Which columns a list of records shows, how wide and in which order: fitted to its room at first,
// as a person sets them from then on, and remembered between sessions.
#pragma once

#include "models/items/record_model.h"

#include <QSettings>

class QMenu;
class QTableView;

namespace rickyard::views {

class ColumnFit;

class ListColumns : public QObject
{
    Q_OBJECT

public:
    // Owned by the view, whose model stands over `model` with the same columns.
    ListColumns(QTableView *view, const items::RecordModel &model, QSettings &settings);
    // A box for every column, and the way back to the fitted ones.
    void fillMenu(QMenu &menu);
    // Unless a person has chosen an order.
    void sortAtFirst(int column, Qt::SortOrder order);

private:
    void restore();
    void remember();
    void rememberOrder(int column, Qt::SortOrder order);
    void show(int column, bool on);
    void asAtFirst();
    [[nodiscard]] QString key(const char *name) const;

    QTableView *m_view;
    const items::RecordModel &m_model;
    QSettings &m_settings;
    ColumnFit *m_fit;
};

} // namespace rickyard::views
