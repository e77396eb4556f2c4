#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every file with words for people is in po/POTFILES.in, and every translation is complete."""
import pathlib
import re
import subprocess
import sys

MARK = re.compile(r'(?<![A-Za-z0-9_])(_|N_|C_|NC_|ngettext|g_dngettext) \(\s*"')


def main(root):
    faults = []
    listed = {
        line.strip()
        for line in (root / "po/POTFILES.in").read_text().splitlines()
        if line.strip() and not line.startswith("#")
    }
    spoken = set()
    for path in list((root / "src").rglob("*.c")) + list((root / "src").rglob("*.h")):
        if MARK.search(path.read_text(encoding="utf-8")) and path.name != "msgid.h":
            spoken.add(str(path.relative_to(root)))
    for path in (root / "ui").rglob("*.ui"):
        if 'translatable="yes"' in path.read_text(encoding="utf-8"):
            spoken.add(str(path.relative_to(root)))
    for name in sorted(spoken - listed):
        faults.append(f"po/POTFILES.in: {name} has words and is not listed")
    for name in sorted(listed):
        if not (root / name).exists():
            faults.append(f"po/POTFILES.in: {name} does not exist")
    for language in (root / "po/LINGUAS").read_text().split():
        po = root / "po" / f"{language}.po"
        run = subprocess.run(
            ["msgfmt", "--check", "--statistics", "-o", "/dev/null", str(po)],
            capture_output=True,
            text=True,
            env={"LC_ALL": "C", "PATH": "/usr/bin:/bin"},
        )
        said = run.stderr.strip()
        if run.returncode or "untranslated" in said or "fuzzy" in said:
            faults.append(f"po/{language}.po: {said}")
        if len(sys.argv) > 2:
            fresh = subprocess.run(
                ["msgcmp", str(po), sys.argv[2]], capture_output=True, text=True
            )
            if fresh.returncode:
                faults.append(f"po/{language}.po is behind the sources:\n{fresh.stderr}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1])))
