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


if __name__ == "__main__":
    sy_cases.main()
