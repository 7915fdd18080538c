"""Runs the library's kernels and their rivals in C++ and numpy in turns on one machine and prints the ratios.

    mvn -B -ntp -pl benchmarks -am package -DskipTests
    python3 benchmarks/rivals/run.py [--turns 3] [--java java] [--cpu 1]

Needs g++ and, for the numpy rows, numpy. First all rivals check their outcomes against the library's on the same scenarios. Then each
turn runs C++, Java, C++; times are processor time of one thread. Where C++ before and after differ by more than 5 % in an operation, the
turn says nothing about it and is left out of that operation's median. Only ratios mean anything on another machine.
"""
import argparse
import importlib.util
import os
import statistics
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
TARGET = HERE.parent / "target"
SETS = TARGET / "rivals"
FLAGS = ["-std=c++17", "-Wall", "-Wextra", "-O3", "-march=native", "-fno-math-errno", "-fno-trapping-math"]
STEADY = 0.05
# the library's operation, the C++ operations it is held against (the fastest counts), the goal
GOALS = [
    ("stop batch distance", ["stop batch distance", "stop batch distance mended"], 1.7),
    ("stop batch both", ["stop batch both", "stop batch both mended"], 1.7),
    ("pair loop", ["pair loop"], None),
    ("pair batch", ["pair batch"], 1.7),
    ("pair phases", ["pair phases"], None),
    ("draws", ["draws"], None),
    ("monte carlo", ["monte carlo"], 1.4),
    ("monte carlo without gap", ["monte carlo"], None),
]


def run(command):
    return subprocess.run([str(part) for part in command], check=True, text=True, stdout=subprocess.PIPE).stdout


def times(text):
    return {name: float(ns) for name, ns in (line.split("\t") for line in text.splitlines() if "\t" in line)}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--turns", type=int, default=3)
    parser.add_argument("--java", default="java")
    parser.add_argument("--cpu", type=int, help="keep every program on this processor")
    options = parser.parse_args()
    if options.cpu is not None:
        os.sched_setaffinity(0, {options.cpu})
    jar = TARGET / "benchmarks.jar"
    if not jar.exists():
        sys.exit("benchmarks.jar is missing: build it first, see --help")
    SETS.mkdir(parents=True, exist_ok=True)
    rivals = SETS / "rivals"
    run(["g++", *FLAGS, "-o", rivals, HERE / "rivals.cpp"])
    java = [options.java, "-cp", jar, "io.github.stoplag.benchmarks.Rivals"]
    run([*java, "write", SETS])
    numpy = [sys.executable, HERE / "numpy_rival.py"] if importlib.util.find_spec("numpy") else None
    for rival in filter(None, ([rivals], numpy)):
        print(run([*rival, "check", SETS]), end="")

    ours, theirs, left_out = {}, {}, {}
    for turn in range(options.turns):
        before, library, after = (times(run(c)) for c in ([rivals, "time", SETS], [*java, "time"], [rivals, "time", SETS]))
        for name, others, _ in GOALS:
            steady = all(abs(before[o] / after[o] - 1) <= STEADY for o in others)
            left_out[name] = left_out.get(name, 0) + (not steady)
            if steady:
                ours.setdefault(name, []).append(library[name])
                theirs.setdefault(name, []).append(min((before[o] + after[o]) / 2 for o in others))
    print(f"\n{'operation':<26}{'Java ns':>9}{'C++ ns':>9}{'ratio':>8}{'goal':>7}{'turns':>8}")
    for name, _, goal in GOALS:
        if name not in ours:
            print(f"{name:<26}  no turn was steady, run again on a quieter machine")
            continue
        ratio = statistics.median(a / b for a, b in zip(ours[name], theirs[name]))
        row = f"{name:<26}{statistics.median(ours[name]):9.2f}{statistics.median(theirs[name]):9.2f}{ratio:8.2f}"
        turns = f"{len(ours[name])}/{options.turns}"
        print(row + (f"{goal:7.1f}" if goal else " " * 7) + f"{turns:>8}" + ("" if not goal else "  met" if ratio <= goal else "  missed"))
    if numpy:
        print(f"\n{'operation':<26}{'numpy ns':>9}{'over Java':>11}")
        for name, ns in times(run([*numpy, "time", SETS])).items():
            base = ours.get(name.removesuffix(" by phases"))
            print(f"{name:<26}{ns:9.1f}" + (f"{ns / statistics.median(base):10.1f}x" if base else ""))


if __name__ == "__main__":
    main()
