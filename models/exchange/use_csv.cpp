#include "models/exchange/use_csv.h"

#include "models/exchange/csv_writer.h"
#include "models/exchange/foreign_values.h"

namespace rickyard::exchange {

using domain::CookFuel;
using domain::TableId;
using domain::UseAgainst;
using domain::UseLine;

namespace {

QString figureText(std::optional<double> value, int decimals)
{
    return value ? QString::number(*value, 'f', decimals) : QString();
}

double slb(double joules)
{
    return domain::seasonedPounds(domain::Heat::rounded(joules));
}

} // namespace

QByteArray useCsv(const QVector<CookFuel> &cooks, const QVector<UseLine> &lines, UseAgainst against,
                  const domain::Books &books)
{
    const bool whole = against == UseAgainst::Hours;
    const QString unit = whole ? QStringLiteral("[slb]") : QStringLiteral("[slb/h]");
    const QString by = whole                            ? QStringLiteral("length")
                       : against == UseAgainst::Outside ? QStringLiteral("outside")
                                                        : QStringLiteral("wind");
    CsvWriter writer;
    writer.row({QStringLiteral("cook"), QStringLiteral("cook_name"), QStringLiteral("pit"),
                QStringLiteral("pit_name"), QStringLiteral("lit"), QStringLiteral("length [h]"),
                QStringLiteral("outside [degC]"), QStringLiteral("wind [m/s]"),
                QStringLiteral("used [slb]"), QStringLiteral("used_an_hour [slb/h]"),
                QStringLiteral("line_by_%1 %2").arg(by, unit),
                QStringLiteral("line_lower_90 %1").arg(unit),
                QStringLiteral("line_upper_90 %1").arg(unit)});
    for (const CookFuel &cook : cooks) {
        if (!cook.finished || cook.netHeat <= domain::Heat() || cook.length <= domain::Duration())
            continue;
        std::optional<domain::statistics::Interval> on;
        const auto points = domain::usePoints({cook}, against);
        for (const UseLine &line : lines)
            if (line.pit == cook.pit && !points.isEmpty())
                on = line.at(points.first().across);
        const auto part = [&](double domain::statistics::Interval::*member) {
            return figureText(on ? std::optional(slb((*on).*member)) : std::nullopt, 2);
        };
        const double used = domain::seasonedPounds(cook.netHeat);
        writer.row(
            {QString::number(cook.cook), madeSafe(domain::titleOf(books, TableId::Cook, cook.cook)),
             QString::number(cook.pit), madeSafe(domain::titleOf(books, TableId::Pit, cook.pit)),
             isoUtc(cook.lit.seconds()), figureText(domain::hours(cook.length), 3),
             figureText(cook.meanOutside ? std::optional(domain::celsius(*cook.meanOutside))
                                         : std::nullopt,
                        2),
             figureText(cook.meanWind ? std::optional(domain::metresPerSecond(*cook.meanWind))
                                      : std::nullopt,
                        2),
             figureText(used, 2), figureText(used / domain::hours(cook.length), 3),
             part(&domain::statistics::Interval::centre),
             part(&domain::statistics::Interval::lower),
             part(&domain::statistics::Interval::upper)});
    }
    return writer.bytes();
}

} // namespace rickyard::exchange
