#!/usr/bin/env python3
"""Plans a job whose every text is hostile, and scans all that comes out of it.

Usage: scan_outputs.py TACKFREE WORK_FOLDER
Names, notes, paths, arguments, the log and a last plan hold control characters, markup, formulas,
line breaks and characters that turn the reading direction. What is printed by each command, the page,
tables, calendars and JSON are read back: nothing of that may be left that a terminal, a browser, a
spreadsheet or a calendar would obey. Prints one line for each check; exit 1 when one fails.
"""
import csv
import html.parser
import io
import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

# C0 but line ends, DEL, C1, and of Unicode: line and paragraph separator, marks, embeddings, overrides
# and isolates of direction (UAX #9), zero-width characters, byte-order mark, tags.
STEERING = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff"
                      "\U000e0000-\U000e0fff]")
# Without C0 and DEL, which a CSV file may not hold.
DIRECTION = "\u202eRLO\u2066LRI\u2069\u200fRLM\u061c\u2028LS\u2029PS\u0085NEL\u009b31mCSI"
CONTROL = "\x1b[2J\x1b]0;title\x07\x00\x08\x7f\tTAB\r\nLF"
MARKUP = "<script>alert(1)</script><img src=x onerror=alert(1)>\"' onmouseover=\"x\" &amp;]]>-->;,\\n"
FORMULAS = ["=1+1", "+1", "-1", "@SUM(1)", " =1+1", "\uff1d1", "\t=1", "\u200b=1"]
TAGS_OF_THE_PAGE = set("""html head meta title style body header main section nav h1 h2 h3 h4 p ul ol li
    a b em strong span bdi time details summary figure figcaption div table caption thead tbody tfoot tr th td
    label input svg g rect line path circle polyline polygon text tspan defs pattern desc footer br hr dl dt dd
    use clippath small abbr col colgroup i code""".split())
failed = False


def check(what, faults):
    global failed
    first = f" ({len(faults)}, first: {faults[0]!r})" if faults else ""
    print(f"{'FAILED' if faults else 'ok'}: {what}{first}")
    failed = failed or bool(faults)


def hostile(word, number, controls=True):
    """A text with all of it, that begins like a formula and still holds its own word."""
    return FORMULAS[number % len(FORMULAS)] + word + (CONTROL if controls else "") + DIRECTION + MARKUP


def steered(text):
    """What a terminal or a reader would obey, and lines that a text has forged."""
    found = [text[max(0, m.start() - 20):m.end() + 20] for m in STEERING.finditer(text)]
    return found + [line for line in text.split("\n") if line.startswith("FORGED")]


def argument(text):
    """The system's own limit: no argument holds a NUL byte."""
    return text.replace("\x00", "")


def hostile_job(folder):
    coating = argument(hostile("clear", 2))
    cells = dict(batch=hostile("tops", 0, False), other=hostile("seats", 3, False))
    # A parts list holds no line break that is no line end.
    head = "kind,part,quantity,length_mm,width_mm,thickness_mm,material,coat,batch,note\r\n"
    text = io.StringIO()
    rows = csv.writer(text)
    for number, batch in enumerate(cells.values()):
        rows.writerow(["board", hostile("part", number + 1, False) + "\r\nLF", 2, 900, 400, 20, "solid",
                       "all", batch, hostile("note", number, False)])
    parts = folder / "=parts<b>\"'&\x1b[31m\u202e\nFORGED.csv"
    parts.write_bytes((head + text.getvalue()).encode())
    hours = folder / "@hours<i>\x1b[32m\u2066.csv"
    rows = ["time,temp,rh"] + [f"2027-04-{day:02}T{hour:02}:00,20,50" for day in range(4, 20) for hour in range(24)]
    hours.write_text("\n".join(rows) + "\n")
    busy = folder / "-busy<u>\x1b]0;x\x07.ics"
    busy.write_text("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART:20270406T170000Z\r\n"
                    "DTEND:20270406T173000Z\r\nSUMMARY:<script>\x1b[2J\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n")
    steps = [dict(name=hostile("varnish", 1), coating=coating, method="brush", coats=2)]
    job = dict(
        tackfree_job=1, name=hostile("job", 0), note=hostile("remark", 1), zone="Europe/Berlin",
        now_at="2027-04-05T08:00", id="scan", parts_file=parts.name, log_file="=log<s>\x1b[33m\u202e\nFORGED.jsonl",
        coatings=[{"name": coating, "class": "oil_polyurethane", "label": {"spread_m2_per_l": 12},
                   "tins": [{"size": "1 L"}]}],
        systems=[dict(name=hostile("system", 3), steps=steps)],
        rooms=[dict(name=hostile("room", 1), drying_space_m2=0.8)],
        batches=[dict(name=name, system=hostile("system", 3), room=hostile("room", 1),
                      ready_by="2027-04-07") for name in cells.values()],
        room=dict(name=hostile("garage", 0), volume_m3=60, ignition_sources=[hostile("pilot", n) for n in range(4)]),
        air=dict(sources=[dict(name=hostile("logger", 2), rows=dict(
            file=hours.name, origin=hostile("origin", 1), time_column="time", time_is="local", temperature_column="temp",
            temperature_unit="C", humidity_column="rh"))]),
        calendar=dict(weekly={day: ["08:00-12:00", "13:00-20:00"] for day in ("mon", "tue", "wed", "thu", "fri")},
                      busy_files=[busy.name]),
        people=[dict(name=hostile("Ada", 0)), dict(name=argument(hostile("Bo", 3)))])
    path = folder / "=job<b>\x1b[34m\u202e\nFORGED.json"
    path.write_text(json.dumps(job), encoding="utf-8")
    return path, job


class Scan:
    def __init__(self, program, folder):
        self.program, self.folder, self.said, self.codes = program, folder, {}, {}

    def run(self, what, *arguments):
        done = subprocess.run([self.program, *map(str, arguments)], capture_output=True, check=False, timeout=300,
                              cwd=self.folder)
        self.said[what] = done.stdout, done.stderr
        self.codes[what] = done.returncode
        return done

    def plan(self, what, job, *more):
        at = self.folder / what
        name = json.loads(job.read_text(encoding="utf-8"))["people"][1]["name"]
        self.run(what + " of one", "plan", job, "--calendar", at.with_suffix(".own"), "--calendar-of=" + name,
                 "--keep", "no", *more)
        self.run(what, "plan", job, "--json", at.with_suffix(".plan"), "--calendar", at.with_suffix(".all"),
                 "--page", at.with_suffix(".html"), "--csv", self.folder / (what + ".csv"), *more)
        return at


def all_commands(scan, path, job):
    """Each command on the hostile job, and each way of being wrong."""
    arrow = "\x1b[2J\u202e\nFORGED<b>"
    batch = job["batches"][0]["name"]
    scan.run("check", "check", path)
    first = scan.plan("first", path)
    for command in ("tonight", "choices", "buy", "area"):
        scan.run(command, command, path)
    scan.run("drying", "drying", path, "--coating", job["coatings"][0]["name"])
    for what, kind in (("note", ["note", path, argument(hostile("noted", 0))]),
                       ("coat", ["done", path, "--batch", batch, "--note", argument(hostile("remark", 2)), "--at", "2027-04-05T07:00",
                                 "--from", "2027-04-05T06:00"]),
                       ("show", ["show", path])):
        scan.run("log " + what, "log", *kind)
    plan = json.loads(first.with_suffix(".plan").read_text(encoding="utf-8"))
    for number, event in enumerate(plan["calendar"]):
        event["uid"] = f"{number}\r\nATTENDEE:mailto:a@example.org\x1b\u202e;,\\"
        event["summary"] = hostile("gone", number)
        if number % 2:
            event["category"] = hostile("waiting", number)
    for step in plan["steps"]:
        step["title"] = hostile("title", 1)
    last = scan.folder / "last.json"
    last.write_text(json.dumps(plan), encoding="utf-8")
    scan.plan("second", path, "--last-plan", last)
    scan.run("tonight after", "tonight", path, "--last-plan", last, "--air-temp-c", "18", "--humidity-pct", "50")
    for option in ("--now", "--width", "--json", "--airing", "--last-plan", "--data"):
        scan.run("bad " + option, "plan", path, option, f"/none{arrow}/x" if option == "--json" else arrow)
    scan.run("bad argument", "plan", path, arrow)
    scan.run("bad command", arrow)
    scan.run("bad option", "plan", path, "--" + arrow)
    scan.run("bad kind", "log", arrow, path)
    scan.run("bad coating", "drying", path, "--coating", arrow)
    scan.run("bad batch", "log", "coat", path, "--batch", arrow)
    scan.run("no file", "check", scan.folder / arrow.replace("/", ""))
    wrong = dict(job, **{arrow: arrow, "zone": arrow, "units": arrow})
    bad = scan.folder / ("wrong" + arrow + ".json")
    bad.write_text(json.dumps(wrong), encoding="utf-8")
    scan.run("wrong job", "check", bad)
    bad.write_bytes(b"{ \x1b[2J \xff \xc2\x9b")
    scan.run("no JSON", "check", bad)
    scan.run("start", "start", scan.folder / ("new" + arrow))
    for option in ("--json", "--calendar", "--page"):
        scan.run("printed " + option, "plan", path, option, "-")


def terminal_faults(scan):
    for what, (out, err) in scan.said.items():
        if what.startswith("printed"):
            continue
        faults = []
        for octets in (out, err):
            try:
                faults += steered(octets.decode("utf-8"))
            except UnicodeDecodeError as fault:
                faults.append(str(fault))
        check(f"terminal, {what}: nothing steers it (exit {scan.codes[what]})", faults)
    bugs = [what for what, code in scan.codes.items() if code not in (0, 2, 3)]
    check("no command had a bug", bugs)
    check("the hostile job is planned", [what for what in ("check", "first", "second", "tonight", "area", "drying",
                                                           "log note", "log show", "start")
                                         if scan.codes[what] not in (0, 3)])
    check("wrong arguments are mistakes",
          [what for what, code in scan.codes.items() if what.startswith(("bad", "no ", "wrong")) and code != 2])


class PageReader(html.parser.HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.faults, self.text = [], []

    def handle_starttag(self, tag, attrs):
        if tag not in TAGS_OF_THE_PAGE:
            self.faults.append(f"<{tag}>")
        for name, value in attrs:
            if name.startswith("on") or re.search(r"[^a-z0-9:_-]", name) or "javascript:" in (value or ""):
                self.faults.append(f"<{tag} {name}={value!r}>")

    def handle_data(self, data):
        self.text.append(data)

    def handle_comment(self, data):
        self.faults.append("<!--" + data)


def page_faults(page):
    text = page.read_bytes().decode("utf-8")
    reader = PageReader()
    reader.feed(text)
    reader.close()
    check(f"{page.name}: no markup but its own", reader.faults)
    check(f"{page.name}: the texts are there as text",
          [] if "<script>alert(1)</script>" in "".join(reader.text) else ["no <script> among the texts"])
    check(f"{page.name}: no character that steers", steered(text))


def table_faults(folder):
    for path in sorted(folder.glob("*.csv")):
        text = path.read_bytes().decode("utf-8")
        lines = [line for line in text.split("\r\n") if re.search("[\r\n]", line)]
        check(f"{folder.name}/{path.name}: lines end in CRLF and nothing steers", lines + steered(text.replace("\r\n", "\n")))
        rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
        check(f"{folder.name}/{path.name}: no formula, and rows as wide as the head",
              [field for row in rows for field in row
               if re.match(r"\s*[=+\-@\uff1d\uff0b\uff0d\uff20]", field)] +
              [row for row in rows if len(row) != len(rows[0])])


def calendar_faults(path):
    octets = path.read_bytes()
    lines = octets.split(b"\r\n")
    check(f"{path.name}: lines of at most 75 octets, all ended by CRLF",
          [l for l in lines if len(l) > 75 or b"\r" in l or b"\n" in l] + ([] if lines[-1] == b"" else [lines[-1]]))
    check(f"{path.name}: each line is UTF-8 and steers nothing",
          [f for l in lines for f in steered(l.decode("utf-8", "strict"))])
    whole = octets.decode("utf-8").replace("\r\n ", "").split("\r\n")[:-1]
    names = {re.split("[:;]", line)[0] for line in whole}
    known = set("""BEGIN END VERSION PRODID CALSCALE X-WR-CALNAME UID DTSTAMP SEQUENCE DTSTART DTEND SUMMARY
        DESCRIPTION CATEGORIES TRANSP ACTION TRIGGER STATUS""".split())
    check(f"{path.name}: no property but its own", sorted(names - known))
    texts = [l.split(":", 1)[1] for l in whole if re.match("UID|SUMMARY|DESCRIPTION|CATEGORIES|X-WR", l)]
    check(f"{path.name}: texts are escaped", [t for t in texts if re.search(r"[;,]", re.sub(r"\\[\\;,n]", "", t))
                                              or "\\" in re.sub(r"\\[\\;,n]", "", t)])


def json_faults(name, octets, job):
    text = octets.decode("utf-8")
    check(f"{name}: no character that steers", steered(text))
    try:
        read = json.loads(text)
    except json.JSONDecodeError as fault:
        check(f"{name}: it is JSON", [str(fault)])
        return
    check(f"{name}: texts come back as they were written",
          [read["job"][key] for key in ("name", "note") if read["job"][key] != job[key]])


def main(program, folder):
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    path, job = hostile_job(folder)
    scan = Scan(os.path.abspath(program), folder)
    all_commands(scan, path, job)
    terminal_faults(scan)
    for what in ("first", "second"):
        at = folder / what
        json_faults(what + ".plan", at.with_suffix(".plan").read_bytes(), job)
        for kind in (".all", ".own"):
            calendar_faults(at.with_suffix(kind))
        page_faults(at.with_suffix(".html"))
        table_faults(folder / (what + ".csv"))
    json_faults("printed --json", scan.said["printed --json"][0], job)
    return 1 if failed else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        print(__doc__, file=sys.stderr)
        sys.exit(2)
    sys.exit(main(sys.argv[1], Path(sys.argv[2]).resolve()))
