# SPDX-License-Identifier: MIT
"""Random documents of die-mass, rigged-lift, truck and cart, metric and US, seeded."""

import math
import random

import rigging_oracle as oracle

AS_OF = '2026-11-25'
SHAPES = ['block', 'cylinder', 'tube', 'prism', 'point']


class Rigging:
    def __init__(self, seed):
        self.r = random.Random(seed)
        self.units = 'metric'

    # Lengths are thought of in mm and masses in kg, then scaled to round figures of the other system.
    def length(self, low, high):
        value = self.r.uniform(low, high) * (1 if self.units == 'metric' else 0.04)
        return self.r.choice([lambda: round(value), lambda: round(value, 1), lambda: value])() or 1

    def mass(self, low, high):
        value = self.r.uniform(low, high) * (1 if self.units == 'metric' else 2)
        return self.r.choice([lambda: round(value), lambda: round(value, 1), lambda: value])() or 1

    def scale(self, value):
        return value if self.units == 'metric' else value * 0.04

    def place(self, reach=800):
        return [self.length(0, reach) * self.r.choice([-1, 1]), self.length(0, reach) * self.r.choice([-1, 1]),
                self.length(0, reach)]

    def start(self, method):
        self.units = self.r.choice(['metric', 'us'])
        return {'method': method, 'units': self.units, 'as_of': AS_OF}

    def basis(self, document):
        if self.r.random() < 0.8:
            document['mass_basis'] = self.r.choice(list(oracle.ALLOWANCE))
        if 'mass_basis' not in document or self.r.random() < 0.4:
            document['allowance_percent'] = self.r.choice([0, 3, 5, 12.5, 25, round(self.r.uniform(0, 40), 2)])

    def due(self):
        return f'2027-{self.r.randint(1, 12):02d}-{self.r.randint(1, 28):02d}'

    # ---- die-mass

    def material(self, body):
        if self.r.random() < 0.75:
            body['material'] = self.r.choice(list(oracle.DENSITY))
        elif self.units == 'metric':
            body['density'] = self.r.choice([7850, 7200, round(self.r.uniform(900, 9000), 1)])
        else:
            body['density'] = self.r.choice([0.2836, 0.26, round(self.r.uniform(0.04, 0.5), 4)])

    def body(self, number):
        r, shape = self.r, self.r.choice(SHAPES)
        body = {'label': f'part {number}'}
        if shape == 'point':
            return {**body, 'mass': self.mass(0.1, 60), 'at': self.place()}
        body['shape'] = shape
        if shape == 'block':
            body['size'] = [self.length(20, 1200), self.length(20, 800), self.length(20, 300)]
        else:
            body['height'] = self.length(20, 400)
            if shape == 'cylinder':
                body['diameter'] = self.length(20, 300)
            elif shape == 'tube':
                body['outer'] = self.length(80, 300)
                body['inner'] = body['outer'] * r.choice([0.5, 0.25, 0.8125])
            else:
                body['area'] = self.length(30, 300) * self.length(30, 300)
            if r.random() < 0.4:
                body['axis'] = r.choice('xyz')
        self.material(body)
        pick = r.random()
        body['at'] = self.place()
        if pick < 0.15:
            body['count'] = r.randint(1, 6)
        elif pick < 0.4:
            body['at'] = [self.place() for _ in range(r.randint(1, 6))]
            if r.random() < 0.4:
                body['count'] = len(body['at'])
        return body

    def pocket(self, block):
        """A hole in a block that is there: smaller than it, of the same stuff."""
        pocket = {'label': 'pocket', 'shape': 'block', 'size': [x * 0.25 for x in block['size']], 'cut': True,
                  'at': block['at'] if not isinstance(block['at'][0], list) else block['at'][0]}
        return {**pocket, **{k: block[k] for k in ('material', 'density') if k in block}}

    def die(self):
        document = self.start('die-mass')
        bodies = [self.body(n) for n in range(self.r.randint(1, 8))]
        for body in list(bodies):
            if body.get('shape') == 'block' and self.r.random() < 0.4 and 'pocket' not in [b['label'] for b in bodies]:
                bodies.append(self.pocket(body))
        document['bodies'] = bodies
        if self.r.random() < 0.3:
            document['weighed'] = self.mass(100, 4000)
        if self.r.random() < 0.4:
            document['mass_basis'] = ('weighed' if 'weighed' in document
                                      else self.r.choice(['plate', 'drawing', 'estimated']))
        if self.r.random() < 0.4:
            document['allowance_percent'] = self.r.choice([0, 5, 12.5, round(self.r.uniform(0, 40), 2)])
        if self.r.random() < 0.3:
            x, y = self.length(300, 900), self.length(300, 900)
            document['points'] = [{'label': f'P{n}', 'at': [a * x, b * y, 0]}
                                  for n, (a, b) in enumerate([(-1, -1), (1, -1), (1, 1), (-1, 1)])]
        return document

    # ---- rigged-lift

    def gear(self, document, own=False):
        """Slings and what they hang from, big enough or not: quantities are compared, not verdicts."""
        r = self.r
        for number, leg in enumerate(document['legs']):
            leg.update(hitch='basket' if isinstance(leg['point'], list) else 'straight', edge='none',
                       material='chain', temperature=20 if self.units == 'metric' else 68)
            leg['elements'] = [
                {'label': f'ring{number}', 'kind': 'hoist-ring', 'wll': self.mass(800, 6000), 'rated_as': 'leg',
                 'due': self.due()},
                {'label': f'chain{number}', 'kind': 'sling', 'wll': self.mass(800, 6000), 'rated_as': 'leg',
                 'due': self.due()}]
            if own and r.random() < 0.7:
                leg['elements'][1]['own_mass'] = self.mass(2, 40)
        if r.random() < 0.7:
            document['suspension'] = [{'label': 'hoist', 'kind': 'hoist', 'wll': self.mass(2000, 10000),
                                       'due': self.due()}]
            if r.random() < 0.5:
                document['suspension'].append({'label': 'bridge', 'kind': 'crane', 'wll': self.mass(4000, 12000),
                                               'due': self.due()})
                document['suspension'][0]['own_mass'] = self.mass(20, 200)
        document['rule'] = r.choice(['us', 'en', 'both'])
        return document

    def lift(self, points, cg, legs=None):
        document = {'method': 'rigged-lift', 'units': self.units, 'as_of': AS_OF, 'mass': self.mass(200, 8000),
                    'cg': cg, 'points': [{'label': f'P{n}', 'at': at} for n, at in enumerate(points)],
                    'legs': legs or [{'point': f'P{n}'} for n in range(len(points))]}
        self.basis(document)
        if self.r.random() < 0.4:
            document['dynamic_factor'] = self.r.choice([1, 1.1, 1.25, round(self.r.uniform(1, 1.6), 3)])
        return document

    def hook(self, document, points, cg, steep=False):
        height = self.length(600, 2500)
        if self.r.random() < 0.5:
            document['hook'] = {'above': height}
        else:
            document['hook'] = {'at': [cg[0], cg[1], max(p[2] for p in points) + height]}

    def level_two(self):
        """The centre in the upright plane of the two points, below their line."""
        self.units = self.r.choice(['metric', 'us'])
        r = self.r
        a, b = self.length(100, 1200), self.length(100, 1200)
        x, y, z = self.place()
        rise = self.length(0, 300) if r.random() < 0.3 else 0
        way = r.choice(['x', 'y', 'middle'])
        if way == 'middle':
            dx, dy = round(a), round(b)
            points = [[-dx, -dy, 500], [dx, dy, 500]]
            cg = [0, 0, self.length(0, 400)]
            if self.units == 'us':
                points[0][2] = points[1][2] = 20
        else:
            k = 'xy'.index(way)
            points = [[x, y, z + self.scale(500)], [x, y, z + self.scale(500) + rise]]
            points[0][k] -= a
            points[1][k] += b
            cg = [x, y, z]
        legs = [{'point': ['P0', 'P1']}] if r.random() < 0.15 else None
        document = self.lift(points, cg, legs)
        self.hook(document, points, cg)
        return self.gear(document)

    def corners(self, count):
        """Points around the origin, about a half or a fifth of the turn apart; not all equally high."""
        r = self.r
        points, turn, flat = [], r.uniform(0, 2 * math.pi), r.random() < 0.5
        z = self.length(200, 600)
        for n in range(count):
            angle, far = turn + 2 * math.pi * (n + r.uniform(-0.25, 0.25)) / count, self.length(400, 1400)
            points.append([far * math.cos(angle), far * math.sin(angle),
                           z if flat else z + self.length(0, 250)])
        return points

    def inside(self, points, low):
        share = [self.r.uniform(0.12, 1) for _ in points]
        total = sum(share)
        return [sum(s * p[k] for s, p in zip(share, points)) / total for k in range(2)] + [low]

    def level(self, count):
        self.units = self.r.choice(['metric', 'us'])
        if count == 4 and self.r.random() < 0.4:
            a, b, z = self.length(300, 1200), self.length(300, 1200), self.length(200, 500)
            points = [[-a, -b, z], [a, -b, z], [a, b, z], [-a, b, z]]
            cg = [round(self.r.uniform(-0.5, 0.5), 2) * a, round(self.r.uniform(-0.5, 0.5), 2) * b, 0]
            if self.r.random() < 0.2:
                cg = [0, 0, 0]
        else:
            points = self.corners(count)
            cg = self.inside(points, self.scale(self.r.uniform(0, 150)))
        document = self.lift(points, cg)
        self.hook(document, points, cg)
        if count == 4:
            document['stiffness'] = round(self.r.uniform(1, 8) * (1 if self.units == 'metric' else 5000), 1)
        return self.gear(document, own=self.r.random() < 0.2)

    def free(self, count):
        """Lengths of a hook somewhere over the centre, each a little off, so that the load tilts."""
        while True:
            self.units = self.r.choice(['metric', 'us'])
            r = self.r
            if count == 2:
                a, b, turn = self.length(300, 1200), self.length(300, 1200), r.uniform(0, math.pi)
                z = self.length(400, 700)
                points = [[-a * math.cos(turn), -a * math.sin(turn), z], [b * math.cos(turn), b * math.sin(turn), z]]
                cg = [0, 0, self.scale(r.uniform(0, 250))]
            else:
                points = self.corners(count)
                cg = self.inside(points, self.scale(r.uniform(0, 150)))
            high = max(p[2] for p in points) + self.length(900, 2500)
            hook = [cg[0] + self.scale(r.uniform(-150, 150)), cg[1] + self.scale(r.uniform(-150, 150)), high]
            lengths = [oracle.norm(oracle.sub(hook, p)) for p in points]
            if count == 4:
                lengths[r.randrange(4)] *= r.uniform(1.08, 1.3)
            try:
                hung = oracle.hang_free(points, lengths, cg)
            except oracle.Cannot:
                continue
            loose = [s for s in hung['slack'] if s > 0]
            taut = [t for t, s in zip(hung['tensions'], hung['slack']) if s == 0]
            wanted = {2: 0, 3: 0, 4: 1}[count]
            if hung['tilt'] > 40 or len(loose) != wanted or min(taut) < 0.02:
                continue
            if loose and min(loose) < 0.03 * max(lengths):
                continue
            document = self.lift(points, cg)
            for leg, length in zip(document['legs'], lengths):
                leg['length'] = length
            return self.gear(document)

    # ---- truck and cart

    def truck(self):
        document, r = self.start('truck'), self.r
        document.update(rating=self.mass(1000, 5000), rated_centre=self.length(400, 600),
                        actual_centre=self.length(300, 1300), mass=self.mass(200, 5000),
                        lift_height=self.length(1000, 4500), plate_read=True,
                        attachment=r.choice(['none', 'rated']), due=self.due())
        if r.random() < 0.6:
            document['fulcrum'] = self.length(350, 600)
        self.basis(document)
        return document

    def cart(self):
        document, r = self.start('cart'), self.r
        load = self.mass(200, 5000)
        wheelbase = self.length(600, 1800)
        document.update(
            load_mass=load, gross_mass=load + self.mass(50, 500), rated_load=self.mass(500, 6000),
            wheels=r.choice([4, 4, 4, 3, 6]), wheel=r.choice(['steel-on-rail', 'rubber', 'polyurethane', 'rollers']),
            rolling_coefficient=round(r.uniform(0.002, 0.05), 4), start_factor=round(r.uniform(1, 3), 2),
            slope=r.choice([0, 0, 1, 2.5, '2 %', '3.5 %', round(r.uniform(0, 5), 2)]), wheelbase=wheelbase,
            track=wheelbase if r.random() < 0.6 else self.length(500, 1500), cg_height=self.length(300, 1200),
            push_height=self.length(800, 1200), brake=r.choice(['none', 'parking', 'dead-man']),
            deceleration=round(r.uniform(0, 0.3), 2), due=self.due())
        return document


def documents(seed):
    """(what it is, document) in order."""
    r, out = Rigging(seed), []
    out += [('die-mass', r.die()) for _ in range(400)]
    out += [('level two-leg', r.level_two()) for _ in range(300)]
    out += [('level three-leg', r.level(3)) for _ in range(300)]
    out += [('level four-leg', r.level(4)) for _ in range(300)]
    out += [('free three-leg', r.free(3)) for _ in range(200)]
    out += [('free two-leg', r.free(2)) for _ in range(100)]
    out += [('free four-leg', r.free(4)) for _ in range(100)]
    out += [('truck', r.truck()) for _ in range(100)]
    out += [('cart', r.cart()) for _ in range(100)]
    return out
