// The supply side of the question: lots, open orders and offers. See order_question.h.
#pragma once

#include "models/domain/plan/drying_ahead.h"
#include "models/domain/plan/order_question.h"

namespace rickyard::domain {

// In burn-first order; lots on hold or never burned stand there and take room.
void addLots(BookQuestion &asked, const QuestionGrounds &grounds);
// Orders sent or promised, each with its supplier's own lateness, shortness and wetness.
void addDeliveries(BookQuestion &asked, const QuestionGrounds &grounds, DryingAhead &drying);
// The sources (already in `asked`) as offers.
void addOffers(BookQuestion &asked, const QuestionGrounds &grounds, DryingAhead &drying);

} // namespace rickyard::domain
