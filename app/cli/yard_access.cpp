#include "app/cli/yard_access.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <QLocale>
#include <QTimeZone>

namespace rickyard::app {

using domain::Instant;
using storage::OpenMode;
using workspace::Workspace;

namespace {

bool exists(CliCall &call)
{
    if (QFileInfo::exists(call.launch.yardPath))
        return true;
    call.err << "There is no yard file at " << QDir::toNativeSeparators(call.launch.yardPath)
             << ". Give one with --yard FILE, or open the window once to begin one.\n";
    return false;
}

} // namespace

WorkspacePtr openForReading(CliCall &call)
{
    if (!exists(call))
        return {};
    const QDateTime now = QDateTime::currentDateTimeUtc();
    auto opened = Workspace::open(call.launch.yardPath, now, OpenMode::ReadOnly);
    // An older file must be brought up to date first, which needs it open for writing.
    if (!opened)
        opened = Workspace::open(call.launch.yardPath, now, OpenMode::ReadWrite);
    if (!opened) {
        sayProblems(call.err, opened.problems());
        return {};
    }
    return std::move(opened.value());
}

WorkspacePtr openForWriting(CliCall &call, bool mayCreate)
{
    if (!mayCreate && !exists(call))
        return {};
    auto opened = Workspace::open(call.launch.yardPath, QDateTime::currentDateTimeUtc());
    if (!opened) {
        sayProblems(call.err, opened.problems());
        return {};
    }
    if (opened.value()->readOnly()) {
        call.err << opened.value()->notice() << "\n";
        return {};
    }
    return std::move(opened.value());
}

std::optional<Instant> readMoment(const QString &text, const QString &ianaZone)
{
    const QTimeZone named(ianaZone.toUtf8());
    const QTimeZone zone = named.isValid() ? named : QTimeZone::utc();
    const QDate day = QDate::fromString(text, Qt::ISODate);
    if (text.size() == 10 && day.isValid())
        return Instant::ofSeconds(day.addDays(1).startOfDay(zone).toSecsSinceEpoch() - 1);
    QDateTime time = QDateTime::fromString(text, Qt::ISODate);
    if (!text.contains(QLatin1Char('T')) || !time.isValid())
        return std::nullopt;
    if (time.timeSpec() == Qt::LocalTime)
        time = QDateTime(time.date(), time.time(), zone);
    return Instant::ofSeconds(time.toSecsSinceEpoch());
}

std::optional<Instant> momentOf(CliCall &call, const QString &ianaZone)
{
    if (!call.launch.has(QStringLiteral("as-of")))
        return commands::systemClock();
    const QString text = call.launch.options.value(QStringLiteral("as-of"));
    if (const auto moment = readMoment(text, ianaZone))
        return moment;
    call.err << "--as-of " << text << " is not a day or time. Write it as 2026-11-30, "
             << "2026-11-30T18:00 or 2026-11-30T18:00Z.\n";
    return std::nullopt;
}

void sayProblems(QTextStream &err, const domain::Problems &problems)
{
    for (const domain::Problem &problem : problems)
        err << problem.message << "\n";
}

QString yardLine(const domain::Books &books, Instant now)
{
    const domain::Yard yard = books.yard();
    const QDateTime local =
        QDateTime::fromSecsSinceEpoch(now.seconds(), QTimeZone(yard.timeZone.toUtf8()));
    QString line =
        QStringLiteral("%1, as of %2")
            .arg(yard.name, QLocale(QStringLiteral("en_US"))
                                .toString(local, QStringLiteral("ddd d MMM yyyy HH:mm")));
    if (yard.invented)
        line += QStringLiteral("\nInvented data: a demo, not a record of anything.");
    return line;
}

} // namespace rickyard::app
