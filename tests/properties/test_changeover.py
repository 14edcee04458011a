# SPDX-License-Identifier: MIT
"""Die changes, asked from outside: what is made worse is never told as better."""

import copy
import random
import unittest

import sy_cases
from lifts import VERDICTS, ask, described, value

import changeover_oracle as second
import compare_changeover as changes
import random_lifts

RANK = {code: i for i, code in enumerate(VERDICTS)} | {'within-capacity': 0}
UNDO = {'slide-blocked', 'blocks-counted-out'}  # each says that the other holds no longer


def some(seed, count):
    r, lifts = random.Random(seed), random_lifts.Lifts(seed)
    return r, [changes.random_change(r, lifts) for _ in range(count)]


class Changeover(unittest.TestCase):
    def never_weaker(self, before, after):
        for facts, first, then in zip(before, ask(before), ask(after)):
            self.assertGreaterEqual(RANK[then['verdict']], RANK[first['verdict']], described(facts))

    def test_the_whole_is_as_strict_as_each_of_its_steps(self):
        _, cases = some(1, 200)
        for facts, found in zip(cases, ask(cases)):
            for part in found['parts']:
                if 'verdict' in part:
                    self.assertGreaterEqual(RANK[found['verdict']], RANK[part['verdict']], described(facts))

    def test_a_step_by_itself_comes_to_what_its_method_says_alone(self):
        _, cases = some(2, 120)
        alone, told = [], []
        for facts, found in zip(cases, ask(cases)):
            for step, part in zip(facts['steps'], found['parts']):
                self.assertEqual(step['label'], part['label'])
                if 'facts' in step:
                    alone.append(dict(step['facts'], units=facts['units'], as_of=facts['as_of']))
                    told.append(part)
        for facts, part, found in zip(alone, told, ask(alone)):
            self.assertEqual(part['verdict'], found['verdict'], described(facts))
            if 'value' in part and part['value'] is not None:
                self.assertEqual(part['value'], value(found, part['index']), described(facts))

    def test_a_step_more_is_never_better(self):
        r, cases = some(3, 200)
        more = []
        for facts in cases:
            other = copy.deepcopy(facts)
            other['steps'].append(copy.deepcopy(r.choice(facts['steps'])) | {'label': 'last', 'kind': 'store', 'checks': []})
            other['steps'][-1].pop('after', None)
            more.append(other)
        self.never_weaker(cases, more)
        for facts, first, then in zip(cases, ask(cases), ask(more)):
            for person in second.people_of(facts):
                symbol = f'person.{person}.CLI'
                if symbol in first['quantities']:
                    self.assertGreaterEqual(value(then, symbol) * (1 + 1e-12), value(first, symbol), described(facts))

    def test_a_check_less_is_never_better(self):
        r, cases = some(4, 200)
        less = copy.deepcopy(cases)
        for facts in less:
            step = r.choice(facts['steps'])
            step['checks'] = [check for check in step['checks'] if check in UNDO or r.random() < 0.3]
        self.never_weaker(cases, less)

    def test_a_way_not_said_to_be_absent_is_never_better(self):
        _, cases = some(5, 200)
        self.never_weaker(cases, [{key: v for key, v in facts.items() if key != 'without'} for facts in cases])

    def test_a_load_nobody_assessed_is_never_better_than_a_step_within_its_limits(self):
        r, cases = some(6, 200)
        good = [facts for facts, found in zip(cases, ask(cases))
                if any(p.get('verdict') in ('by-hand', 'within-capacity') for p in found['parts'])]
        bare = copy.deepcopy(good)
        for facts, found in zip(bare, ask(good)):
            place = next(i for i, p in enumerate(found['parts']) if p.get('verdict') in ('by-hand', 'within-capacity'))
            facts['steps'][place].pop('facts')
            facts['steps'][place]['kind'] = 'lift'
        for facts, found in zip(bare, ask(bare)):
            self.assertGreaterEqual(RANK[found['verdict']], RANK['incomplete'], described(facts))

    def test_a_heavier_lift_is_never_better(self):
        _, cases = some(7, 200)
        heavier = copy.deepcopy(cases)
        for facts in heavier:
            for step in facts['steps']:
                load = step.get('facts', {}).get('load', {})
                for key, mass in load.items():
                    load[key] = mass * 1.3 if not isinstance(mass, str) else mass
        pairs = [(a, b) for a, b in zip(cases, heavier) if a != b]
        self.never_weaker(*zip(*pairs))

    def test_names_do_not_matter(self):
        _, cases = some(8, 100)
        other = copy.deepcopy(cases)
        for facts in other:
            for step in facts['steps']:
                step['label'] = f'Ü {step["label"]}.start'
                if 'after' in step:
                    step['after'] = [f'Ü {name}.start' for name in step['after']]
        for facts, first, then in zip(cases, ask(cases), ask(other)):
            self.assertEqual(first['verdict'], then['verdict'], described(facts))
            self.assertEqual(len(first['quantities']), len(then['quantities']), described(facts))

    def test_twice_as_long_takes_twice_as_long(self):
        _, cases = some(9, 150)
        slow = copy.deepcopy(cases)
        for facts in slow:
            for step in facts['steps']:
                step['minutes'] *= 2
        for facts, first, then in zip(cases, ask(cases), ask(slow)):
            for symbol in ('elapsed.minutes', 'stopped.elapsed', 'person.minutes', 'movable.minutes'):
                self.assertAlmostEqual(value(then, symbol), 2 * value(first, symbol), delta=1e-9, msg=described(facts))


if __name__ == '__main__':
    sy_cases.main()
