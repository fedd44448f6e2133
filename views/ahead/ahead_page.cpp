#include "views/ahead/ahead_page.h"

#include "models/items/wording.h"
#include "views/ahead/answer_card.h"
#include "views/ahead/late_orders.h"
#include "views/ahead/wood_why.h"
#include "views/charts/sparkline.h"
#include "views/ribbon/ribbon.h"
#include "views/ribbon/ribbon_items.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/page_header.h"

#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

namespace {

constexpr int kRibbonDays = 42;
constexpr int kFuelPoints = 14;

} // namespace

AheadPage::AheadPage(PageContext &pageContext, QWidget *parent) : Page(pageContext, parent)
{
    build();
    connect(&context().answers, &workspace::AnswersService::updated, this, &AheadPage::refresh);
    refresh();
}

bool AheadPage::show(domain::Link)
{
    return false;
}

void AheadPage::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto *scroll = new ColumnScroll(this);
    auto *body = new QWidget(scroll);
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(look.space(6), look.space(4), look.space(6), look.space(5));
    column->setSpacing(look.space(4));
    m_header = new PageHeader(tr("Ahead"), QString(), body);
    column->addWidget(m_header);

    m_welcome = new EmptyState(
        QStringLiteral("ahead"), tr("Start the yard's books"),
        tr("Add a pit first, then receive a delivery of wood and plan the next event. From then on "
           "this page says when to order wood, which pit burns too much, and what to clean when."),
        body);
    m_welcome->setAction(tr("Add a pit"));
    connect(m_welcome, &EmptyState::triggered, this, [this] { context().open({TableId::Pit, 0}); });
    column->addWidget(m_welcome, 1);

    m_answers = new QWidget(body);
    auto *answers = new QVBoxLayout(m_answers);
    answers->setContentsMargins(0, 0, 0, 0);
    answers->setSpacing(look.space(3));
    m_woodChart = new Sparkline(tr("Dry wood over the coming weeks"), m_answers);
    m_fuelChart = new Sparkline(tr("Wood used against expected, last cooks"), m_answers);
    m_upkeepChart = new Sparkline(tr("How far each task has run, most urgent first"), m_answers);
    for (Sparkline *chart : {m_woodChart, m_fuelChart, m_upkeepChart})
        chart->setFixedSize(look.px(210), look.px(64));
    m_wood = new AnswerCard(tr("Order wood?"), tr("Open Wood"), m_woodChart, m_answers);
    m_fuel =
        new AnswerCard(tr("Which pit burns too much?"), tr("Open Pits"), m_fuelChart, m_answers);
    m_upkeep = new AnswerCard(tr("What to clean and mend, and when?"), tr("Open Upkeep"),
                              m_upkeepChart, m_answers);
    const QPair<AnswerCard *, TableId> cards[] = {
        {m_wood, TableId::Lot}, {m_fuel, TableId::Pit}, {m_upkeep, TableId::UpkeepTask}};
    for (const auto &[card, table] : cards) {
        connect(card, &AnswerCard::openAsked, this, [this, table = table] {
            context().open({table, 0});
        });
        connect(card, &AnswerCard::linkAsked, this,
                [this](const domain::Link &link) { context().open(link); });
        answers->addWidget(card);
    }
    m_woodWhy = new WoodWhy(context());
    m_wood->setDetail(m_woodWhy);
    m_late = new LateOrders(context());
    answers->insertWidget(answers->indexOf(m_wood) + 1, m_late);
    const auto open = [this](const domain::Link &link) { context().open(link); };
    connect(m_woodWhy, &WoodWhy::opened, this, open);
    connect(m_late, &LateOrders::opened, this, open);
    auto *ribbonCard = new Card(tr("The coming six weeks"), m_answers);
    m_ribbon = new Ribbon(ribbonCard);
    connect(m_ribbon, &Ribbon::opened, this,
            [this](const domain::Link &link) { context().open(link); });
    ribbonCard->body()->addWidget(m_ribbon);
    answers->addWidget(ribbonCard);
    answers->addStretch(1);
    column->addWidget(m_answers);
    scroll->setWidget(body);
    outer->addWidget(scroll);
}

QString AheadPage::subtitle() const
{
    const domain::Yard yard = context().books().yard();
    const QString day = items::toLocal(context().books(), context().verbs.now())
                            .toString(QStringLiteral("dddd d MMMM yyyy"));
    return yard.invented ? tr("%1 · %2 · invented data").arg(yard.name, day)
                         : tr("%1 · %2").arg(yard.name, day);
}

void AheadPage::refresh()
{
    m_header->setSubtitle(subtitle());
    const domain::Books &books = context().books();
    const bool empty = books.pits.isEmpty() && books.lots.isEmpty() && books.plannedCooks.isEmpty();
    m_welcome->setVisible(empty);
    m_answers->setVisible(!empty);
    if (!context().answers.ready()) {
        for (AnswerCard *card : {m_wood, m_fuel, m_upkeep})
            card->setWaiting();
        return;
    }
    refreshWood();
    refreshFuel();
    refreshUpkeep();
    const QDate today = items::toLocal(books, context().verbs.now()).date();
    m_ribbon->setItems(today, kRibbonDays,
                       ribbonItems(books, context().answers.answers(), today, kRibbonDays));
}

void AheadPage::refreshWood()
{
    const domain::WoodAnswer &wood = context().answers.answers().wood;
    m_wood->setHeadline(wood.headline);
    m_woodWhy->refresh();
    m_late->refresh(); // another day may have begun
    QVector<double> middle;
    QVector<double> low;
    QVector<double> high;
    for (const domain::StockPoint &p : wood.course) {
        middle << domain::seasonedPounds(p.middle);
        low << domain::seasonedPounds(p.lower);
        high << domain::seasonedPounds(p.upper);
    }
    m_woodChart->setValues(middle);
    m_woodChart->setBand(low, high);
    m_woodChart->setLimit(0.0);
    m_woodChart->setFutureFrom(1);
    m_woodChart->setVisible(middle.size() > 1);
}

void AheadPage::refreshFuel()
{
    const domain::FuelAnswer &fuel = context().answers.answers().fuel;
    m_fuel->setHeadline(fuel.headline);
    // The pit that the sentence is about, else the one with the highest excess.
    domain::RecordId pit = 0;
    double highest = -1e9;
    for (const domain::PitFuel &one : fuel.pits)
        if (one.cooksEver > 0 && one.nearness() > highest) {
            highest = one.nearness();
            pit = one.pit;
        }
    QVector<double> ratios;
    QVector<double> low;
    QVector<double> high;
    for (const domain::CookFuel &cook : fuel.cooks) {
        if (cook.pit != pit || !cook.verdict)
            continue;
        ratios << 100.0 * *cook.excess;
        low << 100.0 * (*cook.lower / *cook.expected - 1.0);
        high << 100.0 * (*cook.upper / *cook.expected - 1.0);
    }
    if (ratios.size() > kFuelPoints)
        ratios = ratios.last(kFuelPoints);
    m_fuelChart->setValues(ratios);
    m_fuelChart->setBand(low.last(ratios.size()), high.last(ratios.size()));
    m_fuelChart->setVisible(ratios.size() > 1);
}

void AheadPage::refreshUpkeep()
{
    const domain::UpkeepAnswer &upkeep = context().answers.answers().upkeep;
    m_upkeep->setHeadline(upkeep.headline);
    QVector<double> run;
    for (const domain::TaskDue &task : upkeep.tasks)
        run << 100.0 * qMin(task.worst, 3.0);
    m_upkeepChart->setValues(run);
    m_upkeepChart->setLimit(100.0);
    m_upkeepChart->setVisible(run.size() > 1);
}

} // namespace rickyard::views
