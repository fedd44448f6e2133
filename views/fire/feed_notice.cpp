#include "views/fire/feed_notice.h"

#include "views/fire/fire_words.h"
#include "views/fire/run_facts.h"

#include <QSettings>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {
const QString kLevelKey = QStringLiteral("fire/feed-notice");
} // namespace

FeedNotice::FeedNotice(PageContext &context, QObject *parent) : QObject(parent), m_context(context)
{
}

FeedNotice::Level FeedNotice::level() const
{
    const int stored = m_context.settings.value(kLevelKey, static_cast<int>(Level::Sound)).toInt();
    return static_cast<Level>(std::clamp(stored, 0, static_cast<int>(Level::Sound)));
}

void FeedNotice::setLevel(Level level)
{
    m_context.settings.setValue(kLevelKey, static_cast<int>(level));
    Q_EMIT levelChanged();
}

void FeedNotice::look()
{
    if (level() == Level::Silent || !m_context.notify)
        return;
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    const QVector<Cook> burning = burningCooks(books);
    for (const Cook &cook : burning) {
        const RunFacts facts = runFacts(books, cook, now);
        if (!facts.nextFeed || !facts.interval || now < *facts.nextFeed)
            continue;
        Said &said = m_said[cook.id];
        if (said.due != *facts.nextFeed)
            said = {*facts.nextFeed, 0};
        const Duration late = now - *facts.nextFeed;
        // After a night's sleep of the computer a feed that fell due long ago is no news.
        const bool stale = late >= Duration::ofBase(3 * facts.interval->base());
        const bool first = said.times == 0;
        const bool again = said.times == 1 && late >= Duration::ofBase(facts.interval->base() / 2);
        if (stale || !(first || again))
            continue;
        ++said.times;
        say(cook, again);
    }
}

void FeedNotice::say(const Cook &cook, bool late)
{
    const Books &books = m_context.books();
    Notice notice;
    notice.title = tr("%1 wants wood").arg(books.pits.value(cook.pit).name);
    const FireWords words(books);
    const auto due = runFacts(books, cook, m_context.verbs.now()).nextFeed;
    notice.text =
        (late ? tr("The feed of %1 is late by half its pace.") : tr("The feed of %1 is due."))
            .arg(due ? words.clock(*due) : QString());
    notice.sound = level() == Level::Sound;
    notice.link = {TableId::Cook, cook.id};
    m_context.notify(notice);
}

} // namespace rickyard::views
