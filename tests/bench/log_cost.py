#!/usr/bin/env python3
"""Prints what a long log costs, and kills the program while it writes.

usage: log_cost.py PROGRAM JOB_FOLDER [LINES] [KILLS]
LINES (100,000) air readings are put beside a copy of the job; the figure is the CPU time of `check` with
them less that without, median of five; 100,000 may take 300 ms. Then `log note` is started KILLS (200) times and killed after a
random part of the time it takes; every number that it confirmed must be in the log afterwards, and the log
must still be read.
"""
import json
import os
import random
import re
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

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


def kills(program, job, log, count):
    if os.path.exists(log):
        os.remove(log)
    command = [program, "log", "note", job, "swept the floor", "--now", "2027-04-08T18:00"]
    begin = time.monotonic()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    takes = time.monotonic() - begin
    confirmed, killed = set(), 0
    for _ in range(count):
        running = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        try:
            running.wait(random.random() * takes * 1.2)
        except subprocess.TimeoutExpired:
            running.kill()
            killed += 1
        said = running.communicate()[0] or ""
        confirmed.update(int(number) for number in re.findall(r"Written as number (\d+)", said))
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    kept = {json.loads(line)["id"] for line in open(log, encoding="utf-8")}
    lost = confirmed - kept
    subprocess.run([program, "check", job], check=True, stdout=subprocess.DEVNULL)
    print(f"killed {killed} of {count} times while writing: {len(confirmed)} lines confirmed, {len(lost)} lost")
    return len(lost)


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])
    lines = int(sys.argv[3]) if len(sys.argv) > 3 else 100_000
    count = int(sys.argv[4]) if len(sys.argv) > 4 else 200
    random.seed(1)
    with tempfile.TemporaryDirectory() as folder:
        copy = os.path.join(folder, "job")
        shutil.copytree(sys.argv[2], copy)
        job = next(os.path.join(copy, name) for name in os.listdir(copy) if name.endswith(".json"))
        log = job[:-len(".json")] + ".log.jsonl"
        slow = long_log(program, job, log, lines)
        lost = kills(program, job, log, count)
        sys.exit(1 if slow or lost else 0)


if __name__ == "__main__":
    main()
