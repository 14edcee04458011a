# SPDX-License-Identifier: MIT
"""bench_first_frame.py MAKE-LARGE-STORE STEELYARD BARE PRELOAD: first frame of the window on 1,000 tasks against a bare
GTK window, and on 100,000 tasks with 300,000 revisions against an empty record, in turns under one virtual display,
drawn by cairo. Time from just before main to the end of the first painted frame; median of the runs."""

import os
import pathlib
import statistics
import subprocess
import sys
import tempfile

# Tasks and revisions; the window draws before it has read them all.
SHOP = (1000, 1000)
LARGE = (100000, 300000)
RUNS = 15


def make_store(make, folder, name, size):
    store = folder / name
    subprocess.run([make, store, *map(str, size)], check=True, stdout=subprocess.DEVNULL)
    return store


def first_frame(command, env):
    done = subprocess.run(command, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60, check=False)
    for line in done.stdout.decode().splitlines():
        if line.startswith('first-frame '):
            return float(line.split()[1])
    raise SystemExit(f'{command[0]}: no frame (exit {done.returncode}): {done.stderr.decode()[:2000]}')


def measure(make, steelyard, bare, preload):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        shop = make_store(make, folder, 'shop.steelyard', SHOP)
        large = make_store(make, folder, 'large.steelyard', LARGE)
        env = {**os.environ, 'GSK_RENDERER': 'cairo', 'GTK_A11Y': 'none', 'LD_PRELOAD': preload,
               'GSETTINGS_BACKEND': 'memory', 'XDG_CONFIG_HOME': name, 'XDG_DATA_HOME': name,
               'XDG_CACHE_HOME': name, 'XDG_STATE_HOME': name}
        commands = {'bare': [bare], 'shop': [steelyard, '--store', str(shop)],
                    'empty': [steelyard, '--store', str(folder / 'empty.steelyard')],
                    'large': [steelyard, '--store', str(large)]}
        for command in commands.values():
            first_frame(command, env)  # warms the caches; not counted
        times = {which: [] for which in commands}
        for _ in range(RUNS):
            for which, command in commands.items():
                times[which].append(first_frame(command, env))
    print(f'first frame: {SHOP[0]} tasks in the shop, {LARGE[0]} in the large record, {RUNS} runs each in turns')
    middle = {which: statistics.median(values) for which, values in times.items()}
    for which, values in times.items():
        print(f'  {which:<10} {min(values):7.1f} / {middle[which]:7.1f} / {max(values):7.1f} ms  (min / median / max)')
    print(f'  shop to bare   {middle["shop"] / middle["bare"]:7.2f}    (reach: at most 2.2)')
    print(f'  large to empty {middle["large"] / middle["empty"]:7.2f}    (reach: at most 1.5)')


if __name__ == '__main__':
    if 'BENCH_INSIDE' in os.environ:
        measure(*sys.argv[1:])
    else:
        sys.exit(subprocess.run(
            ['xvfb-run', '-a', '-s', '-screen 0 1280x800x24', sys.executable, *sys.argv],
            env={**os.environ, 'BENCH_INSIDE': '1'}, check=False).returncode)
