#include "models/domain/answers/field_words.h"

#include "models/domain/wood/stacks.h"

#include <QTimeZone>

namespace rickyard::domain {

const Unit &unitFor(const FieldSpec &field, bool metric)
{
    const auto system = metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    const bool metricHasOwn =
        metric && defaultUnit(field.dimension, system).key !=
                      defaultUnit(field.dimension, UnitSystem::UsCustomary).key;
    const Unit *preferred = field.preferredUnit.isEmpty() || metricHasOwn
                                ? nullptr
                                : findUnit(field.dimension, field.preferredUnit);
    return preferred != nullptr ? *preferred : defaultUnit(field.dimension, system);
}

QDateTime toLocal(const Books &books, Instant time)
{
    return QDateTime::fromSecsSinceEpoch(time.seconds(),
                                         QTimeZone(books.yard().timeZone.toLatin1()));
}

QString timeText(const Books &books, Instant time, const QLocale &locale)
{
    return locale.toString(toLocal(books, time), QStringLiteral("ddd d MMM yyyy, h:mm AP"));
}

QString dayText(const QDate &day, const QLocale &locale)
{
    return day.isValid() ? locale.toString(day, QStringLiteral("ddd d MMM yyyy")) : QString();
}

namespace {

QString piecesText(const QString &list, const QLocale &locale)
{
    PieceMoistures pieces;
    fromValue(Value(list), pieces);
    if (pieces.isEmpty())
        return {};
    double sum = 0;
    for (Moisture m : pieces)
        sum += dryFraction(m);
    const double mean = 100.0 * sum / static_cast<double>(pieces.size());
    return QStringLiteral("%1 % dry, mean of %2")
        .arg(formatNumber(mean, 1, locale))
        .arg(pieces.size());
}

} // namespace

QString displayText(const Books &books, const FieldSpec &field, const Value &value,
                    const QLocale &locale)
{
    if (isMissing(value))
        return {};
    const qint64 integer = integerOr(value, 0);
    switch (field.kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
    case FieldKind::Typed:
        return textOf(value);
    case FieldKind::Choice:
        for (const Choice &choice : field.choices)
            if (choice.key == textOf(value))
                return choice.label;
        return textOf(value);
    case FieldKind::Flag:
        return integer != 0 ? QStringLiteral("Yes") : QString();
    case FieldKind::Count:
        return locale.toString(integer);
    case FieldKind::Quantity:
        return formatQuantity(integer, unitFor(field, books.yard().metric), locale);
    case FieldKind::Time:
        return timeText(books, Instant::ofSeconds(integer), locale);
    case FieldKind::Date:
        return dayText(QDate::fromString(textOf(value), Qt::ISODate), locale);
    case FieldKind::Reference:
        return integer == 0 ? QString() : titleOf(books, field.refersTo, integer);
    case FieldKind::Pieces:
        return piecesText(textOf(value), locale);
    case FieldKind::Stacks: {
        StackSizes stacks;
        fromValue(value, stacks);
        return stacksText(
            stacks, books.yard().metric ? UnitSystem::Metric : UnitSystem::UsCustomary, locale);
    }
    case FieldKind::Blob:
        return QStringLiteral("%1 bytes").arg(std::get<QByteArray>(value).size());
    }
    return {};
}

} // namespace rickyard::domain
