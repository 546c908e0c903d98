#!/usr/bin/env python3
"""Random whole jobs, planned by the program and judged by rules that share nothing with it.

    random_jobs.py PROGRAM COUNT [FIRST_SEED] [--keep DIR]
    random_jobs.py --planted PROGRAM

Each seed gives a valid job with its files: classes, parts, people, rooms, dates, air, calendars. It is
planned, asked for tonight, told of through `log`, and planned again, two jobs at a time. Prints each
finding with its seed and where the files lie, how many jobs had each feature, the exit codes, and the
worst processor time and memory. With --planted, one fault for each rule is put into good plans, and each
must be found.
"""
import argparse
import collections
import multiprocessing
import pathlib
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))

from random_jobs.coverage import never  # noqa: E402
from random_jobs.one_job import OneJob  # noqa: E402
from random_jobs.planted_faults import planted  # noqa: E402


def judged(task):
    program, seed, folder = task
    job = OneJob(program, seed, folder).go()
    runs = job.program.runs
    worst = max(runs, key=lambda run: run.seconds)
    widest = max(runs, key=lambda run: run.megabytes)
    return {"seed": seed, "folder": folder, "findings": job.findings, "tags": job.tags, "checked": len(job.views),
            "codes": collections.Counter(f"{run.arguments[0]} {run.code}" for run in runs),
            "seconds": (worst.seconds, worst.command()), "megabytes": (widest.megabytes, widest.command())}


def columns(counts):
    return "\n".join(f"  {name:32s} {count:6d}" for name, count in sorted(counts.items()))


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program")
    parser.add_argument("count", type=int, nargs="?", default=100)
    parser.add_argument("first_seed", type=int, nargs="?", default=1)
    parser.add_argument("--keep", type=pathlib.Path, help="leave all files here")
    parser.add_argument("--planted", action="store_true", help="plant faults in good plans")
    options = parser.parse_args()
    program = str(pathlib.Path(options.program).resolve())
    base = options.keep or pathlib.Path(tempfile.mkdtemp(prefix="random_jobs."))
    base = base.resolve()
    base.mkdir(parents=True, exist_ok=True)
    if options.planted:
        return planted(program, base)
    seeds = range(options.first_seed, options.first_seed + options.count)
    tags, codes, findings, checked = collections.Counter(), collections.Counter(), 0, 0
    slowest, widest = (0.0, "", 0), (0.0, "", 0)
    with multiprocessing.Pool(2) as pool:
        tasks = [(program, seed, base / f"seed{seed}") for seed in seeds]
        for job in pool.imap_unordered(judged, tasks):
            tags.update(job["tags"])
            codes.update(job["codes"])
            checked += job["checked"]
            slowest = max(slowest, (*job["seconds"], job["seed"]))
            widest = max(widest, (*job["megabytes"], job["seed"]))
            for finding in job["findings"]:
                print(f"seed {job['seed']} in {job['folder']}: {finding}", flush=True)
            findings += len(job["findings"])
            if not job["findings"] and not options.keep:
                shutil.rmtree(job["folder"])
    print("Jobs with each feature:", columns(tags), "Exit codes:", columns(codes), sep="\n")
    print("No job had:", ", ".join(never(tags)) or "all were there")
    print(f"worst processor time {slowest[0]:.2f} s: seed {slowest[2]}, {slowest[1]}")
    print(f"worst memory {widest[0]:.0f} MB: seed {widest[2]}, {widest[1]}")
    print(f"{len(seeds)} jobs, {checked} plans judged, {findings} findings")
    if not findings and not options.keep:
        shutil.rmtree(base)
    return 1 if findings else 0


if __name__ == "__main__":
    sys.exit(main())
