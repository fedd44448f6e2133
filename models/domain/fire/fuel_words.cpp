#include "models/domain/fire/fuel_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/fire/diagnosis_words.h"
#include "models/domain/fire/evidence.h"
#include "models/domain/fire/fuel_replay.h"
#include "models/domain/quantities/units.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// Half-way to the limit a pit is worth a second look, without a flag.
constexpr double kWorthALook = 0.5;
constexpr int kFewCooks = 3; // below it a pit's own log hardly speaks yet

class FuelSentence
{
public:
    FuelSentence(const Books &books, const FuelAnswer &answer, Instant now, const Wording &wording)
        : m_books(books), m_answer(answer), m_now(now), m_wording(wording),
          m_locale(localeOf(wording))
    {
    }

    Headline headline() const;

private:
    using Pits = QVector<const PitFuel *>;

    // Pit, wood or weather, in a sentence and with what speaks for it.
    struct Looked {
        QString sentence;
        QVector<Reason> reasons;
    };
    Looked lookedInto(const PitFuel &pit) const;
    Headline named(const Pits &named, const Pits &all) const;
    Headline calm(const Pits &judged, const Pits &unjudged) const;
    Headline unknown(const Pits &pits) const;
    void explain(Headline &h, const PitFuel &pit, const WatchExcess &excess) const;
    Reason standingOf(const PitFuel &pit) const;
    void countAssumptions(Headline &h) const;
    QString alarmWords() const;
    int cooksOfAYear(RecordId pit) const;

    QString nameOf(const PitFuel &pit) const { return m_books.pits.value(pit.pit).name; }
    QString heat(Heat h) const { return heatWords(h, m_wording); }
    QString percent(double fraction, bool sign) const;
    QString day(Instant t) const;
    // "19 seasoned lb, $2.60"
    QString dear(Heat h, RecordId pit) const;

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

QString FuelSentence::percent(double fraction, bool sign) const
{
    const QString number = formatNumber(100.0 * fraction, 0, m_locale);
    const bool plus = sign && std::round(100.0 * fraction) > 0;
    return QString((plus ? QStringLiteral("+") : QString()) + number + QChar(0x202F) +
                   QLatin1Char('%'));
}

QString FuelSentence::day(Instant t) const
{
    const QTimeZone zone = zoneOf(m_wording);
    const QDate day = dayOf(t, zone);
    return m_locale.toString(day, day.year() == dayOf(m_now, zone).year()
                                      ? QStringLiteral("d MMM")
                                      : QStringLiteral("d MMM yyyy"));
}

QString FuelSentence::dear(Heat h, RecordId pit) const
{
    const double cents = centsPerJoule(m_answer, pit) * h.toDouble();
    return cents > 0 ? QString(heat(h) + QStringLiteral(", ") + moneyWords(cents, m_wording))
                     : heat(h);
}

int FuelSentence::cooksOfAYear(RecordId pit) const
{
    constexpr qint64 kYear = 365LL * 86400;
    return static_cast<int>(
        std::count_if(m_answer.cooks.begin(), m_answer.cooks.end(), [&](const CookFuel &cook) {
            return cook.pit == pit && cook.lit.seconds() > m_now.seconds() - kYear;
        }));
}

QString FuelSentence::alarmWords() const
{
    return QString(QStringLiteral("a flag goes up wrongly about once in ") +
                   countOf(m_books.yard().falseAlarmCooks, QStringLiteral("cook")) +
                   QStringLiteral(" of a pit in order (Yard settings)"));
}

Headline FuelSentence::headline() const
{
    Pits judged;
    Pits unjudged;
    Pits named;
    for (const PitFuel &pit : m_answer.pits) {
        if (m_books.pits.value(pit.pit).retired)
            continue;
        (pit.cooksEver > 0 ? judged : unjudged) << &pit;
        if (pit.named() && pit.climb)
            named << &pit;
    }
    std::stable_sort(named.begin(), named.end(), [](const PitFuel *a, const PitFuel *b) {
        return a->climb->percent > b->climb->percent;
    });
    Headline h = judged.isEmpty()  ? unknown(unjudged)
                 : named.isEmpty() ? calm(judged, unjudged)
                                   : this->named(named, judged);
    for (const PitFuel *pit : unjudged)
        h.reasons << Reason{
            nameOf(*pit), QStringLiteral("no judged cook yet"), false, {TableId::Pit, pit->pit}};
    countAssumptions(h);
    return h;
}

Headline FuelSentence::named(const Pits &named, const Pits &all) const
{
    const PitFuel &worst = *named.first();
    const WatchExcess &excess = *worst.climb;
    const Looked looked = lookedInto(worst);
    Headline h;
    h.standing = Standing::Act;
    h.sentence = {
        {nameOf(worst), true},
        {QStringLiteral(" burns "), false},
        {QString(percent(excess.percent / 100.0, false) + QStringLiteral(" more")), true},
        {QString(QStringLiteral(" than it should (90 % sure: ") +
                 percent(excess.lower / 100.0, false) + QStringLiteral(" to ") +
                 percent(excess.upper / 100.0, false) + QStringLiteral(")")),
         false},
        {QStringLiteral(", since "), false},
        {day(m_books.cooks.value(excess.since).lit), true},
        {QStringLiteral(": about "), false},
        {QString(dear(Heat::rounded(excess.joulesPerCook), worst.pit) + QStringLiteral(" a cook")),
         true},
        {QString(QStringLiteral(". ") + looked.sentence), false}};
    QStringList others;
    for (const PitFuel *pit : named)
        if (pit != &worst)
            others << QString(nameOf(*pit) + QStringLiteral(" (") +
                              percent(pit->climb->percent / 100.0, true) + QStringLiteral(")"));
    if (!others.isEmpty())
        h.sentence << SentencePart{
            QString(QStringLiteral(" Flagged too: ") + listOf(others) + QLatin1Char('.')), false};
    h.figure = QString(QLatin1Char('+') + formatNumber(excess.percent, 0, m_locale));
    h.figureUnit = QStringLiteral("%");
    explain(h, worst, excess);
    h.reasons << looked.reasons;
    for (const PitFuel *pit : all)
        if (pit != &worst)
            h.reasons << standingOf(*pit);
    return h;
}

FuelSentence::Looked FuelSentence::lookedInto(const PitFuel &pit) const
{
    Looked looked;
    const auto question = questionOf(m_answer, pit.pit);
    if (!question)
        return looked;
    const Diagnosis diagnosis = diagnosisOf(evidenceOf(m_books, m_answer), *question);
    if (diagnosis.empty())
        return looked;
    DiagnosisNames names;
    names.pit = nameOf(pit);
    for (const Lot &lot : m_books.lots)
        names.lots.insert(lot.id, lot.name);
    const Cause &first = diagnosis.causes.first();
    looked.sentence =
        QString(QStringLiteral("Likeliest: ") + causeName(first, names) + QStringLiteral(" (") +
                percent(first.probability, false) + QLatin1Char(')'));
    const auto checks = checksOf(first.kind);
    looked.sentence += checks.isEmpty()
                           ? QStringLiteral(".")
                           : QString(QStringLiteral(". Look first: ") + checks.first().words);
    constexpr double kWorthNaming = 0.05;
    for (const Cause &cause : diagnosis.causes)
        if (cause.probability >= kWorthNaming)
            looked.reasons << Reason{QString(causeName(cause, names) + QStringLiteral(", ") +
                                             percent(cause.probability, false)),
                                     evidenceWords(cause, names, m_wording), false,
                                     cause.lot != 0 ? Link{TableId::Lot, cause.lot}
                                                    : Link{TableId::Pit, pit.pit}};
    for (qsizetype i = 0; i < checks.size() && i < 3; ++i)
        looked.reasons << Reason{
            i == 0 ? QStringLiteral("Look at") : QStringLiteral("Then at"),
            QString(checks.at(i).words + QStringLiteral(" (") + checksBasis() + QLatin1Char(')')),
            false,
            {}};
    return looked;
}

void FuelSentence::explain(Headline &h, const PitFuel &pit, const WatchExcess &excess) const
{
    const Link link{TableId::Pit, pit.pit};
    h.reasons << Reason{
        QStringLiteral("How sure"),
        QString(QStringLiteral("its sum of scores stands at ") + formatNumber(pit.up, 1, m_locale) +
                QStringLiteral(", the limit is ") + formatNumber(pit.limit, 1, m_locale) +
                QStringLiteral("; ") + alarmWords()),
        false, link};
    h.reasons << Reason{QStringLiteral("Since"),
                        QString(day(m_books.cooks.value(excess.since).lit) + QStringLiteral(", ") +
                                countOf(excess.cooks, QStringLiteral("cook")) +
                                QStringLiteral(" ago by the likeliest start of the shift")),
                        false,
                        {TableId::Cook, excess.since}};
    const int year = cooksOfAYear(pit.pit);
    h.reasons << Reason{
        QStringLiteral("Extra wood"),
        QString(dear(Heat::rounded(excess.joulesPerCook), pit.pit) + QStringLiteral(" a cook; ") +
                dear(Heat::rounded(excess.joulesPerCook * year), pit.pit) +
                QStringLiteral(" in a year of ") + countOf(year, QStringLiteral("such cook"))),
        false, link};
    const QString mended =
        pit.mended ? QString(QStringLiteral(" since the mending of ") + day(*pit.mended))
                   : QString();
    h.reasons << Reason{QStringLiteral("What it should burn"),
                        QString(QStringLiteral("by its size, its hours and weather, and ") +
                                countOf(pit.cooks, QStringLiteral("cook")) +
                                QStringLiteral(" of its own") + mended + QStringLiteral("; ") +
                                countOf(pit.heldBack, QStringLiteral("cook")) +
                                QStringLiteral(" held back so that the fault is not learned as "
                                               "usual")),
                        false, link};
}

Reason FuelSentence::standingOf(const PitFuel &pit) const
{
    QString words = QString(percent(pit.excessOfLast, true) + QStringLiteral(" over its last ") +
                            countOf(static_cast<int>(pit.last.size()), QStringLiteral("cook")) +
                            QStringLiteral("; ") + percent(pit.nearness(), false) +
                            QStringLiteral(" of the way to a flag"));
    if (pit.flag == WatchFlag::Less && pit.fall)
        words = QString(QStringLiteral("burns ") + percent(-pit.fall->percent / 100.0, false) +
                        QStringLiteral(" less than it should since ") +
                        day(m_books.cooks.value(pit.fall->since).lit) +
                        QStringLiteral(": mended, or feeds not written down"));
    if (pit.last.isEmpty())
        words = QStringLiteral("no cook yet since its mending");
    return {nameOf(pit), words, false, {TableId::Pit, pit.pit}};
}

Headline FuelSentence::calm(const Pits &judged, const Pits &unjudged) const
{
    const PitFuel *nearest =
        *std::max_element(judged.begin(), judged.end(), [](const PitFuel *a, const PitFuel *b) {
            return a->nearness() < b->nearness();
        });
    Headline h;
    const bool look = nearest->nearness() >= kWorthALook && nearest->climb;
    h.standing = look ? Standing::Watch : Standing::Good;
    h.sentence = {{QStringLiteral("No pit stands out"), true}};
    if (look) {
        h.sentence << SentencePart{QStringLiteral(". Nearest to a flag is "), false}
                   << SentencePart{nameOf(*nearest), true}
                   << SentencePart{QString(QStringLiteral(", ") +
                                           percent(nearest->climb->percent / 100.0, true) +
                                           QStringLiteral(" over ") +
                                           countOf(nearest->climb->cooks, QStringLiteral("cook")) +
                                           QStringLiteral(": it may be chance.")),
                                   false};
    } else {
        h.sentence << SentencePart{QString(QStringLiteral(": over their last ") +
                                           QString::number(kLastCooks) + QStringLiteral(" cooks ")),
                                   false};
        QStringList each;
        for (const PitFuel *pit : judged)
            each << QString(nameOf(*pit) + QLatin1Char(' ') + percent(pit->excessOfLast, true));
        h.sentence << SentencePart{listOf(each), true}
                   << SentencePart{QStringLiteral(" against what was to be expected."), false};
    }
    const auto few = std::count_if(judged.begin(), judged.end(),
                                   [](const PitFuel *pit) { return pit->cooksEver < kFewCooks; });
    if (few > 0)
        h.sentence << SentencePart{QStringLiteral(" The log is short yet, so the ranges are wide."),
                                   false};
    QStringList waiting;
    for (const PitFuel *pit : unjudged)
        waiting << nameOf(*pit);
    if (!waiting.isEmpty())
        h.sentence << SentencePart{
            QString(QLatin1Char(' ') + listOf(waiting) +
                    (waiting.size() == 1 ? QStringLiteral(" has no judged cook yet.")
                                         : QStringLiteral(" have no judged cook yet."))),
            false};
    const QString text = percent(nearest->excessOfLast, true);
    h.figure = text.left(text.size() - 2);
    h.figureUnit = QStringLiteral("%");
    for (const PitFuel *pit : judged)
        h.reasons << standingOf(*pit);
    h.reasons << Reason{QStringLiteral("False flags"), alarmWords(), false, {}};
    return h;
}

Headline FuelSentence::unknown(const Pits &pits) const
{
    Headline h;
    if (pits.isEmpty()) {
        h.sentence = {{QStringLiteral("Add your pits first"), true},
                      {QStringLiteral(": each with its size, then log the cooks."), false}};
        return h;
    }
    h.figure = QStringLiteral("0");
    h.figureUnit = QStringLiteral("cooks judged");
    h.sentence = {{QStringLiteral("No cook can be judged yet"), true},
                  {QStringLiteral(". Log every feed, the pit's temperatures and the time the fire "
                                  "is out; the first finished cook is judged by the pit's size, "
                                  "each further one sharpens it."),
                   false}};
    return h;
}

void FuelSentence::countAssumptions(Headline &h) const
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
                            QString(countOf(assumed, QStringLiteral("cook")) +
                                    QStringLiteral(", counted for less")),
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
    return FuelSentence(books, answer, now, wording).headline();
}

} // namespace rickyard::domain
