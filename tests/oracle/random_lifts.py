# SPDX-License-Identifier: MIT
"""Random lifts as documents: in and out of the limits, on them, and written in several ways."""

import random

import oracle

CONDITIONS = ['one-hand', 'seated-or-kneeling', 'restricted-space', 'unstable-load',
              'wheelbarrow-or-shovel', 'faster-than-75cm-s', 'slippery-floor',
              'temperature-or-humidity', 'over-8h', 'other-handling-over-10-percent',
              'carried-over-two-steps', 'unexpected-load', 'sharp-or-hot', 'protected-persons']
EDGE = {
    'metric': dict(H=[25, 63, 24.999, 25.001, 63.0001, 62.9999, 0.1, 10, 50],
                   V=[0, 75, 74.9999999, 75.0000001, 175, 175.0001, 30, 110],
                   D=[0, 25, 24.9, 25.1, 175, 175.01, 100], top=dict(H=80, V=190, D=190),
                   calm=dict(H=55, V=150, D=90), mass=[5, 11.5, 15, 20, 20.0001, 23, 25, 25.0001]),
    'us': dict(H=[10, 25, 9.999, 10.001, 25.0001, 24.9999, 0.1, 22, 23],
               V=[0, 30, 29.9999999, 30.0000001, 70, 70.0001, 15, 64],
               D=[0, 10, 9.9, 10.1, 70, 70.01, 49], top=dict(H=32, V=76, D=76),
               calm=dict(H=21, V=60, D=36), mass=[10, 33, 44, 44.1, 51, 55, 55.2]),
}
TWISTS = [0, 45, 90, 134.999, 135, 135.001, 180]
OTHER_UNITS = {'metric': dict(H=['mm', 'm', 'in'], mass=['g', 'lb']),
               'us': dict(H=['mm', 'm', 'cm', 'in'], mass=['kg', 'lb'])}


class Lifts:
    def __init__(self, seed):
        self.r = random.Random(seed)
        self.calm = True  # this lift keeps within what hands can do, mostly

    def number(self, top):
        """Between 0 and top, as people write it or with every bit used."""
        return self.r.choice([lambda x: round(x) or 1, lambda x: round(x, 1) or 0.5, lambda x: x])(
            self.r.uniform(0, top))

    def text(self, value, units, kind):
        """The same measure written with a unit, at times with a comma; rounded on the way."""
        unit = self.r.choice(OTHER_UNITS[units]['mass' if kind == 'mass' else 'H'])
        group = oracle.UNITS['mass' if kind == 'mass' else 'reach']
        base = oracle.US_UNIT['mass' if kind == 'mass' else 'reach'] if units == 'us' else 1
        amount = float(base) * value / float(group[unit])
        written = f'{amount:.4f}'
        if self.r.random() < 0.3:
            written = written.replace('.', ',')
        return written + self.r.choice([' ', '']) + unit

    def length(self, units, kind):
        edge = EDGE[units]
        value = (self.r.choice(edge[kind]) if self.r.random() < (0.05 if self.calm else 0.25)
                 else self.number(edge['calm' if self.calm else 'top'][kind]))
        if value > 0 and self.r.random() < 0.08:
            return self.text(value, units, kind)
        return value

    def end(self, units):
        twist = (self.number(80) if self.calm
                 else self.r.choice(TWISTS) if self.r.random() < 0.5 else self.number(140))
        return {'H': self.length(units, 'H'), 'V': self.length(units, 'V'), 'A': twist}

    def mass(self, units):
        top = (16 if self.calm else 40) * (1 if units == 'metric' else 2.2)
        heaviest = (self.r.choice(EDGE[units]['mass']) if self.r.random() < (0.05 if self.calm else 0.3)
                    else max(self.number(top), 0.2))
        typical = self.r.choice([heaviest, heaviest, heaviest * self.r.uniform(0.3, 1)])
        if self.r.random() < 0.08:
            written = self.text(heaviest, units, 'mass')
            return {'typical': written, 'heaviest': written}
        return {'typical': typical, 'heaviest': heaviest}

    def pace(self, facts):
        r = self.r
        if r.random() < 0.25:
            facts['lifts'] = r.randint(1, 20 if self.calm else 150)
            facts['in_minutes'] = r.choice([15, 10, 5, 1, round(r.uniform(0.5, 15), 2)])
            return
        rows = [row[0] for row in oracle.FREQUENCY]
        row = r.choice(rows[:7] if self.calm else rows)
        facts['frequency'] = r.choice([
            row, row, row + 5e-10, max(row - 5e-10, 0), row + 1e-6, max(row - 1e-6, 0), 0, 0.1,
            r.uniform(0, 1), r.uniform(0, 5), round(r.uniform(0, 6), 1)]
            + ([] if self.calm else [r.uniform(5, 16), round(r.uniform(5, 16), 1), 15.001, 20]))

    def time(self, facts):
        r = self.r
        minutes = lambda top: r.choice([r.randint(1, top), round(r.uniform(1, top), 2), r.randint(1, 8) * 15])
        pick = r.random()
        if pick < 0.5:
            facts['duration'] = r.choice(oracle.DURATIONS)
        elif pick < 0.75:
            facts['work_minutes'] = minutes(200)
            facts['recovery_minutes'] = r.choice([0, minutes(120), facts['work_minutes'] * 1.2,
                                                  facts['work_minutes'] * 0.3])
            if r.random() < 0.5:
                facts['shift_minutes'] = r.choice([480, 240, 600, r.randint(60, 720)])
        else:
            facts['sessions'] = [{'work': minutes(120), 'recovery': r.choice([0, minutes(150)])}
                                 for _ in range(r.randint(1, 6))]
            for session in facts['sessions']:
                if r.random() < 0.3:
                    session['recovery'] = session['work'] * r.choice([0.3, 1.2])

    def one(self):
        r = self.r
        units = r.choice(['metric', 'us'])
        self.calm = r.random() < 0.7
        facts = {'method': 'lift', 'units': units, 'load': self.mass(units), 'origin': self.end(units),
                 'coupling': r.choice(['good', 'fair', 'poor'])}
        if r.random() < 0.5:
            facts['destination'] = self.end(units)
            if r.random() < 0.6:
                facts['control_at_destination'] = r.random() < 0.5
        else:
            facts['travel'] = self.length(units, 'D')
        self.pace(facts)
        self.time(facts)
        if r.random() < 0.7:
            facts['assigned'] = r.choice(list(oracle.REFERENCE_KG))
        if r.random() < 0.2:
            facts['persons'] = r.choice([1, 2, 3])
        if r.random() < 0.2:
            facts['hands'] = r.choice([1, 2])
        if r.random() < 0.3:
            facts['lifts_per_day'] = r.randint(1, 3000)
        if r.random() < 0.15:
            facts['additional_tasks'] = r.random() < 0.6
        if r.random() < 0.15 and facts.get('shift_minutes', 0) <= 480:
            facts['shift_hours'] = r.choice([8, 8.5, 9, 9.001, 10, 11, 11.5, 12])
        facts['conditions'] = [] if r.random() < 0.85 else r.sample(CONDITIONS, r.randint(1, 3))
        return facts

    def many(self, count):
        return [self.one() for _ in range(count)]
