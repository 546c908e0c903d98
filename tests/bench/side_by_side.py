#!/usr/bin/env python3
"""The same finishing schedules by this solver and by general-purpose ones, in one run.

    tests/bench/side_by_side.py BUILD/tests [--npm FOLDER] [INSTANCE.json ...]

Gecode comes with Debian's package `minizinc`; Chuffed with npm's package `minizinc`, installed with
`npm install --ignore-scripts minizinc` in FOLDER. What is not there is left out. Each solver proves
the least makespan, then the fewest sessions with it. Times are what the solvers report, without
start-up and reading; under 1 ms counts as 1 ms. A ratio is their time to ours; `>` where theirs
ended at the limit without a proof."""
import argparse
import json
import os
import re
import subprocess
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
PUBLISHED = os.path.join(HERE, "..", "published", "scheduling")
MODEL = os.path.join(PUBLISHED, "model.mzn")
SHIM = os.path.join(HERE, "minizinc_in_node.cjs")
LEAST = 0.001


def numbers(values):
    return "[" + ",".join(str(v).lower() if isinstance(v, bool) else str(v) for v in values) + "]"


def data_of(job):
    """The instance as the model reads it."""
    ops, arcs, horizon = job["ops"], job["arcs"], job["T"]
    sets = ",".join("{" + ",".join(map(str, s)) + "}" for s in job["start_sets"])
    tables = numbers(value for table in job["tables"] for value in table)
    lines = [f"T={horizon}", f"N={len(ops)}", f"ND={len(job['start_sets'])}", f"domset=[{sets}]"]
    lines += [f"{key}={numbers(op[key] for op in ops)}" for key in
              ("dom", "dur", "batch", "product", "area", "tHand", "tDust", "dusty")]
    lines += [f"NP={job['n_products']}", f"CAP={job['cap']}", f"CREW={job['crew']}",
              f"NT={len(job['tables'])}",
              f"tab=array2d(1..{len(job['tables'])},0..{horizon - 1},{tables})",
              f"NA={len(arcs)}"]
    lines += [f"{name}={numbers(arc[key] for arc in arcs)}" for name, key in
              (("aFrom", "frm"), ("aTo", "to"), ("aTab", "tab"), ("aMax", "max"))]
    lines += [f"NW={job['n_windows']}", f"win=array1d(0..{horizon - 1},{numbers(job['win'])})"]
    return ";\n".join(lines) + ";\n"


def run(command, folder, limit, environment=None):
    """(seconds, proved, makespan, sessions) of one solver on one question."""
    try:
        done = subprocess.run(command, cwd=folder, env=environment, timeout=limit + 60, text=True,
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        text = done.stdout
    except subprocess.TimeoutExpired:
        text = ""
    reported = re.findall(r"solveTime=([0-9.e+-]+)", text)
    found = re.findall(r"Cmax=(\d+) sessions=(\d+)", text)
    proved = "==========" in text
    seconds = max(LEAST, float(reported[-1])) if proved and reported else float(limit)
    makespan, sessions = map(int, found[-1]) if found else (None, None)
    return seconds, proved, makespan, sessions


def ours(programs, path):
    line = subprocess.run([os.path.join(programs, "solve_instances"), path], check=True, text=True,
                          stdout=subprocess.PIPE).stdout.split()
    return max(LEAST, float(line[5])), line[4] == "yes", int(line[2]), int(line[3])


def others(npm, limit):
    def native(folder, data, question):
        return run(["minizinc", "--solver", "gecode", "-f", "-s", "--time-limit", str(limit * 1000),
                    MODEL, data, "-D", question], folder, limit)

    def in_node(folder, data, question):
        dist = os.path.join(os.path.abspath(npm), "node_modules", "minizinc", "dist")
        return run(["node", SHIM, "--solver", "chuffed", "-f", "-s", "--time-limit",
                    str(limit * 1000), MODEL, data, "-D", question], folder, limit,
                   {**os.environ, "MZN_DIST": dist})

    solvers = []
    if subprocess.run(["which", "minizinc"], stdout=subprocess.DEVNULL).returncode == 0:
        solvers.append(("Gecode", native))
    if npm and os.path.isdir(os.path.join(npm, "node_modules", "minizinc")):
        solvers.append(("Chuffed", in_node))
    return solvers


options = argparse.ArgumentParser(description=__doc__,
                                  formatter_class=argparse.RawDescriptionHelpFormatter)
options.add_argument("programs", help="folder of solve_instances")
options.add_argument("instances", nargs="*")
options.add_argument("--npm", help="folder with node_modules/minizinc")
options.add_argument("--limit", type=int, default=60, help="seconds for each question")
chosen = options.parse_intermixed_args()
paths = chosen.instances or sorted(os.path.join(PUBLISHED, name) for name in os.listdir(PUBLISHED)
                                   if name.endswith(".json"))
solvers = others(chosen.npm, chosen.limit)
wrong = 0
print("instance  makespan  sessions  ours s" +
      "".join(f"  {name + ' s':>10}  {'ratio':>8}" for name, _ in solvers))
for path in paths:
    seconds, proved, makespan, sessions = ours(chosen.programs, path)
    with open(path) as file:
        job = json.load(file)
    row = f"{os.path.basename(path)[:-5]:8} {makespan:9} {sessions:9} {seconds:7.3f}"
    row += " " if proved else "?"
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, "instance.dzn"), "w") as file:
            file.write(data_of(job))
        for name, solve in solvers:
            first = solve(folder, "instance.dzn", f"mode=1; Cub={job['T']};")
            second = solve(folder, "instance.dzn", f"mode=2; Cub={makespan};")
            total, both = first[0] + second[0], first[1] and second[1]
            row += f" {'' if both else '>'}{total:.3f}".rjust(12)
            row += f"  {'' if both else '>'}{total / seconds:.0f}".rjust(10)
            if proved and ((first[1] and first[2] != makespan) or
                           (second[1] and second[3] != sessions)):
                wrong += 1
                row += f"  {name} says {first[2]} and {second[3]}"
    print(row, flush=True)
raise SystemExit(1 if wrong else 0)
