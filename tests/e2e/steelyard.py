# SPDX-License-Identifier: MIT
"""What the drives share: where the programs are, a call of the command line, one task."""

import fcntl
import json
import os
import pathlib
import shutil
import subprocess

BUILD = pathlib.Path(os.environ["SY_BUILD_DIR"])
SOURCE = pathlib.Path(os.environ["SY_SOURCE_DIR"])
CLI = BUILD / "app" / "cli" / "steelyard-cli"
WINDOW = BUILD / "app" / "desktop" / "steelyard"
DEMO = SOURCE / "data" / "demo"

# A 30 kg blank from 20 cm to 110 cm at a reach of 55 cm, once a minute for two hours. By calculator:
# 23 × 25/55 × (1 - 0.003 × 55) × (0.82 + 4.5/90) × 1 × 0.88 × 0.95 = 6.3489… at the origin.
BLANK = {
    "method": "lift", "units": "metric",
    "load": {"typical": 30, "heaviest": 30},
    "origin": {"H": 55, "V": 20, "A": 0}, "destination": {"H": 55, "V": 110, "A": 0},
    "frequency": 1, "duration": "moderate", "coupling": "fair", "conditions": [],
    "assigned": "mixed-adults",
}
BLANK_RWL = 23 * (25 / 55) * (1 - 0.003 * 55) * (0.82 + 4.5 / 90) * 0.88 * 0.95


def cli(*arguments, text=None, env=None):
    """One call; text may be str or bytes. Answers a CompletedProcess with text in it."""
    if isinstance(text, str):
        text = text.encode("utf-8")
    done = subprocess.run([str(CLI), *map(str, arguments)], input=text, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, env={**os.environ, **(env or {})}, timeout=120)
    done.stdout = done.stdout.decode("utf-8")
    done.stderr = done.stderr.decode("utf-8", "replace")
    return done


def copy_demo(to):
    """The store of the demo workshop, made once for this program and these data, whoever needs it first."""
    newest = max(path.stat().st_mtime_ns for path in (CLI, *DEMO.rglob("*")))
    made = BUILD / "tests" / f"demo-{newest}.steelyard"
    with open(BUILD / "tests" / "demo.lock", "w", encoding="utf-8") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not made.exists():
            for old in made.parent.glob("demo-*.steelyard*"):
                old.unlink()
            subprocess.run([DEMO / "build-demo.sh", CLI, made], check=True)
    shutil.copy2(made, to)


def json_lines(text):
    return [json.loads(line) for line in text.splitlines()]


def changed(**members):
    """The blank with members replaced; a dotted path is written with "__"; None takes a member away."""
    facts = json.loads(json.dumps(BLANK))
    for path, value in members.items():
        *parents, last = path.split("__")
        at = facts
        for parent in parents:
            at = at.setdefault(parent, {})
        if value is None:
            at.pop(last, None)
        else:
            at[last] = value
    return facts
