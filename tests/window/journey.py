#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A journey through the real program, as somebody who only hears it would make it.

Opens the demo day, changes a shot, sees the plan follow, is killed after each keystroke and opened
again, and finds every word. Speaks TAP. Needs a display, a session bus and AT-SPI; says so and
skips where they are missing.

    tests/window/with-display tests/window/journey.py FIELDFARE FIELDFARECTL
"""
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time

try:
    import gi

    gi.require_version("Atspi", "2.0")
    from gi.repository import Atspi
except (ImportError, ValueError):
    print("1..0 # SKIP AT-SPI for Python is not installed")
    sys.exit(77)

PATIENCE = 40.0  # seconds; only a broken program reaches it
# Of the keys of a PC keyboard, as X numbers them (xfree86 keycodes).
CODE_OF_CONTROL, CODE_OF_4, CODE_OF_SPACE = 37, 13, 65
cases = []


def patiently(what, look):
    """Whatever `look` gives as soon as it gives something."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        try:
            found = look()
        except Exception:  # the tree changes while it is walked
            found = None
        if found:
            return found
        time.sleep(0.1)
    raise AssertionError(f"waited in vain for {what}")


def walk(node, depth=0):
    yield node
    if depth > 40:
        return
    for i in range(node.get_child_count()):
        child = node.get_child_at_index(i)
        if child is not None:
            yield from walk(child, depth + 1)


def words_of(node):
    """What is heard of a node. Of a status, GTK 4.18 gives no name but the text itself."""
    if node.get_name():
        return f"{node.get_name()}\n{node.get_description() or ''}"
    text = node.get_text_iface()
    if text is None:
        return node.get_description() or ""
    return Atspi.Text.get_text(text, 0, Atspi.Text.get_character_count(text))


class Program:
    """The running window, seen through the accessibility bus."""

    def __init__(self, path, folder, page):
        environment = dict(os.environ, GSETTINGS_BACKEND="keyfile", GSK_RENDERER="cairo",
                           XDG_CONFIG_HOME=folder)
        environment.pop("GTK_A11Y", None)
        self.process = subprocess.Popen(
            [path, "--data-dir", folder, "--page", page], env=environment, stderr=subprocess.DEVNULL)
        self.root = patiently("the window", self._find_root)

    def _find_root(self):
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            if child is not None and child.get_process_id() == self.process.pid and \
                    child.get_child_count() > 0:
                return child
        return None

    def find(self, name, *roles):
        def look():
            for node in walk(self.root):
                if node.get_role_name() in roles and name in (node.get_name() or ""):
                    return node
            return None
        return patiently(f"{roles[0]} “{name}”", look)

    def says(self, words):
        return patiently(f"the words “{words}”",
                         lambda: any(words in words_of(node) for node in walk(self.root)))

    def press(self, name):
        """The button of just this name; GTK 4.8 says a mnemonic before it: "_Save Save"."""
        button = patiently(f"the button {name}", lambda: next(
            (node for node in walk(self.root)
             if (node.get_name() or "").replace("_", "") in (name, f"{name} {name}")
             and node.get_role_name() in ("push button", "button", "toggle button")), None))
        action = button.get_action_iface()
        assert action is not None and action.get_n_actions() > 0, f"{name} can't be pressed"
        action.do_action(0)

    def field(self, name):
        return self.find(name, "text", "entry", "text box")

    def text_of(self, node):
        text = node.get_text_iface() or node
        return Atspi.Text.get_text(text, 0, Atspi.Text.get_character_count(text))

    def type_into(self, name, words):
        node = self.field(name)
        editable = node.get_editable_text_iface() or node
        Atspi.EditableText.set_text_contents(editable, words)
        patiently(f"“{words}” in {name}", lambda: self.text_of(self.field(name)) == words)

    def key(self, code):
        """A key as the keyboard sends it, to whatever has the focus."""
        Atspi.generate_keyboard_event(code, None, Atspi.KeySynthType.PRESSRELEASE)

    def control(self, code):
        Atspi.generate_keyboard_event(CODE_OF_CONTROL, None, Atspi.KeySynthType.PRESS)
        self.key(code)
        Atspi.generate_keyboard_event(CODE_OF_CONTROL, None, Atspi.KeySynthType.RELEASE)

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()


def case(what):
    def wrap(function):
        cases.append((what, function))
        return function
    return wrap


class Journey:
    def __init__(self, fieldfare, fieldfarectl):
        self.fieldfare, self.fieldfarectl = fieldfare, fieldfarectl
        self.folder = None
        self.start_anew()

    def start_anew(self):
        """The demo day as it comes."""
        if self.folder is not None:
            shutil.rmtree(self.folder, ignore_errors=True)
        self.folder = tempfile.mkdtemp(prefix="fieldfare-journey-")
        self.ask("demo")
        self.remember_job()

    def remember_job(self):
        """The window opens the job that was open last; that of the journey is the demo day."""
        jobs = self.ask("jobs")["jobs"]
        mill = next(job["id"] for job in jobs if job["title"].startswith("Skarrowick"))
        settings = os.path.join(self.folder, "glib-2.0", "settings")
        os.makedirs(settings)
        with open(os.path.join(settings, "keyfile"), "w", encoding="utf-8") as file:
            file.write(f"[org/fieldfare/Fieldfare]\njob='{mill}'\n")

    def ask(self, *words):
        answer = subprocess.run(
            [self.fieldfarectl, "--data-dir", self.folder, "--json", *words],
            capture_output=True, text=True, check=False)
        return json.loads(answer.stdout) if answer.stdout.startswith("{") else answer

    def open(self, page):
        return Program(self.fieldfare, self.folder, page)

    def stored(self, shot, key):
        job = self.ask("job", "Skarrowick")
        return next(one[key] for one in job["shots"] if one["label"] == shot)


@case("the demo day opens with its shots")
def opens(journey):
    program = journey.open("shots")
    program.says("harbour from above")
    program.kill()


@case("every keystroke of a title outlives a kill")
def keystrokes(journey):
    typed = "low water"
    for end in range(1, len(typed) + 1):
        program = journey.open("shots")
        program.type_into("Title", typed[:end])
        program.kill()
        found = journey.stored("A", "title")
        assert found == typed[:end], f"typed “{typed[:end]}”, found “{found}”"
    program = journey.open("shots")
    program.type_into("Title", typed)
    program.kill()
    program = journey.open("shots")
    program.says(typed)
    program.kill()


@case("a wrong value is said beside its field and the old one stays")
def refusal(journey):
    before = journey.stored("A", "minutes")
    program = journey.open("shots")
    program.type_into("Minutes", "ninety")
    program.says("not a whole number")
    program.kill()
    assert journey.stored("A", "minutes") == before


@case("a changed shot changes the plan")
def plan_follows(journey):
    before = journey.ask("plan", "Skarrowick")["sorties"][0]["down"]
    program = journey.open("shots")
    program.type_into("Minutes", "9")
    program.kill()
    after = journey.ask("plan", "Skarrowick")["sorties"][0]["down"]
    assert before != after, "the plan did not move"
    clock = after[11:16]
    program = journey.open("sorties")
    program.says("16:48")  # land by: off 16:30 and 18 minutes
    program.kill()
    assert clock == "16:43", f"down at {clock}"


@case("the stop ruler is played, and says who pays")
def ruler(journey):
    program = journey.open("light")
    program.says("Stop ruler: Shutter 1/50")
    program.press("↓ Third")
    program.says("Stop ruler: Shutter 1/40")
    program.says("too bright")
    program.press("Fix · F")
    program.says("fixed")
    program.press("Best · B")
    program.says("Stop ruler: Shutter 1/50")
    program.press("Why?")
    program.says("ND32 takes 5 stops.")
    program.press("+5 min · T")
    program.says("16:35 · ")
    program.kill()


@case("the van is counted, and a charge that nobody attends is not planned")
def packs(journey):
    journey.ask("pack", "Skarrowick", "--out", "ND32", "--out", "b1", "--by", "MO")
    program = journey.open("pack")
    program.says("2 of 36 out")
    program.says("ND32, 5-stop filter: out.")
    program.press("In on the ground · 2")
    program.says("0 in, 2 were out")
    program.press("Take away: 2027-09-17, 17:00–23:00: Marit Ostrander is at the charger")
    program.says("Nobody is entered to attend the charger")
    program.kill()
    evening = journey.ask("pack", "Skarrowick", "--in", "b1", "--by", "MO")
    assert evening["charge_evening"]["turns"] == [], "a charge was planned with nobody there"
    assert any(one["item"] == "ND32" and "last counted out" in one["reason"]
               for one in evening["short"]), "the missing filter has no last place"


@case("a lent filter and a quarantined battery change plan, pack list and brief, and a lost one is named")
def evening(journey):
    journey.start_anew()
    journey.ask("freeze", "Skarrowick", "--by", "MO")
    journey.ask("gear", "set", "ND16", "--state", "out", "--why", "lent", "--with", "Brackenholt",
                "--until", "2027-09-19")
    program = journey.open("pack")
    program.says("ND16: out with Brackenholt, back Sun 19 Sep: lent.")
    program.kill()
    lines = journey.ask("plan", "Skarrowick")["sorties"]
    assert not any("ND16" in line["filters"] for line in lines), "planned with a lent filter"
    journey.ask("gear", "set", "b3", "--state", "quarantined", "--why", "swollen")
    lines = journey.ask("plan", "Skarrowick")["sorties"]
    assert not any(line["battery"] == "b3" for line in lines), "planned on a quarantined battery"
    told = [one["text"] for one in journey.ask("amend", "try", "Skarrowick")["amendment"]["sentences"]]
    assert any("not 4 stops (ND16)" in text for text in told), "the printed brief is not amended"
    assert any("line 3, battery b4 not b3" in text for text in told), told
    program = journey.open("sorties")
    program.says("land by 17:56")
    program.control(CODE_OF_4)  # the part of the job that is the pack list
    program.says("b3: quarantined: swollen.")
    program.says("no spare left")
    program.says("0 of 34 out")
    program.control(CODE_OF_4)  # once more: onto its first line
    program.key(CODE_OF_SPACE)
    program.says("1 of 34 out")
    program.key(CODE_OF_SPACE)
    program.says("2 of 34 out")
    program.kill()
    assert journey.ask("pack", "Skarrowick")["counted"]["out"] == 2
    journey.ask("pack", "Skarrowick", "--all-out", "--by", "MO")
    journey.ask("log", "add", "Skarrowick", "--line", "3", "--off", "2027-09-18T17:38:00+01:00",
                "--down", "2027-09-18T17:54:00+01:00", "--battery", "b4", "--filters", "ND32")
    journey.ask("pack", "Skarrowick", "--missing", "ND32", "--by", "MO")
    program = journey.open("pack")
    program.says("ND32: missing; last fitted 17:38, battery b4")
    program.kill()
    journey.start_anew()  # the steps after this one know nothing of it


@case("a list is run, the power goes, and it opens at the same item")
def checks(journey):
    title = "Van pack: does all that flies come along?"
    program = journey.open("checks")
    program.press("Marit Ostrander")
    program.press(f"Start: {title}")
    program.says("Batteries")
    program.type_into("Say the value", "5")
    program.press("Space  done")
    program.says("two sets, no nicks")
    program.press("Space  done")
    program.says("in its case, nothing loose on it")
    program.kill()
    run = next(one for one in journey.ask("checks", "Skarrowick")["runs"] if one["list"] == title)
    assert run["done"] == 2 and run["at"] == "Aircraft", run
    program = journey.open("checks")
    program.press(f"Go on: {title}")
    program.says("Held at Aircraft since")
    program.says("Propellers comes again.")
    program.kill()


@case("a report and a measured gust: outside, the sorties say so, the crew stands by, one page")
def weather(journey):
    program = journey.open("weather")
    program.says("The pilot decides.")
    program.type_into("METAR, SPECI or TAF, as it was issued",
                      "EGXX 172250Z 24008KT 9999 FEW030 15/08 Q1015 WHAT")
    program.says("Not understood: WHAT")
    program.press("Keep the report")
    program.says("distance not given")
    program.type_into("Value", "10.8")
    program.press("Keep it · Enter")
    program.says("1 limit outside")
    program.press("stand by")
    program.type_into("Why", "gusts")
    program.type_into("Decided by (initials)", "JV")
    program.press("Enter the decision")
    program.says("Standing by since")
    program.says("(JV): gusts")
    program.press("Save PDF")
    target = os.path.join(journey.folder, "call.pdf")
    name = program.find("Name", "text", "entry", "text box")
    Atspi.EditableText.set_text_contents(name.get_editable_text_iface() or name, target)
    program.press("Save")
    patiently("the page", lambda: os.path.exists(target) and os.path.getsize(target) > 1000)
    program.kill()
    answer = journey.ask("limits", "Skarrowick")
    gust = next(row for row in answer["rows"] if row["kind"] == "gust")
    assert gust["answer"] == "outside", f"the gust is {gust['answer']}"
    call = answer["calls"][-1]
    assert (call["decision"], call["by"], call["why"]) == ("stand-by", "JV", "gusts"), call
    pages = subprocess.run(["pdfinfo", target], capture_output=True, text=True, check=False).stdout
    assert "Pages:           1\n" in pages, pages
    program = journey.open("weather")
    program.says("Standing by since")  # the clock goes on where it was
    program.kill()
    program = journey.open("sorties")
    program.says("gust at flying height: 10.8 m/s")
    program.kill()


@case("a brief is saved as a file")
def briefs(journey):
    program = journey.open("briefs")
    program.says("page 1 of")
    program.press("Save as PDF…")
    target = os.path.join(journey.folder, "brief.pdf")
    name = program.find("Name", "text", "entry", "text box")
    Atspi.EditableText.set_text_contents(name.get_editable_text_iface() or name, target)
    program.press("Save")
    patiently("the file", lambda: os.path.exists(target) and os.path.getsize(target) > 1000)
    program.kill()


@case("that the observer was briefed is noted and kept")
def briefed(journey):
    journey.ask("freeze", "Skarrowick", "--by", "MO")
    program = journey.open("briefs")
    program.says("page 1 of")
    program.says("4 of 4 are not briefed on what stands.")
    program.press("□ 4 of 4 are not briefed on what stands.")
    program.press("Pell Rasmussen was briefed")
    program.says("3 of 4 are not briefed on what stands.")
    program.kill()
    people = journey.ask("briefed", "Skarrowick")["briefed"]
    observer = next(one for one in people if one["initials"] == "PR")
    assert observer["state"] == "done" and observer["version"] == "A", observer


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    if Atspi.init() not in (0, 1):
        print("1..0 # SKIP no accessibility bus")
        sys.exit(77)
    journey = Journey(sys.argv[1], sys.argv[2])
    failed = 0
    print(f"1..{len(cases)}")
    for number, (what, function) in enumerate(cases, 1):
        try:
            function(journey)
            print(f"ok {number} - {what}", flush=True)
        except Exception as trouble:  # each case stands alone
            failed += 1
            print(f"# {trouble}")
            print(f"not ok {number} - {what}", flush=True)
    shutil.rmtree(journey.folder, ignore_errors=True)
    sys.exit(1 if failed else 0)


main()
