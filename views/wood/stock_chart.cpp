#include "views/wood/stock_chart.h"

#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/wood/wood_words.h"

#include <cmath>

namespace rickyard::views {

namespace {

// Charts number their days at noon, so that a day is under its label in any zone.
double noonOf(const QDate &day)
{
    return static_cast<double>(QDateTime(day, QTime(12, 0)).toMSecsSinceEpoch());
}

double shownHeat(domain::Heat heat, bool metric)
{
    return metric ? heat.toDouble() / 1e6 : domain::seasonedPounds(heat);
}

} // namespace

StockChart::StockChart(QWidget *parent)
    : ChartView(tr("Dry wood over the booked cooks"), parent), m_days(new QDateTimeAxis),
      m_heat(new QValueAxis), m_middle(new QLineSeries), m_cooks(new QScatterSeries),
      m_order(new QLineSeries)
{
    m_days->setFormat(QStringLiteral("d MMM"));
    m_days->setTickCount(4);
    m_heat->setTickCount(3);
    m_heat->setLabelFormat(QStringLiteral("%.0f"));
    addAxis(m_days, Qt::AlignBottom);
    addAxis(m_heat, Qt::AlignLeft);
    m_band = bandSeries({{0, 0}, {1, 0}}, {{0, 0}, {1, 0}}, 1, theme(this));
    add(m_band, 1, SeriesPart::Band);
    m_middle->setName(tr("dry stock, expected"));
    add(m_middle, 1, SeriesPart::Measured);
    m_order->setName(tr("order by"));
    add(m_order, -1, SeriesPart::Limit);
    m_cooks->setName(tr("booked cook"));
    add(m_cooks, 0, SeriesPart::Measured);
    setLegendShown(true);
}

QSize StockChart::sizeHint() const
{
    return {theme(this).px(420), theme(this).px(190)};
}

QSize StockChart::minimumSizeHint() const
{
    return {theme(this).px(240), theme(this).px(150)};
}

void StockChart::show(const domain::Books &books, const domain::WoodAnswer &answer)
{
    const bool metric = books.yard().metric;
    QList<QPointF> middle;
    QList<QPointF> upper;
    QList<QPointF> lower;
    double most = 0;
    double least = 0;
    for (const domain::StockPoint &point : answer.course) {
        const double x = noonOf(point.day);
        middle.append({x, shownHeat(point.middle, metric)});
        upper.append({x, shownHeat(point.upper, metric)});
        lower.append({x, shownHeat(point.lower, metric)});
        most = std::max({most, upper.last().y(), middle.last().y()});
        least = std::min({least, lower.last().y(), middle.last().y()});
    }
    QList<QPointF> cooks;
    QHash<qint64, QString> names;
    for (const domain::PlannedUse &use : answer.uses) {
        const QDate day = items::toLocal(books, use.light).date();
        const QPointF at(noonOf(day), shownHeat(use.stockAfter, metric));
        cooks.append(at);
        names.insert(
            static_cast<qint64>(at.x()),
            tr("%1, %2: takes %3 (%4 to %5), leaves %6")
                .arg(domain::titleOf(books, domain::TableId::PlannedCook, use.plannedCook),
                     items::dayText(day, woodLocale()), heatAmount(use.middle, metric).text(),
                     heatAmount(use.lower, metric).value, heatAmount(use.upper, metric).value,
                     heatAmount(use.stockAfter, metric).text()));
    }
    most = std::max(most * 1.08, 1.0);
    least = least < 0 ? least * 1.08 : 0;
    m_heat->setRange(least, most);
    m_heat->setTickCount(4);
    m_heat->applyNiceNumbers();
    m_heat->setTitleText(metric ? tr("MJ") : tr("seasoned lb"));
    if (!middle.isEmpty())
        m_days->setRange(QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(middle.first().x())),
                         QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(middle.last().x())));
    replaceBand(m_band, upper, lower);
    m_middle->replace(middle);
    m_cooks->replace(cooks);
    const bool ordering = answer.orderBy.isValid();
    m_order->replace(ordering ? QList<QPointF>{{noonOf(answer.orderBy), m_heat->min()},
                                               {noonOf(answer.orderBy), m_heat->max()}}
                              : QList<QPointF>{});
    m_order->setVisible(ordering);
    setDescribe([this, names, metric](const QAbstractSeries *series, const QPointF &point) {
        if (series == m_cooks && names.contains(static_cast<qint64>(point.x())))
            return names.value(static_cast<qint64>(point.x()));
        const QDate day = QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(point.x())).date();
        if (series == m_order)
            return tr("Order by %1").arg(items::dayText(day, woodLocale()));
        return tr("%1: %2 %3 of dry wood")
            .arg(items::dayText(day, woodLocale()),
                 domain::formatNumber(point.y(), 0, woodLocale()),
                 metric ? tr("MJ") : tr("seasoned lb"));
    });
    setSummary(answer.headline.plainSentence());
}

} // namespace rickyard::views
