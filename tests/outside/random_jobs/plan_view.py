"""Plan view: the steps of a plan's JSON with the job, its log and its figures, ready to be checked."""
import csv
import json
import re

from .air_of_job import AirOfJob
from .drying_clock import NEVER, DryingClock
from .finishing_data import LABOUR, STAGES, CoatingFigures, value
from .local_time import LocalTime, utc
from .log_of_job import read_log
from .work_hours import WorkHours


def slug(name):
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")


class Step:
    def __init__(self, given):
        self.given, self.key, self.kind, self.batch = given, given["key"], given["kind"], given["batch"]
        _, self.system_step, _, _, self.what = self.key.split("/")
        self.coat, self.side = given["coat"], given["side"]
        self.placed = "begin_at" in given
        self.done, self.skipped = given.get("done", False), given.get("skipped", False)
        if self.placed:
            self.begin, self.end = utc(given["begin_at"]), utc(given["end_at"])
            self.pieces = [(utc(p["begin_at"]), utc(p["end_at"]), p.get("by")) for p in given["pieces"]]

    def prefix(self):
        return self.key.rsplit("/", 1)[0]

    def is_sanding(self):
        return self.kind.startswith("sand ") or (self.kind == "repair" and "grit_p" in self.given)


class PlanView:
    def __init__(self, job, folder, plan, like=None):
        """`like`: a view of the same job and log, whose air and hours serve again."""
        self.job, self.folder, self.plan, self.rows = job, folder, plan, None
        self.clock = LocalTime(job["zone"])
        self.now, self.horizon = utc(plan["now_at"]), utc(plan["horizon_at"])
        self.grid = job.get("grid_min", 5)
        self.log = read_log(folder / job.get("log_file", "job.log.jsonl"))
        self.steps = [Step(s) for s in plan["steps"]]
        self.unplaced = [Step(s) for s in plan["unplaced"]]
        self.by_key = {step.key: step for step in self.steps}
        self.hours = like.hours if like else WorkHours(job, folder, self.clock, self.now, self.horizon,
                                                           self.log)
        self.read_coatings(like)
        self.systems = {system["name"]: system for system in job["systems"]}
        self.batches = {batch["name"]: batch for batch in job["batches"]}
        self.batch_of = {b["name"]: self.batches[re.sub(r", lot \d+$", "", b["name"])]
                         if b["name"] not in self.batches else self.batches[b["name"]] for b in plan["batches"]}

    def read_coatings(self, like):
        job = self.job
        coats_on = [line["at_minute"] for line in self.log if line["kind"] == "coat"]
        readings = [(line["at_minute"], line["temperature_c"], line.get("humidity_pct"))
                    for line in self.log if "temperature_c" in line]
        begin = min([self.now, *coats_on])
        aired = (self.plan["air"].get("indoors") or {}).get("aired") or {"openings": []}
        openings = [(utc(o["begin_at"]), utc(o["end_at"]), o["heat_loss_times"]) for o in aired["openings"]]
        self.air = like.air if like else AirOfJob(job, self.folder, self.clock, begin, self.horizon, readings,
                                                  openings)
        planned = {coating["name"]: coating for coating in self.plan["coatings"]}
        speed = job["room"].get("air_speed_m_s", 0.1)
        self.coatings, self.clocks = {}, {}
        for coating in job["coatings"]:
            figures = CoatingFigures(job, coating)
            self.coatings[coating["name"]] = figures
            self.clocks[coating["name"]] = DryingClock(figures, self.air, speed, job.get("faster_than_label", False),
                                                       planned.get(coating["name"], {"drying": {}}))

    def labour(self, key):
        return self.job.get("labour", {}).get(key, value(LABOUR[key]))

    @staticmethod
    def interval(given):
        return utc(given["begin_at"]), utc(given["end_at"])

    def part_rows(self):
        """Parts of the list, without the rows of what is cut into them."""
        if self.rows is None:
            with open(self.folder / self.job["parts_file"], newline="", encoding="utf-8") as file:
                self.rows = [row for row in csv.DictReader(file) if row["batch"]]
        return self.rows

    def of_kind(self, batch, kind):
        return [s for s in self.steps if s.batch == batch and s.kind == kind]

    def system_steps(self, batch):
        return self.systems[self.batch_of[batch]["system"]]["steps"]

    def place_of(self, step):
        """Index of the step's system step."""
        names = [slug(s.get("name", s["coating"])) for s in self.system_steps(step.batch)]
        return names.index(step.system_step)

    def coating_of(self, step):
        return self.coatings[step.given["coating"]]

    def room_of(self, batch):
        rooms = self.job.get("rooms", [])
        if not rooms:
            return None
        name = self.batch_of[batch].get("room", rooms[0]["name"])
        return next(room for room in rooms if room["name"] == name)

    def wet_until(self, coat):
        """When the coat is on: its end, or the end of wiping it off."""
        wiping = self.by_key.get(coat.prefix() + "/wipe-off")
        if coat.what == "coat" and wiping is not None and not coat.done:
            return wiping.end
        return coat.end

    def trials(self, coat=None, coating=None):
        found = []
        for line in self.log:
            if line["kind"] not in ("test", "fault") or (line["kind"] == "fault" and line["fault"] != "tacky"):
                continue
            tried = self.by_key.get(line["step"])
            if tried is None or tried.kind != "coat":
                continue
            if (coat is not None and tried is coat) or (coating is not None and tried.given["coating"] == coating):
                found.append(line)
        return sorted(found, key=lambda line: line["at_minute"])

    def slowness(self, coating):
        """What earlier jobs have taught, but where coats were tried no more than none: a trial moves it
        towards itself, also a failed one. One that was passed can shorten the hours; half is more than
        it may."""
        trials, given = self.trials(coating=coating), self.coatings[coating].slowness
        if any(line.get("passed") for line in trials):
            return min(given, 1) / 2
        return min(given, 1) if trials else given

    def stage_at(self, coat, stage, films=1):
        """The coat, or a film of so many, is at the stage no sooner; 0 for a skipped one."""
        if coat.skipped:
            return 0
        name = coat.given["coating"]
        clock, on_at = self.clocks[name], self.wet_until(coat)
        floor_only = False
        if coat.done and films == 1 and stage in ("handle", "recoat", "sand"):
            trials = self.trials(coat=coat)
            floor_only = any(line.get("passed") and line.get("test") == "thumb" for line in trials)
        ready = clock.earliest(stage, on_at, films, self.slowness(name), floor_only)
        return max(ready, self.after_a_failed_trial(coat, stage, clock)) if coat.done and ready else ready

    def after_a_failed_trial(self, coat, stage, clock):
        """A coat that failed its last trial needs more drying than it had had; 1 in 100 more at the least.
        One that was put on too early counts as on from later, so its trials tell little."""
        last = max(self.trials(coat=coat), key=lambda line: line["at_minute"], default=None)
        on = next((line for line in self.log if line["kind"] == "coat" and line["step"] == coat.key), {})
        if last is None or last.get("passed") or on.get("insisted") or last["at_minute"] <= coat.end:
            return 0
        touch = last.get("test") == "touch"
        figures = self.coating_of(coat)
        tried = "touch" if touch else next(
            (s for s in ("sand" if figures.sands else "recoat", "recoat", "handle") if clock.hours(s)), None)
        if tried is None or not clock.hours(tried) or STAGES.index(stage) < STAGES.index("touch" if touch else "handle"):
            return 0
        return clock.needs_more_than_by(tried, coat.end, last["at_minute"])

    def washed_off(self, coat, by):
        """Was it washed off again for fisheyes by then?"""
        again = min((s.begin for s in self.steps if s.kind == "coat" and s.prefix() == coat.prefix()
                     and s.begin > coat.begin), default=NEVER)
        return any(s.kind == "repair" and "fisheyes" in s.what and s.prefix() == coat.prefix() and not s.skipped
                   and coat.end <= s.begin <= again and s.end <= by for s in self.steps)

    def coats_of(self, batch, place, number):
        """By side the coat that counts: where one went on again, the last; None where it has no time."""
        found = {}
        for step in self.steps + self.unplaced:
            if (step.kind, step.batch, step.coat) != ("coat", batch, number) or self.place_of(step) != place:
                continue
            before = found.get(step.side)
            if before is None or not step.placed or (before.placed and step.begin >= before.begin):
                found[step.side] = step
        return found

    def number_of_coats(self, batch, place):
        return max([s.coat for s in self.steps + self.unplaced
                    if s.kind == "coat" and s.batch == batch and self.place_of(s) == place], default=0)


def read_view(folder, job_name, plan_name):
    folder_job = json.loads((folder / job_name).read_text())
    return PlanView(folder_job, folder, json.loads((folder / plan_name).read_text()))


__all__ = ["NEVER", "PlanView", "Step", "read_view", "slug"]
