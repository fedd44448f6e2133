#include "app/cli/calendar_kind.h"
#include "app/cli/yard_access.h"
#include "models/domain/answers/answers.h"
#include "models/exchange/answers_json.h"
#include "models/exchange/table_csv.h"

#include <QDir>
#include <QFileInfo>
#include <QSaveFile>

namespace rickyard::app {

using domain::Done;
using domain::Outcome;

namespace {

Outcome<Done> writeFile(const QString &path, const QByteArray &bytes, bool overwrite)
{
    const QString shown = QDir::toNativeSeparators(path);
    if (QFileInfo::exists(path) && !overwrite)
        return Outcome<Done>::failed(
            QStringLiteral("%1 exists already. Choose another name, or add --overwrite.")
                .arg(shown));
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return Outcome<Done>::failed(
            QStringLiteral("%1 could not be written: %2").arg(shown, file.errorString()));
    return Done{};
}

int exportAll(CliCall &call, const domain::Books &books)
{
    if (call.launch.operands.size() < 2) {
        call.err << "export all needs the name of a folder.\n";
        return Usage;
    }
    const QDir folder(call.launch.operands.at(1));
    const bool overwrite = call.launch.has(QStringLiteral("overwrite"));
    const QVector<exchange::NamedFile> files = exchange::exportBooks(books);
    for (const exchange::NamedFile &file : files)
        if (!overwrite && QFileInfo::exists(folder.filePath(file.first))) {
            call.err << QDir::toNativeSeparators(folder.filePath(file.first))
                     << " exists already. Choose another folder, or add --overwrite.\n";
            return RefusedInput;
        }
    if (!QDir().mkpath(folder.path())) {
        call.err << "The folder " << QDir::toNativeSeparators(folder.path())
                 << " cannot be made.\n";
        return RefusedInput;
    }
    for (const exchange::NamedFile &file : files) {
        const auto written = writeFile(folder.filePath(file.first), file.second, overwrite);
        if (!written) {
            sayProblems(call.err, written.problems());
            return RefusedInput;
        }
    }
    call.out << files.size() << " files are in " << QDir::toNativeSeparators(folder.path())
             << ".\n";
    return Finished;
}

Outcome<QByteArray> bytesOf(const QString &kind, const domain::Books &books, domain::Instant now)
{
    if (kind == QLatin1String("calendar"))
        return calendarBytes(books, now);
    if (kind == QLatin1String("fuel"))
        return exchange::fuelCsv(domain::fuelAnswer(books, now, domain::wordingOf(books)), books);
    return exchange::exportTable(books, *domain::tableFromKey(kind));
}

} // namespace

int runExport(CliCall &call)
{
    const QString kind = call.launch.operands.first();
    const bool all = kind == QLatin1String("all");
    const bool own = kind == QLatin1String("fuel") || kind == QLatin1String("calendar");
    if (!all && !own && !domain::tableFromKey(kind)) {
        call.err << "There is no table \"" << kind << "\". Tables:";
        for (domain::TableId table : domain::tablesInOrder())
            call.err << " " << domain::specOf(table).key;
        call.err << "; or fuel, calendar, or all.\n";
        return Usage;
    }
    if (!momentOf(call, QStringLiteral("UTC")))
        return Usage;
    const WorkspacePtr yard = openForReading(call);
    if (!yard)
        return CannotOpen;
    const domain::Books &books = yard->books();
    if (all)
        return exportAll(call, books);
    const auto bytes = bytesOf(kind, books, *momentOf(call, books.yard().timeZone));
    if (!bytes) {
        sayProblems(call.err, bytes.problems());
        return RefusedInput;
    }
    if (call.launch.operands.size() < 2) {
        call.out << QString::fromUtf8(bytes.value());
        return Finished;
    }
    const auto written = writeFile(call.launch.operands.at(1), bytes.value(),
                                   call.launch.has(QStringLiteral("overwrite")));
    if (!written) {
        sayProblems(call.err, written.problems());
        return RefusedInput;
    }
    return Finished;
}

} // namespace rickyard::app
