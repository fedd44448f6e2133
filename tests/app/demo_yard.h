// A demo yard file for tests, made once a seed and kept for the run.
#pragma once

#include "app/demo/demo.h"

#include <QDateTime>
#include <QTemporaryDir>
#include <QTest>

namespace rickyard::test {

// A Wednesday morning in a winter with a past clock change on either side.
inline domain::Instant demoNow()
{
    return domain::Instant::ofSeconds(
        QDateTime(QDate(2026, 11, 25), QTime(14, 20), Qt::UTC).toSecsSinceEpoch());
}

// Opens in memory what makeDemoFile wrote.
inline domain::Books demoBooks(const QTemporaryDir &folder, quint64 seed, domain::Instant now)
{
    const QString path =
        folder.filePath(QStringLiteral("%1-%2.rickyard").arg(seed).arg(now.seconds()));
    const auto made = app::makeDemoFile(path, seed, now);
    if (!made)
        qWarning("%s", qPrintable(made.message()));
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc(),
                                           storage::OpenMode::ReadOnly);
    return yard ? yard.value()->books() : domain::Books();
}

} // namespace rickyard::test
