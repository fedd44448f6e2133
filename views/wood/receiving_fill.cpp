// What fills itself on the receiving sheet: an order's amount, a supplier's terms, a name.
#include "models/items/wording.h"
#include "views/records/field_set.h"
#include "views/wood/receiving_groups.h"
#include "views/wood/receiving_sheet.h"
#include "views/wood/wood_words.h"

#include <QComboBox>

namespace rickyard::views {

using domain::Lot;
using domain::TableId;

// The order says what should have come.
void ReceivingSheet::takeOrder()
{
    const auto id = m_paid->order();
    if (!id)
        return m_soon.start();
    const domain::WoodOrder order = m_context.books().orders.value(*id);
    m_fields->setValue(QStringLiteral("supplier"), order.supplier);
    m_fields->setValue(QStringLiteral("species"), order.species);
    const OrderedAmount amount = orderedAmount(order);
    Lot paid;
    paid.paidUnit = amount.unit;
    paid.paidCount = amount.count;
    const domain::Row terms = domain::toRow(paid);
    for (const QString &key : {QStringLiteral("paid_unit"), QStringLiteral("paid_count")})
        m_fields->setValue(key, domain::valueOf(terms, key));
    m_fields->setValue(QStringLiteral("price"), domain::toValue(order.price));
    m_fields->setValue(QStringLiteral("promised_moisture"),
                       domain::toValue(order.promisedMoisture));
    nameIt();
    m_soon.start();
}

// A supplier sells by a unit and promises a moisture of their own.
void ReceivingSheet::takeSupplier()
{
    const Lot now = lot();
    if (!now.supplier)
        return;
    const domain::Supplier supplier = m_context.books().suppliers.value(*now.supplier);
    if (now.order && m_context.books().orders.value(*now.order).supplier != *now.supplier)
        m_paid->orders().setCurrentIndex(0);
    const domain::Row terms = domain::toRow(supplier);
    m_fields->setValue(QStringLiteral("paid_unit"),
                       domain::valueOf(terms, QStringLiteral("sells_by")));
    m_fields->setValue(QStringLiteral("bundle_volume"), domain::toValue(supplier.bundleVolume));
    if (supplier.stickLength)
        m_fields->setValue(QStringLiteral("stick_length"), domain::toValue(supplier.stickLength));
    m_fields->setValue(QStringLiteral("promised_moisture"), domain::toValue(supplier.promised));
}

// "Post oak, 25 Nov", until a person writes a name.
void ReceivingSheet::nameIt()
{
    const Lot now = lot();
    if (!now.name.isEmpty() && now.name != m_givenName)
        return;
    const domain::Books &books = m_context.books();
    const QString wood = now.species == 0 ? tr("Wood") : books.species.value(now.species).name;
    const QDate day = items::toLocal(books, now.received).date();
    const QString plain =
        QString(wood + QStringLiteral(", ") + woodLocale().toString(day, QStringLiteral("d MMM")));
    QStringList taken;
    for (const Lot &other : books.lots)
        taken << other.name;
    m_givenName = plain;
    for (int i = 2; taken.contains(m_givenName); ++i)
        m_givenName = QStringLiteral("%1 (%2)").arg(plain).arg(i);
    m_fields->setValue(QStringLiteral("name"), m_givenName);
}

// A supplier or a species that was written down meanwhile can be chosen.
void ReceivingSheet::refreshChoices(const workspace::Changes &changes)
{
    if (!isVisible() || (!changes.touches(TableId::Species) && !changes.touches(TableId::Supplier)))
        return;
    const Lot now = lot();
    m_fields->setValue(QStringLiteral("species"),
                       now.species == 0 ? domain::Value(std::monostate{}) : now.species);
    m_fields->setValue(QStringLiteral("supplier"), domain::toValue(now.supplier));
    m_soon.start();
}

} // namespace rickyard::views
