# SPDX-License-Identifier: MIT
"""compare_case.py CLI: random cases for an aid through `assess --lines`, against exact fractions. The least and the most are looked
for at every corner of the ranges; the winner by its figures; turned round, the options keep them; a higher price is never worth
more. Ends with one line `N passed, N failed`."""

import itertools
import json
import random
import sys
from fractions import Fraction

import cli

SEED = 20261126
CASES = 300
LIGHT = {'method': 'lift', 'load': {'typical': 5, 'heaviest': 5}, 'origin': {'H': 25, 'V': 75, 'A': 0}, 'travel': 25,
         'frequency': 0.2, 'duration': 'short', 'coupling': 'good', 'assigned': 'mixed-adults', 'conditions': []}
HEAVY = {**LIGHT, 'load': {'typical': 60, 'heaviest': 60}}
GEAR = ['hoist', 'jib', 'cart', 'table', 'manipulator', 'robot', 'arm']
COSTS = ['training', 'running', 'examination', 'maintenance']


def estimate(rng, top):
    low, expected, high = sorted(rng.randrange(top) for _ in range(3))
    out = {'expected': expected}
    if rng.random() < 0.3:
        out['low'] = low
    if rng.random() < 0.3:
        out['high'] = high
    return out


def random_option(rng, label):
    option = {'label': label, 'kind': rng.choice(['redesign', 'two-person', 'other', *GEAR[:rng.randrange(8)]])}
    if rng.random() < 0.9:
        option['facts'] = HEAVY if rng.random() < 0.2 else LIGHT
    if rng.random() < 0.9:
        option['capital'] = estimate(rng, 50000)
    for cost in COSTS:
        if rng.random() < 0.5:
            option[cost] = estimate(rng, 4000)
    for minutes in ('stopped', 'person_minutes'):
        if rng.random() < 0.8:
            option[minutes] = estimate(rng, 60)
    return option


def random_case(rng):
    now = {'facts': HEAVY}
    for minutes in ('stopped', 'person_minutes'):
        if rng.random() < 0.8:
            now[minutes] = estimate(rng, 60)
    case = {'method': 'case', 'units': 'metric', 'as_of': '2026-11-26', 'as_is': now,
            'options': [random_option(rng, f'O{i}') for i in range(rng.randint(1, 5))],
            'discount_rate': rng.choice([0, 3.5, 8, 12]), 'years': rng.randint(1, 12)}
    for name, top in (('changes_per_year', 900), ('labour_rate', 60), ('machine_rate', 200)):
        if rng.random() < 0.95:
            case[name] = estimate(rng, top)
    return case


def ends(given, otherwise=None):
    if given is None:
        return None if otherwise is None else (otherwise,) * 3
    return given.get('low', given['expected']), given['expected'], given.get('high', given['expected'])


def difference(now, then, rate):
    if now is None and then is None:
        return Fraction(0)
    if now is None or then is None or rate is None:
        return None
    return Fraction(now - then, 60) * rate


def figures(inputs, rate, years):
    """Saving and net present value of one choice of the inputs; None: something is not known."""
    now_stopped, now_person, stopped, person, changes, machine, labour, capital, *costs = inputs
    machine_saved, work_saved = difference(now_stopped, stopped, machine), difference(now_person, person, labour)
    if machine_saved is None or work_saved is None or changes is None:
        return None, None
    saving = changes * (machine_saved + work_saved) - sum(costs[1:])
    if capital is None:
        return saving, None
    growth = 1 + Fraction(str(rate)) / 100
    return saving, sum(saving / growth ** t for t in range(1, years + 1)) - capital - costs[0]


def inputs_of(case, option):
    now = case['as_is']
    named = [now.get('stopped'), now.get('person_minutes'), option.get('stopped'), option.get('person_minutes'),
             case.get('changes_per_year'), case.get('machine_rate'), case.get('labour_rate'), option.get('capital')]
    return [ends(x) for x in named] + [ends(option.get(c), 0) for c in COSTS]


def corners(inputs):
    return itertools.product(*[[None] if x is None else sorted({x[0], x[2]}) for x in inputs])


def can_win(option, npv):
    return npv is not None and option.get('facts') is LIGHT and option['kind'] not in GEAR


def differences(case, answer):
    if 'problems' in answer:
        yield json.dumps(answer['problems'])
        return
    told, best = answer['quantities'], None
    for i, option in enumerate(case['options']):
        inputs, label = inputs_of(case, option), option['label']
        saving, npv = figures([x and x[1] for x in inputs], case['discount_rate'], case['years'])
        all_of = [figures(c, case['discount_rate'], case['years']) for c in corners(inputs)]
        wanted = {'saving': saving, 'npv': npv}
        if saving is not None:
            wanted['saving.low'], wanted['saving.high'] = min(a for a, _ in all_of), max(a for a, _ in all_of)
        if npv is not None:
            wanted['npv.low'], wanted['npv.high'] = min(b for _, b in all_of), max(b for _, b in all_of)
        for name, number in wanted.items():
            got = told.get(f'option.{label}.{name}')
            if (got is None) != (number is None) or (got and abs(got['value'] - number) > 1e-9 * max(1e5, abs(number))):
                yield f'{label}.{name}: {got}, not {number and float(number)}'
        if can_win(option, npv) and (best is None or npv > best[0]):
            best = npv, i + 1
    winner = told.get('winner', {}).get('value')
    if winner != (best and best[1]):
        yield f'winner {winner}, not {best}'
    if (answer['verdict'] == 'incomplete') != (best is None):
        yield f'verdict {answer["verdict"]} with winner {winner}'


def of_options(answer):
    return {k: v for k, v in answer['quantities'].items() if k.startswith('option.')}


def dearer(case):
    copy = dict(case, options=[dict(o) for o in case['options']])
    for option in copy['options']:
        if 'capital' in option:
            option['capital'] = {k: v + 1000 for k, v in option['capital'].items()}
    return copy


def main():
    rng = random.Random(SEED)
    cases = [random_case(rng) for _ in range(CASES)]
    turned = [dict(c, options=c['options'][::-1]) for c in cases]
    ask = [json.dumps(c) for c in cases + turned + [dearer(c) for c in cases]]
    answers, _ = cli.run_lines(sys.argv[1], ask)
    failed = 0
    for i, case in enumerate(cases):
        plain, other, dear = answers[i], answers[CASES + i], answers[2 * CASES + i]
        found = list(differences(case, plain))
        if not found and of_options(plain) != of_options(other):
            found.append('turned round, the figures differ')
        if not found:
            found += [f'{k}: worth more at a higher price' for k, v in of_options(dear).items()
                      if k.endswith('.npv') and v['value'] > plain['quantities'][k]['value']]
        failed += bool(found)
        if found and failed <= 5:
            print('not ok', json.dumps(case), *found, sep='\n    ')
    print(f'{CASES - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
