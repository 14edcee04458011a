# SPDX-License-Identifier: MIT
"""An independent implementation of the `lift-set` method, exact: every number of a document is taken as the fraction that it
is, and nothing is rounded until the end. Written from docs/methods and the published formulas, never from core/.

A sampled lift whose FILI falls on the edge of a band of equal width belongs to either, by the last bit: assess gives every
answer that is right.
"""

import itertools
from fractions import Fraction as F

from oracle import DURATIONS, FREQUENCY, INFINITY, KG_PER_LB, REFERENCE_KG, TOLERANCE, VERDICTS

SYSTEMS = {
    'metric': dict(LC=F(23), H1=F(25), Hmax=F(63), V0=F(75), Vs=F(3, 1000), Vmax=F(175), D1=F(25), Dmax=F(175), Dk=F(45, 10)),
    'us': dict(LC=F(51), H1=F(10), Hmax=F(25), V0=F(30), Vs=F(75, 10000), Vmax=F(70), D1=F(10), Dmax=F(70), Dk=F(18, 10)),
}
TABLE = [[F(str(cell)) for cell in row] for row in FREQUENCY]
EDGE = F(1, 10**9)


def over(mass, limit):
    return INFINITY if limit == 0 else mass / limit


def fm(per_min, duration, v, c):
    """Straight lines between rows; nothing beyond the last row that is not zero."""
    column = 1 + 2 * duration + (1 if v >= c['V0'] else 0)
    for row in TABLE:
        if abs(per_min - row[0]) <= TOLERANCE:
            return row[column]
    if per_min < TABLE[0][0]:
        return TABLE[0][column]
    for low, high in zip(TABLE, TABLE[1:]):
        if low[0] < per_min < high[0]:
            if high[column] == 0:
                return F(0)
            return low[column] + (per_min - low[0]) / (high[0] - low[0]) * (high[column] - low[column])
    return F(0)


class Lift:
    """One lift of a set, at each end that counts."""

    def __init__(self, facts, whole, number):
        self.c = c = SYSTEMS[whole['units']]
        self.number = number
        self.heaviest, self.typical = F(facts['load']['heaviest']), F(facts['load']['typical'])
        if 'frequency' in whole:
            self.f = F(whole['frequency']) / len(whole['lifts'])
        elif 'frequency' in facts:
            self.f = F(facts['frequency'])
        else:
            self.f = F(facts['lifts']) / F(facts['in_minutes'])
        self.persons = facts.get('persons', 1)
        reference = F(REFERENCE_KG[facts.get('assigned', whole.get('assigned', 'mixed-adults'))])
        self.reference = reference / KG_PER_LB if whole['units'] == 'us' else reference
        conditions = facts.get('conditions', whole.get('conditions', []))
        self.excluded = bool(conditions) or facts.get('hands', 2) == 1 or self.persons > 1
        ends = [facts['origin']]
        if 'destination' in facts:
            d = abs(F(facts['destination']['V']) - F(facts['origin']['V']))
            if facts.get('control_at_destination', True):
                ends.append(facts['destination'])
        else:
            d = F(facts['travel'])
        self.ends = [self.one_end(end, d, facts['coupling']) for end in ends]

    def one_end(self, end, d, grip):
        c = self.c
        h, v, a = F(end['H']), F(end['V']), F(end['A'])
        out = {
            'V': v,
            'HM': F(0) if h > c['Hmax'] else min(F(1), c['H1'] / h),
            'VM': F(0) if v > c['Vmax'] else 1 - c['Vs'] * abs(v - c['V0']),
            'DM': F(0) if d > c['Dmax'] else F(1) if d <= c['D1'] else F(82, 100) + c['Dk'] / d,
            'AM': F(0) if a > 135 else 1 - F(32, 10000) * a,
            'CM': F(9, 10) if grip == 'poor' else F(95, 100) if grip == 'fair' and v < c['V0'] else F(1),
        }
        out['FIRWL'] = c['LC'] * out['HM'] * out['VM'] * out['DM'] * out['AM'] * out['CM']
        return out

    def lowest(self):
        return min(self.ends, key=lambda end: end['FIRWL'])

    def li(self, duration):
        """Lifting index and the end that it comes from."""
        end = min(self.ends, key=lambda e: e['FIRWL'] * fm(self.f, duration, e['V'], self.c))
        return over(self.heaviest, end['FIRWL'] * fm(self.f, duration, end['V'], self.c)), end

    def tell(self, out, end):
        for name in ('HM', 'VM', 'DM', 'AM', 'CM', 'FIRWL'):
            out[f'lift.{self.number}.{name}'] = end[name]
        out[f'lift.{self.number}.F'] = self.f


def class_of(minutes):
    return 0 if minutes <= 60 else 1 if minutes <= 120 else 2


def of_periods(periods):
    """Class of periods of (work, recovery), and whether they are over eight hours."""
    worst, total = 0, F(0)
    for work, recovery in periods:
        total += work
        worst = max(worst, class_of(total))
        enough = F(12, 10) if total <= 60 else F(3, 10) if total <= 120 else None
        if enough is not None and recovery >= enough * total * (1 - TOLERANCE):
            total = F(0)
    return worst, sum(work for work, _ in periods) > 480


def duration_of(facts):
    if 'duration' in facts:
        return DURATIONS.index(facts['duration']), False, [60, 120, 480][DURATIONS.index(facts['duration'])]
    periods = [(F(s['work']), F(s['recovery'])) for s in facts['sessions']]
    duration, beyond = of_periods(periods)
    return duration, beyond, sum(work for work, _ in periods)


# ---- composite

def composite_sum(lifts, duration):
    """The index and its steps; lifts come with (stli, fili, end)."""
    steps, total, before = [], F(0), F(0)
    for at, (stli, fili, end, lift) in enumerate(lifts):
        c = lift.c
        fm_before, fm_after = fm(before, duration, end['V'], c), fm(before + lift.f, duration, end['V'], c)
        if at == 0:
            delta = stli
        elif fm_after == 0 or fili == INFINITY:
            delta = INFINITY
        else:
            delta = fili * (1 / fm_after - 1 / fm_before)
        before += lift.f
        steps.append((lift, before, fm_before, fm_after, delta))
        total += delta
    return total, steps


def composite(lifts, facts):
    duration, beyond, day = duration_of(facts)
    out, worked = {}, []
    for lift in lifts:
        end = lift.lowest()
        own = fm(lift.f, duration, end['V'], lift.c)
        fili, stli = over(lift.heaviest, end['FIRWL']), over(lift.typical, end['FIRWL'] * own)
        lift.tell(out, end)
        out.update({f'lift.{lift.number}.FM': own, f'lift.{lift.number}.STRWL': end['FIRWL'] * own,
                    f'lift.{lift.number}.FILI': fili, f'lift.{lift.number}.STLI': stli})
        worked.append((stli, fili, end, lift))
    # sorted is stable: ties as given
    ordered = sorted(worked, key=lambda work: -work[0])
    out['CLI'], steps = composite_sum(ordered, duration)
    for place, (lift, total, before, after, delta) in enumerate(steps, 1):
        out[f'lift.{lift.number}.order'] = place
        out[f'lift.{lift.number}.without'] = composite_sum([w for w in ordered if w[3] is not lift], duration)[0]
        out.update({f'term.{place}.lift': lift.number, f'term.{place}.F': total, f'term.{place}.FM_after': after,
                    f'term.{place}.delta': delta})
        if place > 1:
            out[f'term.{place}.FM_before'] = before
    out['lifts_per_day'] = sum(lift.f * day for lift in lifts)
    strong = max(out[f'lift.{lift.number}.FILI'] for lift in lifts)
    return [out], {'index': 'CLI', 'beyond': beyond, 'also': [strong]}


# ---- sequence

def sequential(elements):
    """elements: (LI, LImax, share); the index, K and each one's place."""
    order = sorted(range(len(elements)), key=lambda i: -elements[i][1])
    li, li_max, _ = elements[order[0]]
    places = {i: place for place, i in enumerate(order, 1)}
    if li_max == INFINITY:
        return INFINITY, None, places
    k = min(F(1), sum(m * share for _, m, share in elements) / li_max)
    return li + (li_max - li) * k, k, places


def tell_sequence(lifts, own, whole, shares):
    """Of one rotation, or of one person's day."""
    out, elements = {}, []
    for lift, mine, share in zip(lifts, own, shares):
        li, _ = lift.li(mine)
        li_max, end = lift.li(whole)
        lift.tell(out, end)
        out.update({f'lift.{lift.number}.FM': fm(lift.f, mine, end['V'], lift.c),
                    f'lift.{lift.number}.FMmax': fm(lift.f, whole, end['V'], lift.c),
                    f'lift.{lift.number}.LI': li, f'lift.{lift.number}.LImax': li_max, f'lift.{lift.number}.share': share})
        elements.append((li, li_max, share))
    out['SLI'], k, places = sequential(elements)
    if k is not None:
        out['K'] = k
    for i, lift in enumerate(lifts):
        out[f'lift.{lift.number}.order'] = places[i]
    return out, out['SLI'] <= 1 < max(li_max for _, li_max, _ in elements)


def rotation(lifts, facts):
    whole, beyond, day = duration_of(facts)
    shares = [F(lift['share']) for lift in facts['lifts']]
    out, weak = tell_sequence(lifts, [duration_of(lift)[0] for lift in facts['lifts']], whole, shares)
    out['lifts_per_day'] = sum(lift.f * day * share for lift, share in zip(lifts, shares))
    return [out], {'index': 'SLI', 'beyond': beyond, 'weak': weak}


def turns_of(person, facts):
    """(lift, minutes, recovery), those at one lift without light work between joined."""
    labels = [lift.get('label') for lift in facts['lifts']]
    found = []
    for turn in person['turns']:
        at = labels.index(turn['lift']) if turn['lift'] in labels else int(turn['lift']) - 1
        minutes, recovery = F(turn['minutes']), F(turn.get('recovery', 0))
        if found and found[-1][0] == at and found[-1][2] == 0:
            found[-1] = (at, found[-1][1] + minutes, recovery)
        else:
            found.append((at, minutes, recovery))
    return found


def rota(lifts, facts):
    persons, days, beyond_any, weak_any = {}, [], False, False
    for person in facts['rota']:
        turns = turns_of(person, facts)
        whole, beyond = of_periods([(F(t['minutes']), F(t.get('recovery', 0))) for t in person['turns']])
        everything = sum(minutes for _, minutes, _ in turns)
        at_all = list(dict.fromkeys(at for at, _, _ in turns))
        own = [max(class_of(minutes) for at, minutes, _ in turns if at == which) for which in at_all]
        spent = [sum(minutes for at, minutes, _ in turns if at == which) for which in at_all]
        out, weak = tell_sequence([lifts[which] for which in at_all], own, whole, [m / everything for m in spent])
        persons[f'person.{person["label"]}.SLI'] = out['SLI']
        persons[f'person.{person["label"]}.minutes'] = everything
        out['lifts_per_day'] = sum(lifts[which].f * m for which, m in zip(at_all, spent))
        days.append(out)
        beyond_any, weak_any = beyond_any or beyond, weak_any or weak
    worst = max(days, key=lambda day: day['SLI'])
    return [worst | persons | {'lifts_per_day': max(day['lifts_per_day'] for day in days)}], \
        {'index': 'SLI', 'beyond': beyond_any, 'weak': weak_any}


# ---- variable

def grouped(name, members, categories, duration, c):
    """members[k]: (FILI, F) of the lifts in category k, the lowest first."""
    out, total, before, per_min = {}, F(0), None, F(0)
    for place, k in enumerate(range(categories - 1, -1, -1), 1):
        if not members[k]:
            continue
        f = sum(g for _, g in members[k])
        mean = sum(x * g for x, g in members[k]) / f if f else sum(x for x, _ in members[k]) / len(members[k])
        per_min += f
        now = fm(per_min, duration, F(0), c)
        delta = INFINITY if now == 0 else mean / now if before is None else mean * (1 / now - 1 / before)
        out.update({f'{name}.{place}.FILI': mean, f'{name}.{place}.frequency': f, f'{name}.{place}.count': len(members[k]),
                    f'{name}.{place}.FM': now, f'{name}.{place}.delta': delta})
        total += delta
        before = now
    out[f'VLI.{name}'] = total
    return out


def by_width(values, categories):
    """Every way of putting them into bands: those on an edge belong to either side."""
    low, high = min(x for x, _ in values), max(x for x, _ in values)
    choices = []
    for x, _ in values:
        if high == low:
            choices.append([categories - 1])
            continue
        exact = (x - low) / (high - low) * categories
        near = round(exact)
        at = [min(int(exact), categories - 1)]
        if abs(exact - near) < EDGE and 0 < near < categories:
            at = [near - 1, near]
        choices.append(at)
    many = [i for i, at in enumerate(choices) if len(at) > 1]
    for way in itertools.islice(itertools.product(*(choices[i] for i in many)), 4096):
        chosen = {i: k for i, k in zip(many, way)}
        members = [[] for _ in range(categories)]
        for i, value in enumerate(values):
            members[chosen.get(i, choices[i][0])].append(value)
        yield members


def by_share(values, categories):
    everything = sum(f for _, f in values)
    shares = [f for _, f in values] if everything else [F(1)] * len(values)
    members, before, whole = [[] for _ in range(categories)], F(0), everything or len(values)
    for i in sorted(range(len(values)), key=lambda i: values[i][0]):
        middle = (before + shares[i] / 2) / whole * categories + EDGE
        members[min(int(middle), categories - 1)].append(values[i])
        before += shares[i]
    return members


def variable(lifts, facts):
    duration, beyond, day = duration_of(facts)
    categories = facts.get('categories', 6)
    c = SYSTEMS[facts['units']]
    values = [(over(lift.heaviest, lift.lowest()['FIRWL']), lift.f) for lift in lifts]
    about = {'index': 'VLI', 'beyond': beyond}
    a_day = {'lifts_per_day': sum(lift.f * day for lift in lifts)}
    if any(x == INFINITY for x, _ in values):
        return [{'VLI': INFINITY, 'VLI.equal': INFINITY, 'VLI.ntile': INFINITY} | a_day], about
    answers = []
    tiles = grouped('ntile', by_share(values, categories), categories, duration, c)
    for members in by_width(values, categories):
        out = grouped('equal', members, categories, duration, c) | tiles | a_day
        out['VLI'] = max(out['VLI.equal'], out['VLI.ntile'])
        answers.append(out)
    return answers, about


# ---- the whole

def assess(facts):
    """A list of right answers, each quantities by symbol and the verdict."""
    lifts = [Lift(lift, facts, number) for number, lift in enumerate(facts['lifts'], 1)]
    way = {'composite': composite, 'variable': variable, 'sequence': rota if 'rota' in facts else rotation}[facts['combine']]
    answers, about = way(lifts, facts)
    nearest = max(lifts, key=lambda lift: lift.heaviest / lift.persons / lift.reference)
    each = nearest.heaviest / nearest.persons
    for out in answers:
        index = out[about['index']]
        ratio = index * SYSTEMS[facts['units']]['LC'] / min(lift.reference for lift in lifts)
        out.update({'lifts': len(lifts), 'index_limit': 1, 'mR_ratio': ratio, 'mass_each': each, 'm_ref': nearest.reference,
                    'persons': max(lift.persons for lift in lifts)})
        if about['index'] != 'SLI':
            out['F'] = sum(lift.f for lift in lifts)
        verdict = 'by-hand'
        if index > 1 or ratio > 1 or any(value > 1 for value in about.get('also', [])):
            verdict = 'improve'
        if about.get('weak'):
            verdict = max(verdict, 'incomplete', key=VERDICTS.index)
        if about['beyond'] or any(lift.excluded for lift in lifts):
            verdict = max(verdict, 'outside', key=VERDICTS.index)
        if index > 3 or each > nearest.reference:
            verdict = 'mechanical'
        out['verdict'] = verdict
        out['edge'] = any(value != INFINITY and abs(value - limit) < 1e-9 for value, limit in
                          [(index, 1), (index, 3), (ratio, 1)] + [(value, 1) for value in about.get('also', [])])
    return answers
