"""Shop rules: hours, quiet, people, sessions, space, dates, and the minutes that work takes."""
import re

from .finishing_data import LABOUR, METHODS, TOUCHES, value
from .measure import metres

HANDLE = "handle"
# Minutes and areas are rounded as they are written.
ROUNDING = 0.1


def covered_m2(row):
    """What one piece of a row of the parts list covers as it lies."""
    kind = row["kind"].strip().lower()
    if kind == "area":
        return metres(row, "area")
    across = "diameter" if kind in ("round", "tube", "turned") else "width"
    return metres(row, "length") * metres(row, across)


class ShopRules:
    def __init__(self, view):
        self.view, self.found = view, []
        self.work = [s for s in view.steps if not s.done]
        people = view.job.get("people", [])
        self.alone = people[0]["name"] if len(people) == 1 else None
        self.several = len(people) > 1

    def say(self, rule, step, text):
        self.found.append((rule, f"{step.key if step else ''} {text}"))

    def check(self):
        for step in self.work:
            self.hours(step)
            self.minutes(step)
            self.dates(step)
        self.sessions()
        self.one_thing_at_a_time()
        self.space()
        self.after()
        self.lots()
        return self.found

    def hours(self, step):
        hours = self.view.hours
        before = None
        for begin, end, by in step.pieces:
            if begin < self.view.now or end > self.view.horizon or end <= begin:
                self.say("hours", step, "has a piece outside the plan")
                continue
            if before is not None and begin < before:
                self.say("hours", step, "has pieces out of order")
            before = end
            there = hours.is_there(by if self.several else self.alone, begin, end)
            if not there:
                self.say("hours", step, "is done outside of working hours")
            by_machine = self.view.job.get("labour", {}).get("bare_tool", "machine") == "machine"
            if step.kind == "sand bare" and by_machine and hours.is_quiet(begin, end):
                self.say("quiet", step, "sands by machine in quiet hours")

    def minutes(self, step):
        """Pieces add up to the work; the work to areas and rates."""
        given, spent = step.given, sum(end - begin for begin, end, _ in step.pieces)
        grid = self.view.grid
        if spent < given["work_min"] - ROUNDING:
            self.say("minutes", step, f"has {given['work_min'] - spent:.1f} min too little")
        if spent >= given["work_min"] + grid + ROUNDING and spent > grid:
            self.say("minutes", step, f"has {spent - given['work_min']:.1f} min too much")
        if len(step.pieces) > 1:
            if not step.is_sanding():
                self.say("minutes", step, "is split")
            # Fifteen minutes, cut to whole slots; later pieces may fill what the hours leave.
            handed_over = step.pieces[0][1] == step.pieces[1][0]
            if step.pieces[0][1] - step.pieces[0][0] <= 15 - grid and not handed_over:
                self.say("minutes", step, "begins with too small a piece")
        least = self.least_minutes(step)
        if given["work_min"] < least - ROUNDING:
            self.say("minutes", step, f"is given {given['work_min']:.2f} min; its area takes {least:.2f}")

    def least_minutes(self, step):
        labour, area = self.view.labour, step.given["area_m2"]
        if step.kind == "coat":
            method = step.given["method"]
            own = self.view.job.get("methods", {}).get(method, {})
            return area / own.get("rate_m2_per_h", value(METHODS[method]["rate_m2_per_h"])) * 60
        if step.kind == "sand bare":
            tool = self.view.job.get("labour", {}).get("bare_tool", LABOUR["bare_tool"])
            return area / labour(f"sand_bare_{tool}_m2_per_h") * 60
        if step.kind in ("sand between", "sand raised grain", "sand filler"):
            return area / labour("sand_between_m2_per_h") * 60
        if step.kind == "finishing touch":
            return area / value(TOUCHES[step.what.replace("-", "_")]["rate_m2_per_h"]) * 60
        rates = {"dust off": "dust_off_m2_per_h", "wipe off": "wipe_off_m2_per_h",
                 "fill pores": "fill_pores_m2_per_h"}
        if step.kind in rates:
            return area / labour(rates[step.kind]) * 60
        return {"turn over": labour("turn_over_min"), "fit hardware": labour("fit_hardware_min")}.get(step.kind, 0)

    def dates(self, step):
        view, batch = self.view, self.view.batch_of[step.batch]
        if "not_before" in batch and step.begin < view.clock.given(batch["not_before"]):
            self.say("not_before", step, "is done before its batch may be begun")
        if step.kind != "coat":
            return
        closed = set(batch.get("no_coating_on", [])) | set(view.job.get("no_coating_on", []))
        days = {view.clock.date(step.begin).isoformat(), view.clock.date(step.end - 1).isoformat()}
        if days & closed:
            self.say("no_coating_on", step, "is put on on a day without coating")
        for pin in batch.get("pins", []):
            names = [s.get("name", s["coating"]) for s in view.system_steps(step.batch)]
            place = names.index(pin["step"]) if "step" in pin else 0
            if (view.place_of(step), step.coat) != (place, pin["coat"]):
                continue
            if "side" in pin and step.side not in (pin["side"], "both"):
                continue
            day, begin = view.clock.local(step.begin)
            _, last = view.clock.local(step.end - 1)
            low, high = self.clock_of(pin.get("from", "00:00")), self.clock_of(pin.get("to", "24:00"))
            if view.clock.date(step.begin).isoformat() != pin["on"] or not (low <= begin and last < high):
                self.say("pin", step, f"is not put on when it is set for, {pin['on']}")

    @staticmethod
    def clock_of(text):
        hours, minutes = text.split(":")
        return int(hours) * 60 + int(minutes)

    def sessions(self):
        view, used = self.view, {}
        for session in view.plan["sessions"]:
            steps = [view.by_key[key] for key in session["steps"]]
            up = view.interval(session["set_up"])
            down = view.interval(session["clean_up"])
            for step in steps:
                used[step.key] = used.get(step.key, 0) + 1
                if (step.given["coating"], step.given["method"]) != (session["coating"], session["method"]):
                    self.say("session", step, "stands in a session of another product")
                dusting = view.by_key.get(step.prefix() + "/dust-off") if step.what == "coat" else None
                first = dusting.begin if dusting and not dusting.done else step.begin
                if first < up[1] or view.wet_until(step) > down[0]:
                    self.say("session", step, "lies outside of its session")
            clean = view.coatings[session["coating"]].figure("clean_up_min")
            if up[1] - up[0] < view.labour("set_up_min") or down[1] - down[0] < clean:
                self.say("session", steps[0], "has too little time to set up or clean up")
            self.tools(session, steps, clean)
            if not view.hours.same_all_through(up[0], down[1]):
                self.say("session", steps[0], "is not in one stretch of working hours")
        for step in self.work:
            if step.kind == "coat" and used.get(step.key, 0) != 1:
                self.say("session", step, f"is in {used.get(step.key, 0)} sessions")

    def tools(self, session, steps, clean):
        """A gun, or what hardens in its pot, is cleaned before it lies for more than half an hour."""
        if session["method"] != "hvlp" and self.view.coatings[session["coating"]].figure("pot_life_h") is None:
            return
        cleanings = [self.view.interval(cleaning) for cleaning in session["cleanings"]]
        for before, after in zip(steps, steps[1:]):
            lies_from = self.view.wet_until(before)
            if after.begin - lies_from > 30 and not any(begin >= lies_from and end <= after.begin and end - begin >= clean
                                                        for begin, end in cleanings):
                self.say("session", before, "leaves its tool to harden")

    def one_thing_at_a_time(self):
        busy = {}
        for step in self.work:
            for begin, end, by in step.pieces:
                busy.setdefault(by if self.several else None, []).append((begin, end, step.key))
        for session in self.view.plan["sessions"]:
            for name in ("set_up", "clean_up"):
                begin, end = self.view.interval(session[name])
                by = session[name].get("by") if self.several else None
                busy.setdefault(by, []).append((begin, end, f"{name} of {session['steps'][0]}"))
            for cleaning in session["cleanings"]:
                begin, end = self.view.interval(cleaning)
                by = cleaning.get("by") if self.several else None
                busy.setdefault(by, []).append((begin, end, f"cleaning within {session['steps'][0]}"))
        for by, work in busy.items():
            work.sort()
            for (_, end, first), (begin, _, second) in zip(work, work[1:]):
                if begin < end:
                    self.say("person", None, f"{by or 'one person'} does {first} and {second} at once")

    def space_of(self, batch):
        """m2 or places that a batch, or its lot, takes in its room, by the parts list."""
        room, given = self.view.room_of(batch), self.view.batch_of[batch]
        rows = self.view.part_rows()
        share = {p["name"]: p["quantity"] for p in self.view.plan["parts"] if p["batch"] == batch}
        if "drying_places" in room:
            return sum(share.values())
        own = [row for row in rows if row["batch"] == given["name"]]
        whole = sum(self.quantity(row) * covered_m2(row) for row in own)
        part = sum(share.get(row["part"], 0) * covered_m2(row) for row in own)
        return part * (given["space_m2"] / whole if "space_m2" in given and whole else 1)

    @staticmethod
    def quantity(row):
        return int(row["quantity"] or 1)

    def space(self):
        view = self.view
        coats = [s for s in view.steps if s.kind == "coat" and not s.skipped]
        for coat in (s for s in coats if not s.done):
            room = view.room_of(coat.batch)
            most = None if room is None else room.get("drying_space_m2", room.get("drying_places"))
            if most is None:
                continue
            there = {other.batch for other in coats if view.room_of(other.batch) is room
                     and other.begin <= coat.begin < max(other.end, view.stage_at(other, HANDLE))}
            taken = sum(self.space_of(batch) for batch in there)
            if taken > most * (1 + 1e-6) + 1e-6:
                self.say("space", coat, f"has no room to dry: {taken:.3f} of {most} with {sorted(there)}")

    def after(self):
        """The first coat waits for the last coats of all lots of the batch before it."""
        view = self.view
        for batch, given in view.batch_of.items():
            if "after" not in given:
                continue
            firsts = [s for s in view.coats_of(batch, 0, 1).values() if s.placed and not s.done]
            for other, its in view.batch_of.items():
                if its["name"] != given["after"]:
                    continue
                place = len(view.system_steps(other)) - 1
                last = view.coats_of(other, place, view.number_of_coats(other, place))
                for coat in last.values():
                    for first in firsts:
                        if not coat.placed or first.begin < view.stage_at(coat, HANDLE):
                            self.say("after", first, f"does not wait for {coat.key}")

    def lots(self):
        """The lots of a batch hold its pieces, each once, and each lot fits its room."""
        view, rows = self.view, self.view.part_rows()
        for name in view.batches:
            wanted = {}
            for row in rows:
                if row["batch"] == name:
                    wanted[row["part"]] = wanted.get(row["part"], 0) + self.quantity(row)
            found = {}
            for part in view.plan["parts"]:
                if re.sub(r", lot \d+$", "", part["batch"]) == name or part["batch"] == name:
                    found[part["name"]] = found.get(part["name"], 0) + part["quantity"]
            if found != wanted:
                self.say("lots", None, f"{name}: {found} where the parts list has {wanted}")
        for batch in view.batch_of:
            room = view.room_of(batch)
            most = None if room is None else room.get("drying_space_m2", room.get("drying_places"))
            if most is not None and self.space_of(batch) > most * (1 + 1e-6):
                self.say("lots", None, f"{batch} does not fit into its room")

