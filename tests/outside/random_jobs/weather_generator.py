"""Weather generator: the air of random jobs, of every kind that a job can give, with the files it names."""
import math
from datetime import datetime, timedelta, timezone

from .air_of_job import MONTHS, standard_offset
from .local_time import EPOCH, minutes_of


class Weather:
    """A season with its daily swing and damp, from which rows, days and months are drawn."""

    def __init__(self, rng):
        self.rng = rng
        kind = rng.choices(["mild", "cold", "hot", "damp", "dry", "freezing"], [5, 2, 1, 1, 1, 0.5])[0]
        self.kind = kind
        self.mean = {"mild": rng.uniform(16, 23), "cold": rng.uniform(7, 14), "hot": rng.uniform(24, 31),
                     "damp": rng.uniform(14, 24), "dry": rng.uniform(14, 26), "freezing": rng.uniform(-6, 4)}[kind]
        self.swing = rng.uniform(0.5, 7)
        self.humidity = {"damp": rng.uniform(70, 92), "dry": rng.uniform(12, 35)}.get(kind, rng.uniform(35, 65))
        self.phases = [rng.uniform(0, 6.28) for _ in range(3)]

    def at(self, minute):
        """Temperature and humidity in percent; the warmest hour is about 14 of UTC, which serves."""
        day = minute / 1440
        drift = 2.5 * math.sin(day * 1.1 + self.phases[0]) + 1.5 * math.sin(day * 0.37 + self.phases[1])
        t = self.mean + drift + self.swing * math.cos((day - 14 / 24) * 2 * math.pi)
        humidity = self.humidity - 2.0 * (t - self.mean) + 6 * math.sin(day * 0.7 + self.phases[2])
        return round(t, 1), round(min(99, max(5, humidity)), 1)

    def dew_point(self, t, humidity):
        """By Magnus' formula: good enough to make up a dew point."""
        x = math.log(humidity / 100) + 17.625 * t / (243.04 + t)
        return round(243.04 * x / (17.625 - x), 1)


def utc_text(minute):
    return (EPOCH + timedelta(minutes=minute)).strftime("%Y-%m-%dT%H:%M:%SZ")


def write_rows(rng, folder, weather, begin, end, name, tags):
    begin -= begin % 60
    fahrenheit, step = rng.random() < 0.3, rng.choice([60, 60, 60, 30, 120])
    year = (EPOCH + timedelta(minutes=begin)).year
    # Rows of earlier years are replayed; where those lack a leap day, it is repeated.
    shift = rng.choice([1, 2, 7]) if rng.random() < 0.25 else 0
    lines = ["time,temp,dew,rh"]
    for minute in range(begin, end + 1, step):
        if minute not in (begin, end) and step == 60 and rng.random() < 0.02:
            tags.add("air gap bridged")
            continue
        t, humidity = weather.at(minute)
        dew = weather.dew_point(t, humidity)
        moment = EPOCH + timedelta(minutes=minute)
        if shift:
            try:
                moment = moment.replace(year=moment.year - shift)
            except ValueError:  # 29 February
                continue
        shown = (lambda x: round(x * 1.8 + 32, 2)) if fahrenheit else (lambda x: x)
        cells = rng.choice([[shown(dew), ""], ["", humidity], [shown(dew), humidity]])
        lines.append(",".join(str(c) for c in [moment.strftime("%Y-%m-%dT%H:%M:%SZ"), shown(t), *cells]))
    (folder / name).write_text("\n".join(lines) + "\n")
    rows = {"file": name, "time_column": "time", "time_is": "utc", "temperature_column": "temp",
            "temperature_unit": "F" if fahrenheit else "C", "dew_point_column": "dew", "humidity_column": "rh",
            "origin": "invented weather"}
    if shift:
        tags.add("air replayed")
        rows["replay_in_year"] = year
    return rows


def write_epw(rng, folder, weather, begin, end, name):
    offset = rng.choice([-5, 1, 0, 5.5, 9.5])
    lines = [f"LOCATION,nowhere,-,-,invented,0,40,-73,{offset},4", "DESIGN CONDITIONS,0",
             "TYPICAL/EXTREME PERIODS,0", "GROUND TEMPERATURES,0", "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
             "COMMENTS 1,invented", "COMMENTS 2,invented", "DATA PERIODS,1,1,Data,Sunday,1/1,12/31"]
    local = EPOCH + timedelta(minutes=begin + int(offset * 60))
    at = datetime(local.year, local.month, local.day, tzinfo=timezone.utc)
    last = EPOCH + timedelta(minutes=end)
    while at <= last:
        for hour in range(1, 25):
            if (at.month, at.day) == (2, 29):
                break
            t, humidity = weather.at(minutes_of(at) + hour * 60 - int(offset * 60))
            dew = weather.dew_point(t, humidity)
            fields = [at.year, at.month, at.day, hour, 0, "?", t, dew, humidity] + ["9999"] * 26
            lines.append(",".join(str(f) for f in fields))
        at += timedelta(days=1)
    (folder / name).write_text("\n".join(lines) + "\n")
    return {"file": name, "origin": "invented weather", "replay_in_year": local.year}


def days_of(rng, weather, on, count):
    each = []
    for _ in range(count):
        low, high = round(weather.mean - weather.swing + rng.uniform(-2, 2), 1), 0
        high = round(low + 2 * weather.swing + rng.uniform(0, 2), 1)
        day = {"on": on.isoformat(), "low_c": low, "high_c": high}
        if rng.random() < 0.5:
            day["humidity_pct"] = round(min(99, max(8, weather.humidity + rng.uniform(-8, 8))), 1)
        else:
            day["dew_point_c"] = round(weather.dew_point((low + high) / 2, weather.humidity), 1)
        each.append(day)
        on += timedelta(days=1)
    return {"origin": "invented days", "each": each}


def months_of(rng, weather):
    each = []
    for i, month in enumerate(MONTHS):
        mean = weather.mean + 4 * math.cos((i - 6) / 12 * 6.283 + weather.phases[0])
        entry = {"month": month, "low_f": round((mean - weather.swing) * 1.8 + 32, 1),
                 "high_f": round((mean + weather.swing) * 1.8 + 32, 1)}
        if rng.random() < 0.5:
            entry["humidity_pct"] = round(min(95, max(10, weather.humidity)), 1)
        else:
            entry["dew_point_c"] = round(weather.dew_point(mean, weather.humidity), 1)
        each.append(entry)
    if rng.random() < 0.3:
        each = sorted(rng.sample(each, rng.randint(1, 6)), key=lambda entry: MONTHS.index(entry["month"]))
    return {"origin": "invented normals", "each": each}


def constant_of(rng, weather):
    if rng.random() < 0.3:
        return {"temperature_f": round(weather.mean * 1.8 + 32, 1), "humidity_pct": round(weather.humidity, 1)}
    return {"temperature_c": round(weather.mean, 1), "humidity_pct": round(weather.humidity, 1)}


def air_of(rng, folder, clock, now, horizon_days, tags):
    """The `air` of a job that starts at `now`, and the minute up to which its rows reach."""
    weather = Weather(rng)
    tags.add("weather " + weather.kind)
    kind = rng.choice(["constant", "rows", "rows", "epw", "days", "months", "mix", "mix"])
    tags.add("air " + kind)
    begin = now - rng.choice([1440 * 8, 1440 * 3, 1440 * 2])
    end = now + 1440 * rng.choice([horizon_days + 1, max(6, horizon_days // 2), 6])
    year_begins = minutes_of(datetime((EPOCH + timedelta(minutes=now)).year, 1, 1, tzinfo=timezone.utc))
    year_ends = minutes_of(datetime((EPOCH + timedelta(minutes=now)).year, 12, 30, tzinfo=timezone.utc))
    first_day = (EPOCH + timedelta(minutes=now + standard_offset(clock, clock.date(now).year))).date()
    if kind == "constant":
        air, end = {"constant": constant_of(rng, weather)}, now + 1440 * 400
    elif kind == "rows":
        air = {"rows": write_rows(rng, folder, weather, begin, end, "hours.csv", tags)}
    elif kind == "epw":
        if begin < year_begins + 2880 or now + 1440 * 3 > year_ends:
            begin = now - 2880
        begin, end = max(begin, year_begins), min(end, year_ends)
        air = {"sources": [{"epw": write_epw(rng, folder, weather, begin, end, "year.epw")}]}
    elif kind == "days":
        count = rng.randint(8, 14)
        end = now + 1440 * (count - 4)
        air = {"sources": [{"days": days_of(rng, weather, first_day - timedelta(days=2), count)}]}
    elif kind == "months":
        air, end = {"sources": [{"months": months_of(rng, weather)}]}, now + 1440 * 400
    else:
        end = now + 1440 * 2
        sources = [{"name": "logger", "rows": write_rows(rng, folder, weather, begin, now + 1440 * 2,
                                                         "hours.csv", tags)}]
        if rng.random() < 0.6:
            end = now + 1440 * 4
            sources.append({"days": days_of(rng, weather, first_day - timedelta(days=1), 6)})
        last = rng.choice(["months", "constant", "none"])
        if last != "none":
            end = now + 1440 * 400
            sources.append({last: months_of(rng, weather) if last == "months" else constant_of(rng, weather)})
        air = {"sources": sources}
    if rng.random() < 0.35:
        air["indoors"] = indoors_of(rng, tags)
    if rng.random() < 0.2:
        tags.add("boards")
        air["boards"] = {"thickness_mm": rng.choice([12, 20, 45]), "from": rng.choice(["room", "outdoors"])}
    return air, end


def indoors_of(rng, tags):
    tags.add("indoors")
    indoors = {}
    if rng.random() < 0.6:
        indoors["time_constant_h"] = rng.choice([1.5, 6, 20])
    if rng.random() < 0.6:
        tags.add("heating")
        heating = {"hours": rng.choice([["17:00-22:00"], ["00:00-24:00"], ["06:00-09:00", "16:30-23:00"]])}
        heating.update(rng.choice([{"to_c": 20}, {"to_f": 66}, {"to_c": 18.5}]))
        if rng.random() < 0.5:
            heating.update({"loss_w_per_k": rng.choice([80, 250]), "heater_kw": rng.choice([2, 6])})
        indoors["heating"] = heating
    if rng.random() < 0.2:
        indoors["humidity_ceiling_pct"] = 60
    return indoors

