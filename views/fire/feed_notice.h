// Says once, gently, that a fire wants wood: when the next feed is due by the cook's own pace, and
// once more when it is late by half of that pace. Silence is a setting. The page itself stays calm.
#pragma once

#include "views/page.h"

#include <QHash>

namespace rickyard::views {

class FeedNotice : public QObject
{
    Q_OBJECT

public:
    enum class Level { Silent, Notice, Sound };

    explicit FeedNotice(PageContext &context, QObject *parent = nullptr);

    [[nodiscard]] Level level() const;
    void setLevel(Level level);
    // Called every second; looks at every burning cook.
    void look();

Q_SIGNALS:
    void levelChanged();

private:
    struct Said {
        domain::Instant due;
        int times = 0;
    };
    void say(const domain::Cook &cook, bool late);

    PageContext &m_context;
    QHash<domain::RecordId, Said> m_said; // by cook
};

} // namespace rickyard::views
