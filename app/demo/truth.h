// What a cook really takes in this story: a heat balance that the program's own methods do not
// know, so that they have something to find.
//
// Shell loss over the pit's outer steel by still air, radiation and wind; warming the steel;
// heating the food and drying it; lighting; all over one efficiency, since most of a fire's heat
// goes up the stack. Coefficients are textbook-sized guesses (from memory) and invented like
// everything here.
#pragma once

#include "app/demo/air.h"
#include "models/domain/records/fire.h"
#include "models/domain/records/plan.h"

#include <QVector>

namespace rickyard::app::demo {

// A pit's temperature every five minutes from lighting to fire out.
constexpr qint64 kStep = 300;
using Course = QVector<double>; // °C

Course courseOf(Dice &dice, const domain::Cook &cook, const Air &air);

// Net heat of the wood, in joules, before the scatter of fires and splits.
double heatNeeded(const domain::Pit &pit, const domain::Cook &cook, const Course &course,
                  const Air &air);

// The same for a cook that has not been lit: its target held all along, in the season's usual air.
double heatForeseen(const domain::Pit &pit, const domain::PlannedCook &plan);

} // namespace rickyard::app::demo
