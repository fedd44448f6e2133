#include "models/exchange/ics/calendar_clocks.h"

#include "models/domain/upkeep/local_time.h"

#include <QTimeZone>

#include <algorithm>
#include <memory>

namespace rickyard::exchange {

namespace {

constexpr int kMostObservances = 200;

// "America/Chicago" of "/example.org/2026/America/Chicago" and of "Central Standard Time".
QByteArray ianaOf(const QByteArray &tzid)
{
    if (QTimeZone::isTimeZoneIdAvailable(tzid))
        return tzid;
    const QList<QByteArray> path = tzid.split('/');
    for (const int parts : {3, 2}) {
        const QByteArray tail = path.mid(std::max<qsizetype>(0, path.size() - parts)).join('/');
        if (path.size() > parts && QTimeZone::isTimeZoneIdAvailable(tail))
            return tail;
    }
    return QTimeZone::windowsIdToDefaultIanaId(tzid);
}

// libical works out every clock change of a zone at once, up to decades ahead: a rule that changes
// clocks by the minute would never end. Real zones change them in one month of the year.
bool isQuietRule(const QByteArray &line)
{
    const QString value = QString::fromUtf8(line.mid(line.indexOf(':') + 1));
    if (!readRule(value))
        return false;
    static const QSet<QString> known = {QStringLiteral("FREQ"),  QStringLiteral("BYMONTH"),
                                        QStringLiteral("BYDAY"), QStringLiteral("UNTIL"),
                                        QStringLiteral("COUNT"), QStringLiteral("BYMONTHDAY"),
                                        QStringLiteral("WKST"),  QStringLiteral("INTERVAL")};
    bool yearly = false;
    for (const QString &part : value.trimmed().toUpper().split(QLatin1Char(';'))) {
        const QString key = part.section(QLatin1Char('='), 0, 0);
        const auto values = part.count(QLatin1Char(',')) + 1;
        if (!known.contains(key) || values > (key == QLatin1String("BYMONTHDAY") ? 8 : 1))
            return false;
        yearly = yearly || part == QLatin1String("FREQ=YEARLY");
    }
    return yearly;
}

// What is wrong with a zone's lines: its place and what would do.
struct ZoneFault {
    qint64 line = 0;
    QString value;
    QString expected;
};

ZoneFault faultOf(const CalendarBlock &block)
{
    int observances = 0;
    for (const CalendarLine &line : block.lines) {
        const QString value = QString::fromUtf8(line.text.left(200));
        if (line.name == "RRULE" && !isQuietRule(line.text))
            return {line.number, value,
                    QStringLiteral("a clock change once a year, such as "
                                   "FREQ=YEARLY;BYMONTH=3;BYDAY=2SU")};
        if (line.name == "BEGIN" && ++observances > kMostObservances)
            return {
                line.number, value,
                QStringLiteral("at most %1 clock changes in a time zone").arg(kMostObservances)};
    }
    return {};
}

// Owned by the clock that it goes into.
std::shared_ptr<icaltimezone> zoneFrom(const CalendarBlock &block)
{
    QByteArray text;
    for (const CalendarLine &line : block.lines)
        text += line.text + "\r\n";
    ComponentHandle component(icalparser_parse_string(text.constData()));
    if (!component || icalcomponent_isa(component.get()) != ICAL_VTIMEZONE_COMPONENT)
        return nullptr;
    bool any = false;
    for (const icalcomponent_kind kind : {ICAL_XSTANDARD_COMPONENT, ICAL_XDAYLIGHT_COMPONENT})
        for (icalcomponent *c = icalcomponent_get_first_component(component.get(), kind); c;
             c = icalcomponent_get_next_component(component.get(), kind)) {
            any = true;
            for (const icalproperty_kind needed :
                 {ICAL_DTSTART_PROPERTY, ICAL_TZOFFSETFROM_PROPERTY, ICAL_TZOFFSETTO_PROPERTY})
                if (icalcomponent_get_first_property(c, needed) == nullptr)
                    return nullptr;
        }
    ZoneHandle zone(icaltimezone_new());
    if (!any || icaltimezone_set_component(zone.get(), component.get()) == 0)
        return nullptr;
    static_cast<void>(component.release()); // the zone's now
    return {zone.release(), FreeZone()};
}

QByteArray idOf(const CalendarBlock &block)
{
    for (const CalendarLine &line : block.lines)
        if (line.name == "TZID")
            return line.text.mid(line.text.indexOf(':') + 1).trimmed();
    return {};
}

} // namespace

ClockToUtc clockOf(const QByteArray &ianaZone)
{
    const domain::LocalTime clock(QString::fromLatin1(ianaZone));
    return [clock](const QDateTime &digits) {
        const auto sinceMidnight =
            domain::Duration::ofBase(digits.time().msecsSinceStartOfDay() / 1000);
        return QDateTime::fromSecsSinceEpoch(clock.at(digits.date(), sinceMidnight).seconds(),
                                             Qt::UTC);
    };
}

CalendarClocks::CalendarClocks(const QVector<CalendarBlock> &zones, const QString &yardZone,
                               const QString &fileName, Refusals &refused)
    : m_yard(clockOf(yardZone.toUtf8()))
{
    for (const CalendarBlock &block : zones) {
        const QByteArray id = idOf(block);
        if (id.isEmpty() || !ianaOf(id).isEmpty() || m_own.contains(id))
            continue;
        ZoneFault fault = faultOf(block);
        const auto zone = fault.line == 0 ? zoneFrom(block) : nullptr;
        if (!zone && fault.line == 0)
            fault = {block.number, QString::fromUtf8(id),
                     QStringLiteral("a time zone with its offsets (DTSTART, TZOFFSETFROM and "
                                    "TZOFFSETTO in each part)")};
        if (!zone) {
            Refusal refusal;
            refusal.file = fileName;
            refusal.line = fault.line;
            refusal.value = fault.value;
            refusal.expected = fault.expected;
            refused.add(refusal);
            continue;
        }
        m_own.insert(id, [zone](const QDateTime &digits) {
            icaltimetype time = digitsOf(digits);
            icaltimezone_convert_time(&time, zone.get(), icaltimezone_get_utc_timezone());
            return timeOf(time);
        });
    }
}

ClockToUtc CalendarClocks::named(const QByteArray &tzid)
{
    const auto known = m_named.constFind(tzid);
    if (known != m_named.constEnd())
        return known.value();
    const QByteArray iana = ianaOf(tzid);
    if (!iana.isEmpty())
        return m_named.insert(tzid, clockOf(iana)).value();
    if (m_own.contains(tzid))
        return m_named.insert(tzid, m_own.value(tzid)).value();
    m_unknown << tzid;
    return m_named.insert(tzid, m_yard).value();
}

} // namespace rickyard::exchange
