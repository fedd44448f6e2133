// Two cooks side by side in words: every figure of both, and how the second differs from the first.
#pragma once

#include "models/domain/fire/cook_wood.h"
#include "models/domain/fire/fuel.h"
#include "views/widgets/sentence_label.h"

namespace rickyard::views {

// All that is compared of one cook.
struct ComparedCook {
    domain::Cook record;
    domain::CookFuel fuel; // as answered; of a cook that has no answer yet only its ids
    domain::CookWood wood;
    domain::FeedRhythm rhythm;
    QStringList notes; // in the order of time
};
ComparedCook comparedCook(const domain::Books &books, const QVector<domain::CookFuel> &cooks,
                          domain::RecordId cook, domain::Instant now);

struct CompareRow {
    QString heading; // starts a group; the rest is empty then
    QString label;
    QString first;
    QString second;
    QString difference; // of the second against the first; empty where none can be told
    bool differs = false;
};
QVector<CompareRow> compareRows(const domain::Books &books, const ComparedCook &first,
                                const ComparedCook &second);
// "Fish Fry took 44 seasoned lb more than Market, 3.2 more an hour."
QVector<SentencePart> compareSentence(const domain::Books &books, const ComparedCook &first,
                                      const ComparedCook &second);

} // namespace rickyard::views
