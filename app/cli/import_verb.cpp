#include "app/cli/calendar_kind.h"
#include "app/cli/import_plan.h"
#include "app/cli/trace_plan.h"
#include "app/cli/yard_access.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace rickyard::app {

namespace {

std::optional<QByteArray> contentOf(CliCall &call, const QString &path)
{
    QFile file(path);
    if (QFileInfo(path).isDir() || !file.open(QIODevice::ReadOnly)) {
        call.err << QDir::toNativeSeparators(path) << " cannot be read: "
                 << (QFileInfo(path).isDir() ? QStringLiteral("it is a folder")
                                             : file.errorString())
                 << "\n";
        return std::nullopt;
    }
    return file.readAll();
}

// Every CSV file of a folder that is named after a table.
std::optional<QVector<exchange::NamedFile>> filesOf(CliCall &call, const QString &path)
{
    const QDir folder(path);
    QVector<exchange::NamedFile> files;
    if (folder.exists())
        for (domain::TableId table : domain::tablesInOrder()) {
            const QString name = QString(domain::specOf(table).key + QStringLiteral(".csv"));
            if (!folder.exists(name))
                continue;
            const auto bytes = contentOf(call, folder.filePath(name));
            if (!bytes)
                return std::nullopt;
            files << exchange::NamedFile{name, *bytes};
        }
    if (files.isEmpty()) {
        call.err << QDir::toNativeSeparators(path)
                 << " is not a folder with exported tables such as lot.csv.\n";
        return std::nullopt;
    }
    return files;
}

bool readProfile(CliCall &call, WeatherRequest &request)
{
    if (!call.launch.has(QStringLiteral("profile")))
        return true;
    const QString path = call.launch.options.value(QStringLiteral("profile"));
    const auto bytes = contentOf(call, path);
    if (!bytes)
        return false;
    const auto mapping = exchange::mappingFromText(QString::fromUtf8(*bytes));
    if (!mapping) {
        for (const domain::Problem &problem : mapping.problems())
            call.err << QDir::toNativeSeparators(path) << ": " << problem.message << "\n";
        return false;
    }
    request.profile = mapping.value();
    return true;
}

bool readFormat(CliCall &call, WeatherRequest &request, const QString &yardZone)
{
    const QString key = call.launch.options.value(QStringLiteral("format"));
    if (call.launch.has(QStringLiteral("format"))) {
        request.format = exchange::weatherFormatFromKey(key);
        if (!request.format) {
            call.err << "There is no weather format \"" << key
                     << "\". Formats: " << exchange::weatherFormatKeys().join(QStringLiteral(", "))
                     << ".\n";
            return false;
        }
    }
    request.realYear = call.launch.has(QStringLiteral("real-year"));
    if (!call.launch.has(QStringLiteral("about")))
        return true;
    const QString text = call.launch.options.value(QStringLiteral("about"));
    request.about = readMoment(text, yardZone);
    if (!request.about)
        call.err << "--about " << text << " is not a day or time. Write it as 2026-11-30 or "
                 << "2026-11-30T18:00Z.\n";
    return request.about.has_value();
}

std::optional<ImportPlan> planForTrace(CliCall &call, const domain::Books &books)
{
    const QString path = call.launch.operands.at(1);
    QFile file(path);
    if (QFileInfo(path).isDir() || !file.open(QIODevice::ReadOnly)) {
        call.err << QDir::toNativeSeparators(path) << " cannot be read: " << file.errorString()
                 << "\n";
        return std::nullopt;
    }
    const auto option = [&call](const char *name) {
        return call.launch.options.value(QLatin1String(name));
    };
    const TraceRequest request{option("cook"), option("probe"), option("time-style"),
                               option("unit"), option("start"), option("zone")};
    return planTrace(books, file, QFileInfo(path).fileName(), request);
}

std::optional<ImportPlan> planFor(CliCall &call, const domain::Books &books)
{
    const QString kind = call.launch.operands.at(0);
    const QString path = call.launch.operands.at(1);
    const QString name = QFileInfo(path).fileName();
    if (kind == QLatin1String("all")) {
        const auto files = filesOf(call, path);
        return files ? std::optional(planBooks(books, *files)) : std::nullopt;
    }
    const domain::TableId table = *domain::tableFromKey(kind);
    if (table == domain::TableId::Trace && call.launch.has(QStringLiteral("cook")))
        return planForTrace(call, books);
    const auto bytes = contentOf(call, path);
    if (!bytes)
        return std::nullopt;
    if (table == domain::TableId::Trace && !isOwnTable(*bytes, table)) {
        call.err << name << " is no table of traces as exported. A logger's file needs --cook, the "
                 << "id or name of its cook.\n";
        return std::nullopt;
    }
    if (table != domain::TableId::Weather || isOwnTable(*bytes, table))
        return planTable(books, table, *bytes, name);
    WeatherRequest request;
    request.place = call.launch.options.value(QStringLiteral("place"));
    request.zone = call.launch.options.value(QStringLiteral("zone"));
    if (!readProfile(call, request) || !readFormat(call, request, books.yard().timeZone))
        return std::nullopt;
    // A profile says itself what becomes of impossible values.
    request.impossibleIsMissing = !request.profile && !call.launch.has(QStringLiteral("strict"));
    return planWeather(books, *bytes, name, request);
}

// What was read, and whether it can be written.
bool sayPlan(CliCall &call, const QStringList &said, const domain::Problems &refused)
{
    for (const QString &line : said)
        call.out << line << "\n";
    call.out.flush();
    if (refused.isEmpty())
        return true;
    sayProblems(call.err, refused);
    call.err << "Nothing was imported; the yard is as it was.\n";
    return false;
}

int carryOutCalendar(CliCall &call, workspace::Workspace &yard)
{
    commands::Verbs verbs(yard);
    const QString path = call.launch.operands.at(1);
    const auto now = momentOf(call, verbs.books().yard().timeZone);
    if (!now)
        return Usage;
    const auto bytes = contentOf(call, path);
    if (!bytes)
        return RefusedInput;
    const CalendarRequest request{call.launch.options.value(QStringLiteral("source")),
                                  call.launch.has(QStringLiteral("leave-out")), *now};
    const CalendarPlan plan =
        planCalendar(verbs.books(), *bytes, QFileInfo(path).fileName(), request);
    if (!sayPlan(call, plan.said, plan.refused))
        return RefusedInput;
    const auto done = verbs.replaceBusyTimes(plan.source, plan.put, plan.gone);
    if (!sayPlan(call, {}, done.problems()))
        return RefusedInput;
    call.out << plan.added << " added, " << plan.put.size() - plan.added << " changed, "
             << plan.gone.size() << " taken away, " << plan.same << " the same.\n";
    return Finished;
}

// Writes the plan as one transaction.
int carryOut(CliCall &call, workspace::Workspace &yard)
{
    if (call.launch.operands.first() == QLatin1String("calendar"))
        return carryOutCalendar(call, yard);
    commands::Verbs verbs(yard);
    const auto plan = planFor(call, verbs.books());
    if (!plan)
        return RefusedInput;
    if (!sayPlan(call, plan->said, plan->refused))
        return RefusedInput;
    const auto done =
        verbs.putAll(plan->rows, QStringLiteral("import %1").arg(call.launch.operands.at(0)));
    if (!sayPlan(call, {}, done.problems()))
        return RefusedInput;
    call.out << plan->added << " added, " << plan->changed << " changed, " << plan->same
             << " the same.\n";
    return Finished;
}

} // namespace

int runImport(CliCall &call)
{
    const QString kind = call.launch.operands.first();
    if (kind != QLatin1String("all") && kind != QLatin1String("calendar") &&
        !domain::tableFromKey(kind)) {
        call.err << "There is no kind \"" << kind << "\". Kinds:";
        for (domain::TableId table : domain::tablesInOrder())
            call.err << " " << domain::specOf(table).key;
        call.err << "; or calendar, or all.\n";
        return Usage;
    }
    const bool isNew = !QFileInfo::exists(call.launch.yardPath);
    int code = CannotOpen;
    {
        const WorkspacePtr yard = openForWriting(call, true);
        if (!yard)
            return CannotOpen;
        code = carryOut(call, *yard);
    }
    // A refused import leaves nothing behind, not even an empty yard.
    if (isNew && code != Finished)
        for (const char *suffix : {"", "-wal", "-shm", ".lock"})
            QFile::remove(QString(call.launch.yardPath + QLatin1String(suffix)));
    return code;
}

} // namespace rickyard::app
