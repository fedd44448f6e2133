// The demo yard while it is being written: records with their ids, and what the story needs beside
// them. Each part of the story has its own file and adds its records here.
#pragma once

#include "app/demo/air.h"
#include "models/domain/records/books.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::app::demo {

using domain::Duration;
using domain::Heat;
using domain::Instant;
using domain::Mass;
using domain::Moisture;
using domain::RecordId;

// Two years, in days.
constexpr int kDays = 730;

// The crew's pits, small to large.
constexpr RecordId kSmallPit = 1;
constexpr RecordId kMiddlePit = 2; // its gasket is failing
constexpr RecordId kLargePit = 3;

// The middle pit's last cooks, and what the failing gasket adds to each.
constexpr int kFailingCooks = 6;
constexpr double kFailingLeast = 1.22;
constexpr double kFailingMost = 1.28;

// What a cook really asks of the woodpile, before anybody weighs a split.
struct Need {
    RecordId cook = 0;
    double joules = 0; // net heat of the wood
};

struct Draft {
    Draft(quint64 seed, Instant end)
        : now(end), begin(Instant::ofSeconds((end.seconds() - kDays * 86400LL) / 3600 * 3600)),
          dice(seed), air(dice.fork(1), begin, end)
    {
    }

    [[nodiscard]] QDate today() const { return local.dateOf(now); }
    [[nodiscard]] Instant at(QDate day, double hour) const
    {
        return local.at(day, Duration::ofBase(std::llround(hour * 60) * 60));
    }

    Instant now;
    Instant begin;
    Dice dice;
    Air air;
    domain::LocalTime local{QStringLiteral("America/Chicago")};
    domain::Books books; // without the ledger entries that the verbs work out
    QVector<Need> needs; // by lighting time
};

// A record's id is its place on the shelf.
template <class R>
RecordId shelve(domain::Shelf<R> &shelf, R record)
{
    record.id = shelf.isEmpty() ? 1 : shelf.lastKey() + 1;
    shelf.insert(record.id, record);
    return record.id;
}

void addCast(Draft &draft);     // yard, pits, suppliers, species, crew hours
void addCalendar(Draft &draft); // events, their planned cooks, and the cooks so far
void addFires(Draft &draft);    // temperatures, notes and needs of every cook so far
void addWood(Draft &draft);     // orders, lots, readings, feeds and true-ups
void addOffers(Draft &draft);   // what the suppliers ask just now
void addUpkeep(Draft &draft);   // tasks, visits, findings, the known-good period
void addCare(Draft &draft);     // values read, ash, visits agreed on

} // namespace rickyard::app::demo
