"""Order rules: which work follows which in a batch, and how long it waits for what lies below."""
from .finishing_data import TOUCHES, pair_hours

# What a fault asks for, by docs/formulas.md, "Planning on from a log": the stage that is waited for, as a
# film of how many.
REPAIRS = {"runs": ("sand", 2), "wrinkling": ("sand", 2), "blush": ("recoat", 1)}


class OrderRules:
    def __init__(self, view):
        self.view, self.found = view, []

    def say(self, rule, step, text):
        self.found.append((rule, f"{step.key if step else ''} {text}"))

    def check(self):
        for batch in self.view.batch_of:
            self.bare_wood(batch)
            places = self.view.system_steps(batch)
            below = {}
            for place in range(len(places)):
                for number in range(1, self.view.number_of_coats(batch, place) + 1):
                    self.coat(batch, place, number, below)
                    # Where a coat was left out, the one below it lies there still.
                    below = {side: below.get(side, coat) if coat.skipped else coat
                             for side, coat in self.view.coats_of(batch, place, number).items()}
            self.hardware(batch, below)
            self.touched(batch, below)
        for step in self.view.steps:
            if step.kind == "repair" and not step.done:
                self.repair(step)
            if step.kind == "coat" and not step.done:
                self.right_after(step)
        self.complete()
        return self.found

    def bare_wood(self, batch):
        """Coarse to fine; damped, dried and sanded again where the class asks for it."""
        grits = sorted(self.view.of_kind(batch, "sand bare"), key=lambda s: s.given["grit_p"])
        chain = grits + self.view.of_kind(batch, "raise grain") + self.view.of_kind(batch, "sand raised grain")
        for before, after in zip(chain, chain[1:]):
            delay = 180 if after.kind == "sand raised grain" else 0
            if not after.done and not before.skipped and after.begin < before.end + delay:
                self.say("order", after, f"does not wait for {before.key}")
        first = self.view.coats_of(batch, 0, 1)
        for coat in first.values():
            for before in chain:
                if coat.placed and not coat.done and coat.begin < before.end:
                    self.say("order", coat, f"does not wait for {before.key}")
        missing = [s for s in self.view.unplaced if s.batch == batch and s.coat == 0]
        for coat in first.values():
            if missing and coat.placed and not coat.done:
                self.say("order", coat, f"is dated without {missing[0].key}")

    def coat(self, batch, place, number, below):
        view = self.view
        coats = view.coats_of(batch, place, number)
        sanding = [s for s in view.steps if s.batch == batch and s.kind == "sand between" and s.coat == number
                   and view.place_of(s) == place]
        unplaced = [s for s in view.unplaced if s.batch == batch and s.coat == number
                    and s.kind in ("sand between", "fill pores", "sand filler") and view.place_of(s) == place]
        filling = [s for s in view.steps if s.batch == batch and s.kind in ("fill pores", "sand filler")
                   and view.place_of(s) == place and number == 1]
        for work in sanding:
            self.dry_for(work, below, "sand")
        if filling:
            self.filled(filling, below)
        self.sides(batch, place, number, coats)
        for coat in coats.values():
            if not coat.placed or coat.done:
                continue
            for work in sanding + filling:
                if coat.begin < work.end:
                    self.say("order", coat, f"does not wait for {work.key}")
            if unplaced:
                self.say("order", coat, f"is dated without {unplaced[0].key}")
            # Sanding that was done too early, or left out, has dried nothing.
            self.dry_for(coat, {coat.side: below[coat.side]} if coat.side in below else {}, "recoat")
            self.dry_for(coat, {side: under for side, under in below.items() if side != coat.side}, "handle")
            self.again(coat)
            if number == 1:
                self.pair(coat, below)
            self.repaired(coat, below)
            if coat.side == "back" and coat.what == "coat":
                self.turned_back(coat, below)
            self.sanded_or_in_window(coat, below, sanding, filling)

    def again(self, coat):
        """A coat that goes on again lies on the first, unless that was washed off."""
        first = [s for s in self.view.steps if s.kind == "coat" and s is not coat and s.prefix() == coat.prefix()
                 and s.begin < coat.begin and not s.skipped and not self.view.washed_off(s, coat.begin)]
        if first:
            self.dry_for(coat, {coat.side: max(first, key=lambda s: s.begin)}, "recoat")

    def dry_for(self, step, below, stage):
        """What lies below is at the stage; of coats that melt together two, three and more dry as one."""
        if step.done:
            return
        for coat in below.values():
            if not coat.placed:
                self.say("order", step, f"is dated without {coat.key}")
                continue
            if step.begin < coat.end:
                self.say("order", step, f"comes before {coat.key} is on")
            for films, under in enumerate(self.melted(coat) if stage != "handle" else [coat], 1):
                ready = self.view.stage_at(under, stage, films)
                if step.begin < ready:
                    self.say("drying" if films == 1 else "melting", step,
                             f"begins {ready - step.begin} min before {under.key} is dry to {stage}, as {films}")

    def melted(self, coat):
        """The coat, and those under it on its side that melt into it, the last first."""
        most = self.view.coating_of(coat).figure("coats_a_day_max")
        chain = [coat]
        if not most:
            return chain
        under = sorted((s for s in self.view.steps if s.kind == "coat" and s.batch == coat.batch
                        and s.side == coat.side and not s.skipped and s.begin < coat.begin
                        and not self.view.washed_off(s, coat.begin)), key=lambda s: -s.begin)
        for each in under:
            if len(chain) == most or not self.view.coating_of(each).figure("coats_a_day_max"):
                break
            chain.append(each)
        return chain

    def sides(self, batch, place, number, coats):
        """The back first; turned when it is dry to handle; then the show side."""
        back, show = coats.get("back"), coats.get("show")
        turning = [s for s in self.view.of_kind(batch, "turn over") if s.coat == number
                   and self.view.place_of(s) == place and s.what == "turn-over"]
        if back is None or show is None:
            return
        for turn in turning:
            if turn.done:
                continue
            if not back.placed:
                self.say("order", turn, f"is dated without {back.key}")
            elif turn.begin < self.view.stage_at(back, "handle"):
                self.say("drying", turn, f"comes before {back.key} is dry to handle")
        if show.placed and not show.done:
            if not turning:
                self.say("order", show, "goes on though nothing was turned over")
            for turn in turning:
                if show.begin < turn.end:
                    self.say("order", show, f"does not wait for {turn.key}")

    def turned_back(self, back, below):
        """The back comes up again, the show side of the coat below dry to handle, before it is coated."""
        show = below.get("show")
        turning = self.view.by_key.get(back.prefix() + "/turn-back")
        if show is None:
            return
        if turning is None:
            return self.say("order", back, "goes on though the back was not turned up")
        if back.begin < turning.end:
            self.say("order", back, f"does not wait for {turning.key}")
        if show.placed and not show.skipped and not turning.done and turning.begin < self.view.stage_at(show, "handle"):
            self.say("drying", turning, f"comes before {show.key} is dry to handle")

    def filled(self, filling, below):
        fill = next((s for s in filling if s.kind == "fill pores"), None)
        sand = next((s for s in filling if s.kind == "sand filler"), None)
        if fill and not fill.done:
            self.dry_for(fill, below, "recoat")
        if fill and sand and not sand.done and not fill.skipped:
            dries = self.view.labour("filler_dries_h") * 60
            if sand.begin < fill.end + dries:
                self.say("filler", sand, "comes before the filler is dry")

    def pair(self, coat, below):
        """Waits between classes, data/follows.json."""
        over = self.view.coating_of(coat)
        for under in below.values():
            if not under.placed or under.skipped:
                continue
            figures = self.view.coating_of(under)
            name = under.given["coating"]
            hours = pair_hours(figures, over.key, self.view.clocks[name].as_planned)
            if hours is None:
                continue
            ready = self.view.clocks[name].dried_for(hours, self.view.wet_until(under),
                                                     self.view.slowness(name))
            if coat.begin < ready:
                self.say("pair", coat, f"goes over {under.key} {ready - coat.begin} min too soon")

    def repaired(self, coat, below):
        for under in below.values():
            for repair in self.view.steps:
                if repair.kind == "repair" and repair.prefix() == under.prefix() and coat.begin < repair.end:
                    self.say("repair", coat, f"does not wait for {repair.key}")

    def repair(self, repair):
        fault = repair.what.removeprefix("repair-").rstrip("-0123456789").replace("-", "_")
        coat = min((s for s in self.view.steps if s.kind == "coat" and s.prefix() == repair.prefix()),
                   key=lambda s: len(s.key), default=None)
        if coat is None:
            return
        stage, films = REPAIRS.get(fault, (None, 1))
        ready = self.view.stage_at(coat, stage, films) if stage else coat.end
        if repair.begin < ready:
            self.say("repair", repair, f"begins {ready - repair.begin} min too soon")

    def right_after(self, coat):
        """Dusting off ends as the coat begins; what is wiped off is wiped in its time."""
        dusting = self.view.by_key.get(coat.prefix() + "/dust-off")
        if dusting and coat.what == "coat" and not dusting.done and dusting.end != coat.begin:
            self.say("order", coat, "is not put on right after dusting off")
        figures = self.view.coating_of(coat)
        after, within = figures.figure("wipe_off_after_min"), figures.figure("wipe_off_within_min")
        if after is None or coat.what != "coat":
            return
        wiping = self.view.by_key.get(coat.prefix() + "/wipe-off")
        if wiping is None:
            return self.say("wiping", coat, "is never wiped off")
        if not coat.end + after <= wiping.begin < coat.end + after + self.view.grid + 1:
            self.say("wiping", wiping, "is not wiped when its time has come")
        if wiping.end > coat.end + within + 2 * self.view.grid:
            self.say("wiping", wiping, "is wiped off too late")

    def sanded_or_in_window(self, coat, below, sanding, filling):
        """Unsanded coats go on within the window of the coat below on their side."""
        for side, under in below.items():
            if not under.placed or under.skipped or side not in (coat.side, "both"):
                continue
            figures = self.view.coating_of(under)
            hours = self.window_of(figures)
            if sanding or filling or not figures.figure("grit_after_first"):
                continue
            if any(s.is_sanding() and s.batch == coat.batch and under.end <= s.begin and s.end <= coat.begin
                   for s in self.view.steps):
                continue
            if hours is not None and coat.begin - self.view.wet_until(under) > hours * 60:
                self.say("window", coat, f"goes over {under.key} past its window and is not sanded for")

    def window_of(self, figures):
        if figures.gives_times():
            printed = self.view.clocks[figures.name].as_planned["drying"].get("recoat_unsanded_within_h")
            return printed["value"] if printed else None
        return figures.figure("recoat_unsanded_within_h")

    def hardware(self, batch, last):
        for fit in self.view.of_kind(batch, "fit hardware"):
            if not self.view.batch_of[batch].get("hardware", True):
                self.say("hardware", fit, "is planned for a batch that has none")
            for coat in last.values():
                if fit.done:
                    continue
                if not coat.placed:
                    self.say("order", fit, f"is dated without {coat.key}")
                elif fit.begin < self.view.stage_at(coat, "hardware"):
                    self.say("drying", fit, f"comes before {coat.key} bears hardware")

    def touched(self, batch, last):
        """Rubbed out or waxed no sooner than the last coats have cured."""
        for touch in self.view.of_kind(batch, "finishing touch"):
            stage = TOUCHES[touch.what.replace("-", "_")]["waits_for"]
            for coat in last.values():
                if touch.done:
                    continue
                if not coat.placed:
                    self.say("order", touch, f"is dated without {coat.key}")
                elif touch.begin < self.view.stage_at(coat, stage):
                    self.say("drying", touch, f"comes before {coat.key} is at {stage}")

    def complete(self):
        """Every coat that the job asks for is dated or told to have no time; so are the grits."""
        view = self.view
        for batch in view.batch_of:
            all_steps = [s for s in view.steps + view.unplaced if s.batch == batch]
            sides = {s.side for s in all_steps if s.kind == "coat"}
            for place, asked in enumerate(view.system_steps(batch)):
                coats = view.number_of_coats(batch, place)
                if sides and asked["coats"] != "by_film" and coats != asked["coats"]:
                    self.say("complete", None, f"{batch}: {coats} coats where the job asks for {asked['coats']}")
                for number in range(1, coats + 1):
                    if set(view.coats_of(batch, place, number)) != sides:
                        self.say("complete", None, f"{batch}: coat {number} of step {place} lacks a side")
                self.sanded_between(batch, place, coats, all_steps)

    def sanded_between(self, batch, place, coats, all_steps):
        """A class that is sanded between has its sanding before each next coat."""
        view = self.view
        figures = view.coatings[view.system_steps(batch)[place]["coating"]]
        last_step = place + 1 == len(view.system_steps(batch))
        numbers = [(place, n + 1, n, coats) for n in range(1, coats)]
        if not last_step and not view.system_steps(batch)[place + 1].get("fill_pores"):
            numbers.append((place + 1, 1, coats, coats + 1))
        for over_place, over, number, of in numbers:
            key = ("grit_after_first" if number == 1 else "grit_before_last" if number == of - 1 else "grit_between")
            wanted = figures.sands and figures.figure(key) is not None and coats > 0
            if wanted and not any(s.kind == "sand between" and s.coat == over and view.place_of(s) == over_place
                                  for s in all_steps):
                self.say("complete", None, f"{batch}: nothing is sanded before coat {over} of step {over_place}")
