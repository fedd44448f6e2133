// The log told to the fuel watch from the beginning: cooks in the order in which their fires went
// out, with the mendings and the looks that found nothing between them. Every verdict rests on what
// was known when that fire went out.
//
// The beliefs of the watch (how far pits differ, how far the terms of the balance may be off) are
// looked at again when the log holds 30 cooks, 60, 120 and so on, from those cooks alone
// (watch_tuning.h). When they move, the watch learns its log anew under them; verdicts already
// given stand.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/fire/watch.h"

namespace rickyard::domain {

enum class PitTurnKind { Mended, FoundSound };
struct PitTurn {
    PitTurnKind kind = PitTurnKind::Mended;
    RecordId pit = 0;
    Instant at;
    RecordId finding = 0;
};

// A mending is a finding in state mended whose visit is done: it counts from the visit's end. A
// look that found nothing counts from when it was written down. By time, up to `now`.
QVector<PitTurn> pitTurns(const Books &books, Instant now);

WatchSettings watchSettingsOf(const Books &books);
// What the watch is shown of a cook.
WatchCook watchCookOf(const CookFuel &cook, const WatchSettings &settings);

struct FuelReplay {
    std::shared_ptr<const FuelWatch> watch;
    QVector<PitFuel> pits; // every pit of the books
};
// Fills in expected, lower, upper, excess and verdict of `cooks`.
FuelReplay replayFuel(const Books &books, QVector<CookFuel> &cooks, Instant now);

} // namespace rickyard::domain
