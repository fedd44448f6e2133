#include "models/exchange/ics/calendar_event.h"

#include <QCryptographicHash>
#include <QMap>

namespace rickyard::exchange {

namespace {

constexpr int kEarliestYear = 1900;
constexpr int kLatestYear = 2200;
constexpr qsizetype kLongestSummary = 200; // letters
constexpr qsizetype kLongestUid = 200;     // bytes; a longer one is kept as its hash

QString timeExpected()
{
    return QStringLiteral("a day such as 20261205, or a time such as 20261205T100000, between the "
                          "years %1 and %2")
        .arg(kEarliestYear)
        .arg(kLatestYear);
}

class EventReader
{
public:
    EventReader(const CalendarBlock &block, CalendarClocks &clocks, QString fileName,
                Refusals &refused)
        : m_block(block), m_clocks(clocks), m_file(std::move(fileName)), m_refused(refused)
    {
        m_event.line = block.number;
    }

    std::optional<CalendarEvent> read()
    {
        for (const CalendarLine &line : m_block.lines)
            take(line);
        if (m_good && !m_hasStart)
            refuse(m_block.number, QStringLiteral("BEGIN:VEVENT"),
                   QStringLiteral("a DTSTART in it: it does not say when"));
        if (m_good)
            setLength();
        if (!m_good)
            return std::nullopt;
        if (m_event.uid.isEmpty()) // against the rules, but found: named after what it says
            m_event.uid = hashed(m_event.start.utc.toString(Qt::ISODate).toLatin1() +
                                 m_event.summary.toUtf8());
        return std::move(m_event);
    }

private:
    void refuse(qint64 line, const QString &value, const QString &expected)
    {
        Refusal refusal;
        refusal.file = m_file;
        refusal.line = line;
        refusal.value = value;
        refusal.expected = expected;
        m_refused.add(refusal);
        m_good = false;
    }
    void refuse(const CalendarLine &line, const QString &expected)
    {
        refuse(line.number, QString::fromUtf8(line.text.left(200)), expected);
    }

    static QByteArray hashed(const QByteArray &text)
    {
        return QCryptographicHash::hash(text, QCryptographicHash::Sha256).toHex();
    }

    void take(const CalendarLine &line)
    {
        if (line.name == "EXRULE") {
            m_event.oldExceptions = true;
            return;
        }
        if (line.name != "EXDATE" && line.name != "RDATE") {
            if (m_seen.contains(line.name)) {
                refuse(line,
                       QString::fromLatin1("one " + line.name + " only; the first is in line " +
                                           QByteArray::number(m_seen.value(line.name))));
                return;
            }
            m_seen.insert(line.name, line.number);
        }
        const QByteArray text = "BEGIN:VEVENT\r\n" + line.text + "\r\nEND:VEVENT\r\n";
        const ComponentHandle one(icalparser_parse_string(text.constData()));
        if (!one) {
            refuse(line, expectedFor(line.name));
            return;
        }
        bool any = false;
        for (icalproperty *p = icalcomponent_get_first_property(one.get(), ICAL_ANY_PROPERTY); p;
             p = icalcomponent_get_next_property(one.get(), ICAL_ANY_PROPERTY)) {
            const icalproperty_kind kind = icalproperty_isa(p);
            if (kind == ICAL_XLICERROR_PROPERTY || icalproperty_get_value(p) == nullptr) {
                refuse(line, expectedFor(line.name));
                return;
            }
            any = true;
            takeProperty(line, p, kind);
        }
        if (!any && line.name != "SUMMARY" && line.name != "UID")
            refuse(line, expectedFor(line.name));
    }

    static QString expectedFor(const QByteArray &name)
    {
        static const QSet<QByteArray> times = {"DTSTART", "DTEND", "EXDATE", "RDATE",
                                               "RECURRENCE-ID"};
        if (times.contains(name))
            return timeExpected();
        if (name == "DURATION")
            return QStringLiteral("a length such as PT2H30M or P1D");
        if (name == "SEQUENCE")
            return QStringLiteral("a whole number");
        return QStringLiteral("a value as RFC 5545 has it");
    }

    void takeProperty(const CalendarLine &line, icalproperty *p, icalproperty_kind kind)
    {
        switch (kind) {
        case ICAL_UID_PROPERTY:
            m_event.uid = QByteArray(icalproperty_get_uid(p)).trimmed();
            if (m_event.uid.size() > kLongestUid)
                m_event.uid = hashed(m_event.uid);
            break;
        case ICAL_SUMMARY_PROPERTY:
            m_event.summary =
                QString::fromUtf8(icalproperty_get_summary(p)).simplified().left(kLongestSummary);
            break;
        case ICAL_DTSTART_PROPERTY:
            if (const auto at = moment(line, p, icalproperty_get_dtstart(p))) {
                m_event.start = *at;
                m_event.clock = clockFor(p, *at);
                m_hasStart = true;
            }
            break;
        case ICAL_DTEND_PROPERTY:
            m_end = moment(line, p, icalproperty_get_dtend(p));
            m_endLine = line;
            break;
        case ICAL_DURATION_PROPERTY:
            takeDuration(line, icalproperty_get_duration(p));
            break;
        case ICAL_RRULE_PROPERTY:
            takeRule(line);
            break;
        case ICAL_RDATE_PROPERTY:
            takeExtra(line, p);
            break;
        case ICAL_EXDATE_PROPERTY:
            if (const auto at = moment(line, p, icalproperty_get_exdate(p)))
                m_event.without << *at;
            break;
        case ICAL_RECURRENCEID_PROPERTY:
            m_event.replaces = moment(line, p, icalproperty_get_recurrenceid(p));
            if (const icalparameter *range =
                    icalproperty_get_first_parameter(p, ICAL_RANGE_PARAMETER))
                m_event.andLater = icalparameter_get_range(range) == ICAL_RANGE_THISANDFUTURE;
            break;
        case ICAL_TRANSP_PROPERTY:
            m_event.free = valueIs(p, "TRANSPARENT");
            break;
        case ICAL_STATUS_PROPERTY:
            m_event.cancelled = valueIs(p, "CANCELLED");
            break;
        case ICAL_SEQUENCE_PROPERTY:
            m_event.sequence = icalproperty_get_sequence(p);
            break;
        default:
            break;
        }
    }

    static bool valueIs(icalproperty *p, const char *word)
    {
        const TextHandle text(icalproperty_get_value_as_string_r(p));
        return text && QByteArray(text.get()).trimmed().toUpper() == word;
    }

    [[nodiscard]] static QByteArray zoneOf(icalproperty *p)
    {
        icalparameter *parameter = icalproperty_get_first_parameter(p, ICAL_TZID_PARAMETER);
        const char *tzid = parameter != nullptr ? icalparameter_get_tzid(parameter) : nullptr;
        return tzid != nullptr ? QByteArray(tzid) : QByteArray();
    }
    ClockToUtc clockFor(icalproperty *p, const CalendarMoment &at)
    {
        const QByteArray tzid = zoneOf(p);
        if (at.isDate || at.floating)
            return m_clocks.yard();
        return tzid.isEmpty() ? [](const QDateTime &digits) { return digits; }
                              : m_clocks.named(tzid);
    }

    std::optional<CalendarMoment> moment(const CalendarLine &line, icalproperty *p,
                                         const icaltimetype &time)
    {
        CalendarMoment at;
        at.isDate = time.is_date != 0;
        at.digits = at.isDate
                        ? QDateTime(QDate(time.year, time.month, time.day), QTime(0, 0), Qt::UTC)
                        : timeOf(time);
        if (!at.digits.isValid() || at.digits.date().year() < kEarliestYear ||
            at.digits.date().year() > kLatestYear) {
            refuse(line, timeExpected());
            return std::nullopt;
        }
        at.floating = !at.isDate && icaltime_is_utc(time) == 0 && zoneOf(p).isEmpty();
        at.utc = icaltime_is_utc(time) != 0 ? at.digits : clockFor(p, at)(at.digits);
        return at;
    }

    void takeDuration(const CalendarLine &line, const icaldurationtype &duration)
    {
        if (icaldurationtype_is_bad_duration(duration) != 0 || duration.is_neg != 0 ||
            duration.days > 36'600 || duration.weeks > 5'200) {
            refuse(line, expectedFor("DURATION"));
            return;
        }
        m_hasDuration = true;
        m_event.length.days = qint64(duration.days) + 7 * qint64(duration.weeks);
        m_event.length.seconds = 3600 * qint64(duration.hours) + 60 * qint64(duration.minutes) +
                                 qint64(duration.seconds);
    }

    void takeRule(const CalendarLine &line)
    {
        const auto rule = readRule(QString::fromUtf8(line.text.mid(line.text.indexOf(':') + 1)));
        m_event.ruleLine = line.number;
        if (rule)
            m_event.rule = rule.value();
        else
            refuse(line, QString(QStringLiteral("a repeat rule. ") + rule.message().chopped(1)));
    }

    void takeExtra(const CalendarLine &line, icalproperty *p)
    {
        const icaldatetimeperiodtype when = icalproperty_get_rdate(p);
        const bool period = icaltime_is_null_time(when.time) != 0;
        CalendarExtra extra;
        const auto start = moment(line, p, period ? when.period.start : when.time);
        if (!start)
            return;
        extra.start = *start;
        if (period && icaltime_is_null_time(when.period.end) == 0) {
            const auto end = moment(line, p, when.period.end);
            if (!end)
                return;
            extra.end = end->utc;
        } else if (period) {
            extra.end = start->utc.addSecs(icaldurationtype_as_int(when.period.duration));
        }
        m_event.extra << extra;
    }

    void setLength()
    {
        if (m_end && m_hasDuration) {
            refuse(m_endLine, QStringLiteral("DTEND or DURATION, not both"));
            return;
        }
        if (!m_end) {
            if (!m_hasDuration && m_event.start.isDate)
                m_event.length.days = 1;
            return;
        }
        if (m_end->isDate != m_event.start.isDate || m_end->utc < m_event.start.utc) {
            refuse(m_endLine, QStringLiteral("an end that is not before the start, and a day or a "
                                             "time as the start is"));
            return;
        }
        if (m_event.start.isDate)
            m_event.length.days = std::max<qint64>(1, m_event.start.digits.daysTo(m_end->digits));
        else
            m_event.length.seconds = m_event.start.utc.secsTo(m_end->utc);
    }

    const CalendarBlock &m_block;
    CalendarClocks &m_clocks;
    QString m_file;
    Refusals &m_refused;
    CalendarEvent m_event;
    QMap<QByteArray, qint64> m_seen;
    std::optional<CalendarMoment> m_end;
    CalendarLine m_endLine;
    bool m_hasStart = false;
    bool m_hasDuration = false;
    bool m_good = true;
};

} // namespace

std::optional<CalendarEvent> readCalendarEvent(const CalendarBlock &block, CalendarClocks &clocks,
                                               const QString &fileName, Refusals &refused)
{
    return EventReader(block, clocks, fileName, refused).read();
}

} // namespace rickyard::exchange
