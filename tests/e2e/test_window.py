# SPDX-License-Identifier: MIT
"""The real window, from outside, by keyboard only: what a new user does first, and what must not be lost."""

import os
import pathlib
import signal
import subprocess
import tempfile
import unittest

import drive
import sy_cases
from drive import Window, key, type_text, until
from steelyard import BLANK_RWL, CLI, DEMO, cli, json_lines

NAME = "Blank to shear by keyboard"

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
        self.window.tab_to(name)
        key("space")

        def line():
            node = self.window.focused()
            return node and node.get_role_name() == "list item" and node

        until(line, f"the list of “{name}”")
        for _ in range(20):
            node = until(line, "a line of the list")
            labels = [n.get_name() for n in drive.walk(node) if n.get_role_name() == "label"]
            if option in labels:
                break
            key("Down")
            self.window.settle(node)
        else:
            self.fail(f"“{option}” is no line of “{name}”")
        key("Return")
        until(lambda: (n := self.window.focused()) and drive.name_of(n) and n.get_role_name() != "list item", "the closed list")

    def enter_the_blank(self):
        window = self.window
        key("ctrl+n")
        window.see(r"^Name of the task")
        window.enter(r"^Name of the task", NAME)
        self.choose(r"^Who may be assigned", "Adults, women and men")
        for name, text in FACTS:
            window.enter(name, text)
        self.choose(r"^Duration", "Moderate")
        self.choose(r"^Grip", "Fair")
        window.tab_to(r"^Asked: none of these applies")
        key("space")

    def save(self):
        window = self.window
        key("ctrl+s")
        window.see(r"^(Saved by|Who|By whom|Your name)", role="text")
        window.enter(r"^(Saved by|Who|By whom|Your name)", "A. Tester")
        window.enter(r"^Why", "Entered by keyboard")
        key("Return")
        until(lambda: cli("tasks", "--store", self.store).stdout, "the saved task in the store")


class FirstTask(Drive):
    def test_a_task_entered_by_keyboard_is_judged_saved_and_found_again(self):
        window = self.window.start()
        self.enter_the_blank()
        # The verdict and its reasons, as a screen reader finds them.
        window.see(r"^Mechanical handling required")
        window.see(r"LI 4\.7")
        window.see(r"20 kg")
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
        window.see(NAME)
        window.see(r"Mechanical handling required")
        self.assertEqual(window.quit(), 0)


class Draft(Drive):
    def test_what_was_typed_survives_a_kill(self):
        window = self.window.start()
        key("ctrl+n")
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
        subprocess.run([DEMO / "build-demo.sh", CLI, self.store], check=True)

    def named(self, page):
        self.assertEqual(self.window.unnamed(), [], f"controls without a name on the page “{page}”")

    def test_every_control_of_every_page_has_a_name(self):
        window = self.window.start()
        window.see(r"^Blank to shear 2$")
        self.named("tasks")
        key("ctrl+p")
        window.see(r"[Mm]easuring sheet")
        self.named("measuring sheet")
        key("alt+Left")
        key("ctrl+n")
        window.see(r"^Name of the task")
        self.named("new task")


class Store(Drive):
    def test_a_file_of_something_else_is_told_in_words_and_left_as_it_is(self):
        content = b"This is a shopping list.\n" * 200
        self.store.write_bytes(content)
        window = self.window.start()
        window.see(r"no record of Steelyard")
        self.assertEqual(self.store.read_bytes(), content)


if __name__ == "__main__":
    sy_cases.main()
