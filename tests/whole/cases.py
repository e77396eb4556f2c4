# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs the cases of a test program in the Test Anything Protocol, and says what is in a job file
when the window is not asked: by the shell command, and by SQLite."""
import hashlib
import json
import os
import pathlib
import sqlite3
import subprocess
import sys
import traceback

import driver

BUILD = pathlib.Path(os.environ["LB_BUILD_DIR"])


def main(*cases, **screen):
    """Each case is a function of a session; its first comment line is its name."""
    print(f"1..{len(cases)}", flush=True)
    failed = 0
    for number, case in enumerate(cases, 1):
        name = case.__doc__.strip().splitlines()[0].rstrip(".")
        session = driver.Session(**screen)
        try:
            case(session)
            print(f"ok {number} {name}", flush=True)
        except Exception:  # pylint: disable=broad-except
            failed += 1
            print(f"not ok {number} {name}")
            tell(traceback.format_exc())
            picture = BUILD / "tests/whole" / f"{pathlib.Path(sys.argv[0]).stem}-{number}.png"
            picture.parent.mkdir(parents=True, exist_ok=True)
            session.picture(picture)
            tell(f"The screen: {picture}")
            for program in session.programs:
                tell(program.log())
        finally:
            session.end()
    sys.exit(1 if failed else 0)


def tell(text):
    for line in text.splitlines():
        print(f"# {line}", flush=True)


def tool(*words, may_refuse=False):
    ran = subprocess.run([str(BUILD / "src/tool/lastbent-tool"), *map(str, words)],
                         capture_output=True, text=True, timeout=60, check=False)
    if ran.returncode and not may_refuse:
        raise AssertionError(f"lastbent-tool {' '.join(map(str, words))}: {ran.stderr}")
    return ran.stdout


class Job:
    """A job file of the case's own."""

    def __init__(self, session, name="job.lastbent"):
        self.path = session.folder / "home" / name

    @classmethod
    def demo(cls, session):
        job = cls(session, "demo.lastbent")
        tool("demo", job.path)
        return job

    @classmethod
    def empty(cls, session, name="job.lastbent", **options):
        job = cls(session, name)
        tool("new", *(f"--{key}={value}" for key, value in options.items()), job.path)
        return job

    @classmethod
    def of_list(cls, session, text):
        """A job with the piles of a list."""
        job = cls.empty(session)
        path = session.folder / "home" / "piles.csv"
        path.write_text(text)
        tool("take-piles", job.path, path)
        path.unlink()
        return job

    def totals(self):
        return json.loads(tool("totals", self.path, "--json"))

    def pile(self, mark):
        return json.loads(tool("cut", self.path, mark, "--json"))["pile"]

    def rows(self, sql, *values):
        """The file itself, read without the program's help."""
        with sqlite3.connect(f"file:{self.path}?mode=ro", uri=True) as connection:
            return connection.execute(sql, values).fetchall()

    def n_entries(self):
        return self.rows("SELECT count(*) FROM entry")[0][0]

    def last_entries(self, n):
        """kind, mark, what, amount, note of the last entries, in order."""
        return self.rows(
            "SELECT kind, ifnull(mark, ''), what, amount, entry.note FROM entry"
            " LEFT JOIN pile ON pile.seq = entry.pile ORDER BY entry.seq DESC LIMIT ?", n)[::-1]

    def check(self):
        """Nothing is wrong in any part of the file."""
        tool("check", self.path)

    def digest(self):
        return hashlib.sha256(self.path.read_bytes()).hexdigest()
