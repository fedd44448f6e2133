// One thing that happens in the coming weeks, as the ribbon shows it.
#pragma once

#include "models/domain/answers/headline.h"

#include <QDateTime>
#include <QString>
#include <QVector>

namespace rickyard::views {

// The lanes of the ribbon, from the top.
enum class Lane { Cooks, Events, Upkeep, Wood, Due };
constexpr int kLaneCount = 5;

struct RibbonItem {
    domain::Link link;
    Lane lane = Lane::Events;
    QDateTime start;        // the yard's wall clock
    QDateTime end;          // equal to start: a mark rather than a bar
    QString label;          // short: it stands beside the bar and is elided
    QString detail;         // all of it in words, for pointer and screen reader; plain text
    bool tentative = false; // proposed, not agreed: drawn dashed
    domain::Standing standing = domain::Standing::Good; // Watch and Act get their shape
    int hue = -1;                                       // place of its pit; -1: neutral
    QString mark;                                       // inside the bar: the pit's initial
};

} // namespace rickyard::views
