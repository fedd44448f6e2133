#include "views/ahead/wood_tables.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/exchange/csv_writer.h"
#include "views/records/figure_table.h"
#include "views/wood/wood_words.h"

#include <QCoreApplication>

namespace rickyard::views {

using domain::Heat;
using domain::StockPoint;
using domain::TableId;
using domain::WoodAnswer;
using domain::WoodOrderChoice;
using domain::WoodRisk;
using domain::Wording;

namespace {

struct WoodTables {
    Q_DECLARE_TR_FUNCTIONS(WoodTables)
};

QString tr_(const char *text)
{
    return WoodTables::tr(text);
}

items::DerivedCell chanceCell(std::optional<double> chance, std::optional<double> error,
                              const Wording &wording)
{
    return FigureTable::figure(chance ? domain::chanceWords(*chance, error, wording) : QString(),
                               chance);
}

items::DerivedCell dayCell(QDate day, const Wording &wording)
{
    return FigureTable::figure(day.isValid() ? domain::shortDay(day, wording) : QString(),
                               day.isValid() ? std::optional(double(day.toJulianDay()))
                                             : std::nullopt);
}

double shownHeat(Heat heat, const Wording &wording)
{
    return wording.metric ? heat.toDouble() / 1e6 : domain::seasonedPounds(heat);
}

items::DerivedCell heatCell(std::optional<Heat> heat, const Wording &wording)
{
    if (!heat)
        return FigureTable::figure({}, std::nullopt);
    const double value = shownHeat(*heat, wording);
    return FigureTable::figure(domain::formatNumber(value, 0, woodLocale()), value);
}

const WoodRisk *sameIn(const QVector<WoodRisk> &risks, const WoodRisk &risk)
{
    for (const WoodRisk &other : risks)
        if (other.event == risk.event && other.plannedCook == risk.plannedCook)
            return &other;
    return nullptr;
}

items::DerivedRow supplierRow(const WoodAnswer &answer, const WoodOrderChoice &choice,
                              const Wording &wording)
{
    const domain::WoodSource source = answer.sources.value(choice.source);
    items::DerivedRow row;
    row.link = {TableId::Supplier, choice.source + 1};
    row.standing = choice.keeps ? domain::Standing::Good : domain::Standing::Act;
    QString name = source.supplierName;
    if (choice.green)
        name += tr_(", for next season");
    if (choice.loads.size() > 1)
        name += WoodTables::tr(", in %1 loads").arg(choice.loads.size());
    row.cells << items::DerivedCell{name, {}, source.name}
              << items::DerivedCell{choice.amount, {}, {}}
              << FigureTable::figure(
                     choice.cost ? domain::moneyWords(choice.cost->toDouble(), wording) : QString(),
                     choice.cost ? std::optional(choice.cost->toDouble()) : std::nullopt)
              << dayCell(choice.orderBy, wording) << dayCell(choice.arrival, wording)
              << chanceCell(choice.chance, choice.chanceError, wording)
              << chanceCell(choice.chanceToday, {}, wording)
              << chanceCell(choice.chanceLate, {}, wording)
              << chanceCell(choice.chanceColder, {}, wording);
    return row;
}

QString nothingLine(const WoodAnswer &answer, const Wording &wording)
{
    if (answer.worst < 0)
        return tr_("If nothing is ordered: no event is ahead that could run short.");
    const WoodRisk &worst = answer.risks.at(answer.worst);
    QString line = WoodTables::tr("If nothing is ordered: %1 on %2 runs short with a chance of %3")
                       .arg(worst.name, domain::dayWithWeekday(worst.day, wording),
                            domain::chanceWords(worst.chance, worst.error, wording));
    if (worst.chance > answer.acceptedRisk)
        line += WoodTables::tr(", by some %1 when it does")
                    .arg(domain::heatWords(worst.whenShort, wording));
    return QString(line + QLatin1Char('.'));
}

} // namespace

QStringList ifLines(const WoodAnswer &answer, const std::optional<domain::WoodWhatIfAnswer> &colder,
                    const Wording &wording)
{
    QStringList lines{nothingLine(answer, wording)};
    const QString degrees = wording.metric ? tr_("11 °C") : tr_("20 °F");
    if (!answer.orders.isEmpty()) {
        const WoodOrderChoice &best = answer.orders.first();
        lines << WoodTables::tr("If the order comes a week late: the event most at risk runs short "
                                "with a chance of %1, not %2 as proposed.")
                     .arg(domain::chanceWords(best.chanceLate, {}, wording),
                          domain::chanceWords(best.chance, best.chanceError, wording));
        if (best.chanceColder)
            lines << WoodTables::tr("If every cook is %1 colder: with the order, a chance of %2.")
                         .arg(degrees, domain::chanceWords(*best.chanceColder, {}, wording));
        return lines;
    }
    lines << (answer.needed ? tr_("If the order comes a week late: no order would come in time to "
                                  "help even on its "
                                  "day. Ask for wood to be had at once, or move the cook.")
                            : tr_("If the order comes a week late: nothing needs ordering that "
                                  "could be late."));
    if (colder && colder->worst >= 0) {
        const WoodRisk &worst = colder->risks.at(colder->worst);
        lines << WoodTables::tr("If every cook is %1 colder: %2 runs short with a chance of %3.")
                     .arg(degrees, worst.name,
                          domain::chanceWords(worst.chance, worst.error, wording));
    }
    return lines;
}

QVector<items::DerivedModel::Column> supplierColumns()
{
    return {{tr_("Whose wood"), false}, {tr_("Amount"), false}, {tr_("Cost"), true},
            {tr_("Order by"), true},    {tr_("There"), true},   {tr_("Risk"), true},
            {tr_("Today"), true},       {tr_("Late"), true},    {tr_("Colder"), true}};
}

QVector<items::DerivedRow> supplierRows(const WoodAnswer &answer, const Wording &wording)
{
    QVector<items::DerivedRow> rows;
    for (const auto &list : {&answer.orders, &answer.greenOrders})
        for (const WoodOrderChoice &choice : *list)
            rows << supplierRow(answer, choice, wording);
    return rows;
}

QVector<items::DerivedModel::Column> eventColumns()
{
    return {{tr_("Event"), false},   {tr_("Lit on"), true},        {tr_("Nothing ordered"), true},
            {tr_("Short by"), true}, {tr_("As thought up"), true}, {tr_("Remark"), false}};
}

QVector<items::DerivedRow> eventRows(const WoodAnswer &answer, const QVector<WoodRisk> &with,
                                     const Wording &wording)
{
    QVector<items::DerivedRow> rows;
    for (const WoodRisk &risk : answer.risks) {
        const WoodRisk *other = sameIn(with, risk);
        items::DerivedRow row;
        row.link = risk.event != 0 ? domain::Link{TableId::Event, risk.event}
                                   : domain::Link{TableId::PlannedCook, risk.plannedCook};
        const bool over = risk.chance > answer.acceptedRisk;
        row.standing = over ? domain::Standing::Act : domain::Standing::Good;
        row.cells << items::DerivedCell{risk.name, {}, {}} << dayCell(risk.day, wording)
                  << chanceCell(risk.chance, risk.error, wording)
                  << FigureTable::figure(domain::heatWords(risk.whenShort, wording),
                                         risk.whenShort.base() > 0
                                             ? std::optional(risk.whenShort.toDouble())
                                             : std::nullopt)
                  << (other != nullptr ? chanceCell(other->chance, other->error, wording)
                                       : FigureTable::figure({}, std::nullopt))
                  << items::DerivedCell{risk.nextSeason ? tr_("Next season")
                                        : risk.farOff   ? tr_("Too far off to order for now")
                                        : over          ? tr_("Over the accepted risk")
                                                        : QString(),
                                        {},
                                        {}};
        rows << row;
    }
    return rows;
}

QVector<items::DerivedModel::Column> courseColumns(const Wording &wording)
{
    const QString unit = wording.metric ? tr_(", MJ") : tr_(", slb");
    return {{tr_("Day"), true},
            {QString(tr_("5 in 100 under") + unit), true},
            {QString(tr_("Middle") + unit), true},
            {QString(tr_("5 in 100 over") + unit), true},
            {QString(tr_("With the order, middle") + unit), true}};
}

QVector<items::DerivedRow> courseRows(const WoodAnswer &answer, const QVector<StockPoint> &with,
                                      const Wording &wording)
{
    QVector<items::DerivedRow> rows;
    for (int i = 0; i < answer.course.size(); ++i) {
        const StockPoint &point = answer.course.at(i);
        items::DerivedRow row;
        row.cells << dayCell(point.day, wording) << heatCell(point.lower, wording)
                  << heatCell(point.middle, wording) << heatCell(point.upper, wording)
                  << heatCell(i < with.size() ? std::optional(with.at(i).middle) : std::nullopt,
                              wording);
        rows << row;
    }
    return rows;
}

QByteArray courseCsv(const WoodAnswer &answer, const QVector<StockPoint> &with)
{
    exchange::CsvWriter writer;
    writer.row({QStringLiteral("day"), QStringLiteral("nothing_p5 [slb]"),
                QStringLiteral("nothing_p50 [slb]"), QStringLiteral("nothing_p95 [slb]"),
                QStringLiteral("order_p5 [slb]"), QStringLiteral("order_p50 [slb]"),
                QStringLiteral("order_p95 [slb]")});
    const auto slb = [](Heat heat) {
        return QString::number(domain::seasonedPounds(heat), 'f', 1);
    };
    for (int i = 0; i < answer.course.size(); ++i) {
        const StockPoint &point = answer.course.at(i);
        QStringList cells{point.day.toString(Qt::ISODate), slb(point.lower), slb(point.middle),
                          slb(point.upper)};
        if (i < with.size())
            cells << slb(with.at(i).lower) << slb(with.at(i).middle) << slb(with.at(i).upper);
        else
            cells << QString() << QString() << QString();
        writer.row(cells);
    }
    return writer.bytes();
}

} // namespace rickyard::views
