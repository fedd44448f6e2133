#include "views/wood/fan_chart.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "views/theme/theme_hub.h"
#include "views/wood/wood_words.h"

#include <QFontMetricsF>
#include <QtCharts/QLegendMarker>

#include <algorithm>

namespace rickyard::views {

using domain::Heat;
using domain::StockPoint;
using domain::WoodAnswer;
using domain::WoodRisk;

namespace {

// More labels than these would lie upon each other.
constexpr int kMostLabels = 8;
// A room so much larger than what lies in it would press the fan flat; it is told in words then.
constexpr double kRoomInSight = 1.6;

QDate dateAt(double x)
{
    return QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(x)).date();
}

const StockPoint *pointOf(const QVector<StockPoint> &course, QDate day)
{
    for (const StockPoint &point : course)
        if (point.day == day)
            return &point;
    return nullptr;
}

QLineSeries *lineOf(const QString &name)
{
    auto *line = new QLineSeries;
    line->setName(name);
    return line;
}

} // namespace

double noonOfDate(QDate day)
{
    return static_cast<double>(QDateTime(day, QTime(12, 0)).toMSecsSinceEpoch());
}

FanChart::FanChart(Size size, QWidget *parent)
    : ChartView(tr("Dry wood ahead"), parent), m_days(new QDateTimeAxis), m_heat(new QValueAxis),
      m_middle(lineOf(size == Size::Brief ? tr("nothing ordered")
                                          : tr("if nothing is ordered, with 90 % interval"))),
      m_order(lineOf(tr("with the order"))), m_by(lineOf(tr("order by"))),
      m_room(lineOf(tr("room for wood"))), m_safe(new QScatterSeries), m_brief(size == Size::Brief)
{
    m_days->setFormat(QStringLiteral("d MMM"));
    m_days->setTickCount(m_brief ? 4 : 7);
    m_heat->setLabelFormat(QStringLiteral("%.0f"));
    addAxis(m_days, Qt::AlignBottom);
    addAxis(m_heat, Qt::AlignLeft);
    m_band = bandSeries({{0, 0}, {1, 0}}, {{0, 0}, {1, 0}}, 1, theme(this));
    add(m_band, 1, SeriesPart::Band);
    add(m_middle, 1, SeriesPart::Measured);
    add(m_order, 0, SeriesPart::Measured);
    add(m_by, -1, SeriesPart::Limit);
    add(m_room, -1, SeriesPart::Expected);
    m_safe->setName(tr("event"));
    add(m_safe, 2, SeriesPart::Measured);
    setLegendShown(true);
    setMarkersOnly(true);
    connect(chart(), &QChart::plotAreaChanged, this, &FanChart::keepLabelsApart);
    setDescribe([this](const QAbstractSeries *series, const QPointF &point) {
        return describePoint(series, point);
    });
}

QSize FanChart::sizeHint() const
{
    return m_brief ? QSize(theme(this).px(420), theme(this).px(200))
                   : QSize(theme(this).px(760), theme(this).px(280));
}

QSize FanChart::minimumSizeHint() const
{
    return m_brief ? QSize(theme(this).px(240), theme(this).px(160))
                   : QSize(theme(this).px(320), theme(this).px(240));
}

double FanChart::shown(Heat heat) const
{
    return m_metric ? heat.toDouble() / 1e6 : domain::seasonedPounds(heat);
}

void FanChart::show(const domain::Books &books, const WoodAnswer &answer)
{
    m_metric = books.yard().metric;
    m_answer = answer;
    m_heat->setTitleText(m_metric ? tr("dry wood, MJ") : tr("dry wood, seasoned lb"));
    showCourse(answer);
    showRoom(books, answer);
    showEvents(answer);
    showOrder(answer.withOrder, answer.orderBy,
              m_brief ? tr("with the order") : tr("with the order proposed"), {});
    setSummary(answer.headline.plainSentence());
}

void FanChart::showCourse(const WoodAnswer &answer)
{
    QList<QPointF> middle;
    QList<QPointF> upper;
    QList<QPointF> lower;
    m_most = 1;
    for (const StockPoint &point : answer.course) {
        const double x = noonOfDate(point.day);
        middle.append({x, shown(point.middle)});
        upper.append({x, shown(point.upper)});
        lower.append({x, shown(point.lower)});
        m_most = std::max(m_most, upper.last().y());
    }
    if (middle.size() > 1)
        // A day more, so that the last event and its label are whole.
        m_days->setRange(
            QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(middle.first().x())),
            QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(middle.last().x())).addDays(1));
    replaceBand(m_band, upper, lower);
    m_middle->replace(middle);
}

// What the room holds, were it full of wood like the dry ricks, or like the first wood to be had.
void FanChart::showRoom(const domain::Books &books, const WoodAnswer &answer)
{
    m_roomHeat = 0;
    if (const auto room = books.yard().woodRoom) {
        if (answer.stock.readyStacked.base() > 0)
            m_roomHeat = shown(answer.stock.readyHeat) * (*room / answer.stock.readyStacked);
        else if (!answer.sources.isEmpty() && answer.sources.first().unitStacked.base() > 0)
            m_roomHeat = shown(answer.sources.first().unitHeat) *
                         (*room / answer.sources.first().unitStacked);
    }
}

void FanChart::showEvents(const WoodAnswer &answer)
{
    for (QScatterSeries *old : std::as_const(m_risky)) {
        chart()->removeSeries(old);
        delete old;
    }
    m_risky.clear();
    m_words.clear();
    const domain::Wording wording{m_metric, {}, QStringLiteral("en_US")};
    QList<QPointF> safe;
    for (const WoodRisk &risk : answer.risks) {
        const StockPoint *at = pointOf(answer.course, risk.day);
        if (at == nullptr)
            continue;
        const QPointF point(noonOfDate(risk.day), shown(at->middle));
        const QString chance = domain::chanceWords(risk.chance, risk.error, wording);
        m_words.insert(static_cast<qint64>(point.x()),
                       tr("%1, %2: %3 chance of running short")
                           .arg(risk.name, domain::dayWithWeekday(risk.day, wording), chance));
        if (risk.chance <= answer.acceptedRisk || m_risky.size() >= kMostLabels) {
            safe << point;
            continue;
        }
        auto *one = new QScatterSeries;
        one->setName(tr("event over the accepted risk"));
        one->append(point);
        // "over 99.5 %" is wider than a week of the small chart.
        one->setPointLabelsFormat(m_brief && risk.chance > 0.99 ? tr(">99 %") : chance);
        one->setPointLabelsVisible(true);
        one->setPointLabelsClipping(false);
        add(one, 4, SeriesPart::Measured);
        if (m_brief || !m_risky.isEmpty())
            for (QLegendMarker *marker : chart()->legend()->markers(one))
                marker->setVisible(false);
        m_risky << one;
    }
    m_safe->replace(safe);
    m_safe->setVisible(!safe.isEmpty());
    if (m_brief)
        for (QLegendMarker *marker : chart()->legend()->markers(m_safe))
            marker->setVisible(false);
}

// A chance that would lie upon the one before it is left to its mark, its tip and the table.
void FanChart::keepLabelsApart()
{
    const QFontMetricsF metrics(m_risky.isEmpty() ? font() : m_risky.first()->pointLabelsFont());
    QRectF last;
    for (QScatterSeries *one : std::as_const(m_risky)) {
        QRectF label(0, 0, metrics.horizontalAdvance(one->pointLabelsFormat()) + theme(this).px(4),
                     metrics.height());
        label.moveCenter(chart()->mapToPosition(one->at(0), one));
        const bool free = last.isNull() || !label.intersects(last);
        one->setPointLabelsVisible(free);
        if (free)
            last = label;
    }
}

void FanChart::setTop(double most)
{
    const bool roomShown = m_roomHeat > 0 && m_roomHeat <= kRoomInSight * most;
    m_room->setVisible(roomShown);
    if (roomShown) {
        const auto left = static_cast<double>(m_days->min().toMSecsSinceEpoch());
        const auto right = static_cast<double>(m_days->max().toMSecsSinceEpoch());
        m_room->replace(QList<QPointF>{{left, m_roomHeat}, {right, m_roomHeat}});
        most = std::max(most, m_roomHeat);
    }
    m_heat->setRange(0, most * 1.12);
    m_heat->setTickCount(5);
    m_heat->applyNiceNumbers();
    keepLabelsApart();
}

void FanChart::showOrder(const QVector<StockPoint> &course, QDate orderDay, const QString &name,
                         const QVector<WoodRisk> &risks)
{
    m_with = course;
    QList<QPointF> line;
    double most = m_most;
    for (const StockPoint &point : course) {
        line.append({noonOfDate(point.day), shown(point.middle)});
        most = std::max(most, line.last().y());
    }
    m_order->setName(name);
    m_order->replace(line);
    m_order->setVisible(!line.isEmpty());
    setTop(most);
    const bool ordering = orderDay.isValid() && !line.isEmpty();
    const QString date = woodLocale().toString(orderDay, QStringLiteral("d MMM"));
    m_by->setName(m_brief                        ? tr("order by")
                  : orderDay == m_answer.orderBy ? tr("order by %1").arg(date)
                                                 : tr("ordered %1").arg(date));
    m_by->replace(ordering ? QList<QPointF>{{noonOfDate(orderDay), m_heat->min()},
                                            {noonOfDate(orderDay), m_heat->max()}}
                           : QList<QPointF>{});
    m_by->setVisible(ordering);
    const domain::Wording wording{m_metric, {}, QStringLiteral("en_US")};
    for (const WoodRisk &risk : risks)
        m_words.insert(static_cast<qint64>(noonOfDate(risk.day)),
                       tr("%1, %2: %3 chance of running short with this order")
                           .arg(risk.name, domain::dayWithWeekday(risk.day, wording),
                                domain::chanceWords(risk.chance, risk.error, wording)));
}

QStringList FanChart::eventLabels() const
{
    QStringList labels;
    for (const QScatterSeries *one : m_risky)
        if (one->pointLabelsVisible())
            labels << one->pointLabelsFormat();
    return labels;
}

QString FanChart::describePoint(const QAbstractSeries *series, const QPointF &point) const
{
    const domain::Wording wording{m_metric, {}, QStringLiteral("en_US")};
    const QDate day = dateAt(point.x());
    const QString date = domain::dayWithWeekday(day, wording);
    const QString unit = m_metric ? tr("MJ") : tr("seasoned lb");
    const auto figure = [](double value) { return domain::formatNumber(value, 0, woodLocale()); };
    if (qobject_cast<const QScatterSeries *>(series) != nullptr)
        return m_words.value(static_cast<qint64>(point.x()));
    if (series == m_by)
        return tr("Order by %1").arg(date);
    if (series == m_room)
        return tr("Room for about %1 %2").arg(figure(m_roomHeat), unit);
    const StockPoint *at = pointOf(series == m_order ? m_with : m_answer.course, day);
    if (at == nullptr)
        return date;
    return tr("%1: %2 %3 of dry wood, likely %4 to %5")
        .arg(date, figure(shown(at->middle)), unit, figure(shown(at->lower)),
             figure(shown(at->upper)));
}

} // namespace rickyard::views
