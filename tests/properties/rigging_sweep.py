# SPDX-License-Identifier: MIT
"""rigging_sweep.py CLI: what makes a lift one that must not be called within its capacity, two facts at a time.

Every base is `within-capacity` as it stands. Each flaw alone, and every two flaws that do not speak of the same fact,
must take that verdict away and never refuse the document; a flaw added to a flaw must never weaken the verdict, unless
one of the two hides a number.
Ends with one line `N passed, N failed`."""

import copy
import itertools
import json
import os
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(os.environ.get('SY_SOURCE_DIR', pathlib.Path(__file__).parents[2]))
                       / 'tests' / 'oracle'))

import cli  # noqa: E402

AS_OF = '2026-11-25'
DUE, PAST = '2027-05-01', '2026-11-24'
STRENGTH = ['within-capacity', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']
SHOWN = 30


def element(label, kind, wll, **more):
    return {'label': label, 'kind': kind, 'wll': wll, 'rated_as': 'leg', 'due': DUE, **more}


def leg(point, material, sling, fitting, **more):
    edge = 'none' if material == 'chain' else 'protected'
    return {'point': point, 'length': 1150, 'hitch': 'straight', 'edge': edge, 'material': material,
            'temperature': 20, **more, 'elements': [
                fitting, element(f'shackle {point}', 'shackle', 4000, side_angle=0, size=22), sling]}


def whole(points, legs):
    return {'method': 'rigged-lift', 'units': 'metric', 'as_of': AS_OF, 'mass': 1000, 'mass_basis': 'weighed',
            'allowance_percent': 0, 'dynamic_factor': 1, 'rule': 'both', 'cg': [0, 0, 100],
            'points': [{'label': label, 'at': at, 'axis': [0, 0, 1]} for label, at in points],
            'hook': {'above': 1000}, 'legs': legs,
            'suspension': [{'label': 'hoist', 'kind': 'hoist', 'wll': 5000, 'due': DUE},
                           {'label': 'bridge', 'kind': 'crane', 'wll': 10000, 'due': DUE}]}


def ring(label):
    return element(f'ring {label}', 'hoist-ring', 4000, size=24)


def eye(label):
    return element(f'eye {label}', 'eyebolt', 8000, family='asme', shoulder=True, size=42)


def bases():
    """One of each kind: chain on rings, web on eyebolts, chokes, an assembly's tag, four legs, hung free, a basket."""
    pair = [('left', [-500, 0, 300]), ('right', [500, 0, 300])]
    corners = [('NW', [-500, 350, 300]), ('NE', [500, 350, 300]), ('SE', [500, -350, 300]), ('SW', [-500, -350, 300])]
    sling = lambda label, wll=4000, **more: element(f'sling {label}', 'sling', wll, **more)
    out = {
        'chain': whole(pair, [leg(p, 'chain', sling(p), ring(p)) for p, _ in pair]),
        'eyebolts': whole(pair, [leg(p, 'polyester', sling(p), eye(p)) for p, _ in pair]),
        'choke': whole(pair, [leg(p, 'wire-rope', sling(p, 8000), ring(p), hitch='choke', choke_angle=130)
                              for p, _ in pair]),
        'tag': whole(pair, [leg(p, 'chain', sling(p, 6000, rated_as='assembly', legs=2, band='0-45'), ring(p))
                            for p, _ in pair]),
        'four': whole(corners, [leg(p, 'chain', sling(p), ring(p)) for p, _ in corners]),
        'free': whole(pair, [leg(p, 'chain', sling(p), ring(p)) for p, _ in pair]),
    }
    basket = leg('left', 'wire-rope', sling('left', 8000), ring('left'), hitch='basket', d_over_D=30)
    basket['point'] = ['left', 'right']
    basket['elements'] = [basket['elements'][2]]
    out['basket'] = whole(pair, [basket])
    del out['free']['hook']
    for base in out.values():
        for item in base['legs']:
            if base is not out['free']:
                del item['length']
    return out


def put(path, value):
    """A flaw: one place replaced; None removes."""
    def change(document):
        *parents, last = path
        at = document
        for key in parents:
            at = at[key]
        if value is None:
            at.pop(last, None)
        else:
            at[last] = value
    return change


def both(one, other):
    def change(document):
        one(document)
        other(document)
    return change


def flaws(name, base):
    """(name, the place it speaks of, change). Two flaws of places one of which holds the other are not combined."""
    first, points = base['legs'][0], base['points']
    out = []

    def add(text, path, value):
        out.append((text, path, put(path, value)))

    for n, item in enumerate(first['elements']):
        at, label = ('legs', 0, 'elements', n), item['label']
        add(f'{label}: no capacity', at + ('wll',), None)
        add(f'{label}: over capacity', at + ('wll',), 100)
        add(f'{label}: over the notice', at + ('wll',), {'eyebolt': 2600}.get(item['kind'], 620))
        add(f'{label}: no rating basis', at + ('rated_as',), None)
        add(f'{label}: no due date', at + ('due',), None)
        add(f'{label}: out of date', at + ('due',), PAST)
        add(f'{label}: withdrawn', at + ('withdrawn',), True)
        if item['kind'] == 'eyebolt':
            add(f'{label}: no family', at + ('family',), None)
            add(f'{label}: no shoulder', at + ('shoulder',), False)
            add(f'{label}: shoulder not known', at + ('shoulder',), None)
            add(f'{label}: side hole', ('points', 0, 'axis'), [0, 1, 0])
            add(f'{label}: no axis', ('points', 0, 'axis'), None)
            out.append((f'{label}: shoulderless in a side hole', ('points', 0, 'axis'),
                        both(put(('points', 0, 'axis'), [0, 1, 0]), put(at + ('shoulder',), False))))
        if item['kind'] == 'shackle':
            add(f'{label}: pulled across by over 90 degrees', at + ('side_angle',), 120)
        if item['rated_as'] == 'assembly':
            add(f'{label}: no number of legs', at + ('legs',), None)
            add(f'{label}: no band', at + ('band',), None)
            out.append((f'{label}: out of the band of its tag', ('points', 'spread'), spread))
    add('no elements', ('legs', 0, 'elements'), None)
    add('an empty list of elements', ('legs', 0, 'elements'), [])
    add('no hitch', ('legs', 0, 'hitch'), None)
    add('no material', ('legs', 0, 'material'), None)
    add('no word of the edge', ('legs', 0, 'edge'), None)
    if first['material'] != 'chain':
        add('a bare edge', ('legs', 0, 'edge'), 'bare')
    add('hotter than it may be', ('legs', 0, 'temperature'), 600)
    if first['hitch'] == 'choke':
        add('no angle of choke', ('legs', 0, 'choke_angle'), None)
        out.append(('a tight choke on a small sling', ('legs', 0),
                    both(put(('legs', 0, 'choke_angle'), 10), put(('legs', 0, 'elements', 2, 'wll'), 1500))))
    if first['hitch'] == 'basket':
        add('a basket of rope with no D/d', ('legs', 0, 'd_over_D'), None)
        out.append(('a small basket of rope about a pin of its own thickness', ('legs', 0),
                    both(put(('legs', 0, 'd_over_D'), 1.01), put(('legs', 0, 'elements', 0, 'wll'), 900))))
    if name == 'free':
        add('neither hook nor a length', ('legs', 1, 'length'), None)
        out.append(('legs that do not meet', ('legs', 1, 'length'),
                    lambda d: [item.update(length=450) for item in d['legs']]))
    else:
        add('flatter than 30 degrees', ('hook',), {'above': 250})
        add('flatter than 45 degrees', ('hook',), {'above': 450})
        add('neither hook nor lengths', ('hook',), None)
    add('the centre outside the points', ('cg',), [0, 800, 100])
    add('the centre above what holds it', ('cg',), [0, 0, 1500 if len(points) == 4 else 400])
    out.append(('one half held by nothing', ('points', 'body'),
                lambda d: [point.update(body='upper half') for point in d['points']]))
    add('too heavy', ('mass',), 60000)
    for n, item in enumerate(base['suspension']):
        at, label = ('suspension', n), item['label']
        add(f'{label}: no capacity', at + ('wll',), None)
        add(f'{label}: over capacity', at + ('wll',), 900)
        add(f'{label}: over the notice', at + ('wll',), 1300)
        add(f'{label}: no due date', at + ('due',), None)
        add(f'{label}: out of date', at + ('due',), PAST)
        add(f'{label}: withdrawn', at + ('withdrawn',), True)
    add('nothing to hang it from', ('suspension',), None)
    add('an empty list to hang it from', ('suspension',), [])
    return out


def spread(document):
    """Legs at 50 degrees under a tag that ends at 45."""
    for point in document['points']:
        point['at'][0] *= 2.4


def blind(text):
    """A flaw that hides a number: what another flaw makes of that number need not be known any more."""
    return any(word in text for word in ('no ', 'not known', 'neither', 'nothing', 'empty', 'do not meet', 'centre'))


def apart(a, b):
    """Whether two flaws speak of different places."""
    short = min(len(a), len(b))
    return a[:short] != b[:short]


def changed(base, *changes):
    document = copy.deepcopy(base)
    for change in changes:
        change(document)
    return document


def documents():
    """(base, flaws, document)."""
    out = []
    for name, base in bases().items():
        found = flaws(name, base)
        out.append((name, (), base))
        out += [(name, (text,), changed(base, change)) for text, _, change in found]
        for (one, here, change), (two, there, again) in itertools.combinations(found, 2):
            if apart(here, there):
                out.append((name, (one, two), changed(base, change, again)))
    return out


def wrong(case, answer, alone):
    name, told, _ = case
    if 'problems' in answer:
        if len(told) > 1 and any(alone[name, text] is None for text in told):
            return None  # counted once, where that flaw stands alone
        return f'refused: {json.dumps(answer["problems"], ensure_ascii=False)}'
    verdict = answer['verdict']
    if verdict not in STRENGTH:
        return f'verdict {verdict}'
    if not told:
        reasons = [reason['id'] for reason in answer['reasons']]
        return None if verdict == 'within-capacity' else f'the base is {verdict}: {reasons}: the sweep proves nothing'
    if verdict == 'within-capacity':
        return 'within-capacity'
    if not any(reason.get('text') for reason in answer['reasons']):
        return f'{verdict} without a reason'
    for text in told if len(told) > 1 and not any(map(blind, told)) else ():
        before = alone.get((name, text))
        if before is not None and STRENGTH.index(verdict) < STRENGTH.index(before):
            return f'{verdict}, and yet {before} with "{text}" alone'
    return None


def main():
    program = sys.argv[1] if len(sys.argv) > 1 else str(
        pathlib.Path(os.environ['SY_BUILD_DIR']) / 'app' / 'cli' / 'steelyard-cli')
    cases = documents()
    if len(cases) < 1500:
        raise SystemExit(f'only {len(cases)} documents')
    answers, _ = cli.run_lines(program, [json.dumps(document) for _, _, document in cases])
    alone = {(name, told[0]): answer.get('verdict')
             for (name, told, _), answer in zip(cases, answers) if len(told) == 1}
    failed = 0
    for case, answer in zip(cases, answers):
        text = wrong(case, answer, alone)
        failed += text is not None
        if text and failed <= SHOWN:
            print(f'not ok {case[0]}: {" + ".join(case[1]) or "as it stands"}: {text}')
            print(f'    {json.dumps(case[2])}')
    print(f'{len(cases) - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
