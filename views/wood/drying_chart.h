// How one lot dries: the forecast's band over the readings, the limit of dry, today, and the coming
// events with the chance that the lot is dry by then.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/seasoning.h"
#include "views/charts/chart_view.h"

#include <QtCharts/QDateTimeAxis>
#include <QtCharts/QValueAxis>

namespace rickyard::views {

class DryingChart : public ChartView
{
    Q_OBJECT

public:
    explicit DryingChart(QWidget *parent = nullptr);
    void show(const domain::Books &books, const domain::SeasoningForecast &forecast,
              domain::Instant now);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

private:
    void setSpan(const domain::SeasoningForecast &forecast, qint64 from, qint64 to);
    void showEvents(const domain::Books &books, const domain::SeasoningForecast &forecast,
                    domain::Instant now, qint64 to);

    QDateTimeAxis *m_days;
    QValueAxis *m_percent;
    QAreaSeries *m_band;
    QLineSeries *m_past;
    QLineSeries *m_future;
    QLineSeries *m_limit;
    QScatterSeries *m_readings;
    QScatterSeries *m_events;
    QHash<qint64, QString> m_eventWords;
};

// "The Fair, 3 Dec: 72 % sure to be dry". One line an event that is still to come, at most `most`.
QStringList chancesByEvent(const domain::Books &books, const domain::SeasoningForecast &forecast,
                           domain::Instant now, int most);

} // namespace rickyard::views
