# SPDX-License-Identifier: MIT
"""The spread: the same to the byte, in order, and in line with an independent simulation."""

import bisect
import json
import math
import random
import unittest

import sy_cases
from lifts import CLI, ask, cli, oracle

DRAWS = 20000        # of the independent simulation
SIGMAS = 4.5         # a false alarm in a hundred thousand comparisons
Z95 = 1.959963984540054  # half-width of a 95 % interval in standard deviations


def had(H=0, V=0, A=0, D=0, load=0, F=0):
    """Every measured fact with an explicit tolerance, so that no default of the policy enters."""
    length = lambda t: {'how': 'measured', 'tolerance': t}
    end = {'H': length(H), 'V': length(V), 'A': length(A)}
    return {'load': length(load), 'origin': end, 'travel': length(D), 'frequency': length(F)}


BASE = {'method': 'lift', 'units': 'metric', 'load': {'typical': 9, 'heaviest': 9},
        'origin': {'H': 45, 'V': 30, 'A': 30}, 'travel': 70, 'frequency': 1, 'duration': 'short',
        'coupling': 'fair', 'assigned': 'men-20-45', 'conditions': []}
CASES = {
    'reach only': dict(BASE, had=had(H=5)),
    'everything': dict(BASE, had=had(H=5, V=5, A=10, D=5, load=2, F=15)),
    'near the floor, where a clamp would pile up': dict(
        BASE, load={'typical': 9, 'heaviest': 9}, origin={'H': 35, 'V': 2, 'A': 0}, travel=30, had=had(V=30)),
    'past the largest reach at times': dict(BASE, origin={'H': 61, 'V': 75, 'A': 0}, had=had(H=5)),
    'mostly past it': dict(BASE, origin={'H': 63.5, 'V': 75, 'A': 0}, had=had(H=5)),
    'a wide load': dict(BASE, had=had(load=40)),
    'frequency across the rows': dict(BASE, frequency=9, duration='moderate', had=had(F=15)),
    'pounds and inches': dict(BASE, units='us', load={'typical': 20, 'heaviest': 20},
                              origin={'H': 18, 'V': 12, 'A': 30}, travel=28,
                              had=had(H=2, V=2, A=10, D=2, load=5)),
    'twist near zero': dict(BASE, origin={'H': 45, 'V': 30, 'A': 3}, had=had(A=20)),
}


def drawn(r, value, half, low=None, percent=False):
    """Normal with the tolerance as half-width of a 95 % interval, truncated: drawn again when outside."""
    sigma = half * (value / 100 if percent else 1) / Z95
    if sigma == 0:
        return value
    while True:
        x = r.gauss(value, sigma)
        if low is None or x > low:
            return x


def simulated(facts):
    """Sorted indices of independent draws, by the oracle."""
    r, h = random.Random('spread'), facts['had']
    out = []
    for _ in range(DRAWS):
        at, end = facts['origin'], h['origin']
        mass = drawn(r, facts['load']['heaviest'], h['load']['tolerance'], 0, True)
        copy = dict(facts, load={'typical': mass, 'heaviest': mass})
        copy['origin'] = {k: drawn(r, at[k], end[k]['tolerance'], 0) for k in 'HVA'}
        copy['travel'] = drawn(r, facts['travel'], h['travel']['tolerance'], 0)
        copy['frequency'] = drawn(r, facts['frequency'], h['frequency']['tolerance'], 0, True)
        out.append(oracle.assess(copy)['quantities']['LI'])
    return sorted(out)


class Spread(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.found = dict(zip(CASES, ask(list(CASES.values()), '--spread')))

    def test_the_same_bytes_twice(self):
        lines = [json.dumps(f) for f in CASES.values()]
        self.assertEqual(cli.run_lines(CLI, lines, '--spread'), cli.run_lines(CLI, lines, '--spread'))
        text = json.dumps(CASES['everything'])
        self.assertEqual(cli.run_one(CLI, text, '--spread')[1], cli.run_one(CLI, text, '--spread')[1])

    def test_the_order_of_the_documents_does_not_matter(self):
        backwards = ask(list(CASES.values())[::-1], '--spread')[::-1]
        self.assertEqual([f['spread'] for f in backwards], [f['spread'] for f in self.found.values()])

    def test_in_order_and_within_bounds(self):
        for name, found in self.found.items():
            spread = found['spread']
            self.assertEqual((spread['index'], spread['goal']), ('LI', 1), name)
            low, middle, high = (cli.number(spread[k]) for k in ('p5', 'median', 'p95'))
            self.assertTrue(low <= middle <= high, f'{name}: {spread}')
            self.assertTrue(0 <= spread['share_over_goal'] <= 1, name)
            self.assertTrue(0 <= spread['driver_share'] <= 1, name)
            self.assertGreaterEqual(spread['draws'], 100)
            self.assertNotIn('probab', spread['text'].lower())

    def test_without_the_option_there_is_none(self):
        self.assertNotIn('spread', ask([BASE])[0])

    def test_nothing_varies_nothing_spreads(self):
        found = ask([dict(BASE, had=had())], '--spread')[0]
        spread = found.get('spread')
        if spread is not None:
            for key in ('p5', 'median', 'p95'):
                self.assertTrue(cli.same(cli.number(spread[key]), cli.value(found, 'LI')), spread)

    def test_an_independent_simulation_agrees(self):
        """Where a quantile of the program stands among independent draws, within sampling error of both."""
        for name, facts in CASES.items():
            spread, sample = self.found[name]['spread'], simulated(facts)
            n = spread['draws']
            slack = lambda p: SIGMAS * math.sqrt(p * (1 - p) * (1 / n + 1 / len(sample)))
            for key, p in (('p5', 0.05), ('median', 0.5), ('p95', 0.95)):
                x = cli.number(spread[key])
                below = bisect.bisect_left(sample, x) / len(sample)
                upto = bisect.bisect_right(sample, x) / len(sample)
                self.assertTrue(below - slack(p) <= p <= upto + slack(p),
                                f'{name}: {key} = {x} stands at {below} to {upto}')
            share = 1 - bisect.bisect_right(sample, 1) / len(sample)
            allowed = slack(min(max(share, 1 / n), 1 - 1 / n))
            self.assertLessEqual(abs(spread['share_over_goal'] - share), allowed + 1 / n,
                                 f'{name}: {spread["share_over_goal"]}, simulated {share}')

    def test_the_driver_is_the_fact_that_moves_the_index_most(self):
        wanted = {'reach only': 'origin.H', 'everything': 'origin.H', 'a wide load': 'load.heaviest',
                  'twist near zero': 'origin.A'}
        for name, path in wanted.items():
            self.assertEqual(self.found[name]['spread']['driver'], path, name)
        self.assertTrue(cli.same(self.found['reach only']['spread']['driver_share'], 1))
        self.assertTrue(0.7 < self.found['everything']['spread']['driver_share'] < 1)

    def test_a_wider_tolerance_spreads_wider(self):
        found = ask([dict(BASE, had=had(H=t)) for t in (1, 2, 4, 8)], '--spread')
        widths = [f['spread']['p95']['value'] - f['spread']['p5']['value'] for f in found]
        self.assertEqual(widths, sorted(widths))
        self.assertGreater(widths[-1], 5 * widths[0])

    def test_the_defaults_of_the_policy_spread(self):
        facts = dict(BASE, had={'origin': {'H': {'how': 'measured'}}})
        eye = dict(BASE, had={'origin': {'H': {'how': 'estimated'}}})
        tape, guess = (f['spread'] for f in ask([facts, eye], '--spread'))
        width = lambda s: s['p95']['value'] - s['p5']['value']
        self.assertGreater(width(tape), 0)
        self.assertGreater(width(guess), width(tape), 'an estimate is less sure than a measurement')


if __name__ == '__main__':
    sy_cases.main()
