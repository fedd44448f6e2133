#include "models/domain/fire/trace_codec.h"
#include "tests/support/registry.h"

#include <QTest>
#include <QtEndian>

#include <random>

using namespace rickyard::domain;

namespace {

QVector<TracePoint> wander(std::mt19937 &random, int count)
{
    std::uniform_int_distribution<int> step(0, 600);
    std::uniform_int_distribution<int> change(-4000, 4000);
    QVector<TracePoint> points;
    qint64 t = -120;
    qint64 value = 20000;
    for (int i = 0; i < count; ++i) {
        t += step(random);
        value += change(random);
        points.append({t, Temperature::ofBase(value)});
    }
    return points;
}

// A block whose checksum is right whatever stands in it, to reach the inner checks.
QByteArray sealed(quint32 count, const QByteArray &packed)
{
    QByteArray block("RYT\x01");
    QByteArray numbers(6, '\0');
    qToBigEndian(count, numbers.data());
    qToBigEndian(qChecksum(packed), numbers.data() + 4);
    return QByteArray(block + numbers + packed);
}

} // namespace

class TstTraceCodec : public QObject
{
    Q_OBJECT

private slots:
    void roundTrip();
    void extremes();
    void isSmall();
    void refusesWhatIsNotATrace();
    void everyTruncationIsAProblem();
    void everyFlippedBitIsAProblem();
    void randomBytesAreAProblem();
    void randomInsidesNeverCrash();
    void declaredLengthIsNotBelieved();
    void newerVersion();
};

void TstTraceCodec::roundTrip()
{
    std::mt19937 random(20261125);
    for (int count = 0; count < 300; ++count) {
        const QVector<TracePoint> points = wander(random, count);
        const auto block = encodeTrace(points);
        QVERIFY(block.ok());
        const auto back = decodeTrace(block.value());
        QVERIFY2(back.ok(), qPrintable(back.message()));
        QVERIFY(back.value() == points);
    }
}

void TstTraceCodec::extremes()
{
    const qint64 most = qint64{1} << 40;
    const QVector<TracePoint> points = {{-most, Temperature::ofBase(most)},
                                        {-most, Temperature::ofBase(-most)},
                                        {most, Temperature::ofBase(most)}};
    const auto back = decodeTrace(encodeTrace(points).value());
    QVERIFY(back.ok());
    QVERIFY(back.value() == points);
}

// Ten hours at one reading in ten seconds: twelve bytes a reading plain, and well under three here.
void TstTraceCodec::isSmall()
{
    std::mt19937 random(7);
    std::uniform_int_distribution<int> change(-300, 300);
    QVector<TracePoint> points;
    qint64 value = 120000;
    for (int i = 0; i < 3600; ++i)
        points.append({i * 10, Temperature::ofBase(value += change(random))});
    QVERIFY(encodeTrace(points).value().size() < 3 * points.size());
}

void TstTraceCodec::refusesWhatIsNotATrace()
{
    const QVector<TracePoint> backwards = {{10, Temperature()}, {9, Temperature()}};
    const auto refused = encodeTrace(backwards);
    QVERIFY(!refused.ok());
    QVERIFY(refused.message().contains(QStringLiteral("Reading 2")));
    const QVector<TracePoint> absurd = {{0, Temperature::ofBase(qint64{1} << 50)}};
    QVERIFY(!encodeTrace(absurd).ok());
    const QVector<TracePoint> late = {{qint64{1} << 50, Temperature()}};
    QVERIFY(!encodeTrace(late).ok());
}

void TstTraceCodec::everyTruncationIsAProblem()
{
    std::mt19937 random(3);
    const QByteArray block = encodeTrace(wander(random, 200)).value();
    for (qsizetype size = 0; size < block.size(); ++size) {
        const auto back = decodeTrace(block.left(size));
        QVERIFY(!back.ok());
        QVERIFY(!back.message().isEmpty());
    }
    QVERIFY(!decodeTrace(QByteArray(block + 'x')).ok());
}

// A CRC-16 finds every single flipped bit of what it covers; the header fails by its own checks.
void TstTraceCodec::everyFlippedBitIsAProblem()
{
    std::mt19937 random(5);
    const QVector<TracePoint> points = wander(random, 40);
    const QByteArray block = encodeTrace(points).value();
    for (qsizetype byte = 0; byte < block.size(); ++byte) {
        for (int bit = 0; bit < 8; ++bit) {
            QByteArray hurt = block;
            hurt[byte] = static_cast<char>(hurt.at(byte) ^ (1 << bit));
            QVERIFY(!decodeTrace(hurt).ok());
        }
    }
}

void TstTraceCodec::randomBytesAreAProblem()
{
    std::mt19937 random(11);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int i = 0; i < 2000; ++i) {
        QByteArray noise(i % 200, '\0');
        for (char &c : noise)
            c = static_cast<char>(byte(random));
        QVERIFY(!decodeTrace(noise).ok());
    }
}

// Right header, right checksum, right compression, wrong contents: either a lawful trace or
// a problem, and what is accepted must be lawful.
void TstTraceCodec::randomInsidesNeverCrash()
{
    std::mt19937 random(13);
    std::uniform_int_distribution<int> byte(0, 255);
    int refused = 0;
    for (int i = 0; i < 2000; ++i) {
        const int count = 1 + i % 20;
        QByteArray body(2 * count + i % 7, '\0');
        for (char &c : body)
            c = static_cast<char>(byte(random) & (i % 3 == 0 ? 0x7F : 0xFF));
        const auto back = decodeTrace(sealed(static_cast<quint32>(count), qCompress(body)));
        refused += back.ok() ? 0 : 1;
        if (back.ok()) {
            QCOMPARE(back.value().size(), count);
            QVERIFY(encodeTrace(back.value()).ok());
        }
    }
    QVERIFY(refused > 0);
}

void TstTraceCodec::declaredLengthIsNotBelieved()
{
    QByteArray packed = qCompress(QByteArray(20, '\0'));
    qToBigEndian(quint32{0xFFFFFFFF}, packed.data());
    QVERIFY(!decodeTrace(sealed(10, packed)).ok());
    QVERIFY(!decodeTrace(sealed(0xFFFFFFFF, packed)).ok());
    // Three bytes are too few even for a length.
    QVERIFY(!decodeTrace(sealed(0, QByteArray(3, '\0'))).ok());
}

void TstTraceCodec::newerVersion()
{
    QByteArray block = encodeTrace({{0, Temperature()}}).value();
    block[3] = 2;
    QVERIFY(decodeTrace(block).message().contains(QStringLiteral("newer")));
}

RICKYARD_TEST(TstTraceCodec)
#include "tst_trace_codec.moc"
