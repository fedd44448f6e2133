// Splits C++ text so that a rule can look at the code alone, or at the string literals alone.
#pragma once

#include <QString>
#include <QStringList>
#include <QVector>

namespace rickyard::test {

struct Literal {
    int line = 0;
    QString text;
};

struct SourceText {
    QString code; // comments and contents of literals blanked, line breaks kept
    QVector<Literal> literals;
    QStringList lines; // as written
};

SourceText splitSource(const QString &text);

// An #include as written. System headers are those in angle brackets.
struct Include {
    int line = 0;
    QString header;
    bool system = false;
};

QVector<Include> includesOf(const SourceText &source);

} // namespace rickyard::test
