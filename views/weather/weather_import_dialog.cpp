#include "views/weather/weather_import_dialog.h"

#include "views/weather/weather_mapping_form.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QFileInfo>
#include <QStandardItemModel>

namespace rickyard::views {

using exchange::WeatherImport;
using exchange::WeatherMapping;

namespace {

constexpr int kPreviewRows = 12;

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

WeatherImportDialog::WeatherImportDialog(PageContext &context, QWidget *parent)
    : ImportDialog(context,
                   {tr("Import a weather file"), tr("Choose a weather file"),
                    tr("Weather files (*.csv *.txt *.tsv *.epw *.dat);;All files (*)"),
                    QStringLiteral("weather/folder"),
                    tr("Choose a file, or drop it here; its columns are guessed, and you say what "
                       "is wrong."),
                    tr("Import the file into the yard"),
                    QLatin1String(exchange::kWeatherProfileKind), tr("the name of the station"),
                    QString()},
                   parent)
{
    m_form = new WeatherMappingForm;
    build(m_form);
    connect(&m_job, &WeatherImportJob::opened, this, &WeatherImportDialog::takeFile);
    connect(&m_job, &WeatherImportJob::wasRead, this, &WeatherImportDialog::takeResult);
    connect(&m_job, &WeatherImportJob::compared, this, &WeatherImportDialog::takeChanges);
    connect(&m_job, &WeatherImportJob::progressed, this, &WeatherImportDialog::showProgress);
    connect(m_form, &WeatherMappingForm::changed, this, &WeatherImportDialog::readSoon);
    connect(m_form, &WeatherMappingForm::layoutChanged, this, &WeatherImportDialog::splitAnew);
    setState(State::NoFile);
}

WeatherImportDialog::~WeatherImportDialog() = default;

void WeatherImportDialog::takeFile(const OpenedWeatherFile &file)
{
    if (!file.problem.isEmpty()) {
        setState(hasFile() ? State::Checked : State::NoFile);
        m_notice->showProblem(file.problem);
        return;
    }
    m_file = file;
    setFile(file.name);
    m_form->setHeader(file.preview.header);
    useProfile(profile());
}

void WeatherImportDialog::useProfile(domain::RecordId id)
{
    chooseProfile(id);
    if (!hasFile())
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
        const domain::ImportProfile profile = context().books().importProfiles.value(id);
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
    if (!mayRead(problems, elsewhere))
        return;
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
    if (selfDescribing() && !result.cancelled)
        introduceKnown();
    showReport(result.cancelled, result.refused.isEmpty(), result.refused, result.report.lines());
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

void WeatherImportDialog::open(const QString &path)
{
    m_job.open(path, context().books().yard().timeZone);
}

QString WeatherImportDialog::importText() const
{
    return tr("Import %1 records").arg(QLocale(QLocale::English).toString(m_result.rows.size()));
}

QString WeatherImportDialog::mappingText() const
{
    return exchange::toText(m_form->mapping());
}

QString WeatherImportDialog::writtenWords(qint64 count) const
{
    return tr("%1 weather records imported from %2. Undo takes them all back.")
        .arg(QLocale(QLocale::English).toString(count), fileName());
}

void WeatherImportDialog::compare()
{
    m_job.compare(context().books(), m_result.rows);
}

void WeatherImportDialog::takeChanges(const WeatherChangesToWrite &changes)
{
    write(changes.rows, changes.rows.size(),
          tr("All %1 records are in the yard already; nothing was changed.")
              .arg(QLocale(QLocale::English).toString(changes.identical)));
}

void WeatherImportDialog::takeStopped()
{
    WeatherImport stopped;
    stopped.cancelled = true;
    takeResult(stopped);
}

} // namespace rickyard::views
