#include "views/upkeep/upkeep_page.h"

#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/ahead/answer_card.h"
#include "views/records/record_list.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/ash_panel.h"
#include "views/upkeep/due_list.h"
#include "views/upkeep/finding_detail.h"
#include "views/upkeep/plan_list.h"
#include "views/upkeep/plan_panel.h"
#include "views/upkeep/readings_panel.h"
#include "views/upkeep/task_panel.h"
#include "views/upkeep/upkeep_words.h"
#include "views/upkeep/visit_sheet.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

UpkeepPage::UpkeepPage(PageContext &pageContext, QWidget *parent) : Page(pageContext, parent)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(4), look.space(6), look.space(4));
    m_whole = new QStackedWidget(this);
    m_whole->addWidget(buildPlanned());
    m_sheet = new VisitSheet(context(), m_whole);
    m_whole->addWidget(m_sheet);
    column->addWidget(m_whole);
    connect(m_sheet, &VisitSheet::closed, this, &UpkeepPage::closeSheet);
    connect(m_sheet, &VisitSheet::finished, this, [this](qint64 task) {
        m_justDone = task;
        closeSheet();
    });
    connect(&context().answers, &workspace::AnswersService::updated, this, &UpkeepPage::refresh);
    refresh();
}

QWidget *UpkeepPage::buildPlanned()
{
    const Theme &look = theme(this);
    auto *planned = new QWidget(m_whole);
    auto *column = new QVBoxLayout(planned);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_header = new PageHeader(tr("Upkeep"), QString(), planned);
    m_pill = new StatusPill(Role::Info, tr("Working it out"), planned);
    m_header->addAction(m_pill);
    column->addWidget(m_header);
    m_sentence = new SentenceLabel(planned);
    m_sentence->setStyles(TextStyle::Heading, TextStyle::NumeralLarge);
    column->addWidget(m_sentence);
    m_sections = new SectionTabs(planned);
    buildSections();
    connect(m_sections, &SectionTabs::currentChanged, this, &UpkeepPage::refreshSection);
    column->addWidget(m_sections, 1);
    return planned;
}

QWidget *UpkeepPage::buildPlan()
{
    const Theme &look = theme(this);
    m_planStack = new QStackedWidget;
    auto *all = new QWidget(m_planStack);
    auto *column = new QVBoxLayout(all);
    column->setContentsMargins(0, look.space(2), 0, 0);
    column->setSpacing(look.space(3));
    m_plan = new PlanPanel(context(), all);
    column->addWidget(m_plan);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(4));
    m_due = new DueList(context(), all);
    m_panel = new TaskPanel(context(), all);
    row->addWidget(m_due, 3);
    row->addWidget(m_panel, 2);
    column->addLayout(row, 1);
    m_noTasks = new EmptyState(
        QStringLiteral("broom"), tr("No upkeep tasks yet"),
        tr("Add the starter set: ash, grease drain, gaskets, stack, trailer and safety kit, each "
           "with its interval, steps and cautions. Change or retire what does not fit your pits."),
        m_planStack);
    m_noTasks->setAction(tr("Add starter set"));
    connect(m_noTasks, &EmptyState::triggered, this, &UpkeepPage::addStarterSet);
    m_planStack->addWidget(all);
    m_planStack->addWidget(m_noTasks);
    connect(m_due, &DueList::chosenChanged, this, [this](qint64 task) {
        m_panel->setTask(task);
        m_plan->choose(task);
    });
    connect(m_due, &DueList::activated, this, &UpkeepPage::start);
    connect(m_plan, &PlanPanel::taskChosen, this, [this](qint64 task) {
        if (m_due->chosen() != task)
            m_due->choose(task);
    });
    connect(m_plan, &PlanPanel::opened, this, &UpkeepPage::open);
    connect(m_panel, &TaskPanel::placeAsked, this, &UpkeepPage::place);
    connect(m_panel, &TaskPanel::startAsked, this, &UpkeepPage::start);
    connect(m_panel, &TaskPanel::opened, this, [this](const Link &link) {
        m_sections->setCurrent(Tasks);
        m_tasks->show(link.id);
    });
    return m_planStack;
}

void UpkeepPage::buildSections()
{
    m_sections->addSection(tr("Plan"), buildPlan());
    m_coming = new PlanList(context());
    connect(m_coming, &PlanList::opened, this, &UpkeepPage::open);
    connect(m_coming, &PlanList::startAsked, this, &UpkeepPage::start);
    m_sections->addSection(tr("Coming visits"), m_coming);
    buildLists();
}

void UpkeepPage::buildLists()
{
    const auto add = [this](TableId table, const QString &name, const QString &iconName,
                            const QString &empty, const QString &sortKey = {}) {
        auto *list = new RecordList(context(), table, iconName, empty);
        if (!sortKey.isEmpty())
            list->sortBy(sortKey, Qt::DescendingOrder);
        m_sections->addSection(name, list);
        return list;
    };
    m_tasks = add(TableId::UpkeepTask, tr("Tasks"), QStringLiteral("wrench"),
                  tr("A task says what is due after how many days, cooks, fire hours, seasoned "
                     "pounds or ash, or with which occasion. The starter set is a beginning."));
    auto *starter = new QPushButton(tr("Add starter set"));
    starter->setAccessibleName(tr("Add starter set"));
    starter->setEnabled(!context().readOnly());
    connect(starter, &QPushButton::clicked, this, &UpkeepPage::addStarterSet);
    m_tasks->addTool(starter);
    m_visits = add(TableId::Visit, tr("Visits"), QStringLiteral("calendar"),
                   tr("Visits are work placed or done. Accept the coming ones, or start a task."),
                   QStringLiteral("start"));
    m_visitDetail = new VisitDetail(context());
    m_visits->setTallDetail(m_visitDetail);
    connect(m_visits, &RecordList::chosenChanged, m_visitDetail, &VisitDetail::showVisit);
    connect(m_visitDetail, &VisitDetail::startAsked, this, &UpkeepPage::start);
    m_findings = add(TableId::Finding, tr("Findings"), QStringLiteral("note"),
                     tr("Write down what is worn, loose or leaking, so that it is mended before it "
                        "costs wood."),
                     QStringLiteral("opened"));
    m_findingDetail = new FindingDetail(context());
    m_findings->setTallDetail(m_findingDetail);
    connect(m_findings, &RecordList::chosenChanged, m_findingDetail, &FindingDetail::showFinding);
    m_readings = new ReadingsPanel(context());
    connect(m_readings, &ReadingsPanel::opened, this, &UpkeepPage::open);
    m_sections->addSection(tr("Readings"), m_readings);
    m_ash = new AshPanel(context());
    m_sections->addSection(tr("Ash"), m_ash);
    m_exceptions =
        add(TableId::Override, tr("Gone on"), QStringLiteral("warning"),
            tr("When a block is set aside for one cook or one trip, the reason stands here."),
            QStringLiteral("time"));
    m_crew = add(TableId::CrewTime, tr("Crew hours"), QStringLiteral("people"),
                 tr("Say on which evenings the crew can work on the pits. Until then Tuesday to "
                    "Thursday, 6 to 9 PM, one person, is assumed."));
    m_busy = add(TableId::BusyTime, tr("Busy"), QStringLiteral("clock"),
                 tr("When the crew is taken otherwise: nothing is planned into these times."),
                 QStringLiteral("start"));
}

void UpkeepPage::refresh()
{
    refreshHead();
    if (!context().answers.ready())
        return;
    m_planStack->setCurrentIndex(context().answers.answers().upkeep.tasks.isEmpty() ? 1 : 0);
    m_due->refresh();
    m_panel->refresh();
    m_plan->refresh();
    m_plan->choose(m_due->chosen());
    m_ash->refresh();
    refreshSection();
    if (m_justDone != 0 && context().answers.current())
        sayNextDue();
}

// What is costly to make is made when it is looked at.
void UpkeepPage::refreshSection()
{
    if (!context().answers.ready())
        return;
    switch (m_sections->current()) {
    case Coming:
        m_coming->refresh();
        break;
    case Visits:
        m_visitDetail->refresh();
        break;
    case Findings:
        m_findingDetail->refresh();
        break;
    default:
        break;
    }
}

// As soon as the answers have followed the visit.
void UpkeepPage::sayNextDue()
{
    const RecordId task = std::exchange(m_justDone, 0);
    const Books &books = context().books();
    QString next = tr("It is due no more.");
    for (const TaskDue &due : context().answers.answers().upkeep.tasks)
        if (due.task == task)
            next = due.due.isValid()
                       ? tr("Next due %1.").arg(dueText(books, due, context().verbs.now()))
                       : tr("Nothing planned runs it up again yet.");
    context().say(tr("Recorded: %1 is done. %2").arg(taskPhrase(books, task), next));
}

void UpkeepPage::start(RecordId task)
{
    if (context().readOnly() || task == 0)
        return;
    const auto visit = commands::startVisit(context().verbs, task);
    if (!visit) {
        context().refuse(visit.problems());
        return;
    }
    m_whole->setCurrentWidget(m_sheet);
    if (!m_sheet->open(visit.value()))
        closeSheet();
}

void UpkeepPage::closeSheet()
{
    m_whole->setCurrentIndex(0);
}

void UpkeepPage::refreshHead()
{
    if (!context().answers.ready()) {
        m_pill->setStatus(Role::Info, tr("Working it out"));
        m_sentence->setParts({{tr("Reading the books…"), false, Role::Ink}});
        return;
    }
    const UpkeepAnswer &answer = context().answers.answers().upkeep;
    const Headline &headline = answer.headline;
    const StandingLook look = lookOf(headline.standing);
    m_pill->setStatus(static_cast<Role>(look.role), look.word);
    QVector<SentencePart> parts;
    // Only the count is coloured: a whole sentence in red would cry wolf.
    for (const domain::SentencePart &part : headline.sentence)
        parts.append(
            {part.text, part.emphasised,
             parts.isEmpty() && headline.standing == Standing::Act ? Role::Act : Role::Ink});
    m_sentence->setParts(parts);
    const auto overdue = std::count_if(answer.tasks.begin(), answer.tasks.end(),
                                       [](const TaskDue &task) { return task.overdue; });
    m_header->setSubtitle(tr("%1 tasks · %2 overdue · %3 without a place")
                              .arg(answer.tasks.size())
                              .arg(overdue)
                              .arg(answer.unplaced.size()));
    const auto figure = [](qsizetype count) {
        return count > 0 ? QString::number(count) : QString();
    };
    m_sections->setFigure(Coming, figure(answer.placements.size()));
    const auto &findings = context().books().findings;
    m_sections->setFigure(
        Findings, figure(std::count_if(findings.cbegin(), findings.cend(), [](const Finding &f) {
            return f.state == FindingState::Open || f.state == FindingState::Watched;
        })));
    m_sections->setFigure(Ash, figure(ashCans(context().books(), context().verbs.now()).size()));
}

// A proposal is taken as it stands; a visit already placed is opened; else a new one is begun.
void UpkeepPage::place(RecordId task)
{
    for (const Visit &visit : context().books().visits)
        if (visit.task == task &&
            (visit.state == VisitState::Placed || visit.state == VisitState::Started)) {
            m_sections->setCurrent(Visits);
            m_visits->show(visit.id);
            return;
        }
    if (acceptProposals(context(), {task}))
        return;
    Row row = emptyRow(TableId::Visit);
    setValue(row, QStringLiteral("task"), task);
    setValue(row, QStringLiteral("state"), QStringLiteral("placed"));
    setValue(row, QStringLiteral("pinned"), qint64{1});
    m_sections->setCurrent(Visits);
    m_visits->addNew(row);
}

// Pits that have a task of the same name already are left as they are.
void UpkeepPage::addStarterSet()
{
    const Books &books = context().books();
    const QDate today = items::toLocal(books, context().verbs.now()).date();
    QMap<std::pair<QString, RecordId>, RecordId> present;
    for (const UpkeepTask &task : books.tasks)
        present.insert({task.name, task.pit.value_or(0)}, task.id);
    // Tasks name each other by id; one that waits for a task that is there already waits for that.
    const auto set = starterTasks(books.pits.values(), today,
                                  context().verbs.yard().nextId(TableId::UpkeepTask));
    QHash<RecordId, RecordId> kept;
    for (const UpkeepTask &task : set)
        kept.insert(task.id, present.value({task.name, task.pit.value_or(0)}, task.id));
    QVector<Row> rows;
    for (UpkeepTask task : set) {
        if (present.contains({task.name, task.pit.value_or(0)}))
            continue;
        if (task.after)
            task.after = kept.value(*task.after);
        rows << toRow(task);
    }
    if (rows.isEmpty()) {
        context().say(tr("Every task of the starter set is there already."));
        return;
    }
    const auto done = context().verbs.putAll(rows, tr("add starter tasks"));
    if (!done) {
        context().refuse(done.problems());
        return;
    }
    context().say(
        books.pits.isEmpty()
            ? tr("%1 tasks of trailer and kit added. Add a pit, then add its set.").arg(rows.size())
            : tr("%1 tasks added, counted from today. Undo takes them back.").arg(rows.size()));
}

RecordList *UpkeepPage::listOf(int section) const
{
    switch (section) {
    case Tasks:
        return m_tasks;
    case Visits:
        return m_visits;
    case Findings:
        return m_findings;
    case Ash:
        return &m_ash->list();
    case Exceptions:
        return m_exceptions;
    case Crew:
        return m_crew;
    case Busy:
        return m_busy;
    default:
        return nullptr;
    }
}

void UpkeepPage::open(const Link &link)
{
    if (!show(link))
        context().open(link);
}

bool UpkeepPage::show(Link link)
{
    closeSheet();
    const Books &books = context().books();
    const auto inList = [&](int section) {
        m_sections->setCurrent(section);
        return link.id == 0 || listOf(section)->show(link.id);
    };
    switch (link.table) {
    case TableId::UpkeepTask:
        // A task that is counted is shown with its state; a retired one in the list of all.
        if (link.id == 0 || m_due->choose(link.id)) {
            m_sections->setCurrent(Plan);
            return true;
        }
        return inList(Tasks);
    case TableId::Visit:
        return inList(Visits);
    case TableId::Finding:
        return inList(Findings);
    case TableId::CheckReading:
        m_sections->setCurrent(Readings);
        return link.id == 0 || m_readings->showTask(books.checkReadings.value(link.id).task);
    case TableId::Photo: {
        const Photo photo = books.photos.value(link.id);
        return photo.visit ? show({TableId::Visit, *photo.visit})
                           : show({TableId::Finding, photo.finding.value_or(0)});
    }
    case TableId::AshLoad:
        return inList(Ash);
    case TableId::Override:
        return inList(Exceptions);
    case TableId::CrewTime:
        return inList(Crew);
    case TableId::BusyTime:
        return inList(Busy);
    default:
        return false;
    }
}

void UpkeepPage::addNew()
{
    RecordList *list = listOf(m_sections->current());
    if (list == nullptr) {
        m_sections->setCurrent(Tasks);
        list = m_tasks;
    }
    list->addNew();
}

void UpkeepPage::startSearch()
{
    if (listOf(m_sections->current()) == nullptr)
        m_sections->setCurrent(Tasks);
    listOf(m_sections->current())->startSearch();
}

} // namespace rickyard::views
