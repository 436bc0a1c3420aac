"""Optima of seeded assignment tables for tests/linear.rs: python3 crates/matching/peers/linear.py (needs scipy)."""

import numpy as np
from scipy.optimize import linear_sum_assignment


def table(seed, rows, columns, most):
    """Linear congruential costs, row by row."""
    out = np.empty(rows * columns, dtype=np.int64)
    s = seed
    for i in range(out.size):
        s = (1103515245 * s + 12345) % 2**31
        out[i] = (s >> 16) % most
    return out.reshape(rows, columns)


for seed, rows, columns, most in [
    (1, 8, 100, 1000), (2, 100, 100, 100), (3, 100, 100, 1000), (4, 200, 200, 100), (5, 60, 400, 10000), (6, 120, 70, 500),
    (7, 300, 300, 100), (8, 400, 400, 100),
]:
    costs = table(seed, rows, columns, most)
    print(f"({seed}, {rows}, {columns}, {most}, {costs[linear_sum_assignment(costs)].sum()}.0),")
