#include "views/upkeep/check_words.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/readings.h"

#include <QCoreApplication>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString checkTr(const char *text)
{
    return QCoreApplication::translate("Checks", text);
}

} // namespace

QString CheckLimits::words() const
{
    if (low && high)
        return checkTr("%1 to %2")
            .arg(checkValueText(*low, QString()), checkValueText(*high, unit));
    if (low)
        return checkTr("%1 at least").arg(checkValueText(*low, unit));
    if (high)
        return checkTr("%1 at most").arg(checkValueText(*high, unit));
    return {};
}

CheckLimits checkLimits(const Books &books, const UpkeepTask &task)
{
    CheckLimits limits;
    limits.unit = task.readingUnit;
    const ReadingLimits here = readingLimits(books, task);
    const auto shown = [&](const std::optional<double> &limit) {
        // Moved limits are shown, and held, to a tenth.
        return limit && here.moved != 0 ? std::optional(std::round(*limit * 10) / 10) : limit;
    };
    limits.low = shown(here.low);
    limits.high = shown(here.high);
    if (here.moved != 0)
        limits.note = checkTr("corrected for the yard's height");
    else if (here.any() && here.boils && !here.heightKnown)
        limits.note = checkTr("those of sea level: the yard's height is not recorded");
    return limits;
}

QString pointName(const UpkeepTask &task, int point)
{
    const auto numbered = [&](const QString &name) {
        return task.readingPoints > 1 ? checkTr("%1 at point %2").arg(name).arg(point) : name;
    };
    switch (task.reading) {
    case ReadingKind::IcePoint:
        return numbered(checkTr("Ice water"));
    case ReadingKind::BoilingPoint:
        return numbered(checkTr("Boiling water"));
    case ReadingKind::PaperTest:
        return numbered(checkTr("Paper"));
    case ReadingKind::PlateThickness:
        return numbered(checkTr("Plate"));
    case ReadingKind::None:
    case ReadingKind::Other:
        break;
    }
    return numbered(checkTr("Reading"));
}

QString checkValueText(double value, const QString &unit)
{
    const QLocale locale(QStringLiteral("en_US"));
    // As many digits as the value has: three at most, one in a large figure.
    const int most = std::abs(value) >= 10 ? 1 : 3;
    int decimals = 0;
    while (decimals < most && std::abs(value * std::pow(10, decimals) -
                                       std::round(value * std::pow(10, decimals))) > 1e-6)
        ++decimals;
    const QString figure = formatNumber(value, decimals, locale);
    return unit.isEmpty() ? figure : QString(figure + QChar(0x2009) + unit);
}

std::optional<double> typedNumber(const QString &text, const QString &unit)
{
    QString plain = text.trimmed();
    if (!unit.isEmpty() && plain.endsWith(unit, Qt::CaseInsensitive))
        plain.chop(unit.size());
    plain.replace(QChar(0x2212), QLatin1Char('-')).remove(QChar(0x2009));
    bool ok = false;
    const double value = QLocale(QStringLiteral("en_US")).toDouble(plain.trimmed(), &ok);
    if (!ok || !std::isfinite(value) || std::abs(value) > 1e9)
        return std::nullopt;
    return value;
}

} // namespace rickyard::views
