#include "views/events/event_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/items/wording.h"

#include <QCoreApplication>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

// A planned cook's length on a pit that has no finished cook. Common practice, no source.
constexpr Duration kUsualLength = Duration::ofBase(12 * 3600);
constexpr int kCooksForLength = 5;

QString tr(const char *text, int n = -1)
{
    return QCoreApplication::translate("Events", text, nullptr, n);
}

QLocale english()
{
    return QLocale(QStringLiteral("en_US"));
}

// Mean of the pit's last cooks, in whole half hours.
Duration usualLength(const Books &books, RecordId pit)
{
    QVector<Cook> finished;
    for (const Cook &cook : books.cooks)
        if (cook.pit == pit && cook.fireOut)
            finished << cook;
    std::sort(finished.begin(), finished.end(),
              [](const Cook &a, const Cook &b) { return a.lit > b.lit; });
    if (finished.isEmpty())
        return kUsualLength;
    const auto count = std::min<qsizetype>(finished.size(), kCooksForLength);
    qint64 sum = 0;
    for (qsizetype i = 0; i < count; ++i)
        sum += (*finished.at(i).fireOut - finished.at(i).lit).base();
    return Duration::ofBase((sum / count + 900) / 1800 * 1800);
}

bool isFree(const Books &books, RecordId pit, Instant from, Instant until)
{
    return std::none_of(
        books.plannedCooks.begin(), books.plannedCooks.end(), [&](const PlannedCook &c) {
            return !c.cancelled && c.pit == pit && c.light < until && from < c.light + c.length;
        });
}

} // namespace

QString inDaysText(const Books &books, Instant now, const Event &event)
{
    if (event.start <= now)
        return tr("now");
    const auto days =
        items::toLocal(books, now).date().daysTo(items::toLocal(books, event.start).date());
    if (days == 0)
        return tr("today");
    return days == 1 ? tr("tomorrow") : tr("in %1 days").arg(days);
}

QString clockText(const Books &books, Instant time)
{
    const QDateTime local = items::toLocal(books, time);
    return english().toString(local, local.time().minute() == 0 ? QStringLiteral("h AP")
                                                                : QStringLiteral("h:mm AP"));
}

QString dateText(const Books &books, Instant time, Instant now)
{
    const QDate day = items::toLocal(books, time).date();
    const bool sameYear = qAbs(items::toLocal(books, now).date().daysTo(day)) < 180;
    return english().toString(day, sameYear ? QStringLiteral("ddd d MMM")
                                            : QStringLiteral("ddd d MMM yyyy"));
}

RecordId nextEvent(const Books &books, Instant now)
{
    const Event *next = nullptr;
    for (const Event &event : books.events) {
        if (event.state == EventState::Done || event.state == EventState::Cancelled ||
            event.end <= now)
            continue;
        if (next == nullptr || event.start < next->start)
            next = &event;
    }
    return next != nullptr ? next->id : 0;
}

QVector<PlannedCook> cooksOf(const Books &books, RecordId event)
{
    QVector<PlannedCook> cooks;
    for (const PlannedCook &cook : books.plannedCooks)
        if (cook.event == event && !cook.cancelled)
            cooks << cook;
    std::stable_sort(cooks.begin(), cooks.end(),
                     [](const PlannedCook &a, const PlannedCook &b) { return a.light < b.light; });
    return cooks;
}

const PlannedUse *useOf(const Answers &answers, RecordId plannedCook)
{
    for (const PlannedUse &use : answers.wood.uses)
        if (use.plannedCook == plannedCook)
            return &use;
    return nullptr;
}

WoodState woodStateOf(const Books &books, const PlannedUse *use)
{
    if (use == nullptr)
        return {Role::Info, tr("Not ahead any more")};
    if (use->shortOf)
        return {Role::Act, tr("Short by %1").arg(heatWords(use->shortfall, wordingOf(books)))};
    if (use->assumed())
        return {Role::Watch, tr("Dry wood enough, if the assumptions hold")};
    return {Role::Good, tr("Dry wood enough")};
}

QString usePhrase(const Books &books, const PlannedUse &use)
{
    const Wording wording = wordingOf(books);
    const Unit *unit =
        findUnit(Dimension::Heat, wording.metric ? QStringLiteral("MJ") : QStringLiteral("slb"));
    const auto number = [&](Heat heat) {
        return formatNumber(toUnit(heat.base(), *unit), 0, english());
    };
    return tr("%1, likely %2 to %3")
        .arg(heatWords(use.middle, wording), number(use.lower), number(use.upper));
}

QString amountPhrase(const Books &books, const Stock &stock, Heat heat)
{
    double joules = 0;
    Mass mass;
    double splits = 0;
    double splitPounds = 0;
    for (const LotStock &lot : stock.lots) {
        if (lot.readiness != Readiness::Dry || !lot.asIs || lot.asIs->base() <= 0)
            continue;
        joules += lot.netHeat.toDouble();
        mass += *lot.asIs;
        if (lot.splits) {
            splits += *lot.splits;
            splitPounds += pounds(*lot.asIs);
        }
    }
    if (!(joules > 0))
        return {};
    const Mass needed = mass * (heat.toDouble() / joules);
    const bool metric = books.yard().metric;
    const QString weight =
        show(needed, metric ? UnitSystem::Metric : UnitSystem::UsCustomary, english(), 0);
    if (!(splitPounds > 0))
        return tr("about %1 of the dry wood on hand").arg(weight);
    const double pieces = pounds(needed) * splits / splitPounds;
    return tr("about %1 or %2 splits of the dry wood on hand")
        .arg(weight, formatNumber(pieces, 0, english()));
}

Row cookFor(const Books &books, const Event &event)
{
    PlannedCook cook;
    cook.event = event.id;
    cook.length = kUsualLength;
    for (const Pit &pit : books.pits) {
        if (pit.retired)
            continue;
        const Duration length = usualLength(books, pit.id);
        if (cook.pit != 0 && !isFree(books, pit.id, event.start - length, event.start))
            continue;
        const bool better =
            cook.pit == 0 || !isFree(books, cook.pit, event.start - cook.length, event.start);
        if (!better)
            continue;
        cook.pit = pit.id;
        cook.length = length;
        cook.target = pit.usualTemperature;
    }
    cook.light = event.start - cook.length;
    Row row = toRow(cook);
    if (cook.pit == 0)
        setValue(row, QStringLiteral("pit"), Value());
    return row;
}

} // namespace rickyard::views
