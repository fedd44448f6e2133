#include "models/domain/plan/reorder_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/wood/sale.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

using Parts = QVector<SentencePart>;

SentencePart plain(const QString &text)
{
    return {text, false};
}

SentencePart strong(const QString &text)
{
    return {text, true};
}

QString counted(qsizetype n, const QString &one, const QString &many)
{
    return QString(QString::number(n) + QLatin1Char(' ') + (n == 1 ? one : many));
}

QString cooksWords(qsizetype n)
{
    return counted(n, QStringLiteral("booked cook"), QStringLiteral("booked cooks"));
}

qsizetype unreadLots(const Stock &stock)
{
    return std::count_if(stock.lots.cbegin(), stock.lots.cend(),
                         [](const LotStock &lot) { return lot.readiness == Readiness::NoReading; });
}

// "runs short of dry wood with a chance of 38 %".
Parts shortWords(const WoodRisk &risk, const Wording &wording)
{
    return {plain(QStringLiteral(" runs short of dry wood with a chance of ")),
            strong(chanceWords(risk.chance, risk.error, wording))};
}

// The first event over the accepted risk that the order is not too late for.
const WoodRisk *firstShort(const WoodAnswer &answer, const QVector<int> &lost, bool green)
{
    for (int i = 0; i < answer.risks.size(); ++i) {
        const WoodRisk &risk = answer.risks.at(i);
        if (risk.nextSeason == green && !risk.farOff && risk.chance > answer.acceptedRisk &&
            !lost.contains(i))
            return &risk;
    }
    return nullptr;
}

Parts orderWords(const Books &books, const WoodAnswer &answer, const WoodOrderChoice &order,
                 const Wording &wording)
{
    const WoodSource &source = answer.sources.at(order.source);
    const QString species = books.species.value(order.species).name.toLower();
    Parts parts{plain(QStringLiteral("rder ")),
                strong(unitWords(source.unit, static_cast<double>(order.units))),
                plain(QString(QStringLiteral(" of ") +
                              (order.green ? QStringLiteral("green ") : QString()) +
                              (species.isEmpty() ? QStringLiteral("wood") : species) +
                              QStringLiteral(" from ") + source.supplierName))};
    if (order.loads.size() > 1)
        parts << plain(QString(QStringLiteral(" in ") + QString::number(order.loads.size()) +
                               QStringLiteral(" loads, the first")));
    if (order.orderBy <= answer.today)
        parts << strong(QStringLiteral(" today"));
    else
        parts << plain(QStringLiteral(" by ")) << strong(dayWithWeekday(order.orderBy, wording));
    return parts;
}

// What no order can be in time for, in sentences; empty when there is nothing of the kind.
Parts lostWords(const Books &books, const WoodAnswer &answer, const QVector<int> &lost,
                const Wording &wording)
{
    Parts parts;
    for (const int i : lost) {
        const WoodRisk &risk = answer.risks.at(i);
        parts << plain(QStringLiteral(" For ")) << strong(occasionWords(books, risk, wording))
              << plain(QStringLiteral(" it comes too late (short with "))
              << strong(chanceWords(risk.chance, risk.error, wording))
              << plain(QStringLiteral("): fetch wood, or move or shorten it."));
    }
    return parts;
}

Headline orderHeadline(const Books &books, const WoodAnswer &answer, const Wording &wording)
{
    const WoodOrderChoice &order = answer.orders.first();
    const bool today = order.orderBy <= answer.today;
    const bool late = !order.keeps;
    Headline headline;
    headline.figure = shortDay(order.orderBy, wording);
    headline.figureUnit = !today ? QStringLiteral("order by")
                          : late ? QStringLiteral("order today, late")
                                 : QStringLiteral("order today");
    headline.standing =
        answer.today.daysTo(order.orderBy) <= kActWithinDays ? Standing::Act : Standing::Watch;
    headline.sentence << plain(QStringLiteral("O")) << orderWords(books, answer, order, wording);
    const WoodRisk *without = firstShort(answer, order.lost, false);
    if (without != nullptr)
        headline.sentence << plain(QStringLiteral("; without it, "))
                          << strong(occasionWords(books, *without, wording))
                          << shortWords(*without, wording);
    if (order.chance > answer.acceptedRisk) {
        const bool same = without != nullptr && without->name == order.worst;
        headline.sentence << plain(same ? QStringLiteral("; with it, still ")
                                        : QString(QStringLiteral("; with it, ") + order.worst +
                                                  QStringLiteral(" still with ")))
                          << strong(chanceWords(order.chance, order.chanceError, wording));
    }
    headline.sentence << plain(QStringLiteral("."))
                      << lostWords(books, answer, order.lost, wording);
    return headline;
}

// An event is at risk and nothing can be ordered for it.
Headline helplessHeadline(const Books &books, const WoodAnswer &answer, const Wording &wording)
{
    const WoodRisk &risk = answer.risks.at(answer.worst);
    const bool dry = std::any_of(answer.sources.cbegin(), answer.sources.cend(),
                                 [](const WoodSource &source) { return !source.green; });
    Headline headline;
    headline.standing = Standing::Act;
    headline.figure = chanceWords(risk.chance, risk.error, wording);
    headline.figureUnit = QStringLiteral("chance of running short");
    headline.sentence << strong(occasionWords(books, risk, wording)) << shortWords(risk, wording);
    if (answer.sources.isEmpty())
        headline.sentence << plain(QStringLiteral(". No supplier is on the books: enter one with "
                                                  "its unit, lead time and price."));
    else if (!dry)
        headline.sentence << plain(QStringLiteral(". No supplier promises it dry: ask for wood at "
                                                  "20 % dry basis or less."));
    else
        headline.sentence << plain(QStringLiteral(", and no order can be counted on to come in "
                                                  "time: fetch wood, or move or shorten it."));
    return headline;
}

Headline enoughHeadline(const Books &books, const WoodAnswer &answer, const Wording &wording)
{
    Headline headline;
    headline.standing = Standing::Good;
    qsizetype cooks = 0;
    QDate last = answer.today;
    for (const PlannedUse &use : answer.uses) {
        const QDate day = dayOf(use.light, zoneOf(wording));
        const auto later =
            std::any_of(answer.risks.cbegin(), answer.risks.cend(), [&](const WoodRisk &risk) {
                return (risk.farOff || risk.nextSeason) &&
                       (risk.event != 0 ? risk.event == use.event
                                        : risk.plannedCook == use.plannedCook);
            });
        if (later)
            continue;
        ++cooks;
        last = std::max(last, day);
    }
    headline.figure = QString::number(cooks);
    headline.figureUnit =
        cooks == 1 ? QStringLiteral("cook covered") : QStringLiteral("cooks covered");
    headline.sentence << plain(QStringLiteral("No order needed: dry wood covers "));
    if (cooks == 0)
        headline.sentence << plain(QStringLiteral("what is booked, which is all too far off to "
                                                  "order for."));
    else if (cooks == 1)
        headline.sentence << strong(QStringLiteral("the one booked cook"))
                          << plain(QStringLiteral(" on "));
    else
        headline.sentence << strong(QString(QStringLiteral("all ") + cooksWords(cooks)))
                          << plain(QStringLiteral(" until "));
    if (cooks == 0)
        return headline;
    headline.sentence << strong(shortDay(last, wording));
    if (answer.worst >= 0) {
        const WoodRisk &risk = answer.risks.at(answer.worst);
        headline.sentence << plain(QString(QStringLiteral("; most at risk is ") +
                                           occasionWords(books, risk, wording) +
                                           QStringLiteral(" with ")))
                          << strong(chanceWords(risk.chance, risk.error, wording));
    }
    headline.sentence << plain(QStringLiteral("."));
    return headline;
}

// Green wood for the next season, behind whatever was said of this one.
void addGreen(Headline &headline, const Books &books, const WoodAnswer &answer,
              const Wording &wording)
{
    const WoodOrderChoice &order = answer.greenOrders.first();
    headline.sentence << plain(QStringLiteral(" For the next season, o"))
                      << orderWords(books, answer, order, wording);
    if (const WoodRisk *risk = firstShort(answer, order.lost, true))
        headline.sentence << plain(QStringLiteral(", or "))
                          << strong(occasionWords(books, *risk, wording))
                          << shortWords(*risk, wording);
    headline.sentence << plain(QStringLiteral("."));
    if (!answer.orders.isEmpty())
        return;
    headline.figure = shortDay(order.orderBy, wording);
    headline.figureUnit = QStringLiteral("order green wood by");
    headline.standing =
        answer.today.daysTo(order.orderBy) <= kActWithinDays ? Standing::Act : Standing::Watch;
}

Headline unknown(const QString &sentence, const QString &figure, const QString &unit)
{
    Headline headline;
    headline.standing = Standing::Unknown;
    headline.sentence << plain(sentence);
    headline.figure = figure;
    headline.figureUnit = unit;
    return headline;
}

} // namespace

QString occasionWords(const Books &books, const WoodRisk &risk, const Wording &wording)
{
    const QDate day = books.events.contains(risk.event)
                          ? dayOf(books.events.value(risk.event).start, zoneOf(wording))
                          : risk.day;
    return QString(risk.name + QStringLiteral(" on ") + shortDay(day, wording));
}

Headline woodHeadline(const Books &books, const WoodAnswer &answer, const Wording &wording)
{
    if (books.movements.isEmpty())
        return unknown(QStringLiteral("No wood is on the books: enter the deliveries that are in "
                                      "the yard, then read their moisture."),
                       QStringLiteral("–"), QString());
    if (answer.uses.isEmpty())
        return unknown(QStringLiteral("No cooks are booked: enter the next event and its cooks to "
                                      "see whether the dry wood lasts."),
                       QString::number(qRound64(seasonedPounds(answer.stock.readyHeat))),
                       QStringLiteral("seasoned lb dry"));
    const qsizetype unread = unreadLots(answer.stock);
    if (answer.needed && answer.stock.readyHeat.isZero() && unread > 0)
        return unknown(QString(QStringLiteral("Read the moisture of ") +
                               counted(unread, QStringLiteral("lot"), QStringLiteral("lots")) +
                               QStringLiteral(" first: no other wood is known to be dry, and ") +
                               cooksWords(answer.uses.size()) + QStringLiteral(" hang on it.")),
                       QString::number(unread), QStringLiteral("to read"));
    Headline headline = !answer.needed            ? enoughHeadline(books, answer, wording)
                        : answer.orders.isEmpty() ? helplessHeadline(books, answer, wording)
                                                  : orderHeadline(books, answer, wording);
    if (!answer.greenOrders.isEmpty())
        addGreen(headline, books, answer, wording);
    return headline;
}

} // namespace rickyard::domain
