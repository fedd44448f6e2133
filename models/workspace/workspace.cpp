#include "models/workspace/workspace.h"

#include <QFutureWatcher>
#include <QTimeZone>
#include <QUuid>
#include <QtConcurrent/QtConcurrentRun>

namespace rickyard::workspace {

using domain::RecordId;
using domain::Row;
using domain::TableId;

namespace {

ChangeSet firstRow()
{
    Row row = domain::emptyRow(TableId::Yard);
    row.id = 1;
    domain::setValue(row, QStringLiteral("name"), QStringLiteral("Our yard"));
    const QByteArray zone = QTimeZone::systemTimeZoneId();
    domain::setValue(row, QStringLiteral("time_zone"),
                     zone.isEmpty() ? QStringLiteral("UTC") : QString::fromLatin1(zone));
    domain::setValue(row, QStringLiteral("invented"), qint64{0});
    domain::setValue(row, QStringLiteral("mark"),
                     QString::fromLatin1(QUuid::createUuid().toRfc4122().toHex()));
    return {{TableId::Yard, 1, std::nullopt, row}};
}

} // namespace

Outcome<std::unique_ptr<Workspace>> Workspace::open(const QString &path, const QDateTime &nowUtc,
                                                    storage::OpenMode mode)
{
    using Result = Outcome<std::unique_ptr<Workspace>>;
    auto file = storage::openYardFile(path, nowUtc, mode);
    if (!file)
        return Result(file.problems());
    std::unique_ptr<Workspace> workspace(new Workspace);
    workspace->m_file = std::move(file.value());
    workspace->m_path = path;
    workspace->m_readOnly = workspace->m_file.readOnly;
    workspace->m_created = workspace->m_file.created;
    workspace->m_notice = workspace->m_file.notice;
    auto books = storage::readAll(*workspace->m_file.database);
    if (!books)
        return Result(books.problems());
    workspace->m_books = std::move(books.value());
    if (workspace->m_books.yards.isEmpty() && !workspace->m_readOnly) {
        const Outcome<Done> begun = workspace->apply(firstRow());
        if (!begun)
            return Result(begun.problems());
    }
    return Result(std::move(workspace));
}

Workspace::~Workspace() = default;

RecordId Workspace::nextId(TableId table)
{
    RecordId &last = m_lastIds[static_cast<int>(table)];
    last = qMax(last, domain::highestId(m_books, table)) + 1;
    return last;
}

Outcome<Done> Workspace::refuseIfClosed() const
{
    if (m_readOnly)
        return Outcome<Done>::failed(tr("This yard is open for reading only, so nothing was "
                                        "changed. Close the other window, then open it again."));
    if (m_busy)
        return Outcome<Done>::failed(tr("A long import is still being written. Wait for it or stop "
                                        "it, then try again."));
    return Done{};
}

void Workspace::merge(const ChangeSet &changes)
{
    for (const Change &change : changes) {
        RecordId &last = m_lastIds[static_cast<int>(change.table)];
        last = qMax(last, change.id);
        if (change.after)
            domain::put(m_books, *change.after);
        else
            domain::drop(m_books, change.table, change.id);
    }
    Q_EMIT changed(Changes{changes});
}

Outcome<Done> Workspace::apply(const ChangeSet &changes)
{
    if (changes.isEmpty())
        return Done{};
    const Outcome<Done> open = refuseIfClosed();
    if (!open)
        return open;
    const Outcome<Done> written = storage::write(*m_file.database, changes);
    if (written)
        merge(changes);
    return written;
}

std::shared_ptr<Workspace::LongWrite>
Workspace::applyInBackground(const ChangeSet &changes,
                             const std::function<void(Outcome<Done>)> &finished)
{
    auto state = std::make_shared<LongWrite>();
    state->total = static_cast<int>(changes.size());
    const Outcome<Done> open = refuseIfClosed();
    if (!open) {
        QMetaObject::invokeMethod(
            this, [finished, open] { finished(open); }, Qt::QueuedConnection);
        return state;
    }
    m_busy = true;
    Q_EMIT busyChanged(true);
    auto *watcher = new QFutureWatcher<Outcome<Done>>(this);
    connect(watcher, &QFutureWatcherBase::finished, this, [this, watcher, changes, finished] {
        watcher->deleteLater();
        const Outcome<Done> outcome = watcher->result();
        m_busy = false;
        if (outcome)
            merge(changes);
        Q_EMIT busyChanged(false);
        finished(outcome);
    });
    const QString path = m_path;
    watcher->setFuture(QtConcurrent::run([path, changes, state]() -> Outcome<Done> {
        auto own = storage::Database::open(path, storage::OpenMode::ReadWrite);
        if (!own)
            return Outcome<Done>(own.problems());
        return storage::write(*own.value(), changes, [state](int written) {
            state->written = written;
            return !state->cancelled;
        });
    }));
    return state;
}

namespace {

Outcome<QString> readFileAt(const QString &path, const Workspace::FileWork &work)
{
    auto own = storage::Database::open(path, storage::OpenMode::ReadOnly);
    return own ? work(*own.value()) : Outcome<QString>(own.problems());
}

} // namespace

Outcome<QString> Workspace::readFile(const FileWork &work) const
{
    return readFileAt(m_path, work);
}

void Workspace::readFileInBackground(FileWork work,
                                     const std::function<void(Outcome<QString>)> &finished)
{
    auto *watcher = new QFutureWatcher<Outcome<QString>>(this);
    connect(watcher, &QFutureWatcherBase::finished, this, [watcher, finished] {
        watcher->deleteLater();
        finished(watcher->result());
    });
    watcher->setFuture(QtConcurrent::run(
        [path = m_path, work = std::move(work)] { return readFileAt(path, work); }));
}

} // namespace rickyard::workspace
