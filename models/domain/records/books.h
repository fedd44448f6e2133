// The books of a yard: every record, in memory. A plain value; copies share their data until one
// is changed, so a worker can compute on a snapshot while the yard goes on.
#pragma once

#include "models/domain/records/fire.h"
#include "models/domain/records/plan.h"
#include "models/domain/records/schema.h"
#include "models/domain/records/upkeep.h"
#include "models/domain/records/weather.h"
#include "models/domain/records/wood.h"
#include "models/domain/records/yard.h"

namespace rickyard::domain {

template <class R>
using Shelf = QMap<RecordId, R>;

struct Books {
    Shelf<Yard> yards; // exactly one, id 1
    Shelf<Species> species;
    Shelf<Supplier> suppliers;
    Shelf<Offer> offers;
    Shelf<WoodOrder> orders;
    Shelf<Event> events;
    Shelf<Lot> lots;
    Shelf<MoistureReading> readings;
    Shelf<OvenTest> ovenTests;
    Shelf<Pit> pits;
    Shelf<PlannedCook> plannedCooks;
    Shelf<Cook> cooks;
    Shelf<Feed> feeds;
    Shelf<Movement> movements;
    Shelf<CookTemperature> temperatures;
    Shelf<CookNote> notes;
    Shelf<CookChange> cookChanges;
    Shelf<Trace> traces;
    Shelf<Weather> weather;
    Shelf<UpkeepTask> tasks;
    Shelf<Visit> visits;
    Shelf<CheckReading> checkReadings;
    Shelf<Finding> findings;
    Shelf<Photo> photos;
    Shelf<AshLoad> ashLoads;
    Shelf<Override> overrides;
    Shelf<KnownGood> knownGood;
    Shelf<CrewTime> crewTimes;
    Shelf<BusyTime> busyTimes;
    Shelf<ImportProfile> importProfiles;

    [[nodiscard]] Yard yard() const { return yards.value(1); }
};

// R -> its table. Row toRow(const Lot &) and Lot fromRow<Lot>(const Row &).
template <class R>
const Binder<R> &binderOf();
template <class R>
Row toRow(const R &record)
{
    return binderOf<R>().toRow(record);
}
template <class R>
R fromRow(const Row &row)
{
    return binderOf<R>().fromRow(row);
}

// The same without the C++ type.
bool contains(const Books &books, TableId table, RecordId id);
std::optional<Row> rowOf(const Books &books, TableId table, RecordId id);
// One field without building the whole row; missing when there is no such record.
Value valueAt(const Books &books, TableId table, RecordId id, int field);
QVector<RecordId> idsOf(const Books &books, TableId table);
qsizetype countOf(const Books &books, TableId table);
RecordId highestId(const Books &books, TableId table);
void put(Books &books, const Row &row);
void drop(Books &books, TableId table, RecordId id);
// What a person calls a record: its title field, or its kind and time.
QString titleOf(const Books &books, TableId table, RecordId id);

// Records of `child` whose reference field points at the given record.
struct Dependant {
    TableId table;
    RecordId id;
    QString field;
    OnDelete onDelete;
};
QVector<Dependant> dependantsOf(const Books &books, TableId table, RecordId id);

} // namespace rickyard::domain
