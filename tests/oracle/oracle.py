# SPDX-License-Identifier: MIT
"""An independent implementation of the `lift` method, to hold steelyard-cli against.

Written from published text only, never from core/: the formulas and tables of DHHS (NIOSH)
Publication 94-110 and, from memory, of ISO 11228-1 (reference masses of 15, 20 and 25 kg, cumulative
mass, long shifts) and EN 1005-2. Where the sources are silent docs/facts.md settles it. Slow and plain on purpose.
"""

from fractions import Fraction

KG_PER_LB = Fraction(45359237, 100000000)  # exact by definition, 1959
CM_PER_IN = Fraction(254, 100)             # exact by definition, 1959
TOLERANCE = Fraction(1, 10**9)             # of a frequency row and of a recovery ratio

# One row a unit system, never converted into each other (94-110 section 1.3, tables 1 to 4).
SYSTEMS = {
    'metric': dict(LC=23, H1=25, Hmax=63, Vref=75, Vslope=0.003, Vmax=175, D1=25, Dmax=175, Dk=4.5),
    'us': dict(LC=51, H1=10, Hmax=25, Vref=30, Vslope=0.0075, Vmax=70, D1=10, Dmax=70, Dk=1.8),
}

# Table 5 of 94-110: F, then short, moderate, long; each with the low and the high column.
FREQUENCY = [
    (0.2, 1.00, 1.00, .95, .95, .85, .85),
    (0.5, .97, .97, .92, .92, .81, .81),
    (1, .94, .94, .88, .88, .75, .75),
    (2, .91, .91, .84, .84, .65, .65),
    (3, .88, .88, .79, .79, .55, .55),
    (4, .84, .84, .72, .72, .45, .45),
    (5, .80, .80, .60, .60, .35, .35),
    (6, .75, .75, .50, .50, .27, .27),
    (7, .70, .70, .42, .42, .22, .22),
    (8, .60, .60, .35, .35, .18, .18),
    (9, .52, .52, .30, .30, .00, .15),
    (10, .45, .45, .26, .26, .00, .13),
    (11, .41, .41, .00, .23, .00, .00),
    (12, .37, .37, .00, .21, .00, .00),
    (13, .00, .34, .00, .00, .00, .00),
    (14, .00, .31, .00, .00, .00, .00),
    (15, .00, .28, .00, .00, .00, .00),
]
DURATIONS = ['short', 'moderate', 'long']
REFERENCE_KG = {'any-age': 15, 'mixed-adults': 20, 'men-20-45': 25}
DEFAULT_ASSIGNED = 'mixed-adults'  # of the default policy
LIMIT_KG = {'day': 10000, 'hour': 7200}  # ISO 11228-1:2003 step 4 and Table 1 at 1 m, from memory
LONG_SHIFT = [(8, 1.0), (9, .97), (10, .93), (11, .89), (12, .85)]  # ISO 11228-1:2021, from memory
EN_KG = {'any-age': 15, 'mixed-adults': 25, 'men-20-45': 25}  # EN 1005-2, from memory
FACTORS = ['HM', 'VM', 'DM', 'AM', 'FM', 'CM']
VERDICTS = ['by-hand', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']
INFINITY = float('inf')

# Text with a unit, as exact factors to the metric unit of the kind.
UNITS = {
    'mass': {'kg': Fraction(1), 'g': Fraction(1, 1000), 't': Fraction(1000), 'lb': KG_PER_LB,
             'oz': KG_PER_LB / 16},
    'reach': {'cm': Fraction(1), 'mm': Fraction(1, 10), 'm': Fraction(100), 'in': CM_PER_IN,
              'ft': CM_PER_IN * 12},
    'angle': {'deg': Fraction(1), '°': Fraction(1)},
    'minutes': {'min': Fraction(1), 'h': Fraction(60), 's': Fraction(1, 60)},
    'frequency': {'/min': Fraction(1), '/h': Fraction(1, 60)},
}
US_UNIT = {'mass': KG_PER_LB, 'reach': CM_PER_IN}


def measure(value, kind, units):
    """A number of a document, in the unit of the document's system."""
    if not isinstance(value, str):
        return float(value)
    number, unit = value.strip().split(None, 1) if ' ' in value.strip() else split_text(value)
    exact = Fraction(number.replace(',', '.')) * UNITS[kind][unit.strip()]
    if units == 'us':
        exact /= US_UNIT.get(kind, 1)
    return float(exact)


def split_text(text):
    """"16in" -> "16", "in"."""
    end = len(text)
    while end and not text[:end][-1].isdigit():
        end -= 1
    return text[:end], text[end:]


def horizontal(h, c):
    if h > c['Hmax']:
        return 0.0
    return 1.0 if h <= c['H1'] else c['H1'] / h


def vertical(v, c):
    return 0.0 if v > c['Vmax'] else 1 - c['Vslope'] * abs(v - c['Vref'])


def distance(d, c):
    if d > c['Dmax']:
        return 0.0
    return 1.0 if d <= c['D1'] else 0.82 + c['Dk'] / d


def asymmetry(a):
    return 0.0 if a > 135 else 1 - 0.0032 * a


def coupling(kind, v, c):
    if kind == 'poor':
        return 0.9
    return 0.95 if kind == 'fair' and v < c['Vref'] else 1.0


def frequency(f, duration, v, c):
    column = 1 + 2 * DURATIONS.index(duration) + (1 if v >= c['Vref'] else 0)
    for row in FREQUENCY:
        if abs(f - row[0]) <= TOLERANCE:
            return row[column]
    if f < FREQUENCY[0][0]:
        return FREQUENCY[0][column]
    for low, high in zip(FREQUENCY, FREQUENCY[1:]):
        if low[0] < f < high[0]:
            if high[column] == 0:
                return 0.0  # beyond the last row that is not zero
            part = (f - low[0]) / (high[0] - low[0])
            return low[column] + part * (high[column] - low[column])
    return 0.0


def class_of(total):
    return 0 if total <= 60 else 1 if total <= 120 else 2


def sessions_duration(sessions):
    """Class of a day of (work, recovery) pairs, and its minutes of work."""
    worst, total = 0, 0.0
    for work, recovery in sessions:
        total += work
        worst = max(worst, class_of(total))
        if total <= 60:
            enough = recovery >= (Fraction(12, 10) - TOLERANCE) * Fraction(total)
        elif total <= 120:
            enough = recovery >= (Fraction(3, 10) - TOLERANCE) * Fraction(total)
        else:
            enough = False
        if enough:
            total = 0.0
    return DURATIONS[worst], sum(work for work, _ in sessions)


def pattern_duration(work, recovery, shift):
    """The pair repeats until the shift is full; the shift's end cuts the last period, not the first."""
    pairs, clock = [], 0.0
    while not pairs or clock < shift:
        pairs.append((work if not pairs else min(work, shift - clock), recovery))
        clock += work + recovery
    return sessions_duration(pairs)


def duration_of(facts, units):
    """The class and the day's minutes of work; of a class the most that it allows."""
    if 'duration' in facts:
        return facts['duration'], [60, 120, 480][DURATIONS.index(facts['duration'])]
    minutes = lambda value: measure(value, 'minutes', units)
    if 'sessions' in facts:
        return sessions_duration([(minutes(s['work']), minutes(s['recovery']))
                                  for s in facts['sessions']])
    shift = minutes(facts.get('shift_minutes', 480))
    return pattern_duration(minutes(facts['work_minutes']), minutes(facts['recovery_minutes']), shift)


def ratio(mass, limit):
    return INFINITY if limit == 0 else mass / limit


def one_end(at, travel, f, duration, grip, heaviest, reference, units):
    c = SYSTEMS[units]
    h, v = measure(at['H'], 'reach', units), measure(at['V'], 'reach', units)
    out = {
        'H': h, 'V': v, 'A': measure(at['A'], 'angle', units),
        'HM': horizontal(h, c), 'VM': vertical(v, c), 'DM': distance(travel, c),
        'FM': frequency(f, duration, v, c), 'CM': coupling(grip, v, c),
    }
    out['AM'] = asymmetry(out['A'])
    without = out['HM'] * out['VM'] * out['DM'] * out['AM'] * out['CM']
    out['FIRWL'] = c['LC'] * without
    out['RWL'] = out['FIRWL'] * out['FM']
    out['mR'] = reference * without * out['FM']
    out['LI'] = ratio(heaviest, out['RWL'])
    out['FILI'] = ratio(heaviest, out['FIRWL'])
    out['mR_ratio'] = ratio(heaviest, out['mR'])
    return out


# The rows of the default policy and of uk-filter on limits by population: all of them ask to improve the task.
ROWS = {'F': 15, 'day_ratio': 1, 'hour_ratio': 1, 'R_I': 0.85, 'filter_ratio': 1}


def population(facts, units, known, end, typical, heaviest, long_shift):
    """Cumulative mass and the risk index, of what one person handles."""
    persons = facts.get('persons', 1)
    mass = lambda kg: float(kg / KG_PER_LB) if units == 'us' else float(kg)
    out = {'mass': heaviest}
    if long_shift < 1:
        out['shift_multiplier'] = long_shift
    handled = {'day': typical / persons * known['lifts_per_day'], 'hour': typical / persons * known['F'] * 60}
    part = {span: handled[span] / mass(LIMIT_KG[span]) for span in handled}
    for span in handled:
        if span == 'day' or part['hour'] > part['day']:
            out.update({f'{span}_mass': handled[span], f'{span}_limit': mass(LIMIT_KG[span]), f'{span}_ratio': part[span]})
    if persons > 2:
        return out
    limit = out['M_c'] = mass(EN_KG[facts.get('assigned', DEFAULT_ASSIGNED)])
    for factor in FACTORS:
        limit *= end[factor]
    for symbol, applies, multiplier in (('OM', facts.get('hands', 2) == 1, 0.6), ('PM', persons == 2, 0.85),
                                        ('AT', facts.get('additional_tasks', False), 0.8)):
        if applies:
            out[symbol] = multiplier
            limit *= multiplier
    out['R_ML'], out['R_I'] = limit, ratio(heaviest / persons, limit)
    return out


# Guideline filter of the UK guidance L23: upper end of each zone in cm (assumed), men and women, close and far.
ZONES = [(25, (10, 5), (7, 3)), (75, (20, 10), (13, 7)), (105, (25, 15), (16, 10)), (140, (20, 10), (13, 7)),
         (INFINITY, (10, 5), (7, 3))]
BAND = 10  # cm about a border in which both zones count, assumed


def guideline(facts, units, travel, f, heaviest):
    """The figures for one person with both hands, and the mass against them."""
    if facts.get('hands', 2) == 1 or facts.get('persons', 1) > 1:
        return {}
    ends = [facts['origin']] + ([facts['destination']] if 'destination' in facts else [])
    reach = max(measure(end['H'], 'reach', units) for end in ends)
    twist = max(measure(end['A'], 'angle', units) for end in ends)
    heights = [measure(end['V'], 'reach', units) for end in ends]
    if 'destination' not in facts:
        heights = [max(0, heights[0] - travel), heights[0] + travel]
    system = SYSTEMS[units]
    scale = 1 if units == 'metric' else 2.54
    men = facts.get('assigned', DEFAULT_ASSIGNED) == 'men-20-45'
    figures, bottom = [], -INFINITY
    for top, *kg in ZONES:
        if max(heights) >= (bottom - BAND) / scale and min(heights) <= (top + BAND) / scale:
            figures.append(kg[0 if men else 1][0 if reach <= system['H1'] else 1])
        bottom = top
    figure = min(figures)
    if reach > system['Hmax'] or max(heights) > system['Vmax']:
        figure = 0
    out = {'filter_base': float(figure / KG_PER_LB) if units == 'us' else float(figure)}
    mass = out['filter_base']
    for symbol, part in (('filter_twist', .8 if twist > 90 else .9 if twist > 45 else 1),
                         ('filter_pace', .2 if f > 8 else .5 if f > 2 else .7 if f > .5 else 1)):
        if part < 1:
            out[symbol] = part
            mass *= part
    out['filter_men' if men else 'filter_women'] = mass
    out['filter_ratio'] = ratio(heaviest, mass)
    return out


def assess(facts, with_filter=False):
    """Quantities by symbol (unbounded: infinity), the verdict, and what may be named as governing."""
    units = facts['units']
    reach = lambda value: measure(value, 'reach', units)
    heaviest = measure(facts['load']['heaviest'], 'mass', units)
    typical = measure(facts['load']['typical'], 'mass', units)
    reference = REFERENCE_KG[facts.get('assigned', DEFAULT_ASSIGNED)]
    if units == 'us':
        reference = float(reference / KG_PER_LB)
    if 'frequency' in facts:
        f = measure(facts['frequency'], 'frequency', units)
    else:
        f = facts['lifts'] / measure(facts['in_minutes'], 'minutes', units)
    shift = facts.get('shift_hours', 8)
    if shift > 8 and 'work_minutes' in facts:
        facts = dict({'shift_minutes': shift * 60}, **facts)
    duration, day = duration_of(facts, units)
    if shift > 8 and facts.get('duration') == 'long':
        day = shift * 60
    beyond = day > 480 or shift > 8  # more work in a day than the equation knows
    if 'travel' in facts:
        travel = reach(facts['travel'])
    else:
        travel = abs(reach(facts['destination']['V']) - reach(facts['origin']['V']))

    ends = {'origin': facts['origin']}
    if 'destination' in facts and facts.get('control_at_destination', True):
        ends['destination'] = facts['destination']
    quantities, found = {}, {}
    long_shift = 1.0
    if duration == 'long' and f >= 0.2:
        long_shift = next(multiplier for hours, multiplier in LONG_SHIFT if shift <= hours)
    for name, at in ends.items():
        found[name] = one_end(at, travel, f, duration, facts['coupling'], heaviest, reference, units)
        if long_shift < 1:
            found[name]['mR'] *= long_shift
            found[name]['mR_ratio'] = ratio(heaviest, found[name]['mR'])
        quantities.update({f'{name}.{symbol}': value for symbol, value in found[name].items()})
    end = min(found, key=lambda name: found[name]['RWL'])
    persons = facts.get('persons', 1)
    each = heaviest / persons
    quantities.update({
        'D': travel, 'F': f, 'RWL': found[end]['RWL'], 'LI': found[end]['LI'],
        'LI_typical': ratio(typical, found[end]['RWL']), 'mR': found[end]['mR'],
        'mR_ratio': found[end]['mR_ratio'], 'm_ref': float(reference),
        'mass_each': each, 'persons': float(persons),
        'lifts_per_day': float(facts.get('lifts_per_day', f * day))})
    quantities.update(population(facts, units, quantities, found[end], typical, heaviest, long_shift))
    if with_filter:
        quantities.update(guideline(facts, units, travel, f, heaviest))

    verdict = 'by-hand'

    def at_least(code):
        nonlocal verdict
        verdict = max(verdict, code, key=VERDICTS.index)

    if found[end]['LI'] > 1 or any(e['mR_ratio'] > 1 for e in found.values()):
        at_least('improve')
    if any(quantities.get(symbol, 0) > limit for symbol, limit in ROWS.items()):
        at_least('improve')
    if beyond or persons > 1 or facts.get('hands', 2) == 1 or facts.get('conditions'):
        at_least('outside')
    if found[end]['LI'] > 3 or each > reference:
        at_least('mechanical')

    smallest = min(found[end][factor] for factor in FACTORS)
    governing = {f'{name}.{factor}' for name in found for factor in FACTORS
                 if found[name]['RWL'] == found[end]['RWL'] and found[name][factor] == smallest}
    return {'quantities': quantities, 'verdict': verdict, 'governing': governing,
            'mass_governs': each > reference, 'duration': duration, 'beyond': beyond}
