#!/usr/bin/env python3
"""Prints each function of the project that the program never reaches; exit 1 if there is any.

    unreached.py FOLDER

Builds the program in FOLDER, unoptimised (clang++), with a section for each function, and lets the linker drop
the sections that nothing leads to from main. What stands in the libraries and not in the program is unreached;
so is an inline function of a header (compiled by g++, which can keep them all) that the program does not hold,
and a name that is declared in a header and never used. Not looked at: templates, constructors, comparisons.

Seen to find them: `double never_asked(double x)` in src/air/psychrometrics.cpp, an inline member function in
include/tackfree/solver/placement.hpp and a declaration there without a body were each printed, with exit 1.
"""
import collections
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
# Why a function may stand in the library without being reached.
ALLOWED = {
    "tackfree::FaceSet::add": "called while compiling",
    "tackfree::Markup::is_closed": "the tests of each chart ask whether every element is closed",
    "tackfree::parse_job": "the way in of the fuzz target: a job without its file",
}
PLAIN_NAME = re.compile(r"(tackfree(?:::(?:\(anonymous namespace\)|\w+|operator[-+*/]))+)(?:\[abi:cxx11\])?\(")


def run(*command, stdin=None):
    ran = subprocess.run(command, input=stdin, capture_output=True, text=True)
    if ran.returncode != 0:
        sys.exit(f"{command[0]} failed:\n{ran.stdout}{ran.stderr}")
    return ran.stdout


def functions(*files):
    """By symbol, how many functions it stands for: local ones (t) of two files may have the same."""
    counts = collections.Counter()
    for kind, symbol in re.findall(r"^\w+ ([TtW]) (_Z\S+)$", run("nm", "--defined-only", *files), re.MULTILINE):
        counts[symbol] = counts[symbol] + 1 if kind == "t" else 1
    return counts


def plain_name(text):
    """`tackfree::Zone::local` of `tackfree::Zone::local(...) const`; nothing for what is not looked at."""
    found = PLAIN_NAME.match(text)
    if not found or "lambda" in text:
        return None
    path = found[1].split("::")
    return found[1] if path[-1] != path[-2] else None


def build(folder):
    """The program, linked anew, and what is in it."""
    run("cmake", "-S", ROOT, "-B", folder, "-G", "Ninja", "-DCMAKE_CXX_COMPILER=clang++", "-DCMAKE_BUILD_TYPE=None",
        "-DCMAKE_CXX_FLAGS=-O0 -ffunction-sections", "-DCMAKE_EXE_LINKER_FLAGS=-Wl,--gc-sections",
        "-DCMAKE_UNITY_BUILD=ON", "-DCMAKE_UNITY_BUILD_BATCH_SIZE=0", "-DTACKFREE_TESTS=OFF")
    run("cmake", "--build", folder, "-j2", "--target", "tackfree")
    return functions(folder / "tackfree"), functions(*sorted(folder.glob("libtackfree_*.a")))


def inline_functions(folder):
    headers = sorted(path.relative_to(ROOT / "include") for path in (ROOT / "include").rglob("*.hpp"))
    every = folder / "every_header.cpp"
    every.write_text("".join(f'#include "{header}"\n' for header in headers))
    compiled = every.with_suffix(".o")
    run("g++", "-std=c++20", "-O0", "-fkeep-inline-functions", "-I", ROOT / "include", "-c", every, "-o", compiled)
    return functions(compiled)


def declared_only():
    """Names with a parameter list in headers that stand nowhere else in the program's code."""
    files = [*(ROOT / "include").rglob("*.hpp"), *(ROOT / "src").rglob("*.cpp")]
    code = {path: re.sub(r"//.*", "", path.read_text()) for path in files}
    words = collections.Counter(word for text in code.values() for word in re.findall(r"\w+", text))
    allowed = {name.split("::")[-1] for name in ALLOWED}
    return {f"{name} in {path.relative_to(ROOT)}" for path, text in code.items() if path.suffix == ".hpp"
            for name in re.findall(r"\b([a-z_]\w*)\(", text) if words[name] == 1 and name not in allowed}


def main():
    folder = pathlib.Path(sys.argv[1]).resolve()
    program, libraries = build(folder)
    if not any(plain_name(text) for text in run("c++filt", stdin="\n".join(program)).splitlines()):
        sys.exit("no function of the project was found in the program")
    missing = (libraries | inline_functions(folder)) - program
    names = {plain_name(text) for text in run("c++filt", stdin="\n".join(missing)).splitlines()} - {None}
    unreached = sorted(names - ALLOWED.keys()) + sorted(declared_only())
    for name in unreached:
        print(f"unreached: {name}")
    for name in sorted(ALLOWED.keys() - names):
        print(f"allowed, but reached or gone: {name}")
    sys.exit(1 if unreached or ALLOWED.keys() - names else 0)


main()
