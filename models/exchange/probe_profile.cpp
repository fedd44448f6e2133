#include "models/exchange/probe_profile.h"

#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_text.h"
#include "models/exchange/probe_rows.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <array>

namespace rickyard::exchange {

namespace {

constexpr int kProbeProfileVersion = 1;
constexpr char kProbeProfileFormat[] = "rickyard-probe-mapping";
constexpr std::array<const char *, 3> kTimeKeys{"clock", "day", "elapsed"};
constexpr std::array<const char *, 3> kZoneKeys{"utc", "zone", "offset"};

template <std::size_t N>
int keyIndex(const std::array<const char *, N> &keys, const QJsonValue &value)
{
    for (std::size_t i = 0; i < N; ++i)
        if (value.toString() == QLatin1String(keys.at(i)))
            return static_cast<int>(i);
    return -1;
}

QChar charOf(const QJsonValue &value)
{
    const QString text = value.toString();
    return text.isEmpty() ? QChar() : text.at(0);
}

QStringList textsOf(const QJsonValue &value)
{
    QStringList texts;
    for (const QJsonValue &one : value.toArray())
        texts << one.toString();
    return texts;
}

QStringList cellsOf(const QString &line, QChar separator)
{
    const std::string bytes = line.toStdString();
    std::vector<std::string_view> cells;
    splitCells(bytes, separator.toLatin1(), cells);
    QStringList texts;
    for (const std::string_view cell : cells)
        texts << QString::fromUtf8(cell.data(), static_cast<qsizetype>(cell.size())).trimmed();
    return texts;
}

QString probeKey(const char *text)
{
    return QString::fromLatin1(text);
}

} // namespace

QString toText(const ProbeProfile &profile)
{
    const ProbeLogMapping &m = profile.mapping;
    QJsonArray probes;
    for (const ProbeColumn &probe : m.probes)
        probes.append(
            QJsonObject{{probeKey("probe"), probe.probe}, {probeKey("column"), probe.column}});
    const QJsonObject json{
        {probeKey("format"), probeKey(kProbeProfileFormat)},
        {probeKey("version"), kProbeProfileVersion},
        {probeKey("header"), QJsonArray::fromStringList(profile.header)},
        {probeKey("separator"), m.separator.isNull() ? QString() : QString(m.separator)},
        {probeKey("decimal"), QString(m.decimal)},
        {probeKey("headerLine"), m.headerLine},
        {probeKey("missing"), QJsonArray::fromStringList(m.missing)},
        {probeKey("time"), probeKey(kTimeKeys.at(static_cast<std::size_t>(m.time)))},
        {probeKey("timeColumn"), m.timeColumn},
        {probeKey("dateColumn"), m.dateColumn},
        {probeKey("timeFormat"), m.timeFormat},
        {probeKey("elapsedScale"), m.elapsedScale},
        {probeKey("zoneKind"), probeKey(kZoneKeys.at(static_cast<std::size_t>(m.zoneKind)))},
        {probeKey("zone"), m.zone},
        {probeKey("offsetSeconds"), m.offsetSeconds},
        {probeKey("unit"), m.fahrenheit ? probeKey("degF") : probeKey("degC")},
        {probeKey("probes"), probes},
        {probeKey("strict"), m.strict}};
    return QString::fromUtf8(QJsonDocument(json).toJson(QJsonDocument::Compact));
}

domain::Outcome<ProbeProfile> probeProfileFromText(const QString &text)
{
    using Result = domain::Outcome<ProbeProfile>;
    const QJsonObject json = QJsonDocument::fromJson(text.toUtf8()).object();
    if (json.value(probeKey("format")).toString() != probeKey(kProbeProfileFormat))
        return Result::failed(probeKey("This is not a mapping of probe logs."),
                              probeKey("mapping"));
    if (json.value(probeKey("version")).toInt() > kProbeProfileVersion)
        return Result::failed(probeKey("This mapping was saved by a newer Rickyard."),
                              probeKey("mapping"));
    const int time = keyIndex(kTimeKeys, json.value(probeKey("time")));
    const int zone = keyIndex(kZoneKeys, json.value(probeKey("zoneKind")));
    if (time < 0 || zone < 0)
        return Result::failed(
            probeKey("This mapping does not say how times are written; save it anew."),
            probeKey("mapping"));
    ProbeProfile profile;
    profile.header = textsOf(json.value(probeKey("header")));
    ProbeLogMapping &m = profile.mapping;
    m.separator = charOf(json.value(probeKey("separator")));
    m.decimal =
        json.contains(probeKey("decimal")) ? charOf(json.value(probeKey("decimal"))) : m.decimal;
    m.headerLine = json.value(probeKey("headerLine")).toInt(m.headerLine);
    if (json.contains(probeKey("missing")))
        m.missing = textsOf(json.value(probeKey("missing")));
    m.time = static_cast<ProbeTime>(time);
    m.timeColumn = json.value(probeKey("timeColumn")).toString();
    m.dateColumn = json.value(probeKey("dateColumn")).toString();
    m.timeFormat = json.value(probeKey("timeFormat")).toString();
    m.elapsedScale = json.value(probeKey("elapsedScale")).toDouble(1);
    m.zoneKind = static_cast<TimeZoneKind>(zone);
    m.zone = json.value(probeKey("zone")).toString();
    m.offsetSeconds = json.value(probeKey("offsetSeconds")).toInt();
    m.fahrenheit = json.value(probeKey("unit")).toString() != probeKey("degC");
    m.strict = json.value(probeKey("strict")).toBool(true);
    for (const QJsonValue &value : json.value(probeKey("probes")).toArray())
        m.probes.append({value.toObject().value(probeKey("probe")).toString(),
                         value.toObject().value(probeKey("column")).toString()});
    return profile;
}

QStringList probeHeader(const QByteArray &head, QChar separator, int headerLine)
{
    QStringList header;
    for (const TextLine &line : linesOf(decodeForeignText(head).text)) {
        if (line.number < headerLine || (headerLine == 0 && line.text.trimmed().isEmpty()))
            continue;
        header = cellsOf(line.text, separator.isNull() ? detectSeparator(line.text) : separator);
        break;
    }
    if (headerLine == 0)
        for (qsizetype i = 0; i < header.size(); ++i)
            header[i] = QString::number(i + 1);
    return header;
}

domain::RecordId profileFor(const domain::Books &books, const QByteArray &head)
{
    domain::RecordId newest = 0;
    for (const domain::ImportProfile &saved : books.importProfiles) {
        if (saved.kind != QLatin1String(kTraceProfileKind) || saved.id < newest)
            continue;
        const auto profile = probeProfileFromText(saved.mapping);
        if (!profile || profile->header.isEmpty())
            continue;
        if (profile->header ==
            probeHeader(head, profile->mapping.separator, profile->mapping.headerLine))
            newest = saved.id;
    }
    return newest;
}

QVector<ProbePreviewRow> previewProbeLog(const QByteArray &head, const ProbeLogMapping &mapping,
                                         int rows)
{
    QVector<ProbePreviewRow> preview;
    QVector<TextLine> lines = linesOf(decodeForeignText(head).text);
    ProbeRowReader reader(mapping, {});
    Refusals refused;
    ProbeLogReport report;
    bool bound = mapping.headerLine == 0 && reader.bind({}, 0, refused);
    for (const TextLine &line : std::as_const(lines)) {
        if (preview.size() >= rows || !refused.isEmpty())
            break;
        const std::string bytes = line.text.toStdString();
        if (line.number == mapping.headerLine)
            bound = reader.bind(bytes, line.number, refused);
        if (!bound || line.number <= mapping.headerLine || line.text.trimmed().isEmpty())
            continue;
        ProbePreviewRow shown;
        shown.line = line.number;
        shown.cells =
            cellsOf(line.text, mapping.separator.isNull() ? QLatin1Char(',') : mapping.separator);
        ProbeRow row;
        Refusals ofRow;
        const bool good = reader.read(bytes, line.number, row, ofRow, report);
        if (good)
            shown.time = domain::Instant::ofSeconds(row.second);
        for (const std::optional<qint64> &milli : row.milli)
            shown.readings << (milli ? std::optional(domain::Temperature::ofBase(*milli))
                                     : std::nullopt);
        QStringList why;
        for (const Refusal &one : std::as_const(ofRow.list))
            why << one.sentence();
        shown.refused = why.join(QLatin1Char('\n'));
        preview << shown;
    }
    return preview;
}

} // namespace rickyard::exchange
