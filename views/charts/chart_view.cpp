#include "views/charts/chart_view.h"

#include "views/theme/theme_hub.h"

#include <QCursor>
#include <QDir>
#include <QFileInfo>
#include <QFocusEvent>
#include <QGraphicsLayout>
#include <QImage>
#include <QKeyEvent>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <QToolTip>
#include <QtCharts/QLegend>
#include <QtCharts/QLegendMarker>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

ChartView::ChartView(const QString &name, QWidget *parent) : QChartView(parent), name_(name)
{
    setRenderHint(QPainter::Antialiasing);
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setAccessibleName(name);
    chart()->setBackgroundRoundness(0);
    chart()->setBackgroundVisible(false);
    chart()->setAnimationOptions(QChart::NoAnimation);
    chart()->legend()->setAlignment(Qt::AlignTop);
    chart()->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
    // The chart lies upon its card; it has no ground of its own.
    setBackgroundBrush(Qt::NoBrush);
    chart()->layout()->setContentsMargins(0, 0, 0, 0);
    chart()->legend()->setContentsMargins(0, 0, 0, 0);
    viewport()->setAutoFillBackground(false);
    onTheme(this, [this] { restyle(theme(this)); });
}

void ChartView::addAxis(QAbstractAxis *axis, Qt::Alignment side, const QString &title)
{
    axis->setTitleText(title);
    chart()->addAxis(axis, side);
    styleAxis(axis, theme(this));
}

void ChartView::add(QAbstractSeries *series, int index, SeriesPart part)
{
    chart()->addSeries(series);
    const QList<QAbstractAxis *> axes = chart()->axes();
    bool across = false;
    bool upright = false;
    for (QAbstractAxis *axis : axes) {
        bool &taken = axis->orientation() == Qt::Horizontal ? across : upright;
        if (!taken)
            series->attachAxis(axis);
        taken = true;
    }
    styleSeries(series, index, part, theme(this));
    styleLegend(theme(this));
    if (auto *xy = qobject_cast<QXYSeries *>(series)) {
        connect(xy, &QXYSeries::hovered, this, [this, xy](const QPointF &point, bool in) {
            if (in)
                describe(xy, point, QCursor::pos());
            else
                QToolTip::hideText();
        });
        connect(xy, &QXYSeries::clicked, this,
                [this, xy](const QPointF &point) { emit pointActivated(xy, point); });
    }
}

void ChartView::clear()
{
    focused_ = -1;
    chart()->removeAllSeries();
}

void ChartView::clearAll()
{
    clear();
    const auto axes = chart()->axes();
    for (QAbstractAxis *old : axes) {
        chart()->removeAxis(old);
        delete old;
    }
}

void ChartView::setSummary(const QString &summary)
{
    setAccessibleDescription(summary);
}

void ChartView::setLegendShown(bool shown)
{
    chart()->legend()->setVisible(shown);
}

void ChartView::restyle(const Theme &look)
{
    QChart *shown = chart();
    shown->setMargins(QMargins(look.px(2), look.px(2), look.space(2), look.px(2)));
    shown->setTitleFont(look.font(TextStyle::Heading));
    shown->setTitleBrush(look.color(Role::Ink));
    const QList<QAbstractAxis *> axes = shown->axes();
    for (QAbstractAxis *axis : axes)
        styleAxis(axis, look);
    restyleSeries(shown, look);
    styleLegend(look);
    viewport()->update();
}

void ChartView::styleLegend(const Theme &look)
{
    QLegend *legend = chart()->legend();
    legend->setFont(look.font(TextStyle::Caption));
    legend->setLabelColor(look.color(Role::InkMuted));
    const QList<QLegendMarker *> markers = legend->markers();
    for (QLegendMarker *marker : markers) {
        // Qt keys a translucent area by a black box. The band is told by the name of its line
        // ("expected, with 80 % interval"), so it needs no key of its own.
        if (qobject_cast<QAreaSeries *>(marker->series()) != nullptr)
            marker->setVisible(false);
    }
}

QSize ChartView::sizeHint() const
{
    return {theme(this).px(480), theme(this).px(280)};
}

QSize ChartView::minimumSizeHint() const
{
    return {theme(this).px(260), theme(this).px(200)};
}

QList<ChartView::Mark> ChartView::marks() const
{
    QList<Mark> all;
    const QList<QAbstractSeries *> series = chart()->series();
    for (QAbstractSeries *one : series) {
        auto *xy = qobject_cast<QXYSeries *>(one);
        if (xy == nullptr || !xy->isVisible() ||
            (markersOnly_ && qobject_cast<QScatterSeries *>(one) == nullptr))
            continue;
        const QList<QPointF> points = xy->points();
        for (const QPointF &point : points)
            all.append({xy, point});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Mark &a, const Mark &b) { return a.point.x() < b.point.x(); });
    return all;
}

void ChartView::describe(QXYSeries *series, const QPointF &point, const QPoint &at)
{
    const QString text = describe_ ? describe_(series, point)
                                   : QStringLiteral("%1: %2, %3")
                                         .arg(series->name(), QString::number(point.x()),
                                              QString::number(point.y()));
    // A tool tip guesses rich text from its content: escape, so that a name stays a name.
    QToolTip::showText(at, text.toHtmlEscaped().replace(u'\n', QLatin1String("<br>")), this);
    emit pointShown(text);
}

void ChartView::step(int by)
{
    const QList<Mark> all = marks();
    if (all.isEmpty())
        return;
    const int last = static_cast<int>(all.size()) - 1;
    focused_ = focused_ < 0 ? (by > 0 ? 0 : last) : std::clamp(focused_ + by, 0, last);
    const Mark &mark = all.at(focused_);
    const QPointF at = chart()->mapToPosition(mark.point, mark.series);
    describe(mark.series, mark.point, mapToGlobal(mapFromScene(chart()->mapToScene(at))));
    viewport()->update();
}

void ChartView::keyPressEvent(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Left:
        step(-1);
        return;
    case Qt::Key_Right:
        step(1);
        return;
    case Qt::Key_Home:
        focused_ = -1;
        step(1);
        return;
    case Qt::Key_End:
        focused_ = -1;
        step(-1);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (const QList<Mark> all = marks(); focused_ >= 0 && focused_ < all.size()) {
            const Mark mark = all.at(focused_); // what follows may draw the chart anew
            emit pointActivated(mark.series, mark.point);
            return;
        }
        QChartView::keyPressEvent(event);
        return;
    default:
        QChartView::keyPressEvent(event);
    }
}

void ChartView::focusOutEvent(QFocusEvent *event)
{
    focused_ = -1;
    viewport()->update();
    QChartView::focusOutEvent(event);
}

void ChartView::drawForeground(QPainter *painter, const QRectF &)
{
    if (!hasFocus())
        return;
    const Theme &look = theme(this);
    painter->save();
    painter->resetTransform();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(look.color(Role::Focus), look.px(2)));
    painter->drawRoundedRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1), look.radius(),
                             look.radius());
    const QList<Mark> all = marks();
    if (focused_ >= 0 && focused_ < all.size()) {
        const Mark &mark = all.at(focused_);
        const QPointF at = chart()->mapToPosition(mark.point, mark.series);
        const QPointF place = mapFromScene(chart()->mapToScene(at));
        painter->drawEllipse(place, look.px(9), look.px(9));
    }
    painter->restore();
}

std::optional<QString> ChartView::exportPicture(const QString &path)
{
    const Theme paper = Theme::make(Mode::Light, 14.0 * theme(this).scale());
    const QString kind = QFileInfo(path).suffix().toLower();
    const QSize size = viewport()->size();
    restyle(paper);
    std::optional<QString> problem;
    const auto draw = [&](QPaintDevice *device, const QRectF &target) {
        QPainter painter(device);
        if (!painter.isActive())
            return false;
        painter.setRenderHint(QPainter::Antialiasing);
        painter.fillRect(target, paper.color(Role::SurfaceRaised));
        scene()->render(&painter, target, QRectF(QPointF(0, 0), QSizeF(size)));
        return painter.end();
    };
    const QString refused = tr("The picture could not be written to %1. Choose a folder that can "
                               "be written to and has space.")
                                .arg(QDir::toNativeSeparators(path));
    if (kind == QLatin1String("svg")) {
        QSaveFile file(path);
        QSvgGenerator generator;
        generator.setSize(size);
        generator.setViewBox(QRect(QPoint(0, 0), size));
        generator.setTitle(name_);
        generator.setOutputDevice(&file);
        if (!file.open(QIODevice::WriteOnly) ||
            !draw(&generator, QRectF(QPointF(0, 0), QSizeF(size))) || !file.commit())
            problem = refused;
    } else if (kind == QLatin1String("png")) {
        QImage image(size * 2, QImage::Format_RGB32);
        draw(&image, QRectF(QPointF(0, 0), QSizeF(size * 2)));
        if (!image.save(path, "PNG"))
            problem = refused;
    } else {
        problem = tr("Pictures are written as .png or .svg; “%1” is neither. Give the file one "
                     "of these endings.")
                      .arg(kind);
    }
    restyle(theme(this));
    return problem;
}

} // namespace rickyard::views
