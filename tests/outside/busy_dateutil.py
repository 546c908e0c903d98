#!/usr/bin/env python3
"""Busy times of random calendars, read here and by python3-icalendar with python3-dateutil.

    busy_dateutil.py BUSY_CASES [COUNT]

writes COUNT (1200) random calendars into a temporary folder: zones, all-day and floating events, rules by
day, week, month and year, some counted from long ago, exceptions, moved and cancelled instances, free events, nights when clocks
change. BUSY_CASES (build/release/tests/busy_cases) prints its busy stretches; the same are worked out here by
the two libraries, and must agree to the minute. The seed is fixed.
"""
import pathlib
import random
import subprocess
import sys
import tempfile
from datetime import date, datetime, time, timedelta, timezone
from zoneinfo import ZoneInfo

import icalendar
from dateutil.rrule import rrulestr

HOME = "Europe/Berlin"
ZONES = ["Europe/Berlin", "America/New_York", "Asia/Tokyo", "Australia/Lord_Howe", "UTC", None]
BEGIN = datetime(2027, 2, 1, tzinfo=timezone.utc)
END = datetime(2027, 12, 1, tzinfo=timezone.utc)
DAYS = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"]


def random_rule(rng, start, all_day):
    freq = rng.choice(["DAILY", "WEEKLY", "MONTHLY", "YEARLY"])
    parts = ["FREQ=" + freq]
    if rng.random() < 0.5:
        parts.append("INTERVAL=%d" % rng.randint(1, 5))
    if freq == "DAILY" and rng.random() < 0.3:
        parts.append("BYDAY=" + ",".join(rng.sample(DAYS, 3)))
    if freq == "WEEKLY" and rng.random() < 0.7:
        parts.append("BYDAY=" + ",".join(rng.sample(DAYS, rng.randint(1, 4))))
        if rng.random() < 0.4:
            parts.append("WKST=" + rng.choice(["SU", "MO", "WE"]))
    if freq == "MONTHLY":
        kind = rng.randint(0, 4)
        if kind == 1:
            parts.append("BYDAY=%d%s" % (rng.choice([1, 2, 3, 4, 5, -1, -2]), rng.choice(DAYS)))
        if kind == 2:
            parts.append("BYMONTHDAY=" + ",".join(str(rng.choice([1, 5, 15, 29, 31, -1, -3])) for _ in range(2)))
        if kind == 3:
            parts.append("BYDAY=MO,TU,WE,TH,FR")
            parts.append("BYSETPOS=%d" % rng.choice([1, 2, -1, -2]))
        if kind == 4:
            parts.append("BYDAY=FR")
            parts.append("BYMONTHDAY=13")
    if freq == "YEARLY" and rng.random() < 0.6:
        parts.append("BYMONTH=%d" % rng.randint(1, 12))
        if rng.random() < 0.5:
            parts.append("BYDAY=%d%s" % (rng.choice([1, 2, -1]), rng.choice(DAYS)))
    if freq in ("DAILY", "WEEKLY") and rng.random() < 0.15:
        parts.append("BYMONTH=%d,%d" % (rng.randint(1, 6), rng.randint(7, 12)))
    end = rng.random()
    if end < 0.35:
        parts.append("COUNT=%d" % rng.randint(1, 60))
    elif end < 0.65:
        last = start + timedelta(days=rng.randint(1, 900))
        if all_day or rng.random() < 0.3:
            parts.append("UNTIL=" + last.strftime("%Y%m%d"))
        else:
            parts.append("UNTIL=" + last.strftime("%Y%m%dT%H%M00Z"))
    return ";".join(parts)


def counted_from_afar(rng):
    """A rule with a count from long ago that ends within the year that is looked at, and its begin."""
    start = datetime(rng.choice([1600, 1723, 1900, 1999]), rng.randint(1, 12), rng.randint(1, 28), rng.randint(0, 23))
    while True:
        rule = random_rule(rng, start, False)
        parts = [part for part in rule.split(";") if not part.startswith(("COUNT", "UNTIL"))]
        if parts[0] != "FREQ=DAILY" or start.year >= 1900:  # dateutil walks day by day
            break
    last = datetime(2027, rng.randint(2, 11), rng.randint(1, 28))
    given = 0
    for each in rrulestr(";".join(parts), dtstart=start, ignoretz=True):
        if each > last:
            break
        given += each != start
    return start, ";".join(parts + ["COUNT=%d" % (given + 1)])


def stamp(name, zone, at, all_day):
    if all_day:
        return "%s;VALUE=DATE:%s" % (name, at.strftime("%Y%m%d"))
    if zone == "UTC":
        return "%s:%s" % (name, at.strftime("%Y%m%dT%H%M00Z"))
    if zone is None:
        return "%s:%s" % (name, at.strftime("%Y%m%dT%H%M00"))
    return "%s;TZID=%s:%s" % (name, zone, at.strftime("%Y%m%dT%H%M00"))


def random_event(rng, number):
    """Lines of one event, and of the instances that were moved or cancelled."""
    all_day = rng.random() < 0.2
    zone = rng.choice(ZONES)
    start = datetime(rng.choice([2024, 2026, 2027, 2027, 2027]), rng.randint(1, 12), rng.randint(1, 28),
                     rng.randint(0, 23), rng.choice([0, 5, 30, 45]))
    if rng.random() < 0.2:  # about when clocks change
        start = rng.choice([datetime(2027, 3, 14), datetime(2027, 3, 28), datetime(2027, 10, 31),
                            datetime(2027, 11, 7)]) + timedelta(minutes=30 * rng.randint(0, 8))
    afar = not all_day and rng.random() < 0.06
    if afar:
        start, rule = counted_from_afar(rng)
    head = ["BEGIN:VEVENT", "UID:%d@example.org" % number, "DTSTAMP:20270101T000000Z"]
    tail = ["END:VEVENT"]
    if rng.random() < 0.1:
        tail.insert(0, "TRANSP:TRANSPARENT")
    if rng.random() < 0.1:
        tail.insert(0, "STATUS:" + rng.choice(["CANCELLED", "TENTATIVE"]))
    length = []
    if all_day:
        if rng.random() < 0.6:
            length = [stamp("DTEND", zone, start + timedelta(days=rng.randint(1, 3)), True)]
    elif rng.random() < 0.4:
        # No 24 h and more in hours: icalendar makes days of them, and a day may have 23 hours.
        length = ["DURATION:" + rng.choice(["PT45M", "PT1H30M", "P1DT2H", "P1W", "PT23H"])]
    elif rng.random() < 0.9:
        length = [stamp("DTEND", zone, start + timedelta(minutes=rng.randint(90, 1800)), False)]
    lines = head + [stamp("DTSTART", zone, start, all_day)] + length
    more = []
    if afar:
        lines.append("RRULE:" + rule)
    elif rng.random() < 0.8:
        rule = random_rule(rng, start, all_day)
        lines.append("RRULE:" + rule)
        # Exceptions and moved ones must be instances: they are taken from the rule.
        dates = list(naive_dates(rule, start, None if all_day else zone))[:80]
        rng.shuffle(dates)
        for at in dates[: rng.choice([0, 0, 1, 3])]:
            lines.append(stamp("EXDATE", zone, at, all_day))
        for at in dates[3:][: rng.choice([0, 0, 1, 2])]:
            moved = at + timedelta(days=rng.randint(-2, 2), minutes=0 if all_day else 75)
            more += head + [stamp("RECURRENCE-ID", zone, at, all_day), stamp("DTSTART", zone, moved, all_day)]
            more += length[:1] if length and length[0].startswith("DURATION") else []
            more += ["STATUS:CANCELLED"] if rng.random() < 0.3 else []
            more += ["END:VEVENT"]
    return (lines + tail + more) if rng.random() < 0.5 else (more + lines + tail)


def folded(lines, rng):
    out = []
    for line in lines:
        if len(line) > 30 and rng.random() < 0.2:
            out += [line[:25], " " + line[25:]]
        else:
            out.append(line)
    return "\r\n".join(out) + "\r\n"


def naive_dates(rule, start, zone):
    """Beginnings by the rule as local times; the event's own first, counted as one of COUNT."""
    parts = dict(part.split("=") for part in rule.split(";"))
    until = parts.pop("UNTIL", None)
    count = int(parts.pop("COUNT", 0))
    limit = datetime(2028, 1, 1)
    if until and until.endswith("Z"):
        at = datetime.strptime(until, "%Y%m%dT%H%M%SZ").replace(tzinfo=timezone.utc)
        local_zone = ZoneInfo(zone or HOME)
        after_until = lambda each: utc(each, local_zone) > at
    elif until:
        day = datetime.strptime(until, "%Y%m%d").date()
        after_until = lambda each: each.date() > day
    else:
        after_until = lambda each: False
    text = ";".join("%s=%s" % item for item in parts.items())
    yield start
    given = 1
    for each in rrulestr(text, dtstart=start, ignoretz=True):
        if each == start:
            continue
        if each > limit or after_until(each) or (count and given >= count):
            return
        given += 1
        yield each


def utc(naive, zone):
    """RFC 5545, 3.3.5: the first of two, and before the gap; as fold 0 has it."""
    return naive.replace(tzinfo=zone, fold=0).astimezone(timezone.utc)


def zone_of(value):
    zone = getattr(value, "tzinfo", None)
    if zone is None:
        return ZoneInfo(HOME)
    name = getattr(zone, "zone", None) or getattr(zone, "key", None) or str(zone)
    return ZoneInfo("UTC" if "UTC" in name.upper() else name)


def naive(value):
    if not isinstance(value, datetime):
        return datetime.combine(value, time())
    return value.replace(tzinfo=None)


def expected(text):
    calendar = icalendar.Calendar.from_ical(text)
    events = list(calendar.walk("VEVENT"))
    replaced = {}
    for event in events:
        if "RECURRENCE-ID" in event:
            replaced.setdefault(str(event["UID"]), set()).add(naive(event["RECURRENCE-ID"].dt))
    stretches = []
    for event in events:
        if event.get("STATUS") == "CANCELLED" or event.get("TRANSP") == "TRANSPARENT":
            continue
        begin = event["DTSTART"].dt
        all_day = not isinstance(begin, datetime)
        zone = zone_of(begin)
        start = naive(begin)
        left_out = set()
        if "RECURRENCE-ID" not in event:
            left_out |= replaced.get(str(event["UID"]), set())
        exceptions = event.get("EXDATE", [])
        for group in exceptions if isinstance(exceptions, list) else [exceptions]:
            left_out |= {naive(each.dt) for each in group.dts}
        starts = [start]
        if "RRULE" in event:
            rule = event["RRULE"].to_ical().decode()
            starts = naive_dates(rule, start, None if all_day else zone.key)
        for at in starts:
            if at in left_out:
                continue
            first = utc(at, zone)
            if "DURATION" in event:
                lasts = event["DURATION"].dt
                last = utc(at + timedelta(days=lasts.days), zone) + timedelta(seconds=lasts.seconds)
            elif all_day:
                days = (naive(event["DTEND"].dt) - start).days if "DTEND" in event else 1
                last = utc(at + timedelta(days=days), zone)
            elif "DTEND" in event:
                last = first + (utc(naive(event["DTEND"].dt), zone) - utc(start, zone))
            else:
                last = first
            first, last = max(first, BEGIN), min(last, END)
            if first < last:
                stretches.append((first, last))
    joined = []
    for first, last in sorted(stretches):
        if joined and first <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], last))
        else:
            joined.append((first, last))
    return " ".join("%s/%s" % (a.strftime("%Y-%m-%dT%H:%M:%SZ"), b.strftime("%Y-%m-%dT%H:%M:%SZ"))
                    for a, b in joined)


def main():
    program, count = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 1200
    rng = random.Random(20270405)
    texts = {}
    with tempfile.TemporaryDirectory() as folder:
        for number in range(count):
            lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//invented//EN"]
            for each in range(rng.randint(1, 3)):
                lines += random_event(rng, each)
            name = "%05d.ics" % number
            texts[name] = folded(lines + ["END:VCALENDAR"], rng)
            (pathlib.Path(folder) / name).write_bytes(texts[name].encode())
        out = subprocess.run([program, folder, "2027-02-01T00:00Z", "2027-12-01T00:00Z", HOME],
                             check=True, capture_output=True, text=True, timeout=300).stdout
    wrong = busy = 0
    for line in out.splitlines():
        name, _, found = line.partition(" ")
        wanted = expected(texts[name])
        busy += wanted.count("/")
        if found != wanted:
            wrong += 1
            if wrong <= 3:
                print("%s\n%s\nfound  %s\nwanted %s\n" % (name, texts[name], found, wanted))
    lines = len(out.splitlines())
    print("%d calendars, %d busy stretches, %d differ" % (lines, busy, wrong))
    return 0 if wrong == 0 and lines == count and busy > count else 1


sys.exit(main())
