#include "models/workspace/answers_service.h"

#include <QtConcurrent/QtConcurrentRun>

namespace rickyard::workspace {

AnswersService::AnswersService(Workspace &workspace, Clock clock, QObject *parent)
    : QObject(parent), m_workspace(workspace), m_clock(std::move(clock))
{
    m_delay.setSingleShot(true);
    m_delay.setInterval(60);
    m_minute.setInterval(10 * 60 * 1000);
    connect(&m_delay, &QTimer::timeout, this, &AnswersService::start);
    connect(&m_minute, &QTimer::timeout, this, &AnswersService::refresh);
    connect(&workspace, &Workspace::changed, this, &AnswersService::refresh);
    connect(&m_watcher, &QFutureWatcherBase::finished, this, [this] {
        m_answers = m_watcher.result();
        m_ready = true;
        m_current = !m_again;
        if (m_again)
            start();
        Q_EMIT updated();
    });
    m_minute.start();
    refresh();
}

AnswersService::~AnswersService()
{
    m_stop->store(true);
    m_watcher.waitForFinished();
}

void AnswersService::refresh()
{
    m_current = false;
    m_delay.start();
}

void AnswersService::start()
{
    if (m_watcher.isRunning()) {
        m_again = true;
        return;
    }
    m_again = false;
    const Books snapshot = m_workspace.books();
    const domain::Instant now = m_clock();
    m_watcher.setFuture(QtConcurrent::run([snapshot, now, stop = m_stop] {
        return domain::answersOf(snapshot, now, [stop] { return stop->load(); });
    }));
}

} // namespace rickyard::workspace
