// What a fire should take, in plain words and in parts: "A 12-hour cook at 250 °F (41 °F outside,
// 9 mph, half sheltered) should take 128 lb, likely 108 to 150. Shell 71 %, wind 14 %, food 9 %,
// lighting 6 %."
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

// Wood as it is (with its water) that gives a net heat, for hardwood of usual composition
// (heat_value.h).
Mass woodFor(Heat heat, Moisture moisture);

struct UsePart {
    HeatColumn column = ShellColumn;
    QString label; // "Shell"
    double share = 0;
};
// Largest first; parts under half a percent are left out.
QVector<UsePart> usePartsOf(const ExpectedUse &use);
// "Shell 71 %, wind 14 %, food 9 %, lighting 6 %"
QString usePartsWords(const ExpectedUse &use, const Wording &wording);

struct UseWords {
    QString fire;   // "A 12-hour cook at 250 °F (41 °F outside, 9 mph, half sheltered)"
    QString amount; // "128 lb"
    QString likely; // "108 to 150 lb"
    QString parts;
    // All of it as one text.
    [[nodiscard]] QString sentence() const;
};
UseWords useWords(const Books &books, const PlannedFire &fire, const ExpectedUse &use,
                  Moisture moisture, const Wording &wording);

} // namespace rickyard::domain
