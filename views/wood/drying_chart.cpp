#include "views/wood/drying_chart.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/stock.h"
#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/wood/wood_words.h"

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using domain::SeasoningForecast;
using domain::SeasoningPoint;

namespace {

// Days that the chart shows beyond the last of interest, and before today of a long history.
constexpr qint64 kAfter = 45;
constexpr qint64 kLeastAhead = 90;
constexpr qint64 kMostBehind = 400;

double noonOfDay(qint64 day)
{
    return static_cast<double>(QDateTime(domain::dateOfDay(day), QTime(12, 0)).toMSecsSinceEpoch());
}

double dryLimit()
{
    return domain::kDryEnough.toDouble() / 1000;
}

QVector<domain::Event> eventsAhead(const domain::Books &books, domain::Instant now)
{
    QVector<domain::Event> events;
    for (const domain::Event &event : books.events)
        if (event.state != domain::EventState::Cancelled &&
            event.state != domain::EventState::Done && event.start > now)
            events << event;
    std::sort(events.begin(), events.end(),
              [](const domain::Event &a, const domain::Event &b) { return a.start < b.start; });
    return events;
}

QString chanceWords(const domain::Books &books, const domain::Event &event, double chance)
{
    const long percent = std::min(std::lround(100 * chance), 99L);
    const QString when = items::dayText(items::toLocal(books, event.start).date(), woodLocale());
    if (percent < 1)
        return DryingChart::tr("%1, %2: not dry by then").arg(event.name, when);
    return DryingChart::tr("%1, %2: %3 % sure to be dry").arg(event.name, when).arg(percent);
}

} // namespace

DryingChart::DryingChart(QWidget *parent)
    : ChartView(tr("Drying of the lot"), parent), m_days(new QDateTimeAxis),
      m_percent(new QValueAxis), m_past(new QLineSeries), m_future(new QLineSeries),
      m_limit(new QLineSeries), m_readings(new QScatterSeries), m_events(new QScatterSeries)
{
    m_days->setFormat(QStringLiteral("d MMM"));
    m_days->setTickCount(4);
    m_percent->setTickCount(4);
    m_percent->setLabelFormat(QStringLiteral("%.0f"));
    addAxis(m_days, Qt::AlignBottom);
    addAxis(m_percent, Qt::AlignLeft, tr("% dry basis"));
    m_band = bandSeries({{0, 0}, {1, 0}}, {{0, 0}, {1, 0}}, 1, theme(this));
    add(m_band, 1, SeriesPart::Band);
    m_band->setName(tr("8 in 10 lie here"));
    m_past->setName(tr("mean"));
    add(m_past, 1, SeriesPart::Measured);
    add(m_future, 1, SeriesPart::Future);
    m_future->setName(tr("to come"));
    m_limit->setName(tr("dry enough"));
    add(m_limit, -1, SeriesPart::Limit);
    m_readings->setName(tr("reading"));
    add(m_readings, 0, SeriesPart::Measured);
    m_events->setName(tr("event"));
    add(m_events, 2, SeriesPart::Measured);
    setLegendShown(true);
}

QSize DryingChart::sizeHint() const
{
    return {theme(this).px(420), theme(this).px(230)};
}

QSize DryingChart::minimumSizeHint() const
{
    return {theme(this).px(240), theme(this).px(190)};
}

void DryingChart::setSpan(const SeasoningForecast &forecast, qint64 from, qint64 to)
{
    QList<QPointF> past;
    QList<QPointF> future;
    QList<QPointF> upper;
    QList<QPointF> lower;
    double most = dryLimit() + 5;
    const auto put = [&](const SeasoningPoint &point) {
        const double x = noonOfDay(point.day);
        if (point.day <= forecast.today)
            past << QPointF(x, point.middle);
        if (point.day >= forecast.today)
            future << QPointF(x, point.middle);
        upper << QPointF(x, point.high);
        lower << QPointF(x, point.low);
        most = std::max(most, point.high);
    };
    put(forecast.at(from));
    for (const SeasoningPoint &point : forecast.curve)
        if (point.day > from && point.day < to)
            put(point);
    put(forecast.at(to));
    QList<QPointF> readings;
    for (const domain::SeasoningReading &reading : forecast.readings) {
        if (reading.day < from)
            continue;
        readings << QPointF(noonOfDay(reading.day), reading.percent);
        most = std::max(most, reading.percent);
    }
    m_percent->setRange(0, most * 1.05);
    m_percent->applyNiceNumbers();
    m_days->setRange(QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(noonOfDay(from))),
                     QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(noonOfDay(to))));
    replaceBand(m_band, upper, lower);
    m_past->replace(past);
    m_future->replace(future);
    m_readings->replace(readings);
    m_limit->replace(QList<QPointF>{{noonOfDay(from), dryLimit()}, {noonOfDay(to), dryLimit()}});
}

void DryingChart::showEvents(const domain::Books &books, const SeasoningForecast &forecast,
                             domain::Instant now, qint64 to)
{
    m_eventWords.clear();
    QList<QPointF> events;
    for (const domain::Event &event : eventsAhead(books, now)) {
        const qint64 day = domain::dayNumber(event.start);
        if (day > to)
            break;
        const QPointF at(noonOfDay(day), forecast.at(day).middle);
        events << at;
        m_eventWords.insert(static_cast<qint64>(at.x()),
                            chanceWords(books, event, forecast.chanceOn(day)));
    }
    m_events->replace(events);
    m_events->setVisible(!events.isEmpty());
}

void DryingChart::show(const domain::Books &books, const SeasoningForecast &forecast,
                       domain::Instant now)
{
    if (forecast.curve.isEmpty())
        return;
    const qint64 from = std::max(forecast.curve.first().day, forecast.today - kMostBehind);
    const qint64 ready = forecast.readyLate.value_or(forecast.today + kLeastAhead);
    const qint64 to =
        std::min(forecast.curve.last().day, std::max(forecast.today + kLeastAhead, ready + kAfter));
    setSpan(forecast, from, to);
    showEvents(books, forecast, now, to);
    setDescribe([this, forecast](const QAbstractSeries *series, const QPointF &point) {
        if (series == m_events)
            return m_eventWords.value(static_cast<qint64>(point.x()));
        const QDate date = QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(point.x())).date();
        const QString day = items::dayText(date, woodLocale());
        const auto percent = [](double value) {
            return domain::formatNumber(value, 1, woodLocale());
        };
        if (series == m_readings)
            return tr("%1: read %2 % dry basis").arg(day, percent(point.y()));
        if (series == m_limit)
            return tr("dry enough: %1 % dry basis").arg(percent(point.y()));
        const SeasoningPoint at = forecast.at(QDate(1970, 1, 1).daysTo(date));
        return tr("%1: %2 % dry basis, likely %3 to %4; %5 % sure to be dry")
            .arg(day, percent(at.middle), percent(at.low), percent(at.high),
                 QString::number(std::lround(100 * at.chanceDry)));
    });
    setSummary(domain::readyWords(forecast));
}

QStringList chancesByEvent(const domain::Books &books, const SeasoningForecast &forecast,
                           domain::Instant now, int most)
{
    QStringList lines;
    for (const domain::Event &event : eventsAhead(books, now)) {
        const qint64 day = domain::dayNumber(event.start);
        if (lines.size() >= most || forecast.curve.isEmpty() || day > forecast.curve.last().day)
            break;
        lines << chanceWords(books, event, forecast.chanceOn(day));
    }
    return lines;
}

} // namespace rickyard::views
