# SPDX-License-Identifier: MIT
"""compare_sets.py CLI [COUNT]: random sets of lifts through `assess --lines`, every quantity within 1e-8 of the oracle's, the
same symbols, the same verdict. First the oracle against worked numbers. Ends with `N passed, N failed`."""

import json
import random
import sys
from collections import Counter
from fractions import Fraction as F

import cli
import set_oracle as oracle

SEED = 20070511
COUNT = 2000
SHOWN = 8
NAMES = ['Blank', 'Punch', 'Guard', 'Fixture', 'Insert', 'Coil end', 'Tray', 'Plate']


def check_oracle():
    """The sum that is printed, and the two computed examples."""
    tasks = [(F(20), F(20), 2), (F(30), F(20), 1), (F(10), F(15), 4)]
    lifts = []
    for number, (load, firwl, f) in enumerate(tasks, 1):
        lift = oracle.Lift.__new__(oracle.Lift)
        lift.c, lift.number, lift.f, lift.heaviest, lift.typical = oracle.SYSTEMS['us'], number, F(f), load, load
        lift.ends = [dict(V=F(30), HM=1, VM=1, DM=1, AM=1, CM=1, FIRWL=firwl)]
        lifts.append(lift)
    out = oracle.composite(lifts, {'duration': 'short'})[0][0]
    assert round(float(out['CLI']), 3) == 1.863 and [out[f'lift.{n}.order'] for n in (1, 2, 3)] == [2, 1, 3]
    elements = [(F('1.5'), F('2.4'), F('.25')), (F(1), F('1.6'), F('.5')), (F('.5'), F('.8'), F('.25'))]
    assert oracle.sequential(elements)[0] == F('2.1')
    values = [(F(x), F(f)) for x, f in zip('.4 .6 .9 1.1 1.2 1.6 1.8 2.0 2.3 2.5'.split(), '.3 .3 .4 .4 .5 .5 .3 .1 .1 .1'.split())]
    c = oracle.SYSTEMS['metric']
    widths = {round(float(oracle.grouped('equal', m, 6, 2, c)['VLI.equal']), 2) for m in oracle.by_width(values, 6)}
    assert 3.52 in widths, widths
    assert round(float(oracle.grouped('ntile', oracle.by_share(values, 6), 6, 2, c)['VLI.ntile']), 2) == 3.10


class Sets:
    def __init__(self, seed):
        self.r = random.Random(seed)

    def number(self, low, high):
        return self.r.choice([lambda x: round(x), lambda x: round(x, 1), lambda x: x])(self.r.uniform(low, high))

    def end(self, us, wild):
        r = self.r
        cm = 1 / 2.54 if us else 1
        top = 1.15 if wild else 0.9
        return {'H': max(1, self.number(15 * cm, 60 * cm * top)), 'V': self.number(0, 165 * cm * top),
                'A': r.choice([0, 0, 30, self.number(0, 120 * top)])}

    def lift(self, us, wild, top_f):
        r = self.r
        mass = max(0.5, self.number(1, 14)) * (2.2 if us else 1)
        out = {'load': {'typical': mass, 'heaviest': mass * r.choice([1, 1, 1.25, r.uniform(1, 1.6)])},
               'origin': self.end(us, wild), 'coupling': r.choice(['good', 'fair', 'poor'])}
        if r.random() < 0.6:
            out['destination'] = self.end(us, wild)
            if r.random() < 0.5:
                out['control_at_destination'] = r.random() < 0.7
        else:
            out['travel'] = self.number(0, 60 if us else 150)
        if r.random() < 0.7:
            out['frequency'] = r.choice([r.uniform(0, top_f), round(r.uniform(0, top_f), 1), 0.2, 0.5, 1])
        else:
            out['lifts'], out['in_minutes'] = r.randint(0, round(top_f * 10) + 1), r.choice([15, 10, 12.5])
        if r.random() < 0.15:
            out['assigned'] = r.choice(['any-age', 'mixed-adults', 'men-20-45'])
        if wild and r.random() < 0.1:
            out[r.choice(['hands', 'persons'])] = r.choice([1, 2])
        if wild and r.random() < 0.1:
            out['conditions'] = r.choice([[], ['slippery-floor']])
        return out

    def times(self, facts):
        r = self.r
        if r.random() < 0.8:
            facts['duration'] = r.choice(['short', 'moderate', 'long'])
        else:
            facts['sessions'] = [{'work': r.choice([20, 45, 60, 100]), 'recovery': r.choice([0, 18, 30, 54, 72])}
                                 for _ in range(r.randint(1, 6))]

    def one(self):
        r = self.r
        us, wild, combine = r.random() < 0.4, r.random() < 0.15, r.choice(['composite', 'sequence', 'rota', 'variable'])
        n = r.choice([1, 2, 3, 3, 4, 5, 8, 12] * 4 + [20, 60]) if combine != 'variable' else r.choice([1, 2, 5, 9, 12, 40] * 4 + [150])
        facts = {'method': 'lift-set', 'units': 'us' if us else 'metric',
                 'combine': 'sequence' if combine == 'rota' else combine}
        top_f = r.choice([0.4, 2]) if combine in ('sequence', 'rota') else r.choice([3, 6, 12]) / n
        lifts = [self.lift(us, wild and r.random() < 0.4, top_f) for _ in range(n)]
        if r.random() < 0.2 and n > 1:
            lifts[1] = json.loads(json.dumps(lifts[0]))  # a tie
        if r.random() < 0.7:
            facts['assigned'] = r.choice(['any-age', 'mixed-adults', 'men-20-45'])
        if r.random() < 0.7:
            facts['conditions'] = r.choice([[], [], [], ['unstable-load']]) if wild else []
        facts['lifts'] = lifts
        if combine == 'rota':
            self.rota(facts)
        else:
            self.times(facts)
        if combine == 'sequence':
            self.shares(facts)
        if combine == 'variable':
            if r.random() < 0.5:
                facts['categories'] = r.randint(1, 9)
            if r.random() < 0.3:
                facts['frequency'] = r.uniform(0, 10)
                for lift in lifts:
                    for name in ('frequency', 'lifts', 'in_minutes'):
                        lift.pop(name, None)
        return facts

    def shares(self, facts):
        whole = oracle.duration_of(facts)[0]
        parts = [self.r.uniform(0.1, 1) for _ in facts['lifts']]
        for lift, part in zip(facts['lifts'], parts):
            lift['duration'] = oracle.DURATIONS[self.r.randint(0, whole)]
            lift['share'] = part / sum(parts)

    def rota(self, facts):
        r = self.r
        for lift, name in zip(facts['lifts'], NAMES):
            if r.random() < 0.5:
                lift['label'] = name
        facts['rota'] = []
        for person in r.sample(['Ann', 'Bob', 'Cy', 'Dora', 'Eve'], r.randint(1, 5)):
            turns = []
            for _ in range(r.randint(1, 7)):
                at = r.randrange(len(facts['lifts']))
                turn = {'lift': facts['lifts'][at].get('label', str(at + 1)), 'minutes': r.choice([10, 20, 30, 45, 60, 90])}
                if r.random() < 0.6:
                    turn['recovery'] = r.choice([0, 10, 36, 54, 72])
                turns.append(turn)
            facts['rota'].append({'label': person, 'turns': turns})


def differences(wanted, answer):
    out = []
    verdict, edge = wanted['verdict'], wanted['edge']
    wanted = {symbol: value for symbol, value in wanted.items() if symbol not in ('verdict', 'edge')}
    given = answer['quantities']
    if set(wanted) != set(given):
        out.append(f'symbols: missing {sorted(set(wanted) - set(given))[:9]}, not expected {sorted(set(given) - set(wanted))[:9]}')
    for symbol in set(wanted) & set(given):
        found, value = cli.number(given[symbol]), float(wanted[symbol])
        if not cli.same(found, value, 1e-8) and not abs(found - value) < 1e-12:
            out.append(f'{symbol}: {found!r}, the oracle says {value!r}')
    if answer['verdict'] != verdict and not edge:
        out.append(f'verdict {answer["verdict"]}, the oracle says {verdict}')
    return out


def main():
    program, count = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else COUNT
    check_oracle()
    made = Sets(SEED)
    documents = [made.one() for _ in range(count)]
    answers, code = cli.run_lines(program, [json.dumps(facts) for facts in documents])
    failed, seen = 0, Counter()
    for number, (facts, answer) in enumerate(zip(documents, answers), 1):
        if 'problems' in answer:
            found = [f'refused: {json.dumps(answer["problems"])[:600]}']
        else:
            seen[(facts['combine'], answer['verdict'])] += 1
            seen[answer['index'] + ('' if answer['quantities'][answer['index']]['value'] is not None else ' unbounded')] += 1
            found = min((differences(wanted, answer) for wanted in oracle.assess(facts)), key=len)
        failed += bool(found)
        if found and failed <= SHOWN:
            print(f'not ok set {number}: {json.dumps(facts)[:1500]}')
            for line in found[:8]:
                print(f'    {line}')
    if code != 0 and failed == 0:
        print(f'not ok exit code: {code}')
        failed += 1
    print(f'# {dict(sorted((str(key), n) for key, n in seen.items()))}')
    print(f'{count - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
