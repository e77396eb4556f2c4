#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every file with words for people is in po/POTFILES.in, and every translation says all of them,
with the same blanks in braces."""
import gettext
import io
import pathlib
import re
import subprocess
import sys
import tempfile

MARK = re.compile(r'(?<![A-Za-z0-9_])(_|N_|C_|NC_|ngettext|g_dngettext) \(\s*"')


# As Meson's preset for GLib programs, which makes the .pot.
KEYWORDS = ["_", "N_", "C_:1c,2", "NC_:1c,2", "ngettext:1,2", "g_dcgettext:2",
            "g_dngettext:2,3", "g_dpgettext2:2c,3"]


def fresh_pot(root):
    pot = tempfile.NamedTemporaryFile(suffix=".pot")
    subprocess.run(
        ["xgettext", "--files-from=po/POTFILES.in", "--from-code=UTF-8", "-o", pot.name]
        + [f"--keyword={keyword}" for keyword in KEYWORDS],
        cwd=root,
        check=True,
        capture_output=True,
    )
    return pot


BLANK = re.compile(r"\{[a-z-]+\}")


def blanks_lost(po):
    """Words whose translation has other blanks, as “{bar}”, than they have themselves."""
    mo = subprocess.run(["msgfmt", "-o", "-", str(po)], check=True, capture_output=True).stdout
    catalog = gettext.GNUTranslations(io.BytesIO(mo))._catalog
    return [
        words
        for words, said in catalog.items()
        if isinstance(words, str) and set(BLANK.findall(words)) != set(BLANK.findall(said))
    ]


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
    pot = fresh_pot(root)
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
        else:
            faults += [f"po/{language}.po: other blanks: {words}" for words in blanks_lost(po)]
        behind = subprocess.run(["msgcmp", str(po), pot.name], capture_output=True, text=True)
        if behind.returncode:
            faults.append(f"po/{language}.po is behind the sources:\n{behind.stderr}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1])))
