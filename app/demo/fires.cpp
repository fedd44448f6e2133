#include "app/demo/draft.h"
#include "app/demo/truth.h"
#include "models/domain/fire/trace_codec.h"

#include <QSet>

#include <algorithm>
#include <cmath>
#include <limits>

namespace rickyard::app::demo {

namespace {

using domain::Cook;

// Scatter of one cook's wood about its need: fires, splits and people differ.
constexpr double kScatter = 0.08;

void addTrace(Draft &draft, const Cook &cook, const QString &probe, const Course &course,
              qint64 step)
{
    QVector<domain::TracePoint> points;
    for (qsizetype i = 0; i < course.size(); ++i)
        if (std::isfinite(course.at(i)))
            points << domain::TracePoint{i * step,
                                         domain::Temperature::rounded(course.at(i) * 10) * 100};
    const auto block = domain::encodeTrace(points);
    if (!block)
        return;
    domain::Trace trace;
    trace.cook = cook.id;
    trace.probe = probe;
    trace.start = cook.lit;
    trace.points = static_cast<int>(points.size());
    trace.block = block.value();
    trace.source = QStringLiteral("invented");
    shelve(draft.books.traces, trace);
}

void addReading(Draft &draft, const Cook &cook, const QString &probe, Instant time, double celsius)
{
    domain::CookTemperature t;
    t.cook = cook.id;
    t.time = time;
    t.probe = probe;
    // Read off a dial in whole five degrees Fahrenheit.
    t.temperature = domain::temperatureFromFahrenheit(std::round((celsius * 1.8 + 32) / 5) * 5);
    shelve(draft.books.temperatures, t);
}

// What a probe in the meat shows: slow, with the long halt where its water leaves. It logs from
// food on to food off.
Course meatCourse(const Cook &cook, const Course &pit)
{
    Course meat;
    double degrees = 4;
    const qsizetype on = (*cook.foodOn - cook.lit).base() / kStep;
    const qsizetype off = (*cook.foodOff - cook.lit).base() / kStep;
    for (qsizetype i = 0; i < pit.size(); ++i) {
        if (i < on || i > off) {
            meat << std::numeric_limits<double>::quiet_NaN();
            continue;
        }
        const double halt = degrees > 66 && degrees < 75 ? 0.45 : 1.0;
        degrees += std::max(0.0, pit.at(i) - degrees) * 0.0105 * halt;
        degrees = std::min(degrees, 96.0);
        meat << degrees;
    }
    return meat;
}

void addTemperatures(Draft &draft, Dice &dice, const Cook &cook, const Course &course)
{
    const auto at = [&](double hours) {
        const auto i = static_cast<qsizetype>(hours * 3600 / kStep);
        return course.at(std::clamp<qsizetype>(i, 0, course.size() - 1));
    };
    const double length = domain::hours(*cook.fireOut - cook.lit);
    const bool logged = dice.chance(0.75);
    if (logged) {
        addTrace(draft, cook, QStringLiteral("grate"), course, kStep);
        if (dice.chance(0.5))
            addTrace(draft, cook, QStringLiteral("meat"), meatCourse(cook, course), kStep);
    }
    for (double h = 0.2; h < length; h += logged ? dice.between(3.0, 4.5) : dice.between(0.5, 1.0))
        addReading(draft, cook, QStringLiteral("door dial"),
                   cook.lit + domain::durationFromHours(std::round(h * 60) / 60), at(h));
}

void addNote(Draft &draft, const Cook &cook, Instant time, domain::NoteKind kind, const char *text)
{
    domain::CookNote n;
    n.cook = cook.id;
    n.time = time;
    n.kind = kind;
    n.text = QString::fromUtf8(text);
    shelve(draft.books.notes, n);
}

void addNotes(Draft &draft, Dice &dice, const Cook &cook, bool failing)
{
    const Duration length = *cook.fireOut - cook.lit;
    const auto part = [&](double share) { return cook.lit + length * share; };
    if (domain::hours(length) > 11)
        addNote(draft, cook, part(0.45), domain::NoteKind::HandOver,
                "Coal bed good, next feed due in half an hour. Pim to Tansy.");
    if (dice.chance(0.5))
        addNote(draft, cook, part(0.6), domain::NoteKind::Wrapped, "Wrapped in paper");
    if (dice.chance(0.4))
        addNote(draft, cook, part(0.5), domain::NoteKind::Grease, "Drain runs");
    if (failing && dice.chance(0.5))
        addNote(draft, cook, part(0.55), domain::NoteKind::Remark,
                "Smoke from the lower door edge, hard to hold temperature");
    for (Instant t = cook.lit; t < *cook.fireOut; t = t + Duration::ofBase(3600))
        if (draft.air.rainAt(t)) {
            addNote(draft, cook, t, domain::NoteKind::Rain, "Rain");
            break;
        }
}

QSet<RecordId> failingCooks(const domain::Books &books)
{
    QVector<RecordId> middle;
    for (const Cook &cook : books.cooks)
        if (cook.pit == kMiddlePit)
            middle << cook.id; // by lighting time: so the calendar wrote them
    QSet<RecordId> failing;
    for (qsizetype i = std::max<qsizetype>(0, middle.size() - kFailingCooks); i < middle.size();
         ++i)
        failing << middle.at(i);
    return failing;
}

} // namespace

void addFires(Draft &draft)
{
    Dice dice = draft.dice.fork(4);
    const QSet<RecordId> failing = failingCooks(draft.books);
    const QVector<Cook> cooks(draft.books.cooks.cbegin(), draft.books.cooks.cend());
    for (const Cook &cook : cooks) {
        const Course course = courseOf(dice, cook, draft.air);
        addTemperatures(draft, dice, cook, course);
        addNotes(draft, dice, cook, failing.contains(cook.id));
        const double need = heatNeeded(draft.books.pits.value(cook.pit), cook, course, draft.air);
        const double factor = failing.contains(cook.id) ? dice.between(kFailingLeast, kFailingMost)
                                                        : dice.lognormal(kScatter);
        draft.needs << Need{cook.id, need * factor};
    }
}

} // namespace rickyard::app::demo
