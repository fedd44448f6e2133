// Heat used against degree-hours: every cook a point, a pit a hue and a marker, and what the chosen
// pit should take in the middle weather of its cooks as a line in its 90 % band. A point names its
// cook; a click opens it.
#pragma once

#include "models/domain/fire/fuel.h"
#include "views/page.h"
#include "views/pits/cook_points.h"

class QComboBox;

namespace rickyard::views {

class ChartView;

class FuelChart : public QWidget
{
    Q_OBJECT

public:
    explicit FuelChart(QWidget *parent = nullptr);
    // The books must outlive the chart.
    void showFuel(const domain::Books &books, const domain::FuelAnswer &fuel);
    void choosePit(domain::RecordId pit);
    [[nodiscard]] domain::RecordId chosenPit() const;
    [[nodiscard]] ChartView &chart() { return *m_chart; }
    // The choice of the pit, for the head of the card.
    [[nodiscard]] QComboBox *choice() { return m_pits; }
    [[nodiscard]] domain::RecordId cookAt(const QString &series, const QPointF &point) const;

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    void fillPits();
    void draw();
    void drawNorm(double last);
    [[nodiscard]] double across(double kelvinHours) const;
    [[nodiscard]] QString describe(const QString &series, const QPointF &point) const;

    const domain::Books *m_books = nullptr;
    domain::FuelAnswer m_fuel;
    QComboBox *m_pits;
    ChartView *m_chart;
    CookPoints m_points;
};

} // namespace rickyard::views
