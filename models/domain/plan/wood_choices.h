// The engine's figures as days, amounts and records: shared by the wood answer and its what-ifs.
#pragma once

#include "models/domain/plan/reorder.h"

namespace rickyard::domain {

// The same events with the figures of a run.
QVector<WoodRisk> withFigures(QVector<WoodRisk> risks, const StockOutcome &outcome);
QVector<StockPoint> courseOf(const StockOutcome &outcome, QDate today, qsizetype days);
// What was chosen, by the answer's sources, risks and today.
QVector<WoodOrderChoice> choicesOf(const std::vector<OrderChoice> &found, const WoodAnswer &answer,
                                   const Wording &wording);
// Day counted from today; the last lawful one when it is beyond reason.
QDate dayAt(QDate today, double days);

} // namespace rickyard::domain
