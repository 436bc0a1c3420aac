"""A small job solved with general-purpose tools, for tests/reference.rs. Run with numpy 2.4, scipy 1.17:
    python job.py
Masses in grams, arms in inches, swing weight in points. Written from the model alone: total moment in oz.in, A0 at 161.
"""
import numpy as np
from scipy.optimize import least_squares

OZ = 28.349523125
# name: prior sd of every unknown, all of mean nought
sd = dict(delta=0.12, glue=0.4, tape=0.35, centre=0.1, cap_model=0.02, offset=0.2, gain=0.004)
for c in "ab":
    sd |= {f"{c}_{k}": v for k, v in dict(head=0.1, shaft=0.2, shaft_arm=0.06, glue=0.25, tape=0.2, grip=0.1,
                                          grip_arm=0.03, cap=0.006, length=0.03).items()}
names = list(sd)
CLUB = dict(a=dict(head=262.0, shaft=112.0, shaft_arm=17.4, length=36.5, wraps=1, grip=50.0),
            b=dict(head=269.0, shaft=110.5, shaft_arm=17.1, length=36.0, wraps=2, grip=48.5))


def swing_weight(x, c, stage):
    k, own = CLUB[c], lambda n: x[f"{c}_{n}"]
    cap = 0.12 + x["cap_model"] + own("cap") if stage == "finished" else 0.0
    things = [(k["head"] + own("head"), k["length"] + 0.1 + x["delta"] + own("length")),
              (k["shaft"] + own("shaft"), k["shaft_arm"] + own("shaft_arm"))]
    if stage != "dry":
        things += [(2.0 + x["glue"] + own("glue"), k["length"] - 0.6 + own("length"))]
    if stage == "finished":
        # the grip is balanced by itself, from the outside of its cap
        things += [(1.6 * k["wraps"] + k["wraps"] * x["tape"] + own("tape"), 5.2),
                   (k["grip"] + own("grip"), 4.0 + x["centre"] + own("grip_arm") - cap)]
    moment = sum(m * (arm + cap - 14) for m, arm in things) / OZ
    return (moment - 161) / 1.75


def shown(x, true):
    return true + x["offset"] + x["gain"] * (true * 1.75 + 161) / 1.75


READ = [("a", "dry", 34.10), ("a", "glued", 35.02), ("a", "finished", 25.31), ("b", "dry", 35.46), ("b", "dry", 35.62)]
S = np.hypot(0.06, 0.1 / np.sqrt(12))


def residuals(v):
    x = dict(zip(names, v * np.array([sd[n] for n in names])))
    r = list(v)
    r += [(value - shown(x, swing_weight(x, c, stage))) / S for c, stage, value in READ]
    r += [(261.9 - CLUB["a"]["head"] - x["a_head"]) / 0.05]
    r += [(30.05 - shown(x, 30.0)) / 0.03]
    return np.array(r)


fit = least_squares(residuals, np.zeros(len(names)), xtol=1e-15, ftol=1e-15, gtol=1e-15, jac="3-point")


def slope(f, h=1e-4):
    e = np.eye(len(names))
    return np.array([(f(fit.x + h * i) - f(fit.x - h * i)) / (2 * h) for i in e])


J = np.array([slope(lambda v, i=i: residuals(v)[i]) for i in range(len(fit.fun))])
P = np.linalg.inv(J.T @ J)
at = lambda v: dict(zip(names, v * np.array([sd[n] for n in names])))
for name, f in {
    "a finished true": lambda v: swing_weight(at(v), "a", "finished"),
    "b finished true": lambda v: swing_weight(at(v), "b", "finished"),
    "b glued true": lambda v: swing_weight(at(v), "b", "glued"),
    "b finished shown": lambda v: shown(at(v), swing_weight(at(v), "b", "finished")),
    "delta": lambda v: at(v)["delta"],
    "offset": lambda v: at(v)["offset"],
}.items():
    print(f"{name}: {f(fit.x):.9f} {np.sqrt(slope(f) @ P @ slope(f)):.9f}")
ga, gb = (slope(lambda v, c=c: swing_weight(at(v), c, "finished")) for c in "ab")
print(f"covariance of the two finishes: {ga @ P @ gb:.10f}")
print(f"chi-square {np.sum(fit.fun**2):.8f}")
noise = [S] * len(READ) + [0.05, 0.03]
print(f"log evidence {-0.5 * (np.sum(fit.fun**2) + np.sum(np.log(2 * np.pi * np.array(noise)**2)) + np.linalg.slogdet(J.T @ J)[1]):.8f}")
