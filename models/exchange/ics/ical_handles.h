// What libical hands out, freed when it goes out of scope. Inside models/exchange/ics only.
#pragma once

#include <libical/ical.h>

#include <QByteArray>

#include <memory>

namespace rickyard::exchange {

struct FreeComponent {
    void operator()(icalcomponent *component) const { icalcomponent_free(component); }
};
struct FreeIterator {
    void operator()(icalrecur_iterator *iterator) const { icalrecur_iterator_free(iterator); }
};
struct FreeParser {
    void operator()(icalparser *parser) const { icalparser_free(parser); }
};
struct FreeZone {
    void operator()(icaltimezone *zone) const { icaltimezone_free(zone, 1); }
};
struct FreeText {
    void operator()(char *text) const { icalmemory_free_buffer(text); }
};

using ComponentHandle = std::unique_ptr<icalcomponent, FreeComponent>;
using IteratorHandle = std::unique_ptr<icalrecur_iterator, FreeIterator>;
using ParserHandle = std::unique_ptr<icalparser, FreeParser>;
using ZoneHandle = std::unique_ptr<icaltimezone, FreeZone>;
using TextHandle = std::unique_ptr<char, FreeText>;

} // namespace rickyard::exchange
