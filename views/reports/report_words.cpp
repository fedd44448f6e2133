#include "views/reports/report_words.h"

#include "models/domain/answers/field_words.h"
#include "models/domain/answers/wording.h"

#include <QCoreApplication>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QLocale reportLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

} // namespace

QString reportWords(const char *text)
{
    return QCoreApplication::translate("Reports", text);
}

QString reportDay(const QDate &day)
{
    return reportLocale().toString(day, QStringLiteral("ddd d MMM"));
}

QString reportDate(const Books &books, Instant at)
{
    return reportLocale().toString(toLocal(books, at).date(), QStringLiteral("d MMM yyyy"));
}

QString reportDayTime(const Books &books, Instant at)
{
    const QDateTime local = toLocal(books, at);
    return QString(reportDay(local.date()) + QStringLiteral(", ") +
                   reportLocale().toString(local, local.time().minute() == 0
                                                      ? QStringLiteral("h AP")
                                                      : QStringLiteral("h:mm AP")));
}

QString reportMoney(const std::optional<Money> &money)
{
    return money ? moneyWords(static_cast<double>(money->base()), Wording()) : QString();
}

QString reportTask(const Books &books, RecordId task)
{
    return books.tasks.value(task).name;
}

QString reportTaskAndPit(const Books &books, RecordId task)
{
    const UpkeepTask record = books.tasks.value(task);
    if (!record.pit || !books.pits.contains(*record.pit))
        return record.name;
    return reportWords("%1 on %2").arg(record.name, books.pits.value(*record.pit).name);
}

QString reportFoot(const Books &books)
{
    const Yard yard = books.yard();
    return yard.invented ? reportWords("%1 (invented data)").arg(yard.name) : yard.name;
}

} // namespace rickyard::views
