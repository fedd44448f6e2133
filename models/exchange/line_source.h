// The lines of a text file of any size, read in chunks: UTF-8 or Latin-1 bytes as they are, UTF-16
// (with a byte order mark) turned into UTF-8 chunk by chunk. Never more than one chunk and one line
// in memory.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringDecoder>

#include <optional>
#include <string_view>

class QIODevice;

namespace rickyard::exchange {

class LineSource
{
public:
    explicit LineSource(QIODevice &device, qsizetype chunk = 1 << 20);

    // The next line without its end (LF, CRLF or a lone CR); valid until the next call.
    bool next(std::string_view &line);
    [[nodiscard]] qint64 lineNumber() const { return m_number; }
    // False when the last line that came has no line end: the file may be cut in its middle.
    [[nodiscard]] bool lineEnded() const { return m_ended; }
    [[nodiscard]] qint64 bytesRead() const { return m_bytes; }
    [[nodiscard]] bool isUtf16() const { return m_decoder.has_value(); }
    [[nodiscard]] const QString &problem() const { return m_problem; }

private:
    bool refill();

    QIODevice &m_device;
    qsizetype m_chunk;
    QByteArray m_buffer;
    qsizetype m_at = 0;
    qsizetype m_searched = 0; // up to here there is no line end
    qint64 m_number = 0;
    qint64 m_bytes = 0;
    bool m_ended = true;
    bool m_started = false;
    bool m_done = false;
    std::optional<QStringDecoder> m_decoder;
    QString m_problem;
};

} // namespace rickyard::exchange
