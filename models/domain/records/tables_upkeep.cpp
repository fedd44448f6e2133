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
        b.quantity("every_ash", "Every … of ash", &UpkeepTask::everyAsh)
            .between(massFromPounds(0.1), massFromPounds(10000))
            .help("Estimated from the wood that was burned.");
        b.choice("occasion", "And always", &UpkeepTask::occasion,
                 {{QStringLiteral("none"), QStringLiteral("On no occasion")},
                  {QStringLiteral("before_cook"), QStringLiteral("Before each cook")},
                  {QStringLiteral("after_cook"), QStringLiteral("After each cook")},
                  {QStringLiteral("before_towing"), QStringLiteral("Before towing")},
                  {QStringLiteral("before_season"), QStringLiteral("Before the season")}});
        b.date("snoozed_until", "Put off until", &UpkeepTask::snoozedUntil);
        b.text("snooze_reason", "Why it is put off", &UpkeepTask::snoozeReason);
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
        b.count("people", "People at once", &UpkeepTask::people)
            .required()
            .atLeast(1)
            .atMost(20)
            .startsWith(qint64{1});
        b.reference("after", "Only after", &UpkeepTask::after, TableId::UpkeepTask,
                    OnDelete::Clear);
        b.flag("daylight", "Needs daylight", &UpkeepTask::daylight);
        b.flag("dry_weather", "Needs dry weather", &UpkeepTask::dryWeather);
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
        b.section("What is read");
        b.choice(
            "reading", "Reading", &UpkeepTask::reading,
            {{QStringLiteral("none"), QStringLiteral("None")},
             {QStringLiteral("ice_point"), QStringLiteral("Ice point of a thermometer")},
             {QStringLiteral("boiling_point"), QStringLiteral("Boiling point of a thermometer")},
             {QStringLiteral("paper_test"), QStringLiteral("Paper test of a gasket")},
             {QStringLiteral("plate_thickness"), QStringLiteral("Plate thickness")},
             {QStringLiteral("other"), QStringLiteral("Another figure")}});
        b.text("reading_unit", "Its unit", &UpkeepTask::readingUnit);
        b.count("reading_points", "Values each time", &UpkeepTask::readingPoints)
            .required()
            .atLeast(1)
            .atMost(64)
            .startsWith(qint64{1});
        b.quantity("reading_low", "Not below", &UpkeepTask::readingLow);
        b.quantity("reading_high", "Not above", &UpkeepTask::readingHigh);
        b.section("");
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
        b.text("steps_done", "Steps done", &Visit::stepsDone).derived();
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
