#include "views/fire/trace_import_dialog.h"

#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/fire/trace_mapping_form.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QCloseEvent>
#include <QComboBox>
#include <QDropEvent>
#include <QFileDialog>
#include <QLineEdit>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStandardItemModel>
#include <QTableView>

namespace rickyard::views {

using exchange::ProbeLog;
using exchange::ProbeLogMapping;

namespace {

constexpr int kTracePreviewRows = 14;
constexpr int kTraceRefusalsShown = 8;
constexpr char kTraceFolderKey[] = "fire/traceFolder";
// A log whose highest reading lies beyond these is more likely in the other unit. Common practice,
// no source.
constexpr double kHotForCelsius = 205;     // °C
constexpr double kCoolForFahrenheit = 140; // °F

// The first rows are of a cold pit and say little of the unit; the whole file says more.
QString unitDoubt(const ProbeLog &log, bool fahrenheit)
{
    std::optional<domain::Temperature> highest;
    for (const exchange::ProbeSeries &series : log.series)
        for (const domain::TracePoint &point : series.points)
            highest = highest ? std::max(*highest, point.temperature) : point.temperature;
    if (!highest)
        return {};
    const double degrees = fahrenheit ? domain::fahrenheit(*highest) : domain::celsius(*highest);
    if (fahrenheit ? degrees >= kCoolForFahrenheit : degrees <= kHotForCelsius)
        return {};
    return TraceImportDialog::tr("The highest reading of the file is %1 %2. Is it in %3?")
        .arg(QString::number(degrees, 'f', 0),
             fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C"),
             fahrenheit ? QStringLiteral("°C") : QStringLiteral("°F"));
}

} // namespace

TraceImportDialog::~TraceImportDialog() = default;

domain::RecordId TraceImportDialog::cook() const
{
    return m_cooks->currentData().toLongLong();
}

domain::RecordId TraceImportDialog::profile() const
{
    return m_profiles->currentData().toLongLong();
}

bool TraceImportDialog::ready() const
{
    return m_log.ok && cook() != 0;
}

QString TraceImportDialog::reportText() const
{
    return m_report->text();
}

QAbstractItemModel *TraceImportDialog::previewModel() const
{
    return m_preview;
}

void TraceImportDialog::chooseCook(domain::RecordId cook)
{
    m_cooks->setCurrentIndex(qMax(0, m_cooks->findData(QVariant::fromValue<qint64>(cook))));
}

void TraceImportDialog::setState(State state)
{
    m_state = state;
    const bool busy = state == State::Opening || state == State::Reading || state == State::Writing;
    m_progress->setVisible(busy);
    m_stop->setVisible(state == State::Reading || state == State::Writing);
    m_form->setEnabled(state == State::Reading || state == State::Checked);
    m_choose->setEnabled(state != State::Writing);
    m_cooks->setEnabled(state != State::Writing);
    m_profiles->setEnabled(state != State::Writing);
    m_import->setEnabled(state == State::Checked && ready() && !m_context.readOnly());
    qint64 readings = 0;
    for (const exchange::ProbeSeries &series : m_log.series)
        readings += series.points.size();
    m_import->setText(
        m_import->isEnabled()
            ? tr("Import %1 readings").arg(QLocale(QLocale::English).toString(readings))
            : tr("Import"));
    m_saveProfile->setEnabled(state == State::Checked && !m_context.readOnly() &&
                              !m_file.head.isEmpty());
    m_progress->setRange(0, 0);
    m_progress->setFormat(state == State::Writing ? tr("Writing… %p %") : tr("Reading… %p %"));
}

void TraceImportDialog::chooseFile()
{
    const QString folder = m_context.settings.value(QLatin1String(kTraceFolderKey)).toString();
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Choose the log of a probe"), folder,
                                     tr("Tables of text (*.csv *.txt *.tsv *.log);;All files (*)"));
    if (path.isEmpty())
        return;
    m_context.settings.setValue(QLatin1String(kTraceFolderKey), QFileInfo(path).absolutePath());
    openFile(path);
}

void TraceImportDialog::openFile(const QString &path)
{
    m_log = {};
    m_notice->dismiss();
    setState(State::Opening);
    m_job.open(path);
}

void TraceImportDialog::takeFile(const OpenedTraceFile &file)
{
    if (!file.problem.isEmpty()) {
        setState(m_file.head.isEmpty() ? State::NoFile : State::Checked);
        m_notice->showProblem(file.problem);
        return;
    }
    m_file = file;
    m_fileName->setText(file.name);
    useProfile(exchange::profileFor(m_context.books(), file.head));
}

void TraceImportDialog::useProfile(domain::RecordId id)
{
    m_profiles->setCurrentIndex(qMax(0, m_profiles->findData(QVariant::fromValue<qint64>(id))));
    if (m_file.head.isEmpty())
        return;
    if (id == 0) {
        guessAnew(1, {});
        return;
    }
    const domain::ImportProfile saved = m_context.books().importProfiles.value(id);
    const auto profile = exchange::probeProfileFromText(saved.mapping);
    if (!profile) {
        m_notice->showProblem(profile.message());
        return;
    }
    const ProbeLogMapping &mapping = profile->mapping;
    m_form->setHeader(exchange::probeHeader(m_file.head, mapping.separator, mapping.headerLine));
    setMapping(mapping, {tr("As saved in “%1”.").arg(saved.name)});
}

// Another separator or row of headers makes other columns of the file.
void TraceImportDialog::guessAnew(int headerLine, QChar separator)
{
    if (m_file.head.isEmpty())
        return;
    exchange::ProbeLogGuess guess =
        exchange::guessProbeLog(m_file.head, m_context.books().yard().timeZone, headerLine);
    QStringList notes = guess.notes;
    if (!guess.unitNote.isEmpty())
        notes << guess.unitNote;
    if (!separator.isNull() && separator != guess.mapping.separator) {
        // Nothing can be guessed against the separator that the file seems to have.
        guess.mapping.separator = separator;
        guess.mapping.probes.clear();
        guess.mapping.timeColumn.clear();
        notes = QStringList{tr("Choose the columns: the file does not look as if it were split "
                               "that way.")};
    }
    m_form->setHeader(
        exchange::probeHeader(m_file.head, guess.mapping.separator, guess.mapping.headerLine));
    setMapping(guess.mapping, notes);
}

void TraceImportDialog::setMapping(ProbeLogMapping mapping, const QStringList &notes)
{
    const domain::Cook chosen = m_context.books().cooks.value(cook());
    QStringList said = notes;
    if (mapping.time != exchange::ProbeTime::Clock)
        said << tr("The log holds no dates: it is taken to begin when the cook was lit.");
    // Also for a mapping with dates: it is what stands there when that is changed.
    mapping.start = chosen.lit;
    m_guess->setText(said.isEmpty() ? tr("Guessed from the file; change what is wrong.")
                                    : said.join(QLatin1Char(' ')));
    m_form->setMapping(mapping);
    readSoon();
}

void TraceImportDialog::readSoon()
{
    if (m_file.head.isEmpty() || m_state == State::Writing)
        return;
    m_log = {};
    m_job.cancel();
    setState(State::Reading);
    m_soon.start();
}

void TraceImportDialog::readNow()
{
    ProbeLogMapping mapping = m_form->mapping();
    const domain::Problems problems = mapping.check();
    const QStringList elsewhere = m_form->showProblems(problems);
    showPreview(mapping);
    if (!problems.isEmpty()) {
        m_verdict->setStatus(Role::Act, tr("Mapping not complete"));
        m_report->setText(elsewhere.isEmpty()
                              ? tr("See the messages beside the fields at the left.")
                              : elsewhere.join(QLatin1Char('\n')));
        m_log = {};
        setState(State::Checked);
        Q_EMIT checked();
        return;
    }
    m_verdict->setStatus(Role::Info, tr("Reading"));
    exchange::keepHoursOf(m_context.books().cooks.value(cook()), mapping);
    m_job.read(m_file.path, mapping);
}

// The first rows as readings: a wrong unit, zone or order of day and month shows here before it is
// imported, and a row that will be refused says why.
void TraceImportDialog::showPreview(const ProbeLogMapping &mapping)
{
    m_preview->clear();
    QStringList labels{tr("Line"), tr("As written"), tr("Read as")};
    for (const exchange::ProbeColumn &probe : mapping.probes)
        labels << probe.probe;
    m_preview->setHorizontalHeaderLabels(labels);
    if (!mapping.check().isEmpty())
        return;
    const domain::Books &books = m_context.books();
    const FireWords words(books);
    const QStringList header =
        exchange::probeHeader(m_file.head, mapping.separator, mapping.headerLine);
    const qsizetype time = header.indexOf(mapping.timeColumn);
    const qsizetype date = header.indexOf(mapping.dateColumn);
    const auto add = [](QList<QStandardItem *> &row, const QString &text, bool figure) {
        auto *item = new QStandardItem(text);
        item->setEditable(false);
        if (figure)
            item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
        row << item;
    };
    for (const exchange::ProbePreviewRow &shown :
         exchange::previewProbeLog(m_file.head, mapping, kTracePreviewRows)) {
        QList<QStandardItem *> row;
        add(row, QString::number(shown.line), true);
        QString written = shown.cells.value(time);
        if (!mapping.dateColumn.isEmpty())
            written = QString(shown.cells.value(date) + QLatin1Char(' ') + written);
        add(row, written, false);
        add(row,
            shown.time ? words.locale().toString(items::toLocal(books, *shown.time),
                                                 QStringLiteral("d MMM yyyy h:mm:ss AP"))
                       : tr("refused"),
            false);
        for (qsizetype i = 0; i < mapping.probes.size(); ++i) {
            const auto reading = shown.readings.value(i);
            add(row,
                reading ? withUnit(trueMinus(domain::formatNumber(
                                       domain::toUnit(reading->base(),
                                                      words.unit(domain::Dimension::Temperature)),
                                       1, words.locale())),
                                   words.unit(domain::Dimension::Temperature).symbol)
                        : missingMark(),
                true);
        }
        if (!shown.refused.isEmpty())
            for (QStandardItem *item : std::as_const(row)) {
                item->setData(shown.refused.toHtmlEscaped(), Qt::ToolTipRole);
                item->setData(shown.refused, Qt::AccessibleDescriptionRole);
            }
        if (!shown.refused.isEmpty())
            row.at(2)->setIcon(icon(QStringLiteral("warning"), Role::Act));
        m_preview->appendRow(row);
    }
    m_previewView->resizeColumnsToContents();
}

void TraceImportDialog::takeLog(const ProbeLog &log)
{
    m_log = log;
    QStringList lines = log.report.lines();
    if (log.cancelled) {
        m_verdict->setStatus(Role::Watch, tr("Stopped"));
        lines = QStringList{tr("Reading was stopped; nothing was changed. Change a field to read "
                               "again.")};
    } else if (!log.ok) {
        m_verdict->setStatus(Role::Act, tr("%1 refused").arg(log.refused.count));
    } else if (!log.refused.isEmpty()) {
        m_verdict->setStatus(Role::Watch, tr("%1 left out").arg(log.refused.count));
    } else {
        m_verdict->setStatus(Role::Good, tr("Can be imported"));
    }
    if (!log.cancelled && !log.refused.isEmpty()) {
        QStringList refusals;
        for (const exchange::Refusal &refusal : log.refused.list.mid(0, kTraceRefusalsShown))
            refusals << refusal.sentence();
        if (log.refused.count > kTraceRefusalsShown)
            refusals << tr("… and %1 more.").arg(log.refused.count - kTraceRefusalsShown);
        lines = refusals + lines;
    }
    const QString doubt = unitDoubt(log, m_form->mapping().fahrenheit);
    if (!doubt.isEmpty()) {
        m_verdict->setStatus(Role::Watch, tr("Look at the unit"));
        lines.prepend(doubt);
    }
    for (const exchange::ProbeSeries &series : log.series)
        lines << tr("%1: %2 readings.")
                     .arg(series.probe, QLocale(QLocale::English).toString(series.points.size()));
    m_report->setText(lines.join(QLatin1Char('\n')));
    offerLeavingOut();
    setState(State::Checked);
    Q_EMIT checked();
}

// A torn line in a log of a night need not keep the night out; but leaving it out is the crew's
// choice, not ours.
void TraceImportDialog::offerLeavingOut()
{
    ProbeLogMapping mapping = m_form->mapping();
    const bool rows = !m_log.refused.list.isEmpty() && m_log.refused.list.first().line > 0 &&
                      m_log.refused.list.first().line > mapping.headerLine;
    if (m_log.ok || m_log.cancelled || !rows || !mapping.strict) {
        m_notice->dismiss();
        return;
    }
    mapping.strict = false;
    m_notice->showProblem(tr("Nothing can be imported while a row is refused. The refused rows may "
                             "be left out; the others then come in."),
                          {{tr("Leave them out"), [this, mapping] {
                                m_form->setMapping(mapping);
                                readSoon();
                            }}});
}

void TraceImportDialog::startImport()
{
    if (!m_import->isEnabled())
        return;
    setState(State::Writing);
    m_job.compare(m_context.books(), cook(), m_log, m_file.name);
}

void TraceImportDialog::write(const TraceChangesToWrite &changes)
{
    if (!changes.problem.isEmpty()) {
        setState(State::Checked);
        m_notice->showProblem(changes.problem);
        return;
    }
    if (changes.rows.isEmpty()) {
        setState(State::Checked);
        m_notice->showInfo(
            tr("All readings are in this cook's traces already; nothing was changed."));
        Q_EMIT imported(0);
        return;
    }
    const qint64 readings = changes.readings;
    m_write =
        m_context.verbs.putAllInBackground(changes.rows, tr("import %1").arg(m_file.name),
                                           [self = QPointer<TraceImportDialog>(this),
                                            readings](const domain::Outcome<domain::Done> &done) {
                                               if (self)
                                                   self->written(done, readings);
                                           });
    m_writePoll.start();
}

void TraceImportDialog::written(const domain::Outcome<domain::Done> &done, qint64 readings)
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
    const QString words = tr("%1 imported: the traces of this cook now hold %2 readings. Undo "
                             "takes the import back.")
                              .arg(m_file.name, QLocale(QLocale::English).toString(readings));
    m_context.say(words);
    m_notice->showGood(words);
    m_close->setText(tr("Done"));
    m_close->setFocus(Qt::OtherFocusReason);
    Q_EMIT imported(readings);
}

bool TraceImportDialog::saveProfile(const QString &name)
{
    if (name.trimmed().isEmpty()) {
        m_notice->showProblem(
            tr("Give the mapping a name first, such as the place of the logger."));
        m_profileName->setFocus(Qt::OtherFocusReason);
        return false;
    }
    domain::ImportProfile saved;
    for (const domain::ImportProfile &other : m_context.books().importProfiles)
        if (other.name == name.trimmed() &&
            other.kind == QLatin1String(exchange::kTraceProfileKind))
            saved = other;
    saved.name = name.trimmed();
    saved.kind = QLatin1String(exchange::kTraceProfileKind);
    const ProbeLogMapping mapping = m_form->mapping();
    saved.mapping = exchange::toText(exchange::ProbeProfile{
        mapping, exchange::probeHeader(m_file.head, mapping.separator, mapping.headerLine)});
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
    m_profiles->setCurrentIndex(m_profiles->findData(QVariant::fromValue<qint64>(id)));
    m_notice->showGood(tr("The mapping is saved as “%1”. The next file with these headers gets "
                          "it by itself.")
                           .arg(saved.name));
    return true;
}

void TraceImportDialog::stop()
{
    if (m_state == State::Writing && m_write) {
        m_write->cancelled = true;
        return;
    }
    if (m_state == State::Writing) { // still compared with what is there
        m_job.cancel();
        setState(State::Checked);
        m_notice->showInfo(tr("Stopped. Nothing was written."));
        return;
    }
    m_soon.stop();
    m_job.cancel();
    ProbeLog stopped;
    stopped.cancelled = true;
    takeLog(stopped);
}

void TraceImportDialog::dragEnterEvent(QDragEnterEvent *event)
{
    if (m_state != State::Writing && event->mimeData()->hasUrls() &&
        event->mimeData()->urls().first().isLocalFile())
        event->acceptProposedAction();
}

void TraceImportDialog::dropEvent(QDropEvent *event)
{
    event->acceptProposedAction();
    openFile(event->mimeData()->urls().first().toLocalFile());
}

void TraceImportDialog::reject()
{
    if (m_state == State::Writing) {
        stop(); // the answer of the write closes nothing: its outcome is worth seeing
        return;
    }
    m_job.cancel();
    QDialog::reject();
}

void TraceImportDialog::closeEvent(QCloseEvent *event)
{
    if (m_state == State::Writing) {
        stop();
        event->ignore();
        return;
    }
    m_job.cancel();
    QDialog::closeEvent(event);
}

} // namespace rickyard::views
