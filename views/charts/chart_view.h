// A chart in the program's looks: reads in light, dark and print, answers the pointer and the
// keyboard alike, and exports as a picture.
#pragma once

#include "views/charts/chart_style.h"

#include <QtCharts/QChartView>

#include <functional>
#include <optional>

namespace rickyard::views {

class ChartView : public QChartView
{
    Q_OBJECT

public:
    // The text for a point of a series, for pointer and keyboard; plain text.
    using Describe = std::function<QString(const QAbstractSeries *, const QPointF &)>;

    // name says what the chart shows ("Wood use against cook length").
    explicit ChartView(const QString &name, QWidget *parent = nullptr);

    // Adds a series with its meaning and attaches it to the chart's axes. index is the pit's or
    // lot's place in its list, and decides hue and marker; < 0 is neutral.
    void add(QAbstractSeries *series, int index, SeriesPart part);
    // Adds an axis; call before add().
    void addAxis(QAbstractAxis *axis, Qt::Alignment side, const QString &title = QString());
    void clear();
    // With its axes too, for a chart that is drawn anew on other ones.
    void clearAll();

    void setDescribe(Describe describe) { describe_ = std::move(describe); }
    // One sentence that says what the chart says, for screen readers.
    void setSummary(const QString &summary);
    void setLegendShown(bool shown);
    // The arrow keys step through the markers alone, where lines are drawn beside records.
    void setMarkersOnly(bool only) { markersOnly_ = only; }

    // Writes .svg or .png (at twice the size) in the light theme. Gives the reason when it fails.
    std::optional<QString> exportPicture(const QString &path);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    // The point under the keyboard or the pointer changed; text is the description.
    void pointShown(const QString &text);
    // A click on a point, or Enter on the one under the keyboard.
    void pointActivated(const QAbstractSeries *series, const QPointF &point);

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void drawForeground(QPainter *painter, const QRectF &rectangle) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    struct Mark {
        QXYSeries *series;
        QPointF point;
    };
    void restyle(const Theme &look);
    void styleLegend(const Theme &look);
    QList<Mark> marks() const;
    void step(int by);
    void describe(QXYSeries *series, const QPointF &point, const QPoint &at);

    QString name_;
    Describe describe_;
    int focused_ = -1;
    bool markersOnly_ = false;
};

} // namespace rickyard::views
