// The verbs of the command line: one table for parsing, help and dispatch.
#pragma once

#include "app/cli/launch.h"

#include <QTextStream>
#include <QVector>

namespace rickyard::app {

enum ExitCode {
    Finished = 0,
    RefusedInput = 1, // nothing changed
    Usage = 2,
    CannotOpen = 3,
};

struct VerbOption {
    QString name;  // without dashes
    QString value; // what follows it; empty: nothing
    QString help;
};

// What a verb works with.
struct CliCall {
    const Launch &launch;
    QTextStream &out;
    QTextStream &err;
};

struct Verb {
    QString name;
    QString operands; // as shown in the help
    int fewest = 0;   // operands
    int most = 0;
    QString help; // one line
    QVector<VerbOption> options;
    int (*run)(CliCall &call);
};

const QVector<Verb> &verbTable();
const Verb *findVerb(const QString &name); // null when there is none
const VerbOption *findOption(const QString &verb, const QString &option);

// The verbs, by file.
int runAnswers(CliCall &call); // report_verbs.cpp
int runFuel(CliCall &call);
int runStock(CliCall &call);
int runMoisture(CliCall &call);
int runUpkeep(CliCall &call);
int runReorder(CliCall &call); // reorder_verb.cpp
int runImport(CliCall &call);  // import_verb.cpp
int runExport(CliCall &call);  // export_verb.cpp
int runBackup(CliCall &call);  // file_verbs.cpp
int runRestore(CliCall &call);
int runCheck(CliCall &call);
int runDemo(CliCall &call);
int runHelp(CliCall &call); // help_verb.cpp
int runVersion(CliCall &call);

} // namespace rickyard::app
