# SPDX-License-Identifier: MIT
"""compare_changeover.py CLI: random die changes through `assess --lines`. Each person's composite index within 1e-9 of the second
implementation; sums of minutes; the schedule looked at moment by moment, with never more people than there are; the checks that
are missing. Ends with one line `N passed, N failed`."""

import json
import math
import random
import sys

import changeover_oracle as second
import cli
import random_lifts

SEED = 20261126
CASES = 800
CLOSE = 1e-9
NAMES = ['Ann', 'Ben', 'Cyd', 'Dov', 'Eve', 'Fay', 'Gil', 'Hal']
KINDS = ['isolate', 'block', 'unclamp', 'disconnect', 'draw', 'lift', 'carry', 'roll', 'truck', 'turn', 'store', 'bring', 'set',
         'clamp', 'adjust', 'first-off', 'release']
CHECKS = list(second.IDS)
TRUCK = {'method': 'truck', 'mass': 300, 'mass_basis': 'weighed', 'rating': 2000, 'lift_height': 500, 'attachment': 'none',
         'plate_read': True, 'rated_centre': 500, 'actual_centre': 500, 'hung': False, 'due': '2029-06-01'}
CART = {'method': 'cart', 'gross_mass': 100, 'rated_load': 500, 'wheel': 'polyurethane', 'floor': 'smooth', 'slope': 0,
        'track': 800, 'wheelbase': 800, 'cg_height': 500, 'push_height': 1000, 'brake': 'parking', 'due': '2029-06-01'}
RIGGED = {'method': 'rigged-lift', 'mass': 100, 'mass_basis': 'weighed', 'cg': [0, 0, 5],
          'points': [{'label': 'P', 'at': [-10, 0, 20]}, {'label': 'Q', 'at': [10, 0, 20]}], 'hook': {'above': 30},
          'legs': [{'point': p, 'hitch': 'straight', 'material': 'chain', 'edge': 'none', 'elements': []} for p in 'PQ'],
          'suspension': []}


def random_part(rng, lifts, units):
    pick = rng.random()
    if pick < 0.3:
        return None
    if pick < 0.8:
        while (facts := lifts.one())['units'] != units:
            pass
        return {key: value for key, value in facts.items() if key not in ('units', 'persons')}
    part = json.loads(json.dumps(rng.choice([TRUCK, CART, RIGGED])))
    if part['method'] == 'rigged-lift' and rng.random() < 0.7:
        part['checks'] = rng.sample(['halves-tied', 'way-clear', 'tag-line', 'trial-lift', 'gear-looked-over'], rng.randint(0, 5))
    return part


def random_change(rng, lifts):
    people = rng.randint(1, 8)
    named = rng.random() < 0.7
    facts = {'method': 'changeover', 'units': rng.choice(['metric', 'us']), 'as_of': '2026-11-26',
             'people': NAMES[:people] if named else people, 'steps': []}
    names = second.people_of(facts)
    if rng.random() < 0.3:
        facts['without'] = rng.sample(list(second.WITHOUT), rng.randint(0, 3))
    dense = rng.random()
    for i in range(rng.randint(1, 24)):
        kind = rng.choice(KINDS)
        when = 'stopped' if kind in ('isolate', 'block') else rng.choice(['stopped', 'stopped', 'running'])
        step = {'label': f'S{i}', 'kind': kind, 'when': when,
                'minutes': rng.choice([0, 1, 2.5, rng.randint(0, 20), rng.uniform(0, 30)])}
        if (part := random_part(rng, lifts, facts['units'])) is not None:
            step['facts'] = part
        if rng.random() < 0.6:
            step['by'] = rng.sample(names, rng.randint(0, min(3, people)))
            if len(step['by']) == 1 and rng.random() < 0.5:
                step['by'] = step['by'][0]
        if rng.random() < 0.3:
            step['persons'] = rng.randint(max(1, len(second.as_list(step.get('by')))), people)
        if i > 0 and rng.random() < 0.4:
            step['after'] = [f'S{k}' for k in rng.sample(range(i), rng.randint(0, min(i, 3)))]
        step['checks'] = [check for check in CHECKS if rng.random() < dense]
        facts['steps'].append(step)
    return facts


def close(told, wanted):
    if wanted == math.inf:
        return told.get('state') == 'unbounded'
    return 'state' not in told and math.isclose(told['value'], wanted, rel_tol=CLOSE, abs_tol=CLOSE)


def index_differences(facts, q):
    for person in second.people_of(facts):
        wanted, told = second.person_index(facts, person), q.get(f'person.{person}.CLI')
        if (wanted is None) != (told is None) or (told is not None and not close(told, wanted)):
            yield f'person.{person}.CLI is {told}, not {wanted}'


def minute_differences(facts, q):
    steps = facts['steps']
    sums = {'person.minutes': sum(s['minutes'] * second.persons_of(s) for s in steps)}
    for when in ('stopped', 'running'):
        sums[f'{when}.minutes'] = sum(s['minutes'] for s in steps if s['when'] == when)
    for symbol, wanted in sums.items():
        if not close(q[symbol], wanted):
            yield f'{symbol} is {q[symbol]}, not {wanted}'
    each = sum(q[f'person.{person}.minutes']['value'] for person in second.people_of(facts))
    if not math.isclose(each, sums['person.minutes'], rel_tol=CLOSE, abs_tol=CLOSE):
        yield f'the people work {each} min together, not {sums["person.minutes"]}'


def schedule_differences(facts, q):
    """Looked at between every two moments at which something begins or ends."""
    steps, people = facts['steps'], second.people_of(facts)
    start = [q[f'step.{s["label"]}.start']['value'] for s in steps]
    end = [q[f'step.{s["label"]}.end']['value'] for s in steps]
    moments = sorted(set(start + end))
    for low, high in zip(moments, moments[1:]):
        now = [i for i in range(len(steps)) if start[i] <= low and end[i] >= high]
        if sum(second.persons_of(steps[i]) for i in now) > len(people):
            yield f'from {low} to {high} min more people are needed than there are'
        for person in people:
            if sum(person in second.as_list(steps[i].get('by')) for i in now) > 1:
                yield f'from {low} to {high} min {person} is in two places'
    order = second.Order(steps)
    for i, step in enumerate(steps):
        if not math.isclose(end[i] - start[i], step['minutes'], rel_tol=CLOSE, abs_tol=CLOSE):
            yield f'{step["label"]} takes {end[i] - start[i]} min, not {step["minutes"]}'
        if any(start[i] < end[k] for k in order.direct[i]):
            yield f'{step["label"]} begins before what it comes after is over'
    stood = [i for i, step in enumerate(steps) if step['when'] == 'stopped']
    wanted = max(end[i] for i in stood) - min(start[i] for i in stood) if stood else 0
    if not close(q['stopped.elapsed'], wanted) or not close(q['elapsed.minutes'], max(end)):
        yield f'stands {q["stopped.elapsed"]}, not {wanted}; over at {q["elapsed.minutes"]}, not {max(end)}'


def check_differences(facts, answer):
    told = {(r['id'], r['subject']) for r in answer['reasons'] if r['id'].startswith('check-')}
    wanted = second.missing(facts)
    if told != wanted:
        yield f'missing checks: told too many {sorted(told - wanted)}, too few {sorted(wanted - told)}'


def differences(facts, answer):
    if 'problems' in answer:
        return [json.dumps(answer['problems'])]
    q = answer['quantities']
    return [*index_differences(facts, q), *minute_differences(facts, q), *schedule_differences(facts, q),
            *check_differences(facts, answer)]


def main():
    rng, lifts = random.Random(SEED), random_lifts.Lifts(SEED)
    failed = shown = 0
    cases = [random_change(rng, lifts) for _ in range(CASES)]
    answers, _ = cli.run_lines(sys.argv[1], [json.dumps(d) for d in cases])
    for facts, answer in zip(cases, answers):
        found = differences(facts, answer)
        failed += bool(found)
        if found and (shown := shown + 1) <= 8:
            print(f'not ok {json.dumps(facts)}')
            for line in found:
                print(f'    {line}')
    print(f'{len(cases) - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
