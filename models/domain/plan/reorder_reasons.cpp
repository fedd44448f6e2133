#include "models/domain/answers/wording.h"
#include "models/domain/plan/reorder_words.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

QString amount(Heat heat, Volume stacked, const Wording &wording)
{
    return QString(heatWords(heat, wording) + QStringLiteral(" (") +
                   stackedWords(stacked, wording) + QLatin1Char(')'));
}

void stockReasons(QVector<Reason> &reasons, const Books &books, const Stock &stock,
                  const Wording &wording)
{
    reasons << Reason{QStringLiteral("Dry wood on hand"),
                      amount(stock.readyHeat, stock.readyStacked, wording),
                      false,
                      {TableId::Lot, 0}};
    if (stock.waitingHeat.base() > 0)
        reasons << Reason{QStringLiteral("Not counted"),
                          QString(heatWords(stock.waitingHeat, wording) +
                                  QStringLiteral(" wet, unread or on hold")),
                          false,
                          {TableId::Lot, 0}};
    for (const LotStock &lot : stock.lots) {
        const QString name = books.lots.value(lot.lot).name;
        if (lot.readiness == Readiness::NoReading)
            reasons << Reason{name,
                              QStringLiteral("no moisture reading: read it, it may count as dry"),
                              false,
                              {TableId::Lot, lot.lot}};
        if (lot.readiness == Readiness::Dry && !lot.moistureNote.isEmpty())
            reasons << Reason{name, lot.moistureNote, true, {TableId::Lot, lot.lot}};
        if (lot.dryMass < -kLeastWood)
            reasons << Reason{name,
                              QStringLiteral("more was burned than came in: count the rick"),
                              false,
                              {TableId::Lot, lot.lot}};
    }
}

void comingReasons(QVector<Reason> &reasons, const WoodGrounds &grounds, const Wording &wording)
{
    for (const OnTheWay &order : grounds.coming) {
        QString value = heatWords(order.heat, wording);
        if (order.day.isValid())
            value += QString(QStringLiteral(" promised for ") + shortDay(order.day, wording));
        if (!order.counted)
            value += QString(QStringLiteral(", not counted: ") + order.why);
        reasons << Reason{
            QStringLiteral("On the way"), value, order.counted, {TableId::WoodOrder, order.order}};
    }
}

void needReasons(QVector<Reason> &reasons, const WoodAnswer &answer, const WoodGrounds &grounds,
                 const Wording &wording)
{
    if (answer.uses.isEmpty())
        return;
    const PlannedUse &last = answer.uses.last();
    const QString until = shortDay(dayOf(last.light, zoneOf(wording)), wording);
    reasons << Reason{
        QStringLiteral("Booked cooks"),
        QString(QString::number(answer.uses.size()) + QStringLiteral(" until ") + until),
        false,
        {TableId::PlannedCook, 0}};
    reasons << Reason{QStringLiteral("Their expected use"),
                      QString(heatWords(grounds.needMiddle, wording) + QStringLiteral(", ") +
                              heatWords(grounds.needLower, wording) + QStringLiteral(" to ") +
                              heatWords(grounds.needUpper, wording)),
                      false,
                      {TableId::PlannedCook, 0}};
    QStringList said;
    for (const PlannedUse &use : answer.uses) {
        for (const QString &basis : {use.useBasis, use.weatherBasis}) {
            if (basis.isEmpty() || said.contains(basis))
                continue;
            said << basis;
            reasons << Reason{basis == use.useBasis ? QStringLiteral("Use reckoned from")
                                                    : QStringLiteral("Weather"),
                              basis,
                              use.assumed,
                              {TableId::PlannedCook, use.plannedCook}};
        }
    }
}

void orderReasons(QVector<Reason> &reasons, const Books &books, const WoodAnswer &answer,
                  const WoodGrounds &grounds, const Wording &wording)
{
    if (!grounds.purchase)
        return;
    const Purchase &purchase = *grounds.purchase;
    const Link supplier{TableId::Supplier, purchase.supplier};
    reasons << Reason{QStringLiteral("Missing"),
                      heatWords(answer.missing, wording),
                      false,
                      {TableId::PlannedCook, answer.firstShortCook}};
    reasons << Reason{QStringLiteral("Order"), answer.amountInUnit, false, supplier};
    QString name = books.suppliers.value(purchase.supplier).name;
    if (purchase.supplier == 0)
        name = QStringLiteral("none on the books: enter one with its lead time and price");
    else if (purchase.price)
        name += QString(
            QStringLiteral(", ") +
            moneyWords(purchase.price->toDouble() * static_cast<double>(answer.units), wording));
    reasons << Reason{QStringLiteral("Supplier"), name, purchase.supplier == 0, supplier};
    reasons << Reason{
        QStringLiteral("Lead time"),
        QString(daysWords(purchase.lead.days()) + QStringLiteral(", ") + purchase.lead.basis),
        purchase.lead.assumed, supplier};
    reasons << Reason{
        QStringLiteral("Moisture of new wood"),
        QString(moistureWords(purchase.moisture, wording) +
                (purchase.moistureAssumed ? QStringLiteral(", taken: nothing is promised")
                                          : QStringLiteral(", as promised"))),
        true, supplier};
    if (!purchase.dry)
        reasons << Reason{QStringLiteral("Too wet to burn at once"),
                          QStringLiteral("find a supplier of dry wood, or order a season ahead"),
                          false, supplier};
}

void methodReasons(QVector<Reason> &reasons, const Books &books, const WoodAnswer &answer)
{
    const auto say = [&reasons](const QString &label, const QString &value) {
        reasons << Reason{label, value, true, {}};
    };
    say(QStringLiteral("Dry enough"),
        QStringLiteral("20 % dry basis or less, by the latest reading"));
    if (answer.uses.isEmpty())
        return;
    say(QStringLiteral("Need is covered"),
        QStringLiteral("up to the upper bound of a 90 % interval; cooks taken as independent"));
    say(QStringLiteral("Any dry wood"),
        QStringLiteral("is counted for any cook; cooks that are not booked are not foreseen"));
    const bool burning = std::any_of(books.cooks.cbegin(), books.cooks.cend(),
                                     [](const Cook &cook) { return !cook.fireOut; });
    if (burning)
        say(QStringLiteral("A fire is burning"),
            QStringLiteral("what it has taken is counted, what it will still take is not"));
}

} // namespace

QVector<Reason> woodReasons(const Books &books, const WoodAnswer &answer,
                            const WoodGrounds &grounds, const Wording &wording)
{
    QVector<Reason> reasons;
    stockReasons(reasons, books, answer.stock, wording);
    comingReasons(reasons, grounds, wording);
    needReasons(reasons, answer, grounds, wording);
    orderReasons(reasons, books, answer, grounds, wording);
    methodReasons(reasons, books, answer);
    return reasons;
}

} // namespace rickyard::domain
