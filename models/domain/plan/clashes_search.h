// The search for clashes, shared by its parts: what burns, what the crew is away for, and how they
// are named. See clashes.h.
#pragma once

#include "models/domain/plan/clashes.h"
#include "models/domain/upkeep/burns.h"

namespace rickyard::domain {

struct Trip {
    const Event *event;
    Instant from; // the crew leaves
    Instant until;
};

// What is still to come at `now`.
struct ClashGround {
    ClashGround(const Books &books, Instant now, const LocalTime &local,
                const UpkeepAnswer &upkeep);

    const Books &books;
    Instant now;
    const LocalTime &local;
    const UpkeepAnswer &upkeep;
    QVector<Burn> burns;
    QVector<Trip> trips;

    [[nodiscard]] static Link linkOf(const Burn &burn)
    {
        return burn.planned != 0 && burn.cook == 0 ? Link{TableId::PlannedCook, burn.planned}
                                                   : Link{TableId::Cook, burn.cook};
    }
    [[nodiscard]] RecordId eventOf(const Burn &burn) const;
    // "the cook for Mill Field Supper", "the cook lit Sat 5 Dec, 03:00"
    [[nodiscard]] QString cookText(const Burn &burn) const;
    [[nodiscard]] QString pitText(const Burn &burn) const
    {
        return books.pits.value(burn.pit).name;
    }
};

// Upkeep against fires and tows.
void findUpkeepClashes(const ClashGround &ground, QVector<Clash> &found);
// The crew's hours, people and other engagements.
void findCrewClashes(const ClashGround &ground, QVector<Clash> &found);

} // namespace rickyard::domain
