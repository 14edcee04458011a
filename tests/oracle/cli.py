# SPDX-License-Identifier: MIT
"""How the tests ask steelyard-cli: one process for many documents, answers in the same order."""

import json
import os
import subprocess
import tempfile

INFINITY = float('inf')


class Refused(Exception):
    """A document that should have been assessed was not."""


def run_lines(cli, lines, *options):
    """Raw JSON lines in; the answers as parsed objects and the exit code out."""
    text = ''.join(line + '\n' for line in lines)
    done = subprocess.run([cli, 'assess', '--lines', *options, '-'], input=text.encode(),
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if done.returncode not in (0, 2):
        raise Refused(f'exit {done.returncode}: {done.stderr.decode()[:2000]}')
    answers = [json.loads(line) for line in done.stdout.decode().splitlines()]
    if len(answers) != len(lines):
        raise Refused(f'{len(lines)} lines in, {len(answers)} out: {done.stderr.decode()[:2000]}')
    return answers, done.returncode


def assess_all(cli, documents, *options):
    """Findings of documents that must all be assessed."""
    answers, code = run_lines(cli, [json.dumps(d) for d in documents], *options)
    for document, answer in zip(documents, answers):
        if 'problems' in answer:
            raise Refused(f'{json.dumps(document)}: {json.dumps(answer["problems"])}')
    if code != 0:
        raise Refused(f'exit {code} without a problem')
    return answers


def assess_files(cli, documents, *options):
    """The same through `assess FILE...`: what one document gets, remedies included."""
    with tempfile.TemporaryDirectory() as folder:
        paths = []
        for number, document in enumerate(documents):
            paths.append(os.path.join(folder, f'{number}.json'))
            with open(paths[-1], 'w', encoding='utf-8') as file:
                json.dump(document, file)
        done = subprocess.run([cli, 'assess', *options, *paths], stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, check=False)
    if done.returncode != 0:
        raise Refused(f'exit {done.returncode}: {done.stderr.decode()[:2000]}')
    decoder, text, out, at = json.JSONDecoder(), done.stdout.decode().rstrip(), [], 0
    while at < len(text):
        found, at = decoder.raw_decode(text, at)
        out.append(found)
        while at < len(text) and text[at].isspace():
            at += 1
    if len(out) != len(documents):
        raise Refused(f'{len(documents)} files in, {len(out)} documents out')
    return out


def run_one(cli, text, *options):
    """One document through `assess -`: exit code, standard output, standard error."""
    done = subprocess.run([cli, 'assess', *options, '-'], input=text.encode(),
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def value(findings, symbol):
    """A quantity's value; unbounded is infinity."""
    return number(findings['quantities'][symbol])


def number(item):
    if item.get('state') == 'unbounded':
        if item['value'] is not None:
            raise Refused(f'unbounded with a value: {item}')
        return INFINITY
    return item['value']


def put(facts, path, new):
    """A copy of the facts with one dotted path replaced."""
    copy = json.loads(json.dumps(facts))
    *parents, last = path.split('.')
    at = copy
    for parent in parents:
        at = at.setdefault(parent, {})
    at[last] = new
    return copy


def same(a, b, relative=1e-9):
    if a == b:
        return True
    if a is None or b is None or INFINITY in (a, b):
        return False
    return abs(a - b) <= relative * max(abs(a), abs(b))
