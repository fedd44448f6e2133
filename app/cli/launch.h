// What the program was asked to do: the window, or a verb with its arguments.
#pragma once

#include <QMap>
#include <QString>
#include <QStringList>

#include <optional>

namespace rickyard::app {

struct Launch {
    QString yardPath; // as given, else the platform's data folder (demo.rickyard with --demo)
    bool yardGiven = false;
    bool demo = false;
    QString verb;                   // empty: open the window
    QStringList operands;           // after the verb
    QMap<QString, QString> options; // of the verb: "json" -> "", "as-of" -> "2026-11-30"
    std::optional<QString> mistake; // what cannot be understood

    [[nodiscard]] bool has(const QString &option) const { return options.contains(option); }
};

// `arguments` begin with the program's own name. Options of the window system are passed over.
Launch parseLaunch(const QStringList &arguments);
QString dataFolder();

} // namespace rickyard::app
