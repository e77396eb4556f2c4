#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Two crews, a copy of the job each: what one did is sent, looked at and joined by the other."""
import shutil

from cases import Job, main, tool

PILES = "mark,x,y,shape,width,bar,bars\nP1,0,0,octagonal,16,#8,8\nP2,0,9,octagonal,16,#8,8\n"


def file_dialog(program, button):
    """The file dialog, in front."""
    def dialog():
        return next((window for window in program.windows()
                     if program.look("button", button, within=window)
                     and program.look("button", "Cancel", within=window)), None)

    chooser = program.wait(dialog, f"the file dialog with “{button}”")
    program.raise_window(chooser)



def window_with(program, words):
    window = program.wait(lambda: next((window for window in program.windows()
                                        if program.look("label", words, within=window)), None),
                          f"the window that says “{words}”")
    program.raise_window(window)
    return window


def sends_and_joins(session):
    """A shift is sent from one copy and joined in another, where the pile's step changes."""
    here = Job.of_list(session, PILES)
    there = Job(session, "there.lastbent")
    shutil.copy(here.path, there.path)
    tool("record", there.path, "step", "P1", "cleaned", "--day=2026-07-14", "--who=crew 2")
    tool("record", here.path, "fact", "P2", "bent", "7")
    tool("record", there.path, "fact", "P2", "bent", "8")
    packet = session.folder / "home" / "shift.lastpack"

    program = session.start(there.path)
    program.reads("2 piles. Touch one.")
    program.menu("Send a Shift…")
    window = window_with(program, "First shift")
    program.press(program.find("button", "Send…", within=window))
    file_dialog(program, "Save")
    program.key("ctrl+a")
    program.type(str(packet))
    program.key("Return")
    program.wait(packet.exists, "the packet")
    program.wait(lambda: len(program.windows()) == 1, "its windows to close")
    program.quit()

    program = session.start(here.path)
    program.reads("2 piles. Touch one.")
    before = here.digest()
    program.menu("Join a Packet…")
    file_dialog(program, "Look At It")
    program.type(str(packet))
    program.key("Return")
    window = window_with(program, "It is not said who sent it")
    program.reads("New: 1 shift, 1 entry, 1 fact or setting.", within=window)
    program.reads("Bent set to 8", within=window)
    assert here.digest() == before
    assert here.pile("P1")["step"] == "standing"
    program.press(program.find("button", "Join", within=window))
    program.wait(lambda: len(program.windows()) == 1, "the window to close")
    program.reads("The packet is joined")
    assert here.pile("P1")["step"] == "cleaned"
    assert "said-otherwise:" in tool("findings", here.path)
    program.quit()
    here.check()


def refuses_another_job(session):
    """A packet of another job is refused with both names, and nothing is changed."""
    here = Job.of_list(session, PILES)
    other = Job(session, "other.lastbent")
    tool("new", "--name=Quay 9", other.path)
    tool("record", other.path, "note", "ice", "--day=2026-07-14")
    packet = session.folder / "home" / "other.lastpack"
    tool("packet", other.path, packet, "--all")
    before = here.digest()

    program = session.start(here.path)
    program.reads("2 piles. Touch one.")
    program.menu("Join a Packet…")
    file_dialog(program, "Look At It")
    program.type(str(packet))
    program.key("Return")
    window = window_with(program, "It Cannot Be Joined")
    program.reads("Quay 9", within=window)
    assert not program.find("button", "Join", within=window).is_("sensitive")
    program.press(program.find("button", "Cancel", within=window))
    program.wait(lambda: len(program.windows()) == 1, "the window to close")
    program.quit()
    assert here.digest() == before


main(sends_and_joins, refuses_another_job)
