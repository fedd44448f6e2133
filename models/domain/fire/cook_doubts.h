// How much less a cook says when something about it is known poorly. Each is a relative standard
// deviation of its use; squared, they add up (CookFuel::doubt). Working figures, no source: they
// only share out trust between cooks, the scatter itself is learned from the log.
#pragma once

#include "models/domain/records/books.h"

#include <QHash>

namespace rickyard::domain {

constexpr double kUnknownMoisture = 0.06; // of wood whose water is not known
constexpr double kAssumedWeight = 0.12;   // of wood that was neither weighed nor read
constexpr double kUnmeasuredPit = 0.12;   // the pit taken to have run at its target
constexpr double kTypedOutside = 0.04;    // one figure for the whole cook
constexpr double kTypedWind = 0.04;
constexpr double kUnknownWind = 0.10;
constexpr double kInterrupted = 0.15;
constexpr double kBrokenOff = 0.4; // of the usual difference: below it the fire was as good as out

inline void addDoubt(double &doubt, double relativeSd)
{
    doubt += relativeSd * relativeSd;
}

// Share of an ordinary cook that a doubtful one counts as, when an ordinary cook scatters by
// `scatter`.
inline double trustOf(double doubt, double scatter)
{
    return scatter * scatter / (scatter * scatter + doubt);
}

// Feeds that follow one of the same lot and as many splits within five seconds: two taps for one
// feed, or two feeds; nobody can tell afterwards.
int twinFeeds(QVector<const Feed *> feeds);

} // namespace rickyard::domain
