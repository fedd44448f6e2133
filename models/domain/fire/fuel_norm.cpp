#include "models/domain/fire/fuel_norm.h"

#include <QTimeZone>

#include <algorithm>
#include <array>

namespace rickyard::domain
{

namespace
{

using CookPointers = QVector<CookFuel *>;

Eigen::VectorXd rowOf(bool coldColumn, double degreeHours, StartKind start)
{
    Eigen::VectorXd row(coldColumn ? 2 : 1);
    row(0) = degreeHours;
    if (coldColumn)
        row(1) = start == StartKind::Cold ? 1.0 : 0.0;
    return row;
}

std::optional<NormLine> tryLine(const CookPointers &cooks, bool lighting, bool coldStart)
{
    Eigen::MatrixXd design(cooks.size(), coldStart ? 2 : 1);
    Eigen::VectorXd heat(cooks.size());
    for (qsizetype i = 0; i < cooks.size(); ++i) {
        design.row(i) = rowOf(coldStart, *cooks.at(i)->degreeHours, cooks.at(i)->start);
        heat(i) = cooks.at(i)->netHeat.toDouble();
    }
    auto fit = statistics::leastSquares(
        design, heat, lighting ? statistics::Intercept::Fitted : statistics::Intercept::None);
    if (!fit || fit->coefficients.minCoeff() < 0)
        return std::nullopt;
    const double perDegreeHour = fit->coefficients(lighting ? 1 : 0);
    return perDegreeHour > 0 ? std::optional(NormLine{fit.value(), lighting, coldStart})
                             : std::nullopt;
}

std::optional<NormLine> fitLine(const CookPointers &cooks)
{
    const auto cold = std::count_if(cooks.begin(), cooks.end(),
                                    [](const CookFuel *c) { return c->start == StartKind::Cold; });
    const bool bothKinds = cold >= 2 && cooks.size() - cold >= 2;
    struct Form {
        bool lighting;
        bool coldStart;
    };
    constexpr std::array<Form, 4> forms = {
        {{true, true}, {true, false}, {false, true}, {false, false}}};
    for (const Form &form : forms) {
        if (form.coldStart && !bothKinds)
            continue;
        if (auto line = tryLine(cooks, form.lighting, form.coldStart))
            return line;
    }
    return std::nullopt;
}

bool knownGood(const Books &books, const CookFuel &cook)
{
    // Days are the crew's own, so they are taken in the yard's zone.
    const QTimeZone zone(books.yard().timeZone.toUtf8());
    const QDate day =
        QDateTime::fromSecsSinceEpoch(cook.lit.seconds(), zone.isValid() ? zone : QTimeZone::utc())
            .date();
    return std::any_of(books.knownGood.begin(), books.knownGood.end(), [&](const KnownGood &k) {
        return k.pit == cook.pit && k.from <= day && (!k.to.isValid() || day <= k.to);
    });
}

CookPointers learnedFrom(const Books &books, const CookPointers &complete)
{
    CookPointers good;
    for (CookFuel *cook : complete)
        if (knownGood(books, *cook))
            good << cook;
    if (good.size() >= kCooksForNorm)
        return good;
    return complete.first(complete.size() - kLastCooks);
}

void foretell(const NormLine &line, CookFuel &cook)
{
    if (!cook.degreeHours || *cook.degreeHours <= 0)
        return;
    const auto interval = predictedHeat(line, *cook.degreeHours, cook.start);
    if (!interval || interval->centre <= 0)
        return;
    cook.expected = Heat::rounded(interval->centre);
    cook.lower = Heat::rounded(std::max(0.0, interval->lower));
    cook.upper = Heat::rounded(interval->upper);
    if (cook.complete())
        cook.excess = cook.netHeat.toDouble() / interval->centre - 1.0;
}

// Half of a rough 95 % interval of the mean excess: the cooks' own scatter averages out over them,
// the uncertainty of the line does not, since they share it.
double halfWidth(const NormLine &line, const CookPointers &last)
{
    constexpr double level = 0.95;
    double own = 0;
    double shared = 0;
    double expected = 0;
    for (const CookFuel *cook : last) {
        const auto row = rowOf(line.coldStart, *cook->degreeHours, cook->start);
        const auto single = statistics::predict(line.fit, row, level);
        const auto mean = statistics::meanResponse(line.fit, row, level);
        if (!single || !mean)
            return 0;
        const double s = single->upper - single->centre;
        const double m = mean->upper - mean->centre;
        own += s * s - m * m;
        shared += m * m;
        expected += cook->expected->toDouble();
    }
    const auto n = static_cast<double>(last.size());
    return std::sqrt(std::max(0.0, own / (n * n)) + shared / n) / (expected / n);
}

void judge(const NormLine &line, const CookPointers &judged, PitNorm &norm)
{
    if (judged.size() < kLastCooks)
        return;
    const CookPointers last = judged.last(kLastCooks);
    for (const CookFuel *cook : last) {
        norm.meanExcessOfLast += *cook->excess / kLastCooks;
        norm.extraOfLast += cook->netHeat - *cook->expected;
    }
    norm.extraPerCook = norm.extraOfLast * (1.0 / kLastCooks);
    const double half = halfWidth(line, last);
    norm.lowerExcess = norm.meanExcessOfLast - half;
    norm.upperExcess = norm.meanExcessOfLast + half;
    norm.named = norm.meanExcessOfLast > kNamedExcess;
    if (!norm.named)
        return;
    qsizetype first = judged.size();
    while (first > 0 && *judged.at(first - 1)->excess > kNamedExcess / 2)
        --first;
    // The mean is high although the last cook by itself is not: the three are the run.
    if (first == judged.size())
        first = judged.size() - kLastCooks;
    norm.sinceCook = judged.at(first)->cook;
}

void describe(const NormLine &line, PitNorm &norm)
{
    const Eigen::VectorXd &b = line.fit.coefficients;
    Eigen::Index i = 0;
    if (line.lighting)
        norm.start = Heat::rounded(b(i++));
    norm.perDegreeHour = Heat::rounded(b(i++));
    if (line.coldStart)
        norm.coldExtra = Heat::rounded(b(i));
    norm.residualSd = line.fit.residualSd;
}

QString tooFew(const PitNorm &norm)
{
    const QString have = QString(QString::number(norm.completeCooks) + QStringLiteral(" of ") +
                                 QString::number(kCooksForNorm));
    return QString(QStringLiteral("It has ") + have +
                   (norm.mended ? QStringLiteral(" finished cooks with complete data since it was "
                                                 "mended.")
                                : QStringLiteral(" finished cooks with complete data.")));
}

} // namespace

std::optional<statistics::Interval> predictedHeat(const NormLine &line, double degreeHours,
                                                  StartKind start)
{
    const auto interval =
        statistics::predict(line.fit, rowOf(line.coldStart, degreeHours, start), kPredictionLevel);
    return interval ? std::optional(interval.value()) : std::nullopt;
}

std::optional<Instant> lastMending(const Books &books, RecordId pit, Instant now)
{
    std::optional<Instant> last;
    for (const Finding &finding : books.findings) {
        if (finding.pit != pit || finding.state != FindingState::Mended || !finding.mendedBy)
            continue;
        const auto visit = books.visits.constFind(*finding.mendedBy);
        if (visit == books.visits.constEnd() || visit->state != VisitState::Done)
            continue;
        const Instant when = visit->end.value_or(visit->start);
        if (when <= now && (!last || when > *last))
            last = when;
    }
    return last;
}

PitNorm normOf(const Books &books, const Pit &pit, QVector<CookFuel> &cooks, Instant now)
{
    PitNorm norm;
    norm.pit = pit.id;
    norm.mended = lastMending(books, pit.id, now);
    CookPointers all;
    CookPointers complete;
    for (CookFuel &cook : cooks) {
        if (cook.pit != pit.id)
            continue;
        all << &cook;
        if (cook.complete() && (!norm.mended || cook.lit >= *norm.mended))
            complete << &cook;
    }
    norm.completeCooks = static_cast<int>(complete.size());
    if (complete.size() < kCooksForNorm) {
        norm.why = tooFew(norm);
        return norm;
    }
    const CookPointers learned = learnedFrom(books, complete);
    const std::optional<NormLine> line = fitLine(learned);
    if (!line) {
        norm.why = QStringLiteral("Its cooks do not show yet how its use rises with time and cold: "
                                  "more cooks of different length are needed.");
        return norm;
    }
    norm.fitted = true;
    norm.cooks = static_cast<int>(learned.size());
    norm.line = std::make_shared<const NormLine>(*line);
    for (CookFuel *cook : learned)
        cook->inNorm = true;
    for (CookFuel *cook : all)
        foretell(*line, *cook);
    describe(*line, norm);
    CookPointers judged;
    for (CookFuel *cook : complete)
        if (cook->excess)
            judged << cook;
    judge(*line, judged, norm);
    norm.named = norm.named && !pit.retired;
    return norm;
}

} // namespace rickyard::domain
