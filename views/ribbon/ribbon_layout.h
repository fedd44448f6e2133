// Where the items of the ribbon stand: days are columns, lanes are rows, and items that overlap in
// a lane go to rows below each other. Pure geometry.
#pragma once

#include "views/ribbon/ribbon_item.h"

#include <QRectF>

#include <functional>

namespace rickyard::views {

// Distances in device-independent pixels, from the theme.
struct RibbonMetrics {
    double left = 0;       // where the first day begins
    double width = 0;      // of all the days
    double top = 0;        // below the names of the weeks
    double row = 0;        // height of one row
    double laneGap = 0;    // between lanes
    double mark = 0;       // least width of a bar
    double gap = 0;        // between a bar and its label, and before the next item
    double leastLabel = 0; // an item keeps this much room for its label where it has one
    std::function<double(const QString &)> textWidth;
};

struct RibbonPlace {
    QRectF bar;
    QRectF label; // empty: no room
    QRectF hit;   // both, for the pointer
};

struct RibbonLane {
    Lane lane = Lane::Cooks;
    double top = 0;
    double height = 0;
};

struct RibbonLayout {
    QVector<RibbonPlace> places; // by item
    QVector<RibbonLane> lanes;   // those that hold something, from the top
    double height = 0;           // of all
};

RibbonLayout layOutRibbon(const QVector<RibbonItem> &items, QDate from, int days,
                          const RibbonMetrics &metrics);
// Where a moment stands across.
double ribbonX(const QDateTime &time, QDate from, int days, const RibbonMetrics &metrics);

} // namespace rickyard::views
