// The fuel table: one line a cook.
#include "models/exchange/answers_json.h"
#include "models/exchange/csv_writer.h"
#include "models/exchange/foreign_values.h"

namespace rickyard::exchange {

using domain::Heat;
using domain::TableId;

namespace {

QString shown(std::optional<double> value, int decimals)
{
    return value ? QString::number(*value, 'f', decimals) : QString();
}

QString seasoned(const std::optional<Heat> &heat)
{
    return heat ? shown(domain::seasonedPounds(*heat), 2) : QString();
}

QString watched(const domain::CookFuel &cook, double domain::WatchVerdict::*figure)
{
    return cook.verdict ? shown((*cook.verdict).*figure, 4) : QString();
}

} // namespace

QByteArray fuelCsv(const domain::FuelAnswer &answer, const domain::Books &books)
{
    CsvWriter writer;
    writer.row({QStringLiteral("cook"),
                QStringLiteral("cook_name"),
                QStringLiteral("pit"),
                QStringLiteral("pit_name"),
                QStringLiteral("lit"),
                QStringLiteral("finished"),
                QStringLiteral("length [h]"),
                QStringLiteral("degree_hours [K h]"),
                QStringLiteral("dry_mass [lb]"),
                QStringLiteral("actual [slb]"),
                QStringLiteral("expected [slb]"),
                QStringLiteral("lower [slb]"),
                QStringLiteral("upper [slb]"),
                QStringLiteral("excess [pct]"),
                QStringLiteral("above_interval"),
                QStringLiteral("score"),
                QStringLiteral("cusum_more"),
                QStringLiteral("cusum_less"),
                QStringLiteral("limit"),
                QStringLiteral("flag"),
                QStringLiteral("left_out")});
    for (const domain::CookFuel &cook : answer.cooks) {
        const std::optional<double> excess =
            cook.excess ? std::optional<double>(100.0 * *cook.excess) : std::nullopt;
        writer.row({QString::number(cook.cook),
                    madeSafe(domain::titleOf(books, TableId::Cook, cook.cook)),
                    QString::number(cook.pit),
                    madeSafe(domain::titleOf(books, TableId::Pit, cook.pit)),
                    isoUtc(cook.lit.seconds()),
                    QString::number(cook.finished ? 1 : 0),
                    shown(domain::hours(cook.length), 3),
                    shown(cook.degreeHours, 1),
                    shown(domain::pounds(cook.dryMass), 2),
                    seasoned(cook.netHeat),
                    seasoned(cook.expected),
                    seasoned(cook.lower),
                    seasoned(cook.upper),
                    shown(excess, 2),
                    QString::number(cook.high() ? 1 : 0),
                    watched(cook, &domain::WatchVerdict::score),
                    watched(cook, &domain::WatchVerdict::up),
                    watched(cook, &domain::WatchVerdict::down),
                    watched(cook, &domain::WatchVerdict::limit),
                    cook.verdict ? flagKey(cook.verdict->flag) : QString(),
                    madeSafe(cook.missing.join(QLatin1Char(' ')))});
    }
    return writer.bytes();
}

} // namespace rickyard::exchange
