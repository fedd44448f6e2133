// The chart of the watch for one pit: the sum of its scores, cook by cook, under the limit that
// raises the flag. Mendings and looks that found nothing stand on it as marks. A point names its
// cook; a click opens it.
#pragma once

#include "models/domain/fire/fuel.h"
#include "views/charts/chart_view.h"

class QDateTimeAxis;

namespace rickyard::views {

class CusumChart : public ChartView
{
    Q_OBJECT

public:
    explicit CusumChart(QWidget *parent = nullptr);
    // The books must outlive the chart.
    void showPit(const domain::Books &books, const domain::FuelAnswer &fuel, domain::RecordId pit,
                 domain::Instant now);

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    struct Mark {
        double at = 0; // milliseconds since 1970
        domain::RecordId cook = 0;
        QString words;
    };
    void drawLines(const domain::FuelAnswer &fuel, domain::RecordId pit, double top);
    void drawTurns(domain::RecordId pit, domain::Instant now, double top);
    [[nodiscard]] const Mark *markAt(double at) const;

    const domain::Books *m_books = nullptr;
    QVector<Mark> m_marks;
};

} // namespace rickyard::views
