// The menus of the main window: every action in one place, with its key.
#include "app/window/main_window.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/notice_bar.h"

#include <QActionGroup>
#include <QApplication>
#include <QMenuBar>
#include <QMessageBox>

namespace rickyard::app {

void MainWindow::buildMenus()
{
    buildYardMenu();
    buildEditMenu();
    buildViewMenu();
    buildHelpMenu();
}

void MainWindow::buildYardMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Yard"));
    const auto add = [&](const QString &text, const QKeySequence &key, void (MainWindow::*slot)()) {
        QAction *action = menu->addAction(text, this, slot);
        action->setShortcut(key);
        return action;
    };
    add(tr("Yard &settings…"), QKeySequence::Preferences, &MainWindow::editYard);
    menu->addSeparator();
    add(tr("&Open another yard…"), QKeySequence::Open, &MainWindow::openOther);
    add(tr("Save a &copy…"), QKeySequence::SaveAs, &MainWindow::saveCopy);
    menu->addSeparator();
    add(tr("&Back up now"), QKeySequence(), &MainWindow::backUpNow);
    add(tr("&Restore a backup…"), QKeySequence(), &MainWindow::restoreBackup);
    add(tr("C&heck the yard file"), QKeySequence(), &MainWindow::checkYard);
    menu->addSeparator();
    add(tr("&Export all tables as CSV…"), QKeySequence(), &MainWindow::exportTables);
    add(tr("&Import tables from CSV…"), QKeySequence(), &MainWindow::importTables);
    menu->addSeparator();
    add(tr("Export the plan as a calen&dar…"), QKeySequence(), &MainWindow::exportCalendar);
    add(tr("Import bus&y times from a calendar…"), QKeySequence(), &MainWindow::importCalendar);
    add(tr("The &week's plan on paper…"), QKeySequence::Print, &MainWindow::printWeek);
    menu->addSeparator();
    QAction *quit = menu->addAction(tr("&Quit"), this, &QWidget::close);
    quit->setShortcut(QKeySequence::Quit);
}

void MainWindow::buildEditMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Edit"));
    m_undo =
        menu->addAction(views::icon(QStringLiteral("undo")), tr("&Undo"), this, &MainWindow::undo);
    m_undo->setShortcut(QKeySequence::Undo);
    m_redo =
        menu->addAction(views::icon(QStringLiteral("redo")), tr("&Redo"), this, &MainWindow::redo);
    m_redo->setShortcut(QKeySequence::Redo);
    // The menu names the action that would be taken back.
    const QUndoStack *stack = &m_verbs->undoStack();
    const auto follow = [this, stack] {
        m_undo->setEnabled(stack->canUndo());
        m_redo->setEnabled(stack->canRedo());
        m_undo->setText(stack->canUndo() ? tr("&Undo: %1").arg(stack->undoText()) : tr("&Undo"));
        m_redo->setText(stack->canRedo() ? tr("&Redo: %1").arg(stack->redoText()) : tr("&Redo"));
    };
    connect(stack, &QUndoStack::indexChanged, this, follow);
    follow();
    menu->addSeparator();
    QAction *fresh = menu->addAction(views::icon(QStringLiteral("add")), tr("&New record"), this,
                                     [this] { m_pages.at(currentPage())->addNew(); });
    fresh->setShortcut(QKeySequence::New);
    QAction *find = menu->addAction(views::icon(QStringLiteral("search")), tr("&Find on this page"),
                                    this, [this] { m_pages.at(currentPage())->startSearch(); });
    find->setShortcut(QKeySequence::Find);
}

void MainWindow::buildViewMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&View"));
    auto *modes = new QActionGroup(this);
    const QPair<QString, QString> entries[] = {{tr("As the &desktop"), QStringLiteral("system")},
                                               {tr("&Light"), QStringLiteral("light")},
                                               {tr("Da&rk"), QStringLiteral("dark")}};
    const QString now =
        m_settings->value(QStringLiteral("look/mode"), QStringLiteral("system")).toString();
    for (const auto &[text, key] : entries) {
        QAction *action = menu->addAction(text);
        action->setCheckable(true);
        action->setChecked(key == now);
        modes->addAction(action);
        connect(action, &QAction::triggered, this, [this, key = key] {
            m_settings->setValue(QStringLiteral("look/mode"), key);
            applyLook();
        });
    }
    menu->addSeparator();
    const auto scale = [this](double factor) {
        const double old = m_settings->value(QStringLiteral("look/scale"), 1.0).toDouble();
        m_settings->setValue(QStringLiteral("look/scale"),
                             factor == 0.0 ? 1.0 : qBound(0.8, old * factor, 2.5));
        applyLook();
    };
    menu->addAction(tr("Text &larger"), QKeySequence::ZoomIn, this, [scale] { scale(1.1); });
    menu->addAction(tr("Text &smaller"), QKeySequence::ZoomOut, this, [scale] { scale(1 / 1.1); });
    menu->addAction(tr("Text as &usual"), QKeySequence(Qt::CTRL | Qt::Key_0), this,
                    [scale] { scale(0.0); });
    menu->addSeparator();
    QAction *metric = menu->addAction(tr("&Metric units"));
    metric->setCheckable(true);
    metric->setChecked(m_workspace->books().yard().metric);
    connect(metric, &QAction::triggered, this, [this](bool on) {
        domain::Yard yard = m_workspace->books().yard();
        yard.metric = on;
        const auto done = m_verbs->edit(yard, on ? tr("metric units") : tr("US units"));
        if (!done)
            refuse(done.problems());
    });
    connect(m_workspace.get(), &workspace::Workspace::changed, metric,
            [this, metric] { metric->setChecked(m_workspace->books().yard().metric); });
}

void MainWindow::buildHelpMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("&Keys"), QKeySequence::HelpContents, this, [this] {
        m_notice->showInfo(tr("Ctrl+1 to Ctrl+7: pages · Ctrl+N: new record · Ctrl+F: find · "
                              "Ctrl+S: save the form · Delete: delete the chosen records · "
                              "Ctrl+Z, Ctrl+Shift+Z: undo, redo · Ctrl++ and Ctrl+−: text size"));
    });
    menu->addAction(tr("&About Rickyard"), this, [this] {
        QMessageBox box(this);
        box.setWindowTitle(tr("About Rickyard"));
        box.setTextFormat(Qt::PlainText);
        box.setText(tr("Rickyard %1\n\nKeeps the wood, the fires and the pits of a small crew.\n\n"
                       "Free software under the GNU General Public License, version 3 or later.")
                        .arg(QCoreApplication::applicationVersion()));
        box.exec();
    });
}

void MainWindow::applyLook()
{
    const QString key =
        m_settings->value(QStringLiteral("look/mode"), QStringLiteral("system")).toString();
    const views::Mode mode = key == QLatin1String("dark")    ? views::Mode::Dark
                             : key == QLatin1String("light") ? views::Mode::Light
                                                             : views::Mode::System;
    views::ThemeHub::apply(*qApp, mode,
                           m_settings->value(QStringLiteral("look/scale"), 1.0).toDouble());
}

} // namespace rickyard::app
