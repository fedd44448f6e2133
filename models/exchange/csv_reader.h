// Reads comma-separated text by RFC 4180 (quotes, doubled quotes, line breaks inside quotes; LF,
// CRLF and CR line ends), in UTF-8, UTF-16 with a byte order mark, or else Latin-1. Cells come
// out as they stand in the file; see csv_writer.h for cells that were made safe.
#pragma once

#include <QByteArray>
#include <QChar>
#include <QString>
#include <QStringList>

#include <optional>

class QIODevice;

namespace rickyard::exchange
{

struct CsvOptions {
    QChar separator;                    // null: detected from the first lines (, ; tab |)
    qsizetype longestCell = 16'777'216; // characters; a longer cell stops the reading
    qsizetype mostCells = 1'000;        // in one row
    qsizetype mostBytes = 512LL << 20U; // of a whole file
};

struct CsvRow {
    qint64 line = 0; // 1-based, where the row starts
    QStringList cells;
    // Cells of the first row, for comparison; a row of another width is the caller's to refuse.
    qsizetype expectedCells = 0;
    [[nodiscard]] bool widthMatches() const { return cells.size() == expectedCells; }
};

struct CsvError {
    qint64 line = 0;
    qint64 column = 0; // 1-based character in the line
    QString message;   // what was found and what is expected
    [[nodiscard]] QString sentence() const;
};

class CsvReader
{
public:
    explicit CsvReader(const QByteArray &bytes, const CsvOptions &options = {});
    explicit CsvReader(QIODevice &device, const CsvOptions &options = {});

    // False at the end and at an error; rows after an error are not read. Blank lines are passed
    // over, except in a file of one column, where only a quoted empty cell is a row.
    bool next(CsvRow &row);

    [[nodiscard]] const std::optional<CsvError> &error() const { return m_error; }
    [[nodiscard]] QChar separator() const { return m_separator; }
    // Empty for UTF-8; otherwise a sentence for the person.
    [[nodiscard]] const QString &encodingNote() const { return m_encodingNote; }
    // Characters read so far and in all, for a progress bar.
    [[nodiscard]] qint64 position() const { return m_at; }
    [[nodiscard]] qint64 size() const { return m_text.size(); }

private:
    enum class CellEnd { Separator, Line, File, Error };

    void open(const QByteArray &bytes);
    CellEnd readCell(QString &cell, bool &quoted);
    CellEnd readQuoted(QString &cell);
    CellEnd readPlain(QString &cell);
    CellEnd endOfCell();
    CellEnd fail(const QString &message);
    [[nodiscard]] bool atLineEnd() const;
    void passLineEnd();

    CsvOptions m_options;
    QString m_text;
    qsizetype m_at = 0;
    qsizetype m_lineStart = 0;
    qint64 m_line = 1;
    qsizetype m_width = 0;
    QChar m_separator;
    QString m_encodingNote;
    std::optional<CsvError> m_error;
};

// The separator that splits the first lines into the most cells of equal number.
QChar detectSeparator(const QString &text);

} // namespace rickyard::exchange
