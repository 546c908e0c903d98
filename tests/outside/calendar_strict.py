#!/usr/bin/python3
"""Checks a written calendar line by line against RFC 5545, then reads it back with icalendar.

Usage: /usr/bin/python3 calendar_strict.py CALENDAR.ics [CALENDAR.ics ...]
Needs the Debian package python3-icalendar. Prints one line for each check; exit 1 when one fails,
2 when it cannot run.
"""
import re
import sys

try:
    import icalendar
except ImportError:
    print("calendar_strict: the Debian package python3-icalendar is missing, or this is not "
          "/usr/bin/python3", file=sys.stderr)
    sys.exit(2)

# RFC 5545, section 3.1: names of letters, digits and hyphens, parameters, then a colon.
CONTENT_LINE = re.compile(r'[A-Za-z0-9-]+(;[A-Za-z0-9-]+=("[^"]*"|[^";:,]*)(,("[^"]*"|[^";:,]*))*)*:')
UTC_TIME = re.compile(r"\d{8}T\d{6}Z")
TEXT_PROPERTIES = {"SUMMARY", "DESCRIPTION", "CATEGORIES"}
LONGEST_LINE = 75  # octets


class Checks:
    def __init__(self):
        self.failed = False

    def check(self, what, faults):
        first = f" ({len(faults)}, first: {faults[0][:120]})" if faults else ""
        print(f"{'FAILED' if faults else 'ok'}: {what}{first}")
        self.failed = self.failed or bool(faults)


def is_utf8(octets):
    try:
        octets.decode("utf-8")
        return True
    except UnicodeDecodeError:
        return False


def physical_faults(data, checks):
    lines = data.split(b"\r\n")
    checks.check("every line ends in CRLF",
                 [] if lines[-1] == b"" and not re.search(rb"\r(?!\n)|(?<!\r)\n", data)
                 else ["a bare CR or LF, or no end of the last line"])
    numbered = list(enumerate(lines[:-1], 1))
    checks.check(f"no line is longer than {LONGEST_LINE} octets",
                 [f"line {n}: {len(l)}" for n, l in numbered if len(l) > LONGEST_LINE])
    checks.check("no line is empty", [f"line {n}" for n, l in numbered if not l.strip()])
    checks.check("no line is folded inside a character",
                 [f"line {n}" for n, l in numbered if not is_utf8(l)])
    checks.check("no control characters",
                 [f"line {n}" for n, l in numbered
                  if is_utf8(l) and re.search("[\x00-\x08\x0a-\x1f\x7f-\x9f]", l.decode())])


def logical_lines(data):
    return re.sub(rb"\r\n[ \t]", b"", data).decode("utf-8", "replace").split("\r\n")[:-1]


def escape_fault(value):
    """Whether a TEXT value has a bare comma or semicolon, or an escape that there is none of."""
    return re.search(r"[,;]|\\[^\\,;nN]|\\$", re.sub(r"\\[\\,;nN]", "", value)) is not None


def logical_faults(lines, checks):
    checks.check("every content line has a name and a colon",
                 [l[:60] for l in lines if not CONTENT_LINE.match(l)])
    pairs = [l.split(":", 1) for l in lines if ":" in l]
    checks.check("text is escaped",
                 [v[:60] for k, v in pairs if k in TEXT_PROPERTIES and escape_fault(v)])
    checks.check("times are UTC",
                 [f"{k}:{v}" for k, v in pairs
                  if k.split(";")[0] in ("DTSTART", "DTEND", "DTSTAMP") and not UTC_TIME.fullmatch(v)])
    checks.check("no METHOD", [v for k, v in pairs if k.split(";")[0] == "METHOD"])
    stack, faults = [], []
    for name, value in pairs:
        if name == "BEGIN":
            stack.append(value)
        elif name == "END" and (not stack or stack.pop() != value):
            faults.append(value)
    checks.check("every BEGIN has its END", faults + stack)


def ends_after_start(event):
    try:
        return event["DTEND"].dt > event["DTSTART"].dt
    except TypeError:  # one with a zone and one without
        return False


def event_faults(data, checks):
    try:
        calendar = icalendar.Calendar.from_ical(data)
    except ValueError as error:
        checks.check("icalendar reads it", [str(error)])
        return
    events = calendar.walk("VEVENT")
    checks.check(f"icalendar reads it: {len(events)} events",
                 [str(e.errors[0]) for e in events if e.errors] or ([] if events else ["no event"]))
    once = ("UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY", "SEQUENCE")
    missing = [str(e.get("UID")) for e in events
               if any(name not in e or isinstance(e[name], list) for name in once)]
    checks.check("every event has each of " + ", ".join(once) + " once", missing)
    if missing:
        return
    checks.check("every event ends after it starts",
                 [str(e["UID"]) for e in events if not ends_after_start(e)])
    uids = [str(e["UID"]) for e in events]
    checks.check("no UID comes twice", [u for u in uids if uids.count(u) > 1])
    checks.check("every alarm has action, trigger and description",
                 [str(e["UID"]) for e in events for a in e.walk("VALARM")
                  if any(name not in a for name in ("ACTION", "TRIGGER", "DESCRIPTION"))])


def main(paths):
    if not paths:
        print("usage: calendar_strict.py CALENDAR.ics [CALENDAR.ics ...]", file=sys.stderr)
        return 2
    checks = Checks()
    for path in paths:
        try:
            with open(path, "rb") as file:
                data = file.read()
        except OSError as error:
            print(f"calendar_strict: {error}", file=sys.stderr)
            return 2
        physical_faults(data, checks)
        logical_faults(logical_lines(data), checks)
        event_faults(data, checks)
    return 1 if checks.failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
