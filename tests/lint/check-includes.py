#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Includes that point the wrong way, and words in the wrong room (docs/architecture.md).

The static libraries stop most wrong includes at the compiler; this catches those that would
build by accident of another dependency's include path.
"""
import pathlib
import re
import sys

ALLOWED = {
    "trade": {"trade"},
    "book": {"trade", "book"},
    "draw": {"trade", "draw", "book"},
    "exchange": {"trade", "book", "exchange"},
    "desk": {"trade", "book", "draw", "exchange", "desk"},
    "tool": {"trade", "book", "draw", "exchange", "tool"},
}
# Of book, draw may see the plain structs only.
BOOK_STRUCTS = {"book/ledger.h", "book/finding.h", "book/fold.h", "book/day-account.h", "book/dive-account.h",
                "book/join-preview.h", "book/shift-account.h"}
FORBIDDEN_SYSTEM = {
    "trade": r"gio/|gtk|gdk|cairo|sqlite|stdio\.h|stdlib\.h|time\.h|locale\.h|libintl|glib/gi18n",
    "book": r"gtk|gdk|cairo|pango|adwaita",
    "draw": r"gtk|gdk|sqlite|adwaita|gio/",
    "exchange": r"gtk|gdk|cairo|pango|adwaita|sqlite",
    "desk": r"sqlite|csv\.h",
    "tool": r"gtk|gdk|adwaita|sqlite",
}
SQL = re.compile(r"\"[^\"]*\b(SELECT|INSERT INTO|UPDATE|DELETE FROM|PRAGMA)\b[^\"]*\"")
BANNED_NAMES = re.compile(r"util|helper|misc|common|manager|calc")


def main(root):
    faults = []
    for path in sorted((root / "src").rglob("*.[ch]")):
        room = path.relative_to(root / "src").parts[0]
        name = path.relative_to(root)
        if room not in ALLOWED:
            faults.append(f"{name}: “{room}” is no room of docs/architecture.md")
            continue
        if BANNED_NAMES.search(path.stem):
            faults.append(f"{name}: a name that does not say what is inside")
        text = path.read_text(encoding="utf-8")
        if "SPDX-License-Identifier: GPL-3.0-or-later" not in text.split("\n", 1)[0]:
            faults.append(f"{name}:1: no licence line")
        for number, line in enumerate(text.split("\n"), 1):
            own = re.match(r'\s*#\s*include\s+"([^"]+)"', line)
            if own:
                target = own[1].split("/")[0]
                if "/" in own[1] and target not in ALLOWED[room]:
                    faults.append(f"{name}:{number}: {room} must not include {own[1]}")
                if room == "draw" and target == "book" and own[1] not in BOOK_STRUCTS:
                    faults.append(f"{name}:{number}: draw may see only {sorted(BOOK_STRUCTS)}")
            system = re.match(r"\s*#\s*include\s+<([^>]+)>", line)
            if system and re.match(FORBIDDEN_SYSTEM[room], system[1]):
                faults.append(f"{name}:{number}: {room} must not include <{system[1]}>")
            if room in ("desk", "tool") and SQL.search(line):
                faults.append(f"{name}:{number}: SQL belongs in book")
        lines = text.count("\n")
        if lines > 800:
            faults.append(f"{name}: {lines} lines; split it by concern")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1])))
