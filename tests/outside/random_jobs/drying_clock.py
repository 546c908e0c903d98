"""Drying clock: the least time a coat needs in the air of the room, by the laws of data/drying_laws.json.

Formulas: docs/formulas.md, "The drying clock". The integral is taken over steps of five minutes by their
middles, which shares nothing with the program's sums. What it finds is a lower bound, less a tolerance.
"""
import math
from bisect import bisect_left
from itertools import accumulate

from .air_of_job import STEP, saturation
from .finishing_data import DEPTH, celsius, value

R = 8.314462618e-3
# Shares of the drying that may lack: the steps of both sides, and the room of a heater that cycles.
TOLERANCE, TOLERANCE_HEATED = 0.004, 0.02
NEVER = 10 ** 9


def temperature_factor(law, t):
    if "q10" in law:
        return value(law["q10"]) ** ((t - 23) / 10)
    energy = value(law["activation_energy_kj_per_mol"])
    return math.exp(-(energy / R) * (1 / (t + 273.15) - 1 / 296.15))


def damp_factor(humidity):
    return min(1.0, max(0.5, 1 - (humidity - 0.60) * 5 / 3))


def rate(law, t, e):
    """1 at 23 C and 50 %."""
    if law["driver"] == "vapour_deficit":
        return max(0.0, saturation(t) - e) / (0.5 * saturation(23))
    factor = temperature_factor(law, t)
    if law["driver"] == "vapour_pressure":
        factor *= min(2.0, max(0.1, e / (0.5 * saturation(23))))
    return factor * (damp_factor(min(1.0, e / saturation(t))) if law["slowed_by_humidity"] else 1)


class LabelRows:
    """Hours at several temperatures: ln of the time straight in 1/T between, the class's law outside."""

    def __init__(self, coating, key):
        found = [(celsius(row, "temp"), row[key]) for row in coating.rows if key in row]
        self.points = sorted((1 / (t + 273.15), max(h) if isinstance(h, list) else h, t) for t, h in found)
        self.law, self.humidity = coating.law, coating.label_humidity

    def hours(self, t):
        x = 1 / (t + 273.15)
        warm, cold = self.points[0], self.points[-1]
        for end, outside in ((warm, x <= warm[0]), (cold, x >= cold[0])):
            if outside:
                return end[1] * self.dry_rate(end[2]) / max(1e-12, self.dry_rate(t))
        for a, b in zip(self.points, self.points[1:]):
            if x <= b[0]:
                share = (x - a[0]) / (b[0] - a[0])
                return math.exp(math.log(a[1]) + (math.log(b[1]) - math.log(a[1])) * share)
        return cold[1]

    def dry_rate(self, t):
        return rate(self.law, t, self.humidity * saturation(t))

    def least(self):
        return min(h for _, h, _ in self.points)

    def rate(self, t, e):
        """Per hour; 1 in all is the stage."""
        at_label = self.dry_rate(t)
        return 0.0 if at_label <= 0 else rate(self.law, t, e) / at_label / self.hours(t)


class DryingClock:
    def __init__(self, coating, air, speed, faster_than_label, as_planned):
        self.coating, self.air, self.faster = coating, air, faster_than_label
        self.tolerance = TOLERANCE_HEATED if air.heated else TOLERANCE
        exponent = value(coating.law["air_exponent"])
        self.wind = min(2.0, ((speed + 0.05) / 0.15) ** exponent)
        self.as_planned, self.sums_of = as_planned, {}
        label = coating.label_temp
        self.at_label = rate(coating.law, label, coating.label_humidity * saturation(label))

    def sums(self, rows_key=None):
        """Drying done from the begin of the air on, at each point of its raster."""
        if rows_key not in self.sums_of:
            stops, air = self.coating.stops_below(), self.air
            of = LabelRows(self.coating, rows_key).rate if rows_key else (
                lambda t, e: rate(self.coating.law, t, e))
            steps = []
            for (t1, t2), (e1, e2) in zip(zip(air.t, air.t[1:]), zip(air.e, air.e[1:])):
                t, e = (t1 + t2) / 2, (e1 + e2) / 2
                # A step with any drying in it counts in full, as a lower bound of the wait may.
                dries = max(t1, t2) >= stops
                steps.append(of(max(t, stops), e) * self.wind * STEP / 60 if dries else 0.0)
            self.sums_of[rows_key] = [0.0, *accumulate(steps)]
        return self.sums_of[rows_key]

    def done_by(self, sums, minute):
        place, rest = divmod(max(0, minute - self.air.begin), STEP)
        if place + 1 >= len(sums):
            return sums[-1]
        return sums[place] + (sums[place + 1] - sums[place]) * rest / STEP

    def when(self, sums, begin, amount):
        """The first minute at which so much more is done than at `begin`."""
        target = self.done_by(sums, begin) + amount
        if target > sums[-1]:
            return NEVER
        place = bisect_left(sums, target)
        if place == 0:
            return self.air.begin
        a, b = sums[place - 1], sums[place]
        return math.ceil(self.air.begin + (place - 1 + (target - a) / (b - a)) * STEP - 1e-9)

    def hours(self, stage):
        return self.coating.hours(stage, self.as_planned)

    def exponent(self, depth):
        return value(self.coating.law["film_exponent_" + depth])

    def earliest(self, stage, on_at, films=1, slowness=None, floor_only=False):
        """No coat that is on at `on_at` can be at the stage sooner; 0 where the class has no such stage."""
        label = self.hours(stage)
        if label is None:
            return 0
        slowness = self.coating.slowness if slowness is None else slowness
        key = self.coating.stage_key(stage)
        rows = any(key in row for row in self.coating.rows)
        least = LabelRows(self.coating, key).least() if rows else label
        floor = on_at
        if DEPTH[stage] == "recoat" and not self.faster:
            floor = on_at + math.ceil(least * 60 - 1e-6)
        if floor_only:
            return floor
        amount = slowness * films ** self.exponent(DEPTH[stage]) * (1 - self.tolerance)
        if not rows:
            amount *= label * self.at_label
        # Two minutes: each side rounds up to a whole one.
        return max(floor, self.when(self.sums(key if rows else None), on_at, amount) - 2)

    def needs_more_than_by(self, stage, on_at, at):
        """When a coat has dried on from `at` by 1 in 100 of what it had had by then."""
        key = self.coating.stage_key(stage)
        sums = self.sums(key if any(key in row for row in self.coating.rows) else None)
        had = self.done_by(sums, at) - self.done_by(sums, on_at)
        return self.when(sums, on_at, had * 1.01) - 2 if had > 0 else 0

    def dried_for(self, hours, on_at, slowness=None):
        """The wait of a pair of classes, at label conditions."""
        slowness = self.coating.slowness if slowness is None else slowness
        floor = on_at if self.faster else on_at + math.ceil(hours * 60 - 1e-6)
        amount = slowness * hours * self.at_label * (1 - self.tolerance)
        return max(floor, self.when(self.sums(), on_at, amount) - 2)
