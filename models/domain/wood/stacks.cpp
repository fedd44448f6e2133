#include "models/domain/wood/stacks.h"

#include "models/domain/wood/density.h"

#include <QRegularExpression>

namespace rickyard::domain {

namespace {

struct StackUnits {
    const Unit *side;
    const Unit *depth;
};

StackUnits unitsFor(UnitSystem system)
{
    const bool metric = system == UnitSystem::Metric;
    return {findUnit(Dimension::Length, metric ? QStringLiteral("m") : QStringLiteral("ft")),
            findUnit(Dimension::Length, metric ? QStringLiteral("cm") : QStringLiteral("in"))};
}

// Whole figures without a decimal point, others with two.
QString sideText(Length length, const Unit &unit, const QLocale &locale)
{
    const double value = toUnit(length.base(), unit);
    const bool whole = std::abs(value - std::round(value)) < 0.005;
    return formatQuantity(length.base(), unit, locale, whole ? 0 : 2);
}

} // namespace

Volume stackedVolume(const StackSizes &stacks)
{
    Volume sum;
    for (const StackSize &stack : stacks)
        sum += stackVolume(stack.length, stack.height, stack.depth);
    return sum;
}

QString stacksText(const StackSizes &stacks, UnitSystem system, const QLocale &locale)
{
    const StackUnits units = unitsFor(system);
    QStringList texts;
    for (const StackSize &stack : stacks)
        texts << QStringList{sideText(stack.length, *units.side, locale),
                             sideText(stack.height, *units.side, locale),
                             sideText(stack.depth, *units.depth, locale)}
                     .join(QStringLiteral(" × "));
    return texts.join(QStringLiteral("; "));
}

Outcome<StackSizes> parseStacks(const QString &text, UnitSystem system, const QLocale &locale)
{
    static const QRegularExpression between(QStringLiteral("[;\\n]"));
    static const QRegularExpression times(QStringLiteral("\\s*(?:×|\\*|x|X|\\bby\\b)\\s*"));
    const StackUnits units = unitsFor(system);
    StackSizes stacks;
    const QStringList parts = text.split(between, Qt::SkipEmptyParts);
    for (const QString &part : parts) {
        if (part.trimmed().isEmpty())
            continue;
        const QStringList sides = part.trimmed().split(times);
        QVector<Length> lengths;
        for (int i = 0; i < sides.size() && sides.size() == 3; ++i)
            if (const auto side = parseQuantity(sides.at(i), Dimension::Length,
                                                i < 2 ? *units.side : *units.depth, locale))
                lengths << Length::ofBase(side->base);
        if (lengths.size() != 3)
            return Outcome<StackSizes>::failed(
                QString(
                    QStringLiteral("“") + part.trimmed() +
                    QStringLiteral("” is not a stack. Write length × height × depth, such as ") +
                    (system == UnitSystem::Metric ? QStringLiteral("2.4 m × 1.2 m × 40 cm.")
                                                  : QStringLiteral("8 ft × 4 ft × 16 in."))),
                QStringLiteral("stacks"));
        stacks << StackSize{lengths.at(0), lengths.at(1), lengths.at(2)};
    }
    return stacks;
}

} // namespace rickyard::domain
