#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The Shift page, worked by its keys."""
from cases import Job, main, tell


def open_shift_page(session, job):
    program = session.start(job.path)
    program.reads("Tern Cove Cannery Wharf")
    program.key("alt+2")
    page = program.find("group", "Shift")
    program.wait(lambda: page.extents()[2] > 0, "the Shift page on top")
    return program, page


def line_of(program, page, mark):
    """The row of a pile that was worked, its words joined."""
    lines = program.find("list", "Piles worked in this shift", within=page)

    def look():
        for row in lines.again().children():
            words = [thing.name for thing in row.walk() if thing.role == "label"]
            if mark in words:
                return " ".join(words)
        return None

    return program.wait(look, f"the line of {mark}")


def types_a_line(session):
    """A line is typed by the keys alone and is in the file at Enter."""
    job = Job.demo(session)
    assert job.pile("G4")["bars_left_count"] == 8
    before = job.n_entries()
    program, page = open_shift_page(session, job)

    program.press(program.find("text box", "Pile", within=page))
    program.type("G4")
    program.reads("G4: standing", within=page)
    program.key("Tab")
    program.type("3")
    program.key("Tab")
    program.type("21")
    program.key("Tab")
    program.type("4")
    program.key("Tab", "Tab")  # over the oxygen
    program.type("poor visibility")
    program.key("Return")

    said = line_of(program, page, "G4")
    for words in ("3 bars", "21 min", "4 rods", "poor visibility"):
        assert words in said, said
    assert [entry[:4] for entry in job.last_entries(4)] == [
        ("bars", "G4", "", None), ("burn-time", "G4", "", 21 * 60.0),
        ("rods", "G4", "", 4.0), ("note", "G4", "", None)]
    assert job.n_entries() == before + 4
    assert job.pile("G4")["bars_left_count"] == 5
    assert len(set(job.rows("SELECT act FROM entry ORDER BY seq DESC LIMIT 4"))) == 1

    # The hands are back at the mark, so that the next line can follow: a step, set by Space.
    entry = program.find("text box", "Pile", within=page)
    program.wait(lambda: entry.text() == "", "the line to be empty again")
    program.type("G4")
    program.key(*["Tab"] * 6, "space")
    cleaned = program.find("button", "cleaned", within=page)
    program.wait(lambda: cleaned.is_("pressed"), "“cleaned” to be set")
    program.key(*["Tab"] * 5, "Return")
    program.wait(lambda: job.n_entries() == before + 5, "the step in the file")
    assert [entry[:3] for entry in job.last_entries(1)] == [("step", "G4", "cleaned")]
    assert job.pile("G4")["step"] == "cleaned"

    # What cannot be is refused in words, and nothing is stored.
    program.wait(lambda: entry.text() == "", "the line to be empty again")
    program.type("Q99")
    program.key("Return")
    program.reads("There is no pile “Q99” in this job", within=page)
    assert job.n_entries() == before + 5
    program.quit()
    job.check()


def stores_dives_and_the_rest(session):
    """Rods, oxygen, a delay, a note and a dive are in the file as soon as they are said."""
    job = Job.demo(session)
    program, page = open_shift_page(session, job)

    def press(group, field):
        box = program.find("text box", field, within=program.find("group", group, within=page))
        program.press(box)
        return box

    def say(group, field, text, expected, shows=""):
        box = press(group, field)
        program.type(text)
        program.key("Return")
        program.wait(lambda: job.last_entries(1)[0] == expected, f"{expected} in the file")
        program.wait(lambda: box.text() == shows, f"{box} to show “{shows}”")

    say("Rods and oxygen", "Rods used", "32", ("rods", "", "", 32.0, ""))
    program.reads("This shift: 32 rods", within=page)
    say("Rods and oxygen", "Rods at the end", "150", ("stock", "", "rods", 150.0, ""))
    program.reads("150 rods left", within=page)
    say("Conditions", "Visibility", "2 ft, green",
        ("condition", "", "visibility", None, "2 ft, green"), shows="2 ft, green")
    say("Hours and crew", "Diving supervisor", "superintendent",
        ("crew", "", "diving supervisor", None, "superintendent"), shows="superintendent")

    # A cause completes itself; who bears it stands with the delay in one act.
    press("Delays and gear faults", "Cause of delay")
    program.type("cu")
    program.key("Tab")
    program.type("45")
    program.key("Tab")
    program.type("own")
    program.key("Return")
    program.wait(lambda: job.last_entries(2) == [("delay", "", "current", 45 * 60.0, ""),
                                                 ("detail", "", "borne by", None, "owner")],
                 "the delay in the file")
    program.reads("This shift: 45 min of delays, 0 min lost to gear", within=page)

    press("Dives", "Diver")
    program.type("diver 2")
    program.key("Tab")
    program.type("38")
    program.key("Tab")
    program.type("07:10")
    program.key("Tab")
    program.type("08:02")
    program.key("Tab")
    program.type("08:05")
    before = job.n_entries()
    program.key("Return")
    program.wait(lambda: job.n_entries() == before + 1, "the dive in the file")
    (kind, mark, diver, depth, note), = job.last_entries(1)
    assert (kind, diver, round(depth, 3)) == ("dive", "diver 2", round(38 * 0.3048, 3))
    (left, bottom, up), = job.rows(
        "SELECT start_us, end_us, up_us FROM entry ORDER BY seq DESC LIMIT 1")
    assert (bottom - left, up - bottom) == (52 * 60 * 10**6, 3 * 60 * 10**6)
    # 38 ft and the pneumo correction is a dive of 40 ft by the table: its no-stop limit is 163 min.
    program.reads("52 of 163 min", within=page)

    # Times that cannot be are refused, and nothing is stored.
    program.type("09:30")
    program.key("Tab")
    program.type("09:10")
    program.key("Return")
    program.reads("The diver left bottom before leaving the surface; check the times")
    assert job.n_entries() == before + 1
    program.quit()
    job.check()


def says_what_a_diver_has_left(session):
    """The second dive of a day is compared with what the first one leaves."""
    job = Job.demo(session)
    program, page = open_shift_page(session, job)
    dives = program.find("group", "Dives", within=page)

    program.press(program.find("text box", "Diver", within=dives))
    program.type("diver 9")
    program.key("Tab")
    for word in ("39", "00:00", "01:40"):
        program.type(word)
        program.key("Tab")
    program.type("01:42")
    before = job.n_entries()
    program.key("Return")
    program.wait(lambda: job.n_entries() == before + 1, "the dive in the file")
    program.reads("100 of 163 min", within=page)

    # Two hours later 163 - 85 = 78 min are open at 40 ft by the table (U.S. Navy Diving Manual,
    # revision 7); the pneumofathometer reads 39.
    program.type("03:42")
    program.reads("group I at 03:42 · open without stops: 78 min at 39 ft", within=page)
    program.key("Tab")
    program.type("05:01")
    program.reads("79 + 85 min: PAST the limit of 163", within=page)
    program.reads("Past the no-stop limit: the diving supervisor’s table decides", within=page)
    program.key("BackSpace")
    program.type("0")
    program.reads("78 + 85 of 163 min", within=page)
    program.key("Tab")
    program.type("05:02")
    program.key("Return")
    program.wait(lambda: job.n_entries() == before + 2, "the second dive in the file")
    program.reads("78 + 85 of 163 min", within=page)
    program.quit()
    job.check()


def says_what_contradicts_itself(session):
    """A pile said to be severed with bars left has that said under its line."""
    job = Job.demo(session)
    program, page = open_shift_page(session, job)

    program.press(program.find("text box", "Pile", within=page))
    program.type("G4")
    program.key("Tab")
    program.type("2")
    program.press(program.find("button", "severed", within=page))
    program.press(program.find("button", "Record", within=page))
    program.wait(lambda: job.pile("G4")["step"] == "severed", "the step in the file")
    assert job.pile("G4")["bars_left_count"] == 6
    flags = job.pile("G4")["flags"]
    assert len(flags) == 1, flags
    assert "severed" in line_of(program, page, "G4")
    program.reads("G4 is said to be severed, but 6 bars are left.", within=page)

    # Take back by the button: the line goes, and the flag with it.
    program.press(program.find("button", "Take back the last entry", within=page))
    program.wait(lambda: job.pile("G4")["step"] == "standing", "the line to be taken back")
    program.reads("No pile yet.", within=page)
    assert job.pile("G4")["flags"] == []
    program.quit()
    job.check()


def turns_to_other_shifts(session):
    """Another shift is picked from the list, and today's again."""
    job = Job.demo(session)
    program, page = open_shift_page(session, job)
    listed = program.find("combo box", "Shift", within=page)
    program.reads("Today, not open yet", within=listed)

    program.press(listed)
    program.key("Home", "Down", "Return")
    program.reads("Shift 30 · Sat 11 Jul 2026 · day", within=listed)
    day = job.totals()["days"][-1]
    program.reads(f"{day['bars_count']:.0f} bars · {day['dives_count']:.0f} dives", within=page)

    # What is entered now belongs to the shift on the sheet, not to today.
    program.press(program.find("text box", "Pile", within=page))
    program.type("G4")
    program.key("Tab")
    program.type("2")
    program.key("Return")
    program.reads(f"{day['bars_count'] + 2:.0f} bars", within=page)
    assert job.totals()["days"][-1]["bars_count"] == day["bars_count"] + 2

    program.press(listed)
    program.key("Home", "Return")
    program.reads("No shift is open; the first entry opens today’s.", within=page)
    program.quit()


# Key strokes and presses of the mouse that a busy shift may cost.
STROKES_MOST = 160

TWO_BENTS = "mark,x,y,bent,shape,width,bar,bars,head,mudline\n" + "".join(
    f"{row}{number},{10 * number},{10 * place},{row},octagon,16 in,#8,8,6 ft,-25 ft\n"
    for place, row in enumerate("AB") for number in range(1, 11))


class Hand:
    """Counts what a person's hand does: each key that is pressed, also those held, and each press of
    the mouse."""

    def __init__(self, program):
        self.program = program
        self.strokes = 0

    def press(self, thing, times=1):
        self.strokes += times
        self.program.press(thing, times=times)

    def key(self, *keys):
        self.strokes += sum(len(key.split("+")) for key in keys)
        self.program.key(*keys)

    def line(self, *words):
        """Words with Tab between them, and Enter."""
        for place, word in enumerate(words):
            self.strokes += len(word)
            self.program.type(word)
            self.key("Tab" if place < len(words) - 1 else "Return")


def records_a_busy_shift(session):
    """A shift of 20 piles, 6 dives and 4 delays takes at most 160 key strokes and presses."""
    job = Job.of_list(session, TWO_BENTS)
    program = session.start(job.path)
    hand = Hand(program)
    program.reads("20 piles")
    hand.key("alt+2")
    page = program.find("group", "Shift")
    program.wait(lambda: page.extents()[2] > 0, "the Shift page on top")

    def count(kind):
        return job.rows("SELECT count(*) FROM entry WHERE kind = ?", kind)[0][0]

    def follows(kind, n):
        program.wait(lambda: count(kind) == n, f"{n} entries of {kind}")

    # Four piles burned one like the other, six as one line, eight cleaned, two begun.
    lines = program.find("group", "Piles worked", within=page)
    mark = program.find("text box", "Pile", within=lines)
    hand.press(mark)
    hand.line("a1", "8", "21", "4")
    follows("burn-time", 1)
    for n in range(2, 5):
        hand.key("ctrl+Return")
        follows("burn-time", n)
    hand.line("a5..10", "8", "25", "5")
    follows("burn-time", 10)
    program.type("b1..8")
    hand.strokes += len("b1..8")
    hand.press(program.find("button", "cleaned", within=lines))
    hand.press(program.find("button", "Record", within=lines))
    program.wait(lambda: job.pile("B8")["step"] == "cleaned", "eight piles cleaned")
    hand.line("b9", "3", "12", "2")
    follows("burn-time", 11)
    hand.key("ctrl+Return")
    follows("burn-time", 12)

    # Two divers in turn; each dive's diver, depth and pile stand there from the one before.
    dives = program.find("group", "Dives", within=page)
    diver = program.find("text box", "Diver", within=dives)
    hand.press(diver)
    hand.line("d1", "38", "710", "+52", "+3", "a1")
    follows("dive", 1)
    hand.press(diver, times=2)  # the name that stands there is another's
    hand.line("d2", "", "730", "+40", "+3")
    follows("dive", 2)
    for n, times in enumerate((("835", "+45", "+3"), ("850", "+30", "+2"), ("940", "+15", "+3"),
                               ("950", "+20", "+3")), 3):
        hand.line(*times)
        follows("dive", n)

    lost = program.find("group", "Delays and gear faults", within=page)
    hand.press(program.find("text box", "Cause of delay", within=lost))
    for n, (cause, minutes) in enumerate((("c", "45"), ("we", "30"), ("vi", "20"), ("ve", "15")), 1):
        hand.line(cause, minutes)
        follows("delay", n)

    # It is all there, as it was meant.
    assert job.rows("SELECT what, amount / 60 FROM entry WHERE kind = 'delay' ORDER BY seq") == [
        ("current", 45), ("weather", 30), ("visibility", 20), ("vessel traffic", 15)]
    assert [row[0] for row in job.rows("SELECT what FROM entry WHERE kind = 'dive' ORDER BY seq")] \
        == ["d1", "d2"] * 3
    assert job.rows("SELECT DISTINCT mark FROM entry JOIN pile ON pile.seq = entry.pile"
                    " WHERE kind = 'dive'") == [("A1",)]
    worked = job.rows("SELECT count (DISTINCT pile) FROM entry WHERE pile IS NOT NULL")[0][0]
    assert worked == 20, worked
    done = job.totals()["job"]
    assert (done["bars_count"], done["dives_count"]) == (86, 6), done
    assert (job.pile("A10")["step"], job.pile("B10")["bars_left_count"]) == ("severed", 5), \
        (job.pile("A10"), job.pile("B10"))
    tell(f"a shift of {worked} piles, 6 dives, 4 delays: {hand.strokes} key strokes and presses")
    assert hand.strokes <= STROKES_MOST, hand.strokes
    program.quit()
    job.check()


main(types_a_line, records_a_busy_shift, stores_dives_and_the_rest, says_what_a_diver_has_left,
     says_what_contradicts_itself, turns_to_other_shifts)
