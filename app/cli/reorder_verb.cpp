// What to order, how much, from whom and by which day.
#include "app/cli/report.h"
#include "app/cli/text_table.h"
#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/exchange/answers_json.h"

namespace rickyard::app {

using domain::Books;
using domain::WoodAnswer;

namespace {

// "5", "2.5" or "5%", in per cent; a usage error is said when it is none.
std::optional<int> readAccepted(CliCall &call, std::optional<double> &accepted)
{
    const QString option = QStringLiteral("accept");
    if (!call.launch.has(option))
        return std::nullopt;
    QString text = call.launch.options.value(option).trimmed();
    if (text.endsWith(QLatin1Char('%')))
        text = text.chopped(1).trimmed();
    bool number = false;
    const double percent = text.toDouble(&number);
    if (!number || !(percent > 0 && percent < 100)) {
        call.err << "--accept wants the risk of running short that is accepted, in per cent above "
                    "0 and under 100, as 5 or 2.5; it got \""
                 << call.launch.options.value(option) << "\".\n";
        return Usage;
    }
    accepted = percent / 100.0;
    return std::nullopt;
}

TextTable riskTable(const Books &books, const WoodAnswer &wood)
{
    const domain::Wording wording = domain::wordingOf(books);
    TextTable table({Align::Left, Align::Left, Align::Right, Align::Right, Align::Left});
    for (const domain::WoodRisk &risk : wood.risks)
        table.row({risk.day.toString(Qt::ISODate), risk.name,
                   domain::chanceWords(risk.chance, risk.error, wording),
                   risk.whenShort > domain::Heat() ? heatText(books, risk.whenShort)
                                                   : QStringLiteral("–"),
                   risk.nextSeason ? QStringLiteral("next season")
                   : risk.farOff   ? QStringLiteral("too far off to order for yet")
                   : risk.chance > wood.acceptedRisk ? QStringLiteral("over the accepted risk")
                                                     : QString()});
    if (!table.isEmpty())
        table.heading({QStringLiteral("First fire"), QStringLiteral("Event"),
                       QStringLiteral("Runs short"), QStringLiteral("then by"), QString()});
    return table;
}

TextTable cookTable(const Books &books, const WoodAnswer &wood)
{
    TextTable table({Align::Left, Align::Left, Align::Right, Align::Right, Align::Right});
    for (const domain::PlannedUse &use : wood.uses)
        table.row({dayText(books, use.light), books.pits.value(use.pit).name,
                   heatText(books, use.middle), heatText(books, use.upper),
                   heatText(books, use.stockAfter)});
    if (!table.isEmpty())
        table.heading({QStringLiteral("Light"), QStringLiteral("Pit"), QStringLiteral("Takes"),
                       QStringLiteral("at most (95 %)"), QStringLiteral("Dry wood after")});
    return table;
}

TextTable orderTable(const Books &books, const WoodAnswer &wood,
                     const QVector<domain::WoodOrderChoice> &orders)
{
    const domain::Wording wording = domain::wordingOf(books);
    const auto percent = [&](double chance) { return domain::chanceWords(chance, {}, wording); };
    TextTable table({Align::Left, Align::Left, Align::Left, Align::Left, Align::Right, Align::Right,
                     Align::Right, Align::Right, Align::Right});
    for (const domain::WoodOrderChoice &order : orders)
        table.row({wood.sources.at(order.source).supplierName, order.amount,
                   order.orderBy.toString(Qt::ISODate), order.arrival.toString(Qt::ISODate),
                   percent(order.chance), percent(order.chanceToday), percent(order.chanceLate),
                   order.chanceColder ? percent(*order.chanceColder) : QStringLiteral("–"),
                   order.cost ? domain::moneyWords(order.cost->toDouble(), wording)
                              : QStringLiteral("–")});
    if (!table.isEmpty())
        table.heading({QStringLiteral("From"), QStringLiteral("Amount"), QStringLiteral("Order by"),
                       QStringLiteral("There"), QStringLiteral("Short"), QStringLiteral("if today"),
                       QStringLiteral("a week late"), QStringLiteral("20 °F colder"),
                       QStringLiteral("Cost")});
    return table;
}

void sayTable(QTextStream &out, const char *title, const TextTable &table)
{
    if (!table.isEmpty())
        out << title << "\n" << table.text(2) << "\n";
}

} // namespace

int runReorder(CliCall &call)
{
    std::optional<double> accepted;
    if (const auto code = readAccepted(call, accepted))
        return *code;
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Books &books = subject.books();
    const domain::Wording wording = domain::wordingOf(books);
    const auto fuel = domain::fuelAnswer(books, subject.now, wording);
    const auto seasoning = domain::seasoningOf(books, subject.now);
    domain::WoodAnswerSettings settings;
    settings.acceptedRisk = accepted;
    const WoodAnswer wood =
        domain::woodAnswer(books, fuel, seasoning, subject.now, wording, settings);
    if (call.launch.has(QStringLiteral("json"))) {
        sayJson(call.out, exchange::toJson(wood, books));
        return Finished;
    }
    call.out << yardLine(books, subject.now) << "\n\n";
    sayHeadline(call.out, QStringLiteral("Wood"), wood.headline);
    sayTable(call.out, "If nothing more is ordered", riskTable(books, wood));
    sayTable(call.out, "The cooks behind it", cookTable(books, wood));
    sayTable(call.out, "What can be ordered", orderTable(books, wood, wood.orders));
    sayTable(call.out, "Green, for the next season", orderTable(books, wood, wood.greenOrders));
    return Finished;
}

} // namespace rickyard::app
