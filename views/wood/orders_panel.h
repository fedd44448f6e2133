// The orders under way over the list of all orders: what is a draft, sent, promised or late, with
// what may follow beside each; a new one by hand or from the answer's proposal.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

#include <QMap>
#include <QTimer>

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class Card;
class OrderRow;
class OrderSheet;
class TextLabel;

class OrdersPanel : public QWidget
{
    Q_OBJECT

public:
    explicit OrdersPanel(PageContext &context, QWidget *parent = nullptr);

    [[nodiscard]] OrderRow *row(domain::RecordId order) const { return m_rows.value(order); }
    [[nodiscard]] QVector<OrderRow *> rows() const; // as they stand, from above
    [[nodiscard]] OrderSheet &sheet() const { return *m_sheet; }
    [[nodiscard]] QString proposal() const;
    void startNew();
    void refresh();

Q_SIGNALS:
    void cameAsked(qint64 order);
    void changeAsked(qint64 order);

private:
    void follow(const workspace::Changes &changes);
    void showProposal();
    void startProposed();
    void openSheet(bool open);
    [[nodiscard]] QVector<domain::RecordId> underWay() const;

    PageContext &m_context;
    Card *m_card;
    OrderSheet *m_sheet;
    QVBoxLayout *m_column;
    TextLabel *m_none;
    QWidget *m_proposalBox;
    TextLabel *m_proposal;
    QPushButton *m_new;
    QPushButton *m_take;
    QMap<domain::RecordId, OrderRow *> m_rows;
    QTimer m_soon;
};

} // namespace rickyard::views
