#include "app/cli/report.h"
#include "app/cli/text_table.h"
#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/exchange/answers_json.h"

namespace rickyard::app {

using domain::Answers;
using domain::Books;

namespace {

QString readinessWord(domain::Readiness readiness)
{
    switch (readiness) {
    case domain::Readiness::Dry:
        return QStringLiteral("dry");
    case domain::Readiness::Wet:
        return QStringLiteral("too wet");
    case domain::Readiness::NoReading:
        return QStringLiteral("no reading");
    case domain::Readiness::OnHold:
        return QStringLiteral("on hold");
    case domain::Readiness::NeverBurn:
        return QStringLiteral("never for food");
    case domain::Readiness::Empty:
        break;
    }
    return QStringLiteral("used up");
}

QString percent(std::optional<double> part)
{
    return part ? QString::asprintf("%+.0f %%", 100 * *part) : QStringLiteral("–");
}

TextTable fuelTable(const Books &books, const domain::FuelAnswer &fuel)
{
    TextTable table({Align::Left, Align::Left, Align::Left, Align::Right, Align::Right,
                     Align::Right, Align::Right});
    for (const domain::CookFuel &cook : fuel.cooks) {
        const QString interval =
            cook.lower && cook.upper
                ? QStringLiteral("%1 to %2")
                      .arg(QString::number(domain::seasonedPounds(*cook.lower), 'f', 0),
                           QString::number(domain::seasonedPounds(*cook.upper), 'f', 0))
                : QStringLiteral("–");
        table.row({dayText(books, cook.lit), books.pits.value(cook.pit).name,
                   books.cooks.value(cook.cook).name,
                   QString::number(domain::seasonedPounds(cook.netHeat), 'f', 0),
                   cook.expected ? QString::number(domain::seasonedPounds(*cook.expected), 'f', 0)
                                 : QStringLiteral("–"),
                   interval, percent(cook.excess)});
    }
    table.heading({QStringLiteral("Lit"), QStringLiteral("Pit"), QStringLiteral("Cook"),
                   QStringLiteral("Burned"), QStringLiteral("Expected"),
                   QStringLiteral("90 % between"), QStringLiteral("Excess")});
    return table;
}

TextTable stockTable(const Books &books, const domain::Stock &stock)
{
    TextTable table(
        {Align::Left, Align::Left, Align::Right, Align::Right, Align::Right, Align::Right});
    for (const domain::LotStock &lot : stock.lots) {
        if (lot.readiness == domain::Readiness::Empty)
            continue;
        table.row({books.lots.value(lot.lot).name, readinessWord(lot.readiness),
                   lot.moisture ? QString::number(lot.moisture->toDouble() / 1000, 'f', 1)
                                : QStringLiteral("–"),
                   domain::stackedWords(lot.stacked, domain::wordingOf(books)),
                   lot.splits ? QString::number(*lot.splits, 'f', 0) : QStringLiteral("–"),
                   heatText(books, lot.netHeat)});
    }

    if (!table.isEmpty())
        table.heading({QStringLiteral("Lot"), QStringLiteral("Ready"),
                       QStringLiteral("% dry basis"), QStringLiteral("Stacked"),
                       QStringLiteral("Splits"), QStringLiteral("Net heat")});
    return table;
}

} // namespace

int runAnswers(CliCall &call)
{
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Answers answers = domain::answersOf(subject.books(), subject.now);
    if (call.launch.has(QStringLiteral("json"))) {
        sayJson(call.out, exchange::toJson(answers, subject.books()));
        return Finished;
    }
    call.out << yardLine(subject.books(), subject.now) << "\n\n";
    sayHeadline(call.out, QStringLiteral("Wood"), answers.wood.headline);
    sayHeadline(call.out, QStringLiteral("Fire"), answers.fuel.headline);
    sayHeadline(call.out, QStringLiteral("Upkeep"), answers.upkeep.headline);
    return Finished;
}

int runFuel(CliCall &call)
{
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Books &books = subject.books();
    const domain::FuelAnswer fuel =
        domain::fuelAnswer(books, subject.now, domain::wordingOf(books));
    if (call.launch.has(QStringLiteral("json"))) {
        sayJson(call.out, exchange::toJson(fuel, books));
        return Finished;
    }
    if (call.launch.has(QStringLiteral("csv"))) {
        call.out << QString::fromUtf8(exchange::fuelCsv(fuel, books));
        return Finished;
    }
    call.out << yardLine(books, subject.now) << "\n\n";
    sayHeadline(call.out, QStringLiteral("Fire"), fuel.headline);
    if (fuel.cooks.isEmpty())
        call.out << "No cook is on the books yet.\n";
    else
        call.out << fuelTable(books, fuel).text() << "\nBurned and expected in seasoned lb: the "
                 << "net heat of 1 lb of hardwood at 20 % dry basis.\n";
    return Finished;
}

int runStock(CliCall &call)
{
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Books &books = subject.books();
    const domain::Stock stock = domain::stockAt(books, subject.now);
    call.out << yardLine(books, subject.now) << "\n\n";
    const TextTable table = stockTable(books, stock);
    if (table.isEmpty()) {
        call.out << "There is no wood on the books.\n";
        return Finished;
    }
    call.out << table.text() << "\nDry enough to burn   " << heatText(books, stock.readyHeat)
             << ", " << domain::stackedWords(stock.readyStacked, domain::wordingOf(books))
             << "\nWet, unread or held  " << heatText(books, stock.waitingHeat) << "\n";
    const auto fuel = domain::fuelAnswer(books, subject.now, domain::wordingOf(books));
    const auto order =
        domain::burnFirst(books, stock, domain::plannedUses(books, fuel, subject.now));
    TextTable burn({Align::Right, Align::Left, Align::Left});
    for (const domain::BurnChoice &choice : order)
        burn.row({choice.rank == 0 ? QStringLiteral("–") : QString::number(choice.rank),
                  books.lots.value(choice.lot).name, choice.reason});
    burn.heading({QStringLiteral("Burn"), QStringLiteral("Lot"), QStringLiteral("Because")});
    call.out << "\n" << burn.text();
    return Finished;
}

int runMoisture(CliCall &call)
{
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Books &books = subject.books();
    const auto seasoning = domain::seasoningOf(books, subject.now);
    if (call.launch.has(QStringLiteral("json"))) {
        sayJson(call.out, exchange::toJson(seasoning, books));
        return Finished;
    }
    TextTable table(
        {Align::Left, Align::Left, Align::Right, Align::Right, Align::Left, Align::Left});
    for (const domain::LotStock &lot : domain::stockAt(books, subject.now).lots) {
        if (lot.readiness == domain::Readiness::Empty)
            continue;
        const auto number = [](std::optional<domain::Moisture> u) {
            return u ? QString::number(u->toDouble() / 1000, 'f', 1) : QStringLiteral("–");
        };
        table.row({books.lots.value(lot.lot).name, dayText(books, lot.readAt), number(lot.moisture),
                   number(lot.moistureHalfWidth),
                   QString(readinessWord(lot.readiness) +
                           (lot.moistureNote.isEmpty()
                                ? QString()
                                : QString(QStringLiteral("; ") + lot.moistureNote))),
                   seasoning.contains(lot.lot) ? domain::readyWords(seasoning.value(lot.lot))
                                               : QStringLiteral("–")});
    }
    call.out << yardLine(books, subject.now) << "\n\n";
    if (table.isEmpty()) {
        call.out << "There is no wood on the books.\n";
        return Finished;
    }
    table.heading({QStringLiteral("Lot"), QStringLiteral("Read"), QStringLiteral("% dry basis"),
                   QStringLiteral("±"), QStringLiteral("Ready"), QStringLiteral("Forecast")});
    call.out << table.text() << "\n± is half of the 95 % interval of the mean. Dry enough is "
             << domain::moistureWords(domain::kDryEnough, domain::wordingOf(books))
             << " (common practice).\nThe forecast's days are those of a 10 and a 90 % chance.\n";
    return Finished;
}

} // namespace rickyard::app
