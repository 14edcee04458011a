# SPDX-License-Identifier: MIT
"""Every source that has words for people is on the list from which translators get them."""

import os
import pathlib
import re
import subprocess
import unittest

import sy_cases

SOURCE = pathlib.Path(os.environ["SY_SOURCE_DIR"])
MARKED = re.compile(r"(?<!\w)(?:_|N_|C_|P_) ?\(\s*\"")


def sources_with_words():
    found = set()
    for room in ("core", "ui", "app"):
        for path in (SOURCE / room).rglob("*.[ch]"):
            if MARKED.search(path.read_text(encoding="utf-8")):
                found.add(str(path.relative_to(SOURCE)))
    for path in (SOURCE / "data").rglob("*.ui"):
        found.add(str(path.relative_to(SOURCE)))
    return found


class Words(unittest.TestCase):
    def test_every_source_with_words_is_on_the_list(self):
        listed = [line for line in (SOURCE / "data/po/POTFILES").read_text().splitlines()
                  if line and not line.startswith("#")]
        self.assertEqual(listed, sorted(set(listed)), "sorted, each once")
        self.assertEqual(sources_with_words() ^ set(listed), set(), "run data/po/list-sources.sh")

    def test_words_can_be_extracted(self):
        done = subprocess.run(["xgettext", f"--directory={SOURCE}", f"--files-from={SOURCE}/data/po/POTFILES",
                               "--from-code=UTF-8", "--output=-", "--keyword=_", "--keyword=N_", "--keyword=C_:1c,2",
                               "--keyword=P_:1,2"], capture_output=True, encoding="utf-8")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn('msgid "Mechanical handling required"', done.stdout)
        self.assertIn('msgid_plural "%u tasks"', done.stdout)
        self.assertIn('msgctxt "shortcuts"', done.stdout)


if __name__ == "__main__":
    sy_cases.main()
