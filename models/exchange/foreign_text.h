// The text of a foreign file: UTF-8, UTF-16 with a byte order mark, or else Latin-1.
#pragma once

#include <QByteArray>
#include <QString>
#include <QVector>

namespace rickyard::exchange {

struct ForeignText {
    QString text;
    QString note;    // empty for UTF-8; otherwise a sentence for a person
    QString problem; // why it is not text at all; empty when it is
};
ForeignText decodeForeignText(const QByteArray &bytes);

struct TextLine {
    qint64 number = 0; // from 1
    QString text;      // without its line end
};
// LF, CRLF and a lone CR each end a line.
QVector<TextLine> linesOf(const QString &text);

} // namespace rickyard::exchange
