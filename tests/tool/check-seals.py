#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Proves the seals of a job file by docs/file-format.md alone, with Python's own SQLite and SHA-256:
another hand's reading of that page. Usage: check-seals.py JOB; prints how many seals hold."""
import hashlib
import sqlite3
import struct
import sys

PILE = ("id mark bent row note x_m y_m shape width_m void_m bar n_bars bar_inset_m batter "
        "bearing_rad head_m cut_m mudline_m toe_m").split()
REAL = {"x_m", "y_m", "width_m", "void_m", "bar_inset_m", "batter", "bearing_rad", "head_m", "cut_m",
        "mudline_m", "toe_m", "amount"}
ZERO_WHEN_UNKNOWN = {"width_m", "void_m"}
ENTRY = ("id act at_us who shift kind pile what bars count amount start_us end_us up_us note "
         "of").split()


def field(value):
    data = value.encode() if isinstance(value, str) else value
    return str(len(data)).encode() + b":" + data


def said(column, value):
    if column in REAL:
        if value is None and column in ZERO_WHEN_UNKNOWN:
            value = 0.0
        return "" if value is None else struct.pack(">d", value).hex()
    if column == "n_bars":
        return str(value or 0)
    return "" if value is None else str(value)


def read(db):
    """Every row by its id, in canonical form; and the seals in the order of the file."""
    piles = {seq: id_ for seq, id_ in db.execute("SELECT seq, id FROM pile")}
    shifts = {seq: id_ for seq, id_ in db.execute("SELECT seq, id FROM shift")}
    entries = {seq: id_ for seq, id_ in db.execute("SELECT seq, id FROM entry")}
    rows, seals = {}, []
    for row in db.execute(f"SELECT {', '.join(PILE)} FROM pile"):
        rows[row[0]] = b"".join(map(field, ["pile"] + [said(c, v) for c, v in zip(PILE, row)]))
    for row in db.execute("SELECT id, day, watch, opened_us, who FROM shift"):
        rows[row[0]] = b"".join(map(field, ["shift"] + [str(v) for v in row]))
    for row in db.execute(f"SELECT {', '.join(ENTRY)} FROM entry ORDER BY seq"):
        entry = dict(zip(ENTRY, row))
        entry["act"] = entries[entry["act"]]
        entry["shift"] = shifts.get(entry["shift"], "")
        entry["pile"] = piles.get(entry["pile"], "")
        entry["of"] = entries.get(entry["of"], "")
        if entry["kind"] == "seal":
            seals.append(entry)
        else:
            rows[entry["id"]] = b"".join(map(field, ["entry"] + [said(c, entry[c]) for c in ENTRY]))
    return rows, seals


def holds(job, rows, seal, hashes):
    head, last = seal["note"].rsplit("sha256 ", 1)
    lines = head.splitlines()
    assert lines[0] == "lastbent seal 1", seal["id"]
    names = []
    for words in map(str.split, lines[1:]):
        if words[0] == "after":
            assert hashes[words[1]] == words[2], f"{seal['id']} does not come after {words[1]}"
        elif words[0] == "rows":
            names += [f"{words[1]}-{n}" for n in range(int(words[2]), int(words[3]) + 1)]
    hashed = b"".join(map(field, [job["id"], job["made"], seal["id"], str(seal["at_us"]), seal["who"],
                                  seal["shift"], head]))
    hashed += b"".join(rows[name] for name in names)
    assert hashlib.sha256(hashed).hexdigest() == last, f"{seal['id']} is not of what is on record"
    hashes[seal["id"]] = last


def main(path):
    # FIPS 180-4, the examples of its companion document: "abc" and the empty message.
    assert hashlib.sha256(b"abc").hexdigest() == (
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")
    db = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    job = dict(db.execute("SELECT key, value FROM job"))
    rows, seals = read(db)
    hashes = {}
    for seal in seals:
        holds(job, rows, seal, hashes)
    print(f"{len(hashes)} seals hold")


main(sys.argv[1])
