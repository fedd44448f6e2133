#include "models/exchange/isd_lite.h"

#include "models/exchange/foreign_text.h"

#include <QDateTime>
#include <QFileInfo>

#include <array>

namespace rickyard::exchange {

using domain::Weather;

namespace {

constexpr int kIsdFields = 12;
constexpr int kIsdMissing = -9999;
constexpr int kIsdTrace = -1;

const std::array<const char *, kIsdFields> kIsdNames = {"year",
                                                        "month",
                                                        "day",
                                                        "hour",
                                                        "air temperature",
                                                        "dew point",
                                                        "sea-level pressure",
                                                        "wind direction",
                                                        "wind speed",
                                                        "sky code",
                                                        "rain of 1 h",
                                                        "rain of 6 h"};

using IsdRow = std::array<int, kIsdFields>;

// Nothing and the cell at fault when the line is not of the form.
std::optional<IsdRow> isdRow(const TextLine &line, ForeignCell &fault, QString &expected)
{
    const QStringList cells = line.text.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    fault = {line.number, 0, {}, line.text.simplified().left(60)};
    expected = QStringLiteral("twelve whole numbers with blanks between them");
    if (cells.size() != kIsdFields)
        return std::nullopt;
    IsdRow row{};
    for (int i = 0; i < kIsdFields; ++i) {
        bool ok = false;
        row[static_cast<std::size_t>(i)] = cells.at(i).toInt(&ok);
        if (ok)
            continue;
        fault = {line.number, i + 1, QLatin1String(kIsdNames[static_cast<std::size_t>(i)]),
                 cells.at(i)};
        expected = QStringLiteral("a whole number");
        return std::nullopt;
    }
    if (!QDate(row[0], row[1], row[2]).isValid() || row[0] < 1800 || row[0] > 2200 || row[3] < 0 ||
        row[3] > 23) {
        expected = QStringLiteral("a day of the calendar and an hour from 0 to 23");
        return std::nullopt;
    }
    return row;
}

class IsdLine
{
public:
    IsdLine(WeatherGather &gather, const IsdRow &row, qint64 line)
        : m_gather(gather), m_row(row), m_line(line)
    {
    }
    bool read(Weather &w)
    {
        set(w, "temperature", 4, 0.1, "degC");
        set(w, "dew_point", 5, 0.1, "degC");
        set(w, "pressure", 6, 0.1, "hPa");
        set(w, "wind", 8, 0.1, "m/s");
        if (w.wind && w.wind->base() > 0) // calm has no direction
            set(w, "wind_from", 7, 1, "deg");
        if (m_row[10] == kIsdTrace)
            w.rain = domain::Length::ofBase(0);
        else
            set(w, "rain", 10, 0.1, "mm");
        return m_good;
    }

private:
    void set(Weather &w, const char *quantity, std::size_t at, double scale, const char *unit)
    {
        const int value = m_row[at];
        if (value == kIsdMissing) {
            m_gather.missing(quantity);
            return;
        }
        const ForeignCell cell{m_line, static_cast<int>(at) + 1, QLatin1String(kIsdNames[at]),
                               QString::number(value)};
        m_good = m_gather.set(w, quantity, value * scale, unit, cell) && m_good;
    }

    WeatherGather &m_gather;
    const IsdRow &m_row;
    qint64 m_line;
    bool m_good = true;
};

} // namespace

WeatherImport readIsdLite(const QByteArray &bytes, const WeatherReadOptions &options,
                          const QString &fileName, const Progress &progress,
                          const std::atomic_bool *cancel)
{
    WeatherGather gather(options, fileName);
    const std::optional<QString> text = gather.text(bytes);
    if (!text)
        return gather.finish();
    const QString place = !options.place.isEmpty() ? options.place
                          : fileName.isEmpty()     ? QStringLiteral("station")
                                                   : QFileInfo(fileName).completeBaseName();
    const QVector<TextLine> lines = linesOf(*text);
    for (const TextLine &line : lines) {
        if (gather.tick(line.number, lines.size(), progress, cancel))
            return gather.finish();
        if (line.text.trimmed().isEmpty())
            continue;
        gather.rowRead();
        ForeignCell fault;
        QString expected;
        const auto row = isdRow(line, fault, expected);
        if (!row) {
            gather.refuse(fault, expected);
            continue;
        }
        Weather w;
        w.place = place;
        w.time = domain::Instant::ofSeconds(
            QDateTime(QDate((*row)[0], (*row)[1], (*row)[2]), QTime((*row)[3], 0), Qt::UTC)
                .toSecsSinceEpoch());
        if (IsdLine(gather, *row, line.number).read(w))
            gather.take(w, {line.number, 0, {}, line.text.simplified().left(60)});
    }
    return gather.finish();
}

bool looksLikeIsdLite(const QByteArray &head)
{
    int good = 0;
    for (const TextLine &line : linesOf(decodeForeignText(head).text)) {
        if (line.text.trimmed().isEmpty())
            continue;
        ForeignCell fault;
        QString expected;
        if (good == 3 || !isdRow(line, fault, expected))
            break;
        ++good;
    }
    return good > 0;
}

} // namespace rickyard::exchange
