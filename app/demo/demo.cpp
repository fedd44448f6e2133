#include "app/demo/demo.h"

#include "app/demo/draft.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QDir>
#include <QFileInfo>

namespace rickyard::app {

using commands::Done;
using commands::Outcome;
using commands::Row;
using commands::TableId;
using domain::Books;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Demo", text);
}

void take(QVector<Row> &rows, const Books &books, std::initializer_list<TableId> tables)
{
    for (TableId table : tables)
        for (domain::RecordId id : domain::idsOf(books, table)) {
            Row row = *domain::rowOf(books, table, id);
            // Ledger entries of lots and feeds are worked out on the way and take ids as they come.
            if (table == TableId::Movement)
                row.id = 0;
            rows << row;
        }
}

bool hasRecords(const Books &books)
{
    for (TableId table : domain::tablesInOrder())
        if (table != TableId::Yard && domain::countOf(books, table) > 0)
            return true;
    return false;
}

void removeFile(const QString &path)
{
    for (const char *suffix : {"", "-wal", "-shm", ".lock"})
        QFile::remove(QString(path + QLatin1String(suffix)));
}

} // namespace

Outcome<Done> fillDemo(commands::Verbs &verbs, quint64 seed, commands::Instant now)
{
    if (hasRecords(verbs.books()))
        return Outcome<Done>::failed(
            tr("This yard has records already. The demo goes into a new file."));
    demo::Draft draft(seed, now);
    demo::addCast(draft);
    demo::addCalendar(draft);
    demo::addFires(draft);
    demo::addWood(draft);
    demo::addOffers(draft);
    demo::addUpkeep(draft);
    demo::addCare(draft);
    for (const domain::Weather &record : draft.air.records(QStringLiteral("Pretend Creek")))
        draft.books.weather.insert(record.id, record);

    const auto step = [&](const QString &name, std::initializer_list<TableId> tables) {
        QVector<Row> rows;
        take(rows, draft.books, tables);
        const auto done = verbs.putAll(rows, name);
        return done ? Outcome<Done>(Done{}) : Outcome<Done>(done.problems());
    };
    Outcome<Done> done =
        step(tr("demo: wood and pits"),
             {TableId::Yard, TableId::Species, TableId::Supplier, TableId::Offer,
              TableId::WoodOrder, TableId::Lot, TableId::MoistureReading, TableId::Pit,
              TableId::CrewTime, TableId::Event, TableId::PlannedCook});
    if (done)
        done =
            step(tr("demo: cooks"), {TableId::Cook, TableId::Feed, TableId::Movement,
                                     TableId::CookTemperature, TableId::CookNote, TableId::Trace});
    if (done)
        done = step(tr("demo: weather"), {TableId::Weather});
    if (done)
        done = step(tr("demo: upkeep"), {TableId::UpkeepTask, TableId::Visit, TableId::CheckReading,
                                         TableId::Finding, TableId::AshLoad, TableId::KnownGood});
    return done;
}

Outcome<Done> makeDemoFile(const QString &path, quint64 seed, commands::Instant now)
{
    if (QFileInfo::exists(path))
        return Outcome<Done>::failed(
            tr("%1 exists already. The demo goes into a new file: choose another name.")
                .arg(QDir::toNativeSeparators(path)));
    Outcome<Done> done = Done{};
    {
        auto workspace =
            workspace::Workspace::open(path, QDateTime::fromSecsSinceEpoch(now.seconds(), Qt::UTC));
        if (!workspace)
            return Outcome<Done>(workspace.problems());
        commands::Verbs verbs(*workspace.value(), [now] { return now; });
        done = fillDemo(verbs, seed, now);
    }
    if (!done)
        removeFile(path);
    return done;
}

} // namespace rickyard::app
