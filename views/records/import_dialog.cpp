#include "views/records/import_dialog.h"

#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QCloseEvent>
#include <QComboBox>
#include <QDropEvent>
#include <QFileDialog>
#include <QLineEdit>
#include <QMimeData>
#include <QPointer>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStandardItemModel>

namespace rickyard::views {

namespace {
constexpr int kMostRefusalsShown = 8;
} // namespace

ImportDialog::~ImportDialog() = default;

domain::RecordId ImportDialog::profile() const
{
    return m_profiles->currentData().toLongLong();
}

QString ImportDialog::reportText() const
{
    return m_report->text();
}

QAbstractItemModel *ImportDialog::previewModel() const
{
    return m_preview;
}

void ImportDialog::setState(State state)
{
    m_state = state;
    const bool busy = state == State::Opening || state == State::Reading || state == State::Writing;
    m_progress->setVisible(busy);
    m_stop->setVisible(state == State::Reading || state == State::Writing);
    m_columns->setEnabled(state == State::Reading || state == State::Checked);
    m_choose->setEnabled(state != State::Writing);
    for (QComboBox *box : std::as_const(m_choiceBoxes))
        box->setEnabled(state != State::Writing);
    m_import->setEnabled(state == State::Checked && ready() && !m_context.readOnly());
    m_import->setText(m_import->isEnabled() ? importText() : tr("Import"));
    m_saveProfile->setEnabled(state == State::Checked && !m_context.readOnly() && maySaveMapping());
    m_progress->setRange(0, 0);
    m_progress->setFormat(state == State::Writing ? tr("Writing… %p %") : tr("Reading… %p %"));
}

void ImportDialog::setFile(const QString &name)
{
    m_name = name;
    m_fileName->setText(name);
}

void ImportDialog::chooseFile()
{
    const QString folder = m_context.settings.value(m_say.folderKey).toString();
    const QString path = QFileDialog::getOpenFileName(this, m_say.choose, folder, m_say.filter);
    if (path.isEmpty())
        return;
    m_context.settings.setValue(m_say.folderKey, QFileInfo(path).absolutePath());
    openFile(path);
}

void ImportDialog::openFile(const QString &path)
{
    forget();
    m_notice->dismiss();
    setState(State::Opening);
    open(path);
}

void ImportDialog::readSoon()
{
    if (!hasFile() || m_state == State::Writing)
        return;
    forget();
    cancelReading();
    setState(State::Reading);
    m_soon.start();
}

bool ImportDialog::mayRead(const domain::Problems &problems, const QStringList &elsewhere)
{
    if (problems.isEmpty()) {
        m_verdict->setStatus(Role::Info, tr("Reading"));
        return true;
    }
    m_verdict->setStatus(Role::Act, tr("Mapping not complete"));
    m_report->setText(elsewhere.isEmpty() ? tr("See the messages beside the fields at the left.")
                                          : elsewhere.join(QLatin1Char('\n')));
    forget();
    setState(State::Checked);
    Q_EMIT checked();
    return false;
}

void ImportDialog::showProgress(qint64 done, qint64 total)
{
    m_progress->setRange(0, total > 0 ? 1000 : 0);
    m_progress->setValue(total > 0 ? static_cast<int>(1000.0 * static_cast<double>(done) /
                                                      static_cast<double>(total))
                                   : 0);
}

void ImportDialog::showReport(bool cancelled, bool ok, const exchange::Refusals &refused,
                              QStringList lines)
{
    if (cancelled) {
        m_verdict->setStatus(Role::Watch, tr("Stopped"));
        lines = QStringList{tr("Reading was stopped; nothing was changed. Change a field to read "
                               "again.")};
    } else if (!ok) {
        m_verdict->setStatus(Role::Act, tr("%1 refused").arg(refused.count));
    } else if (!refused.isEmpty()) {
        m_verdict->setStatus(Role::Watch, tr("%1 left out").arg(refused.count));
    } else {
        m_verdict->setStatus(Role::Good, tr("Can be imported"));
    }
    if (!cancelled && !refused.isEmpty()) {
        QStringList refusals;
        for (const exchange::Refusal &refusal : refused.list.mid(0, kMostRefusalsShown))
            refusals << refusal.sentence();
        if (refused.count > kMostRefusalsShown)
            refusals << tr("… and %1 more.").arg(refused.count - kMostRefusalsShown);
        lines = refusals + lines;
    }
    m_report->setText(lines.join(QLatin1Char('\n')));
}

void ImportDialog::startImport()
{
    if (!m_import->isEnabled())
        return;
    setState(State::Writing);
    compare();
}

void ImportDialog::write(const QVector<domain::Row> &rows, qint64 count, const QString &allThere)
{
    if (rows.isEmpty()) {
        setState(State::Checked);
        m_notice->showInfo(allThere);
        Q_EMIT imported(0);
        return;
    }
    m_write = m_context.verbs.putAllInBackground(
        rows, tr("import %1").arg(m_name),
        [self = QPointer<ImportDialog>(this), count](const domain::Outcome<domain::Done> &done) {
            if (self)
                self->written(done, count);
        });
    m_writePoll.start();
}

void ImportDialog::written(const domain::Outcome<domain::Done> &done, qint64 count)
{
    m_writePoll.stop();
    const bool stopped = m_write && m_write->cancelled;
    m_write.reset();
    setState(State::Checked);
    if (!done) {
        if (stopped)
            m_notice->showInfo(tr("Stopped. Nothing was written."));
        else
            m_notice->showProblem(done.message());
        return;
    }
    const QString words = writtenWords(count);
    m_context.say(words);
    m_notice->showGood(words);
    m_close->setText(tr("Done"));
    m_close->setFocus(Qt::OtherFocusReason);
    Q_EMIT imported(count);
}

void ImportDialog::stop()
{
    if (m_state == State::Writing && m_write) {
        m_write->cancelled = true;
        return;
    }
    cancelReading();
    if (m_state == State::Writing) { // still compared with what is there
        setState(State::Checked);
        m_notice->showInfo(tr("Stopped. Nothing was written."));
        return;
    }
    m_soon.stop();
    takeStopped();
}

bool ImportDialog::saveProfile(const QString &name)
{
    if (name.trimmed().isEmpty()) {
        m_notice->showProblem(
            tr("Give the mapping a name first, such as %1.").arg(m_say.profileHint));
        m_profileName->setFocus(Qt::OtherFocusReason);
        return false;
    }
    domain::ImportProfile saved;
    for (const domain::ImportProfile &other : m_context.books().importProfiles)
        if (other.name == name.trimmed() && other.kind == m_say.profileKind)
            saved = other;
    saved.name = name.trimmed();
    saved.kind = m_say.profileKind;
    saved.mapping = mappingText();
    domain::Problems problems;
    domain::RecordId id = saved.id;
    const QString action = tr("save mapping %1").arg(saved.name);
    if (id == 0) {
        const auto added = m_context.verbs.add(saved, action);
        problems = added.problems();
        id = added ? added.value() : 0;
    } else {
        problems = m_context.verbs.edit(saved, action).problems();
    }
    if (!problems.isEmpty()) {
        m_notice->showProblem(domain::joined(problems));
        return false;
    }
    fillProfiles();
    chooseProfile(id);
    m_notice->showGood(
        QString(tr("The mapping is saved as “%1”.").arg(saved.name) + m_say.profileSaved));
    return true;
}

void ImportDialog::chooseProfile(domain::RecordId profile)
{
    m_profiles->setCurrentIndex(
        qMax(0, m_profiles->findData(QVariant::fromValue<qint64>(profile))));
}

void ImportDialog::fillProfiles()
{
    const QVariant kept = m_profiles->currentData();
    m_profiles->clear();
    m_profiles->addItem(tr("As guessed from the file"), QVariant::fromValue<qint64>(0));
    for (const domain::ImportProfile &saved : m_context.books().importProfiles)
        if (saved.kind == m_say.profileKind)
            m_profiles->addItem(saved.name, QVariant::fromValue<qint64>(saved.id));
    m_profiles->setCurrentIndex(qMax(0, m_profiles->findData(kept)));
}

void ImportDialog::dragEnterEvent(QDragEnterEvent *event)
{
    if (m_state != State::Writing && event->mimeData()->hasUrls() &&
        event->mimeData()->urls().first().isLocalFile())
        event->acceptProposedAction();
}

void ImportDialog::dropEvent(QDropEvent *event)
{
    event->acceptProposedAction();
    openFile(event->mimeData()->urls().first().toLocalFile());
}

void ImportDialog::reject()
{
    if (m_state == State::Writing) {
        stop(); // the answer of the write closes nothing: its outcome is worth seeing
        return;
    }
    cancelReading();
    QDialog::reject();
}

void ImportDialog::closeEvent(QCloseEvent *event)
{
    if (m_state == State::Writing) {
        stop();
        event->ignore();
        return;
    }
    cancelReading();
    QDialog::closeEvent(event);
}

} // namespace rickyard::views
