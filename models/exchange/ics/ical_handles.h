// What libical hands out, freed when it goes out of scope, and its times. Inside
// models/exchange/ics only.
#pragma once

#include <libical/ical.h>

#include <QDateTime>

#include <memory>

namespace rickyard::exchange {

struct FreeComponent {
    void operator()(icalcomponent *component) const { icalcomponent_free(component); }
};
struct FreeIterator {
    void operator()(icalrecur_iterator *iterator) const { icalrecur_iterator_free(iterator); }
};
struct FreeZone {
    void operator()(icaltimezone *zone) const { icaltimezone_free(zone, 1); }
};
struct FreeText {
    void operator()(char *text) const { icalmemory_free_buffer(text); }
};

using ComponentHandle = std::unique_ptr<icalcomponent, FreeComponent>;
using IteratorHandle = std::unique_ptr<icalrecur_iterator, FreeIterator>;
using ZoneHandle = std::unique_ptr<icaltimezone, FreeZone>;
using TextHandle = std::unique_ptr<char, FreeText>;

// The date and time as they stand, without a zone.
inline icaltimetype digitsOf(const QDateTime &time)
{
    icaltimetype digits = icaltime_null_time();
    digits.year = time.date().year();
    digits.month = time.date().month();
    digits.day = time.date().day();
    digits.hour = time.time().hour();
    digits.minute = time.time().minute();
    digits.second = time.time().second();
    return digits;
}
// The digits as if they were UTC; a leap second is the one before it.
inline QDateTime timeOf(const icaltimetype &digits)
{
    return {QDate(digits.year, digits.month, digits.day),
            QTime(digits.hour, digits.minute, digits.second > 59 ? 59 : digits.second), Qt::UTC};
}

} // namespace rickyard::exchange
