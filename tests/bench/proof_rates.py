#!/usr/bin/env python3
"""How many random finishing schedules are proved, by size: proof_rates.py BUILD/tests [options]

Generates instances by seed and solves each; one line a band. Seconds are processor time of the
search, reading not counted. `settled`: the makespan is proved, or that there is no schedule;
`sessions`: the fewest sessions too, which take their time as well. The gap is from the proved bound to the makespan found."""
import argparse
import os
import subprocess
import tempfile

BANDS = [("to 60", "6-60", 0, 1), ("61 to 80", "61-80", 0, 1), ("81 to 120", "81-120", 0, 10),
         ("tight, to 120", "6-120", 1, 10)]

options = argparse.ArgumentParser(description=__doc__,
                                  formatter_class=argparse.RawDescriptionHelpFormatter)
options.add_argument("programs", help="folder of generate_instance and solve_instances")
options.add_argument("--first", type=int, default=1)
options.add_argument("--last", type=int, default=100)
options.add_argument("--steps", default="2000000")
options.add_argument("--band", type=int, help="only this one, from 0")
options.add_argument("--ready-only", action="store_true", help="prove the makespan alone")
options.add_argument("--verbose", action="store_true")
chosen = options.parse_args()

print(f"seeds {chosen.first} to {chosen.last}, {chosen.steps} steps each")
print("band            settled  within  sessions  no schedule  mean gap of the rest  median s  worst s")
for number, (name, sizes, tight, limit) in enumerate(BANDS):
    if chosen.band is not None and chosen.band != number:
        continue
    settled = within = sessions = none = 0
    gaps, times = [], []
    for seed in range(chosen.first, chosen.last + 1):
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "instance.json")
            with open(path, "w") as file:
                subprocess.run([os.path.join(chosen.programs, "generate_instance"), "--seed",
                                str(seed), "--activities", sizes, "--tight", str(tight)],
                               stdout=file, check=True)
            line = subprocess.run([os.path.join(chosen.programs, "solve_instances"), "--bound",
                                   "--steps", chosen.steps, *["--ready-only"] * chosen.ready_only, path],
                                  stdout=subprocess.PIPE, check=True, text=True).stdout
        if chosen.verbose:
            print(seed, line.split(" ", 1)[1], end="", flush=True)
        _, status, makespan, _, proof, seconds, bound, _ = line.split()
        times.append(float(seconds))
        done = status == "optimal" or (status == "infeasible" and proof == "yes")
        settled += done
        within += done and float(seconds) <= limit
        sessions += proof == "yes"
        none += status == "infeasible" and proof == "no"
        if not done and makespan != "-":
            gaps.append((int(makespan) - int(bound)) / int(makespan))
    times.sort()
    gap = f"{100 * sum(gaps) / len(gaps):.2f} %" if gaps else "-"
    print(f"{name:15} {settled:7} {within:4} in {limit:2} s {sessions:5} {none:12} {gap:>21}"
          f" {times[len(times) // 2]:9.2f} {times[-1]:8.2f}", flush=True)
