#include "models/domain/plan/scorecard.h"

#include "models/domain/answers/wording.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/delivery.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

QDate cameOn(const Books &books, const WoodOrder &order, const Wording &wording)
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

void judgeDays(Scorecard &card, const Books &books, const Wording &wording)
{
    // The usual time that is theirs by their own word or the yard's figure, not the middle of the
    // very orders that are judged here.
    const Supplier supplier = books.suppliers.value(card.supplier);
    QVector<double> late;
    for (const WoodOrder &order : books.orders) {
        if (order.supplier != card.supplier || order.state == OrderState::Draft)
            continue;
        ++card.orders;
        const QDate came = cameOn(books, order, wording);
        QDate due = order.promised;
        if (!due.isValid() && order.ordered.isValid() && supplier.leadTime)
            due = order.ordered.addDays((supplier.leadTime->base() + 86399) / 86400);
        if (!came.isValid() || !due.isValid() || order.state == OrderState::Cancelled)
            continue;
        late << static_cast<double>(std::max<qint64>(0, due.daysTo(came)));
    }
    card.judged = static_cast<int>(late.size());
    card.onTime = static_cast<int>(std::count(late.cbegin(), late.cend(), 0.0));
    if (late.isEmpty())
        return;
    card.medianLate =
        statistics::median({late.constData(), static_cast<size_t>(late.size())}).value();
    card.worstLate = *std::max_element(late.cbegin(), late.cend());
}

void judgePrice(Scorecard &card, const Books &books, const Wording &wording)
{
    double cents = 0;
    double seasoned = 0;
    for (const Lot &lot : books.lots) {
        if (lot.supplier != card.supplier || !lot.price)
            continue;
        const DeliveryCheck check = checkDelivery(books, lot, wording);
        if (!check.netHeat || check.netHeat->base() <= 0)
            continue;
        cents += lot.price->toDouble();
        seasoned += seasonedPounds(*check.netHeat);
        ++card.priced;
    }
    if (seasoned > 0)
        card.centsPerSeasonedPound = cents / seasoned;
}

} // namespace

std::optional<double> Scorecard::onTimeShare() const
{
    return judged == 0 ? std::nullopt : std::optional(double(onTime) / judged);
}

Scorecard scorecardOf(const Books &books, RecordId supplier, const Wording &wording)
{
    Scorecard card;
    card.supplier = supplier;
    card.name = books.suppliers.value(supplier).name;
    card.record = supplierRecord(books, supplier, wording);
    judgeDays(card, books, wording);
    judgePrice(card, books, wording);
    return card;
}

QVector<Scorecard> scorecards(const Books &books, const Wording &wording)
{
    QVector<Scorecard> cards;
    for (const Supplier &supplier : books.suppliers)
        cards << scorecardOf(books, supplier.id, wording);
    std::stable_sort(cards.begin(), cards.end(), [](const Scorecard &a, const Scorecard &b) {
        return a.name.compare(b.name, Qt::CaseInsensitive) < 0;
    });
    return cards;
}

QString scorecardWords(const Scorecard &card, const Wording &wording)
{
    if (card.empty())
        return QStringLiteral("No history yet: taken at their word, with a wide default.");
    const QString days = card.judged == 0
                             ? QStringLiteral("no day to compare with")
                             : QString(QString::number(card.onTime) + QStringLiteral(" of ") +
                                       QString::number(card.judged) + QStringLiteral(" on time"));
    return QString(days + QStringLiteral("; ") + shortWords(card.record, wording) +
                   QStringLiteral("; ") + wetWords(card.record, wording) + QLatin1Char('.'));
}

} // namespace rickyard::domain
