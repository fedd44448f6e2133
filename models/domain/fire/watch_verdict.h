// What goes into the fuel watch and what it says of a cook and a pit. The watch itself, and how it
// works: watch.h.
#pragma once

#include "models/domain/fire/heat_balance.h"

#include <QString>
#include <QVector>

#include <optional>

namespace rickyard::domain {

// In time order, lighting time first.
struct WatchCook {
    RecordId cook = 0;
    RecordId pit = 0;
    HeatColumns columns{};
    double actual = 0.0; // joules net, above 0
    // 1: an ordinary cook. Less: its wood or weather is known poorly; it counts as that share of
    // one and its interval is wider by one over the root.
    double trust = 1.0;
    bool knownGood = false; // the crew declared that all is well: always learned, sum at zero
    QVector<RecordId> lots;
};

struct WatchForecast {
    double expected = 0.0; // joules, mean
    double lower = 0.0;    // joules
    double upper = 0.0;
    double relativeSd = 0.0; // of a new cook about it, what is not known included
    double dof = 0.0;
};

enum class WatchFlag { None, More, Less };

struct WatchVerdict {
    RecordId cook = 0;
    RecordId pit = 0;
    QString leftOut; // why it was not judged, in words; then only `cook` and `pit` mean anything
    WatchForecast forecast;
    double excess = 0.0; // actual over expected, less one
    double score = 0.0;
    double up = 0.0;   // after this cook
    double down = 0.0; // of the mirror
    double limit = 0.0;
    WatchFlag flag = WatchFlag::None;
    bool raised = false;   // the flag went up with this cook
    bool heldBack = false; // when it was judged; may have been given back since
};

// How far a pit has moved since its sum was last zero.
struct WatchExcess {
    RecordId since = 0;   // first cook of the climb
    int cooks = 0;        // of the climb
    double percent = 0.0; // mean over those cooks
    double lower = 0.0;   // percent; interval at the level of the settings
    double upper = 0.0;
    double joulesPerCook = 0.0;
};

} // namespace rickyard::domain
