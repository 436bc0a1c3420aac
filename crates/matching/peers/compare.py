"""General solvers on the same instances, at the same integer cost.

    cargo build --release -p matching --example instance
    pip install ortools highspy
    python3 crates/matching/peers/compare.py BINARY M Plain 4 1 10
    python3 crates/matching/peers/compare.py BINARY S Plain 0 1 10

BINARY is target/release/examples/instance; the numbers after the seed are seconds. One thread each. Prints rows of a
table: objective and bound of this crate's solver, of OR-Tools CP-SAT and of HiGHS, all in quanta, and the seconds of the
processor that each had (building its model included). The general solvers go by the wall clock; on a busy machine give
them more of it with 10:60, say.

Formulation, over types of equal parts with counts (as this crate's solver sees them), every club built, which is
possible in Plain and TwoHeadModels:

    x[c,k,i] in {0,1}   club c takes type i of kind k (head, shaft, grip); exactly one of each kind
    t[c,o]   in {0,1}   tip option o (none, one or two weights); exactly one
    sum over clubs of x[c,k,i] <= count of type i; the same for weights of the tray
    lo[s] <= sum r[c,i] x[c,shaft,i] <= hi[s]   for the clubs c of set s; cost 10 quanta a tenth of a gram of hi - lo
    d[c] = base + sum of points, within the curve's reach; cost loss[c][d[c]] + cost of the tip option

CP-SAT looks the loss up by an element constraint, so its objective is exact. HiGHS has no such thing: the curve is cut
into bins of 0.02 point, a binary each, that cost the least loss inside the bin. Its bound is therefore a bound of the
exact problem; its plan's cost is counted anew with the exact curve.
"""

import json
import os
import subprocess
import sys
import time

import highspy
import numpy as np
from ortools.sat.python import cp_model

KINDS = ["heads", "shafts", "grips"]
BIN = 20


def typed(instance):
    """Groups parts that look the same in every club that lists them."""
    clubs = [(s, c) for s, set_ in enumerate(instance["sets"]) for c in set_]
    counts, lists = {}, {}
    for kind in KINDS:
        looks = {}
        for at, (_, club) in enumerate(clubs):
            for part, points, residual in club[kind]:
                looks.setdefault(part, []).append((at, points, residual if kind == "shafts" else 0))
        types, count = {}, []
        for part, look in looks.items():
            ty = types.setdefault(tuple(look), len(count))
            if ty == len(count):
                count.append(0)
            count[ty] += instance[kind][part]
        counts[kind] = count
        lists[kind] = [[] for _ in clubs]
        for look, ty in types.items():
            for at, points, residual in look:
                lists[kind][at].append((ty, points, residual))
    return clubs, counts, lists


def cp_sat(instance, seconds):
    clubs, counts, lists = typed(instance)
    m = cp_model.CpModel()
    used = {(k, i): [] for k in KINDS for i in range(len(counts[k]))}
    tray = [[] for _ in instance["tips"]]
    cost, lo, hi = [], [], []
    for _ in instance["sets"]:
        lo.append(m.new_int_var(-1000, 1000, ""))
        hi.append(m.new_int_var(-1000, 1000, ""))
        cost.append(instance["range_per_dg"] * (hi[-1] - lo[-1]))
    for at, (s, club) in enumerate(clubs):
        points = club["base"]
        for kind in KINDS:
            x = [m.new_bool_var("") for _ in lists[kind][at]]
            m.add_exactly_one(x)
            points += sum(p * v for (_, p, _), v in zip(lists[kind][at], x))
            for (ty, _, _), v in zip(lists[kind][at], x):
                used[kind, ty].append(v)
            if kind == "shafts":
                residual = sum(r * v for (_, _, r), v in zip(lists[kind][at], x))
                m.add(lo[s] <= residual)
                m.add(hi[s] >= residual)
        t = [m.new_bool_var("") for _ in club["tips"]]
        m.add_exactly_one(t)
        for option, v in zip(club["tips"], t):
            points += option[0] * v
            cost.append(option[1] * v)
            for w in option[2:]:
                tray[w].append(v)
        half = len(club["loss"]) // 2
        allowed = [i for i, x in enumerate(club["loss"]) if x >= 0]
        index = m.new_int_var(allowed[0], allowed[-1], "")
        m.add(index == points + half)
        loss = m.new_int_var(0, max(club["loss"]), "")
        m.add_element(index, [max(x, 0) for x in club["loss"]], loss)
        cost.append(loss)
    for (kind, ty), vs in used.items():
        if len(vs) > counts[kind][ty]:
            m.add(sum(vs) <= counts[kind][ty])
    for w, vs in enumerate(tray):
        m.add(sum(vs) <= instance["tips"][w])
    m.minimize(sum(cost))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    # Its portfolio in turns on one core: alone, its default search finds no plan of S in ten seconds.
    solver.parameters.interleave_search = True
    solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(m)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return (solver.objective_value if found else None), solver.best_objective_bound


class Rows:
    """A mixed-integer programme, column by column."""

    def __init__(self):
        self.cost, self.upper, self.integer, self.lower = [], [], [], []
        self.rows = []

    def var(self, cost, low=0.0, up=1.0, integer=True):
        self.cost.append(cost)
        self.lower.append(low)
        self.upper.append(up)
        self.integer.append(integer)
        return len(self.cost) - 1

    def row(self, low, terms, up):
        self.rows.append((low, terms, up))


def high_s(instance, seconds):
    clubs, counts, lists = typed(instance)
    p = Rows()
    used = {(k, i): [] for k in KINDS for i in range(len(counts[k]))}
    tray = [[] for _ in instance["tips"]]
    per_dg = instance["range_per_dg"]
    lo = [p.var(-per_dg, -1000, 1000, False) for _ in instance["sets"]]
    hi = [p.var(per_dg, -1000, 1000, False) for _ in instance["sets"]]
    taken = []
    for at, (s, club) in enumerate(clubs):
        points, mine = [], []
        for kind in KINDS:
            x = [(p.var(0), c) for c in lists[kind][at]]
            p.row(1, [(v, 1) for v, _ in x], 1)
            points += [(v, c[1]) for v, c in x]
            mine += x
            for v, c in x:
                used[kind, c[0]].append((v, 1))
            if kind == "shafts":
                residual = [(v, c[2]) for v, c in x]
                p.row(0, residual + [(lo[s], -1)], np.inf)
                p.row(-np.inf, residual + [(hi[s], -1)], 0)
        t = [(p.var(o[1]), o) for o in club["tips"]]
        p.row(1, [(v, 1) for v, _ in t], 1)
        points += [(v, o[0]) for v, o in t]
        for v, o in t:
            for w in set(o[2:]):
                tray[w].append((v, o[2:].count(w)))
        half = len(club["loss"]) // 2
        bins = []
        for first in range(0, len(club["loss"]), BIN):
            piece = [(i, x) for i, x in enumerate(club["loss"][first : first + BIN], first) if x >= 0]
            if piece:
                b = p.var(min(x for _, x in piece))
                bins.append((b, piece[0][0] - half, piece[-1][0] - half))
        p.row(1, [(b, 1) for b, _, _ in bins], 1)
        p.row(-np.inf, points + [(b, -up) for b, _, up in bins], -club["base"])
        p.row(-club["base"], points + [(b, -low) for b, low, _ in bins], np.inf)
        taken.append((s, club, half, mine, t))
    for (kind, ty), terms in used.items():
        if len(terms) > counts[kind][ty]:
            p.row(-np.inf, terms, counts[kind][ty])
    for w, terms in enumerate(tray):
        p.row(-np.inf, terms, instance["tips"][w])
    h = solve_rows(p, seconds)
    info = h.getInfo()
    bound = info.mip_dual_bound
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return None, bound
    return recount(instance, taken, np.array(h.getSolution().col_value)), bound


def solve_rows(p, seconds):
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(p.cost), len(p.rows)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = (np.array(x, float) for x in (p.cost, p.lower, p.upper))
    lp.row_lower_ = np.array([r[0] for r in p.rows], float)
    lp.row_upper_ = np.array([r[2] for r in p.rows], float)
    starts, index, value = [0], [], []
    for _, terms, _ in p.rows:
        index += [v for v, _ in terms]
        value += [x for _, x in terms]
        starts.append(len(index))
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_, lp.a_matrix_.index_ = np.array(starts), np.array(index)
    lp.a_matrix_.value_ = np.array(value, float)
    kind = highspy.HighsVarType
    lp.integrality_ = [kind.kInteger if x else kind.kContinuous for x in p.integer]
    h = highspy.Highs()
    h.silent()
    h.setOptionValue("threads", 1)
    h.setOptionValue("time_limit", float(seconds))
    h.setOptionValue("mip_rel_gap", 0.0)
    h.passModel(lp)
    h.run()
    return h


def recount(instance, taken, x):
    """Exact cost of a plan."""
    cost, residuals = 0, [[] for _ in instance["sets"]]
    for s, club, half, mine, t in taken:
        chosen = [c for v, c in mine if x[v] > 0.5]
        option = next(o for v, o in t if x[v] > 0.5)
        points = club["base"] + sum(c[1] for c in chosen) + option[0]
        residuals[s].append(chosen[1][2])
        cost += club["loss"][points + half] + option[1]
    return cost + sum(instance["range_per_dg"] * (max(r) - min(r)) for r in residuals)


def busy():
    """Processor seconds of this process and of those it started."""
    return time.process_time() + sum(os.times()[2:4])


def main():
    binary, size, variant, seed, *limits = sys.argv[1:]

    def ask(*more):
        command = [binary, size, variant, seed, *more]
        return json.loads(subprocess.run(command, check=True, capture_output=True).stdout)

    instance = ask()
    print("| instance | s | solver | objective | bound | gap % | processor s |\n|---|---|---|---|---|---|---|")
    for told in limits:
        limit, wall = (told.split(":") * 2)[:2]
        for name in ["setwright", "CP-SAT", "HiGHS"]:
            start = busy()
            if name == "setwright":
                got = ask(limit)
                objective, bound = got["cost"], got["bound"]
            else:
                objective, bound = (cp_sat if name == "CP-SAT" else high_s)(instance, float(wall))
            took = busy() - start
            gap = f"{100 * (objective - bound) / objective:.2f}" if objective else "–"
            plan = f"{objective:.0f}" if objective else "none"
            print(f"| {size} {variant} {seed} | {limit} | {name} | {plan} | {bound:.0f} | {gap} | {took:.1f} |", flush=True)


if __name__ == "__main__":
    main()
