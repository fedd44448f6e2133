#include "models/domain/upkeep/placement_master.h"

#include <algorithm>
#include <numeric>

namespace rickyard::domain {

namespace {

constexpr qint64 kHourSeconds = 3600;
constexpr int kQuickSteps = 100; // of a check that need not be sure

int peopleAt(const QVector<CrewStep> &crew, qint64 at)
{
    int people = 0;
    for (const CrewStep &step : crew) {
        if (step.from > at)
            break;
        people = step.people;
    }
    return people;
}

template <typename Add>
void eachStart(const StartRange &range, qint64 grid, Add add)
{
    if (range.from > range.to)
        return;
    add(range.from);
    for (qint64 at = (range.from / grid + 1) * grid; at <= range.to; at += grid)
        add(at);
}

int pointFrom(const Stretch &stretch, qint64 at)
{
    return static_cast<int>(std::lower_bound(stretch.points.begin(), stretch.points.end(), at) -
                            stretch.points.begin());
}

int leastPoints(const MasterOption &option)
{
    int least = option.ends.front() - option.starts.front();
    for (size_t i = 1; i < option.starts.size(); ++i)
        least = std::min(least, option.ends[i] - option.starts[i]);
    return least;
}

} // namespace

PlacementMaster::PlacementMaster(const QVector<WorkPiece> &pieces, const QVector<CrewStep> &crew,
                                 qint64 grid, const SolverLimits &limits)
    : m_pieces(pieces), m_limits(limits)
{
    makeStretches(crew, grid);
    makeOptions(grid);
    findLastGood();
}

void PlacementMaster::makeStretches(const QVector<CrewStep> &crew, qint64 grid)
{
    std::vector<std::pair<qint64, qint64>> spans;
    for (const WorkPiece &piece : m_pieces)
        for (const StartRange &range : piece.starts)
            if (range.from <= range.to)
                spans.emplace_back(range.from, range.to + piece.length);
    std::sort(spans.begin(), spans.end());
    for (const auto &[from, to] : spans) {
        if (m_stretches.empty() || from >= m_stretches.back().to)
            m_stretches.push_back({from, to, {}, {}});
        m_stretches.back().to = std::max(m_stretches.back().to, to);
    }
    for (Stretch &stretch : m_stretches) {
        for (const WorkPiece &piece : m_pieces)
            for (const StartRange &range : piece.starts)
                if (range.from >= stretch.from && range.from < stretch.to)
                    eachStart(range, grid, [&](qint64 at) { stretch.points.push_back(at); });
        for (const CrewStep &step : crew)
            if (step.from > stretch.from && step.from < stretch.to)
                stretch.points.push_back(step.from);
        std::sort(stretch.points.begin(), stretch.points.end());
        stretch.points.erase(std::unique(stretch.points.begin(), stretch.points.end()),
                             stretch.points.end());
        for (const qint64 at : stretch.points)
            stretch.people.push_back(peopleAt(crew, at));
    }
}

void PlacementMaster::makeOptions(qint64 grid)
{
    m_ofPiece.resize(static_cast<size_t>(m_pieces.size()));
    m_ofStretch.resize(m_stretches.size());
    for (int j = 0; j < m_pieces.size(); ++j) {
        const WorkPiece &piece = m_pieces.at(j);
        std::map<std::tuple<int, qint64, qint64>, std::vector<qint64>> kinds;
        for (const StartRange &range : piece.starts) {
            int b = 0;
            while (b + 1 < static_cast<int>(m_stretches.size()) &&
                   m_stretches[static_cast<size_t>(b)].to <= range.from)
                ++b;
            auto &starts = kinds[{b, range.late, range.waste}];
            eachStart(range, grid, [&](qint64 at) { starts.push_back(at); });
        }
        for (auto &[kind, starts] : kinds) {
            MasterOption option{j, std::get<0>(kind), std::get<1>(kind), std::get<2>(kind), {}, {}};
            const Stretch &stretch = m_stretches[static_cast<size_t>(option.stretch)];
            std::sort(starts.begin(), starts.end());
            starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
            for (const qint64 at : starts) {
                const int from = pointFrom(stretch, at);
                const int to = pointFrom(stretch, at + piece.length);
                const bool enough =
                    std::all_of(stretch.people.begin() + from, stretch.people.begin() + to,
                                [&piece](int people) { return people >= piece.people; });
                if (!enough)
                    continue;
                option.starts.push_back(from);
                option.ends.push_back(to);
            }
            // Nothing is later than being left out, so such a start is no use.
            if (option.starts.empty() || option.late > piece.leftOut)
                continue;
            const int index = static_cast<int>(m_options.size());
            m_ofPiece[static_cast<size_t>(j)].push_back(index);
            m_ofStretch[static_cast<size_t>(option.stretch)].push_back(index);
            m_options.push_back(std::move(option));
        }
    }
}

qint64 PlacementMaster::cost(Aim aim, size_t column) const
{
    if (column >= m_options.size()) {
        const auto piece = static_cast<int>(column - m_options.size());
        return aim == Aim::Lateness ? m_pieces.at(piece).leftOut : 0;
    }
    const MasterOption &option = m_options[column];
    if (aim == Aim::Lateness)
        return option.late;
    if (aim == Aim::Waste)
        return option.waste;
    // Between equals the first in order goes first: its hours count up to a quarter more.
    const auto stretch = static_cast<size_t>(option.stretch);
    const qint64 hours = (m_stretches[stretch].from - m_stretches.front().from) / kHourSeconds;
    return hours * (5 * m_pieces.size() - option.piece);
}

qint64 PlacementMaster::sum(Aim aim, const Choice &choice) const
{
    qint64 total = 0;
    for (size_t c = 0; c < choice.size(); ++c)
        total += choice[c] != 0 ? cost(aim, c) : 0;
    return total;
}

MipModel PlacementMaster::model(Aim aim) const
{
    MipModel model;
    const size_t columns = m_options.size() + m_ofPiece.size();
    for (size_t c = 0; c < columns; ++c)
        model.costs.push_back(cost(aim, c));
    for (size_t j = 0; j < m_ofPiece.size(); ++j) {
        MipRow row;
        row.columns = m_ofPiece[j];
        row.columns.push_back(static_cast<int>(m_options.size() + j));
        row.factors.assign(row.columns.size(), 1.0);
        row.limit = 1;
        row.exactly = true;
        model.rows.push_back(row);
    }
    addStretchRows(model);
    addOrderRows(model);
    const auto keep = [&](Aim earlier, const std::optional<qint64> &limit) {
        if (!limit)
            return;
        MipRow row;
        for (size_t c = 0; c < columns; ++c)
            if (cost(earlier, c) != 0) {
                row.columns.push_back(static_cast<int>(c));
                row.factors.push_back(static_cast<double>(cost(earlier, c)));
            }
        row.limit = static_cast<double>(*limit);
        if (!row.columns.empty())
            model.rows.push_back(row);
    };
    keep(Aim::Lateness, m_lateLimit);
    keep(Aim::Waste, m_wasteLimit);
    // What alone breaks an earlier aim is out: a tighter program than the sum's row.
    for (size_t c = 0; c < columns; ++c)
        if ((m_lateLimit && cost(Aim::Lateness, c) > *m_lateLimit) ||
            (m_wasteLimit && cost(Aim::Waste, c) > *m_wasteLimit))
            model.zero.push_back(static_cast<int>(c));
    model.lazy.insert(model.lazy.end(), m_cuts.begin(), m_cuts.end());
    return model;
}

// Person time and pit time of a stretch, counted in points: no plan can use more.
void PlacementMaster::addStretchRows(MipModel &model) const
{
    for (size_t b = 0; b < m_stretches.size(); ++b) {
        MipRow row;
        for (const int o : m_ofStretch[b]) {
            const MasterOption &option = m_options[static_cast<size_t>(o)];
            row.columns.push_back(o);
            row.factors.push_back(leastPoints(option) * m_pieces.at(option.piece).people);
        }
        row.limit =
            std::accumulate(m_stretches[b].people.begin(), m_stretches[b].people.end(), 0.0);
        if (std::accumulate(row.factors.begin(), row.factors.end(), 0.0) > row.limit)
            model.rows.push_back(row);
        std::map<qint64, std::vector<int>> pits;
        for (const int o : m_ofStretch[b])
            if (const qint64 pit = m_pieces.at(m_options[static_cast<size_t>(o)].piece).pit)
                pits[pit].push_back(o);
        for (const auto &[pit, columns] : pits)
            addPitRows(model, static_cast<int>(b), columns);
    }
}

void PlacementMaster::addPitRows(MipModel &model, int stretch,
                                 const std::vector<int> &columns) const
{
    std::vector<char> open(m_stretches[static_cast<size_t>(stretch)].points.size(), 0);
    MipRow row;
    for (const int o : columns) {
        const MasterOption &option = m_options[static_cast<size_t>(o)];
        for (size_t i = 0; i < option.starts.size(); ++i)
            std::fill(open.begin() + option.starts[i], open.begin() + option.ends[i], 1);
        row.columns.push_back(o);
        row.factors.push_back(leastPoints(option));
    }
    row.limit = static_cast<double>(std::count(open.begin(), open.end(), 1));
    if (std::accumulate(row.factors.begin(), row.factors.end(), 0.0) > row.limit)
        model.rows.push_back(row);
}

// Up to the end of every stretch, a piece is placed only if the one before it is.
void PlacementMaster::addOrderRows(MipModel &model) const
{
    for (size_t j = 0; j < m_ofPiece.size(); ++j) {
        const int after = m_pieces.at(static_cast<int>(j)).after;
        if (after < 0)
            continue;
        int last = -1;
        for (const int mine : m_ofPiece[j]) {
            const int stretch = m_options[static_cast<size_t>(mine)].stretch;
            if (stretch == last)
                continue;
            last = stretch;
            MipRow row;
            for (const int o : m_ofPiece[j])
                if (m_options[static_cast<size_t>(o)].stretch <= stretch) {
                    row.columns.push_back(o);
                    row.factors.push_back(1);
                }
            for (const int o : m_ofPiece[static_cast<size_t>(after)])
                if (m_options[static_cast<size_t>(o)].stretch <= stretch) {
                    row.columns.push_back(o);
                    row.factors.push_back(-1);
                }
            model.lazy.push_back(row);
        }
    }
}

std::vector<std::vector<int>> PlacementMaster::byStretch(const Choice &choice) const
{
    std::vector<std::vector<int>> sets(m_stretches.size());
    for (size_t o = 0; o < m_options.size(); ++o)
        if (choice[o] != 0)
            sets[static_cast<size_t>(m_options[o].stretch)].push_back(static_cast<int>(o));
    return sets;
}

// `widened`: each piece may use all its options in the stretch, whatever they cost.
BlockProblem PlacementMaster::blockOf(int stretch, const std::vector<int> &options,
                                      bool widened) const
{
    BlockProblem block;
    block.people = m_stretches[static_cast<size_t>(stretch)].people;
    std::map<qint64, int> pits{{0, 0}};
    for (const int o : options) {
        const MasterOption &option = m_options[static_cast<size_t>(o)];
        const WorkPiece &piece = m_pieces.at(option.piece);
        BlockJob job;
        std::map<int, int> starts;
        for (const int other : m_ofPiece[static_cast<size_t>(option.piece)]) {
            const MasterOption &more = m_options[static_cast<size_t>(other)];
            if (other == o || (widened && more.stretch == stretch))
                for (size_t i = 0; i < more.starts.size(); ++i)
                    starts[more.starts[i]] = more.ends[i];
        }
        for (const auto &[start, end] : starts) {
            job.starts.push_back(start);
            job.ends.push_back(end);
        }
        job.people = piece.people;
        job.pit = pits.emplace(piece.pit, static_cast<int>(pits.size())).first->second;
        for (size_t k = 0; k < options.size(); ++k)
            if (m_options[static_cast<size_t>(options[k])].piece == piece.after)
                job.after = static_cast<int>(k);
        block.jobs.push_back(std::move(job));
    }
    return block;
}

// A check that is paid for; without means it is left undecided.
BlockFit PlacementMaster::checked(const BlockProblem &block, int steps)
{
    if (m_work <= 0)
        return BlockFit::Unknown;
    int used = 0;
    const BlockFit fit = fitBlock(block, nullptr, std::min(steps, m_work), &used);
    m_work -= used;
    return fit;
}

BlockFit PlacementMaster::fits(int stretch, const std::vector<int> &options, bool quick)
{
    if (options.size() < 2)
        return BlockFit::Fits; // options that do not fit alone were not made
    const auto known = m_known.find(options);
    if (known != m_known.end())
        return known->second;
    const BlockFit fit =
        checked(blockOf(stretch, options, false), quick ? kQuickSteps : m_limits.steps);
    if (!quick || fit != BlockFit::Unknown)
        m_known.emplace(options, fit);
    return fit;
}

// A set that does not fit is made as small as it goes; then the options that ask for at least as
// much as each of the set stand for it too.
MipRow PlacementMaster::cutFor(int stretch, std::vector<int> options)
{
    for (size_t i = options.size(); i-- > 0 && options.size() > 2;) {
        std::vector<int> fewer = options;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
        if (fits(stretch, fewer, true) == BlockFit::DoesNot)
            options = fewer;
    }
    const BlockProblem wide = blockOf(stretch, options, true);
    const bool widened = checked(wide, m_limits.steps) == BlockFit::DoesNot;
    const BlockProblem block = widened ? wide : blockOf(stretch, options, false);
    MipRow row;
    row.limit = static_cast<double>(options.size()) - 1;
    const auto stands = [&](int o) {
        if (std::find(options.begin(), options.end(), o) != options.end())
            return true;
        const MasterOption &option = m_options[static_cast<size_t>(o)];
        const auto same = [&](int of) {
            return m_options[static_cast<size_t>(of)].piece == option.piece;
        };
        if (std::any_of(options.begin(), options.end(), same))
            return widened;
        const WorkPiece &piece = m_pieces.at(option.piece);
        for (size_t k = 0; k < options.size(); ++k) {
            const WorkPiece &of = m_pieces.at(m_options[static_cast<size_t>(options[k])].piece);
            const BlockJob &job = block.jobs[k];
            if (piece.length < of.length || piece.people < of.people || job.after >= 0 ||
                (of.pit != 0 && piece.pit != of.pit) ||
                !std::includes(job.starts.begin(), job.starts.end(), option.starts.begin(),
                               option.starts.end()))
                return false;
        }
        return true;
    };
    for (const int o : m_ofStretch[static_cast<size_t>(stretch)])
        if (stands(o)) {
            row.columns.push_back(o);
            row.factors.push_back(1);
        }
    return row;
}

// What GLPK takes for whole may be a hair off, which times a large cost is more than one: the sums
// are checked again in whole numbers, and a choice that breaks one is cut off by a cover.
void PlacementMaster::keepAim(Aim aim, const std::optional<qint64> &limit, const Choice &choice,
                              MipHooks::Verdict &verdict) const
{
    if (!limit || sum(aim, choice) <= *limit)
        return;
    std::vector<int> chosen;
    for (size_t c = 0; c < choice.size(); ++c)
        if (choice[c] != 0)
            chosen.push_back(static_cast<int>(c));
    std::stable_sort(chosen.begin(), chosen.end(), [&](int a, int b) {
        return cost(aim, static_cast<size_t>(a)) > cost(aim, static_cast<size_t>(b));
    });
    MipRow row;
    for (qint64 total = 0; total <= *limit; ++row.limit) {
        const int c = chosen[row.columns.size()];
        total += cost(aim, static_cast<size_t>(c));
        row.columns.push_back(c);
        row.factors.push_back(1);
    }
    row.limit -= 1;
    verdict.cuts.push_back(row);
}

MipHooks::Verdict PlacementMaster::judge(const Choice &choice)
{
    MipHooks::Verdict verdict;
    keepAim(Aim::Lateness, m_lateLimit, choice, verdict);
    keepAim(Aim::Waste, m_wasteLimit, choice, verdict);
    const auto sets = byStretch(choice);
    for (size_t b = 0; b < sets.size(); ++b) {
        const BlockFit fit = fits(static_cast<int>(b), sets[b]);
        if (fit == BlockFit::Fits)
            continue;
        if (fit == BlockFit::DoesNot) {
            verdict.cuts.push_back(cutFor(static_cast<int>(b), sets[b]));
            continue;
        }
        // Too hard to tell: this very set is left aside, and the bound says so.
        verdict.certain = false;
        MipRow row{sets[b], std::vector<double>(sets[b].size(), 1.0),
                   static_cast<double>(sets[b].size()) - 1, false};
        verdict.cuts.push_back(row);
    }
    return verdict;
}

MipResult PlacementMaster::improve(Aim aim)
{
    MipHooks hooks;
    hooks.judge = [this](const Choice &choice) { return judge(choice); };
    hooks.repair = [this, aim](const std::vector<double> &x) -> std::optional<Choice> {
        // What the program is surest of goes first.
        std::vector<double> priority(m_ofPiece.size(), 0);
        for (size_t o = 0; o < m_options.size(); ++o) {
            double &most = priority[static_cast<size_t>(m_options[o].piece)];
            most = std::max(most, x[o]);
        }
        Choice choice = build(priority, &x);
        const qint64 best = sum(Aim::Lateness, m_best);
        if (aim == Aim::Lateness && 4 * sum(Aim::Lateness, choice) < 5 * best)
            choice = polished(choice);
        return keepsLimits(choice) ? std::optional<Choice>(choice) : std::nullopt;
    };
    m_work = m_limits.work;
    hooks.stop = [this] { return m_work <= 0 || (m_limits.stop && m_limits.stop()); };
    hooks.nodes = m_limits.nodes;
    const MipModel program = model(aim);
    // Every piece at its own cheapest: when the plan at hand is that good, there is nothing to
    // prove.
    qint64 least = 0;
    for (size_t j = 0; j < m_ofPiece.size(); ++j) {
        qint64 best = cost(aim, m_options.size() + j);
        for (const int o : m_ofPiece[j])
            best = std::min(best, cost(aim, static_cast<size_t>(o)));
        least += best;
    }
    MipResult result;
    if (sum(aim, m_best) <= least) {
        result.state = MipState::Proven;
        result.value = result.bound = sum(aim, m_best);
        return result;
    }
    result = solveMip(program, hooks, m_best);
    if (result.best)
        m_best = *result.best;
    m_cuts.insert(m_cuts.end(), result.learnt.begin(), result.learnt.end());
    return result;
}

PlacementPlan PlacementMaster::solve()
{
    PlacementPlan plan;
    m_work = m_limits.work;
    squeak();
    const auto stopped = [this] { return m_limits.stop && m_limits.stop(); };
    for (const Aim aim : {Aim::Lateness, Aim::Waste, Aim::Earliness}) {
        if (aim != Aim::Lateness && m_limits.latenessOnly)
            break;
        plan.stopped = plan.stopped || stopped();
        if (plan.stopped || plan.failed)
            break;
        const MipResult result = improve(aim);
        plan.nodes += result.nodes;
        plan.stopped = result.state == MipState::Stopped && stopped();
        plan.failed = result.state == MipState::Failed;
        if (aim == Aim::Lateness) {
            plan.lateBound = result.bound;
            m_lateLimit = result.value;
        } else if (aim == Aim::Waste) {
            plan.wasteBound = result.bound;
            m_wasteLimit = result.value;
        }
    }
    plan.late = sum(Aim::Lateness, m_best);
    plan.waste = sum(Aim::Waste, m_best);
    if (m_limits.latenessOnly)
        plan.wasteBound = plan.waste;
    readStarts(plan);
    return plan;
}

void PlacementMaster::readStarts(PlacementPlan &plan)
{
    plan.starts.resize(m_pieces.size());
    const auto sets = byStretch(m_best);
    for (size_t b = 0; b < sets.size(); ++b) {
        if (sets[b].empty())
            continue;
        std::vector<int> starts;
        fitBlock(blockOf(static_cast<int>(b), sets[b], false), &starts, m_limits.steps);
        for (size_t k = 0; k < starts.size(); ++k)
            plan.starts[m_options[static_cast<size_t>(sets[b][k])].piece] =
                m_stretches[b].points[static_cast<size_t>(starts[k])];
    }
}

} // namespace rickyard::domain
