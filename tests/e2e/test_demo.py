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
from steelyard import CLI, DEMO, SOURCE, cli, copy_demo, json_lines


class Demo(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.store = pathlib.Path(cls.folder.name, "workshop.steelyard")
        copy_demo(cls.store)
        cls.items = json_lines(cli("tasks", "--store", cls.store).stdout)
        cls.tasks = [item for item in cls.items if item["method"] == "lift"]

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def history(self, task):
        return json_lines(cli("history", "--store", self.store, task).stdout)

    def test_every_facts_file_is_used_and_listed_once(self):
        listed = [line.split("\t")[3] for line in (DEMO / "workshop.tsv").read_text().splitlines()
                  if not line.startswith("#")]
        self.assertEqual(sorted(listed),
                         sorted(str(p.relative_to(DEMO)) for p in DEMO.rglob("*.json")))

    def test_every_task_is_there(self):
        self.assertGreaterEqual(len(self.tasks), 14)
        self.assertEqual(len({task["task"] for task in self.tasks}), len(self.tasks))

    def test_every_verdict_of_a_lift_is_reached(self):
        self.assertEqual({task["verdict"] for task in self.tasks},
                         {"by-hand", "improve", "incomplete", "outside", "mechanical"})

    def test_what_was_done_about_items_is_there_and_the_journal_holds(self):
        kinds = [line["event"] for line in json_lines(cli("journal", "--store", self.store).stdout)]
        self.assertLessEqual({"policy", "revision", "signature", "action", "review", "retirement", "told"}, set(kinds))
        actions = json_lines(cli("actions", "--store", self.store).stdout)
        self.assertEqual(len(actions), 6)
        self.assertEqual(sum(action["open"] for action in actions), 3)
        shear = next(item for item in self.items if item["task"] == "Blank to shear 2")
        self.assertEqual(shear["signed"]["revision"], shear["revision"])
        self.assertNotEqual(shear["signed"]["who"], shear["who"])
        self.assertTrue(json.loads(cli("verify", "--store", self.store).stdout)["holds"])
        self.assertEqual(json.loads(cli("rebuild", "--store", self.store).stdout)["different"], 0)

    def of_method(self, method):
        return {item["task"]: item for item in self.items if item["method"] == method}

    def test_dies_gear_and_plans_are_kept_apart(self):
        kinds = {item["method"]: item["kind"] for item in self.items}
        self.assertEqual(kinds, {"lift": "task", "rigged-lift": "task", "truck": "task", "cart": "task",
                                 "lift-set": "task", "team-lift": "task", "carry": "task", "push": "task",
                                 "slide": "task", "die-mass": "die", "gear": "gear", "changeover": "changeover",
                                 "case": "case"})
        self.assertGreaterEqual(len(self.of_method("die-mass")), 5)
        self.assertGreaterEqual(len(self.of_method("gear")), 20)

    def test_one_die_change_hands_must_not_do_and_one_they_need_not(self):
        by_hand, improved = sorted(self.of_method("changeover").items())
        self.assertEqual((by_hand[1]["verdict"], improved[1]["verdict"]), ("mechanical", "by-hand"))
        before, after = (self.history(name)[-1]["findings"]["quantities"] for name, _ in (by_hand, improved))
        self.assertLess(after["stopped.elapsed"]["value"], before["stopped.elapsed"]["value"] * 0.6)
        self.assertNotIn("heaviest_by_hand", after)

    def test_one_case_that_the_assessed_aid_wins(self):
        (name, case), = self.of_method("case").items()
        self.assertEqual(case["verdict"], "by-hand")
        findings = self.history(name)[-1]["findings"]
        self.assertEqual(findings["governing"], "option.Roller carts and jib.npv")
        self.assertLess(abs(findings["quantities"]["option.Roller carts and jib.npv"]["value"] - 26138.88), 0.01)
        self.assertLessEqual({"case-option-refused", "case-option-not-assessed"}, {c["id"] for c in findings["cautions"]})

    def test_a_case_is_found_by_its_options(self):
        (name, _), = self.of_method("case").items()
        found = json_lines(cli("tasks", "--store", self.store, "--search", "manipulator at the press").stdout)
        self.assertEqual([item["task"] for item in found], [name])

    def test_plans_reach_every_verdict_of_a_rigged_lift(self):
        verdicts = {item["verdict"] for item in self.of_method("rigged-lift").values()}
        self.assertEqual(verdicts, {"within-capacity", "improve", "incomplete", "do-not-lift"})

    def test_eyebolts_were_the_weakest_and_hoist_rings_answered_it(self):
        """The die of two shoes, four pillars and a pocket, its centre 80 mm off the middle."""
        die = self.history("Bracket die B-12")[-1]["findings"]["quantities"]
        self.assertAlmostEqual(die["cg.x"]["value"], 80, delta=1)
        first, second = [line["findings"] for line in self.history("Bracket die to rack")]
        self.assertEqual((first["verdict"], first["governing"].split(".")[-1][:2]), ("do-not-lift", "E-"))
        self.assertEqual(second["verdict"], "within-capacity")

    def test_find_gear_offers_hoist_rings_where_eyebolts_are_too_weak(self):
        plan = DEMO / "plans" / "bracket-die-to-rack.1.json"
        found = [line for line in json_lines(cli("find-gear", "--store", self.store, plan).stdout)
                 if line["leg"] == "P1" and line["kind"] == "eyebolt"]
        self.assertEqual({line["name"] for line in found if line["fits"]},
                         {f"Hoist ring R-{i}" for i in range(1, 5)})
        self.assertEqual({line["name"] for line in found if not line["fits"]},
                         {f"Eyebolt E-{i}" for i in range(1, 5)})

    def test_a_plan_ends_with_the_first_examination_that_falls_due(self):
        plan = self.of_method("rigged-lift")["Curling tool to bench"]
        self.assertEqual((plan["verdict"], plan["valid_until"], plan["expired"]),
                         ("within-capacity", "2026-09-29", True))

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
        for item in self.items:
            self.assertRegex(done.stdout, rf"(?m)^{item['task']} +{item['verdict']}")
        self.assertIn("competent person", done.stdout)
        self.assertTrue(list(sheets.glob("*.pdf")))
        for sheet in sheets.glob("*.pdf"):
            self.assertIn(str(sheet), done.stdout)


if __name__ == "__main__":
    sy_cases.main()
