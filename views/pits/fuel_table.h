// Every cook's fuel as a table: found by words, sorted by any column, written as CSV.
#pragma once

#include "models/domain/fire/fuel.h"
#include "views/page.h"
#include "views/records/figure_table.h"

namespace rickyard::views {

class SearchField;

class FuelTable : public QWidget
{
    Q_OBJECT

public:
    explicit FuelTable(PageContext &context, QWidget *parent = nullptr);
    void showFuel(const domain::FuelAnswer &fuel);
    [[nodiscard]] FigureTable &view() { return *m_view; }
    [[nodiscard]] SearchField &search() { return *m_search; }
    // Gives the reason when it fails.
    std::optional<QString> exportTo(const QString &path) const;

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    void build();
    void askForFile();
    [[nodiscard]] items::DerivedRow rowOf(const domain::CookFuel &cook) const;

    PageContext &m_context;
    domain::FuelAnswer m_fuel;
    SearchField *m_search = nullptr;
    FigureTable *m_view = nullptr;
};

} // namespace rickyard::views
