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

// "Mill Field Supper on 12 Dec", else "the cook on Long Pit on 12 Dec".
QString occasion(const Books &books, const PlannedUse &use, const Wording &wording)
{
    const QTimeZone zone = zoneOf(wording);
    if (books.events.contains(use.event)) {
        const Event event = books.events.value(use.event);
        return QString(event.name + QStringLiteral(" on ") +
                       shortDay(dayOf(event.start, zone), wording));
    }
    const QString pit = books.pits.value(use.pit).name;
    return QString(
        QStringLiteral("the cook ") +
        (pit.isEmpty() ? QString() : QString(QStringLiteral("on ") + pit + QLatin1Char(' '))) +
        QStringLiteral("on ") + shortDay(dayOf(use.light, zone), wording));
}

// The worst gap among the cooks of the first short event, and whether the middle finds it too.
struct Gap {
    Heat heat;
    bool certain = false;
};

Gap gapAtFirst(const WoodAnswer &answer)
{
    Gap gap;
    for (const PlannedUse &use : answer.uses) {
        const bool same = use.plannedCook == answer.firstShortCook ||
                          (use.event != 0 && use.event == answer.firstShortEvent);
        if (!same)
            continue;
        gap.heat = std::max(gap.heat, use.shortfall);
        gap.certain = gap.certain || use.stockAfter.base() < 0;
    }
    return gap;
}

Parts shortWords(const Books &books, const WoodAnswer &answer, const Wording &wording)
{
    const auto first =
        std::find_if(answer.uses.cbegin(), answer.uses.cend(), [&](const PlannedUse &use) {
            return use.plannedCook == answer.firstShortCook;
        });
    const Gap gap = gapAtFirst(answer);
    const QString where = occasion(books, *first, wording);
    if (first == answer.uses.cbegin())
        return {
            plain(QString(QStringLiteral("dry wood ") +
                          (gap.certain ? QStringLiteral("falls ") : QStringLiteral("may fall ")))),
            strong(heatWords(gap.heat, wording)), plain(QStringLiteral(" short at ")),
            strong(where), plain(QStringLiteral("."))};
    return {plain(QStringLiteral("dry wood lasts until ")), strong(where),
            plain(gap.certain ? QStringLiteral(", then runs ") : QStringLiteral(", then may run ")),
            strong(heatWords(gap.heat, wording)), plain(QStringLiteral(" short."))};
}

Headline orderHeadline(const Books &books, const WoodAnswer &answer, const WoodGrounds &grounds,
                       const Wording &wording)
{
    const Purchase &purchase = *grounds.purchase;
    const QString species = books.species.value(answer.species).name.toLower();
    const QString wood = species.isEmpty() ? QStringLiteral("of dry wood")
                                           : QString(QStringLiteral("of ") + species);
    Headline headline;
    headline.figure = shortDay(answer.orderBy, wording);
    headline.sentence << plain(QStringLiteral("Order "))
                      << strong(unitWords(purchase.unit, static_cast<double>(answer.units)))
                      << plain(QString(QLatin1Char(' ') + wood));
    if (answer.lateDays > 0) {
        headline.standing = Standing::Act;
        headline.figureUnit = QStringLiteral("order today, late");
        headline.sentence << strong(QStringLiteral(" today"))
                          << plain(QString(QStringLiteral(", ") + daysWords(answer.lateDays) +
                                           QStringLiteral(" late for a delivery that takes ") +
                                           daysWords(purchase.lead.days()) + QStringLiteral(": ")));
    } else {
        headline.standing = grounds.today.daysTo(answer.orderBy) <= kActWithinDays
                                ? Standing::Act
                                : Standing::Watch;
        headline.figureUnit = QStringLiteral("order by");
        headline.sentence << plain(QStringLiteral(" by "))
                          << strong(dayWithWeekday(answer.orderBy, wording))
                          << plain(QStringLiteral(": "));
    }
    headline.sentence << shortWords(books, answer, wording);
    if (!purchase.dry)
        headline.sentence << plain(QStringLiteral(" No supplier promises it dry."));
    return headline;
}

Headline enoughHeadline(const WoodAnswer &answer, const Wording &wording)
{
    Headline headline;
    headline.standing = Standing::Good;
    const qsizetype cooks = answer.uses.size();
    const QString last = shortDay(dayOf(answer.uses.last().light, zoneOf(wording)), wording);
    headline.figure = QString::number(cooks);
    headline.figureUnit =
        cooks == 1 ? QStringLiteral("cook covered") : QStringLiteral("cooks covered");
    headline.sentence << plain(QStringLiteral("No order needed: dry wood covers "));
    if (cooks == 1)
        headline.sentence << strong(QStringLiteral("the one booked cook"))
                          << plain(QStringLiteral(" on "));
    else
        headline.sentence << strong(QString(QStringLiteral("all ") + cooksWords(cooks)))
                          << plain(QStringLiteral(" until "));
    headline.sentence << strong(last) << plain(QStringLiteral("."));
    return headline;
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

Headline sentenceOf(const Books &books, const WoodAnswer &answer, const WoodGrounds &grounds,
                    const Wording &wording)
{
    const QString none = QStringLiteral("–");
    if (books.movements.isEmpty())
        return unknown(QStringLiteral("No wood is on the books: enter the deliveries that are in "
                                      "the yard, then read their moisture."),
                       none, QString());
    if (answer.uses.isEmpty())
        return unknown(QStringLiteral("No cooks are booked: enter the next event and its cooks to "
                                      "see whether the dry wood lasts."),
                       QString::number(qRound64(seasonedPounds(answer.stock.readyHeat))),
                       QStringLiteral("seasoned lb dry"));
    if (!grounds.purchase)
        return enoughHeadline(answer, wording);
    const qsizetype unread = unreadLots(answer.stock);
    if (answer.stock.readyHeat.isZero() && unread > 0)
        return unknown(QString(QStringLiteral("Read the moisture of ") +
                               counted(unread, QStringLiteral("lot"), QStringLiteral("lots")) +
                               QStringLiteral(" first: wood without a reading does not count as "
                                              "dry, and no other is left for ") +
                               cooksWords(answer.uses.size()) + QLatin1Char('.')),
                       QString::number(unread), QStringLiteral("to read"));
    return orderHeadline(books, answer, grounds, wording);
}

} // namespace

Headline woodHeadline(const Books &books, const WoodAnswer &answer, const WoodGrounds &grounds,
                      const Wording &wording)
{
    Headline headline = sentenceOf(books, answer, grounds, wording);
    headline.reasons = woodReasons(books, answer, grounds, wording);
    return headline;
}

} // namespace rickyard::domain
