// The calendar file against RFC 5545: read again by libical and by python3-icalendar, its lines by
// sections 3.1 and 3.3.11, its time zone rules against the tz database. Invented yard.
#include "models/exchange/ics/calendar_write.h"
#include "models/exchange/ics/calendar_zone.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

Instant utc(int year, int month, int day, int hour, int minute = 0)
{
    return Instant::ofSeconds(
        QDateTime(QDate(year, month, day), QTime(hour, minute), Qt::UTC).toSecsSinceEpoch());
}

CalendarEntry appointment(RecordId id, const QString &summary, Instant start, Instant end)
{
    CalendarEntry entry;
    entry.table = TableId::Event;
    entry.record = id;
    entry.summary = summary;
    entry.start = start;
    entry.end = end;
    return entry;
}

// Two cooks on either side of the clock change of 14 March 2027, an event with its drive, one that
// was called off, a task, and a name with everything that needs care.
Calendar invented()
{
    Calendar calendar;
    calendar.yard = QStringLiteral("Invented Yard, North; Lot 4");
    calendar.mark = QStringLiteral("0b5e");
    calendar.timeZone = QStringLiteral("America/Chicago");
    calendar.written = utc(2027, 3, 1, 12, 34);
    CalendarEntry market =
        appointment(7, QString::fromUtf8("Market, \"Mill Lane\"; \\ 🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥🔥 ünïted"),
                    utc(2027, 3, 13, 17), utc(2027, 3, 13, 22, 30));
    market.place = QStringLiteral("Invented Square; gate B, left");
    market.description = QString::fromUtf8("Line one\r\nline two\ttabbed\rline three\u0007: "
                                           "äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöü");
    market.categories = {QStringLiteral("Event"), QStringLiteral("Away and towed")};
    market.remind = Duration::ofBase(86400);
    calendar.entries << market;
    CalendarEntry drive = appointment(7, QStringLiteral("Drive to Market"), utc(2027, 3, 13, 16),
                                      utc(2027, 3, 13, 17));
    drive.part = QStringLiteral("drive-out");
    calendar.entries << drive;
    CalendarEntry cook = appointment(3, QStringLiteral("Fire on Long Tom"), utc(2027, 3, 14, 4),
                                     utc(2027, 3, 14, 16));
    cook.table = TableId::PlannedCook;
    cook.state = CalendarEntry::State::Tentative;
    calendar.entries << cook;
    CalendarEntry off =
        appointment(8, QStringLiteral("Called off"), utc(2027, 7, 1, 12), utc(2027, 7, 1, 14));
    off.state = CalendarEntry::State::Cancelled;
    off.remind = Duration::ofBase(3600);
    calendar.entries << off;
    calendar.entries << appointment(9, QStringLiteral("A moment"), utc(2027, 7, 2, 12),
                                    utc(2027, 7, 2, 12));
    CalendarEntry task;
    task.table = TableId::UpkeepTask;
    task.record = 12;
    task.kind = CalendarEntry::Kind::ToDo;
    task.summary = QStringLiteral("Rake the ash out");
    task.due = QDate(2027, 3, 20);
    task.priority = 2;
    task.remind = Duration::ofBase(6 * 3600);
    calendar.entries << task;
    return calendar;
}

QByteArray written(const Calendar &calendar)
{
    const auto bytes = writeCalendar(calendar);
    return bytes ? bytes.value() : bytes.message().toUtf8();
}

QJsonObject readByPython(const QByteArray &bytes, const QStringList &seconds = {})
{
    QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("out.ics")));
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size())
        return {};
    file.close();
    QProcess python;
    python.start(QStringLiteral("/usr/bin/python3"), // where the package is
                 QStringList{QStringLiteral(RICKYARD_SOURCE_DIR "/tests/support/read_calendar.py"),
                             file.fileName()} +
                     seconds);
    python.waitForFinished(60000);
    const QByteArray errors = python.readAllStandardError();
    if (!errors.isEmpty())
        qWarning("%s", errors.constData()); // python3-icalendar is missing, or the file is wrong
    return QJsonDocument::fromJson(python.readAllStandardOutput()).object();
}

QString isoOf(Instant instant)
{
    return QDateTime::fromSecsSinceEpoch(instant.seconds(), Qt::UTC)
        .toString(QStringLiteral("yyyy-MM-dd'T'HH:mm:ss'Z'"));
}

// As RFC 5545 lets text be kept: one kind of line break, no control characters.
QString keptText(const QString &text)
{
    QString kept = text;
    kept.replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
    kept.replace(QLatin1Char('\r'), QLatin1Char('\n'));
    kept.replace(QLatin1Char('\t'), QLatin1Char(' '));
    kept.remove(QChar(7));
    return kept;
}

// What a reader must find in an entry, in the form of read_calendar.py.
QJsonObject expectedOf(const Calendar &calendar, const CalendarEntry &entry)
{
    const bool toDo = entry.kind == CalendarEntry::Kind::ToDo;
    const bool off = entry.state == CalendarEntry::State::Cancelled;
    QJsonObject found{
        {QStringLiteral("name"), toDo ? QStringLiteral("VTODO") : QStringLiteral("VEVENT")},
        {QStringLiteral("uid"), calendarUid(calendar.mark, entry)},
        {QStringLiteral("summary"), entry.summary},
        {QStringLiteral("dtstamp"), isoOf(calendar.written)}};
    const auto set = [&found](const char *key, const QJsonValue &value) {
        found.insert(QLatin1String(key), value);
    };
    if (!entry.description.isEmpty())
        set("description", keptText(entry.description));
    if (!entry.place.isEmpty())
        set("location", entry.place);
    if (!entry.categories.isEmpty())
        set("categories", QJsonArray::fromStringList(entry.categories));
    if (toDo) {
        set("due", entry.due.toString(Qt::ISODate));
        set("priority", QString::number(entry.priority));
        set("status", QStringLiteral("NEEDS-ACTION"));
    } else {
        set("dtstart", isoOf(entry.start));
        if (entry.end > entry.start)
            set("dtend", isoOf(entry.end));
        set("transp", off ? QStringLiteral("TRANSPARENT") : QStringLiteral("OPAQUE"));
        set("status", off ? QStringLiteral("CANCELLED")
                      : entry.state == CalendarEntry::State::Tentative
                          ? QStringLiteral("TENTATIVE")
                          : QStringLiteral("CONFIRMED"));
    }
    QJsonArray parts;
    if (entry.remind && !off)
        parts << QJsonObject{
            {QStringLiteral("name"), QStringLiteral("VALARM")},
            {QStringLiteral("action"), QStringLiteral("DISPLAY")},
            {QStringLiteral("description"), entry.summary},
            {QStringLiteral("trigger"), -entry.remind->base()},
            {QStringLiteral("related"), toDo ? QStringLiteral("END") : QStringLiteral("START")},
            {QStringLiteral("parts"), QJsonArray()}};
    set("parts", parts);
    return found;
}

// Reads with libical into the form of read_calendar.py.
class IcalReader
{
public:
    explicit IcalReader(const QByteArray &bytes)
        : m_root(icalparser_parse_string(bytes.constData()))
    {
    }
    [[nodiscard]] icalcomponent *root() const { return m_root.get(); }
    [[nodiscard]] QJsonObject read(icalcomponent *component) const
    {
        QJsonObject found{{QStringLiteral("name"), QString::fromLatin1(icalcomponent_kind_to_string(
                                                       icalcomponent_isa(component)))}};
        for (icalproperty *p = icalcomponent_get_first_property(component, ICAL_ANY_PROPERTY); p;
             p = icalcomponent_get_next_property(component, ICAL_ANY_PROPERTY))
            addProperty(found, component, p);
        QJsonArray parts;
        for (icalcomponent *c = icalcomponent_get_first_component(component, ICAL_ANY_COMPONENT); c;
             c = icalcomponent_get_next_component(component, ICAL_ANY_COMPONENT))
            parts << read(c);
        found.insert(QStringLiteral("parts"), parts);
        return found;
    }

private:
    void addProperty(QJsonObject &found, icalcomponent *component, icalproperty *p) const
    {
        const QString key = QString::fromLatin1(icalproperty_get_property_name(p)).toLower();
        const icalvalue *value = icalproperty_get_value(p);
        const icalvalue_kind kind = icalvalue_isa(value);
        if (kind == ICAL_DATETIME_VALUE || kind == ICAL_DATE_VALUE) {
            found.insert(key, moment(icalproperty_get_datetime_with_component(p, component)));
        } else if (key == QLatin1String("trigger")) {
            const icaltriggertype trigger = icalproperty_get_trigger(p);
            found.insert(key, icaldurationtype_as_int(trigger.duration));
            const icalparameter *related =
                icalproperty_get_first_parameter(p, ICAL_RELATED_PARAMETER);
            found.insert(QStringLiteral("related"),
                         related && icalparameter_get_related(related) == ICAL_RELATED_END
                             ? QStringLiteral("END")
                             : QStringLiteral("START"));
        } else if (kind == ICAL_TEXT_VALUE && key == QLatin1String("categories")) {
            QJsonArray list = found.value(key).toArray();
            list << QString::fromUtf8(icalvalue_get_text(value));
            found.insert(key, list);
        } else if (kind == ICAL_TEXT_VALUE) {
            found.insert(key, QString::fromUtf8(icalvalue_get_text(value)));
        } else {
            found.insert(key, QString::fromUtf8(icalproperty_get_value_as_string(p)));
        }
    }
    static QString moment(const icaltimetype &time)
    {
        if (time.is_date)
            return timeOf(time).date().toString(Qt::ISODate);
        const auto *zone = static_cast<const icaltimezone *>(time.zone);
        if (zone == nullptr)
            return QStringLiteral("floating");
        return isoOf(Instant::ofSeconds(icaltime_as_timet_with_zone(time, zone)));
    }

    ComponentHandle m_root;
};

} // namespace

class TstCalendarWrite : public QObject
{
    Q_OBJECT

private slots:
    void goldenFile()
    {
        QFile golden(QStringLiteral(RICKYARD_TEST_DATA "/exchange/calendar.ics"));
        QVERIFY(golden.open(QIODevice::ReadOnly));
        QCOMPARE(QString::fromUtf8(written(invented())), QString::fromUtf8(golden.readAll()));
    }

    // RFC 5545 section 3.1: CRLF; lines of at most 75 octets without the break; a sequence of
    // UTF-8 is not to be split by folding, as a reader that decodes line by line would break on it.
    void linesAreFolded()
    {
        const QByteArray bytes = written(invented());
        QVERIFY(bytes.endsWith("END:VCALENDAR\r\n"));
        qsizetype folded = 0;
        const QList<QByteArray> lines = bytes.split('\n');
        for (const QByteArray &line : lines) {
            if (line.isEmpty())
                continue;
            QVERIFY(line.endsWith('\r'));
            const QByteArray octets = line.chopped(1);
            QVERIFY2(octets.size() <= 75, octets.constData());
            QVERIFY(!octets.contains('\r'));
            QCOMPARE(QString::fromUtf8(octets).toUtf8(), octets); // whole sequences only
            QVERIFY2(!QString::fromUtf8(octets).contains(QChar::ReplacementCharacter),
                     octets.constData());
            folded += octets.startsWith(' ') ? 1 : 0;
        }
        QVERIFY(folded >= 4);
    }

    void libicalReadsItAgain()
    {
        const Calendar calendar = invented();
        const IcalReader reader(written(calendar));
        QVERIFY(reader.root() != nullptr);
        QCOMPARE(icalcomponent_count_errors(reader.root()), 0);
        // What each component must and may hold.
        const bool allowed = icalrestriction_check(reader.root()) != 0;
        QVERIFY2(allowed, icalcomponent_as_ical_string(reader.root()));
        QCOMPARE(icalcomponent_count_components(reader.root(), ICAL_VTIMEZONE_COMPONENT), 1);
        QVector<QJsonObject> found;
        for (icalcomponent *c =
                 icalcomponent_get_first_component(reader.root(), ICAL_ANY_COMPONENT);
             c; c = icalcomponent_get_next_component(reader.root(), ICAL_ANY_COMPONENT))
            if (icalcomponent_isa(c) != ICAL_VTIMEZONE_COMPONENT)
                found << reader.read(c);
        QCOMPARE(found.size(), calendar.entries.size());
        for (qsizetype i = 0; i < found.size(); ++i)
            QCOMPARE(found.at(i), expectedOf(calendar, calendar.entries.at(i)));
    }

    void aSecondParserReadsItAgain()
    {
        const Calendar calendar = invented();
        const QJsonObject read = readByPython(written(calendar));
        QCOMPARE(read.value(QStringLiteral("version")).toString(), QStringLiteral("2.0"));
        QCOMPARE(read.value(QStringLiteral("prodid")).toString(),
                 QStringLiteral("-//Rickyard//Rickyard//EN"));
        QVERIFY(read.value(QStringLiteral("broken")).toArray().isEmpty());
        QCOMPARE(read.value(QStringLiteral("zones")).toArray(),
                 QJsonArray{QStringLiteral("America/Chicago")});
        const QJsonArray found = read.value(QStringLiteral("components")).toArray();
        QCOMPARE(found.size(), calendar.entries.size());
        for (qsizetype i = 0; i < found.size(); ++i)
            QCOMPARE(found.at(i).toObject(), expectedOf(calendar, calendar.entries.at(i)));
    }

    void uidsStayTheSame()
    {
        const Calendar calendar = invented();
        const CalendarEntry &market = calendar.entries.first();
        const QString uid = calendarUid(calendar.mark, market);
        QCOMPARE(uid, QStringLiteral("event-7@0b5e.rickyard"));
        CalendarEntry moved = market;
        moved.summary = QStringLiteral("Another name");
        moved.start = moved.start + Duration::ofBase(3600);
        QCOMPARE(calendarUid(calendar.mark, moved), uid);
        QVERIFY(calendarUid(calendar.mark, calendar.entries.at(1)) != uid); // its drive
        QVERIFY(calendarUid(QStringLiteral("0b5f"), market) != uid);
    }

    void zoneRules_data()
    {
        QTest::addColumn<int>("rules"); // RRULEs: none where clocks keep no plain rule
        QTest::newRow("America/Chicago") << 2;
        QTest::newRow("America/St_Johns") << 2;    // half an hour off
        QTest::newRow("Europe/London") << 2;       // last Sundays
        QTest::newRow("Europe/Dublin") << 2;       // winter is the exception there
        QTest::newRow("Australia/Lord_Howe") << 2; // by half an hour, south of the equator
        QTest::newRow("America/Phoenix") << 0;     // no changes
        QTest::newRow("Asia/Kathmandu") << 0;      // 5:45
        QTest::newRow("Africa/Casablanca") << 0;   // by the moon
        QTest::newRow("Pacific/Kiritimati") << 0;  // +14
    }
    // The offset at every sixth hour of two years, by libical and by python3-icalendar from the
    // component alone, against the tz database (through Qt).
    void zoneRules()
    {
        QFETCH(int, rules);
        const QTimeZone zone(QTest::currentDataTag());
        QVERIFY(zone.isValid());
        const QDate from(2026, 11, 1);
        const QDate to(2028, 11, 1);
        const ComponentHandle component = zoneComponent(zone, from, to);
        const TextHandle text(icalcomponent_as_ical_string_r(component.get()));
        QCOMPARE(QByteArray(text.get()).count("RRULE"), rules);
        const ZoneHandle byIcal(icaltimezone_new());
        QVERIFY(icaltimezone_set_component(byIcal.get(),
                                           icalcomponent_new_clone(component.get())) != 0);
        QStringList seconds;
        QVector<int> expected;
        for (QDateTime at = from.startOfDay(Qt::UTC); at.date() < to; at = at.addSecs(6 * 3600)) {
            icaltimetype time = digitsOf(at);
            time.zone = icaltimezone_get_utc_timezone();
            int isDaylight = 0;
            const int offset =
                icaltimezone_get_utc_offset_of_utc_time(byIcal.get(), &time, &isDaylight);
            QVERIFY2(offset == zone.offsetFromUtc(at), qPrintable(at.toString(Qt::ISODate)));
            seconds << QString::number(at.toSecsSinceEpoch());
            expected << zone.offsetFromUtc(at);
        }
        const QJsonObject read =
            readByPython("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Rickyard//Test//EN\r\n" +
                             QByteArray(text.get()) + "END:VCALENDAR\r\n",
                         seconds);
        const QJsonArray offsets = read.value(QStringLiteral("offsets")).toArray();
        QCOMPARE(offsets.size(), expected.size());
        for (qsizetype i = 0; i < offsets.size(); ++i)
            QVERIFY2(offsets.at(i).toArray().first().toInt() == expected.at(i),
                     qPrintable(seconds.at(i)));
    }

    void utcNeedsNoZone()
    {
        Calendar calendar = invented();
        calendar.timeZone = QStringLiteral("UTC");
        const QByteArray bytes = written(calendar);
        QVERIFY(!bytes.contains("VTIMEZONE"));
        QVERIFY(bytes.contains("DTSTART:20270313T170000Z\r\n"));
    }

    void refusals()
    {
        Calendar calendar = invented();
        calendar.timeZone = QStringLiteral("America/Nowhere");
        QVERIFY(writeCalendar(calendar).message().contains(QStringLiteral("America/Nowhere")));
        calendar = invented();
        calendar.entries << calendar.entries.first();
        QVERIFY(writeCalendar(calendar).message().contains(QStringLiteral("event-7@")));
        calendar = invented();
        calendar.entries.first().summary = QStringLiteral(" \u0007");
        QVERIFY(writeCalendar(calendar).message().contains(QStringLiteral("no words")));
        calendar = invented();
        calendar.entries.last().due = QDate();
        QVERIFY(writeCalendar(calendar).message().contains(QStringLiteral("no day")));
    }
};

RICKYARD_TEST(TstCalendarWrite)
#include "tst_calendar_write.moc"
