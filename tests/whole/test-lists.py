#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Piles come into a job: a survey's list, and a grid."""
from cases import Job, main

GOOD = ["P1;0,00;0,00;16;octagonal;#9;8;1:6;N45E",
        "P2;10,00;0,00;16;octagonal;#9;8;6;45",
        "P3;20,00;0,00;16;square;#11;8;;",
        "P5;40,00;0,00;16;octagonal;#9;8;;",
        "P8;70,00;0,00;20;square;#18;4;1:4;S10W"]
BAD = {4: "P4;30,00;;16;octagonal;#9;8;;",
       6: "P6;5x,00;0,00;16;octagonal;#9;8;;",
       8: "P2;60,00;0,00;16;octagonal;#9;8;;"}
HEADING = "mark;easting;northing;width (in);shape;bar;bars;batter;bearing"


def write_list(session):
    """Five good rows, three bad ones at known lines; decimal commas, as a survey may have them."""
    lines, good = [HEADING], list(GOOD)
    while good or len(lines) + 1 in BAD:
        lines.append(BAD.get(len(lines) + 1) or good.pop(0))
    path = session.folder / "home" / "survey.csv"
    path.write_text("\n".join(lines) + "\n")
    return path


def choose_list(program, path):
    """The list's window, by the button of the empty plan and the file dialog."""
    program.press(program.find("button", "Take a Pile List…"))
    chooser = program.wait(lambda: program.windows()[1], "the file dialog")
    program.raise_window(chooser)
    program.type(str(path))
    program.key("Return")
    # The file dialog has the same title, but nothing to take.
    window = program.wait(lambda: next((window for window in program.windows()
                                        if program.look("button", "Take", within=window)), None),
                          "the list's window")
    program.raise_window(window)
    return window


def faults_of(program, window):
    faults = program.find("list", "What is wrong, line by line:", within=window)
    return program.wait(lambda: [thing.name for thing in faults.walk() if thing.role == "label"
                                 and thing.name.startswith("Line ")], "the faults")


def names_what_is_wrong(session):
    """A list with three bad rows: each is named, and nothing is taken before it is confirmed."""
    job = Job.empty(session, name="Survey")
    path = write_list(session)
    program = session.start(job.path)
    program.reads("No Piles Yet")
    before = job.digest()

    window = choose_list(program, path)
    program.reads("3 rows", within=window)
    faults = faults_of(program, window)
    assert len(faults) == 3, faults
    for fault, (line, column, reason) in zip(faults, (
            (4, "northing", ""), (6, "easting", "5x,00"), (8, "mark", "P2"))):
        assert fault.startswith(f"Line {line}, {column}: "), fault
        assert reason in fault and len(fault.partition(": ")[2]) > 10, fault
    take = program.find("button", "Take", within=window)
    assert not take.is_("sensitive")

    program.press(program.find("button", "Cancel", within=window))
    program.wait(lambda: len(program.windows()) == 1, "the list's window to close")
    assert job.digest() == before
    program.reads("No Piles Yet")

    window = choose_list(program, path)
    program.press(program.find(None, "Leave those rows out and take the others",
                               within=window))
    take = program.find("button", "Take", within=window)
    program.wait(lambda: take.is_("sensitive"), "Take to be offered")
    assert job.digest() == before
    program.press(take)
    program.reads("5 piles taken")
    assert [mark for mark, in job.rows("SELECT mark FROM pile ORDER BY seq")] == [
        "P1", "P2", "P3", "P5", "P8"]
    pile = job.pile("P1")
    assert (pile["bars_left_count"], pile["bar"], round(pile["batter_run_per_rise"], 6)) == (
        8, "#9", round(1 / 6, 6))
    assert round(job.pile("P2")["x_m"], 4) == 3.048
    program.reads("5 piles. Touch one.")
    program.quit()
    job.check()


def lays_out_a_grid(session):
    """An empty job gets bents and rows from the window."""
    job = Job.empty(session, name="Grid")
    program = session.start(job.path)
    program.press(program.find("button", "Lay Out a Grid…"))
    window = program.wait(lambda: next((window for window in program.windows()
                                        if window.name == "Lay Out a Grid"), None), "the window")
    program.raise_window(window)
    for row, text in (("Bents", "4"), ("Rows", "3"), ("Number of the first bent", "7")):
        box = program.find("text box", row, within=window)
        program.press(box)
        program.key("ctrl+a")
        program.type(text)
    program.reads("12 piles, A7 to C10", within=window)
    assert job.rows("SELECT count(*) FROM pile") == [(0,)]
    program.press(program.find("button", "Lay Out", within=window))
    program.reads("12 piles. Touch one.")
    marks = [mark for mark, in job.rows("SELECT mark FROM pile")]
    assert sorted(marks) == sorted(row + str(bent) for bent in range(7, 11) for row in "ABC")
    (x0, y0), (x1, y1) = job.rows("SELECT x_m, y_m FROM pile WHERE mark IN ('A7', 'A8')")
    assert round(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5, 4) == round(12 * 0.3048, 4)
    program.quit()
    job.check()


main(names_what_is_wrong, lays_out_a_grid)
