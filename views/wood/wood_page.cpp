#include "views/wood/wood_page.h"

#include "models/domain/wood/starter_species.h"
#include "models/domain/wood/stock.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/text_label.h"
#include "views/wood/count_sheet.h"
#include "views/wood/lot_detail.h"
#include "views/wood/offer_panel.h"
#include "views/wood/orders_panel.h"
#include "views/wood/receiving_sheet.h"
#include "views/wood/rick_view.h"
#include "views/wood/supplier_detail.h"
#include "views/wood/supplier_scores.h"
#include "views/wood/wood_answer.h"
#include "views/wood/wood_words.h"

#include <QCoreApplication>
#include <QEvent>
#include <QPushButton>
#include <QScrollBar>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

WoodPage::WoodPage(PageContext &context_, QWidget *parent) : Page(context_, parent)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(5), look.space(6), look.space(4));
    column->setSpacing(look.space(4));
    m_header = new PageHeader(tr("Wood"));
    m_receive =
        new QPushButton(icon(QStringLiteral("truck"), Role::AccentInk), tr("Receive a delivery"));
    m_receive->setProperty("role", "primary");
    m_receive->setAccessibleName(tr("Receive a delivery"));
    m_receive->setEnabled(!context().readOnly());
    connect(m_receive, &QPushButton::clicked, this, &WoodPage::addNew);
    m_header->addAction(m_receive);
    column->addWidget(m_header);
    m_notice = new NoticeBar;
    column->addWidget(m_notice);
    m_stack = new QStackedWidget;
    m_stack->addWidget(buildBody());
    buildSheet();
    buildCount();
    column->addWidget(m_stack, 1);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &WoodPage::refresh);
    connect(&context().verbs.yard(), &workspace::Workspace::changed, this, &WoodPage::follow);
    connect(&context().answers, &workspace::AnswersService::updated, this, &WoodPage::refresh);
    refresh();
}

QWidget *WoodPage::buildBody()
{
    const Theme &look = theme(this);
    m_scroll = new ColumnScroll;
    auto *body = new QWidget;
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, look.space(2), 0);
    column->setSpacing(look.space(5));
    m_answer = new WoodAnswerPanel(context());
    column->addWidget(m_answer);
    m_ricks = new RickView;
    auto *ricks = new Card(tr("The ricks"));
    m_countButton = new QPushButton(icon(QStringLiteral("table")), tr("Count the ricks"));
    m_countButton->setProperty("role", "quiet");
    m_countButton->setAccessibleName(tr("Count the ricks and correct the ledger"));
    connect(m_countButton, &QPushButton::clicked, this, &WoodPage::countRicks);
    ricks->addHeadingWidget(m_countButton);
    m_burn = new TextLabel(QString(), TextStyle::BodyStrong);
    m_burn->setWordWrap(true);
    ricks->body()->addWidget(m_burn);
    ricks->body()->addWidget(m_ricks);
    m_rickCard = ricks;
    column->addWidget(ricks);
    connect(m_ricks, &RickView::opened, this, [this](qint64 lot) { show({TableId::Lot, lot}); });
    m_sections = new SectionTabs;
    buildSections();
    column->addWidget(m_sections, 1);
    m_scroll->setWidget(body);
    return m_scroll;
}

void WoodPage::addSection(TableId table, const QString &name, const QString &iconName,
                          const QString &emptyText, QWidget *above)
{
    auto *list = new RecordList(context(), table, iconName, emptyText);
    m_lists.append({table, list});
    if (above == nullptr) {
        m_sections->addSection(name, list);
        return;
    }
    list->setMinimumHeight(theme(this).px(420));
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(above);
    column->addWidget(list, 1);
    m_sections->addSection(name, page);
}

void WoodPage::buildSections()
{
    addSection(TableId::Lot, tr("Lots"), QStringLiteral("wood"),
               tr("A lot is one delivery of one wood. Measure the stack, weigh a few splits, and "
                  "receive it here."));
    addSection(TableId::MoistureReading, tr("Readings"), QStringLiteral("drop"),
               tr("Choose a lot and log a reading: split a piece, read the fresh face."));
    addOrders();
    addOffers();
    addSuppliers();
    addSection(TableId::Species, tr("Species"), QStringLiteral("wood"),
               tr("The kinds of wood you burn, with the figures that turn volume into weight."));
    addSection(TableId::Movement, tr("Ledger"), QStringLiteral("table"),
               tr("Every pound that came or went. Deliveries, feeds and counts write here by "
                  "themselves."));
    addSection(TableId::OvenTest, tr("Oven tests"), QStringLiteral("scale"),
               tr("Weigh a piece, dry it in the oven until its weight stays, weigh it again."));
    RecordList *lots = list(TableId::Lot);
    lots->sortBy(QStringLiteral("received"), Qt::DescendingOrder);
    list(TableId::MoistureReading)->sortBy(QStringLiteral("time"), Qt::DescendingOrder);
    list(TableId::Movement)->sortBy(QStringLiteral("time"), Qt::DescendingOrder);
    m_detail = new LotDetail(context());
    lots->setDetail(m_detail);
    connect(lots, &RecordList::chosenChanged, this, [this](qint64 lot) {
        m_detail->setLot(lot);
        m_ricks->setChosen(lot);
    });
    connect(m_detail, &LotDetail::panelChanged, this,
            [lots](bool acting) { lots->form().setVisible(!acting); });
    connect(&lots->form(), &RecordForm::saved, this, [this](qint64 lot) {
        // The list says nothing of a record that its form already shows.
        m_detail->setLot(lot);
        m_ricks->setChosen(lot);
    });
    auto *starters = new QPushButton(tr("Add the usual woods"));
    starters->setAccessibleName(tr("Add the usual woods with their figures"));
    starters->setEnabled(!context().readOnly());
    connect(starters, &QPushButton::clicked, this, &WoodPage::addStarterSpecies);
    list(TableId::Species)->addTool(starters);
    list(TableId::Species)
        ->setDetail(new CautionNote(tr("Never burn for food: resinous softwoods, poisonous woods, "
                                       "driftwood, pallets, painted or treated wood.")));
}

void WoodPage::addOrders()
{
    m_orders = new OrdersPanel(context());
    addSection(TableId::WoodOrder, tr("Orders"), QStringLiteral("truck"),
               tr("Every order, past ones too. Write a new one above: what is on its way counts in "
                  "the answer."),
               m_orders);
    list(TableId::WoodOrder)->addedBy([this] { m_orders->startNew(); });
    connect(m_orders, &OrdersPanel::cameAsked, this, &WoodPage::receiveOrder);
    connect(m_orders, &OrdersPanel::changeAsked, this, [this](qint64 order) {
        showForm({TableId::WoodOrder, order});
    });
}

void WoodPage::addOffers()
{
    m_offers = new OfferPanel(context());
    addSection(TableId::Offer, tr("Offers"), QStringLiteral("money"),
               tr("What suppliers ask for their wood. With two or more the price of their heat is "
                  "compared, with how sure the ranking is."),
               m_offers);
    connect(m_offers, &OfferPanel::opened, this, [this](qint64 offer) {
        showForm({TableId::Offer, offer});
    });
}

void WoodPage::addSuppliers()
{
    auto *scores = new SupplierScores(context());
    addSection(TableId::Supplier, tr("Suppliers"), QStringLiteral("people"),
               tr("Who sells you wood, in what unit, and how long they take."), scores);
    connect(scores, &SupplierScores::opened, this, [this](qint64 supplier) {
        showForm({TableId::Supplier, supplier});
    });
    auto *supplier = new SupplierDetail(context());
    list(TableId::Supplier)->setDetail(supplier);
    connect(list(TableId::Supplier), &RecordList::chosenChanged, supplier,
            &SupplierDetail::setSupplier);
}

// A record of a list that stands under a panel.
void WoodPage::showForm(domain::Link link)
{
    show(link);
    // After bringSections().
    QTimer::singleShot(0, this, [this, link] { m_scroll->ensureWidgetVisible(list(link.table)); });
}

RecordList *WoodPage::list(TableId table) const
{
    for (const auto &[id, list] : m_lists)
        if (id == table)
            return list;
    return nullptr;
}

bool WoodPage::show(domain::Link link)
{
    for (int i = 0; i < m_lists.size(); ++i) {
        if (m_lists.at(i).first != link.table)
            continue;
        showSheet(Sheet::None); // what was begun there waits
        m_sections->setCurrent(i);
        bringSections();
        return link.id == 0 || m_lists.at(i).second->show(link.id);
    }
    return false;
}

void WoodPage::startSearch()
{
    showSheet(Sheet::None);
    bringSections();
    m_lists.at(m_sections->current()).second->startSearch();
}

void WoodPage::addStarterSpecies()
{
    QSet<QString> known;
    for (const domain::Species &species : context().books().species)
        known.insert(species.name.toLower());
    QVector<domain::Row> rows;
    for (const domain::Species &species : domain::starterSpecies())
        if (!known.contains(species.name.toLower()))
            rows << domain::toRow(species);
    if (rows.isEmpty()) {
        context().say(tr("The usual woods are all there."));
        return;
    }
    const auto done = context().verbs.putAll(rows, tr("add the usual woods"));
    if (!done)
        context().refuse(done.problems());
    else
        context().say(tr("%1 woods added. Undo takes them back.").arg(rows.size()));
}

void WoodPage::follow(const workspace::Changes &changes)
{
    for (TableId table : {TableId::Lot, TableId::Movement, TableId::MoistureReading,
                          TableId::OvenTest, TableId::Species, TableId::Yard}) {
        if (changes.touches(table)) {
            m_soon.start();
            return;
        }
    }
}

void WoodPage::refresh()
{
    const domain::Stock stock = domain::stockAt(context().books(), context().verbs.now());
    m_answer->refresh(stock);
    const QVector<RickStack> stacks = rickStacks(context().books(), stock);
    m_ricks->setStacks(stacks);
    m_rickCard->setVisible(!stacks.isEmpty());
    showBurnFirst();
    m_answer->setVisible(!context().books().lots.isEmpty());
    for (int i = 0; i < m_lists.size(); ++i) {
        const auto count = domain::countOf(context().books(), m_lists.at(i).first);
        m_sections->setFigure(i,
                              count == 0 ? QString() : QLocale(QLocale::English).toString(count));
    }
}

// Which rick to burn first, above the picture of them all.
void WoodPage::showBurnFirst()
{
    const auto &order = context().answers.answers().burn;
    const bool any = !order.isEmpty() && order.first().rank == 1;
    m_burn->setVisible(context().answers.ready() && !order.isEmpty());
    if (any)
        m_burn->setText(
            tr("Burn first: %1 (%2)")
                .arg(context().books().lots.value(order.first().lot).name, order.first().reason));
    else
        m_burn->setText(tr("No rick is dry and free to burn."));
}

// The lists get the height of the window, so that they read like a page of their own.
void WoodPage::sizeSections()
{
    m_sections->setMinimumHeight(qMax(theme(this).px(480), m_scroll->viewport()->height()));
}

void WoodPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    sizeSections();
}

void WoodPage::bringSections()
{
    if (context().books().lots.isEmpty())
        return;
    // After the layout knows where they stand.
    QTimer::singleShot(0, this, [this] {
        sizeSections();
        m_scroll->widget()->layout()->activate();
        QEvent laidOut(QEvent::LayoutRequest); // the scroll bar learns of the new height
        QCoreApplication::sendEvent(m_scroll->widget(), &laidOut);
        m_scroll->verticalScrollBar()->setValue(m_sections->y());
    });
}

} // namespace rickyard::views
