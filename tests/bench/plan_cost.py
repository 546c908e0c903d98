#!/usr/bin/env python3
"""Prints what `plan` on the demo costs: CPU milliseconds (median of 15 runs) and peak memory.

usage: plan_cost.py PROGRAM JOB [CPU_LIMIT_MS MEMORY_LIMIT_MB]
With limits the exit code is 1 when one is passed. CPU time, not wall time: it is steadier on a shared
machine; the median drops the odd slow run.
"""
import os
import statistics
import sys


def one_run(program, job):
    pid = os.posix_spawn(program, [program, "plan", job, "--keep", "no"], os.environ,
                         file_actions=[(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)])
    _, status, usage = os.wait4(pid, 0)
    if os.waitstatus_to_exitcode(status) != 0:
        sys.exit(f"{program} plan {job} ended with {status}")
    return (usage.ru_utime + usage.ru_stime) * 1000, usage.ru_maxrss / 1024


def main():
    program, job = sys.argv[1:3]
    runs = [one_run(program, job) for _ in range(15)]
    cpu = statistics.median(run[0] for run in runs)
    memory = max(run[1] for run in runs)
    print(f"plan {os.path.basename(job)}: {cpu:.1f} ms of CPU (median of {len(runs)}), {memory:.1f} MB at most")
    if len(sys.argv) == 5 and (cpu > float(sys.argv[3]) or memory > float(sys.argv[4])):
        sys.exit(f"wanted at most {sys.argv[3]} ms and {sys.argv[4]} MB")


main()
