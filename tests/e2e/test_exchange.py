# SPDX-License-Identifier: MIT
"""From record to record and to a spreadsheet and back, from outside; docs/records.md states it. What a bundle holds is
checked here by a second implementation, from that page alone."""

import csv
import hashlib
import io
import json
import os
import pathlib
import signal
import stat
import struct
import subprocess
import tempfile
import time
import unittest

import sy_cases
from steelyard import BLANK, CLI, DEMO, changed, cli, json_lines

KINDS = ("policy", "revision", "attachment", "signature", "action", "review", "retirement", "told", "import")
FIELDS = ["item", "item_kind", "name", "by", "role", "why", "claimed", "written", "clock_set", "program", "method",
          "edition", "policy", "revision", "base", "facts", "findings"]


def canonical(event):
    """The bytes of an event, from docs/records.md."""
    out = struct.pack(">Q", 2 if "origin" in event else 1)
    values = [KINDS.index(event["kind"]) + 1] + [event[name] for name in FIELDS]
    if "origin" in event:
        values.append(event["origin"])
    for value in values:
        if isinstance(value, bool):
            content = bytes([value])
        elif isinstance(value, int):
            content = struct.pack(">q", value)
        else:
            content = value.encode("utf-8")
        out += struct.pack(">Q", len(content)) + content
    return out


def check(bundle):
    """Raises where the bundle does not hold."""
    previous = bytes(32)
    for number, line in enumerate(bundle["lines"], 1):
        assert line["line"] == number
        if "event" in line:
            assert hashlib.sha256(canonical(line["event"])).hexdigest() == line["event_hash"], number
        previous = hashlib.sha256(b"steelyard journal line 1" + previous + struct.pack(">Q", number)
                                  + bytes.fromhex(line["event_hash"])).digest()
        assert previous.hex() == line["hash"], number
    assert bundle["head"] == {"line": len(bundle["lines"]), "hash": previous.hex()}


class Folder(unittest.TestCase):
    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)
        self.here, self.there = self.folder / "here.store", self.folder / "there.store"
        self.clock = 0

    def env(self):
        self.clock += 1
        return {"STEELYARD_CLOCK": f"2026-03-04T05:{self.clock // 60:02}:{self.clock % 60:02}Z"}

    def ok(self, *arguments, **more):
        done = cli(*arguments, env=self.env(), **more)
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout

    def record(self, store, task, facts=BLANK, why="measured"):
        return json.loads(self.ok("record", "--store", store, "--task", task, "--by", "Zoë Quill", "--why", why, "-",
                                  text=json.dumps(facts)))

    def export(self, store, *tasks):
        return self.ok("export", "--store", store, *tasks)

    def take_over(self, to, bundle, *options):
        return json.loads(self.ok("import", "--store", to, *options, "-", text=bundle))

    def history(self, store, task):
        return json_lines(self.ok("history", "--store", store, task))


class Bundles(Folder):
    def test_a_bundle_can_be_checked_from_the_documentation(self):
        self.record(self.there, "Ring “A”")
        self.record(self.there, "Ring “A”", changed(origin__H="16 in"))
        bundle = json.loads(self.export(self.there))
        check(bundle)
        self.assertEqual([line["event"]["kind"] for line in bundle["lines"]], ["policy", "revision", "revision"])
        self.assertEqual(json.loads(bundle["lines"][2]["event"]["facts"])["origin"]["H"], "16 in")

    def test_the_file_is_its_owners_alone_and_replaced_whole(self):
        self.record(self.there, "Ring")
        out = self.folder / "out.json"
        out.write_text("something else")
        os.chmod(out, 0o644)
        self.assertEqual(self.ok("export", "--store", self.there, "-o", out), "")
        self.assertEqual(stat.S_IMODE(out.stat().st_mode), 0o600)
        check(json.loads(out.read_text(encoding="utf-8")))
        self.assertEqual(sorted(p.name for p in self.folder.iterdir() if p.suffix == ".json"), ["out.json"])
        done = cli("export", "--store", self.there, "-o", self.folder / "no" / "out.json")
        self.assertEqual(done.returncode, 1)

    def test_there_and_back(self):
        self.record(self.there, "Ring")
        first = self.take_over(self.here, self.export(self.there), "--by", "I. Tannick", "--why", "hall 2")
        self.assertEqual((first["added"], first["known"], first["conflicts"]), (2, 0, []))
        again = self.take_over(self.here, self.export(self.there))
        self.assertEqual((again["added"], again["known"], again["head"]), (0, 2, first["head"]))

        # Both go on from the same revision: both are kept, and the item says so.
        self.record(self.here, "Ring", why="here")
        self.record(self.there, "Ring", why="there")
        taken = self.take_over(self.here, self.export(self.there))
        self.assertEqual(taken["added"], 1)
        self.assertEqual(len(taken["conflicts"]), 1)
        self.assertIn("revision 2 of the bundle is revision 3 here", taken["conflicts"][0])
        self.assertEqual([(one["why"], one["base"]) for one in self.history(self.here, "Ring")],
                         [("measured", 0), ("here", 1), ("there", 1)])
        item, = json_lines(self.ok("tasks", "--store", self.here))
        self.assertEqual(item["clash"], 2)

        # Back, and back again: nothing is left to take over, and both hold.
        self.assertEqual(self.take_over(self.there, self.export(self.here))["added"], 1)
        self.assertEqual(self.take_over(self.here, self.export(self.there))["added"], 0)
        self.assertEqual(self.take_over(self.there, self.export(self.here))["added"], 0)
        for store in self.here, self.there:
            check(json.loads(self.export(store)))
            self.assertTrue(json.loads(self.ok("verify", "--store", store))["holds"])
            self.assertEqual(json.loads(self.ok("rebuild", "--store", store))["different"], 0)

    def test_chosen_items_give_away_nothing_else(self):
        self.record(self.there, "Secret ring", changed(place="Hall 9"))
        self.record(self.there, "Open ring")
        text = self.export(self.there, "Open ring")
        check(json.loads(text))
        self.assertNotIn("Secret", text)
        self.assertNotIn("Hall 9", text)
        taken = self.take_over(self.here, text)
        self.assertEqual((taken["added"], taken["hashes_only"]), (2, 1))
        self.assertEqual([item["task"] for item in json_lines(self.ok("tasks", "--store", self.here))], ["Open ring"])
        self.assertEqual(cli("export", "--store", self.there, "No ring").returncode, 2)

    def test_what_does_not_hold_leaves_no_trace(self):
        self.record(self.there, "Ring")
        text = self.export(self.there)
        for wrong in (text.replace("Zoë Quill", "Zoé Quill", 1), text[:-40], "{}", "", "task,units\n", "\xff\xfe"):
            done = cli("import", "--store", self.here, "-", text=wrong)
            self.assertEqual((done.returncode, done.stdout), (2, ""), done.stderr)
            self.assertIn("Nothing was taken over", done.stderr)
            self.assertFalse(self.here.exists())
        self.assertEqual(cli("import", "--store", self.here, self.folder / "none.json").returncode, 2)
        self.assertFalse(self.here.exists())
        done = cli("import", "--store", self.here, "-", text=text.replace("Zoë Quill", "Zoé Quill", 1))
        self.assertIn("at line 1: “event_hash”: expected", done.stderr)

    def test_a_dry_run_writes_nothing(self):
        self.record(self.there, "Ring")
        text = self.export(self.there)
        self.assertEqual(self.take_over(self.here, text, "--dry-run")["added"], 2)
        self.assertFalse(self.here.exists())
        self.record(self.here, "Other")
        before = self.export(self.here)
        self.assertEqual(self.take_over(self.here, text, "--dry-run")["added"], 2)
        self.assertEqual(json.loads(self.export(self.here))["head"], json.loads(before)["head"])

    def test_there_must_be_a_record_to_hand_over(self):
        done = cli("export", "--store", self.here)
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual(done.stdout, "")
        self.assertFalse(self.here.exists())

    def test_a_break_leaves_the_store_as_it_was(self):
        """Ctrl+C at any moment: all of it is there, or nothing."""
        rows = "".join(f"Lift {i},metric,8,9,40,60,0,20,1,short,good,none\n" for i in range(100))
        table = self.folder / "lifts.csv"
        table.write_text("task,units,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,frequency,duration,"
                         "coupling,conditions\n" + rows)
        self.ok("import-lifts", "--store", self.there, "--by", "A", "--why", "B", table)
        bundle = self.folder / "bundle.json"
        self.ok("export", "--store", self.there, "-o", bundle)
        self.record(self.here, "Other")
        empty = len(json_lines(self.ok("tasks", "--store", self.here)))
        for wait in (0.0, 0.01, 0.02, 0.04, 0.08):
            program = subprocess.Popen([CLI, "import", "--store", self.here, bundle], stdout=subprocess.DEVNULL,
                                       stderr=subprocess.DEVNULL)
            time.sleep(wait)
            program.send_signal(signal.SIGINT)
            program.wait(timeout=60)
            self.assertIn(len(json_lines(self.ok("tasks", "--store", self.here))), (empty, empty + 100))
            self.assertTrue(json.loads(self.ok("verify", "--store", self.here))["holds"])


HEADER = ("task,place,units,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,frequency,duration,coupling,"
          "conditions\n")
GOOD = "Ring,Hall 2,metric,8,9,40,60,0,20,1,short,good,none\n"


class Tables(Folder):
    def lifts(self, text, *options):
        return cli("import-lifts", "--store", self.here, "--by", "I. Tannick", "--why", "round", *options, "-",
                   text=text, env=self.env())

    def test_the_demo_table(self):
        done = cli("import-lifts", "--store", self.here, "--by", "I. Tannick", "--why", "round", "--dry-run",
                   DEMO / "lifts.csv")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertFalse(self.here.exists())
        dry = json.loads(done.stdout)
        done = cli("import-lifts", "--store", self.here, "--by", "I. Tannick", "--why", "round", DEMO / "lifts.csv")
        self.assertEqual(done.returncode, 0, done.stderr)
        real = json.loads(done.stdout)
        self.assertEqual((dry["rows"], dry["begun"], dry["added"]), (12, 12, 0))
        self.assertEqual((real["rows"], real["begun"], real["added"]), (12, 12, 12))
        self.assertEqual(dry["verdicts"], real["verdicts"])
        self.assertEqual(set(real["verdicts"]), {"by-hand", "improve", "incomplete", "outside", "mechanical"})
        # What the command line says of one row is what it says of the same facts as a document.
        one = self.history(self.here, "Wire coils to spooler")[0]
        judged = json.loads(self.ok("assess", "-", text=json.dumps(one["facts"])))
        self.assertEqual(judged["verdict"], one["findings"]["verdict"])
        self.assertEqual(judged["quantities"]["LI"], one["findings"]["quantities"]["LI"])
        self.assertTrue(json.loads(self.ok("verify", "--store", self.here))["holds"])

    def test_every_bad_cell_is_a_line_and_nothing_is_written(self):
        done = self.lifts(HEADER + GOOD
                          + "Bar,,metric,8,7,-40,far,0,20,1,brief,good,cold\n"
                          + "Box,,metric,8\n"
                          + "Cup,,stone,\"1,250\",9,40,60,0,20,1,short,good,none\n")
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertFalse(self.here.exists())
        for text in ("-:3: origin.H: given -40; allowed: a number over 0, or text with a unit (cm, mm, m, in, ft); unit: cm", "-:3: origin.V: given far;",
                     "-:3: duration: given brief; allowed: one of: short, moderate, long", "-:3: conditions: given cold;",
                     "-:4: given 4 cells; allowed: 13 cells, as in the first line", "-:5: units: given stone;"):
            self.assertIn(text, done.stderr)

    def test_a_name_that_is_there_is_revised(self):
        self.assertEqual(self.lifts(HEADER + GOOD).returncode, 0)
        again = json.loads(self.lifts(HEADER + GOOD.replace(",9,", ",\"9,5\",") + GOOD.replace("Ring", "Bar")).stdout)
        self.assertEqual((again["begun"], again["revised"], again["added"]), (1, 1, 2))
        first, second = self.history(self.here, "Ring")
        self.assertEqual((second["base"], second["facts"]["load"]["heaviest"]), (1, 9.5))
        self.assertEqual((second["who"], second["why"]), ("I. Tannick", "round"))

    def test_who_and_why_are_needed(self):
        done = cli("import-lifts", "--store", self.here, "--by", "I. Tannick", DEMO / "lifts.csv")
        self.assertEqual(done.returncode, 2)
        self.assertIn("--why", done.stderr)

    def test_items_as_a_table(self):
        self.record(self.here, "=cmd|' /C x'!A1", changed(place="+49, hall \"2\""))
        self.record(self.here, "Ring")
        for env in ({}, {"LC_ALL": "de_DE.UTF-8"}):
            done = cli("export", "--store", self.here, "--csv", env=env)
            self.assertEqual(done.returncode, 0, done.stderr)
        raw = subprocess.run([CLI, "export", "--store", self.here, "--csv"], stdout=subprocess.PIPE, check=True).stdout
        self.assertTrue(raw.startswith(b"\xef\xbb\xbfkind,name,"))
        self.assertEqual(raw.count(b"\r\n"), 3)
        rows = list(csv.DictReader(io.StringIO(raw.decode("utf-8-sig"), newline="")))
        by_name = {row["name"]: row for row in rows}
        self.assertEqual(set(by_name), {"'=cmd|' /C x'!A1", "Ring"})
        self.assertEqual(by_name["'=cmd|' /C x'!A1"]["place"], "'+49, hall \"2\"")
        ring = by_name["Ring"]
        self.assertEqual((ring["verdict"], ring["verdict in words"]), ("mechanical", "Mechanical handling required"))
        item, = [one for one in json_lines(self.ok("tasks", "--store", self.here)) if one["task"] == "Ring"]
        self.assertEqual(float(ring["value"]), item["LI"]["value"])
        self.assertEqual(float(ring["rank"]), item["rank"]["value"])
        self.assertEqual((ring["who"], ring["why"], ring["revision"]), ("Zoë Quill", "measured", "1"))
        self.assertIn("20 kg", ring["reasons"])
        self.assertTrue(ring["caution"])
        self.assertEqual(self.ok("export", "--store", self.here, "--csv", "--kind", "die").count("\n"), 1)


if __name__ == "__main__":
    sy_cases.main()
