# SPDX-License-Identifier: MIT
"""Who carries how much, a second time: level loads in exact fractions, the largest shares along the line of all answers
instead of set by set, leaning loads by solving for the upright instead of turning planes."""

import math
from fractions import Fraction

ZERO = Fraction(0)


def solve(rows, right):
    """Gauss with the largest pivot; None where there is no single answer."""
    n = len(rows)
    m = [list(row) + [r] for row, r in zip(rows, right)]
    for i in range(n):
        best = max(range(i, n), key=lambda k: abs(m[k][i]))
        if m[best][i] == 0:
            return None
        m[i], m[best] = m[best], m[i]
        for k in range(n):
            if k != i:
                by = m[k][i] / m[i][i]
                m[k] = [a - by * b for a, b in zip(m[k], m[i])]
    return [m[i][n] / m[i][i] for i in range(n)]


def two(places, at):
    (x0, y0), (x1, y1) = places
    dx, dy = x1 - x0, y1 - y0
    part = ((at[0] - x0) * dx + (at[1] - y0) * dy) / (dx * dx + dy * dy)
    return [1 - part, part]


def three(places, at):
    return solve([[1, 1, 1], [p[0] for p in places], [p[1] for p in places]], [1, at[0], at[1]])


def line_of_answers(places, at):
    """One answer and the direction in which all others lie, for four: what of the fourth the other three take."""
    base = three(places[:3], at)
    fourth = three(places[:3], places[3])
    return base + [type(base[0])(0)], [-f for f in fourth] + [type(base[0])(1)]


def ends(base, along, slack):
    """The two ends of the line on which nobody pulls down; None: there is none."""
    low, high = -math.inf, math.inf
    for b, a in zip(base, along):
        if a > 0:
            low = max(low, -b / a)
        elif a < 0:
            high = min(high, -b / a)
        elif b < -slack:
            return None
    return (low, high) if low <= high + slack else None


def shares(places, at, slack=0):
    """Largest share of each, equally stiff shares; None: it tips."""
    if len(places) < 4:
        one = (two if len(places) == 2 else three)(places, at)
        return None if min(one) < -slack else (one, one)
    base, along = line_of_answers(places, at)
    reach = ends(base, along, slack)
    if reach is None:
        return None
    at_ends = [[b + a * s for b, a in zip(base, along)] for s in reach]
    # the shortest answer of them all: where the line is nearest to nothing, within its ends
    s = -sum(b * a for b, a in zip(base, along)) / sum(a * a for a in along)
    s = min(max(s, reach[0]), reach[1])
    return [max(pair) for pair in zip(*at_ends)], [b + a * s for b, a in zip(base, along)]


def upright(places, heights, slope_deg, uphill):
    """Up, in the coordinates of the load: by Newton on what must hold, from the level."""
    t = math.radians(slope_deg)
    # square to the ground: the plane of the hands is as far from it as heights × cos says
    mx = sum(p[0] for p in places) / len(places)
    my = sum(p[1] for p in places) / len(places)
    mh = sum(heights) / len(heights)
    if len(places) == 2:
        dx, dy = places[1][0] - places[0][0], places[1][1] - places[0][1]
        rise = (heights[1] - heights[0]) / (dx * dx + dy * dy)
        slope = [rise * dx, rise * dy]
    else:
        sxx = sum((p[0] - mx) ** 2 for p in places)
        syy = sum((p[1] - my) ** 2 for p in places)
        sxy = sum((p[0] - mx) * (p[1] - my) for p in places)
        sxh = sum((p[0] - mx) * (h - mh) for p, h in zip(places, heights))
        syh = sum((p[1] - my) * (h - mh) for p, h in zip(places, heights))
        slope = solve([[sxx, sxy], [sxy, syy]], [sxh, syh])
    normal = [s * math.cos(t) for s in slope]
    normal.append(math.sqrt(1 - normal[0] ** 2 - normal[1] ** 2))
    if t == 0:
        return normal
    # up = a × normal + b × uphill in the load, of length 1 and at the angle of the slope to the normal
    length = math.hypot(*uphill)
    along = [uphill[0] / length, uphill[1] / length, 0.0]
    through = sum(a * b for a, b in zip(normal, along))
    b = math.sin(t) / math.sqrt(1 - through * through)
    a = math.cos(t) - b * through
    return [a * n + b * u for n, u in zip(normal, along)]


def acts_at(cg, up):
    """Where the vertical through the centre meets the plane of the hands."""
    return [cg[0] - cg[2] * up[0] / up[2], cg[1] - cg[2] * up[1] / up[2]]


def exact(places, at):
    return shares([[Fraction(v) for v in p] for p in places], [Fraction(v) for v in at])
