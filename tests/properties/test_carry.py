# SPDX-License-Identifier: MIT
"""Carrying, asked from outside: heavier, farther, oftener, longer or higher is never better; what a remedy says holds."""

import random
import unittest

import sy_cases
from lifts import VERDICTS, ask, ask_whole, described, value

SCALE = {'metric': {'mass': 1, 'distance': 1, 'height': 1}, 'us': {'mass': 2.2, 'distance': 3.28, 'height': 1 / 2.54}}
LADDERS = {
    'mass': [0.1, 1, 3, 5, 8, 10, 11.3, 13, 15, 16, 16.1, 19, 20, 20.1, 25, 26, 31, 40, 60, 200],
    'distance': [0.2, 1, 1.1, 2, 2.1, 2.2, 3, 4, 4.2, 4.3, 4.4, 5, 5.1, 7, 8.4, 8.5, 8.6, 10, 10.1, 15, 20, 20.1, 40, 500],
    'frequency': [1e-6, 0.001, 1 / 480, 0.01, 0.1, 0.2, 0.5, 0.51, 0.9, 1, 1.5, 2, 2.1, 2.5, 3, 10 / 3, 3.4, 3.75, 4, 5, 6,
                  6.1, 8, 8.1, 10, 10.1, 12, 15, 40, 1000],
    'height': [79, 80, 90, 104, 105, 105.1, 110, 111, 111.2, 125, 160, 250, 600],
    'minutes': [0.1, 1, 2, 30, 60, 61, 200, 240, 241, 400, 480, 481, 1440],
}
CERTAIN = {'mass': ['psycho.ratio', 'uk.ratio', 'iso.day.ratio', 'iso21.day.ratio'], 'distance': ['iso.hour.ratio'],
           'frequency': ['iso.pace.ratio'], 'height': ['psycho.ratio'], 'minutes': ['iso.day.ratio']}


def carries(seed, count):
    r = random.Random(seed)
    out = []
    for _ in range(count):
        units = r.choice(['metric', 'us'])
        men = r.random() < 0.4
        facts = {'method': 'carry', 'units': units, 'mass': r.choice([3, 6, 9, 12, 15, 18, 24]) * SCALE[units]['mass'],
                 'distance': r.choice([0.5, 2, 3.5, 6, 9, 10, 14, 20]) * SCALE[units]['distance'],
                 'frequency': r.choice([0.05, 0.2, 0.5, 1, 2, 4, 7, 11]), 'minutes': r.choice([10, 60, 180, 400, 480]),
                 'height': r.choice([80, 95, 104, 110]) * SCALE[units]['height'], 'percent': r.choice([90, 75, 50]),
                 'poor_lift': r.random() < 0.3, 'poor_surroundings': False, 'conditions': []}
        facts |= {'who': 'men', 'assigned': 'men-20-45'} if men else {'who': 'women', 'assigned': 'mixed-adults'}
        out.append(facts)
    return out


class Monotone(unittest.TestCase):
    def falls(self, fact):
        steps = [[facts | {fact: x * SCALE[facts['units']].get(fact, 1)} for x in LADDERS[fact]]
                 for facts in carries(f'monotone {fact}', 60)]
        found = iter(ask([facts for ladder in steps for facts in ladder]))
        moved = {symbol: 0 for symbol in CERTAIN[fact]}
        for ladder in steps:
            before = None
            for facts in ladder:
                after = next(found)
                if before is not None:
                    for symbol in after['quantities']:
                        a, b = value(before, symbol), value(after, symbol)
                        if symbol.endswith('ratio'):
                            self.assertGreaterEqual(b, a * (1 - 1e-12), f'{symbol}: {described(facts)}')
                        elif symbol.endswith('limit') or symbol in ('women.percent', 'men.percent'):
                            self.assertLessEqual(b, a * (1 + 1e-12) + 1e-12, f'{symbol}: {described(facts)}')
                        if symbol in moved:
                            moved[symbol] += a != b
                    self.assertGreaterEqual(VERDICTS.index(after['verdict']), VERDICTS.index(before['verdict']),
                                            described(facts))
                before = after
        for symbol, times in moved.items():
            self.assertGreater(times, len(steps), f'the sweep moves {symbol}')

    def test_heavier(self):
        self.falls('mass')

    def test_farther(self):
        self.falls('distance')

    def test_oftener(self):
        self.falls('frequency')

    def test_longer(self):
        self.falls('minutes')

    def test_higher_from_the_knuckles_up(self):
        self.falls('height')

    def test_a_poor_lift_takes_a_third_off_the_sums_alone(self):
        documents = carries('poor', 100)
        plain, poor = (ask([d | {'poor_lift': x} for d in documents]) for x in (False, True))
        for a, b in zip(plain, poor):
            for symbol in a['quantities']:
                part = 2 / 3 if symbol.endswith('.limit') and symbol[:3] == 'iso' and 'pace' not in symbol else 1
                if not symbol.endswith('ratio'):
                    self.assertAlmostEqual(value(b, symbol), value(a, symbol) * part, delta=1e-9 * abs(value(a, symbol)))


class Remedies(unittest.TestCase):
    def test_what_a_remedy_says_holds_when_it_is_done(self):
        documents = carries('remedies', 250)
        told, kinds = [], set()
        for facts, found in zip(documents, ask_whole(documents)):
            for remedy in found['remedies']:
                changed = dict(facts)
                for change in remedy['changes']:
                    changed[change['path']] = change['to']
                told.append((changed, remedy))
                kinds.add(remedy['id'])
        self.assertEqual(kinds, {'distance', 'frequency', 'minutes', 'height', 'pair', 'largest-mass'} & kinds)
        self.assertGreaterEqual(kinds, {'distance', 'frequency', 'minutes', 'pair', 'largest-mass'})
        for (facts, remedy), found in zip(told, ask([facts for facts, _ in told])):
            self.assertEqual(found['verdict'], remedy['verdict'], described(facts))
            self.assertEqual(value(found, 'ratio'), remedy['ratio'], described(facts))
            if remedy['reaches']:
                self.assertLessEqual(value(found, 'ratio'), 1, described(facts))

    def test_a_little_more_than_the_largest_mass_is_too_much(self):
        documents = carries('largest', 120)
        largest = []
        for facts, found in zip(documents, ask_whole(documents)):
            for remedy in found['remedies']:
                if remedy['id'] == 'largest-mass':
                    largest.append(facts | {'mass': remedy['changes'][0]['to']})
        self.assertGreater(len(largest), 40)
        more = [facts | {'mass': facts['mass'] * (1 + 1e-9)} for facts in largest]
        for facts, at, over in zip(largest, ask(largest), ask(more)):
            self.assertLessEqual(value(at, 'ratio'), 1, described(facts))
            self.assertGreater(value(over, 'ratio'), 1, described(facts))


if __name__ == '__main__':
    sy_cases.main()
