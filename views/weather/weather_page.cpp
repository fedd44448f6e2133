#include "views/weather/weather_page.h"

#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/weather/weather_chart.h"
#include "views/weather/weather_import_dialog.h"
#include "views/weather/weather_summary.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/numeral.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

namespace {

const QLocale &plainLocale()
{
    static const QLocale locale(QStringLiteral("en_US"));
    return locale;
}

// Where the newest observation was made; null without one.
QString newestPlace(const domain::Books &books)
{
    const domain::Weather *newest = nullptr;
    for (const domain::Weather &record : books.weather)
        if (!record.normal && (newest == nullptr || record.time > newest->time))
            newest = &record;
    if (newest == nullptr)
        return {};
    return newest->place.isNull() ? QStringLiteral("") : newest->place;
}

} // namespace

WeatherPage::WeatherPage(PageContext &context_, QWidget *parent) : Page(context_, parent)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(5), look.space(6), look.space(4));
    column->setSpacing(look.space(3));
    auto *header = new PageHeader(tr("Weather"));
    auto *import = new QPushButton(icon(QStringLiteral("import"), Role::AccentInk),
                                   tr("Import weather file…"));
    import->setProperty("role", "primary");
    import->setAccessibleName(tr("Import a weather file"));
    import->setEnabled(!context().readOnly());
    connect(import, &QPushButton::clicked, this, [this] { importFile(); });
    auto *byHand = new QPushButton(tr("Note what you see"));
    byHand->setAccessibleName(tr("Add a weather record by hand"));
    byHand->setEnabled(!context().readOnly());
    connect(byHand, &QPushButton::clicked, this, &WeatherPage::addByHand);
    header->addAction(byHand);
    header->addAction(import);
    column->addWidget(header);
    m_stack = new QStackedWidget;
    auto *empty = new EmptyState(
        QStringLiteral("weather"), tr("No weather yet"),
        tr("Import the hourly file of a station near the yard. Cold and wind explain most of what "
           "a fire burns, so the fuel answer needs them."));
    empty->setAction(tr("Import weather file…"));
    empty->actionButton()->setEnabled(!context().readOnly());
    connect(empty, &EmptyState::triggered, this, [this] { importFile(); });
    m_stack->addWidget(buildBody());
    m_stack->addWidget(empty);
    column->addWidget(m_stack, 1);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &WeatherPage::refresh);
    connect(&context().verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Weather) || changes.touches(TableId::Yard) ||
                    changes.touches(TableId::ImportProfile))
                    m_soon.start();
            });
    refresh();
}

QWidget *WeatherPage::buildBody()
{
    const Theme &look = theme(this);
    auto *body = new QWidget;
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(buildHead());
    m_chart = new WeatherChart(context());
    m_chart->setMinimumHeight(look.px(200));
    column->addWidget(m_chart, 2);
    m_sections = new SectionTabs;
    buildSections();
    column->addWidget(m_sections, 3);
    return body;
}

QWidget *WeatherPage::buildHead()
{
    auto *head = new QWidget;
    auto *column = new QVBoxLayout(head);
    column->setContentsMargins(0, 0, 0, 0);
    auto *numerals = new QWidget;
    auto *flow = new FlowLayout(numerals);
    flow->setContentsMargins(0, 0, 0, 0);
    flow->setSpacingSteps(7, 2);
    m_covered = new Numeral;
    m_covered->setTextStyle(TextStyle::NumeralHuge);
    m_age = new Numeral;
    m_span = new Numeral;
    for (Numeral *numeral : {m_covered, m_age, m_span})
        flow->addWidget(numeral);
    column->addWidget(numerals);
    m_sentence = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_sentence->setWordWrap(true);
    column->addWidget(m_sentence);
    return head;
}

void WeatherPage::buildSections()
{
    m_records = new RecordList(context(), TableId::Weather, QStringLiteral("weather"),
                               tr("Import a file, or add what a thermometer in the yard says."));
    m_records->sortBy(QStringLiteral("time"), Qt::DescendingOrder);
    m_sections->addSection(tr("Records"), m_records);
    m_profiles =
        new RecordList(context(), TableId::ImportProfile, QStringLiteral("import"),
                       tr("A mapping that is saved in the import dialog stands here, to be "
                          "used for the next file of the same station."));
    m_profiles->model().setFilter([](const domain::Row &row) {
        return domain::textOf(domain::valueOf(row, QStringLiteral("kind"))) ==
               QLatin1String(exchange::kWeatherProfileKind);
    });
    m_sections->addSection(tr("Import mappings"), m_profiles);
}

void WeatherPage::refresh()
{
    const domain::Books &books = context().books();
    m_stack->setCurrentIndex(
        books.weather.isEmpty() && books.importProfiles.isEmpty() && !m_byHand ? 1 : 0);
    // One place at a time: two stations of different years would look like one with a hole.
    const QString place = newestPlace(books);
    const WeatherSummary summary = summarise(books, place);
    const int time = m_records->model().columnOfField(QStringLiteral("time"));
    if (!books.weather.isEmpty() && m_records->view().columnWidth(time) < theme(this).px(120))
        m_records->view().setColumnWidth(time, theme(this).px(205));
    m_coveredText =
        summary.first ? domain::formatNumber(100 * summary.covered, 0, plainLocale()) : QString();
    m_covered->setValue(m_coveredText, QStringLiteral("%"));
    m_covered->setCaption(summary.first && !place.isEmpty()
                              ? tr("of that time covered at %1").arg(place)
                              : tr("of the time from first to last covered"));
    m_sections->setFigure(0, plainLocale().toString(books.weather.size()));
    m_sections->setFigure(1, books.importProfiles.isEmpty()
                                 ? QString()
                                 : plainLocale().toString(books.importProfiles.size()));
    if (summary.first) {
        const auto day = [&](domain::Instant t) {
            return plainLocale().toString(items::toLocal(books, t).date(),
                                          QStringLiteral("d MMM yyyy"));
        };
        m_age->setValue(ageWords(context().verbs.now() - *summary.last), QString());
        m_age->setCaption(tr("since the last record"));
        m_span->setValue(rangeText(day(*summary.first), day(*summary.last)), QString());
        m_span->setCaption(tr("first to last observation"));
    } else {
        m_age->setValue(QString(), QString());
        m_age->setCaption(tr("no observation yet"));
        m_span->setValue(QString(), QString());
        m_span->setCaption(tr("first to last observation"));
    }
    QStringList named;
    for (const QString &one : summary.places)
        if (!one.isEmpty())
            named << one;
    const WeatherSummary all = summarise(books);
    QString words =
        tr("%1 observations and %2 climate normals")
            .arg(plainLocale().toString(all.observations), plainLocale().toString(all.normals));
    if (!named.isEmpty())
        words += tr(" from %1").arg(named.join(QStringLiteral(", ")));
    m_sentence->setText(
        QString(words + tr(". A moment counts as covered when a record is no more than 90 minutes "
                           "away; cooks use the nearest.")));
    m_chart->refresh();
}

QString WeatherPage::coveredText() const
{
    return m_coveredText;
}

bool WeatherPage::show(domain::Link link)
{
    if (link.table == TableId::Weather) {
        m_sections->setCurrent(0);
        return link.id == 0 || m_records->show(link.id);
    }
    if (link.table == TableId::ImportProfile) {
        m_sections->setCurrent(1);
        return link.id == 0 || m_profiles->show(link.id);
    }
    return false;
}

// The place is that of the newest record, so that a note made between two imports joins them.
void WeatherPage::addByHand()
{
    domain::Weather record;
    record.time = context().verbs.now();
    record.place = context().books().yard().name;
    record.source = tr("Noted by hand");
    const QString place = newestPlace(context().books());
    if (!place.isEmpty())
        record.place = place;
    m_byHand = true;
    refresh();
    m_sections->setCurrent(0);
    m_records->addNew(domain::toRow(record));
}

void WeatherPage::addNew()
{
    importFile();
}

void WeatherPage::startSearch()
{
    (m_sections->current() == 0 ? m_records : m_profiles)->startSearch();
}

WeatherImportDialog *WeatherPage::importFile(const QString &path)
{
    if (context().readOnly())
        return nullptr;
    if (!m_dialog) {
        m_dialog = new WeatherImportDialog(context(), window());
        m_dialog->setAttribute(Qt::WA_DeleteOnClose);
        m_dialog->setWindowModality(Qt::WindowModal);
    }
    m_dialog->show();
    m_dialog->raise();
    if (!path.isEmpty())
        m_dialog->openFile(path);
    return m_dialog;
}

} // namespace rickyard::views
