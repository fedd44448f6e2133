#include "models/exchange/ics/calendar_lines.h"

#include <QSet>
#include <QStringDecoder>

#include <optional>

namespace rickyard::exchange {

namespace {

bool isKept(const QByteArray &name)
{
    static const QSet<QByteArray> kept = {"UID",    "SUMMARY", "DTSTART", "DTEND",  "DURATION",
                                          "RRULE",  "RDATE",   "EXDATE",  "EXRULE", "RECURRENCE-ID",
                                          "TRANSP", "STATUS",  "SEQUENCE"};
    return kept.contains(name);
}

QByteArray nameOf(const QByteArray &line)
{
    for (qsizetype i = 0; i < line.size(); ++i)
        if (line.at(i) == ':' || line.at(i) == ';')
            return line.left(i).trimmed().toUpper();
    return {};
}

// What stands behind the colon of BEGIN and END.
QByteArray partOf(const QByteArray &line)
{
    return line.mid(line.indexOf(':') + 1).trimmed().toUpper();
}

// Octets are unfolded before they are decoded: a fold may stand inside a letter.
class Unfolder
{
public:
    explicit Unfolder(const QByteArray &bytes) : m_bytes(bytes)
    {
        if (bytes.startsWith("\xEF\xBB\xBF"))
            m_at = 3;
    }
    bool next(CalendarLine &line)
    {
        if (m_at >= m_bytes.size())
            return false;
        line.number = ++m_number;
        line.text = physical();
        while (m_at < m_bytes.size() && (m_bytes.at(m_at) == ' ' || m_bytes.at(m_at) == '\t')) {
            ++m_number;
            line.text += physical().mid(1);
        }
        return true;
    }
    [[nodiscard]] qsizetype at() const { return m_at; }

private:
    // CRLF, LF and a lone CR each end a line.
    QByteArray physical()
    {
        qsizetype end = m_at;
        while (end < m_bytes.size() && m_bytes.at(end) != '\n' && m_bytes.at(end) != '\r')
            ++end;
        const QByteArray text = m_bytes.mid(m_at, end - m_at);
        m_at = end + 1;
        if (end < m_bytes.size() && m_bytes.at(end) == '\r' && m_at < m_bytes.size() &&
            m_bytes.at(m_at) == '\n')
            ++m_at;
        return text;
    }

    const QByteArray &m_bytes;
    qsizetype m_at = 0;
    qint64 m_number = 0;
};

class FrameReader
{
public:
    FrameReader(const QByteArray &bytes, QString fileName)
        : m_bytes(bytes), m_file(std::move(fileName))
    {
    }

    CalendarFrame read(const std::atomic_bool *cancel)
    {
        if (m_bytes.size() > kLargestCalendar) {
            refuse(0, QStringLiteral("%1 MB").arg(m_bytes.size() / 1024 / 1024),
                   QStringLiteral("a file of at most %1 MB").arg(kLargestCalendar / 1024 / 1024));
            return std::move(m_frame);
        }
        Unfolder lines(m_bytes);
        CalendarLine line;
        qint64 count = 0;
        while (!m_stopped && lines.next(line)) {
            if (++count % 1000 == 0 && cancel != nullptr && cancel->load())
                return std::move(m_frame);
            take(line);
        }
        if (m_stopped)
            return std::move(m_frame);
        if (!m_open.isEmpty())
            refuse(m_open.last().number, QString::fromLatin1("BEGIN:" + m_open.last().name),
                   QString::fromLatin1("an END:" + m_open.last().name +
                                       " before the file ends: it may be cut off"));
        else if (!m_seenCalendar)
            refuse(0, {}, QStringLiteral("a calendar file, which starts with BEGIN:VCALENDAR"));
        else
            m_frame.whole = true;
        return std::move(m_frame);
    }

private:
    struct Open {
        QByteArray name;
        qint64 number = 0;
    };

    void refuse(qint64 line, const QString &value, const QString &expected)
    {
        Refusal refusal;
        refusal.file = m_file;
        refusal.line = line;
        refusal.value = value;
        refusal.expected = expected;
        m_frame.refused.add(refusal);
    }
    void stop(const CalendarLine &line, const QString &expected)
    {
        refuse(line.number, QString::fromUtf8(line.text.left(200)), expected);
        m_stopped = true;
    }

    void take(CalendarLine &line)
    {
        if (line.text.trimmed().isEmpty())
            return;
        if (line.text.contains('\0')) {
            refuse(line.number, {}, QStringLiteral("text: it holds a zero byte"));
            m_stopped = true;
            return;
        }
        line.name = nameOf(line.text);
        if (m_open.isEmpty() && (line.name != "BEGIN" || partOf(line.text) != "VCALENDAR"))
            stop(line, QStringLiteral("BEGIN:VCALENDAR"));
        else if (line.name == "BEGIN")
            begin(line);
        else if (line.name == "END")
            end(line);
        else if (!line.name.isEmpty())
            keep(line);
        else if (inside("VEVENT") || inside("VTIMEZONE"))
            refuse(line.number, QString::fromUtf8(line.text.left(200)),
                   QStringLiteral("a line such as NAME:VALUE"));
    }

    [[nodiscard]] bool inside(const char *name) const
    {
        return m_open.size() >= 2 && m_open.at(1).name == name;
    }

    void begin(const CalendarLine &line)
    {
        const QByteArray name = partOf(line.text);
        const bool nested = m_open.size() == 1
                                ? name == "VCALENDAR"
                                : m_open.size() > 1 && (name == "VEVENT" || name == "VCALENDAR");
        if (nested || m_open.size() >= kDeepestNesting) {
            stop(line,
                 nested
                     ? QString::fromLatin1("an END:" + m_open.last().name + " before it")
                     : QStringLiteral("at most %1 parts inside each other").arg(kDeepestNesting));
            return;
        }
        m_open << Open{name, line.number};
        m_seenCalendar = true;
        if (m_open.size() == 2 && name == "VEVENT") {
            if (m_frame.events.size() == kMostAppointments) {
                stop(line,
                     QStringLiteral("at most %1 appointments in one file").arg(kMostAppointments));
                return;
            }
            m_frame.events << CalendarBlock{line.number, {}};
        } else if (m_open.size() == 2 && name == "VTIMEZONE") {
            m_frame.zones << CalendarBlock{line.number, {}};
        } else if (m_open.size() == 2) {
            ++m_frame.others;
        }
        if (inside("VTIMEZONE"))
            append(m_frame.zones.last(), line);
    }

    void end(const CalendarLine &line)
    {
        if (partOf(line.text) != m_open.last().name) {
            stop(line, QString::fromLatin1("END:" + m_open.last().name + " for the BEGIN of line " +
                                           QByteArray::number(m_open.last().number)));
            return;
        }
        if (inside("VTIMEZONE"))
            append(m_frame.zones.last(), line);
        m_open.removeLast();
    }

    void keep(const CalendarLine &line)
    {
        if (inside("VTIMEZONE"))
            append(m_frame.zones.last(), line);
        else if (inside("VEVENT") && m_open.size() == 2 && isKept(line.name))
            append(m_frame.events.last(), line);
    }

    void append(CalendarBlock &block, const CalendarLine &line)
    {
        if (line.text.size() > kLongestCalendarLine) {
            refuse(line.number, QString::fromLatin1(line.name),
                   QStringLiteral("a line of at most %1 bytes").arg(kLongestCalendarLine));
            return;
        }
        if (block.lines.size() == kMostLinesOfOne) {
            stop(line, QStringLiteral("at most %1 lines in the part that starts in line %2")
                           .arg(kMostLinesOfOne)
                           .arg(block.number));
            return;
        }
        QStringDecoder utf8(QStringDecoder::Utf8, QStringConverter::Flag::Stateless);
        const QString decoded = utf8(line.text); // decoding is lazy
        if (utf8.hasError()) {
            refuse(line.number, QString::fromLatin1(line.name),
                   QStringLiteral("text in UTF-8, as calendar files are"));
            return;
        }
        block.lines << line;
    }

    const QByteArray &m_bytes;
    QString m_file;
    CalendarFrame m_frame;
    QVector<Open> m_open;
    bool m_seenCalendar = false;
    bool m_stopped = false;
};

} // namespace

CalendarFrame frameOf(const QByteArray &bytes, const QString &fileName,
                      const std::atomic_bool *cancel)
{
    return FrameReader(bytes, fileName).read(cancel);
}

} // namespace rickyard::exchange
