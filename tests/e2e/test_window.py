# SPDX-License-Identifier: MIT
"""The real window, from outside, by keyboard: what a new user does first, what must not be lost."""

import json
import os
import pathlib
import re
import signal
import tempfile
import unittest

import drive
import sy_cases
from drive import Atspi, Window, key, until
from steelyard import BLANK_RWL, changed, cli, copy_demo, json_lines

NAME = "Blank to shear by keyboard"
MECHANICAL = r"^Mechanical handling required$"

# What is typed, in the order of the form: name of the control, text.
FACTS = [
    (r"^Load: Typical load", "30"),
    (r"^Load: Heaviest load", "30"),
    (r"^Origin: Reach", "55"),
    (r"^Origin: Height", "20"),
    (r"^Origin: Twist", "0"),
    (r"^Destination: Reach", "55"),
    (r"^Destination: Height", "110"),
    (r"^Destination: Twist", "0"),
    (r"^Pace", "1"),
]


class Drive(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)
        self.store = self.folder / "shop.steelyard"
        # Who saved and in which units is remembered between runs; each case begins without.
        settings = pathlib.Path(os.environ["XDG_CONFIG_HOME"], "steelyard", "settings.ini")
        settings.parent.mkdir(parents=True, exist_ok=True)
        settings.write_text("[steelyard]\nunits=metric\n", encoding="utf-8")
        self.window = Window(self.store, self.folder)
        self.addCleanup(self.window.kill)

    def save_evidence(self, name):
        self.window.save_evidence(name)

    def choose(self, name, option):
        """Picks a line of a drop-down with the keyboard and reads it back."""
        window = self.window
        window.tab_to(name)
        window.press("space")

        def line():
            node = window.focused()
            return node and node.get_role_name() == "list item" and node

        for _ in range(20):
            node = until(line, f"the list of “{name}”")
            if option in [n.get_name() for n in drive.walk(node)]:
                break
            window.press("Down")
        else:
            self.fail(f"“{option}” is no line of “{name}”")
        window.press("Return")
        shown = until(lambda: (n := window.focused()) and re.search(name, drive.name_of(n)) and n,
                      f"“{name}” with its list closed")
        self.assertIn(option, [n.get_name() for n in drive.walk(shown)])

    def begin(self, what="One lift"):
        """Chooses what to begin; one lift is where the focus stands at first."""
        key("ctrl+n")
        self.window.see(rf"^{re.escape(what)}$", role="push button")
        self.window.tab_to(rf"^{re.escape(what)}$")
        key("Return")

    def enter_the_blank(self):
        window = self.window
        self.begin()
        window.see(r"^Name of the task")
        window.enter(r"^Name of the task", NAME)
        self.choose(r"^Who may be assigned", "Adults, women and men")
        for name, text in FACTS:
            window.enter(name, text)
        self.choose(r"^Duration$", "Moderate")
        # A screen reader is told the verdict when it comes, and not before it can be known.
        self.assertIsNone(window.find(MECHANICAL, role="alert"))
        self.choose(r"^Grip$", "Fair")
        window.tab_to(r"^Asked: none of these applies")
        key("space")

    def save(self):
        window = self.window
        key("ctrl+s")
        window.enter(r"^By whom$", "A. Tester")
        window.enter(r"^Why$", "Entered by keyboard")
        key("Return")
        until(lambda: cli("tasks", "--store", self.store).stdout, "the saved task in the store")


class FirstTask(Drive):
    def test_a_task_entered_by_keyboard_is_judged_saved_and_found_again(self):
        window = self.window.start()
        self.enter_the_blank()
        # The verdict and its reasons, as a screen reader finds them.
        window.see(MECHANICAL, role="alert")
        window.see(r"^LI 4\.7\d? at the origin; the reach of 55 cm costs most")
        window.see(r"^30 kg by person is over the reference mass of 20 kg")
        self.save()

        # The same from the command line.
        tasks = json_lines(cli("tasks", "--store", self.store).stdout)
        self.assertEqual([(t["task"], t["verdict"]) for t in tasks], [(NAME, "mechanical")])
        history = json_lines(cli("history", "--store", self.store, NAME).stdout)
        self.assertEqual(len(history), 1)
        self.assertEqual((history[0]["who"], history[0]["why"]), ("A. Tester", "Entered by keyboard"))
        found = history[0]["findings"]
        self.assertAlmostEqual(found["quantities"]["RWL"]["value"], BLANK_RWL, delta=1e-9)
        self.assertEqual(history[0]["facts"]["conditions"], [])

        self.assertEqual(window.quit(), 0, "the program ends well, without leaks")
        window.start()
        window.see(f"^{NAME}: Mechanical handling required, LI 4.7", role="table row")
        self.assertEqual(window.quit(), 0)


class Draft(Drive):
    def test_what_was_typed_survives_a_kill(self):
        window = self.window.start()
        self.begin()
        window.see(r"^Name of the task")
        window.enter(r"^Name of the task", "Half entered")
        window.enter(r"^Load: Heaviest load", "30")
        window.enter(r"^Origin: Reach", "5x5")
        state = pathlib.Path(os.environ["XDG_STATE_HOME"], "steelyard", "drafts")
        until(lambda: any("5x5" in p.read_text(encoding="utf-8") for p in state.rglob("*.json")),
              "the draft on the disk")
        window.process.send_signal(signal.SIGKILL)
        self.assertEqual(window.process.wait(), -signal.SIGKILL)

        window.start()
        draft = window.see(r"Half entered")
        self.assertIsNotNone(draft)
        window.tab_to(r"Half entered")
        key("Return")
        window.see(r"^Origin: Reach")
        reach = window.tab_to(r"^Origin: Reach")
        until(lambda: drive.text_of(reach) == "5x5", "the wrong entry as it was typed")
        self.assertEqual(drive.text_of(window.tab_to(r"^Load: Heaviest load", back=True)), "30")


class Pages(Drive):
    def setUp(self):
        super().setUp()
        copy_demo(self.store)

    def named(self, page):
        self.assertEqual(self.window.unnamed(), [], f"controls without a name on the page “{page}”")

    def tabs(self, *names, check=True):
        """Walks the tabs of a task page, the drawings first; each must have names."""
        window = self.window
        window.tab_to(r"^Drawings$")
        for tab in names:
            window.press("Right")
            window.press("space")
            node = until(lambda: (n := window.focused()) and drive.name_of(n) == tab and n,
                         f"the tab “{tab}”")
            until(lambda: drive.has(node, Atspi.StateType.SELECTED), f"“{tab}” in front")
            if check:
                self.named(tab)

    def open(self, task):
        window = self.window
        key("ctrl+f")
        until(lambda: (n := window.focused()) and drive.name_of(n) == "Search the tasks", "the search")
        drive.type_text(task)
        window.see(rf"^{task}: ", role="table row")
        until(lambda: len([n for n in window.nodes() if n.get_role_name() == "table row"
                           and ": " in n.get_name()]) == 1, "one task left by the search")
        window.press("Down")
        until(lambda: (n := window.focused()) and n.get_name().startswith(task), "the row")
        key("Return")
        window.see(rf"^{task} – ", role="frame")

    def test_every_control_of_every_page_has_a_name(self):
        window = self.window.start()
        window.see(r"^Blank to shear 2: ", role="table row")
        self.named("tasks")
        key("ctrl+p")
        window.see(r"^Measuring sheet – ", role="frame")
        self.named("measuring sheet")
        key("ctrl+n")
        window.see(r"^New – ", role="frame")
        self.named("new")
        self.begin("Rigged lift (lift plan)")
        window.see(r"^New lift plan – ", role="frame")
        self.named("new lift plan")
        self.begin()
        window.see(r"^New task – ", role="frame")
        self.named("new task")
        self.assertEqual(window.quit(), 0)

    def test_dies_gear_and_what_lifts_what_have_names_and_are_read_with_the_keyboard(self):
        window = self.window.start()
        window.see(r"^Blank to shear 2: ", role="table row")
        key("alt+4")
        window.see(r"^Dies – ", role="frame")
        window.see(r"^Tray die T-4: Mechanical handling required", role="table row")
        self.named("dies")
        key("alt+5")
        window.see(r"^Gear – ", role="frame")
        window.see(r"^Chain leg L-1: Marked and in date", role="table row")
        self.named("gear")
        key("alt+9")
        window.see(r"^What lifts what – ", role="frame")
        window.see(r"^Bracket die B-12 with Hoist H-3: Within rated capacity, 29 %$", role="push button")
        self.named("what lifts what")
        window.tab_to(r"^Bracket die B-12 with Hoist H-3")
        window.press("Right")
        until(lambda: (n := window.focused()) and drive.name_of(n).startswith("Bracket die B-12 with Hoist H-5"),
              "the next cell")
        key("space")
        window.see(r"Out of date: its examination was due on 2026-09-29", role="label")
        self.named("what lifts what, with a cell read")
        key("alt+5")
        key("ctrl+n")
        window.see(r"^New item of gear – ", role="frame")
        self.assertEqual(window.quit(), 0)

    def test_actions_and_the_journal_have_names_and_are_read_with_the_keyboard(self):
        window = self.window.start()
        window.see(r"^Blank to shear 2: ", role="table row")
        key("ctrl+shift+i")
        window.see(r"^Take lifts from a table$", role="frame")
        self.named("taking lifts from a table")
        key("Escape")
        key("alt+6")
        window.see(r"^Actions – ", role="frame")
        window.see(r"^Blanks to press 4: Review: the day that was set; Overdue by ", role="table row")
        self.named("actions")
        key("alt+7")
        window.see(r"^Journal – ", role="frame")
        window.see(r"^Line \d+: ", role="table row")
        window.see(r"loosens none of the program's own limits", role="label")
        self.named("journal")
        until(lambda: (n := window.focused()) and re.match(r"Line \d+: Flange die change, press 3, with", drive.name_of(n)),
              "the newest line")
        key("Return")
        window.see(r"^Flange die change, press 3, with carts and jib – ", role="frame")
        window.see(r"^What happened, newest first$")
        key("alt+7")
        window.see(r"^Journal – ", role="frame")
        window.tab_to(r"^Head from a sheet")
        key("Return")
        window.see(r"lines of the journal hold", role="alert")
        self.assertEqual(window.quit(), 0)

    def test_the_register_as_at_a_day_has_names_and_is_read_with_the_keyboard(self):
        window = self.window.start()
        window.see(r"^Blank to shear 2: ", role="table row")
        key("alt+8")
        window.see(r"^Register – ", role="frame")
        window.see(r"^Blank to shear 2: Improve the task · LI 1\.36; Ivo Tannick$", role="table row")
        window.see(r"^As at \d{4}-\d\d-\d\d · In use: \d+", role="label")
        window.see(r"^Head of the journal on that day: line \d+, [0-9a-f]{64}", role="label")
        window.see(r"^Work that is in no task of this record is not assessed here at all", role="label")
        self.named("register")
        # A day before the table was raised: what was in force then.
        key("alt+d")
        until(lambda: (n := window.focused()) and drive.name_of(n).startswith("Day of the register"), "the day")
        key("ctrl+a")
        drive.type_text("2026-03-40")
        key("Return")
        window.see(r"^Day: given “2026-03-40”; allowed: ", role="alert")
        key("ctrl+a")
        drive.type_text("2026-03-31")
        key("Return")
        window.see(r"^Blank to shear 2: .* LI 2\.84; Not signed off$", role="table row")
        window.tab_to(r"^Blank to shear 2: ")
        key("Return")
        window.see(r"^Compare two revisions", role="push button")
        self.assertEqual(window.quit(), 0)

    def test_a_task_is_found_opened_and_read_through_its_tabs(self):
        window = self.window.start()
        self.open("Blank to shear 2")
        window.see(r"^Improve the task$", role="alert")
        window.see(r"^LI 1\.36 at the destination; the reach of 36 cm costs most")
        self.tabs("Limits", "What would help", "Findings", "Reasons", "Spread", "History", "Follow-up", "Files")
        window.see(r"^Open: Revision 1: .* LI 2\.84", role="push button")
        window.see(r"\bH 36 cm|a reach of ", role="label")
        self.assertEqual(window.quit(), 0)

    def test_a_lift_plan_is_opened_and_a_bar_leads_to_its_fact(self):
        window = self.window.start()
        self.open("Tray die to bolster, press 6")
        window.see(r"^82\.6 %$")
        window.see(r"^Weakest: ")
        # F6 leads past a long form. Up and Down choose a bar, Return goes to its fact.
        window.tab_to(r"^Name of the plan$")
        window.press("F6")
        window.tab_to(r"^Load against capacity$")
        key("Down")
        key("Return")
        until(lambda: (n := window.focused()) and "Working load limit" in drive.name_of(n), "the marking of a sling")
        window.press("F6")
        # A plan has some hundred controls: their names are read once.
        self.tabs("Load path", "Find gear", "Findings", "Reasons", "History", "Follow-up", "Files", check=False)
        self.named("lift plan")
        window.see(r"^From the horizontal$", role="label")
        self.assertEqual(window.quit(), 0)


class Compared(Drive):
    """The same part at 45 a day and at 80 an hour, laid beside each other by keyboard."""

    SLOW, FAST = "Blanks by hand, 45 a day", "Blanks by hand, 80 an hour"

    def setUp(self):
        super().setUp()
        for name, pace, duration in ((self.SLOW, "45/8h", "short"), (self.FAST, "80/h", "long")):
            facts = changed(load={"typical": 8, "heaviest": 8}, frequency=pace, duration=duration)
            path = self.folder / "facts.json"
            path.write_text(json.dumps(facts), encoding="utf-8")
            done = cli("record", "--store", self.store, "--task", name, "--by", "A. Tester", "--why", "Measured", path)
            self.assertEqual(done.returncode, 0, done.stderr)

    def open(self, task):
        window = self.window
        window.see(rf"^{task}: ", role="table row")
        key("ctrl+f")
        until(lambda: (n := window.focused()) and drive.name_of(n) == "Search the tasks", "the search")
        drive.type_text(task)
        until(lambda: len([n for n in window.nodes() if n.get_role_name() == "table row" and ": " in n.get_name()]) == 1,
              "one task left by the search")
        key("Return")
        window.see(rf"^{task} – ", role="frame")

    def test_what_the_pace_does_is_seen_beside_each_other(self):
        window = self.window.start()
        self.open(self.SLOW)
        key("ctrl+d")
        window.see(r"^What to compare it with$", role="frame")
        until(lambda: (n := window.focused()) and drive.name_of(n) == "Search the tasks", "the search of what to compare it with")
        drive.type_text("80 an hour")
        until(lambda: len([n for n in window.nodes() if n.get_role_name() == "list item" and "Blanks" in n.get_name()]) == 1,
              "one task left by the search")
        key("Return")
        window.see(r"^Comparison – ", role="frame")
        window.see(r"^The verdict is as strict: from Improve the task")
        window.see(r"^Pace \(F\): first 45/8h.*second 80/h")
        window.see(r"^Index that decides: first LI .* second LI .*, worse$")
        self.assertEqual(window.unnamed(), [])
        # Escape leads back to the task, and again to the list.
        key("Escape")
        window.see(rf"^{self.SLOW} – ", role="frame")
        # From the list it is the row that is selected.
        key("Escape")
        window.see(r"^Tasks – ", role="frame")
        key("ctrl+f")
        window.press("Down")
        until(lambda: (n := window.focused()) and n.get_name().startswith(self.SLOW), "the row")
        key("ctrl+d")
        window.see(r"^What to compare it with$", role="frame")
        window.see(rf"^First: {self.SLOW}$", role="push button")

    def test_a_variant_begins_with_what_stands_there(self):
        window = self.window.start()
        self.open(self.SLOW)
        window.see(r"^Name of the task")
        key("F10")
        window.see(r"^New variant of this$")
        until(lambda: (n := window.focused()) and n.get_role_name() == "menu item", "the menu")
        for _ in range(8):
            if drive.name_of(window.focused()) == "New variant of this":
                break
            window.press("Down")
        key("Return")
        window.see(rf"^{re.escape(self.SLOW)} \(variant\) – ", role="frame")
        self.assertEqual(drive.text_of(window.tab_to(r"^Why$")), f"Variant of “{self.SLOW}”, revision 1.")
        window.enter(r"^By whom$", "A. Tester")
        key("ctrl+s")
        until(lambda: len(json_lines(cli("tasks", "--store", self.store).stdout)) == 3, "the variant in the store")
        variant = json_lines(cli("history", "--store", self.store, self.SLOW + " (variant)").stdout)[0]
        self.assertEqual(variant["facts"]["frequency"], "45/8h")
        self.assertIn(f"Variant of “{self.SLOW}”, revision 1.", variant["facts"]["notes"])


class DieChange(Drive):
    def step(self, kind, minutes):
        """A step behind the one that the keyboard is in, of the kind that is typed."""
        until(lambda: (n := self.window.focused()) and drive.name_of(n).startswith("Kind"), "the kinds to choose from")
        drive.type_text(kind)
        key("Return")
        number = until(lambda: (n := self.window.focused()) and re.match(r"^Step (\d): Step$", drive.name_of(n)),
                       f"the name of the step “{kind}”")[1]
        self.window.enter(rf"^Step {number}: Minutes", minutes)

    def test_a_die_change_is_built_with_the_keyboard_and_saved(self):
        window = self.window.start()
        key("alt+2")
        window.see(r"^Changeovers – ", role="frame")
        key("ctrl+n")
        window.see(r"^New changeover – ", role="frame")
        window.enter(r"^Name of the changeover", "Small die")
        window.enter(r"^People", "Ann")
        window.tab_to(r"^Steps: Add: Step$")
        key("Return")
        self.step("isolate", "3")
        key("ctrl+Return")
        self.step("carry", "4")
        window.tab_to(r"^Step 2: How the load is moved: Assess")
        key("space")
        until(lambda: (n := window.focused()) and n.get_role_name() == "menu item" and drive.name_of(n) == "Carrying",
              "the likeliest method first")
        key("Return")
        window.see(r"^Step 2: How the load is moved · Carrying$")
        key("alt+Left")
        until(lambda: (n := window.focused()) and drive.name_of(n) .startswith("Step 2: How the load is moved: Open"), "the way back")
        # What is not right yet can be taken away again, and comes back.
        window.tab_to(r"^Step 2: How the load is moved: Remove")
        key("Return")
        key("ctrl+Return")
        self.step("release", "1")
        # Up in front of the carrying, and back.
        key("alt+Up")
        window.see(r"^Step 2: Release to production, ")
        key("alt+Down")
        window.see(r"^Step 3: Release to production, ")
        key("ctrl+s")
        window.enter(r"^By whom$", "A. Tester")
        window.enter(r"^Why$", "Walked on the floor")
        key("Return")
        until(lambda: cli("tasks", "--store", self.store).stdout, "the saved change in the store")
        saved, = json_lines(cli("history", "--store", self.store, "--kind", "changeover", "Small die").stdout)
        self.assertEqual([(s["label"], s["kind"], s["when"], s["minutes"]) for s in saved["facts"]["steps"]],
                         [("Stop and isolate", "isolate", "stopped", 3), ("Carry", "carry", "stopped", 4),
                          ("Release to production", "release", "running", 1)])
        self.assertEqual(saved["findings"]["verdict"], "incomplete")
        self.assertEqual(window.quit(), 0)


class Store(Drive):
    def test_a_file_of_something_else_is_told_in_words_and_left_as_it_is(self):
        content = b"This is a shopping list.\n" * 200
        self.store.write_bytes(content)
        window = self.window.start()
        window.see(r"no record of Steelyard")
        self.assertEqual(self.store.read_bytes(), content)


if __name__ == "__main__":
    sy_cases.main()
