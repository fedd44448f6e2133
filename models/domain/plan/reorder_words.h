// The wood answer in words: its sentence, its figure and its reasons.
#pragma once

#include "models/domain/plan/reorder.h"

namespace rickyard::domain {

// Without reasons.
Headline woodHeadline(const Books &books, const WoodAnswer &answer, const Wording &wording);
// `grounds`: what the question rests on.
QVector<Reason> woodReasons(const Books &books, const WoodAnswer &answer,
                            const QVector<Reason> &grounds, const Wording &wording);
// "Mill Field Supper on 12 Dec"; an event by the day it is served.
QString occasionWords(const Books &books, const WoodRisk &risk, const Wording &wording);

} // namespace rickyard::domain
