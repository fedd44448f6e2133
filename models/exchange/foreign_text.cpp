#include "models/exchange/foreign_text.h"

#include <QStringDecoder>

namespace rickyard::exchange {

ForeignText decodeForeignText(const QByteArray &bytes)
{
    ForeignText read;
    if (bytes.startsWith("\x1F\x8B")) {
        read.problem = QStringLiteral("plain text, but this file is compressed (gzip); unpack it "
                                      "first");
        return read;
    }
    if (bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF")) {
        QStringDecoder decoder(QStringDecoder::Utf16);
        read.text = decoder.decode(bytes);
        read.note = QStringLiteral("The file is in UTF-16.");
    } else {
        QStringDecoder decoder(QStringDecoder::Utf8);
        read.text = decoder.decode(bytes);
        if (decoder.hasError()) {
            read.text = QString::fromLatin1(bytes);
            read.note = QStringLiteral("The file is not in UTF-8; it was read as Latin-1. Look at "
                                       "accents and degree signs.");
        }
    }
    if (read.text.startsWith(QChar(0xFEFF)))
        read.text.remove(0, 1);
    if (read.text.contains(QChar(0)))
        read.problem = QStringLiteral("text, but there is a zero byte in it");
    return read;
}

QVector<TextLine> linesOf(const QString &text)
{
    QVector<TextLine> lines;
    qint64 number = 1;
    qsizetype from = 0;
    while (from < text.size()) {
        qsizetype at = from;
        while (at < text.size() && text.at(at) != QLatin1Char('\n') &&
               text.at(at) != QLatin1Char('\r'))
            ++at;
        lines.append({number++, text.mid(from, at - from)});
        if (at + 1 < text.size() && text.at(at) == QLatin1Char('\r') &&
            text.at(at + 1) == QLatin1Char('\n'))
            ++at;
        from = at + 1;
    }
    return lines;
}

} // namespace rickyard::exchange
