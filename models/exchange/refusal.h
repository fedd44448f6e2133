// What a foreign file holds that cannot be taken, said so that a person finds the place: file,
// line, column, the value found and what was expected.
#pragma once

#include "models/domain/outcome.h"

#include <QString>
#include <QVector>

namespace rickyard::exchange
{

struct Refusal {
    QString file;     // name shown to the person; may be empty
    qint64 line = 0;  // 1-based line of the file where the row starts; 0: the file as a whole
    int column = 0;   // 1-based cell of the row; 0: the row as a whole
    QString name;     // the column's header
    QString value;    // as found
    QString expected; // what would have been taken
    QString field;    // key of the record's field, when it is known

    // "lot.csv, line 3, column 5 (weight [mg]): found “abc”; expected a whole number."
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] domain::Problem problem() const { return {field, sentence()}; }
    bool operator==(const Refusal &) const = default;
};

// More than this many refusals are counted but not listed.
constexpr int kMostRefusals = 100;

// Listed up to kMostRefusals; counts all.
struct Refusals {
    QVector<Refusal> list;
    qint64 count = 0;

    void add(Refusal refusal);
    void add(const Refusals &others);
    [[nodiscard]] bool isEmpty() const { return count == 0; }
    // One problem a refusal, and a last one that says how many more there are.
    [[nodiscard]] domain::Problems problems() const;
};

} // namespace rickyard::exchange
