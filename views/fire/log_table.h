// What the charts of the log draw, as a table: sorted by any column, Enter opens a cook.
#pragma once

#include "models/domain/fire/use_line.h"
#include "models/items/derived_model.h"
#include "views/page.h"

class QTableView;

namespace rickyard::items {
class SearchProxy;
}

namespace rickyard::views {

class LogTable : public QWidget
{
    Q_OBJECT

public:
    explicit LogTable(PageContext &context, QWidget *parent = nullptr);
    void showCooks(const QVector<domain::CookFuel> &cooks, domain::UseAgainst against,
                   const QVector<domain::UseLine> &lines);
    [[nodiscard]] QTableView &view() { return *m_view; }

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    PageContext &m_context;
    items::DerivedModel *m_model;
    items::SearchProxy *m_proxy;
    QTableView *m_view;
    bool m_widthsSet = false;
};

} // namespace rickyard::views
