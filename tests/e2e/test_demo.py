# SPDX-License-Identifier: MIT
"""The demo workshop and the two commands of the README."""

import json
import os
import pathlib
import re
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import CLI, DEMO, SOURCE, cli, json_lines


class Demo(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.store = pathlib.Path(cls.folder.name, "workshop.steelyard")
        subprocess.run([DEMO / "build-demo.sh", CLI, cls.store], check=True)
        cls.tasks = json_lines(cli("tasks", "--store", cls.store).stdout)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def history(self, task):
        return json_lines(cli("history", "--store", self.store, task).stdout)

    def test_every_facts_file_is_used_and_listed_once(self):
        listed = [line.split("\t")[3] for line in (DEMO / "workshop.tsv").read_text().splitlines()
                  if not line.startswith("#")]
        self.assertEqual(sorted(listed), sorted(p.name for p in DEMO.glob("*.json")))

    def test_every_task_is_there(self):
        self.assertGreaterEqual(len(self.tasks), 14)
        self.assertEqual(len({task["task"] for task in self.tasks}), len(self.tasks))

    def test_every_verdict_of_a_lift_is_reached(self):
        self.assertEqual({task["verdict"] for task in self.tasks},
                         {"by-hand", "improve", "incomplete", "outside", "mechanical"})

    def test_both_unit_systems_are_there(self):
        self.assertEqual({task["units"] for task in self.tasks}, {"metric", "us"})

    def test_revisions_bring_the_index_down_and_say_why(self):
        improved = 0
        for task in self.tasks:
            history = self.history(task["task"])
            indices = [line["findings"]["quantities"]["LI"]["value"] for line in history]
            if len(history) > 1:
                improved += 1
                self.assertEqual(indices, sorted(indices, reverse=True), task["task"])
            self.assertTrue(all(line["why"] and line["who"] for line in history))
        self.assertGreaterEqual(improved, 5)

    def test_mechanical_by_mass_by_index_and_without_any_limit(self):
        kinds = set()
        for task in self.tasks:
            if task["verdict"] != "mechanical":
                continue
            found = self.history(task["task"])[-1]["findings"]
            index = found["quantities"]["LI"]
            if index.get("state") == "unbounded":
                kinds.add("unbounded")
            elif index["value"] > 3:
                kinds.add("index")
            else:
                kinds.add("mass")
        self.assertEqual(kinds, {"unbounded", "index", "mass"})

    def test_every_fact_says_where_how_and_whether_it_can_be_avoided(self):
        for path in sorted(DEMO.glob("*.json")):
            facts = json.loads(path.read_text(encoding="utf-8"))
            with self.subTest(facts=path.name):
                for key in ("place", "avoid", "lifts_per_day", "had", "measured_by", "measured_on"):
                    self.assertIn(key, facts)
                self.assertTrue(facts["avoid"]["why"])

    def test_a_store_that_is_there_is_not_written_over(self):
        before = self.store.read_bytes()
        done = subprocess.run([DEMO / "build-demo.sh", CLI, self.store], capture_output=True)
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual(self.store.read_bytes(), before)

    def test_the_commands_of_the_readme_do_what_it_says(self):
        readme = (SOURCE / "README.md").read_text(encoding="utf-8")
        block = next(b for b in re.findall(r"```\n(.*?)```", readme, re.S) if "steelyard-cli" in b)
        with tempfile.TemporaryDirectory() as folder:
            done = subprocess.run(["bash", "-eu", "-c", block], cwd=folder, capture_output=True,
                                  env={**os.environ, "PATH": f"{CLI.parent}:{os.environ['PATH']}"},
                                  encoding="utf-8")
            self.assertEqual(done.returncode, 0, done.stderr)
            found, recorded, task, revision = [json.loads(line) for line in done.stdout.splitlines()]
            self.assertTrue(pathlib.Path(folder, "measuring-sheet.pdf").exists())
        self.assertEqual({found["verdict"], recorded["verdict"], task["verdict"],
                          revision["findings"]["verdict"]}, {"mechanical"})
        # The figures that the text names.
        figures = [round(found["quantities"][symbol]["value"], 1) for symbol in ("RWL", "LI")]
        self.assertEqual(figures, [6.3, 4.7])

    def test_without_a_display_a_readable_line_a_task_and_the_sheets(self):
        sheets = pathlib.Path(self.folder.name, "sheets")
        script = SOURCE / "app" / "demo-headless.py"
        done = subprocess.run(["/usr/bin/python3", script, CLI, self.store, sheets],
                              capture_output=True, encoding="utf-8")
        self.assertEqual(done.returncode, 0, done.stderr)
        for task in self.tasks:
            self.assertRegex(done.stdout, rf"(?m)^{task['task']} +{task['verdict']}")
        self.assertIn("competent person", done.stdout)
        self.assertTrue(list(sheets.glob("*.pdf")))
        for sheet in sheets.glob("*.pdf"):
            self.assertIn(str(sheet), done.stdout)


if __name__ == "__main__":
    sy_cases.main()
