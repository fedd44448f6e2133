// The rules of the house as functions from a file's path and text to what is wrong with it.
#pragma once

#include <QString>
#include <QStringList>
#include <QVector>

namespace rickyard::test {

// Each entry of the result reads "line: what is wrong". `path` is relative to the root.
using Check = QStringList (*)(const QString &path, const QString &text);

struct Rule {
    const char *name;
    Check check;
};

// The layer a path belongs to: domain, storage, exchange, workspace, commands, items, views, app.
// Empty for a file outside the layers.
QString layerOf(const QString &path);

const QVector<Rule> &sourceRules(); // each .h and .cpp of the layers
QStringList machinePaths(const QString &path, const QString &text); // every text file
QStringList ownPaths(const QString &path, const QString &text);     // each .h and .cpp, with tests
QStringList strangersAtTheTop(const QStringList &names);            // the root folder's entries

} // namespace rickyard::test
