// How wood reads on its page: readiness as a word with its role, moisture on both bases, amounts
// in the yard's units.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/stock.h"
#include "views/theme/theme.h"

#include <QLocale>
#include <QString>

class QTableView;

namespace rickyard::views {

const QLocale &woodLocale();
QString readinessWord(domain::Readiness readiness);
Role readinessRole(domain::Readiness readiness);
// How a delivery stands against what was paid for and promised.
QString deliveryWord(domain::Standing standing);
Role deliveryRole(domain::Standing standing);
// "18.2 % dry basis · 15.4 % wet basis"
QString bothBases(domain::Moisture moisture);
// "18.2 % dry", for narrow places.
QString dryBasis(domain::Moisture moisture, int decimals = 0);

// A value and its unit apart, for numerals.
struct Amount {
    QString value;
    QString unit;
    [[nodiscard]] QString text() const;
};
Amount heatAmount(domain::Heat heat, bool metric);
Amount massAmount(domain::Mass mass, bool metric);
Amount stackedAmount(domain::Volume volume, bool metric); // cords, or cubic metres
Amount solidAmount(domain::Volume volume, bool metric);   // cubic feet, or cubic metres

// What an order asks for, as an invoice would say it: in its unit, else in cords.
struct OrderedAmount {
    domain::SellUnit unit = domain::SellUnit::Cord;
    domain::Plain count;
};
OrderedAmount orderedAmount(const domain::WoodOrder &order);

// As high as its rows, at most so many, so that a table within a page needs no scroll bar of its
// own. Once more when it is seen: rows have their height from the style.
void fitToRows(QTableView &table, int most);

} // namespace rickyard::views
