#include "views/events/events_page.h"

#include "models/domain/plan/clashes.h"
#include "models/items/wording.h"
#include "views/events/calendar.h"
#include "views/events/calendar_panel.h"
#include "views/events/clash_list.h"
#include "views/events/copy_dialog.h"
#include "views/events/event_details.h"
#include "views/events/event_words.h"
#include "views/events/later_question.h"
#include "views/events/next_event.h"
#include "views/events/repeat_dialog.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"

#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

// Where no event tells when the crew serves; common practice, no source.
constexpr Duration kUsualServing = Duration::ofBase(17LL * 3600);
constexpr Duration kUsualServingTime = Duration::ofBase(5LL * 3600);

bool ofThePlan(const workspace::Changes &changes)
{
    return changes.touches(TableId::Event) || changes.touches(TableId::PlannedCook) ||
           changes.touches(TableId::Visit) || changes.touches(TableId::Pit) ||
           changes.touches(TableId::Cook) || changes.touches(TableId::Yard) ||
           changes.touches(TableId::CrewTime) || changes.touches(TableId::BusyTime);
}

} // namespace

EventsPage::EventsPage(PageContext &pageContext, QWidget *parent) : Page(pageContext, parent)
{
    build();
    connect(&context().answers, &workspace::AnswersService::updated, this,
            &EventsPage::refreshPlan);
    connect(&context().verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                followChange(changes);
                if (ofThePlan(changes))
                    refreshPlan();
            });
    refreshPlan();
}

void EventsPage::followChange(const workspace::Changes &changes)
{
    m_lastChange.reset();
    m_along = 0;
    if (changes.set.isEmpty() || !changes.set.first().after)
        return;
    const workspace::Change &first = changes.set.first();
    for (qsizetype i = 1; i < changes.set.size(); ++i)
        m_along += changes.set.at(i).table == TableId::PlannedCook ? 1 : 0;
    // One record that was saved, and the cooks that went along with an event.
    if ((first.table == TableId::PlannedCook && changes.set.size() == 1) ||
        (first.table == TableId::Event && m_along == changes.set.size() - 1))
        m_lastChange = first;
}

void EventsPage::askAboutLater(TableId table, RecordId id, LaterQuestion &question)
{
    const auto change = std::exchange(m_lastChange, std::nullopt);
    if (!change || change->table != table || change->id != id)
        return;
    if (m_along > 0)
        context().say(m_along == 1
                          ? tr("Saved. Its planned cook keeps its hours before serving and moved "
                               "along.")
                          : tr("Saved. Its %1 planned cooks keep their hours before serving and "
                               "moved along.")
                                .arg(m_along));
    question.askAbout(change->before, *change->after);
}

void EventsPage::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_scroll = new ColumnScroll(this);
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
    m_sections = new SectionTabs(body);
    buildSections();
    column->addWidget(m_sections, 1);
    m_scroll->setWidget(body);
    outer->addWidget(m_scroll);
    onTheme(this, [this] { m_sections->setMinimumHeight(theme(this).px(430)); });
}

void EventsPage::buildSections()
{
    m_calendar = new CalendarPanel(context());
    connect(m_calendar, &CalendarPanel::opened, this, &EventsPage::open);
    connect(m_calendar, &CalendarPanel::addAsked, this, &EventsPage::addEvent);

    m_events = new RecordList(context(), TableId::Event, QStringLiteral("events"),
                              tr("Add the next pop-up: when it serves and where. Then plan its "
                                 "cooks, and the wood they need is counted."));
    m_events->sortBy(QStringLiteral("start"), Qt::DescendingOrder);
    m_eventDetail = new EventDetail(context());
    m_events->setTallDetail(m_eventDetail);
    auto *copy = new QPushButton(tr("Copy from last time …"));
    copy->setAccessibleName(tr("Add an event like an earlier one"));
    copy->setEnabled(!context().readOnly());
    connect(copy, &QPushButton::clicked, this, [this] { copyEvent(m_events->chosen(), QDate()); });
    m_events->addTool(copy);
    connect(m_eventDetail, &EventDetail::repeatAsked, this, &EventsPage::repeatEvent);
    connect(m_eventDetail, &EventDetail::copyAsked, this,
            [this](qint64 like) { copyEvent(like, QDate()); });
    connect(&m_events->form(), &RecordForm::saved, this,
            [this](qint64 id) { askAboutLater(TableId::Event, id, m_eventDetail->later()); });
    connect(m_events, &RecordList::chosenChanged, m_eventDetail, &EventDetail::setEvent);
    connect(m_eventDetail, &EventDetail::planAsked, this, &EventsPage::planCook);
    connect(m_eventDetail, &EventDetail::opened, this, &EventsPage::open);

    m_cooks = new RecordList(context(), TableId::PlannedCook, QStringLiteral("calendar"),
                             tr("Plan a cook: which pit, when it is lit, for how long. Its wood is "
                                "then set against what is dry."));
    m_cooks->sortBy(QStringLiteral("light"), Qt::DescendingOrder);
    m_cookDetail = new PlannedCookDetail(context());
    m_cooks->setTallDetail(m_cookDetail);
    connect(m_cooks, &RecordList::chosenChanged, m_cookDetail, &PlannedCookDetail::setCook);
    connect(&m_cooks->form(), &RecordForm::saved, this,
            [this](qint64 id) { askAboutLater(TableId::PlannedCook, id, m_cookDetail->later()); });

    m_clashes = new ClashList;
    connect(m_clashes, &ClashList::opened, this, &EventsPage::open);
    m_sections->addSection(tr("Calendar"), m_calendar);
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

// What follows from the books at once; the wood follows when the answers arrive.
void EventsPage::refreshPlan()
{
    const Books &books = context().books();
    m_header->setSubtitle(subtitle());
    m_next->refresh();
    m_eventDetail->refresh();
    m_cookDetail->refresh();
    const LocalTime local(books.yard().timeZone);
    const QVector<Clash> clashes =
        clashesOf(books, context().verbs.now(), local, context().answers.answers().upkeep);
    m_clashes->setClashes(clashes);
    m_calendar->refresh(clashes);
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

// At the clock times of the last event, else in the evening.
void EventsPage::addEvent(QDate day)
{
    if (context().readOnly()) {
        context().say(tr("This yard is open for reading only."));
        return;
    }
    const Books &books = context().books();
    Event event;
    for (const Event &other : books.events)
        if (event.start < other.start)
            event = other;
    const LocalTime local(books.yard().timeZone);
    Duration clock = kUsualServing;
    Duration length = kUsualServingTime;
    if (event.id != 0) {
        clock = Duration::ofBase(items::toLocal(books, event.start).time().msecsSinceStartOfDay() /
                                 1000);
        length = event.end - event.start;
    }
    Event fresh;
    fresh.start = local.at(day, clock);
    fresh.end = fresh.start + length;
    m_sections->setCurrent(Events);
    m_events->addNew(toRow(fresh));
    m_events->form().focusFirst();
    bringUpSections();
}

void EventsPage::repeatEvent(RecordId event)
{
    RepeatDialog dialog(context(), event, this);
    connect(&dialog, &RepeatDialog::made, this, [this](const QVector<qint64> &made) {
        context().say(made.size() == 1
                          ? tr("1 event added. Undo takes it back.")
                          : tr("%1 events added. Undo takes them back.").arg(made.size()));
    });
    dialog.exec();
}

void EventsPage::copyEvent(RecordId like, QDate day)
{
    CopyDialog dialog(context(), like, day, this);
    connect(&dialog, &CopyDialog::made, this, [this](qint64 event) {
        show(Link{TableId::Event, event});
        context().say(tr("Event added with its cooks. Undo takes it back."));
    });
    dialog.exec();
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
    if (m_sections->current() == Weeks) {
        addEvent(m_calendar->calendar().day());
        return;
    }
    if (m_sections->current() == Cooks) {
        m_cooks->addNew();
        return;
    }
    m_sections->setCurrent(Events);
    m_events->addNew();
}

void EventsPage::startSearch()
{
    if (m_sections->current() == Clashes || m_sections->current() == Weeks)
        m_sections->setCurrent(Events);
    bringUpSections();
    (m_sections->current() == Cooks ? m_cooks : m_events)->startSearch();
}

} // namespace rickyard::views
