#include "app/cli/text_table.h"

#include <algorithm>

namespace rickyard::app {

namespace {

constexpr qsizetype kWidth = 80;

QString spaces(qsizetype count)
{
    return QString(count, QLatin1Char(' '));
}

// Line breaks in a record's text would break the table.
QString oneLine(const QString &cell)
{
    QString line = cell;
    line.replace(QLatin1Char('\n'), QLatin1Char(' ')).replace(QLatin1Char('\r'), QLatin1Char(' '));
    return line;
}

} // namespace

void TextTable::heading(const QStringList &cells)
{
    m_rows.prepend(cells);
    m_heading = true;
}

QString TextTable::text(int indent) const
{
    QVector<qsizetype> widths;
    for (const QStringList &row : m_rows)
        for (qsizetype i = 0; i < row.size(); ++i) {
            if (i >= widths.size())
                widths << 0;
            widths[i] = std::max(widths.at(i), row.at(i).size());
        }
    QString text;
    for (qsizetype r = 0; r < m_rows.size(); ++r) {
        QString line = spaces(indent);
        for (qsizetype i = 0; i < m_rows.at(r).size(); ++i) {
            const QString cell = oneLine(m_rows.at(r).at(i));
            const QString pad = spaces(widths.at(i) - cell.size());
            const bool right = i < m_aligns.size() && m_aligns.at(i) == Align::Right;
            line += (i > 0 ? QStringLiteral("  ") : QString()) + (right ? pad + cell : cell + pad);
        }
        while (line.endsWith(QLatin1Char(' ')))
            line.chop(1);
        text += line + QLatin1Char('\n');
        if (r == 0 && m_heading) {
            qsizetype width = 2 * (widths.size() - 1);
            for (const qsizetype w : widths)
                width += w;
            text += spaces(indent) + QString(width, QChar(0x2500)) + QLatin1Char('\n');
        }
    }
    return text;
}

QString wrapped(const QString &text, int indent)
{
    QString result;
    QString line = spaces(indent);
    bool empty = true;
    const QStringList words = text.simplified().split(QLatin1Char(' '));
    for (const QString &word : words) {
        if (!empty && line.size() + 1 + word.size() > kWidth) {
            result += line + QLatin1Char('\n');
            line = spaces(indent);
            empty = true;
        }
        if (!empty)
            line += QLatin1Char(' ');
        line += word;
        empty = false;
    }
    return QString(result + line + QLatin1Char('\n'));
}

} // namespace rickyard::app
