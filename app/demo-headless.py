# SPDX-License-Identifier: MIT
"""demo-headless.py STEELYARD-CLI STORE FOLDER

Without a display: assesses the latest facts of every task in the store, prints a readable line a
task, writes the blank measuring sheets into the folder and says where they are.
"""

import json
import pathlib
import subprocess
import sys


def run(*command, text=None):
    done = subprocess.run(command, input=text, capture_output=True, encoding="utf-8")
    if done.returncode != 0:
        sys.stderr.write(done.stderr)
        sys.exit(f"{' '.join(command)}: exit code {done.returncode}")
    return done.stdout


def main():
    cli, store, folder = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    tasks = [json.loads(line) for line in run(cli, "tasks", "--store", store).splitlines()]
    latest = []
    for task in tasks:
        history = run(cli, "history", "--store", store, task["task"]).splitlines()
        latest.append(json.loads(history[-1])["facts"])
    lines = "".join(json.dumps(facts, ensure_ascii=False) + "\n" for facts in latest)
    assessed = run(cli, "assess", "--lines", "-", text=lines).splitlines()

    width = max((len(task["name"]) for task in tasks), default=0)
    cautions = set()
    for task, line in zip(tasks, assessed):
        found = json.loads(line)
        index = found["quantities"].get("LI", {})
        if index.get("value") is not None:
            shown = f"LI {index['value']:.2f}"
        else:
            shown = "no limit holds" if index.get("state") == "unbounded" else "no index"
        why = next((reason["text"] for reason in found["reasons"]), "")
        print(f"{task['name']:{width}}  {found['verdict']:<10}  {shown:<14}  {why}")
        cautions.update(text if isinstance(text, str) else text["text"]
                        for text in found["cautions"][:1])
    for caution in sorted(cautions):
        print(f"\n{caution}")

    folder.mkdir(parents=True, exist_ok=True)
    print()
    for units in ("metric", "us"):
        sheet = folder / f"measuring-sheet-{units}.pdf"
        run(cli, "sheet", "--kind", "survey", "--units", units, "-o", str(sheet))
        print(f"Measuring sheet: {sheet}")
    print(f"The demo workshop: {store}")
    print("Sheets, records and results are screening aids: they defer to local regulations and to a "
          "competent person.")


if __name__ == "__main__":
    main()
