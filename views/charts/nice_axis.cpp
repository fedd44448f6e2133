#include "views/charts/nice_axis.h"

#include <algorithm>
#include <cmath>

namespace rickyard::views {

QValueAxis *niceAxis(double low, double high, int parts)
{
    const double rough = std::max(high - low, 1e-9) / parts;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10.0 * power;
    for (const double factor : {5.0, 2.0, 1.0})
        if (factor * power >= rough)
            step = factor * power;
    const double first = std::floor(low / step) * step;
    const double last = std::max(std::ceil(high / step) * step, first + step);
    auto *axis = new QValueAxis;
    axis->setRange(first, last);
    axis->setTickCount(static_cast<int>(std::lround((last - first) / step)) + 1);
    axis->setLabelFormat(step < 1 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
    return axis;
}

} // namespace rickyard::views
