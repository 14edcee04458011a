# SPDX-License-Identifier: MIT
"""Runs the cases of a Python test and reports them in cmocka's words, so that all are counted alike.

Cases are the methods test_… of unittest classes. A skipped case is a failure: a missing prerequisite
must be seen. A case that has a method save_evidence is asked to save it when it fails.
"""

import sys
import traceback
import unittest


class _Result(unittest.TestResult):
    def __init__(self):
        super().__init__()
        self.bad = []
        self.subs = set()

    @staticmethod
    def _name(test):
        return test.id().split(".", 1)[-1].replace(" ", "_")

    def startTest(self, test):
        super().startTest(test)
        print(f"[ RUN      ] {self._name(test)}", flush=True)

    def _fail(self, test, error):
        name = self._name(test)
        self.bad.append(name)
        save = getattr(getattr(test, "test_case", test), "save_evidence", None)
        if save is not None:
            save(name)
        text = error if isinstance(error, str) else "".join(traceback.format_exception(*error))
        print(text, file=sys.stderr)
        print(f"[  FAILED  ] {name}", file=sys.stderr, flush=True)

    def addSuccess(self, test):
        if test not in self.subs:
            print(f"[       OK ] {self._name(test)}", flush=True)

    def addError(self, test, err):
        self._fail(test, err)

    def addFailure(self, test, err):
        self._fail(test, err)

    def addSkip(self, test, reason):
        self._fail(test, f"skipped: {reason}")

    def addSubTest(self, test, subtest, err):
        if err is not None:
            self.subs.add(test)
            self._fail(subtest, err)


def _flat(suite):
    for test in suite:
        if isinstance(test, unittest.TestSuite):
            yield from _flat(test)
        else:
            yield test


def main():
    """Runs every case of the calling script, or with an argument such as 2/3 every third from the second on; exit
    code 0 when all passed."""
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules["__main__"])
    if len(sys.argv) > 1:
        part, parts = map(int, sys.argv[1].split("/"))
        suite = unittest.TestSuite(list(_flat(suite))[part - 1::parts])
    result = _Result()
    suite.run(result)
    print(f"[==========] {result.testsRun} test(s) run.", flush=True)
    if result.bad:
        print(f"[  FAILED  ] {len(result.bad)} test(s), listed below:", file=sys.stderr)
    sys.exit(1 if result.bad or result.testsRun == 0 else 0)
