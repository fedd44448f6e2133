#include "app/window/window_run.h"

#include "app/demo/demo.h"
#include "app/window/main_window.h"
#include "models/storage/backup.h"
#include "views/theme/theme_hub.h"

#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <QTimer>

namespace rickyard::app {

using domain::Outcome;
using workspace::Workspace;

namespace {

std::unique_ptr<QSettings> openSettings()
{
    return std::make_unique<QSettings>(QSettings::IniFormat, QSettings::UserScope,
                                       QCoreApplication::organizationName(),
                                       QCoreApplication::applicationName());
}

void tell(const QString &title, const QString &text)
{
    QMessageBox box(QMessageBox::Warning, title, text);
    box.setTextFormat(Qt::PlainText);
    box.exec();
}

// One window at a time; another yard takes the place of the one before.
class Runner : public QObject
{
public:
    // False when the person gave up.
    bool open(QString path)
    {
        while (true) {
            auto workspace = Workspace::open(path, QDateTime::currentDateTimeUtc());
            if (workspace) {
                showWindow(std::move(workspace.value()));
                return true;
            }
            path = askForAnother(workspace.message());
            if (path.isEmpty())
                return false;
        }
    }

private:
    void showWindow(std::unique_ptr<Workspace> workspace)
    {
        m_window = std::make_unique<MainWindow>(std::move(workspace), commands::systemClock,
                                                openSettings());
        connect(m_window.get(), &MainWindow::reopenAsked, this, [this](const QString &path) {
            QTimer::singleShot(0, this, [this, path] { exchange(path, {}); });
        });
        connect(m_window.get(), &MainWindow::restoreAsked, this,
                [this](const QString &backup, const QString &yard) {
                    QTimer::singleShot(0, this, [this, backup, yard] { exchange(yard, backup); });
                });
        m_window->show();
    }

    // The old window goes first: its yard must be closed before a file takes its place.
    void exchange(const QString &path, const QString &backup)
    {
        QApplication::setQuitOnLastWindowClosed(false);
        m_window->close();
        m_window.reset();
        if (!backup.isEmpty()) {
            const Outcome<QString> restored =
                storage::restore(backup, path, QDateTime::currentDateTimeUtc());
            if (!restored)
                tell(QObject::tr("The backup was not restored"), restored.message());
        }
        const bool opened = open(path);
        QApplication::setQuitOnLastWindowClosed(true);
        if (!opened)
            QCoreApplication::exit(3);
    }

    static QString askForAnother(const QString &why)
    {
        QMessageBox box(QMessageBox::Warning, QObject::tr("The yard cannot be opened"), why);
        box.setTextFormat(Qt::PlainText);
        const auto *other = box.addButton(QObject::tr("Open another…"), QMessageBox::AcceptRole);
        box.addButton(QObject::tr("Quit"), QMessageBox::RejectRole);
        box.exec();
        if (box.clickedButton() != other)
            return {};
        return QFileDialog::getOpenFileName(nullptr, QObject::tr("Open a yard"), {},
                                            QObject::tr("Yard files (*.rickyard);;All files (*)"));
    }

    std::unique_ptr<MainWindow> m_window;
};

} // namespace

int runWindow(QApplication &application, const Launch &launch)
{
    const auto settings = openSettings();
    views::ThemeHub::apply(application, views::Mode::System,
                           settings->value(QStringLiteral("look/scale"), 1.0).toDouble());
    if (launch.demo && !QFileInfo::exists(launch.yardPath)) {
        QDir().mkpath(QFileInfo(launch.yardPath).absolutePath());
        const auto made = makeDemoFile(launch.yardPath, kDemoSeed, commands::systemClock());
        if (!made) {
            tell(QObject::tr("The demo could not be made"), made.message());
            return 3;
        }
    }
    Runner runner;
    return runner.open(launch.yardPath) ? QApplication::exec() : 3;
}

} // namespace rickyard::app
