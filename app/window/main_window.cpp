#include "app/window/main_window.h"

#include "app/window/desk_notice.h"
#include "views/ahead/ahead_page.h"
#include "views/events/events_page.h"
#include "views/fire/fire_page.h"
#include "views/pits/pits_page.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/upkeep_page.h"
#include "views/weather/weather_page.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/page_rail.h"
#include "views/wood/wood_page.h"

#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QStatusBar>

namespace rickyard::app {

using domain::Link;
using domain::TableId;
using views::Page;

namespace {

enum PageIndex { Ahead, Wood, Fire, Pits, Events, Upkeep, Weather };

PageIndex pageOf(TableId table)
{
    switch (table) {
    case TableId::Species:
    case TableId::Supplier:
    case TableId::Offer:
    case TableId::WoodOrder:
    case TableId::Lot:
    case TableId::MoistureReading:
    case TableId::OvenTest:
    case TableId::Movement:
        return Wood;
    case TableId::Cook:
    case TableId::Feed:
    case TableId::CookTemperature:
    case TableId::CookNote:
    case TableId::CookChange:
    case TableId::Trace:
        return Fire;
    case TableId::Pit:
    case TableId::KnownGood:
        return Pits;
    case TableId::Event:
    case TableId::PlannedCook:
        return Events;
    case TableId::UpkeepTask:
    case TableId::Visit:
    case TableId::Finding:
    case TableId::CheckReading:
    case TableId::Photo:
    case TableId::AshLoad:
    case TableId::Override:
    case TableId::BusyTime:
    case TableId::CrewTime:
        return Upkeep;
    case TableId::Weather:
    case TableId::ImportProfile:
        return Weather;
    case TableId::Yard:
        break;
    }
    return Ahead;
}

} // namespace

MainWindow::MainWindow(std::unique_ptr<workspace::Workspace> workspace,
                       const commands::Clock &clock, std::unique_ptr<QSettings> settings)
    : m_settings(std::move(settings)), m_workspace(std::move(workspace)),
      m_verbs(std::make_unique<commands::Verbs>(*m_workspace, clock)),
      m_answers(std::make_unique<workspace::AnswersService>(*m_workspace, clock))
{
    setWindowIcon(views::applicationIcon());
    setWindowTitle(windowTitleText());
    setMinimumSize(900, 600);
    resize(1280, 800);
    applyLook();
    buildContext();
    buildPages();
    buildMenus();
    restoreGeometry(m_settings->value(QStringLiteral("window/geometry")).toByteArray());
    openPage(m_settings->value(QStringLiteral("window/page"), 0).toInt());
    connect(m_answers.get(), &workspace::AnswersService::updated, this,
            &MainWindow::showAnswersState);
    connect(m_workspace.get(), &workspace::Workspace::changed, this,
            [this] { setWindowTitle(windowTitleText()); });
    backUpDaily();
    if (!m_workspace->notice().isEmpty())
        m_notice->showInfo(m_workspace->notice());
}

MainWindow::~MainWindow()
{
    // Pages refer to the services below: they go first.
    delete takeCentralWidget();
}

QString MainWindow::windowTitleText() const
{
    const domain::Yard yard = m_workspace->books().yard();
    QString title = QString(yard.name + QStringLiteral(" – Rickyard"));
    if (m_workspace->readOnly())
        title += tr(" (read only)");
    return title;
}

void MainWindow::buildContext()
{
    m_desk = new DeskNotice(this);
    connect(m_desk, &DeskNotice::opened, this, [this](const Link &link) {
        raise();
        activateWindow();
        open(link);
    });
    m_context.reset(new views::PageContext{*m_verbs, *m_answers, *m_settings,
                                           [this](Link link) { open(link); },
                                           [this](const QString &text) { say(text); },
                                           [this](const domain::Problems &p) { refuse(p); },
                                           [this](const views::Notice &n) { m_desk->show(n); }});
}

void MainWindow::buildPages()
{
    auto *central = new QWidget(this);
    auto *row = new QHBoxLayout(central);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_rail = new views::PageRail(central);
    auto *right = new QWidget(central);
    auto *column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_notice = new views::NoticeBar(right);
    m_stack = new QStackedWidget(right);
    column->addWidget(m_notice);
    column->addWidget(m_stack, 1);
    row->addWidget(m_rail);
    row->addWidget(right, 1);
    setCentralWidget(central);

    const struct {
        const char *icon;
        QString name;
        Page *page;
    } pages[] = {{"ahead", tr("Ahead"), new views::AheadPage(*m_context, m_stack)},
                 {"wood", tr("Wood"), new views::WoodPage(*m_context, m_stack)},
                 {"fire", tr("Fire"), new views::FirePage(*m_context, m_stack)},
                 {"pits", tr("Pits"), new views::PitsPage(*m_context, m_stack)},
                 {"events", tr("Events"), new views::EventsPage(*m_context, m_stack)},
                 {"upkeep", tr("Upkeep"), new views::UpkeepPage(*m_context, m_stack)},
                 {"weather", tr("Weather"), new views::WeatherPage(*m_context, m_stack)}};
    for (const auto &entry : pages) {
        m_rail->addPage(QString::fromLatin1(entry.icon), entry.name);
        entry.page->setAccessibleName(entry.name);
        // A page that needs more room than the window has, at a large text size, scrolls as a
        // whole.
        auto *room = new QScrollArea(m_stack);
        room->setWidgetResizable(true);
        room->setFrameShape(QFrame::NoFrame);
        room->setFocusPolicy(Qt::NoFocus);
        room->setWidget(entry.page);
        m_stack->addWidget(room);
        m_pages << entry.page;
    }
    connect(m_rail, &views::PageRail::currentChanged, this, &MainWindow::openPage);
    for (int i = 0; i < m_pages.size(); ++i) {
        auto *key =
            new QShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + i)), this);
        connect(key, &QShortcut::activated, this, [this, i] { openPage(i); });
    }
}

void MainWindow::openPage(int index)
{
    const int page = qBound(0, index, static_cast<int>(m_pages.size()) - 1);
    m_stack->setCurrentIndex(page);
    if (m_rail->current() != page)
        m_rail->setCurrent(page);
}

int MainWindow::currentPage() const
{
    return m_stack->currentIndex();
}

// A link without a record opens the page; for an empty table it starts a new record there.
void MainWindow::open(Link link)
{
    const int index = pageOf(link.table);
    openPage(index);
    if (link.id != 0)
        m_pages.at(index)->show(link);
    else if (domain::countOf(m_workspace->books(), link.table) == 0)
        m_pages.at(index)->addNew();
}

void MainWindow::say(const QString &text)
{
    m_notice->showGood(text, {{tr("Undo"), [this] { undo(); }}});
}

void MainWindow::refuse(const domain::Problems &problems)
{
    m_notice->showProblem(domain::joined(problems));
}

void MainWindow::showAnswersState()
{
    const domain::Answers &answers = m_answers->answers();
    int overdue = 0;
    for (const domain::TaskDue &task : answers.upkeep.tasks)
        overdue += task.overdue ? 1 : 0;
    int named = 0;
    for (const domain::PitFuel &pit : answers.fuel.pits)
        named += pit.named() ? 1 : 0;
    int burning = 0;
    for (const domain::Cook &cook : m_workspace->books().cooks)
        burning += cook.fireOut ? 0 : 1;
    m_rail->setBadge(Wood, answers.wood.orderBy.isValid() ? 1 : 0, tr("order to place"));
    m_rail->setBadge(Pits, named, tr("pits flagged"));
    m_rail->setBadge(Upkeep, overdue, tr("tasks overdue"));
    m_rail->setBadge(Fire, burning, tr("fires burning"));
}

void MainWindow::undo()
{
    const QString name = m_verbs->undoStack().undoText();
    m_verbs->undoInBackground([this, name](const domain::Outcome<domain::Done> &done) {
        if (!done)
            refuse(done.problems());
        else
            m_notice->showInfo(tr("Undone: %1.").arg(name), {{tr("Redo"), [this] { redo(); }}});
    });
    if (m_workspace->busy())
        m_notice->showInfo(tr("Undoing: %1 …").arg(name));
}

void MainWindow::redo()
{
    const QString name = m_verbs->undoStack().redoText();
    m_verbs->redoInBackground([this, name](const domain::Outcome<domain::Done> &done) {
        if (!done)
            refuse(done.problems());
        else
            m_notice->showInfo(tr("Done again: %1.").arg(name), {{tr("Undo"), [this] { undo(); }}});
    });
    if (m_workspace->busy())
        m_notice->showInfo(tr("Doing again: %1 …").arg(name));
}

void MainWindow::closeEvent(QCloseEvent *event)
{
    if (m_workspace->busy()) {
        m_notice->showInfo(tr("An import is still being written. Wait for it or stop it first."));
        event->ignore();
        return;
    }
    m_settings->setValue(QStringLiteral("window/geometry"), saveGeometry());
    m_settings->setValue(QStringLiteral("window/page"), currentPage());
    event->accept();
}

} // namespace rickyard::app
