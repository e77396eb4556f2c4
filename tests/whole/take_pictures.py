# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes the guide's pictures: the demo job in the built program, on screens of a fixed size.
Called by docs/screenshots with the folder they go into."""
import pathlib
import subprocess
import sys

import driver
from cases import Job


class Sitting:
    """One program on one screen, to be taken from several sides."""

    def __init__(self, folder, width=1280, height=800, large_text=1.0, **environment):
        self.folder = folder
        self.session = driver.Session(width, height, large_text)
        self.job = Job.demo(self.session)
        self.program = self.session.start(self.job.path, **environment)
        self.program.reads("Tern Cove Cannery Wharf")
        self.fill_screen()

    def __enter__(self):
        return self

    def __exit__(self, *trouble):
        self.session.end()

    def fill_screen(self):
        program = self.program
        program.press(program.find("button", "Maximize", within=program.window))
        number = program.window_id(program.window)
        program.wait(lambda: "MAXIMIZED_HORZ" in driver.run("xprop", "-id", number,
                                                            "_NET_WM_STATE").stdout,
                     "the window to fill the screen")

    def page(self, key, name):
        self.program.key(key)
        page = self.program.find("group", name)
        self.program.wait(lambda: page.extents()[2] > 0, f"the page {name}")
        return page

    def find_pile(self, mark):
        self.program.key("ctrl+f")
        box = self.program.find("search box", "Find a pile")
        self.program.wait(lambda: box.is_("focused"), "the finder")
        self.program.type(mark)
        self.program.key("Return")
        self.program.reads(f"{mark}: ")

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


def main(folder):
    with Sitting(folder) as sitting:
        sitting.take("plan-light.png")
        sitting.find_pile("G8")
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
        sitting.take("plan-dark.png")
    with Sitting(folder, 1024, 640) as sitting:
        sitting.find_pile("G8")
        sitting.take("plan-small.png")
    with Sitting(folder, large_text=1.5) as sitting:
        sitting.find_pile("G8")
        sitting.take("large-text.png")


main(pathlib.Path(sys.argv[1]).resolve())
