# SPDX-License-Identifier: MIT
"""A second implementation of what a die change adds to its steps: the composite index of each person, who may be doing what,
and which checks are missing. Written from docs/methods/changeover.md, not from the program."""

import oracle

INFINITY = oracle.INFINITY


def as_list(value):
    return [value] if isinstance(value, str) else value or []


def people_of(facts):
    people = facts['people']
    return [str(i + 1) for i in range(people)] if isinstance(people, int) else as_list(people)


def persons_of(step):
    return step.get('persons', max(len(as_list(step.get('by'))), 1))


def may_do(step, person):
    named = as_list(step.get('by'))
    return person in named or len(named) < persons_of(step)


# ---- The composite index


def task_of(facts):
    found = oracle.assess(facts)
    q = found['quantities']
    ends = [end for end in ('origin', 'destination') if f'{end}.FIRWL' in q]
    end = min(ends, key=lambda name: q[f'{name}.FIRWL'])
    measure = lambda name: oracle.measure(facts['load'][name], 'mass', facts['units'])
    return {'firwl': q[f'{end}.FIRWL'], 'V': q[f'{end}.V'], 'F': q['F'], 'heaviest': measure('heaviest'),
            'typical': measure('typical'), 'class': oracle.DURATIONS.index(found['duration'])}


def composite(tasks, units):
    """STLI of the first, then FILI (1 / FM with it - 1 / FM before it), by STLI from the largest down."""
    duration = oracle.DURATIONS[max(task['class'] for task in tasks)]
    fm = lambda task, f: oracle.frequency(f, duration, task['V'], oracle.SYSTEMS[units])
    inverse = lambda multiplier: INFINITY if multiplier == 0 else 1 / multiplier
    for task in tasks:
        task['STLI'] = oracle.ratio(task['typical'], task['firwl'] * fm(task, task['F']))
    ordered = sorted(tasks, key=lambda task: -task['STLI'])
    total, f = ordered[0]['STLI'], ordered[0]['F']
    for task in ordered[1:]:
        fili, before, after = oracle.ratio(task['heaviest'], task['firwl']), fm(task, f), fm(task, f + task['F'])
        f += task['F']
        if total == INFINITY or after == 0 or fili == INFINITY:
            total = INFINITY
        else:
            total += fili * (inverse(after) - inverse(before))
    return total


def person_index(facts, person):
    """None: no lift is that person's."""
    tasks = [task_of(dict(step['facts'], units=facts['units'])) for step in facts['steps']
             if step.get('facts', {}).get('method') == 'lift' and may_do(step, person)]
    return composite(tasks, facts['units']) if tasks else None


# ---- Checks

PRESS = {'isolated', 'slide-blocked', 'pressure-let-down'}
STROKE = {'clamps-torqued', 'blocks-counted-out', 'guards-proved'}
HOISTED = {'nobody-under', 'tag-line', 'trial-lift'}
HERE = {'isolate': {'isolated'}, 'block': {'slide-blocked'}, 'clamp': {'clamps-torqued'}, 'roll': {'walkers-kept-out'},
        'truck': {'walkers-kept-out', 'nobody-under'}}
BEFORE = {'block': {'isolated'}, 'unclamp': {'halves-tied'}, 'disconnect': {'pressure-let-down'},
          'draw': {'not-hot', 'halves-tied'}, 'lift': {'not-hot', 'halves-tied'}, 'carry': {'not-hot'}, 'roll': {'not-hot'},
          'truck': {'halves-tied'}, 'turn': {'not-hot', 'halves-tied'}, 'store': {'not-hot'}, 'set': {'halves-tied'},
          'first-off': STROKE, 'release': STROKE}
STOPPED = {'unclamp': PRESS, 'draw': PRESS, 'lift': PRESS, 'set': PRESS, 'disconnect': {'isolated'},
           'clamp': {'isolated', 'slide-blocked'}, 'adjust': {'isolated', 'slide-blocked'}}
IN_PRESS = {'block', 'unclamp', 'disconnect', 'draw', 'lift', 'set', 'clamp', 'adjust'}
WITHOUT = {'slide': {'slide-blocked', 'blocks-counted-out'}, 'pressure': {'pressure-let-down'}, 'heat': {'not-hot'},
           'halves': {'halves-tied'}}
IDS = {'isolated': 'check-isolated', 'slide-blocked': 'check-slide-blocked', 'pressure-let-down': 'check-pressure',
       'not-hot': 'check-hot', 'halves-tied': 'check-halves-tied', 'nobody-under': 'check-nobody-under',
       'tag-line': 'check-tag-line', 'trial-lift': 'check-trial-lift', 'walkers-kept-out': 'check-walkers',
       'clamps-torqued': 'check-torqued', 'blocks-counted-out': 'check-blocks-counted', 'guards-proved': 'check-guards'}
FROM_PLAN = {'halves-tied': {'halves-tied', 'pressure-let-down'}, 'way-clear': {'nobody-under'}, 'tag-line': {'tag-line'},
             'trial-lift': {'trial-lift'}}


def made_in(step):
    made = set(step.get('checks', []))
    for check in step.get('facts', {}).get('checks', []):
        made |= FROM_PLAN.get(check, set())
    return made


def here(step):
    method, kind = step.get('facts', {}).get('method'), step['kind']
    more = {'rigged-lift': HOISTED, 'truck': {'walkers-kept-out', 'nobody-under'}, 'cart': {'walkers-kept-out'}}.get(method, set())
    if kind in ('lift', 'turn') and method is None:
        more = more | HOISTED
    return HERE.get(kind, set()) | more


def earlier(step):
    method, kind = step.get('facts', {}).get('method'), step['kind']
    more = {'halves-tied'} if method in ('rigged-lift', 'truck') else set()
    stopped = STOPPED.get(kind, set()) if step['when'] == 'stopped' else set()
    return BEFORE.get(kind, set()) | stopped | more


def hands_in_press(step):
    return step['when'] == 'stopped' and step['kind'] in IN_PRESS


def undoes(step, check):
    checks = step.get('checks', [])
    return (check in PRESS and step['kind'] in ('first-off', 'release')
            or check == 'slide-blocked' and 'blocks-counted-out' in checks
            or check == 'blocks-counted-out' and 'slide-blocked' in checks
            or check == 'guards-proved' and hands_in_press(step)
            or check == 'clamps-torqued' and hands_in_press(step) and step['kind'] in ('unclamp', 'draw', 'set'))


class Order:
    """What is certainly over before what: by walking back from a step."""

    def __init__(self, steps):
        self.steps = steps
        place = {step['label']: i for i, step in enumerate(steps)}
        self.direct = [[place[name] for name in as_list(step['after'])] if 'after' in step else [i - 1] if i else []
                       for i, step in enumerate(steps)]

    def before(self, first, then):
        """@then is None for the end of the change."""
        if then is None:
            return True
        seen, left = set(), list(self.direct[then])
        while left:
            at = left.pop()
            if at == first:
                return True
            if at not in seen:
                seen.add(at)
                left += self.direct[at]
        return False


def is_made(order, check, at):
    for i, step in enumerate(order.steps):
        if check not in made_in(step) or not (i == at or order.before(i, at)):
            continue
        if not any(undoes(other, check) and k not in (i, at) and not order.before(k, i)
                   and not (at is not None and order.before(at, k)) for k, other in enumerate(order.steps)):
            return True
    return False


def blocks_may_be_in(order, at):
    return any(('slide-blocked' in made_in(step) or step['kind'] == 'block') and not (at is not None and order.before(at, i))
               for i, step in enumerate(order.steps))


def missing(facts):
    """Pairs (id of the reason, step)."""
    order = Order(facts['steps'])
    ignored = set().union(*(WITHOUT[name] for name in facts.get('without', [])), set())
    said, out = set(), []

    def lacking(checks, at):
        return {check for check in checks - ignored - said
                if not is_made(order, check, at) and (check != 'blocks-counted-out' or blocks_may_be_in(order, at))}

    for i, step in enumerate(facts['steps']):
        gone = (here(step) - ignored - made_in(step)) | lacking(earlier(step) - here(step), i)
        out += [(IDS[check], step['label']) for check in gone]
        said |= gone
    stopped = [step for step in facts['steps'] if step['when'] == 'stopped' and step['kind'] not in ('first-off', 'release')]
    if stopped and 'isolated' not in said and not any('isolated' in made_in(step) for step in facts['steps']):
        out.append((IDS['isolated'], stopped[0]['label']))
    worked = [step for step in facts['steps'] if hands_in_press(step)]
    if worked:
        out += [(IDS[check], worked[-1]['label']) for check in lacking(STROKE, None)]
    return set(out)
