// How each supplier kept to their word, as figures side by side.
#pragma once

#include "models/domain/wood/supplier_record.h"

namespace rickyard::domain {

struct Scorecard {
    RecordId supplier = 0;
    QString name;
    int orders = 0;    // sent, whatever became of them
    int judged = 0;    // that came and had a day to keep: promised, else their usual time
    int onTime = 0;    // of those
    int neverCame = 0; // asked for in vain and cancelled
    std::optional<double> medianLate; // days, 0 when on the day or before it; of those judged
    std::optional<double> worstLate;
    SupplierRecord record; // short and wet deliveries
    // What their wood cost a seasoned pound, over the deliveries with a price and a known heat.
    std::optional<double> centsPerSeasonedPound;
    int priced = 0; // deliveries that figure rests on

    [[nodiscard]] bool empty() const { return judged == 0 && record.deliveries == 0; }
    [[nodiscard]] std::optional<double> onTimeShare() const;
};

Scorecard scorecardOf(const Books &books, RecordId supplier, const Wording &wording);
// Every supplier, by name.
QVector<Scorecard> scorecards(const Books &books, const Wording &wording);
// One line for where a supplier is chosen: "5 orders, 3 on time; 7 % short on average".
QString scorecardWords(const Scorecard &card, const Wording &wording);

} // namespace rickyard::domain
