# SPDX-License-Identifier: MIT
"""bench_first_frame.py CLI STEELYARD BARE PRELOAD: first frame of the window on 1,000 tasks against a bare GTK
window, in turns under one virtual display, drawn by cairo. Time from just before main to the end of the first
painted frame; median of the runs."""

import json
import os
import pathlib
import random
import statistics
import subprocess
import sys
import tempfile

TASKS = 1000
RUNS = 15


def make_store(cli, folder):
    """Tasks of an invented shop, recorded one by one as a user would."""
    store, facts, r = folder / 'bench.steelyard', folder / 'facts.json', random.Random(3)
    for number in range(TASKS):
        mass = round(r.uniform(3, 30), 1)
        facts.write_text(json.dumps({
            'method': 'lift', 'units': 'metric', 'place': f'bay {number % 12 + 1}',
            'load': {'typical': mass, 'heaviest': mass},
            'origin': {'H': round(r.uniform(25, 60)), 'V': round(r.uniform(0, 120)), 'A': 0},
            'travel': round(r.uniform(0, 90)), 'frequency': round(r.uniform(0, 4), 1), 'duration': 'moderate',
            'coupling': 'fair', 'assigned': 'mixed-adults', 'conditions': [], 'lifts_per_day': r.randint(1, 500)}))
        subprocess.run([cli, 'record', '--store', store, '--task', f'Blank {number:04}, press to pallet', '--by', 'Bench',
                        '--why', 'bench', facts], check=True, stdout=subprocess.DEVNULL)
    return store


def first_frame(command, env):
    done = subprocess.run(command, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60, check=False)
    for line in done.stdout.decode().splitlines():
        if line.startswith('first-frame '):
            return float(line.split()[1])
    raise SystemExit(f'{command[0]}: no frame (exit {done.returncode}): {done.stderr.decode()[:2000]}')


def measure(cli, steelyard, bare, preload):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        store = make_store(cli, folder)
        env = {**os.environ, 'GSK_RENDERER': 'cairo', 'GTK_A11Y': 'none', 'LD_PRELOAD': preload,
               'GSETTINGS_BACKEND': 'memory', 'XDG_CONFIG_HOME': name, 'XDG_DATA_HOME': name,
               'XDG_CACHE_HOME': name, 'XDG_STATE_HOME': name}
        commands = {'bare': [bare], 'steelyard': [steelyard, '--store', str(store)]}
        for command in commands.values():
            first_frame(command, env)  # warms the caches; not counted
        times = {which: [] for which in commands}
        for _ in range(RUNS):
            for which, command in commands.items():
                times[which].append(first_frame(command, env))
    print(f'first frame: {TASKS} tasks, {RUNS} runs each in turns')
    middle = {which: statistics.median(values) for which, values in times.items()}
    for which, values in times.items():
        print(f'  {which:<10} {min(values):7.1f} / {middle[which]:7.1f} / {max(values):7.1f} ms  (min / median / max)')
    print(f'  ratio      {middle["steelyard"] / middle["bare"]:7.2f}    (reach: at most 2.2)')


if __name__ == '__main__':
    if 'BENCH_INSIDE' in os.environ:
        measure(*sys.argv[1:])
    else:
        sys.exit(subprocess.run(
            ['xvfb-run', '-a', '-s', '-screen 0 1280x800x24', sys.executable, *sys.argv],
            env={**os.environ, 'BENCH_INSIDE': '1'}, check=False).returncode)
