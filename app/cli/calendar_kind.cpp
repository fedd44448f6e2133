#include "app/cli/calendar_kind.h"

#include "models/domain/answers/answers.h"
#include "models/exchange/ics/calendar_of.h"

#include <QFileInfo>

namespace rickyard::app {

domain::Outcome<QByteArray> calendarBytes(const domain::Books &books, domain::Instant now)
{
    const domain::Wording wording = domain::wordingOf(books);
    const domain::FuelAnswer fuel = domain::fuelAnswer(books, now, wording);
    return exchange::writeCalendar(
        exchange::calendarOf(books, domain::upkeepAnswer(books, fuel, now, wording), now));
}

CalendarPlan planCalendar(const domain::Books &books, const QByteArray &bytes,
                          const QString &fileName, const CalendarRequest &request)
{
    CalendarPlan plan;
    plan.source = request.source.trimmed().isEmpty() ? QFileInfo(fileName).completeBaseName()
                                                     : request.source.trimmed();
    exchange::CalendarReadOptions options;
    options.source = plan.source;
    options.timeZone = books.yard().timeZone;
    options.from = request.now;
    options.to = request.now + domain::Duration::ofBase(qint64(kBusyDays) * 86400);
    options.strict = !request.leaveOut;
    const exchange::CalendarRead read = exchange::readCalendar(bytes, options, fileName);
    if (!read.ok) {
        plan.refused = read.refused.problems();
        return plan;
    }
    plan.said = read.report.lines();
    for (const domain::Problem &problem : read.refused.problems())
        plan.said << QStringLiteral("Left out: %1").arg(problem.message);
    const exchange::BusyMerge merge = exchange::mergeBusyTimes(books, read.busy, options);
    plan.put = merge.updated + merge.fresh;
    plan.gone = merge.gone;
    plan.added = merge.fresh.size();
    plan.same = merge.identical;
    return plan;
}

} // namespace rickyard::app
