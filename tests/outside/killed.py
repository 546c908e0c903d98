#!/usr/bin/env python3
"""Kills the program while it writes, and lets its disk fill up: no file may be left half-written.

usage: killed.py PROGRAM JOB_FOLDER [KILLS] [SEED]
`plan` with all its outputs, `plan` with the one it keeps, `log note` and `start` are each started KILLS (60) times and killed after a
random part of the time they take; then KILLS times with a limit on the size of a file (RLIMIT_FSIZE), half of
them with the signal for that ignored, as on a full disk. After each, every output must be the old file or the
new one, byte for byte; every line of the log that was confirmed must be there, and lines that were there before
too; and the next run must do what it does in a new folder. Prints the counts; exit code 1 where a file was hurt.
"""
import json
import os
import random
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time

NOW = ["--now", "2027-04-08T18:00"]
OUTPUTS = {"--json": "plan.json", "--page": "plan.html", "--calendar": "plan.ics"}
TABLES = ["steps.csv", "areas.csv", "shopping.csv"]


def bytes_of(path):
    with open(path, "rb") as file:
        return file.read()


class Trial:
    """One copy of the job, with outputs of an earlier plan beside it."""

    def __init__(self, program, source, folder):
        self.program = program
        self.folder = folder
        shutil.copytree(source, folder, dirs_exist_ok=True)
        self.job = next(os.path.join(folder, name) for name in sorted(os.listdir(folder))
                        if name.endswith(".json"))
        self.log = self.job[:-len(".json")] + ".log.jsonl"
        self.hurt = []

    def plan(self, now=NOW):
        words = [self.program, "plan", self.job, *now, "--keep", "no", "--csv", self.folder]
        for option, name in OUTPUTS.items():
            words += [option, os.path.join(self.folder, name)]
        return words

    def outputs(self):
        names = list(OUTPUTS.values()) + TABLES
        return {name: bytes_of(os.path.join(self.folder, name)) for name in names}

    def note(self):
        return [self.program, "log", "note", self.job, "swept the floor", *NOW]

    def run(self, words):
        done = subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        if done.returncode not in (0, 3):
            self.hurt.append(f"exit {done.returncode} of {words[1]}: {done.stderr.strip()[-200:]}")
        return done.stdout


def killed(words, after):
    """What it printed, and whether it was killed before it ended."""
    running = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    try:
        said = running.communicate(timeout=after)[0]
        return said, False
    except subprocess.TimeoutExpired:
        running.kill()
        return running.communicate()[0], True


def limited(words, size, as_full_disk):
    """Runs with files of `size` bytes at most. Without the signal, writing fails as on a full disk."""

    def limit():
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN if as_full_disk else signal.SIG_DFL)

    return subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True,
                          preexec_fn=limit, restore_signals=False).stdout


def seconds(words):
    begin = time.monotonic()
    subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.monotonic() - begin


def judge_outputs(trial, old, new, what):
    found = trial.outputs()
    for name, text in found.items():
        if text not in (old[name], new[name]):
            trial.hurt.append(f"{what}: {name} is neither the old file nor the new one ({len(text)} bytes)")
    return sum(found[name] == new[name] != old[name] for name in found)


def plans(trial, count):
    later = ["--now", "2027-04-09T18:00"]
    trial.run(trial.plan(later))
    new = trial.outputs()
    trial.run(trial.plan())
    old = trial.outputs()
    takes = seconds(trial.plan())
    stopped = changed = 0
    sizes = [len(text) for text in new.values()]
    for turn in range(count):
        stopped += killed(trial.plan(later), takes * random.uniform(0.3, 1.15))[1]
        changed += judge_outputs(trial, old, new, f"plan killed, turn {turn}")
        trial.run(trial.plan())
        judge_outputs(trial, old, old, f"plan after it was killed, turn {turn}")
    print(f"plan: killed {stopped} of {count} times while it ran; {changed} files were new by then")
    for turn in range(count):
        limited(trial.plan(later), random.randrange(max(sizes) + 1000), turn % 2 == 0)
        judge_outputs(trial, old, new, f"plan on a full disk, turn {turn}")
        trial.run(trial.plan())
    print(f"plan: {count} full disks")


def keeps(trial, count):
    """The plan beside the job is the old or the new one, and the next plan can go on from either."""
    kept = trial.job[:-len(".json")] + ".kept.json"
    words = [[trial.program, "plan", trial.job, "--now", f"2027-04-{day:02}T18:00"] for day in (8, 9)]
    trial.run(words[0])
    takes = seconds(words[1])
    stopped = 0
    for turn in range(count):
        stopped += killed(words[turn % 2], takes * random.uniform(0.3, 1.15))[1]
        limited(words[turn % 2], random.randrange(2 * len(bytes_of(kept))), turn % 2 == 0)
        try:
            if json.loads(bytes_of(kept))["tackfree_kept_plan"] != 1:
                trial.hurt.append(f"kept plan, turn {turn}: another file")
        except ValueError as fault:
            trial.hurt.append(f"kept plan, turn {turn}: {fault}")
    print(f"kept plan: killed {stopped} of {count} times while it ran, {count} full disks")


def judge_log(trial, before, said, what):
    text = bytes_of(trial.log) if os.path.exists(trial.log) else b""
    if not text.startswith(before):
        trial.hurt.append(f"{what}: lines that stood in the log are gone")
    for number in re.findall(r"Written as number (\d+)", said or ""):
        if b'"id":%s,' % number.encode() not in text:
            trial.hurt.append(f"{what}: number {number} was confirmed and is lost")


def whole_lines(trial):
    text = bytes_of(trial.log) if os.path.exists(trial.log) else b""
    return text[:text.rfind(b"\n") + 1]


def notes(trial, count):
    takes = seconds(trial.note())
    stopped = 0
    for turn in range(count):
        before = whole_lines(trial)
        said, early = killed(trial.note(), takes * random.uniform(0.2, 1.1))
        stopped += early
        judge_log(trial, before, said, f"log killed, turn {turn}")
    for turn in range(count):
        before = whole_lines(trial)
        said = limited(trial.note(), max(0, len(before) + random.randrange(-20, 160)), turn % 2 == 0)
        judge_log(trial, before, said, f"log on a full disk, turn {turn}")
    trial.run(trial.note())
    if "no mistakes" not in trial.run([trial.program, "check", trial.job, *NOW]):
        trial.hurt.append("the log has lines that cannot be read")
    torn = len(bytes_of(trial.log + ".torn").splitlines()) if os.path.exists(trial.log + ".torn") else 0
    lines = whole_lines(trial).count(b"\n")
    print(f"log: killed {stopped} of {count} times while it ran, {count} full disks; {lines} lines whole, "
          f"{torn} torn ones kept aside")


def starts(trial, count):
    whole = os.path.join(trial.folder, "whole")
    trial.run([trial.program, "start", whole])
    takes = seconds([trial.program, "start", os.path.join(trial.folder, "another")])
    stopped = 0
    for turn in range(count):
        mine = os.path.join(trial.folder, f"start_{turn}")
        stopped += killed([trial.program, "start", mine], takes * random.uniform(0, 1.1))[1]
        for name in os.listdir(mine) if os.path.isdir(mine) else []:
            if not name.startswith(".") and bytes_of(os.path.join(mine, name)) != bytes_of(os.path.join(whole, name)):
                trial.hurt.append(f"start killed, turn {turn}: {name} is half-written")
        shutil.rmtree(mine, ignore_errors=True)
    print(f"start: killed {stopped} of {count} times while it ran")


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 60
    random.seed(int(sys.argv[4]) if len(sys.argv) > 4 else 1)
    with tempfile.TemporaryDirectory() as folder:
        trial = Trial(os.path.abspath(sys.argv[1]), sys.argv[2], folder)
        plans(trial, count)
        keeps(trial, count)
        notes(trial, count)
        starts(trial, count)
        left = sum(name.startswith(".") for name in os.listdir(folder))
        print(f"{left} temporary files left behind by programs that were killed; none got in the way"
              if not trial.hurt else "\n".join(trial.hurt))
    sys.exit(1 if trial.hurt else 0)


if __name__ == "__main__":
    main()
