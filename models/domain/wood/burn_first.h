// Which rick to burn first: the oldest dry lot that no later cook needs more.
#pragma once

#include "models/domain/plan/reorder.h"

namespace rickyard::domain {

struct BurnChoice {
    RecordId lot = 0;
    int rank = 0;         // 1 first; 0: not to be burned now
    Heat spokenFor;       // of its heat, what later cooks that ask for its species may need
    Heat free;            // the rest
    RecordId keptFor = 0; // the first planned cook it is kept for, 0 when for none
    QString reason;       // in words
};

// Every lot with wood left, in the order to burn them; what must not be burned now comes last.
// `uses` are the cooks ahead by lighting time; the first of them is the one to burn for. A lot is
// kept back when later cooks that prefer its species may take (by their upper bound) so much of it
// that less than an evening's start, a twentieth of its heat, is left free.
QVector<BurnChoice> burnFirst(const Books &books, const Stock &stock,
                              const QVector<PlannedUse> &uses);

} // namespace rickyard::domain
