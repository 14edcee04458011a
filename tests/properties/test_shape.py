# SPDX-License-Identifier: MIT
"""The shape of the calculation, asked from outside: monotone, continuous between its steps, independent of
the unit system where the constants agree, in proportion to the load."""

import json
import unittest

import sy_cases
from lifts import (FACTORS, IDEAL, INFINITY, LENGTH, VERDICTS, ask, calm, cli, described, put, random_lifts,
                   value)

UNITS = ['metric', 'us']
WORSE = {'coupling': ['good', 'fair', 'poor'], 'duration': ['short', 'moderate', 'long']}


def ladder(units, fact):
    """Values of a fact from the best to the worst, past the limit."""
    scale = LENGTH[units]
    ideal = IDEAL[units]
    return {
        'origin__H': [x * scale for x in (5, 20, 25, 26, 31.2, 40, 55, 62.5, 63, 64, 90)],
        'origin__A': [0, 0.5, 15, 44.9, 45, 90, 134, 135, 135.5, 180],
        'travel': [x * scale for x in (0, 10, 25, 26, 40, 90, 150, 174, 178, 200)],
        'frequency': [0, 0.1, 0.2, 0.21, 0.5, 0.9, 1, 2.5, 4, 7.7, 8, 8.2, 9, 10, 11.5, 12, 13, 15, 15.1, 30],
        'load__heaviest': [1, 2, 5, 9.9, 10, 20, 40, 80],
        'down': [ideal, ideal * 0.999, ideal * 0.8, ideal / 2, ideal / 10, 0],
        'up': [ideal, ideal * 1.001, ideal * 1.5, ideal * 2, 175 * scale * 0.99, 190 * scale],
    }[fact]


class Monotone(unittest.TestCase):
    """Worse facts never give a larger RWL or a smaller index."""

    def falls(self, facts_lists):
        answers = ask([facts for steps in facts_lists for facts in steps])
        at, moved = 0, 0
        for steps in facts_lists:
            found = answers[at:at + len(steps)]
            at += len(steps)
            for before, after, facts in zip(found, found[1:], steps[1:]):
                for symbol, sign in (('RWL', -1), ('LI', 1), ('origin.mR_ratio', 1), ('origin.FILI', 1)):
                    a, b = value(before, symbol), value(after, symbol)
                    self.assertTrue(a == b or (b - a) * sign > -1e-12 * abs(a),
                                    f'{symbol} from {a} to {b}: {described(facts)}')
                moved += value(before, 'LI') != value(after, 'LI')
                self.assertGreaterEqual(VERDICTS.index(after['verdict']), VERDICTS.index(before['verdict']),
                                        described(facts))
        self.assertGreater(moved, len(facts_lists) // 2, 'the sweep moves the index')

    def sweep(self, fact, path=None):
        lists = []
        for units in UNITS:
            for facts in calm(units, f'monotone {fact}', 25):
                facts = put(facts, load__typical=0.5)
                lists.append([put(facts, **{path or fact: x}) for x in ladder(units, fact)])
        self.falls(lists)

    def test_reach(self):
        self.sweep('origin__H')

    def test_height_below_the_ideal(self):
        self.sweep('down', 'origin__V')

    def test_height_above_the_ideal(self):
        self.sweep('up', 'origin__V')

    def test_travel(self):
        self.sweep('travel')

    def test_twist(self):
        self.sweep('origin__A')

    def test_frequency(self):
        self.sweep('frequency')

    def test_load(self):
        self.sweep('load__heaviest')

    def test_coupling_and_duration(self):
        for fact, steps in WORSE.items():
            bases = [f for units in UNITS for f in calm(units, fact, 40)]
            self.falls([[put(facts, **{fact: step}) for step in steps] for facts in bases])

    def test_lower_height_and_longer_work_through_times(self):
        day = [dict(work=30, recovery=r) for r in (36, 30, 9, 8, 0)]
        bases = [put(f, duration=None) for f in calm('metric', 'times', 20)]
        self.falls([[put(f, sessions=[period] * 5) for period in day] for f in bases])

    def test_control_at_the_destination_never_helps(self):
        pairs = []
        for units in UNITS:
            for facts, other in zip(calm(units, 'control a', 60), calm(units, 'control b', 60)):
                facts = put(facts, travel=None, destination=other['origin'])
                pairs.append([put(facts, control_at_destination=False),
                              put(facts, control_at_destination=True)])
        for free, held in zip(ask([p[0] for p in pairs]), ask([p[1] for p in pairs])):
            self.assertLessEqual(value(held, 'RWL'), value(free, 'RWL'))
            self.assertEqual(value(held, 'origin.RWL'), value(free, 'origin.RWL'))


class Continuous(unittest.TestCase):
    """A step of a millionth never moves the limit by more than its slope allows, except at the
    published steps: the limits, the change of column at 75 cm or 30 in, the end of a frequency column."""

    STEP = 1e-6
    SLOPE = 8.0  # kg or lb for a unit of any fact; the steepest is 51 lb x 10/H^2 at H = 10 in: 5.1

    def near(self, path, points):
        pairs = []
        for units in UNITS:
            for facts in calm(units, f'continuous {path}', 6):
                for point in points(units):
                    pairs.append((put(facts, **{path: point}), put(facts, **{path: point + self.STEP})))
        before, after = ask([a for a, _ in pairs]), ask([b for _, b in pairs])
        differ = 0
        for (facts, _), a, b in zip(pairs, before, after):
            change = abs(value(a, 'RWL') - value(b, 'RWL'))
            self.assertLessEqual(change, self.SLOPE * self.STEP, described(facts))
            differ += change > 0
        self.assertGreater(differ, 0)

    def test_reach(self):
        self.near('origin__H', lambda u: [x * LENGTH[u] - self.STEP / 2 for x in (10, 25, 30, 45, 50, 62.4)])

    def test_height(self):
        self.near('origin__V', lambda u: [x * LENGTH[u] for x in (0, 10, 40, 74, 76, 110, 170)])

    def test_travel(self):
        self.near('travel', lambda u: [x * LENGTH[u] - self.STEP / 2 for x in (5, 25, 26, 60, 170)])

    def test_twist(self):
        self.near('origin__A', lambda u: [0, 1, 30, 90, 134.9])

    def test_frequency(self):
        self.near('frequency', lambda u: [x - self.STEP / 2 for x in (0.2, 0.35, 0.5, 1, 1.5, 2, 5, 7.5, 8 - 1e-6)])


class Proportion(unittest.TestCase):
    def test_the_index_scales_with_the_load_and_the_limit_does_not_move(self):
        bases = [f for units in UNITS for f in calm(units, 'scale', 60)]
        single = ask(bases)
        for factor in (0.125, 2, 3.7):
            many = ask([put(f, load={k: v * factor for k, v in f['load'].items()}) for f in bases])
            for facts, one, other in zip(bases, single, many):
                self.assertEqual(value(one, 'RWL'), value(other, 'RWL'))
                self.assertEqual(value(one, 'origin.mR'), value(other, 'origin.mR'))
                for symbol in ('LI', 'LI_typical', 'origin.FILI', 'origin.mR_ratio', 'mass_each'):
                    a, b = value(one, symbol), value(other, symbol)
                    self.assertTrue(a == b == INFINITY or cli.same(a * factor, b, 1e-12),
                                    f'{symbol}: {described(facts)}')

    def test_multipliers_and_limits_keep_within_their_bounds(self):
        constant = {'metric': 23, 'us': 51}
        documents = random_lifts.Lifts('bounds').many(1500)
        for facts, found in zip(documents, ask(documents)):
            for end in ('origin', 'destination'):
                if f'{end}.HM' not in found['quantities']:
                    continue
                for factor in FACTORS:
                    self.assertTrue(0 <= value(found, f'{end}.{factor}') <= 1, described(facts))
                rwl, firwl = value(found, f'{end}.RWL'), value(found, f'{end}.FIRWL')
                self.assertTrue(0 <= rwl <= firwl <= constant[facts['units']], described(facts))
                self.assertLessEqual(value(found, f'{end}.mR'), value(found, 'm_ref'), described(facts))
            self.assertLessEqual(value(found, 'LI_typical'), value(found, 'LI') * (1 + 1e-12))

    def test_two_equal_ends_are_equal(self):
        documents = []
        for units in UNITS:
            for facts in calm(units, 'ends', 50):
                documents.append(put(facts, travel=None, destination=facts['origin'],
                                     control_at_destination=True))
        for facts, found in zip(documents, ask(documents)):
            for symbol in FACTORS + ['FIRWL', 'RWL', 'LI', 'FILI', 'mR', 'mR_ratio']:
                self.assertEqual(value(found, f'origin.{symbol}'), value(found, f'destination.{symbol}'))
            self.assertEqual(value(found, 'D'), 0)
            self.assertEqual(value(found, 'LI'), value(found, 'origin.LI'), described(facts))

    def test_swapping_the_ends_swaps_the_answers(self):
        documents = []
        for units in UNITS:
            for facts, other in zip(calm(units, 'swap a', 60), calm(units, 'swap b', 60)):
                documents.append(put(facts, travel=None, destination=other['origin'],
                                     control_at_destination=True))
        swapped = [put(f, origin=f['destination'], destination=f['origin']) for f in documents]
        for one, other in zip(ask(documents), ask(swapped)):
            self.assertEqual(value(one, 'origin.RWL'), value(other, 'destination.RWL'))
            self.assertEqual(value(one, 'destination.LI'), value(other, 'origin.LI'))
            self.assertEqual(value(one, 'LI'), value(other, 'LI'))
            self.assertEqual(one['verdict'], other['verdict'])

    def test_the_governing_factor_is_the_smallest_of_the_lower_end(self):
        documents = random_lifts.Lifts('governing').many(600)
        seen = set()
        for facts, found in zip(documents, ask(documents)):
            if '.' not in found['governing']:
                continue
            end, factor = found['governing'].split('.')
            self.assertEqual(value(found, f'{end}.RWL'), value(found, 'RWL'), described(facts))
            self.assertEqual(value(found, f'{end}.{factor}'), min(value(found, f'{end}.{f}') for f in FACTORS),
                             described(facts))
            seen.add(factor)
        self.assertEqual(seen, set(FACTORS))


class UnitSystems(unittest.TestCase):
    def test_angle_frequency_and_coupling_do_not_know_the_unit_system(self):
        metric = calm('metric', 'units', 80)
        us = [put(f, units='us', origin__V=20 if f['origin']['V'] < 75 else 50, origin__H=12, travel=20)
              for f in metric]
        for a, b in zip(ask(metric), ask(us)):
            for factor in ('AM', 'FM', 'CM'):
                self.assertEqual(value(a, f'origin.{factor}'), value(b, f'origin.{factor}'))

    def test_text_in_any_unit_is_the_same_measure(self):
        # 25.4 mm, 453.59237 g: exact by definition
        plain = put(calm('us', 'text', 1)[0], origin={'H': 15, 'V': 27, 'A': 30}, travel=40,
                    load={'typical': 20, 'heaviest': 20})
        ways = [put(plain, origin__H='15 in'), put(plain, origin__H='38.1 cm'), put(plain, origin__H='381 mm'),
                put(plain, origin__H='0.381 m'), put(plain, origin__V='68,58 cm'), put(plain, travel='101.6cm'),
                put(plain, load__heaviest='9.0718474 kg', load__typical='19.9 lb'),
                put(plain, load={'typical': '9071.8474 g', 'heaviest': '9071.8474 g'})]
        first, *others = ask([plain] + ways)
        for facts, found in zip(ways, others):
            self.assertEqual(set(found['quantities']), set(first['quantities']))
            by_typical = {'LI_typical', 'day_mass', 'day_ratio', 'hour_mass', 'hour_ratio'}
            for symbol in set(first['quantities']) - by_typical:
                self.assertTrue(cli.same(value(found, symbol), value(first, symbol), 1e-12),
                                f'{symbol}: {described(facts)}')

    def test_units_are_named(self):
        for units, mass, length in (('metric', 'kg', 'cm'), ('us', 'lb', 'in')):
            found = ask(calm(units, 'named', 1))[0]
            quantities = found['quantities']
            self.assertEqual(found['units'], units)
            self.assertEqual({quantities[s]['unit'] for s in ('RWL', 'origin.mR', 'm_ref', 'mass_each')}, {mass})
            self.assertEqual(quantities['D']['unit'], length)


class Verdicts(unittest.TestCase):
    def test_a_heavier_load_is_never_judged_milder(self):
        contexts = []
        for units in UNITS:
            for facts in calm(units, 'heavier', 30):
                facts = put(facts, load__typical=0.1)
                contexts += [facts, put(facts, persons=2), put(facts, hands=1),
                             put(facts, conditions=['slippery-floor'])]
        masses = [0.5, 3, 7.5, 12, 15, 15.01, 20, 20.01, 25, 25.01, 33, 44, 55, 60, 90, 150]
        answers = ask([put(f, load__heaviest=m) for f in contexts for m in masses])
        seen = set()
        for i, facts in enumerate(contexts):
            codes = [a['verdict'] for a in answers[i * len(masses):(i + 1) * len(masses)]]
            ranks = [VERDICTS.index(code) for code in codes]
            self.assertEqual(ranks, sorted(ranks), f'{codes}: {described(facts)}')
            seen |= set(codes)
        self.assertEqual(seen, {'by-hand', 'improve', 'outside', 'mechanical'})

    def test_what_is_excluded_is_never_by_hand(self):
        light = put(calm('metric', 'light', 1)[0], load={'typical': 1, 'heaviest': 1}, origin={'H': 25, 'V': 75, 'A': 0},
                    travel=25, frequency=0.2)
        documents = [put(light, conditions=[c]) for c in random_lifts.CONDITIONS]
        self.assertEqual(ask([light])[0]['verdict'], 'by-hand')
        self.assertEqual({a['verdict'] for a in ask(documents)}, {'outside'})

    def test_the_typical_load_does_not_decide(self):
        bases = calm('metric', 'typical', 60)
        low = ask([put(f, load__typical=0.1) for f in bases])
        for one, other in zip(ask(bases), low):
            self.assertEqual(one['verdict'], other['verdict'])

    def test_every_reason_over_a_limit_is_over_it(self):
        documents = random_lifts.Lifts('reasons').many(600)
        seen = 0
        for facts, found in zip(documents, ask(documents)):
            for reason in found['reasons']:
                if 'limit' in reason and reason.get('value') is not None:
                    self.assertGreater(reason['value'], reason['limit'], f'{json.dumps(reason)}: {described(facts)}')
                    seen += 1
        self.assertGreater(seen, 100)


if __name__ == '__main__':
    sy_cases.main()
