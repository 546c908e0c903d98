#!/usr/bin/env python3
"""Runs the fuzz targets, two at a time, and prints what each ran, reached and found.

    run.py SECONDS [TARGET...]

SECONDS are for each target. Build them first: cmake --workflow --preset fuzz. The first inputs are the jobs,
lists, weather and calendars of data/ and tests/, and every text in quotes in the test of the target's reader.
Inputs that reach something new are kept in build/sanitize/fuzz/TARGET, where the next run begins. The seed is
printed; FUZZ_SEED=N sets another one. Exit 1 when something was found: the input is saved and named. To try it
again: build/sanitize/tests/fuzz_TARGET INPUT. Each finding becomes a case in the reader's own test.
"""
import concurrent.futures
import hashlib
import os
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = ROOT / "build/sanitize"
# A target: the longest input, in bytes; the files it begins with; the tests whose texts it takes as well.
TARGETS = {
    "job": (10_000, ["data/demo/*/*.json", "data/starter/*.json", "tests/input/*/*.json",
                     "tests/transcripts/jobs/*.json"],
            ["json_document", "shop_rules_reader", "finish_reader", "air_reader", "calendar_reader"]),
    "parts": (2_000, ["data/**/*parts.csv", "tests/**/*parts.csv"],
              ["parts_reader", "part_shape_reader", "csv_document"]),
    "air_rows": (1_000, ["data/**/*hours.csv", "tests/**/*hours.csv", "tests/published/*.csv"], ["air_rows_reader"]),
    "epw": (2_000, ["data/**/*.epw", "tests/**/*.epw"], ["epw_reader"]),
    "busy_calendar": (2_000, ["data/**/*.ics", "tests/**/*.ics"],
                      ["busy_calendar_reader", "calendar_lines", "calendar_values"]),
    "log": (2_000, ["tests/**/*.jsonl"], ["log_lines", "plain_object"]),
    "last_plan": (2_000, [], ["last_plan_reader", "json_document"]),
    "shelf": (2_000, ["tests/input/every_key/shelf.json"], ["shelf_reader"]),
    "measure": (60, [], ["measure", "parts_row", "part_shape_reader"]),
}
# Added to the words of the first inputs: what numbers, dates and texts are seldom tried with.
ODD_WORDS = ["-1", "0", "00", "-0.0", "1e999", "1e-999", "nan", "inf", "2147483648", "-2147483649", "4294967297",
             "18446744073709551616", "0x10", "1970-01-01", "2037-12-31", "9999-12-31", "T24:00", "\\x00", "\\xff",
             "\\xef\\xbb\\xbf", "\\xe2\\x80\\xae", "\\x0d\\x0a", "\\x09", ",,", ";", "\\x22\\x22"]
SLOWEST = 10  # seconds that one input may take, sanitizers and all; more is a finding
ESCAPES = {"n": "\n", "r": "\r", "t": "\t", "0": "\0"}


def plain(literal):
    """What a C++ string literal means, as far as the tests write them."""
    if literal.startswith("R"):
        return literal[3:-2]
    text = re.sub(r"\\u([0-9A-Fa-f]{4})", lambda code: chr(int(code[1], 16)), literal[1:-1])
    text = re.sub(r"\\x([89A-Fa-f][0-9A-Fa-f])", lambda code: chr(0xDC00 + int(code[1], 16)), text)  # a byte
    text = re.sub(r"\\x([0-7][0-9A-Fa-f])", lambda code: chr(int(code[1], 16)), text)
    return re.sub(r"\\(.)", lambda sign: ESCAPES.get(sign[1], sign[1]), text)


def texts_of(source):
    """The strings of a C++ file, those that stand one after another joined, as the compiler does."""
    literal = r'R"\((?:.|\n)*?\)"|"(?:[^"\\\n]|\\.)*"'
    for match in re.finditer(rf"(?:{literal})(?:\s*(?:{literal}))*", source):
        yield "".join(plain(one) for one in re.findall(literal, match[0]))


def first_inputs(target):
    longest, patterns, tests = TARGETS[target]
    for pattern in patterns:
        for path in sorted(ROOT.glob(pattern)):
            if BUILD.parent not in path.parents:
                yield path.read_bytes()[:longest]
    for test in tests:
        for text in texts_of(next(ROOT.glob(f"tests/*/{test}_test.cpp")).read_text()):
            yield text.encode(errors="surrogateescape")[:longest]


def prepare(target):
    """The corpus folder and the dictionary: the words of the first inputs, and odd ones."""
    corpus = BUILD / "fuzz" / target
    corpus.mkdir(parents=True, exist_ok=True)
    words = set()
    for text in first_inputs(target):
        (corpus / hashlib.sha1(text).hexdigest()).write_bytes(text)
        words.update(re.findall(rb"[A-Za-z][A-Za-z_-]{1,30}", text))
    dictionary = BUILD / "fuzz" / f"{target}.words"
    listed = ODD_WORDS + [word.decode() for word in sorted(words)[:2000]]
    dictionary.write_text("".join(f'"{word}"\n' for word in listed))
    return corpus, dictionary


def run(target, seconds, seed):
    """A line of figures, and what was found, if anything."""
    corpus, dictionary = prepare(target)
    saved = BUILD / "fuzz" / "found"
    saved.mkdir(exist_ok=True)
    done = subprocess.run(
        [BUILD / f"tests/fuzz_{target}", f"-max_total_time={seconds}", f"-seed={seed}", f"-timeout={SLOWEST}",
         f"-max_len={TARGETS[target][0]}", f"-dict={dictionary}", f"-artifact_prefix={saved}/{target}-",
         "-print_final_stats=1", corpus],
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, errors="replace",
        env={**os.environ, "UBSAN_OPTIONS": "print_stacktrace=1"})
    runs = re.findall(r"stat::number_of_executed_units:\s*(\d+)", done.stdout) or ["0"]
    reached = re.findall(r"cov: (\d+)", done.stdout) or ["0"]
    line = f"{target:14}{int(runs[-1]):10} runs{int(reached[-1]):8} edges reached"
    if done.returncode == 0:
        return line, ""
    inputs = re.findall(r"Test unit written to (\S+)", done.stdout)
    named = inputs[-1] if inputs else "no input was saved"
    said = [row for row in done.stdout.splitlines() if not row.startswith(("#", "stat::", "MS:", "\tNEW_"))]
    return line, f"FOUND by {target}: {named}\n" + "\n".join(said[-40:])


def main():
    if len(sys.argv) < 2 or not sys.argv[1].isdigit() or not set(sys.argv[2:]) <= set(TARGETS):
        print(__doc__, "\nTargets:", *TARGETS)
        return 2
    seconds = int(sys.argv[1])
    targets = sys.argv[2:] or list(TARGETS)
    seed = int(os.environ.get("FUZZ_SEED", "1"))
    print(f"seed {seed}, {seconds} s a target", flush=True)
    found = []
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        for line, finding in pool.map(lambda target: run(target, seconds, seed), targets):
            print(line, flush=True)
            if finding:
                found.append(finding)
                print(finding, flush=True)
    print(f"{len(targets)} targets, {len(found)} with a finding")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
