# SPDX-License-Identifier: MIT
"""Independent implementations of `die-mass`, `rigged-lift`, `truck` and `cart`, to hold steelyard-cli against.

Written from statics and from docs/facts.md only, never from core/. Slow and plain on purpose, and by other routes
where there are any: elimination instead of determinants, the range of the one free tension of four legs instead of
its corners, the least-squares answer from its dual, the free load as the direction that lets the centre of gravity
hang lowest.

`assess` returns the quantities it can tell, each (kind, value) or (kind, (low, high)) where only a range is settled:
force and mass are told apart by the unit that the answer names, so `load` here is a share of the planned mass.
"""

import math

G = 9.80665                 # m/s2, exact by convention
KG_PER_LB = 0.45359237      # exact by definition, 1959
MM_PER_IN = 25.4            # exact by definition, 1959
N_PER_LBF = KG_PER_LB * G

# kg/m3; the upper end of a published range unless the source names a figure to plan with.
DENSITY = {
    'steel': 7850, 'cast-steel': 7800, 'tool-steel': 7800, 'tool-steel-d2': 7700, 'tool-steel-h13': 7800,
    'tool-steel-m2': 8160, 'cast-iron': 7400, 'grey-iron': 7200, 'ductile-iron': 7100, 'white-iron': 7700,
    'malleable-iron': 7400, 'stainless': 8000, 'aluminium': 2700, 'aluminium-7075': 2800, 'brass': 8600,
    'bronze': 8800, 'aluminium-bronze': 8700, 'beryllium-copper': 8250, 'copper': 8900, 'carbide': 15000,
    'polyurethane': 1200, 'nylon': 1100, 'rubber': 1300, 'zinc-alloy': 6700, 'oil': 900, 'water': 1000,
}
ALLOWANCE = {'weighed': 0, 'plate': 5, 'drawing': 10, 'estimated': 25}  # assumed, no source


class Cannot(Exception):
    """The geometry has no answer."""


# ---- Small algebra

def sub(a, b):
    return [x - y for x, y in zip(a, b)]


def dot(a, b):
    return math.fsum(x * y for x, y in zip(a, b))


def norm(a):
    return math.sqrt(dot(a, a))


def unit(a):
    n = norm(a)
    return [x / n for x in a]


def eliminate(matrix, right):
    """Gauss with full pivoting: (a solution, a basis of the null space) of matrix · x = right; Cannot when none."""
    rows, n = [list(r) + [b] for r, b in zip(matrix, right)], len(matrix[0])
    scale = max(abs(x) for r in matrix for x in r)
    used, columns = 0, []
    while used < len(rows):
        size, i, j = max(((abs(rows[i][j]), i, j) for i in range(used, len(rows)) for j in range(n)
                          if j not in columns), default=(0, 0, 0))
        if size <= 1e-11 * scale:
            break
        rows[used], rows[i] = rows[i], rows[used]
        pivot = rows[used][j]
        rows[used] = [x / pivot for x in rows[used]]
        for k in range(len(rows)):
            if k != used and rows[k][j] != 0:
                factor = rows[k][j]
                rows[k] = [x - factor * y for x, y in zip(rows[k], rows[used])]
        columns.append(j)
        used += 1
    if any(abs(r[n]) > 1e-9 for r in rows[used:]):
        raise Cannot('no solution')
    x = [0.0] * n
    for r, j in zip(rows, columns):
        x[j] = r[n]
    basis = []
    for free in (j for j in range(n) if j not in columns):
        vector = [0.0] * n
        vector[free] = 1.0
        for r, j in zip(rows, columns):
            vector[j] = -r[free]
        basis.append(vector)
    return x, basis


# ---- Level: the hook over the centre of gravity

def directions(points, hook):
    return [unit(sub(hook, p)) for p in points]


def balance(units):
    """The three equations sum of T · u = (0, 0, 1) as rows."""
    return [[u[k] for u in units] for k in range(3)], [0.0, 0.0, 1.0]


def clean(tensions):
    if min(tensions) < -1e-9:
        raise Cannot('a leg would have to push')
    return [max(t, 0.0) for t in tensions]


def worst_by_range(units):
    """Largest tension leg by leg: with one free tension the balancing sets are a segment; its two ends."""
    matrix, right = balance(units)
    start, basis = eliminate(matrix, right)
    if not basis:
        return clean(start)
    if len(basis) > 1:
        return worst_by_sets(units)
    along, low, high = basis[0], -math.inf, math.inf
    for t, d in zip(start, along):
        if abs(d) < 1e-12:
            clean([t])
        elif d > 0:
            low = max(low, -t / d)
        else:
            high = min(high, -t / d)
    if low > high + 1e-9:
        raise Cannot('no balancing set')
    return [max(0.0, t + d * low, t + d * high) for t, d in zip(start, along)]


def subsets(n, most):
    return [[i for i in range(n) if bits >> i & 1] for bits in range(1, 1 << n) if bin(bits).count('1') <= most]


def worst_by_sets(units):
    """The same by trying every set of at most three legs."""
    out, found = [0.0] * len(units), False
    for chosen in subsets(len(units), 3):
        matrix, right = balance([units[i] for i in chosen])
        try:
            x, basis = eliminate(matrix, right)
            if basis:
                continue
            x = clean(x)
        except Cannot:
            continue
        found = True
        for i, t in zip(chosen, x):
            out[i] = max(out[i], t)
    if not found:
        raise Cannot('no balancing set')
    return out


def least_squares_by_dual(units):
    """Equal stiffness, no leg pushes: T = max(0, u · y), where y solves sum of T · u = (0, 0, 1). Newton on y."""
    y = [0.0, 0.0, 1.0]
    for _ in range(200):
        tensions = [max(0.0, dot(u, y)) for u in units]
        off = [math.fsum(t * u[k] for t, u in zip(tensions, units)) - (k == 2) for k in range(3)]
        if norm(off) < 1e-15:
            break
        taut = [u for u, t in zip(units, tensions) if t > 0]
        slope = [[math.fsum(u[a] * u[b] for u in taut) for b in range(3)] for a in range(3)]
        step, _ = eliminate(slope, [-x for x in off])
        scale = 1.0
        while scale > 1e-6:
            trial = [a + scale * b for a, b in zip(y, step)]
            now = [max(0.0, dot(u, trial)) for u in units]
            left = norm([math.fsum(t * u[k] for t, u in zip(now, units)) - (k == 2) for k in range(3)])
            if left < norm(off):
                break
            scale /= 2
        else:
            break
        y = trial
    tensions = [max(0.0, dot(u, y)) for u in units]
    off = [math.fsum(t * u[k] for t, u in zip(tensions, units)) - (k == 2) for k in range(3)]
    if norm(off) > 1e-10:
        raise Cannot('no balancing set')
    return tensions


def least_squares_by_sets(units):
    """The same: of every set of legs the shortest answer, and of those without a push the shortest."""
    best = None
    for chosen in subsets(len(units), len(units)):
        rows = [units[i] for i in chosen]
        gram = [[math.fsum(u[a] * u[b] for u in rows) for b in range(3)] for a in range(3)]
        try:
            y, _ = eliminate(gram, [0.0, 0.0, 1.0])
            x = clean([dot(u, y) for u in rows])
        except Cannot:
            continue
        if best is None or norm(x) < norm(best):
            best = [0.0] * len(units)
            for i, t in zip(chosen, x):
                best[i] = t
    if best is None:
        raise Cannot('no balancing set')
    return best


def elastic(units):
    """In the plane the dual's normal equations are short of rank; there and below four legs the sets answer."""
    if len(units) < 4:
        return least_squares_by_sets(units)
    try:
        return least_squares_by_dual(units)
    except Cannot:
        return least_squares_by_sets(units)


def skew_error(units, weight, stiffness):
    """Length error of one leg of four, long or short, at which a first leg is slack: the tensions that balance by
    themselves are a multiple of one vector n (length 1), and an error m in leg j adds k m n_i n_j to leg i."""
    matrix, right = balance(units)
    _, basis = eliminate(matrix, right)
    if len(basis) != 1:
        return None
    n = unit(basis[0])
    even = least_squares_by_sets(units)
    if min(even) <= 1e-9:
        return None
    most = max(abs(x) for x in n)
    return min(weight * t / (stiffness * abs(x) * most) for t, x in zip(even, n) if abs(x) > 1e-12)


# ---- Free: the load turns until its centre of gravity hangs lowest

def reach(points, lengths, cg, up):
    """How far along `up` from the centre the hook may be before a leg is taut."""
    least = math.inf
    for p, length in zip(points, lengths):
        d = sub(cg, p)
        b, c = dot(up, d), dot(d, d) - length * length
        if c > 0:
            return -1.0
        least = min(least, -b + math.sqrt(b * b - c))
    return least


def turned(up, a, b):
    """A direction near another: moved by a and b at right angles to it."""
    first = unit([up[2], 0.0, -up[0]]) if abs(up[0]) + abs(up[2]) > 0.1 else [1.0, 0.0, 0.0]
    second = [up[1] * first[2] - up[2] * first[1], up[2] * first[0] - up[0] * first[2],
              up[0] * first[1] - up[1] * first[0]]
    return unit([u + a * f + b * s for u, f, s in zip(up, first, second)])


def climb(points, lengths, cg, up):
    """Roughly the nearest direction from which the centre cannot hang lower."""
    step, best = 0.3, reach(points, lengths, cg, up)
    for _ in range(150):
        ways = [turned(up, step * math.cos(k * math.pi / 4), step * math.sin(k * math.pi / 4)) for k in range(8)]
        far, way = max((reach(points, lengths, cg, way), way) for way in ways)
        if far > best:
            best, up = far, way
        elif step < 1e-4:
            break
        else:
            step *= 0.5
    return up, best


def polish(points, lengths, cg, hook, taut):
    """Newton on hook - cg = sum of m · (hook - point), |hook - point| = length, over the taut legs."""
    multipliers = None
    for _ in range(60):
        arms = [sub(hook, points[i]) for i in taut]
        if multipliers is None:
            gram = [[dot(a, b) for b in arms] for a in arms]
            multipliers, _ = eliminate(gram, [dot(a, sub(hook, cg)) for a in arms])
        n, size = len(taut), 3 + len(taut)
        matrix, right = [], []
        for k in range(3):
            row = [0.0] * size
            row[k] = 1 - math.fsum(multipliers)
            for j, arm in enumerate(arms):
                row[3 + j] = -arm[k]
            matrix.append(row)
            right.append(-(hook[k] - cg[k] - math.fsum(m * arm[k] for m, arm in zip(multipliers, arms))))
        for arm, i in zip(arms, taut):
            matrix.append([2 * x for x in arm] + [0.0] * n)
            right.append(lengths[i] * lengths[i] - dot(arm, arm))
        # Rows of lengths squared beside rows of lengths: each row by its largest member.
        scaled = [(r, b, max(abs(x) for x in r)) for r, b in zip(matrix, right)]
        step, _ = eliminate_loose([[x / s for x in r] for r, _, s in scaled], [b / s for _, b, s in scaled])
        hook = [h + d for h, d in zip(hook, step)]
        multipliers = [m + d for m, d in zip(multipliers, step[3:])]
        if norm(step[:3]) < 1e-13 * max(lengths):
            break
    return hook, multipliers


def settle(points, lengths, cg, near, far):
    """The place close to `near` that meets every condition of a lowest centre: which legs are taut is tried."""
    best = None
    for taut in subsets(len(points), 3):
        if any(abs(lengths[i] - norm(sub(near, points[i]))) > 0.05 * lengths[i] for i in taut):
            continue
        try:
            hook, multipliers = polish(points, lengths, cg, near, taut)
        except (Cannot, OverflowError):
            continue
        height = norm(sub(hook, cg))
        if (min(multipliers) >= 0 and height >= far - 1e-9 * far and norm(sub(hook, near)) < 0.1 * far
                and all(norm(sub(hook, p)) <= length * (1 + 1e-9) for p, length in zip(points, lengths))
                and (best is None or height > best[3])):
            best = (hook, taut, multipliers, height)
    if best is None:
        raise Cannot('the taut legs could not be told')
    return best[:3]


def eliminate_loose(matrix, right):
    """Partial pivoting of a square system that is known to have one answer."""
    rows, n = [list(r) + [b] for r, b in zip(matrix, right)], len(matrix)
    for k in range(n):
        i = max(range(k, n), key=lambda i: abs(rows[i][k]))
        if rows[i][k] == 0:
            raise Cannot('singular')
        rows[k], rows[i] = rows[i], rows[k]
        for i in range(k + 1, n):
            factor = rows[i][k] / rows[k][k]
            rows[i] = [x - factor * y for x, y in zip(rows[i], rows[k])]
    x = [0.0] * n
    for k in reversed(range(n)):
        x[k] = (rows[k][n] - math.fsum(rows[k][j] * x[j] for j in range(k + 1, n))) / rows[k][k]
    return x, []


KNOWN = {}  # answers already worked out: the maker of random loads asks first


def hang_free(points, lengths, cg):
    """dict hook, up, tilt, tensions (parts of the weight), slack (length to spare)."""
    key = repr((points, lengths, cg))
    if key not in KNOWN:
        KNOWN[key] = lowest(points, lengths, cg)
    return KNOWN[key]


def lowest(points, lengths, cg):
    starts = [[0.0, 0.0, 1.0]]
    for tilt, count in ((30, 5), (75, 6)):
        for k in range(count):
            a, b = math.radians(tilt), 2 * math.pi * (k + 0.3) / count
            starts.append([math.sin(a) * math.cos(b), math.sin(a) * math.sin(b), math.cos(a)])
    ends = []
    for start in starts:
        if reach(points, lengths, cg, start) <= 0:
            continue
        up, far = climb(points, lengths, cg, start)
        if far > 0 and not any(norm(sub(up, other[1])) < 0.01 for other in ends):
            ends.append((math.acos(max(-1.0, min(1.0, up[2]))), up, far))
    if not ends:
        raise Cannot('the legs do not meet')
    _, up, far = min(ends, key=lambda e: e[0])
    hook, taut, multipliers = settle(points, lengths, cg, [c + far * u for c, u in zip(cg, up)], far)
    up, height = unit(sub(hook, cg)), norm(sub(hook, cg))
    tensions, spare = [0.0] * len(points), [length - norm(sub(hook, p)) for p, length in zip(points, lengths)]
    for i, m in zip(taut, multipliers):
        tensions[i] = m * lengths[i] / height
        spare[i] = 0.0
    if min(spare) < -1e-7 * max(lengths):
        raise Cannot('a leg would be too short')
    return dict(hook=hook, up=up, tilt=math.degrees(math.atan2(math.hypot(up[0], up[1]), up[2])),
                tensions=tensions, slack=spare, height=height)


# ---- Plan outline

def hull(points):
    """Corners of the outline in plan, anticlockwise."""
    points = sorted(set((p[0], p[1]) for p in points))
    if len(points) < 3:
        return points
    cross = lambda o, a, b: (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

    def half(row):
        out = []
        for p in row:
            while len(out) > 1 and cross(out[-2], out[-1], p) <= 0:
                out.pop()
            out.append(p)
        return out[:-1]
    return half(points) + half(reversed(points))


def margin(points, at):
    """Distance in plan from the outline, negative outside; None without an area."""
    corners = hull(points)
    if len(corners) < 3:
        return None
    inside, least = True, math.inf
    for a, b in zip(corners, corners[1:] + corners[:1]):
        edge, way = (b[0] - a[0], b[1] - a[1]), (at[0] - a[0], at[1] - a[1])
        length = math.hypot(*edge)
        if edge[0] * way[1] - edge[1] * way[0] < 0:
            inside = False
        along = max(0.0, min(1.0, (edge[0] * way[0] + edge[1] * way[1]) / length ** 2))
        least = min(least, math.hypot(way[0] - along * edge[0], way[1] - along * edge[1]))
    return least if inside else -least


# ---- die-mass

def volume(body):
    if body['shape'] == 'block':
        return math.prod(body['size'])
    if body['shape'] == 'cylinder':
        return math.pi * body['diameter'] ** 2 / 4 * body['height']
    if body['shape'] == 'tube':
        return math.pi * (body['outer'] ** 2 - body['inner'] ** 2) / 4 * body['height']
    return body['area'] * body['height']


def density(body, units):
    if 'density' in body:
        return body['density'] * (1e-9 if units == 'metric' else 1)  # per mm3, per in3
    metric = DENSITY[body['material']]
    return metric * 1e-9 if units == 'metric' else metric * (MM_PER_IN / 1000) ** 3 / KG_PER_LB


def bodies_of(document):
    """(mass, place) of everything, pockets with a minus."""
    for body in document.get('bodies', []):
        if 'mass' in body:
            yield body['mass'], body['at']
            continue
        mass = volume(body) * density(body, document['units']) * (-1 if body.get('cut') else 1)
        if isinstance(body['at'][0], list):
            for at in body['at']:
                yield mass, at
        else:
            yield mass * body.get('count', 1), body['at']


def allowance(document, basis):
    return document['allowance_percent'] if 'allowance_percent' in document else ALLOWANCE[basis]


def die_mass(document):
    parts = list(bodies_of(document))
    out = {}
    computed = math.fsum(m for m, _ in parts)
    if parts and 'weighed' in document:
        out['mass_computed'] = ('same', computed)
    mass = document.get('weighed', computed)
    basis = document.get('mass_basis', 'weighed' if 'weighed' in document else 'drawing')
    out['mass'] = ('same', mass)
    out['mass_with_allowance'] = ('same', mass * (1 + allowance(document, basis) / 100))
    if parts:
        cg = [math.fsum(m * at[k] for m, at in parts) / computed for k in range(3)]
        size = max(abs(x) for _, at in parts for x in at)
        for k, axis in enumerate('xyz'):
            out['cg.' + axis] = ('place', cg[k], size)
        points = [p['at'] for p in document.get('points', [])]
        edge = margin(points, cg) if len(points) > 2 else None
        if edge is not None:
            out['points.margin'] = ('place', edge, size)
    return out


# ---- rigged-lift

def lift_parts(document):
    """(label, place, leg) of every straight part; a basket is two."""
    places = {p['label']: p['at'] for p in document['points']}
    for leg in document['legs']:
        labels = leg['point'] if isinstance(leg['point'], list) else [leg['point']]
        for label in labels:
            yield label, places[label], leg


def rigged_lift(document):
    units, out = document['units'], {}
    parts = list(lift_parts(document))
    points, cg = [at for _, at, _ in parts], document['cg']
    planned = document['mass'] * (1 + allowance(document, document.get('mass_basis')) / 100)
    lifted = planned * document.get('dynamic_factor', 1)
    weight = lifted * G / 1000 if units == 'metric' else lifted  # kN, lbf
    out['mass_with_allowance'] = ('same', planned)
    size = max(abs(x) for p in points + [cg] for x in p)
    if 'hook' in document:
        hook = document['hook'].get('at') or [cg[0], cg[1],
                                              max(p[2] for p in points) + document['hook']['above']]
        up, ways = [0.0, 0.0, 1.0], directions(points, hook)
        loads, even = worst_by_range(ways), elastic(ways)
        out['tilt'] = ('angle', 0.0)
        slack = [False] * len(points)
        edge = margin(points, cg)
        if edge is not None and cg[2] <= min(p[2] for p in points):
            out['margin'] = ('place', edge, size)
        if len(parts) == 4 and 'stiffness' in document:
            error = skew_error(ways, weight, document['stiffness'])
            if error is not None:
                out['skew.error'] = ('same', error)
    else:
        hung = hang_free(points, [leg['length'] for _, _, leg in parts], cg)
        hook, up, loads = hung['hook'], hung['up'], hung['tensions']
        even, slack = loads, [s > 0 for s in hung['slack']]
        ways = directions(points, hook)
        out['tilt'] = ('angle', hung['tilt'])
    size = max(size, max(abs(x) for x in hook))
    for k, axis in enumerate('xyz'):
        out['hook.' + axis] = ('place', hook[k], size)
    flattest = 0.0
    for (label, _, _), way, load, same, loose in zip(parts, ways, loads, even, slack):
        name = f'leg.{label}.'
        out[name + 'tension'] = ('load', load, lifted)
        out[name + 'load'] = ('load', load, lifted)
        out[name + 'elastic'] = ('load', same, lifted)
        if not loose:
            cosine = dot(way, up)
            angle = math.degrees(math.atan2(norm(sub(way, [cosine * u for u in up])), cosine))
            flattest = max(flattest, angle)
            out[name + 'angle'] = ('angle', angle)
            out[name + 'factor'] = ('same', 1 / cosine)
    out['angle.max'] = ('angle', flattest)
    elements(document, parts, loads, ways, lifted, out)
    return out


def plain(leg):
    """Nothing about the leg reduces what it can carry."""
    return (leg['hitch'] == 'straight' and leg['material'] == 'chain' and leg['edge'] == 'none'
            and not isinstance(leg['point'], list))


def elements(document, parts, loads, ways, lifted, out):
    """Demands: what hangs below an element is settled to a range where slings have a mass of their own."""
    factor = document.get('dynamic_factor', 1)
    hung, dates = 0.0, []
    for (label, _, leg), load, way in zip(parts, loads, ways):
        below, steep = 0.0, 1 / max(abs(way[2]), 1e-3)
        for element in leg.get('elements', []):
            dates.append(element.get('due'))
            own = element.get('own_mass', 0)
            if plain(leg) and element['kind'] != 'master-link':
                name = f'element.{label}.{element["label"]}.'
                demand = load * lifted
                out[name + 'demand'] = (('range', demand, demand + (below + own) * factor * steep)
                                        if below + own else ('same', demand))
                if element['rated_as'] == 'leg' and element['kind'] in ('sling', 'hoist-ring', 'shackle'):
                    out[name + 'capacity'] = ('same', element['wll'])
                    if not below + own:
                        out[name + 'utilisation'] = ('same', demand / element['wll'])
            below += own
        hung += below
    out['hook.load'] = ('range', lifted, lifted + hung * factor) if hung else ('load', 1.0, lifted)
    below = hung
    for item in document.get('suspension', []):
        dates.append(item.get('due'))
        name = f'suspension.{item["label"]}.'
        if hung or (below and factor != 1):
            out[name + 'demand'] = ('range', lifted, lifted + (below + item.get('own_mass', 0)) * factor)
        else:
            out[name + 'demand'] = ('same', lifted + below)
            out[name + 'utilisation'] = ('same', (lifted + below) / item['wll'])
        out[name + 'capacity'] = ('same', item['wll'])
        below += item.get('own_mass', 0)
    if dates and all(dates):
        out['valid_until'] = ('date', min(dates))


# ---- truck and cart

def truck(document):
    planned = document['mass'] * (1 + allowance(document, document.get('mass_basis')) / 100)
    rated, actual = document['rated_centre'], document['actual_centre']
    capacity = document['rating'] * min(1, rated / actual)
    out = {'mass_with_allowance': ('same', planned), 'capacity': ('same', capacity),
           'utilisation': ('same', planned / capacity)}
    if 'fulcrum' in document and actual >= rated:
        x = document['fulcrum']
        out['capacity_fulcrum'] = ('same', document['rating'] * (x + rated) / (x + actual))
    if 'due' in document:
        out['valid_until'] = ('date', document['due'])
    return out


def cart(document):
    weight = document['gross_mass'] * (G if document['units'] == 'metric' else 1)  # N, lbf
    slope = document['slope']
    if isinstance(slope, str):
        number, sign = slope.split()
        slope = math.degrees(math.atan(float(number) / 100)) if sign == '%' else float(number)
    sine, cosine = math.sin(math.radians(slope)), math.cos(math.radians(slope))
    rolling, start = document['rolling_coefficient'], document['start_factor']
    initial = weight * (start * rolling * cosine + sine)
    out = {'initial': ('same', initial), 'sustained': ('same', weight * (rolling * cosine + sine)),
           'hold': ('range', max(0.0, weight * (sine - rolling * cosine)), weight * sine)}
    sides = [document['track'] / 2, document['wheelbase'] / 2]
    choose = lambda f: ('either', f(sides[0]), f(sides[1]))
    out['tip.slope'] = choose(lambda b: math.degrees(math.atan2(b, document['cg_height'])))
    out['tip.deceleration'] = choose(lambda b: b / document['cg_height'])
    out['tip.push'] = choose(lambda b: weight * b / document['push_height'])
    if document['wheels'] == 4:
        out['wheel.load'] = ('load', 1 / 3, document['gross_mass'])  # three of four carry: assumed
    if 'due' in document:
        out['valid_until'] = ('date', document['due'])
    return out


METHODS = {'die-mass': die_mass, 'rigged-lift': rigged_lift, 'truck': truck, 'cart': cart}


def assess(document):
    return METHODS[document['method']](document)
