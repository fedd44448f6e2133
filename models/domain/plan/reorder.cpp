#include "models/domain/plan/reorder.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/order_question.h"
#include "models/domain/plan/reorder_point.h"
#include "models/domain/plan/reorder_words.h"
#include "models/domain/plan/wood_choices.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

double acceptedBy(const Books &books, const WoodAnswerSettings &settings)
{
    // The yard's field allows 0 and 1, of which neither can be planned for.
    constexpr double kLeast = 0.001;
    return std::clamp(settings.acceptedRisk.value_or(fraction(books.yard().acceptedRisk)), kLeast,
                      1.0 - kLeast);
}

void fillRisks(WoodAnswer &answer, const BookQuestion &asked, const OrderAnswer &found)
{
    for (qsizetype i = 0; i < asked.events.size(); ++i) {
        const AskedEvent &event = asked.events.at(i);
        WoodRisk risk;
        risk.event = event.event;
        risk.plannedCook = event.plannedCook;
        risk.day = event.day;
        risk.name = event.name;
        risk.farOff = answer.planner->isFarOff(static_cast<int>(i));
        risk.nextSeason = answer.planner->isNextSeason(static_cast<int>(i));
        answer.risks << risk;
    }
    answer.risks = withFigures(answer.risks, found.nothing);
    answer.worst = found.nothingWorst;
    answer.needed = found.needed;
    if (answer.worst >= 0)
        answer.missing = answer.risks.at(answer.worst).whenShort;
    for (const WoodRisk &risk : answer.risks)
        if (!risk.farOff && !risk.nextSeason && risk.chance > answer.acceptedRisk) {
            answer.firstShortEvent = risk.event;
            answer.firstShortCook = risk.plannedCook;
            break;
        }
}

// Needs beyond what is looked at stand last and have no figure.
void fillUses(WoodAnswer &answer, const StockOutcome &nothing)
{
    const std::vector<StockNeed> &needs = answer.planner->paths().plan().needs;
    for (size_t i = 0; i < needs.size(); ++i) {
        PlannedUse &use = answer.uses[static_cast<qsizetype>(i)];
        use.chanceShort = nothing.needChance.at(i);
        use.shortOf = use.chanceShort > answer.acceptedRisk;
        use.stockAfter =
            heatFromSeasonedPounds(nothing.course.at(static_cast<size_t>(needs[i].day)).middle);
        use.shortfall = answer.risks.at(needs[i].event).whenShort;
    }
}

qsizetype courseDays(const WoodAnswer &answer)
{
    qint64 last = kCourseDays;
    for (const WoodRisk &risk : answer.risks)
        if (!risk.farOff && !risk.nextSeason)
            last = std::max(last, answer.today.daysTo(risk.day));
    return last + 1;
}

void fillOrder(WoodAnswer &answer)
{
    if (answer.orders.isEmpty())
        return;
    const WoodOrderChoice &first = answer.orders.first();
    answer.orderBy = first.orderBy;
    answer.supplier = first.supplier;
    answer.species = first.species;
    answer.units = first.units;
    answer.amount = first.stacked;
    answer.amountInUnit = first.amount;
    answer.leadTime = Duration::ofBase(86400LL * answer.sources.at(first.source).leadDays);
}

// By the lead time of what is proposed, else of the first dry source.
void checkWithTextbook(WoodAnswer &answer, const BookQuestion &asked, const Wording &wording)
{
    int source = answer.orders.isEmpty() ? -1 : answer.orders.first().source;
    for (int i = 0; source < 0 && i < answer.sources.size(); ++i)
        source = answer.sources.at(i).green ? -1 : i;
    if (source < 0 || !(asked.dailyNeed > 0))
        return;
    const StockOffer &load = asked.question.offers.at(static_cast<size_t>(source)).load;
    const auto checked =
        checkReorderPoint(asked.dailyNeed, asked.dailyNeedSd, load.leadDays, load.never,
                          answer.acceptedRisk, asked.question.seed, asked.question.paths);
    if (!checked)
        return;
    ReorderPointCheck &check = answer.crossCheck;
    check.known = true;
    check.point = heatFromSeasonedPounds(checked.value().point);
    check.simulated = checked.value().simulated;
    check.misleading = checked.value().misleading;
    check.note = checked.value().note;
    const bool under = answer.stock.readyHeat < check.point;
    check.words = QString(QStringLiteral("order when the dry stock is under ") +
                          heatWords(check.point, wording) +
                          (under ? QStringLiteral("; it is under it now")
                                 : QStringLiteral("; it is not under it yet")));
}

// The books hold a number that cannot be drawn.
void refuse(WoodAnswer &answer, const Problems &problems)
{
    answer.notes << joined(problems);
    answer.headline.standing = Standing::Unknown;
    answer.headline.sentence << SentencePart{joined(problems), false};
    answer.headline.figure = QStringLiteral("–");
}

} // namespace

WoodAnswer woodAnswerFrom(const Books &books, const QVector<PlannedUse> &uses,
                          const FuelAnswer &fuel,
                          const QMap<RecordId, SeasoningForecast> &seasoning, Instant now,
                          const Wording &wording, const WoodAnswerSettings &settings)
{
    WoodAnswer answer;
    answer.stock = stockAt(books, now);
    answer.uses = uses;
    answer.acceptedRisk = acceptedBy(books, settings);
    const QuestionGrounds grounds{books, uses, fuel, seasoning, answer.stock, now, wording};
    BookQuestion asked = orderQuestion(grounds, answer.acceptedRisk);
    asked.question.paths = settings.paths;
    asked.question.seed = settings.seed.value_or(asked.question.seed);
    answer.today = asked.today;
    answer.sources = asked.sources;
    answer.notes = asked.notes;
    auto planner = OrderPlanner::start(asked.question);
    if (!planner) {
        refuse(answer, planner.problems());
        return answer;
    }
    answer.planner = std::make_shared<const OrderPlanner>(std::move(planner.value()));
    const OrderAnswer found = answer.planner->answer(settings.cancel);
    if (found.cancelled)
        return answer;
    answer.notes << found.notes;
    fillRisks(answer, asked, found);
    fillUses(answer, found.nothing);
    answer.course = courseOf(found.nothing, answer.today, courseDays(answer));
    if (!found.dry.empty())
        answer.withOrder = courseOf(found.with, answer.today, answer.course.size());
    answer.orders = choicesOf(found.dry, answer, wording);
    answer.greenOrders = choicesOf(found.green, answer, wording);
    fillOrder(answer);
    checkWithTextbook(answer, asked, wording);
    answer.headline = woodHeadline(books, answer, wording);
    answer.headline.reasons = woodReasons(books, answer, asked.reasons, wording);
    return answer;
}

WoodAnswer woodAnswer(const Books &books, const FuelAnswer &fuel,
                      const QMap<RecordId, SeasoningForecast> &seasoning, Instant now,
                      const Wording &wording, const WoodAnswerSettings &settings)
{
    return woodAnswerFrom(books, plannedUses(books, fuel, now), fuel, seasoning, now, wording,
                          settings);
}

} // namespace rickyard::domain
