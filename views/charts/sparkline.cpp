#include "views/charts/sparkline.h"

#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"

#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

struct Sparkline::Scale {
    double low = 0.0;
    double high = 1.0;
    QRectF area;
    qsizetype count = 0;

    QPointF at(qsizetype index, double value) const
    {
        const double step = count > 1 ? area.width() / static_cast<double>(count - 1) : 0.0;
        const double share = high > low ? (value - low) / (high - low) : 0.5;
        return {area.left() + step * static_cast<double>(index),
                area.bottom() - share * area.height()};
    }
};

Sparkline::Sparkline(const QString &what, QWidget *parent) : QWidget(parent), what_(what)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    describe();
}

void Sparkline::setValues(const QVector<double> &values)
{
    values_ = values;
    describe();
    update();
}

void Sparkline::setBand(const QVector<double> &low, const QVector<double> &high)
{
    low_ = low;
    high_ = high;
    update();
}

void Sparkline::setLimit(std::optional<double> limit)
{
    limit_ = limit;
    update();
}

void Sparkline::setFutureFrom(int index)
{
    futureFrom_ = index;
    update();
}

void Sparkline::setRole(Role line, Role lastPoint)
{
    line_ = line;
    last_ = lastPoint;
    update();
}

void Sparkline::describe()
{
    setAccessibleName(what_);
    QVector<double> known;
    std::copy_if(values_.cbegin(), values_.cend(), std::back_inserter(known),
                 [](double value) { return std::isfinite(value); });
    if (known.isEmpty()) {
        setAccessibleDescription(tr("No values"));
        return;
    }
    const auto [low, high] = std::minmax_element(known.cbegin(), known.cend());
    const auto text = [](double value) { return trueMinus(QLocale().toString(value, 'g', 4)); };
    setAccessibleDescription(
        tr("%1 values from %2 to %3, last %4")
            .arg(QString::number(known.size()), text(*low), text(*high), text(known.constLast())));
}

QSize Sparkline::sizeHint() const
{
    return {theme(this).px(180), theme(this).px(56)};
}

QSize Sparkline::minimumSizeHint() const
{
    return {theme(this).px(80), theme(this).px(36)};
}

Sparkline::Scale Sparkline::scaleFor() const
{
    Scale scale;
    const double edge = theme(this).px(7);
    scale.area = QRectF(rect()).adjusted(edge, edge, -edge, -edge);
    scale.count = values_.size();
    bool any = false;
    const auto include = [&](double value) {
        if (!std::isfinite(value))
            return;
        scale.low = any ? std::min(scale.low, value) : value;
        scale.high = any ? std::max(scale.high, value) : value;
        any = true;
    };
    for (const QVector<double> *list : {&values_, &low_, &high_})
        std::for_each(list->cbegin(), list->cend(), include);
    if (limit_)
        include(*limit_);
    return scale;
}

void Sparkline::paintEvent(QPaintEvent *)
{
    if (values_.isEmpty())
        return;
    const Theme &look = theme(this);
    const Scale scale = scaleFor();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (low_.size() == values_.size() && high_.size() == values_.size()) {
        QPolygonF band;
        for (qsizetype i = 0; i < high_.size(); ++i)
            band.append(scale.at(i, high_.at(i)));
        for (qsizetype i = low_.size() - 1; i >= 0; --i)
            band.append(scale.at(i, low_.at(i)));
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Band));
        painter.drawPolygon(band);
    }
    if (limit_) {
        painter.setPen(QPen(look.color(Role::InkFaint), 1, Qt::DashLine));
        painter.drawLine(QPointF(scale.area.left(), scale.at(0, *limit_).y()),
                         QPointF(scale.area.right(), scale.at(0, *limit_).y()));
    }
    const QPen solid(look.color(line_), look.px(1.75), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    QColor lighter = look.color(line_);
    lighter.setAlphaF(0.5F);
    QPen future(lighter, look.px(1.75), Qt::CustomDashLine, Qt::RoundCap);
    future.setDashPattern({2.5, 2.5});
    qsizetype last = -1;
    for (qsizetype i = 0; i < values_.size(); ++i) {
        if (!std::isfinite(values_.at(i)))
            continue;
        if (i > 0 && std::isfinite(values_.at(i - 1))) {
            painter.setPen(futureFrom_ >= 0 && i >= futureFrom_ ? future : solid);
            painter.drawLine(scale.at(i - 1, values_.at(i - 1)), scale.at(i, values_.at(i)));
        }
        if (futureFrom_ < 0 || i < futureFrom_)
            last = i;
    }
    if (last < 0)
        return;
    const QPointF at = scale.at(last, values_.at(last));
    painter.setPen(QPen(look.color(Role::Surface), look.px(2)));
    painter.setBrush(look.color(last_));
    const double radius = look.px(4.5);
    // A point to act on is a diamond, as everywhere.
    if (last_ == Role::Act)
        painter.drawPolygon(QPolygonF{at + QPointF(0, -radius * 1.3), at + QPointF(radius * 1.3, 0),
                                      at + QPointF(0, radius * 1.3),
                                      at + QPointF(-radius * 1.3, 0)});
    else
        painter.drawEllipse(at, radius, radius);
}

} // namespace rickyard::views
