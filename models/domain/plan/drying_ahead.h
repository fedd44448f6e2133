// When wood will be dry, as a spread of days from today: of a lot by its forecast, of a load still
// to come by what the same method says of such wood.
#pragma once

#include "models/domain/plan/spread.h"
#include "models/domain/wood/seasoning.h"

#include <map>
#include <memory>
#include <tuple>

namespace rickyard::domain {

// Day from today on which the lot is dry; infinite beyond the forecast's horizon. A chance that
// falls again, as rain comes, counts at its highest so far.
Spread readyDays(const SeasoningForecast &forecast);

class DryingAhead
{
public:
    DryingAhead(const Books &books, Instant now) : m_books(books), m_now(now) {}

    // Days from its arrival, so many days from now, until wood of that moisture is dry; under a top
    // cover, in splits of the usual size.
    const Spread &daysOf(RecordId species, Moisture moisture, int arrival);

private:
    const Books &m_books;
    Instant m_now;
    std::unique_ptr<SeasoningAir> m_air; // prepared when first asked for
    std::map<std::tuple<RecordId, qint64, int>, Spread> m_known;
};

} // namespace rickyard::domain
