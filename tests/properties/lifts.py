# SPDX-License-Identifier: MIT
"""What the property tests share: the program, facts to start from, questions asked in bulk."""

import json
import os
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(os.environ['SY_SOURCE_DIR']) / 'tests' / 'oracle'))

import cli  # noqa: E402
import oracle  # noqa: E402, F401
import random_lifts  # noqa: E402

CLI = str(pathlib.Path(os.environ['SY_BUILD_DIR']) / 'app' / 'cli' / 'steelyard-cli')
INFINITY = cli.INFINITY
FACTORS = ['HM', 'VM', 'DM', 'AM', 'FM', 'CM']
LENGTH = {'metric': 1, 'us': 1 / 2.5}  # a round scale from cm to about inches, for making up facts only
IDEAL = {'metric': 75, 'us': 30}
VERDICTS = ['by-hand', 'improve', 'incomplete', 'outside', 'mechanical', 'do-not-lift']


def ask(documents, *options):
    return cli.assess_all(CLI, documents, *options)


def ask_whole(documents, *options):
    return cli.assess_files(CLI, documents, *options)


def value(findings, symbol):
    return cli.value(findings, symbol)


def put(facts, **changes):
    """Facts with dotted paths, written with __, replaced; None takes a fact away."""
    for path, new in changes.items():
        facts = cli.put(facts, path.replace('__', '.'), new)
        if new is None:
            *parents, last = path.split('__')
            at = facts
            for parent in parents:
                at = at[parent]
            del at[last]
    return facts


def calm(units, seed, count):
    """Plain lifts inside every limit, with a fixed travel, so that each fact can be moved alone."""
    lifts, scale = random_lifts.Lifts(seed), LENGTH[units]
    r, out = lifts.r, []
    for _ in range(count):
        mass = round(r.uniform(2, 25), 1)
        out.append({
            'method': 'lift', 'units': units, 'load': {'typical': mass, 'heaviest': mass},
            'origin': {'H': round(r.uniform(20, 60) * scale, 1), 'V': round(r.uniform(0, 150) * scale, 1),
                       'A': round(r.uniform(0, 130), 1)},
            'travel': round(r.uniform(0, 150) * scale, 1), 'frequency': round(r.uniform(0, 8), 1),
            'duration': r.choice(['short', 'moderate', 'long']),
            'coupling': r.choice(['good', 'fair', 'poor']),
            'assigned': r.choice(['any-age', 'mixed-adults', 'men-20-45']), 'conditions': []})
    return out


def described(facts):
    return json.dumps(facts, ensure_ascii=False)
