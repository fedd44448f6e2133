// The grammar of the charts: a pit is a hue and a marker shape; what is expected is a line in a
// band; the past is solid and the future lighter; a flag is a shape and a word.
#pragma once

#include "views/theme/theme.h"

#include <QList>
#include <QPointF>
#include <QtCharts/QAbstractAxis>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QScatterSeries>

namespace rickyard::views {

// What a series means; kept on the series, so that a change of theme restyles it.
enum class SeriesPart { Measured, Future, Expected, Band, Limit };

QColor seriesColor(int index, const Theme &look);
QPen seriesPen(int index, const Theme &look, bool future = false);
QScatterSeries::MarkerShape markerShape(int index);

// Remembers index and part on a series and styles it. Works on line, scatter and area series.
void styleSeries(QAbstractSeries *series, int index, SeriesPart part, const Theme &look);
// Styles again every series of a chart that was styled before.
void restyleSeries(QChart *chart, const Theme &look);

// Hairline grid, muted labels, no minor noise.
void styleAxis(QAbstractAxis *axis, const Theme &look);

// An interval between two lines with the same abscissae. The chart that gets it owns it, and it
// owns its two lines. index < 0 takes the neutral band colour.
QAreaSeries *bandSeries(const QList<QPointF> &upper, const QList<QPointF> &lower, int index,
                        const Theme &look);
// Puts new values into a band made by bandSeries.
void replaceBand(QAreaSeries *band, const QList<QPointF> &upper, const QList<QPointF> &lower);

} // namespace rickyard::views
