"""Work hours: the minutes at which each person is there, and at which the sander must be quiet.

Reads the calendar of the job and the appointments that it names (RFC 5545, as far as the generator
writes them), minute by minute.
"""
import re
from datetime import date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

from .local_time import DAYS, clock_minutes, minutes_of, utc, window


def property_lines(text):
    return re.sub(r"\r?\n[ \t]", "", text).splitlines()


def moment_of(name, text, home):
    """Minutes of a date or time, and whether it is a date."""
    if re.fullmatch(r"\d{8}", text):
        on = datetime.strptime(text, "%Y%m%d")
        return on, home, True
    zone = re.search(r"TZID=([^;:]+)", name)
    if text.endswith("Z"):
        return datetime.strptime(text, "%Y%m%dT%H%M%SZ"), timezone.utc, False
    return datetime.strptime(text, "%Y%m%dT%H%M%S"), ZoneInfo(zone.group(1)) if zone else home, False


def absolute(local, zone):
    return minutes_of(local.replace(tzinfo=zone).astimezone(timezone.utc))


def instances(rule, first, until_limit):
    """Local begins by DAILY or WEEKLY with INTERVAL, COUNT, UNTIL and BYDAY."""
    parts = dict(part.split("=") for part in rule.split(";"))
    every, count = int(parts.get("INTERVAL", 1)), int(parts.get("COUNT", 10 ** 6))
    until = parts.get("UNTIL")
    days = [["MO", "TU", "WE", "TH", "FR", "SA", "SU"].index(d) for d in parts.get("BYDAY", "").split(",") if d]
    monday = first - timedelta(days=first.weekday())
    at, found = first, 0
    while at < until_limit and found < count:
        if parts["FREQ"] == "WEEKLY":
            fits = ((at - monday).days // 7) % every == 0 and at.weekday() in (days or [first.weekday()])
        else:
            fits = (at - first).days % every == 0 and (not days or at.weekday() in days)
        if fits:
            if until and at.strftime("%Y%m%d") > until[:8]:
                return
            found += 1
            yield at
        at += timedelta(days=1)


def busy_stretches(path, clock, end):
    stretches, event = [], None
    for line in property_lines(path.read_text(encoding="utf-8")):
        name, _, text = line.partition(":")
        word = name.split(";")[0]
        if line == "BEGIN:VEVENT":
            event = {"EXDATE": []}
        elif line == "END:VEVENT":
            if event.get("STATUS") != "CANCELLED" and event.get("TRANSP") != "TRANSPARENT":
                stretches += stretches_of(event, clock, end)
            event = None
        elif event is not None:
            if word == "EXDATE":
                event["EXDATE"].append((name, text))
            else:
                event[word] = text
                event[word + " name"] = name
    return stretches


def stretches_of(event, clock, end):
    begin, zone, all_day = moment_of(event["DTSTART name"], event["DTSTART"], clock.zone)
    length = None
    if "DURATION" in event:
        hours, minutes = re.fullmatch(r"PT(?:(\d+)H)?(?:(\d+)M)?", event["DURATION"]).groups()
        length = timedelta(hours=int(hours or 0), minutes=int(minutes or 0))
    last = moment_of(event.get("DTEND name", ""), event["DTEND"], clock.zone) if "DTEND" in event else None
    limit = datetime(1970, 1, 1) + timedelta(minutes=end, days=2)
    starts = list(instances(event["RRULE"], begin, limit)) if "RRULE" in event else [begin]
    without = {moment_of(name, text, clock.zone)[0] for name, text in event["EXDATE"]}
    for start in starts:
        if start in without:
            continue
        if all_day:
            days = (last[0] - begin).days if last else 1
            yield absolute(start, zone), absolute(start + timedelta(days=days), zone)
        elif length is not None:
            yield absolute(start, zone), absolute(start, zone) + int(length.total_seconds() // 60)
        else:
            real = absolute(last[0], last[1]) - absolute(begin, zone)
            yield absolute(start, zone), absolute(start, zone) + real


class WorkHours:
    def __init__(self, job, folder, clock, begin, end, log=()):
        self.begin, self.end = begin, end
        self.told = [line for line in log if line["kind"] in ("away", "free")]
        calendar = job["calendar"]
        self.names = [person["name"] for person in job.get("people", [])] or [None]
        self.there = {}
        for person in job.get("people", []) or [{"name": None}]:
            own = {} if person["name"] is None else person
            self.there[person["name"]] = self.minutes_of_person(calendar, own, folder, clock)
        self.quiet = bytearray(end - begin + 1)
        quiet = self.quiet_minutes(calendar.get("no_power_sanding", []))
        for minute in range(begin, end + 1):
            self.quiet[minute - begin] = quiet[clock.local(minute)[1]]

    @staticmethod
    def quiet_minutes(windows):
        quiet = bytearray(1440)
        for each in windows:
            a, b = window(each)
            spans = [(a, b)] if a < b else [(a, 1440), (0, b)]
            for x, y in spans:
                for minute in range(x, y):
                    quiet[minute] = 1
        return quiet

    def minutes_of_person(self, calendar, own, folder, clock):
        weekly = own.get("weekly", calendar.get("weekly", {}))
        off = {date.fromisoformat(d) for d in calendar.get("days_off", []) + own.get("days_off", [])}
        added = calendar.get("added", []) + own.get("added", [])
        by_day = {}

        def open_minutes(day):
            if day not in by_day:
                on = date(1970, 1, 1) + timedelta(days=day)
                hours = [] if on in off else list(weekly.get(DAYS[on.weekday()], []))
                for extra in added:
                    if date.fromisoformat(extra["on"]) == on:
                        hours += extra["hours"]
                minutes = bytearray(1440)
                for each in hours:
                    a, b = (clock_minutes(c) for c in each.split("-"))
                    minutes[a:b] = b"\1" * (b - a)
                by_day[day] = minutes
            return by_day[day]

        there = bytearray(self.end - self.begin + 1)
        for minute in range(self.begin, self.end + 1):
            day, of_day = clock.local(minute)
            there[minute - self.begin] = open_minutes(day)[of_day]
        for name in calendar.get("busy_files", []) + own.get("busy_files", []):
            for a, b in busy_stretches(folder / name, clock, self.end):
                a, b = max(a, self.begin), min(b, self.end + 1)
                if a < b:
                    there[a - self.begin:b - self.begin] = bytes(b - a)
        for line in self.told:
            if line.get("person") in (None, own.get("name")):
                a, b = max(utc(line["from"]), self.begin), min(utc(line["until"]), self.end + 1)
                if a < b:
                    there[a - self.begin:b - self.begin] = bytes([line["kind"] == "free"]) * (b - a)
        return there

    def is_there(self, person, begin, end):
        """All through the half-open stretch; outside the plan nobody is."""
        if begin < self.begin or end > self.end + 1:
            return False
        return all(self.there[person][begin - self.begin:end - self.begin])

    def anybody(self, begin, end):
        return all(any(there[m - self.begin] for there in self.there.values()) for m in range(begin, end))

    def same_all_through(self, begin, end):
        """Those who are there at its begin are there to its end, and nobody else comes."""
        for there in self.there.values():
            part = there[begin - self.begin:end - self.begin]
            if len(set(part)) > 1:
                return False
        return self.anybody(begin, begin + 1)

    def is_quiet(self, begin, end):
        return any(self.quiet[begin - self.begin:end - self.begin])
