// How the suppliers kept to their word, side by side.
#pragma once

#include "views/page.h"

#include <QTimer>

namespace rickyard::views {

class Card;
class FigureTable;

class SupplierScores : public QWidget
{
    Q_OBJECT

public:
    explicit SupplierScores(PageContext &context, QWidget *parent = nullptr);

    [[nodiscard]] FigureTable &table() const { return *m_table; }
    void refresh();

Q_SIGNALS:
    void opened(qint64 supplier);

protected:
    void showEvent(QShowEvent *event) override;

private:
    PageContext &m_context;
    FigureTable *m_table;
    Card *m_card; // hidden while there is no supplier
    QTimer m_soon;
    bool m_stale = true; // worked out when it is seen
};

} // namespace rickyard::views
