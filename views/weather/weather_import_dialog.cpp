#include "views/weather/weather_import_dialog.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/weather/weather_mapping_form.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QAbstractItemModel>
#include <QCloseEvent>
#include <QComboBox>
#include <QFileDialog>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStandardItemModel>

namespace rickyard::views {

using exchange::WeatherImport;
using exchange::WeatherMapping;

namespace {

constexpr int kPreviewRows = 12;
constexpr int kRefusalsShown = 8;
constexpr char kFolderKey[] = "weather/folder";

// The start of a file, whole lines. Text of two bytes a character is taken whole: it is rare, and
// cutting it needs its byte order.
QByteArray firstLines(const QByteArray &bytes, int lines)
{
    if (bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF"))
        return bytes;
    qsizetype at = -1;
    for (int i = 0; i < lines; ++i) {
        const qsizetype next = bytes.indexOf('\n', at + 1);
        if (next < 0)
            return bytes;
        at = next;
    }
    return bytes.left(at + 1);
}

} // namespace

WeatherImportDialog::~WeatherImportDialog() = default;

QString WeatherImportDialog::reportText() const
{
    return m_report->text();
}

QAbstractItemModel *WeatherImportDialog::previewModel() const
{
    return m_preview;
}

void WeatherImportDialog::setState(State state)
{
    m_state = state;
    const bool busy = state == State::Opening || state == State::Reading || state == State::Writing;
    m_progress->setVisible(busy);
    m_stop->setVisible(state == State::Reading || state == State::Writing);
    m_form->setEnabled(state == State::Reading || state == State::Checked);
    m_choose->setEnabled(state != State::Writing);
    m_import->setEnabled(state == State::Checked && m_result.ok && !m_result.rows.isEmpty() &&
                         !m_context.readOnly());
    m_import->setText(
        m_import->isEnabled()
            ? tr("Import %1 records").arg(QLocale(QLocale::English).toString(m_result.rows.size()))
            : tr("Import"));
    m_saveProfile->setEnabled(state == State::Checked && !m_context.readOnly() &&
                              !selfDescribing());
    m_progress->setRange(0, 0);
    m_progress->setFormat(state == State::Writing ? tr("Writing… %p %") : tr("Reading… %p %"));
}

void WeatherImportDialog::chooseFile()
{
    const QString folder = m_context.settings.value(QLatin1String(kFolderKey)).toString();
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Choose a weather file"), folder,
        tr("Weather files (*.csv *.txt *.tsv *.epw *.dat);;All files (*)"));
    if (path.isEmpty())
        return;
    m_context.settings.setValue(QLatin1String(kFolderKey), QFileInfo(path).absolutePath());
    openFile(path);
}

void WeatherImportDialog::openFile(const QString &path)
{
    m_result = {};
    m_notice->dismiss();
    setState(State::Opening);
    m_job.open(path, m_context.books().yard().timeZone);
}

void WeatherImportDialog::takeFile(const OpenedWeatherFile &file)
{
    if (!file.problem.isEmpty()) {
        setState(m_file.bytes.isEmpty() ? State::NoFile : State::Checked);
        m_notice->showProblem(file.problem);
        return;
    }
    m_file = file;
    m_fileName->setText(file.name);
    m_form->setHeader(file.preview.header);
    useProfile(m_profiles->currentData().toLongLong());
}

void WeatherImportDialog::useProfile(domain::RecordId id)
{
    m_profiles->setCurrentIndex(qMax(0, m_profiles->findData(QVariant::fromValue<qint64>(id))));
    if (m_file.bytes.isEmpty())
        return;
    m_form->setVisible(!selfDescribing());
    if (selfDescribing()) {
        readSoon();
        return;
    }
    if (m_file.preview.header.isEmpty()) // a saved mapping over a file that needs none
        m_file.preview = exchange::preview(firstLines(m_file.bytes, 60));
    QStringList notes = m_file.guess.notes;
    WeatherMapping mapping = m_file.guess.mapping;
    if (id != 0) {
        const domain::ImportProfile profile = m_context.books().importProfiles.value(id);
        const auto saved = exchange::mappingFromText(profile.mapping);
        if (!saved) {
            m_notice->showProblem(saved.message());
            return;
        }
        mapping = saved.value();
        notes = QStringList{tr("As saved in “%1”.").arg(profile.name)};
    }
    if (!m_file.preview.note.isEmpty())
        notes.prepend(m_file.preview.note);
    // Records of one place are told from those of another, so a file without one takes its name.
    if (mapping.place.isEmpty() && mapping.placeColumn.isEmpty()) {
        mapping.place = QFileInfo(m_file.name).completeBaseName();
        notes << tr("The place is taken from the name of the file.");
    }
    m_guess->setText(notes.join(QLatin1Char(' ')));
    m_form->setMapping(mapping);
    splitAnew();
}

// The headers follow the separator and the header row.
void WeatherImportDialog::splitAnew()
{
    const WeatherMapping mapping = m_form->mapping();
    const auto preview =
        exchange::preview(firstLines(m_file.bytes, 60), mapping.separator, mapping.headerLine);
    QStringList header = preview.header;
    if (mapping.headerLine == 0) {
        header.clear();
        const qsizetype width = preview.rows.isEmpty() ? 0 : preview.rows.first().size();
        for (qsizetype i = 1; i <= width; ++i)
            header << QString::number(i);
    }
    m_form->setHeader(header);
    readSoon();
}

void WeatherImportDialog::readSoon()
{
    if (m_file.bytes.isEmpty() || m_state == State::Writing)
        return;
    m_result = {};
    m_job.cancel();
    setState(State::Reading);
    m_soon.start();
}

void WeatherImportDialog::readNow()
{
    if (selfDescribing()) {
        readKnown();
        return;
    }
    const WeatherMapping mapping = m_form->mapping();
    const domain::Problems problems = mapping.check();
    const QStringList elsewhere = m_form->showProblems(problems);
    showPreview(mapping);
    if (!problems.isEmpty()) {
        m_verdict->setStatus(Role::Act, tr("Mapping not complete"));
        m_report->setText(elsewhere.isEmpty()
                              ? tr("See the messages beside the fields at the left.")
                              : elsewhere.join(QLatin1Char('\n')));
        m_result = {};
        setState(State::Checked);
        Q_EMIT checked();
        return;
    }
    m_verdict->setStatus(Role::Info, tr("Reading"));
    m_job.read(m_file.bytes, mapping, m_file.name);
}

// The first rows as records: a wrong unit or zone shows here before it is imported.
void WeatherImportDialog::showPreview(const WeatherMapping &mapping)
{
    m_preview->clear();
    if (!mapping.check().isEmpty())
        return;
    WeatherMapping loose = mapping;
    loose.strict = false;
    const WeatherImport first = exchange::readWeather(
        firstLines(m_file.bytes, kPreviewRows + qMax(1, mapping.headerLine)), loose, m_file.name);
    QStringList quantities;
    for (const exchange::QuantityColumn &column : mapping.columns)
        quantities << column.quantity;
    showRecords(first.rows, quantities);
}

void WeatherImportDialog::takeResult(const WeatherImport &result)
{
    m_result = result;
    QStringList lines = result.report.lines();
    if (selfDescribing() && !result.cancelled)
        introduceKnown();
    if (result.cancelled) {
        m_verdict->setStatus(Role::Watch, tr("Stopped"));
        lines = QStringList{tr("Reading was stopped; nothing was changed. Change a field to read "
                               "again.")};
    } else if (!result.refused.isEmpty()) {
        m_verdict->setStatus(Role::Act, tr("%1 refused").arg(result.refused.count));
        QStringList refusals;
        for (const exchange::Refusal &refusal : result.refused.list.mid(0, kRefusalsShown))
            refusals << refusal.sentence();
        if (result.refused.count > kRefusalsShown)
            refusals << tr("… and %1 more.").arg(result.refused.count - kRefusalsShown);
        lines = refusals + lines;
    } else {
        m_verdict->setStatus(Role::Good, tr("Can be imported"));
    }
    m_report->setText(lines.join(QLatin1Char('\n')));
    offerMissing();
    setState(State::Checked);
    Q_EMIT checked();
}

// One gust of a thousand miles an hour need not keep a year out; but leaving it out is the crew's
// choice, not ours.
void WeatherImportDialog::offerMissing()
{
    WeatherMapping mapping = m_form->mapping();
    if (selfDescribing() || m_result.refused.isEmpty() ||
        mapping.outOfRange == exchange::OutOfRange::Missing) {
        m_notice->dismiss();
        return;
    }
    mapping.outOfRange = exchange::OutOfRange::Missing;
    m_notice->showProblem(tr("Nothing can be imported while a row is refused. Values that cannot "
                             "be true may be counted as missing; they are then listed."),
                          {{tr("Count them as missing"), [this, mapping] {
                                m_form->setMapping(mapping);
                                readSoon();
                            }}});
}

void WeatherImportDialog::startImport()
{
    if (!m_import->isEnabled())
        return;
    setState(State::Writing);
    m_job.compare(m_context.books(), m_result.rows);
}

void WeatherImportDialog::write(const WeatherChangesToWrite &changes)
{
    if (changes.rows.isEmpty()) {
        setState(State::Checked);
        m_notice->showInfo(tr("All %1 records are in the yard already; nothing was changed.")
                               .arg(QLocale(QLocale::English).toString(changes.identical)));
        Q_EMIT imported(0);
        return;
    }
    const qint64 count = changes.rows.size();
    m_write =
        m_context.verbs.putAllInBackground(changes.rows, tr("import %1").arg(m_file.name),
                                           [self = QPointer<WeatherImportDialog>(this),
                                            count](const domain::Outcome<domain::Done> &done) {
                                               if (self)
                                                   self->written(done, count);
                                           });
    m_writePoll.start();
}

void WeatherImportDialog::written(const domain::Outcome<domain::Done> &done, qint64 count)
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
    const QString words = tr("%1 weather records imported from %2. Undo takes them all back.")
                              .arg(QLocale(QLocale::English).toString(count), m_file.name);
    m_context.say(words);
    m_notice->showGood(words);
    m_close->setText(tr("Done"));
    m_close->setFocus(Qt::OtherFocusReason);
    Q_EMIT imported(count);
}

void WeatherImportDialog::stop()
{
    if (m_state == State::Writing) {
        if (m_write)
            m_write->cancelled = true;
        return;
    }
    m_soon.stop();
    m_job.cancel();
    WeatherImport stopped;
    stopped.cancelled = true;
    takeResult(stopped);
}

void WeatherImportDialog::reject()
{
    if (m_state == State::Writing) {
        stop(); // the answer of the write closes nothing: its outcome is worth seeing
        return;
    }
    m_job.cancel();
    QDialog::reject();
}

void WeatherImportDialog::closeEvent(QCloseEvent *event)
{
    if (m_state == State::Writing) {
        stop();
        event->ignore();
        return;
    }
    QDialog::closeEvent(event);
}

} // namespace rickyard::views
