# SPDX-License-Identifier: MIT
"""compare.py CLI [COUNT]: random lifts through `assess --lines`, every quantity and verdict against
the oracle; some of them under the policy with the guideline filter as well. Every quantity within 1e-9 relative, the same symbols, the same verdict, the same governing
factor. Prints what differs and ends with one line `N passed, N failed`."""

import json
import sys

import cli
import oracle
import random_lifts

SEED = 19940110
COUNT = 20000
SHOWN = 12


def on_the_edge(expected):
    """An index so close to its limit that the order of multiplication may decide."""
    quantities = expected['quantities']
    near = lambda x, limit: abs(x - limit) <= 1e-12
    return (near(quantities['LI'], 1) or near(quantities['LI'], 3)
            or any(near(x, 1) for symbol, x in quantities.items() if symbol.endswith('_ratio'))
            or near(quantities.get('R_I', 0), 0.85))


def differences(facts, answer, with_filter):
    if 'problems' in answer:
        return [f'refused: {json.dumps(answer["problems"])}']
    expected = oracle.assess(facts, with_filter)
    wanted, given = expected['quantities'], answer['quantities']
    out = []
    if set(wanted) != set(given):
        out.append(f'symbols: missing {sorted(set(wanted) - set(given))}, '
                   f'not expected {sorted(set(given) - set(wanted))}')
    for symbol in set(wanted) & set(given):
        found = cli.number(given[symbol])
        if not cli.same(found, wanted[symbol]) and not (symbol == 'D' and abs(found - wanted[symbol]) < 1e-9):
            out.append(f'{symbol}: {found!r}, expected {wanted[symbol]!r}')
    if answer['verdict'] != expected['verdict'] and not on_the_edge(expected):
        out.append(f'verdict: {answer["verdict"]}, expected {expected["verdict"]}')
    if not expected['mass_governs'] and answer['governing'] not in expected['governing']:
        out.append(f'governing: {answer["governing"]}, expected one of {sorted(expected["governing"])}')
    if expected['mass_governs'] and wanted['LI'] <= 3 and '.' in answer['governing']:
        out.append(f'governing: {answer["governing"]}, expected the id of the limit on mass')
    return out


def main():
    program, count = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else COUNT
    lifts = random_lifts.Lifts(SEED).many(count)
    filtered = lifts[:count // 5]
    answers, code = cli.run_lines(program, [json.dumps(facts) for facts in lifts])
    more, other = cli.run_lines(program, [json.dumps(facts) for facts in filtered], '--policy', 'uk-filter')
    code, count = code or other, count + len(filtered)
    asked = [(facts, False) for facts in lifts] + [(facts, True) for facts in filtered]
    failed = 0
    for number, ((facts, with_filter), answer) in enumerate(zip(asked, answers + more), 1):
        found = differences(facts, answer, with_filter)
        failed += bool(found)
        if found and failed <= SHOWN:
            print(f'not ok lift {number}: {json.dumps(facts)}')
            for line in found:
                print(f'    {line}')
    if code != 0 and failed == 0:
        print(f'not ok exit code: {code}')
        failed += 1
    print(f'{count - failed} passed, {failed} failed')
    return failed != 0


if __name__ == '__main__':
    sys.exit(main())
