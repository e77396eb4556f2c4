#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The top level holds what DEVELOPERS.md says and nothing else; no line left for later."""
import pathlib
import re
import sys

TOP = {
    "README.md", "DEVELOPERS.md", "LICENSE", "meson.build",
    "src", "ui", "data", "tests", "po", "docs",
}
LATER = re.compile(r"\b(TODO|FIXME|XXX)\b(?! \(#\d+\))")


def main(root):
    faults = []
    for path in root.iterdir():
        if path.name not in TOP and not path.name.startswith((".", "_build")):
            faults.append(f"{path.name} does not belong on the top level")
    for name in TOP:
        if not (root / name).exists():
            faults.append(f"{name} is missing")
    for room in ("src", "ui", "data", "tests"):
        for path in (root / room).rglob("*"):
            if path.suffix in {".c", ".h", ".ui", ".css", ".xml", ".in"}:
                for number, line in enumerate(path.read_text("utf-8").split("\n"), 1):
                    if LATER.search(line):
                        faults.append(f"{path.relative_to(root)}:{number}: left for later")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1])))
