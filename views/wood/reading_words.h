// What a reading says so far: mean on both bases, what the corrections make of it, spread, and how
// many more pieces it would take.
#pragma once

#include "models/domain/records/books.h"

#include <QString>

namespace rickyard::views {

struct ReadingWords {
    QString mean;
    QString corrected; // empty when no correction applies
    QString spread;
    QString indicative; // empty when every piece lies under fibre saturation
};
// The books hold the lot that was read.
ReadingWords readingWords(const domain::Books &books, const domain::MoistureReading &reading);

// Above fibre saturation a pin meter only hints.
bool isIndicative(domain::Moisture piece);
// Why a piece cannot be: more water than the lot's wood can hold. Empty when it can.
QString overMaximum(const domain::Books &books, domain::RecordId lot, domain::Moisture piece);

} // namespace rickyard::views
