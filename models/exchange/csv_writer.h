// Writes comma-separated text by RFC 4180: UTF-8, CRLF, quotes only where they are needed.
// Spreadsheets take a cell that starts with = + - @ for a formula; text cells are therefore made
// safe with a leading apostrophe, which restored() takes away again. Numbers are never touched.
#pragma once

#include <QByteArray>
#include <QChar>
#include <QString>
#include <QStringList>

namespace rickyard::exchange
{

// Reversible for every text: restored(madeSafe(t)) == t. A text of a foreign file that starts with
// an apostrophe and an ordinary letter stays as it is.
QString madeSafe(const QString &text);
QString restored(const QString &cell);

class CsvWriter
{
public:
    explicit CsvWriter(QChar separator = QLatin1Char(',')) : m_separator(separator) {}

    void row(const QStringList &cells);
    [[nodiscard]] QByteArray bytes() const { return m_bytes; }

private:
    QChar m_separator;
    QByteArray m_bytes;
};

} // namespace rickyard::exchange
