#!/usr/bin/env python3
"""Seeded edits of shipped figures and of published constants in the code: does a test see each?

    tests/outside/mutations.py BUILD FIGURES CONSTANTS [SEED]

BUILD is a configured build folder of this tree with its tests; it stays as it is, a copy of it is
built in. FIGURES edits are of data: a `published` figure or any of the drying laws, in a copy of
data/ that the test programs read in place of what is built in (TACKFREE_DATA, see
tests/shipped_data.hpp), so nothing is compiled. CONSTANTS edits are of numbers that stand under a
comment with `Source:` in the code; the file is edited in place, the test programs that could see it
are built and run, and the file is put back. The headers of base and model are left out: an edit
there builds everything. Comments that say assumed or practice are passed over, and numbers of one
digit without a point or a unit, which are mostly no figures. A figure becomes
0.5 to 2 times itself. None is edited twice; 999 of each is all of them. The edits go by SEED, or by
how many commits there are, so that each commit tries others. Prints each edit that no test saw; 1
if there is any.
"""

import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
FACTORS = [0.5, 0.8, 0.9, 1.1, 1.25, 2]
NO_FIGURES = r"Source:[\s/]*(the .*)?(assum|practice|common practice)|RFC|ECMA|CLDR"
IN_ALL = ["base", "model"]  # folders that the others include
NUMBER = re.compile(
    r"(?<![\w.\"])(\d+\.\d+(?:e-?\d+)?|\d{2,}|\d+e-?\d+|(?<=[a-z]\()\d(?=\)))(?![\w.]|\")")


def data_figures():
    """(file, path) of each published figure and of all figures of the drying laws."""
    found = []

    def walk(file, path, node):
        if isinstance(node, list) and len(node) > 1 and isinstance(node[0], (int, float)):
            if node[1] == "published" or file == "drying_laws.json":
                found.append((file, path))
        elif isinstance(node, (list, dict)):
            for key, inner in enumerate(node) if isinstance(node, list) else node.items():
                walk(file, path + [key], inner)

    for file in sorted((ROOT / "data").glob("*.json")):
        walk(file.name, [], json.loads(file.read_text()))
    return found


def source_constants():
    """(file, offset, text) of each number under a `Source:` comment in the code."""
    found = []
    files = [*(ROOT / "src").rglob("*.cpp"), *(ROOT / "include").rglob("*.hpp")]
    for file in sorted(file for file in files if file.parent.name not in IN_ALL):
        offset, comment, cited = 0, "", False
        for line in file.read_text().splitlines(keepends=True):
            code, _, said = line.partition("//")
            if not code.strip() and said:
                comment += said
                cited = "Source:" in comment and not re.search(NO_FIGURES, comment)
            elif not line.strip() or line.startswith("}"):
                comment, cited = "", False
            elif code.rstrip().endswith("{") and file.suffix == ".hpp":
                comment, cited = "", False  # a struct: its members tell their own
            elif cited and "throw" not in code:
                for number in NUMBER.finditer(code):
                    found.append((file, offset + number.start(1), number.group(1)))
            offset += len(line.encode())
    return found


def changed(figure, chance):
    """Another figure of the same kind; whole numbers stay whole."""
    while True:
        other = figure * chance.choice(FACTORS) if figure else chance.choice([1, -5, 5])
        other = round(other) if isinstance(figure, int) else float(f"{other:.6g}")
        if other != figure:
            return other


def run(*command, **environment):
    return subprocess.run(command, cwd=ROOT, env={**os.environ, **environment},
                          capture_output=True, text=True)


def built(build, *targets):
    return run("cmake", "--build", str(build), "-j2", "--target", *targets).returncode == 0


def fails(build, program, *cases, **environment):
    return run(str(build / "tests" / program), "--abort-after=1", *cases, **environment).returncode != 0


def data_edit(build, chance, figure):
    file, path = figure
    with tempfile.TemporaryDirectory() as folder:
        copy = pathlib.Path(folder) / "data"
        shutil.copytree(ROOT / "data", copy, ignore=shutil.ignore_patterns("demo", "starter"))
        tree = json.loads((copy / file).read_text())
        node = tree
        for key in path:
            node = node[key]
        before, node[0] = node[0], changed(node[0], chance)
        (copy / file).write_text(json.dumps(tree))
        given = {"TACKFREE_DATA": str(copy)}
        seen = None
        if fails(build, "published_tests", **given):
            seen = "published_tests"
        elif fails(build, "air_tests", "-tc=Each shipped law*", **given):
            seen = "air_tests"
    return f"data/{file} {'/'.join(map(str, path))}: {before} -> {node[0]}", seen


def source_edit(build, chance, constant):
    file, offset, text = constant
    before = file.read_bytes()
    literal = float(text) if re.search(r"[.e]", text) else int(text)
    after = repr(changed(literal, chance))
    line = before[:offset].count(b"\n") + 1
    seen = None
    try:
        file.write_bytes(before[:offset] + after.encode() + before[offset + len(text):])
        for program in (f"{file.parent.name}_tests", "published_tests"):
            seen = program if built(build, program) else "the compiler"
            if seen == "the compiler" or fails(build, program):
                break
            seen = None
    finally:
        file.write_bytes(before)
    return f"{file.relative_to(ROOT)}:{line}: {text} -> {after}", seen


def drawn(chance, count, found):
    """Each file as often as the others, while it has figures left."""
    order = chance.sample(found, len(found))
    seen = {}
    for number, each in enumerate(order):
        nth = seen[each[0]] = seen.get(each[0], 0) + 1
        order[number] = (nth, number, each)
    return [each for _, _, each in sorted(order, key=lambda one: one[:2])[:count]]


def main():
    build, most_figures, most_constants = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    seed = int(sys.argv[4]) if len(sys.argv) > 4 else int(
        run("git", "rev-list", "--count", "HEAD").stdout or 1)
    chance = random.Random(seed)
    figures, constants = data_figures(), source_constants()
    print(f"{len(figures)} figures of data, {len(constants)} constants under a source; seed {seed}")
    edits = [(data_edit, one) for one in drawn(chance, most_figures, figures)]
    # Sorted: between two of one folder less is built.
    edits += [(source_edit, one) for one in sorted(drawn(chance, most_constants, constants))]
    survivors = 0
    written = {file: file.stat() for file, *_ in constants}
    with tempfile.TemporaryDirectory(dir=build.resolve().parent) as folder:
        copy = pathlib.Path(folder) / "build"
        shutil.copytree(build, copy, symlinks=True)
        for program in ("published_tests", "air_tests"):
            if not built(copy, program) or fails(copy, program):
                sys.exit(f"{program} does not build, or fails before anything is edited")
        for edit, one in edits:
            said, seen = edit(copy, chance, one)
            print(f"{'seen by ' + seen if seen else 'NOT SEEN':26} {said}", flush=True)
            survivors += not seen
    # BUILD, which saw none of it, need not be built again.
    for file, was in written.items():
        os.utime(file, ns=(was.st_atime_ns, was.st_mtime_ns))
    print(f"{len(edits)} edits, {survivors} not seen")
    return 1 if survivors else 0


if __name__ == "__main__":
    sys.exit(main())
