#include "views/theme/number_style.h"

namespace rickyard::views {

namespace {
constexpr QChar minusSign(0x2212);
constexpr QChar thinSpace(0x2009);
constexpr QChar enDash(0x2013);
} // namespace

QString trueMinus(QString number)
{
    for (qsizetype i = 0; i + 1 < number.size(); ++i) {
        const bool starts = i == 0 || !number.at(i - 1).isLetterOrNumber();
        if (number.at(i) == u'-' && starts && number.at(i + 1).isDigit())
            number[i] = minusSign;
    }
    return number;
}

QString withUnit(const QString &number, const QString &unit)
{
    if (unit.isEmpty())
        return trueMinus(number);
    QString text = trueMinus(number);
    text += thinSpace;
    text += unit;
    return text;
}

QString rangeText(const QString &low, const QString &high)
{
    const QString from = trueMinus(low);
    const QString to = trueMinus(high);
    const bool spaced = from.startsWith(minusSign) || to.startsWith(minusSign);
    QString text = from;
    if (spaced)
        text += thinSpace;
    text += enDash;
    if (spaced)
        text += thinSpace;
    text += to;
    return text;
}

QString missingMark()
{
    return QString(enDash);
}

} // namespace rickyard::views
