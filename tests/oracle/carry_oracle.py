# SPDX-License-Identifier: MIT
"""Carrying, written a second time from the sources alone: docs/methods/carry.md. Masses in kg, m, cm, min."""

import math
from statistics import NormalDist

KG_PER_LB, M_PER_FT, CM_PER_IN = 0.45359237, 0.3048, 2.54
REFERENCE = {'any-age': 15, 'mixed-adults': 20, 'men-20-45': 25}
NORMAL = NormalDist()

# distance: carries a minute, kg a minute, kg an hour, kg in eight hours
OLD = {1: (8, 120, 7200, 10000), 2: (5, 75, 4500, 10000), 4: (4, 60, 3000, 10000), 10: (2, 30, 1500, 10000),
       20: (1, 15, 750, 6000)}
# distance: kg in a minute, an hour, four hours, the day
NEW = {5: (60, 2000, 4000, 4800), 10: (45, 1500, 3000, 3600), 20: (15, 500, 1000, 1200)}

COLUMNS = {2.1: (6, 12), 4.3: (10, 16), 8.5: (18, 24)}
SNOOK = '''
M 111 2.1 10/14/19 14/19/25 17/23/30 17/23/30 19/26/33 21/29/38 25/34/44
M 79 2.1 13/18/23 17/23/30 21/28/37 21/29/37 23/32/41 26/36/46 31/42/54
M 111 4.3 9/13/17 11/16/20 15/21/27 15/21/27 17/23/30 19/26/34 22/30/39
M 79 4.3 11/16/20 14/19/25 18/25/32 19/25/33 21/28/36 23/32/41 27/37/48
M 111 8.5 10/13/17 11/15/19 13/18/23 13/18/24 15/20/26 17/23/29 20/27/35
M 79 8.5 13/17/22 15/20/26 17/24/31 18/24/31 20/27/35 22/30/39 26/35/46
W 105 2.1 11/13/15 12/14/16 13/15/18 13/15/18 13/16/18 13/16/18 18/21/25
W 72 2.1 13/15/17 14/17/19 16/18/21 16/18/21 16/19/22 16/19/22 22/25/29
W 105 8.5 10/12/14 11/13/15 12/14/16 12/14/16 12/14/17 12/14/17 16/19/22
W 72 8.5 12/14/16 12/15/17 14/16/19 14/16/19 14/17/20 14/17/20 19/23/26
'''


def read_table():
    table = {}
    for line in SNOOK.split('\n'):
        if line:
            sex, height, distance, *cells = line.split()
            first, second = COLUMNS[float(distance)]
            seconds = [first, second, 60, 120, 300, 1800, 28800]
            table[sex, float(height), float(distance)] = [
                (every, dict(zip((90, 75, 50), map(int, cell.split('/'))))) for every, cell in zip(seconds, cells)]
    return table


TABLE = read_table()


def misfit():
    """The 75 % value of a normal distribution lies between 50 and 90 %: the largest miss, kg."""
    part = NORMAL.inv_cdf(0.75) / NORMAL.inv_cdf(0.9)
    return max(abs(cell[50] - part * (cell[50] - cell[90]) - cell[75]) for row in TABLE.values() for _, cell in row)


def at_most(value, end):
    return value <= end or math.isclose(value, end, rel_tol=1e-9)


def band(table, distance):
    return table[min((row for row in table if at_most(distance, row)), default=max(table))]


def cells_for(sex, height, distance, per_min):
    """The next more demanding cell, and all that demand less: over a shorter way, lower, more seldom."""
    heights = sorted({h for s, h, _ in TABLE if s == sex})
    at = heights[0] if at_most(height, heights[0]) else heights[1]
    distances = sorted({d for s, _, d in TABLE if s == sex})
    longest = next((d for d in distances if at_most(distance, d)), distances[-1])
    out, faster, every = [], False, 60 / per_min
    for (s, h, d), row in TABLE.items():
        if s == sex and h <= at and d <= longest:
            fits = sum(at_most(seconds, every) for seconds, _ in row)
            faster = faster or not fits
            out += [cell for _, cell in row[max(fits - 1, 0):]]
    return out, faster


def equation(sex, height, distance, per_min):
    v, d, f = max(height, 72 if sex == 'W' else 79) / 100, max(distance, 2.1), math.log(max(per_min, 1 / 480))
    if sex == 'W':
        parts, best, cv = (1.1645 - v / 4.437, 1.0101 - d / 207.8, 0.6224 - f / 16.33), 28.6, 0.231
    else:
        parts, best, cv = (1.5505 - v / 1.417, 1.1172 - math.log(d) / 6.332,
                           0.5149 - f / 7.958 - f ** 2 / 131.1), 74.9, 0.278
    return best * math.prod(max(part, 0) for part in parts), cv


def guideline(sex, height, per_min):
    figure = {('W', False): 16, ('W', True): 13, ('M', False): 25, ('M', True): 20}[
        sex, not at_most(height, 105 if sex == 'W' else 111)]
    return figure * (1 if per_min <= 0.5 else 0.7 if per_min <= 2 else 0.5 if per_min <= 8 else 0.2)


def could(sex, mass, height, distance, per_min):
    mean, cv = equation(sex, height, distance, per_min)
    shares = [NORMAL.cdf((1 - mass / mean) / cv) if mean > 0 else 0]
    for cell in cells_for(sex, height, distance, per_min)[0]:
        deviation = (cell[50] - cell[90]) / NORMAL.inv_cdf(0.9)
        shares.append(NORMAL.cdf((cell[50] - mass) / deviation))
    return 100 * min(shares)


def ratio(value, limit):
    return value / limit if limit > 0 else math.inf


def assess(facts):
    """The quantities of a facts document without units in its numbers."""
    us = facts['units'] == 'us'
    kg, metre, cm = (KG_PER_LB, M_PER_FT, CM_PER_IN) if us else (1, 1, 1)
    mass, f, minutes = facts['mass'] * kg, facts['frequency'], facts.get('minutes', 480)
    distance, height = facts['distance'] * metre, facts['height'] * cm
    sex, percent = 'M' if facts.get('who') == 'men' else 'W', facts.get('percent', 90)
    rate = facts.get('typical_mass', facts['mass']) * kg * f
    part = 2 / 3 if facts.get('poor_lift') or facts.get('poor_surroundings') else 1
    pace, *old = band(OLD, distance)
    new = band(NEW, distance)
    sums = {'minute': rate * min(minutes, 1), 'hour': rate * min(minutes, 60), '4h': rate * min(minutes, 240),
            'day': rate * minutes}
    cells, faster = cells_for(sex, height, distance, f)
    mean, cv = equation(sex, height, distance, f)
    z = NORMAL.inv_cdf(percent / 100)
    each = mass / facts.get('persons', 1)
    reference = REFERENCE[facts.get('assigned', 'mixed-adults')]

    limits = {'iso.pace': (f, pace), 'uk': (mass, guideline(sex, height, f)),
              'table': (mass, min(cell[percent] for cell in cells)), 'equation': (mass, mean * (1 - z * cv))}
    for name, limit in zip(('minute', 'hour', 'day'), old):
        limits[f'iso.{name}'] = sums[name], limit * part
    for name, limit in zip(('minute', 'hour', '4h', 'day'), new):
        limits[f'iso21.{name}'] = sums[name], limit * part
    ratios = {name: ratio(*pair) for name, pair in limits.items()}
    out = {f'{name}.ratio': value for name, value in ratios.items()}
    out |= {f'{name}.limit': limit / (1 if name == 'iso.pace' else kg) for name, (_, limit) in limits.items()}
    out |= {'mass_per_min': sums['minute'] / kg, 'mass_per_hour': sums['hour'] / kg, 'mass_per_4h': sums['4h'] / kg,
            'mass_per_day': sums['day'] / kg, 'mass_each': each / kg, 'm_ref': reference / kg,
            'mass_ratio': each / reference, 'psycho.limit': min(out['table.limit'], out['equation.limit']),
            'psycho.ratio': max(ratios['table'], ratios['equation']),
            'women.percent': could('W', mass, height, distance, f), 'men.percent': could('M', mass, height, distance, f),
            'ratio': max(*ratios.values(), each / reference)}
    over = [value for name, value in ratios.items()]
    low, high = (72, 105) if sex == 'W' else (79, 111)
    ranks = ['by-hand']
    if any(value > 1 for value in over):
        ranks.append('improve')
    if (not at_most(distance, 10) or not at_most(low, height) or not at_most(height, high) or faster):
        ranks.append('incomplete')
    if not at_most(distance, 20) or minutes > 480 or facts.get('persons', 1) > 1 or facts.get('conditions'):
        ranks.append('outside')
    if each > reference:
        ranks.append('mechanical')
    return out, ranks[-1]
