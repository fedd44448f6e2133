#include "views/charts/chart_style.h"

#include <QVariant>

namespace rickyard::views {

namespace {
constexpr char indexProperty[] = "rickyardSeriesIndex";
constexpr char partProperty[] = "rickyardSeriesPart";

void styleScatter(QScatterSeries *series, int index, SeriesPart part, const Theme &look)
{
    const QColor color = seriesColor(index, look);
    const bool future = part == SeriesPart::Future;
    series->setMarkerShape(markerShape(index));
    series->setMarkerSize(look.px(9));
    series->setColor(future ? look.color(Role::Surface) : color);
    series->setBorderColor(future ? color : look.color(Role::Surface));
    series->setPen(QPen(future ? color : look.color(Role::Surface), look.px(1)));
    series->setPointLabelsFont(look.font(TextStyle::Caption));
    series->setPointLabelsColor(look.color(Role::Ink));
}

QPen linePen(int index, SeriesPart part, const Theme &look)
{
    switch (part) {
    case SeriesPart::Limit:
        return {look.color(Role::Act), static_cast<double>(look.px(1.5)), Qt::DashLine,
                Qt::RoundCap};
    case SeriesPart::Expected: {
        QPen pen = seriesPen(index, look);
        pen.setWidthF(look.px(1.5));
        return pen;
    }
    case SeriesPart::Band:
        return Qt::NoPen;
    case SeriesPart::Future:
        return seriesPen(index, look, true);
    case SeriesPart::Measured:
        break;
    }
    return seriesPen(index, look);
}

} // namespace

QColor seriesColor(int index, const Theme &look)
{
    return look.color(index < 0 ? Role::InkMuted : Theme::chartRole(index));
}

QPen seriesPen(int index, const Theme &look, bool future)
{
    QColor color = seriesColor(index, look);
    if (future)
        color.setAlphaF(0.55F);
    QPen pen(color, look.px(2));
    pen.setCapStyle(Qt::RoundCap);
    pen.setJoinStyle(Qt::RoundJoin);
    if (future)
        pen.setDashPattern({3.0, 2.5});
    return pen;
}

QScatterSeries::MarkerShape markerShape(int index)
{
    static constexpr QScatterSeries::MarkerShape shapes[] = {
        QScatterSeries::MarkerShapeCircle,   QScatterSeries::MarkerShapeRectangle,
        QScatterSeries::MarkerShapeTriangle, QScatterSeries::MarkerShapeRotatedRectangle,
        QScatterSeries::MarkerShapePentagon, QScatterSeries::MarkerShapeStar};
    return shapes[((index % 6) + 6) % 6];
}

void styleSeries(QAbstractSeries *series, int index, SeriesPart part, const Theme &look)
{
    series->setProperty(indexProperty, index);
    series->setProperty(partProperty, static_cast<int>(part));
    if (auto *scatter = qobject_cast<QScatterSeries *>(series)) {
        styleScatter(scatter, index, part, look);
    } else if (auto *line = qobject_cast<QXYSeries *>(series)) {
        line->setPen(linePen(index, part, look));
    } else if (auto *area = qobject_cast<QAreaSeries *>(series)) {
        QColor fill = look.color(Role::Band);
        if (index >= 0) {
            const int alpha = fill.alpha();
            fill = seriesColor(index, look);
            fill.setAlpha(alpha);
        }
        area->setBrush(fill);
        area->setPen(Qt::NoPen);
    }
}

void restyleSeries(QChart *chart, const Theme &look)
{
    const QList<QAbstractSeries *> all = chart->series();
    for (QAbstractSeries *series : all) {
        const QVariant index = series->property(indexProperty);
        if (index.isValid())
            styleSeries(series, index.toInt(),
                        static_cast<SeriesPart>(series->property(partProperty).toInt()), look);
    }
}

void styleAxis(QAbstractAxis *axis, const Theme &look)
{
    const bool upright = axis->orientation() == Qt::Vertical;
    axis->setLabelsFont(look.font(TextStyle::Caption));
    axis->setLabelsColor(look.color(Role::InkMuted));
    axis->setTitleFont(look.font(TextStyle::Caption));
    axis->setTitleBrush(look.color(Role::InkMuted));
    axis->setGridLinePen(QPen(look.color(Role::Hairline), 1));
    axis->setMinorGridLineVisible(false);
    axis->setGridLineVisible(upright);
    axis->setLinePen(QPen(look.color(Role::FieldEdge), 1));
    // The baseline is drawn; the upright axis is told by its gridlines.
    axis->setLineVisible(!upright);
    axis->setShadesVisible(false);
}

QAreaSeries *bandSeries(const QList<QPointF> &upper, const QList<QPointF> &lower, int index,
                        const Theme &look)
{
    auto *top = new QLineSeries;
    auto *bottom = new QLineSeries;
    top->replace(upper);
    bottom->replace(lower);
    auto *band = new QAreaSeries(top, bottom);
    top->setParent(band);
    bottom->setParent(band);
    styleSeries(band, index, SeriesPart::Band, look);
    return band;
}

void replaceBand(QAreaSeries *band, const QList<QPointF> &upper, const QList<QPointF> &lower)
{
    band->upperSeries()->replace(upper);
    band->lowerSeries()->replace(lower);
}

} // namespace rickyard::views
