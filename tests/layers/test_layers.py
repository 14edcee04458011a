# SPDX-License-Identifier: MIT
"""The house holds: who includes whom, what plain C calls, what is exported, what stands at the top."""

import json
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

import sy_cases

SOURCE = pathlib.Path(os.environ["SY_SOURCE_DIR"])
BUILD = pathlib.Path(os.environ["SY_BUILD_DIR"])
HERE = SOURCE / "tests" / "layers"

# Headers in <> by library; anything else in <> is the C library's.
LIBRARIES = [
    ("gettext", r"glib/gi18n.*|libintl\.h"),
    ("glib", r"glib.*|gio/.*|gobject/.*"),
    ("crypto", r"openssl/.*"),
    ("json", r"json-glib/.*"),
    ("sqlite", r"sqlite3.*"),
    ("cairo", r"cairo.*"),
    ("pango", r"pango/.*"),
    ("gtk", r"gtk/.*|gdk/.*|gsk/.*|graphene.*"),
]
PACKAGES = {"glib": "gio-2.0 gio-unix-2.0", "crypto": "libcrypto", "json": "json-glib-1.0",
            "sqlite": "sqlite3", "cairo": "cairo", "pango": "pangocairo", "gtk": "gtk4"}
# Headers of resources, made by the build. Lists of methods are recognised by their ending.
GENERATED = re.compile(r".*-resource\.h")
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "app", "core", "ui", "tests",
             "data", "docs"}
INCLUDE = re.compile(r'^\s*#\s*include\s+(?:"([^"]+)"|<([^>]+)>)', re.M)
COMMENT = re.compile(r"/\*.*?\*/", re.S)
FIRST = re.compile(r'\s*#include "([^"]+)"')
GUARDED = re.compile(r"\s*#ifndef (\w+)\n#define \1\n.*\n#endif\s*", re.S)
# Made by the sanitizers and the linker, not called by our source.
INSTRUMENTATION = re.compile(r"__(asan|ubsan|lsan|sanitizer|odr_asan|stack_chk|gcov).*"
                             r"|_GLOBAL_OFFSET_TABLE_")


def read_table():
    rooms, headers = {}, {}
    for line in (HERE / "layers.txt").read_text().splitlines():
        line = line.split("#", 1)[0].strip()
        if not line:
            continue
        parts = [part.split() for part in line.split("|")]
        if parts[0][0].endswith("-headers"):
            headers[parts[0][0].removesuffix("-headers")] = {name + ".h" for name in parts[1]}
        else:
            rooms[parts[0][0]] = (parts[1], set(parts[2]))
    return rooms, headers


ROOMS, HEADERS = read_table()
COMPILED = json.loads((BUILD / "compile_commands.json").read_text(encoding="utf-8"))


def files_of(room, *suffixes):
    return sorted(p for p in (SOURCE / room).iterdir() if p.suffix in suffixes)


def sources_of(room):
    """What is in the sources that the build compiles, without comments."""
    made = {pathlib.Path(entry["file"]).name for entry in COMPILED}
    return [COMMENT.sub("", path.read_text(encoding="utf-8")) for path in files_of(room, ".c") if path.name in made]


def room_of_header():
    where = {}
    for room in ROOMS:
        for header in files_of(room, ".h"):
            where.setdefault(header.name, []).append(room)
    return where


def archive_of(room):
    return BUILD / room / f"libsy-{room.split('/')[1]}.a"


def symbols(archive, *options):
    out = subprocess.run(["nm", "-P", *options, str(archive)], check=True, capture_output=True,
                         encoding="utf-8").stdout
    return {line.split()[0] for line in out.splitlines() if line and not line.endswith(":")}


def tracked(*paths):
    """Files of the project: what git knows, or everything in an unpacked copy without git."""
    if (SOURCE / ".git").exists() and shutil.which("git"):
        out = subprocess.run(["git", "-c", "safe.directory=*", "-C", str(SOURCE), "ls-files", *paths],
                             check=True, capture_output=True, encoding="utf-8").stdout
        return out.splitlines()
    return [str(p.relative_to(SOURCE)) for root in (paths or ["."])
            for p in (SOURCE / root).rglob("*") if p.is_file()]


class Layers(unittest.TestCase):
    def test_every_folder_with_source_is_a_room_of_the_table(self):
        folders = {str(pathlib.Path(f).parent) for f in tracked("core", "ui", "app")
                   if f.endswith((".c", ".h"))}
        self.assertEqual(folders - set(ROOMS), set())

    def test_header_names_are_unique(self):
        self.assertEqual({n: r for n, r in room_of_header().items() if len(r) > 1}, {})

    def test_rooms_include_only_what_their_row_allows(self):
        where, wrong, seen = room_of_header(), [], 0
        for room, (below, libraries) in ROOMS.items():
            for path in files_of(room, ".c", ".h"):
                for own, system in INCLUDE.findall(path.read_text(encoding="utf-8")):
                    seen += 1
                    label = f"{path.relative_to(SOURCE)}: {own or system}"
                    if own:
                        homes = where.get(own)
                        if "/" in own:
                            wrong.append(f"{label}: with a folder")
                        elif homes is None:
                            # Generated beside the room's archive (lists, resources).
                            if not own.endswith(".def") and not GENERATED.fullmatch(own):
                                wrong.append(f"{label}: no such header")
                        elif homes[0] != room and homes[0] not in below:
                            wrong.append(f"{label}: is in {homes[0]}")
                        elif homes[0] != room and own.endswith("-private.h"):
                            wrong.append(f"{label}: is private to {homes[0]}")
                        continue
                    library = next((n for n, p in LIBRARIES if re.fullmatch(p, system)), None)
                    allowed = set().union(*(HEADERS.get(name, set()) for name in libraries))
                    if library is None and "plain" in libraries and system not in allowed:
                        wrong.append(f"{label}: not for a plain C room")
                    if library is not None and library not in libraries:
                        wrong.append(f"{label}: {library} has no place here")
        self.assertGreater(seen, 100)
        self.assertEqual(wrong, [])

    def test_every_header_may_be_included_twice(self):
        wrong = [f"{room}/{header.name}" for room in ROOMS for header in files_of(room, ".h")
                 if not GUARDED.fullmatch(COMMENT.sub("", header.read_text(encoding="utf-8")))]
        self.assertEqual(wrong, [])

    # The build compiled alone what a source of its room includes before anything else, but a door or the window is
    # built with more paths than it has: whether those of its room are enough, the preprocessor says for all at once.
    def test_every_header_compiles_alone_with_the_paths_of_its_room(self):
        wrong, seen = [], 0
        with tempfile.TemporaryDirectory() as folder:
            unit = pathlib.Path(folder, "unit.c")
            for room, (below, libraries) in ROOMS.items():
                packages = " ".join(PACKAGES[n] for n in sorted(libraries) if n in PACKAGES).split()
                flags = subprocess.run(["pkg-config", "--cflags", *packages], check=True, encoding="utf-8",
                                       capture_output=True).stdout.split() if packages else []
                paths = [f"-I{SOURCE / r}" for r in [room, *below]]
                first = {match.group(1) for match in map(FIRST.match, sources_of(room)) if match}
                headers = [header.name for header in files_of(room, ".h")]
                rest = [[header] for header in headers if header not in first]
                for names, how in [(headers, "-E"), *((names, "-fsyntax-only") for names in rest)]:
                    seen += len(names)
                    unit.write_text("".join(f'#include "{name}"\n' for name in names) + "extern int sy_unit;\n")
                    done = subprocess.run(["cc", "-std=c17", how, "-Wall", "-Wextra", "-Werror", "-D_DEFAULT_SOURCE",
                                           *paths, *flags, str(unit), "-o", os.devnull],
                                          capture_output=True, encoding="utf-8")
                    if done.returncode != 0:
                        wrong.append(f"{room}/{', '.join(names)[:80]}: {done.stderr[:400]}")
        self.assertGreater(seen, 100)
        self.assertEqual(wrong, [])


class Symbols(unittest.TestCase):
    def test_plain_c_rooms_call_only_what_is_allowed(self):
        rows = [line.split() for line in (HERE / "plain-c-symbols.txt").read_text().splitlines()
                if line and not line.startswith("#")]
        plain = [room for room, (_, libraries) in ROOMS.items() if "plain" in libraries]
        own = set().union(*(symbols(archive_of(room), "--defined-only") for room in plain))
        wrong = {}
        for room in plain:
            allowed = {row[0] for row in rows if len(row) == 1 or row[1] == room}
            calls = symbols(archive_of(room), "--undefined-only") - own - allowed
            calls = {name for name in calls if not INSTRUMENTATION.fullmatch(name)}
            if calls:
                wrong[room] = sorted(calls)
        self.assertEqual(wrong, {})

    def test_exported_names_begin_with_the_prefix(self):
        wrong, seen = {}, 0
        for room in ROOMS:
            archive = archive_of(room)
            if room.startswith("app/"):
                continue
            names = symbols(archive, "--defined-only", "--extern-only")
            seen += len(names)
            bad = sorted(n for n in names
                         if not n.startswith(("sy_", "_sy_"))
                         and not INSTRUMENTATION.fullmatch(n.replace(".", "_")))
            if bad:
                wrong[room] = bad
        self.assertGreater(seen, 100)
        self.assertEqual(wrong, {})

    def test_exported_names_are_of_one_room(self):
        """The linker takes whichever comes first, and says nothing."""
        owners = {}
        for room in ROOMS:
            if room.startswith("app/"):
                continue
            for name in symbols(archive_of(room), "--defined-only", "--extern-only"):
                if not INSTRUMENTATION.fullmatch(name.replace(".", "_")):
                    owners.setdefault(name, []).append(room)
        self.assertEqual({name: rooms for name, rooms in owners.items() if len(rooms) > 1}, {})

    def test_the_command_line_does_not_link_gtk(self):
        cli = BUILD / "app" / "cli" / "steelyard-cli"
        out = subprocess.run(["readelf", "-d", str(cli)], check=True, capture_output=True,
                             encoding="utf-8").stdout
        needed = re.findall(r"\(NEEDED\).*\[(.+)\]", out)
        self.assertTrue(any(name.startswith("libglib-2.0") for name in needed), needed)
        self.assertEqual([n for n in needed if re.match(r"lib(gtk|gdk|gsk|X11|wayland|adwaita)", n)], [])


class House(unittest.TestCase):
    def test_top_level_has_only_what_belongs_there(self):
        top = {f.split("/")[0] for f in tracked()}
        self.assertEqual({name for name in top - TOP_LEVEL if not name.startswith(".")}, set())
        self.assertEqual(TOP_LEVEL - top, set())

    def test_every_source_file_names_its_licence_first(self):
        wrong = []
        for name in tracked("core", "ui", "app", "tests"):
            path = SOURCE / name
            if path.suffix in (".c", ".h") and not path.read_text(encoding="utf-8").startswith(
                    "/* SPDX-License-Identifier: MIT */"):
                wrong.append(name)
        self.assertEqual(wrong, [])

    def test_every_method_has_vectors_and_a_page(self):
        meson = (SOURCE / "core" / "methods" / "meson.build").read_text()
        listed = re.search(r"^methods = \[(.*?)\]", meson, re.M | re.S).group(1)
        methods = re.findall(r"'([a-z-]+)'", listed)
        self.assertIn("lift", methods)
        published = SOURCE / "tests" / "published"
        vectors = "\n".join(p.read_text(encoding="utf-8") for p in published.glob("*.txt"))
        for method in methods:
            with self.subTest(method=method):
                self.assertIn(f'"method": "{method}"', vectors)
                self.assertRegex(vectors, r"(?m)^refuse\b")
                page = (SOURCE / "docs" / "methods" / f"{method}.md").read_text(encoding="utf-8")
                for heading in ("Formula", "Source", "Range", "Worked example", "What is outside"):
                    self.assertRegex(page, rf"(?m)^##+ .*{heading}", f"{method}: heading {heading}")


if __name__ == "__main__":
    sy_cases.main()
