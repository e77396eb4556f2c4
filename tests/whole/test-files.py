#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Files that are not as they should be are met with a sentence, and left as they are; two windows
on one file stay in step."""
import os
import re
import sqlite3

from cases import Job, main, tool


def change(job, *sql):
    with sqlite3.connect(job.path) as connection:
        for statement in sql:
            connection.execute(statement)


def is_met_with(session, job, *sentences):
    """Opening the file says the sentences and changes nothing; returns the program."""
    before = job.digest() if job.path.exists() else None
    beside = sorted(os.listdir(job.path.parent))
    program = session.start(job.path)
    for sentence in sentences:
        program.reads(sentence)
    assert (job.digest() if job.path.exists() else None) == before
    assert sorted(os.listdir(job.path.parent)) == beside
    return program


def says_that_it_is_newer(session):
    """A file of a newer version is not opened, and not changed."""
    job = Job.demo(session)
    change(job, "PRAGMA user_version = 99")
    is_met_with(session, job, "The file is from a newer version",
                "bring this program up to date").quit()


def says_that_it_is_foreign(session):
    """A database of another program, a text and an empty file are not job files."""
    job = Job(session, "other.lastbent")
    change(job, "CREATE TABLE notes (text TEXT)", "PRAGMA application_id = 7")
    is_met_with(session, job, "This is not a job file").quit()
    job.path.write_text("Pile,Northing,Easting\n1,2,3\n" * 100)
    is_met_with(session, job, "This is not a job file").quit()
    job.path.write_bytes(b"")
    is_met_with(session, job, "This is not a job file").quit()


def says_that_it_is_damaged(session):
    """A file whose middle is overwritten is not opened, and not changed."""
    job = Job.demo(session)
    whole = bytearray(job.path.read_bytes())
    for page in range(8192, len(whole) - 4096, 8192):
        whole[page : page + 4096] = b"\xa5" * 4096
    job.path.write_bytes(whole)
    is_met_with(session, job, "The file is damaged", "Look at the newest copy").quit()


def says_that_it_is_missing(session):
    """A file that is not there is said to be so, and can be tried again."""
    job = Job(session)
    program = is_met_with(session, job, "The file cannot be opened",
                          "Check that it is still there")
    tool("new", "--name=Found again", job.path)
    program.press(program.find("button", "Try Again"))
    program.wait(lambda: program.window.again().name == "Found again", "the job to be opened")
    program.quit()


def reads_what_may_not_be_written(session):
    """A file that may not be written is shown, and nothing can be recorded."""
    job = Job.demo(session)
    job.path.chmod(0o444)
    before = job.digest()
    program = session.start(job.path)
    program.reads("Tern Cove Cannery Wharf")
    program.reads("Opened for reading; nothing can be recorded.")
    bar = program.find("label", "Opened for reading; nothing can be recorded.")
    program.wait(lambda: bar.extents()[3] > 0, "the bar that says so")
    program.key("alt+2")
    page = program.find("group", "Shift")
    program.wait(lambda: page.extents()[2] > 0, "the Shift page on top")
    program.press(program.find("text box", "Pile", within=page))
    program.type("G4")
    program.press(program.find("button", "Record", within=page))
    assert program.find("text box", "Pile", within=page).text() == ""
    assert not program.find("button", "Take back the last entry", within=page).is_("sensitive")
    program.quit()
    assert job.digest() == before


def shows_what_others_enter(session):
    """What one program records, another that has the file open shows by itself."""
    job = Job.demo(session)
    first, second = session.start(job.path), session.start(job.path)
    pages = []
    for program in (first, second):
        program.reads("Tern Cove Cannery Wharf")
        program.raise_window()
        program.key("alt+2")
        pages.append(program.find("group", "Shift"))
    first.raise_window()
    first.press(first.find("text box", "Pile", within=pages[0]))
    first.type("G4")
    first.key("Tab")
    first.type("2")
    first.key("Return")
    first.reads("2 bars", within=pages[0])
    second.reads("2 bars", within=pages[1])

    # And back: the other takes it back, the first shows that.
    second.raise_window()
    second.press(second.find("button", "Take back the last entry", within=pages[1]))
    first.reads("No pile yet.", within=pages[0])
    assert job.pile("G4")["bars_left_count"] == 8
    first.quit()
    second.quit()
    job.check()


def opens_a_second_window(session):
    """New Window shows the same job, and stays in step with the first."""
    job = Job.demo(session)
    program = session.start(job.path)
    program.reads("Tern Cove Cannery Wharf")
    program.key("ctrl+shift+n")
    program.wait(lambda: len(program.windows()) == 2, "a second window")
    first, second = program.windows()
    severed = job.totals()["piles"]["severed_count"]

    def both_say(count):
        for window in (first, second):
            program.find("button", re.compile(rf"Severed\W+{count:.0f}\b"), within=window)

    both_say(severed)
    tool("record", job.path, "step", "G8", "severed")
    both_say(severed + 1)
    program.quit()


main(says_that_it_is_newer, says_that_it_is_foreign, says_that_it_is_damaged,
     says_that_it_is_missing, reads_what_may_not_be_written, shows_what_others_enter,
     opens_a_second_window)
