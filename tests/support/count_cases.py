# SPDX-License-Identifier: MIT
"""Counts test cases in meson's log: count_cases.py TROUBLE TESTLOG BUILD.

TROUBLE: "" when meson test ended well; "?N" when it ended with exit code N, which failed cases
explain; any other text is a failure of its own. Test programs report their cases in cmocka's words
or with a last line "N passed, N failed". A program that says nothing of the kind counts as one case,
and one that ends badly counts as at least one failure.
Prints what failed and then, alone on the last line, "N passed, N failed". Exit code 0: some passed,
none failed.
"""

import json
import pathlib
import re
import sys

RUN = re.compile(r"^\[=+\].*?(\d+) test\(s\) run\.", re.M)
PASSED_ONE = re.compile(r"^\[       OK \] (\S+)", re.M)
FAILED_SUM = re.compile(r"^\[  FAILED  \].*?(\d+) test\(s\), listed below", re.M)
FAILED_ONE = re.compile(r"^\[  FAILED  \] (?!.*test\(s\))(\S+)", re.M)
PLAIN = re.compile(r"^(\d+) passed, (\d+) failed$", re.M)
SKIPPED_ONE = re.compile(r"^\[  SKIPPED \] (?!.*test\(s\))(\S+)", re.M)


def count(test):
    """Cases that passed and failed in one program, and the names of those that failed."""
    text = test.get("stdout", "") + "\n" + test.get("stderr", "")
    well = test["result"] in ("OK", "EXPECTEDFAIL")
    ran = RUN.search(text) is not None or PASSED_ONE.search(text) is not None
    plain = PLAIN.findall(text)
    if not ran and not plain:
        return (1, 0, []) if well else (0, 1, [test["result"]])
    passed = len(PASSED_ONE.findall(text)) + sum(int(good) for good, _ in plain)
    names = sorted(set(FAILED_ONE.findall(text)) | set(SKIPPED_ONE.findall(text)))
    failed = max(sum(int(n) for n in FAILED_SUM.findall(text)), len(names))
    failed += sum(int(bad) for _, bad in plain)
    if not well and failed == 0:
        failed, names = 1, [test["result"] + f" (exit code {test.get('returncode')})"]
    return passed, failed, names


def main():
    trouble, log, build = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
    passed = failed = programs = 0
    lines = log.read_text(encoding="utf-8").splitlines() if log.exists() else []
    for line in lines:
        try:
            test = json.loads(line)
        except ValueError:
            continue  # cut off when the time was up, which counts as one failure below
        programs += 1
        good, bad, names = count(test)
        passed += good
        failed += bad
        if bad:
            print(f"failed: {test['name']}: {', '.join(names)}")
    if trouble and not (trouble.startswith("?") and failed):
        failed += 1
        print(f"failed: {'meson test, exit code ' + trouble[1:] if trouble[0] == '?' else trouble}")
    if not trouble and passed == 0:
        failed += 1
        print("failed: no test ran")
    print(f"{programs} test programs; their logs: {build}/meson-logs/testlog.txt")
    print(f"{passed} passed, {failed} failed")
    return 0 if failed == 0 else 1


if __name__ == "__main__":
    sys.exit(main())
