// What comes of a visit: values read, pictures, ash, and going on although a task blocks it.
#include "models/domain/records/books.h"

namespace rickyard::domain {

template <>
const Binder<CheckReading> &binderOf<CheckReading>()
{
    static const Binder<CheckReading> binder = [] {
        Binder<CheckReading> b(TableId::CheckReading, "check_reading", "reading", "readings", "");
        b.reference("task", "Task", &CheckReading::task, TableId::UpkeepTask, OnDelete::Cascade)
            .required()
            .listed();
        b.reference("visit", "On visit", &CheckReading::visit, TableId::Visit, OnDelete::Cascade);
        b.time("time", "Read at", &CheckReading::time).required().listed();
        b.count("point", "Point", &CheckReading::point)
            .required()
            .atLeast(1)
            .atMost(64)
            .startsWith(qint64{1})
            .listed();
        b.quantity("value", "Value", &CheckReading::value).required().listed();
        b.longText("note", "Note", &CheckReading::note);
        b.typed(&CheckReading::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Photo> &binderOf<Photo>()
{
    static const Binder<Photo> binder = [] {
        Binder<Photo> b(TableId::Photo, "photo", "photograph", "photographs", "caption");
        b.reference("visit", "On visit", &Photo::visit, TableId::Visit, OnDelete::Cascade).listed();
        b.reference("finding", "Of finding", &Photo::finding, TableId::Finding, OnDelete::Cascade)
            .listed();
        b.text("caption", "What it shows", &Photo::caption).listed();
        b.text("file", "File", &Photo::file).required().derived();
        b.text("sha256", "Checksum", &Photo::sha256).required().derived();
        b.count("bytes", "Size in bytes", &Photo::bytes).required().derived();
        b.time("taken", "Attached", &Photo::taken).required().listed();
        b.typed(&Photo::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<AshLoad> &binderOf<AshLoad>()
{
    static const Binder<AshLoad> binder = [] {
        Binder<AshLoad> b(TableId::AshLoad, "ash_load", "ash load", "ash loads", "");
        b.reference("pit", "From pit", &AshLoad::pit, TableId::Pit, OnDelete::Cascade)
            .required()
            .listed();
        b.time("taken_out", "Taken out", &AshLoad::takenOut).required().listed();
        b.text("can", "Into can", &AshLoad::can).required().listed();
        b.quantity("mass", "Weight", &AshLoad::mass).between(Mass(), massFromPounds(2000)).listed();
        b.time("tipped", "Tipped", &AshLoad::tipped).listed();
        b.text("tipped_where", "Where", &AshLoad::where);
        b.longText("note", "Note", &AshLoad::note);
        b.typed(&AshLoad::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Override> &binderOf<Override>()
{
    static const Binder<Override> binder = [] {
        Binder<Override> b(TableId::Override, "override", "exception", "exceptions", "reason");
        b.reference("task", "Task", &Override::task, TableId::UpkeepTask, OnDelete::Cascade)
            .required()
            .listed();
        b.reference("planned_cook", "For cook", &Override::plannedCook, TableId::PlannedCook,
                    OnDelete::Clear);
        b.reference("event", "For event", &Override::event, TableId::Event, OnDelete::Clear)
            .listed();
        b.time("time", "Decided", &Override::time).required().listed();
        b.text("reason", "Reason", &Override::reason).required().listed();
        b.text("who", "Who decided", &Override::who).listed();
        b.typed(&Override::typed);
        return b;
    }();
    return binder;
}

} // namespace rickyard::domain
