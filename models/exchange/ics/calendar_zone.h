// A time zone's rules as an iCalendar component (VTIMEZONE, RFC 5545 section 3.6.5). Inside
// models/exchange/ics only.
#pragma once

#include "models/exchange/ics/ical_handles.h"

#include <QDate>
#include <QTimeZone>

namespace rickyard::exchange {

// Right for every moment from `from` to `to`. Clock changes that keep one rule for the years that
// follow are written as that rule, others day by day. TZID is the IANA name.
ComponentHandle zoneComponent(const QTimeZone &zone, QDate from, QDate to);

} // namespace rickyard::exchange
