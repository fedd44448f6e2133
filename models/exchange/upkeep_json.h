// The report of the upkeep verb: the upkeep answer, what blocks lighting and towing, and the ash.
#pragma once

#include "models/domain/answers/answers.h"

#include <QJsonObject>

namespace rickyard::exchange {

QJsonObject upkeepReport(const domain::Answers &answers, const domain::Books &books);

} // namespace rickyard::exchange
