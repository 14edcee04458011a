# SPDX-License-Identifier: MIT
"""A die change as a kind of item: recorded, listed, searched, counted and carried over like a task."""

import json
import pathlib
import re
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import BLANK, DEMO, cli, json_lines

BY_HAND = json.loads((DEMO / "changeovers" / "flange-die-by-hand.1.json").read_text())
WITH_CART = json.loads((DEMO / "changeovers" / "flange-die-with-cart-and-jib.1.json").read_text())
CLOCK = {"STEELYARD_CLOCK": "2026-11-20T09:00:00Z"}


class Changeover(unittest.TestCase):
    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)
        self.store = self.folder / "test.steelyard"

    def ok(self, *arguments, clock=CLOCK):
        done = cli(*arguments, env=clock)
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout

    def write(self, facts):
        path = self.folder / "facts.json"
        path.write_text(json.dumps(facts))
        return path

    def record(self, facts, name, store=None):
        return json.loads(self.ok("record", "--store", store or self.store, "--task", name, "--by", "Ann Bell", "--why", "test",
                                  self.write(facts)))

    def tasks(self, *options):
        return json_lines(self.ok("tasks", "--store", self.store, *options))

    def both(self):
        self.record(BY_HAND, "Flange die")
        self.record(WITH_CART, "Flange die, improved")

    def test_the_list_tells_what_a_changeover_comes_to(self):
        self.both()
        hand, cart = self.tasks("--kind", "changeover")
        self.assertEqual((hand["kind"], hand["method"], hand["verdict"], hand["machine"]),
                         ("changeover", "changeover", "mechanical", "Press 3"))
        self.assertEqual((hand["index"], hand["mass_kg"], hand["persons"]), ("worst.index", 24, 2))
        self.assertGreater(hand["worst.index"]["value"], 3)
        self.assertEqual((cart["verdict"], cart["index"]), ("by-hand", ""))
        self.assertIsNone(cart["mass_kg"])

    def test_a_changeover_expires_with_the_first_of_its_gear(self):
        self.record(WITH_CART, "Flange die")
        row, = self.tasks()
        self.assertEqual((row["valid_until"], row.get("expired")), ("2027-04-12", None))
        row, = json_lines(self.ok("tasks", "--store", self.store, clock={"STEELYARD_CLOCK": "2027-04-13T09:00:00Z"}))
        self.assertTrue(row["expired"])

    def test_a_changeover_and_a_task_may_share_a_name(self):
        self.record(BY_HAND, "Flange die")
        self.record(BLANK, "Flange die")
        self.assertEqual([t["method"] for t in self.tasks("--kind", "task")], ["lift"])
        self.assertEqual([t["method"] for t in self.tasks("--kind", "changeover")], ["changeover"])
        self.assertEqual(self.tasks("--kind", "case"), [])
        both = cli("history", "--store", self.store, "Flange die")
        self.assertEqual((both.returncode, both.stdout), (2, ""))
        line, = json_lines(self.ok("history", "--store", self.store, "--kind", "changeover", "Flange die"))
        self.assertEqual(line["method"], "changeover")

    def test_facts_of_another_kind_are_refused(self):
        told = self.record(BY_HAND, "Flange die")
        done = cli("record", "--store", self.store, "--task", told["id"], "--by", "Ann Bell", "--why", "test",
                   self.write(BLANK), env=CLOCK)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        for word in ("lift", "a task", "a changeover"):
            self.assertIn(word, done.stderr)

    def test_search_and_machine_find_it(self):
        self.both()
        for word in ("press 3", "dessa hollin", "flange die f-7", "upper shelf"):
            self.assertIn("Flange die", [t["task"] for t in self.tasks("--search", word)], word)
        self.assertEqual([t["task"] for t in self.tasks("--search", "upper shelf")], ["Flange die"])
        self.assertEqual(len(self.tasks("--machine", "Press 3")), 2)
        self.assertEqual(self.tasks("--machine", "Press 9"), [])

    def test_the_record_holds_it_for_ever(self):
        self.both()
        first = {key: value for key, value in BY_HAND["steps"][0].items() if key != "by"}
        self.record(dict(BY_HAND, people=3, steps=[first]), "Flange die")
        self.ok("verify", "--store", self.store)
        self.ok("rebuild", "--store", self.store)
        difference = json.loads(self.ok("diff", "--store", self.store, "Flange die", "1", "2"))
        self.assertIn("people", json.dumps(difference))
        bundle = self.folder / "bundle.json"
        bundle.write_text(self.ok("export", "--store", self.store))
        other = self.folder / "other.steelyard"
        self.ok("import", "--store", other, bundle)
        self.assertEqual([t["kind"] for t in json_lines(self.ok("tasks", "--store", other))], ["changeover"] * 2)
        self.ok("verify", "--store", other)

    def test_it_is_a_row_of_the_table_of_items(self):
        self.both()
        self.record(BLANK, "Blank")
        table = self.ok("export", "--store", self.store, "--csv", "--kind", "changeover")
        self.assertEqual(table.count("\nchangeover,") + table.startswith("changeover,"), 2)

    def test_it_can_be_signed_and_have_actions(self):
        self.both()
        who = ("--by", "Bo Clay")
        self.ok("sign", "--store", self.store, "--kind", "changeover", *who, "--role", "foreman", "Flange die", "1")
        self.ok("action", "--store", self.store, *who, "Flange die", "open", "--what", "Buy a second cart")
        row = next(t for t in self.tasks() if t["task"] == "Flange die")
        self.assertIn("Bo Clay", json.dumps(row))

    def test_the_register_counts_it_as_an_assessed_item(self):
        self.both()
        self.record(BLANK, "Blank")
        out = self.folder / "register.pdf"
        self.ok("sheet", "--kind", "register", "--store", self.store, "-o", out)
        words = subprocess.run(["pdftotext", "-layout", str(out), "-"], stdout=subprocess.PIPE, check=True).stdout.decode()
        words = re.sub(r"\s+", " ", words)
        self.assertIn("Die changes in force", words)
        self.assertLess(words.index("Tasks in force"), words.index("Die changes in force"))
        self.assertIn("Flange die, improved", words)


if __name__ == "__main__":
    sy_cases.main()
