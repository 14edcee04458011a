# SPDX-License-Identifier: MIT
"""compare_team.py CLI: random teams through `assess --lines`: shares within 1e-9 of the second implementation, forces and
moments in balance within 1e-9 of the weight, in both unit systems; then heavy dies with three and four people, which are
`mechanical` whoever it is and wherever the centre lies. Ends with one line `N passed, N failed`."""

import json
import math
import random
import sys

import cli
import oracle
import team_oracle as statics

SEED = 20261126
CASES = 1000
BALANCE = 1e-9
WHO = ['any-age', 'mixed-adults', 'men-20-45', None]
LABELS = 'ABCD'


def spread_out(rng, n):
    """Places with a width worth speaking of: a thin triangle loses digits in any arithmetic."""
    while True:
        places = [[rng.uniform(-1000, 1000), rng.uniform(-700, 700)] for _ in range(n)]
        sides = [math.dist(a, b) for i, a in enumerate(places) for b in places[:i]]
        if min(sides) < 150:
            continue
        areas = [abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]))
                 for i, a in enumerate(places) for j, b in enumerate(places[:i]) for c in places[:j]]
        if not areas or min(areas) > 30000:
            return places


def inside(rng, places):
    parts = [rng.expovariate(1) for _ in places]
    whole = sum(parts)
    return [sum(p[i] * part for p, part in zip(places, parts)) / whole for i in range(2)]


def random_case(rng):
    units, n = rng.choice(['metric', 'us']), rng.choice([2, 3, 4])
    scale, cm = (1, 1) if units == 'metric' else (1 / 25.4, 1 / 2.54)
    places = spread_out(rng, n)
    cg = inside(rng, places) if rng.random() < .8 else [rng.uniform(-1000, 1000), rng.uniform(-700, 700)]
    leans = rng.random() < .5
    cg.append(rng.uniform(-300, 500))
    people = []
    for label, place in zip(LABELS, places):
        person = {'label': label, 'at': [v * scale for v in place],
                  'height': (75 + (rng.uniform(-4, 4) if leans else 0)) * cm}
        if rng.random() < .5:
            person['reach'] = rng.uniform(20, 60) * cm
        if (who := rng.choice(WHO)) is not None:
            person['assigned'] = who
        people.append(person)
    document = {'method': 'team-lift', 'units': units, 'mass': rng.uniform(5, 250), 'cg': [v * scale for v in cg],
                'people': people}
    if leans and rng.random() < .6:
        document['slope'] = rng.uniform(.5, 40)
        document['uphill'] = rng.choice(LABELS[:n])
    if rng.random() < .5:
        document |= {'travel': rng.uniform(0, 60) * cm, 'frequency': rng.uniform(.1, 4),
                     'duration': rng.choice(oracle.DURATIONS), 'coupling': rng.choice(['good', 'fair', 'poor'])}
    return document


def way_up(document):
    ahead = [p['at'] for p in document['people'] if p['label'] == document['uphill']]
    behind = [p['at'] for p in document['people'] if p['label'] != document['uphill']]
    return [sum(p[i] for p in ahead) / len(ahead) - sum(p[i] for p in behind) / len(behind) for i in range(2)]


def own_limit(document, person):
    units = document['units']
    c = oracle.SYSTEMS[units]
    reference = oracle.REFERENCE_KG[person.get('assigned', oracle.DEFAULT_ASSIGNED)]
    reference = reference if units == 'metric' else float(reference / oracle.KG_PER_LB)
    best = 25 if units == 'metric' else 10
    travel = document.get('travel', 0)
    limits = []
    for height in (person['height'], person['height'] + travel):
        limits.append(reference * oracle.horizontal(person.get('reach', best), c) * oracle.vertical(height, c)
                      * oracle.distance(travel, c)
                      * oracle.frequency(document.get('frequency', .2), document.get('duration', 'short'), height, c)
                      * oracle.coupling(document.get('coupling', 'poor'), height, c))
    return float(min(limits)), reference


def near(a, b, size):
    return abs(a - b) <= BALANCE * size


def differences(document, answer):
    if 'problems' in answer:
        return [json.dumps(answer['problems'])]
    out, quantities = [], answer['quantities']
    people, mass, n = document['people'], document['mass'], len(document['people'])
    places = [p['at'] for p in people]
    level = 'slope' not in document and len({p['height'] for p in people}) == 1
    unit = 10 if document['units'] == 'metric' else 1
    up = [0, 0, 1] if level else statics.upright(places, [p['height'] * unit for p in people], document.get('slope', 0),
                                                 way_up(document) if 'slope' in document else [1, 0])
    at = document['cg'][:2] if level else statics.acts_at(document['cg'], up)
    known = statics.exact(places, at) if level and n > 2 else statics.shares(places, at, 1e-12)
    if (known is None) != (answer['verdict'] == 'do-not-lift'):
        return [f'verdict {answer["verdict"]}, but the oracle says {known}']
    limits, sum_of = [], 0
    for person in people:
        limits.append(own_limit(document, person))
        sum_of += limits[-1][0]
        if not cli.same(cli.value(answer, f'share.{person["label"]}.limit'), limits[-1][0]):
            out.append(f'limit of {person["label"]}: {limits[-1][0]}')
    if n < 4 and not cli.same(cli.value(answer, 'team.limit'), sum_of * (2 / 3 if n == 2 else 1 / 2)):
        out.append('team.limit')
    if known is None:
        return out + [s for s in quantities if s.endswith('.mass') and s != 'mass']
    worst, even = ([float(v) * mass for v in each] for each in known)
    told = [cli.value(answer, f'share.{p["label"]}.mass') for p in people]
    stiff = [cli.value(answer, f'share.{p["label"]}.elastic') for p in people] if n == 4 else told
    for person, a, b, c, d, (limit, reference) in zip(people, told, worst, stiff, even, limits):
        name = person['label']
        if not near(a, b, mass):
            out.append(f'share of {name}: {a}, not {b}')
        if not near(c, d, mass):
            out.append(f'equally stiff share of {name}: {c}, not {d}')
        if not cli.same(cli.value(answer, f'share.{name}.ratio'), a / (.85 * limit) if limit > 0 else cli.INFINITY):
            out.append(f'ratio of {name}')
        if not cli.same(cli.value(answer, f'share.{name}.reference'), a / reference):
            out.append(f'reference of {name}')
    # forces, and moments about the centre of the hands
    size = max(math.dist(a, b) for a in places for b in places)
    middle = [sum(p[i] for p in places) / n for i in range(2)]
    if not near(sum(stiff), mass, mass):
        out.append(f'forces: {sum(stiff)} of {mass}')
    for i in range(2):
        moment = sum(s * (p[i] - middle[i]) for s, p in zip(stiff, places)) - mass * (at[i] - middle[i])
        if n == 2:  # what is beside their line nothing balances: only along it
            along = [(places[1][k] - places[0][k]) / size for k in range(2)]
            moment = sum(along[k] * (sum(s * (p[k] - middle[k]) for s, p in zip(stiff, places))
                                     - mass * (at[k] - middle[k])) for k in range(2))
        if not near(moment, 0, mass * size):
            out.append(f'moments: {moment}')
    heaviest = max(told)
    if not near(cli.value(answer, 'heaviest.share'), heaviest, mass):
        out.append('heaviest.share')
    if answer['governing'] not in [f'share.{p["label"]}.mass' for p, s in zip(people, told) if near(s, heaviest, mass * 10)]:
        out.append(f'governing {answer["governing"]}')
    over = any(s > r for s, (_, r) in zip(told, limits)) or (n < 4 and mass > sum_of * (2 / 3 if n == 2 else 1 / 2))
    if over != (answer['verdict'] == 'mechanical'):
        out.append(f'verdict {answer["verdict"]}, over {over}')
    if n == 4 and answer['verdict'] == 'by-hand':
        out.append('four by hand')
    return out


def heavy_dies(rng):
    """100 to 200 kg, three and four people, any who, the centre anywhere inside, with and without all that may be left out."""
    for step in range(11):
        for n in (3, 4):
            for who in WHO:
                for _ in range(6):
                    places = spread_out(rng, n)
                    document = {'method': 'team-lift', 'units': 'metric', 'mass': 100 + 10 * step,
                                'cg': inside(rng, places),
                                'people': [{'label': LABELS[i], 'at': place} for i, place in enumerate(places)]}
                    for person in document['people']:
                        if who is not None:
                            person['assigned'] = who
                        if rng.random() < .5:
                            person |= {'height': 75, 'reach': 25}
                    if rng.random() < .5:
                        document |= {'travel': 0, 'frequency': .1, 'duration': 'short', 'coupling': 'good'}
                    yield document


def main():
    rng = random.Random(SEED)
    failed = shown = 0
    cases = [random_case(rng) for _ in range(CASES)]
    answers, _ = cli.run_lines(sys.argv[1], [json.dumps(d) for d in cases])
    for document, answer in zip(cases, answers):
        found = differences(document, answer)
        failed += bool(found)
        if found and (shown := shown + 1) <= 8:
            print(f'not ok {json.dumps(document)}')
            for line in found:
                print(f'    {line}')
    dies = list(heavy_dies(rng))
    for document, answer in zip(dies, cli.assess_all(sys.argv[1], dies)):
        shares = [f'share.{p["label"]}.mass' for p in document['people']]
        if answer['verdict'] != 'mechanical' or not all(s in answer['quantities'] for s in shares):
            failed += 1
            print(f'not ok {answer["verdict"]}: {json.dumps(document)}')
    print(f'{len(cases) + len(dies) - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
