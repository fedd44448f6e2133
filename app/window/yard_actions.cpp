// What the Yard menu does with files: copies, backups, checks, tables out and in.
#include "app/cli/import_plan.h"
#include "app/window/main_window.h"
#include "models/storage/backup.h"
#include "views/records/record_form.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/notice_bar.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSaveFile>
#include <QVBoxLayout>

namespace rickyard::app {

using domain::Outcome;
using storage::Database;

// The yard's own record: name, zone, accepted risk, usual lead time.
void MainWindow::editYard()
{
    QDialog dialog(this);
    dialog.setWindowTitle(tr("Yard settings"));
    auto *layout = new QVBoxLayout(&dialog);
    const int margin = views::theme(this).space(5);
    layout->setContentsMargins(margin, margin, margin, margin);
    auto *form = new views::RecordForm(*m_context, domain::TableId::Yard, &dialog);
    form->setDeletable(false);
    form->load(1);
    layout->addWidget(form);
    connect(form, &views::RecordForm::saved, &dialog, &QDialog::accept);
    connect(form, &views::RecordForm::cancelled, &dialog, &QDialog::reject);
    dialog.resize(views::theme(this).px(720), views::theme(this).px(620));
    if (dialog.exec() == QDialog::Accepted)
        say(tr("Saved."));
}

void MainWindow::saveCopy()
{
    const QString path = QFileDialog::getSaveFileName(this, tr("Save a copy of the yard"), {},
                                                      tr("Yard files (*.rickyard)"));
    if (path.isEmpty())
        return;
    // The dialog has asked about replacing; the copy itself never writes over a file.
    if (QFile::exists(path) && !QFile::remove(path)) {
        m_notice->showProblem(tr("%1 is in use. Choose another name.").arg(path));
        return;
    }
    m_workspace->readFileInBackground(
        [path](Database &file) {
            const auto copied = storage::copyTo(file, path);
            return copied ? Outcome<QString>(path) : Outcome<QString>(copied.problems());
        },
        [this](const Outcome<QString> &done) { sayFile(tr("Copied to %1."), done); });
}

void MainWindow::backUpNow()
{
    m_workspace->readFileInBackground(
        [](Database &file) { return storage::backUp(file, QDateTime::currentDateTimeUtc()); },
        [this](const Outcome<QString> &done) { sayFile(tr("Backed up and checked: %1."), done); });
}

// Once a day without being asked, so that there is always something to go back to.
void MainWindow::backUpDaily()
{
    const auto backups = storage::backupsOf(m_workspace->path());
    const QDateTime now = QDateTime::currentDateTimeUtc();
    if (m_workspace->readOnly() || m_workspace->created() ||
        (!backups.isEmpty() && backups.first().time.secsTo(now) < 86400))
        return;
    m_workspace->readFileInBackground([now](Database &file) { return storage::backUp(file, now); },
                                      [this](const Outcome<QString> &done) {
                                          if (!done)
                                              refuse(done.problems());
                                      });
}

void MainWindow::sayFile(const QString &text, const Outcome<QString> &done)
{
    if (done)
        m_notice->showGood(text.arg(QDir::toNativeSeparators(done.value())));
    else
        refuse(done.problems());
}

void MainWindow::restoreBackup()
{
    const auto backups = storage::backupsOf(m_workspace->path());
    if (backups.isEmpty()) {
        m_notice->showInfo(tr("There are no backups of this yard yet. Make one with Yard, Back up "
                              "now."));
        return;
    }
    QDialog dialog(this);
    dialog.setWindowTitle(tr("Restore a backup"));
    auto *layout = new QVBoxLayout(&dialog);
    auto *words = new QLabel(tr("The yard goes back to the chosen backup. The yard as it is now is "
                                "kept beside it."),
                             &dialog);
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    layout->addWidget(words);
    auto *list = new QListWidget(&dialog);
    list->setAccessibleName(tr("Backups"));
    for (const storage::BackupFile &backup : backups)
        list->addItem(tr("%1 · %2 kB")
                          .arg(QLocale(QStringLiteral("en_US"))
                                   .toString(backup.time.toLocalTime(), QLocale::LongFormat))
                          .arg(backup.bytes / 1024));
    list->setCurrentRow(0);
    layout->addWidget(list);
    auto *buttons = new QDialogButtonBox(&dialog);
    QPushButton *yes = buttons->addButton(tr("Restore"), QDialogButtonBox::AcceptRole);
    yes->setProperty("role", "primary");
    buttons->addButton(QDialogButtonBox::Cancel);
    connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    layout->addWidget(buttons);
    dialog.resize(460, 360);
    if (dialog.exec() == QDialog::Accepted && list->currentRow() >= 0)
        Q_EMIT restoreAsked(backups.at(list->currentRow()).path, m_workspace->path());
}

void MainWindow::openOther()
{
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a yard"), {},
                                                      tr("Yard files (*.rickyard);;All files (*)"));
    if (!path.isEmpty())
        Q_EMIT reopenAsked(path);
}

void MainWindow::checkYard()
{
    m_workspace->readFileInBackground(storage::checkWhole, [this](const Outcome<QString> &done) {
        if (done)
            m_notice->showGood(
                tr("The yard file is whole: every page and every reference was read."));
        else
            m_notice->showProblem(tr("The yard file is damaged: %1. Restore a backup.")
                                      .arg(done.problems().first().message));
    });
}

void MainWindow::exportTables()
{
    const QString folder =
        QFileDialog::getExistingDirectory(this, tr("Export all tables to a folder"));
    if (folder.isEmpty())
        return;
    const auto files = exchange::exportBooks(m_workspace->books());
    for (const auto &[name, bytes] : files) {
        QSaveFile file(QDir(folder).filePath(name));
        if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() ||
            !file.commit()) {
            m_notice->showProblem(
                tr("%1 could not be written: %2").arg(file.fileName(), file.errorString()));
            return;
        }
    }
    m_notice->showGood(
        tr("%1 tables written to %2.").arg(files.size()).arg(QDir::toNativeSeparators(folder)));
}

void MainWindow::importTables()
{
    const QStringList paths = QFileDialog::getOpenFileNames(this, tr("Import tables"), {},
                                                            tr("Tables as exported (*.csv)"));
    QVector<exchange::NamedFile> files;
    for (const QString &path : paths) {
        QFile file(path);
        if (!file.open(QIODevice::ReadOnly)) {
            m_notice->showProblem(tr("%1 cannot be read: %2").arg(path, file.errorString()));
            return;
        }
        files << exchange::NamedFile{QFileInfo(path).fileName(), file.readAll()};
    }
    if (files.isEmpty())
        return;
    const ImportPlan plan = planBooks(m_workspace->books(), files);
    if (!plan.refused.isEmpty()) {
        refuse(plan.refused.mid(0, 6));
        return;
    }
    m_verbs->putAllInBackground(plan.rows, tr("import tables"),
                                [this, plan](const Outcome<domain::Done> &done) {
                                    if (!done)
                                        refuse(done.problems());
                                    else
                                        say(tr("%1 records added, %2 changed, %3 the same.")
                                                .arg(plan.added)
                                                .arg(plan.changed)
                                                .arg(plan.same));
                                });
}

} // namespace rickyard::app
