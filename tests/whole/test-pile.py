#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""One pile from the plan to paper: found, looked at, burned, taken back, severed, printed."""
import re
import subprocess

from cases import Job, main


def open_demo(session, job=None):
    """The demo's plan, its pile G8 picked."""
    program = session.start(*([job.path] if job else []))
    if job is None:
        program.menu("Open the Demo")
    program.reads("Tern Cove Cannery Wharf")
    canvas = program.find("image", "Plan of the pier")
    program.wait(lambda: canvas.extents()[2] > 0, "the plan")
    find_pile(program, "G8")
    return program, canvas


def find_pile(program, mark):
    program.key("ctrl+f")
    box = program.find("search box", "Find a pile")
    program.wait(lambda: box.is_("focused"), "the finder")
    program.type(mark)
    program.key("Return")
    program.wait(lambda: program.find("image", "Plan of the pier").description.startswith(mark),
                 f"{mark} to be picked")


def section_of(program):
    """Its name goes on with what is shown of the order."""
    return program.find("image", re.compile(r"The bars at the cut, looking down\b.*"))


def place_of_a_bar(program):
    """On the ring of eight bars: right of the middle's top, one is always within reach."""
    section = section_of(program)
    program.settle(section)
    x, y, width, height = program.place_of(section)
    return x + width * 0.6, y + height * 0.36


def works_one_pile(session):
    """The demo from the menu: a pile is picked, a bar burned and taken back, the pile severed."""
    program, canvas = open_demo(session)
    job = Job(session, "")
    job.path = next((session.folder / "data").rglob("*.lastbent"))
    assert job.pile("G8")["bars_left_count"] == 8
    before = job.n_entries()

    # By the mouse: put it down, and press where it is, in the middle of the canvas; that is where
    # it is brought when the plan is larger than the canvas.
    program.press(program.find("button", "Larger"))
    program.press(program.find("button", "Larger"))
    find_pile(program, "G8")
    program.press(canvas)
    program.key("Escape")
    program.wait(lambda: canvas.again().description.startswith("No pile"), "no pile to be picked")
    program.press(canvas)
    program.wait(lambda: canvas.again().description.startswith("G8"), "G8 to be picked")
    program.reads("8 of 8 bars left")

    # The program may be closed at the very next moment, so each step is looked for in the file.
    program.press_at(*place_of_a_bar(program))
    program.wait(lambda: job.pile("G8")["bars_left_count"] == 7, "the bar burned in the file")
    bar, = job.pile("G8")["bars_burned"]
    program.wait(lambda: "7 of 8 bars left" in section_of(program).description, "7 of 8 bars left")
    assert f"Bar {bar}: burned" in section_of(program).description
    assert job.n_entries() == before + 1

    program.key("ctrl+z")
    program.wait(lambda: job.pile("G8")["bars_left_count"] == 8, "the bar to be taken back")
    program.wait(lambda: "8 of 8 bars left" in section_of(program).description, "8 of 8 bars left")

    # The chart has no column for today yet, since what was done is taken back.
    program.key("alt+3")
    page = program.find("group", "Production")
    chart = program.find("image", "Daily production", within=page)
    program.wait(lambda: chart.extents()[2] > 0, "the chart")
    sentence = chart.again().description

    program.key("alt+1")
    steps = [thing for thing in program.all("button", re.compile("^Severed"))
             if "bars left are burned" in thing.description]
    program.press(steps[0])
    program.wait(lambda: job.pile("G8")["step"] == "severed", "the pile severed in the file")
    assert job.pile("G8")["bars_left_count"] == 0
    program.wait(lambda: canvas.again().description.startswith("G8: severed"), "G8: severed")

    program.key("alt+3")
    program.press(chart)
    program.key("End")
    program.wait(lambda: "1 severed" in chart.again().description, "the chart to say so")
    said = chart.again().description
    assert said != sentence
    today = job.totals()["days"][-1]
    assert today["severed_count"] == 1 and today["bars_count"] == 8
    assert said.endswith("0 cleaned, 1 severed, 0 rigged, 0 pulled, 8 bars burned"), said
    program.quit()
    job.check()


def prints_a_card(session):
    """A cut card goes through the print dialog into a file, and can be saved as one."""
    job = Job.demo(session)
    program, canvas = open_demo(session, job)
    before = job.digest()

    program.key("ctrl+p")
    dialog = program.wait(lambda: next((window for window in program.windows()
                                        if window.name.startswith("Print")), None),
                          "the print dialog")
    program.raise_window(dialog)
    printers = program.wait(lambda: next((thing for thing in dialog.walk()
                                          if not thing.may_enter()), None), "the printers")
    program.press(program.find("label", "Print to File", within=printers))
    program.press(program.find("button", "Print", within=dialog))
    home = session.folder / "home"
    card = program.wait(lambda: next(home.rglob("*.pdf"), None), "the printed file")
    program.wait(lambda: card.stat().st_size > 5000, "the file to be whole")
    is_a_card_of_g8(card)
    card.unlink()

    program.raise_window()
    program.wait(lambda: len(program.windows()) == 1, "the dialog to be gone")
    ways = program.find("button", "Other ways to put the card out")
    program.press(ways)
    program.menu("Save as PDF…", within=ways)
    dialog = program.wait(lambda: program.windows()[1], "the file dialog")
    program.raise_window(dialog)
    program.press(program.find("button", "Save", within=dialog))
    card = program.wait(lambda: next(home.rglob("*.pdf"), None), "the saved file")
    is_a_card_of_g8(card)
    assert job.digest() == before
    program.quit()


def is_a_card_of_g8(path):
    ran = subprocess.run(["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True,
                         check=True)
    for words in ("G8", "16 in octagonal", "34.9 ft", "163 min"):
        assert words in ran.stdout, f"{words} is not on the card:\n{ran.stdout}"
    pages = subprocess.run(["pdfinfo", str(path)], capture_output=True, text=True, check=True)
    assert re.search(r"^Pages:\s+1$", pages.stdout, re.M), pages.stdout


def works_by_keys_alone(session):
    """From plan to sheet to bar without touching the mouse."""
    job = Job.demo(session)
    program, canvas = open_demo(session, job)
    # Up and down the bent and back, from pile to pile.
    program.key("Up")
    program.wait(lambda: not canvas.again().description.startswith("G8"), "the pile above")
    program.key("Down")
    program.wait(lambda: canvas.again().description.startswith("G8"), "G8 again")

    # Enter opens the sheet; Tab leads to the section; its bars are walked and Space burns one.
    program.key("Return")
    section = section_of(program)
    for _ in range(12):
        if section.is_("focused"):
            break
        program.key("Tab")
    assert section.is_("focused"), "Tab does not lead to the section"
    program.key("Right", "Right")
    program.wait(lambda: "to burn" in section.again().description, "a bar to be told")
    order = re.search(r"Bar (\d+), \d\w\w of 8 to burn", section.again().description)
    program.key("space")
    program.wait(lambda: job.pile("G8")["bars_burned"] == [int(order[1])],
                 f"bar {order[1]} burned in the file")
    program.key("ctrl+z")
    program.wait(lambda: job.pile("G8")["bars_burned"] == [], "the bar to be taken back")
    program.key("ctrl+shift+z")
    program.wait(lambda: job.pile("G8")["bars_burned"] == [int(order[1])], "the bar burned again")
    program.quit()
    job.check()


main(works_one_pile, prints_a_card, works_by_keys_alone)
