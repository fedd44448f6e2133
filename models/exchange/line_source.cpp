#include "models/exchange/line_source.h"

#include <QIODevice>

#include <algorithm>

namespace rickyard::exchange {

namespace {

constexpr qsizetype kLongestLine = 16 << 20; // bytes; a longer one is no table

} // namespace

LineSource::LineSource(QIODevice &device, qsizetype chunk) : m_device(device), m_chunk(chunk) {}

bool LineSource::refill()
{
    if (m_done)
        return false;
    // The first piece must hold a whole byte order mark.
    QByteArray more = m_device.read(m_started ? m_chunk : std::max<qsizetype>(m_chunk, 4));
    if (more.isEmpty()) {
        m_done = true;
        if (!m_device.atEnd())
            m_problem = m_device.errorString();
        return false;
    }
    m_bytes += more.size();
    if (!m_started) {
        m_started = true;
        if (more.startsWith("\xFF\xFE") || more.startsWith("\xFE\xFF"))
            m_decoder.emplace(QStringDecoder::Utf16);
        else if (more.startsWith("\xEF\xBB\xBF"))
            more.remove(0, 3);
        else if (more.startsWith("\x1F\x8B"))
            m_problem = QStringLiteral("the file is compressed (gzip); unpack it first");
    }
    if (m_decoder) {
        QString text = m_decoder->decode(more);
        if (text.startsWith(QChar(0xFEFF)))
            text.remove(0, 1);
        more = text.toUtf8();
    }
    m_buffer.remove(0, m_at);
    m_searched -= m_at;
    m_at = 0;
    m_buffer += more;
    return m_problem.isEmpty();
}

bool LineSource::next(std::string_view &line)
{
    for (;;) {
        const char *data = m_buffer.constData();
        const qsizetype size = m_buffer.size();
        qsizetype at = m_searched;
        while (at < size && data[at] != '\n' && data[at] != '\r')
            ++at;
        // A CR at the very end of a chunk may be half of a CRLF.
        const bool needsMore = at >= size || (data[at] == '\r' && at + 1 >= size);
        if (needsMore) {
            m_searched = at;
            if (size - m_at > kLongestLine) {
                m_problem = QStringLiteral("a line of more than 16 MB; this is no table");
                return false;
            }
            if (refill())
                continue;
            if (!m_problem.isEmpty() || m_at >= m_buffer.size())
                return false;
        }
        data = m_buffer.constData();
        line = std::string_view(data + m_at, static_cast<std::size_t>(at - m_at));
        m_ended = at < m_buffer.size();
        qsizetype behind = at;
        if (m_ended)
            behind += data[at] == '\r' && at + 1 < m_buffer.size() && data[at + 1] == '\n' ? 2 : 1;
        m_at = behind;
        m_searched = behind;
        ++m_number;
        return true;
    }
}

} // namespace rickyard::exchange
