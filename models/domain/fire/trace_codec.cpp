#include "models/domain/fire/trace_codec.h"

#include <QtEndian>

#include <optional>

namespace rickyard::domain
{

namespace
{

constexpr char kMagic[] = "RYT";
constexpr int kMagicSize = 3;
constexpr char kVersion = 1;
constexpr int kHeaderSize = kMagicSize + 1 + 4 + 2;
constexpr qint64 kLargest = qint64{1} << 40; // sums and differences stay far from overflow
constexpr int kLongestVarint = 10;
constexpr qint64 kZlibBestRatio = 1032; // zlib cannot shrink further (its own documentation)

void appendVarint(QByteArray &out, qint64 value)
{
    quint64 z = (static_cast<quint64>(value) << 1) ^ static_cast<quint64>(value >> 63);
    while (z >= 0x80) {
        out.append(static_cast<char>((z & 0x7F) | 0x80));
        z >>= 7;
    }
    out.append(static_cast<char>(z));
}

class Reader
{
public:
    explicit Reader(const QByteArray &bytes) : m_bytes(bytes) {}

    std::optional<qint64> varint()
    {
        quint64 z = 0;
        for (int i = 0; i < kLongestVarint; ++i) {
            if (m_at >= m_bytes.size())
                return std::nullopt;
            const quint64 byte = static_cast<quint8>(m_bytes.at(m_at++));
            if (i == kLongestVarint - 1 && byte > 1) // the 64th bit is the last that fits
                return std::nullopt;
            z |= (byte & 0x7F) << (7 * i);
            if ((byte & 0x80) == 0)
                return static_cast<qint64>(z >> 1) ^ -static_cast<qint64>(z & 1);
        }
        return std::nullopt;
    }
    // The next value of a column kept as differences.
    std::optional<qint64> next(qint64 previous)
    {
        const std::optional<qint64> step = varint();
        if (!step || *step > 2 * kLargest || *step < -2 * kLargest)
            return std::nullopt;
        const qint64 value = previous + *step;
        return value > kLargest || value < -kLargest ? std::nullopt : std::optional(value);
    }
    [[nodiscard]] bool atEnd() const { return m_at == m_bytes.size(); }

private:
    const QByteArray &m_bytes;
    qsizetype m_at = 0;
};

Outcome<QVector<TracePoint>> damaged(const QString &what)
{
    return Outcome<QVector<TracePoint>>::failed(
        QString(QStringLiteral("This probe log cannot be read: ") + what +
                QStringLiteral(" Import the probe's file again or restore a backup.")),
        QStringLiteral("block"));
}

Outcome<QVector<TracePoint>> decodeBody(const QByteArray &body, qsizetype count)
{
    Reader reader(body);
    QVector<TracePoint> points(count);
    qint64 previous = 0;
    for (qsizetype i = 0; i < count; ++i) {
        const std::optional<qint64> offset = reader.next(previous);
        if (!offset || (i > 0 && *offset < previous))
            return damaged(QStringLiteral("its times are damaged."));
        previous = points[i].offset = *offset;
    }
    previous = 0;
    for (TracePoint &point : points) {
        const std::optional<qint64> value = reader.next(previous);
        if (!value)
            return damaged(QStringLiteral("its temperatures are damaged."));
        previous = *value;
        point.temperature = Temperature::ofBase(*value);
    }
    if (!reader.atEnd())
        return damaged(QStringLiteral("it holds more than it declares."));
    return points;
}

} // namespace

Outcome<QByteArray> encodeTrace(const QVector<TracePoint> &points)
{
    using Result = Outcome<QByteArray>;
    if (points.size() > kMaxTracePoints)
        return Result::failed(
            QStringLiteral("A probe log holds at most a million readings. Split the file."));
    QByteArray body;
    body.reserve(points.size() * 3);
    qint64 previous = 0;
    for (qsizetype i = 0; i < points.size(); ++i) {
        const qint64 offset = points.at(i).offset;
        if (offset > kLargest || offset < -kLargest || (i > 0 && offset < previous))
            return Result::failed(QString(QStringLiteral("Reading ") + QString::number(i + 1) +
                                          QStringLiteral(" is out of time order. Sort the "
                                                         "readings by time.")));
        appendVarint(body, offset - previous);
        previous = offset;
    }
    previous = 0;
    for (qsizetype i = 0; i < points.size(); ++i) {
        const qint64 value = points.at(i).temperature.base();
        if (value > kLargest || value < -kLargest)
            return Result::failed(QString(QStringLiteral("Reading ") + QString::number(i + 1) +
                                          QStringLiteral(" is not a temperature.")));
        appendVarint(body, value - previous);
        previous = value;
    }
    const QByteArray packed = qCompress(body);
    QByteArray block(kHeaderSize, Qt::Uninitialized);
    memcpy(block.data(), kMagic, kMagicSize);
    block[kMagicSize] = kVersion;
    qToBigEndian(static_cast<quint32>(points.size()), block.data() + kMagicSize + 1);
    qToBigEndian(qChecksum(packed), block.data() + kMagicSize + 5);
    block.append(packed);
    return block;
}

Outcome<QVector<TracePoint>> decodeTrace(const QByteArray &block)
{
    if (block.size() < kHeaderSize || !block.startsWith(kMagic))
        return damaged(QStringLiteral("it is not a probe log."));
    if (block.at(kMagicSize) != kVersion)
        return damaged(QStringLiteral("it was written by a newer program."));
    const auto count = qFromBigEndian<quint32>(block.constData() + kMagicSize + 1);
    const auto checksum = qFromBigEndian<quint16>(block.constData() + kMagicSize + 5);
    const QByteArray packed = block.mid(kHeaderSize);
    if (count > kMaxTracePoints || packed.size() < 4 || qChecksum(packed) != checksum)
        return damaged(QStringLiteral("it is damaged or cut short."));
    // The length prefix decides how much memory is taken, so it is not believed blindly.
    const qint64 declared = qFromBigEndian<quint32>(packed.constData());
    if (declared < 2 * qint64{count} || declared > 2 * kLongestVarint * qint64{count} ||
        declared > kZlibBestRatio * packed.size())
        return damaged(QStringLiteral("its length is damaged."));
    if (count == 0)
        return QVector<TracePoint>();
    const QByteArray body = qUncompress(packed);
    if (body.size() != declared)
        return damaged(QStringLiteral("it is damaged or cut short."));
    return decodeBody(body, static_cast<qsizetype>(count));
}

} // namespace rickyard::domain
