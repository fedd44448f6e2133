#include "models/exchange/csv_reader.h"

#include <QIODevice>
#include <QStringDecoder>

namespace rickyard::exchange
{

namespace
{

constexpr QChar kQuote = QLatin1Char('"');
constexpr QChar kLf = QLatin1Char('\n');
constexpr QChar kCr = QLatin1Char('\r');

// Cells a line would have with this separator, quotes respected; at most the first `lines` lines.
QVector<int> cellCounts(const QString &text, QChar separator, int lines)
{
    QVector<int> counts;
    int cells = 1;
    bool quoted = false;
    bool blank = true;
    for (const QChar c : text) {
        if (c == kQuote) {
            quoted = !quoted;
            blank = false;
        } else if (quoted) {
            continue;
        } else if (c == kLf || c == kCr) {
            if (!blank)
                counts << cells;
            cells = 1;
            blank = true;
            if (counts.size() >= lines)
                return counts;
        } else {
            blank = false;
            cells += c == separator ? 1 : 0;
        }
    }
    if (!blank)
        counts << cells;
    return counts;
}

} // namespace

QString CsvError::sentence() const
{
    if (line <= 0)
        return message;
    return QString(QStringLiteral("line %1, character %2: ").arg(line).arg(column) + message);
}

QChar detectSeparator(const QString &text)
{
    constexpr int looked = 20;
    const QString head = text.left(65536);
    QChar best = QLatin1Char(',');
    int bestScore = 0;
    for (const QChar candidate :
         {QLatin1Char(','), QLatin1Char(';'), QLatin1Char('\t'), QLatin1Char('|')}) {
        const QVector<int> counts = cellCounts(head, candidate, looked);
        if (counts.isEmpty() || counts.first() < 2)
            continue;
        int agreeing = 0;
        for (int count : counts)
            agreeing += count == counts.first() ? 1 : 0;
        // Lines that agree weigh more than many cells: decimal commas split lines unevenly.
        const int score = agreeing * 1000 / static_cast<int>(counts.size()) + counts.first();
        if (score > bestScore) {
            bestScore = score;
            best = candidate;
        }
    }
    return best;
}

CsvReader::CsvReader(const QByteArray &bytes, const CsvOptions &options) : m_options(options)
{
    open(bytes);
}

CsvReader::CsvReader(QIODevice &device, const CsvOptions &options) : m_options(options)
{
    open(device.read(options.mostBytes + 1));
}

void CsvReader::open(const QByteArray &bytes)
{
    if (bytes.size() > m_options.mostBytes) {
        m_error = CsvError{0, 0,
                           QStringLiteral("the file is larger than %1 MB; split it first")
                               .arg(m_options.mostBytes >> 20U)};
        return;
    }
    const bool utf16 = bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF");
    if (utf16) {
        QStringDecoder decoder(QStringDecoder::Utf16);
        m_text = decoder.decode(bytes);
        m_encodingNote = QStringLiteral("The file is in UTF-16.");
    } else {
        QStringDecoder decoder(QStringDecoder::Utf8);
        m_text = decoder.decode(bytes);
        if (decoder.hasError()) {
            m_text = QString::fromLatin1(bytes);
            m_encodingNote = QStringLiteral("The file is not in UTF-8; it was read as Latin-1. "
                                            "Look at accents and degree signs.");
        }
    }
    if (m_text.startsWith(QChar(0xFEFF)))
        m_text.remove(0, 1);
    const qsizetype nul = m_text.indexOf(QChar(0));
    if (nul >= 0) {
        m_error = CsvError{m_text.left(nul).count(kLf) + 1, 0,
                           QStringLiteral("a zero byte; this is not a text file")};
        m_text.clear();
    }
    m_separator = m_options.separator.isNull() ? detectSeparator(m_text) : m_options.separator;
}

bool CsvReader::atLineEnd() const
{
    return m_text.at(m_at) == kLf || m_text.at(m_at) == kCr;
}

// CRLF, LF and a lone CR each end one line.
void CsvReader::passLineEnd()
{
    if (m_text.at(m_at) == kCr && m_at + 1 < m_text.size() && m_text.at(m_at + 1) == kLf)
        ++m_at;
    ++m_at;
    ++m_line;
    m_lineStart = m_at;
}

CsvReader::CellEnd CsvReader::fail(const QString &message)
{
    m_error = CsvError{m_line, m_at - m_lineStart + 1, message};
    return CellEnd::Error;
}

// Stands behind a cell: at a separator, a line end or the end of the file.
CsvReader::CellEnd CsvReader::endOfCell()
{
    if (m_at >= m_text.size())
        return CellEnd::File;
    if (atLineEnd()) {
        passLineEnd();
        return CellEnd::Line;
    }
    ++m_at;
    return CellEnd::Separator;
}

CsvReader::CellEnd CsvReader::readQuoted(QString &cell)
{
    const qint64 openedLine = m_line;
    const qint64 openedColumn = m_at - m_lineStart + 1;
    ++m_at;
    while (m_at < m_text.size()) {
        if (cell.size() > m_options.longestCell)
            return fail(QStringLiteral("a cell longer than %1 characters; is a closing quote "
                                       "missing?")
                            .arg(m_options.longestCell));
        const QChar c = m_text.at(m_at);
        if (c == kQuote && m_at + 1 < m_text.size() && m_text.at(m_at + 1) == kQuote) {
            cell += kQuote;
            m_at += 2;
        } else if (c == kQuote) {
            ++m_at;
            if (m_at < m_text.size() && !atLineEnd() && m_text.at(m_at) != m_separator)
                return fail(QStringLiteral("text after a closing quote; expected a separator "
                                           "(quotes inside a cell are written twice)"));
            return endOfCell();
        } else if (atLineEnd()) {
            const qsizetype from = m_at;
            passLineEnd();
            cell += QStringView(m_text).mid(from, m_at - from);
        } else {
            cell += c;
            ++m_at;
        }
    }
    m_error = CsvError{openedLine, openedColumn,
                       QStringLiteral("a quote that is never closed; expected a closing quote")};
    return CellEnd::Error;
}

CsvReader::CellEnd CsvReader::readPlain(QString &cell)
{
    const qsizetype from = m_at;
    while (m_at < m_text.size() && !atLineEnd() && m_text.at(m_at) != m_separator) {
        if (m_text.at(m_at) == kQuote)
            return fail(QStringLiteral("a quote inside a cell that does not start with one; "
                                       "expected the whole cell in quotes"));
        ++m_at;
    }
    if (m_at - from > m_options.longestCell)
        return fail(QStringLiteral("a cell longer than %1 characters").arg(m_options.longestCell));
    cell = m_text.mid(from, m_at - from);
    return endOfCell();
}

CsvReader::CellEnd CsvReader::readCell(QString &cell, bool &quoted)
{
    cell.clear();
    quoted = m_at < m_text.size() && m_text.at(m_at) == kQuote;
    return quoted ? readQuoted(cell) : readPlain(cell);
}

bool CsvReader::next(CsvRow &row)
{
    while (!m_error && m_at < m_text.size()) {
        row.line = m_line;
        row.cells.clear();
        bool anyQuoted = false;
        CellEnd end = CellEnd::Separator;
        while (end == CellEnd::Separator) {
            QString cell;
            bool quoted = false;
            end = readCell(cell, quoted);
            if (end == CellEnd::Error)
                return false;
            anyQuoted = anyQuoted || quoted;
            row.cells.append(cell);
            if (row.cells.size() > m_options.mostCells) {
                fail(QStringLiteral("more than %1 cells in one row").arg(m_options.mostCells));
                return false;
            }
        }
        if (row.cells.size() == 1 && row.cells.first().isEmpty() && !anyQuoted)
            continue; // a blank line
        if (m_width == 0)
            m_width = row.cells.size();
        row.expectedCells = m_width;
        return true;
    }
    return false;
}

} // namespace rickyard::exchange
