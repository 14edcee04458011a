# SPDX-License-Identifier: MIT
"""Drives the window from outside, as a person does who uses only the keyboard and a screen reader.

Keys go in through the X server; what is asserted comes out of the accessibility tree. Every wait is
for a condition; its limit is only a backstop.
"""

import os
import pathlib
import re
import subprocess
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

from steelyard import BUILD, WINDOW  # noqa: E402

LIMIT_SECONDS = 30
# A control that is part of another one and has its name: the button inside a drop-down, say.
INNER = re.compile(r"Gtk|^$")
INTERACTIVE = {"push button", "toggle button", "check box", "radio button", "combo box", "text",
               "entry", "password text", "spin button", "slider", "link", "menu item", "list item",
               "table cell", "tree table", "page tab", "switch", "menu"}


class Lost(AssertionError):
    """Something that should be there did not come."""


def until(holds, what, limit=LIMIT_SECONDS):
    """The first true value of holds(); Lost when none comes."""
    end = time.monotonic() + limit
    pause = 0.04
    while True:
        try:
            value = holds()
        except GLib.Error:
            value = None  # the node went away while it was being read
        if value:
            return value
        if time.monotonic() > end:
            raise Lost(f"waited {limit} s for {what}")
        # Looking takes longer than waiting: what is slow to come is asked for less often.
        time.sleep(pause)
        pause = min(pause * 1.5, 0.25)


def key(*keys):
    subprocess.run(["xdotool", "key", "--clearmodifiers", "--delay", "12", *keys], check=True)


def type_text(text):
    subprocess.run(["xdotool", "type", "--clearmodifiers", "--delay", "12", "--", text], check=True)


def children(node):
    for i in range(node.get_child_count()):
        child = node.get_child_at_index(i)
        if child is not None:
            yield child


def walk(node):
    """The node and everything below it that is shown, from top to bottom."""
    yield node
    for child in children(node):
        try:
            yield from walk(child)
        except GLib.Error:
            continue


def has(node, state):
    return node.get_state_set().contains(state)


def name_of(node):
    """The name a screen reader says: an inner part has that of what it is part of."""
    while node is not None:
        name = node.get_name() or ""
        if not INNER.match(name):
            return name
        node = node.get_parent()
    return ""


def text_of(node):
    """What stands in a text field."""
    text = node.get_text_iface()
    return "" if text is None else Atspi.Text.get_text(text, 0, Atspi.Text.get_character_count(text))


class Focus:
    """Where the keyboard focus is, as the toolkit tells it; much quicker than looking through the tree."""

    def __init__(self):
        self.node, self.moves = None, 0
        self._listener = Atspi.EventListener.new(self._moved)
        if not self._listener.register("object:state-changed:focused"):
            raise Lost("no accessibility events")

    def _moved(self, event):
        if event.detail1 == 1:
            self.node, self.moves = event.source, self.moves + 1

    def read(self):
        """Takes in what has been told since."""
        while GLib.MainContext.default().iteration(False):
            pass
        return self.node

    def wait_move(self, moves, limit=1.0):
        """Until the focus has moved on since, or it is plain that it stays."""
        end = time.monotonic() + limit
        while self.moves == moves and time.monotonic() < end:
            self.read()
            time.sleep(0.005)


class Window:
    """A running steelyard."""

    def __init__(self, store, folder):
        self.store, self.folder = store, pathlib.Path(folder)
        self.process = None
        self.focus = Focus()
        self.log = self.folder / "window.log"

    def start(self, *arguments):
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(
                [str(WINDOW), "--store", str(self.store), *arguments], stdin=subprocess.DEVNULL,
                stdout=log, stderr=log, env={**os.environ, "GTK_A11Y": "atspi"})
        until(lambda: self.root() is not None and list(self.frames()), "the window")
        return self

    def root(self):
        desktop = Atspi.get_desktop(0)
        for application in children(desktop):
            if application.get_process_id() == self.process.pid:
                return application
        if self.process.poll() is not None:
            raise Lost(f"the program ended with {self.process.returncode}; see its log")
        return None

    def frames(self):
        return [n for n in children(self.root()) if n.get_child_count()]

    def nodes(self):
        """Every node. The pages that are not in front are among them: GTK 4.8 does not mark them, so what
        is looked for must have a name or a role that only the right page has."""
        # Read anew each time: what a page showed a moment ago may be gone.
        self.root().clear_cache()
        return walk(self.root())

    def find(self, name, role=None):
        """The first node whose name matches, None when there is none."""
        pattern = re.compile(name)
        for node in self.nodes():
            if role is not None and node.get_role_name() != role:
                continue
            if pattern.search(node.get_name() or ""):
                return node
        return None

    def see(self, name, role=None):
        return until(lambda: self.find(name, role), f"“{name}” on the screen")

    def focused(self):
        """The node with the focus, None when there is none."""
        node = self.focus.read()
        try:
            if node is not None and has(node, Atspi.StateType.FOCUSED):
                return node
        except GLib.Error:
            pass  # it went away with its page
        return next((n for n in self.nodes() if has(n, Atspi.StateType.FOCUSED)), None)

    def press(self, *keys):
        """Keys that move the focus."""
        self.focus.read()
        moves = self.focus.moves
        key(*keys)
        self.focus.wait_move(moves)

    def tab_to(self, name, limit=240, back=False):
        """Presses Tab until the focus is on a control with that name."""
        pattern, passed, start = re.compile(name), [], None
        for _ in range(limit):
            node = self.focused()
            if node is not None:
                if pattern.search(name_of(node)):
                    return node
                if passed and node == start:
                    break  # once around
                start = start or node
                passed.append(name_of(node))
            self.press("ISO_Left_Tab" if back else "Tab")
        raise Lost(f"Tab did not reach “{name}”; it passed {passed}")

    def enter(self, name, text):
        """Goes to a field with Tab, types over what stands in it, and reads it back."""
        field = self.tab_to(name)
        key("ctrl+a")
        type_text(text)
        until(lambda: text_of(self.focused() or field) == text, f"“{text}” in “{name}”")

    def quit(self):
        """Closes with the keyboard; answers the exit code.

        Names of widgets are quarks, and past 2048 of them GLib leaves its old table behind on purpose: that one
        report of the leak check is no failure, anything beside it is.
        """
        key("ctrl+q")
        code = self.process.wait(timeout=LIMIT_SECONDS)
        log = self.log.read_text(encoding="utf-8", errors="replace")
        grown = "SUMMARY: AddressSanitizer: 16384 byte(s) leaked in 1 allocation(s)."
        return 0 if code == 1 and grown in log and log.count("SUMMARY:") == 1 else code

    def kill(self):
        if self.process is not None and self.process.poll() is None:
            self.process.kill()
            self.process.wait()

    def dump(self):
        """The accessibility tree as text."""
        lines = []

        def put(node, depth):
            states = [s.value_nick for s in node.get_state_set().get_states()
                      if s.value_nick in ("focused", "checked", "selected", "invalid-entry", "focusable",
                                      "sensitive")]
            content = text_of(node) if node.get_text_iface() is not None else ""
            lines.append(f"{'  ' * depth}{node.get_role_name()} {node.get_name()!r} "
                         f"{content!r} {' '.join(states)}".rstrip())
            for child in children(node):
                put(child, depth + 1)

        try:
            put(self.root(), 0)
        except (GLib.Error, AssertionError, AttributeError) as error:
            lines.append(f"(the tree ends here: {error})")
        return "\n".join(lines) + "\n"

    def save_evidence(self, name):
        """A picture, the tree, the log and the store, for whoever has to find out why."""
        folder = BUILD / "drives" / re.sub(r"\W+", "-", name)
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "tree.txt").write_text(self.dump(), encoding="utf-8")
        subprocess.run(["import", "-window", "root", folder / "screen.png"], check=False)
        for path in (self.log, pathlib.Path(self.store)):
            if path.exists():
                (folder / path.name).write_bytes(path.read_bytes())
        print(f"evidence: {folder}")

    def unnamed(self):
        """Controls that a screen reader could only call by the toolkit's name for them."""
        wrong = []
        for node in self.nodes():
            if node.get_role_name() not in INTERACTIVE:
                continue
            name, parent = node.get_name() or "", node.get_parent()
            if not INNER.match(name):
                if name.startswith("_"):
                    wrong.append(f"{node.get_role_name()} {name!r}: the underscore would be read out")
                continue
            # A drop-down's button and its rows are part of a combo box that has a name.
            if name_of(node) and any(p.get_role_name() in ("combo box", "list item", "table cell")
                                     for p in ancestors(node)):
                continue
            wrong.append(f"{node.get_role_name()} {name!r} in {name_of(parent)!r}")
        return wrong


def ancestors(node):
    node = node.get_parent()
    while node is not None:
        yield node
        node = node.get_parent()
