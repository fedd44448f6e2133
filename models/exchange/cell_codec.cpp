#include "models/exchange/cell_codec.h"

#include "models/domain/quantities/units.h"
#include "models/exchange/csv_writer.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/table_csv.h"

namespace rickyard::exchange {

using domain::Dimension;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Value;

namespace {

bool hasUnit(const FieldSpec &field)
{
    return field.kind == FieldKind::Quantity || field.kind == FieldKind::Pieces ||
           field.kind == FieldKind::Stacks;
}

QString unitsAllowed(const FieldSpec &field)
{
    QStringList keys = {baseUnitKey(field.dimension)};
    for (const domain::Unit &unit : domain::unitsOf(field.dimension))
        if (!keys.contains(unit.key))
            keys << unit.key;
    return keys.join(QStringLiteral(", "));
}

} // namespace

QString baseUnitKey(Dimension dimension)
{
    switch (dimension) {
    case Dimension::Mass:
        return QStringLiteral("mg");
    case Dimension::Volume:
        return QStringLiteral("mL");
    case Dimension::Length:
        return QStringLiteral("um");
    case Dimension::Temperature:
        return QStringLiteral("mdegC");
    case Dimension::Duration:
        return QStringLiteral("s");
    case Dimension::Money:
        return QStringLiteral("cent");
    case Dimension::Moisture:
        return QStringLiteral("mpct_dry");
    case Dimension::Ratio:
    case Dimension::Plain:
        return QStringLiteral("ppm");
    case Dimension::Speed:
        return QStringLiteral("mm/s");
    case Dimension::Pressure:
        return QStringLiteral("Pa");
    case Dimension::Heat:
        return QStringLiteral("J");
    case Dimension::HeatContent:
        return QStringLiteral("J/kg");
    case Dimension::Angle:
        return QStringLiteral("deg");
    }
    return {};
}

QString headerOf(const FieldSpec &field)
{
    if (!hasUnit(field))
        return field.key;
    return QString(field.key + QStringLiteral(" [") + baseUnitKey(field.dimension) +
                   QLatin1Char(']'));
}

QStringList headersOf(const domain::TableSpec &spec)
{
    QStringList headers = {QStringLiteral("id")};
    for (const FieldSpec &field : spec.fields)
        headers << headerOf(field);
    return headers;
}

HeaderCell parseHeader(const QString &header)
{
    const QString text = header.trimmed();
    const qsizetype open = text.indexOf(QLatin1Char('['));
    if (open < 0 || !text.endsWith(QLatin1Char(']')))
        return {text.toLower(), {}};
    return {text.left(open).trimmed().toLower(),
            text.mid(open + 1, text.size() - open - 2).trimmed()};
}

QString writtenCell(const FieldSpec &field, const Value &value)
{
    if (domain::isMissing(value))
        return {};
    if (const qint64 *integer = std::get_if<qint64>(&value))
        return field.kind == FieldKind::Time ? isoUtc(*integer) : QString::number(*integer);
    if (const QByteArray *bytes = std::get_if<QByteArray>(&value))
        return madeSafe(QString::fromLatin1(bytes->toBase64()));
    return madeSafe(domain::textOf(value));
}

QString CellCodec::bind(const FieldSpec &spec, int fieldIndex, const QString &unitKey)
{
    field = &spec;
    index = fieldIndex;
    if (!hasUnit(spec))
        return unitKey.isEmpty() ? QString()
                                 : QString(spec.key + QStringLiteral(" without a unit"));
    baseUnit = unitKey == baseUnitKey(spec.dimension);
    if (baseUnit)
        return {};
    unit = unitKey.isEmpty() ? nullptr : domain::findUnit(spec.dimension, unitKey);
    if (unit != nullptr)
        return {};
    return QString(spec.key + QStringLiteral(" [unit] with one of these units: ") +
                   unitsAllowed(spec));
}

QString CellCodec::read(const QString &cell, Value &out) const
{
    const bool text = field->kind == FieldKind::Text || field->kind == FieldKind::LongText ||
                      field->kind == FieldKind::Typed;
    if (cell.trimmed().isEmpty() && !text) {
        if (field->required)
            return QStringLiteral("a value; every record needs one");
        const bool list = field->kind == FieldKind::Pieces || field->kind == FieldKind::Stacks;
        out = field->kind == FieldKind::Blob ? Value(QByteArray())
              : list                         ? Value(QString())
                                             : Value(std::monostate{});
        return {};
    }
    switch (field->kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
    case FieldKind::Typed:
    case FieldKind::Choice:
        return readText(cell, out);
    case FieldKind::Flag:
    case FieldKind::Count:
    case FieldKind::Reference:
        return readInteger(cell.trimmed(), out);
    case FieldKind::Quantity:
        return readQuantity(cell.trimmed(), out);
    case FieldKind::Pieces:
        return readPieces(restored(cell), out);
    case FieldKind::Stacks:
        return readStacks(restored(cell), out);
    case FieldKind::Time:
    case FieldKind::Date:
        return readTime(cell.trimmed(), out);
    case FieldKind::Blob:
        return readBlob(restored(cell.trimmed()), out);
    }
    return {};
}

QString CellCodec::readText(const QString &cell, Value &out) const
{
    const QString text = restored(cell);
    if (field->kind == FieldKind::Choice) {
        QStringList keys;
        for (const domain::Choice &choice : field->choices) {
            if (choice.key == text.trimmed()) {
                out = choice.key;
                return {};
            }
            keys << choice.key;
        }
        return QString(QStringLiteral("one of ") + keys.join(QStringLiteral(", ")));
    }
    if (field->required && text.trimmed().isEmpty())
        return QStringLiteral("a text; every record needs one");
    out = text;
    return {};
}

QString CellCodec::readInteger(const QString &cell, Value &out) const
{
    bool ok = false;
    const qint64 value = cell.toLongLong(&ok);
    if (field->kind == FieldKind::Flag) {
        if (!ok || value < 0 || value > 1)
            return QStringLiteral("0 or 1");
    } else if (field->kind == FieldKind::Reference) {
        if (!ok || value <= 0)
            return QString(QStringLiteral("the id of one of the ") +
                           domain::specOf(field->refersTo).plural);
    } else if (!ok || std::abs(value) > std::numeric_limits<int>::max()) {
        return QStringLiteral("a whole number");
    }
    const QString outside = range(value);
    if (outside.isEmpty())
        out = value;
    return outside;
}

bool CellCodec::number(const QString &text, qint64 &base) const
{
    if (baseUnit) {
        bool ok = false;
        base = text.toLongLong(&ok);
        return ok;
    }
    const auto value = readNumber(text, QLatin1Char('.'));
    if (!value || (unit->wetBasis && *value >= 100.0) ||
        std::abs(*value * unit->scale + unit->offset) > 9.0e18)
        return false;
    base = domain::fromUnit(*value, *unit);
    return true;
}

QString CellCodec::readQuantity(const QString &cell, Value &out) const
{
    qint64 base = 0;
    if (!number(cell, base))
        return baseUnit
                   ? QString(QStringLiteral("a whole number of ") + baseUnitKey(field->dimension))
                   : QString(QStringLiteral("a number of ") + unit->key);
    const QString outside = range(base);
    if (outside.isEmpty())
        out = base;
    return outside;
}

QString CellCodec::readPieces(const QString &cell, Value &out) const
{
    QStringList parts;
    for (const QString &part : cell.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        qint64 base = 0;
        if (!number(part, base))
            return QStringLiteral("numbers with a space between them, one a piece");
        const QString outside = range(base);
        if (!outside.isEmpty())
            return outside;
        parts << QString::number(base);
    }
    out = parts.join(QLatin1Char(' '));
    return {};
}

QString CellCodec::readStacks(const QString &cell, Value &out) const
{
    const QString expected =
        QStringLiteral("length x height x depth such as 8x4x1.5, with a space between stacks");
    QStringList stacks;
    for (const QString &stack : cell.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        QStringList sides;
        for (const QString &side : stack.split(QLatin1Char('x'))) {
            qint64 base = 0;
            if (!number(side, base))
                return expected;
            const QString outside = range(base);
            if (!outside.isEmpty())
                return outside;
            sides << QString::number(base);
        }
        if (sides.size() != 3)
            return expected;
        stacks << sides.join(QLatin1Char('x'));
    }
    out = stacks.join(QLatin1Char(' '));
    return {};
}

QString CellCodec::readTime(const QString &cell, Value &out) const
{
    if (field->kind == FieldKind::Date) {
        const QDate date = QDate::fromString(cell, Qt::ISODate);
        if (!date.isValid())
            return QStringLiteral("a date such as 2026-05-01");
        out = date.toString(Qt::ISODate);
        return {};
    }
    const auto time = readIsoTime(cell);
    if (time && time->offsetSeconds) {
        out = QDateTime(time->date, time->time, Qt::UTC).toSecsSinceEpoch() - *time->offsetSeconds;
        return {};
    }
    bool ok = false;
    const qint64 seconds = cell.toLongLong(&ok); // outside the years that ISO 8601 writes
    if (!ok || isoUtc(seconds) != cell)
        return QStringLiteral("a time in UTC such as 2026-05-01T18:00:00Z");
    out = seconds;
    return {};
}

QString CellCodec::readBlob(const QString &cell, Value &out) const
{
    const auto decoded =
        QByteArray::fromBase64Encoding(cell.toLatin1(), QByteArray::AbortOnBase64DecodingErrors);
    if (!decoded)
        return QStringLiteral("base64 text");
    out = *decoded;
    return {};
}

QString CellCodec::range(qint64 base) const
{
    const bool low = field->minimum && base < *field->minimum;
    const bool high = field->maximum && base > *field->maximum;
    if (!low && !high)
        return {};
    const auto shown = [this](qint64 limit) {
        if (!hasUnit(*field))
            return QString::number(limit);
        if (baseUnit)
            return QString(QString::number(limit) + QLatin1Char(' ') +
                           baseUnitKey(field->dimension));
        return domain::formatQuantity(limit, *unit, QLocale::c(), 2);
    };
    return low ? QString(shown(*field->minimum) + QStringLiteral(" at least"))
               : QString(shown(*field->maximum) + QStringLiteral(" at most"));
}

} // namespace rickyard::exchange
