#include "models/exchange/ics/calendar_read.h"

#include "models/exchange/ics/calendar_event.h"

#include <QMap>

#include <algorithm>

namespace rickyard::exchange {

using domain::BusyTime;
using domain::Instant;

namespace {

constexpr qsizetype kMostBusyTimes = 20'000;
constexpr int kMostOfOne = 2'000; // busy times of one repeated appointment in the window
// Of all repeats of a file together, in steps of the search: some eight seconds at worst.
constexpr qint64 kMostSearchSteps = 3'000'000;

Instant instantOf(const QDateTime &utc)
{
    return Instant::ofSeconds(utc.toSecsSinceEpoch());
}
QDateTime utcOf(Instant instant)
{
    return QDateTime::fromSecsSinceEpoch(instant.seconds(), Qt::UTC);
}

// One appointment with the versions of single times that replace it.
struct EventGroup {
    std::optional<CalendarEvent> master;
    QMap<QDateTime, CalendarEvent> instead; // by the moment (UTC) they replace
};

struct BusySpan {
    QDateTime replaced; // UTC start by the rule; what an exception names
    QDateTime digits;
    QDateTime start;
    QDateTime end;
    QString summary;
};

class BusyExpander
{
public:
    BusyExpander(const CalendarReadOptions &options, QString fileName, CalendarRead &read)
        : m_options(options), m_file(std::move(fileName)), m_read(read)
    {
    }

    void expand(const EventGroup &group)
    {
        QVector<BusySpan> spans;
        const bool repeats = group.master && (group.master->rule || !group.master->extra.isEmpty());
        if (group.master && !skip(*group.master) && !spansOf(*group.master, spans))
            return;
        replace(spans, group);
        qsizetype taken = 0;
        const QByteArray uid = group.master ? group.master->uid : group.instead.first().uid;
        for (const BusySpan &span : std::as_const(spans))
            taken += take(span, uid, repeats || !group.instead.isEmpty()) ? 1 : 0;
        if (taken == 0 && !spans.isEmpty())
            ++m_read.report.outside;
    }

private:
    bool skip(const CalendarEvent &event)
    {
        m_read.report.free += event.free && !event.cancelled ? 1 : 0;
        m_read.report.calledOff += event.cancelled ? 1 : 0;
        const bool moment = event.length.days == 0 && event.length.seconds == 0 &&
                            std::none_of(event.extra.begin(), event.extra.end(),
                                         [](const CalendarExtra &e) { return e.end.has_value(); });
        m_read.report.noLength += moment && !event.free && !event.cancelled ? 1 : 0;
        return event.free || event.cancelled || moment;
    }

    void refuse(const CalendarEvent &event, const QString &expected)
    {
        Refusal refusal;
        refusal.file = m_file;
        refusal.line = event.ruleLine > 0 ? event.ruleLine : event.line;
        refusal.value = event.summary;
        refusal.expected = expected;
        m_read.refused.add(refusal);
    }

    static QDateTime endOf(const CalendarEvent &event, const QDateTime &digits,
                           const QDateTime &start)
    {
        const CalendarLength &length = event.length;
        const QDateTime whole = length.days == 0 ? start : event.clock(digits.addDays(length.days));
        return whole.addSecs(length.seconds);
    }

    bool spansOf(const CalendarEvent &event, QVector<BusySpan> &spans)
    {
        QVector<Occurrence> times{{event.start.digits, event.start.utc}};
        if (event.rule) {
            OccurrenceQuery query;
            query.rule = *event.rule;
            query.first = event.start.digits;
            query.last = utcOf(m_options.to).date().addDays(2); // whatever the zone
            query.from = utcOf(m_options.from)
                             .addDays(-event.length.days - 1)
                             .addSecs(-event.length.seconds);
            query.limit = kMostOfOne + 1;
            query.toUtc = event.clock;
            if (m_steps > kMostSearchSteps) {
                refuse(event, QStringLiteral("fewer or shorter repeats: all of them together take "
                                             "too long to work out"));
                return false;
            }
            const auto found = findOccurrences(std::move(query), m_steps);
            if (!found || found->size() > kMostOfOne) {
                refuse(event, found ? QStringLiteral("at most %1 repeats in the time that is read")
                                          .arg(kMostOfOne)
                                    : QString(QStringLiteral("a rule that ends. ") +
                                              found.message().chopped(1)));
                return false;
            }
            times = found.value();
        }
        for (const Occurrence &at : std::as_const(times))
            spans << BusySpan{at.utc, at.digits, at.utc, endOf(event, at.digits, at.utc),
                              event.summary};
        for (const CalendarExtra &extra : event.extra)
            spans << BusySpan{extra.start.utc, extra.start.digits, extra.start.utc,
                              extra.end.value_or(endOf(event, extra.start.digits, extra.start.utc)),
                              event.summary};
        leaveOut(spans, event.without);
        std::sort(spans.begin(), spans.end(),
                  [](const BusySpan &a, const BusySpan &b) { return a.replaced < b.replaced; });
        spans.erase(std::unique(spans.begin(), spans.end(),
                                [](const BusySpan &a, const BusySpan &b) {
                                    return a.replaced == b.replaced;
                                }),
                    spans.end());
        return true;
    }

    // An exception that is a bare day takes out whatever starts on it.
    static void leaveOut(QVector<BusySpan> &spans, const QVector<CalendarMoment> &without)
    {
        QSet<QDateTime> moments;
        QSet<QDate> days;
        for (const CalendarMoment &at : without) {
            if (at.isDate)
                days << at.digits.date();
            moments << at.utc;
        }
        spans.erase(std::remove_if(spans.begin(), spans.end(),
                                   [&](const BusySpan &span) {
                                       return moments.contains(span.replaced) ||
                                              days.contains(span.digits.date());
                                   }),
                    spans.end());
    }

    void replace(QVector<BusySpan> &spans, const EventGroup &group)
    {
        for (const CalendarEvent &event : group.instead) {
            const QDateTime key = event.replaces->utc;
            const auto isReplaced = [&event, &key](const BusySpan &span) {
                return event.replaces->isDate ? span.digits.date() == event.replaces->digits.date()
                                              : span.replaced == key;
            };
            spans.erase(std::remove_if(spans.begin(), spans.end(), isReplaced), spans.end());
            if (event.andLater)
                moveLater(spans, event);
            if (!skip(event))
                spans << BusySpan{key, event.start.digits, event.start.utc,
                                  endOf(event, event.start.digits, event.start.utc), event.summary};
        }
    }

    // RANGE=THISANDFUTURE: the times behind it move with it.
    static void moveLater(QVector<BusySpan> &spans, const CalendarEvent &event)
    {
        const bool off = event.cancelled || event.free;
        const qint64 shift = event.replaces->digits.secsTo(event.start.digits);
        for (BusySpan &span : spans) {
            if (span.replaced <= event.replaces->utc)
                continue;
            span.digits = span.digits.addSecs(shift);
            span.start = event.clock(span.digits);
            span.end = off ? span.start : endOf(event, span.digits, span.start);
            span.summary = event.summary;
        }
    }

    bool take(const BusySpan &span, const QByteArray &uid, bool repeats)
    {
        if (span.end <= span.start || instantOf(span.end) <= m_options.from ||
            instantOf(span.start) >= m_options.to)
            return false;
        BusyTime busy;
        busy.uid = QString::fromUtf8(uid);
        if (repeats)
            busy.uid += QString(QLatin1Char('/') +
                                span.replaced.toString(QStringLiteral("yyyyMMdd'T'HHmmss'Z'")));
        if (m_uids.contains(busy.uid))
            return false;
        m_uids << busy.uid;
        busy.source = m_options.source;
        busy.start = instantOf(span.start);
        busy.end = instantOf(span.end);
        busy.summary = span.summary;
        m_read.busy << busy;
        return true;
    }

    const CalendarReadOptions &m_options;
    QString m_file;
    CalendarRead &m_read;
    QSet<QString> m_uids;
    qint64 m_steps = 0;
};

class CalendarReader
{
public:
    CalendarReader(const CalendarReadOptions &options, QString fileName)
        : m_options(options), m_file(std::move(fileName))
    {
    }

    CalendarRead read(const QByteArray &bytes, const Progress &progress,
                      const std::atomic_bool *cancel)
    {
        const CalendarFrame frame = frameOf(bytes, m_file, cancel);
        m_read.refused.add(frame.refused);
        m_read.report.events = frame.events.size();
        m_read.report.others = frame.others;
        m_whole = frame.whole;
        if (stopped(cancel))
            return std::move(m_read);
        if (!frame.whole)
            return finish();
        CalendarClocks clocks(frame.zones, m_options.timeZone, m_file, m_read.refused);
        QVector<QByteArray> order;
        QHash<QByteArray, EventGroup> groups;
        for (qsizetype i = 0; i < frame.events.size(); ++i) {
            if (stopped(cancel))
                return std::move(m_read);
            if (progress && i % 100 == 0)
                progress(i, 2 * frame.events.size());
            const auto event =
                readCalendarEvent(frame.events.at(i), clocks, m_file, m_read.refused);
            if (!event)
                continue;
            m_read.report.floating += event->start.floating ? 1 : 0;
            if (!groups.contains(event->uid))
                order << event->uid;
            add(groups[event->uid], *event);
        }
        for (const QByteArray &name : clocks.unknown())
            m_read.report.unknownZones << QString::fromUtf8(name);
        m_read.report.unknownZones.sort();
        BusyExpander expander(m_options, m_file, m_read);
        qint64 done = 0;
        for (const QByteArray &uid : std::as_const(order)) {
            if (stopped(cancel))
                return std::move(m_read);
            if (progress && ++done % 100 == 0)
                progress(order.size() + done, 2 * order.size());
            expander.expand(groups.value(uid));
            if (m_read.busy.size() > kMostBusyTimes)
                break;
        }
        return finish();
    }

private:
    bool stopped(const std::atomic_bool *cancel)
    {
        if (cancel == nullptr || !cancel->load())
            return false;
        m_read.busy.clear();
        m_read.cancelled = true;
        return true;
    }

    // Of two versions the one with the higher SEQUENCE counts, else the later in the file.
    void add(EventGroup &group, const CalendarEvent &event)
    {
        if (event.oldExceptions)
            m_read.report.notes << QStringLiteral("\"%1\" has an EXRULE, which calendars no longer "
                                                  "use: it is passed over.")
                                       .arg(event.summary);
        if (event.replaces) {
            auto at = group.instead.find(event.replaces->utc);
            if (at == group.instead.end()) {
                group.instead.insert(event.replaces->utc, event);
                return;
            }
            ++m_read.report.replaced;
            if (event.sequence >= at->sequence)
                *at = event;
            return;
        }
        if (!group.master) {
            group.master = event;
            return;
        }
        ++m_read.report.replaced;
        if (event.sequence >= group.master->sequence)
            group.master = event;
    }

    CalendarRead finish()
    {
        if (m_read.busy.size() > kMostBusyTimes) {
            Refusal refusal;
            refusal.file = m_file;
            refusal.expected = QStringLiteral("at most %1 busy times in the time that is read")
                                   .arg(kMostBusyTimes);
            m_read.refused.add(refusal);
            m_whole = false;
        }
        m_read.ok = m_whole && (m_read.refused.isEmpty() || !m_options.strict);
        if (!m_read.ok)
            m_read.busy.clear();
        std::stable_sort(m_read.busy.begin(), m_read.busy.end(),
                         [](const BusyTime &a, const BusyTime &b) { return a.start < b.start; });
        return std::move(m_read);
    }

    const CalendarReadOptions &m_options;
    QString m_file;
    CalendarRead m_read;
    bool m_whole = false;
};

} // namespace

QStringList CalendarReadReport::lines() const
{
    QStringList said{QStringLiteral("%1 appointments read.").arg(events)};
    const auto count = [&said](qint64 n, const char *what) {
        if (n > 0)
            said << QStringLiteral("%1 %2.").arg(n).arg(QString::fromUtf8(what));
    };
    count(free, "left out: marked as not taking time");
    count(calledOff, "left out: called off");
    count(noLength, "left out: a moment, without a length");
    count(outside, "left out: before or after the time that is read");
    count(replaced, "left out: older versions of another");
    count(others, "other parts (to-dos, journals) passed over");
    count(floating, "without a time zone: read by the yard's clock");
    if (!unknownZones.isEmpty())
        said << QStringLiteral("Time zones that nobody knows, read by the yard's clock: %1.")
                    .arg(unknownZones.mid(0, 5).join(QStringLiteral(", ")));
    return said + notes.mid(0, 10);
}

CalendarRead readCalendar(const QByteArray &bytes, const CalendarReadOptions &options,
                          const QString &fileName, const Progress &progress,
                          const std::atomic_bool *cancel)
{
    return CalendarReader(options, fileName).read(bytes, progress, cancel);
}

BusyMerge mergeBusyTimes(const domain::Books &books, const QVector<BusyTime> &busy,
                         const CalendarReadOptions &options)
{
    QMap<QString, BusyTime> before;
    for (const BusyTime &old : books.busyTimes)
        if (old.source == options.source)
            before.insert(old.uid, old);
    BusyMerge merge;
    for (BusyTime now : busy) {
        const auto old = before.find(now.uid);
        if (old == before.end()) {
            merge.fresh << now;
            continue;
        }
        now.id = old->id;
        now.typed = old->typed;
        if (old->start == now.start && old->end == now.end && old->summary == now.summary)
            ++merge.identical;
        else
            merge.updated << now;
        before.erase(old);
    }
    for (const BusyTime &old : std::as_const(before))
        if (old.end > options.from && old.start < options.to)
            merge.gone << old.id;
    return merge;
}

} // namespace rickyard::exchange
