#!/usr/bin/env python3
"""Breaks the numerics one line at a time and sees a test fail.

    bite.py BUILD [ROW...]    BUILD: a configured build of a copy of this tree that nobody else works in

Each row of mutations.tsv is written into the source, the room's test program is built and run, and the source put back. A row
that builds and passes is told at the end, and the exit status is 1.
"""
import pathlib
import subprocess
import sys

here = pathlib.Path(__file__).resolve()
root = here.parent.parent.parent
build = pathlib.Path(sys.argv[1]).resolve()
chosen = {int(word) for word in sys.argv[2:]}
rows = [line.rstrip("\n").split("\t") for line in open(here.parent / "mutations.tsv", encoding="utf-8") if not line.startswith("#")]
survived = []
for number, (name, old, new, room) in enumerate(rows, 1):
    if chosen and number not in chosen:
        continue
    path = root / name
    text = path.read_text(encoding="utf-8")
    if text.count(old) != 1:
        sys.exit(f"row {number}: {name} holds {text.count(old)} times: {old}")
    path.write_text(text.replace(old, new), encoding="utf-8")
    try:
        built = subprocess.run(["cmake", "--build", build, "--target", "test_" + room], capture_output=True, text=True)
        if built.returncode != 0:
            sys.exit(f"row {number} does not build:\n{built.stdout[-2000:]}")
        run = subprocess.run([build / "tests" / ("test_" + room)], capture_output=True, text=True, timeout=1200)
    finally:
        path.write_text(text, encoding="utf-8")
    caught = run.returncode != 0
    failed = [line.strip() for line in run.stdout.splitlines() if line.startswith("test cases:")]
    print(f"{number:3} {'caught' if caught else 'SURVIVED'} {name}: {old} -> {new} {' '.join(failed)}", flush=True)
    if not caught:
        survived.append(number)
print(f"{len(survived)} survived: {survived}" if survived else "every one was caught")
sys.exit(1 if survived else 0)
