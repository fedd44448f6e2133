// Wood: what is ready to burn, the ricks as they stand, and every record of the wood.
#pragma once

#include "views/page.h"

#include <QTimer>

class QPushButton;
class QScrollArea;
class QStackedWidget;

namespace rickyard::views {

class CountSheet;
class LotDetail;
class NoticeBar;
class OfferPanel;
class OrdersPanel;
class PageHeader;
class ReceivingSheet;
class RecordList;
class RickView;
class SectionTabs;
class TextLabel;
class WoodAnswerPanel;

class WoodPage : public Page
{
    Q_OBJECT

public:
    explicit WoodPage(PageContext &context, QWidget *parent = nullptr);

    bool show(domain::Link link) override;
    void addNew() override; // receive a delivery
    void startSearch() override;

    [[nodiscard]] RecordList *list(domain::TableId table) const;
    [[nodiscard]] LotDetail &detail() { return *m_detail; }
    [[nodiscard]] RickView &ricks() { return *m_ricks; }
    [[nodiscard]] SectionTabs &sections() { return *m_sections; }
    [[nodiscard]] OfferPanel &offers() { return *m_offers; }
    [[nodiscard]] OrdersPanel &orders() { return *m_orders; }
    [[nodiscard]] ReceivingSheet &sheet() { return *m_sheet; }
    [[nodiscard]] CountSheet &counting() { return *m_count; }
    // The receiving sheet for what was ordered. A delivery that is begun on it stays, and is named.
    void receiveOrder(domain::RecordId order);
    // The walk along the ricks.
    void countRicks();
    // A lot as a delivery that comes now: time, usual supplier, species and measure; of an order
    // (0: the first that is open) what was ordered.
    [[nodiscard]] domain::Row deliveryDefaults(domain::RecordId order = 0) const;

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    QWidget *buildBody();
    void buildSections();
    // `above`: a panel over the list that needs the whole width.
    void addSection(domain::TableId table, const QString &name, const QString &iconName,
                    const QString &emptyText, QWidget *above = nullptr);
    void addOrders();
    void addOffers();
    void addSuppliers();
    void showForm(domain::Link link);
    void follow(const workspace::Changes &changes);
    void refresh();
    void showBurnFirst();
    void sizeSections();
    void bringSections();
    void addStarterSpecies();
    void buildSheet();
    void buildCount();
    enum class Sheet { None, Receive, Count };
    void showSheet(Sheet sheet);
    void tellDelivery(domain::RecordId lot);

    QStackedWidget *m_stack = nullptr;
    QScrollArea *m_scroll = nullptr;
    NoticeBar *m_notice = nullptr;
    WoodAnswerPanel *m_answer = nullptr;
    RickView *m_ricks = nullptr;
    QWidget *m_rickCard = nullptr;
    TextLabel *m_burn = nullptr;
    SectionTabs *m_sections = nullptr;
    LotDetail *m_detail = nullptr;
    OfferPanel *m_offers = nullptr;
    OrdersPanel *m_orders = nullptr;
    QVector<QPair<domain::TableId, RecordList *>> m_lists;
    QTimer m_soon; // one refresh for a burst of changes
    PageHeader *m_header = nullptr;
    QPushButton *m_receive = nullptr;
    ReceivingSheet *m_sheet = nullptr;
    CountSheet *m_count = nullptr;
    QPushButton *m_countButton = nullptr;
    bool m_receiving = false; // the sheet holds a delivery that is neither saved nor thrown away
};

} // namespace rickyard::views
