#!/usr/bin/env python3
"""Compares the program's choice of tins with the integer optimum of GLPK (Debian glpk-utils).

Usage: tins_glpk.py CASES, the JSON lines that tests/outside/tins_cases.cpp prints. In each case the
least cost must be equal, then the least volume at that cost, then the fewest tins at both; without
prices the volume is the cost. Prints one line; exit 1 on a difference, 2 when it cannot run.
"""
import json
import os
import shutil
import subprocess
import sys
import tempfile

LEAST_CASES = 200


def linear(weights):
    return " ".join(f"+ {weight} x{i}" for i, weight in enumerate(weights))


def optimum(folder, weights, at_least, equal):
    """The integer counts of least weight that hold `at_least`, with each of `equal` met exactly."""
    volumes, need = at_least
    lines = ["Minimize", f" o: {linear(weights)}", "Subject To", f" need: {linear(volumes)} >= {need}"]
    lines += [f" e{n}: {linear(row)} = {value}" for n, (row, value) in enumerate(equal)]
    lines += ["General", " " + " ".join(f"x{i}" for i in range(len(weights))), "End"]
    model, answer = os.path.join(folder, "m.lp"), os.path.join(folder, "m.sol")
    with open(model, "w", encoding="ascii") as file:
        file.write("\n".join(lines) + "\n")
    run = subprocess.run(["glpsol", "--lp", model, "--write", answer], capture_output=True, text=True)
    if run.returncode != 0:
        raise RuntimeError(run.stdout + run.stderr)
    counts = [0] * len(weights)
    with open(answer, encoding="ascii") as file:
        for words in map(str.split, file):
            if words[0] == "s" and words[4] != "o":
                raise RuntimeError(f"glpsol found no optimum: {' '.join(words)}")
            if words[0] == "j":
                counts[int(words[1]) - 1] = round(float(words[2]))
    return counts


def ranks(case, counts):
    """Cents (0 without prices), millilitres and tins of a choice, all whole numbers."""
    tins = case["tins"]
    priced = all(tin["price"] is not None for tin in tins)
    prices = [round(100 * tin["price"]) if priced else 0 for tin in tins]
    weights = [prices, [tin["ml"] for tin in tins], [1] * len(tins)]
    return weights, [sum(w * n for w, n in zip(row, counts)) for row in weights]


def check(case, folder):
    """What differs in one case, or nothing."""
    weights, own = ranks(case, case["counts"])
    if own[1] < case["need_ml"] or own[1] != case["bought_ml"]:
        return f"{case['counts']} do not hold {case['need_ml']} ml"
    if own[0] != round(100 * case["cost"]):
        return f"{case['counts']} cost {own[0]} cents, not {case['cost']}"
    fixed = []
    for row, value, what in zip(weights, own, ("cost", "volume", "tins")):
        if not any(row):
            continue
        best = optimum(folder, row, (weights[1], case["need_ml"]), fixed)
        least = sum(w * n for w, n in zip(row, best))
        if least != value:
            return f"{what} {value}, GLPK has {least}"
        fixed.append((row, value))
    return None


def main():
    if shutil.which("glpsol") is None:
        print("tins_glpk: glpsol not found; install glpk-utils", file=sys.stderr)
        return 2
    with open(sys.argv[1], encoding="ascii") as file:
        cases = [json.loads(line) for line in file]
    with tempfile.TemporaryDirectory() as folder:
        found = [(case, check(case, folder)) for case in cases]
    wrong = [(case, fault) for case, fault in found if fault]
    for case, fault in wrong[:5]:
        print(f"  {fault}: {json.dumps(case)}")
    priced = sum(all(tin["price"] is not None for tin in case["tins"]) for case in cases)
    print(f"tins: {len(cases)} random cases ({priced} by cost, {len(cases) - priced} by volume), "
          f"{len(wrong)} differ from GLPK")
    return 1 if wrong or len(cases) < LEAST_CASES else 0


if __name__ == "__main__":
    sys.exit(main())
