#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the cases of Meson's logs: count-results.py BROKEN FOLDER...

Each FOLDER has a testlog.junit.xml, which knows the cases, and a testlog.json, which knows how the
test programs ended: one that broke off has no failed case, and counts as one. Prints what failed and,
last, "N passed, N failed"; exits 1 when anything failed, when a tree was broken, when a log is
missing, or when nothing ran at all.
"""
import json
import pathlib
import sys
import xml.etree.ElementTree as ET

ENDED_WELL = {"OK", "SKIP", "EXPECTEDFAIL"}


def read_cases(folder):
    """How many passed, and the failed ones as (program, case)."""
    passed, failed = 0, []
    for suite in ET.parse(folder / "testlog.junit.xml").getroot().iter("testsuite"):
        for case in suite.iter("testcase"):
            if case.find("failure") is not None or case.find("error") is not None:
                failed.append((suite.get("name"), case.get("name")))
            elif case.find("skipped") is None:
                passed += 1
    return passed, failed


def read_broken_off(folder, failed):
    """Programs that did not end well and have no failed case to show for it."""
    shown = [name for name, _ in failed]
    for line in (folder / "testlog.json").read_text(encoding="utf-8").splitlines():
        program = json.loads(line)
        if program["result"] not in ENDED_WELL and not any(
                name.endswith(program["name"]) for name in shown):
            yield program["name"], program["result"]


def main():
    n_failed = int(sys.argv[1])
    n_passed = 0
    for folder in map(pathlib.Path, sys.argv[2:]):
        try:
            passed, failed = read_cases(folder)
            failed += list(read_broken_off(folder, failed))
        except (OSError, ET.ParseError, ValueError, KeyError) as problem:
            print(f"no test log: {problem}")
            n_failed += 1
            continue
        for name, case in failed:
            print(f"failed: {name} {case}")
        n_passed += passed
        n_failed += len(failed)
    if n_passed == 0:
        n_failed += 1
    print(f"{n_passed} passed, {n_failed} failed")
    return 1 if n_failed else 0


sys.exit(main())
