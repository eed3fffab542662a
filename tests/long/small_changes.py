#!/usr/bin/env python3
"""Makes small changes in core, one at a time, and says which of them no test of core or db catches.

A change is a sign, a comparison, a constant or a joining word: < for <=, + for -, 3 for 4, min for max. The
project's files are copied to build/long and changed there. A change that does not compile, or leaves the
object code as it was, is not counted. Changes that were read by a person and found to change no result stand
in harmless_changes.txt, with the reason, and are not counted either. Exit status 1 below 95 of 100 caught.
"""
import argparse
import hashlib
import json
import pathlib
import random
import re
import subprocess
import sys
import time

TOP = pathlib.Path(__file__).resolve().parents[2]
WORK = TOP / "build" / "long"
SOURCE = WORK / "source"
BUILD = WORK / "build"
HARMLESS = TOP / "tests" / "long" / "harmless_changes.txt"
CAUGHT_WANTED = 0.95
QUICK = 0.15  # seconds; quicker tests run before the others

# What is looked for, and what stands there instead.
CHANGES = [
    (re.compile(r"(?<= )<(?= )"), "<="),
    (re.compile(r"(?<= )<=(?= )"), "<"),
    (re.compile(r"(?<= )>(?= )"), ">="),
    (re.compile(r"(?<= )>=(?= )"), ">"),
    (re.compile(r"(?<= )==(?= )"), "!="),
    (re.compile(r"(?<= )!=(?= )"), "=="),
    (re.compile(r"(?<= )\+(?= )"), "-"),
    (re.compile(r"(?<= )-(?= )"), "+"),
    (re.compile(r"(?<= )\*(?= )"), "/"),
    (re.compile(r"(?<= )/(?= )"), "*"),
    (re.compile(r"(?<= )\+=(?= )"), "-="),
    (re.compile(r"(?<= )-=(?= )"), "+="),
    (re.compile(r"(?<= )&&(?= )"), "||"),
    (re.compile(r"(?<= )\|\|(?= )"), "&&"),
    (re.compile(r"\bstd::min\b"), "std::max"),
    (re.compile(r"\bstd::max\b"), "std::min"),
    (re.compile(r"\btrue\b"), "false"),
    (re.compile(r"\bfalse\b"), "true"),
    (re.compile(r"\bstd::floor\b"), "std::ceil"),
    (re.compile(r"\bstd::ceil\b"), "std::floor"),
    (re.compile(r"(?<=[ (])!(?=[\w(])"), ""),
]
NUMBER = re.compile(r"(?<![\w.'])(\d+)(\.\d+)?(?![\w.'])")
STRING = re.compile(r'"(?:[^"\\]|\\.)*"|\'(?:[^\'\\]|\\.)*\'')
NO_RESULT = re.compile(r"^\s*(#|//|static_assert|assert|using |namespace |template)")


def code_of(line):
    """The line with its strings and comment blanked, at its full length."""
    blank = STRING.sub(lambda found: "_" * len(found.group()), line)
    return blank.split("//")[0]


def changes_of(path):
    lines = path.read_text().split("\n")
    for at, line in enumerate(lines):
        if NO_RESULT.match(line):
            continue
        code = code_of(line)
        for pattern, instead in CHANGES:
            for found in pattern.finditer(code):
                yield at, line[: found.start()] + instead + line[found.end():]
        for found in NUMBER.finditer(code):
            whole, part = found.groups()
            other = str(int(whole) + 1) if part is None else f"{float(whole + part) * 1.02:.12g}"
            yield at, line[: found.start()] + other + line[found.end():]


def all_changes(only):
    changes = []
    for path in sorted((SOURCE / "core").rglob("*.cpp")):
        name = str(path.relative_to(SOURCE))
        if name.startswith(only):
            changes += [(name, at, changed) for at, changed in changes_of(path)]
    return changes


def copy_source():
    listed = subprocess.run(
        ["git", "ls-files", "-z", "CMakeLists.txt", "core", "db", "resources", "tests", "app/packages.sh"],
        cwd=TOP, check=True, capture_output=True, text=True).stdout
    for name in filter(None, listed.split("\0")):
        target = SOURCE / name
        text = (TOP / name).read_bytes()
        if not target.exists() or target.read_bytes() != text:
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(text)
    # A change builds one file of core again, not the eight it is usually built with.
    with (SOURCE / "core" / "CMakeLists.txt").open("a") as lists:
        lists.write("set_target_properties(holdfast_core PROPERTIES UNITY_BUILD OFF)\n")


def configure():
    if not (BUILD / "build.ninja").exists():
        linker = ["-DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=lld"] if subprocess.run(
            ["which", "ld.lld"], capture_output=True).returncode == 0 else []
        subprocess.run(["cmake", "-G", "Ninja", "-S", SOURCE, "-B", BUILD, "-DHOLDFAST_TESTS=ON", "-DHOLDFAST_APP=OFF",
                        "-DCMAKE_UNITY_BUILD=ON",
                        "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g0 -D_GLIBCXX_ASSERTIONS", *linker],
                       check=True, stdout=subprocess.DEVNULL)


def built(tests="holdfast_core_tests"):
    return subprocess.run(["ninja", "-C", BUILD, "--quiet", tests], capture_output=True).returncode == 0


def object_sum(name):
    found = list(BUILD.rglob(pathlib.Path(name).name + ".o"))
    found = [each for each in found if str(each).endswith(name.removeprefix("core/") + ".o")]
    return hashlib.sha256(found[0].read_bytes()).hexdigest() if found else None


def passes(program, names, seconds):
    try:
        return subprocess.run([BUILD / "tests" / program, "--gtest_brief=1", "--gtest_fail_fast",
                               "--gtest_filter=" + ":".join(names)],
                              capture_output=True, timeout=seconds, cwd=SOURCE).returncode == 0
    except subprocess.TimeoutExpired:
        return False


def is_missed(quick, slow, seconds):
    """Quick tests first: most changes end there. db's are built only where all of core's pass."""
    core = "holdfast_core_tests"
    if not passes(core, quick, seconds) or not passes(core, slow, seconds):
        return False
    built("holdfast_db_tests")
    return passes("db/holdfast_db_tests", ["*"], seconds)


def timed_tests():
    """The names of the quick tests and of the others, and how long each kind takes."""
    report = WORK / "times.json"
    begun = time.monotonic()
    done = subprocess.run([BUILD / "tests" / "holdfast_core_tests", "--gtest_brief=1", f"--gtest_output=json:{report}"],
                          capture_output=True, cwd=SOURCE)
    if done.returncode != 0:
        sys.exit("The tests fail without any change:\n" + done.stdout.decode())
    tests = [(float(test["time"].rstrip("s")), f"{suite['name']}.{test['name']}")
             for suite in json.loads(report.read_text())["testsuites"] for test in suite["testsuite"]]
    tests.sort()
    quick = [name for seconds, name in tests if seconds < QUICK]
    slow = [name for seconds, name in tests if seconds >= QUICK]
    return quick, slow, time.monotonic() - begun


def harmless():
    if not HARMLESS.exists():
        return set()
    entries = set()
    for line in HARMLESS.read_text().split("\n"):
        if line and not line.startswith("#"):
            name, before, after, _ = line.split("\t")
            entries.add((name, before, after))
    return entries


class Trial:
    """One change in the copy; put back at its end."""

    def __init__(self, name, at, changed):
        self.path = SOURCE / name
        self.text = self.path.read_text()
        lines = self.text.split("\n")
        self.before, self.after = lines[at].strip(), changed.strip()
        lines[at] = changed
        self.changed = "\n".join(lines)

    def __enter__(self):
        self.path.write_text(self.changed)
        return self

    def __exit__(self, *_):
        self.path.write_text(self.text)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--changes", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", default="core/", help="changes in this folder or file alone")
    asked = parser.parse_args()

    copy_source()
    configure()
    if not built():
        sys.exit("The copy does not build.")
    quick, slow, whole = timed_tests()
    changes = all_changes(asked.only)
    random.Random(asked.seed).shuffle(changes)
    known = harmless()
    sums = {name: object_sum(name) for name, _, _ in changes}
    caught, missed = 0, []
    print(f"{len(changes)} changes are possible; the tests take {whole:.0f} s.", flush=True)
    for name, at, changed in changes:
        if caught + len(missed) == asked.changes:
            break
        with Trial(name, at, changed) as trial:
            if (name, trial.before, trial.after) in known or not built() or object_sum(name) == sums[name]:
                continue
            if is_missed(quick, slow, 5 * whole + 60):
                missed.append(f"{name}:{at + 1}\n    {trial.before}\n    {trial.after}")
                print("not caught: " + missed[-1], flush=True)
            else:
                caught += 1
        if (caught + len(missed)) % 20 == 0:
            print(f"{caught} of {caught + len(missed)} caught so far", flush=True)
    tried = caught + len(missed)
    print(f"{caught} of {tried} changes were caught, {len(missed)} were not.")
    if tried and caught < CAUGHT_WANTED * tried:
        sys.exit(1)


if __name__ == "__main__":
    main()
