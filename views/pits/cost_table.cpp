#include "views/pits/cost_table.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/exchange/csv_writer.h"
#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/records/figure_table.h"
#include "views/records/file_export.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;
using items::DerivedCell;
using items::DerivedRow;

namespace {

QVector<items::DerivedModel::Column> costColumns()
{
    return {{CostTable::tr("What"), false},   {CostTable::tr("Cooks"), true},
            {CostTable::tr("Hours"), true},   {CostTable::tr("Heat"), true},
            {CostTable::tr("/ hour"), true},  {CostTable::tr("/ 1,000 °h"), true},
            {CostTable::tr("/ food"), true},  {CostTable::tr("Did work"), true},
            {CostTable::tr("Money"), true},   {CostTable::tr("$ / cook"), true},
            {CostTable::tr("$ / food"), true}};
}

} // namespace

CostTable::CostTable(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_by(new QComboBox(this)),
      m_sentence(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_basis(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this)),
      m_view(new FigureTable(costColumns(), tr("What the fires cost and did"), this))
{
    build();
}

void CostTable::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_sentence->setWordWrap(true);
    column->addWidget(m_sentence);
    auto *row = new QHBoxLayout;
    m_by->addItem(tr("By pit"));
    m_by->addItem(tr("By event"));
    m_by->addItem(tr("By month"));
    m_by->setAccessibleName(tr("What the costs are summed by"));
    m_by->setMinimumWidth(look.px(160));
    connect(m_by, &QComboBox::currentIndexChanged, this, &CostTable::fill);
    row->addWidget(m_by);
    row->addStretch(1);
    auto *save = new QPushButton(icon(QStringLiteral("export")), tr("Export CSV"), this);
    save->setAccessibleName(tr("Export the costs as CSV"));
    connect(save, &QPushButton::clicked, this, &CostTable::askForFile);
    row->addWidget(save);
    column->addLayout(row);
    m_view->setWidest(170);
    connect(m_view, &FigureTable::opened, this, [this](const Link &link) { m_context.open(link); });
    column->addWidget(m_view, 1);
    m_basis->setWordWrap(true);
    column->addWidget(m_basis);
}

CostTable::By CostTable::by() const
{
    return static_cast<By>(std::max(0, m_by->currentIndex()));
}

void CostTable::choose(By by)
{
    m_by->setCurrentIndex(static_cast<int>(by));
}

QVector<FireWork> CostTable::works() const
{
    switch (by()) {
    case By::Pit:
        return workByPit(m_context.books(), m_fuel);
    case By::Event:
        return workByEvent(m_context.books(), m_fuel);
    case By::Month:
        break;
    }
    return workByMonth(m_context.books(), m_fuel);
}

DerivedCell CostTable::nameOf(const FireWork &work) const
{
    const Books &books = m_context.books();
    if (by() == By::Pit)
        return {books.pits.value(work.pit).name, {}, {}};
    if (by() == By::Month)
        return {FireWords(books).locale().toString(work.month, QStringLiteral("MMMM yyyy")),
                work.month.toJulianDay(),
                {}};
    if (work.event == 0)
        return {tr("no event"), {}, {}};
    const Event event = books.events.value(work.event);
    return {tr("%1, %2").arg(event.name, FireWords(books).day(event.start)),
            QVariant::fromValue<qint64>(event.start.seconds()),
            {}};
}

DerivedRow CostTable::rowOf(const FireWork &work) const
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Wording wording = wordingOf(books);
    const auto number = [&](double value, int decimals) {
        return formatNumber(value, decimals, words.locale());
    };
    const auto heat = [&](std::optional<double> joules, double times, int decimals) {
        return FigureTable::figure(
            joules ? words.heat(Heat::rounded(*joules * times), decimals).value : QString(),
            joules);
    };
    const auto money = [&](std::optional<double> cents, double times) {
        return FigureTable::figure(cents ? moneyWords(*cents * times, wording) : QString(), cents);
    };
    const bool metric = books.yard().metric;
    const double perDegree = metric ? 1000.0 : 1000.0 * 5.0 / 9.0; // a degree Fahrenheit is smaller
    const double perWeight = static_cast<double>(fromUnit(1, words.unit(Dimension::Mass)));
    const auto efficiency = work.efficiency();
    DerivedRow row;
    row.link = {by() == By::Pit ? TableId::Pit : TableId::Event, by() == By::Pit     ? work.pit
                                                                 : by() == By::Event ? work.event
                                                                                     : RecordId{0}};
    row.cells = {nameOf(work),
                 FigureTable::figure(QString::number(work.cooks), work.cooks),
                 FigureTable::figure(number(work.hours, 0), work.hours),
                 heat(work.heat.toDouble(), 1, 0),
                 heat(work.joulesPerHour(), 1, 1),
                 heat(work.joulesPerDegreeHour(), perDegree, 0),
                 heat(work.joulesPerFood(), perWeight, 2),
                 FigureTable::figure(efficiency ? words.share(*efficiency) : QString(), efficiency),
                 money(work.pricedCooks > 0 ? std::optional(work.cents) : std::nullopt, 1),
                 money(work.centsPerCook(), 1),
                 money(work.centsPerFood(), perWeight)};
    return row;
}

void CostTable::fill()
{
    const QVector<FireWork> all = works();
    QVector<DerivedRow> rows;
    for (const FireWork &work : all)
        rows << rowOf(work);
    m_view->setRows(rows);
    m_sentence->setText(sentence());
    m_basis->setText(basis());
}

QString CostTable::sentence() const
{
    const Books &books = m_context.books();
    QVector<FireWork> pits = workByPit(books, m_fuel);
    pits.removeIf([](const FireWork &work) { return !work.efficiency(); });
    if (pits.isEmpty())
        return tr("No finished cook with wood and temperatures yet.");
    const auto [worst, best] =
        std::minmax_element(pits.begin(), pits.end(), [](const FireWork &a, const FireWork &b) {
            return *a.efficiency() < *b.efficiency();
        });
    const FireWords words(books);
    const auto name = [&](const FireWork &work) { return books.pits.value(work.pit).name; };
    QString text =
        pits.size() == 1
            ? tr("%1 of the heat burned on %2 did work.")
                  .arg(words.share(*best->efficiency()), name(*best))
            : tr("%1 gets the most out of its wood: %2 of the heat did work; %3 the least, %4.")
                  .arg(name(*best), words.share(*best->efficiency()), name(*worst),
                       words.share(*worst->efficiency()));
    double cents = 0;
    int cooks = 0;
    for (const FireWork &work : std::as_const(pits)) {
        cents += work.cents;
        cooks += work.pricedCooks;
    }
    if (cooks > 0)
        text += tr(" A cook costs %1 of wood on average.")
                    .arg(moneyWords(cents / cooks, wordingOf(books)));
    return text;
}

QString CostTable::basis() const
{
    const FireWords words(m_context.books());
    const bool metric = m_context.books().yard().metric;
    return tr("Heat in %1. A degree hour (°h) is one %2 of chamber over outside air for an hour; "
              "food is its raw weight in %3. \u201cDid work\u201d is the share of the heat burned "
              "that "
              "warmed the chamber, the food and its water by the heat balance. Money is what each "
              "lot cost per weight of dry wood; a cook with a part of its wood unpriced is left "
              "out of it.")
        .arg(words.heat(Heat()).unit, metric ? tr("K") : tr("°F"),
             words.unit(Dimension::Mass).symbol);
}

void CostTable::showFuel(const FuelAnswer &fuel)
{
    m_fuel = fuel;
    fill();
}

std::optional<QString> CostTable::exportTo(const QString &path) const
{
    exchange::CsvWriter writer;
    writer.row({QStringLiteral("what"), QStringLiteral("cooks"), QStringLiteral("hours [h]"),
                QStringLiteral("heat [slb]"), QStringLiteral("per_hour [slb/h]"),
                QStringLiteral("per_degree_hour [J/(K h)]"), QStringLiteral("per_food [slb/lb]"),
                QStringLiteral("efficiency"), QStringLiteral("wood [USD]"),
                QStringLiteral("per_cook [USD]"), QStringLiteral("per_food [USD/lb]")});
    const auto shown = [](std::optional<double> value, double times, int decimals) {
        return value ? QString::number(*value * times, 'f', decimals) : QString();
    };
    const double seasoned = 1.0 / heatFromSeasonedPounds(1).toDouble();
    const double pound = massFromPounds(1).toDouble();
    const QVector<FireWork> all = works();
    for (const FireWork &work : all)
        writer.row(
            {exchange::madeSafe(nameOf(work).text), QString::number(work.cooks),
             QString::number(work.hours, 'f', 2),
             QString::number(work.heat.toDouble() * seasoned, 'f', 2),
             shown(work.joulesPerHour(), seasoned, 3), shown(work.joulesPerDegreeHour(), 1, 1),
             shown(work.joulesPerFood(), seasoned * pound, 3), shown(work.efficiency(), 1, 4),
             shown(work.pricedCooks > 0 ? std::optional(work.cents) : std::nullopt, 0.01, 2),
             shown(work.centsPerCook(), 0.01, 2), shown(work.centsPerFood(), 0.01 * pound, 3)});
    return writeFile(path, writer.bytes());
}

void CostTable::askForFile()
{
    askAndExport(m_context, this,
                 {tr("Export the costs"), QStringLiteral("costs.csv"), tr("CSV (*.csv)")},
                 [this](const QString &path) { return exportTo(path); });
}

} // namespace rickyard::views
