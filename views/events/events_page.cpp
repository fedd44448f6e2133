#include "views/events/events_page.h"

#include "models/domain/plan/clashes.h"
#include "models/items/wording.h"
#include "views/events/clash_list.h"
#include "views/events/event_details.h"
#include "views/events/event_words.h"
#include "views/events/next_event.h"
#include "views/records/record_list.h"
#include "views/ribbon/ribbon.h"
#include "views/ribbon/ribbon_items.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"

#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kRibbonDays = 42;

bool ofThePlan(const workspace::Changes &changes)
{
    return changes.touches(TableId::Event) || changes.touches(TableId::PlannedCook) ||
           changes.touches(TableId::Visit) || changes.touches(TableId::Pit) ||
           changes.touches(TableId::Cook) || changes.touches(TableId::Yard);
}

} // namespace

EventsPage::EventsPage(PageContext &pageContext, QWidget *parent) : Page(pageContext, parent)
{
    build();
    connect(&context().answers, &workspace::AnswersService::updated, this, &EventsPage::refresh);
    connect(&context().verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (ofThePlan(changes))
                    refreshPlan();
            });
    refresh();
}

void EventsPage::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_scroll = new QScrollArea(this);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto *body = new QWidget(m_scroll);
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(look.space(6), look.space(4), look.space(6), look.space(5));
    column->setSpacing(look.space(4));
    m_header = new PageHeader(tr("Events"), QString(), body);
    column->addWidget(m_header);
    m_next = new NextEvent(context(), body);
    connect(m_next, &NextEvent::opened, this, &EventsPage::open);
    connect(m_next, &NextEvent::planAsked, this, &EventsPage::planCook);
    column->addWidget(m_next);
    auto *card = new Card(tr("The coming six weeks"), body);
    m_ribbon = new Ribbon(card);
    connect(m_ribbon, &Ribbon::opened, this, &EventsPage::open);
    card->body()->addWidget(m_ribbon);
    column->addWidget(card);
    m_sections = new SectionTabs(body);
    buildSections();
    column->addWidget(m_sections, 1);
    m_scroll->setWidget(body);
    outer->addWidget(m_scroll);
    onTheme(this, [this] { m_sections->setMinimumHeight(theme(this).px(430)); });
}

void EventsPage::buildSections()
{
    m_events = new RecordList(context(), TableId::Event, QStringLiteral("events"),
                              tr("Add the next pop-up: when it serves and where. Then plan its "
                                 "cooks, and the wood they need is counted."));
    m_events->sortBy(QStringLiteral("start"), Qt::DescendingOrder);
    m_eventDetail = new EventDetail(context());
    m_events->setDetail(m_eventDetail);
    connect(m_events, &RecordList::chosenChanged, m_eventDetail, &EventDetail::setEvent);
    connect(m_eventDetail, &EventDetail::planAsked, this, &EventsPage::planCook);
    connect(m_eventDetail, &EventDetail::opened, this, &EventsPage::open);

    m_cooks = new RecordList(context(), TableId::PlannedCook, QStringLiteral("calendar"),
                             tr("Plan a cook: which pit, when it is lit, for how long. Its wood is "
                                "then set against what is dry."));
    m_cooks->sortBy(QStringLiteral("light"), Qt::DescendingOrder);
    m_cookDetail = new PlannedCookDetail(context());
    m_cooks->setDetail(m_cookDetail);
    connect(m_cooks, &RecordList::chosenChanged, m_cookDetail, &PlannedCookDetail::setCook);

    m_clashes = new ClashList;
    connect(m_clashes, &ClashList::opened, this, &EventsPage::open);
    m_sections->addSection(tr("Events"), m_events);
    m_sections->addSection(tr("Planned cooks"), m_cooks);
    m_sections->addSection(tr("Clashes"), m_clashes);
}

QString EventsPage::subtitle() const
{
    const Instant now = context().verbs.now();
    int ahead = 0;
    int cooks = 0;
    for (const Event &event : context().books().events)
        if (event.end > now && event.state != EventState::Cancelled &&
            event.state != EventState::Done)
            ++ahead;
    for (const PlannedCook &cook : context().books().plannedCooks)
        if (!cook.cancelled && cook.light > now)
            ++cooks;
    return tr("%1 ahead · %2 planned")
        .arg(ahead == 1 ? tr("1 event") : tr("%1 events").arg(ahead),
             cooks == 1 ? tr("1 cook") : tr("%1 cooks").arg(cooks));
}

void EventsPage::refresh()
{
    const QDate today = items::toLocal(context().books(), context().verbs.now()).date();
    m_ribbon->setItems(
        today, kRibbonDays,
        ribbonItems(context().books(), context().answers.answers(), today, kRibbonDays));
    refreshPlan();
}

// What follows from the books at once; the wood follows when the answers arrive.
void EventsPage::refreshPlan()
{
    const Books &books = context().books();
    m_header->setSubtitle(subtitle());
    m_next->refresh();
    m_eventDetail->refresh();
    m_cookDetail->refresh();
    const LocalTime local(books.yard().timeZone);
    const QVector<Clash> clashes = clashesOf(books, context().verbs.now(), local);
    m_clashes->setClashes(clashes);
    m_sections->setFigure(Clashes, clashes.isEmpty() ? QString() : QString::number(clashes.size()));
}

void EventsPage::planCook(RecordId event)
{
    const auto found = context().books().events.constFind(event);
    if (found == context().books().events.constEnd())
        return;
    m_sections->setCurrent(Cooks);
    m_cooks->addNew(cookFor(context().books(), *found));
    bringUpSections();
}

void EventsPage::open(const Link &link)
{
    if (!show(link))
        context().open(link);
}

// The lists lie under the ribbon: what is opened comes into sight.
void EventsPage::bringUpSections()
{
    QTimer::singleShot(0, m_sections, [this] { m_scroll->ensureWidgetVisible(m_sections, 0, 0); });
}

bool EventsPage::show(Link link)
{
    if (link.table != TableId::Event && link.table != TableId::PlannedCook)
        return false;
    const bool event = link.table == TableId::Event;
    m_sections->setCurrent(event ? Events : Cooks);
    RecordList *list = event ? m_events : m_cooks;
    bringUpSections();
    return link.id == 0 || list->show(link.id);
}

void EventsPage::addNew()
{
    bringUpSections();
    if (m_sections->current() == Cooks) {
        m_cooks->addNew();
        return;
    }
    m_sections->setCurrent(Events);
    m_events->addNew();
}

void EventsPage::startSearch()
{
    if (m_sections->current() == Clashes)
        m_sections->setCurrent(Events);
    bringUpSections();
    (m_sections->current() == Cooks ? m_cooks : m_events)->startSearch();
}

} // namespace rickyard::views
