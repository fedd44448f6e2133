#include "models/domain/plan/scorecard.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/supply.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/delivery.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

void judgeDays(Scorecard &card, const Books &books, const Wording &wording)
{
    for (const WoodOrder &order : books.orders)
        if (order.supplier == card.supplier && order.state != OrderState::Draft)
            ++card.orders;
    const LeadRecord record = leadRecordOf(books, card.supplier, wording);
    card.neverCame = record.neverCame;
    card.judged = static_cast<int>(record.daysLate.size());
    if (record.daysLate.empty())
        return;
    std::vector<double> late;
    for (const double days : record.daysLate)
        late.push_back(std::max(0.0, days)); // before the day is no credit against another order
    card.onTime = static_cast<int>(std::count(late.cbegin(), late.cend(), 0.0));
    card.medianLate = statistics::median(late).value();
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
