#!/usr/bin/env python3
"""Random log commands, with odd values: what the writer confirms, every command must read.

usage: log_sequences.py PROGRAM JOB_FOLDER [SEQUENCES] [FIRST_SEED] [COMMANDS]
SEQUENCES (500) times a copy of the job gets COMMANDS (6) random log commands of every kind, a sequence
for each seed from FIRST_SEED (1). Sometimes a line is spoilt, added, or the job changed under the log, as an
editor would. After each line, `plan`, `tonight`, `buy`, `check`, `log show`, a note and its withdrawal are run:
they exit 0 or 3, `check` 2 where a line was spoilt. A command that is refused (2) has written nothing; 1 is never
right. In the end every line that `check` names is withdrawn by the command that it names, and `check` exits 0.
Prints counts of exit codes and the worst times; exit code 1 where a sequence failed, with its seed and commands.
"""
import collections
import datetime
import json
import os
import random
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor

LIMIT_S = 60  # no command may take so long


class Failed(Exception):
    pass


class Sequence:
    def __init__(self, program, source, seed, commands):
        self.program, self.source, self.commands = program, source, commands
        self.random = random.Random(seed)
        self.codes = collections.Counter()
        self.worst = collections.defaultdict(float)
        self.done = []
        self.minute = self.random.randrange(18 * 60)
        self.spoilt = False

    def text(self):
        if not os.path.exists(self.log):
            return b""
        with open(self.log, "rb") as file:
            return file.read()

    def now(self):
        day, minute = divmod(12 * 60 + self.minute, 24 * 60)
        return f"{self.first + datetime.timedelta(days=day)}T{minute // 60:02}:{minute % 60:02}"

    def run(self, name, words, allowed):
        begin = time.monotonic()
        try:
            ran = subprocess.run([self.program, *words], capture_output=True, text=True, errors="replace",
                                 timeout=LIMIT_S)
        except subprocess.TimeoutExpired:
            raise Failed(f"{name} took more than {LIMIT_S} s") from None
        self.worst[name] = max(self.worst[name], time.monotonic() - begin)
        self.codes[name, ran.returncode] += 1
        if ran.returncode not in allowed:
            raise Failed(f"{name} exits {ran.returncode}: {(ran.stdout + ran.stderr)[-600:]}")
        return ran

    def odd_text(self):
        return self.random.choice(["", " ", "\t", "swept the floor", "\u00fcber \u65e5\u672c", "\u202etxt", "a\nb",
                                   "\x07", '"', "\\", "{}", "x" * 5000, "'; rm", "=1+1", "\x7f", "null",
                                   b"\xff\xfe".decode("utf-8", "surrogateescape")])

    def odd_number(self, sound="1"):
        if self.random.random() < 0.7:
            return sound
        return self.random.choice(["0", "1", "2", "3", "-1", "0.35", "20.5", "68.5", "55.5", "1e3", "nan", "inf",
                                   "0x10", "", "1,5", "999", "1000", "1000000000", "99999999999", "100", "0.001",
                                   "0.0005", "-40", "60", "140", "+5", ".5"])

    def odd_volume(self):
        if self.random.random() < 0.6:
            return self.random.choice(["1 qt", "750 ml", "0.2 l"])
        return self.random.choice(["1 qt", "750 ml", "5000 l", "90 m3", "0 l", "nan l", "0x1 l", "-1 l", "1", "l",
                                   "11 fl oz", "0.0001 ml", "1/2 gal", "1/0 qt", "", "999 l", "1000 l", "1001 l"])

    def odd_time(self):
        pick = self.random
        if pick.random() < 0.6:
            return pick.choice(["now", self.now(), f"{self.first}T13:00"])
        return pick.choice(["20:10", "8:10 pm", "yesterday 20:10", "25:00", "",
                            "2027-04-05T17:45", "2027-03-14T02:30", "2027-11-07T01:30", "1970-01-01T00:00",
                            "1883-11-18T12:00", "2037-12-31T23:59", "2099-01-01T00:00", "2027-04-05T17:45Z",
                            f"2027-04-0{pick.randrange(1, 8)}T{pick.randrange(24):02}:{pick.randrange(60):02}"])

    def maybe(self, chance, *words):
        return list(words) if self.random.random() < chance else []

    def place(self):
        pick = self.random
        words = self.maybe(0.95, "--batch", pick.choice(self.batches * 6 + ["gone", "", self.odd_text()]))
        words += self.maybe(0.2, "--coat", pick.choice(["1", "2", "3", self.odd_number()]))
        return words + self.maybe(0.2, "--side", pick.choice(["back", "show", "both", "top", "bottom", "left"]))

    def reading(self):
        scale, sound = self.random.choice([("--air-temp-c", "14.5"), ("--air-temp-f", "58.5")])
        return (self.maybe(0.7, scale, self.odd_number(sound)) +
                self.maybe(0.5, "--humidity-pct", self.odd_number("55.5")))

    def hours(self):
        pick = self.random
        clock = ["20:00", "8 pm", "24:00", "25:00", "", "2027-04-05T17:45"]
        words = self.maybe(0.6, "--on", pick.choice(["today", "tomorrow", "thursday", f"{self.first}", "2027-02-30", "x"]))
        words += self.maybe(0.5, "--from", pick.choice(["6:00", "18:30", *clock]))
        return words + self.maybe(0.8, "--until", pick.choice(["23:30", *clock])) + self.maybe(0.1, "--person", "gone")

    def log_words(self):
        pick = self.random
        kind = pick.choice(["coat"] * 5 + ["done"] * 3 + ["skip", "test", "test", "fault", "fault", "tin", "waste",
                                                         "air", "air", "note", "withdraw",
                                                         "bought-all", "away", "free"])
        words = ["log", kind, self.job]
        number = str(pick.randrange(1, 9))
        if kind == "test":
            words += [pick.choice(["touch", "thumb"] * 4 + ["nail"]), pick.choice(["passed", "failed"])]
        if kind == "fault":
            words += [pick.choice(["runs", "wrinkling", "fisheyes", "blush", "tacky", "sand_through"] * 2 + ["dust"])]
        if kind == "tin":
            words += [pick.choice(["opened", "bought"]), self.odd_volume()]
        if kind == "waste":
            words += [self.odd_volume()]
        if kind == "note":
            words += ["--", self.odd_text()] if pick.random() < 0.1 else [self.odd_text()]
        if kind == "withdraw":
            words += pick.choice([[number], [number], ["--line", number], [self.odd_number()], []])
        if kind in ("coat", "done", "skip", "test", "fault"):
            words += self.place()
        if kind in ("done", "skip"):
            words += self.maybe(0.4, "--step", pick.choice(["turn-over", "sand-p240", "sand-p320", "coat", "gone",
                                                           *self.steps]))
        if kind == "coat":
            words += self.maybe(0.5, "--litres", self.odd_number("0.3")) or self.maybe(0.3, "--used", self.odd_volume())
        if kind in ("coat", "air"):
            words += self.reading()
        if kind in ("coat", "done"):
            words += self.maybe(0.2, "--from", self.odd_time())
        if kind in ("coat", "done", "test"):
            words += self.maybe(0.85, "--insist")
        if kind in ("tin", "waste"):
            words += self.maybe(0.95, "--coating", pick.choice(self.coatings * 4 + ["gone"]))
        if kind in ("away", "free"):
            words += self.hours()
        if kind not in ("withdraw",):
            words += self.maybe(0.5, "--at", self.odd_time()) + self.maybe(0.15, "--corrects", number)
        if kind != "note":
            words += self.maybe(0.15, "--note", self.odd_text())
        return words + self.maybe(0.05, "--only-show") + ["--now", self.now()]

    def log_command(self):
        words = [word.replace("\0", "") for word in self.log_words()]
        self.done.append(shlex.join(words))
        before = self.text()
        ran = self.run("log " + words[1], words, (0, 2))
        after = self.text()
        if "--only-show" in words or ran.returncode == 2:
            if after != before:
                raise Failed("a command that was refused, or only showed, has written")
        elif after.count(b"\n") != before.count(b"\n") + 1 or not after.startswith(before):
            raise Failed("a command that was confirmed has not written one line")
        return ran.returncode == 0

    def edit(self):
        """What an editor, another version or a power cut may have done to the log or the job."""
        pick = self.random
        lines = self.text().split(b"\n")[:-1]
        number = str(pick.choice([len(lines) + 1, 1, 1_000_000_000, 77])).encode()
        line = pick.choice([
            b"{", b"[]", b"12", b"null", b"\0\0\0", b"\xff\xfe", b'{"id":1}', b"{}", b'{"id":"x"}',
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"air","temperature_c":99}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"note"}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"note","note":"n","litre":2}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"sung"}' % number,
            b'{"id":%s,"written_at":"2099-04-05T12:00Z","kind":"note","note":"late"}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"coat","step":"gone/a/coat-1/show/coat"}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"coat","step":"%s"}'
            % (number, pick.choice(self.steps or ["x"]).encode()),
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"tin","coating":"gone","tin":"bought","amount_l":1}'
            % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"withdrawn","corrects_line":1}' % number,
            b'{"id":%s,"written_at":"2027-04-05T12:00Z","kind":"withdrawn","corrects":900}' % number])
        where = pick.choice(["end", "end", "top", "replace", "lose"])
        if where == "end" or not lines:
            lines.append(line)
        elif where == "top":
            lines.insert(0, line)
        elif where == "replace":
            lines[pick.randrange(len(lines))] = line
        else:
            del lines[pick.randrange(len(lines))]
        self.done.append(f"an editor makes the log {lines!r}")
        with open(self.log, "wb") as file:
            file.write(b"".join(each + b"\n" for each in lines))
        self.spoilt = True

    def others(self):
        now = ["--now", self.now()]
        self.run("plan", ["plan", self.job, *now], (0, 3))
        self.run("tonight", ["tonight", self.job, *now], (0, 3))
        self.run("buy", ["buy", self.job, *now], (0, 3))
        self.run("check", ["check", self.job, *now], (0, 2) if self.spoilt else (0,))
        self.run("log show", ["log", "show", self.job, *now], (0,))
        said = self.run("log note", ["log", "note", self.job, "in between", *now], (0,)).stdout
        number = re.search(r"Written as number (\d+)", said).group(1)
        self.run("log withdraw", ["log", "withdraw", self.job, number, *now], (0,))

    def mend(self):
        """Follows the commands that `check` names, until it has nothing to say."""
        for _ in range(40):
            now = ["--now", self.now()]
            ran = self.run("check", ["check", self.job, *now], (0, 2))
            if ran.returncode == 0:
                return
            named = re.search(r"tackfree (log withdraw .*)$", ran.stderr, re.M)
            if not named:
                raise Failed("check names no command that withdraws: " + ran.stderr[-400:])
            words = shlex.split(named.group(1))
            self.done.append(shlex.join(words))
            self.run("log withdraw", [*words, *now], (0,))
        raise Failed("check is never content")

    def played(self, folder):
        shutil.copytree(self.source, folder, dirs_exist_ok=True)
        self.job = next(os.path.join(folder, name) for name in sorted(os.listdir(folder)) if name.endswith(".json"))
        self.log = self.job[:-len(".json")] + ".log.jsonl"
        with open(self.job, encoding="utf-8") as file:
            told = json.load(file)
        self.first = datetime.date.fromisoformat(told["now_at"][:10])
        self.batches = [batch["name"] for batch in told["batches"]]
        self.coatings = [coating["name"] for coating in told["coatings"]]
        self.steps = []
        for _ in range(self.commands):
            self.minute += self.random.choice([1, 15, 60, 240, 900])
            if self.log_command():
                self.steps += re.findall(r'"step":"([^"]+)"', self.text().decode("utf-8", "replace"))[-1:]
                self.others()
            if self.random.random() < 0.12:
                self.edit()
                self.others()
        self.mend()


def play(program, source, seed, commands):
    sequence = Sequence(program, source, seed, commands)
    with tempfile.TemporaryDirectory() as folder:
        try:
            sequence.played(folder)
        except Failed as why:
            return sequence, f"seed {seed}: {why}\n  " + "\n  ".join(sequence.done)
    return sequence, None


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    number = [int(word) for word in sys.argv[3:]] + [500, 1, 6][len(sys.argv) - 3:]
    program, source = os.path.abspath(sys.argv[1]), sys.argv[2]
    codes, worst, failures = collections.Counter(), collections.defaultdict(float), []
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for sequence, failure in pool.map(lambda seed: play(program, source, seed, number[2]),
                                          range(number[1], number[1] + number[0])):
            codes.update(sequence.codes)
            for name, took in sequence.worst.items():
                worst[name] = max(worst[name], took)
            if failure:
                failures.append(failure)
                print(failure, flush=True)
    for name in sorted(worst):
        counts = ", ".join(f"{codes[name, code]} exit {code}" for code in range(4) if codes[name, code])
        print(f"{name:13} {counts}; the longest took {worst[name]:.2f} s")
    print(f"{number[0]} sequences, {len(failures)} failed")
    sys.exit(1 if failures else 0)


if __name__ == "__main__":
    main()
