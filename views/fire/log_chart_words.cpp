#include "views/fire/log_chart_words.h"

#include "views/theme/number_style.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kMostPitsInWords = 4;
constexpr double kStepsInWords = 10; // degrees or units of wind in one step of the sentence

QString logText(const char *text)
{
    return QCoreApplication::translate("LogChart", text);
}

QString joinedByAnd(const QStringList &parts)
{
    if (parts.size() < 2)
        return parts.join(QString());
    return logText("%1 and %2")
        .arg(parts.mid(0, parts.size() - 1).join(QStringLiteral(", ")), parts.last());
}

QVector<UseLine> mostCooksFirst(QVector<UseLine> lines)
{
    std::stable_sort(lines.begin(), lines.end(),
                     [](const UseLine &a, const UseLine &b) { return a.cooks > b.cooks; });
    return lines.mid(0, kMostPitsInWords);
}

} // namespace

LogChartWords::LogChartWords(const Books &books, UseAgainst against)
    : m_books(books), m_words(books), m_against(against)
{
}

double LogChartWords::across(double base) const
{
    switch (m_against) {
    case UseAgainst::Hours:
        return base;
    case UseAgainst::Outside: {
        const Unit &unit = m_words.unit(Dimension::Temperature);
        return (1000.0 * base - unit.offset) / unit.scale;
    }
    case UseAgainst::Wind:
        break;
    }
    return 1000.0 * base / m_words.unit(Dimension::Speed).scale;
}

double LogChartWords::use(double joules) const
{
    return joules / m_words.unit(Dimension::Heat).scale;
}

QString LogChartWords::acrossTitle() const
{
    switch (m_against) {
    case UseAgainst::Hours:
        return logText("Lighting to fire out, h");
    case UseAgainst::Outside:
        return logText("Mean outside temperature, %1")
            .arg(m_words.unit(Dimension::Temperature).symbol);
    case UseAgainst::Wind:
        break;
    }
    return logText("Mean wind, %1").arg(m_words.unit(Dimension::Speed).symbol);
}

QString LogChartWords::useTitle() const
{
    const QString unit = m_words.unit(Dimension::Heat).symbol;
    return m_against == UseAgainst::Hours ? logText("Wood used, %1").arg(unit)
                                          : logText("Wood used, %1 an hour").arg(unit);
}

QString LogChartWords::useText(double joules) const
{
    const QString text = withUnit(amount(use(joules)), m_words.unit(Dimension::Heat).symbol);
    return m_against == UseAgainst::Hours ? text : logText("%1 an hour").arg(text);
}

QString LogChartWords::pitName(RecordId pit) const
{
    return m_books.pits.value(pit).name;
}

double LogChartWords::perStep(double slope) const
{
    const double shown = use(slope);
    switch (m_against) {
    case UseAgainst::Hours:
        return shown;
    case UseAgainst::Outside: // colder is what takes more
        return -shown * kStepsInWords * m_words.unit(Dimension::Temperature).scale / 1000.0;
    case UseAgainst::Wind:
        break;
    }
    return shown * kStepsInWords * m_words.unit(Dimension::Speed).scale / 1000.0;
}

QString LogChartWords::amount(double value) const
{
    return trueMinus(formatNumber(value, std::abs(value) < 9.95 ? 1 : 0, m_words.locale()));
}

QVector<SentencePart> LogChartWords::sentence(const QVector<UseLine> &all) const
{
    QVector<UseLine> drawn;
    QStringList flat;
    for (const UseLine &line : mostCooksFirst(all)) {
        if (!line.drawn())
            continue;
        if (line.flat())
            flat << pitName(line.pit);
        else
            drawn << line;
    }
    if (drawn.isEmpty() && flat.isEmpty())
        return {{logText("No line can be drawn yet: a pit needs %1 finished cooks that differ in "
                         "this.")
                     .arg(kLeastCooksForLine)}};
    const QString lead =
        m_against == UseAgainst::Hours ? logText("Each further hour took ")
        : m_against == UseAgainst::Outside
            ? logText("Ten degrees colder took ")
            : logText("Ten %1 more wind took ").arg(m_words.unit(Dimension::Speed).symbol);
    QVector<SentencePart> parts;
    for (qsizetype i = 0; i < drawn.size(); ++i) {
        const double value = perStep(drawn.at(i).slope.centre);
        const bool hourly = m_against != UseAgainst::Hours;
        QString figure = amount(std::abs(value));
        if (i == 0)
            figure = withUnit(figure, m_words.unit(Dimension::Heat).symbol);
        parts.append({i == 0                  ? lead
                      : i + 1 == drawn.size() ? logText(" and ")
                                              : QStringLiteral(", ")});
        parts.append({figure, true});
        QString tail = i == 0 && hourly ? logText(" an hour") : QString();
        if (hourly && (i == 0 || value < 0))
            tail += value < 0 ? logText(" less") : logText(" more");
        parts.append({QString(tail + logText(" on %1").arg(pitName(drawn.at(i).pit)))});
    }
    if (!flat.isEmpty()) {
        const QString what = m_against == UseAgainst::Hours     ? logText("the hours")
                             : m_against == UseAgainst::Outside ? logText("the cold")
                                                                : logText("the wind");
        const QString pits = joinedByAnd(flat);
        parts.append({drawn.isEmpty()
                          ? logText("Nothing can be told yet of what %1 took on %2").arg(what, pits)
                          : logText("; nothing can be told yet on %1").arg(pits)});
    }
    parts.append({QStringLiteral(".")});
    return parts;
}

QString LogChartWords::basis(const QVector<UseLine> &all, int leftOut) const
{
    const QString besides = m_against == UseAgainst::Hours
                                ? logText("the weather, the food, the wood")
                                : logText("the hours, the food, the wood");
    QStringList lines{
        logText("A plain straight line through each pit's own cooks. What else changed along with "
                "it (%1) is not taken out, so it is not the expected use.")
            .arg(besides)};
    QStringList slopes;
    for (const UseLine &line : mostCooksFirst(all)) {
        if (!line.drawn()) {
            slopes << logText("%1: %2, it has %3").arg(pitName(line.pit), line.why).arg(line.cooks);
            continue;
        }
        const double a = perStep(line.slope.lower);
        const double b = perStep(line.slope.upper);
        slopes << logText("%1 %2, %3 cooks")
                      .arg(pitName(line.pit),
                           rangeText(amount(std::min(a, b)), amount(std::max(a, b))))
                      .arg(line.cooks);
    }
    if (!slopes.isEmpty())
        lines << logText("90 % sure of it: %1.").arg(slopes.join(QStringLiteral("; ")));
    if (leftOut > 0)
        lines << (leftOut == 1 ? logText("1 cook is left out, since that is not known of it.")
                               : logText("%1 cooks are left out, since that is not known of them.")
                                     .arg(leftOut));
    return lines.join(QLatin1Char(' '));
}

QString LogChartWords::cook(const CookFuel &fuel) const
{
    const Cook record = m_books.cooks.value(fuel.cook);
    const double length = hours(fuel.length);
    const QString unit = m_words.unit(Dimension::Heat).symbol;
    QStringList air;
    if (fuel.meanOutside)
        air << logText("%1 outside").arg(m_words.temperature(*fuel.meanOutside).text());
    if (fuel.meanWind)
        air << logText("wind %1").arg(formatQuantity(
            fuel.meanWind->base(), m_words.unit(Dimension::Speed), m_words.locale()));
    QString text =
        logText("%1, %2 on %3\n%4 in %5 h, %6 an hour")
            .arg(cookTitle(m_books, record), m_words.day(fuel.lit), pitName(fuel.pit),
                 m_words.heat(fuel.netHeat).text(), formatNumber(length, 1, m_words.locale()),
                 withUnit(amount(use(fuel.netHeat.toDouble()) / length), unit));
    if (!air.isEmpty())
        text += QString(QLatin1Char('\n') + air.join(QStringLiteral(", ")));
    if (!fuel.assumptions.isEmpty())
        text += QString(QLatin1Char('\n') + logText("Rests on something assumed."));
    return text;
}

} // namespace rickyard::views
