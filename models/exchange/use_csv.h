// The wood use of past cooks against hours, air and wind as CSV: what the charts of the log draw.
#pragma once

#include "models/domain/fire/use_line.h"
#include "models/domain/records/books.h"

#include <QByteArray>

namespace rickyard::exchange {

// One line a finished cook with wood, in the order given: use, use an hour, and what its pit's own
// line has there with its 90 % interval; empty where a figure is not known or no line is drawn.
// The columns of the line are in slb against hours, else in slb/h, and name what it is drawn
// against.
QByteArray useCsv(const QVector<domain::CookFuel> &cooks, const QVector<domain::UseLine> &lines,
                  domain::UseAgainst against, const domain::Books &books);

} // namespace rickyard::exchange
