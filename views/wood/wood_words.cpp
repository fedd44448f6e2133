#include "views/wood/wood_words.h"

#include "models/domain/quantities/units.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QCoreApplication>
#include <QHeaderView>
#include <QTableView>

namespace rickyard::views {

using domain::Dimension;
using domain::Readiness;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Wood", text);
}

Amount amountIn(qint64 base, Dimension dimension, const char *unitKey, int decimals)
{
    const domain::Unit *unit = domain::findUnit(dimension, QString::fromLatin1(unitKey));
    return {domain::formatNumber(domain::toUnit(base, *unit), decimals, woodLocale()),
            unit->symbol};
}

} // namespace

const QLocale &woodLocale()
{
    static const QLocale locale(QStringLiteral("en_US"));
    return locale;
}

QString readinessWord(Readiness readiness)
{
    switch (readiness) {
    case Readiness::Dry:
        return tr("Dry enough");
    case Readiness::Wet:
        return tr("Too wet");
    case Readiness::NoReading:
        return tr("Not read yet");
    case Readiness::OnHold:
        return tr("On hold");
    case Readiness::NeverBurn:
        return tr("Never burn");
    case Readiness::Empty:
        return tr("Used up");
    }
    return {};
}

Role readinessRole(Readiness readiness)
{
    switch (readiness) {
    case Readiness::Dry:
        return Role::Good;
    case Readiness::Wet:
    case Readiness::OnHold:
        return Role::Watch;
    case Readiness::NeverBurn:
        return Role::Act;
    case Readiness::NoReading:
    case Readiness::Empty:
        break;
    }
    return Role::Info;
}

QString deliveryWord(domain::Standing standing)
{
    switch (standing) {
    case domain::Standing::Good:
        return tr("As paid for");
    case domain::Standing::Watch:
        return tr("Right, but wet");
    case domain::Standing::Act:
        return tr("Not as paid for");
    case domain::Standing::Unknown:
        break;
    }
    return tr("Not settled");
}

Role deliveryRole(domain::Standing standing)
{
    switch (standing) {
    case domain::Standing::Good:
        return Role::Good;
    case domain::Standing::Watch:
        return Role::Watch;
    case domain::Standing::Act:
        return Role::Act;
    case domain::Standing::Unknown:
        break;
    }
    return Role::Info;
}

QString bothBases(domain::Moisture moisture)
{
    return tr("%1 dry basis · %2 wet basis")
        .arg(withUnit(domain::formatNumber(100 * domain::dryFraction(moisture), 1, woodLocale()),
                      QStringLiteral("%")),
             withUnit(domain::formatNumber(100 * domain::wetFraction(moisture), 1, woodLocale()),
                      QStringLiteral("%")));
}

QString dryBasis(domain::Moisture moisture, int decimals)
{
    return tr("%1 % dry")
        .arg(domain::formatNumber(100 * domain::dryFraction(moisture), decimals, woodLocale()));
}

QString Amount::text() const
{
    return withUnit(value, unit);
}

Amount heatAmount(domain::Heat heat, bool metric)
{
    return amountIn(heat.base(), Dimension::Heat, metric ? "MJ" : "slb", 0);
}

Amount massAmount(domain::Mass mass, bool metric)
{
    return amountIn(mass.base(), Dimension::Mass, metric ? "kg" : "lb", 0);
}

Amount stackedAmount(domain::Volume volume, bool metric)
{
    return amountIn(volume.base(), Dimension::Volume, metric ? "m3" : "cord", 2);
}

Amount solidAmount(domain::Volume volume, bool metric)
{
    return metric ? amountIn(volume.base(), Dimension::Volume, "m3", 2)
                  : amountIn(volume.base(), Dimension::Volume, "ft3", 1);
}

OrderedAmount orderedAmount(const domain::WoodOrder &order)
{
    if (order.count)
        return {order.unit, *order.count};
    return {domain::SellUnit::Cord, domain::Plain::rounded(domain::cords(order.volume) * 1e6)};
}

void fitToRows(QTableView &table, int most)
{
    // The last column takes what is left; its usual width would press for a scroll bar.
    table.setColumnWidth(table.model()->columnCount() - 1, theme(&table).px(72));
    const int rows = table.model()->rowCount();
    const int high = rows > 0 ? table.rowHeight(0) : theme(&table).rowHeight();
    table.setFixedHeight(table.horizontalHeader()->sizeHint().height() +
                         qBound(1, rows, most) * high + theme(&table).px(6));
}

} // namespace rickyard::views
