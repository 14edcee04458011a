#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""make-uk-filter.py [--check]: writes steelyard-uk-filter.json, the default policy with the rows of the guideline filter.

To be run after every change of the default policy; with --check it only says whether that was forgotten (exit 1).
"""

import pathlib
import sys

FOLDER = pathlib.Path(__file__).resolve().parent
HEAD = [('"id": "steelyard-default"', '"id": "steelyard-uk-filter"'),
        ('"title": "Steelyard default: ', '"title": "Steelyard default with the UK guideline filter for lifting: ')]
ROWS = '''  "rows": [
    { "id": "filter-guideline", "method": "lift", "symbol": "filter_ratio", "over": 1.0, "verdict": "improve",
      "source": "UK HSE L23, INDG143: no limit; over it a fuller assessment. Men's figures read in a secondary source, women's from memory, heights of zones assumed",
      "from_memory": true },
'''


def made():
    text = (FOLDER / 'steelyard-default.json').read_text(encoding='utf-8')
    for old, new in HEAD + [('  "rows": [\n', ROWS)]:
        if text.count(old) != 1:
            sys.exit(f'make-uk-filter.py: the default policy has {text.count(old)} of {old!r}')
        text = text.replace(old, new)
    return text


def main():
    to = FOLDER / 'steelyard-uk-filter.json'
    if sys.argv[1:] == ['--check']:
        if to.read_text(encoding='utf-8') != made():
            sys.exit('steelyard-uk-filter.json is not the default policy with the rows of the filter: '
                     'run data/policies/make-uk-filter.py')
        return
    to.write_text(made(), encoding='utf-8')


if __name__ == '__main__':
    main()
