# SPDX-License-Identifier: MIT
"""demo-headless.py STEELYARD-CLI STORE FOLDER

Without a display: a readable line for every task in the store, as last recorded; in the folder the
blank measuring sheets, the cards for the wall, the case on one page, the plan of the change and the
history of a task.
"""

import json
import pathlib
import subprocess
import sys


def run(*command):
    done = subprocess.run(command, capture_output=True, encoding="utf-8")
    if done.returncode != 0:
        sys.stderr.write(done.stderr)
        sys.exit(f"{' '.join(command)}: exit code {done.returncode}")
    return done.stdout


def index_text(found):
    """The figure that decides, as a person reads it; "" where the method has none."""
    symbol = found.get("index")
    index = found["quantities"].get(symbol) if symbol else None
    if index is None:
        mass = found["quantities"].get("mass_with_allowance")
        return f"{mass['value']:.0f} {mass['unit']}" if mass else ""
    if index.get("state") == "unbounded":
        return "no limit holds" if symbol == "LI" else "no capacity"
    return f"{symbol} {index['value']:.2f}" if symbol == "LI" else f"{index['value']:.0%} loaded"


# Kind of sheet, item, paper, name of the file.
SHEETS = (
    ("card", "Flange die change, press 3, with carts and jib", "a5", "card-flange-die-change"),
    ("card", "Bracket die to rack", "a4", "card-bracket-die"),
    ("card", "Blank to shear 2", "a5", "card-blank-to-shear-2"),
    ("changeover", "Flange die change, press 3, with carts and jib", "a4", "plan-flange-die-change"),
    ("case", "An aid for the flange die change, press 3", "a4", "case-flange-die-aid"),
    ("history", "Blank to shear 2", "a4", "history-blank-to-shear-2"),
)


def main():
    cli, store, folder = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    tasks = [json.loads(line) for line in run(cli, "tasks", "--store", store).splitlines()]
    width = max((len(task["task"]) for task in tasks), default=0)
    caution = ""
    for task in tasks:
        history = run(cli, "history", "--store", store, task["id"]).splitlines()
        found = json.loads(history[-1])["findings"]
        why = next((reason["text"] for reason in found["reasons"]), "")
        print(f"{task['task']:{width}}  {found['verdict']:15}  "
              f"{index_text(found):14}  {why}".rstrip())
        caution = next(c["text"] for c in found["cautions"] if c["id"] == "screening")
    print(f"\n{caution}\n")

    folder.mkdir(parents=True, exist_ok=True)
    for units in ("metric", "us"):
        sheet = folder / f"measuring-sheet-{units}.pdf"
        run(cli, "sheet", "--kind", "survey", "--units", units, "-o", str(sheet))
        print(f"Measuring sheet: {sheet}")
    for kind, item, paper, name in SHEETS:
        sheet = folder / f"{name}.pdf"
        run(cli, "sheet", "--kind", kind, "--store", store, "--paper", paper, "-o", str(sheet), item)
        print(f"{name}: {sheet}")
    print(f"The demo workshop: {store}")


if __name__ == "__main__":
    main()
