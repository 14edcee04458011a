# SPDX-License-Identifier: MIT
"""The register as at a day and the sheets of the record, from outside."""

import json
import pathlib
import re
import stat
import subprocess
import tempfile
import unittest

import sy_cases
from steelyard import BLANK, changed, cli, json_lines

SHEAR, PRESS = "Blank to shear 2", "Blank to press 4"


class Register(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls._folder = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls._folder.name)
        cls.store = cls.folder / "test.steelyard"
        cls.record(SHEAR, BLANK, "First measurement", "Ann Bell", "2026-03-02")
        cls.record(PRESS, changed(conditions=None), "Begun", "Ann Bell", "2026-03-05")
        cls.do("2026-03-09", "review", "--by", "Ann Bell", "--why", "table promised", "--trigger", "date", "--due",
               "2026-04-01", PRESS)
        opened = cls.do("2026-03-10", "action", "--by", "Ann Bell", SHEAR, "open", "--what", "Raise the table", "--due",
                        "2026-05-01")
        cls.record(SHEAR, changed(origin__H=30, origin__V=75), "Table raised", "Ann Bell", "2026-04-20")
        cls.do("2026-04-21", "action", "--by", "Ann Bell", SHEAR, "close", json.loads(opened)["action"], "--evidence",
               "Seen on the floor")
        cls.do("2026-04-22", "sign", "--by", "Bo Clay", "--role", "foreman", "--competence", "course of 2024", SHEAR, "2")
        cls.do("2026-04-23", "told", "--by", "Bo Clay", "--who", "early shift", "--mass", "30 kg", "--heaviest-side", "even",
               SHEAR, "2")
        cls.do("2026-06-01", "retire", "--by", "Bo Clay", "--why", "line closed", PRESS)

    @classmethod
    def tearDownClass(cls):
        cls._folder.cleanup()

    @classmethod
    def do(cls, day, command, *arguments):
        done = cli(command, "--store", cls.store, *arguments, env={"STEELYARD_CLOCK": f"{day}T09:00:00Z"})
        assert done.returncode == 0, done.stderr
        return done.stdout

    @classmethod
    def record(cls, task, facts, why, by, day):
        path = cls.folder / "facts.json"
        path.write_text(json.dumps(facts), encoding="utf-8")
        cls.do(day, "record", "--task", task, "--by", by, "--role", "safety lead", "--why", why, path)

    def as_at(self, day):
        done = cli("register", "--store", self.store, "--as-at", day)
        self.assertEqual(done.returncode, 0, done.stderr)
        return {row["task"]: row for row in json_lines(done.stdout)}

    def test_a_day_before_the_first_line_is_empty(self):
        self.assertEqual(self.as_at("2026-03-01"), {})

    def test_what_was_in_force_is_what_was_recorded_by_then(self):
        first = self.as_at("2026-03-02")
        self.assertEqual(list(first), [SHEAR])
        self.assertEqual(first[SHEAR]["revision"], 1)
        self.assertEqual((first[SHEAR]["who"], first[SHEAR]["role"]), ("Ann Bell", "safety lead"))
        self.assertEqual(first[SHEAR]["method"], "lift")
        self.assertNotIn("signed", first[SHEAR])
        before, after = self.as_at("2026-04-19")[SHEAR], self.as_at("2026-04-20")[SHEAR]
        self.assertEqual((before["revision"], after["revision"]), (1, 2))
        self.assertGreater(before["index_value"], after["index_value"])

    def test_signatures_actions_and_reviews_count_from_their_day(self):
        rows = self.as_at("2026-04-02")
        self.assertTrue(rows[PRESS]["review_overdue"])
        self.assertEqual(rows[PRESS]["review_due"], "2026-04-01")
        self.assertEqual(rows[SHEAR]["open_actions"], 1)
        self.assertFalse(self.as_at("2026-04-01")[PRESS]["review_overdue"])
        signed = self.as_at("2026-04-22")[SHEAR]
        self.assertEqual(signed["open_actions"], 0)
        self.assertEqual((signed["signed"]["who"], signed["signed"]["role"], signed["signed"]["competence"],
                          signed["signed"]["own"]), ("Bo Clay", "foreman", "course of 2024", False))
        self.assertNotIn("unsigned", signed["not_assessed"])
        self.assertIn("unsigned", self.as_at("2026-04-21")[SHEAR]["not_assessed"])
        self.assertEqual((signed["told"], self.as_at("2026-04-23")[SHEAR]["told"]), (False, True))

    def test_what_is_missing_is_told_with_its_reason(self):
        press = self.as_at("2026-03-31")[PRESS]
        self.assertIn("incomplete" if press["verdict"] == "incomplete" else "unsigned", press["not_assessed"])
        self.assertTrue(any("not asked" in reason for reason in press["reasons"]), press["reasons"])
        self.assertIn("not a permission to lift", press["caution"])

    def test_what_is_retired_comes_last_and_says_so(self):
        rows = list(self.as_at("2026-06-01").values())
        self.assertEqual([row["retired"] for row in rows], [False, True])
        self.assertFalse(self.as_at("2026-05-31")[PRESS]["retired"])

    def test_a_day_that_is_none_and_a_store_that_is_not_there_are_refused(self):
        done = cli("register", "--store", self.store, "--as-at", "2026-02-30")
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("2026-02-30", done.stderr)
        absent = self.folder / "absent"
        done = cli("register", "--store", absent)
        self.assertEqual((done.returncode, done.stdout), (1, ""))
        self.assertFalse(absent.exists())

    def sheet(self, name, *arguments):
        path = self.folder / name
        done = cli("sheet", "-o", path, *arguments, env={"STEELYARD_CLOCK": "2026-06-02T09:00:00Z"})
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertEqual(stat.S_IMODE(path.stat().st_mode), 0o600)
        words = subprocess.run(["pdftotext", "-raw", "-enc", "UTF-8", path, "-"], capture_output=True, check=True,
                               encoding="utf-8").stdout
        return path, " ".join(words.split())

    def head(self):
        return json.loads(cli("verify", "--store", self.store).stdout)["head"]

    def test_the_register_is_printed(self):
        for paper in ("a4", "letter"):
            path, words = self.sheet(f"register-{paper}.pdf", "--kind", "register", "--store", self.store, "--as-at",
                                     "2026-04-30", "--paper", paper)
            for wanted in (SHEAR, PRESS, "2026-04-30", "not a permission to lift", "Bo Clay, foreman", "course of 2024",
                           "steelyard-default", "Work that is in no task", "2026-04-01: overdue", "Page 1 of", self.head()):
                self.assertIn(wanted, words)
            again, _ = self.sheet(f"again-{paper}.pdf", "--kind", "register", "--store", self.store, "--as-at", "2026-04-30",
                                  "--paper", paper)
            self.assertEqual(path.read_bytes(), again.read_bytes())

    def test_the_history_of_an_item_is_printed(self):
        _, words = self.sheet("history.pdf", "--kind", "history", "--store", self.store, SHEAR)
        for wanted in ("First measurement", "Table raised", "Raise the table", "Seen on the floor", "Bo Clay", "foreman",
                       "course of 2024", "55 → 30", "early shift", "not a permission to lift"):
            self.assertIn(wanted, words)
        hashes = [line["hash"] for line in json_lines(cli("history", "--all", "--store", self.store, SHEAR).stdout)]
        self.assertEqual(len(hashes), 6)
        joined = re.sub(r"\s", "", words)
        for each in (*hashes, self.head()):
            self.assertIn(each, joined)

    def test_a_sheet_of_nothing_is_refused(self):
        out = self.folder / "none.pdf"
        for arguments, word in ((("--kind", "history", "--store", self.store), "named"),
                                (("--kind", "history", "--store", self.store, "No such"), "No such"),
                                (("--kind", "register"), "--store"),
                                (("--kind", "register", "--store", self.store, "--as-at", "yesterday"), "yesterday"),
                                (("--kind", "poster"), "poster")):
            done = cli("sheet", "-o", out, *arguments)
            self.assertEqual(done.returncode, 2, done.stderr)
            self.assertIn(word, done.stderr)
            self.assertFalse(out.exists())


class Many(unittest.TestCase):
    """Long names and many of them: nothing is cut, and every page says what it is."""

    def test_many_items_with_long_names_fill_pages(self):
        with tempfile.TemporaryDirectory() as folder:
            store, facts, out = (pathlib.Path(folder, name) for name in ("s.steelyard", "f.json", "r.pdf"))
            facts.write_text(json.dumps(BLANK), encoding="utf-8")
            names = [f"Task {n:02d} " + "with a name that goes on and on " * 5 + f"end{n:02d}" for n in range(25)]
            for name in names:
                done = cli("record", "--store", store, "--task", name, "--by", "Ann", "--why", "w" * 3000, facts)
                self.assertEqual(done.returncode, 0, done.stderr)
            self.assertEqual(cli("sheet", "--kind", "register", "--store", store, "-o", out).returncode, 0)
            text = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, check=True, encoding="utf-8").stdout
            pages = text.split("\f")[:-1]
            self.assertGreater(len(pages), 2)
            for n, page in enumerate(pages, 1):
                self.assertIn(f"Page {n} of {len(pages)}", page)
                self.assertIn("not a permission to lift", " ".join(page.split()))
            for n in range(25):
                self.assertIn(f"end{n:02d}", text)
            history = pathlib.Path(folder, "h.pdf")
            self.assertEqual(cli("sheet", "--kind", "history", "--store", store, "-o", history, names[0]).returncode, 0)
            words = subprocess.run(["pdftotext", "-raw", history, "-"], capture_output=True, check=True,
                                   encoding="utf-8").stdout
            self.assertEqual(words.count("w" * 10) > 0 and "".join(words.split()).count("w") >= 3000, True)


if __name__ == "__main__":
    sy_cases.main()
