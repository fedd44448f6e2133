// Wood that should have come: each late order with how late it is, when they were last asked, and
// one press to note that they were asked today.
#pragma once

#include "models/domain/answers/headline.h"
#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class Card;

class LateOrders : public QWidget
{
    Q_OBJECT

public:
    explicit LateOrders(PageContext &context, QWidget *parent = nullptr);

    void refresh(); // hides itself when nothing is late

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    PageContext &m_context;
    Card *m_card;
    QVBoxLayout *m_rows;
};

} // namespace rickyard::views
