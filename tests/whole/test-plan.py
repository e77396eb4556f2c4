#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Many piles at once on the plan, the legend, and what a screen reader is told of each page."""
import re

from cases import Job, main

HEADING = "mark,x,y,width,shape,bar,bars"


def two_groups(session):
    """Five piles in the west, seven in the east, far apart."""
    rows = [f"W{i},{i * 8},{i % 2 * 8},16,octagonal,#9,8" for i in range(1, 6)]
    rows += [f"E{i},{300 + i * 8},{i % 2 * 8},16,octagonal,#9,8" for i in range(1, 8)]
    return Job.of_list(session, "\n".join([HEADING, *rows]) + "\n")


def marks_five_at_once(session):
    """The step tool marks five boxed piles as one act, and one take-back undoes all five."""
    job = two_groups(session)
    program = session.start(job.path)
    program.reads("12 piles. Touch one.")
    canvas = program.find("image", "Plan of the pier")
    program.wait(lambda: canvas.extents()[2] > 0, "the plan")
    program.press(program.find("button", "Mark as severed"))
    program.reads("Marking as severed: touch the piles, or box them.")

    x, y, width, height = program.place_of(canvas)
    program.drag(x + 4, y + 4, x + width / 2, y + height - 4)
    program.reads("5 piles: severed")
    acts = job.rows("SELECT act, group_concat(DISTINCT mark) FROM entry JOIN pile"
                    " ON pile.seq = entry.pile GROUP BY act")
    assert len(acts) == 1 and sorted(acts[0][1].split(",")) == ["W1", "W2", "W3", "W4", "W5"], acts
    piles = job.totals()["piles"]
    assert (piles["severed_count"], piles["standing_count"]) == (5, 7)
    assert job.pile("W3")["bars_left_count"] == 0
    program.find("button", re.compile(r"Severed\W+5\b"))

    program.key("Escape", "ctrl+z")
    program.wait(lambda: job.totals()["piles"]["standing_count"] == 12, "all five taken back")
    assert job.rows("SELECT count(*) FROM entry WHERE kind = 'take-back'") == [(1,)]
    assert job.pile("W3")["bars_left_count"] == 8
    program.quit()
    job.check()


def is_a_part_of_a_list(thing):
    """The toolkit's own button inside a combo box, which itself has a name."""
    return thing.parent is not None and thing.parent.role == "combo box" and thing.parent.name


def is_another_page(thing, page):
    """Pages that are not on top say nothing to anybody yet."""
    return thing.role == "group" and thing.name in {"Shift", "Production"} - {page}


def names_every_control(session):
    """Every button and entry of every page says what it is."""
    job = Job.demo(session)
    program = session.start(job.path)
    program.reads("Tern Cove Cannery Wharf")
    program.key("ctrl+f")
    box = program.find("search box", "Find a pile")
    program.wait(lambda: box.is_("focused"), "the finder")
    program.type("G8")
    program.key("Return")
    program.wait(lambda: program.find("image", "Plan of the pier").description.startswith("G8"),
                 "G8 to be picked")
    nameless = []
    seen = 0
    for key, page in (("alt+1", "Plan"), ("alt+2", "Shift"), ("alt+3", "Production")):
        program.key(key)
        for thing in program.window.again().walk(
                into=lambda thing, page=page: not is_another_page(thing, page)):
            if thing.role not in ("button", "text box", "search box", "combo box", "check box",
                                  "spin button", "toggle button", "switch", "radio"):
                continue
            seen += 1
            if not is_a_part_of_a_list(thing) and (
                    not thing.name or re.match("(Gtk|Adw|Lb)[A-Z]", thing.name)):
                nameless.append(f"{page}: {thing} ({thing.description}) in {thing.parent}")
    assert seen > 60, seen
    assert not nameless, "\n".join(sorted(set(nameless)))
    program.quit()


def shows_the_keys(session):
    """The list of keys comes by its own key, with the keys in it."""
    program = session.start(Job.demo(session).path)
    program.reads("Tern Cove Cannery Wharf")
    program.key("ctrl+question")

    def list_of_keys():
        return next((window for window in program.windows()
                     if program.look("label", "Begin a new job", within=window)
                     and program.look("label", "Ctrl", within=window)), None)

    program.wait(list_of_keys, "the list of keys")
    program.key("Escape")
    program.wait(lambda: list_of_keys() is None, "the list to go")
    # Not quit, which allows no warning: the toolkit's own list complains of its labels.


main(marks_five_at_once, names_every_control, shows_the_keys)
