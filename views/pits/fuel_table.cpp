#include "views/pits/fuel_table.h"

#include "models/domain/fire/fuel.h"
#include "models/exchange/answers_json.h"
#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/records/file_export.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/search_field.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;
using items::DerivedCell;
using items::DerivedRow;

namespace {

QVector<items::DerivedModel::Column> columns()
{
    return {{FuelTable::tr("Cook"), false},
            {FuelTable::tr("Pit"), false},
            {FuelTable::tr("Lit"), false},
            {FuelTable::tr("Hours"), true},
            {FuelTable::tr("Outside"), true},
            {FuelTable::tr("Used"), true},
            {FuelTable::tr("Expected (90 %)"), true},
            {FuelTable::tr("Excess"), true},
            {FuelTable::tr("Score"), true},
            {FuelTable::tr("Sum"), true},
            {FuelTable::tr("Remark"), false}};
}

QString remarkOf(const CookFuel &cook)
{
    if (!cook.missing.isEmpty())
        return cook.missing.first();
    if (cook.verdict && cook.verdict->raised)
        return cook.verdict->flag == WatchFlag::More ? FuelTable::tr("raised the flag")
                                                     : FuelTable::tr("flag: burns less");
    if (cook.high())
        return FuelTable::tr("above its range");
    if (cook.lower && cook.netHeat < *cook.lower)
        return FuelTable::tr("below its range");
    return cook.assumptions.isEmpty() ? QString() : FuelTable::tr("with assumptions");
}

} // namespace

FuelTable::FuelTable(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
}

void FuelTable::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    auto *row = new QHBoxLayout;
    m_search = new SearchField(tr("Find in the cooks: a pit, a name, a year"), this);
    m_search->setAccessibleName(tr("Find in the table of cooks"));
    row->addWidget(m_search, 1);
    auto *save = new QPushButton(icon(QStringLiteral("export")), tr("Export CSV"), this);
    save->setAccessibleName(tr("Export the fuel of every cook as CSV"));
    connect(save, &QPushButton::clicked, this, &FuelTable::askForFile);
    row->addWidget(save);
    column->addLayout(row);
    m_view = new FigureTable(columns(), tr("Fuel of every cook"), this);
    m_view->setMinimumHeight(look.px(420));
    m_view->sortByColumn(2, Qt::DescendingOrder);
    connect(m_search, &QLineEdit::textChanged, m_view, &FigureTable::setWords);
    connect(m_view, &FigureTable::opened, this, [this](Link link) { Q_EMIT cookOpened(link.id); });
    column->addWidget(m_view, 1);
}

DerivedRow FuelTable::rowOf(const CookFuel &cook) const
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const auto heat = [&](const std::optional<Heat> &h) {
        return FigureTable::figure(h ? words.heat(*h).value : QString(),
                                   h ? std::optional(h->toDouble()) : std::nullopt);
    };
    // One column for both: twelve do not fit a page of 1280 pixels.
    const auto expectation = [&](const CookFuel &one) {
        DerivedCell cell = heat(one.expected);
        if (one.expected && one.lower && one.upper)
            cell.text += QStringLiteral(" (%1)").arg(
                rangeText(words.heat(*one.lower).value, words.heat(*one.upper).value));
        return cell;
    };
    const auto watched = [&](const CookFuel &one, double WatchVerdict::*what) {
        const auto value = one.verdict ? std::optional((*one.verdict).*what) : std::nullopt;
        return FigureTable::figure(value ? formatNumber(*value, 1, words.locale()) : QString(),
                                   value);
    };
    const Cook record = books.cooks.value(cook.cook);
    DerivedRow row;
    row.link = {TableId::Cook, cook.cook};
    row.standing = cook.high() ? Standing::Act : Standing::Good;
    row.cells = {
        {cookTitle(books, record), {}, {}},
        {books.pits.value(cook.pit).name, {}, {}},
        {items::dayText(items::toLocal(books, cook.lit).date(), words.locale()),
         QVariant::fromValue<qint64>(cook.lit.seconds()),
         {}},
        FigureTable::figure(formatNumber(hours(cook.length), 1, words.locale()),
                            hours(cook.length)),
        FigureTable::figure(
            cook.meanOutside ? words.temperature(*cook.meanOutside).text() : QString(),
            cook.meanOutside ? std::optional(celsius(*cook.meanOutside)) : std::nullopt),
        heat(cook.netHeat),
        expectation(cook),
        FigureTable::figure(cook.excess ? words.percent(*cook.excess) : QString(), cook.excess),
        watched(cook, &WatchVerdict::score),
        watched(cook, &WatchVerdict::up),
        {remarkOf(cook), {}, {}}};
    return row;
}

void FuelTable::showFuel(const FuelAnswer &fuel)
{
    m_fuel = fuel;
    QVector<DerivedRow> rows;
    rows.reserve(fuel.cooks.size());
    for (const CookFuel &cook : fuel.cooks)
        rows << rowOf(cook);
    m_view->setRows(rows);
}

std::optional<QString> FuelTable::exportTo(const QString &path) const
{
    return writeFile(path, exchange::fuelCsv(m_fuel, m_context.books()));
}

void FuelTable::askForFile()
{
    askAndExport(
        m_context, this,
        {tr("Export the fuel of every cook"), QStringLiteral("fuel.csv"), tr("CSV (*.csv)")},
        [this](const QString &path) { return exportTo(path); });
}

} // namespace rickyard::views
