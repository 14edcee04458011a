# SPDX-License-Identifier: MIT
"""run_published.py CLI [--policy NAME] FILE...: the vectors of this folder through `steelyard-cli assess`.

All documents of a file go through `assess --lines --worksheet` in one process; each refusal goes through
`assess` alone as well. One line a case, at the end `N passed, N failed`; exit 1 when any failed."""

import json
import os
import subprocess
import sys
from decimal import Decimal, ROUND_HALF_UP

import vectors

RELATIVE = 1e-9


def amount(item):
    """A quantity's value, None when unbounded."""
    if item.get('state') == 'unbounded' and item['value'] is not None:
        raise ValueError(f'unbounded, and yet {item["value"]}')
    if item['value'] is None and item.get('state') != 'unbounded':
        raise ValueError(f'no value and no state: {item}')
    return item['value']


def rounded(value, places):
    """Half up, of the value to twelve places: 0.985 stays 0.985 whatever its last bit says."""
    exact = Decimal(value).quantize(Decimal(1).scaleb(-12), ROUND_HALF_UP)
    return exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


def places_of(text):
    return len(text.partition('.')[2])


def check_expect(findings, words):
    symbol, wanted = words[0], words[1]
    value = amount(findings['quantities'][symbol])
    if wanted == 'unbounded' or value is None:
        return [] if wanted == 'unbounded' and value is None else [f'{symbol} is {value}, not {wanted}']
    wanted = float(wanted)
    slack = float(words[3]) if len(words) > 3 else RELATIVE * abs(wanted)
    if len(words) not in (2, 4) or (len(words) == 4 and words[2] != '±'):
        raise vectors.Mistake(f'expect {" ".join(words)}')
    return [] if abs(value - wanted) <= slack else [f'{symbol} is {value!r}, not {" ".join(words[1:])}']


def check_printed(findings, words):
    symbol, wanted = words
    value = amount(findings['quantities'][symbol])
    if value is not None and rounded(value, places_of(wanted)) == Decimal(wanted):
        return []
    return [f'{symbol} is {value!r}, which does not round to {wanted}']


def check_anomaly(findings, words):
    """The print differs from the formula; both are written down, ours is the formula's."""
    symbol, printed, formula = words
    value = rounded(amount(findings['quantities'][symbol]), places_of(formula))
    if Decimal(printed) == Decimal(formula):
        return [f'{symbol}: {printed} is no anomaly']
    return [] if value == Decimal(formula) else [f'{symbol} rounds to {value}, not to {formula}']


def check_worksheet(findings, words):
    path, wanted = words
    at = findings['worksheet']
    for key in path.split('.'):
        at = at[key]
    if wanted == 'unbounded':
        return [] if at is None else [f'worksheet {path} is {at}, not unbounded']
    return [] if at is not None and Decimal(repr(at)) == Decimal(wanted) else [
        f'worksheet {path} is {at!r}, not {wanted}']


def check_verdict(findings, words):
    return [] if [findings['verdict']] == words else [f'verdict is {findings["verdict"]}, not {words[0]}']


def check_governing(findings, words):
    return [] if [findings['governing']] == words else [f'governing is {findings["governing"]}']


def check_reason(findings, words):
    """reason SYMBOL [limit NUMBER]: some reason is about that quantity and names that limit."""
    for reason in findings['reasons']:
        if reason.get('quantity') == words[0] and reason['text']:
            if len(words) == 1 or abs(reason['limit'] - float(words[2])) <= RELATIVE * float(words[2]):
                return []
    given = [(r['id'], r.get('quantity'), r.get('limit')) for r in findings['reasons']]
    return [f'no reason {" ".join(words)} among {given}']


def check_says(findings, words):
    """says TEXT: some reason's text holds these words, a label for instance."""
    texts = [reason['text'] for reason in findings['reasons']]
    return [] if any(' '.join(words) in text for text in texts) else [f'no reason says "{" ".join(words)}": {texts}']


def check_because(findings, words):
    """because ID [VERDICT]: a reason with that id, which by itself asks for that verdict."""
    given = [(reason['id'], reason['verdict']) for reason in findings['reasons']]
    if any(given_id == words[0] and words[1:] in ([], [verdict]) for given_id, verdict in given):
        return []
    return [f'no reason {" ".join(words)} among {given}']


def check_not_because(findings, words):
    given = [reason['id'] for reason in findings['reasons']] + [caution['id'] for caution in findings['cautions']]
    return [f'"{word}" is said' for word in words if word in given]


def check_caution(findings, words):
    given = [caution['id'] for caution in findings['cautions']]
    return [f'no caution "{word}" among {given}' for word in words if word not in given]


def check_date(findings, words):
    value = findings['quantities'][words[0]]['value']
    return [] if [value] == words[1:] else [f'{words[0]} is {value}, not {words[1]}']


def check_absent(findings, words):
    return [f'{symbol} is there' for symbol in words if symbol in findings['quantities']]


def check_limit(findings, words):
    """limit ID [NUMBER]: that published limit is shown beside the others, with that ratio."""
    shown = {limit['id']: amount({'value': limit['ratio'], 'state': limit.get('state')}) for limit in findings['limits']}
    if words[0] not in shown:
        return [f'no limit {words[0]} among {list(shown)}']
    wanted = float(words[1]) if len(words) > 1 else shown[words[0]]
    if wanted is not None and abs(shown[words[0]] - wanted) > RELATIVE * abs(wanted):
        return [f'limit {words[0]} has the ratio {shown[words[0]]!r}, not {words[1]}']
    return []


def check_governs(findings, words):
    given = [limit['id'] for limit in findings['limits'] if limit['governs']]
    return [] if given == words else [f'the limit that governs is {given}, not {words}']


CHECKS = {'expect': check_expect, 'printed': check_printed, 'anomaly': check_anomaly, 'date': check_date,
          'absent': check_absent, 'worksheet': check_worksheet, 'verdict': check_verdict,
          'governing': check_governing, 'reason': check_reason, 'says': check_says, 'because': check_because,
          'not-because': check_not_because, 'caution': check_caution, 'limit': check_limit,
          'governs': check_governs}


def check_findings(case, answer, by_name):
    if 'problems' in answer:
        return [f'refused: {json.dumps(answer["problems"], ensure_ascii=False)}']
    out = []
    for kind, words in case.checks:
        try:
            if kind == 'more-cautions-than':
                other = by_name[' '.join(words)]['cautions']
                if len(answer['cautions']) <= len(other):
                    out.append(f'{len(answer["cautions"])} cautions, no more than "{" ".join(words)}"')
            else:
                out += CHECKS[kind](answer, words)
        except (KeyError, TypeError, ValueError) as error:
            out.append(f'{kind} {" ".join(words)}: {type(error).__name__} {error}')
    return out


def check_refusal(program, case, answer, options):
    """Refused in both ways, every path named, each problem whole, unknown fields first."""
    if 'problems' not in answer:
        return [f'was assessed: verdict {answer.get("verdict")}']
    out, problems = [], answer['problems']
    for problem in problems:
        for key in ('path', 'given', 'allowed', 'unit'):
            if not isinstance(problem.get(key), str):
                out.append(f'a problem without "{key}": {problem}')
        if not problem.get('allowed'):
            out.append(f'a problem that does not say what is allowed: {problem}')
    named = [problem.get('path') for problem in problems]
    if not problems:
        out.append('refused without a problem')
    for path in case.refuse:
        if not any(way in named for way in path.split('|')):
            out.append(f'{path} is not named, only {named}')
    done = subprocess.run([program, 'assess', *options, '-'], input=case.text().encode(), check=False,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    errors = done.stderr.decode()
    if done.returncode != 2:
        out.append(f'assess alone: exit {done.returncode}')
    if done.stdout:
        out.append(f'assess alone: {len(done.stdout)} bytes on standard output')
    out += [f'assess alone: {path} is not named in: {errors.strip()}'
            for path in case.refuse if not any(way in errors for way in path.split('|'))]
    return out


def run_file(program, path, options):
    cases = vectors.read_file(path)
    text = ''.join(case.text() + '\n' for case in cases)
    done = subprocess.run([program, 'assess', '--lines', '--worksheet', *options, '-'], input=text.encode(),
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    try:
        answers = [json.loads(line) for line in done.stdout.decode().splitlines()]
    except ValueError as error:
        print(f'not ok {os.path.basename(path)}: no JSON: {error}: {done.stderr.decode()[:2000]}')
        return 0, len(cases)
    if len(answers) != len(cases):
        print(f'not ok {os.path.basename(path)}: {len(cases)} lines in, {len(answers)} out, '
              f'exit {done.returncode}: {done.stderr.decode()[:2000]}')
        return 0, len(cases)
    by_name = {case.name: answer for case, answer in zip(cases, answers)}
    failed = 0
    for case, answer in zip(cases, answers):
        wrong = (check_findings(case, answer, by_name) if case.refuse is None
                 else check_refusal(program, case, answer, options))
        failed += bool(wrong)
        print(f'{"not ok" if wrong else "ok"} {case.name}')
        for line in wrong:
            print(f'    {line}')
        if wrong:
            print(f'    source: {case.source}')
            print(f'    document: {case.text()}')
    wanted = 2 if any(case.refuse is not None for case in cases) else 0
    if done.returncode != wanted:
        print(f'not ok {os.path.basename(path)}: exit {done.returncode}, not {wanted}')
        failed += 1
        return len(cases) - failed + 1, failed
    return len(cases) - failed, failed


def main():
    passed = failed = 0
    options = sys.argv[2:4] if sys.argv[2:3] == ['--policy'] else []
    for path in sys.argv[2 + len(options):]:
        good, bad = run_file(sys.argv[1], path, options)
        passed, failed = passed + good, failed + bad
    print(f'{passed} passed, {failed} failed')
    return failed != 0 or passed == 0


if __name__ == '__main__':
    sys.exit(main())
