// Temperature and wind of the yard over a chosen stretch.
#pragma once

#include "views/page.h"
#include "views/weather/weather_course.h"

#include <QtCharts/QDateTimeAxis>
#include <QtCharts/QValueAxis>

class QComboBox;

namespace rickyard::views {

class ChartView;
class TextLabel;

class WeatherChart : public QWidget
{
    Q_OBJECT

public:
    explicit WeatherChart(PageContext &context, QWidget *parent = nullptr);

    void refresh();
    // Days back from the last record; 0: all there is.
    void setDays(int days);
    [[nodiscard]] int days() const;
    // Points drawn now, all series together.
    [[nodiscard]] qsizetype drawnPoints() const;

protected:
    void showEvent(QShowEvent *event) override;

private:
    struct Plot {
        ChartView *view = nullptr;
        QDateTimeAxis *time = nullptr;
        QValueAxis *value = nullptr;
        QString unit;
    };
    Plot makePlot(const QString &name);
    void fillPlaces();
    void draw(Plot &plot, const WeatherValue &value, const WeatherStretch &stretch, int index,
              const QString &what);
    [[nodiscard]] std::optional<WeatherStretch> stretch() const;
    [[nodiscard]] double drawnAt(qint64 seconds) const;

    PageContext &m_context;
    QComboBox *m_days = nullptr;
    QComboBox *m_place = nullptr;
    TextLabel *m_note = nullptr;
    Plot m_temperature;
    Plot m_wind;
    bool m_stale = true;
};

} // namespace rickyard::views
