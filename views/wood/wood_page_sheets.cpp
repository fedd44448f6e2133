// What takes the whole of the Wood page for a while: receiving a delivery, counting the ricks.
#include "models/domain/answers/answers.h"
#include "models/domain/plan/order_life.h"
#include "models/domain/wood/delivery.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/page_header.h"
#include "views/wood/count_sheet.h"
#include "views/wood/lot_detail.h"
#include "views/wood/receiving_sheet.h"
#include "views/wood/wood_page.h"
#include "views/wood/wood_words.h"

#include <QPushButton>
#include <QStackedWidget>

namespace rickyard::views {

using domain::TableId;

domain::Row WoodPage::deliveryDefaults(domain::RecordId wanted) const
{
    const domain::Books &books = context().books();
    domain::Lot lot;
    lot.received = context().verbs.now();
    // The wood that came last is the likeliest to come again.
    const domain::Lot *last = nullptr;
    for (const domain::Lot &other : books.lots)
        if (last == nullptr || other.received > last->received)
            last = &other;
    if (last != nullptr) {
        lot.species = last->species;
        lot.supplier = last->supplier;
        lot.measuredBy = last->measuredBy;
        lot.paidUnit = last->paidUnit;
        lot.bundleVolume = last->bundleVolume;
        lot.stickLength = last->stickLength;
        lot.cover = last->cover;
        lot.place = last->place;
    } else if (books.suppliers.size() == 1) {
        lot.supplier = books.suppliers.firstKey();
        lot.paidUnit = books.suppliers.first().unit;
        lot.stickLength = books.suppliers.first().stickLength;
        lot.bundleVolume = books.suppliers.first().bundleVolume;
    }
    // An open order says what should have come.
    for (const domain::WoodOrder &order : books.orders) {
        if (!domain::orderIsOpen(order) || (wanted != 0 && order.id != wanted))
            continue;
        lot.order = order.id;
        lot.species = order.species;
        lot.supplier = order.supplier;
        const OrderedAmount amount = orderedAmount(order);
        lot.paidUnit = amount.unit;
        lot.paidCount = amount.count;
        const domain::Supplier supplier = books.suppliers.value(order.supplier);
        lot.stickLength = supplier.stickLength ? supplier.stickLength : lot.stickLength;
        lot.bundleVolume = supplier.bundleVolume;
        lot.price = order.price;
        lot.promisedMoisture = order.promisedMoisture;
        break;
    }
    if (!lot.promisedMoisture && lot.supplier)
        lot.promisedMoisture = books.suppliers.value(*lot.supplier).promised;
    domain::Row row = domain::toRow(lot);
    if (lot.species == 0)
        domain::setValue(row, QStringLiteral("species"), std::monostate{});
    return row;
}

void WoodPage::addNew()
{
    if (context().readOnly())
        return;
    showSheet(Sheet::Receive);
    if (!m_receiving)
        m_sheet->start(deliveryDefaults());
    m_receiving = true;
    if (context().books().species.isEmpty())
        m_notice->showInfo(tr("A delivery needs its species, and the yard has none yet."),
                           {{tr("Add the usual woods"), [this] {
                                 addStarterSpecies();
                                 m_notice->dismiss();
                             }}});
}

void WoodPage::receiveOrder(domain::RecordId order)
{
    if (context().readOnly())
        return;
    const bool other = m_receiving && m_sheet->dirty() && m_sheet->lot().order != order;
    showSheet(Sheet::Receive);
    if (other) {
        m_notice->showInfo(tr("A delivery is begun on this sheet. Receive it or leave it; then "
                              "press “It came” again."));
        return;
    }
    if (!m_receiving || m_sheet->lot().order != order)
        m_sheet->start(deliveryDefaults(order));
    m_receiving = true;
}

void WoodPage::countRicks()
{
    showSheet(Sheet::Count);
    m_count->open();
}

void WoodPage::buildCount()
{
    m_count = new CountSheet(context());
    m_stack->addWidget(m_count);
    const auto leave = [this] {
        showSheet(Sheet::None);
        m_countButton->setFocus(Qt::OtherFocusReason);
    };
    connect(m_count, &CountSheet::saved, this, leave);
    connect(m_count, &CountSheet::closed, this, leave);
}

void WoodPage::buildSheet()
{
    m_sheet = new ReceivingSheet(context());
    m_stack->addWidget(m_sheet);
    connect(m_sheet, &ReceivingSheet::saved, this, [this](qint64 lot) {
        m_receiving = false;
        m_notice->dismiss();
        show({TableId::Lot, lot});
        tellDelivery(lot);
    });
    connect(m_sheet, &ReceivingSheet::closed, this, [this] {
        m_receiving = false;
        m_notice->dismiss();
        showSheet(Sheet::None);
        m_receive->setFocus(Qt::OtherFocusReason);
    });
}

void WoodPage::showSheet(Sheet sheet)
{
    m_stack->setCurrentIndex(static_cast<int>(sheet));
    m_header->setTitle(sheet == Sheet::Receive ? tr("Receive a delivery")
                       : sheet == Sheet::Count ? tr("Count the ricks")
                                               : tr("Wood"));
    m_receive->setVisible(sheet == Sheet::None);
}

void WoodPage::tellDelivery(domain::RecordId id)
{
    const domain::Lot lot = context().books().lots.value(id);
    const domain::DeliveryCheck check =
        domain::checkDelivery(context().books(), lot, domain::wordingOf(context().books()));
    const QVector<NoticeAction> next{{tr("Log reading"), [this, id] {
                                          show({TableId::Lot, id});
                                          m_detail->openPanel(LotDetail::Panel::Reading);
                                      }}};
    if (check.headline.standing == domain::Standing::Act)
        m_notice->showProblem(check.headline.plainSentence(), next);
    else
        m_notice->showInfo(check.headline.plainSentence(), next);
}

} // namespace rickyard::views
