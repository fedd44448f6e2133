#include "models/domain/upkeep/placement_mip.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <csetjmp>
#include <limits>

namespace rickyard::domain {

namespace {

// Looser than GLPK's own 1e-5: what GLPK takes for whole must have been judged here.
constexpr double kWhole = 1e-4;
constexpr int kRepairEvery = 10; // nodes

// A row as GLPK wants it: from index 1.
struct GlpkRow {
    std::vector<int> index;
    std::vector<double> value;
    double limit = 0;
    bool exactly = false;
};

GlpkRow glpkRow(const MipRow &row)
{
    GlpkRow out;
    out.index.push_back(0);
    out.value.push_back(0);
    for (size_t i = 0; i < row.columns.size(); ++i) {
        out.index.push_back(row.columns[i] + 1);
        out.value.push_back(row.factors[i]);
    }
    out.limit = row.limit;
    out.exactly = row.exactly;
    return out;
}

// All that lives across GLPK's calls. An error inside GLPK jumps back to guarded() over the frames
// between, so nothing with a destructor may stand in a frame that calls GLPK: what those functions
// need is kept here.
class Search
{
public:
    Search(const MipModel &model, const MipHooks &hooks,
           const std::optional<std::vector<char>> &start)
        : m_model(model), m_hooks(hooks), m_x(model.costs.size() + 1)
    {
        for (const MipRow &row : model.rows)
            m_rows.push_back(glpkRow(row));
        for (const MipRow &row : model.lazy)
            m_pool.push_back(glpkRow(row));
        if (start)
            accept(*start);
        m_offer = start.has_value();
        m_floor = std::numeric_limits<double>::max();
    }
    MipResult run()
    {
        const int code = guarded(*this);
        m_result.bound = m_result.best ? m_result.value : 0;
        if (code == GLP_ESTOP)
            m_result.state = m_stopped ? MipState::Stopped : MipState::Limited;
        else
            m_result.state = code == 0 ? MipState::Proven : MipState::Failed;
        if (m_result.state != MipState::Proven || m_floor < std::numeric_limits<double>::max()) {
            const double known = std::min(m_state.bound, m_floor);
            const double least = std::ceil(known - 1e-6 * std::max(1.0, std::abs(known)));
            m_result.bound = known <= 0 ? 0 : std::min(m_result.bound, static_cast<qint64>(least));
        }
        if (m_result.state == MipState::Proven && m_result.bound < m_result.value)
            m_result.state = MipState::Limited;
        m_result.nodes = m_state.nodes;
        return m_result;
    }

private:
    struct State {
        double bound = -1;
        int nodes = 0;
        int repaired = -kRepairEvery;
    };

    static void onError(void *info) { std::longjmp(*static_cast<std::jmp_buf *>(info), 1); }
    static int onText(void *, const char *) { return 1; } // nothing goes to the terminal

    static int guarded(Search &search)
    {
        std::jmp_buf back;
        if (setjmp(back) != 0) { // NOLINT: GLPK has no other way out of an error
            glp_free_env();
            return -1;
        }
        glp_term_hook(onText, nullptr);
        glp_term_out(GLP_OFF);
        glp_error_hook(onError, &back);
        const int code = search.solve();
        glp_free_env();
        return code;
    }

    int solve()
    {
        glp_prob *problem = glp_create_prob();
        glp_set_obj_dir(problem, GLP_MIN);
        const int columns = static_cast<int>(m_model.costs.size());
        if (columns > 0)
            glp_add_cols(problem, columns);
        for (int j = 1; j <= columns; ++j) {
            glp_set_col_kind(problem, j, GLP_BV);
            glp_set_obj_coef(problem, j,
                             static_cast<double>(m_model.costs[static_cast<size_t>(j - 1)]));
        }
        for (size_t i = 0; i < m_model.zero.size(); ++i)
            glp_set_col_bnds(problem, m_model.zero[i] + 1, GLP_FX, 0, 0);
        for (size_t i = 0; i < m_rows.size(); ++i)
            addRow(problem, m_rows[i]);
        glp_smcp simplex;
        glp_init_smcp(&simplex);
        simplex.msg_lev = GLP_MSG_OFF;
        glp_adv_basis(problem, 0);
        int code = glp_simplex(problem, &simplex);
        if (code != 0 || glp_get_status(problem) != GLP_OPT)
            return -1;
        m_state.bound = glp_get_obj_val(problem);
        glp_iocp options;
        glp_init_iocp(&options);
        options.msg_lev = GLP_MSG_OFF;
        options.sr_heur = GLP_OFF; // it would take solutions that were not judged
        options.cov_cuts = GLP_ON;
        options.clq_cuts = GLP_ON;
        options.tol_obj = 1e-9;
        options.cb_func = onEvent;
        options.cb_info = this;
        code = glp_intopt(problem, &options);
        glp_delete_prob(problem);
        return code;
    }

    static void addRow(glp_prob *problem, const GlpkRow &row)
    {
        const int i = glp_add_rows(problem, 1);
        glp_set_row_bnds(problem, i, row.exactly ? GLP_FX : GLP_UP, row.limit, row.limit);
        glp_set_mat_row(problem, i, static_cast<int>(row.index.size()) - 1, row.index.data(),
                        row.value.data());
    }

    static void onEvent(glp_tree *tree, void *info)
    {
        auto *search = static_cast<Search *>(info);
        glp_ios_tree_size(tree, nullptr, nullptr, &search->m_state.nodes);
        const int best = glp_ios_best_node(tree);
        if (best != 0)
            search->m_state.bound = std::max(search->m_state.bound, glp_ios_node_bound(tree, best));
        if (search->over()) {
            glp_ios_terminate(tree);
            return;
        }
        const int reason = glp_ios_reason(tree);
        if (reason != GLP_IROWGEN && reason != GLP_IHEUR)
            return;
        glp_prob *problem = glp_ios_get_prob(tree);
        const int columns = glp_get_num_cols(problem);
        for (int j = 1; j <= columns; ++j)
            search->m_x[static_cast<size_t>(j)] = glp_get_col_prim(problem, j);
        if (reason == GLP_IROWGEN) {
            search->findCuts();
            for (size_t i = 0; i < search->m_found.size(); ++i)
                addRow(problem, search->m_found[i]);
        } else if (search->findRepair()) {
            glp_ios_heur_sol(tree, search->m_repair.data());
        }
    }

    bool over()
    {
        if (m_hooks.stop && m_hooks.stop())
            m_stopped = true;
        return m_stopped || m_broken || m_state.nodes > m_hooks.nodes;
    }

    // No exception may pass through GLPK: out of memory ends the search as a failure would.
    void findCuts()
    {
        try {
            m_found.clear();
            for (const GlpkRow &row : m_pool)
                if (breaks(row))
                    m_found.push_back(row);
            if (!m_found.empty() || !whole())
                return;
            std::vector<char> x(m_x.size() - 1);
            for (size_t j = 0; j < x.size(); ++j)
                x[j] = m_x[j + 1] > 0.5 ? 1 : 0;
            const MipHooks::Verdict verdict = m_hooks.judge(x);
            if (verdict.cuts.empty())
                accept(x);
            if (!verdict.certain)
                m_floor = std::min(m_floor, m_state.bound);
            for (const MipRow &row : verdict.cuts) {
                m_found.push_back(glpkRow(row));
                m_pool.push_back(m_found.back());
                if (verdict.certain)
                    m_result.learnt.push_back(row);
            }
        } catch (...) {
            m_broken = true;
        }
    }
    bool findRepair()
    {
        try {
            if (!m_offer && m_state.nodes - m_state.repaired < kRepairEvery)
                return false;
            m_state.repaired = m_state.nodes;
            if (m_hooks.repair) {
                const std::vector<double> x(m_x.begin() + 1, m_x.end());
                if (const auto found = m_hooks.repair(x))
                    m_offer |= accept(*found);
            }
            if (!m_offer || !m_result.best)
                return false;
            m_offer = false;
            m_repair.assign(m_x.size(), 0.0);
            for (size_t j = 0; j < m_result.best->size(); ++j)
                m_repair[j + 1] = (*m_result.best)[j];
            return true;
        } catch (...) {
            m_broken = true;
            return false;
        }
    }
    [[nodiscard]] bool whole() const
    {
        return std::all_of(m_x.begin() + 1, m_x.end(),
                           [](double x) { return std::abs(x - std::round(x)) <= kWhole; });
    }
    [[nodiscard]] bool breaks(const GlpkRow &row) const
    {
        double sum = 0;
        for (size_t i = 1; i < row.index.size(); ++i)
            sum += row.value[i] * m_x[static_cast<size_t>(row.index[i])];
        return sum > row.limit + 1e-3;
    }
    bool accept(const std::vector<char> &x)
    {
        qint64 value = 0;
        for (size_t j = 0; j < x.size(); ++j)
            value += x[j] != 0 ? m_model.costs[j] : 0;
        if (m_result.best && value >= m_result.value)
            return false;
        m_result.best = x;
        m_result.value = value;
        return true;
    }

    const MipModel &m_model;
    const MipHooks &m_hooks;
    std::vector<GlpkRow> m_rows;
    std::vector<GlpkRow> m_pool;
    std::vector<GlpkRow> m_found;
    std::vector<double> m_x; // from index 1
    std::vector<double> m_repair;
    MipResult m_result;
    State m_state;
    double m_floor = 0; // the bound before the first cut that is not certain
    bool m_offer = false;
    bool m_stopped = false;
    bool m_broken = false;
};

} // namespace

MipResult solveMip(const MipModel &model, const MipHooks &hooks,
                   const std::optional<std::vector<char>> &start)
{
    return Search(model, hooks, start).run();
}

} // namespace rickyard::domain
