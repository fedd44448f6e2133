#include "models/domain/fire/fuel_words.h"

#include "models/domain/fire/fuel_norm.h"
#include "models/domain/quantities/units.h"

#include <QTimeZone>

#include <algorithm>

namespace rickyard::domain
{

namespace
{

class Words
{
public:
    Words(const Books &books, const FuelAnswer &answer, Instant now, const Wording &wording)
        : m_books(books), m_answer(answer), m_now(now), m_wording(wording), m_locale(wording.locale)
    {
    }

    Headline headline() const;

private:
    using Norms = QVector<const PitNorm *>;

    Headline named(const Norms &named, const Norms &fitted) const;
    Headline calm(const Norms &fitted, const Norms &unfitted) const;
    Headline unknown(const Norms &unfitted) const;
    void explain(Headline &h, const PitNorm &norm) const;
    Reason standingOf(const PitNorm &norm) const;
    void countAssumptions(Headline &h) const;

    QString nameOf(const PitNorm &norm) const { return m_books.pits.value(norm.pit).name; }
    QString heat(Heat h) const
    {
        return show(h, m_wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary, m_locale,
                    0);
    }
    QString percent(double fraction, bool sign) const;
    QString dayOf(Instant t) const;
    Instant litOf(RecordId cook) const { return m_books.cooks.value(cook).lit; }

    const Books &m_books;
    const FuelAnswer &m_answer;
    Instant m_now;
    const Wording &m_wording;
    QLocale m_locale;
};

QString listOf(const QStringList &names)
{
    if (names.size() < 2)
        return names.join(QString());
    return QString(names.first(names.size() - 1).join(QStringLiteral(", ")) +
                   QStringLiteral(" and ") + names.last());
}

QString inWords(int count)
{
    static const QStringList words = {QStringLiteral("no"),    QStringLiteral("one"),
                                      QStringLiteral("two"),   QStringLiteral("three"),
                                      QStringLiteral("four"),  QStringLiteral("five"),
                                      QStringLiteral("six"),   QStringLiteral("seven"),
                                      QStringLiteral("eight"), QStringLiteral("nine")};
    return count < words.size() ? words.at(count) : QString::number(count);
}

QString Words::percent(double fraction, bool sign) const
{
    const QString number = formatNumber(100.0 * fraction, 0, m_locale);
    const bool plus = sign && std::round(100.0 * fraction) > 0;
    return QString((plus ? QStringLiteral("+") : QString()) + number + QChar(0x202F) +
                   QLatin1Char('%'));
}

QString Words::dayOf(Instant t) const
{
    const QTimeZone zone(m_wording.timeZone.toUtf8());
    const QTimeZone used = zone.isValid() ? zone : QTimeZone::utc();
    const QDate day = QDateTime::fromSecsSinceEpoch(t.seconds(), used).date();
    const QDate today = QDateTime::fromSecsSinceEpoch(m_now.seconds(), used).date();
    return m_locale.toString(day, day.year() == today.year() ? QStringLiteral("d MMM")
                                                             : QStringLiteral("d MMM yyyy"));
}

Headline Words::headline() const
{
    Norms fitted;
    Norms unfitted;
    Norms named;
    for (const PitNorm &norm : m_answer.pits) {
        if (m_books.pits.value(norm.pit).retired)
            continue;
        (norm.fitted ? fitted : unfitted) << &norm;
        if (norm.named)
            named << &norm;
    }
    std::stable_sort(named.begin(), named.end(), [](const PitNorm *a, const PitNorm *b) {
        return a->meanExcessOfLast > b->meanExcessOfLast;
    });
    Headline h = fitted.isEmpty()  ? unknown(unfitted)
                 : named.isEmpty() ? calm(fitted, unfitted)
                                   : this->named(named, fitted);
    for (const PitNorm *norm : unfitted)
        h.reasons << Reason{nameOf(*norm),
                            QString(QStringLiteral("no norm yet. ") + norm->why),
                            false,
                            {TableId::Pit, norm->pit}};
    countAssumptions(h);
    return h;
}

Headline Words::named(const Norms &named, const Norms &fitted) const
{
    const PitNorm &worst = *named.first();
    const Suspicion suspicion = suspicionOf(m_answer, worst, m_wording);
    Headline h;
    h.standing = Standing::Act;
    h.sentence = {{nameOf(worst), true},
                  {QStringLiteral(" has burned "), false},
                  {QString(percent(worst.meanExcessOfLast, false) + QStringLiteral(" more")), true},
                  {QString(QStringLiteral(" than its norm over its last ") +
                           QString::number(kLastCooks) + QStringLiteral(" cooks: about ")),
                   false},
                  {QString(heat(worst.extraPerCook) + QStringLiteral(" extra a cook")), true},
                  {QStringLiteral(", since "), false},
                  {dayOf(litOf(worst.sinceCook)), true},
                  {QString(QStringLiteral(". ") + suspicion.sentence), false}};
    QStringList others;
    for (const PitNorm *norm : named)
        if (norm != &worst)
            others << QString(nameOf(*norm) + QStringLiteral(" (") +
                              percent(norm->meanExcessOfLast, true) + QStringLiteral(")"));
    if (!others.isEmpty())
        h.sentence << SentencePart{
            QString(QStringLiteral(" Above the limit too: ") + listOf(others) + QLatin1Char('.')),
            false};
    h.figure =
        QString(QLatin1Char('+') + formatNumber(100.0 * worst.meanExcessOfLast, 0, m_locale));
    h.figureUnit = QStringLiteral("%");
    explain(h, worst);
    h.reasons << suspicion.reasons;
    for (const PitNorm *norm : fitted)
        if (norm != &worst)
            h.reasons << standingOf(*norm);
    return h;
}

void Words::explain(Headline &h, const PitNorm &norm) const
{
    const Link pit{TableId::Pit, norm.pit};
    h.reasons << Reason{QStringLiteral("Mean of its last three cooks"),
                        QString(percent(norm.meanExcessOfLast, true) +
                                QStringLiteral(" over the norm (roughly 95 % sure: ") +
                                percent(norm.lowerExcess, true) + QStringLiteral(" to ") +
                                percent(norm.upperExcess, true) +
                                QStringLiteral("); the limit is ") + percent(kNamedExcess, true)),
                        false, pit};
    h.reasons << Reason{QStringLiteral("Extra wood"),
                        QString(heat(norm.extraPerCook) + QStringLiteral(" a cook, ") +
                                heat(norm.extraOfLast) + QStringLiteral(" over the three")),
                        false, pit};
    h.reasons << Reason{QStringLiteral("Since"),
                        QString(dayOf(litOf(norm.sinceCook)) +
                                QStringLiteral(": the first of the unbroken run of cooks up to the "
                                               "last that lie more than ") +
                                percent(kNamedExcess / 2, false) + QStringLiteral(" over")),
                        false,
                        {TableId::Cook, norm.sinceCook}};
    const QString mended =
        norm.mended ? QString(QStringLiteral(" since the mending of ") + dayOf(*norm.mended))
                    : QString();
    h.reasons << Reason{QStringLiteral("Its norm"),
                        QString(QStringLiteral("from ") + QString::number(norm.cooks) +
                                QStringLiteral(" of its cooks") + mended + QStringLiteral(": ") +
                                heat(norm.start) +
                                QStringLiteral(" for lighting, then by the hour and the degrees "
                                               "above the air")),
                        false, pit};
}

Reason Words::standingOf(const PitNorm &norm) const
{
    return {nameOf(norm),
            QString(percent(norm.meanExcessOfLast, true) +
                    QStringLiteral(" against its norm over its last three cooks (norm from ") +
                    QString::number(norm.cooks) + QStringLiteral(" cooks)")),
            false,
            {TableId::Pit, norm.pit}};
}

Headline Words::calm(const Norms &fitted, const Norms &unfitted) const
{
    QStringList names;
    double highest = -1;
    for (const PitNorm *norm : fitted) {
        names << nameOf(*norm);
        highest = std::max(highest, norm->meanExcessOfLast);
    }
    QStringList waiting;
    for (const PitNorm *norm : unfitted)
        waiting << nameOf(*norm);
    const bool single = fitted.size() == 1;
    const bool below = std::any_of(fitted.begin(), fitted.end(), [](const PitNorm *norm) {
        return norm->meanExcessOfLast < -kNamedExcess;
    });
    QString who = listOf(names);
    if (waiting.isEmpty() && !single)
        who = fitted.size() == 2
                  ? QStringLiteral("both")
                  : QString(QStringLiteral("all ") + inWords(static_cast<int>(fitted.size())));
    Headline h;
    h.standing = highest > kNamedExcess / 2 ? Standing::Watch : Standing::Good;
    // A pit far under its norm does not burn too much, but is not within the limit of it either.
    const QString where = below ? QStringLiteral(" more than ") : QStringLiteral(" within ");
    const QString verb =
        below ? (single ? QStringLiteral(" does not burn") : QStringLiteral(" do not burn"))
              : (single ? QStringLiteral(" is") : QStringLiteral(" are"));
    h.sentence = {
        {QStringLiteral("No pit stands out"), true},
        {QString(QStringLiteral(": ") + who + verb + where), false},
        {percent(kNamedExcess, false), true},
        {below
             ? (single ? QStringLiteral(" above its norm.") : QStringLiteral(" above their norms."))
             : (single ? QStringLiteral(" of its norm.") : QStringLiteral(" of their norms.")),
         false}};
    if (!waiting.isEmpty())
        h.sentence << SentencePart{
            QString(QLatin1Char(' ') + listOf(waiting) +
                    (waiting.size() == 1 ? QStringLiteral(" has no norm yet.")
                                         : QStringLiteral(" have no norm "
                                                          "yet."))),
            false};
    const QString percentText = percent(highest, true);
    h.figure = percentText.left(percentText.size() - 2);
    h.figureUnit = QStringLiteral("% at most");
    for (const PitNorm *norm : fitted)
        h.reasons << standingOf(*norm);
    return h;
}

Headline Words::unknown(const Norms &unfitted) const
{
    Headline h;
    h.figure = QString(QChar(0x2013));
    if (unfitted.isEmpty()) {
        h.sentence = {{QStringLiteral("Add your pits first"), true},
                      {QStringLiteral(", then log each cook from lighting to fire out with every "
                                      "feed."),
                       false}};
        return h;
    }
    const PitNorm *nearest = unfitted.first();
    for (const PitNorm *norm : unfitted)
        if (norm->completeCooks > nearest->completeCooks)
            nearest = norm;
    h.figure = QString::number(nearest->completeCooks);
    h.figureUnit =
        QString(QStringLiteral("of ") + QString::number(kCooksForNorm) + QStringLiteral(" cooks"));
    if (nearest->completeCooks >= kCooksForNorm) {
        h.sentence = {{QStringLiteral("No pit has a norm yet"), true},
                      {QString(QStringLiteral(": the cooks of ") + nameOf(*nearest) +
                               QStringLiteral(" are too alike. Log some of other lengths.")),
                       false}};
        return h;
    }
    h.sentence = {{QStringLiteral("No pit has a norm yet"), true},
                  {QString(QStringLiteral(": it takes ") + QString::number(kCooksForNorm) +
                           QStringLiteral(" finished cooks on one pit with complete data, and ") +
                           nameOf(*nearest) + QStringLiteral(" has ") +
                           QString::number(nearest->completeCooks) +
                           QStringLiteral(". Log every feed, the pit's temperatures and the time "
                                          "the fire is out.")),
                   false}};
    return h;
}

void Words::countAssumptions(Headline &h) const
{
    int assumed = 0;
    QMap<QString, int> lacking;
    for (const CookFuel &cook : m_answer.cooks) {
        if (!cook.finished)
            continue;
        assumed += cook.complete() && !cook.assumptions.isEmpty() ? 1 : 0;
        if (!cook.missing.isEmpty())
            ++lacking[cook.missing.first()];
    }
    if (assumed > 0)
        h.reasons << Reason{QStringLiteral("Cooks that rest on an assumption"),
                            countOf(assumed, QStringLiteral("cook")),
                            true,
                            {}};
    for (auto it = lacking.constBegin(); it != lacking.constEnd(); ++it)
        h.reasons << Reason{QString(countOf(it.value(), QStringLiteral("finished cook")) +
                                    QStringLiteral(" left out")),
                            it.key(),
                            false,
                            {}};
}

} // namespace

QString countOf(int count, const QString &noun)
{
    return QString(QString::number(count) + QLatin1Char(' ') + noun +
                   (count == 1 ? QString() : QStringLiteral("s")));
}

Headline fuelHeadline(const Books &books, const FuelAnswer &answer, Instant now,
                      const Wording &wording)
{
    return Words(books, answer, now, wording).headline();
}

} // namespace rickyard::domain
