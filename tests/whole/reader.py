# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads what a program says to assistive technology: its accessibility tree, over the bus.

The tree is read level by level, all questions of one level at once: one at a time, each would cost
a turn of two programs, which on a busy machine makes a large window take minutes. Nothing is kept
from one reading to the next.

What has to be known of GTK 4.8 to read it:
 1. A button with a mnemonic is called by its label twice, "_Delete Delete": see plain_name().
 2. Text must be asked for up to its length; "to the end" answers nothing.
 3. Places are told relative to the window; where that is, is for the driver to find out.
 4. Pages that are not on top are in the tree all the same, so a search begins at a page.
 5. Rows of a table are there by the hundred; a search does not go into a table unless it begins
    there.
"""
from gi.repository import Gio, GLib

ACCESSIBLE = "org.a11y.atspi.Accessible"
ACTION = "org.a11y.atspi.Action"
COMPONENT = "org.a11y.atspi.Component"
TEXT = "org.a11y.atspi.Text"
PROPERTIES = "org.freedesktop.DBus.Properties"
REGISTRY = ("org.a11y.atspi.Registry", "/org/a11y/atspi/accessible/root")

# Places relative to the window (AT-SPI's coordinate types).
WINDOW = 1

# AT-SPI's states, by their number.
STATES = {"checked": 4, "focused": 12, "pressed": 20, "selected": 23, "sensitive": 24}

TABLES = {"table", "tree grid"}
TIMEOUT_MS = 20000


class Gone(LookupError):
    """What was asked about is not there any more."""


def plain_name(name):
    half = (len(name) - 2) // 2
    if "_" in name and len(name) % 2 == 0 and name[half + 1 : half + 2] == " ":
        if name[: half + 1].replace("_", "", 1) == name[half + 2 :]:
            return name[half + 2 :]
    return name


class Reader:
    def __init__(self, address):
        flags = Gio.DBusConnectionFlags
        self.bus = Gio.DBusConnection.new_for_address_sync(
            address, flags.AUTHENTICATION_CLIENT | flags.MESSAGE_BUS_CONNECTION, None, None)
        self.bus.set_exit_on_close(False)

    def ask(self, questions):
        """Answers of many (name, path, interface, method, arguments), None where there is none."""
        answers = [None] * len(questions)
        left = len(questions)

        def answered(bus, result, place):
            nonlocal left
            left -= 1
            try:
                answers[place] = bus.call_finish(result).unpack()
            except GLib.Error:
                pass

        for place, (name, path, interface, method, arguments) in enumerate(questions):
            self.bus.call(name, path, interface, method, arguments, None, Gio.DBusCallFlags.NONE,
                          TIMEOUT_MS, None, answered, place)
        context = GLib.MainContext.default()
        while left > 0:
            context.iteration(True)
        return answers

    def application(self, process_id):
        """The tree's top of a process, None while there is none."""
        (tops,) = self.ask([(*REGISTRY, ACCESSIBLE, "GetChildren", None)])[0] or ([],)
        numbers = self.ask([("org.freedesktop.DBus", "/org/freedesktop/DBus",
                             "org.freedesktop.DBus", "GetConnectionUnixProcessID",
                             GLib.Variant("(s)", (name,))) for name, path in tops])
        for (name, path), number in zip(tops, numbers):
            if number == (process_id,):
                return self.read([(name, path)], None)[0]
        return None

    def read(self, places, parent):
        """Things at @places, leaving out those that are gone meanwhile."""
        questions = []
        for name, path in places:
            questions += [
                (name, path, PROPERTIES, "GetAll", GLib.Variant("(s)", (ACCESSIBLE,))),
                (name, path, ACCESSIBLE, "GetRoleName", None),
                (name, path, ACCESSIBLE, "GetChildren", None),
            ]
        answers = self.ask(questions)
        things = []
        for i, (name, path) in enumerate(places):
            facts, role, children = answers[3 * i : 3 * i + 3]
            if facts and role and children:
                things.append(Thing(self, name, path, facts[0], role[0], children[0], parent))
        return things


class Thing:
    """One thing of a window, as it was when it was read; asks anew for what changes."""

    def __init__(self, reader, bus_name, path, facts, role, places, parent):
        self.reader, self.bus_name, self.path = reader, bus_name, path
        self.role = role
        self.name = plain_name(facts.get("Name", ""))
        self.raw_name = facts.get("Name", "")
        self.description = facts.get("Description", "")
        self.places = [place for place in places if place[1] != "/org/a11y/atspi/null"]
        self.parent = parent

    def __repr__(self):
        return f"{self.role} “{self.name}”"

    def _ask(self, interface, method, arguments=None):
        answer = self.reader.ask([(self.bus_name, self.path, interface, method, arguments)])[0]
        if answer is None:
            raise Gone(f"{self} does not answer {method}")
        return answer

    def again(self):
        """The same thing as it is now."""
        found = self.reader.read([(self.bus_name, self.path)], self.parent)
        if not found:
            raise Gone(f"{self} is gone")
        return found[0]

    def children(self):
        return self.reader.read(self.places, self)

    def levels(self, into=None):
        """The tree from here on, level by level."""
        level = [self.again()]
        while level:
            yield level
            places = [(thing, place) for thing in level
                      if thing.path == self.path or (into or Thing.may_enter)(thing)
                      for place in thing.places]
            below = []
            owners = {}
            for thing, place in places:
                owners[tuple(place)] = thing
            below = self.reader.read([place for thing, place in places], None)
            for thing in below:
                thing.parent = owners[(thing.bus_name, thing.path)]
            level = below

    def may_enter(self):
        return self.role not in TABLES

    def walk(self, into=None):
        for level in self.levels(into):
            yield from level

    def text(self):
        """What stands in an entry or a label."""
        answer = self._ask(PROPERTIES, "Get", GLib.Variant("(ss)", (TEXT, "CharacterCount")))
        return self._ask(TEXT, "GetText", GLib.Variant("(ii)", (0, answer[0])))[0]

    def is_(self, state):
        low, high = self._ask(ACCESSIBLE, "GetState")[0]
        return bool((low | high << 32) >> STATES[state] & 1)

    def extents(self):
        return self._ask(COMPONENT, "GetExtents", GLib.Variant("(u)", (WINDOW,)))[0]

    def top(self):
        """The window it stands in."""
        thing = self
        while thing.parent is not None and thing.parent.role != "application":
            thing = thing.parent
        return thing

    def actions(self):
        return [name for name, told, keys in self._ask(ACTION, "GetActions")[0]]

    def act(self, action):
        actions = self.actions()
        if action not in actions:
            raise Gone(f"{self} has no action {action}, only {actions}")
        self._ask(ACTION, "DoAction", GLib.Variant("(i)", (actions.index(action),)))
