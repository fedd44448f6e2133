"""The simulation of bench_reorder.cpp in NumPy, vectorised over paths, for comparison.

Usage: reorder_numpy.py PATHS DAYS COOKS LOTS REPEATS
Prints one line: the median processor seconds of a run, the share of paths in which any cook runs short, and
the worst chance of a single cook. Same plan as bench_reorder.cpp (invented), other random numbers.

A path: every cook takes a lognormal amount from the lots that are dry by its day, in burn-first
order; an unplanned fire falls on a day with a chance of 4 %, and only the paths that have one on
that day are looked at; the fan is the 5, 50 and 95 % quantile
of the dry wood of each day. Work that cannot change anything is skipped as in the program: lots not
dry in any path, lots used up in every path, cooks that are served.
"""

import sys
import time

import numpy as np


def plan(days, cooks, lots):
    day = (np.arange(cooks) * (days - 5)) // cooks + 3
    ready = np.where(np.arange(lots) % 2 == 0, 0.0, (np.arange(lots) * days) / lots)
    return day, ready


def simulate(paths, days, cooks, lots, seed):
    rng = np.random.default_rng(seed)
    cook_day, lot_ready = plan(days, cooks, lots)
    # draws
    need = rng.standard_normal((cooks, paths))
    need *= np.log(1.2) / 1.6448536
    np.exp(need, out=need)
    need *= 150.0
    left = rng.standard_normal((lots, paths))
    left *= 0.1 * 165.0 * cooks / lots
    left += 165.0 * cooks / lots
    np.maximum(left, 0.0, out=left)
    ready = np.where(lot_ready[:, None] > 0.0, lot_ready[:, None] + 30.0 * rng.random((lots, paths)) - 15.0, 0.0)
    share = 1.0 - 0.05 * np.abs(rng.standard_normal(paths))
    lateness = np.array([0.0, 0.0, 0.0, 2.0, 7.0, 21.0])
    arrival = np.floor(10 + 7 + rng.choice(lateness, paths))
    arrival[rng.random(paths) < 0.02] = np.inf
    left = np.vstack([left, (300.0 * share)[None, :]])
    ready = np.vstack([ready, (arrival + 1.0)[None, :]])
    sources = lots + 1
    # Unplanned fires by their gaps, as (day, path, heat) in order of days: 4 % of the days only.
    most = int(days * 0.04 + 8.0 * np.sqrt(days * 0.04) + 8.0)
    fire_day = np.cumsum(rng.geometric(0.04, (paths, most)), axis=1) - 1
    fire_path, column_of = np.nonzero(fire_day < days)
    fire_day = fire_day[fire_path, column_of]
    order = np.argsort(fire_day, kind="stable")
    fire_day, fire_path = fire_day[order], fire_path[order]
    fire_heat = 40.0 * np.exp(rng.standard_normal(len(order)) * np.log(1.5) / 1.6448536)
    begin_of = np.searchsorted(fire_day, np.arange(days + 1))
    # course: what becomes dry by the end of each day
    change = np.zeros((days, paths))
    column = np.arange(paths)
    for s in range(sources):
        when = np.maximum(0.0, np.ceil(ready[s]) - 1.0)
        within = when < days
        change[when[within].astype(np.int64), column[within]] += left[s, within]
    # picking
    first = ready.min(axis=1)
    last = ready.max(axis=1)
    empty = np.zeros(sources, dtype=bool)
    taken = np.empty(paths)
    short = np.zeros((cooks, paths), dtype=bool)

    def burn(day, wanted):
        for s in range(sources):
            if empty[s] or first[s] > day:
                continue
            if last[s] <= day:
                np.minimum(left[s], wanted, out=taken)
            else:
                np.multiply(left[s], ready[s] <= day, out=taken)
                np.minimum(taken, wanted, out=taken)
            left[s] -= taken
            wanted -= taken
            if last[s] <= day and not left[s].any():
                empty[s] = True
            if not wanted.any():
                return

    following = 0
    for day in range(days):
        while following < cooks and cook_day[following] <= day:
            wanted = need[following].copy()
            burn(day, wanted)
            change[day] -= need[following] - wanted
            short[following] = wanted > 1e-9 * need[following]
            following += 1
        fires = slice(begin_of[day], begin_of[day + 1])
        who = fire_path[fires]
        if len(who):
            wanted = fire_heat[fires].copy()
            for t in range(sources):
                if empty[t] or first[t] > day:
                    continue
                there = left[t, who]
                usable = np.minimum(there * (ready[t, who] <= day), wanted)
                left[t, who] = there - usable
                wanted -= usable
                if not wanted.any():
                    break
            change[day, who] -= fire_heat[fires] - wanted
    dry = np.cumsum(change, axis=0, out=change)
    fan = np.empty((3, days))
    ranks = [int(p * (paths - 1)) for p in (0.05, 0.5, 0.95)]
    dry.partition(ranks, axis=1)
    fan[:] = dry[:, ranks].T
    return short.mean(axis=1), short.any(axis=0).mean(), fan


def main():
    paths, days, cooks, lots, repeats = (int(a) for a in sys.argv[1:6])
    times = []
    for r in range(repeats):
        begin = time.process_time()
        chances, any_short, _ = simulate(paths, days, cooks, lots, r + 1)
        times.append(time.process_time() - begin)
    print(f"{sorted(times)[len(times) // 2]:.6f} {any_short:.4f} {chances.max():.4f}")


main()
