// Work on a thread of which only the newest counts: a new run takes the place of the one that still
// runs, whose result is dropped. With a flag to stop it and a count of how far it is.
#pragma once

#include <QFutureWatcher>
#include <QObject>
#include <QTimer>
#include <QtConcurrent/QtConcurrentRun>

#include <atomic>
#include <functional>
#include <memory>

namespace rickyard::views {

class LatestWork
{
public:
    struct Watch {
        std::atomic_bool cancelled{false};
        std::atomic<qint64> done{0};
        std::atomic<qint64> total{0};
    };
    // `owner` is the context of all results: none comes after its end. `progressed` is called
    // every now and then while work runs; may be empty.
    explicit LatestWork(QObject *owner, const std::function<void(qint64, qint64)> &progressed = {})
        : m_owner(owner)
    {
        m_poll.setInterval(80);
        if (progressed)
            QObject::connect(&m_poll, &QTimer::timeout, owner, [this, progressed] {
                if (m_watch)
                    progressed(m_watch->done, m_watch->total);
            });
    }
    ~LatestWork() { cancel(); }
    Q_DISABLE_COPY_MOVE(LatestWork)

    void cancel()
    {
        if (m_watch)
            m_watch->cancelled = true;
        m_watch.reset();
        m_poll.stop();
    }
    [[nodiscard]] bool running() const { return m_watch != nullptr; }

    // work(Watch &) -> T runs on a thread and owns copies of all it needs, so that it may outlive
    // the owner for a moment; finished(const T &) runs in the owner's thread.
    template <class T, class Work, class Finished>
    void run(Work work, Finished finished)
    {
        cancel();
        auto watch = std::make_shared<Watch>();
        m_watch = watch;
        m_poll.start();
        auto *watcher = new QFutureWatcher<T>(m_owner);
        QObject::connect(watcher, &QFutureWatcherBase::finished, m_owner,
                         [this, watcher, watch, finished] {
                             watcher->deleteLater();
                             if (m_watch != watch)
                                 return;
                             m_watch.reset();
                             m_poll.stop();
                             finished(watcher->result());
                         });
        watcher->setFuture(QtConcurrent::run([work, watch] { return work(*watch); }));
    }

private:
    QObject *m_owner;
    std::shared_ptr<Watch> m_watch;
    QTimer m_poll;
};

} // namespace rickyard::views
