// How a record's values read and sort in lists and forms.
#pragma once

#include "models/domain/answers/field_words.h"

#include <QVariant>

namespace rickyard::items {

using domain::dayText;
using domain::displayText;
using domain::timeText;
using domain::toLocal;
using domain::unitFor;

// What sorts: numbers by size, choices by their order, references by name.
QVariant sortValue(const domain::Books &books, const domain::FieldSpec &field,
                   const domain::Value &value);

} // namespace rickyard::items
