#include "models/domain/wood/offer_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/moisture.h"

#include <cmath>

namespace rickyard::domain {

namespace {

// From this share on the cheapest counts as settled: an 80 % chance is what the program calls sure
// enough elsewhere, too.
constexpr double kSettledShare = 0.80;

Link linkTo(const OfferLine &line)
{
    return {TableId::Offer, line.offer};
}

QString nameWithin(const QString &name)
{
    return name.isEmpty() ? QStringLiteral("a supplier without a name") : name;
}

void addReasons(Headline &headline, const OfferComparison &comparison, const Wording &wording)
{
    const QVector<OfferLine> &lines = comparison.lines;
    if (comparison.priced() > 1) {
        const OfferLine &next = lines.at(1);
        headline.reasons << Reason{QStringLiteral("Next"),
                                   QString(offerName(next) + QStringLiteral(", ") +
                                           heatPriceWords(next.centsPerMillionBtu, wording) +
                                           QStringLiteral(", ") + cheapestWords(next.cheapest)),
                                   false, linkTo(next)};
    }
    for (const OfferLine &line : lines)
        if (line.priced())
            for (const QString &note : line.notes)
                headline.reasons << Reason{nameWithin(line.supplier), note, true, linkTo(line)};
        else
            headline.reasons << Reason{
                QStringLiteral("Not compared"),
                QString(offerName(line) + QStringLiteral(". ") + line.refused), false,
                linkTo(line)};
    if (comparison.priced() > 0)
        headline.reasons << Reason{
            QStringLiteral("What varied"),
            QString(formatNumber(comparison.draws, 0, localeOf(wording)) +
                    QStringLiteral(" tries: 70 to 90 ft³ of solid wood a cord, 40 to 50 % of a "
                                   "loose load, density ±5 %, gross heat ±3 %, and each "
                                   "supplier's record of short and wet loads")),
            false,
            {}};
}

} // namespace

QString offerName(const OfferLine &line)
{
    const QString wood =
        line.wood.isEmpty() ? QStringLiteral("wood of no species") : line.wood.toLower();
    return QString(nameWithin(line.supplier) + QStringLiteral(": ") + line.amount +
                   QStringLiteral(" of ") + wood);
}

QString heatPriceWords(double centsPerMillionBtu, const Wording &wording)
{
    return QString(moneyWords(centsPerMillionBtu, wording) + QStringLiteral(" a million Btu net"));
}

QString cheapestWords(double share)
{
    if (share <= 0)
        return QStringLiteral("never the cheapest");
    if (share >= 1.0 - 1e-9)
        return QStringLiteral("cheapest in every try");
    if (share < 0.01)
        return QStringLiteral("cheapest in fewer than 1 of 100 tries");
    const int of = std::min(99, static_cast<int>(std::lround(100.0 * share)));
    return QString(QStringLiteral("cheapest in ") + QString::number(of) +
                   QStringLiteral(" of 100 tries"));
}

Headline offerHeadline(const OfferComparison &comparison, const Wording &wording)
{
    Headline headline;
    const int priced = comparison.priced();
    if (priced == 0) {
        headline.sentence << SentencePart{
            comparison.lines.isEmpty()
                ? QStringLiteral("No open offer. Enter what suppliers ask, and they stand here by "
                                 "the price of their heat.")
                : QStringLiteral("None of the open offers can be compared yet."),
            false};
        addReasons(headline, comparison, wording);
        return headline;
    }
    const OfferLine &best = comparison.lines.first();
    headline.figure = moneyWords(best.centsPerMillionBtu, wording);
    headline.figureUnit = QStringLiteral("a million Btu net");
    const SentencePart price{heatPriceWords(best.centsPerMillionBtu, wording), true};
    if (priced == 1) {
        headline.sentence << SentencePart{offerName(best), false}
                          << SentencePart{QStringLiteral(" comes to "), false} << price
                          << SentencePart{QStringLiteral("; there is no other to compare it with."),
                                          false};
        addReasons(headline, comparison, wording);
        return headline;
    }
    const bool settled = best.cheapest >= kSettledShare;
    headline.standing = settled ? Standing::Good : Standing::Watch;
    QString tail = cheapestWords(best.cheapest);
    tail.replace(QStringLiteral("cheapest in"), QStringLiteral("it stays cheapest in"));
    headline.sentence << SentencePart{offerName(best), false}
                      << SentencePart{QStringLiteral(" is cheapest at "), false} << price
                      << SentencePart{QString(QStringLiteral("; ") + tail), false}
                      << SentencePart{settled ? QStringLiteral(".")
                                              : QStringLiteral(", which does not settle it."),
                                      false};
    addReasons(headline, comparison, wording);
    return headline;
}

} // namespace rickyard::domain
