#include "views/pits/fuel_table.h"

#include "models/domain/fire/fuel.h"
#include "models/exchange/answers_json.h"
#include "models/items/search_proxy.h"
#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/search_field.h"

#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QSaveFile>
#include <QTableView>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;
using items::DerivedCell;
using items::DerivedRow;

namespace {

QVector<items::DerivedModel::Column> columns()
{
    return {{FuelTable::tr("Cook"), false},    {FuelTable::tr("Pit"), false},
            {FuelTable::tr("Lit"), false},     {FuelTable::tr("Hours"), true},
            {FuelTable::tr("Outside"), true},  {FuelTable::tr("Used"), true},
            {FuelTable::tr("Expected"), true}, {FuelTable::tr("90 % interval"), true},
            {FuelTable::tr("Excess"), true},   {FuelTable::tr("Score"), true},
            {FuelTable::tr("Sum"), true},      {FuelTable::tr("Remark"), false}};
}

// Missing figures sort last either way: their sort value is invalid, their text the mark.
DerivedCell figure(const QString &text, std::optional<double> sort)
{
    return {sort ? text : missingMark(), sort ? QVariant(*sort) : QVariant(), QString()};
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

FuelTable::FuelTable(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_model(new items::DerivedModel(columns(), this)),
      m_proxy(new items::SearchProxy(this))
{
    m_proxy->setSourceModel(m_model);
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
    connect(m_search, &QLineEdit::textChanged, m_proxy, &items::SearchProxy::setWords);
    row->addWidget(m_search, 1);
    auto *save = new QPushButton(icon(QStringLiteral("export")), tr("Export CSV"), this);
    save->setAccessibleName(tr("Export the fuel of every cook as CSV"));
    connect(save, &QPushButton::clicked, this, &FuelTable::askAndExport);
    row->addWidget(save);
    column->addLayout(row);
    m_view = new QTableView(this);
    m_view->setModel(m_proxy);
    m_view->setAccessibleName(tr("Fuel of every cook"));
    m_view->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_view->setSelectionMode(QAbstractItemView::SingleSelection);
    m_view->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_view->setShowGrid(false);
    m_view->setWordWrap(false);
    m_view->setTabKeyNavigation(false);
    m_view->setSortingEnabled(true);
    m_view->verticalHeader()->hide();
    m_view->verticalHeader()->setDefaultSectionSize(look.rowHeight());
    m_view->horizontalHeader()->setHighlightSections(false);
    m_view->horizontalHeader()->setStretchLastSection(true);
    m_view->setMinimumHeight(look.px(420));
    m_view->sortByColumn(2, Qt::DescendingOrder);
    connect(m_view, &QTableView::activated, this, [this](const QModelIndex &index) {
        Q_EMIT cookOpened(m_model->linkAt(m_proxy->mapToSource(index).row()).id);
    });
    column->addWidget(m_view, 1);
}

DerivedRow FuelTable::rowOf(const CookFuel &cook) const
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const auto heat = [&](const std::optional<Heat> &h) {
        return figure(h ? words.heat(*h).value : QString(),
                      h ? std::optional(h->toDouble()) : std::nullopt);
    };
    const auto watched = [&](const CookFuel &one, double WatchVerdict::*what) {
        const auto value = one.verdict ? std::optional((*one.verdict).*what) : std::nullopt;
        return figure(value ? formatNumber(*value, 1, words.locale()) : QString(), value);
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
        figure(formatNumber(hours(cook.length), 1, words.locale()), hours(cook.length)),
        figure(cook.meanOutside ? words.temperature(*cook.meanOutside).text() : QString(),
               cook.meanOutside ? std::optional(celsius(*cook.meanOutside)) : std::nullopt),
        heat(cook.netHeat),
        heat(cook.expected),
        cook.lower && cook.upper
            ? figure(rangeText(words.heat(*cook.lower).value, words.heat(*cook.upper).value),
                     cook.lower->toDouble())
            : figure({}, std::nullopt),
        figure(cook.excess ? words.percent(*cook.excess) : QString(), cook.excess),
        watched(cook, &WatchVerdict::score),
        watched(cook, &WatchVerdict::up),
        {remarkOf(cook), {}, {}}};
    return row;
}

void FuelTable::showFuel(const FuelAnswer &fuel)
{
    const bool first = m_model->rowCount() == 0;
    m_fuel = fuel;
    QVector<DerivedRow> rows;
    rows.reserve(fuel.cooks.size());
    for (const CookFuel &cook : fuel.cooks)
        rows << rowOf(cook);
    m_model->setRows(rows);
    if (!first || rows.isEmpty())
        return;
    for (int c = 0; c + 1 < m_model->columnCount(); ++c) {
        m_view->resizeColumnToContents(c);
        m_view->setColumnWidth(c, std::min(m_view->columnWidth(c), theme(this).px(150)));
    }
}

std::optional<QString> FuelTable::exportTo(const QString &path) const
{
    QSaveFile file(path);
    const QByteArray bytes = exchange::fuelCsv(m_fuel, m_context.books());
    if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit())
        return std::nullopt;
    return tr("The table could not be written to %1: %2. Choose a folder that can be written to.")
        .arg(QDir::toNativeSeparators(path), file.errorString());
}

void FuelTable::askAndExport()
{
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Export the fuel of every cook"), QStringLiteral("fuel.csv"), tr("CSV (*.csv)"));
    if (path.isEmpty())
        return;
    if (const auto problem = exportTo(path))
        m_context.refuse({{QString(), *problem}});
    else
        m_context.say(tr("Written to %1.").arg(QDir::toNativeSeparators(path)));
}

} // namespace rickyard::views
