"""Air of a job: temperature, vapour pressure and boards over time, worked out from the files it names.

Nothing of the program is used. Sources of the formulas: docs/formulas.md, "Humid air" and the sections
after it. Values stand on a raster of five minutes and run straight between.
"""
import calendar
import csv
import math
from bisect import bisect_right
from datetime import date, datetime, timedelta, timezone

from .finishing_data import celsius
from .local_time import EPOCH, clock_minutes, minutes_of

STEP = 5
# ASHRAE Handbook Fundamentals 2017, ch. 14, table 6: share of the range below the high, hours 1 to 24.
BELOW_HIGH = [0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13,
              0.05, 0.00, 0.00, 0.06, 0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82]
MONTHS = ["january", "february", "march", "april", "may", "june", "july", "august", "september",
          "october", "november", "december"]


def saturation(t):
    """Pa over liquid water; Hyland and Wexler 1983."""
    k = t + 273.15
    return math.exp(-5800.2206 / k + 1.3914993 - 0.048640239 * k + 4.1764768e-5 * k * k
                    - 1.4452093e-8 * k ** 3 + 6.5459673 * math.log(k))


def vapour(given, t):
    """Of an object with a dew point, which counts first, or a humidity."""
    dew = celsius(given, "dew_point")
    return saturation(dew) if dew is not None else given["humidity_pct"] / 100 * saturation(t)


def rows_of_csv(folder, rows, clock):
    with open(folder / rows["file"], newline="", encoding="utf-8") as file:
        table = list(csv.DictReader(file))
    known = []
    for row in table:
        if not row[rows["temperature_column"]].strip():
            continue
        text = row[rows["time_column"]].replace("Z", "+00:00")
        moment = datetime.fromisoformat(text)
        if moment.tzinfo is None:
            zone = timezone.utc if rows["time_is"] == "utc" else clock.zone
            moment = moment.replace(tzinfo=zone)
        scale = (lambda x: (x - 32) / 1.8) if rows["temperature_unit"] == "F" else (lambda x: x)
        t = scale(float(row[rows["temperature_column"]]))
        dew = row.get(rows.get("dew_point_column"), "") or ""
        wet = row.get(rows.get("humidity_column"), "") or ""
        if dew.strip():
            known.append((moment.astimezone(timezone.utc), t, saturation(scale(float(dew)))))
        elif wet.strip():
            known.append((moment.astimezone(timezone.utc), t, float(wet) / 100 * saturation(t)))
    if "replay_in_year" in rows:
        years = rows["replay_in_year"] - known[0][0].year
        known = replayed(known, years)
    return [(minutes_of(m), t, e) for m, t, e in known]


def replayed(known, years):
    """All moved by whole years; a 29 February that only the later year has repeats the 28th."""
    moved = []
    for moment, t, e in known:
        leap = (moment.month, moment.day) == (2, 29)
        if leap and not calendar.isleap(moment.year + years):
            continue
        moved.append((moment.replace(year=moment.year + years), t, e))
    for year in {moment.year for moment, _, _ in moved if calendar.isleap(moment.year)}:
        february = [row for row in moved if row[0].year == year and row[0].month == 2]
        if any(row[0].day == 29 for row in february) or not any(row[0] > datetime(year, 3, 1, tzinfo=timezone.utc)
                                                                 for row in moved):
            continue
        moved += [(m + timedelta(days=1), t, e) for m, t, e in february if m.day == 28]
    return sorted(moved)


def rows_of_epw(folder, epw):
    lines = (folder / epw["file"]).read_text().splitlines()
    offset = round(float(lines[0].split(",")[8]) * 60)
    hours = []
    for line in lines[8:]:
        fields = line.split(",")
        hours.append((int(fields[1]), int(fields[2]), int(fields[3]), float(fields[6]), float(fields[7]),
                      float(fields[8])))
    known, year, last = [], epw["replay_in_year"], None
    for month, day, hour, t, dew, wet in hours:
        if last is not None and (month, day) < last:
            year += 1
        last = (month, day)
        if t == 99.9 or (dew == 99.9 and wet == 999):
            continue
        at = minutes_of(datetime(year, month, day, tzinfo=timezone.utc)) + hour * 60 - offset
        known.append((at, t, saturation(dew) if dew != 99.9 else wet / 100 * saturation(t)))
    return known


def standard_offset(clock, year):
    """Ahead of UTC in winter: the smaller of January's and July's."""
    return min(clock.offset(minutes_of(datetime(year, month, 1, tzinfo=timezone.utc))) for month in (1, 7))


def hours_of_day(begins, low, high, pressure, first):
    for hour in range(0 if first else 1, 25):
        t = high - BELOW_HIGH[(hour - 1) % 24] * (high - low)
        yield begins + hour * 60, t, min(pressure, saturation(t))


def low_high(given):
    low, high = celsius(given, "low"), celsius(given, "high")
    return low, high, vapour(given, high - (high - low) * sum(BELOW_HIGH) / 24)


def rows_of_days(days, clock):
    known = []
    for day in days["each"]:
        on = date.fromisoformat(day["on"])
        begins = minutes_of(datetime(on.year, on.month, on.day, tzinfo=timezone.utc))
        begins -= standard_offset(clock, on.year)
        known += hours_of_day(begins, *low_high(day), not known)
    return known


def serving(given, month):
    """The values of a month, or of the nearest one given; the earlier where two are as near."""
    return given[min(given, key=lambda m: (min((m - month) % 12, (month - m) % 12), (month - m) % 12 > 6))]


def rows_of_months(months, clock, begin, end):
    given = {MONTHS.index(month["month"]) + 1: low_high(month) for month in months["each"]}
    offset = standard_offset(clock, (EPOCH + timedelta(minutes=begin)).year)
    on = (EPOCH + timedelta(minutes=begin + offset)).date()
    known = []
    while True:
        begins = minutes_of(datetime(on.year, on.month, on.day, tzinfo=timezone.utc)) - offset
        if begins > end:
            return known
        middle = on.replace(day=15)
        step = -1 if on.day < 15 else 1
        other = (middle + timedelta(days=31 * step)).replace(day=15)
        share = (on - middle).days / (other - middle).days
        here, there = serving(given, on.month), serving(given, other.month)
        low, high, pressure = (a + (b - a) * share for a, b in zip(here, there))
        known += hours_of_day(begins, low, high, pressure, not known)
        on += timedelta(days=1)


def straight(known, at):
    """Between two rows; the ends go on level."""
    i = bisect_right(known, at, key=lambda row: row[0])
    if i == 0:
        return known[0][1:]
    if i == len(known):
        return known[-1][1:]
    a, b = known[i - 1], known[i]
    share = (at - a[0]) / (b[0] - a[0])
    return a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share


def go_on_with_mean_day(known, end):
    last, first = known[-1][0], known[0][0]
    day = []
    for hour in range(24):
        found = [straight(known, last - 1440 * (back + 1) + (hour + 1) * 60) for back in range(7)
                 if last - 1440 * (back + 1) + (hour + 1) * 60 >= first]
        day.append(tuple(sum(column) / len(found) for column in zip(*found)))
    hour = 0
    while known[-1][0] < end:
        known.append((last + (hour + 1) * 60, *day[hour % 24]))
        hour += 1


class AirOfJob:
    """Air from `begin` to `end`; `readings` are (minute, temperature, humidity in percent or None),
    `openings` (begin, end, how many times as fast the room then loses heat)."""

    def __init__(self, job, folder, clock, begin, end, readings=(), openings=()):
        air = job["air"]
        self.begin, self.end = begin, end
        known = self.outdoors(air, folder, clock)
        self.heated = "heating" in air.get("indoors", {})
        if "indoors" in air:
            known = self.room(known, air["indoors"], clock, openings)
        raster = range(begin, end + STEP, STEP)
        values = [straight(known, at) for at in raster]
        self.outside_at_begin = values[0][0]
        if readings:
            values = with_readings(known, raster, values, readings,
                                   air.get("indoors", {}).get("time_constant_h", 6) * 60)
        self.t, self.e = [v[0] for v in values], [v[1] for v in values]
        self.boards = self.t
        if "boards" in air:
            start = straight(self.known_outside, begin)[0] if air["boards"].get("from") == "outdoors" else self.t[0]
            self.boards = follow(self.t, start, 500 * 1600 * air["boards"]["thickness_mm"] / 1000 / 16 / 60)

    def outdoors(self, air, folder, clock):
        known = []
        sources = air["sources"] if "sources" in air else [air]
        for source in sources:
            after = known[-1][0] if known else None
            if "constant" in source:
                t = celsius(source["constant"], "temperature")
                e = source["constant"]["humidity_pct"] / 100 * saturation(t)
                more = [(self.begin if after is None else after + 60, t, e), (self.end, t, e)]
            elif "rows" in source:
                more = rows_of_csv(folder, source["rows"], clock)
            elif "epw" in source:
                more = rows_of_epw(folder, source["epw"])
            elif "days" in source:
                more = rows_of_days(source["days"], clock)
            else:
                more = rows_of_months(source["months"], clock,
                                      self.begin - 5 * 1440 if after is None else after, self.end + 1440)
            known += [row for row in more if after is None or row[0] > after]
        if known[-1][0] < self.end:
            go_on_with_mean_day(known, self.end)
        self.known_outside = known
        return known

    def room(self, known, indoors, clock, openings):
        """The room a minute at a time, by small straight steps."""
        tau = indoors.get("time_constant_h", 6) * 60
        heating = indoors.get("heating")
        power = loss = target = 0.0
        hours = []
        if heating:
            target = celsius(heating, "to")
            power = heating.get("heater_kw", 3) * 1000
            loss = heating.get("loss_w_per_k", 150)
            hours = [tuple(clock_minutes(c) for c in each.split("-")) for each in heating["hours"]]
        begin, end = known[0][0], known[-1][0]
        first_day = [straight(known, at)[0] for at in range(begin, min(begin + 1440, end) + 1, 10)]
        t = sum(first_day) / len(first_day)
        ceiling = indoors.get("humidity_ceiling_pct")
        inside, row = [], 1
        shares = {}
        for at in range(begin, end + 1):
            while row + 1 < len(known) and known[row][0] < at:
                row += 1
            (a, ta, ea), (b, tb, eb) = known[row - 1], known[row]
            part = min(1.0, (at - a) / (b - a))
            out, e = ta + (tb - ta) * part, ea + (eb - ea) * part
            if (at - begin) % STEP == 0:
                times = max([x for a_, b_, x in openings if a_ <= at < b_], default=1)
                share = shares.setdefault(times, 1 - math.exp(-times / tau))
                most = saturation(t) * (ceiling / 100 if ceiling and times == 1 else 1)
                inside.append((at, t, min(e, most)))
            free = t + (out - t) * share
            if heating and free < target:
                minute = clock.local(at)[1]
                if any(x <= minute < y for x, y in hours):
                    free = min(target, t + (out + power / (loss * times) - t) * share)
            t = free
        if inside[-1][0] < end:
            inside.append((end, t, min(e, saturation(t))))
        return inside

    def at(self, values, minute):
        place, rest = divmod(minute - self.begin, STEP)
        if place < 0:
            return values[0]
        if place + 1 >= len(values):
            return values[-1]
        return values[place] + (values[place + 1] - values[place]) * rest / STEP


def follow(values, start, tau):
    """What is behind `values` by the time constant `tau`, in minutes."""
    found = [start]
    small = 10
    share = 1 - math.exp(-STEP / small / tau)
    for a, b in zip(values, values[1:]):
        t = found[-1]
        for i in range(small):
            t += (a + (b - a) * (i + 0.5) / small - t) * share
        found.append(t)
    return found


def with_readings(known, raster, values, readings, tau):
    """Each reading moves the account by its difference, which the room forgets with its time constant, both
    before the reading and after it; between two of them the mean of what is forgotten both ways. A reading
    from before the plan is compared with the account of its own hour."""
    warm, damp = {}, {}
    for at, t, humidity in readings:
        if at <= raster[-1]:
            here = straight(known, at)
            warm[at] = t - here[0]
            damp.pop(at, None)
            if humidity is not None:
                damp[at] = humidity / 100 * saturation(t) - here[1]

    def moved(known, at):
        times = sorted(known)
        i = bisect_right(times, at)
        before, after = (times[i - 1] if i else None), (times[i] if i < len(times) else None)
        if before is not None and after is not None:
            whole = math.sinh((after - before) / tau) if after - before < 300 * tau else math.inf
            if whole < math.inf:
                return (known[before] * math.sinh((after - at) / tau)
                        + known[after] * math.sinh((at - before) / tau)) / whole
        return sum(known[x] * math.exp(-abs(at - x) / tau) for x in (before, after) if x is not None)

    result = []
    for at, (t, e) in zip(raster, values):
        t2 = t + moved(warm, at)
        result.append((t2, min(max(0.0, e + moved(damp, at)), saturation(t2))))
    return result
