# SPDX-License-Identifier: GPL-3.0-or-later
"""Hands and eyes for driving the built program as a person would.

A Session is a private screen: an X server of its own, a session bus, a window manager, and a home
folder, so that neither the tests nor the person's own desk notice each other. A Program is the
built program started on it. What it shows is read through its accessibility tree, by role and
name, as a screen reader would; mouse and keys are real events of the X server.

Every wait has an end.
"""
import atexit
import os
import pathlib
import re
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from gi.repository import Gio, GLib

import reader

# Long enough for a loaded machine; a test that passes never waits so long.
PATIENCE = 20.0
STEP = 0.02

SETTINGS = """[Settings]
gtk-font-name=Cantarell {points}
gtk-enable-animations=0
gtk-cursor-blink=0
gtk-recent-files-enabled=0
gtk-xft-antialias=1
gtk-xft-hinting=1
gtk-xft-hintstyle=hintslight
gtk-xft-rgba=none
"""

# What GTK says under a bare X server however well the program behaves.
HARMLESS = re.compile(r"dbind-WARNING|atk-bridge|Unable to acquire session bus|vkGet|MESA|libEGL")


class Late(AssertionError):
    """What was waited for did not come."""


def wait(question, what, patience=PATIENCE):
    """The first true answer of question(). The tree changes while it is read, so what goes wrong
    while asking counts as "not yet"; the last such fault is told when patience ends."""
    end = time.monotonic() + patience
    trouble = ""
    while True:
        try:
            answer = question()
            trouble = ""
        except (GLib.Error, LookupError, AttributeError, TypeError) as error:
            answer, trouble = None, f" ({error})"
        if answer:
            return answer
        if time.monotonic() > end:
            raise Late(f"waited in vain for {what}{trouble}")
        time.sleep(STEP)


def run(*words):
    return subprocess.run(words, capture_output=True, text=True, timeout=PATIENCE, check=False)


class Session:
    """A screen of its own; everything started for it ends with it."""

    def __init__(self, width=1280, height=800, large_text=1.0, shadows=False):
        self.started = []
        self.programs = []
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="lastbent-whole-"))
        atexit.register(self.end)
        signal.signal(signal.SIGTERM, lambda number, frame: sys.exit(143))
        for name in ("run", "home", "config/gtk-4.0"):
            (self.folder / name).mkdir(parents=True)
        (self.folder / "run").chmod(0o700)
        (self.folder / "config/gtk-4.0/settings.ini").write_text(
            SETTINGS.format(points=11 * large_text)
        )
        os.environ.update(
            HOME=str(self.folder / "home"),
            XDG_RUNTIME_DIR=str(self.folder / "run"),
            XDG_CONFIG_HOME=str(self.folder / "config"),
            XDG_DATA_HOME=str(self.folder / "data"),
            XDG_CACHE_HOME=str(self.folder / "cache"),
            XDG_STATE_HOME=str(self.folder / "state"),
            GDK_BACKEND="x11",
            GSETTINGS_BACKEND="memory",
            GIO_USE_VFS="local",
            GTK_USE_PORTAL="0",
            ADW_DISABLE_PORTAL="1",
            NO_AT_BRIDGE="1",  # for the window manager, which has nothing to say
        )
        # What is strict with the program under test would end the window manager at its first word.
        for name in ("WAYLAND_DISPLAY", "AT_SPI_BUS_ADDRESS", "GTK_A11Y", "GTK_MODULES", "G_DEBUG",
                     "MALLOC_PERTURB_"):
            os.environ.pop(name, None)
        os.environ["DISPLAY"] = ":" + self._start_telling(
            "Xvfb", "-displayfd", "{fd}", "-screen", "0", f"{width}x{height}x24", "-dpi", "96",
            "-nolisten", "tcp", "-noreset",
        )
        os.environ["DBUS_SESSION_BUS_ADDRESS"] = self.start_bus()
        # Shadows are for pictures: they cost more than all else on the screen.
        self._start("xfwm4", "--compositor=" + ("on" if shadows else "off"))
        wait(lambda: "window id" in run("xprop", "-root", "_NET_SUPPORTING_WM_CHECK").stdout,
             "the window manager")
        bus = Gio.bus_get_sync(Gio.BusType.SESSION)
        bus.set_exit_on_close(False)
        answer = bus.call_sync("org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus", "GetAddress", None,
                               None, Gio.DBusCallFlags.NONE, 20000, None)
        os.environ["AT_SPI_BUS_ADDRESS"] = answer.unpack()[0]
        self.reader = reader.Reader(answer.unpack()[0])

    def _log(self, name):
        return open(self.folder / f"{name}.log", "ab")

    def _start(self, *words, fds=()):
        with self._log(words[0]) as log:
            process = subprocess.Popen(words, stdin=subprocess.DEVNULL, stdout=log, stderr=log,
                                       pass_fds=fds)
        self.started.append(process)
        return process

    def _start_telling(self, *words):
        """Starts what tells a line of its own through the descriptor {fd}."""
        read, write = os.pipe()
        self._start(*(word.format(fd=write) for word in words), fds=(write,))
        os.close(write)
        said = b""
        while not said.endswith(b"\n"):
            if not select.select([read], [], [], PATIENCE)[0]:
                break
            more = os.read(read, 4096)
            if not more:
                break
            said += more
        os.close(read)
        if not said.strip():
            raise Late(f"{words[0]} did not start")
        return said.decode().strip()

    def start_bus(self):
        return self._start_telling("dbus-daemon", "--session", "--nofork", "--nopidfile",
                                   "--print-address={fd}")

    def start(self, *arguments, **environment):
        """The built program, with a window on the screen."""
        program = Program(self, arguments, environment)
        self.programs.append(program)
        return program

    def picture(self, path):
        """The whole screen."""
        run("import", "-window", "root", str(path))

    def end(self):
        for program in self.programs:
            program.kill()
        for process in reversed(self.started):
            if process.poll() is None:
                process.terminate()
                try:
                    process.wait(5)
                except subprocess.TimeoutExpired:
                    process.kill()
                    process.wait()
        self.started = []
        shutil.rmtree(self.folder, ignore_errors=True)


def fits(wanted, said):
    return wanted is None or (wanted.search(said) is not None if hasattr(wanted, "search")
                              else wanted == said)


def matches(thing, role, name):
    return (role is None or thing.role == role) and fits(name, thing.name)


class Program:
    """The built program on the session's screen."""

    def __init__(self, session, arguments, environment):
        build = pathlib.Path(os.environ["LB_BUILD_DIR"])
        self.session = session
        self.log_path = session.folder / f"program-{len(session.programs)}.log"
        own = dict(
            os.environ,
            GSETTINGS_SCHEMA_DIR=str(build / "data"),
            LASTBENT_LOCALE_DIR=str(build / "po"),
            G_DEBUG="fatal-criticals",
            NO_AT_BRIDGE="",
            # With a bus of its own each start is a program of its own, not a knock at the first.
            DBUS_SESSION_BUS_ADDRESS=session.start_bus(),
        )
        own.update(environment)
        # Root may write what is closed to a person; the program is to be tried as a person.
        words = ["setpriv", "--bounding-set=-dac_override"] if os.geteuid() == 0 else []
        words += [str(build / "src/desk/lastbent"), *map(str, arguments)]
        with open(self.log_path, "wb") as log:
            self.process = subprocess.Popen(words, env=own, stdin=subprocess.DEVNULL, stdout=log,
                                            stderr=log, cwd=os.environ["HOME"])
        self.application = self.wait(self._find_application, "the program in the accessibility tree")
        self.window = self.wait(self._find_window, "the program's window")
        self.wait(lambda: self.window_id(self.window), "the window on the screen")
        self.raise_window()

    # Waiting

    def wait(self, question, what, patience=PATIENCE):
        def ask():
            if self.process.poll() is not None:
                raise AssertionError(f"the program ended by itself with {self.process.returncode} "
                                     f"before {what}\n{self.log()}")
            return question()

        return wait(ask, what, patience)

    def log(self):
        return self.log_path.read_text(errors="replace")

    def warnings(self):
        """Lines of the program's log that tell of a fault of its own."""
        return [line for line in self.log().splitlines()
                if re.search(r"CRITICAL|WARNING|ERROR|runtime error", line)
                and not HARMLESS.search(line)]

    # Reading

    def _find_application(self):
        application = self.session.reader.application(self.process.pid)
        return application if application and application.places else None

    def windows(self):
        """Windows and dialogs, the main window first."""
        return self.application.again().children()

    def _find_window(self):
        return next((window for window in self.windows() if window.role == "window"), None)

    def all(self, role=None, name=None, within=None):
        return [thing for thing in (within or self.application).walk()
                if matches(thing, role, name)]

    def look(self, role=None, name=None, within=None):
        """The first that fits as it is now, or None."""
        return next((thing for thing in (within or self.application).walk()
                     if matches(thing, role, name)), None)

    def find(self, role=None, name=None, within=None, patience=PATIENCE):
        told = getattr(name, "pattern", name)
        return self.wait(lambda: self.look(role, name, within),
                         f"a {role or 'thing'} called “{told}”", patience)

    def reads(self, words, within=None, patience=PATIENCE):
        """Waits until @words, a string or a pattern, can be read somewhere."""
        pattern = words if hasattr(words, "search") else re.compile(re.escape(words))
        return self.find(None, pattern, within, patience)

    def words(self, within=None):
        """All that can be read."""
        return [thing.name for thing in (within or self.application).walk() if thing.name]

    # Places

    def window_id(self, window):
        title = window.again().raw_name
        for number in run("xdotool", "search", "--onlyvisible", "--pid",
                          str(self.process.pid)).stdout.split():
            if run("xdotool", "getwindowname", number).stdout.rstrip("\n") == title:
                return number
        return None

    def raise_window(self, window=None):
        """The window in front, with the keyboard."""
        number = self.wait(lambda: self.window_id(window or self.window), "the window's number")
        run("xdotool", "windowactivate", number)
        self.wait(lambda: run("xdotool", "getactivewindow").stdout.strip() == number,
                  "the window in front")

    def place_of(self, thing):
        """(x, y, width, height) on the screen."""
        top = thing.top()
        number = self.wait(lambda: self.window_id(top), "the window's number")
        told = run("xwininfo", "-id", number).stdout
        x, y, width, height = (int(re.search(fact + r":\s+(-?\d+)", told)[1]) for fact in (
            "Absolute upper-left X", "Absolute upper-left Y", "Width", "Height"))
        shadow = re.findall(r"\d+", run("xprop", "-id", number,
                                        "_GTK_FRAME_EXTENTS").stdout.partition("=")[2])
        frame = top.extents()
        if len(shadow) == 4:
            left, above = int(shadow[0]), int(shadow[2])
        else:
            left, above = (width - frame[2]) // 2, (height - frame[3]) // 2
        own = thing.extents()
        return x + left + own[0], y + above + own[1], own[2], own[3]

    def middle_of(self, thing):
        x, y, width, height = self.place_of(thing)
        return x + width // 2, y + height // 2

    # Hands

    def settle(self, thing):
        """Waits until something is where it will stay: a page that was just made is measured and
        laid out over a few frames."""
        def settled():
            before = self.place_of(thing)
            time.sleep(5 * STEP)
            return self.place_of(thing) == before and before[2] > 0
        self.wait(settled, f"{thing} to rest")

    def press(self, thing, button=1, times=1):
        """A mouse press in the middle of something, once it is where it will stay: with the mouse
        there, it is looked at again. A page may yet be laid out, or scroll to the focus, after it
        seemed to rest."""
        def is_under_mouse():
            self.settle(thing)
            self.bring_in(thing)
            spot = self.middle_of(thing)
            run("xdotool", "mousemove", "--sync", *map(str, spot))
            self.settle(thing)
            return spot if self.middle_of(thing) == spot else None

        self.press_at(*self.wait(is_under_mouse, f"{thing} to stay under the mouse"),
                      button=button, times=times)

    def bring_in(self, thing):
        """Turns the wheel until it is in its window; what began above it, well below the bars."""
        x, y, width, height = self.place_of(thing.top())
        least = 8
        for _ in range(60):
            middle = self.middle_of(thing)
            if y + least <= middle[1] <= y + height - 8:
                return
            if middle[1] < y + least:
                least = 120
            self.wheel(middle[0], y + height // 2, up=middle[1] < y + least)
            time.sleep(2 * STEP)
        raise AssertionError(f"{thing} cannot be brought into view")

    def press_at(self, x, y, button=1, times=1):
        run("xdotool", "mousemove", "--sync", str(round(x)), str(round(y)))
        run("xdotool", "click", "--repeat", str(times), "--delay", "60", str(button))

    def drag(self, from_x, from_y, to_x, to_y, button=1):
        words = ["xdotool", "mousemove", str(round(from_x)), str(round(from_y)), "mousedown",
                 str(button)]
        for step in range(1, 11):
            words += ["mousemove", str(round(from_x + (to_x - from_x) * step / 10)),
                      str(round(from_y + (to_y - from_y) * step / 10)), "sleep", "0.02"]
        run(*words, "mouseup", str(button))

    def wheel(self, x, y, up=True, notches=1):
        run("xdotool", "mousemove", str(round(x)), str(round(y)), "click", "--repeat",
            str(notches), "--delay", "40", "4" if up else "5")

    def key(self, *keys):
        run("xdotool", "key", "--clearmodifiers", "--delay", "30", *keys)

    def type(self, text):
        run("xdotool", "type", "--delay", "20", text)

    def menu(self, name, within=None):
        """An item of the menu that is open, or else of the main menu, by the arrow keys."""
        root = within or self.window

        def item():
            return next((thing for thing in root.walk() if thing.role.endswith("menu item")
                         and thing.name == name), None)

        if within is None:
            self.key("F10")
        wanted = self.wait(item, f"the menu item “{name}”")
        for _ in range(40):
            if wanted.is_("focused"):
                self.key("Return")
                return
            self.key("Down")
            time.sleep(2 * STEP)
        raise AssertionError(f"the arrow keys do not lead to “{name}”")

    # The end

    def quit(self):
        """Ctrl+Q, as a person does; the program must end well and have nothing to complain of."""
        self.raise_window()
        self.key("ctrl+q")
        try:
            code = self.process.wait(PATIENCE)
        except subprocess.TimeoutExpired:
            raise Late("the program did not end at Ctrl+Q") from None
        assert code == 0, f"the program ended with {code}\n{self.log()}"
        assert not self.warnings(), "\n".join(self.warnings())

    def kill(self):
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait()
