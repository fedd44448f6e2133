#include "app/cli/verb_table.h"

namespace rickyard::app {

namespace {

QString s(const char *text)
{
    return QString::fromUtf8(text);
}

VerbOption asOf()
{
    return {s("as-of"), s("DATE"), s("the end of that day, or a time such as 2026-11-30T18:00")};
}
VerbOption json()
{
    return {s("json"), {}, s("as JSON")};
}

QVector<Verb> makeTable()
{
    return {
        {s("answers"),
         {},
         0,
         0,
         s("the three answers with their reasons"),
         {json(), asOf()},
         runAnswers},
        {s("fuel"),
         {},
         0,
         0,
         s("every cook: burned, expected, interval, excess"),
         {{s("csv"), {}, s("as CSV")}, json(), asOf()},
         runFuel},
        {s("stock"), {}, 0, 0, s("wood on hand, by lot"), {asOf()}, runStock},
        {s("moisture"),
         {},
         0,
         0,
         s("the latest moisture of each lot, and when it will be dry"),
         {json(), asOf()},
         runMoisture},
        {s("reorder"),
         {},
         0,
         0,
         s("what to order, how much, from whom and by which day"),
         {{s("accept"), s("RISK"),
           s("the chance of running short that is accepted, in per cent; else the yard's")},
          json(),
          asOf()},
         runReorder},
        {s("upkeep"),
         {},
         0,
         0,
         s("what is overdue, what falls due, and when it can be done"),
         {json(), asOf()},
         runUpkeep},
        {s("import"),
         s("KIND FILE"),
         2,
         2,
         s("read a file into the yard: weather, a probe log, busy times of a calendar, a table, or "
           "all (a "
           "folder)"),
         {{s("format"), s("FORMAT"),
           s("weather: metar, isd-lite, lcd, epw or csv, when it is not recognised")},
          {s("about"), s("DATE"), s("weather: when METAR reports without a date are from")},
          {s("real-year"), {}, s("weather: an EPW file is a year as it was, not a typical one")},
          {s("cook"), s("COOK"), s("trace: the log of a probe, for this cook (id or name)")},
          {s("probe"), s("NAME[=COLUMN],..."),
           s("trace: the probes; without it every column of numbers")},
          {s("time-style"), s("STYLE"), s("trace: how times are written, as M/d/yyyy h:mm:ss AP")},
          {s("unit"), s("UNIT"), s("trace: degF or degC, when the file does not say")},
          {s("start"), s("TIME"), s("trace: when a log without dates began")},
          {s("profile"), s("FILE.json"), s("weather: how the columns are to be read")},
          {s("place"), s("NAME"), s("weather: where it was measured")},
          {s("zone"), s("ZONE"),
           s("weather, trace: time zone of times without one, as America/Chicago")},
          {s("source"), s("NAME"),
           s("calendar: whose it is; what came under that name before is replaced")},
          {s("leave-out"),
           {},
           s("calendar: leave out appointments that cannot be read, and list them")},
          asOf(),
          {s("strict"),
           {},
           s("weather without a profile: refuse the file for one impossible value, instead of "
             "listing it and counting it as missing")}},
         runImport},
        {s("export"),
         s("KIND [FILE]"),
         1,
         2,
         s("write a table, fuel, calendar, or all (to a folder); without FILE to the terminal"),
         {{s("overwrite"), {}, s("replace files that are there")}, asOf()},
         runExport},
        {s("backup"),
         s("[FILE]"),
         0,
         1,
         s("a checked copy, beside the yard or in FILE"),
         {},
         runBackup},
        {s("restore"),
         s("FILE"),
         1,
         1,
         s("put a backup in the yard's place; the present yard is kept beside it"),
         {},
         runRestore},
        {s("check"), {}, 0, 0, s("read the whole file and check every record"), {}, runCheck},
        {s("demo"),
         s("FILE"),
         1,
         1,
         s("write a new yard of invented data"),
         {{s("seed"), s("N"), s("another story of the same kind")}, asOf()},
         runDemo},
        {s("pictures"),
         s("FOLDER"),
         1,
         1,
         s("pictures of every page of a demo yard (needs a window system, if only offscreen)"),
         {},
         nullptr},
        {s("help"), s("[VERB]"), 0, 1, s("this page, or one verb's options"), {}, runHelp},
        {s("version"), {}, 0, 0, s("the program's version"), {}, runVersion},
    };
}

} // namespace

const QVector<Verb> &verbTable()
{
    static const QVector<Verb> table = makeTable();
    return table;
}

const Verb *findVerb(const QString &name)
{
    for (const Verb &verb : verbTable())
        if (verb.name == name)
            return &verb;
    return nullptr;
}

const VerbOption *findOption(const QString &verbName, const QString &option)
{
    const Verb *verb = findVerb(verbName);
    if (verb == nullptr)
        return nullptr;
    for (const VerbOption &o : verb->options)
        if (o.name == option)
            return &o;
    return nullptr;
}

} // namespace rickyard::app
