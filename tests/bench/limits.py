#!/usr/bin/env python3
"""What a plan costs at the ends of the ranges in docs/file_formats.md, and at pairs that multiply.

    limits.py PROGRAM [WORDS]

makes a job for each case in a temporary folder (with WORDS only those whose name holds them), plans it, or
asks for tonight where the name begins so, and prints processor seconds, the most memory and the exit code. 0 and 3 are plans, 2 is a job that is refused,
with the first line of what is said. A last line tells how many cases took more than 3 s or 256 MB, or ended
otherwise. All jobs are invented.
"""
import json
import pathlib
import resource
import subprocess
import sys
import tempfile

MOST_SECONDS, MOST_MB = 3.0, 256
EVENING = ["18:30-21:30"]
DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
HEAD = "kind,part,quantity,batch,coat,length_mm,width_mm,thickness_mm\n"


def job(batches=1, coats=3, **more):
    made = {
        "tackfree_job": 1, "name": "limits", "zone": "Europe/Berlin", "now_at": "2027-04-05T17:45",
        "parts_file": "parts.csv",
        "coatings": [{"name": "varnish", "class": "oil_polyurethane"}],
        "systems": [{"name": "s", "steps": [{"coating": "varnish", "method": "brush", "coats": coats}]}],
        "batches": [{"name": "b%d" % i, "system": "s"} for i in range(batches)],
        "air": {"constant": {"temperature_c": 20, "humidity_pct": 50}},
        "calendar": {"weekly": {day: EVENING for day in DAYS}},
    }
    made.update(more)
    return made


def parts(batches=1, rows=1, quantity=1):
    return HEAD + "".join("board,p%d_%d,%d,b%d,all,600,300,20\n" % (b, r, quantity, b)
                          for b in range(batches) for r in range(rows))


def people(count):
    return [{"name": "P%d" % i, "weekly": {day: ["%02d:00-%02d:30" % (7 + i % 5, 12 + i)] for day in DAYS}}
            for i in range(count)]


def calendar(events):
    return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\n" + "".join(
        "BEGIN:VEVENT\r\n" + event + "END:VEVENT\r\n" for event in events) + "END:VCALENDAR\r\n"


def daily_stamps(count):
    from datetime import datetime, timedelta
    first = datetime(2027, 4, 5, 6)
    return [(first + timedelta(minutes=9 * i)).strftime("%Y%m%dT%H%M00Z") for i in range(count)]


def busy(text, **more):
    made = job(**more)
    made["calendar"]["busy_files"] = ["busy.ics"]
    return made, parts(more.get("batches", 1)), {"busy.ics": text}


def counted(count, rule="FREQ=DAILY;COUNT=999999999", length="PT1M"):
    return calendar("UID:c%d\r\nDTSTART:16000101T06%02d00Z\r\nDURATION:%s\r\nRRULE:%s\r\n" %
                    (i, i % 60, length, rule) for i in range(count))


def air_rows(count, minutes=60):
    from datetime import datetime, timedelta
    first = datetime(2027, 4, 1)
    return "t,c,rh\n" + "".join("%s,%d,50\n" % ((first + timedelta(minutes=minutes * i)).strftime("%Y-%m-%dT%H:%MZ"),
                                                15 + i % 9) for i in range(count))


def cases():
    stamps = daily_stamps(20_000)
    yield "as it stands", job(), parts(), {}
    yield "20000 RDATE and EXDATE", *busy(calendar(
        ["UID:a\r\nDTSTART:20270405T050000Z\r\nDURATION:PT1M\r\n" + "".join("RDATE:%s\r\n" % s for s in stamps) +
         "".join("EXDATE:%s\r\n" % s for s in stamps)]))
    yield "20000 entries of one UID", *busy(calendar(
        "UID:a\r\nDTSTART:%s\r\nDURATION:PT1M\r\n%s" % (s, "RECURRENCE-ID:%s\r\n" % s if i % 2 else "")
        for i, s in enumerate(stamps)))
    yield "2000 daily counts from 1600", *busy(counted(2_000))
    yield "2000 workday counts from 1600", *busy(counted(2_000, "FREQ=DAILY;INTERVAL=2;BYDAY=MO,TU,WE;COUNT=99999999"))
    yield "2000 yearly counts from 1600", *busy(counted(
        2_000, "FREQ=YEARLY;BYMONTHDAY=" + ",".join(str(d) for d in range(1, 32)) + ";COUNT=99999999"))
    yield "2000 of 100 years each", *busy(counted(2_000, length="P36525D"))
    yield "busy 16 MiB of short lines", *busy("BEGIN:VCALENDAR\r\n" + "A:b\n" * 4_000_000 + "END:VCALENDAR\r\n")
    yield "busy stretches all over", *busy(counted(1_000).replace("T06", "T06"), horizon_days=366)
    many = job(horizon_days=366, people=people(9))
    many["calendar"]["busy_files"] = ["busy.ics"]
    yield "9 people, 2000 rules, 366 days", many, parts(), {"busy.ics": counted(2_000)}
    minute_hours = {day: ["%02d:%02d-%02d:%02d" % (m // 60, m % 60, (m + 1) // 60, (m + 1) % 60)
                          for m in range(0, 1438, 2)] for day in DAYS}
    yield "hours of a minute each, 366 days", job(horizon_days=366, calendar={"weekly": minute_hours}), parts(), {}
    for days in (56, 120, 366):
        for crew in (0, 3, 9):
            for batches in (1, 4, 8):
                more = {"people": people(crew)} if crew else {}
                yield ("grid 1 min, %d days, %d people, %d batches" % (days, crew, batches),
                       job(batches, horizon_days=days, grid_min=1, **more), parts(batches), {})
    for batches in (20, 50, 100, 200, 400):
        yield "%d batches" % batches, job(batches, horizon_days=366), parts(batches), {}
        yield "%d batches, 9 people" % batches, job(batches, horizon_days=366, people=people(9)), parts(batches), {}
    yield "20 coats, 8 batches", job(8, 20, horizon_days=366), parts(8), {}
    yield "20 coats, 8 batches, 9 people", job(8, 20, horizon_days=366, people=people(9)), parts(8), {}
    yield "20 coats, 8 batches, grid 1", job(8, 20, horizon_days=366, grid_min=1), parts(8), {}
    steps = [{"name": "t%d" % i, "coating": "varnish", "method": "brush", "coats": 20} for i in range(20)]
    yield "20 steps of 20 coats", job(horizon_days=366, systems=[{"name": "s", "steps": steps}]), parts(), {}
    for rows in (1_000, 10_000, 100_000):
        yield "%d parts" % rows, job(), parts(rows=rows), {}
    yield "quantity 100000", job(), parts(quantity=100_000), {}
    for places in (10_000, 100, 1):
        made = job(rooms=[{"name": "r", "drying_places": places}])
        yield "quantity 100000 in %d places" % places, made, parts(quantity=100_000), {}
    for rows, minutes in ((8_760, 60), (100_000, 5), (1_000_000, 5)):
        rows_of = {"file": "air.csv", "time_column": "t", "time_is": "utc", "temperature_column": "c",
                   "temperature_unit": "C", "humidity_column": "rh", "origin": "invented"}
        yield ("%d rows of air" % rows, job(air={"rows": rows_of}, horizon_days=366), parts(),
               {"air.csv": air_rows(rows, minutes)})
    for lines in (10_000, 100_000, 500_000):
        yield ("log of %d lines" % lines, job(), parts(), {"job.log.jsonl": "".join(
            '{"id": %d, "written_at": "2027-04-05T10:00+02:00", "kind": "note", "note": "n"}\n' % (i + 1)
            for i in range(lines))})
    for hours in (0.05, 24, 1000):
        keys = ["dust_free_after_h", "touch_after_h", "handle_after_h", "recoat_after_h", "sand_after_h",
                "light_use_after_h"]
        slow = [{"name": "varnish", "class": "oil_polyurethane", "label": {key: hours for key in keys}}]
        for grid in (1, 5):
            yield ("all stages after %g h, grid %d" % (hours, grid),
                   job(4, horizon_days=366, grid_min=grid, coatings=slow), parts(4), {})
    for celsius in (8, 20):
        weekend = {"weekly": {"sun": ["06:00-22:00"]}}
        yield ("tonight at %d C, grid 1, 56 days" % celsius, job(
            2, grid_min=1, calendar=weekend, air={"constant": {"temperature_c": celsius, "humidity_pct": 50}},
            coatings=[{"name": "varnish", "class": "oil_polyurethane", "label": {"touch_after_h": 24}}]), parts(2), {})
    yield "note of 4 MiB", job(note="n" * (4 << 20)), parts(), {}
    yield "note of 60 MiB", job(note="n" * (60 << 20)), parts(), {}
    off = ["20%02d-%02d-%02d" % (y, m, d) for y in range(27, 37) for m in range(1, 13) for d in range(1, 29)] * 100
    shut = job()
    shut["calendar"]["days_off"] = off
    yield "%d days off" % len(off), shut, parts(), {}


def run(program, command, made, listed, files):
    with tempfile.TemporaryDirectory() as folder:
        base = pathlib.Path(folder)
        (base / "job.json").write_text(json.dumps(made))
        (base / "parts.csv").write_text(listed)
        for name, text in files.items():
            (base / name).write_text(text, newline="")
        timed = ["/usr/bin/time", "-f", "%U %S %M %x", "-o", str(base / "cost"), program, command,
                 "job.json"]
        done = subprocess.run(timed, cwd=base, capture_output=True, text=True,
                              preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (30, 30)))
        cost = (base / "cost").read_text().split("\n")[-2].split()
        said = done.stderr.strip().split("\n")[0] if done.returncode not in (0, 3) else ""
        return float(cost[0]) + float(cost[1]), int(cost[2]) / 1024, done.returncode, said


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    words = sys.argv[2] if len(sys.argv) > 2 else ""
    over = 0
    print("%-46s %8s %6s %4s" % ("case", "CPU s", "MB", "exit"))
    for name, made, listed, files in cases():
        if words not in name:
            continue
        seconds, memory, code, said = run(program, "tonight" if name.startswith("tonight") else "plan",
                                           made, listed, files)
        wrong = seconds > MOST_SECONDS or memory > MOST_MB or code not in (0, 2, 3)
        over += wrong
        print("%-46s %8.2f %6.0f %4d %s%s" % (name, seconds, memory, code, "OVER " if wrong else "", said[:200]),
              flush=True)
    print("%d cases over %g s or %d MB, or ended otherwise" % (over, MOST_SECONDS, MOST_MB))
    return 1 if over else 0


sys.exit(main())
