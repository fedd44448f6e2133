#include "models/exchange/csv_writer.h"

namespace rickyard::exchange
{

namespace
{

// The first characters that make a spreadsheet compute, in ASCII and full width, and the white
// space that some of them pass over to look for one.
bool opensFormula(QChar c)
{
    static const QString openers = QStringLiteral("=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20");
    return openers.contains(c);
}

} // namespace

QString madeSafe(const QString &text)
{
    if (text.isEmpty() || (!opensFormula(text.front()) && text.front() != QLatin1Char('\'')))
        return text;
    return QString(QLatin1Char('\'') + text);
}

QString restored(const QString &cell)
{
    const bool safe = cell.size() > 1 && cell.front() == QLatin1Char('\'') &&
                      (opensFormula(cell.at(1)) || cell.at(1) == QLatin1Char('\''));
    // A lone apostrophe is written doubled, so the doubled one is covered above.
    return safe ? cell.mid(1) : cell;
}

void CsvWriter::row(const QStringList &cells)
{
    QString line;
    for (qsizetype i = 0; i < cells.size(); ++i) {
        const QString &cell = cells.at(i);
        if (i > 0)
            line += m_separator;
        const bool edgeSpace = !cell.isEmpty() && (cell.front().isSpace() || cell.back().isSpace());
        const bool quote = edgeSpace || cell.contains(m_separator) ||
                           cell.contains(QLatin1Char('"')) || cell.contains(QLatin1Char('\n')) ||
                           cell.contains(QLatin1Char('\r')) ||
                           (cells.size() == 1 && cell.isEmpty()); // else a blank line
        if (!quote) {
            line += cell;
            continue;
        }
        QString inner = cell;
        inner.replace(QLatin1Char('"'), QStringLiteral("\"\""));
        line += QString(QLatin1Char('"') + inner + QLatin1Char('"'));
    }
    m_bytes += line.toUtf8();
    m_bytes += "\r\n";
}

} // namespace rickyard::exchange
