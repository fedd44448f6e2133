#include "models/domain/fire/fuel_replay.h"

#include "models/domain/answers/wording.h"
#include "models/domain/fire/cook_doubts.h"
#include "models/domain/fire/watch_tuning.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

bool inKnownGood(const Books &books, RecordId pit, QDate day)
{
    return std::any_of(books.knownGood.begin(), books.knownGood.end(), [&](const KnownGood &k) {
        return k.pit == pit && k.from <= day && (!k.to.isValid() || day <= k.to);
    });
}

class Replay
{
public:
    Replay(const Books &books, QVector<CookFuel> &cooks, Instant now)
        : m_books(books), m_cooks(cooks), m_settings(watchSettingsOf(books)),
          m_turns(pitTurns(books, now)), m_watch(m_settings)
    {
        for (const Pit &pit : books.pits) {
            PitFuel fuel;
            fuel.pit = pit.id;
            fuel.limit = m_watch.baseLimit();
            m_pits.insert(pit.id, fuel);
        }
    }

    FuelReplay run();

private:
    struct Step { // what the watch was told: a cook, or a turn of a pit
        std::optional<WatchCook> cook;
        PitTurn turn;
    };

    void judge(CookFuel &cook);
    void take(const PitTurn &turn);
    static void tell(FuelWatch &watch, const Step &step);
    void retune();
    void foretell(CookFuel &cook) const;
    void follow(PitFuel &pit, const CookFuel &cook);
    void close(PitFuel &pit) const;

    const Books &m_books;
    QVector<CookFuel> &m_cooks;
    WatchSettings m_settings;
    QVector<PitTurn> m_turns;
    FuelWatch m_watch;
    QVector<Step> m_told;
    QMap<RecordId, PitFuel> m_pits;
    qsizetype m_judged = 0;
    qsizetype m_nextTuning = kCooksToTune;
};

Instant outOf(const CookFuel &cook)
{
    return cook.lit + cook.length;
}

void setForecast(CookFuel &cook, const WatchForecast &forecast)
{
    cook.expected = Heat::rounded(forecast.expected);
    cook.lower = Heat::rounded(forecast.lower);
    cook.upper = Heat::rounded(forecast.upper);
}

void Replay::tell(FuelWatch &watch, const Step &step)
{
    if (step.cook)
        watch.add(*step.cook);
    else if (step.turn.kind == PitTurnKind::Mended)
        watch.repaired(step.turn.pit);
    else
        watch.nothingFound(step.turn.pit);
}

void Replay::take(const PitTurn &turn)
{
    m_told.append({std::nullopt, turn});
    tell(m_watch, m_told.last());
    const auto pit = m_pits.find(turn.pit);
    if (pit == m_pits.end())
        return;
    pit->up = pit->down = 0;
    pit->flag = WatchFlag::None;
    pit->raisedBy = 0;
    if (turn.kind == PitTurnKind::FoundSound) {
        pit->foundSound = turn.at;
        return;
    }
    pit->mended = turn.at;
    pit->cooks = 0;
    pit->last.clear();
}

void Replay::follow(PitFuel &pit, const CookFuel &cook)
{
    const WatchVerdict &verdict = *cook.verdict;
    ++pit.cooks;
    ++pit.cooksEver;
    pit.last << cook.cook;
    if (pit.last.size() > kLastCooks)
        pit.last.removeFirst();
    pit.up = verdict.up;
    pit.down = verdict.down;
    pit.limit = verdict.limit;
    pit.flag = verdict.flag;
    if (verdict.raised)
        pit.raisedBy = cook.cook;
    else if (verdict.flag == WatchFlag::None)
        pit.raisedBy = 0;
}

void Replay::judge(CookFuel &cook)
{
    cook.knownGood = inKnownGood(
        m_books, cook.pit, dayOf(cook.lit, zoneOf(Wording{.timeZone = m_books.yard().timeZone})));
    const WatchCook shown = watchCookOf(cook, m_settings);
    const WatchVerdict verdict = m_watch.add(shown);
    if (!verdict.leftOut.isEmpty()) {
        cook.missing << verdict.leftOut;
        return;
    }
    m_told.append({shown, {}});
    cook.verdict = verdict;
    cook.excess = verdict.excess;
    setForecast(cook, verdict.forecast);
    follow(m_pits[cook.pit], cook);
    ++m_judged;
    if (m_judged == m_nextTuning) {
        m_nextTuning *= 2;
        retune();
    }
}

void Replay::retune()
{
    QVector<WatchCook> seen;
    for (const Step &step : std::as_const(m_told))
        if (step.cook)
            seen << *step.cook;
    // From the stated beliefs each time, so that they cannot wander off by halves and doubles.
    const WatchSettings tuned = tunedSettings(seen, watchSettingsOf(m_books));
    if (tuned.pitWhole == m_settings.pitWhole && tuned.crewTerm == m_settings.crewTerm)
        return;
    m_settings = tuned;
    FuelWatch anew(m_settings);
    for (const Step &step : std::as_const(m_told))
        tell(anew, step);
    m_watch = anew;
}

// A fire that still burns: what it should have taken by now.
void Replay::foretell(CookFuel &cook) const
{
    if (cook.finished || !(totalHeat(cook.columns) > 0))
        return;
    if (const auto forecast =
            m_watch.expect(cook.pit, cook.columns, trustOf(cook.doubt, m_settings.scatter)))
        setForecast(cook, *forecast);
}

void Replay::close(PitFuel &pit) const
{
    double burned = 0;
    double expected = 0;
    for (const CookFuel &cook : std::as_const(m_cooks)) {
        if (!cook.verdict || !pit.last.contains(cook.cook))
            continue;
        burned += cook.netHeat.toDouble();
        expected += cook.expected->toDouble();
    }
    pit.excessOfLast = expected > 0 ? burned / expected - 1.0 : 0.0;
    pit.extraOfLast = Heat::rounded(burned - expected);
    pit.heldBack = m_watch.heldBack(pit.pit);
    if (pit.up > 0)
        pit.climb = m_watch.excess(pit.pit, WatchFlag::More);
    if (pit.down > 0)
        pit.fall = m_watch.excess(pit.pit, WatchFlag::Less);
}

FuelReplay Replay::run()
{
    QVector<CookFuel *> finished;
    for (CookFuel &cook : m_cooks)
        if (cook.complete())
            finished << &cook;
    std::stable_sort(finished.begin(), finished.end(),
                     [](const CookFuel *a, const CookFuel *b) { return outOf(*a) < outOf(*b); });
    qsizetype turn = 0;
    for (CookFuel *cook : finished) {
        for (; turn < m_turns.size() && m_turns.at(turn).at <= outOf(*cook); ++turn)
            take(m_turns.at(turn));
        judge(*cook);
    }
    for (; turn < m_turns.size(); ++turn)
        take(m_turns.at(turn));
    for (CookFuel &cook : m_cooks)
        foretell(cook);
    FuelReplay result;
    for (PitFuel &pit : m_pits) {
        close(pit);
        result.pits << pit;
    }
    result.watch = std::make_shared<const FuelWatch>(m_watch);
    return result;
}

} // namespace

QVector<PitTurn> pitTurns(const Books &books, Instant now)
{
    QVector<PitTurn> turns;
    for (const Finding &finding : books.findings) {
        if (!finding.pit)
            continue;
        if (finding.state == FindingState::Nothing && finding.opened <= now) {
            turns.append({PitTurnKind::FoundSound, *finding.pit, finding.opened, finding.id});
        } else if (finding.state == FindingState::Mended && finding.mendedBy) {
            const auto visit = books.visits.constFind(*finding.mendedBy);
            if (visit == books.visits.cend() || visit->state != VisitState::Done)
                continue;
            const Instant at = visit->end.value_or(visit->start);
            if (at <= now)
                turns.append({PitTurnKind::Mended, *finding.pit, at, finding.id});
        }
    }
    std::stable_sort(turns.begin(), turns.end(),
                     [](const PitTurn &a, const PitTurn &b) { return a.at < b.at; });
    return turns;
}

WatchSettings watchSettingsOf(const Books &books)
{
    WatchSettings settings;
    settings.cooksPerFalseAlarm = books.yard().falseAlarmCooks;
    return settings;
}

WatchCook watchCookOf(const CookFuel &cook, const WatchSettings &settings)
{
    WatchCook shown;
    shown.cook = cook.cook;
    shown.pit = cook.pit;
    shown.columns = cook.columns;
    shown.actual = cook.netHeat.toDouble();
    shown.trust = trustOf(cook.doubt, settings.scatter);
    shown.knownGood = cook.knownGood;
    shown.lots = QVector<RecordId>(cook.lots.keys());
    return shown;
}

FuelReplay replayFuel(const Books &books, QVector<CookFuel> &cooks, Instant now)
{
    return Replay(books, cooks, now).run();
}

} // namespace rickyard::domain
