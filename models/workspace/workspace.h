// The open yard: its books in memory, written through to the file, with a signal for every change.
// Only commands change it; everything else reads.
#pragma once

#include "models/domain/records/books.h"
#include "models/storage/repository.h"
#include "models/storage/yard_file.h"

#include <QFuture>
#include <QObject>
#include <QSet>

#include <atomic>
#include <memory>

namespace rickyard::workspace {

using domain::Books;
using domain::Done;
using domain::Outcome;
using storage::Change;
using storage::ChangeSet;

// Which records changed, by table; `added` etc. let models update without a reset.
struct Changes {
    ChangeSet set;
    [[nodiscard]] bool touches(domain::TableId table) const
    {
        for (const Change &c : set)
            if (c.table == table)
                return true;
        return false;
    }
};

class Workspace : public QObject
{
    Q_OBJECT

public:
    // Opens (or creates) the yard at `path`. A new yard gets its one yard row and nothing else.
    static Outcome<std::unique_ptr<Workspace>>
    open(const QString &path, const QDateTime &nowUtc,
         storage::OpenMode mode = storage::OpenMode::ReadWrite);
    ~Workspace() override;

    [[nodiscard]] const Books &books() const { return m_books; }
    [[nodiscard]] QString path() const { return m_path; }
    [[nodiscard]] bool readOnly() const { return m_readOnly; }
    [[nodiscard]] bool created() const { return m_created; }
    [[nodiscard]] QString notice() const { return m_notice; }
    [[nodiscard]] bool busy() const { return m_busy; }

    // A fresh id, never used before in this session, so that an undone deletion finds its own free.
    domain::RecordId nextId(domain::TableId table);

    // One transaction: the file first, then memory, then the signal. On a problem nothing changed.
    Outcome<Done> apply(const ChangeSet &changes);

    // The same on a thread with its own connection, for changes of many records. The window stays
    // live; other changes are refused until it is over. `finished` runs in this object's thread.
    struct LongWrite {
        std::atomic<bool> cancelled{false};
        std::atomic<int> written{0};
        int total = 0;
    };
    std::shared_ptr<LongWrite>
    applyInBackground(const ChangeSet &changes, const std::function<void(Outcome<Done>)> &finished);

    // Work that only reads the file (a backup, a copy, a check), with a connection of its own: at
    // once, or on a thread so that the window stays live. `finished` runs in this object's thread.
    using FileWork = std::function<Outcome<QString>(storage::Database &)>;
    [[nodiscard]] Outcome<QString> readFile(const FileWork &work) const;
    void readFileInBackground(FileWork work, const std::function<void(Outcome<QString>)> &finished);

Q_SIGNALS:
    void changed(const rickyard::workspace::Changes &changes);
    void busyChanged(bool busy);

private:
    Workspace() = default;
    Outcome<Done> refuseIfClosed() const;
    void merge(const ChangeSet &changes);

    storage::YardFile m_file;
    Books m_books;
    QString m_path;
    QString m_notice;
    bool m_readOnly = false;
    bool m_created = false;
    bool m_busy = false;
    QHash<int, domain::RecordId> m_lastIds;
};

} // namespace rickyard::workspace
