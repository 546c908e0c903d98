#!/usr/bin/env python3
"""Prints what a long log costs.

usage: log_cost.py PROGRAM JOB_FOLDER [LINES]
LINES (100,000) air readings are put beside a copy of the job; the figure is the CPU time of `check` with
them less that without, median of five; 100,000 may take 300 ms.
"""
import json
import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile

LIMIT_MS = 300  # for 100,000 lines


def cpu_ms(command):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return 1000 * (after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime)


def long_log(program, job, log, lines):
    check = [program, "check", job]
    without = statistics.median(cpu_ms(check) for _ in range(5))
    subprocess.run([program, "log", "air", job, "--air-temp-f", "60", "--humidity-pct", "55", "--now",
                    "2027-04-08T18:00"], check=True, stdout=subprocess.DEVNULL)
    one = json.loads(open(log, encoding="utf-8").readline())
    with open(log, "w", encoding="utf-8") as file:
        for number in range(1, lines + 1):
            one["id"] = number
            file.write(json.dumps(one, separators=(",", ":")) + "\n")
    loaded = statistics.median(cpu_ms(check) for _ in range(5)) - without
    limit = LIMIT_MS * lines / 100_000
    print(f"{lines} lines load in {loaded:.0f} ms of CPU, of {limit:.0f} allowed")
    return loaded > limit


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])
    lines = int(sys.argv[3]) if len(sys.argv) > 3 else 100_000
    with tempfile.TemporaryDirectory() as folder:
        copy = os.path.join(folder, "job")
        shutil.copytree(sys.argv[2], copy)
        job = next(os.path.join(copy, name) for name in os.listdir(copy) if name.endswith(".json"))
        log = job[:-len(".json")] + ".log.jsonl"
        slow = long_log(program, job, log, lines)
        sys.exit(1 if slow else 0)


if __name__ == "__main__":
    main()
