// Every cook's fuel as a table: found by words, sorted by any column, written as CSV.
#pragma once

#include "models/items/derived_model.h"
#include "views/page.h"

class QTableView;

namespace rickyard::items {
class SearchProxy;
}

namespace rickyard::views {

class SearchField;

class FuelTable : public QWidget
{
    Q_OBJECT

public:
    explicit FuelTable(PageContext &context, QWidget *parent = nullptr);
    void showFuel(const domain::FuelAnswer &fuel);
    [[nodiscard]] QTableView &view() { return *m_view; }
    [[nodiscard]] SearchField &search() { return *m_search; }
    // Gives the reason when it fails.
    std::optional<QString> exportTo(const QString &path) const;

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    void build();
    void askAndExport();
    [[nodiscard]] items::DerivedRow rowOf(const domain::CookFuel &cook) const;

    PageContext &m_context;
    domain::FuelAnswer m_fuel;
    items::DerivedModel *m_model;
    items::SearchProxy *m_proxy;
    SearchField *m_search = nullptr;
    QTableView *m_view = nullptr;
};

} // namespace rickyard::views
