// The starter tasks as tables: one for every pit, one for the trailer, one for the safety kit.
#pragma once

#include "models/domain/records/upkeep.h"

#include <optional>
#include <span>

namespace rickyard::domain {

struct Starter {
    enum Blocks { Nothing, Lighting, Towing };
    // What the lower reading limit is taken from when it is not a number of the table.
    enum LimitFrom { Table, HalfThePlate };

    const char *name;
    const char *target;
    int days = 0;  // 0: no such trigger
    int cooks = 0; // likewise
    double ashLb = 0;
    Occasion occasion = Occasion::None;
    int minutes = 10; // of one person
    int people = 1;
    int coldHours = 0; // before the work
    int cureHours = 0; // before the next fire
    int priority = 5;
    Blocks blocks = Nothing;
    IntervalSource from = IntervalSource::CommonPractice;
    bool daylight = false;
    bool dry = false;
    const char *after = nullptr; // name of the task to be done before it
    ReadingKind reading = ReadingKind::None;
    const char *unit = "";
    std::optional<double> low = std::nullopt;
    std::optional<double> high = std::nullopt;
    LimitFrom lowFrom = Table;
    int points = 1;
    const char *tools = "";
    const char *steps = ""; // one a line
    const char *cautions = "";
    bool ash = false; // the ash caution goes with it
};

std::span<const Starter> starterPitTasks();
std::span<const Starter> starterTrailerTasks();
std::span<const Starter> starterKitTasks();

} // namespace rickyard::domain
