// The main window: the rail, the pages, the menus. Assembly only; the work is in the pages.
#pragma once

#include "models/workspace/answers_service.h"
#include "models/workspace/commands/verbs.h"
#include "views/page.h"

#include <QMainWindow>
#include <QSettings>

class QStackedWidget;

namespace rickyard::views {
class NoticeBar;
class PageRail;
} // namespace rickyard::views

namespace rickyard::app {

class DeskNotice;
struct CalendarPlan;

class MainWindow : public QMainWindow
{
    Q_OBJECT

public:
    // `settings` and `workspace` live as long as the window.
    MainWindow(std::unique_ptr<workspace::Workspace> workspace, const commands::Clock &clock,
               std::unique_ptr<QSettings> settings);
    ~MainWindow() override;

    void openPage(int index);
    [[nodiscard]] int currentPage() const;
    [[nodiscard]] views::Page *page(int index) const { return m_pages.value(index); }
    [[nodiscard]] commands::Verbs &verbs() { return *m_verbs; }
    // The answers on the pages are those of the books as they are.
    [[nodiscard]] bool answersCurrent() const { return m_answers->current(); }

Q_SIGNALS:
    // The window asks its owner to open another yard, or a restored one, in its place: the file
    // must be closed before it is exchanged.
    void reopenAsked(const QString &path);
    void restoreAsked(const QString &backup, const QString &yard);

protected:
    void closeEvent(QCloseEvent *event) override;

private:
    void buildContext();
    void buildPages();
    void buildMenus();
    void buildYardMenu();
    void buildEditMenu();
    void buildViewMenu();
    void buildHelpMenu();
    void open(domain::Link link);
    void say(const QString &text);
    void refuse(const domain::Problems &problems);
    void showAnswersState();
    void undo();
    void redo();
    void editYard();
    void saveCopy();
    void backUpNow();
    void backUpDaily();
    void sayFile(const QString &text, const domain::Outcome<QString> &done);
    void restoreBackup();
    void openOther();
    void checkYard();
    void exportTables();
    void importTables();
    void exportCalendar();
    void importCalendar();
    void readCalendarFile(const QString &path, bool leaveOut);
    void takeCalendar(const CalendarPlan &plan, const QString &path, bool leftOut);
    void printWeek();
    void applyLook();
    [[nodiscard]] QString windowTitleText() const;

    std::unique_ptr<QSettings> m_settings;
    std::unique_ptr<workspace::Workspace> m_workspace;
    std::unique_ptr<commands::Verbs> m_verbs;
    std::unique_ptr<workspace::AnswersService> m_answers;
    std::unique_ptr<views::PageContext> m_context;
    DeskNotice *m_desk = nullptr;
    views::PageRail *m_rail = nullptr;
    QStackedWidget *m_stack = nullptr;
    views::NoticeBar *m_notice = nullptr;
    QVector<views::Page *> m_pages;
    QAction *m_undo = nullptr;
    QAction *m_redo = nullptr;
};

} // namespace rickyard::app
