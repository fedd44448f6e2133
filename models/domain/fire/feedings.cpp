#include "models/domain/fire/feedings.h"

#include <algorithm>

namespace rickyard::domain {

QVector<Instant> feedingStarts(QVector<Instant> feeds)
{
    std::sort(feeds.begin(), feeds.end());
    QVector<Instant> starts;
    for (qsizetype i = 0; i < feeds.size(); ++i)
        if (i == 0 || feeds.at(i) - feeds.at(i - 1) > kOneFeeding)
            starts << feeds.at(i);
    return starts;
}

} // namespace rickyard::domain
