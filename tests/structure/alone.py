#!/usr/bin/env python3
"""Compiles each source alone and each header alone, as the builds of whole folders never do; exit 1 if one fails.

    alone.py FOLDER [headers | tests]

FOLDER is for the build's flags; nothing else is written. Syntax only, by clang++, two at a time. A source that
includes its own header first proves that one as well; the other headers are compiled by themselves. With
`headers` only these are, which takes seconds; with `tests` the sources of the tests too. Seen to find solve.cpp
without <map>.
"""
import concurrent.futures
import json
import pathlib
import re
import shlex
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
INCLUDED_FROM = (ROOT / "include", ROOT / "tests")


def sources(folder, with_tests):
    """Each source of the program, or of the tests as well, with its command."""
    subprocess.run(["cmake", "-S", ROOT, "-B", folder, "-G", "Ninja", "-DCMAKE_CXX_COMPILER=clang++",
                    "-DCMAKE_BUILD_TYPE=None", "-DCMAKE_EXPORT_COMPILE_COMMANDS=ON", "-DCMAKE_UNITY_BUILD=OFF",
                    "-DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON", "-DTACKFREE_WERROR=ON"],
                   check=True, stdout=subprocess.DEVNULL)
    commands = {}
    for entry in json.loads((folder / "compile_commands.json").read_text()):
        if not with_tests and not entry["file"].startswith(str(ROOT / "src")):
            continue
        words = shlex.split(entry["command"])
        at = words.index("-o")
        commands[pathlib.Path(entry["file"])] = [*words[:at], "-fsyntax-only", *words[at + 2:]]
    return commands


def first_header(source):
    """The header of the project that a source includes before anything else."""
    found = re.search(r'^#include ([<"])(\S+)[>"]', source.read_text(), re.MULTILINE)
    paths = [folder / found[2] for folder in INCLUDED_FROM if found] if found else []
    return next((path for path in paths if path.is_file()), None)


def compiled(command):
    ran = subprocess.run(command, capture_output=True, text=True)
    return ran.returncode == 0, ran.stdout + ran.stderr


def of_header(header, commands):
    """The command of a source of its folder, or of any, for a header."""
    folder = header.parent.name
    source = next((path for path in commands if path.parent.name == folder), next(reversed(commands)))
    words = [word for word in commands[source] if word not in ("-c", str(source))]
    return [*words, "-Wno-pragma-once-outside-header", str(header)]


def main():
    with_tests = sys.argv[2:] == ["tests"]
    commands = sources(pathlib.Path(sys.argv[1]).resolve(), with_tests)
    proved = {first_header(source) for source in commands}
    headers = [path for folder in INCLUDED_FROM[:2 if with_tests else 1] for path in sorted(folder.rglob("*.hpp"))]
    own = {header: of_header(header, commands) for header in headers if header not in proved}
    commands = own if sys.argv[2:] == ["headers"] else commands | own
    failed = 0
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        for path, (fine, said) in zip(commands, pool.map(compiled, commands.values())):
            if not fine:
                failed += 1
                print(f"{path.relative_to(ROOT)}:\n{said}")
    print(f"{len(commands)} compiled alone, {failed} failed")
    sys.exit(1 if failed or not commands else 0)


main()
