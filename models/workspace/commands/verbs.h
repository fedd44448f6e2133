// The verb façade: the only way to change a yard. Each verb checks, works out everything that
// follows (ledger entries, cascades), applies it as one transaction and makes it one undo step
// that carries the action's name.
#pragma once

#include "models/domain/plan/order_life.h"
#include "models/domain/wood/count_drift.h"
#include "models/workspace/workspace.h"

#include <QUndoStack>

namespace rickyard::commands {

using domain::Done;
using domain::Instant;
using domain::Outcome;
using domain::Problems;
using domain::RecordId;
using domain::Row;
using domain::TableId;
using workspace::ChangeSet;
using workspace::Workspace;

// Now, as an argument: tests and replays set their own.
using Clock = std::function<Instant()>;
Instant systemClock();

class ApplyCommand;

class Verbs : public QObject
{
    Q_OBJECT

public:
    explicit Verbs(Workspace &workspace, Clock clock = systemClock, QObject *parent = nullptr);

    [[nodiscard]] Workspace &yard() { return m_workspace; }
    [[nodiscard]] const domain::Books &books() const { return m_workspace.books(); }
    [[nodiscard]] Instant now() const { return m_clock(); }
    // For its texts and signals; undo and redo go through the verbs below.
    [[nodiscard]] const QUndoStack &undoStack() const { return m_stack; }

    // Any table. `row.id` 0 takes a fresh id. A no-op edit makes no undo step.
    Outcome<RecordId> add(Row row, const QString &actionName = {});
    Outcome<Done> edit(Row row, const QString &actionName = {});
    // Removes records and what hangs on them; refuses, naming them, when others still need them.
    Outcome<Done> remove(TableId table, const QVector<RecordId> &ids);
    // Several rows as one step (imports, starter sets). Ids 0 are filled in; existing ids edit.
    // What a person changes on a cook after its fire was out is kept beside it (CookChange); what
    // an import brings is not.
    enum class Origin { Import, ByHand };
    Outcome<QVector<RecordId>> putAll(const QVector<Row> &rows, const QString &actionName,
                                      Origin origin = Origin::Import);
    // The same off the window's thread, without field checks already done by the importer.
    std::shared_ptr<Workspace::LongWrite>
    putAllInBackground(const QVector<Row> &rows, const QString &actionName,
                       const std::function<void(Outcome<Done>)> &finished);

    // Typed forms of the above.
    template <class R>
    Outcome<RecordId> add(const R &record, const QString &actionName = {})
    {
        return add(domain::toRow(record), actionName);
    }
    template <class R>
    Outcome<Done> edit(const R &record, const QString &actionName = {})
    {
        return edit(domain::toRow(record), actionName);
    }

    // The fire. Each is durable when it returns.
    // `lit` unset: now. Tasks that block the fire are passed over with a reason, which is kept as
    // an override of each (domain/upkeep/blocks.h); refused at "reason" without one.
    struct Despite {
        QVector<RecordId> tasks;
        QString reason;
    };
    Outcome<RecordId> lightCook(domain::Cook cook, const Despite &despite = {});
    Outcome<RecordId> feed(RecordId cook, RecordId lot, int pieces,
                           std::optional<domain::Mass> weight = {}, std::optional<Instant> at = {});
    Outcome<RecordId> noteTemperature(RecordId cook, domain::Temperature temperature,
                                      const QString &probe, std::optional<Instant> at = {});
    Outcome<RecordId> note(RecordId cook, domain::NoteKind kind, const QString &text);
    // Brings what the ledger says the cook burned to what its ways of measuring say together
    // (domain/fire/wood_measure.h). Refused when they do not tell, or agree with the ledger
    // already.
    Outcome<Done> trueUp(RecordId cook);
    enum class Mark { AtTemperature, FoodOn, FoodOff, FireOut };
    Outcome<Done> mark(RecordId cook, Mark mark, std::optional<Instant> at = {});

    // The wood.
    Outcome<RecordId> receive(const domain::Lot &lot); // lot and its ledger entry
    // The same with the reading taken at the truck, which the ledger entry then rests on, and with
    // the lot's order, which becomes received on the lot's day: all in one step. The reading gets
    // the lot's id, and no time before the lot's.
    Outcome<RecordId> receive(domain::Lot lot,
                              const std::optional<domain::MoistureReading> &reading);
    // A true-up: the ledger is corrected to `dryMass`, the difference stays visible.
    Outcome<RecordId> count(RecordId lot, domain::Mass dryMass, const QString &note);
    // The same for a walk along the ricks: one entry a rick, all in one step. A rick that the books
    // have right gets an entry of nothing, so that it is known to have been counted.
    Outcome<Done> countRicks(const QVector<domain::RickCount> &counts, const QString &note);

    // Orders (domain/plan/order_life.h); each is one step, refused in words when it does not
    // follow. A draft's stacked volume follows from unit and count.
    Outcome<RecordId> draftOrder(domain::WoodOrder order);
    Outcome<Done> stepOrder(RecordId order, domain::OrderStep step, QDate promised = {});

    // Upkeep; the work itself is in upkeep_verbs.h.
    // Files what was found or suspected on a pit and, with it, the task of looking; one step. The
    // finding's id.
    Outcome<RecordId> fileFinding(const domain::Finding &finding, const domain::UpkeepTask &task);
    // Books proposed placements as visits, in one step.
    Outcome<Done> bookVisits(const QVector<domain::Visit> &visits);

    // What somebody's calendar says now, in one step: `put` come (id 0) or change, `gone` go.
    Outcome<Done> replaceBusyTimes(const QString &source, const QVector<domain::BusyTime> &put,
                                   const QVector<RecordId> &gone);

    // The file first: a refused undo leaves the stack where it was.
    Outcome<Done> undo();
    Outcome<Done> redo();
    // The same for a window: a step of many records goes to a thread, any other is done at once.
    // `finished` runs in this object's thread in either case, at once for a short step.
    void undoInBackground(const std::function<void(Outcome<Done>)> &finished);
    void redoInBackground(const std::function<void(Outcome<Done>)> &finished);
    static constexpr int kLongStep = 200; // records

private:
    [[nodiscard]] const ApplyCommand *nextStep(bool forward, QString &why) const;
    void moveStack(bool forward);
    Outcome<Done> travel(bool forward);
    void travelInBackground(bool forward, const std::function<void(Outcome<Done>)> &finished);
    Outcome<Done> run(const QString &name, const ChangeSet &changes, Origin origin);

    Workspace &m_workspace;
    Clock m_clock;
    QUndoStack m_stack;
};

} // namespace rickyard::commands
