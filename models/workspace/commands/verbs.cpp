#include "models/workspace/commands/verbs.h"

#include "models/domain/answers/wording.h"
#include "models/domain/fire/wood_measure.h"
#include "models/domain/records/rules.h"
#include "models/domain/wood/ledger.h"
#include "models/workspace/commands/consequences.h"
#include "models/workspace/commands/kept_changes.h"

#include <QDateTime>

#include <algorithm>

namespace rickyard::commands {

using domain::Books;
using domain::Cook;
using domain::Feed;
using domain::Movement;
using domain::Visit;
using workspace::Change;

// One undo step. QUndoStack moves its index whatever a command does, so Verbs applies the change
// first and moves the stack only when the file took it; the command itself does nothing then.
class ApplyCommand : public QUndoCommand
{
public:
    ApplyCommand(const QString &name, ChangeSet changes)
        : QUndoCommand(name), m_changes(std::move(changes))
    {
    }
    void undo() override {}
    void redo() override {}
    [[nodiscard]] const ChangeSet &changes() const { return m_changes; }

private:
    ChangeSet m_changes;
};

namespace {

QString actionOn(const char *verb, TableId table)
{
    return QString(QString::fromUtf8(verb) + QLatin1Char(' ') + domain::specOf(table).singular);
}

QTimeZone zoneOfYard(const Books &books)
{
    domain::Wording wording;
    wording.timeZone = books.yard().timeZone;
    return domain::zoneOf(wording);
}

QString keptByProgram()
{
    return Verbs::tr("What was changed on a cook afterwards is kept by the program and cannot be "
                     "typed or taken away. Undo the change itself, or delete the cook.");
}

Outcome<RecordId> firstOf(const Outcome<Done> &done, RecordId id)
{
    return done ? Outcome<RecordId>(id) : Outcome<RecordId>(done.problems());
}

} // namespace

Instant systemClock()
{
    return Instant::ofSeconds(QDateTime::currentSecsSinceEpoch());
}

Verbs::Verbs(Workspace &workspace, Clock clock, QObject *parent)
    : QObject(parent), m_workspace(workspace), m_clock(std::move(clock))
{
}

Outcome<Done> Verbs::run(const QString &name, const ChangeSet &changes, Origin origin)
{
    ChangeSet real;
    for (const Change &c : changes)
        if (c.before != c.after)
            real.append(c);
    if (real.isEmpty())
        return Done{};
    const IdSource nextId = [this](TableId t) { return m_workspace.nextId(t); };
    if (origin == Origin::ByHand)
        real = withCooksAlong(books(), withKeptChanges(books(), real, now(), nextId));
    const auto whole = withLedger(books(), real, nextId);
    if (!whole)
        return Outcome<Done>(whole.problems());
    const Outcome<Done> done = m_workspace.apply(whole.value());
    if (done)
        m_stack.push(new ApplyCommand(name, whole.value()));
    return done;
}

Outcome<RecordId> Verbs::add(Row row, const QString &actionName)
{
    if (row.table == TableId::CookChange)
        return Outcome<RecordId>::failed(keptByProgram());
    const Problems problems = domain::check(books(), row);
    if (!problems.isEmpty())
        return Outcome<RecordId>(problems);
    if (row.id == 0)
        row.id = m_workspace.nextId(row.table);
    const QString name = actionName.isEmpty() ? actionOn("add", row.table) : actionName;
    return firstOf(run(name, {{row.table, row.id, std::nullopt, row}}, Origin::ByHand), row.id);
}

Outcome<Done> Verbs::edit(Row row, const QString &actionName)
{
    if (row.table == TableId::CookChange)
        return Outcome<Done>::failed(keptByProgram());
    const auto before = domain::rowOf(books(), row.table, row.id);
    if (!before)
        return Outcome<Done>::failed(tr("This record was deleted meanwhile."));
    const Problems problems = domain::check(books(), row);
    if (!problems.isEmpty())
        return Outcome<Done>(problems);
    const QString name = actionName.isEmpty() ? actionOn("edit", row.table) : actionName;
    return run(name, {{row.table, row.id, before, row}}, Origin::ByHand);
}

Outcome<Done> Verbs::remove(TableId table, const QVector<RecordId> &ids)
{
    if (table == TableId::CookChange)
        return Outcome<Done>::failed(keptByProgram());
    const auto changes = deletion(books(), table, ids);
    if (!changes)
        return Outcome<Done>(changes.problems());
    const QString name =
        ids.size() == 1
            ? actionOn("delete", table)
            : QString(tr("delete %1 %2").arg(ids.size()).arg(domain::specOf(table).plural));
    return run(name, changes.value(), Origin::ByHand);
}

namespace {

// Gives ids, pairs with what is there, and checks each row against the books as they will be.
Outcome<ChangeSet> prepared(Workspace &workspace, const QVector<Row> &rows)
{
    Books after = workspace.books();
    ChangeSet changes;
    for (Row row : rows) {
        const auto before =
            row.id == 0 ? std::nullopt : domain::rowOf(workspace.books(), row.table, row.id);
        if (row.id == 0)
            row.id = workspace.nextId(row.table);
        const Problems problems = domain::check(after, row);
        if (!problems.isEmpty())
            return Outcome<ChangeSet>(problems);
        domain::put(after, row);
        if (!before || *before != row)
            changes.append({row.table, row.id, before, row});
    }
    return changes;
}

} // namespace

Outcome<QVector<RecordId>> Verbs::putAll(const QVector<Row> &rows, const QString &actionName,
                                         Origin origin)
{
    const auto changes = prepared(m_workspace, rows);
    if (!changes)
        return Outcome<QVector<RecordId>>(changes.problems());
    const Outcome<Done> done = run(actionName, changes.value(), origin);
    if (!done)
        return Outcome<QVector<RecordId>>(done.problems());
    QVector<RecordId> ids;
    for (const Change &c : changes.value())
        ids << c.id;
    return ids;
}

std::shared_ptr<Workspace::LongWrite>
Verbs::putAllInBackground(const QVector<Row> &rows, const QString &actionName,
                          const std::function<void(Outcome<Done>)> &finished)
{
    ChangeSet changes;
    for (Row row : rows) {
        const auto before = row.id == 0 ? std::nullopt : domain::rowOf(books(), row.table, row.id);
        if (row.id == 0)
            row.id = m_workspace.nextId(row.table);
        if (!before || *before != row)
            changes.append({row.table, row.id, before, row});
    }
    const auto whole =
        withLedger(books(), changes, [this](TableId t) { return m_workspace.nextId(t); });
    if (!whole) {
        const Problems problems = whole.problems();
        QMetaObject::invokeMethod(
            this, [finished, problems] { finished(Outcome<Done>(problems)); },
            Qt::QueuedConnection);
        return std::make_shared<Workspace::LongWrite>();
    }
    return m_workspace.applyInBackground(whole.value(), [this, all = whole.value(), actionName,
                                                         finished](const Outcome<Done> &done) {
        if (done && !all.isEmpty())
            m_stack.push(new ApplyCommand(actionName, all));
        finished(done);
    });
}

Outcome<RecordId> Verbs::lightCook(Cook cook, const Despite &despite)
{
    if (cook.lit == Instant())
        cook.lit = now();
    const auto pit = books().pits.constFind(cook.pit);
    if (pit == books().pits.constEnd())
        return Outcome<RecordId>::failed(tr("Choose a pit."), QStringLiteral("pit"));
    if (!cook.target)
        cook.target = pit->usualTemperature;
    const QString reason = despite.reason.trimmed();
    if (!despite.tasks.isEmpty() && reason.isEmpty())
        return Outcome<RecordId>::failed(
            tr("Do what stands in the way first, or write why you light all the same."),
            QStringLiteral("reason"));
    QVector<Row> rows{domain::toRow(cook)};
    for (RecordId task : despite.tasks) {
        domain::Override record;
        record.task = task;
        record.plannedCook = cook.planned;
        record.time = cook.lit;
        record.reason = reason;
        rows << domain::toRow(record);
    }
    const auto ids = putAll(rows, tr("light %1").arg(pit->name), Origin::ByHand);
    return ids ? Outcome<RecordId>(ids.value().constFirst()) : Outcome<RecordId>(ids.problems());
}

Outcome<RecordId> Verbs::feed(RecordId cook, RecordId lot, int pieces,
                              std::optional<domain::Mass> weight, std::optional<Instant> at)
{
    Feed feed;
    feed.cook = cook;
    feed.lot = lot;
    feed.pieces = pieces;
    feed.weight = weight;
    feed.time = at.value_or(now());
    return add(feed, pieces == 1 ? tr("feed 1 split") : tr("feed %1 splits").arg(pieces));
}

Outcome<RecordId> Verbs::noteTemperature(RecordId cook, domain::Temperature temperature,
                                         const QString &probe, std::optional<Instant> at)
{
    domain::CookTemperature t;
    t.cook = cook;
    t.temperature = temperature;
    t.probe = probe;
    t.time = at.value_or(now());
    return add(t, tr("note temperature"));
}

Outcome<RecordId> Verbs::note(RecordId cook, domain::NoteKind kind, const QString &text)
{
    domain::CookNote n;
    n.cook = cook;
    n.kind = kind;
    n.text = text;
    n.time = now();
    return add(n, tr("note"));
}

Outcome<Done> Verbs::mark(RecordId id, Mark mark, std::optional<Instant> at)
{
    const auto found = books().cooks.constFind(id);
    if (found == books().cooks.constEnd())
        return Outcome<Done>::failed(tr("This cook was deleted meanwhile."));
    Cook cook = *found;
    const Instant time = at.value_or(now());
    switch (mark) {
    case Mark::AtTemperature:
        cook.atTemperature = time;
        return edit(cook, tr("at temperature"));
    case Mark::FoodOn:
        cook.foodOn = time;
        return edit(cook, tr("food on"));
    case Mark::FoodOff:
        cook.foodOff = time;
        return edit(cook, tr("food off"));
    case Mark::FireOut:
        cook.fireOut = time;
        break;
    }
    return edit(cook, tr("finish cook"));
}

Outcome<RecordId> Verbs::receive(const domain::Lot &lot)
{
    return add(lot, tr("receive %1").arg(lot.name));
}

Outcome<RecordId> Verbs::receive(domain::Lot lot,
                                 const std::optional<domain::MoistureReading> &reading)
{
    if (lot.id == 0)
        lot.id = m_workspace.nextId(TableId::Lot);
    QVector<Row> rows{domain::toRow(lot)};
    if (reading && !reading->pieces.isEmpty()) {
        domain::MoistureReading taken = *reading;
        taken.lot = lot.id;
        taken.time = std::max(taken.time, lot.received);
        rows << domain::toRow(taken);
    }
    if (lot.order && books().orders.contains(*lot.order)) {
        domain::WoodOrder order = books().orders.value(*lot.order);
        order.state = domain::OrderState::Received;
        order.received = domain::dayOf(lot.received, zoneOfYard(books()));
        rows << domain::toRow(order);
    }
    const auto done = putAll(rows, tr("receive %1").arg(lot.name));
    return done ? Outcome<RecordId>(lot.id) : Outcome<RecordId>(done.problems());
}

Outcome<RecordId> Verbs::count(RecordId lot, domain::Mass dryMass, const QString &note)
{
    if (dryMass < domain::Mass())
        return Outcome<RecordId>::failed(tr("A count cannot be below zero."),
                                         QStringLiteral("dry_mass"));
    domain::Mass book;
    const Instant at = now();
    for (const Movement &m : books().movements)
        if (m.lot == lot && m.time <= at)
            book += m.dryMass;
    Movement m;
    m.lot = lot;
    m.time = at;
    m.kind = domain::MovementKind::Counted;
    m.dryMass = dryMass - book;
    m.moisture = domain::moistureOfLot(books(), lot, at);
    m.note = note;
    return add(m, tr("count %1").arg(books().lots.value(lot).name));
}

Outcome<RecordId> Verbs::fileFinding(const domain::Finding &finding, const domain::UpkeepTask &task)
{
    const auto put =
        putAll({domain::toRow(finding), domain::toRow(task)}, tr("file “%1”").arg(finding.text));
    if (!put)
        return put.problems();
    return put.value().first();
}

Outcome<Done> Verbs::trueUp(RecordId cook)
{
    const domain::Cook record = books().cooks.value(cook);
    const domain::WoodReckoning reckoning = domain::woodReckoning(books(), record);
    if (!reckoning.dry)
        return Outcome<Done>::failed(
            reckoning.problems.isEmpty()
                ? tr("Nothing was measured on this cook: enter its feeds, or the crate before and "
                     "after.")
                : reckoning.problems.join(QLatin1Char(' ')),
            QString());
    QVector<Row> rows;
    const auto entries =
        domain::trueUpOf(books(), record, reckoning, record.fireOut.value_or(now()));
    for (const Movement &m : entries)
        rows << domain::toRow(m);
    if (rows.isEmpty())
        return Outcome<Done>::failed(tr("The ledger already says what was measured."), QString());
    const auto put = putAll(
        rows, tr("true up %1").arg(domain::titleOf(books(), TableId::Cook, cook)), Origin::ByHand);
    if (!put)
        return put.problems();
    return Done{};
}

Outcome<Done> Verbs::bookVisits(const QVector<Visit> &visits)
{
    QVector<Row> rows;
    for (const Visit &v : visits)
        rows << domain::toRow(v);
    const auto done = putAll(rows, tr("book upkeep"));
    return done ? Outcome<Done>(Done{}) : Outcome<Done>(done.problems());
}

Outcome<Done> Verbs::replaceBusyTimes(const QString &source, const QVector<domain::BusyTime> &put,
                                      const QVector<RecordId> &gone)
{
    QVector<Row> rows;
    for (const domain::BusyTime &busy : put) {
        if (busy.source != source)
            return Outcome<Done>::failed(tr("These busy times are of another calendar."));
        rows << domain::toRow(busy);
    }
    auto changes = prepared(m_workspace, rows);
    if (!changes)
        return Outcome<Done>(changes.problems());
    for (const RecordId id : gone) {
        if (books().busyTimes.value(id).source != source)
            return Outcome<Done>::failed(tr("These busy times are of another calendar."));
        changes.value().append(
            {TableId::BusyTime, id, domain::rowOf(books(), TableId::BusyTime, id), std::nullopt});
    }
    return run(tr("import busy times of %1").arg(source), changes.value(), Origin::Import);
}

const ApplyCommand *Verbs::nextStep(bool forward, QString &why) const
{
    if (forward ? m_stack.canRedo() : m_stack.canUndo())
        return static_cast<const ApplyCommand *>(
            m_stack.command(forward ? m_stack.index() : m_stack.index() - 1));
    why = forward ? tr("There is nothing to redo.") : tr("There is nothing to undo.");
    return nullptr;
}

void Verbs::moveStack(bool forward)
{
    if (forward)
        m_stack.redo();
    else
        m_stack.undo();
}

Outcome<Done> Verbs::travel(bool forward)
{
    QString why;
    const ApplyCommand *command = nextStep(forward, why);
    if (command == nullptr)
        return Outcome<Done>::failed(why);
    const Outcome<Done> done =
        m_workspace.apply(forward ? command->changes() : storage::reversed(command->changes()));
    if (done)
        moveStack(forward);
    return done;
}

void Verbs::travelInBackground(bool forward, const std::function<void(Outcome<Done>)> &finished)
{
    QString why;
    const ApplyCommand *command = nextStep(forward, why);
    if (command == nullptr || command->changes().size() < kLongStep) {
        finished(travel(forward));
        return;
    }
    // Other verbs are refused while it is written, so the stack stays where it is.
    m_workspace.applyInBackground(forward ? command->changes()
                                          : storage::reversed(command->changes()),
                                  [this, forward, finished](const Outcome<Done> &done) {
                                      if (done)
                                          moveStack(forward);
                                      finished(done);
                                  });
}

Outcome<Done> Verbs::undo()
{
    return travel(false);
}

Outcome<Done> Verbs::redo()
{
    return travel(true);
}

void Verbs::undoInBackground(const std::function<void(Outcome<Done>)> &finished)
{
    travelInBackground(false, finished);
}

void Verbs::redoInBackground(const std::function<void(Outcome<Done>)> &finished)
{
    travelInBackground(true, finished);
}

} // namespace rickyard::commands
