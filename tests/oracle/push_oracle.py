# SPDX-License-Identifier: MIT
"""Pushing, pulling and sliding a second time, from the printed formulas and tables, with the library's own logarithm and
error function. Forces in N or lbf."""

import math

G = 9.80665
LB = 0.45359237
Z = {90: 1.2815515655446004, 75: 0.6744897501960817, 50: 0.0}

# Snook and Ciriello 1991 at 2.1 m, from memory: 6 s, 12 s, 1, 2, 5, 30 min, 8 h; 90/75/50 %.
TABLE = """
M push initial 144 | 20/26/32 22/29/36 25/32/40 25/32/40 26/34/42 26/34/42 31/41/51
M push initial 95 | 21/28/34 24/31/38 26/34/43 26/34/43 28/36/45 28/36/45 34/44/54
M push initial 64 | 19/25/31 22/28/35 24/31/38 24/31/38 25/33/40 26/33/41 31/40/49
M push sustained 144 | 10/13/17 13/17/22 15/21/27 16/22/28 18/24/31 18/25/32 22/30/38
M push sustained 95 | 10/14/18 13/18/23 16/22/28 17/22/29 19/25/33 19/26/34 23/32/41
M push sustained 64 | 10/14/18 13/18/23 16/21/28 16/22/29 18/25/32 19/26/33 23/31/40
M pull initial 144 | 14/17/20 16/19/23 18/22/26 18/22/26 19/23/28 19/24/28 23/28/33
M pull initial 95 | 19/23/28 22/27/32 25/31/36 25/31/36 27/32/39 27/33/39 32/39/47
M pull initial 64 | 22/27/32 25/30/36 28/34/41 28/34/41 30/37/44 30/37/44 36/44/53
M pull sustained 144 | 8/10/13 10/13/16 12/16/20 13/17/21 15/19/23 15/20/24 18/23/28
M pull sustained 95 | 10/13/16 13/17/21 16/21/26 17/22/27 19/25/31 20/26/32 24/31/38
M pull sustained 64 | 11/14/17 14/19/23 17/23/28 18/24/29 20/27/33 21/28/34 25/33/40
W push initial 135+89 | 14/17/20 15/18/22 17/21/25 18/22/26 20/24/29 21/25/30 22/27/32
W push initial 57 | 11/14/16 12/15/17 14/17/20 14/17/21 16/19/23 17/20/24 18/21/25
W push sustained 135 | 6/9/12 8/12/16 10/14/19 10/14/20 11/16/21 12/17/23 14/21/28
W push sustained 57 | 5/7/10 6/9/13 8/11/15 8/12/16 9/13/17 9/14/18 12/17/23
W pull initial 135 | 13/16/19 16/19/22 17/20/24 18/21/25 20/24/28 21/25/29 22/26/31
W pull initial 89 | 14/16/19 16/19/23 18/21/25 19/22/26 21/25/29 22/26/30 23/27/32
W pull initial 57 | 15/17/20 17/20/24 19/22/26 20/23/27 22/26/30 23/27/32 24/28/33
W pull sustained 135 | 6/8/10 9/12/16 10/13/17 10/14/18 11/15/19 12/16/21 15/20/25
W pull sustained 57 | 5/7/9 8/11/14 9/12/15 9/12/16 10/13/17 11/14/18 13/18/23
"""
MINUTES = [0.1, 0.2, 1, 2, 5, 30, 480]
# Men, push, start, 95 cm, 90 %; intervals in minutes (from memory).
LONG = [(7.6, {.25: 16, 22 / 60: 18, 1: 23, 2: 23, 5: 25, 30: 25, 480: 30}),
        (15.2, {25 / 60: 18, 35 / 60: 21, 1: 22, 2: 22, 5: 23, 30: 24, 480: 28}),
        (30.5, {1: 17, 2: 19, 5: 22, 30: 22, 480: 27}), (45.7, {1: 14, 2: 16, 5: 19, 30: 19, 480: 23}),
        (61, {2: 14, 5: 16, 30: 16, 480: 20})]


def read_table():
    out = {}
    for line in TABLE.strip().splitlines():
        name, cells = line.split('|')
        sex, way, force, heights = name.split()
        for height in heights.split('+'):
            out.setdefault((sex, way, force), {})[int(height)] = [tuple(map(int, c.split('/'))) for c in cells.split()]
    return out


ROWS = read_table()


def column(intervals, per_min):
    """The longest printed interval that is not longer than the one asked for."""
    fitting = [m for m in intervals if m <= 1 / per_min * (1 + 1e-9)]
    return max(fitting) if fitting else None


def neighbours(sex, way, force, height):
    at = ROWS[sex, way, force]
    above = [h for h in at if h >= height - 1e-9]
    below = [h for h in at if h <= height + 1e-9]
    return {min(above), max(below)} if above and below else set()


def cells(sex, way, force, height, distance, per_min):
    minutes = column(MINUTES, per_min)
    if minutes is None or distance > 2.1 + 1e-9:
        return []
    return [ROWS[sex, way, force][h][MINUTES.index(minutes)] for h in neighbours(sex, way, force, height)]


def long_way(sex, way, force, height, distance, per_min):
    if (sex, way, force) != ('M', 'push', 'initial') or distance <= 2.1 + 1e-9 or column(MINUTES, per_min) is None:
        return None
    if not neighbours(sex, way, force, height):
        return None
    found = []
    for reach, row in LONG:  # the quickest printed pace caps a quicker one, and a shorter way a longer one
        found.append(row[column(row, per_min) or min(row)])
        if distance <= reach + 1e-9:
            return min(found)
    return None


def mean_and_spread(sex, way, force, height, distance, per_min):
    """Potvin and others 2021, pushing, from memory."""
    if (way != 'push' or distance > 61 + 1e-9 or column(MINUTES, per_min) is None
            or not neighbours(sex, way, force, height)):
        return None
    v, d, f = height / 100, max(distance, 2.1), math.log(max(per_min, 1 / 480))
    if sex == 'W' and force == 'initial':
        return (36.9 * (-.5304 + v / .3361 - v ** 2 / .6915) * (1.0286 - d / 72.22 + d ** 2 / 9782)
                * (.7251 - f / 13.19 - f ** 2 / 197.3), .214)
    if sex == 'W':
        return (25.5 * (-.6539 + v / .2941 - v ** 2 / .5722) * (1.0391 - d / 52.91 + d ** 2 / 7975)
                * (.6086 - f / 11.95 - f ** 2 / 304.4), .286)
    if force == 'initial':
        return (70.3 * (1.2737 - v / 1.335 + v ** 2 / 2.576) * (1.0790 - math.log(d) / 9.392)
                * (.6281 - f / 13.07 - f ** 2 / 379.5), .231)
    return (65.3 * (2.2940 - v / .3345 + v ** 2 / .6887) * (1.1035 - math.log(d) / 7.170)
            * (.4896 - f / 10.20 - f ** 2 / 403.9), .267)


def accepted(sex, way, force, task, percent):
    found = [c[{90: 0, 75: 1, 50: 2}[percent]] for c in cells(sex, way, force, *task)]
    far = long_way(sex, way, force, *task)
    if percent == 90 and far is not None:
        found.append(far)
    equation = mean_and_spread(sex, way, force, *task)
    if equation:
        found.append(equation[0] * (1 - Z[percent] * equation[1]))
    return min(found) if found else None


def share(mean, deviation, load):
    return 50 * math.erfc((load - mean) / deviation / math.sqrt(2))


def who_could(sex, way, force, task, kgf):
    height, distance, per_min = task
    # A more leisurely column that gives fewer people counts too.
    found = [share(c[2], (c[2] - c[0]) / Z[90], kgf) for minutes in MINUTES if minutes >= (column(MINUTES, per_min) or 1e9)
             for c in cells(sex, way, force, height, distance, 1 / minutes)]
    equation = mean_and_spread(sex, way, force, *task)
    if equation:
        found.append(share(equation[0], equation[0] * equation[1], kgf))
    far = long_way(sex, way, force, *task)
    if far is not None and kgf > far:
        found.append(90)
    return min(found) if found else None


# ---- What it takes

ARMS = {'hard-rubber': {'smooth-concrete': 2.2, 'tile': 2.4, 'asphalt': 3.3, 'carpet': 4.5},
        'polyurethane': {'smooth-concrete': 1.5, 'tile': 1.5}, 'steel': {'smooth-concrete': .5, 'tile': .5}}
COEFFICIENTS = {'rubber': {'smooth-concrete': .02, 'tile': .02}, 'polyurethane': {'smooth-concrete': .03, 'tile': .03},
                'steel-on-rail': dict.fromkeys(['smooth-concrete', 'tile', 'asphalt', 'carpet'], .003)}
LEAST = {'hard-rubber': .01, 'rubber': .01, 'polyurethane': .01, 'steel': .001, 'steel-on-rail': .001, None: 0}
SLIDING = {'steel-dry': (.78, .57, .42), 'steel-greased': (.23, .19, .029), 'rollers': (.05 * 3, .05, .01), None: None}


def rolling(cart, us):
    """Coefficient (None: not known) and start factor."""
    wheel, floor = cart.get('wheel'), cart.get('floor', 'smooth-concrete')
    factor = 1 if wheel == 'hard-rubber' and floor != 'soft-or-uneven' else 3
    if 'rolling_coefficient' in cart:
        value, factor = cart['rolling_coefficient'], 3
    else:
        ground = 'smooth-concrete' if floor == 'soft-or-uneven' else floor
        arm = ARMS.get(wheel, {}).get(ground)
        value = COEFFICIENTS.get(wheel, {}).get(ground)
        if arm and 'wheel_diameter' in cart:
            value = 2 * arm / (cart['wheel_diameter'] * (25.4 if us else 1))
        if wheel is None:
            value = .02
        if floor == 'soft-or-uneven':
            value = max(.1, value or 0)
        elif value is not None:
            value = max(.02, value)
    return value, cart.get('start_factor', factor)


def cart_forces(document, us):
    cart, out = document.get('cart'), {}
    if cart:
        weight = cart['gross_mass'] * (1 if us else G)
        slope = math.radians(cart.get('slope', 0))
        value, factor = rolling(cart, us)
        if value is not None:
            out['initial'] = weight * (factor * value * math.cos(slope) + math.sin(slope) + cart.get('start_acceleration', 0))
            out['sustained'] = weight * (value * math.cos(slope) + math.sin(slope))
            out['rolling'] = value
        if 'slope' in cart:
            out['hold'] = weight * math.sin(slope)
        if 'stop_deceleration' in cart:
            out['stop'] = weight * (math.sin(slope) + cart['stop_deceleration'])
    for force in ('initial', 'sustained'):
        if force in document:
            out[force] = document[force]
    return out


def frictions(document):
    """At the start, on the move, the least."""
    published = SLIDING[document.get('surface')]
    over = published[0] / published[1] if published else 3
    if 'friction' in document:
        k = document['friction']
        return document.get('start_friction', k * over), k, k
    return published or (None, None, 0)


def slide_forces(document, us):
    weight, slope = document['mass'] * (1 if us else G), math.radians(document.get('incline', 0))
    start, keep, least = frictions(document)
    along = math.sin(slope) * (-1 if document.get('direction') == 'down' else 1)
    out = {}
    if keep is not None:
        out = {'initial': max(0, weight * (start * math.cos(slope) + along)),
               'sustained': max(0, weight * (keep * math.cos(slope) + along)), 'friction': keep, 'start_friction': start}
    if 'incline' in document:
        out['hold'] = weight * math.sin(slope) if math.sin(slope) > least * math.cos(slope) else 0
    return out


# ---- All of it

def assess(document):
    """Quantities by symbol, and the verdict in `assess`."""
    us = document['units'] == 'us'
    height, distance = (document['handle_height'] * (2.54 if us else 1), document['distance'] * (.3048 if us else 1))
    task = (height, distance, document['frequency'])
    way, who, percent = document['way'], document.get('who', 'women'), document.get('percent', 90)
    kgf = 1 / LB if us else G
    q = cart_forces(document, us) if document['method'] == 'push' else slide_forces(document, us)
    sexes = {'women': 'W', 'men': 'M', 'mixed': 'WM'}[who]
    for force in ('initial', 'sustained'):
        limits = [accepted(sex, way, force, task, percent) for sex in sexes]
        if None not in limits:
            q[f'psycho.{force}.limit'] = min(limits) * kgf
        for name, sex in (('women', 'W'), ('men', 'M')):
            if force in q and (could := who_could(sex, way, force, task, q[force] / kgf)) is not None:
                q[f'{name}.{force}.percent'] = could
    for name in ('women', 'men'):
        both = [q.get(f'{name}.{force}.percent') for force in ('initial', 'sustained')]
        if None not in both:
            q[f'{name}.percent'] = min(both)
    men = who == 'men'
    if 75 - 1e-9 <= height <= 135 + 1e-9 and distance <= 20 + 1e-9:
        q['uk.start'], q['uk.moving'] = (20 if men else 15) * kgf, (10 if men else 7) * kgf
    newton = 1 / (LB * G) if us else 1
    q['critical.initial'], q['critical.sustained'] = (360 if men else 240) * newton, (250 if men else 150) * newton
    ratios = {'psycho.initial.ratio': ('initial', 'psycho.initial.limit'),
              'psycho.sustained.ratio': ('sustained', 'psycho.sustained.limit'), 'uk.start.ratio': ('initial', 'uk.start'),
              'uk.stop.ratio': ('stop', 'uk.start'), 'uk.moving.ratio': ('sustained', 'uk.moving'),
              'uk.hold.ratio': ('hold', 'uk.moving'), 'critical.initial.ratio': ('initial', 'critical.initial'),
              'critical.sustained.ratio': ('sustained', 'critical.sustained')}
    for symbol, (force, limit) in ratios.items():
        if force in q and limit in q:
            q[symbol] = q[force] / q[limit]
    found = [q[symbol] for symbol in ratios if symbol in q]
    if found and ('initial' in q or 'sustained' in q):
        q['ratio'] = max(found)
    return q, verdict(document, q, us)


def verdict(document, q, us):
    order = ['by-hand', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']
    out = {'by-hand'}
    for symbol in [s for s in q if s.endswith('.ratio')]:
        if q[symbol] > 1:
            out.add('mechanical' if symbol.startswith('critical') else 'improve')
    if 'uk.start' not in q or 'psycho.initial.limit' not in q or 'psycho.sustained.limit' not in q:
        out.add('incomplete')
    if document.get('conditions') or document.get('persons', 1) > 1:
        out.add('outside')
    if 'initial' not in q or 'sustained' not in q:
        out.add('incomplete')
    if document['method'] == 'push':
        cart = document.get('cart')
        if cart:
            if cart.get('floor') == 'soft-or-uneven':
                out.add('outside')
            # wheel and floor say nothing, or stand from memory; so does the start
            measured = 'rolling_coefficient' in cart or ('initial' in document and 'sustained' in document)
            if not measured and (rolling(cart, us)[0] is None or 'wheel' not in cart):
                out.add('incomplete')
            if not measured and ('floor' not in cart or cart['floor'] != 'soft-or-uneven'
                                 and cart.get('wheel') in ('polyurethane', 'steel')):
                out.add('incomplete')
            if 'initial' not in document and 'start_factor' not in cart and rolling(cart, us)[1] > 1:
                out.add('incomplete')
            held, slope = cart.get('brake'), cart.get('slope')
            least = cart.get('rolling_coefficient', LEAST[cart.get('wheel')])
    else:
        cart, slope = document, document.get('incline')
        held = {'nothing': 'none', 'stops': 'parking', None: None}[document.get('held')]
        least = frictions(document)[2]
        if 'friction' not in document or 'start_friction' not in document:
            out.add('incomplete')
    if cart and slope is None:
        out.add('incomplete')
    elif cart and slope > 0 and held in (None, 'none'):
        away = math.tan(math.radians(slope)) > least
        out.add('incomplete' if held is None else 'do-not-lift' if away else 'improve')
    return max(out, key=order.index)
