// What was changed on a cook after its fire was out: read only, kept by the program.
#pragma once

#include "models/items/record_model.h"
#include "models/items/search_proxy.h"
#include "views/page.h"

class QTableView;

namespace rickyard::views {

class TextLabel;

class CookChangesPanel : public QWidget
{
    Q_OBJECT

public:
    explicit CookChangesPanel(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    [[nodiscard]] int count() const;
    [[nodiscard]] QTableView &view() { return *m_view; }

Q_SIGNALS:
    void countChanged(int count);

private:
    void follow();

    items::RecordModel *m_model;
    items::SearchProxy *m_proxy;
    QTableView *m_view;
    TextLabel *m_none;
};

} // namespace rickyard::views
