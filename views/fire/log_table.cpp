#include "views/fire/log_table.h"

#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;
using items::DerivedRow;

namespace {

QVector<items::DerivedModel::Column> logColumns()
{
    return {{LogTable::tr("Cook"), false},
            {LogTable::tr("Pit"), false},
            {LogTable::tr("Lit"), false},
            {LogTable::tr("Hours"), true},
            {LogTable::tr("Outside"), true},
            {LogTable::tr("Wind"), true},
            {LogTable::tr("Used"), true},
            {LogTable::tr("An hour"), true},
            {LogTable::tr("Its line, ± 90 %"), true}};
}

class RowMaker
{
public:
    RowMaker(const Books &books, UseAgainst against, const QVector<UseLine> &lines)
        : m_books(books), m_words(books), m_against(against), m_lines(lines)
    {
    }
    [[nodiscard]] DerivedRow rowOf(const CookFuel &fuel) const
    {
        const QLocale &locale = m_words.locale();
        const double length = hours(fuel.length);
        const double used = toUnit(fuel.netHeat.base(), m_words.unit(Dimension::Heat));
        const double hourly = used / length;
        DerivedRow row;
        row.link = {TableId::Cook, fuel.cook};
        row.cells = {
            {cookTitle(m_books, m_books.cooks.value(fuel.cook)), {}, {}},
            {m_books.pits.value(fuel.pit).name, {}, {}},
            {locale.toString(items::toLocal(m_books, fuel.lit).date(),
                             QStringLiteral("d MMM yyyy")),
             QVariant::fromValue<qint64>(fuel.lit.seconds()),
             {}},
            FigureTable::figure(formatNumber(length, 1, locale), length),
            FigureTable::figure(
                fuel.meanOutside ? m_words.temperature(*fuel.meanOutside).text() : QString(),
                fuel.meanOutside ? std::optional(celsius(*fuel.meanOutside)) : std::nullopt),
            FigureTable::figure(
                fuel.meanWind
                    ? formatQuantity(fuel.meanWind->base(), m_words.unit(Dimension::Speed), locale)
                    : QString(),
                fuel.meanWind ? std::optional(fuel.meanWind->toDouble()) : std::nullopt),
            FigureTable::figure(formatNumber(used, 0, locale), used),
            FigureTable::figure(formatNumber(hourly, 1, locale), hourly)};
        addLine(row, fuel);
        return row;
    }

private:
    void addLine(DerivedRow &row, const CookFuel &fuel) const
    {
        std::optional<statistics::Interval> on;
        const QVector<UsePoint> points = usePoints({fuel}, m_against);
        for (const UseLine &line : m_lines)
            if (line.pit == fuel.pit && !points.isEmpty())
                on = line.at(points.first().across);
        if (!on) {
            row.cells << FigureTable::figure({}, std::nullopt);
            return;
        }
        const int decimals = m_against == UseAgainst::Hours ? 0 : 1;
        const auto shown = [&](double joules) {
            return trueMinus(formatNumber(joules / m_words.unit(Dimension::Heat).scale, decimals,
                                          m_words.locale()));
        };
        row.cells << FigureTable::figure(
            QStringLiteral("%1 ± %2").arg(shown(on->centre), shown(on->upper - on->centre)),
            on->centre);
    }

    const Books &m_books;
    FireWords m_words;
    UseAgainst m_against;
    const QVector<UseLine> &m_lines;
};

} // namespace

LogTable::LogTable(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_view(new FigureTable(logColumns(), tr("Wood use of past cooks"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_view->setMinimumHeight(theme(this).px(340));
    m_view->setWidest(180);
    m_view->sortByColumn(2, Qt::DescendingOrder);
    connect(m_view, &FigureTable::opened, this, [this](Link link) { Q_EMIT cookOpened(link.id); });
    column->addWidget(m_view, 1);
}

void LogTable::showCooks(const QVector<CookFuel> &cooks, UseAgainst against,
                         const QVector<UseLine> &lines)
{
    const RowMaker maker(m_context.books(), against, lines);
    QVector<DerivedRow> rows;
    rows.reserve(cooks.size());
    for (const CookFuel &cook : cooks)
        rows << maker.rowOf(cook);
    m_view->setRows(rows);
}

} // namespace rickyard::views
