// What the Yard menu does with calendars and paper: the plan as an .ics file, busy times of another
// calendar, the week's plan to hang up.
#include "app/cli/calendar_kind.h"
#include "app/window/main_window.h"
#include "views/records/file_export.h"
#include "views/reports/paper_view.h"
#include "views/reports/week_plan_paper.h"
#include "views/widgets/notice_bar.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFutureWatcher>
#include <QMessageBox>
#include <QtConcurrent>

namespace rickyard::app {

using domain::Outcome;

namespace {

// Works on a thread, then finishes in the window's: a yard of years takes a while to lay out.
template <class Work, class Finish>
void onThread(QObject *window, Work work, Finish finish)
{
    using Result = decltype(work());
    auto *watcher = new QFutureWatcher<Result>(window);
    QObject::connect(watcher, &QFutureWatcherBase::finished, window, [watcher, finish] {
        watcher->deleteLater();
        finish(watcher->result());
    });
    watcher->setFuture(QtConcurrent::run(work));
}

// Larger files are somebody's whole archive, and no calendar of busy times.
constexpr qint64 kMostBytes = 32 * 1024 * 1024;

} // namespace

void MainWindow::exportCalendar()
{
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Export the plan as a calendar"),
        QString(QFileInfo(m_workspace->path()).completeBaseName() + QStringLiteral(".ics")),
        tr("Calendars (*.ics)"));
    if (path.isEmpty())
        return;
    const domain::Books books = m_workspace->books();
    const domain::Instant now = m_verbs->now();
    onThread(
        this,
        [books, now, path]() -> Outcome<QString> {
            const auto bytes = calendarBytes(books, now);
            if (!bytes)
                return Outcome<QString>(bytes.problems());
            if (const auto problem = views::writeFile(path, bytes.value()))
                return Outcome<QString>::failed(*problem);
            return path;
        },
        [this](const Outcome<QString> &done) {
            sayFile(tr("The plan is in %1. Export again when it changes: entries keep their marks, "
                       "so a calendar replaces them."),
                    done);
        });
}

void MainWindow::importCalendar()
{
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Import busy times"), {}, tr("Calendars (*.ics)"));
    if (!path.isEmpty())
        readCalendarFile(path, false);
}

void MainWindow::readCalendarFile(const QString &path, bool leaveOut)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        m_notice->showProblem(tr("%1 cannot be read: %2").arg(path, file.errorString()));
        return;
    }
    if (file.size() > kMostBytes) {
        m_notice->showProblem(tr("%1 is larger than 32 MB. Export a year of it alone.").arg(path));
        return;
    }
    const QByteArray bytes = file.readAll();
    const domain::Books books = m_workspace->books();
    CalendarRequest request;
    request.leaveOut = leaveOut;
    request.now = m_verbs->now();
    const QString name = QFileInfo(path).fileName();
    onThread(
        this, [books, bytes, name, request] { return planCalendar(books, bytes, name, request); },
        [this, path, leaveOut](const CalendarPlan &plan) { takeCalendar(plan, path, leaveOut); });
}

void MainWindow::takeCalendar(const CalendarPlan &plan, const QString &path, bool leftOut)
{
    if (!plan.refused.isEmpty()) {
        if (leftOut) {
            refuse(plan.refused.mid(0, 6));
            return;
        }
        QMessageBox box(QMessageBox::Question, tr("Import busy times"),
                        tr("Not all of this calendar can be read. Import the rest without it?"),
                        QMessageBox::Cancel, this);
        QStringList lines;
        for (const domain::Problem &problem : plan.refused.mid(0, 6))
            lines << problem.message;
        box.setInformativeText(lines.join(QLatin1Char('\n')));
        box.setTextFormat(Qt::PlainText);
        const QAbstractButton *rest = box.addButton(tr("Import the rest"), QMessageBox::AcceptRole);
        box.exec();
        if (box.clickedButton() == rest)
            readCalendarFile(path, true);
        return;
    }
    const auto done = m_verbs->replaceBusyTimes(plan.source, plan.put, plan.gone);
    if (!done) {
        refuse(done.problems());
        return;
    }
    say(tr("%1: %2 busy times new, %3 gone, %4 the same. The plan of upkeep goes round them.")
            .arg(plan.source)
            .arg(plan.added)
            .arg(plan.gone.size())
            .arg(plan.same));
}

void MainWindow::printWeek()
{
    views::PaperView view(
        views::weekPlanPaper(m_workspace->books(), m_answers->answers().upkeep, m_verbs->now()),
        this);
    view.exec();
}

} // namespace rickyard::app
