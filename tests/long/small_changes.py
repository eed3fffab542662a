#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes small changes in core, one at a time, and says which of them no test of core or db catches.

A change is a sign, a comparison, a constant or a joining word: < for <=, + for -, 3 for 4, min for max. The
project's files are copied to build/long, and the changes woven into the copy, asleep; a test that reaches a change is
run with it awake. What cannot be woven in, or is reached by no test, is written in its place and built by itself. A
change that does not compile, or leaves the object code as it was, is not counted. Changes that were read by a
person and found to change no result stand in harmless_changes.txt, with the reason, and are not counted either. Exit
status 1 below 95 of 100 caught.
"""
import argparse
import collections
import json
import math
import os
import pathlib
import random
import re
import resource
import shlex
import subprocess
import sys

from possible_changes import changes_of, woven_text

TOP = pathlib.Path(__file__).resolve().parents[2]
WORK = TOP / "build" / "long"
SOURCE = WORK / "source"
BUILD = WORK / "build"
HARMLESS = TOP / "tests" / "long" / "harmless_changes.txt"
CAUGHT_WANTED = 0.95
QUICK = 0.15  # seconds; quicker tests run before the others
LIKELY = 12  # tests that caught the most so far, and run first
LONG = 2.5  # tests that take longer run only where no other catches the change
PROGRAMS = ["holdfast_core_tests", "db/holdfast_db_tests"]


def run(*command, **settings):
    return subprocess.run(command, capture_output=True, text=True, cwd=SOURCE, **settings)


def put(name, text):
    target = SOURCE / name
    if not target.exists() or target.read_text() != text:
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text)


def copy_source(woven):
    """All but the files that are to be woven, which are written once they are."""
    listed = subprocess.run(
        ["git", "ls-files", "-z", "CMakeLists.txt", "DEVELOPERS.md", "app", "core", "db", "resources", "tests"],
        cwd=TOP, check=True, capture_output=True, text=True).stdout
    for name in set(listed.split("\0")) - woven - {""}:
        target = SOURCE / name
        content = (TOP / name).read_bytes()
        if not target.exists() or target.read_bytes() != content:
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(content)
    # A change builds one file of core again, not the eight it is usually built with.
    put("core/CMakeLists.txt", (TOP / "core" / "CMakeLists.txt").read_text() + """
set_target_properties(holdfast_core PROPERTIES UNITY_BUILD OFF)
target_sources(holdfast_core PRIVATE ${CMAKE_SOURCE_DIR}/tests/long/dormant_change.cpp)
holdfast_include_root(holdfast_core PRIVATE tests)
""")
    put("tests/CMakeLists.txt", (TOP / "tests" / "CMakeLists.txt").read_text() + """
target_sources(holdfast_core_tests PRIVATE ${CMAKE_SOURCE_DIR}/tests/long/reached_by_test.cpp)
target_sources(holdfast_db_tests PRIVATE ${CMAKE_SOURCE_DIR}/tests/long/reached_by_test.cpp)
""")


def configure():
    linker = ["-DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=lld"] if run("which", "ld.lld").returncode == 0 else []
    done = run("cmake", "-G", "Ninja", "-S", SOURCE, "-B", BUILD, "-DHOLDFAST_TESTS=ON", "-DHOLDFAST_APP=OFF",
               "-DCMAKE_UNITY_BUILD=ON", "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_EXPORT_COMPILE_COMMANDS=ON",
               "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g0 -D_GLIBCXX_ASSERTIONS -Wno-narrowing -Wno-parentheses", *linker)
    if done.returncode != 0:
        sys.exit(done.stderr)


def build(*targets):
    return run("ninja", "-C", BUILD, "-k", "0", *targets)


class Woven:
    """The copy with all changes in it, asleep; those that cannot be woven in are set aside."""

    def __init__(self, changes):
        self.texts = {change.name: (TOP / change.name).read_text() for change in changes}
        self.numbered = dict(enumerate(changes))
        self.aside = []

    def build(self):
        while True:
            self.write()
            done = build("holdfast_core")
            if done.returncode == 0:
                break
            before = len(self.aside)
            self.set_aside(done.stdout)
            if len(self.aside) == before:
                sys.exit("The copy does not build:\n" + done.stdout[-2000:])
        done = build("holdfast_core_tests", "holdfast_db_tests")
        if done.returncode != 0:
            sys.exit("The tests do not build:\n" + done.stdout[-2000:])

    def write(self):
        for name in self.texts:
            put(name, self.text(name))

    def text(self, name):
        return woven_text(self.texts[name], self.changes_in(name))

    def text_with(self, change):
        """With this one written in its place."""
        lines = self.texts[change.name].split("\n")
        lines[change.at] = change.changed_line
        return woven_text("\n".join(lines), [(n, c) for n, c in self.changes_in(change.name) if c.at != change.at])

    def changes_in(self, name):
        return [(n, c) for n, c in self.numbered.items() if c.name == name]

    def set_aside(self, messages):
        """Those on a line that the compiler names, the first of them; where it names none, all of the file that failed."""
        messages = messages.replace("core/CMakeFiles/holdfast_core.dir/", "core/")
        named = {(name, int(line) - 1) for name, line in re.findall(r"(core/[\w/]+\.cpp):(\d+):", messages)}
        for name in set(re.findall(r"^FAILED: \S*?(core/[\w/]+\.cpp)\.o", messages, re.M)):
            here = self.changes_in(name)
            blamed = {c.at: n for n, c in reversed(here) if (name, c.at) in named}.values() or [n for n, _ in here]
            self.aside += [self.numbered.pop(n) for n in blamed]


class Tests:
    """Which tests of both programs reach which change, and how long each takes."""

    def __init__(self, longest):
        self.seconds, self.reaching, self.longest = {}, collections.defaultdict(list), longest
        self.catches = collections.Counter()
        for program in PROGRAMS:
            report = WORK / f"reached-{pathlib.Path(program).name}.txt"
            self.note_what_is_reached(program, report)
            for line in report.read_text().splitlines():
                name, milliseconds, *changes = line.split()
                self.seconds[program, name] = int(milliseconds) / 1000
                for change in changes:
                    self.reaching[int(change)].append((program, name))

    def note_what_is_reached(self, program, report):
        done = run(BUILD / "tests" / program, "--gtest_brief=1", env={**os.environ, "HOLDFAST_REACHED": str(report)})
        if done.returncode != 0:
            sys.exit("The tests fail without any change:\n" + done.stdout)

    def catch(self, tests, awake):
        """First those that caught the most so far, then the quick ones, then the others; what takes long one by one."""
        likely = sorted(filter(self.catches.get, tests), key=self.catches.get, reverse=True)[:LIKELY]
        rest = [test for test in tests if test not in likely]
        groups = [likely, *([test for test in rest if shortest <= self.seconds[test] < below]
                            for shortest, below in [(0, QUICK), (QUICK, LONG)])]
        groups += [[test] for test in sorted(rest, key=self.seconds.get) if LONG <= self.seconds[test] <= self.longest]
        return any(self.fails_with(program, [test for test in group if test[0] == program], awake)
                   for group in groups for program in PROGRAMS)

    def fails_with(self, program, group, awake):
        """A change that never ends is stopped by the processor's time, which does not run while others have it."""
        if not group:
            return False
        seconds = 5 + math.ceil(3 * sum(self.seconds[test] for test in group))
        done = run(BUILD / "tests" / program, "--gtest_brief=1", "--gtest_fail_fast",
                   "--gtest_filter=" + ":".join(name for _, name in group),
                   env={**os.environ, "HOLDFAST_CHANGE": str(awake)},
                   preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds)))
        self.catches.update((program, name) for name in re.findall(r"^\[  FAILED  \] ([\w./]+)", done.stdout, re.M)
                            if self.seconds.get((program, name), LONG) < QUICK)
        return done.returncode != 0


class Compiler:
    """Whether a change of a file, written in its place, leaves the object code as it was. None: it does not compile."""

    def __init__(self):
        self.commands = {entry["file"]: shlex.split(entry["command"])
                         for entry in json.loads((BUILD / "compile_commands.json").read_text())}

    def leaves_object(self, change):
        text = (TOP / change.name).read_text().split("\n")
        text[change.at] = change.changed_line
        before, after = self.object_of(change.name, (TOP / change.name).read_text()), self.object_of(
            change.name, "\n".join(text))
        return None if after is None else before == after

    def object_of(self, name, text):
        command = list(self.commands[str(SOURCE / name)])
        source, made = WORK / "alone.cpp", WORK / "alone.o"
        source.write_text(text)
        command[command.index("-o") + 1] = str(made)
        command[command.index("-c") + 1] = str(source)
        done = subprocess.run(command, cwd=BUILD, capture_output=True)
        return made.read_bytes() if done.returncode == 0 else None


def is_caught_alone(change, woven, tests):
    """Written in its place, in the woven file, and tried on every test."""
    put(change.name, woven.text_with(change))
    try:
        done = build("holdfast_core_tests", "holdfast_db_tests")
        return done.returncode != 0 or tests.catch(list(tests.seconds), -1)
    finally:
        put(change.name, woven.text(change.name))


def harmless():
    entries = set()
    for line in HARMLESS.read_text().split("\n"):
        if line and not line.startswith("#"):
            name, before, after, _ = line.split("\t")
            entries.add((name, before, after))
    return entries


def drawn(asked):
    changes, known = [], harmless()
    for path in sorted((TOP / "core").rglob("*.cpp")):
        name = str(path.relative_to(TOP))
        if name.startswith(asked.only):
            changes += [each for each in changes_of(name, path.read_text())
                        if (name, each.before, each.after) not in known]
    print(f"{len(changes)} changes are possible.", flush=True)
    random.Random(asked.seed).shuffle(changes)
    return changes[: asked.changes]


class Count:
    def __init__(self):
        self.caught, self.missed = 0, []

    def add(self, change, is_caught):
        self.caught += is_caught
        if not is_caught:
            self.missed.append(change)
            print(f"not caught: {change}", flush=True)
        if self.tried % 20 == 0:
            print(f"{self.caught} of {self.tried} caught so far", flush=True)

    @property
    def tried(self):
        return self.caught + len(self.missed)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--changes", type=int, default=330, help="drawn; a tenth of them change no object code")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", default="core/", help="changes in this folder or file alone")
    parser.add_argument("--longest", type=float, default=30,
                        help="seconds; tests that take longer are left out")
    asked = parser.parse_args()

    changes = drawn(asked)
    copy_source({change.name for change in changes})
    woven = Woven(changes)
    woven.write()
    configure()
    woven.build()
    tests, compiler, count = Tests(asked.longest), Compiler(), Count()
    for number, change in woven.numbered.items():
        reaching = tests.reaching[number]
        if not reaching:
            woven.aside.append(change)
        elif tests.catch(reaching, number):
            count.add(change, True)
        elif compiler.leaves_object(change) is False:
            count.add(change, False)
    print(f"{len(woven.aside)} changes are tried by themselves.", flush=True)
    for change in woven.aside:
        if compiler.leaves_object(change) is False:
            count.add(change, is_caught_alone(change, woven, tests))
    print(f"{count.caught} of {count.tried} changes were caught, {len(count.missed)} were not.")
    if count.tried and count.caught < CAUGHT_WANTED * count.tried:
        sys.exit(1)


if __name__ == "__main__":
    main()
