"""Coat rules: the air at and after each coat, dust beside wet coats, and how many go on in a day."""
from .air_of_job import saturation
from .drying_clock import NEVER


class CoatRules:
    def __init__(self, view):
        self.view, self.found = view, []
        # What the two reckonings of a room with a heater may differ by.
        self.kelvin, self.percent = (0.5, 2.0) if view.air.heated else (0.06, 0.4)

    def say(self, rule, step, text):
        self.found.append((rule, f"{step.key} {text}"))

    def check(self):
        coats = [s for s in self.view.steps if s.kind == "coat" and not s.skipped]
        for coat in coats:
            if not coat.done:
                self.air_at(coat)
                self.air_after(coat)
        self.in_a_day(coats)
        for sanding in self.view.steps:
            if sanding.is_sanding() and not sanding.skipped:
                for coat in coats:
                    self.dust(sanding, coat)
        return self.found

    def instants(self, begin, end):
        return range(begin, min(end, self.view.horizon) + 1, self.view.grid)

    def air_at(self, coat):
        """The gates while it is put on, at each instant of the grid, both ends with it."""
        air, figures = self.view.air, self.view.coating_of(coat)
        low, high = figures.temperature("put_on_min"), figures.temperature("put_on_max")
        most = figures.figure("humidity_max_pct")
        for at in self.instants(coat.begin, coat.end):
            t, boards, e = air.at(air.t, at), air.at(air.boards, at), air.at(air.e, at)
            humidity = 100 * e / saturation(t)
            if min(t, boards) < low - self.kelvin or max(t, boards) > high + self.kelvin:
                return self.say("air", coat, f"is put on at {t:.2f} C, boards {boards:.2f} C; {low} to {high}")
            if humidity > most + self.percent:
                return self.say("air", coat, f"is put on at {humidity:.1f} %; at most {most}")
        return None

    def air_after(self, coat):
        """What holds until touch-dry, and for the hours after it."""
        view, air, figures = self.view, self.view.air, self.view.coating_of(coat)
        touch = view.stage_at(coat, "touch")
        if touch >= NEVER - 10 or touch > view.horizon + view.grid:
            self.say("air", coat, "is not touch-dry within the plan")
        margin, hold = figures.figure("dew_point_margin_k"), figures.temperature("hold_min")
        for at in self.instants(coat.begin, touch):
            if air.at(air.e, at) > saturation(air.at(air.boards, at) - margin + self.kelvin):
                return self.say("air", coat, f"is too near the dew point {at - coat.begin} min after its begin")
            if at > coat.end and air.at(air.t, at) < hold - self.kelvin:
                return self.say("air", coat, f"is under {hold} C before it is touch-dry")
        hours, low = figures.figure("hold_put_on_min_h"), figures.temperature("put_on_min")
        if hours is not None:
            for at in self.instants(coat.end, coat.end + int(hours * 60)):
                if air.at(air.t, at) < low - self.kelvin:
                    return self.say("air", coat, f"falls under {low} C within {hours} h")
        return None

    def in_a_day(self, coats):
        """Of coats that melt together a side gets so many on one local day; what was washed off is gone."""
        def day_of(coat):
            return coat.batch, coat.side, self.view.clock.local(coat.begin)[0]

        melting = [c for c in coats if self.view.coating_of(c).figure("coats_a_day_max")]
        for coat in melting:
            count = sum(day_of(c) == day_of(coat) and c.begin <= coat.begin
                        and not self.view.washed_off(c, coat.begin) for c in melting)
            if count > self.view.coating_of(coat).figure("coats_a_day_max") and not coat.done:
                self.say("coats_a_day", coat, f"is coat {count} of its day")

    def dust(self, sanding, coat):
        """No coat is put on soon after sanding in its room, and none is sanded beside while it is wet."""
        view = self.view
        if sanding.done and coat.done:
            return
        room, other = view.room_of(sanding.batch), view.room_of(coat.batch)
        if room is not other:
            return
        settles = view.labour("dust_settles_min")
        for begin, end, _ in sanding.pieces:
            if end + settles <= coat.begin or begin >= view.horizon:
                continue
            if begin < view.stage_at(coat, "dust_free"):
                self.say("dust", sanding, f"makes dust while {coat.key} is wet or about to be put on")
