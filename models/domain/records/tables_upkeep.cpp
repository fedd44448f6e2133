#include "models/domain/records/books.h"

namespace rickyard::domain {

template <>
const Binder<UpkeepTask> &binderOf<UpkeepTask>()
{
    static const Binder<UpkeepTask> binder = [] {
        Binder<UpkeepTask> b(TableId::UpkeepTask, "upkeep_task", "task", "tasks", "name");
        b.text("name", "Name", &UpkeepTask::name).required().listed();
        b.reference("pit", "Pit", &UpkeepTask::pit, TableId::Pit, OnDelete::Cascade)
            .listed()
            .help("Leave empty for the trailer and the safety kit.");
        b.text("target", "Part", &UpkeepTask::target).listed();
        b.section("Due, whichever comes first");
        b.count("every_days", "Every … days", &UpkeepTask::everyDays)
            .atLeast(1)
            .atMost(7300)
            .listed();
        b.count("every_cooks", "Every … cooks", &UpkeepTask::everyCooks)
            .atLeast(1)
            .atMost(5000)
            .listed();
        b.quantity("every_fire_hours", "Every … fire hours", &UpkeepTask::everyFireHours, "h")
            .between(Duration::ofBase(3600), Duration::ofBase(100000LL * 3600))
            .listed();
        b.quantity("every_seasoned", "Every … seasoned pounds", &UpkeepTask::everySeasoned, "slb")
            .between(heatFromSeasonedPounds(1), heatFromSeasonedPounds(1000000));
        b.date("since", "Counted from", &UpkeepTask::since).required();
        b.choice("interval_from", "Where the interval comes from", &UpkeepTask::intervalFrom,
                 {{QStringLiteral("common_practice"), QStringLiteral("Common practice")},
                  {QStringLiteral("local_code"), QStringLiteral("A code: check it locally")},
                  {QStringLiteral("maker"), QStringLiteral("The maker's manual")},
                  {QStringLiteral("own"), QStringLiteral("Our own rule")}});
        b.section("The work");
        b.quantity("work", "Work, one person", &UpkeepTask::work, "min")
            .required()
            .listed()
            .between(Duration::ofBase(60), Duration::ofBase(14 * 86400))
            .startsWith(qint64{1800});
        b.quantity("cold_before", "Cold before", &UpkeepTask::coldBefore, "h")
            .required()
            .between(Duration::ofBase(0), Duration::ofBase(14 * 86400))
            .startsWith(qint64{0});
        b.quantity("cure_after", "Cure after", &UpkeepTask::cureAfter, "h")
            .required()
            .between(Duration::ofBase(0), Duration::ofBase(30LL * 86400))
            .startsWith(qint64{0});
        b.count("priority", "Weight of being late, 1 to 9", &UpkeepTask::priority)
            .required()
            .atLeast(1)
            .atMost(9)
            .startsWith(qint64{3});
        b.flag("blocks_lighting", "Do not light when overdue", &UpkeepTask::blocksLighting)
            .listed();
        b.flag("blocks_towing", "Do not tow when overdue", &UpkeepTask::blocksTowing);
        b.longText("tools", "Tools", &UpkeepTask::tools);
        b.longText("steps", "Steps", &UpkeepTask::steps);
        b.longText("cautions", "Cautions", &UpkeepTask::cautions);
        b.flag("once", "Once only", &UpkeepTask::once)
            .help("Due no more once it is done: for what a finding asks for.");
        b.flag("retired", "Retired", &UpkeepTask::retired);
        b.typed(&UpkeepTask::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Visit> &binderOf<Visit>()
{
    static const Binder<Visit> binder = [] {
        Binder<Visit> b(TableId::Visit, "visit", "visit", "visits", "");
        b.reference("task", "Task", &Visit::task, TableId::UpkeepTask, OnDelete::Cascade)
            .required()
            .listed();
        b.choice("state", "State", &Visit::state,
                 {{QStringLiteral("placed"), QStringLiteral("Placed")},
                  {QStringLiteral("started"), QStringLiteral("Started")},
                  {QStringLiteral("done"), QStringLiteral("Done")},
                  {QStringLiteral("skipped"), QStringLiteral("Skipped")}})
            .listed();
        b.time("start", "Start", &Visit::start).required().listed();
        b.time("end", "End", &Visit::end).listed();
        b.flag("pinned", "Placed by hand", &Visit::pinned);
        b.text("who", "Who", &Visit::who).listed();
        b.quantity("cost", "Cost", &Visit::cost).atLeast(0).listed();
        b.longText("found", "Found", &Visit::found);
        b.longText("note", "Note", &Visit::note);
        b.typed(&Visit::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Finding> &binderOf<Finding>()
{
    static const Binder<Finding> binder = [] {
        Binder<Finding> b(TableId::Finding, "finding", "finding", "findings", "text");
        b.text("text", "What was found", &Finding::text).required().listed();
        b.reference("pit", "Pit", &Finding::pit, TableId::Pit, OnDelete::Cascade).listed();
        b.reference("cook", "On cook", &Finding::cook, TableId::Cook, OnDelete::Clear);
        b.reference("visit", "On visit", &Finding::visit, TableId::Visit, OnDelete::Clear);
        b.time("opened", "Opened", &Finding::opened).required().listed();
        b.choice("state", "State", &Finding::state,
                 {{QStringLiteral("open"), QStringLiteral("Open")},
                  {QStringLiteral("watched"), QStringLiteral("Watched")},
                  {QStringLiteral("mended"), QStringLiteral("Mended")},
                  {QStringLiteral("nothing"), QStringLiteral("Looked, nothing found")}})
            .listed();
        b.reference("mended_by", "Mended on visit", &Finding::mendedBy, TableId::Visit,
                    OnDelete::Clear);
        b.typed(&Finding::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<KnownGood> &binderOf<KnownGood>()
{
    static const Binder<KnownGood> binder = [] {
        Binder<KnownGood> b(TableId::KnownGood, "known_good", "known-good period",
                            "known-good periods", "");
        b.reference("pit", "Pit", &KnownGood::pit, TableId::Pit, OnDelete::Cascade)
            .required()
            .listed();
        b.date("from_day", "From", &KnownGood::from).required().listed();
        b.date("to_day", "To", &KnownGood::to).listed();
        b.text("reason", "Reason", &KnownGood::reason).listed();
        b.typed(&KnownGood::typed);
        return b;
    }();
    return binder;
}

} // namespace rickyard::domain
