# SPDX-License-Identifier: MIT
"""compare_rigging.py [CLI]: random dies, rigged lifts, trucks and carts through `assess --lines`, every quantity
that the oracle can tell within 1e-9. First, and alone without CLI, the oracle against worked numbers.
Prints what differs and ends with one line `N passed, N failed`."""

import json
import math
import sys
from collections import Counter

import cli
import random_rigging
import rigging_oracle as oracle

SEED = 20261125
RELATIVE = 1e-9
SHOWN = 16
VERDICTS = ['within-capacity', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']


# ---- The oracle against known numbers

def close(a, b, slack):
    return len(a) == len(b) and all(abs(x - y) <= slack for x, y in zip(a, b))


def level(points, cg, height):
    hook = [cg[0], cg[1], height]
    ways = oracle.directions(points, hook)
    one, other = oracle.worst_by_range(ways), oracle.worst_by_sets(ways)
    assert close(one, other, 1e-12), (one, other)
    even, again = oracle.elastic(ways), oracle.least_squares_by_sets(ways)
    assert close(even, again, 1e-11), (even, again)
    return one, even, [90 - math.degrees(math.acos(w[2])) for w in ways]


def check_statics():
    """Worked numbers: statics, the example numbers of the printed sources beside them."""
    four = [[-1, -.6, 0], [1, -.6, 0], [1, .6, 0], [-1, .6, 0]]
    # 1,000 lb on two legs at 30 degrees to the horizontal: 1,000 lb each (US Navy 14080, bridle hitch).
    loads, _, _ = level([[-math.sqrt(3), 0, 0], [math.sqrt(3), 0, 0]], [0, 0, -1], 1)
    assert close([1000 * t for t in loads], [1000, 1000], 1e-9), loads
    # 15,000 lb, legs 16 ft, rise 12 ft: 10,000 lb (BC crane safety quiz, its own formula).
    half = math.sqrt(16 ** 2 - 12 ** 2)
    loads, _, _ = level([[-half, 0, 0], [half, 0, 0]], [0, 0, -1], 12)
    assert close([15000 * t for t in loads], [10000, 10000], 1e-8), loads
    # Off-centre, two legs.
    loads, _, _ = level([[-2, 0, 0], [8, 0, 0]], [0, 0, -1], 6)
    assert close([10000 * t for t in loads], [8432.74, 3333.33], 0.005), loads
    # Four legs, centred and not: elastic and worst.
    loads, even, flat = level(four, [0, 0, -.1], 1.5)
    assert close([50000 * t for t in loads], [31667] * 4, 0.5) and close([50000 * t for t in even], [15833] * 4, 0.5)
    assert close(flat, [52.14] * 4, 0.005), flat
    loads, even, flat = level(four, [.25, .1, -.1], 1.5)
    assert close([50000 * t for t in even], [10615, 15940, 21109, 14880], 0.5), even
    assert close([50000 * t for t in loads], [25928, 25240, 34028, 25195], 0.5), loads
    assert close(flat, [46.32, 55.63, 59.00, 48.09], 0.005), flat
    # Three legs are determinate.
    loads, even, _ = level([[1, 0, 0], [-.5, .866, 0], [-.5, -.866, 0]], [.1, .05, -.1], 1.2)
    assert close([900 * t for t in loads], [450.25, 387.32, 330.34], 0.005), loads
    assert close(loads, even, 1e-12)
    # One leg alone carries it all.
    assert level([[3, 4, 0]], [3, 4, -1], 2)[0] == [1.0]
    # 20 kN, 2.0 x 1.2 m, hook 1.5 m, k 4 kN/mm: 6.3 mm of leg error leaves a diagonal slack.
    ways = oracle.directions([[-1000, -600, 0], [1000, -600, 0], [1000, 600, 0], [-1000, 600, 0]], [0, 0, 1500])
    assert abs(oracle.skew_error(ways, 20, 4) - 20 / (4 * ways[0][2])) < 1e-9
    assert abs(oracle.skew_error(ways, 20, 4) - 6.333) < 0.001
    # A corner from which no set balances.
    try:
        level(four, [1.2, 0, -.1], 1.5)
    except oracle.Cannot:
        pass
    else:
        raise AssertionError('the centre is outside the points')


def check_free():
    """Points +-1, legs 2 and 2, the centre at (0.2, -0.3): tilt 5.621, tensions 476.6 and 672.5 of 1,000."""
    hung = oracle.hang_free([[-1, 0, 0], [1, 0, 0]], [2, 2], [.2, 0, -.3])
    assert abs(hung['tilt'] - 5.621) < 0.0005, hung
    assert close([1000 * t for t in hung['tensions']], [476.6, 672.5], 0.05), hung
    # A load hung free by the lengths of a level lift stays level and shares as it did.
    points, cg = [[1, 0, 0], [-.5, .866, .1], [-.5, -.866, 0]], [.1, .05, -.1]
    hook = [.1, .05, 1.2]
    hung = oracle.hang_free(points, [oracle.norm(oracle.sub(hook, p)) for p in points], cg)
    loads = oracle.worst_by_range(oracle.directions(points, hook))
    assert hung['tilt'] < 1e-9 and close(hung['tensions'], loads, 1e-10) and close(hung['hook'], hook, 1e-10), hung
    # The equations of balance, whatever the route: forces add up to the weight, moments about the centre to nothing.
    r = random_rigging.Rigging(7)
    for count in (2, 3, 4):
        for _ in range(10):
            document = r.free(count)
            points = [p['at'] for p in document['points']]
            hung = oracle.hang_free(points, [leg['length'] for leg in document['legs']], document['cg'])
            ways = oracle.directions(points, hung['hook'])
            total = [math.fsum(t * w[k] for t, w in zip(hung['tensions'], ways)) for k in range(3)]
            assert close(total, hung['up'], 1e-10), (total, hung['up'])
            for p, leg, spare in zip(points, document['legs'], hung['slack']):
                far = oracle.norm(oracle.sub(hung['hook'], p))
                assert abs(far + spare - leg['length']) <= 1e-11 * leg['length'], (far, spare, leg)
    assert len(oracle.hull([[0, 0], [1, 0], [1, 1], [0, 1], [.5, .5]])) == 4
    assert abs(oracle.margin([[0, 0], [2, 0], [2, 1], [0, 1]], [.5, .6]) - .4) < 1e-15
    assert abs(oracle.margin([[0, 0], [2, 0], [2, 1], [0, 1]], [3, 2]) + math.sqrt(2)) < 1e-15


def value(document, symbol):
    return oracle.assess(document)[symbol][1]


def check_masses():
    """A die worked by hand; a Navy plate of 68 x 44 x 1/2 in at 0.284: 424.86 lb (Hull Technician 14119)."""
    columns = [[x, y, 205] for x in (-500, 500) for y in (-300, 300)]
    die = {'method': 'die-mass', 'units': 'metric', 'bodies': [
        {'label': 'lower', 'shape': 'block', 'size': [1200, 800, 80], 'at': [0, 0, 40], 'material': 'steel'},
        {'label': 'upper', 'shape': 'block', 'size': [1200, 800, 70], 'at': [0, 0, 365], 'material': 'steel'},
        {'label': 'die', 'shape': 'block', 'size': [700, 500, 90], 'at': [-100, 50, 125], 'material': 'tool-steel'},
        {'label': 'punch', 'shape': 'block', 'size': [650, 450, 100], 'at': [-100, 50, 280], 'material': 'tool-steel'},
        {'label': 'pocket', 'shape': 'block', 'size': [300, 200, 80], 'at': [-100, 50, 40], 'material': 'steel',
         'cut': True},
        {'label': 'pillars', 'shape': 'cylinder', 'diameter': 50, 'height': 250, 'at': columns, 'material': 'steel'}]}
    assert abs(value(die, 'mass') - 1581.98) < 0.005, value(die, 'mass')
    centre = [value(die, 'cg.' + axis) for axis in 'xyz']
    assert close(centre, [-27.57, 13.79, 197.79], 0.005), centre
    assert abs(value(die, 'mass_with_allowance') - 1.1 * value(die, 'mass')) < 1e-9
    plate = {'method': 'die-mass', 'units': 'us', 'bodies': [
        {'label': 'plate', 'shape': 'block', 'size': [68, 44, .5], 'at': [0, 0, 0], 'density': .284}]}
    assert abs(value(plate, 'mass') - 424.864) < 1e-9
    ball = {'method': 'die-mass', 'units': 'us', 'bodies': [
        {'label': 'b', 'shape': 'block', 'size': [12, 12, 12], 'at': [0, 0, 0], 'material': 'steel'}]}
    assert abs(value(ball, 'mass') - 490) < 0.1, value(ball, 'mass')  # 490 lb/ft3


def check_wheels():
    """29 CFR 1910.178 appendix A-5: 3,000 lb at 24 in is 2,400 lb at 30 in. Cart: statics."""
    truck = {'method': 'truck', 'units': 'us', 'rating': 3000, 'rated_centre': 24, 'actual_centre': 30, 'mass': 1000,
             'allowance_percent': 0}
    assert abs(value(truck, 'capacity') - 2400) < 1e-9
    truck = {**truck, 'units': 'metric', 'rated_centre': 500, 'actual_centre': 800, 'fulcrum': 450}
    assert abs(value(truck, 'capacity') - 1875) < 1e-9 and abs(value(truck, 'capacity_fulcrum') - 2280) < 1e-9
    cart = {'method': 'cart', 'units': 'metric', 'gross_mass': 50000 / oracle.G, 'slope': 0, 'start_factor': 2,
            'rolling_coefficient': .02, 'track': 800, 'wheelbase': 800, 'cg_height': 700, 'push_height': 1000,
            'wheels': 4}
    assert abs(value(cart, 'sustained') - 1000) < 1e-9
    assert abs(value({**cart, 'slope': 1}, 'sustained') - 1872) < 1
    cart = {**cart, 'gross_mass': 30000 / oracle.G}
    assert abs(value(cart, 'tip.push') - 12000) < 1e-8 and abs(value(cart, 'tip.slope') - 29.7) < .05
    assert abs(value(cart, 'tip.deceleration') - .57) < .005


# ---- The program against the oracle

def in_unit(load, unit_name):
    """A share of a mass, in what the answer says it is in."""
    share, mass = load
    if unit_name in ('kN', 'N'):
        return share * mass * oracle.G / (1000 if unit_name == 'kN' else 1)
    return share * mass  # kg, lb, lbf


def difference(symbol, wanted, item):
    kind = wanted[0]
    if kind == 'date':
        return None if item['value'] == wanted[1] else f'{item["value"]!r}, expected {wanted[1]!r}'
    found = cli.number(item)
    if found is None:
        return f'no value: {item}'
    if kind == 'range':
        scale = oracle.G / 1000 if item['unit'] == 'kN' else 1  # given as masses; forces by what they are
        low, high = (x * scale for x in wanted[1:])
        slack = RELATIVE * max(abs(high), 1e-3)
        return None if low - slack <= found <= high + slack else f'{found!r}, expected {low!r} to {high!r}'
    if kind == 'either':
        return None if any(cli.same(found, x) for x in wanted[1:]) else f'{found!r}, expected one of {wanted[1:]}'
    slack = 0.0
    if kind == 'load':
        expected = in_unit(wanted[1:], item['unit'])
        slack = RELATIVE * in_unit((1, wanted[2]), item['unit']) * 0.01  # a leg that carries next to nothing
    elif kind == 'place':
        expected, slack = wanted[1], RELATIVE * wanted[2]
    else:
        expected = wanted[1]
        slack = 1e-9 if kind == 'angle' else 0.0
    if abs(found - expected) <= max(RELATIVE * abs(expected), slack):
        return None
    return f'{found!r} {item["unit"]}, expected {expected!r}'


def invariants(document, quantities):
    """What the contract says of the answer itself."""
    out = []
    number = lambda s: cli.number(quantities[s]) if s in quantities else None
    if document['method'] == 'rigged-lift':
        parts = [cli.number(item) for symbol, item in quantities.items()
                 if symbol.endswith('.utilisation')]
        if number('utilisation') is not None and parts and not cli.same(number('utilisation'), max(parts)):
            out.append(f'utilisation {number("utilisation")!r} is not the largest, {max(parts)!r}')
    if document['method'] == 'cart' and number('tipping') is not None and number('tip.push'):
        if number('tipping') < number('initial') / number('tip.push') * (1 - RELATIVE):
            out.append('tipping is below what the push alone makes of it')
    return out


def differences(document, answer):
    if 'problems' in answer:
        return [f'refused: {json.dumps(answer["problems"], ensure_ascii=False)}'], ['refused']
    expected, given, out, kinds = oracle.assess(document), answer['quantities'], [], []
    for symbol, wanted in expected.items():
        if symbol not in given:
            text = 'is missing'
        else:
            text = difference(symbol, wanted, given[symbol])
        if text:
            out.append(f'{symbol} {text}')
            kinds.append('.'.join(symbol.split('.')[::max(1, len(symbol.split('.')) - 1)]))
    if answer['verdict'] not in VERDICTS:
        out.append(f'verdict: {answer["verdict"]}')
        kinds.append('verdict')
    wrong = invariants(document, given)
    return out + wrong, kinds + ['invariant'] * len(wrong)


def main():
    for check in (check_statics, check_free, check_masses, check_wheels):
        check()
    cases = random_rigging.documents(SEED)
    if len(sys.argv) < 2:
        for _, document in cases:
            oracle.assess(document)
        print(f'{len(cases)} documents made; the oracle agrees with the worked numbers')
        return 0
    answers, code = cli.run_lines(sys.argv[1], [json.dumps(document) for _, document in cases])
    failed, tally, by_what = 0, Counter(), Counter()
    for number, ((what, document), answer) in enumerate(zip(cases, answers), 1):
        found, kinds = differences(document, answer)
        failed += bool(found)
        by_what[what] += bool(found)
        tally.update(f'{what}: {kind}' for kind in kinds)
        if found and by_what[what] <= SHOWN // 8:
            print(f'not ok {number} {what}: {json.dumps(document)}')
            for line in found[:SHOWN]:
                print(f'    {line}')
    for kind, count in sorted(tally.items()):
        print(f'{count:5d} x {kind}')
    if code != 0 and failed == 0:
        print(f'not ok exit code: {code}')
        failed += 1
    print(f'{len(cases) - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
