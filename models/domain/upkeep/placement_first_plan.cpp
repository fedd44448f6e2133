// Good plans without proof: a first one, and others out of what the program broke off.
#include "models/domain/upkeep/placement_master.h"

#include <algorithm>
#include <numeric>

namespace rickyard::domain {

namespace {

constexpr int kRounds = 60;
constexpr int kLooks = 2000; // checks of one polishing

} // namespace

// The last stretch in which a piece does not make one that must come after it later than need be.
void PlacementMaster::findLastGood()
{
    m_lastGood.assign(m_ofPiece.size(), static_cast<int>(m_stretches.size()));
    std::vector<int> turn = turns(std::vector<double>(m_ofPiece.size(), 0));
    for (auto it = turn.rbegin(); it != turn.rend(); ++it) {
        const auto j = static_cast<size_t>(*it);
        const int after = m_pieces.at(*it).after;
        if (after < 0 || m_ofPiece[j].empty())
            continue;
        int last = -1;
        qint64 least = m_pieces.at(*it).leftOut;
        for (const int o : m_ofPiece[j]) {
            const MasterOption &option = m_options[static_cast<size_t>(o)];
            if (option.late < least || (option.late == least && option.stretch > last)) {
                least = option.late;
                last = option.stretch;
            }
        }
        int &limit = m_lastGood[static_cast<size_t>(after)];
        limit = std::min({limit, last, m_lastGood[j]});
    }
}

bool PlacementMaster::keepsLimits(const Choice &choice) const
{
    return !(m_lateLimit && sum(Aim::Lateness, choice) > *m_lateLimit) &&
           !(m_wasteLimit && sum(Aim::Waste, choice) > *m_wasteLimit);
}

std::vector<int> PlacementMaster::turns(const std::vector<double> &priority) const
{
    std::vector<int> wanted(m_ofPiece.size());
    std::iota(wanted.begin(), wanted.end(), 0);
    std::stable_sort(wanted.begin(), wanted.end(), [&](int a, int b) {
        return priority[static_cast<size_t>(a)] > priority[static_cast<size_t>(b)];
    });
    std::vector<char> taken(m_ofPiece.size(), 0);
    std::vector<int> turn;
    for (const int piece : wanted) {
        const auto mark = static_cast<std::ptrdiff_t>(turn.size());
        for (int j = piece; j >= 0 && taken[static_cast<size_t>(j)] == 0;
             j = m_pieces.at(j).after) {
            taken[static_cast<size_t>(j)] = 1;
            turn.push_back(j);
        }
        std::reverse(turn.begin() + mark, turn.end());
    }
    return turn;
}

PlacementMaster::Choice PlacementMaster::build(const std::vector<double> &priority,
                                               const std::vector<double> *wish)
{
    const auto rank = [&](int o) {
        const MasterOption &option = m_options[static_cast<size_t>(o)];
        const double wished = wish != nullptr ? (*wish)[static_cast<size_t>(o)] : 0;
        const bool holdsUp = option.stretch > m_lastGood[static_cast<size_t>(option.piece)];
        return std::make_tuple(-wished, holdsUp, option.late, option.waste, option.stretch);
    };
    Choice choice(m_options.size() + m_ofPiece.size(), 0);
    std::vector<std::vector<int>> sets(m_stretches.size());
    std::vector<int> last(m_ofPiece.size(), -1); // stretch of each piece
    for (const int piece : turns(priority)) {
        const auto j = static_cast<size_t>(piece);
        std::vector<int> options = m_ofPiece[j];
        std::stable_sort(options.begin(), options.end(),
                         [&](int a, int b) { return rank(a) < rank(b); });
        const int after = m_pieces.at(piece).after;
        const int from = after >= 0 ? last[static_cast<size_t>(after)] : 0;
        size_t column = m_options.size() + j;
        for (const int o : options) {
            const int b = m_options[static_cast<size_t>(o)].stretch;
            std::vector<int> set = sets[static_cast<size_t>(b)];
            set.insert(std::lower_bound(set.begin(), set.end(), o), o);
            if (from < 0 || b < from || fits(b, set, true) != BlockFit::Fits)
                continue;
            sets[static_cast<size_t>(b)] = set;
            last[j] = b;
            column = static_cast<size_t>(o);
            break;
        }
        choice[column] = 1;
    }
    return choice;
}

bool PlacementMaster::keepsOrder(const std::vector<int> &columns, int piece, int stretch) const
{
    const auto stretchOf = [&](int j) {
        const auto column = static_cast<size_t>(columns[static_cast<size_t>(j)]);
        return column < m_options.size() ? m_options[column].stretch : -1;
    };
    const int after = m_pieces.at(piece).after;
    if (after >= 0 && (stretchOf(after) < 0 || stretchOf(after) > stretch))
        return false;
    for (int j = 0; j < m_pieces.size(); ++j)
        if (m_pieces.at(j).after == piece && stretchOf(j) >= 0 && stretchOf(j) < stretch)
            return false;
    return true;
}

// One move that makes a plan less late: a piece to a better place, if need be with one other moved
// out of its way.
bool PlacementMaster::lessLate(std::vector<std::vector<int>> &sets, std::vector<int> &columns)
{
    const auto late = [this](int column) {
        return cost(Aim::Lateness, static_cast<size_t>(column));
    };
    const auto move = [&](int piece, int to) {
        int &column = columns[static_cast<size_t>(piece)];
        const auto swap = [&](int c, bool in) {
            if (c >= static_cast<int>(m_options.size()))
                return;
            auto &set = sets[static_cast<size_t>(m_options[static_cast<size_t>(c)].stretch)];
            const auto at = std::lower_bound(set.begin(), set.end(), c);
            in ? void(set.insert(at, c)) : void(set.erase(at));
        };
        swap(column, false);
        swap(column = to, true);
    };
    const auto fine = [&](int piece, int stretch) {
        return keepsOrder(columns, piece, stretch) && --m_looks > 0 &&
               fits(stretch, sets[static_cast<size_t>(stretch)], true) == BlockFit::Fits;
    };
    const auto spent = [this] { return m_looks <= 0 || m_work <= 0; };
    for (int j = 0; j < m_pieces.size() && !spent(); ++j)
        for (const int to : m_ofPiece[static_cast<size_t>(j)]) {
            const int from = columns[static_cast<size_t>(j)];
            const qint64 gain = late(from) - late(to);
            if (gain <= 0)
                continue;
            const int b = m_options[static_cast<size_t>(to)].stretch;
            move(j, to);
            if (fine(j, b))
                return true;
            const std::vector<int> others = sets[static_cast<size_t>(b)];
            for (const int out : others) {
                const int k = m_options[static_cast<size_t>(out)].piece;
                if (k == j || spent())
                    continue;
                for (const int instead : m_ofPiece[static_cast<size_t>(k)]) {
                    const int other = m_options[static_cast<size_t>(instead)].stretch;
                    if (other == b || late(instead) - late(out) >= gain)
                        continue;
                    move(k, instead);
                    if (fine(j, b) && fine(k, other))
                        return true;
                    move(k, out);
                }
            }
            move(j, from);
        }
    return false;
}

PlacementMaster::Choice PlacementMaster::polished(const Choice &choice)
{
    std::vector<std::vector<int>> sets = byStretch(choice);
    std::vector<int> columns(m_ofPiece.size());
    for (size_t c = 0; c < choice.size(); ++c)
        if (choice[c] != 0)
            columns[c < m_options.size() ? static_cast<size_t>(m_options[c].piece)
                                         : c - m_options.size()] = static_cast<int>(c);
    m_looks = kLooks;
    while (!(m_limits.stop && m_limits.stop()) && lessLate(sets, columns)) {
    }
    Choice better(choice.size(), 0);
    for (const int column : columns)
        better[static_cast<size_t>(column)] = 1;
    return better;
}

// Squeaky wheel (Joslin and Clements, J. AI Research 10, 1999): pieces that come off badly come
// earlier in the next round. The program proves or betters what is found here.
void PlacementMaster::squeak()
{
    std::vector<double> priority;
    std::vector<qint64> least;
    for (size_t j = 0; j < m_ofPiece.size(); ++j) {
        priority.push_back(static_cast<double>(cost(Aim::Lateness, m_options.size() + j)));
        least.push_back(cost(Aim::Lateness, m_options.size() + j));
        for (const int o : m_ofPiece[j])
            least[j] = std::min(least[j], cost(Aim::Lateness, static_cast<size_t>(o)));
    }
    const auto worth = [this](const Choice &choice) {
        return std::make_pair(sum(Aim::Lateness, choice), sum(Aim::Waste, choice));
    };
    for (int round = 0; round < kRounds; ++round) {
        const Choice choice = build(priority, nullptr);
        if (m_best.empty() || worth(choice) < worth(m_best))
            m_best = choice;
        bool squeaks = false;
        for (size_t c = 0; c < choice.size(); ++c) {
            const size_t j = c < m_options.size() ? static_cast<size_t>(m_options[c].piece)
                                                  : c - m_options.size();
            const qint64 excess = choice[c] != 0 ? cost(Aim::Lateness, c) - least[j] : 0;
            priority[j] += static_cast<double>(excess);
            squeaks = squeaks || excess > 0;
        }
        if (!squeaks || (m_limits.stop && m_limits.stop()))
            break;
    }
    const Choice better = polished(m_best);
    if (worth(better) < worth(m_best))
        m_best = better;
}

} // namespace rickyard::domain
