# SPDX-License-Identifier: MIT
"""compare_carry.py [CLI]: random carries through `assess --lines`, every quantity within 1e-9 of the oracle's. First, and
alone without CLI, the oracle against worked numbers. Prints what differs and ends with `N passed, N failed`."""

import json
import random
import sys
from collections import Counter

import carry_oracle as oracle
import cli

SEED = 20261126
COUNT = 3000
SHOWN = 12


def check_oracle():
    """The examples of the reference: 12 kg, 10 m, 2 a minute; means and 75 % at 8.5 m once a minute."""
    assert oracle.misfit() < 0.75, oracle.misfit()
    assert round(oracle.equation('M', 79, 8.5, 1)[0], 1) == 29.8
    assert round(oracle.equation('W', 72, 8.5, 1)[0], 1) == 17.3
    day = {'units': 'metric', 'mass': 12, 'distance': 10, 'frequency': 2, 'height': 72, 'minutes': 60}
    found, verdict = oracle.assess(day)
    assert (found['mass_per_min'], found['mass_per_hour']) == (24, 1440)
    assert found['iso.minute.ratio'] <= 1 and found['iso.hour.ratio'] <= 1 and verdict == 'improve'
    assert oracle.assess(day | {'minutes': 480})[0]['iso.day.ratio'] == 1.152
    for sex, height in (('W', 72), ('W', 105), ('M', 79), ('M', 111)):
        for row in (2.1, 8.5):
            assert oracle.equation(sex, height, row, 1 / 480)[0] > 0


def random_carry(r):
    us = r.random() < 0.4
    mass, metre, cm = (2.2, 3.3, 1 / 2.54) if us else (1, 1, 1)

    def tidy(value, places):
        return r.choice([round(value, places), round(value, places), value]) or 1

    facts = {
        'method': 'carry', 'units': 'us' if us else 'metric', 'mass': tidy(r.uniform(0.5, 32) * mass, 1),
        'distance': tidy(r.choice([r.uniform(0.3, 22), r.choice([1, 2, 4, 5, 10, 20, 2.1, 4.3, 8.5])]) * metre, 1),
        'frequency': r.choice([round(r.uniform(0.01, 12), 2), r.choice([0.5, 1, 2, 4, 5, 8]), 10 ** r.uniform(-4, 1.2)]),
        'height': tidy(r.choice([r.uniform(60, 125), r.choice([72, 79, 105, 111])]) * cm, 1),
    }
    if r.random() < 0.7:
        facts['minutes'] = r.choice([1, 0.5, 30, 60, 240, 480, 481, round(r.uniform(1, 600))])
    if r.random() < 0.3:
        facts['typical_mass'] = facts['mass'] * r.uniform(0.3, 1)
    if r.random() < 0.8:
        facts['assigned'] = r.choice(list(oracle.REFERENCE))
    if r.random() < 0.7:
        facts['who'] = 'men' if facts.get('assigned') == 'men-20-45' and r.random() < 0.7 else 'women'
    if r.random() < 0.6:
        facts['percent'] = r.choice([90, 75, 50])
    for name in ('poor_lift', 'poor_surroundings'):
        if r.random() < 0.5:
            facts[name] = r.random() < 0.3
    if r.random() < 0.8:
        facts['conditions'] = r.choice([[], [], [], ['stairs']])
    if r.random() < 0.1:
        facts['persons'] = r.choice([1, 2, 3])
    return facts


def differences(facts, found):
    wanted, verdict = oracle.assess(facts)
    out = []
    for symbol, value in wanted.items():
        got = cli.value(found, symbol)
        # a share in percent is a difference of two that are near to one another at its ends
        if not cli.same(got, value) and not (symbol.endswith('percent') and abs(got - value) < 1e-9):
            out.append(f'{symbol} is {got!r}, the oracle says {value!r}')
    if found['verdict'] != verdict and not near_a_limit(wanted):
        out.append(f'verdict {found["verdict"]}, the oracle says {verdict}')
    return out


def near_a_limit(wanted):
    return any(symbol.endswith('ratio') and abs(value - 1) < 1e-9 for symbol, value in wanted.items())


def main():
    check_oracle()
    if len(sys.argv) < 2:
        print('1 passed, 0 failed')
        return 0
    r = random.Random(SEED)
    documents = [random_carry(r) for _ in range(COUNT)]
    verdicts, governing, failed = Counter(), Counter(), 0
    for facts, found in zip(documents, cli.assess_all(sys.argv[1], documents)):
        wrong = differences(facts, found)
        verdicts[found['verdict']] += 1
        governing[found['governing']] += 1
        if wrong:
            failed += 1
            if failed <= SHOWN:
                print(json.dumps(facts), *wrong, sep='\n    ')
    print(dict(verdicts), dict(governing))
    for code in ('by-hand', 'improve', 'incomplete', 'outside', 'mechanical'):
        if not verdicts[code]:
            print(f'no random carry was {code}')
            failed += 1
    print(f'{COUNT + 1 - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
