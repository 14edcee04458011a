# SPDX-License-Identifier: MIT
"""The record from outside: what is done about an item, what differs, whether anything was altered."""

import contextlib
import json
import pathlib
import sqlite3
import tempfile
import unittest

import sy_cases
from steelyard import BLANK, changed, cli, json_lines

# Days in the order of the story.
MARCH, APRIL, MAY, JUNE = ("2026-03-02T08:00:00Z", "2026-04-01T08:00:00Z", "2026-05-04T08:00:00Z", "2026-06-01T08:00:00Z")
TASK = "Blank to shear 2"


class Folder(unittest.TestCase):
    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)
        self.store = self.folder / "test.steelyard"

    def run_cli(self, command, *arguments, clock=None):
        env = {"STEELYARD_CLOCK": clock} if clock else {}
        return cli(command, "--store", self.store, *arguments, env=env)

    def ok(self, command, *arguments, clock=None):
        done = self.run_cli(command, *arguments, clock=clock)
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout

    def ok_json(self, command, *arguments, clock=None):
        return json.loads(self.ok(command, *arguments, clock=clock))

    def refused(self, word, command, *arguments, clock=JUNE, code=2):
        done = self.run_cli(command, *arguments, clock=clock)
        self.assertEqual((done.returncode, done.stdout), (code, ""), done.stderr)
        self.assertIn(word, done.stderr)

    def record(self, facts, why, clock, by="I. Tannick", task=TASK):
        path = self.folder / "facts.json"
        path.write_text(json.dumps(facts), encoding="utf-8")
        return self.ok_json("record", "--task", task, "--by", by, "--role", "safety lead", "--why", why, path, clock=clock)

    def task(self, clock=JUNE):
        return self.ok_json("tasks", clock=clock)

    @contextlib.contextmanager
    def behind_its_back(self):
        """The store as another program opens it, without what stops accidents."""
        store = sqlite3.connect(self.store)
        try:
            names = [name for (name,) in store.execute("select name from sqlite_master where type = 'trigger'")]
            for name in names:
                store.execute(f'drop trigger "{name}"')
            yield store
            store.commit()
        finally:
            store.close()


class Story(Folder):
    """Three revisions with reasons, signed off, acted on, compared, reviewed, told, retired."""

    def setUp(self):
        super().setUp()
        self.record(BLANK, "First measurement", MARCH)
        self.record(changed(load={"typical": 14, "heaviest": 14}), "Blanks are cut smaller", APRIL)
        self.head = self.record(changed(load={"typical": 14, "heaviest": 14}, origin__H="30 cm", place="Shear 2"),
                                "A table at the shear", MAY)["head"]

    def test_a_revision_is_signed_off_by_somebody_else(self):
        told = self.ok_json("sign", "--by", "M. Foreman", "--role", "foreman", "--competence", "rigger's card", TASK, 3,
                            clock=JUNE)
        self.assertEqual((told["task"], told["revision"]), (TASK, 3))
        self.assertRegex(told["head"], "^[0-9a-f]{64}$")
        signed = self.task()["signed"]
        self.assertEqual(signed, {"revision": 3, "who": "M. Foreman", "role": "foreman", "when": JUNE, "own": False})

    def test_that_somebody_signs_off_what_is_their_own_is_said(self):
        self.ok("sign", "--by", " i. TANNICK", "--role", "foreman", TASK, 2, clock=JUNE)
        self.assertEqual(self.task()["signed"]["own"], True)

    def test_an_action_is_opened_assigned_and_closed(self):
        before = self.task()
        self.assertNotIn("open_actions", before)
        opened = self.ok_json("action", "--by", "M. Foreman", "--what", "Fit a stop", "--about", "index-goal", "--due",
                              "2026-06-30", "--why", "It slides", TASK, "open", clock=JUNE)
        self.assertEqual(set(opened), {"task", "action", "head"})
        action = opened["action"]
        self.ok("action", "--by", "M. Foreman", "--to", "N. Vance", TASK, "assign", action, clock=JUNE)
        (listed,) = json_lines(self.ok("actions", "--open", clock=JUNE))
        self.assertEqual((listed["action"], listed["what"], listed["about"], listed["assigned"], listed["due"]),
                         (action, "Fit a stop", "index-goal", "N. Vance", "2026-06-30"))
        self.assertTrue(listed["open"])
        self.assertNotIn("overdue", listed)
        found = self.task()
        self.assertEqual((found["open_actions"], found["action_due"]), (1, "2026-06-30"))
        later = "2026-07-01T08:00:00Z"
        self.assertEqual(self.ok("actions", "--overdue", clock=JUNE), "")
        (late,) = json_lines(self.ok("actions", "--overdue", TASK, clock=later))
        self.assertTrue(late["overdue"])
        self.assertEqual(self.ok("actions", "--assigned", "M. Foreman", clock=later), "")
        self.ok("action", "--by", "N. Vance", "--evidence", "Photograph 12", TASK, "close", action, clock=later)
        self.assertEqual(self.ok("actions", "--open", clock=later), "")
        (closed,) = json_lines(self.ok("actions", "--assigned", "N. Vance", clock=later))
        self.assertEqual(closed["closed"], {"who": "N. Vance", "when": later, "evidence": "Photograph 12"})
        self.assertNotIn("open_actions", self.task())

    def test_the_first_and_the_last_revision_are_compared_field_by_field(self):
        found = self.ok_json("diff", TASK, 1, 3)
        self.assertEqual((found["task"], found["from"], found["to"]), (TASK, 1, 3))
        by_path = {d["path"]: d for d in found["differences"]}
        self.assertEqual(by_path["origin.H"], {"part": "facts", "path": "origin.H", "name": "Origin: Reach", "symbol": "H",
                                               "unit": "cm", "old": "55", "new": "30 cm"})
        self.assertEqual((by_path["load.heaviest"]["old"], by_path["load.heaviest"]["new"]), ("30", "14"))
        self.assertEqual(by_path["load.heaviest"]["unit"], "kg")
        self.assertEqual((by_path["place"]["old"], by_path["place"]["new"]), (None, "Shear 2"))
        self.assertEqual(by_path["verdict"]["old"], "mechanical")
        self.assertIn("quantities.LI", by_path)
        self.assertNotIn("origin.V", by_path)
        self.assertEqual({d["part"] for d in found["differences"]}, {"facts", "result"})
        self.assertEqual(self.ok_json("diff", TASK, 2, 2)["differences"], [])

    def test_a_review_is_set_falls_due_and_is_settled(self):
        self.ok("review", "--by", "M. Foreman", "--why", "Every year", "--trigger", "date", "--due", "2027-05-04", TASK,
                clock=JUNE)
        self.assertEqual(self.task()["review"], {"due": "2027-05-04", "trigger": "date"})
        for day, lines in (("2027-05-03", 0), ("2027-05-04", 1), ("2028-01-01", 1)):
            self.assertEqual(len(json_lines(self.ok("tasks", "--review-due", day, clock=JUNE))), lines, day)
        self.assertTrue(self.task(clock="2027-05-05T08:00:00Z")["review"]["overdue"])
        told = self.ok_json("review", "--by", "M. Foreman", "--why", "A strain", "--trigger", "accident", TASK, clock=JUNE)
        self.assertEqual((told["trigger"], told["due"]), ("accident", "2026-06-01"))
        self.record(BLANK, "Looked at again", JUNE)
        self.assertNotIn("review", self.task())

    def test_an_item_is_retired_and_taken_back(self):
        self.ok("retire", "--by", "M. Foreman", "--why", "Shear sold", TASK, clock=JUNE)
        self.assertTrue(self.task()["retired"])
        self.refused("already", "retire", "--by", "M. Foreman", "--why", "again", TASK)
        self.ok("retire", "--undo", "--by", "M. Foreman", "--why", "Not sold", TASK, clock=JUNE)
        self.assertNotIn("retired", self.task())

    def test_that_workers_were_told_is_kept(self):
        self.ok("told", "--by", "M. Foreman", "--who", "N. Vance, O. Lund", "--mass", "14 kg", "--heaviest-side", "the burr",
                TASK, 3, clock=JUNE)
        self.assertEqual(self.task()["told_revision"], 3)
        (row,) = json_lines(self.ok("journal", "--kind", "told"))
        self.assertEqual(row["words"], "Told to N. Vance, O. Lund: 14 kg, heaviest side the burr")

    def test_history_gives_the_revisions_or_everything(self):
        self.ok("sign", "--by", "M. Foreman", "--role", "foreman", TASK, 3, clock=JUNE)
        self.ok("retire", "--by", "M. Foreman", "--why", "Shear sold", TASK, clock=JUNE)
        revisions = json_lines(self.ok("history", TASK))
        self.assertEqual([r["why"] for r in revisions],
                         ["First measurement", "Blanks are cut smaller", "A table at the shear"])
        everything = json_lines(self.ok("history", "--all", TASK))
        self.assertEqual([line.pop("event") for line in everything], ["revision"] * 3 + ["signature", "retirement"])
        self.assertEqual(everything[:3], revisions)
        self.assertEqual(everything[3]["facts"]["line_hash"], revisions[2]["hash"])

    def test_the_journal_is_listed_newest_first_and_filtered(self):
        self.ok("sign", "--by", "M. Foreman", "--role", "foreman", TASK, 3, clock=JUNE)
        self.record(BLANK, "Another", JUNE, by="M. Foreman", task="Other")
        rows = json_lines(self.ok("journal"))
        self.assertEqual([row["line"] for row in rows], [6, 5, 4, 3, 2, 1])
        self.assertEqual([row["event"] for row in rows], ["revision", "signature"] + ["revision"] * 3 + ["policy"])
        self.assertEqual(rows[1]["words"], "Signed off in the role of foreman")
        self.assertEqual((rows[2]["task"], rows[2]["revision"], rows[2]["why"]), (TASK, 3, "A table at the shear"))
        for options, lines in ((("--by", "M. Foreman"), [6, 5]), (("--kind", "signature"), [5]), (("--item", TASK), [5, 4, 3, 2]),
                               (("--from", "2026-05-04", "--to", "2026-05-04"), [4]), (("--to", "2026-03-31"), [2, 1]),
                               (("--limit", 2), [6, 5]), (("--by", "nobody"), [])):
            found = [row["line"] for row in json_lines(self.ok("journal", *options))]
            self.assertEqual(found, lines, options)

    def test_what_was_done_is_found_by_its_words(self):
        self.ok("action", "--by", "M. Foreman", "--what", "Fit a bollard", "--assign", "N. Vance", TASK, "open", clock=JUNE)
        self.ok("sign", "--by", "S. Igner", "--role", "foreman", TASK, 3, clock=JUNE)
        for words in ("bollard", "vance", "igner", "table shear", "foreman bollard"):
            self.assertEqual(len(json_lines(self.ok("tasks", "--search", words))), 1, words)
        self.assertEqual(self.ok("tasks", "--search", "bollards"), "")

    def test_tasks_are_filtered_by_method_and_machine(self):
        self.record({"method": "gear", "units": "metric", "kind": "hoist", "identity": "H-1", "wll": 2000,
                     "serves": ["Press 4", "Press 12"]}, "bought", JUNE, task="Hoist 1")
        for options, names in ((("--method", "lift"), [TASK]), (("--method", "gear"), ["Hoist 1"]),
                               (("--machine", "press 12"), ["Hoist 1"]), (("--machine", "Press 1"), []),
                               (("--method", "lift", "--machine", "Press 4"), [])):
            found = [task["task"] for task in json_lines(self.ok("tasks", *options))]
            self.assertEqual(found, names, options)
        self.refused("allowed: lift", "tasks", "--method", "guess")
        self.refused("2026-12-01", "tasks", "--review-due", "soon")

    def test_what_cannot_be_done_is_said_and_changes_nothing(self):
        by = ("--by", "M. Foreman")
        opened = self.ok_json("action", *by, "--what", "Fit a stop", TASK, "open", clock=JUNE)["action"]
        self.record(BLANK, "Another", JUNE, task="Other")
        head = self.ok_json("verify")["head"]
        for word, *arguments in (
                ("from 1 to 3", "sign", *by, "--role", "foreman", TASK, 4),
                ("REV", "sign", *by, "--role", "foreman", TASK, "last"),
                ("role", "sign", *by, TASK, 3),
                ("by", "sign", "--role", "foreman", TASK, 3),
                ("Nothing", "sign", *by, "--role", "foreman", "Nothing", 1),
                ("kind", "sign", *by, "--role", "foreman", "--kind", "fork", TASK, 3),
                ("what", "action", *by, TASK, "open"),
                ("what", "action", *by, "--what", " ", TASK, "open"),
                ("past", "action", *by, "--what", "x", "--due", "2026-05-31", TASK, "open"),
                ("date", "action", *by, "--what", "x", "--due", "2026-02-30", TASK, "open"),
                ("evidence", "action", *by, TASK, "close", opened),
                ("--what", "action", *by, "--evidence", "x", "--what", "y", TASK, "close", opened),
                ("open, assign ID, close ID", "action", *by, "--evidence", "x", TASK, "close"),
                ("open, assign ID, close ID", "action", *by, "--evidence", "x", TASK, "reopen", opened),
                (TASK, "action", *by, "--evidence", "x", "Other", "close", opened),
                ("0000", "action", *by, "--evidence", "x", TASK, "close", "0000000000000000"),
                ("trigger", "review", *by, "--why", "x", TASK),
                ("trigger", "review", *by, "--why", "x", "--trigger", "whim", TASK),
                ("due", "review", *by, "--why", "x", "--trigger", "date", TASK),
                ("past", "review", *by, "--why", "x", "--trigger", "date", "--due", "2026-05-31", TASK),
                ("why", "review", *by, "--trigger", "change", TASK),
                ("why", "retire", *by, TASK),
                ("in use", "retire", "--undo", *by, "--why", "x", TASK),
                ("who", "told", *by, "--mass", "14 kg", "--heaviest-side", "left", TASK, 3),
                ("mass", "told", *by, "--who", "A", "--mass", "", "--heaviest-side", "left", TASK, 3),
                ("from 1 to 3", "diff", TASK, 1, 4),
                ("REV", "diff", TASK, 0, 1),
                ("Nothing", "diff", "Nothing", 1, 2),
                ("two revisions", "diff", TASK, 1),
                ("kind", "journal", "--kind", "gossip"),
                ("from", "journal", "--from", "yesterday"),
                ("limit", "journal", "--limit", -1),
                ("Nothing", "journal", "--item", "Nothing"),
                ("64", "verify", "--head", "abc"),
                ("unexpected", "verify", "more"),
                ("unexpected", "rebuild", "more"),
                ("unexpected", "actions", TASK, "more")):
            with self.subTest(arguments):
                self.refused(word, *arguments)
        self.assertEqual(self.ok_json("verify")["head"], head)


class Absent(Folder):
    def test_only_what_records_makes_a_store(self):
        by = ("--by", "A. Tester")
        for arguments in (("verify",), ("rebuild",), ("journal",), ("actions",), ("diff", TASK, 1, 2),
                          ("sign", *by, "--role", "foreman", TASK, 1), ("action", *by, "--what", "x", TASK, "open"),
                          ("review", *by, "--why", "x", "--trigger", "change", TASK), ("retire", *by, "--why", "x", TASK),
                          ("told", *by, "--who", "A", "--mass", "1 kg", "--heaviest-side", "left", TASK, 1)):
            with self.subTest(arguments):
                self.refused(str(self.store), *arguments, code=1)
                self.assertFalse(self.store.exists())

    def test_a_store_must_be_named(self):
        for command in ("verify", "rebuild", "journal", "actions"):
            done = cli(command)
            self.assertEqual((done.returncode, done.stdout), (2, ""))
            self.assertIn("--store", done.stderr)


class Altered(Folder):
    """What another program did to the file is found, and where."""

    def setUp(self):
        super().setUp()
        self.heads = [self.record(changed(load={"typical": kg, "heaviest": kg}), f"Measured {kg}", MARCH)["head"]
                      for kg in (30, 20, 14)]
        self.lines = 4  # a policy and three revisions

    def verify(self, *more):
        done = self.run_cli("verify", *more)
        return done.returncode, json.loads(done.stdout), done.stderr

    def assert_found(self, line, fault, *more):
        code, found, said = self.verify(*more)
        self.assertEqual((code, found["holds"], found["line"], found["fault"]), (3, False, line, fault), found)
        self.assertTrue(found["expected"] and found["found"])
        self.assertNotEqual(found["expected"], found["found"])
        self.assertIn(str(line), said)
        self.assertIn(found["expected"], said)
        self.assertIn(found["found"], said)
        return found

    def test_an_untouched_record_holds_and_says_what_that_does_not_show(self):
        code, found, said = self.verify()
        self.assertEqual((code, said), (0, ""))
        self.assertEqual((found["holds"], found["lines"], found["head"]), (True, self.lines, self.heads[-1]))
        self.assertNotIn("known_at", found)
        self.assertIn("All 4 lines", found["words"])
        self.assertIn("kept elsewhere", found["words"])

    def test_a_head_that_was_kept_is_found_at_its_line(self):
        for i, head in enumerate(self.heads):
            code, found, _ = self.verify("--head", head)
            self.assertEqual((code, found["known_at"]), (0, i + 2))

    def test_one_byte_of_any_kind_is_found_at_its_line(self):
        for line, old, new in ((2, b"I. Tannick", b"I. Tannock"), (3, b"Measured 20", b"Measured 29"),
                               (3, b'"heaviest":20', b'"heaviest":10'), (4, MARCH.encode(), b"2026-03-03T08:00:00Z"),
                               (2, b'"verdict":"mechanical"', b'"verdict":"nechanical"'), (1, b'"version"', b'"versiom"')):
            with self.subTest(old=old):
                kept = self.store.read_bytes()
                with self.behind_its_back() as store:
                    (event,) = store.execute("select event from journal where number = ?", (line,)).fetchone()
                    self.assertIn(old, event)
                    store.execute("update journal set event = ? where number = ?", (event.replace(old, new, 1), line))
                about = self.assert_found(line, "hash")["about"]
                self.assertEqual((about["line"], about["who"]), (line, "I. Tannick"))
                self.assertEqual(about.get("revision"), line - 1 if line > 1 else None)
                for end in ("-wal", "-shm"):
                    pathlib.Path(f"{self.store}{end}").unlink(missing_ok=True)
                self.store.write_bytes(kept)
        self.assertEqual(self.verify()[0], 0)

    def test_a_line_that_is_gone_is_missed(self):
        with self.behind_its_back() as store:
            store.execute("pragma foreign_keys = off")
            store.execute("delete from journal where number = 3")
        code, found, _ = self.verify()
        self.assertEqual((code, found["line"], found["lines"]), (3, 3, 2), found)
        self.assertEqual(found["about"]["why"], "Measured 20")

    def test_a_tail_that_is_cut_off_is_found(self):
        with self.behind_its_back() as store:
            store.execute("pragma foreign_keys = off")
            store.execute("delete from journal where number = 4")
        self.assertEqual(self.assert_found(3, "end")["about"]["why"], "Measured 14", "the line that is gone")
        # Somebody who means to makes the lists fit again: then only a head that was kept tells.
        self.assertEqual(self.run_cli("rebuild").stdout, "", "what the lists still know is kept")
        self.assertEqual(self.run_cli("rebuild", "--anyway").returncode, 3)
        code, found, _ = self.verify()
        self.assertEqual((code, found["lines"]), (0, 3))
        self.assert_found(3, "head", "--head", self.heads[-1])
        code, found, _ = self.verify("--head", self.heads[1])
        self.assertEqual((code, found["known_at"]), (0, 3))

    def test_the_list_is_made_anew_from_the_journal(self):
        self.ok("action", "--by", "A. Tester", "--what", "Fit a stop", TASK, "open", clock=JUNE)
        clean = self.ok_json("rebuild")
        self.assertEqual((clean["items"], clean["actions"], clean["lines"], clean["different"], clean["differences"]),
                         (1, 1, 5, 0, []))
        before = self.task()
        with self.behind_its_back() as store:
            store.execute("update task set verdict = 'by-hand', done_by = 'Nobody'")
        self.assertNotEqual(self.task(), before)
        self.assertEqual(self.verify()[0], 0, "the journal itself holds")
        done = self.run_cli("rebuild")
        told = json.loads(done.stdout)
        self.assertEqual(done.returncode, 3, done.stderr)
        self.assertGreaterEqual(told["different"], 1)
        self.assertTrue(any(TASK in words for words in told["differences"]), told)
        self.assertIn("journal", done.stderr)
        self.assertEqual(self.task(), before)
        self.assertEqual(self.run_cli("rebuild").returncode, 0)

    def test_of_a_journal_that_does_not_hold_no_lists_are_made(self):
        with self.behind_its_back() as store:
            (event,) = store.execute("select event from journal where number = 4").fetchone()
            store.execute("update journal set event = ? where number = 4", (event.replace(b"Measured 14", b"Measured 99"),))
        done = self.run_cli("rebuild")
        self.assertEqual((done.returncode, done.stdout), (3, ""), done.stderr)
        self.assertIn("Line 4", done.stderr)
        self.assertEqual(self.task()["why"], "Measured 14", "what was recorded still stands in the lists")
        self.assertGreaterEqual(json.loads(self.run_cli("rebuild", "--anyway").stdout)["different"], 1)


if __name__ == "__main__":
    sy_cases.main()
