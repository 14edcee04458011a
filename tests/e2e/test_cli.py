# SPDX-License-Identifier: MIT
"""The contract of steelyard-cli, from outside; docs/facts.md and docs/records.md state it."""

import hashlib
import json
import pathlib
import re
import stat
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import BLANK, BLANK_RWL, CLI, SOURCE, changed, cli, json_lines


class Folder(unittest.TestCase):
    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)
        self.store = self.folder / "test.steelyard"

    def write(self, facts, name="facts.json"):
        path = self.folder / name
        if isinstance(facts, bytes):
            path.write_bytes(facts)
        else:
            path.write_text(facts if isinstance(facts, str) else json.dumps(facts), encoding="utf-8")
        return path

    def ok(self, *arguments, **more):
        done = cli(*arguments, **more)
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout


class Assess(Folder):
    def assess(self, facts, *options):
        return json.loads(self.ok("assess", *options, self.write(facts)))

    def test_the_blank_needs_mechanical_handling(self):
        found = self.assess(BLANK)
        self.assertEqual(found["verdict"], "mechanical")
        self.assertAlmostEqual(found["quantities"]["RWL"]["value"], BLANK_RWL, delta=1e-9 * BLANK_RWL)
        self.assertAlmostEqual(found["quantities"]["LI"]["value"], 30 / BLANK_RWL, delta=1e-8)
        self.assertEqual(found["quantities"]["RWL"]["unit"], "kg")
        self.assertEqual((found["method"], found["units"]), ("lift", "metric"))
        limits = {reason.get("limit") for reason in found["reasons"]}
        self.assertIn(20, limits, "the reference mass is named as a limit")
        self.assertIn(3, limits, "the index of 3 is named as a limit")
        self.assertTrue(found["remedies"])
        self.assertTrue(found["cautions"])
        for key in ("edition", "program", "policy", "governing"):
            self.assertIn(key, found)

    def test_every_verdict_of_a_lift_can_be_reached(self):
        light = dict(load={"typical": 5, "heaviest": 5}, origin={"H": 30, "V": 75, "A": 0},
                     destination={"H": 30, "V": 90, "A": 0})
        far = dict(light, origin={"H": 60, "V": 30, "A": 30}, load={"typical": 8, "heaviest": 8})
        cases = {
            "by-hand": changed(**light),
            "improve": changed(**far),
            "outside": changed(**light, conditions=["seated-or-kneeling"]),
            "mechanical": BLANK,
        }
        for verdict, facts in cases.items():
            with self.subTest(verdict=verdict):
                self.assertEqual(self.assess(facts)["verdict"], verdict)

    def test_reasons_remedies_and_cautions_are_words(self):
        found = self.assess(BLANK)
        for reason in found["reasons"] + found["remedies"]:
            self.assertTrue(reason["id"])
            self.assertRegex(reason["text"], r"\w+ \w+")
            self.assertNotIn("%", reason["text"].replace(" %", ""))

    def test_a_remedy_tried_gives_what_it_says(self):
        tried = 0
        for remedy in self.assess(changed(load__typical=14, load__heaviest=14))["remedies"]:
            changes, index = remedy["changes"], remedy["LI"]
            facts = changed(load__typical=14, load__heaviest=14)
            for change in changes:
                at = facts
                *parents, last = change["path"].split(".")
                for parent in parents:
                    at = at[parent]
                self.assertEqual(at[last], change["from"])
                at[last] = change["to"]
                if change["path"] == "load.heaviest":
                    facts["load"]["typical"] = min(facts["load"]["typical"], change["to"])
            again = self.assess(facts)
            self.assertAlmostEqual(again["quantities"]["LI"]["value"], index, delta=1e-9 * index,
                                   msg=remedy["text"])
            self.assertEqual(again["verdict"], remedy["verdict"], remedy["text"])
            tried += 1
        self.assertGreater(tried, 2)

    def test_typed_quantities_are_understood(self):
        plain = self.assess(changed(load={"typical": "44 lb", "heaviest": "44 lb"},
                                    origin={"H": "16 in", "V": "12,5 cm", "A": 0}))
        value = plain["quantities"]
        self.assertAlmostEqual(value["origin.HM"]["value"], 25 / 40.64, delta=1e-12)
        self.assertAlmostEqual(value["origin.VM"]["value"], 1 - 0.003 * 62.5, delta=1e-12)
        self.assertAlmostEqual(value["LI"]["value"] * value["RWL"]["value"], 44 * 0.45359237, delta=1e-9)

    def test_an_index_over_a_limit_of_zero_is_unbounded_and_the_limit_is_zero(self):
        found = self.assess(changed(destination__H=70, load={"typical": 2, "heaviest": 2}))
        self.assertEqual(found["quantities"]["RWL"]["value"], 0)
        self.assertIsNone(found["quantities"]["LI"]["value"])
        self.assertEqual(found["quantities"]["LI"]["state"], "unbounded")
        self.assertEqual(found["verdict"], "mechanical")

    def test_not_asked_is_a_caution_when_assessed_and_incomplete_when_recorded(self):
        facts = changed(conditions=None, load={"typical": 5, "heaviest": 5}, origin={"H": 30, "V": 75, "A": 0},
                        destination={"H": 30, "V": 90, "A": 0})
        found = self.assess(facts)
        asked = self.assess({**facts, "conditions": []})
        self.assertEqual(found["verdict"], "by-hand")
        self.assertGreater(len(found["cautions"]), len(asked["cautions"]))
        self.ok("record", "--store", self.store, "--task", "x", "--by", "A. Tester", "--why", "test",
                self.write(facts))
        self.assertEqual(json.loads(self.ok("tasks", "--store", self.store))["verdict"], "incomplete")

    def test_spread_and_worksheet_are_added_on_request(self):
        plain = self.assess(BLANK)
        self.assertNotIn("spread", plain)
        self.assertNotIn("worksheet", plain)
        facts = changed(had={"origin": {"H": {"how": "measured"}}})
        full = self.assess(facts, "--spread", "--worksheet")
        self.assertIn("spread", full)
        self.assertIn("worksheet", full)
        again = self.assess(facts, "--spread", "--worksheet")
        self.assertEqual(full, again)

    def test_two_files_give_two_documents_in_order(self):
        one, two = self.write(BLANK, "1.json"), self.write(changed(load={"typical": 1, "heaviest": 2}), "2.json")
        out = self.ok("assess", one, two)
        decoder, found, at = json.JSONDecoder(), [], 0
        while at < len(out.rstrip()):
            document, at = decoder.raw_decode(out, at)
            found.append(document["quantities"]["LI"]["value"])
            while at < len(out) and out[at].isspace():
                at += 1
        self.assertEqual(len(found), 2)
        self.assertAlmostEqual(found[0], 15 * found[1], delta=1e-8)

    def test_standard_input_is_read(self):
        self.assertEqual(json.loads(self.ok("assess", "-", text=json.dumps(BLANK)))["verdict"], "mechanical")

    def test_the_same_document_gives_the_same_bytes(self):
        path = self.write(BLANK)
        self.assertEqual(self.ok("assess", path), self.ok("assess", path))

    def test_the_locale_changes_nothing(self):
        path = self.write(BLANK)
        plain = self.ok("assess", path)
        # A comma locale where the machine has one; the C library falls back to C otherwise.
        self.assertEqual(self.ok("assess", path, env={"LC_ALL": "de_DE.UTF-8"}), plain)


class Lines(Folder):
    def test_lines_come_back_in_order_and_a_bad_one_does_not_stop_the_rest(self):
        lines = [json.dumps(changed(load={"typical": m, "heaviest": m})) for m in (1, 2, 3)]
        lines.insert(1, json.dumps(changed(colour="red", origin__H=-4)))
        done = cli("assess", "--lines", "-", text="\n".join(lines) + "\n")
        self.assertEqual(done.returncode, 2)
        found = json_lines(done.stdout)
        self.assertEqual(len(found), 4)
        self.assertEqual(found[1]["line"], 2)
        paths = [problem["path"] for problem in found[1]["problems"]]
        self.assertIn("colour", paths[0], "unknown fields come first")
        self.assertTrue(any("origin.H" in path for path in paths))
        for problem in found[1]["problems"]:
            self.assertEqual(set(problem), {"path", "given", "allowed", "unit"})
        indices = [found[i]["quantities"]["LI"]["value"] for i in (0, 2, 3)]
        self.assertAlmostEqual(indices[1], 2 * indices[0], delta=1e-9)
        self.assertAlmostEqual(indices[2], 3 * indices[0], delta=1e-9)

    def test_a_file_of_good_lines_ends_with_0(self):
        path = self.write((json.dumps(BLANK) + "\n") * 50)
        self.assertEqual(len(json_lines(self.ok("assess", "--lines", path))), 50)

    def test_a_last_line_without_newline_counts(self):
        self.assertEqual(len(json_lines(self.ok("assess", "--lines", "-", text=json.dumps(BLANK)))), 1)

    def test_a_line_and_a_document_give_the_same_findings(self):
        line = json.loads(self.ok("assess", "--lines", "-", text=json.dumps(BLANK)))
        whole = json.loads(self.ok("assess", self.write(BLANK)))
        self.assertEqual(line["quantities"], whole["quantities"])
        self.assertEqual(line["verdict"], whole["verdict"])

    def test_a_line_over_one_mebibyte_is_refused_and_the_next_is_read(self):
        long = json.dumps(changed(notes="x" * (1024 * 1024)))
        done = cli("assess", "--lines", "-", text=long + "\n" + json.dumps(BLANK) + "\n")
        self.assertEqual(done.returncode, 2)
        found = json_lines(done.stdout)
        self.assertIn("problems", found[0])
        self.assertEqual(found[1]["verdict"], "mechanical")


PLAIN = json.dumps(BLANK)


def with_text(old, new):
    assert PLAIN.count(old) >= 1, old
    return PLAIN.replace(old, new, 1)


# What must be refused: name → (document, path that the report names or "" for any)
BAD = {
    "wrong unit": (json.dumps(changed(origin__H="55 kg")), "origin.H"),
    "no unit in text": (json.dumps(changed(origin__H="55")), "origin.H"),
    "NaN": (with_text('"H": 55', '"H": NaN'), ""),
    "infinity": (with_text('"H": 55', '"H": Infinity'), ""),
    "too large": (with_text('"H": 55', '"H": 1e400'), ""),
    "duplicate key": (with_text('"frequency": 1', '"frequency": 1, "frequency": 2'), "frequency"),
    "unknown field": (json.dumps(changed(colour="red")), "colour"),
    "unknown field in a group": (json.dumps(changed(origin__X=1)), "origin.X"),
    "truncated": (PLAIN[:-20], ""),
    "one brace short": (PLAIN[:-1], ""),
    "5,000 levels": ("[" * 5000 + "]" * 5000, ""),
    "33 levels": (with_text('"conditions": []', '"conditions": ' + "[" * 32 + "]" * 32), ""),
    "comment": ("/* lift */ " + PLAIN, ""),
    "line comment": (PLAIN + " // lift", ""),
    "octal": (with_text('"H": 55', '"H": 055'), ""),
    "hexadecimal": (with_text('"H": 55', '"H": 0x37'), ""),
    "leading plus": (with_text('"H": 55', '"H": +55'), ""),
    "bare point": (with_text('"H": 55', '"H": 55.'), ""),
    "trailing comma": (PLAIN[:-1] + ",}", ""),
    "single quotes": (PLAIN.replace('"', "'"), ""),
    "two documents": (PLAIN + PLAIN, ""),
    "empty": ("", ""),
    "blank": (" \n\t ", ""),
    "a number": ("55", ""),
    "an array": ("[" + PLAIN + "]", ""),
    "null": ("null", ""),
    "byte order mark": (b"\xef\xbb\xbf" + PLAIN.encode(), ""),
    "not UTF-8": (PLAIN.encode().replace(b"fair", b"f\xff\xfer"), ""),
    "over 16 MiB": (json.dumps(changed(notes="x" * (16 * 1024 * 1024))), ""),
    "NUL in text": (json.dumps(changed(notes="a\0b")), "notes"),
    "comma before three digits": (json.dumps(changed(load__heaviest="1,250 kg")), "load.heaviest"),
    "text for a choice": (json.dumps(changed(coupling="excellent")), "coupling"),
    "number for a choice": (json.dumps(changed(coupling=1)), "coupling"),
    "null for a number": (with_text('"H": 55', '"H": null'), "origin.H"),
    "bool for a number": (with_text('"H": 55', '"H": true'), "origin.H"),
    "list for a group": (json.dumps(changed(origin=[55, 20, 0])), "origin"),
    "unknown condition": (json.dumps(changed(conditions=["bad-luck"])), "conditions"),
    "condition twice": (json.dumps(changed(conditions=["one-hand", "one-hand"])), "conditions"),
    "H of 0": (json.dumps(changed(origin__H=0)), "origin.H"),
    "V below the floor": (json.dumps(changed(origin__V=-1)), "origin.V"),
    "A below 0": (json.dumps(changed(origin__A=-10)), "origin.A"),
    "frequency below 0": (json.dumps(changed(frequency=-1)), "frequency"),
    "mass of 0": (json.dumps(changed(load={"typical": 0, "heaviest": 0})), "load"),
    "heaviest below typical": (json.dumps(changed(load={"typical": 10, "heaviest": 9})), "load"),
    "destination and travel": (json.dumps(changed(travel=90)), "travel"),
    "neither destination nor travel": (json.dumps(changed(destination=None)), "destination"),
    "no units": (json.dumps(changed(units=None)), "units"),
    "other units": (json.dumps(changed(units="imperial")), "units"),
    "no method": (json.dumps(changed(method=None)), "method"),
    "unknown method": (json.dumps(changed(method="levitate")), "method"),
    "lifts in 16 minutes": (json.dumps(changed(frequency=None, lifts=4, in_minutes=16)), "in_minutes"),
    "two durations": (json.dumps(changed(work_minutes=30, recovery_minutes=40)), "duration"),
    "three hands": (json.dumps(changed(hands=3)), "hands"),
    "half a person": (json.dumps(changed(persons=1.5)), "persons"),
    "no such day": (json.dumps(changed(as_of="2026-02-30")), "as_of"),
}


class Refusals(Folder):
    def test_bad_input_is_refused_whole_and_named(self):
        for name, (document, path) in BAD.items():
            with self.subTest(bad=name):
                file = self.write(document)
                done = cli("assess", file)
                self.assertEqual(done.returncode, 2, f"{name}: {done.stdout[:300]}")
                self.assertEqual(done.stdout, "", name)
                self.assertIn(str(file), done.stderr, name)
                if path:
                    self.assertIn(path, done.stderr, name)

    def test_bad_input_is_refused_as_a_line_too(self):
        # A line break inside would make two lines of one document.
        bad = {n: d for n, (d, _) in BAD.items()
               if isinstance(d, str) and "\n" not in d and d.strip() and len(d) < 1024 * 1024}
        done = cli("assess", "--lines", "-", text="".join(d + "\n" for d in bad.values()))
        self.assertEqual(done.returncode, 2)
        found = json_lines(done.stdout)
        self.assertEqual(len(found), len(bad))
        for number, (name, line) in enumerate(zip(bad, found), 1):
            with self.subTest(bad=name):
                self.assertEqual(line["line"], number)
                self.assertTrue(line["problems"])

    def test_every_problem_is_listed_unknown_fields_first(self):
        file = self.write(changed(origin__H="55 kg", coupling="excellent", frequency=-1, zebra=1))
        done = cli("assess", file)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        lines = done.stderr.splitlines()
        at = {word: next((i for i, line in enumerate(lines) if word in line), None)
              for word in ("zebra", "origin.H", "coupling", "frequency")}
        self.assertNotIn(None, at.values(), done.stderr)
        self.assertEqual(min(at.values()), at["zebra"], done.stderr)
        # What was given, what is allowed, in which unit.
        for word in ("55 kg", "cm", "excellent", "good", "poor", "-1"):
            self.assertIn(word, done.stderr)

    def test_the_line_of_a_problem_is_named(self):
        file = self.write(json.dumps(changed(coupling="excellent"), indent=2))
        line = file.read_text().splitlines().index('  "coupling": "excellent",') + 1
        done = cli("assess", file)
        self.assertRegex(done.stderr, rf"\b{line}\b")

    def test_a_good_document_beside_a_bad_one_is_still_assessed(self):
        good, bad = self.write(BLANK, "good.json"), self.write("{", "bad.json")
        done = cli("assess", bad, good)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(json.loads(done.stdout)["verdict"], "mechanical")
        self.assertIn("bad.json", done.stderr)

    def test_a_file_that_is_not_there_is_named(self):
        done = cli("assess", self.folder / "none.json")
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("none.json", done.stderr)

    def test_a_truncated_document_is_refused_at_every_length(self):
        lines = "".join(PLAIN[:n] + "\n" for n in range(1, len(PLAIN)))
        done = cli("assess", "--lines", "-", text=lines)
        found = json_lines(done.stdout)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(len(found), len(PLAIN) - 1)
        self.assertTrue(all("problems" in line for line in found))

    def test_usage_is_told_and_nothing_is_printed(self):
        for arguments in ([], ["frobnicate"], ["assess"], ["record"], ["sheet"], ["assess", "--colour", "-"]):
            with self.subTest(arguments=arguments):
                done = cli(*arguments)
                self.assertNotEqual(done.returncode, 0)
                self.assertEqual(done.stdout, "")
                self.assertTrue(done.stderr.strip())


class Methods(Folder):
    def test_the_list_names_the_lift(self):
        lines = self.ok("methods").splitlines()
        self.assertTrue(any(line.split()[0] == "lift" for line in lines), lines)

    def test_the_fields_of_a_method_have_units_ranges_and_help(self):
        out = self.ok("methods", "lift")
        for word in ("load", "heaviest", "origin", "destination", "travel", "frequency", "work_minutes",
                     "sessions", "coupling", "hands", "persons", "assigned", "conditions", "seated-or-kneeling",
                     "had", "tolerance", "kg", "cm", "lb"):
            self.assertIn(word, out)

    def test_every_field_is_in_the_documents(self):
        page = (SOURCE / "docs" / "facts.md").read_text(encoding="utf-8")
        fields = re.findall(r"(?m)^([a-z][\w.\[\]]*)$", self.ok("methods", "lift").split("\nquantities")[0])
        self.assertGreater(len(fields), 50)
        for field in fields:
            last = field.split(".")[-1].replace("[]", "")
            with self.subTest(field=field):
                self.assertRegex(page, rf"[`.]{last}\b")

    def test_an_unknown_method_is_told(self):
        done = cli("methods", "levitate")
        self.assertEqual((done.returncode, done.stdout), (2, ""))


class Records(Folder):
    def record(self, facts, *more, task="Blank", by="A. Tester", why="because", **env):
        return cli("record", "--store", self.store, "--task", task, "--by", by, "--why", why, *more,
                   self.write(facts), env=env)

    def test_recorded_listed_and_read_back_as_typed(self):
        text = PLAIN.replace('"H": 55', '"H": "55.0 cm"', 1)
        done = self.record(text, STEELYARD_CLOCK="2026-03-04T05:06:07Z")
        self.assertEqual(done.returncode, 0, done.stderr)
        told = json.loads(done.stdout)
        self.assertEqual(set(told) >= {"task", "revision", "head"}, True)
        self.assertEqual(told["revision"], 1)
        self.assertRegex(told["head"], r"^[0-9a-f]{64}$")
        tasks = json_lines(self.ok("tasks", "--store", self.store))
        self.assertEqual([(t["task"], t["verdict"]) for t in tasks], [("Blank", "mechanical")])
        history = json_lines(self.ok("history", "--store", self.store, "Blank"))
        self.assertEqual(len(history), 1)
        self.assertEqual(history[0]["facts"]["origin"]["H"], "55.0 cm")
        self.assertEqual(history[0]["findings"]["verdict"], "mechanical")
        self.assertEqual((history[0]["who"], history[0]["why"]), ("A. Tester", "because"))
        self.assertRegex(history[0]["hash"], r"^[0-9a-f]{64}$")
        self.assertIn("2026-03-04T05:06:07Z", json.dumps(history[0]))

    def test_a_second_revision_follows_and_an_old_base_is_a_clash_that_is_kept(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        self.assertEqual(self.record(changed(origin__H=40)).returncode, 0)
        third = self.record(changed(origin__H=30), "--base", "1")
        self.assertEqual(third.returncode, 0, third.stderr)
        history = json_lines(self.ok("history", "--store", self.store, "Blank"))
        self.assertEqual([line["revision"] for line in history], [1, 2, 3])
        self.assertEqual([line["base"] for line in history], [0, 1, 1])
        self.assertEqual([line["facts"]["origin"]["H"] for line in history], [55, 40, 30])
        self.assertTrue(json.loads(self.ok("tasks", "--store", self.store)).get("clash"))

    def test_a_base_that_is_not_there_is_refused(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        done = self.record(BLANK, "--base", "7")
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual(done.stdout, "")
        self.assertEqual(len(json_lines(self.ok("history", "--store", self.store, "Blank"))), 1)

    def test_bad_facts_are_not_recorded(self):
        done = self.record(changed(colour="red"))
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("colour", done.stderr)
        listed = cli("tasks", "--store", self.store)
        self.assertEqual(listed.stdout, "")

    def test_who_and_why_must_be_said(self):
        for by, why in (("", "because"), ("A. Tester", ""), ("  ", "because")):
            with self.subTest(by=by, why=why):
                done = self.record(BLANK, by=by, why=why)
                self.assertNotEqual(done.returncode, 0)
                self.assertEqual(done.stdout, "")

    def test_search_and_verdict_narrow_the_list(self):
        self.record(BLANK, task="Blank to shear")
        self.record(changed(load={"typical": 1, "heaviest": 1}, place="Packing bay"), task="Carton")

        def names(*options):
            return [t["task"] for t in json_lines(self.ok("tasks", "--store", self.store, *options))]

        self.assertEqual(sorted(names()), ["Blank to shear", "Carton"])
        self.assertEqual(names("--search", "shear"), ["Blank to shear"])
        self.assertEqual(names("--search", "packing"), ["Carton"])
        self.assertEqual(names("--search", "nothing-like-it"), [])
        self.assertEqual(names("--verdict", "mechanical"), ["Blank to shear"])
        self.assertEqual(names("--verdict", "outside"), [])
        self.assertNotEqual(cli("tasks", "--store", self.store, "--verdict", "maybe").returncode, 0)
        self.assertEqual(sorted(names("--kind", "task")), ["Blank to shear", "Carton"])
        self.assertEqual(names("--kind", "die"), [])
        self.assertEqual(cli("tasks", "--store", self.store, "--kind", "fork").returncode, 2)

    def test_the_chain_of_hashes_goes_on(self):
        heads = []
        for reach in (55, 50, 45):
            heads.append(json.loads(self.record(changed(origin__H=reach)).stdout)["head"])
        self.assertEqual(len(set(heads)), 3)
        history = json_lines(self.ok("history", "--store", self.store, "Blank"))
        self.assertEqual([line["hash"] for line in history], heads)

    def test_a_foreign_file_is_refused_untouched(self):
        for content in (b"This is a shopping list.\n" * 100, b"SQLite format 3\0" + bytes(4080)):
            with self.subTest(begins=content[:15]):
                self.store.write_bytes(content)
                done = self.record(BLANK)
                self.assertNotEqual(done.returncode, 0)
                self.assertEqual(done.stdout, "")
                self.assertEqual(self.store.read_bytes(), content)

    def test_another_programs_database_is_refused_untouched(self):
        import sqlite3
        with sqlite3.connect(self.store) as other:
            other.execute("create table shopping (item text)")
        other.close()
        before = hashlib.sha256(self.store.read_bytes()).hexdigest()
        self.assertNotEqual(self.record(BLANK).returncode, 0)
        self.assertEqual(hashlib.sha256(self.store.read_bytes()).hexdigest(), before)

    def test_a_store_is_for_its_owner_alone(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        self.assertEqual(stat.S_IMODE(self.store.stat().st_mode) & 0o077, 0)

    def test_a_bad_clock_is_refused(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        for done in (self.record(BLANK, STEELYARD_CLOCK="yesterday"),
                     cli("tasks", "--store", self.store, env={"STEELYARD_CLOCK": "9999-12-31T23:59:59-01:00"})):
            self.assertEqual(done.returncode, 2)
            self.assertEqual(done.stdout, "")
            self.assertIn("STEELYARD_CLOCK", done.stderr)

    def test_two_programs_recording_at_once_lose_nothing(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        facts = self.write(BLANK, "many.json")
        command = [str(CLI), "record", "--store", str(self.store), "--by", "A. Tester",
                   "--why", "both at once", "--task"]
        running = [subprocess.Popen([*command, f"Task {n}", str(facts)], stdout=subprocess.PIPE,
                                    stderr=subprocess.PIPE) for n in range(6)]
        for one in running:
            _, errors = one.communicate(timeout=120)
            self.assertEqual(one.returncode, 0, errors)
        self.assertEqual(len(json_lines(self.ok("tasks", "--store", self.store))), 7)

    def test_history_of_a_task_that_is_not_there(self):
        self.assertEqual(self.record(BLANK).returncode, 0)
        done = cli("history", "--store", self.store, "Nothing")
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual(done.stdout, "")


# A steel block of 500 × 250 × 100 mm; a shackle that was examined; a load on one leg of each side.
DIE = {
    "method": "die-mass", "units": "metric", "machine": "Press 4", "storage": "Rack C", "allowance_percent": 10,
    "bodies": [{"label": "shoe", "shape": "block", "size": [500, 250, 100], "at": [250, 125, 50], "density": 8000}],
}
SHACKLE = {
    "method": "gear", "units": "metric", "kind": "shackle", "identity": "SH-07", "wll": "2 t", "rated_as": "leg",
    "serves": ["Press 4", "Roll former"], "storage": "Hook 3", "last_examined": "2026-06-01", "due": "2027-03-01",
    "condition": "good",
}


class Kinds(Folder):
    def record(self, facts, task, *more, **env):
        return cli("record", "--store", self.store, "--task", task, "--by", "A. Tester", "--why", "test", *more,
                   self.write(facts), env=env)

    def tasks(self, *options, **env):
        return json_lines(self.ok("tasks", "--store", self.store, *options, env=env))

    def test_a_die_and_a_task_may_share_a_name(self):
        ids = {}
        for kind, facts in (("die", DIE), ("task", BLANK), ("die", DIE), ("task", BLANK)):
            done = self.record(facts, "Upper die")
            self.assertEqual(done.returncode, 0, done.stderr)
            self.assertEqual(ids.setdefault(kind, json.loads(done.stdout)["id"]), json.loads(done.stdout)["id"])
        self.assertNotEqual(ids["die"], ids["task"])
        self.assertEqual({t["kind"]: (t["id"], t["revision"]) for t in self.tasks()},
                         {kind: (name, 2) for kind, name in ids.items()})
        self.assertEqual([t["id"] for t in self.tasks("--kind", "die")], [ids["die"]])
        self.assertEqual(self.tasks("--kind", "gear"), [])
        both = cli("history", "--store", self.store, "Upper die")
        self.assertEqual((both.returncode, both.stdout), (2, ""))
        one = json_lines(self.ok("history", "--store", self.store, "--kind", "die", "Upper die"))
        self.assertEqual([line["method"] for line in one], ["die-mass"] * 2)

    def test_facts_of_another_kind_are_refused(self):
        told = json.loads(self.record(DIE, "Upper die").stdout)
        done = self.record(BLANK, told["id"])
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        for word in ("lift", "a task", "a die", "Upper die"):
            self.assertIn(word, done.stderr)
        self.assertEqual([t["revision"] for t in self.tasks()], [1])

    def test_the_registers_have_their_members(self):
        self.assertEqual(self.record(DIE, "Upper die").returncode, 0)
        self.assertEqual(self.record(SHACKLE, "Bow").returncode, 0)
        die, = self.tasks("--kind", "die")
        # 0.5 × 0.25 × 0.1 m³ × 8000 kg/m³ = 100 kg, and 10 %
        self.assertAlmostEqual(die["mass_with_allowance_kg"], 110, delta=1e-9)
        self.assertAlmostEqual(die["mass_kg"], 110, delta=1e-9)
        self.assertEqual(die["cg_mm"], [250, 125, 50])
        self.assertEqual((die["machine"], die["storage"]), ("Press 4", "Rack C"))
        gear, = self.tasks("--kind", "gear")
        self.assertEqual((gear["gear"], gear["identity"], gear["wll_kg"], gear["due"], gear["withdrawn"]),
                         ("shackle", "SH-07", 2000, "2027-03-01", False))
        self.assertEqual((gear["serves"], gear["storage"]), ("Press 4, Roll former", "Hook 3"))
        for word in ("sh-07", "shackle", "hook 3", "roll former"):
            self.assertEqual([t["task"] for t in self.tasks("--search", word)], ["Bow"], word)

    def test_what_has_run_out_is_said_as_of_today(self):
        self.assertEqual(self.record(SHACKLE, "Bow", STEELYARD_CLOCK="2026-11-25T00:00:00Z").returncode, 0)
        for day, expired in (("2027-02-28", None), ("2027-03-01", None), ("2027-03-02", True)):
            bow, = self.tasks(STEELYARD_CLOCK=day + "T12:00:00Z")
            self.assertEqual((bow["valid_until"], bow.get("expired")), ("2027-03-01", expired), day)


class Attachments(Folder):
    def setUp(self):
        super().setUp()
        self.ok("record", "--store", self.store, "--task", "Blank", "--by", "A. Tester", "--why", "test",
                self.write(BLANK))

    def attach(self, path, *more, item="Blank", by="A. Tester", why="examined", **env):
        return cli("attach", "--store", self.store, "--by", by, "--why", why, *more, item, path, env=env)

    def listed(self, item="Blank"):
        return json_lines(self.ok("attachments", "--store", self.store, item))

    def test_a_file_comes_back_to_the_byte(self):
        content = bytes(range(256)) * 100
        path = self.folder / "Certificate 7.pdf"
        path.write_bytes(content)
        done = self.attach(path, STEELYARD_CLOCK="2026-03-04T05:06:07Z")
        self.assertEqual(done.returncode, 0, done.stderr)
        told, out = json.loads(done.stdout), self.folder / "out.pdf"
        self.assertEqual((told["name"], told["bytes"], told["media"]),
                         ("Certificate 7.pdf", len(content), "application/pdf"))
        self.assertEqual(told["sha256"], hashlib.sha256(content).hexdigest())
        self.assertEqual((told["who"], told["why"], told["when"]), ("A. Tester", "examined", "2026-03-04T05:06:07Z"))
        self.assertEqual(self.listed(), [told])
        self.assertEqual(self.ok("attachment", "--store", self.store, "Blank", "Certificate 7.pdf", "-o", out), "")
        self.assertEqual(out.read_bytes(), content)
        # The task has no new revision.
        self.assertEqual(len(json_lines(self.ok("history", "--store", self.store, "Blank"))), 1)

    def test_a_name_that_is_used_again_gives_the_latest_and_the_line_any(self):
        lines = []
        for text in ("one", "two"):
            told = json.loads(self.attach(self.write(text, "note.txt")).stdout)
            lines.append(told["line"])
        out = self.folder / "out.txt"
        self.ok("attachment", "--store", self.store, "Blank", "note.txt", "-o", out)
        self.assertEqual(out.read_text(), "two")
        self.ok("attachment", "--store", self.store, "--line", lines[0], "Blank", "note.txt", "-o", out)
        self.assertEqual(out.read_text(), "one")

    def test_what_is_no_attachment_is_refused(self):
        path, out = self.write("x", "x.txt"), self.folder / "out.txt"
        for done in (self.attach(path, item="Nothing"), self.attach(self.folder / "none.txt"),
                     self.attach(self.write("", "empty.txt")), self.attach(path, by=" "), self.attach(path, why=""),
                     self.attach(path, "--kind", "fork"), self.attach(path, "--kind", "die"),
                     cli("attach", "--store", self.store, "--by", "A. Tester", "--why", "test", "Blank"),
                     cli("attachment", "--store", self.store, "Blank", "x.txt", "-o", out),
                     cli("attachment", "--store", self.store, "Blank", "x.txt"),
                     cli("attachments", "--store", self.store, "Nothing")):
            self.assertEqual((done.returncode, done.stdout), (2, ""), done.stderr)
            self.assertTrue(done.stderr.strip())
        self.assertFalse(out.exists())
        self.assertEqual(self.listed(), [])

    def test_a_file_over_16_mebibytes_is_refused(self):
        path = self.folder / "long.bin"
        path.write_bytes(bytes(16 * 1024 * 1024 + 1))
        done = self.attach(path)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn(str(16 * 1024 * 1024), done.stderr)

    def test_content_that_was_changed_is_refused(self):
        import sqlite3
        self.assertEqual(self.attach(self.write("abc", "note.txt")).returncode, 0)
        with sqlite3.connect(self.store) as store:
            store.execute("drop trigger journal_keep")
            (event,) = store.execute("select event from journal where kind = 3").fetchone()
            self.assertIn(b'"content":"YWJj"', event)
            store.execute("update journal set event = ? where kind = 3", (event.replace(b"YWJj", b"YWJk"),))
        store.close()
        out = self.folder / "out.txt"
        done = cli("attachment", "--store", self.store, "Blank", "note.txt", "-o", out)
        self.assertEqual((done.returncode, done.stdout), (1, ""))
        self.assertIn("SHA-256", done.stderr)
        self.assertFalse(out.exists())


class Gear(Folder):
    PLAN = {
        "method": "rigged-lift", "units": "metric", "mass": 1000, "mass_basis": "weighed", "cg": [0, 0, -100],
        "points": [{"label": "A", "at": [-500, 0, 0]}, {"label": "B", "at": [500, 0, 0]}],
        "hook": {"above": 1000},
        "legs": [{"point": p, "hitch": "straight", "edge": "none", "material": "chain",
                  "elements": [{"label": f"S-{p}", "kind": "shackle"}]} for p in "AB"],
    }
    DIE = {"method": "die-mass", "units": "metric", "machine": "Press 4", "weighed": 1000,
           "bodies": [{"label": "all", "mass": 1000, "at": [0, 0, 0]}]}

    def record(self, task, **facts):
        gear = {"method": "gear", "units": "metric", "identity": task, "last_examined": "2026-09-01", "due": "2027-03-01"}
        self.ok("record", "--store", self.store, "--task", task, "--by", "A. Tester", "--why", "test",
                self.write(facts if "method" in facts else {**gear, **facts}))

    def test_gear_is_found_for_each_place_of_a_lift(self):
        self.record("strong", kind="shackle", rated_as="leg", wll=2000)
        self.record("weak", kind="shackle", rated_as="leg", wll=300)
        self.record("gone", kind="shackle", rated_as="leg", wll=2000, due="2026-10-01")
        found = json_lines(self.ok("find-gear", "--store", self.store, self.write({**self.PLAN, "as_of": "2026-11-25"})))
        self.assertEqual([(f["leg"], f["kind"], f["name"], f["fits"]) for f in found],
                         [(leg, "shackle", name, name == "strong") for leg in "AB" for name in ("strong", "gone", "weak")])
        # half of it in each leg, by the angle of 500 beside 1000
        self.assertAlmostEqual(found[0]["utilisation"], 500 * 1.25 ** 0.5 / 2000, delta=1e-12)
        self.assertEqual(found[0]["why"], [])
        self.assertTrue(all(f["why"] for f in found if not f["fits"]))
        self.assertTrue(all(f["caution"] for f in found))

    def test_only_a_rigged_lift_has_places(self):
        for facts, word in ((BLANK, "rigged-lift"), ({**self.PLAN, "mass": 0}, "$.mass")):
            done = cli("find-gear", "--store", self.store, self.write(facts))
            self.assertEqual((done.returncode, done.stdout), (2, ""))
            self.assertIn(word, done.stderr)
            self.assertFalse(self.store.exists())

    def test_dies_stand_against_what_lifts(self):
        self.record("Die", **self.DIE)
        self.record("Other", **{**self.DIE, "machine": "Press 5"})
        self.record("H-1", kind="hoist", wll=2000, serves=["Press 4"])
        self.record("H-2", kind="hoist", wll=500, serves=["Press 4"])
        self.record("H-3", kind="hoist", wll=2000)
        day = {"STEELYARD_CLOCK": "2026-11-25T00:00:00Z"}
        cells = json_lines(self.ok("what-lifts", "--store", self.store, "--machine", "Press 4", env=day))
        self.assertEqual([(c["die"], c["gear"], c["verdict"]) for c in cells],
                         [("Die", "H-1", "within-capacity"), ("Die", "H-3", "incomplete"), ("Die", "H-2", "do-not-lift")])
        self.assertEqual([c["serves"] for c in cells], [True, None, True])
        self.assertEqual(len(json_lines(self.ok("what-lifts", "--store", self.store, env=day))), 6)
        day["STEELYARD_CLOCK"] = "2027-03-02T00:00:00Z"
        cells = json_lines(self.ok("what-lifts", "--store", self.store, env=day))
        self.assertEqual({c["verdict"] for c in cells}, {"do-not-lift"})


class OlderStores(Folder):
    def test_a_store_of_format_1_is_brought_up_to_date_beside_a_copy(self):
        old = (SOURCE / "tests" / "core" / "store" / "format-1.store").read_bytes()
        self.store.write_bytes(old)
        tasks = json_lines(self.ok("tasks", "--store", self.store))
        self.assertEqual([t["task"] for t in tasks], ["Nähe Tor", "Blank to shear 2", "Bench", "Rings, cold"])
        self.assertEqual({t["kind"] for t in tasks}, {"task"})
        self.assertEqual([t.get("clash") for t in tasks], [None, 2, None, None])
        history = json_lines(self.ok("history", "--store", self.store, "Blank to shear 2"))
        self.assertEqual(history[-1]["hash"], "388e6a86a990f89b5677d98db23e65d33ecb762d7cea356559bce7784fa59e0e")
        copy = self.store.with_name(self.store.name + ".before-4")
        self.assertEqual(stat.S_IMODE(copy.stat().st_mode), 0o600)


class Sheets(Folder):
    def survey(self, *options, **env):
        out = self.folder / "sheet.pdf"
        self.ok("sheet", "--kind", "survey", *options, "-o", out, env=env)
        return out

    def text(self, pdf):
        return subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True,
                              encoding="utf-8").stdout

    def test_the_measuring_sheet_asks_for_every_fact(self):
        text = self.text(self.survey())
        for word in ("H", "V", "A", "cm", "kg"):
            self.assertRegex(text, rf"\b{word}\b")
        lower = " ".join(text.lower().split())
        for word in ("steelyard", "floor", "competent person", "minute", "grip"):
            self.assertIn(word, lower)

    def test_the_measuring_sheet_in_inches(self):
        text = self.text(self.survey("--units", "us"))
        self.assertRegex(text, r"\blb\b")
        self.assertNotRegex(text, r"\bkg\b")

    def test_the_same_clock_gives_the_same_bytes(self):
        one = self.survey(STEELYARD_CLOCK="2026-03-04T05:06:07Z").read_bytes()
        two = self.survey(STEELYARD_CLOCK="2026-03-04T05:06:07Z").read_bytes()
        self.assertEqual(one, two)

    def test_the_sheet_is_a_tagged_document(self):
        info = subprocess.run(["pdfinfo", self.survey()], check=True, capture_output=True,
                              encoding="utf-8").stdout
        self.assertRegex(info, r"Tagged:\s+yes")
        self.assertRegex(info, r"Title:\s+\S")

    def test_no_display_is_needed(self):
        self.assertTrue(self.survey(DISPLAY="", WAYLAND_DISPLAY="").exists())

    def test_an_unknown_kind_is_refused(self):
        out = self.folder / "none.pdf"
        done = cli("sheet", "--kind", "poster", "-o", out)
        self.assertNotEqual(done.returncode, 0)
        self.assertFalse(out.exists())

    def test_a_folder_that_is_not_there_is_told(self):
        done = cli("sheet", "--kind", "survey", "-o", self.folder / "none" / "sheet.pdf")
        self.assertNotEqual(done.returncode, 0)
        self.assertIn("none", done.stderr)


if __name__ == "__main__":
    sy_cases.main()
