#include "models/domain/answers/wording.h"
#include "models/domain/plan/reorder_words.h"
#include "models/domain/quantities/units.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

using Reasons = QVector<Reason>;

QString chance(double part, std::optional<double> error, const Wording &wording)
{
    return chanceWords(part, error, wording);
}

void sayStock(Reasons &reasons, const Stock &stock, const Wording &wording)
{
    reasons << Reason{QStringLiteral("Dry wood on hand"),
                      QString(heatWords(stock.readyHeat, wording) + QStringLiteral(" (") +
                              stackedWords(stock.readyStacked, wording) + QLatin1Char(')')),
                      false,
                      {TableId::Lot, 0}};
    if (stock.waitingHeat > Heat())
        reasons << Reason{QStringLiteral("Wet, unread or on hold"),
                          heatWords(stock.waitingHeat, wording),
                          false,
                          {TableId::Lot, 0}};
}

void sayRisks(Reasons &reasons, const Books &books, const WoodAnswer &answer,
              const Wording &wording)
{
    const double accepted = 100 * answer.acceptedRisk;
    const int decimals = std::abs(accepted - std::round(accepted)) < 0.05 ? 0 : 1;
    reasons << Reason{QStringLiteral("Accepted risk"),
                      QString(formatNumber(accepted, decimals, localeOf(wording)) +
                              QStringLiteral(" % for each event")),
                      false,
                      {TableId::Yard, 1}};
    for (const WoodRisk &risk : answer.risks) {
        QString value = chance(risk.chance, risk.error, wording);
        if (risk.whenShort > Heat())
            value += QString(QStringLiteral(", then by ") + heatWords(risk.whenShort, wording) +
                             QStringLiteral(" on average"));
        if (risk.farOff)
            value += QStringLiteral("; too far off to order for yet");
        if (risk.nextSeason)
            value += QStringLiteral("; of the next season");
        reasons << Reason{
            QString(QStringLiteral("Short at ") + occasionWords(books, risk, wording)), value,
            false,
            risk.event != 0 ? Link{TableId::Event, risk.event}
                            : Link{TableId::PlannedCook, risk.plannedCook}};
    }
}

QString costWords(const WoodOrderChoice &order, const Wording &wording)
{
    return order.cost ? moneyWords(order.cost->toDouble(), wording)
                      : QStringLiteral("no price known");
}

// One line a supplier: what, by when, what it costs and what risk is left.
QString choiceWords(const WoodAnswer &answer, const WoodOrderChoice &order, const Wording &wording)
{
    QString words = QString(
        order.amount + QStringLiteral(" by ") + shortDay(order.orderBy, wording) +
        QStringLiteral(", ") + costWords(order, wording) + QStringLiteral(", ") +
        chance(order.chance, order.chanceError, wording) + QStringLiteral(" at ") + order.worst);
    if (!order.lost.isEmpty()) {
        QStringList names;
        for (const int i : order.lost)
            names << answer.risks.at(i).name;
        words += QString(QStringLiteral("; too late for ") + names.join(QStringLiteral(", ")));
    }
    return words;
}

void sayOrder(Reasons &reasons, const WoodAnswer &answer, const Wording &wording)
{
    if (answer.orders.isEmpty())
        return;
    const WoodOrderChoice &order = answer.orders.first();
    const WoodSource &source = answer.sources.at(order.source);
    const Link link{TableId::Supplier, order.supplier};
    const auto say = [&](const QString &label, const QString &value, bool assumption) {
        reasons << Reason{label, value, assumption, link};
    };
    say(QStringLiteral("Order"),
        QString(order.amount + QStringLiteral(", ") + source.name + QStringLiteral(", ") +
                costWords(order, wording)),
        false);
    const bool plain = order.loads.size() == 1 && !order.loads.first().straightToEvent;
    for (qsizetype i = 0; !plain && i < order.loads.size(); ++i) {
        const WoodLoad &load = order.loads.at(i);
        say(QString(QStringLiteral("Load ") + QString::number(i + 1)),
            QString(amountWords(source, load.units, wording) + QStringLiteral(", order by ") +
                    shortDay(load.order, wording) +
                    (load.straightToEvent ? QStringLiteral(", straight to the event: the yard has "
                                                           "no room")
                                          : QString())),
            false);
    }
    say(QStringLiteral("Lead time"), source.leadRecord, source.leadAssumed);
    say(QStringLiteral("Comes most likely on"), shortDay(order.arrival, wording), false);
    say(QStringLiteral("Moisture of new wood"),
        QString(moistureWords(source.moisture, wording) +
                (source.moistureAssumed
                     ? QStringLiteral(", taken: nothing is promised. Ask for it, and read it when "
                                      "it comes")
                     : QStringLiteral(", as promised; read it when it comes"))),
        true);
    say(QString(QStringLiteral("Ordered by ") + shortDay(order.orderBy, wording)),
        QString(chance(order.chance, order.chanceError, wording) + QStringLiteral(" at ") +
                order.worst),
        false);
    say(QStringLiteral("Ordered today"), chance(order.chanceToday, {}, wording), false);
    say(QStringLiteral("A week late on top"), chance(order.chanceLate, {}, wording), false);
    if (order.chanceColder)
        say(QStringLiteral("Every cook 20 °F (11 °C) colder"),
            chance(*order.chanceColder, {}, wording), false);
    for (qsizetype i = 1; i < answer.orders.size(); ++i) {
        const WoodOrderChoice &other = answer.orders.at(i);
        reasons << Reason{
            QString(QStringLiteral("Instead from ") + answer.sources.at(other.source).supplierName),
            choiceWords(answer, other, wording),
            answer.sources.at(other.source).leadAssumed,
            {TableId::Supplier, other.supplier}};
    }
}

void sayGreen(Reasons &reasons, const WoodAnswer &answer, const Wording &wording)
{
    for (const WoodOrderChoice &order : answer.greenOrders)
        reasons << Reason{QString(QStringLiteral("Green for the next season, ") +
                                  answer.sources.at(order.source).supplierName),
                          choiceWords(answer, order, wording),
                          true,
                          {TableId::Supplier, order.supplier}};
}

void sayTextbook(Reasons &reasons, const WoodAnswer &answer)
{
    const ReorderPointCheck &check = answer.crossCheck;
    if (!check.known)
        return;
    reasons << Reason{QStringLiteral("Textbook reorder point"), check.words, false, {}};
    if (!check.note.isEmpty())
        reasons << Reason{QStringLiteral("Do not go by it"), check.note, false, {}};
}

void sayMethod(Reasons &reasons, const Books &books, const WoodAnswer &answer)
{
    const auto say = [&reasons](const QString &label, const QString &value) {
        reasons << Reason{label, value, true, {}};
    };
    say(QStringLiteral("Dry enough"), QStringLiteral("20 % dry basis or less"));
    if (answer.uses.isEmpty())
        return;
    say(QStringLiteral("Any dry wood"), QStringLiteral("is counted for any cook"));
    const bool burning = std::any_of(books.cooks.cbegin(), books.cooks.cend(),
                                     [](const Cook &cook) { return !cook.fireOut; });
    if (burning)
        say(QStringLiteral("A fire is burning"),
            QStringLiteral("what it has taken is counted, what it will still take is not"));
}

} // namespace

QVector<Reason> woodReasons(const Books &books, const WoodAnswer &answer,
                            const QVector<Reason> &grounds, const Wording &wording)
{
    Reasons reasons;
    sayStock(reasons, answer.stock, wording);
    reasons << grounds;
    sayRisks(reasons, books, answer, wording);
    sayOrder(reasons, answer, wording);
    sayGreen(reasons, answer, wording);
    sayTextbook(reasons, answer);
    sayMethod(reasons, books, answer);
    for (const QString &note : answer.notes)
        reasons << Reason{QStringLiteral("Note"), note, false, {}};
    return reasons;
}

} // namespace rickyard::domain
