// One field's value without its C++ type: what storage, exchange, undo and forms pass around.
#pragma once

#include "models/domain/quantities/quantity.h"

#include <QByteArray>
#include <QDate>
#include <QString>
#include <QVector>

#include <optional>
#include <variant>

namespace rickyard::domain {

using RecordId = qint64; // 0 means "none yet"

// Missing; an integer (quantity in base units, count, flag, instant, reference); text (choice key,
// ISO date, list of integers); bytes.
using Value = std::variant<std::monostate, qint64, QString, QByteArray>;

inline bool isMissing(const Value &v)
{
    return std::holds_alternative<std::monostate>(v);
}
inline qint64 integerOr(const Value &v, qint64 fallback)
{
    const qint64 *i = std::get_if<qint64>(&v);
    return i != nullptr ? *i : fallback;
}
inline QString textOf(const Value &v)
{
    const QString *t = std::get_if<QString>(&v);
    return t != nullptr ? *t : QString();
}

// Piece values of a moisture reading, one a piece.
using PieceMoistures = QVector<Moisture>;

// Stacks of wood as measured with a tape, one a row of the yard.
struct StackSize {
    Length length;
    Length height;
    Length depth; // the length of the sticks, when it is a single row

    bool operator==(const StackSize &) const = default;
};
using StackSizes = QVector<StackSize>;

// C++ member <-> Value. A new member type needs one pair here.
inline Value toValue(qint64 v)
{
    return v;
}
inline Value toValue(int v)
{
    return qint64{v};
}
inline Value toValue(bool v)
{
    return qint64{v ? 1 : 0};
}
inline Value toValue(const QString &v)
{
    return v;
}
inline Value toValue(const QByteArray &v)
{
    return v;
}
inline Value toValue(Instant v)
{
    return v.seconds();
}
inline Value toValue(QDate v)
{
    return v.isValid() ? Value(v.toString(Qt::ISODate)) : Value(std::monostate{});
}
template <Dimension D>
Value toValue(Quantity<D> v)
{
    return v.base();
}
inline Value toValue(const PieceMoistures &list)
{
    QStringList parts;
    for (Moisture m : list)
        parts << QString::number(m.base());
    return parts.join(QLatin1Char(' '));
}
// "2438400x1219200x406400", one a stack, in micrometres.
inline Value toValue(const StackSizes &list)
{
    QStringList parts;
    for (const StackSize &stack : list)
        parts << QStringLiteral("%1x%2x%3")
                     .arg(stack.length.base())
                     .arg(stack.height.base())
                     .arg(stack.depth.base());
    return parts.join(QLatin1Char(' '));
}
template <class T>
Value toValue(const std::optional<T> &v)
{
    return v ? toValue(*v) : Value(std::monostate{});
}

inline void fromValue(const Value &v, qint64 &out)
{
    out = integerOr(v, 0);
}
inline void fromValue(const Value &v, int &out)
{
    out = static_cast<int>(integerOr(v, 0));
}
inline void fromValue(const Value &v, bool &out)
{
    out = integerOr(v, 0) != 0;
}
inline void fromValue(const Value &v, QString &out)
{
    out = textOf(v);
}
inline void fromValue(const Value &v, QByteArray &out)
{
    const QByteArray *b = std::get_if<QByteArray>(&v);
    out = b != nullptr ? *b : QByteArray();
}
inline void fromValue(const Value &v, Instant &out)
{
    out = Instant::ofSeconds(integerOr(v, 0));
}
inline void fromValue(const Value &v, QDate &out)
{
    out = QDate::fromString(textOf(v), Qt::ISODate);
}
template <Dimension D>
void fromValue(const Value &v, Quantity<D> &out)
{
    out = Quantity<D>::ofBase(integerOr(v, 0));
}
inline void fromValue(const Value &v, PieceMoistures &out)
{
    out.clear();
    const QStringList parts = textOf(v).split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString &part : parts)
        out << Moisture::ofBase(part.toLongLong());
}
inline void fromValue(const Value &v, StackSizes &out)
{
    out.clear();
    const QStringList parts = textOf(v).split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString &part : parts) {
        const QStringList sides = part.split(QLatin1Char('x'));
        out << StackSize{Length::ofBase(sides.value(0).toLongLong()),
                         Length::ofBase(sides.value(1).toLongLong()),
                         Length::ofBase(sides.value(2).toLongLong())};
    }
}
template <class T>
void fromValue(const Value &v, std::optional<T> &out)
{
    if (isMissing(v)) {
        out.reset();
        return;
    }
    T inner{};
    fromValue(v, inner);
    out = inner;
}

} // namespace rickyard::domain
