// What makes a record acceptable: field by field from its description, then against the others.
// Messages are for a person and name the field.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

namespace rickyard::domain {

// Required, range, known choice, existing reference. Pure field rules.
Problems checkFields(const Books &books, const Row &row);
// Rules between records: a cook that ends before it starts, overlapping cooks on one pit, feeding
// from a lot that did not exist yet, moisture above the species' maximum, ...
Problems checkAgainstBooks(const Books &books, const Row &row);
inline Problems check(const Books &books, const Row &row)
{
    const Problems fields = checkFields(books, row);
    return fields.isEmpty() ? checkAgainstBooks(books, row) : fields;
}

// The highest moisture a species can hold: all pores full of water.
// Wood Handbook (FPL-GTR-190) eq. 4-3, from memory: 100 (1.54 - Gb) / (1.54 Gb) per cent.
Moisture maximumMoisture(Plain basicGravity);

} // namespace rickyard::domain
