"""Log generator: what somebody might tell the program, through its own command, after a plan."""
from .local_time import utc

FAULTS = ["runs", "wrinkling", "fisheyes", "blush", "tacky", "sand_through"]
# Those that change most of what comes after are told most often.
TOLD_OFTEN = [*FAULTS, "runs", "fisheyes", "fisheyes", "sand_through"]
# Steps that the log takes together with their coat.
WITH_A_COAT = ("dust off", "wipe off")


class LogGenerator:
    """Tells of a plan's first steps, more or less as planned, and of all kinds of things besides."""

    def __init__(self, rng, program, tags):
        self.rng, self.program, self.tags, self.latest = rng, program, tags, 0

    def evening(self, job, plan, clock):
        """Lines for the time up to a step of the plan; the hour at which they end."""
        rng = self.rng
        now = utc(plan["now_at"])
        steps = sorted((s for s in plan["steps"] if not s.get("done")), key=lambda s: (s["end_at"], s["begin_at"]))
        if not steps:
            return now
        told = steps[:self.how_many(steps)]
        # A line too many is one that nothing awaits: somebody has done less than was planned.
        last = now
        # Some wait for nothing: one step right after the other, and insisted on.
        hasty = rng.random() < 0.2
        for step in told:
            last = last + rng.choice([3, 12, 40]) if hasty else max(last, utc(step["end_at"]))
            if step["kind"] not in WITH_A_COAT and rng.random() < 0.88:
                self.work(step, last, clock)
            if step["kind"] == "coat" and rng.random() < 0.7:
                self.besides_a_coat(step, last, clock)
        for _ in range(rng.randint(0, 3)):
            self.anything(job, last, clock)
        return max(last, self.latest) + rng.choice([4, 30, 300, 1500])

    def how_many(self, steps):
        """Mostly as far as one of the first coats, which stand behind all the sanding of bare wood."""
        coats = [i for i, step in enumerate(steps) if step["kind"] == "coat"][:3]
        if coats and self.rng.random() < 0.6:
            return self.rng.choice(coats) + self.rng.randint(1, 4)
        return self.rng.randint(1, min(14, len(steps)))

    def tell(self, tag, kind, *arguments, at, clock, later=3):
        """The exit code is 0, or 2 where the line is refused; both are answers."""
        self.latest = max(self.latest, at + later)
        run = self.program.run("log", kind, "job.json", *arguments, "--now", clock.written(at + later))
        self.tags.add(f"log {tag} {'taken' if run.code == 0 else 'refused'}")
        return run

    def work(self, step, last, clock):
        rng, place = self.rng, ["--batch", step["batch"]]
        end = utc(step["end_at"])
        at = ["--at", clock.written(min(last, end + rng.choice([0, 0, 0, 7, -2])))]
        if step["kind"] == "coat":
            place += ["--coat", step["coat"], "--side", step["side"]]
            if rng.random() < 0.5:
                place += ["--litres", round(max(0.002, step["mixed_l"] * rng.choice([0.6, 1, 1.2, 4])), 3)]
            if rng.random() < 0.3:
                place += ["--air-temp-c", rng.choice([14, 19, 23]), "--humidity-pct", rng.choice([40, 60])]
            if rng.random() < 0.2:
                place += ["--from", clock.written(min(utc(step["begin_at"]), last) - 1)]
            if rng.random() < 0.06:
                self.tell("skip coat", "skip", *place[:6], *at, at=last, clock=clock)
                return
            run = self.tell("coat", "coat", *place, *at, at=last, clock=clock)
            if run.code == 2:
                self.tell("coat insisted", "coat", *place, *at, "--insist", at=last, clock=clock)
        elif rng.random() < 0.07:
            self.tell("skip", "skip", *place, "--step", step["key"], *at, at=last, clock=clock)
        else:
            run = self.tell("done", "done", *place, "--step", step["key"], *at, at=last, clock=clock)
            if run.code == 2:
                self.tell("done insisted", "done", *place, "--step", step["key"], *at, "--insist", at=last, clock=clock)

    def besides_a_coat(self, step, last, clock):
        rng, place = self.rng, ["--batch", step["batch"], "--coat", step["coat"], "--side", step["side"]]
        later = last + rng.choice([5, 90, 600])
        if rng.random() < 0.4:
            outcome = rng.choice(["passed", "failed"])
            test = rng.choice(["touch", "thumb"])
            self.tell(f"test {test} {outcome}", "test", test, outcome, *place, "--at", clock.written(later), at=later, clock=clock)
        else:
            fault = rng.choice(TOLD_OFTEN)
            self.tell("fault " + fault, "fault", fault, *place, "--at", clock.written(later), at=later, clock=clock)

    def anything(self, job, last, clock):
        rng, coating = self.rng, self.rng.choice(job["coatings"])["name"]
        way = rng.choice(["tin", "waste", "air", "air", "note", "withdraw", "corrects", "away", "free", "bought-all"])
        if way == "tin":
            size = rng.choice(["1 qt", "750 ml", "250 ml"])
            self.tell("tin", "tin", rng.choice(["opened", "bought"]), size, "--coating", coating, at=last, clock=clock)
        elif way == "bought-all":
            self.tell("bought-all", "bought-all", at=last, clock=clock)
        elif way in ("away", "free"):
            self.hours(way, job, last, clock)
        elif way == "waste":
            self.tell("waste", "waste", "120 ml", "--coating", coating, at=last, clock=clock)
        elif way == "air":
            self.tell("air", "air", "--air-temp-f", rng.choice([55, 66, 75]), *rng.choice([[], ["--humidity-pct", 55]]),
                      at=last, clock=clock)
        elif way == "note":
            self.tell("note", "note", "a drip on the floor, ß and 漆", at=last, clock=clock)
        elif way == "withdraw":
            self.tell("withdraw", "withdraw", rng.randint(1, 6), at=last, clock=clock)
        else:
            self.tell("corrects", "note", "in place of another line", "--corrects", rng.randint(1, 6), at=last, clock=clock)

    def hours(self, way, job, last, clock):
        """Hours of a day that is still to come, of everybody or of one person."""
        rng = self.rng
        on = ["--on", clock.written(last + 1440 * rng.randint(1, 6))[:10]]
        begin = rng.randint(6, 20)
        hours = ["--from", f"{begin:02}:00", "--until", f"{begin + rng.randint(1, 3):02}:30"]
        if way == "away" and rng.random() < 0.5:
            hours = []
        people = [person["name"] for person in job.get("people", [])]
        whose = ["--person", rng.choice(people)] if people and rng.random() < 0.6 else []
        self.tell(way, way, *on, *hours, *whose, at=last, clock=clock)
