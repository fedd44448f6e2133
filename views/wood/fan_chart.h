// The fan of dry wood: what is there if nothing more is ordered, in 5, 50 and 95 of 100 tries, with
// the order as a second line; events with their chance of running short, the day to order by, and
// the room there is.
#pragma once

#include "models/domain/plan/reorder.h"
#include "views/charts/chart_view.h"

#include <QtCharts/QDateTimeAxis>
#include <QtCharts/QValueAxis>

namespace rickyard::views {

class FanChart : public ChartView
{
    Q_OBJECT

public:
    // Brief: for a narrow place, with few words in its key.
    enum class Size { Whole, Brief };
    explicit FanChart(Size size = Size::Whole, QWidget *parent = nullptr);

    // The books must outlive it.
    void show(const domain::Books &books, const domain::WoodAnswer &answer);
    // The second line, its day of ordering and the chances with it; cheap, for a slider that moves.
    // Empty `course`: no second line.
    void showOrder(const QVector<domain::StockPoint> &course, QDate orderDay, const QString &name,
                   const QVector<domain::WoodRisk> &risks);
    [[nodiscard]] bool showsOrder() const { return m_order->isVisible(); }
    [[nodiscard]] QStringList eventLabels() const; // that stand at their points
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

private:
    void showCourse(const domain::WoodAnswer &answer);
    void showEvents(const domain::WoodAnswer &answer);
    void showRoom(const domain::Books &books, const domain::WoodAnswer &answer);
    void setTop(double most);
    void keepLabelsApart();
    [[nodiscard]] double shown(domain::Heat heat) const;
    [[nodiscard]] QString describePoint(const QAbstractSeries *series, const QPointF &point) const;

    QDateTimeAxis *m_days;
    QValueAxis *m_heat;
    QAreaSeries *m_band;
    QLineSeries *m_middle;
    QLineSeries *m_order;
    QLineSeries *m_by;
    QLineSeries *m_room;
    QScatterSeries *m_safe;            // events within the accepted risk
    QVector<QScatterSeries *> m_risky; // those over it, one each for its label
    QHash<qint64, QString> m_words;    // of events, by the abscissa
    bool m_brief;
    bool m_metric = false;
    double m_most = 1;
    double m_roomHeat = 0; // 0: not known
    domain::WoodAnswer m_answer;
    QVector<domain::StockPoint> m_with;
};

// Noon of a day as the abscissa of charts.
double noonOfDate(QDate day);

} // namespace rickyard::views
