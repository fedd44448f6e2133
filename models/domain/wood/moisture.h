// What is known of a lot's moisture: the latest session with the meter, or oven-dry tests.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

struct MoistureSample {
    Instant time;
    PieceMoistures pieces; // dry basis, at least one
    bool ovenTest = false; // weighed, not metered
    bool unreliable = false;
    bool indicative = false; // its mean lies above fibre saturation, where a pin meter only hints
    QString note;            // in words why it is unreliable or indicative; empty otherwise
    QString correction;      // in words what was corrected (domain/wood/meter.h); empty otherwise

    [[nodiscard]] Moisture mean() const;
    // Half of the 95 % interval of the mean by Student t; missing with fewer than two pieces.
    [[nodiscard]] std::optional<Moisture> halfWidth() const;
};

// All sessions of a lot by time, corrected as the yard's settings say; at one time the oven test
// stands last.
QVector<MoistureSample> moistureSessions(const Books &books, RecordId lot);

// A question to ask before a reading is kept: it is possible, but odd. More than 8 points from the
// session of the week before (drying wood loses a point or two a week; common practice, no source).
constexpr double kOddJump = 8;
std::optional<QString> oddReading(const Books &books, const MoistureReading &reading);

// The latest session at or before `time`. Oven tests within a day before the latest one belong to
// the same session; of a reading and a test at the same time the test, which weighs, counts.
std::optional<MoistureSample> latestMoisture(const Books &books, RecordId lot, Instant time);
// The first session after `time`, for wood that was read only after it came.
std::optional<MoistureSample> firstMoistureAfter(const Books &books, RecordId lot, Instant time);

// "26 % dry basis (21 % wet basis)": a basis is never left to be guessed.
QString bothBases(Moisture moisture, const Wording &wording);

// Water over oven-dry mass of two weighings; missing when they make no sense.
std::optional<Moisture> moistureOf(const OvenTest &test);

} // namespace rickyard::domain
