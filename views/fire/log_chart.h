// Wood use of past cooks against hours, air or wind: every cook a point, a pit a hue and a marker,
// and each pit's plain line; for a single pit the band that holds 90 % of its cooks.
#pragma once

#include "models/domain/fire/use_line.h"
#include "views/page.h"
#include "views/pits/cook_points.h"

class QAbstractSeries;

namespace rickyard::views {

class ChartView;

class LogChart : public QWidget
{
    Q_OBJECT

public:
    explicit LogChart(QWidget *parent = nullptr);
    // The books must outlive the chart.
    void showCooks(const domain::Books &books, const QVector<domain::CookFuel> &cooks,
                   domain::UseAgainst against, const QVector<domain::UseLine> &lines);
    [[nodiscard]] ChartView &chart() { return *m_chart; }
    [[nodiscard]] domain::RecordId cookAt(const QString &series, const QPointF &point) const;

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    void drawAxes(const QVector<domain::UsePoint> &points);
    void drawLine(const domain::UseLine &line, bool band);
    void drawPoints(const QVector<domain::UsePoint> &points);
    [[nodiscard]] QString describe(const QString &series, const QPointF &point) const;

    const domain::Books *m_books = nullptr;
    QVector<domain::CookFuel> m_cooks;
    domain::UseAgainst m_against = domain::UseAgainst::Hours;
    ChartView *m_chart;
    CookPoints m_points;
};

} // namespace rickyard::views
