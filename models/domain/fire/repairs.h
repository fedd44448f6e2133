// Every mending of a pit with what it did to the fuel (repair_effect.h), gathered from the books.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/fire/repair_effect.h"

namespace rickyard::domain {

struct Repair {
    RecordId finding = 0;
    RecordId pit = 0;
    Instant at;
    RepairEffect effect;
    int before = 0; // cooks compared
    int after = 0;
    QString sentence;
};

// Newest first. Before: the cooks of the climb that ended in the mending, else the last six. After:
// all until the next mending of the pit. Every cook is laid against what the watch expects of it by
// all that is known today; the fault to be cured is what the pit burned too much before, and 8 % at
// least.
QVector<Repair> repairsOf(const Books &books, const FuelAnswer &fuel, Instant now,
                          const Wording &wording);

} // namespace rickyard::domain
