#include "views/upkeep/upkeep_page.h"

#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/items/wording.h"
#include "views/ahead/answer_card.h"
#include "views/records/record_list.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/due_list.h"
#include "views/upkeep/plan_list.h"
#include "views/upkeep/task_panel.h"
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
    build();
    connect(&context().answers, &workspace::AnswersService::updated, this, &UpkeepPage::refresh);
    refresh();
}

void UpkeepPage::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(4), look.space(6), look.space(4));
    column->setSpacing(look.space(3));
    m_header = new PageHeader(tr("Upkeep"), QString(), this);
    m_pill = new StatusPill(Role::Info, tr("Working it out"), this);
    m_header->addAction(m_pill);
    column->addWidget(m_header);
    m_sentence = new SentenceLabel(this);
    m_sentence->setStyles(TextStyle::Heading, TextStyle::NumeralLarge);
    column->addWidget(m_sentence);
    m_sections = new SectionTabs(this);
    buildSections();
    column->addWidget(m_sections, 1);
}

QWidget *UpkeepPage::buildDue()
{
    m_dueStack = new QStackedWidget;
    auto *both = new QWidget(m_dueStack);
    auto *row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(theme(this).space(4));
    m_due = new DueList(context(), both);
    m_panel = new TaskPanel(context(), both);
    row->addWidget(m_due, 3);
    row->addWidget(m_panel, 2);
    m_noTasks = new EmptyState(
        QStringLiteral("broom"), tr("No upkeep tasks yet"),
        tr("Add the starter set: ash, grease drain, gaskets, stack, trailer and safety kit, each "
           "with its interval, steps and cautions. Change or retire what does not fit your pits."),
        m_dueStack);
    m_noTasks->setAction(tr("Add starter set"));
    connect(m_noTasks, &EmptyState::triggered, this, &UpkeepPage::addStarterSet);
    m_dueStack->addWidget(both);
    m_dueStack->addWidget(m_noTasks);
    connect(m_due, &DueList::chosenChanged, m_panel, &TaskPanel::setTask);
    connect(m_due, &DueList::activated, this, [this](qint64 task) {
        m_panel->setTask(task);
        m_panel->startDone();
    });
    connect(m_panel, &TaskPanel::placeAsked, this, &UpkeepPage::place);
    connect(m_panel, &TaskPanel::opened, this, [this](const Link &link) {
        m_sections->setCurrent(Tasks);
        m_tasks->show(link.id);
    });
    return m_dueStack;
}

void UpkeepPage::buildSections()
{
    m_sections->addSection(tr("Due"), buildDue());
    m_plan = new PlanList(context());
    connect(m_plan, &PlanList::opened, this, &UpkeepPage::open);
    m_sections->addSection(tr("Coming visits"), m_plan);
    m_tasks = new RecordList(context(), TableId::UpkeepTask, QStringLiteral("wrench"),
                             tr("A task says what is due after how many days, cooks, fire hours or "
                                "seasoned pounds. The starter set is a beginning."));
    auto *starter = new QPushButton(tr("Add starter set"));
    starter->setAccessibleName(tr("Add starter set"));
    starter->setEnabled(!context().readOnly());
    connect(starter, &QPushButton::clicked, this, &UpkeepPage::addStarterSet);
    m_tasks->addTool(starter);
    m_sections->addSection(tr("Tasks"), m_tasks);
    m_visits = new RecordList(context(), TableId::Visit, QStringLiteral("calendar"),
                              tr("Visits are work placed or done. Book the coming ones, or record "
                                 "one with \"Done now\"."));
    m_visits->sortBy(QStringLiteral("start"), Qt::DescendingOrder);
    m_sections->addSection(tr("Visits"), m_visits);
    m_findings = new RecordList(context(), TableId::Finding, QStringLiteral("note"),
                                tr("Write down what is worn, loose or leaking, so that it is "
                                   "mended before it costs wood."));
    m_findings->sortBy(QStringLiteral("opened"), Qt::DescendingOrder);
    m_sections->addSection(tr("Findings"), m_findings);
    m_crew = new RecordList(context(), TableId::CrewTime, QStringLiteral("people"),
                            tr("Say on which evenings the crew can work on the pits. Until then "
                               "Tuesday to Thursday, 6 to 9 PM, one person, is assumed."));
    m_sections->addSection(tr("Crew hours"), m_crew);
}

void UpkeepPage::refresh()
{
    refreshHead();
    const bool anyTask = !context().books().tasks.isEmpty();
    m_dueStack->setCurrentIndex(anyTask ? 0 : 1);
    m_noTasks->actionButton()->setEnabled(!context().readOnly());
    m_due->refresh();
    m_panel->setTask(m_due->chosen());
    m_plan->refresh();
    m_sections->setFigure(Plan,
                          m_plan->proposed() > 0 ? QString::number(m_plan->proposed()) : QString());
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
    m_sections->setFigure(Due, overdue > 0 ? QString::number(overdue) : QString());
}

// A proposal is taken as it stands; a visit already placed is opened; else a new one is begun.
void UpkeepPage::place(RecordId task)
{
    const Books &books = context().books();
    for (const Visit &visit : books.visits)
        if (visit.task == task &&
            (visit.state == VisitState::Placed || visit.state == VisitState::Started)) {
            m_sections->setCurrent(Visits);
            m_visits->show(visit.id);
            return;
        }
    if (context().answers.current())
        for (const Placement &p : context().answers.answers().upkeep.placements) {
            if (p.task != task || p.booked)
                continue;
            const auto done = context().verbs.bookVisits({visitOf(p)});
            if (!done)
                context().refuse(done.problems());
            else
                context().say(
                    tr("Placed: %1, %2.")
                        .arg(taskPhrase(books, task),
                             items::timeText(books, p.start, QLocale(QStringLiteral("en_US")))));
            return;
        }
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
    QSet<std::pair<QString, RecordId>> present;
    for (const UpkeepTask &task : books.tasks)
        present.insert({task.name, task.pit.value_or(0)});
    QVector<Row> rows;
    for (const UpkeepTask &task : starterTasks(books.pits.values(), today))
        if (!present.contains({task.name, task.pit.value_or(0)}))
            rows << toRow(task);
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
    case Crew:
        return m_crew;
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
    switch (link.table) {
    case TableId::UpkeepTask:
        // A task that is counted is shown with its state; a retired one in the list of all.
        if (link.id == 0 || m_due->choose(link.id)) {
            m_sections->setCurrent(Due);
            return true;
        }
        m_sections->setCurrent(Tasks);
        return m_tasks->show(link.id);
    case TableId::Visit:
        m_sections->setCurrent(Visits);
        return link.id == 0 || m_visits->show(link.id);
    case TableId::Finding:
        m_sections->setCurrent(Findings);
        return link.id == 0 || m_findings->show(link.id);
    case TableId::CrewTime:
        m_sections->setCurrent(Crew);
        return link.id == 0 || m_crew->show(link.id);
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
