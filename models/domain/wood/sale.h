// Wood as it is sold: what one unit holds, and what an invoice claims in all.
#pragma once

#include "models/domain/records/wood.h"

#include <QLocale>

#include <optional>

namespace rickyard::domain {

// An amount in the unit of a sale.
struct SoldAmount {
    SellUnit unit = SellUnit::Cord;
    double count = 0;
    std::optional<Length> stickLength;  // of a face cord
    std::optional<Volume> bundleVolume; // stacked, of one bundle
};
SoldAmount soldAmount(const Offer &offer);
std::optional<SoldAmount> paidFor(const Lot &lot); // missing when nothing is on the invoice

// Stacked volume of one unit. NIST Handbook 130 section 2.4: a cord is 128 ft³ ranked and well
// stowed, an eighth is 16. A face cord is the custom of the trade and no legal measure: 4 × 8 ft ×
// the stick length, 16 in when not given. A loose foot makes 128/180 of a stacked one (180 ft³
// thrown loose make a cord: from memory of a state's statute). Missing for a pound, which has no
// volume of its own, and for a bundle of unknown volume.
std::optional<Volume> unitVolume(SellUnit unit, std::optional<Length> stickLength,
                                 std::optional<Volume> bundleVolume = {});
// Stacked volume of the whole amount; missing as above.
std::optional<Volume> stackedOf(const SoldAmount &amount);
// Weight as is; only for wood sold by the pound.
std::optional<Mass> weightOf(const SoldAmount &amount);

// "half cord", "half cords".
QString unitName(SellUnit unit, bool one);
// "2 half cords"; "1 face cord"; "0.75 cords".
QString unitWords(SellUnit unit, double count);
// The same with what it holds: "1 face cord (42.7 ft³)"; a face cord never stands without it.
QString soldWords(const SoldAmount &amount, bool metric, const QLocale &locale);

} // namespace rickyard::domain
