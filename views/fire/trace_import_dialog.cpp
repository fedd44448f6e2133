#include "views/fire/trace_import_dialog.h"

#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/fire/trace_mapping_form.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QStandardItemModel>
#include <QTableView>
#include <QTimeZone>

#include <algorithm>

namespace rickyard::views {

using exchange::ProbeLog;
using exchange::ProbeLogMapping;

namespace {

constexpr int kTracePreviewRows = 14;
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

TraceImportDialog::TraceImportDialog(PageContext &context, domain::RecordId cook, QWidget *parent)
    : ImportDialog(context,
                   {tr("Import the log of a probe"), tr("Choose the log of a probe"),
                    tr("Tables of text (*.csv *.txt *.tsv *.log);;All files (*)"),
                    QStringLiteral("fire/traceFolder"),
                    tr("Choose a file, or drop it here; its columns are guessed, and you say what "
                       "is wrong."),
                    tr("Import the log into the cook"), QLatin1String(exchange::kTraceProfileKind),
                    tr("the place of the logger"),
                    tr(" The next file with these headers gets it by itself.")},
                   parent)
{
    QTimeZone zone(context.books().yard().timeZone.toUtf8());
    m_form = new TraceMappingForm(zone.isValid() ? zone : QTimeZone::utc());
    build(m_form);
    m_cooks = new QComboBox;
    m_cooks->setAccessibleName(tr("Cook that the log belongs to"));
    addChoice(tr("Cook"), m_cooks);
    connect(m_cooks, &QComboBox::activated, this, [this] { useProfile(profile()); });
    connect(&m_job, &TraceImportJob::opened, this, &TraceImportDialog::takeFile);
    connect(&m_job, &TraceImportJob::wasRead, this, &TraceImportDialog::takeLog);
    connect(&m_job, &TraceImportJob::compared, this, &TraceImportDialog::takeChanges);
    connect(&m_job, &TraceImportJob::progressed, this, &TraceImportDialog::showProgress);
    connect(m_form, &TraceMappingForm::changed, this, &TraceImportDialog::readSoon);
    connect(m_form, &TraceMappingForm::layoutChanged, this, [this] {
        const ProbeLogMapping mapping = m_form->mapping();
        guessAnew(mapping.headerLine, mapping.separator);
    });
    fillCooks(cook);
    setState(State::NoFile);
}

// The latest first, as most logs are of the cook that just ended.
void TraceImportDialog::fillCooks(domain::RecordId first)
{
    const domain::Books &books = context().books();
    QVector<domain::Cook> cooks(books.cooks.cbegin(), books.cooks.cend());
    std::sort(cooks.begin(), cooks.end(),
              [](const domain::Cook &a, const domain::Cook &b) { return a.lit > b.lit; });
    const FireWords words(books);
    for (const domain::Cook &cook : std::as_const(cooks))
        m_cooks->addItem(cook.name.trimmed().isEmpty()
                             ? cookTitle(books, cook)
                             : tr("%1, %2").arg(cookTitle(books, cook), words.day(cook.lit)),
                         QVariant::fromValue<qint64>(cook.id));
    chooseCook(first);
}

TraceImportDialog::~TraceImportDialog() = default;

domain::RecordId TraceImportDialog::cook() const
{
    return m_cooks->currentData().toLongLong();
}

bool TraceImportDialog::ready() const
{
    return m_log.ok && cook() != 0;
}

void TraceImportDialog::chooseCook(domain::RecordId cook)
{
    m_cooks->setCurrentIndex(qMax(0, m_cooks->findData(QVariant::fromValue<qint64>(cook))));
}

void TraceImportDialog::takeFile(const OpenedTraceFile &file)
{
    if (!file.problem.isEmpty()) {
        setState(hasFile() ? State::Checked : State::NoFile);
        m_notice->showProblem(file.problem);
        return;
    }
    m_file = file;
    setFile(file.name);
    useProfile(exchange::profileFor(context().books(), file.head));
}

void TraceImportDialog::useProfile(domain::RecordId id)
{
    chooseProfile(id);
    if (!hasFile())
        return;
    if (id == 0) {
        guessAnew(1, {});
        return;
    }
    const domain::ImportProfile saved = context().books().importProfiles.value(id);
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
    if (!hasFile())
        return;
    exchange::ProbeLogGuess guess =
        exchange::guessProbeLog(m_file.head, context().books().yard().timeZone, headerLine);
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
    const domain::Cook chosen = context().books().cooks.value(cook());
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

void TraceImportDialog::readNow()
{
    ProbeLogMapping mapping = m_form->mapping();
    const domain::Problems problems = mapping.check();
    const QStringList elsewhere = m_form->showProblems(problems);
    showPreview(mapping);
    if (!mayRead(problems, elsewhere))
        return;
    exchange::keepHoursOf(context().books().cooks.value(cook()), mapping);
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
    const domain::Books &books = context().books();
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
    const QString doubt = unitDoubt(log, m_form->mapping().fahrenheit);
    for (const exchange::ProbeSeries &series : log.series)
        lines << tr("%1: %2 readings.")
                     .arg(series.probe, QLocale(QLocale::English).toString(series.points.size()));
    if (!doubt.isEmpty())
        lines.prepend(doubt);
    showReport(log.cancelled, log.ok, log.refused, lines);
    if (!doubt.isEmpty())
        m_verdict->setStatus(Role::Watch, tr("Look at the unit"));
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

void TraceImportDialog::open(const QString &path)
{
    m_job.open(path);
}

QString TraceImportDialog::importText() const
{
    qint64 readings = 0;
    for (const exchange::ProbeSeries &series : m_log.series)
        readings += series.points.size();
    return tr("Import %1 readings").arg(QLocale(QLocale::English).toString(readings));
}

QString TraceImportDialog::mappingText() const
{
    const ProbeLogMapping mapping = m_form->mapping();
    return exchange::toText(exchange::ProbeProfile{
        mapping, exchange::probeHeader(m_file.head, mapping.separator, mapping.headerLine)});
}

QString TraceImportDialog::writtenWords(qint64 count) const
{
    return tr("%1 imported: the traces of this cook now hold %2 readings. Undo takes the import "
              "back.")
        .arg(fileName(), QLocale(QLocale::English).toString(count));
}

void TraceImportDialog::compare()
{
    m_job.compare(context().books(), cook(), m_log, fileName());
}

void TraceImportDialog::takeChanges(const TraceChangesToWrite &changes)
{
    if (!changes.problem.isEmpty()) {
        setState(State::Checked);
        m_notice->showProblem(changes.problem);
        return;
    }
    write(changes.rows, changes.readings,
          tr("All readings are in this cook's traces already; nothing was changed."));
}

void TraceImportDialog::takeStopped()
{
    ProbeLog stopped;
    stopped.cancelled = true;
    takeLog(stopped);
}

} // namespace rickyard::views
