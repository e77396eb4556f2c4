#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the cases of Meson's JUnit logs: count-results.py BROKEN LOG...

Prints each failed case and, last, "N passed, N failed"; exits 1 when anything failed, when a tree
was broken, when a log is missing, or when nothing ran at all.
"""
import sys
import xml.etree.ElementTree as ET


def main():
    failed = int(sys.argv[1])
    passed = 0
    for path in sys.argv[2:]:
        try:
            root = ET.parse(path).getroot()
        except (OSError, ET.ParseError) as problem:
            print(f"no test log: {problem}")
            failed += 1
            continue
        for suite in root.iter("testsuite"):
            for case in suite.iter("testcase"):
                if case.find("failure") is not None or case.find("error") is not None:
                    print(f"failed: {suite.get('name')} {case.get('name')}")
                    failed += 1
                elif case.find("skipped") is None:
                    passed += 1
    if passed == 0:
        failed += 1
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


sys.exit(main())
