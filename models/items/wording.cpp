#include "models/items/wording.h"
#include "models/domain/wood/stacks.h"

#include "models/domain/wood/stacks.h"

#include <QDateTime>
#include <QTimeZone>

namespace rickyard::items {

using domain::Books;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Instant;
using domain::Moisture;
using domain::Unit;
using domain::Value;

const Unit &unitFor(const FieldSpec &field, bool metric)
{
    const auto system = metric ? domain::UnitSystem::Metric : domain::UnitSystem::UsCustomary;
    const bool metricHasOwn =
        metric && domain::defaultUnit(field.dimension, system).key !=
                      domain::defaultUnit(field.dimension, domain::UnitSystem::UsCustomary).key;
    const Unit *preferred = field.preferredUnit.isEmpty() || metricHasOwn
                                ? nullptr
                                : domain::findUnit(field.dimension, field.preferredUnit);
    return preferred != nullptr ? *preferred : domain::defaultUnit(field.dimension, system);
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
    domain::PieceMoistures pieces;
    domain::fromValue(Value(list), pieces);
    if (pieces.isEmpty())
        return {};
    double sum = 0;
    for (Moisture m : pieces)
        sum += domain::dryFraction(m);
    const double mean = 100.0 * sum / static_cast<double>(pieces.size());
    return QStringLiteral("%1 % dry, mean of %2")
        .arg(domain::formatNumber(mean, 1, locale))
        .arg(pieces.size());
}

} // namespace

QString displayText(const Books &books, const FieldSpec &field, const Value &value,
                    const QLocale &locale)
{
    if (domain::isMissing(value))
        return {};
    const qint64 integer = domain::integerOr(value, 0);
    switch (field.kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
    case FieldKind::Typed:
        return domain::textOf(value);
    case FieldKind::Choice:
        for (const domain::Choice &choice : field.choices)
            if (choice.key == domain::textOf(value))
                return choice.label;
        return domain::textOf(value);
    case FieldKind::Flag:
        return integer != 0 ? QStringLiteral("Yes") : QString();
    case FieldKind::Count:
        return locale.toString(integer);
    case FieldKind::Quantity:
        return domain::formatQuantity(integer, unitFor(field, books.yard().metric), locale);
    case FieldKind::Time:
        return timeText(books, Instant::ofSeconds(integer), locale);
    case FieldKind::Date:
        return dayText(QDate::fromString(domain::textOf(value), Qt::ISODate), locale);
    case FieldKind::Reference:
        return integer == 0 ? QString() : domain::titleOf(books, field.refersTo, integer);
    case FieldKind::Pieces:
        return piecesText(domain::textOf(value), locale);
    case FieldKind::Stacks: {
        domain::StackSizes stacks;
        domain::fromValue(value, stacks);
        return domain::stacksText(stacks,
                                  books.yard().metric ? domain::UnitSystem::Metric
                                                      : domain::UnitSystem::UsCustomary,
                                  locale);
    }
    case FieldKind::Blob:
        return QStringLiteral("%1 bytes").arg(std::get<QByteArray>(value).size());
    }
    return {};
}

QVariant sortValue(const Books &books, const FieldSpec &field, const Value &value)
{
    if (domain::isMissing(value))
        return {};
    switch (field.kind) {
    case FieldKind::Count:
    case FieldKind::Quantity:
    case FieldKind::Time:
    case FieldKind::Flag:
        return domain::integerOr(value, 0);
    case FieldKind::Choice:
        for (int i = 0; i < field.choices.size(); ++i)
            if (field.choices.at(i).key == domain::textOf(value))
                return i;
        return -1;
    case FieldKind::Date:
        return domain::textOf(value);
    default:
        return displayText(books, field, value, QLocale(QStringLiteral("en_US"))).toLower();
    }
}

} // namespace rickyard::items
