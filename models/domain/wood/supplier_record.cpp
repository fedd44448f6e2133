#include "models/domain/wood/supplier_record.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/delivery.h"
#include "models/domain/wood/moisture.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kPriorMeanCount = 1;
constexpr double kPriorScatterCount = 4;

// Session nearest to the arrival that still tells of the wood that came.
std::optional<Moisture> moistureOnArrival(const Books &books, const Lot &lot)
{
    const Instant justBefore = lot.received - Duration::ofBase(1);
    std::optional<MoistureSample> sample = firstMoistureAfter(books, lot.id, justBefore);
    if (!sample || (sample->time - lot.received).base() > kReadingOfDeliveryDays * 86400)
        sample = latestMoisture(books, lot.id, justBefore);
    if (!sample || sample->unreliable ||
        std::abs((sample->time - lot.received).base()) > kReadingOfDeliveryDays * 86400)
        return std::nullopt;
    return sample->mean();
}

std::optional<double> wetPointsOf(const Books &books, const Lot &lot)
{
    std::optional<Moisture> promised = lot.promisedMoisture;
    if (!promised && lot.order)
        promised = books.orders.value(*lot.order).promisedMoisture;
    if (!promised && lot.supplier)
        promised = books.suppliers.value(*lot.supplier).promised;
    const auto came = moistureOnArrival(books, lot);
    if (!promised || !came)
        return std::nullopt;
    return (*came - *promised).toDouble() / 1000.0;
}

// The day the last of an order came; the order's own day wins.
QDate arrivalOf(const Books &books, const WoodOrder &order, const Wording &wording)
{
    if (order.received.isValid())
        return order.received;
    QDate last;
    for (const Lot &lot : books.lots)
        if (lot.order == order.id) {
            const QDate came = dayOf(lot.received, zoneOf(wording));
            last = last.isValid() ? std::max(last, came) : came;
        }
    return last;
}

QVector<double> daysLateOf(const Books &books, RecordId supplier, const Wording &wording)
{
    QVector<double> days;
    for (const WoodOrder &order : books.orders) {
        if (order.supplier != supplier || order.state == OrderState::Cancelled ||
            !order.promised.isValid())
            continue;
        const QDate came = arrivalOf(books, order, wording);
        if (came.isValid())
            days << static_cast<double>(std::max<qint64>(0, order.promised.daysTo(came)));
    }
    return days;
}

QString digits(double value, int decimals, const Wording &wording)
{
    return formatNumber(value, decimals, localeOf(wording));
}

} // namespace

std::optional<double> Tally::sd() const
{
    return count < 2 ? std::nullopt : std::optional(std::sqrt(squares / (count - 1)));
}

Tally tallyOf(const QVector<double> &values)
{
    Tally tally;
    tally.count = static_cast<int>(values.size());
    if (values.isEmpty())
        return tally;
    for (double value : values)
        tally.mean += value / static_cast<double>(values.size());
    for (double value : values)
        tally.squares += std::pow(value - tally.mean, 2);
    tally.worst = *std::max_element(values.cbegin(), values.cend());
    return tally;
}

SupplierRecord supplierRecord(const Books &books, RecordId supplier, const Wording &wording)
{
    SupplierRecord record;
    record.supplier = supplier;
    QVector<double> shortBy;
    QVector<double> wet;
    for (const Lot &lot : books.lots) {
        if (lot.supplier != supplier)
            continue;
        ++record.deliveries;
        const DeliveryCheck check = checkDelivery(books, lot, wording);
        if (check.shortBy) {
            shortBy << *check.shortBy;
            if (isShort(check))
                ++record.shortDeliveries;
        }
        if (const auto points = wetPointsOf(books, lot))
            wet << *points;
    }
    record.shortBy = tallyOf(shortBy);
    record.wetPoints = tallyOf(wet);
    record.daysLate = tallyOf(daysLateOf(books, supplier, wording));
    return record;
}

Expectation expectationOf(const Tally &tally, double defaultScatter)
{
    const double n = tally.count;
    const double meanWeight = kPriorMeanCount + n;
    const double nu = kPriorScatterCount + n;
    const double variance = (kPriorScatterCount * defaultScatter * defaultScatter + tally.squares +
                             kPriorMeanCount * n / meanWeight * tally.mean * tally.mean) /
                            nu;
    return {n * tally.mean / meanWeight, std::sqrt(variance * (1.0 + 1.0 / meanWeight)), nu,
            tally.count};
}

Expectation expectedShort(const SupplierRecord &record)
{
    return expectationOf(record.shortBy, kDefaultShortScatter);
}

Expectation expectedWetPoints(const SupplierRecord &record)
{
    return expectationOf(record.wetPoints, kDefaultWetScatter);
}

QString shortWords(const SupplierRecord &record, const Wording &wording)
{
    const Tally &tally = record.shortBy;
    if (tally.count == 0)
        return QString(QStringLiteral("no amount measured yet: taken as full, with a wide default "
                                      "scatter of ") +
                       digits(100 * kDefaultShortScatter, 0, wording) + QStringLiteral(" %"));
    const QString many = QString(QString::number(record.shortDeliveries) + QStringLiteral(" of ") +
                                 QString::number(tally.count) + QStringLiteral(" short"));
    const double mean = 100 * tally.mean;
    if (std::abs(mean) < 0.5)
        return QString(many + QStringLiteral(", on average the full amount"));
    return QString(many + QStringLiteral(", on average ") + digits(std::abs(mean), 0, wording) +
                   (mean > 0 ? QStringLiteral(" % under what was paid for")
                             : QStringLiteral(" % over what was paid for")));
}

QString wetWords(const SupplierRecord &record, const Wording &wording)
{
    const Tally &tally = record.wetPoints;
    if (tally.count == 0)
        return QString(QStringLiteral("no moisture read on arrival yet: taken as promised, with a "
                                      "wide default scatter of ") +
                       digits(kDefaultWetScatter, 0, wording) +
                       QStringLiteral(" points (dry basis)"));
    const QString of =
        QString(QStringLiteral(" (dry basis, ") + QString::number(tally.count) +
                (tally.count == 1 ? QStringLiteral(" delivery)") : QStringLiteral(" deliveries)")));
    if (std::abs(tally.mean) < 0.05)
        return QString(QStringLiteral("as dry as promised") + of);
    return QString(digits(std::abs(tally.mean), 1, wording) +
                   (tally.mean > 0 ? QStringLiteral(" points wetter than promised")
                                   : QStringLiteral(" points drier than promised")) +
                   of);
}

QString lateWords(const SupplierRecord &record, const Wording &wording)
{
    const Tally &tally = record.daysLate;
    if (tally.count == 0)
        return QStringLiteral("no promised day to compare with");
    const QString of =
        QString(QStringLiteral(" (") + QString::number(tally.count) +
                (tally.count == 1 ? QStringLiteral(" order)") : QStringLiteral(" orders)")));
    if (tally.worst <= 0)
        return QString(QStringLiteral("never late") + of);
    const int decimals = std::abs(tally.mean - std::round(tally.mean)) < 0.05 ? 0 : 1;
    return QString(digits(tally.mean, decimals, wording) +
                   QStringLiteral(" days late on average, ") + digits(tally.worst, 0, wording) +
                   QStringLiteral(" at worst") + of);
}

QString supplierRecordWords(const SupplierRecord &record, const Wording &wording)
{
    if (record.empty())
        return QString(QStringLiteral("No history: taken at their word, give or take ") +
                       digits(100 * kDefaultShortScatter, 0, wording) +
                       QStringLiteral(" % of the amount and ") +
                       digits(kDefaultWetScatter, 0, wording) +
                       QStringLiteral(" points of moisture (dry basis) from one delivery to the "
                                      "next. A wide default: common practice, no source."));
    const QString many = QString(
        QString::number(record.deliveries) +
        (record.deliveries == 1 ? QStringLiteral(" delivery: ") : QStringLiteral(" deliveries: ")));
    return QString(many + shortWords(record, wording) + QStringLiteral("; ") +
                   wetWords(record, wording) + QStringLiteral("; ") + lateWords(record, wording) +
                   QLatin1Char('.'));
}

} // namespace rickyard::domain
