#include "views/fire/log_charts.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/exchange/use_csv.h"
#include "views/charts/chart_view.h"
#include "views/fire/log_chart.h"
#include "views/fire/log_chart_words.h"
#include "views/fire/log_table.h"
#include "views/records/field_editor.h"
#include "views/records/file_export.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/text_label.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QComboBox>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QWidget *scrolled(QWidget *content, QWidget *parent)
{
    auto *scroll = new QScrollArea(parent);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    scroll->viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
    return scroll;
}

} // namespace

LogCharts::LogCharts(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
    connect(&context.answers, &workspace::AnswersService::updated, this, [this] {
        m_stale = true;
        if (isVisible())
            refresh();
    });
}

FieldEditor *LogCharts::dayFilter(const QString &label, const QString &spoken)
{
    FieldSpec field;
    field.key = label;
    field.label = label;
    field.kind = FieldKind::Date;
    FieldEditor *editor = makeEditor(
        field, [this]() -> const Books & { return m_context.books(); }, this);
    if (auto *box = editor->findChild<QCheckBox *>())
        box->setAccessibleName(spoken);
    editor->inner()->setAccessibleName(spoken);
    editor->inner()->setMinimumWidth(theme(this).px(176));
    editor->setValue(std::monostate{});
    connect(editor, &FieldEditor::edited, this, &LogCharts::refresh);
    return editor;
}

QWidget *LogCharts::buildFilters()
{
    auto *row = new QWidget(this);
    auto *flow = new FlowLayout(row);
    flow->setSpacingSteps(4, 2);
    auto *buttons = new QWidget(row);
    auto *line = new QHBoxLayout(buttons);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(theme(this).space(1));
    m_choice = new QButtonGroup(this);
    const std::pair<UseAgainst, QString> choices[] = {
        {UseAgainst::Hours, tr("Hours")},
        {UseAgainst::Outside, tr("Outside temperature")},
        {UseAgainst::Wind, tr("Wind")}};
    for (const auto &[against, name] : choices) {
        auto *button = new QPushButton(name, buttons);
        button->setCheckable(true);
        button->setProperty("role", "quiet");
        button->setChecked(against == m_against);
        button->setAccessibleName(tr("Wood use against: %1").arg(name));
        m_choice->addButton(button, static_cast<int>(against));
        line->addWidget(button);
    }
    connect(m_choice, &QButtonGroup::idClicked, this,
            [this](int id) { setAgainst(static_cast<UseAgainst>(id)); });
    flow->addWidget(new FieldRow(tr("Wood use against"), buttons, row));
    m_pits = new QComboBox(row);
    m_pits->setMinimumWidth(theme(this).px(160));
    connect(m_pits, &QComboBox::currentIndexChanged, this, &LogCharts::refresh);
    flow->addWidget(new FieldRow(tr("Pit"), m_pits, row));
    m_pits->setAccessibleName(tr("Pits that are shown"));
    m_from = dayFilter(tr("From"), tr("Only cooks lit from this day on"));
    flow->addWidget(new FieldRow(tr("From"), m_from, row));
    m_until = dayFilter(tr("To"), tr("Only cooks lit up to this day"));
    flow->addWidget(new FieldRow(tr("To"), m_until, row));
    return row;
}

void LogCharts::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_stack = new QStackedWidget(this);
    outer->addWidget(m_stack);
    m_stack->addWidget(new EmptyState(QStringLiteral("chart"), tr("No finished cook yet"),
                                      tr("When a fire is out and its wood is logged, the cook is a "
                                         "point on these charts. Light a pit on Now, or add past "
                                         "cooks to the log."),
                                      m_stack));
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, look.space(2), 0);
    column->setSpacing(look.space(4));
    column->addWidget(buildFilters());
    m_sentence = new SentenceLabel(content);
    m_sentence->setStyles(TextStyle::Heading, TextStyle::Title);
    column->addWidget(m_sentence);
    m_basis = new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, content);
    m_basis->setWordWrap(true);
    column->addWidget(m_basis);
    auto *chartCard = new Card(tr("Every finished cook"), content);
    m_chart = new LogChart(chartCard);
    auto *picture = new QPushButton(icon(QStringLiteral("export")), tr("Picture"), chartCard);
    picture->setAccessibleName(tr("Export the chart as a picture"));
    picture->setProperty("role", "quiet");
    connect(picture, &QPushButton::clicked, this, &LogCharts::askForPicture);
    chartCard->addHeadingWidget(picture);
    chartCard->body()->addWidget(m_chart);
    column->addWidget(chartCard);
    auto *tableCard = new Card(tr("The same in figures, wood in %1")
                                   .arg(FireWords(m_context.books()).unit(Dimension::Heat).symbol),
                               content);
    auto *csv = new QPushButton(icon(QStringLiteral("export")), tr("CSV"), tableCard);
    csv->setAccessibleName(tr("Export these figures as CSV"));
    csv->setProperty("role", "quiet");
    connect(csv, &QPushButton::clicked, this, &LogCharts::askForTable);
    tableCard->addHeadingWidget(csv);
    m_table = new LogTable(m_context, tableCard);
    tableCard->body()->addWidget(m_table);
    column->addWidget(tableCard);
    m_stack->addWidget(scrolled(content, m_stack));
    const auto openCook = [this](qint64 cook) { m_context.open({TableId::Cook, cook}); };
    connect(m_chart, &LogChart::cookOpened, this, openCook);
    connect(m_table, &LogTable::cookOpened, this, openCook);
}

void LogCharts::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
}

void LogCharts::fillPits()
{
    const qint64 before = m_pits->currentData().toLongLong();
    const QSignalBlocker quiet(m_pits);
    m_pits->clear();
    m_pits->addItem(tr("All pits"), QVariant::fromValue<qint64>(0));
    for (const Pit &pit : m_context.books().pits)
        m_pits->addItem(pit.name, QVariant::fromValue<qint64>(pit.id));
    m_pits->setCurrentIndex(std::max(0, m_pits->findData(QVariant::fromValue<qint64>(before))));
}

QVector<CookFuel> LogCharts::chosenCooks() const
{
    const QTimeZone zone = zoneOf(wordingOf(m_context.books()));
    const QDate from = QDate::fromString(textOf(m_from->typed().value), Qt::ISODate);
    const QDate until = QDate::fromString(textOf(m_until->typed().value), Qt::ISODate);
    const RecordId pit = m_pits->currentData().toLongLong();
    QVector<CookFuel> cooks;
    for (const CookFuel &cook : m_context.answers.answers().fuel.cooks) {
        const QDate day = dayOf(cook.lit, zone);
        if ((pit == 0 || cook.pit == pit) && (!from.isValid() || day >= from) &&
            (!until.isValid() || day <= until) && cook.finished && cook.netHeat > Heat())
            cooks << cook;
    }
    return cooks;
}

void LogCharts::refresh()
{
    if (!m_context.answers.ready())
        return;
    m_stale = false;
    fillPits();
    const Books &books = m_context.books();
    const QVector<CookFuel> &all = m_context.answers.answers().fuel.cooks;
    const bool any = std::any_of(all.cbegin(), all.cend(), [](const CookFuel &cook) {
        return cook.finished && cook.netHeat > Heat();
    });
    m_stack->setCurrentIndex(any ? 1 : 0);
    m_cooks = chosenCooks();
    const QVector<UsePoint> points = usePoints(m_cooks, m_against);
    m_lines = useLines(points);
    const LogChartWords words(books, m_against);
    m_sentence->setParts(m_cooks.isEmpty()
                             ? QVector<SentencePart>{{tr("No finished cook on these days.")}}
                             : words.sentence(m_lines));
    m_basis->setText(words.basis(m_lines, static_cast<int>(m_cooks.size() - points.size())));
    m_chart->showCooks(books, m_cooks, m_against, m_lines);
    m_table->showCooks(m_cooks, m_against, m_lines);
}

void LogCharts::setAgainst(UseAgainst against)
{
    m_against = against;
    if (QAbstractButton *button = m_choice->button(static_cast<int>(against)))
        button->setChecked(true);
    refresh();
}

QString LogCharts::sentence() const
{
    return m_sentence->plainText();
}

std::optional<QString> LogCharts::exportTable(const QString &path) const
{
    return writeFile(path, exchange::useCsv(m_cooks, m_lines, m_against, m_context.books()));
}

void LogCharts::askForPicture()
{
    askAndExport(m_context, this,
                 {tr("Export the chart as a picture"), QStringLiteral("wood-use.png"),
                  tr("Pictures (*.png *.svg)")},
                 [this](const QString &path) { return m_chart->chart().exportPicture(path); });
}

void LogCharts::askForTable()
{
    askAndExport(
        m_context, this,
        {tr("Export these figures as CSV"), QStringLiteral("wood-use.csv"), tr("CSV (*.csv)")},
        [this](const QString &path) { return exportTable(path); });
}

} // namespace rickyard::views
