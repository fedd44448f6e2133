// What the plan board shows, from the books and the answer alone: a lane a pit with its fires, the
// hours it cools and cures, the visits agreed and proposed, and the crew's hours.
#pragma once

#include "models/domain/answers/answers.h"
#include "models/domain/upkeep/windows.h"

namespace rickyard::views {

struct PlanFire {
    domain::Link link;
    domain::Instant start;
    domain::Instant end;
    domain::Instant coldAt; // for the next work on the pit
    QString name;
    QString words;
};

struct PlanVisit {
    domain::RecordId task = 0;
    domain::RecordId visit = 0; // 0: a proposal
    domain::Instant start;
    domain::Instant end;
    domain::Instant freeFrom; // after the cure
    QString name;             // of the task
};

// The work of one evening on one pit, all agreed or all proposed.
struct PlanBlock {
    int lane = 0;
    QVector<PlanVisit> visits; // by start
    domain::Instant start;
    domain::Instant end;
    domain::Instant freeFrom;
    bool booked = false;
    bool pinned = false;  // one of them at least
    bool started = false; // work under way: it stays where it is
    bool late = false;
    QString words;
};

struct PlanLane {
    domain::RecordId pit = 0; // 0: trailer and kit
    QString name;
    int hue = -1;
    QVector<PlanFire> fires;
};

struct PlanContent {
    QVector<PlanLane> lanes;
    QVector<PlanBlock> blocks; // by start
    QVector<domain::WorkWindow> crew;
};

PlanContent planContent(const domain::Books &books, const domain::UpkeepAnswer &answer,
                        domain::Instant now, int days);
// What stands against doing a task at a time: fire, heat, cure, crew hours; empty when nothing
// does.
QString planTrouble(const domain::Books &books, domain::RecordId task, domain::Instant start,
                    domain::Instant end, domain::Instant now);

} // namespace rickyard::views
