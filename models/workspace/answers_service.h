// Keeps the three answers current: computes them on a thread from a snapshot of the books whenever
// the yard changes, and says so. The last answers stay until the new ones are there.
#pragma once

#include "models/domain/answers/answers.h"
#include "models/workspace/workspace.h"

#include <QFutureWatcher>
#include <QTimer>

#include <atomic>
#include <memory>

namespace rickyard::workspace {

class AnswersService : public QObject
{
    Q_OBJECT

public:
    using Clock = std::function<domain::Instant()>;
    AnswersService(Workspace &workspace, Clock clock, QObject *parent = nullptr);
    ~AnswersService() override;

    [[nodiscard]] const domain::Answers &answers() const { return m_answers; }
    [[nodiscard]] bool ready() const { return m_ready; }     // computed at least once
    [[nodiscard]] bool current() const { return m_current; } // of the books as they are now
    void refresh();                                          // also when the clock moved on

Q_SIGNALS:
    void updated();

private:
    void start();

    Workspace &m_workspace;
    Clock m_clock;
    QTimer m_delay;  // gathers quick successions of changes
    QTimer m_minute; // the clock moves the answers too
    QFutureWatcher<domain::Answers> m_watcher;
    // Nobody waits any more: the window closes.
    std::shared_ptr<std::atomic_bool> m_stop = std::make_shared<std::atomic_bool>(false);
    domain::Answers m_answers;
    bool m_ready = false;
    bool m_current = false;
    bool m_again = false;
};

} // namespace rickyard::workspace
