#include "models/domain/fire/cook_doubts.h"

#include <algorithm>

namespace rickyard::domain {

int twinFeeds(QVector<const Feed *> feeds)
{
    constexpr qint64 kTwins = 5; // seconds
    std::stable_sort(feeds.begin(), feeds.end(),
                     [](const Feed *a, const Feed *b) { return a->time < b->time; });
    int twins = 0;
    for (qsizetype i = 1; i < feeds.size(); ++i) {
        const Feed &a = *feeds.at(i - 1);
        const Feed &b = *feeds.at(i);
        twins += a.lot == b.lot && a.pieces == b.pieces && a.weight == b.weight &&
                         (b.time - a.time).base() <= kTwins
                     ? 1
                     : 0;
    }
    return twins;
}

} // namespace rickyard::domain
