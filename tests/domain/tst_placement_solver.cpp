// The placement solver against a search of everything, and against the textbook rules of
// scheduling one machine: M. Pinedo, Scheduling: Theory, Algorithms, and Systems, chapter 3. The
// examples are from memory; the rules stand beside them and are applied to random cases too.
#include "models/domain/upkeep/placement_mip.h"
#include "models/domain/upkeep/placement_solver.h"
#include "tests/domain/placement_problems.h"
#include "tests/support/registry.h"

#include <QTest>

#include <algorithm>
#include <numeric>
#include <thread>

using namespace rickyard::test;

namespace {

struct MachineJob {
    qint64 length = 0;
    qint64 due = 0;
    qint64 weight = 1;
};

// One machine from 0 on, whole units of time.
PlacementProblem machine(qint64 hours)
{
    PlacementProblem p;
    p.grid = 1;
    p.crew = {{0, 1}, {hours, 0}};
    return p;
}

std::vector<MachineJob> randomJobs(PlacementDice &dice, int count, int longest)
{
    std::vector<MachineJob> jobs;
    for (int i = 0; i < count; ++i) {
        MachineJob job;
        job.length = 1 + dice.upTo(longest);
        job.due = job.length + dice.upTo(2 * longest);
        job.weight = 1 + dice.upTo(9);
        jobs.push_back(job);
    }
    return jobs;
}

qint64 totalLength(const std::vector<MachineJob> &jobs)
{
    return std::accumulate(jobs.begin(), jobs.end(), qint64(0),
                           [](qint64 sum, const MachineJob &job) { return sum + job.length; });
}

// Moore and Hodgson: by due date; whenever one is late, throw out the longest so far.
int lateJobsOfMooreHodgson(std::vector<MachineJob> jobs)
{
    std::sort(jobs.begin(), jobs.end(),
              [](const MachineJob &a, const MachineJob &b) { return a.due < b.due; });
    std::vector<qint64> kept;
    qint64 time = 0;
    int late = 0;
    for (const MachineJob &job : jobs) {
        kept.push_back(job.length);
        time += job.length;
        if (time > job.due) {
            const auto longest = std::max_element(kept.begin(), kept.end());
            time -= *longest;
            kept.erase(longest);
            ++late;
        }
    }
    return late;
}

// A job not done by its due date is left out, at one each.
qint64 leftOutBySolver(const std::vector<MachineJob> &jobs, qint64 later = 0)
{
    PlacementProblem p = machine(200);
    for (const MachineJob &job : jobs) {
        WorkPiece w;
        w.key = p.pieces.size();
        w.length = job.length;
        w.leftOut = 1;
        if (job.due + later >= job.length)
            w.starts << StartRange{0, job.due + later - job.length, 0, 0};
        p.pieces << w;
    }
    const PlacementPlan plan = solvePlacement(p);
    return plan.proven() ? plan.late : -1;
}

} // namespace

class TstPlacementSolver : public QObject
{
    Q_OBJECT

private slots:
    void agreesWithASearchOfEverything()
    {
        qint64 leftOut = 0;
        qint64 wasted = 0;
        for (unsigned seed = 1; seed <= 600; ++seed) {
            PlacementDice dice(seed);
            const PlacementProblem p = randomPlacement(dice);
            PlacementCheck check(p);
            const auto best = check.bestOfAll();
            const PlacementPlan plan = solvePlacement(p);
            const QByteArray where = QByteArray::number(seed);
            const auto starts = PlacementCheck::startsOf(plan);
            QVERIFY2(check.feasible(starts), where);
            QVERIFY2(check.cost(starts) == best, where);
            QVERIFY2(plan.late == best.first && plan.waste == best.second, where);
            QVERIFY2(plan.proven() && !plan.failed && !plan.stopped && plan.gap() == 0, where);
            leftOut += std::count(starts.begin(), starts.end(), -1);
            wasted += plan.waste;
        }
        QVERIFY(leftOut > 300 && wasted > 500); // the cases are not trivially easy
    }

    void crowdedStretchesAgreeToo()
    {
        qint64 leftOut = 0;
        for (unsigned seed = 1; seed <= 300; ++seed) {
            PlacementDice dice(seed);
            const PlacementProblem p = crowdedPlacement(dice);
            const PlacementPlan plan = solvePlacement(p);
            const auto starts = PlacementCheck::startsOf(plan);
            PlacementCheck check(p);
            QVERIFY2(check.feasible(starts), QByteArray::number(seed));
            QVERIFY2(check.cost(starts) == check.bestOfAll(), QByteArray::number(seed));
            leftOut += std::count(starts.begin(), starts.end(), -1);
        }
        QVERIFY(leftOut > 200);
    }

    // Nothing is late or wasted: the third aim alone, every choice of days tried.
    void theEarliestOfAllChoicesOfDays()
    {
        for (unsigned seed = 1; seed <= 150; ++seed) {
            PlacementDice dice(seed);
            PlacementProblem p;
            for (int k = 0; k < 4; ++k)
                p.crew << CrewStep{k * kDaySeconds, 1} << CrewStep{k * kDaySeconds + 3600, 0};
            const int count = 4;
            for (int i = 0; i < count; ++i) {
                WorkPiece w;
                w.key = i;
                w.length = 900 * (1 + dice.upTo(4));
                w.leftOut = 1000;
                for (int k = 0; k < 4; ++k)
                    w.starts << StartRange{k * kDaySeconds, k * kDaySeconds + 3600 - w.length, 0,
                                           0};
                p.pieces << w;
            }
            const PlacementPlan plan = solvePlacement(p);
            qint64 best = std::numeric_limits<qint64>::max();
            qint64 got = 0;
            for (int choice = 0; choice < 256; ++choice) {
                std::array<qint64, 4> full{};
                qint64 sum = 0;
                for (int i = 0; i < count; ++i) {
                    const int day = (choice >> (2 * i)) % 4;
                    full[static_cast<size_t>(day)] += p.pieces.at(i).length;
                    sum += 24 * day * (5 * count - i);
                }
                if (*std::max_element(full.begin(), full.end()) <= 3600)
                    best = std::min(best, sum);
            }
            for (int i = 0; i < count; ++i)
                got += 24 * (plan.starts.at(i).value_or(-1) / kDaySeconds) * (5 * count - i);
            QVERIFY2(got == best, QByteArray::number(seed));
        }
    }

    // GLPK takes a solution for whole that is a hair off, and a hair times a large cost can be more
    // than one: a later aim could then undo an earlier one.
    void theFirstAimHoldsToTheLastUnit()
    {
        for (unsigned seed = 5000; seed < 5400; ++seed) {
            PlacementDice dice(seed);
            PlacementProblem p = randomPlacement(dice, 6);
            for (WorkPiece &w : p.pieces)
                w.leftOut *= 20;
            SolverLimits limits;
            limits.steps = 50000;
            limits.latenessOnly = true;
            const PlacementPlan first = solvePlacement(p, limits);
            const PlacementPlan all = solvePlacement(p);
            QVERIFY2(first.late == all.late, QByteArray::number(seed));
        }
    }

    void numberOfLateJobs()
    {
        // Pinedo, example of 1 || sum of U (Moore-Hodgson): from memory.
        const std::vector<MachineJob> book{{7, 9}, {8, 17}, {4, 18}, {6, 19}, {6, 21}};
        QCOMPARE(lateJobsOfMooreHodgson(book), 2);
        QCOMPARE(leftOutBySolver(book), 2);
        int late = 0;
        for (unsigned seed = 1; seed <= 150; ++seed) {
            PlacementDice dice(seed);
            const auto jobs = randomJobs(dice, 3 + dice.upTo(7), 9);
            late += lateJobsOfMooreHodgson(jobs);
            QVERIFY2(leftOutBySolver(jobs) == lateJobsOfMooreHodgson(jobs),
                     QByteArray::number(seed));
        }
        QVERIFY(late > 150);
    }

    // Jackson's rule: by due date the greatest lateness is least (Pinedo, 1 || Lmax). With every
    // due date later by that much all fit; with one less, not all.
    void greatestLateness()
    {
        for (unsigned seed = 1; seed <= 100; ++seed) {
            PlacementDice dice(seed);
            auto jobs = randomJobs(dice, 3 + dice.upTo(6), 9);
            std::sort(jobs.begin(), jobs.end(),
                      [](const MachineJob &a, const MachineJob &b) { return a.due < b.due; });
            qint64 time = 0;
            qint64 lmax = std::numeric_limits<int>::min();
            for (const MachineJob &job : jobs)
                lmax = std::max(lmax, (time += job.length) - job.due);
            QCOMPARE(leftOutBySolver(jobs, lmax), 0);
            QVERIFY2(leftOutBySolver(jobs, lmax - 1) > 0, QByteArray::number(seed));
        }
    }

    // Smith's rule: by weight over length the weighted sum of completion times is least (Pinedo,
    // 1 || sum of w C, theorem on WSPT).
    void weightedCompletion()
    {
        for (unsigned seed = 1; seed <= 40; ++seed) {
            PlacementDice dice(seed);
            auto jobs = randomJobs(dice, 4, 3);
            const qint64 horizon = totalLength(jobs);
            PlacementProblem p = machine(horizon);
            for (const MachineJob &job : jobs) {
                WorkPiece w;
                w.key = p.pieces.size();
                w.length = job.length;
                w.leftOut = 1000;
                for (qint64 at = 0; at + job.length <= horizon; ++at)
                    w.starts << StartRange{at, at, job.weight * (at + job.length), 0};
                p.pieces << w;
            }
            std::sort(jobs.begin(), jobs.end(), [](const MachineJob &a, const MachineJob &b) {
                return a.weight * b.length > b.weight * a.length;
            });
            qint64 time = 0;
            qint64 best = 0;
            for (const MachineJob &job : jobs)
                best += job.weight * (time += job.length);
            const PlacementPlan plan = solvePlacement(p);
            QVERIFY2(plan.late == best, QByteArray::number(seed));
        }
    }

    void morePeopleOrHoursNeverWorsen()
    {
        int better = 0;
        for (unsigned seed = 2000; seed < 2200; ++seed) {
            PlacementDice dice(seed);
            const PlacementProblem p = randomPlacement(dice);
            const PlacementPlan before = solvePlacement(p);
            const auto worth = [](const PlacementPlan &plan) {
                return std::make_pair(plan.late, plan.waste);
            };
            PlacementProblem more = p;
            for (CrewStep &step : more.crew)
                step.people += step.people > 0 ? 1 : 0;
            const PlacementPlan people = solvePlacement(more);
            QVERIFY2(worth(people) <= worth(before), QByteArray::number(seed));
            PlacementProblem longer = p;
            const qint64 day = 4 * kDaySeconds;
            longer.crew << CrewStep{day, 1} << CrewStep{day + 3600, 0};
            for (WorkPiece &w : longer.pieces)
                w.starts << StartRange{day, day + 3600 - w.length, 30, 0};
            const PlacementPlan hours = solvePlacement(longer);
            QVERIFY2(worth(hours) <= worth(before), QByteArray::number(seed));
            better += worth(people) < worth(before) ? 1 : 0;
            better += worth(hours) < worth(before) ? 1 : 0;
        }
        QVERIFY(better > 100);
    }

    void theOrderOfThePiecesDoesNotMatter()
    {
        for (unsigned seed = 3000; seed < 3150; ++seed) {
            PlacementDice dice(seed);
            const PlacementProblem p = randomPlacement(dice);
            const PlacementPlan plan = solvePlacement(p);
            std::vector<int> order(static_cast<size_t>(p.pieces.size()));
            std::iota(order.begin(), order.end(), 0);
            std::shuffle(order.begin(), order.end(), dice.engine());
            PlacementProblem other = p;
            for (size_t i = 0; i < order.size(); ++i) {
                WorkPiece &w = other.pieces[static_cast<qsizetype>(i)];
                w = p.pieces.at(order[i]);
                if (w.after >= 0)
                    w.after = static_cast<int>(std::find(order.begin(), order.end(), w.after) -
                                               order.begin());
            }
            const PlacementPlan shuffled = solvePlacement(other);
            for (size_t i = 0; i < order.size(); ++i)
                QVERIFY2(shuffled.starts.at(static_cast<qsizetype>(i)) == plan.starts.at(order[i]),
                         QByteArray::number(seed));
        }
    }

    // Equal in both aims: the earlier stretch of crew time, and the first key before the second.
    void ofEqualPlansTheEarliest()
    {
        PlacementProblem p;
        p.crew = {{0, 1}, {1800, 0}, {86400, 1}, {88200, 0}, {172800, 1}, {174600, 0}};
        for (const qint64 key : {2, 1}) {
            WorkPiece w;
            w.key = key;
            w.length = 1800;
            w.leftOut = 1000;
            w.starts = {{0, 0, 0, 0}, {86400, 86400, 0, 0}, {172800, 172800, 0, 0}};
            p.pieces << w;
        }
        const PlacementPlan plan = solvePlacement(p);
        QCOMPARE(plan.starts.at(1), std::optional<qint64>(0));
        QCOMPARE(plan.starts.at(0), std::optional<qint64>(86400));
    }

    void cutShortItIsFeasibleAndSaysHowFarOff()
    {
        int unproven = 0;
        for (unsigned seed = 4000; seed < 4060; ++seed) {
            PlacementDice dice(seed);
            const PlacementProblem p = randomPlacement(dice, 12);
            const PlacementPlan best = solvePlacement(p);
            const PlacementCheck check(p);
            SolverLimits few;
            few.nodes = 1;
            SolverLimits none;
            none.stop = [] { return true; };
            for (const SolverLimits &limits : {few, none}) {
                const PlacementPlan plan = solvePlacement(p, limits);
                const QByteArray where = QByteArray::number(seed);
                const auto starts = PlacementCheck::startsOf(plan);
                QVERIFY2(check.feasible(starts), where);
                QVERIFY2(check.cost(starts) == std::make_pair(plan.late, plan.waste), where);
                QVERIFY2(plan.lateBound <= best.late && plan.late >= best.late, where);
                QVERIFY2(plan.stopped == bool(limits.stop), where);
                unproven += plan.gap() > 0 ? 1 : 0;
            }
        }
        QVERIFY(unproven > 20);
    }

    void unsoundProblemsAreRefused()
    {
        const auto refused = [](const PlacementProblem &p) {
            const PlacementPlan plan = solvePlacement(p);
            return !problemFault(p).isEmpty() && plan.failed &&
                   plan.starts.size() == p.pieces.size() && !plan.starts.first();
        };
        PlacementProblem sound;
        sound.crew = {{0, 1}, {3600, 0}};
        WorkPiece w;
        w.length = 600;
        w.leftOut = 5;
        w.starts = {{0, 3000, 0, 0}};
        sound.pieces = {w, w};
        QVERIFY(problemFault(sound).isEmpty());
        PlacementProblem p = sound;
        p.pieces[0].after = 1;
        p.pieces[1].after = 0;
        QVERIFY(refused(p));
        p = sound;
        p.pieces[0].after = 7;
        QVERIFY(refused(p));
        p = sound;
        p.pieces[0].length = 0;
        QVERIFY(refused(p));
        p = sound;
        p.pieces[0].starts[0].late = -1;
        QVERIFY(refused(p));
        p = sound;
        p.grid = 0;
        QVERIFY(refused(p));
        p = sound;
        p.crew = {{3600, 0}, {0, 1}};
        QVERIFY(refused(p));
        QVERIFY(!solvePlacement({}).failed);
    }

    // GLPK ends the program on an error of its caller: here it must come back, and work again.
    void anErrorInsideTheSolverComesBack()
    {
        MipModel bad;
        bad.costs = {-1, -1};
        bad.rows = {{{0, 57}, {1, 1}, 1, false}}; // there is no variable 57
        const MipResult failed = solveMip(bad, {}, std::nullopt);
        QVERIFY(failed.state == MipState::Failed);
        MipModel good = bad;
        good.costs = {3, 2};
        good.rows = {{{0, 1}, {-1, -1}, -1, false}};
        MipHooks hooks;
        hooks.judge = [](const std::vector<char> &) { return MipHooks::Verdict(); };
        const MipResult again = solveMip(good, hooks, std::nullopt);
        QVERIFY(again.state == MipState::Proven && again.value == 2 && again.bound == 2);
    }

    void fourThreadsAtOnce()
    {
        PlacementDice dice(77);
        std::vector<PlacementProblem> problems;
        for (int i = 0; i < 40; ++i)
            problems.push_back(randomPlacement(dice, 8));
        const auto solveAll = [&problems](std::vector<PlacementPlan> &plans) {
            for (const PlacementProblem &p : problems)
                plans.push_back(solvePlacement(p));
        };
        std::vector<PlacementPlan> alone;
        solveAll(alone);
        std::vector<std::vector<PlacementPlan>> together(4);
        std::vector<std::thread> threads;
        for (auto &plans : together)
            threads.emplace_back(solveAll, std::ref(plans));
        for (std::thread &thread : threads)
            thread.join();
        for (const auto &plans : together)
            for (size_t i = 0; i < problems.size(); ++i)
                QVERIFY(plans[i].starts == alone[i].starts && !plans[i].failed);
    }
};

RICKYARD_TEST(TstPlacementSolver)
#include "tst_placement_solver.moc"
