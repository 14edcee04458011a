# SPDX-License-Identifier: MIT
"""Reads the vector files of this folder. README.md describes the format for those who add to it."""

import json


class Case:
    """One document and what must come of it."""

    def __init__(self, name, source, facts):
        self.name, self.source, self.facts = name, source, facts
        self.raw = None       # the document's text where it is not made from facts
        self.checks = []      # (kind, words)
        self.refuse = None    # None: must be assessed; else the paths that must be named

    def text(self):
        return self.raw if self.raw is not None else json.dumps(self.facts, ensure_ascii=False)


class Mistake(Exception):
    """A line of a vector file that cannot be read."""


def merged(base, change):
    """RFC 7396 merge: objects merge, null removes, the rest replaces."""
    if not isinstance(change, dict):
        return change
    out = dict(base) if isinstance(base, dict) else {}
    for key, value in change.items():
        if value is None:
            out.pop(key, None)
        else:
            out[key] = merged(out.get(key), value)
    return out


def placed(path, value):
    """{"origin": {"H": 30}} from "origin.H" and 30."""
    for key in reversed(path.split('.')):
        value = {key: value}
    return value


def put(facts, path, value):
    """Facts with one place replaced, places of lists by number: legs.0.elements.1.wll; null removes."""
    facts = json.loads(json.dumps(facts))
    *parents, last = [int(key) if key.isdigit() else key for key in path.split('.')]
    at = facts
    for key in parents:
        at = at[key]
    if value is None:
        del at[last]
    else:
        at[last] = value
    return facts


def blocks(path):
    """Lists of (line number, text) that belong together; a continued line is joined to its first."""
    block = []
    with open(path, encoding='utf-8') as file:
        for number, line in enumerate(file, 1):
            line = line.rstrip()
            if line.lstrip().startswith('#'):
                continue
            if not line:
                if block:
                    yield block
                block = []
            elif line.startswith('    ') and block:
                block[-1] = (block[-1][0], block[-1][1] + ' ' + line.strip())
            else:
                block.append((number, line.strip()))
    if block:
        yield block


def json_values(text):
    """Several JSON values one after the other."""
    decoder, out = json.JSONDecoder(), []
    text = text.strip()
    while text:
        value, end = decoder.raw_decode(text)
        out.append(value)
        text = text[end:].strip()
    return out


def read_file(path):
    bases, cases = {}, []
    for block in blocks(path):
        try:
            kind, _, name = block[0][1].partition(' ')
            if kind == 'base':
                name, _, text = name.partition(' ')
                bases[name] = json.loads(text)
            elif kind == 'case':
                cases.append(read_case(name, block[1:], bases))
            elif kind == 'table':
                cases += read_table(name, block[1:], bases)
            else:
                raise Mistake(f'"{kind}" begins no block (base, case or table)')
        except (Mistake, ValueError, KeyError) as mistake:
            raise Mistake(f'{path}:{block[0][0]}: {block[0][1]}: {mistake}') from mistake
    names = [case.name for case in cases]
    for name in names:
        if names.count(name) > 1:
            raise Mistake(f'{path}: two cases are called "{name}"')
    return cases


def read_case(name, lines, bases):
    case = Case(name, None, {})
    for _, line in lines:
        word, _, rest = line.partition(' ')
        if word == 'from':
            case.facts = merged(bases[rest], case.facts)
        elif word == 'facts':
            case.facts = merged(case.facts, json.loads(rest))
        elif word == 'set':
            path, _, text = rest.partition(' ')
            case.facts = put(case.facts, path, json.loads(text))
        elif word == 'raw':
            case.raw = rest
        elif word == 'nested':
            case.raw = '[' * int(rest) + ']' * int(rest)
        elif word == 'source':
            case.source = rest
        elif word == 'refuse':
            case.refuse = rest.split()
        elif word in CHECKS:
            case.checks.append((word, rest.split()))
        else:
            raise Mistake(f'unknown word "{word}"')
    if case.source is None:
        raise Mistake('no source')
    if not case.checks and case.refuse is None:
        raise Mistake('nothing is expected')
    return case


def read_table(name, lines, bases):
    """A printed table: one case a cell."""
    base, columns, vary, checks, source, rows = {}, [{}], None, None, None, []
    for _, line in lines:
        word, _, rest = line.partition(' ')
        if word == 'from':
            base = bases[rest]
        elif word == 'facts':
            base = merged(base, json.loads(rest))
        elif word == 'columns':
            columns = json_values(rest)
        elif word == 'vary':
            vary = rest
        elif word in CHECKS:
            checks = [word] + rest.split()
        elif word == 'source':
            source = rest
        elif word in ('row', 'anomaly'):
            value = json_values_then_words(rest)
            rows.append((word, *value))
        else:
            raise Mistake(f'unknown word "{word}"')
    if source is None or vary is None or checks is None or not rows:
        raise Mistake('a table needs source, vary, what is expected, and rows')
    cases = []
    for word, value, cells in rows:
        if word == 'row' and len(cells) != len(columns):
            raise Mistake(f'row {value}: {len(cells)} cells, {len(columns)} columns')
        for number, column in enumerate(columns):
            label = f'{name} {value}' + (f' column {number + 1}' if len(columns) > 1 else '')
            case = Case(label, source, merged(merged(base, column), placed(vary, value)))
            if word == 'row':
                case.checks.append((checks[0], checks[1:] + [cells[number]]))
            else:
                case.checks.append(('anomaly', checks[1:] + cells))
            cases.append(case)
    return cases


def json_values_then_words(text):
    value, end = json.JSONDecoder().raw_decode(text)
    return value, text[end:].split()


CHECKS = ('expect', 'printed', 'date', 'absent', 'worksheet', 'verdict', 'reason', 'says', 'governing',
          'because', 'not-because', 'caution', 'limit', 'governs', 'more-cautions-than')
