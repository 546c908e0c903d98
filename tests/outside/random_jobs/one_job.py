"""One job: generated, planned, told of, planned again, and judged; all in one folder."""
import json
import random
import shutil
import traceback

from .coat_rules import CoatRules
from .job_generator import JobGenerator
from .local_time import LocalTime, utc
from .log_generator import LogGenerator
from .order_rules import OrderRules
from .plan_view import PlanView
from .program_runs import SECONDS, Program
from .shop_rules import ShopRules


def broken_rules(view):
    """Pairs of a rule's name and what breaks it."""
    return OrderRules(view).check() + CoatRules(view).check() + ShopRules(view).check()


class OneJob:
    def __init__(self, program, seed, folder, quick=False):
        """`quick`: no second run for the bytes, no tonight."""
        self.seed, self.folder, self.quick = seed, folder, quick
        self.rng = random.Random(f"talk {seed}")
        self.program = Program(program, folder)
        self.findings, self.codes, self.views = [], [], []
        self.tags = set()

    def find(self, text):
        self.findings.append(text)

    def judge_run(self, run, allowed):
        """Exit codes, crashes and times; True where the answer can be used."""
        self.codes.append(run.code)
        if run.code in allowed:
            return True
        what = f"exit {run.code}" if run.code >= 0 else f"signal {-run.code}"
        if run.seconds >= SECONDS - 0.5:
            what = f"no end in {SECONDS} s ({what})"
        end = run.out.decode(errors="replace").strip().splitlines()[-3:]
        self.find(f"{what}: {run.command()}: {' | '.join(end)[:400]}")
        return False

    def plan(self, name, *more):
        """The plan's JSON, or nothing."""
        arguments = ["plan", "job.json", *more]
        first = self.program.run(*arguments, "--json", name + ".json", "--calendar", name + ".ics")
        if not self.judge_run(first, (0, 3)):
            return None
        if not self.quick:
            self.plan_again(name, arguments, first)
        plan = json.loads((self.folder / (name + ".json")).read_text())
        if (first.code == 3) != bool(plan["unplaced"]):
            self.find(f"exit {first.code} with {len(plan['unplaced'])} steps without a time: {name}.json")
        self.tags.add("exit 3" if first.code == 3 else "exit 0")
        return plan

    def plan_again(self, name, arguments, first):
        """The same command gives the same bytes; what differs is kept."""
        again = self.program.run(*arguments, "--json", name + ".again.json", "--calendar", name + ".again.ics")
        self.codes.append(again.code)
        for end in (".json", ".ics"):
            if not (self.folder / (name + ".again" + end)).exists():
                self.find(f"exit {again.code} the second time: {again.command()}")
            elif (self.folder / (name + end)).read_bytes() != (self.folder / (name + ".again" + end)).read_bytes():
                self.find(f"other bytes from the same command: {name}{end}")
            else:
                (self.folder / (name + ".again" + end)).unlink()
        # It names the files that it wrote.
        if (first.code, first.out) != (again.code, again.out.replace(b".again.", b".")):
            self.find(f"prints otherwise the second time: {first.command()}")

    def judge_plan(self, name, plan):
        try:
            view = PlanView(self.job, self.folder, plan)
            for rule, text in broken_rules(view):
                self.find(f"{name}.json breaks {rule}: {text}")
            self.views.append(view)
            self.cover(view)
        except Exception:  # of the checker itself: a finding like any other
            self.find(f"the checker fails on {name}.json: {traceback.format_exc(limit=-3)}")

    def cover(self, view):
        if len(view.batch_of) > len(view.batches):
            self.tags.add("lots")
        kinds = {step.kind for step in view.steps}
        self.tags.update("step " + kind for kind in kinds)
        if any(len(step.pieces) > 1 for step in view.steps):
            self.tags.add("split sanding")
        if any(step.what.startswith("coat-again") for step in view.steps):
            self.tags.add("step coat again")
        self.tags.update("held by " + h["by"] for step in view.steps for h in step.given["held"])

    def tonight(self, at):
        if not self.quick:
            self.judge_run(self.program.run("tonight", "job.json", "--now", at), (0, 3))

    def go(self):
        shutil.rmtree(self.folder, ignore_errors=True)
        self.folder.mkdir(parents=True)
        generator = JobGenerator(self.seed, self.folder)
        self.job, self.tags = generator.write(), generator.tags
        clock = LocalTime(self.job["zone"])
        plan = self.plan("plan")
        if plan is None:
            return self
        self.judge_plan("plan", plan)
        now = utc(plan["now_at"])
        for hours in self.rng.sample([0, 3, 11, 20, 26, 40], 2):
            self.tonight(clock.written(now + hours * 60))
        last = "plan"
        for evening in range(self.rng.choice([0, 1, 2, 2])):
            now = LogGenerator(self.rng, self.program, self.tags).evening(self.job, plan, clock)
            for run in self.program.runs:
                if run.arguments[0] == "log" and run.code not in (0, 2):
                    self.judge_run(run, (0, 2))
            if now + 300 > generator.known_until:
                break
            name = f"plan{evening + 2}"
            more = ["--now", clock.written(now)]
            if self.rng.random() < 0.4:
                self.tags.add("last plan")
                more += ["--last-plan", last + ".json"]
            plan = self.plan(name, *more)
            if plan is None:
                return self
            self.judge_plan(name, plan)
            self.tonight(clock.written(now + self.rng.choice([0, 200])))
            last = name
        return self
