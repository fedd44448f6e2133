// What the fires cost and what they did for it: by pit, by event or by month, as a table that sorts
// and exports.
#pragma once

#include "models/domain/fire/fuel_costs.h"
#include "models/items/derived_model.h"
#include "views/page.h"

class QComboBox;

namespace rickyard::views {

class FigureTable;
class TextLabel;

class CostTable : public QWidget
{
    Q_OBJECT

public:
    enum class By { Pit, Event, Month };

    explicit CostTable(PageContext &context, QWidget *parent = nullptr);
    void showFuel(const domain::FuelAnswer &fuel);
    void choose(By by);
    [[nodiscard]] FigureTable &view() { return *m_view; }
    [[nodiscard]] QComboBox &choice() { return *m_by; }
    [[nodiscard]] QString sentence() const;
    // What the columns are in and what they rest on.
    [[nodiscard]] QString basis() const;
    // Gives the reason when it fails.
    std::optional<QString> exportTo(const QString &path) const;

private:
    void build();
    void fill();
    void askForFile();
    [[nodiscard]] By by() const;
    [[nodiscard]] QVector<domain::FireWork> works() const;
    [[nodiscard]] items::DerivedRow rowOf(const domain::FireWork &work) const;
    [[nodiscard]] items::DerivedCell nameOf(const domain::FireWork &work) const;

    PageContext &m_context;
    domain::FuelAnswer m_fuel;
    QComboBox *m_by;
    TextLabel *m_sentence;
    TextLabel *m_basis;
    FigureTable *m_view;
};

} // namespace rickyard::views
