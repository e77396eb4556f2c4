# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes the guide's pictures: the demo job in the built program, on screens of a fixed size.
Called by docs/screenshots with the folder they go into."""
import pathlib
import subprocess
import sys
import tempfile

import driver
from cases import Job, tool


class Sitting:
    """One program on one screen, to be taken from several sides."""

    def __init__(self, folder, width=1280, height=800, large_text=1.0, job=Job.demo,
                 **environment):
        self.folder = folder
        self.session = driver.Session(width, height, large_text, shadows=True)
        self.program = self.session.start(job(self.session).path, **environment)
        self.program.find("tab", "Shift")
        self.program.press(self.program.find("button", "Maximize", within=self.program.window))
        self.program.wait(self.fills_screen, "the window to fill the screen")

    def fills_screen(self):
        number = self.program.window_id(self.program.window)
        return "MAXIMIZED_HORZ" in driver.run("xprop", "-id", number, "_NET_WM_STATE").stdout

    def __enter__(self):
        return self

    def __exit__(self, *trouble):
        self.session.end()

    def page(self, key, name):
        self.program.key(key)
        page = self.program.find("group", name)
        self.program.wait(lambda: page.extents()[2] > 0, f"the page {name}")
        return page

    def find_pile(self, mark):
        program = self.program
        program.raise_window()
        program.key("ctrl+f")
        box = program.find("search box", "Find a pile")
        program.wait(lambda: box.is_("focused"), "the finder")
        program.type(mark)
        program.key("Return")
        canvas = program.find("image", "Plan of the pier")
        program.wait(lambda: canvas.again().description.startswith(mark), f"{mark} to be picked")

    def take(self, name):
        """Twice the same, so that nothing is on the move; then as small as PNG makes it."""
        width, height = self.program.place_of(self.program.window)[2:]
        driver.run("xdotool", "mousemove", str(width - 2), str(height // 2))
        path = self.folder / name
        before = None

        def rests():
            nonlocal before
            self.session.picture(path)
            now, last = path.read_bytes(), before
            before = now
            return now == last

        driver.wait(rests, "the picture to rest")
        subprocess.run(["convert", str(path), "-strip", "-define", "png:compression-level=9",
                        "-define", "png:exclude-chunks=date,time", str(path)], check=True)
        print(path, flush=True)


LIST = """point,northing,easting,elevation,description,width (in),batter,bearing
A1,0.00,0.00,8.5,octagonal 8 x #9,16,,
A2,0.00,12.00,8.5,octagonal 8 x #9,16,1:6,N45E
A3,0.00,24.00,8.4,octagonal 8 x #9,16,6,45
A4,,36.00,8.5,octagonal 8 x #9,16,,
A5,0.00,48.00,8.5,square,20,1:4,S10W
A6,0.00,6o.00,8.5,square,20,,
A7,0.00,72.00,8.3,square,20,,
"""


def take_list(folder):
    with Sitting(folder, job=lambda session: Job.empty(session, name="Survey")) as sitting:
        program = sitting.program
        path = sitting.session.folder / "home" / "survey.csv"
        path.write_text(LIST)
        program.press(program.find("button", "Take a Pile List…"))
        chooser = program.wait(lambda: program.windows()[1], "the file dialog")
        program.raise_window(chooser)
        program.type(str(path))
        program.key("Return")
        window = program.wait(lambda: next((window for window in program.windows()
                                            if program.look("button", "Take", within=window)),
                                           None), "the list's window")
        program.reads("2 rows", within=window)
        sitting.take("take-list.png")


def cut_card(folder, mark):
    """The card as it comes from the printer."""
    with tempfile.TemporaryDirectory() as scratch:
        job, card = pathlib.Path(scratch, "demo.lastbent"), pathlib.Path(scratch, "card.pdf")
        tool("demo", job)
        tool("print", job, "card", mark, card)
        subprocess.run(["pdftoppm", "-r", "100", "-png", "-singlefile", str(card),
                        str(folder / "card")], check=True)
    print(folder / "card.png", flush=True)


def main(folder):
    cut_card(folder, "G7")
    with Sitting(folder) as sitting:
        sitting.take("plan-light.png")
        sitting.find_pile("EF8")
        sitting.take("sheet.png")
        shift = sitting.page("alt+2", "Shift")
        program = sitting.program
        program.press(program.find("combo box", "Shift", within=shift))
        program.key("Home", "Down", "Return")
        program.reads("Shift 30", within=shift)
        sitting.take("shift.png")
        sitting.page("alt+3", "Production")
        sitting.take("production.png")
    with Sitting(folder, ADW_DEBUG_COLOR_SCHEME="prefer-dark") as sitting:
        sitting.find_pile("EF8")
        sitting.take("plan-dark.png")
    with Sitting(folder, 1024, 640) as sitting:
        sitting.find_pile("EF8")
        sitting.take("plan-small.png")
    with Sitting(folder, large_text=1.5) as sitting:
        sitting.find_pile("EF8")
        sitting.take("large-text.png")
    take_list(folder)


main(pathlib.Path(sys.argv[1]).resolve())
