#include "views/pits/fuel_chart.h"

#include "models/domain/fire/fuel.h"
#include "views/charts/chart_view.h"
#include "views/charts/nice_axis.h"
#include "views/fire/fire_words.h"
#include "views/pits/pit_card.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QComboBox>
#include <QVBoxLayout>
#include <QtCharts/QValueAxis>

#include <algorithm>
#include <cmath>
#include <limits>

namespace rickyard::views {

using namespace rickyard::domain;

FuelChart::FuelChart(QWidget *parent)
    : QWidget(parent), m_pits(new QComboBox(this)),
      m_chart(new ChartView(tr("Heat used against degree-hours"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_pits->setAccessibleName(tr("Pit whose charts are drawn"));
    m_pits->setMinimumWidth(theme(this).px(200));
    m_chart->setMinimumHeight(theme(this).px(340));
    column->addWidget(m_chart, 1);
    connect(m_pits, &QComboBox::currentIndexChanged, this, &FuelChart::draw);
    m_chart->setMarkersOnly(true);
    connect(m_chart, &ChartView::pointActivated, this,
            [this](const QAbstractSeries *series, const QPointF &point) {
                if (const RecordId cook = cookAt(series->name(), point); cook != 0)
                    Q_EMIT cookOpened(cook);
            });
    m_chart->setDescribe([this](const QAbstractSeries *series, const QPointF &point) {
        return describe(series->name(), point);
    });
}

void FuelChart::showFuel(const Books &books, const FuelAnswer &fuel)
{
    m_books = &books;
    m_fuel = fuel;
    fillPits();
    draw();
}

void FuelChart::fillPits()
{
    const RecordId before = chosenPit();
    const QSignalBlocker quiet(m_pits);
    m_pits->clear();
    RecordId worst = 0;
    double highest = -std::numeric_limits<double>::infinity();
    for (const PitFuel &one : std::as_const(m_fuel.pits)) {
        const Pit pit = m_books->pits.value(one.pit);
        if (pit.retired)
            continue;
        m_pits->addItem(pit.name, QVariant::fromValue<qint64>(one.pit));
        if (one.nearness() > highest) {
            highest = one.nearness();
            worst = one.pit;
        }
    }
    const int at = m_pits->findData(QVariant::fromValue<qint64>(before != 0 ? before : worst));
    m_pits->setCurrentIndex(std::max(0, at));
}

void FuelChart::choosePit(RecordId pit)
{
    const int at = m_pits->findData(QVariant::fromValue<qint64>(pit));
    if (at >= 0)
        m_pits->setCurrentIndex(at);
}

RecordId FuelChart::chosenPit() const
{
    return m_pits->currentData().toLongLong();
}

// US customary counts degree-hours in Fahrenheit degrees.
double FuelChart::across(double kelvinHours) const
{
    return m_books->yard().metric ? kelvinHours : kelvinHours * 9.0 / 5.0;
}

void FuelChart::draw()
{
    m_chart->clearAll();
    m_points.clear();
    if (m_books == nullptr)
        return;
    const FireWords words(*m_books);
    const Unit &unit = words.unit(Dimension::Heat);
    double right = across(100);
    double top = toUnit(heatFromSeasonedPounds(10).base(), unit);
    for (const CookFuel &cook : std::as_const(m_fuel.cooks)) {
        if (!cook.complete())
            continue;
        const QPointF at(across(*cook.degreeHours), toUnit(cook.netHeat.base(), unit));
        m_points.add(cook.pit, at, cook.cook);
        right = std::max(right, at.x());
        top = std::max(top, at.y());
    }
    QValueAxis *below = niceAxis(0, right * 1.02, 6);
    m_chart->addAxis(below, Qt::AlignBottom,
                     m_books->yard().metric ? tr("Degree-hours above the air, K h")
                                            : tr("Degree-hours above the air, °F h"));
    m_chart->addAxis(niceAxis(0, top * 1.08, 5), Qt::AlignLeft,
                     tr("Heat used, %1").arg(unit.symbol));
    drawNorm(below->max());
    m_points.draw(*m_chart, *m_books);
    m_chart->setSummary(tr("%1 finished cooks of %2 pits.")
                            .arg(std::count_if(m_fuel.cooks.cbegin(), m_fuel.cooks.cend(),
                                               [](const CookFuel &c) { return c.complete(); }))
                            .arg(m_points.pits()));
}

void FuelChart::drawNorm(double last)
{
    if (chosenPit() == 0)
        return;
    const Unit &unit = FireWords(*m_books).unit(Dimension::Heat);
    PlannedFire fire = middleFire(*m_books, m_fuel, chosenPit());
    const double above = celsius(fire.target) - celsius(fire.outside);
    if (above <= 0)
        return;
    QList<QPointF> middle;
    QList<QPointF> lower;
    QList<QPointF> upper;
    constexpr int kSteps = 40;
    for (int i = 0; i <= kSteps; ++i) {
        const double x = last * i / kSteps;
        fire.length = durationFromHours(x / across(1.0) / above);
        const ExpectedUse use = expectedUse(*m_books, m_fuel, fire);
        middle << QPointF(x, toUnit(use.middle.base(), unit));
        lower << QPointF(x, toUnit(use.lower.base(), unit));
        upper << QPointF(x, toUnit(use.upper.base(), unit));
    }
    const int index = pitIndex(*m_books, chosenPit());
    m_chart->add(bandSeries(upper, lower, index, theme(this)), index, SeriesPart::Band);
    auto *line = new QLineSeries;
    line->setName(tr("expected of %1 in middling weather, with 90 % interval")
                      .arg(m_books->pits.value(chosenPit()).name));
    line->replace(middle);
    m_chart->add(line, index, SeriesPart::Expected);
}

RecordId FuelChart::cookAt(const QString &series, const QPointF &point) const
{
    return m_points.cookAt(series, point);
}

QString FuelChart::describe(const QString &series, const QPointF &point) const
{
    const FireWords words(*m_books);
    const QString heat =
        withUnit(formatNumber(point.y(), 0, words.locale()), words.unit(Dimension::Heat).symbol);
    const RecordId cook = cookAt(series, point);
    if (cook == 0)
        return QStringLiteral("%1: %2").arg(series, heat);
    const Cook found = m_books->cooks.value(cook);
    QString text = tr("%1, %2 on %3\n%4 used")
                       .arg(cookTitle(*m_books, found), words.day(found.lit), series, heat);
    for (const CookFuel &fuel : m_fuel.cooks)
        if (fuel.cook == cook && fuel.expected && fuel.excess)
            text += tr(", %1 expected (%2)")
                        .arg(words.heat(*fuel.expected).text(), words.percent(*fuel.excess));
    return text;
}

} // namespace rickyard::views
