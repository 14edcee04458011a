# SPDX-License-Identifier: MIT
"""Teams, asked from outside: turning, moving and renaming change nothing, heavier is never better, who is nearer carries more.
And back compression beside a lift: it never makes a result better, and heavier, farther or more bent is never less."""

import math
import random
import unittest

import sy_cases
from lifts import VERDICTS, ask, ask_whole, calm, put, value

LABELS = 'ABCD'


def inside(r, places):
    parts = [r.expovariate(1) + .05 for _ in places]
    return [sum(p[i] * part for p, part in zip(places, parts)) / sum(parts) for i in range(2)]


def teams(seed, count):
    r, out = random.Random(seed), []
    for _ in range(count):
        n, units = r.choice([2, 3, 4]), r.choice(['metric', 'us'])
        scale, cm = (1, 1) if units == 'metric' else (1 / 25.4, 1 / 2.54)
        turn, size = r.uniform(0, 6), r.uniform(400, 900)
        places = [[size * math.cos(turn + 6.283 * i / n + r.uniform(-.3, .3)) * scale,
                   size * math.sin(turn + 6.283 * i / n + r.uniform(-.3, .3)) * scale] for i in range(n)]
        facts = {'method': 'team-lift', 'units': units, 'mass': r.uniform(5, 80), 'cg': [*inside(r, places), r.uniform(0, 300) * scale],
                 'travel': r.uniform(0, 40) * cm, 'frequency': r.uniform(.1, 3), 'duration': 'short', 'coupling': 'fair',
                 'people': [{'label': LABELS[i], 'at': place, 'height': (75 + r.uniform(-3, 3)) * cm,
                             'reach': r.uniform(25, 50) * cm, 'assigned': r.choice(['mixed-adults', 'men-20-45', 'any-age'])}
                            for i, place in enumerate(places)]}
        if r.random() < .4:
            facts |= {'slope': r.uniform(1, 12), 'uphill': r.choice(LABELS[:n])}
        out.append(facts)
    return out


def moved(facts, turn, dx, dy):
    c, s = math.cos(turn), math.sin(turn)

    def at(place):
        return [c * place[0] - s * place[1] + dx, s * place[0] + c * place[1] + dy]

    return facts | {'cg': at(facts['cg']) + facts['cg'][2:], 'people': [p | {'at': at(p['at'])} for p in facts['people']]}


def shares(findings):
    return {k: v['value'] for k, v in findings['quantities'].items() if k.startswith('share.')}


class Teams(unittest.TestCase):
    def same(self, one, other, facts, within=1e-9):
        self.assertEqual(one['verdict'], other['verdict'], facts)
        self.assertEqual(shares(one).keys(), shares(other).keys())
        for symbol, a in shares(one).items():
            b = shares(other)[symbol]
            self.assertLessEqual(abs(a - b), within * max(abs(a), abs(b), facts['mass']), (symbol, facts))

    def test_where_the_plan_lies_and_how_it_is_turned_changes_nothing(self):
        cases = teams('moved', 150)
        for facts, one, other in zip(cases, ask(cases), ask([moved(f, 1.1, 730, -210) for f in cases])):
            self.same(one, other, facts)

    def test_the_order_of_the_people_changes_nothing(self):
        cases = teams('order', 150)
        turned = [f | {'people': f['people'][::-1]} for f in cases]
        for facts, one, other in zip(cases, ask(cases), ask(turned)):
            self.same(one, other, facts)

    def test_heavier_is_never_better(self):
        cases = teams('heavier', 150)
        for facts, one, other in zip(cases, ask(cases), ask([f | {'mass': f['mass'] * 1.3} for f in cases])):
            self.assertGreaterEqual(VERDICTS.index(other['verdict']), VERDICTS.index(one['verdict']), facts)

    def test_who_is_nearer_to_the_centre_carries_more(self):
        cases = [f for f in teams('nearer', 300) if 'slope' not in f]
        nearer = []
        for f in cases:
            a = f['people'][0]['at']
            nearer.append(f | {'cg': [c + .2 * (p - c) for c, p in zip(f['cg'], a)] + f['cg'][2:]})
        seen = 0
        for facts, one, other in zip(cases, ask(cases), ask(nearer)):
            if 'share.A.mass' in one['quantities'] and 'share.A.mass' in other['quantities']:
                seen += 1
                self.assertGreaterEqual(value(other, 'share.A.mass'), value(one, 'share.A.mass') - 1e-9 * facts['mass'], facts)
        self.assertGreater(seen, 100)

    def test_no_share_of_four_is_more_than_the_worst(self):
        for facts, found in zip(cases := teams('four', 400), ask(cases)):
            for person in facts['people']:
                if (symbol := f'share.{person["label"]}.elastic') in found['quantities']:
                    self.assertLessEqual(value(found, symbol), value(found, symbol.replace('elastic', 'mass'))
                                         + 1e-9 * facts['mass'])

    def test_four_are_never_by_hand(self):
        for facts, found in zip(cases := [f | {'mass': 4} for f in teams('light', 300)], ask(cases)):
            if len(facts['people']) == 4:
                self.assertNotIn(found['verdict'], ('by-hand', 'improve'), facts)


def with_back(facts, r):
    mass, length = (1, 1) if facts['units'] == 'metric' else (1 / .45359237, 1 / 2.54)
    return facts | {'back': {'body_mass': r.uniform(45, 130) * mass, 'trunk_origin': r.uniform(0, 90),
                             'arm_origin': r.uniform(20, 90) * length}}


class Back(unittest.TestCase):
    def lifts(self, seed):
        return calm('metric', seed, 150) + calm('us', seed + 1, 150)

    def test_it_never_makes_a_result_better(self):
        r, plain = random.Random('better'), self.lifts(71)
        for facts, without, beside in zip(plain, ask(plain), ask([with_back(f, r) for f in plain])):
            self.assertGreaterEqual(VERDICTS.index(beside['verdict']), VERDICTS.index(without['verdict']), facts)
            self.assertLessEqual({x['id'] for x in without['reasons']}, {x['id'] for x in beside['reasons']}, facts)
            for symbol, quantity in without['quantities'].items():
                self.assertEqual(quantity, beside['quantities'][symbol], symbol)

    def test_heavier_farther_and_more_bent_is_never_less(self):
        r = random.Random('more')
        cases = [with_back(f, r) for f in self.lifts(73)]
        worse = {
            'load': [put(f, load={'typical': f['load']['heaviest'] * 1.2, 'heaviest': f['load']['heaviest'] * 1.2}) for f in cases],
            'body': [put(f, back__body_mass=f['back']['body_mass'] * 1.1) for f in cases],
            'trunk': [put(f, back__trunk_origin=f['back']['trunk_origin'] * .9) for f in cases],
            'arm': [put(f, back__arm_origin=f['back']['arm_origin'] * 1.1) for f in cases],
        }
        before = ask(cases)
        for name, documents in worse.items():
            for facts, one, other in zip(documents, before, ask(documents)):
                self.assertGreaterEqual(value(other, 'back'), value(one, 'back') * (1 - 1e-12), (name, facts))

    def test_the_largest_mass_is_within_it_too(self):
        r = random.Random('largest')
        cases = [with_back(f, r) for f in self.lifts(79)[::6]]
        seen = 0
        for facts, found in zip(cases, ask_whole(cases)):
            for remedy in found['remedies']:
                if remedy['id'] == 'largest-mass':
                    mass = remedy['changes'][0]['to']
                    after, = ask([put(facts, load={'typical': min(mass, facts['load']['typical']), 'heaviest': mass})])
                    self.assertNotIn('back-action', [x['id'] for x in after['reasons']], facts)
                    seen += 1
        self.assertGreater(seen, 10)


if __name__ == '__main__':
    sy_cases.main()
