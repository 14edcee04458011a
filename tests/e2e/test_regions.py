# SPDX-License-Identifier: MIT
"""Regions, from outside: what results and sheets defer to, and that without a region nothing is different."""

import json
import os
import pathlib
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import DEMO, cli, json_lines

CLOCK = {"STEELYARD_CLOCK": "2026-11-26T09:00:00Z"}
CHANGE = DEMO / "changeovers" / "flange-die-by-hand.1.json"
LIFT = DEMO / "blank-to-shear-2.1.json"
HANDLING = "Manual Handling Operations Regulations 1992 (SI 1992/2793)"


def one_of_each_method():
    found = {}
    for path in sorted(DEMO.rglob("*.json")):
        found.setdefault(json.loads(path.read_text(encoding="utf-8"))["method"], path)
    return found.values()


def dense(text):
    return "".join(text.split())


class Case(unittest.TestCase):
    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)

    def ok(self, *arguments, **env):
        done = cli(*arguments, env={**CLOCK, **env})
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout

    def refused(self, *arguments, names):
        done = cli(*arguments, env=CLOCK)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn(names, done.stderr)

    def sheet(self, kind, *arguments):
        # Leaks of sheets are looked for where they are all tried: that takes longer than the sheet.
        asan = ":".join((os.environ.get("ASAN_OPTIONS", ""), "detect_leaks=0")).lstrip(":")
        out = self.folder / "sheet.pdf"
        self.ok("sheet", "--kind", kind, "-o", out, *arguments, ASAN_OPTIONS=asan)
        return subprocess.run(["pdftotext", "-raw", "-enc", "UTF-8", out, "-"], capture_output=True, check=True,
                              encoding="utf-8").stdout


class Regions(Case):
    def test_they_are_listed_and_told(self):
        listed = json_lines(self.ok("regions"))
        self.assertEqual([region["id"] for region in listed], ["au", "ca", "eu", "other", "uk", "us"])
        for region in listed:
            rows = json_lines(self.ok("regions", region["id"]))
            self.assertEqual([sum(row["row"] == kind for row in rows) for kind in ("defers_to", "interval")],
                             [region["defers_to"], region["intervals"]])
            for row in rows:
                self.assertTrue(row["title"] and row["source"] and row["section"])
                self.assertIn(row["from_memory"], (True, False))
        self.refused("regions", "mars", names="mars")

    def test_a_result_in_a_region_is_the_result_and_what_it_defers_to(self):
        lines = self.folder / "lines.jsonl"
        lines.write_text("".join(json.dumps(json.loads(path.read_text(encoding="utf-8"))) + "\n"
                                 for path in one_of_each_method()), encoding="utf-8")
        both = [json_lines(self.ok("assess", "--lines", *where, lines)) for where in ((), ("--region", "uk"))]
        self.assertGreater(len(both[0]), 10)
        for plain, found in zip(*both, strict=True):
            method = plain["method"]
            with self.subTest(method):
                self.assertNotIn("defers_to", plain)
                self.assertEqual(found["policy"]["id"], plain["policy"]["id"] + "-uk")
                defers, caution = found.pop("defers_to"), found["cautions"].pop(1)
                self.assertEqual(caution["id"], "defers-to")
                self.assertTrue(defers)
                for row in defers:
                    self.assertIn(row["title"], caution["text"])
                    self.assertIn(row["section"] + (" (from memory)" if row.get("from_memory") else ""), caution["text"])
                self.assertEqual({row["title"] for row in defers} & {HANDLING} != set(),
                                 method in ("lift", "lift-set", "team-lift", "carry", "push", "slide", "changeover"))
                found["policy"] = plain["policy"]
                for result in (plain, found):
                    for reason in result["reasons"]:
                        reason.pop("source", None)  # of two regulations that say the same the region's is named
                self.assertEqual(found, plain)

    def test_a_region_without_titles_says_so(self):
        found = json.loads(self.ok("assess", "--region", "other", LIFT))
        self.assertEqual(found["defers_to"], [])
        self.assertEqual(found["cautions"][1]["text"], "Defers to: local regulations and a competent person.")

    def test_refusals(self):
        self.refused("assess", "--region", "mars", LIFT, names="allowed: au, ca, eu, other, uk, us")
        self.refused("assess", "--region", "", LIFT, names="allowed: au")
        whole = self.folder / "whole.json"
        whole.write_text(self.ok("policy", "--region", "uk"), encoding="utf-8")
        self.refused("assess", "--policy", whole, "--region", "us", LIFT, names="uk")
        self.refused("sheet", "--kind", "survey", "--region", "uk", "-o", self.folder / "x.pdf", names="--region")

    def test_the_policy_is_printed_whole_and_used_as_printed(self):
        built_in = self.ok("policy")
        self.assertEqual(json.loads(built_in)["id"], "steelyard-default")
        whole = self.folder / "whole.json"
        whole.write_text(self.ok("policy", "--region", "uk"), encoding="utf-8")
        self.assertEqual(self.ok("policy", "--policy", whole), whole.read_text(encoding="utf-8"))
        self.assertEqual(self.ok("assess", "--policy", whole, CHANGE), self.ok("assess", "--region", "uk", CHANGE))
        site = json.loads(whole.read_text(encoding="utf-8"))
        site.update(id="works-3", rules=[{"title": "Works order 12", "about": "no lift over 15 kg", "methods": ["lift"]}])
        whole.write_text(json.dumps(site), encoding="utf-8")
        found = json.loads(self.ok("assess", "--policy", whole, LIFT))
        self.assertEqual(found["defers_to"][-1], {"title": "Works order 12", "section": "", "about": "no lift over 15 kg"})
        self.assertIn("Works order 12; local regulations", found["cautions"][1]["text"])


class Sheets(Case):
    def test_the_foot_of_every_page_names_the_titles(self):
        titles = json.loads(self.ok("assess", "--region", "uk", CHANGE))["cautions"][1]["text"]
        for kind in ("assessment", "card", "changeover"):
            with self.subTest(kind):
                pages = self.sheet(kind, "--region", "uk", CHANGE).split("\f")[:-1]
                self.assertTrue(pages)
                for page in pages:
                    self.assertIn(dense(titles), dense(page))
        self.assertNotIn("Defers to", self.sheet("card", CHANGE))

    def test_a_record_keeps_what_each_revision_deferred_to(self):
        store = self.folder / "shop.steelyard"
        for name, region, path in (("Change", "uk", CHANGE), ("Change", "us", CHANGE), ("Lift", None, LIFT)):
            self.ok("record", "--store", store, "--task", name, "--by", "Ann Bell", "--why", "first",
                    *(("--region", region) if region else ()), path)
        uk, us = json_lines(self.ok("history", "--store", store, "Change"))
        self.assertEqual((uk["policy"], us["policy"]), ("steelyard-default-uk 3", "steelyard-default-us 3"))
        self.assertIn(HANDLING, [row["title"] for row in uk["findings"]["defers_to"]])
        self.assertNotIn(HANDLING, [row["title"] for row in us["findings"]["defers_to"]])
        adopted = [line for line in json_lines(self.ok("journal", "--store", store)) if line["kind"] == "policy"]
        self.assertEqual(len(adopted), 3)
        # The policy of today has no region: what was stored counts.
        old, new, lift = (self.sheet("card", "--store", store, *which) for which in (("Change", "1"), ("Change", "2"), ("Lift",)))
        self.assertIn(dense(HANDLING), dense(old))
        self.assertNotIn(dense(HANDLING), dense(new))
        self.assertIn("29CFR1910.217", dense(new))
        self.assertNotIn("Defers to", lift)
        # The register as it is in force; a history and a comparison name those of all that they show.
        register, history = self.sheet("register", "--store", store), self.sheet("history", "--store", store, "Change")
        both = self.sheet("comparison", "--store", store, "Change", "1", "2")
        self.assertIn("29CFR1910.217", dense(register))
        self.assertNotIn(dense(HANDLING), dense(register))
        for text in (history, both):
            self.assertIn(dense(HANDLING), dense(text))
            self.assertIn("29CFR1910.217", dense(text))
        self.ok("verify", "--store", store)

    def test_gear_falls_due_no_later(self):
        facts = {"method": "gear", "units": "metric", "kind": "sling", "identity": "S-1",
                 "last_examined": "2026-11-01", "due": "2027-04-20"}
        path, policy = self.folder / "sling.json", self.folder / "policy.json"
        path.write_text(json.dumps(facts), encoding="utf-8")
        whole = json.loads(self.ok("policy", "--region", "uk"))
        for months, late in ((3, True), (60, False)):
            whole["region"]["intervals"][0]["months"] = months
            policy.write_text(json.dumps(whole), encoding="utf-8")
            found = json.loads(self.ok("assess", "--policy", policy, path))
            reasons = {reason["id"]: reason for reason in found["reasons"]}
            self.assertEqual("gear-due-late" in reasons, late, reasons)
            if late:
                self.assertIn("Lifting Operations and Lifting Equipment Regulations 1998", reasons["gear-due-late"]["source"])


if __name__ == "__main__":
    sy_cases.main()
