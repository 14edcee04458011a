# SPDX-License-Identifier: MIT
"""compare_push.py CLI: every cell of the tables, random carts and sliding dies through `assess
--lines`: every quantity within 1e-9 of the oracle, and the verdict; then what must hold whatever the figures are. Ends with one line `N passed, N failed`."""

import json
import pathlib
import random
import sys
import tempfile

import cli
import push_oracle as oracle

SEED = 20261126
N = 3000
ORDER = ['by-hand', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']


def maybe(rng, facts, chance, **more):
    if rng.random() < chance:
        facts.update(more)


def duty(rng, method):
    us = rng.random() < .3
    facts = {'method': method, 'units': 'us' if us else 'metric', 'way': rng.choice(['push', 'push', 'pull']),
             'handle_height': rng.choice([57, 64, 75, 89, 95, 135, 144, round(rng.uniform(40, 160), 1)]),
             'distance': rng.choice([2.1, 1, 7.6, 20, 61, round(rng.uniform(.5, 70), 2)]),
             'frequency': rng.choice([10, 5, 1, .5, .2, 1 / 30, 1 / 480, rng.uniform(.001, 11)])}
    if us:
        facts['handle_height'] = round(facts['handle_height'] / 2.54, 2)
        facts['distance'] = round(facts['distance'] / .3048, 2)
    maybe(rng, facts, .7, who=rng.choice(['women', 'men', 'mixed']))
    maybe(rng, facts, .4, percent=rng.choice([90, 75, 50]))
    maybe(rng, facts, .1, persons=rng.randint(1, 3))
    maybe(rng, facts, .9, conditions=[] if rng.random() < .9 else ['turning'])
    return facts, us


def cart(rng):
    facts, us = duty(rng, 'push')
    body = {'gross_mass': round(10 ** rng.uniform(1, 3.3), 1)}
    maybe(rng, body, .85, wheel=rng.choice(['hard-rubber', 'rubber', 'polyurethane', 'steel', 'steel-on-rail']))
    maybe(rng, body, .8, wheel_diameter=round(rng.uniform(50, 400) / (25.4 if us else 1), 2))
    maybe(rng, body, .8, floor=rng.choice(['smooth-concrete', 'smooth-concrete', 'tile', 'asphalt', 'carpet',
                                           'soft-or-uneven']))
    maybe(rng, body, .2, rolling_coefficient=round(rng.uniform(.005, .06), 4))
    maybe(rng, body, .2, start_factor=round(rng.uniform(1, 4), 2))
    maybe(rng, body, .9, slope=rng.choice([0, 0, round(rng.uniform(0, 6), 2)]))
    maybe(rng, body, .8, brake=rng.choice(['none', 'parking', 'dead-man']))
    maybe(rng, body, .2, start_acceleration=round(rng.uniform(0, .05), 3))
    maybe(rng, body, .2, stop_deceleration=round(rng.uniform(0, .05), 3))
    if rng.random() < .85:
        facts['cart'] = body
    low = round(10 ** rng.uniform(.5, 2.5), 1)
    maybe(rng, facts, .2 if 'cart' in facts else .9, initial=round(low * 1.5, 1))
    maybe(rng, facts, .2 if 'cart' in facts else .9, sustained=low)
    if 'cart' not in facts and 'initial' not in facts:
        facts['sustained'] = low
    return facts


def die(rng):
    facts, _ = duty(rng, 'slide')
    facts['mass'] = round(10 ** rng.uniform(.5, 3), 1)
    maybe(rng, facts, .7, surface=rng.choice(['steel-dry', 'steel-greased', 'rollers']))
    if rng.random() < .5:
        facts['friction'] = round(rng.uniform(.005, .6), 4)
        maybe(rng, facts, .5, start_friction=round(facts['friction'] * rng.uniform(1, 2) + .001, 4))
    maybe(rng, facts, .9, incline=rng.choice([0, 0, round(rng.uniform(0, 8), 2)]))
    maybe(rng, facts, .6, direction=rng.choice(['up', 'down']))
    maybe(rng, facts, .7, held=rng.choice(['nothing', 'stops']))
    return facts


def near(symbol, found, expected):
    if symbol.endswith('percent'):
        return abs(found - expected) <= 1e-9
    return cli.same(found, expected) or abs(found - expected) < 1e-12


def compare(document, answer):
    if 'problems' in answer:
        return [f'refused: {answer["problems"]}']
    expected, verdict = oracle.assess(document)
    found = {symbol: cli.number(item) for symbol, item in answer['quantities'].items()}
    out = [f'{s}: {found.get(s)}, expected {v}' for s, v in expected.items() if s not in found or not near(s, found[s], v)]
    out += [f'{s} is not expected' for s in found if s not in expected]
    if answer['verdict'] != verdict:
        out.append(f'verdict {answer["verdict"]}, expected {verdict}')
    return out


def table_documents():
    """Every cell of the tables."""
    for (sex, way, _), rows in oracle.ROWS.items():
        for height in rows:
            for minutes in oracle.MINUTES:
                for percent in (90, 75, 50):
                    yield {'method': 'push', 'units': 'metric', 'way': way, 'handle_height': height, 'distance': 2.1,
                           'frequency': 1 / minutes, 'who': 'women' if sex == 'W' else 'men', 'percent': percent,
                           'conditions': [], 'initial': 200, 'sustained': 120}


def check_tables():
    """The tables are normal distributions: 75 % sits where 90 and 50 % say, but for rounding (0.9 kgf at the most). The
    equations give the examples that were worked out of them, within their print."""
    for rows in oracle.ROWS.values():
        for c90, c75, c50 in (c for row in rows.values() for c in row):
            assert abs(c50 - (c50 - c90) * oracle.Z[75] / oracle.Z[90] - c75) < .9, (c90, c75, c50)
    for sex, force, height, mean, most in [('M', 'initial', 95, 34.8, 29.4), ('M', 'sustained', 95, 20.1, 16.4),
                                           ('W', 'initial', 89, 24.2, 20.7), ('W', 'sustained', 89, 13.8, 11.2)]:
        value, spread = oracle.mean_and_spread(sex, 'push', force, height, 7.6, 1)
        assert abs(value - mean) <= .0501 and abs(value * (1 - .6745 * spread) - most) <= .0501, (sex, force, value)


# ---- What must hold whatever the figures are: (name, change) makes it no better; None: does not apply

def heavier(d):
    if d['method'] == 'slide':
        return {**d, 'mass': d['mass'] * 1.1}
    return {**d, 'cart': {**d['cart'], 'gross_mass': d['cart']['gross_mass'] * 1.1}} if 'cart' in d else None


def smaller_wheels(d):
    body = d.get('cart', {})
    return {**d, 'cart': {**body, 'wheel_diameter': body['wheel_diameter'] * .8}} if 'wheel_diameter' in body else None


def steeper(d):
    body = d.get('cart', {})
    return {**d, 'cart': {**body, 'slope': body['slope'] * 1.2}} if body.get('slope') else None


def more_often(d):
    return {**d, 'frequency': d['frequency'] * 1.3} if d['frequency'] * 1.3 < 10 else None


def more_people(d):
    return {**d, 'percent': {50: 75, 75: 90}[d['percent']]} if d.get('percent') in (50, 75) else None


def no_men_only(d):
    return {**d, 'who': 'mixed'} if d.get('who') == 'men' else None


RULES = [heavier, smaller_wheels, steeper, more_often, more_people, no_men_only]


def properties(program, documents):
    pairs = [(rule.__name__, d, worse) for d in documents for rule in RULES if (worse := rule(d)) is not None]
    before = cli.assess_all(program, [d for _, d, _ in pairs])
    after = cli.assess_all(program, [w for _, _, w in pairs])
    failed = 0
    for (name, document, worse), a, b in zip(pairs, before, after):
        x, y = ({s: cli.number(v) for s, v in f['quantities'].items()} for f in (a, b))
        # A ratio never falls, a percentage never rises; what is published no longer is no ratio at all. To say percent
        # or who is to choose another limit: the forces and percentages stay.
        bad = [s for s in x if s in y and (s.endswith('ratio') and s != 'ratio' and y[s] < x[s] * (1 - 1e-9)
                                           or s.endswith('percent') and y[s] > x[s] + 1e-9)]
        if ORDER.index(b['verdict']) < ORDER.index(a['verdict']):
            bad.append(f'verdict {a["verdict"]} to {b["verdict"]}')
        if bad:
            failed += 1
            if failed <= 5:
                print(f'not ok {name}: {bad}: {json.dumps(document)}')
    return len(pairs), failed


def stricter_policy(folder):
    """The default policy with four fifths of the guideline for a goal."""
    policy = json.loads((pathlib.Path(__file__).parents[2] / 'data/policies/steelyard-default.json').read_text())
    for row in policy['rows']:
        if row['symbol'].startswith('uk.') and row['method'] in ('push', 'slide'):
            row['over'] = 0.8
    path = pathlib.Path(folder, 'stricter.json')
    path.write_text(json.dumps(policy))
    return str(path)


def stricter(program, documents):
    """Under a policy stricter than the method knows, the largest mass and what is said to reach keep that policy."""
    with tempfile.TemporaryDirectory() as folder:
        option = '--policy=' + stricter_policy(folder)
        tried = []
        for document, found in zip(documents, cli.assess_files(program, documents, option)):
            tried += [(document, r) for r in found['remedies'] if r['reaches'] or r['id'] == 'largest-mass']
        changed = []
        for document, remedy in tried:
            for change in remedy['changes']:
                document = cli.put(document, change['path'], change['to'])
            changed.append(document)
        after = cli.assess_all(program, changed, option)
    over = [(d, r) for (d, r), a in zip(tried, after)
            if any(cli.value(a, s) > .8 for s in a['quantities'] if s.startswith('uk.') and s.endswith('ratio'))]
    for document, remedy in over[:3]:
        print(f'not ok under a stricter policy: {remedy}: {json.dumps(document)}')
    return len(tried), len(over)


def remedies(program, documents):
    """What a remedy promises is what the facts give once they are changed so; a heavier mass than the largest breaks a limit."""
    findings = cli.assess_files(program, documents)
    tried = []
    for document, found in zip(documents, findings):
        for remedy in found['remedies']:
            changed = document
            for change in remedy['changes']:
                changed = cli.put(changed, change['path'], change['to'])
            tried.append((document, remedy, changed, False))
            if remedy['id'] == 'largest-mass':
                change = remedy['changes'][0]
                tried.append((document, remedy, cli.put(document, change['path'], change['to'] * 1.000001), True))
    failed = 0
    for (document, remedy, _, heavier_yet), after in zip(tried, cli.assess_all(program, [t[2] for t in tried])):
        ratio = cli.value(after, 'ratio')
        good = ratio > 1 if heavier_yet else (cli.same(ratio, remedy['ratio']) and remedy['reaches'] == (ratio <= 1)
                                              and after['verdict'] == remedy['verdict'])
        if not good:
            failed += 1
            if failed <= 5:
                print(f'not ok remedy {remedy["id"]}: {ratio} {after["verdict"]}: {remedy}: {json.dumps(document)}')
    return len(tried), failed, sum(r['reaches'] for _, r, _, _ in tried)


def main():
    rng = random.Random(SEED)
    check_tables()
    documents = [cart(rng) if rng.random() < .65 else die(rng) for _ in range(N)]
    documents += table_documents()
    answers, _ = cli.run_lines(sys.argv[1], [json.dumps(d) for d in documents])
    failed = 0
    for document, answer in zip(documents, answers):
        wrong = compare(document, answer)
        failed += bool(wrong)
        if wrong and failed <= 6:
            print(f'not ok {json.dumps(document)}')
            for line in wrong[:8]:
                print(f'    {line}')
    n, broken = properties(sys.argv[1], documents[:1000])
    m, hollow, reaching = remedies(sys.argv[1], documents[:400])
    assert m > 500 and reaching > 100, (m, reaching)
    k, loose = stricter(sys.argv[1], documents[:150])
    n, broken = n + m + k, broken + hollow + loose
    print(f'{len(documents) - failed + n - broken} passed, {failed + broken} failed')
    return failed + broken != 0


if __name__ == '__main__':
    sys.exit(main())
