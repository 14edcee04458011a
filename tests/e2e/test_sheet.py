# SPDX-License-Identifier: MIT
"""Sheets of one assessment, from outside: what they say, on how many pages, that nothing is cut off or covered."""

import json
import os
import pathlib
import re
import stat
import subprocess
import tempfile
import unicodedata
import unittest
import xml.etree.ElementTree as xml

import sy_cases
from steelyard import BLANK, DEMO, changed, cli, json_lines

CLOCK = {"STEELYARD_CLOCK": "2026-11-26T09:00:00Z"}


def two_of_each_method():
    """Enough to see every method's sheet twice: under sanitizers a sheet takes a second."""
    found = {}
    for path in sorted(DEMO.rglob("*.json")):
        found.setdefault(json.loads(path.read_text(encoding="utf-8"))["method"], []).append(path)
    return [path for paths in found.values() for path in (paths[:1] + paths[-1:] if len(paths) > 1 else paths)]


DOCUMENTS = two_of_each_method()
PLANS = sorted((DEMO / "plans").glob("*.json"))
CHANGEOVERS = sorted((DEMO / "changeovers").glob("*.json"))
VERDICTS = {"by-hand": "Within the hand-handling limits", "within-capacity": "Within rated capacity",
            "improve": "Improve the task", "incomplete": "Facts missing", "outside": "Outside the method", "mechanical": "Mechanical handling required",
            "do-not-lift": "Do not lift"}
SIZES = {"a4": (595.3, 841.9), "letter": (612, 792), "a5": (419.5, 595.3)}


def dense(text):
    """Without what a broken line changes."""
    return "".join(unicodedata.normalize("NFKC", text).split())


def tool(*arguments):
    return subprocess.run(arguments, capture_output=True, check=True, encoding="utf-8").stdout


class Sheet:
    def __init__(self, path):
        self.path = path
        self.bytes = path.read_bytes()
        self.pages = [dense(page) for page in tool("pdftotext", "-raw", "-enc", "UTF-8", path, "-").split("\f")[:-1]]
        self.text = "".join(self.pages)

    def words(self):
        """Page by page: (word, left, top, right, bottom)."""
        root = xml.fromstring(tool("pdftotext", "-bbox", self.path, "-"))
        for page in root.iter("{http://www.w3.org/1999/xhtml}page"):
            yield (float(page.get("width")), float(page.get("height")),
                   [(word.text, *(float(word.get(edge)) for edge in ("xMin", "yMin", "xMax", "yMax")))
                    for word in page.iter("{http://www.w3.org/1999/xhtml}word")])


class Case(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls._folder = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls._folder.name)

    @classmethod
    def tearDownClass(cls):
        cls._folder.cleanup()

    def sheet(self, kind, *arguments, paper="a4", env=None, name="sheet.pdf"):
        out = self.folder / name
        out.unlink(missing_ok=True)
        done = cli("sheet", "--kind", kind, "--paper", paper, "-o", out, *arguments,
                   env={**(env or CLOCK), **self.sanitizer(kind, arguments)})
        self.assertEqual((done.returncode, done.stdout), (0, ""), done.stderr)
        self.assertEqual(stat.S_IMODE(out.stat().st_mode), 0o600)
        return Sheet(out)

    leaks_looked_for = set()

    def sanitizer(self, kind, arguments):
        """Looking for leaks takes longer than the sheet: once for every kind of sheet of every method, and for every other way
        to ask for one."""
        path = arguments[0] if len(arguments) == 1 and arguments[0] in DOCUMENTS else None
        if path is None:
            return {}
        what = kind, json.loads(path.read_text(encoding="utf-8"))["method"]
        if what not in self.leaks_looked_for:
            self.leaks_looked_for.add(what)
            return {}
        return {"ASAN_OPTIONS": ":".join((os.environ.get("ASAN_OPTIONS", ""), "detect_leaks=0")).lstrip(":")}

    def write(self, facts, name="facts.json"):
        path = self.folder / name
        path.write_text(json.dumps(facts), encoding="utf-8")
        return path

    def says(self, sheet, *sentences):
        for sentence in sentences:
            self.assertIn(dense(sentence), sheet.text, sentence)

    def has_whole_pages(self, sheet):
        """Every page says which it is and what a result is not; all words lie on the paper."""
        for number, page in enumerate(sheet.pages, 1):
            self.assertIn(dense(f"Page {number} of {len(sheet.pages)}"), page)
            self.assertIn(dense("A screening result, not a permission to lift: local regulations and the judgement of a "
                                "competent person come first."), page)
        for width, height, words in sheet.words():
            for word, left, top, right, bottom in words:
                self.assertTrue(0 < left and right < width and 0 < top and bottom < height, (word, left, top, right, bottom))

    def is_not_covered(self, sheet):
        """No word lies over another by more than what the boxes of two lines share."""
        for _, _, words in sheet.words():
            for i, (word, left, top, right, bottom) in enumerate(words):
                for other, left2, top2, right2, bottom2 in words[i + 1:]:
                    wide, high = min(right, right2) - max(left, left2), min(bottom, bottom2) - max(top, top2)
                    small = min((right - left) * (bottom - top), (right2 - left2) * (bottom2 - top2))
                    if wide > 0 and high > 0:
                        self.assertLess(wide * high, 0.35 * small, (word, other))


def findings_of(path):
    done = cli("assess", "--spread", path, env=CLOCK)
    return json.loads(done.stdout)


class Assessments(Case):
    printed = {}

    def assessment(self, path):
        """That of a document of the demo, printed once for all that look at it."""
        if path not in self.printed:
            self.printed[path] = self.sheet("assessment", path, name=f"{len(self.printed)}.pdf")
        return self.printed[path]

    def test_every_sentence_of_the_findings_is_on_the_sheet(self):
        for path in DOCUMENTS:
            with self.subTest(path.name):
                found, sheet = findings_of(path), self.assessment(path)
                self.has_whole_pages(sheet)
                self.says(sheet, *(reason["text"] for reason in found["reasons"]))
                self.says(sheet, *(reason["source"] for reason in found["reasons"] if "source" in reason))
                self.says(sheet, *(remedy["text"] for remedy in found.get("remedies", [])))
                self.says(sheet, *(caution["text"] for caution in found["cautions"]))
                for limit in found.get("limits", []):
                    self.says(sheet, limit["title"], limit["edition"])
                    if limit["from_memory"]:
                        self.says(sheet, limit["edition"] + "; from memory, not checked")
                self.says(sheet, found["source"], "edition %d" % found["edition"], path.stem)
                if found["method"] == "case":
                    self.says(sheet, "The best option is within its limits", "it pays back in 1.5 years",
                              "(15500 + 600) / 10579 = 1.52")
                elif found["method"] not in ("gear", "die-mass", "changeover"):
                    self.says(sheet, VERDICTS[found["verdict"]])
                for part in found.get("parts", []):
                    self.says(sheet, part["label"])

    def test_every_fact_is_on_the_sheet_as_it_was_typed(self):
        def leaves(value):
            if isinstance(value, dict):
                for each in value.values():
                    yield from leaves(each)
            elif isinstance(value, list):
                for each in value:
                    yield from leaves(each)
            else:
                yield value

        for path in DOCUMENTS:
            with self.subTest(path.name):
                sheet = self.assessment(path)
                for value in leaves(json.loads(path.read_text(encoding="utf-8"))):
                    if isinstance(value, (int, float)) and not isinstance(value, bool):
                        self.says(sheet, str(value))
                    elif isinstance(value, str) and " " in value:
                        self.says(sheet, value)

    def test_how_a_fact_was_had_stands_beside_it(self):
        facts = changed(had__origin__H={"how": "measured", "by": "Ann Bell", "tolerance": 1.5},
                        had__load={"how": "estimated"})
        sheet = self.sheet("assessment", self.write(facts))
        self.says(sheet, "Origin: Reach (H) 55 cm Measured, Ann Bell, ± 1.5 cm", "Load: Heaviest load (L) 30 kg Estimated")

    def test_formulas_have_their_numbers(self):
        sheet = self.sheet("assessment", self.write(BLANK))
        self.says(sheet, "HM = 25 / 55 = 0.4545", "RWL = 23 ×")

    def test_inches_and_pounds(self):
        facts = {**changed(), "units": "us", "load": {"typical": 40, "heaviest": 44},
                 "origin": {"H": 16, "V": 30, "A": 0}, "destination": {"H": 16, "V": 40, "A": 0}}
        sheet = self.sheet("assessment", self.write(facts), paper="letter")
        self.says(sheet, "44 lb", "16 in")
        self.assertIsNone(re.search(r"\d+kg\b", sheet.text.replace("referencemass", "")))

    def test_no_limit_holds(self):
        sheet = self.sheet("assessment", self.write(changed(origin__H=80)))
        self.says(sheet, "no limit holds", "LI ∞")

    def test_a_document_is_no_record(self):
        sheet = self.sheet("assessment", self.write(BLANK, "One blank.json"))
        self.says(sheet, "One blank", "no part of a record", "Not signed off", "Name", "Role and competence", "Signature")

    def test_the_same_bytes_and_tagged(self):
        path = self.write(BLANK)
        for kind, paper in (("assessment", "a4"), ("assessment", "letter"), ("card", "a5")):
            one, two = self.sheet(kind, path, paper=paper).bytes, self.sheet(kind, path, paper=paper).bytes
            self.assertEqual(one, two)
            info = tool("pdfinfo", self.folder / "sheet.pdf")
            self.assertRegex(info, r"Tagged:\s+yes")
            self.assertIn("%g x" % SIZES[paper][0] if paper == "letter" else "%d" % SIZES[paper][0], info)
            structure = tool("pdfinfo", "-struct", self.folder / "sheet.pdf")
            for tag in ("Document", "H1", "Table", "TH", "TD", "Figure"):
                self.assertRegex(structure, rf"\b{tag}\b")


LONG = "Die with a name that goes on and on until nobody can read it any more " * 6
WORD = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft" * 3


class TooMuch(Case):
    """Long names, long words, long lists: they wrap and go on on the next page."""

    def rig(self):
        facts = json.loads((DEMO / "plans" / "bracket-die-to-rack.2.json").read_text(encoding="utf-8"))
        facts["die"], facts["place"], facts["notes"] = LONG + "END1", WORD + "END2", "So it was. " * 400 + "END3"
        for leg in facts["legs"]:
            for number, element in enumerate(leg["elements"]):
                element["label"] = f"{number} of a label as long as may be "[:38] + "Z"
        return facts

    def test_nothing_is_lost(self):
        facts = self.rig()
        path = self.write(facts)
        for kind, paper in (("assessment", "a4"), ("lift-plan", "letter"), ("card", "a4"), ("card", "a5")):
            with self.subTest(kind=kind, paper=paper):
                sheet = self.sheet(kind, path, paper=paper)
                self.has_whole_pages(sheet)
                self.says(sheet, "END1", WORD + "END2")
                if kind == "assessment":
                    self.says(sheet, "END3")
                if kind != "card":
                    self.says(sheet, *(element["label"] for leg in facts["legs"] for element in leg["elements"]))

    def test_nothing_is_covered(self):
        path = self.write({**changed(place=WORD, notes=LONG), "measured_by": LONG})
        for kind, paper in (("assessment", "a4"), ("card", "a5"), ("card", "letter")):
            with self.subTest(kind=kind, paper=paper):
                self.is_not_covered(self.sheet(kind, path, paper=paper))

    def test_sixty_lifts(self):
        lift = {key: BLANK[key] for key in ("load", "origin", "destination", "coupling")}
        facts = {"method": "lift-set", "units": "metric", "combine": "composite", "duration": "short", "conditions": [],
                 "assigned": "mixed-adults",
                 "lifts": [{**lift, "label": f"Lift number {i:02d}", "frequency": 0.01} for i in range(60)]}
        sheet = self.sheet("assessment", self.write(facts))
        self.assertGreater(len(sheet.pages), 3)
        self.has_whole_pages(sheet)
        self.says(sheet, *(f"Lift number {i:02d}" for i in range(60)))
        self.has_whole_pages(self.sheet("card", self.write(facts), paper="a5"))


class LiftPlans(Case):
    def test_what_carries_is_listed_with_its_marking_and_its_day(self):
        for path in PLANS:
            facts = json.loads(path.read_text(encoding="utf-8"))
            if facts["method"] != "rigged-lift":
                continue
            with self.subTest(path.name):
                found, sheet = findings_of(path), self.sheet("lift-plan", path)
                self.has_whole_pages(sheet)
                self.is_not_covered(sheet)
                for leg in facts["legs"]:
                    for element in leg["elements"]:
                        self.says(sheet, element["label"], element.get("due", "–"))
                self.says(sheet, *(reason["text"] for reason in found["reasons"]))
                self.says(sheet, "Before the lift", "Trial lift: a hand's breadth up", "From above", "From the front",
                          VERDICTS[found["verdict"]])

    def test_the_load_is_told_with_its_allowance(self):
        sheet = self.sheet("lift-plan", DEMO / "plans" / "bracket-die-to-rack.2.json")
        self.says(sheet, "259 kg", "284.9 kg", "295.3 kg", "Centre of gravity: x 80, y 2, z 121 mm")
        self.says(sheet, "P3 R-3, Swivel hoist ring 1120 kg 1.00 1120 kg 152.4 kg 13.6 % 2027-02-17")

    def test_only_of_a_rigged_lift(self):
        out = self.folder / "none.pdf"
        done = cli("sheet", "--kind", "lift-plan", "-o", out, self.write(BLANK))
        self.assertEqual(done.returncode, 2)
        self.assertIn("lift-plan", done.stderr)
        self.assertFalse(out.exists())


class Cases(Case):
    """The case for an aid, on one page."""
    PATH = DEMO / "cases" / "flange-die-aid.1.json"

    def test_one_page_says_what_is_compared_and_what_was_found(self):
        found = findings_of(self.PATH)
        for paper in ("a4", "letter"):
            with self.subTest(paper):
                sheet = self.sheet("case", self.PATH, paper=paper)
                self.assertEqual(len(sheet.pages), 1)
                self.is_not_covered(sheet)
                self.says(sheet, "The best option is within its limits", "Roller carts and jib", "By two people",
                          "Manipulator at the press", "Approved by", "come first",
                          *(reason["text"] for reason in found["reasons"]),
                          *(caution["text"] for caution in found["cautions"]))

    def test_figures_stand_in_their_columns(self):
        sheet, q = self.sheet("case", self.PATH), findings_of(self.PATH)["quantities"]
        npv = [q[f"option.{name}.npv"]["value"] for name in ("Roller carts and jib", "By two people")]
        self.says(sheet, "Mechanical handling required Within every limit of its steps Mechanical handling required "
                         "Not assessed", "Index 3.05 – 3.09 –", "Heaviest mass by hand 24 kg – 24 kg –",
                  "Machine stands, each time 39 min 20 min 39 min –",
                  f"Net present value, expected – {npv[0]:.0f} {npv[1]:.0f} –", "Pays back in years – 1.5")

    def test_what_it_depends_on_most_is_the_widest(self):
        q = findings_of(self.PATH)["quantities"]
        start = "option.Roller carts and jib.swing."
        widths = {key[len(start):-len(".low")]: abs(q[key[:-len("low")] + "high"]["value"] - q[key]["value"])
                  for key in q if key.startswith(start) and key.endswith(".low")}
        self.assertEqual(max(widths, key=widths.get), "machine")
        self.says(self.sheet("case", self.PATH), "It depends most on “Machine, an hour”",
                  f"is {q[start + 'machine.low']['value']:.0f} with it low and {q[start + 'machine.high']['value']:.0f}")


class ChangeoverPlans(Case):
    def test_every_step_with_its_verdict_and_every_check_to_tick(self):
        for path in CHANGEOVERS:
            facts = json.loads(path.read_text(encoding="utf-8"))
            with self.subTest(path.name):
                found, sheet = findings_of(path), self.sheet("changeover", path)
                self.has_whole_pages(sheet)
                self.is_not_covered(sheet)
                self.says(sheet, facts["machine"], *facts["people"], *(step["label"] for step in facts["steps"]),
                          *(die["label"] for die in facts["dies"]), *(reason["text"] for reason in found["reasons"]),
                          *(caution["text"] for caution in found["cautions"]), VERDICTS[found["verdict"]]
                          if found["verdict"] != "by-hand" else "Within every limit of its steps")
                self.says(sheet, *(f"{number}. {step['label']}" for number, step in enumerate(facts["steps"], 1)
                                   if step.get("checks")), *(part["title"] for part in found["parts"] if "title" in part),
                          "Steps in their order", "Checks, to tick on the floor", "Signature", "come first")
                if found["verdict"] == "by-hand":
                    self.says(sheet, f"{len(facts['steps'])} steps, none that hands must not do")

    def test_what_is_missing_is_named_with_what_asks_for_it(self):
        path = DEMO / "changeovers" / "flange-die-by-hand.1.json"
        sheet = self.sheet("changeover", path, paper="letter")
        missing = [reason for reason in findings_of(path)["reasons"] if reason["id"].startswith("check-")]
        self.assertTrue(missing)
        for reason in missing:
            self.says(sheet, "Missing in the plan. " + reason["text"] + " Asked for by: " + reason["source"])

    def test_the_whole_and_each_person(self):
        sheet = self.sheet("changeover", DEMO / "changeovers" / "flange-die-by-hand.1.json")
        self.says(sheet, "stands 39 min", "The machine stands for 39 min", "Could be done while the machine runs 15 min",
                  "105 h of standing a year", "Heaviest mass by hand and person 24 kg", "273 h",
                  "31 min of work; lifts by hand: 2; composite index 3.05, goal 1.00",
                  "Press 3 Flange die F-6, 46 kg Flange die F-7, 48 kg Pim Arrowby; Dessa Hollin",
                  "5 Carry the old halves to the rack Carry stopped; could be while it runs 14–20 6 min Dessa Hollin Carrying "
                  "Mechanical handling required")
        sheet = self.sheet("changeover", DEMO / "changeovers" / "flange-die-with-cart-and-jib.1.json")
        self.says(sheet, "stands 20 min", "from minute 9 to 29", "no lift by hand")
        self.assertNotIn(dense("Missing in the plan"), sheet.text)

    def test_forty_steps_with_long_names(self):
        facts = json.loads((DEMO / "changeovers" / "flange-die-by-hand.1.json").read_text(encoding="utf-8"))
        facts["people"] = [f"Person {k} of a name as long as may be"[:40] for k in range(4)]
        facts["steps"] = [{"label": f"Step {i:02d} of a name that goes on as long as a step's may be, {'x' * 20}"[:80],
                           "kind": ("clamp", "adjust", "carry")[i % 3], "when": "stopped", "minutes": i % 4,
                           "after": [], "persons": 1 + i % 4, "checks": ["clamps-torqued"]} for i in range(40)]
        path = self.write(facts)
        sheet = self.sheet("changeover", path)
        self.has_whole_pages(sheet)
        self.is_not_covered(sheet)
        self.says(sheet, *(step["label"] for step in facts["steps"]), *facts["people"])
        self.assertEqual(sheet.bytes, self.sheet("changeover", path).bytes)
        structure = tool("pdfinfo", "-struct", self.folder / "sheet.pdf")
        for tag in ("Document", "H1", "Table", "TH", "TD", "Figure"):
            self.assertRegex(structure, rf"\b{tag}\b")

    def test_only_of_a_die_change(self):
        out = self.folder / "none.pdf"
        done = cli("sheet", "--kind", "changeover", "-o", out, self.write(BLANK))
        self.assertEqual(done.returncode, 2)
        self.assertIn("changeover", done.stderr)
        self.assertFalse(out.exists())


class Cards(Case):
    def test_one_page_on_every_paper(self):
        for path in DOCUMENTS:
            if path.parent.name == "cases":
                continue # decided at a desk: no card
            for paper in SIZES:
                with self.subTest(path.name, paper=paper):
                    sheet = self.sheet("card", path, paper=paper)
                    self.assertEqual(len(sheet.pages), 1)
                    self.has_whole_pages(sheet)

    def test_the_main_line_is_read_from_afar(self):
        for paper, least in (("a5", 36), ("a4", 50), ("letter", 47)):
            sheet = self.sheet("card", self.write(changed(load={"heaviest": 5, "typical": 5}, origin__V=75, origin__H=30,
                                                          destination__H=30)), paper=paper)
            self.says(sheet, "By hand, one person", "5 kg", "Nothing heavier than 5 kg.")
            self.assertGreater(max(bottom - top for _, _, words in sheet.words() for word, _, top, _, bottom in words
                                   if word == "hand,"), least)

    def test_every_verdict_has_its_line(self):
        lines = {"by-hand": ("By hand, one person", changed(load={"heaviest": 5, "typical": 5}, origin__V=75, origin__H=30,
                                                           destination__H=30, control_at_destination=False)),
                 "improve": ("Improve the task", changed(load={"heaviest": 12, "typical": 12})),
                 "incomplete": ("Not assessed: ask first", None),
                 "outside": ("Not assessed: ask first", changed(load={"heaviest": 5, "typical": 5}, conditions=["one-hand"])),
                 "mechanical": ("Not by hand: use a lift aid", BLANK)}
        for verdict, (line, facts) in lines.items():
            with self.subTest(verdict):
                if facts is None:
                    path = DEMO / "plans" / "draw-die-to-press.1.json"
                else:
                    path = self.write(facts)
                self.assertEqual(findings_of(path)["verdict"], verdict)
                self.says(self.sheet("card", path, paper="a5"), line)
        path = DEMO / "plans" / "tray-die-by-upper-shoe.1.json"
        self.says(self.sheet("card", path, paper="a5"), "Do not lift", "Leave it where it is.", "Do not try it out.")
        path = DEMO / "plans" / "bracket-die-to-rack.2.json"
        self.says(self.sheet("card", path, paper="a5"), "Only as drawn, with this gear", "284.9 kg",
                  "Nobody under or beside the load.", "Centre of gravity: x 80", "Bracket die B-12", "First due date in it: 2027-01-06.")

    def test_a_die_change_names_people_loads_and_checks(self):
        for paper in SIZES:
            sheet = self.sheet("card", DEMO / "changeovers" / "flange-die-with-cart-and-jib.1.json", paper=paper)
            self.says(sheet, "Only as planned", "People: Pim Arrowby, Dessa Hollin", "Cart with the new die to the press",
                      "Die cart", "3. Energy isolated, locked and tried", "no step without its checks",
                      "First due date in it: 2027-04-12.")
            self.assertNotIn(dense("Mass not given"), sheet.text)
            self.assertEqual(len(sheet.pages), 1)
            self.has_whole_pages(sheet)

    def test_a_die_change_that_is_refused_names_the_steps_and_nothing_to_tick(self):
        sheet = self.sheet("card", DEMO / "changeovers" / "flange-die-by-hand.1.json", paper="a5")
        self.says(sheet, "Not by hand: use a lift aid", "Not to be done as planned", "Carry the old halves to the rack",
                  "Leave it where it is.")
        self.assertNotIn(dense("Tick at the step"), sheet.text)

    def test_gear_under_a_hook_is_named(self):
        self.says(self.sheet("card", DEMO / "plans" / "bracket-die-to-rack.2.json", paper="a5"),
                  "Gear: H-3, R-1, L-1, R-2, L-2, R-3, L-3, R-4, L-4")
        self.assertNotIn(dense("Gear: "), self.sheet("card", DEMO / "plans" / "tray-die-by-upper-shoe.1.json", paper="a5").text)

    def test_what_is_decided_at_a_desk_has_none(self):
        done = cli("sheet", "--kind", "card", "-o", self.folder / "none.pdf", DEMO / "cases" / "flange-die-aid.1.json")
        self.assertEqual(done.returncode, 2)
        self.assertIn("not for the method case", done.stderr)

    def test_what_must_not_be_lifted_is_told_in_no_way_of_lifting_it(self):
        sheet = self.sheet("card", DEMO / "plans" / "tray-die-by-upper-shoe.1.json", paper="a4")
        self.assertNotIn(dense("Trial lift"), sheet.text)
        self.assertNotIn(dense("Hook 1200 mm"), sheet.text)


class Records(Case):
    @classmethod
    def setUpClass(cls):
        super().setUpClass()
        cls.store = cls.folder / "test.steelyard"
        cls.do("2026-03-02", "record", "--task", "Blank", "--by", "Ann Bell", "--role", "safety lead", "--why", "first",
               facts=changed(origin__H=40))
        cls.do("2026-04-02", "record", "--task", "Blank", "--by", "Bo Clay", "--why", "nearer", facts=changed(origin__H=30))
        cls.do("2026-04-03", "sign", "--by", "Cy Dent", "--role", "foreman", "--competence", "course of 2024", "Blank", "2")
        cls.do("2026-04-04", "told", "--by", "Cy Dent", "--who", "early shift", "--mass", "30 kg", "--heaviest-side",
               "the sheared edge", "Blank", "2")
        cls.do("2026-04-05", "review", "--by", "Cy Dent", "--why", "table", "--trigger", "date", "--due", "2027-02-01", "Blank")
        rig = json.loads((DEMO / "plans" / "bracket-die-to-rack.2.json").read_text(encoding="utf-8"))
        cls.do("2026-09-29", "record", "--task", "Die", "--by", "Bo Clay", "--why", "plan", facts=rig)

    @classmethod
    def do(cls, day, command, *arguments, facts=None):
        if facts is not None:
            path = cls.folder / "facts.json"
            path.write_text(json.dumps(facts), encoding="utf-8")
            arguments = (*arguments, path)
        done = cli(command, "--store", cls.store, *arguments, env={"STEELYARD_CLOCK": f"{day}T09:00:00Z"})
        assert done.returncode == 0, done.stderr

    def head(self):
        return json.loads(cli("verify", "--store", self.store).stdout)["head"]

    def test_it_says_which_revision_and_who_signed_it(self):
        lines = json_lines(cli("history", "--store", self.store, "Blank").stdout)
        sheet = self.sheet("assessment", "--store", self.store, "Blank")
        self.says(sheet, "Revision 2 of 2026-04-02, made by Bo Clay.", lines[1]["hash"], self.head(), "Cy Dent, foreman",
                  "course of 2024", "early shift", "Next review: 2027-02-01.", "Limits: steelyard-default")
        self.assertNotIn(dense("Not signed off"), sheet.text)
        first = self.sheet("assessment", "--store", self.store, "Blank", "1")
        self.says(first, "Revision 1 of 2026-03-02, made by Ann Bell, safety lead.", lines[0]["hash"], "Not signed off", "40 cm")
        self.assertNotIn(dense("Cy Dent, foreman"), first.text)

    def test_a_card_of_a_revision(self):
        sheet = self.sheet("card", "--store", self.store, "Blank", paper="a5")
        self.says(sheet, "Blank", "Heaviest side: the sheared edge", "Next review: 2027-02-01.", self.head())
        self.says(self.sheet("card", "--store", self.store, "Blank", "1", paper="a5"), "Nobody has signed this off.")

    def test_what_no_longer_holds_is_not_printed_as_if_it_did(self):
        now = self.sheet("lift-plan", "--store", self.store, "Die")
        self.says(now, "Within rated capacity")
        later = {"STEELYARD_CLOCK": "2027-06-01T09:00:00Z"}
        sheet = self.sheet("lift-plan", "--store", self.store, "Die", env=later)
        self.says(sheet, "The record says “Within rated capacity”", "Worked out again now it is “Do not lift”")
        self.assertLess(sheet.text.index(dense("Do not lift")), sheet.text.index(dense("Within rated capacity")))
        self.says(self.sheet("card", "--store", self.store, "Die", paper="a5", env=later), "Do not lift",
                  "Leave it where it is. Ask Bo Clay.")

    def test_the_same_bytes(self):
        for kind in ("assessment", "lift-plan", "card"):
            arguments = (kind, "--store", self.store, "Die")
            self.assertEqual(self.sheet(*arguments).bytes, self.sheet(*arguments).bytes)

    def test_refusals(self):
        out, facts = self.folder / "none.pdf", self.write(BLANK)
        for arguments, word in ((("--kind", "assessment"), "facts document"),
                                (("--kind", "assessment", facts, facts), "facts document"),
                                (("--kind", "assessment", facts, facts, facts), "unexpected"),
                                (("--kind", "assessment", "--paper", "a5", facts), "a5"),
                                (("--kind", "survey", "--paper", "a5"), "a5"),
                                (("--kind", "card", "--paper", "a3", facts), "a3"),
                                (("--kind", "card", self.write({"method": "lift"}, "bad.json")), "units"),
                                (("--kind", "card", "--store", self.store), "named"),
                                (("--kind", "card", "--store", self.store, "Blank", "7"), "7"),
                                (("--kind", "card", "--store", self.store, "Blank", "x"), "x"),
                                (("--kind", "card", "--store", self.store, "No such"), "No such"),
                                (("--kind", "card", "--store", self.store, "--policy", facts, "Blank"), "--policy"),
                                (("--kind", "survey", "--policy", facts), "--policy"),
                                (("--kind", "poster", facts), "card")):
            with self.subTest(str(arguments)):
                done = cli("sheet", "-o", out, *arguments, env=CLOCK)
                self.assertEqual(done.returncode, 2, done.stderr)
                self.assertIn(word, done.stderr)
                self.assertFalse(out.exists())


if __name__ == "__main__":
    sy_cases.main()
