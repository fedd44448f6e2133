// Dry wood from today over the booked cooks: the course with its band, each cook at its day, and
// the day by which to order.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/records/books.h"
#include "views/charts/chart_view.h"

#include <QtCharts/QDateTimeAxis>
#include <QtCharts/QValueAxis>

namespace rickyard::views {

class StockChart : public ChartView
{
    Q_OBJECT

public:
    explicit StockChart(QWidget *parent = nullptr);
    void show(const domain::Books &books, const domain::WoodAnswer &answer);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

private:
    QDateTimeAxis *m_days;
    QValueAxis *m_heat;
    QLineSeries *m_middle;
    QAreaSeries *m_band;
    QScatterSeries *m_cooks;
    QLineSeries *m_order;
};

} // namespace rickyard::views
