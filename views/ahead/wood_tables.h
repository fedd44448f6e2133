// The numbers behind the wood answer as rows of tables, lines of text and CSV.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/items/derived_model.h"

namespace rickyard::views {

// What happens if nothing is ordered, if it comes a week late, if every cook is 20 °F colder: a
// line each. `colder`: the what-if of it, where the answer proposes no order.
QStringList ifLines(const domain::WoodAnswer &answer,
                    const std::optional<domain::WoodWhatIfAnswer> &colder,
                    const domain::Wording &wording);

// Suppliers side by side. The link's number is the place of the source, counted from 1.
QVector<items::DerivedModel::Column> supplierColumns();
QVector<items::DerivedRow> supplierRows(const domain::WoodAnswer &answer,
                                        const domain::Wording &wording);
// Every event with its chances: nothing ordered, and as thought up.
QVector<items::DerivedModel::Column> eventColumns();
QVector<items::DerivedRow> eventRows(const domain::WoodAnswer &answer,
                                     const QVector<domain::WoodRisk> &with,
                                     const domain::Wording &wording);
// The fan day by day.
QVector<items::DerivedModel::Column> courseColumns(const domain::Wording &wording);
QVector<items::DerivedRow> courseRows(const domain::WoodAnswer &answer,
                                      const QVector<domain::StockPoint> &with,
                                      const domain::Wording &wording);
// The same as CSV, in seasoned pounds whatever the yard's units.
QByteArray courseCsv(const domain::WoodAnswer &answer, const QVector<domain::StockPoint> &with);

} // namespace rickyard::views
