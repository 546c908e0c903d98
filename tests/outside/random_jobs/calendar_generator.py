"""Calendar generator: working hours, days off, quiet hours, people and their exported appointments."""
from datetime import timedelta

from .local_time import DAYS

WEEKS = {
    "evenings": {day: ["18:30-21:30"] for day in DAYS[:5]} | {"sat": ["09:00-12:00", "13:00-18:00"]},
    "shop": {day: ["08:00-12:00", "13:00-17:00"] for day in DAYS[:5]},
    "all week": {day: ["07:00-22:00"] for day in DAYS},
    "nights": {day: ["22:00-24:00", "00:00-04:30"] for day in DAYS},
    "scattered": {"mon": ["06:15-07:45"], "wed": ["19:07-22:53"], "sat": ["10:00-18:00"], "sun": ["01:00-05:00", "14:00-17:20"]},
}
QUIET = [["20:00-08:00"], ["12:00-14:00"], ["22:00-07:00", "12:00-13:00"], ["00:00-09:30"]]


def appointments(rng, first_day, zone, count, tags):
    """An exported calendar: events of days and hours, repeating, free and cancelled ones."""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//invented//random jobs//EN"]
    for number in range(count):
        on = first_day + timedelta(days=rng.randint(-5, 20))
        hour = rng.randint(7, 20)
        lines += ["BEGIN:VEVENT", f"UID:{number}@random-jobs", "DTSTAMP:20270101T000000Z", f"SUMMARY:appointment {number}"]
        way = rng.choice(["day", "utc", "zone", "floating"])
        tags.add("busy " + way)
        if way == "day":
            lines += [f"DTSTART;VALUE=DATE:{on:%Y%m%d}", f"DTEND;VALUE=DATE:{on + timedelta(days=rng.randint(1, 2)):%Y%m%d}"]
        elif way == "utc":
            lines += [f"DTSTART:{on:%Y%m%d}T{hour:02}3000Z", "DURATION:PT2H30M"]
        elif way == "zone":
            lines += [f"DTSTART;TZID={zone}:{on:%Y%m%d}T{hour:02}1500", f"DTEND;TZID={zone}:{on:%Y%m%d}T{hour + 2:02}0000"]
        else:
            lines += [f"DTSTART:{on:%Y%m%d}T{hour:02}0000", f"DTEND:{on:%Y%m%d}T{hour + 1:02}4500"]
        if rng.random() < 0.5:
            tags.add("busy repeats")
            rule = rng.choice(["FREQ=WEEKLY;COUNT=5", "FREQ=DAILY;INTERVAL=3;COUNT=6", "FREQ=WEEKLY;BYDAY=TU,SA;COUNT=8",
                               "FREQ=WEEKLY;INTERVAL=2"])
            if "BYDAY" in rule:
                rule = rule.replace("TU,SA", DAYS[on.weekday()][:2].upper() + ",SA")
            lines.append("RRULE:" + rule)
        if rng.random() < 0.15:
            tags.add("busy free or cancelled")
            lines.append(rng.choice(["TRANSP:TRANSPARENT", "STATUS:CANCELLED"]))
        lines.append("END:VEVENT")
    return "\r\n".join(lines + ["END:VCALENDAR", ""])


def calendar_of(rng, folder, first_day, zone, tags):
    name = rng.choices(list(WEEKS), [4, 3, 3, 1, 1])[0]
    tags.add("week " + name)
    calendar = {"weekly": dict(WEEKS[name])}
    if rng.random() < 0.4:
        tags.add("days off")
        calendar["days_off"] = [(first_day + timedelta(days=rng.randint(0, 9))).isoformat() for _ in range(2)]
    if rng.random() < 0.3:
        tags.add("added hours")
        calendar["added"] = [{"on": (first_day + timedelta(days=rng.randint(0, 9))).isoformat(), "hours": ["05:00-06:30"]}]
    if rng.random() < 0.5:
        tags.add("quiet hours")
        calendar["no_power_sanding"] = rng.choice(QUIET)
    if rng.random() < 0.3:
        tags.add("busy calendar")
        (folder / "shop.ics").write_text(appointments(rng, first_day, zone, rng.randint(1, 5), tags), newline="")
        calendar["busy_files"] = ["shop.ics"]
    if rng.random() < 0.3:
        calendar["late_after"] = rng.choice(["19:00", "20:30"])
    return calendar


def people_of(rng, folder, first_day, zone, tags):
    count = rng.choices([0, 1, 2, 3], [6, 1, 2.5, 1])[0]
    if count:
        tags.add(f"people {count}")
    people = []
    for name in ["Ada", "Bo", "Cleo"][:count]:
        person = {"name": name}
        if rng.random() < 0.6:
            person["weekly"] = dict(WEEKS[rng.choice(list(WEEKS))])
        if rng.random() < 0.3:
            person["days_off"] = [(first_day + timedelta(days=rng.randint(0, 6))).isoformat()]
        if rng.random() < 0.3:
            tags.add("busy person")
            file = name.lower() + ".ics"
            (folder / file).write_text(appointments(rng, first_day, zone, 3, tags), newline="")
            person["busy_files"] = [file]
        people.append(person)
    return people
