# SPDX-License-Identifier: MIT
"""Two assessments beside each other, from outside: of a record, of two documents, on paper."""

import json
import pathlib
import re
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import BLANK, changed, cli

SLOW, FAST = "Blanks to press 4", "Blanks to press 4 (variant)"
# 45 a day, one every eight hours / 45, against 80 an hour through the shift.
DAY = changed(load={"typical": 8, "heaviest": 8}, frequency="45/8h", duration="short")
HOUR = changed(load={"typical": 8, "heaviest": 8}, frequency="80/h", duration="long")
CART = {"method": "cart", "units": "metric", "as_of": "2026-11-25", "gross_mass": 600, "load_mass": 450, "rated_load": 800,
        "wheels": 4, "wheel": "polyurethane", "rolling_coefficient": 0.02, "start_factor": 2, "slope": 0, "track": 800,
        "wheelbase": 800, "cg_height": 700, "push_height": 1000, "brake": "parking", "deceleration": 0.1,
        "due": "2027-05-01", "withdrawn": False}


class Compare(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls._folder = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls._folder.name)
        cls.store = cls.folder / "test.steelyard"
        cls.record(SLOW, DAY, "Measured")
        cls.record(SLOW, {**DAY, "coupling": "good"}, "Handles put on")
        cls.record(FAST, HOUR, "Variant: the machine paces it")
        cls.record("Cart of blanks", CART, "Another way")

    @classmethod
    def tearDownClass(cls):
        cls._folder.cleanup()

    @classmethod
    def file(cls, name, facts):
        path = cls.folder / name
        path.write_text(json.dumps(facts), encoding="utf-8")
        return path

    @classmethod
    def record(cls, task, facts, why):
        done = cli("record", "--store", cls.store, "--task", task, "--by", "Ann Bell", "--why", why,
                   cls.file("facts.json", facts), env={"STEELYARD_CLOCK": "2026-03-02T09:00:00Z"})
        assert done.returncode == 0, done.stderr

    def compare(self, *names, store=True):
        done = cli("compare", *(["--store", self.store] if store else []), *names)
        self.assertEqual(done.returncode, 0, done.stderr)
        return json.loads(done.stdout)

    @staticmethod
    def by_id(rows, key="id"):
        return {row[key]: row for row in rows}

    def test_the_same_part_at_another_pace(self):
        found = self.compare(SLOW, 1, FAST)
        self.assertEqual((found["before"]["task"], found["before"]["revision"]), (SLOW, 1))
        self.assertEqual((found["after"]["task"], found["after"]["revision"]), (FAST, 1))
        self.assertTrue(found["same_method"])
        changes = self.by_id(found["changed"], "path")
        self.assertEqual(set(changes), {"frequency", "duration"})
        self.assertIn("45/8h", changes["frequency"]["old"])
        self.assertIn("80/h", changes["frequency"]["new"])
        bought = self.by_id(found["bought"])
        # the index is that of the two by themselves
        for side, facts in (("before", DAY), ("after", HOUR)):
            alone = json.loads(cli("assess", self.file("alone.json", facts)).stdout)
            self.assertEqual(found[side]["value"], alone["quantities"]["LI"]["value"])
            self.assertEqual(found[side]["verdict"], alone["verdict"])
        self.assertEqual(bought["index"]["turn"], "worse")
        self.assertGreater(bought["index"]["new_value"], bought["index"]["old_value"])
        self.assertEqual(bought["index"]["new_goal"], 1)
        self.assertEqual((bought["mass"]["old_value"], bought["mass"]["turn"]), (8, "same"))
        self.assertIn("not a permission to lift", found["caution"])

    def test_the_newest_revision_where_none_is_said(self):
        found = self.compare(SLOW, FAST)
        self.assertEqual((found["before"]["revision"], found["after"]["revision"]), (2, 1))
        self.assertEqual(self.compare(SLOW, FAST, 1)["before"]["revision"], 2)
        self.assertEqual(self.compare(SLOW, 1, FAST, 1)["before"]["revision"], 1)

    def test_two_revisions_of_one_task(self):
        for names in ((SLOW, 1, 2), (SLOW, 1, SLOW), (SLOW, 1, SLOW, 2)):
            found = self.compare(*names)
            self.assertEqual([row["path"] for row in found["changed"]], ["coupling"])
            self.assertEqual((found["changed"][0]["old"], found["changed"][0]["new"]), ("Fair", "Good"))
            self.assertEqual(self.by_id(found["bought"])["index"]["turn"], "better")
        self.assertEqual(self.compare(SLOW, 2)["changed"], [])

    def test_another_way_of_handling_is_compared_by_what_came_of_it(self):
        found = self.compare(FAST, "Cart of blanks")
        self.assertFalse(found["same_method"])
        self.assertEqual(found["changed"], [])
        self.assertIn("Two ways of handling", found["remarks"][0])
        bought = self.by_id(found["bought"])
        self.assertEqual(bought["mass"]["old"], "8 kg")
        self.assertIsNone(bought["mass"]["new"])
        self.assertIsNone(bought["force-start"]["old"])

    def test_two_documents_without_a_store(self):
        inches = changed(units="us", load={"typical": "30 kg", "heaviest": "30 kg"}, origin={"H": 16, "V": "20 cm", "A": 0},
                         destination={"H": "55 cm", "V": "110 cm", "A": 0})
        found = self.compare(self.file("a.json", BLANK), self.file("b.json", inches), store=False)
        self.assertNotIn("revision", found["before"])
        changes = self.by_id(found["changed"], "path")
        self.assertEqual(set(changes), {"units", "origin.H"})
        self.assertEqual(changes["origin.H"]["new"], "16 in = 40.64 cm")
        self.assertAlmostEqual(changes["origin.H"]["new_value"], 40.64, 12)
        self.assertEqual(found["units"], "metric")
        self.assertTrue(any("converted exactly" in each for each in found["remarks"]))
        mass = self.by_id(found["bought"])["mass"]
        self.assertAlmostEqual(mass["new_value"], 30, 9)

    def test_limits_are_told_with_whether_they_hold(self):
        found = self.compare(SLOW, 1, FAST)
        self.assertTrue(found["limits"])
        for row in found["limits"]:
            for side in ("old", "new"):
                if row[side] is not None and row[side]["ratio"] is not None:
                    self.assertEqual(row[side]["held"], row[side]["ratio"] <= row[side]["goal"], row)

    def test_what_makes_no_sense_is_refused(self):
        bad = self.file("bad.json", {**BLANK, "colour": "red"})
        good = self.file("good.json", BLANK)
        for arguments, word in (((), "two facts documents"), ((good,), "two facts documents"),
                                ((good, bad), "colour"), ((good, self.folder / "none.json"), "none.json"),
                                ((good, good, good), "two facts documents"),
                                (("--store", self.store, SLOW), "two tasks"),
                                (("--store", self.store, SLOW, "No such"), "No such"),
                                (("--store", self.store, SLOW, "9", FAST), "from 1 to 2"),
                                (("--store", self.store, SLOW, "0", FAST), "REV"),
                                (("--store", self.store, SLOW, FAST, "x"), "REV"),
                                (("--store", self.store, "--kind", "hat", SLOW, FAST), "hat")):
            done = cli("compare", *arguments)
            self.assertEqual((done.returncode, done.stdout), (2, ""), (arguments, done.stderr))
            self.assertIn(word, done.stderr)
        absent = self.folder / "absent"
        self.assertEqual(cli("compare", "--store", absent, SLOW, FAST).returncode, 1)
        self.assertFalse(absent.exists())

    def sheet(self, *arguments):
        out = self.folder / "comparison.pdf"
        done = cli("sheet", "--kind", "comparison", "-o", out, *arguments, env={"STEELYARD_CLOCK": "2026-06-02T09:00:00Z"})
        self.assertEqual(done.returncode, 0, done.stderr)
        text = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, check=True, encoding="utf-8").stdout
        return text.count("\f"), " ".join(text.split())

    def test_the_comparison_is_printed_on_one_page(self):
        for paper in ("a4", "letter"):
            pages, words = self.sheet("--store", self.store, "--paper", paper, SLOW, "1", FAST)
            self.assertEqual(pages, 1)
            for wanted in (SLOW + ", revision 1", "What changed", "What it bought", "Limits", "45/8h", "80/h", "worse",
                           "Ann Bell", "steelyard-default", "not a permission to lift", "Page 1 of 1"):
                self.assertIn(wanted, words)
            head = json.loads(cli("verify", "--store", self.store).stdout)["head"]
            self.assertIn(head, re.sub(r"\s", "", words))
        pages, words = self.sheet(self.file("a.json", DAY), self.file("b.json", HOUR))
        self.assertEqual(pages, 1)
        self.assertNotIn("Head of the journal", words)

    # The improvement log stands in a record of its own, made of the same revisions.

    def with_log(self, name):
        """A copy of the record, and what runs a command about it."""
        store = self.folder / name
        store.write_bytes(self.store.read_bytes())
        for end in ("-wal", "-shm"):
            beside = self.store.with_name(self.store.name + end)
            if beside.exists():
                store.with_name(store.name + end).write_bytes(beside.read_bytes())

        def run(*arguments):
            return cli(arguments[0], "--store", store, *arguments[1:], env={"STEELYARD_CLOCK": "2026-06-02T09:00:00Z"})
        return store, run

    ADD = ("--by", "Ann Bell", "--what", "Handles on every blank", "--idea-by", "Cal Drew", "--from-revision", "1")

    def test_an_improvement_is_logged_and_told_with_what_it_bought(self):
        _, run = self.with_log("log")
        done = run("improvement", *self.ADD, "--on", "2026-03-31", SLOW, "add")
        self.assertEqual(done.returncode, 0, done.stderr)
        name = json.loads(done.stdout)["improvement"]
        row, = [json.loads(line) for line in run("improvements").stdout.splitlines()]
        self.assertEqual((row["improvement"], row["idea_by"], row["put_to_work"]), (name, "Cal Drew", "2026-03-31"))
        self.assertEqual((row["from"]["revision"], row["to"]["revision"]), (1, 2))
        before, after = (json.loads(cli("assess", self.file("alone.json", facts)).stdout)["quantities"]["LI"]["value"]
                         for facts in (DAY, {**DAY, "coupling": "good"}))
        self.assertAlmostEqual(row["gains"]["index"], before - after, places=12)
        self.assertEqual(row["gains"]["mass"], 0)
        quarter, total = [json.loads(line) for line in run("improvements", "--totals").stdout.splitlines()]
        self.assertEqual((quarter["quarter"], quarter["improvements"], total["improvements"]), ("2026 Q1", 1, 1))
        self.assertNotIn("quarter", total)
        self.assertEqual(json.loads(run("history", "--all", SLOW).stdout.splitlines()[-1])["event"], "improvement")
        self.assertTrue(json.loads(run("verify").stdout)["holds"])
        done = run("improvement", "--by", "Ann Bell", "--why", "They broke", SLOW, "withdraw", name)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertEqual(run("improvements").stdout, "")
        self.assertIn('"withdrawn":{"who":"Ann Bell"', run("improvements", "--withdrawn").stdout)
        self.assertEqual(json.loads(run("improvements", "--totals").stdout), {"improvements": 0, "reached": 0, "gains": {}})

    def test_what_is_no_improvement_is_refused(self):
        _, run = self.with_log("no-log")
        add = ("improvement", *self.ADD)
        for arguments, word in (((*add, SLOW), "add [REV], withdraw ID"), ((*add, "--on", "2026-06-03", SLOW, "add"), "still to come"),
                                ((*add, "--on", "soon", SLOW, "add"), "--on"), ((*add, SLOW, "add", "1"), "no revision before 1"),
                                ((*add, "--from", "Nothing", SLOW, "add"), "Nothing"),
                                (("improvement", "--by", "A", "--what", "x", SLOW, "add"), "--idea-by"),
                                ((*add, SLOW, "withdraw", "0123456789abcdef"), "--what: not for this step"),
                                (("improvement", "--by", "A", "--why", "x", SLOW, "withdraw", "0123456789abcdef"), "0123456789abcdef"),
                                (("improvements", "--totals", "--withdrawn"), "does not count")):
            done = run(*arguments)
            self.assertEqual((done.returncode, done.stdout), (2, ""), (arguments, done.stderr))
            self.assertIn(word, done.stderr)
        self.assertEqual(run("improvements").stdout, "")

    def test_the_log_is_printed(self):
        store, run = self.with_log("printed-log")
        out = self.folder / "log.pdf"

        def text(*options):
            done = run("sheet", "--kind", "improvements", "-o", out, *options)
            self.assertEqual(done.returncode, 0, done.stderr)
            return " ".join(subprocess.run(["pdftotext", "-raw", out, "-"], capture_output=True, check=True,
                                           encoding="utf-8").stdout.split())
        self.assertIn("No improvement is in the log.", text())
        done = run("improvement", *self.ADD, SLOW, "add")
        run("improvement", "--by", "Ann Bell", "--why", "They broke", SLOW, "withdraw", json.loads(done.stdout)["improvement"])
        run("improvement", *self.ADD, SLOW, "add")
        run("improvement", "--by", "Ann Bell", "--what", "A cart", "--idea-by", "Cal Drew", "--on", "2022-02-01", "--from", SLOW,
            "Cart of blanks", "add")
        for options in ((), ("--paper", "letter", "--units", "us")):
            words = text(*options)
            for wanted in ("Improvement log", "Improvements put to work: 2;", "Index lower by, mean", "Handles on every blank",
                           "Earlier quarters are in the table only.", "2022 Q1 1 ", "2022 Q2 0 0 – – – – –", "2026 Q2 1 ",
                           "Together 2 ", f"Thought of by Cal Drew. From {SLOW}, revision 1, to {SLOW}, revision 2.",
                           "Entered by Ann Bell on 2026-06-02", "Withdrawn by Ann Bell on 2026-06-02: They broke",
                           "a sum of indices says nothing", "promises fewer injuries", "not a permission to lift", "Page 1 of"):
                self.assertIn(wanted, words)
            self.assertIn(json.loads(cli("verify", "--store", store).stdout)["head"], re.sub(r"\s", "", words))
        first = out.read_bytes()
        text("--paper", "letter", "--units", "us")
        self.assertEqual(out.read_bytes(), first)
        self.assertIn("Tagged:          yes", subprocess.run(["pdfinfo", out], capture_output=True, encoding="utf-8").stdout)
        for options, word in ((("--paper", "a5"), "a4, letter"), (("--units", "stone"), "metric, us"), ((SLOW,), "unexpected"),
                              (("--region", "uk"), "--region")):
            done = run("sheet", "--kind", "improvements", "-o", out, *options)
            self.assertEqual((done.returncode, done.stdout), (2, ""), (options, done.stderr))
            self.assertIn(word, done.stderr)
        self.assertEqual(out.read_bytes(), first)


if __name__ == "__main__":
    sy_cases.main()
