#include "views/weather/weather_chart.h"

#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "views/charts/chart_view.h"
#include "views/theme/theme_hub.h"
#include "views/weather/weather_summary.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QSettings>
#include <QVBoxLayout>

#include <algorithm>
#include <limits>

namespace rickyard::views {

using domain::Dimension;
using domain::Weather;

namespace {

constexpr std::size_t kMostPoints = 1200;
constexpr char kDaysKey[] = "weather/days";

const QLocale &plainLocale()
{
    static const QLocale locale(QStringLiteral("en_US"));
    return locale;
}

const domain::Unit &unitOf(Dimension dimension, bool metric)
{
    return domain::defaultUnit(dimension, metric ? domain::UnitSystem::Metric
                                                 : domain::UnitSystem::UsCustomary);
}

} // namespace

WeatherChart::WeatherChart(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_days(new QComboBox), m_place(new QComboBox),
      m_note(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    auto *bar = new QHBoxLayout;
    m_days->addItem(tr("Last 7 days on record"), 7);
    m_days->addItem(tr("Last 30 days on record"), 30);
    m_days->addItem(tr("Last 12 months on record"), 366);
    m_days->addItem(tr("All records"), 0);
    m_days->setAccessibleName(tr("Stretch of time shown"));
    m_days->setCurrentIndex(
        qMax(0, m_days->findData(m_context.settings.value(QLatin1String(kDaysKey), 30).toInt())));
    m_place->setAccessibleName(tr("Place shown"));
    m_place->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_place->setMinimumContentsLength(16);
    bar->addWidget(m_days);
    bar->addWidget(m_place);
    bar->addWidget(m_note, 1);
    column->addLayout(bar);
    auto *plots = new QHBoxLayout;
    plots->setSpacing(look.space(4));
    m_temperature = makePlot(tr("Temperature"));
    m_wind = makePlot(tr("Wind"));
    plots->addWidget(m_temperature.view, 1);
    plots->addWidget(m_wind.view, 1);
    column->addLayout(plots, 1);
    connect(m_days, &QComboBox::activated, this, [this] {
        m_context.settings.setValue(QLatin1String(kDaysKey), days());
        refresh();
    });
    connect(m_place, &QComboBox::activated, this, &WeatherChart::refresh);
}

WeatherChart::Plot WeatherChart::makePlot(const QString &name)
{
    Plot plot;
    plot.view = new ChartView(name, this);
    plot.view->setMinimumHeight(theme(this).px(150));
    plot.time = new QDateTimeAxis;
    plot.time->setTickCount(4);
    plot.value = new QValueAxis;
    plot.value->setTickCount(4);
    plot.value->setLabelFormat(QStringLiteral("%.0f"));
    plot.view->addAxis(plot.time, Qt::AlignBottom);
    plot.view->addAxis(plot.value, Qt::AlignLeft);
    plot.view->setLegendShown(false);
    return plot;
}

int WeatherChart::days() const
{
    return m_days->currentData().toInt();
}

void WeatherChart::setDays(int days)
{
    m_days->setCurrentIndex(qMax(0, m_days->findData(days)));
    refresh();
}

void WeatherChart::fillPlaces()
{
    const QStringList places = summarise(m_context.books()).places;
    const QString kept = m_place->currentText();
    m_place->clear();
    for (const QString &place : places)
        m_place->addItem(place.isEmpty() ? tr("No place named") : place, place);
    m_place->setCurrentIndex(qMax(0, m_place->findText(kept)));
    m_place->setVisible(places.size() > 1);
}

std::optional<WeatherStretch> WeatherChart::stretch() const
{
    WeatherStretch all;
    all.place = m_place->currentData().toString();
    if (all.place.isNull())
        all.place = QLatin1String("");
    bool any = false;
    bool observed = false;
    for (const Weather &record : m_context.books().weather) {
        if (record.place != all.place)
            continue;
        // Observations before normals, where a place has both.
        if (!any || (!observed && !record.normal)) {
            all.from = all.to = record.time;
            all.normals = record.normal;
        } else if (record.normal == all.normals) {
            all.from = std::min(all.from, record.time);
            all.to = std::max(all.to, record.time);
        }
        any = true;
        observed = observed || !record.normal;
    }
    if (!any)
        return std::nullopt;
    if (days() > 0)
        all.from = std::max(all.from, all.to - domain::Duration::ofBase(days() * 86400LL));
    return all;
}

// The axis labels moments in the zone of the machine, so it is given the wall clock of the yard.
double WeatherChart::drawnAt(qint64 seconds) const
{
    const QDateTime local = items::toLocal(m_context.books(), domain::Instant::ofSeconds(seconds));
    return static_cast<double>(QDateTime(local.date(), local.time()).toMSecsSinceEpoch());
}

void WeatherChart::draw(Plot &plot, const WeatherValue &value, const WeatherStretch &stretch,
                        int index, const QString &what)
{
    const auto pieces = drawnPieces(weatherSamples(m_context.books(), stretch, value), kMostPoints);
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
    plot.view->clear();
    for (const auto &piece : pieces) {
        QList<QPointF> points;
        for (const WeatherSample &sample : piece) {
            points.append({drawnAt(sample.time), sample.value});
            low = std::min(low, sample.value);
            high = std::max(high, sample.value);
        }
        auto *series = new QLineSeries;
        series->setName(what);
        series->replace(points);
        plot.view->add(series, index, stretch.normals ? SeriesPart::Future : SeriesPart::Measured);
    }
    const bool day = days() == 7;
    plot.time->setFormat(day ? QStringLiteral("d MMM h AP") : QStringLiteral("d MMM yy"));
    plot.time->setRange(
        QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(drawnAt(stretch.from.seconds()))),
        QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(drawnAt(stretch.to.seconds()))));
    if (low <= high) {
        const double air = std::max(1.0, (high - low) * 0.06);
        plot.value->setRange(low >= 0 && low - air < 0 ? 0 : low - air, high + air);
        plot.value->setTickCount(4);
        plot.value->applyNiceNumbers();
        plot.value->setTitleText(tr("%1, %2").arg(what, plot.unit));
        plot.view->setSummary(tr("%1 from %2 to %3 %4.")
                                  .arg(what, domain::formatNumber(low, 0, plainLocale()),
                                       domain::formatNumber(high, 0, plainLocale()), plot.unit));
    } else {
        plot.value->setTitleText(tr("%1: not on record").arg(what));
        plot.view->setSummary(tr("%1: no records.").arg(what));
    }
    const QString unit = plot.unit;
    plot.view->setDescribe([what, unit](const QAbstractSeries *, const QPointF &point) {
        const QDateTime at = QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(point.x()));
        return QString(plainLocale().toString(at, QStringLiteral("ddd d MMM yyyy, h:mm AP")) +
                       QStringLiteral(": ") + what + QLatin1Char(' ') +
                       domain::formatNumber(point.y(), 1, plainLocale()) + QLatin1Char(' ') + unit);
    });
}

void WeatherChart::refresh()
{
    if (!isVisible()) {
        m_stale = true;
        return;
    }
    m_stale = false;
    fillPlaces();
    const auto shown = stretch();
    if (!shown) {
        m_temperature.view->clear();
        m_wind.view->clear();
        return;
    }
    const bool metric = m_context.books().yard().metric;
    const domain::Unit &degrees = unitOf(Dimension::Temperature, metric);
    const domain::Unit &speed = unitOf(Dimension::Speed, metric);
    m_temperature.unit = degrees.symbol;
    m_wind.unit = speed.symbol;
    draw(
        m_temperature,
        [&](const Weather &w) {
            return w.temperature ? std::optional(domain::toUnit(w.temperature->base(), degrees))
                                 : std::nullopt;
        },
        *shown, 0, tr("Temperature"));
    draw(
        m_wind,
        [&](const Weather &w) {
            return w.wind ? std::optional(domain::toUnit(w.wind->base(), speed)) : std::nullopt;
        },
        *shown, 2, tr("Wind"));
    m_note->setText(shown->normals
                        ? tr("Climate normals, not observations.")
                        : tr("In the yard's time, %1.").arg(m_context.books().yard().timeZone));
}

void WeatherChart::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
}

qsizetype WeatherChart::drawnPoints() const
{
    qsizetype points = 0;
    for (const ChartView *view : {m_temperature.view, m_wind.view}) {
        const auto series = view->chart()->series();
        for (const QAbstractSeries *one : series)
            if (const auto *line = qobject_cast<const QLineSeries *>(one))
                points += line->points().size();
    }
    return points;
}

} // namespace rickyard::views
