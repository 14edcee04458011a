# SPDX-License-Identifier: MIT
"""Sets of lifts, asked from outside: one lift, halves of a lift, a lift more, another order, the bounds of a rotation."""

import json
import random
import time
import unittest

import sy_cases
from lifts import CLI, INFINITY, ask, cli, value

ROUNDS = 120


def near(a, b, slack=1e-9):
    return a == b or abs(a - b) <= slack * max(abs(a), abs(b))


class Random:
    def __init__(self, name):
        self.r = random.Random(name)

    def lift(self, top=0.8, same_loads=True):
        r = self.r
        mass = round(r.uniform(2, 12), 1)
        return {'load': {'typical': mass, 'heaviest': mass if same_loads else round(mass * r.uniform(1, 1.4), 2)},
                'origin': {'H': round(r.uniform(25, 55), 1), 'V': round(r.uniform(0, 150)), 'A': round(r.uniform(0, 60))},
                'travel': round(r.uniform(0, 100)), 'frequency': round(r.uniform(0.05, top), 2),
                'coupling': r.choice(['good', 'fair', 'poor'])}

    def set(self, n, **more):
        return {'method': 'lift-set', 'units': 'metric', 'combine': 'composite', 'conditions': [],
                'duration': self.r.choice(['short', 'moderate', 'long']), 'lifts': [self.lift(**more) for _ in range(n)]}


def rotation(random_, n):
    facts = random_.set(n, top=3)
    parts = [random_.r.uniform(0.1, 1) for _ in range(n)]
    facts |= {'combine': 'sequence', 'duration': 'long'}
    for lift, part in zip(facts['lifts'], parts):
        lift |= {'share': part / sum(parts), 'duration': random_.r.choice(['short', 'moderate', 'long'])}
    return facts


class Composite(unittest.TestCase):
    def test_one_task_is_its_single_index(self):
        made = Random('one')
        for found in ask([made.set(1, same_loads=False) for _ in range(ROUNDS)]):
            self.assertEqual(value(found, 'CLI'), value(found, 'lift.1.STLI'))

    def test_it_is_the_index_of_the_lift_by_itself(self):
        made = Random('alone')
        sets = [made.set(1) for _ in range(ROUNDS)]
        alone = [{'method': 'lift', 'units': 'metric', 'conditions': [], 'duration': facts['duration']} | facts['lifts'][0]
                 for facts in sets]
        for found, other in zip(ask(sets), ask(alone)):
            self.assertTrue(near(value(found, 'CLI'), value(other, 'LI')))
            self.assertTrue(near(value(found, 'mR_ratio'), value(other, 'mR_ratio')))

    def test_two_halves_of_a_task_are_the_task(self):
        """Of the last in the sum: there its halves stay side by side."""
        made = Random('halves')
        wholes = [made.set(made.r.randint(1, 5)) for _ in range(ROUNDS)]
        found = ask(wholes)
        halves = []
        for facts, answer in zip(wholes, found):
            split = json.loads(json.dumps(facts))
            last = max(range(len(facts['lifts'])), key=lambda i: value(answer, f'lift.{i + 1}.order'))
            split['lifts'][last]['frequency'] /= 2
            split['lifts'].append(json.loads(json.dumps(split['lifts'][last])))
            halves.append(split)
        for facts, one, two in zip(wholes, found, ask(halves)):
            self.assertTrue(near(value(one, 'CLI'), value(two, 'CLI')), json.dumps(facts))

    def test_a_lift_more_never_lowers(self):
        made = Random('more')
        sets = [made.set(made.r.randint(2, 8), same_loads=False) for _ in range(3 * ROUNDS)]
        for facts, found in zip(sets, ask(sets)):
            whole = value(found, 'CLI')
            for n in range(1, len(facts['lifts']) + 1):
                self.assertLessEqual(value(found, f'lift.{n}.without'), whole * (1 + 1e-12), json.dumps(facts))
                self.assertGreaterEqual(whole * (1 + 1e-12), value(found, f'lift.{n}.STLI'))

    def test_without_is_what_the_set_without_it_gives(self):
        made = Random('without')
        sets = [made.set(4) for _ in range(40)]
        less = [facts | {'lifts': facts['lifts'][:n] + facts['lifts'][n + 1:]} for facts in sets for n in range(4)]
        found, others = ask(sets), ask(less)
        for at, answer in enumerate(found):
            for n in range(4):
                self.assertTrue(near(value(answer, f'lift.{n + 1}.without'), value(others[4 * at + n], 'CLI')))

    def test_the_order_of_the_document_does_not_matter(self):
        made = Random('order')
        sets = [made.set(made.r.randint(2, 9), same_loads=False) for _ in range(ROUNDS)]
        turned = [facts | {'lifts': facts['lifts'][::-1]} for facts in sets]
        for one, other in zip(ask(sets), ask(turned)):
            self.assertTrue(near(value(one, 'CLI'), value(other, 'CLI')))

    def test_terms_add_up(self):
        made = Random('terms')
        for found in ask([made.set(made.r.randint(1, 60), top=0.1) for _ in range(30)]):
            terms = [value(found, f'term.{k}.delta') for k in range(1, round(value(found, 'lifts')) + 1)]
            self.assertTrue(near(sum(terms), value(found, 'CLI')))
            self.assertGreaterEqual(min(terms), 0)


class Sequence(unittest.TestCase):
    def test_between_the_first_and_its_largest(self):
        made = Random('between')
        for found in ask([rotation(made, made.r.randint(1, 7)) for _ in range(2 * ROUNDS)]):
            first = next(n for n in range(1, 9) if value(found, f'lift.{n}.order') == 1)
            low, high = value(found, f'lift.{first}.LI'), value(found, f'lift.{first}.LImax')
            self.assertLessEqual(low * (1 - 1e-12), value(found, 'SLI'))
            self.assertLessEqual(value(found, 'SLI'), high * (1 + 1e-12))

    def test_one_element_gives_its_largest(self):
        made = Random('element')
        for found in ask([rotation(made, 1) for _ in range(ROUNDS)]):
            self.assertTrue(near(value(found, 'SLI'), value(found, 'lift.1.LImax')))

    def test_the_order_of_the_document_does_not_matter(self):
        made = Random('rotation order')
        sets = [rotation(made, made.r.randint(2, 7)) for _ in range(ROUNDS)]
        turned = [facts | {'lifts': facts['lifts'][::-1]} for facts in sets]
        for one, other in zip(ask(sets), ask(turned)):
            self.assertTrue(near(value(one, 'SLI'), value(other, 'SLI')))

    def test_a_rota_of_one_who_does_all_is_the_rotation(self):
        made = Random('rota')
        sets, rotas = [], []
        for _ in range(ROUNDS):
            n = made.r.randint(1, 4)
            facts = made.set(n, top=3) | {'combine': 'sequence'}
            minutes = [made.r.choice([30, 60, 90, 120]) for _ in range(n)]
            turns = [{'lift': str(i + 1), 'minutes': m} for i, m in enumerate(minutes)]
            rotas.append({k: v for k, v in facts.items() if k != 'duration'} | {'rota': [{'label': 'Ann', 'turns': turns}]})
            classes = ['short' if m <= 60 else 'moderate' for m in minutes]
            lifts = [lift | {'duration': kind, 'share': m / sum(minutes)}
                     for lift, kind, m in zip(facts['lifts'], classes, minutes)]
            sets.append(facts | {'lifts': lifts, 'duration': 'short' if sum(minutes) <= 60 else 'moderate'
                                 if sum(minutes) <= 120 else 'long'})
        for one, other in zip(ask(sets), ask(rotas)):
            self.assertTrue(near(value(one, 'SLI'), value(other, 'person.Ann.SLI')))


class Variable(unittest.TestCase):
    def sample(self, made, n):
        return made.set(n, top=6 / n) | {'combine': 'variable'}

    def test_the_larger_of_both_groupings(self):
        made = Random('larger')
        larger = set()
        for found in ask([self.sample(made, made.r.randint(2, 60)) for _ in range(ROUNDS)]):
            equal, ntile = value(found, 'VLI.equal'), value(found, 'VLI.ntile')
            self.assertEqual(value(found, 'VLI'), max(equal, ntile))
            larger.add(equal > ntile)
        self.assertEqual(larger, {True, False})

    def test_every_lift_is_in_one_category_of_each(self):
        made = Random('counts')
        for found in ask([self.sample(made, made.r.randint(1, 80)) for _ in range(ROUNDS)]):
            for prefix in ('equal', 'ntile'):
                keys = [key for key in found['quantities'] if key.startswith(prefix + '.')]
                counted = sum(value(found, key) for key in keys if key.endswith('.count'))
                paced = sum(value(found, key) for key in keys if key.endswith('.frequency'))
                self.assertEqual(counted, value(found, 'lifts'))
                self.assertTrue(near(paced, value(found, 'F')))

    def test_many_lifts_are_told_in_few_quantities(self):
        made = Random('many')
        facts = self.sample(made, 30000) | {'frequency': 5}
        for lift in facts['lifts']:
            del lift['frequency']
        begun = time.monotonic()
        code, out, errors = cli.run_one(CLI, json.dumps(facts))
        print(f'# 30,000 lifts in {time.monotonic() - begun:.1f} s')
        self.assertEqual((code, errors), (0, ''))
        found = json.loads(out)
        self.assertEqual(value(found, 'lifts'), 30000)
        self.assertLess(len(found['quantities']), 120)
        self.assertLess(value(found, 'VLI'), INFINITY)

    def test_one_lift_more_than_that_is_refused(self):
        made = Random('too many')
        lift = made.lift()
        many = made.set(1) | {'combine': 'variable', 'lifts': [lift] * 30001}
        code, out, errors = cli.run_one(CLI, json.dumps(many))
        self.assertEqual((code, out), (2, ''))
        self.assertIn('$.lifts', errors)
        for combine, lifts in (('composite', [lift] * 61), ('sequence', [lift | {'duration': 'short', 'share': 1 / 61}] * 61)):
            code, out, errors = cli.run_one(CLI, json.dumps(made.set(1) | {'combine': combine, 'lifts': lifts, 'duration': 'long'}))
            self.assertEqual((code, out), (2, ''))
            self.assertIn('$.lifts', errors)


if __name__ == '__main__':
    sy_cases.main()
