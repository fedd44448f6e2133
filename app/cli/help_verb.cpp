#include "app/cli/text_table.h"
#include "app/cli/verb_table.h"

#include <QCoreApplication>
#include <QDir>

namespace rickyard::app {

namespace {

QString callOf(const Verb &verb)
{
    return verb.operands.isEmpty() ? verb.name
                                   : QString(verb.name + QLatin1Char(' ') + verb.operands);
}

void helpOn(QTextStream &out, const Verb &verb)
{
    out << "rickyard [--yard FILE] " << callOf(verb) << "\n\n" << verb.help << "\n";
    TextTable table;
    for (const VerbOption &o : verb.options)
        table.row({QString(QStringLiteral("  --") + o.name +
                           (o.value.isEmpty() ? QString() : QString(QLatin1Char(' ') + o.value))),
                   o.help});
    if (!verb.options.isEmpty())
        out << "\n" << table.text();
}

} // namespace

int runHelp(CliCall &call)
{
    if (!call.launch.operands.isEmpty()) {
        const Verb *verb = findVerb(call.launch.operands.first());
        if (verb == nullptr) {
            call.err << "There is no verb \"" << call.launch.operands.first() << "\".\n";
            return Usage;
        }
        helpOn(call.out, *verb);
        return Finished;
    }
    call.out << "Rickyard keeps the wood, the fires and the pits of a small crew.\n\n"
                "rickyard [--yard FILE] [--demo]        opens the window\n"
                "rickyard [--yard FILE] VERB ...        answers without one\n\n";
    TextTable table;
    for (const Verb &verb : verbTable())
        table.row({QString(QStringLiteral("  ") + callOf(verb)), verb.help});
    call.out << table.text() << "\nrickyard help VERB shows its options.\n"
             << "Exit codes: 0 done, 1 refused input and nothing changed, 2 usage, 3 the yard "
                "cannot be opened.\n"
             << "Without --yard: " << QDir::toNativeSeparators(call.launch.yardPath) << "\n";
    return Finished;
}

int runVersion(CliCall &call)
{
    call.out << "Rickyard " << QCoreApplication::applicationVersion() << "\n";
    return Finished;
}

} // namespace rickyard::app
