#!/usr/bin/env python3
"""Reads the written tables with Python's csv module and holds them against the JSON plan.

Usage: csv_tables.py FOLDER PLAN.json [FOLDER PLAN.json ...]
Prints one line for each check; exit 1 when one fails, 2 when it cannot run.
"""
import csv
import json
import sys
from pathlib import Path

failed = False


def check(what, faults):
    global failed
    first = f" ({len(faults)}, first: {faults[0]})" if faults else ""
    print(f"{'FAILED' if faults else 'ok'}: {what}{first}")
    failed = failed or bool(faults)


def rows(path):
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def near(a, b, tolerance):
    return abs(a - b) <= tolerance


def local(time):
    """ISO 8601 with the zone's offset, as the tables write it."""
    return time[:16].replace("T", " ")


def judge(folder, plan):
    steps, areas, shopping = (rows(folder / f"{name}.csv") for name in ("steps", "areas", "shopping"))
    whole = [row for table in (steps, areas, shopping) for row in table]
    check("every row has the fields of its head",
          [str(row) for row in whole if None in row or None in row.values()])
    if failed:
        return
    check("no field begins as a formula",
          [field for row in whole for field in row.values() if field[:1] in ("=", "+", "@", "\t", "\r")])
    pieces = sum(len(step["pieces"]) for step in plan["steps"])
    length = [piece for step in plan["steps"] for piece in step["pieces"]
              if piece["begin_at"] < piece["end_at"]]
    check(f"there is a row for each of {pieces} pieces of work",
          [] if sum(1 for row in steps if row["batch"]) == len(length) else [str(len(steps))])
    written = {(row["begin_local"], row["end_local"], row["batch"]) for row in steps}
    check("each piece has its hours",
          [hours for hours in ((local(piece["begin_local"]), local(piece["end_local"]), step["batch"])
                               for step in plan["steps"] for piece in step["pieces"]
                               if piece["begin_at"] < piece["end_at"]) if hours not in written])
    minutes = sum(float(row["work_min"]) for row in steps)
    check("the minutes add up to the plan's work", [] if near(minutes, plan["work"]["in_all_min"], 0.5)
          else [f"{minutes} for {plan['work']['in_all_min']}"])
    area = sum(float(row["area_m2"]) for row in areas)
    check("the areas add up to the plan's", [] if near(area, plan["area_m2"], 0.005)
          else [f"{area} for {plan['area_m2']}"])
    feet = sum(float(row["area_ft2"]) for row in areas)
    # NIST SP 811: 1 ft = 0.3048 m.
    check("square feet are the same areas", [] if near(feet * 0.3048 ** 2, area, 0.005) else [str(feet)])
    bought = {row["what"]: row for row in shopping}
    check("each coating's amount is the plan's",
          [one["coating"] for one in plan["shopping"]["coatings"]
           if not near(float(bought[one["coating"]]["expected_ml"]), 1000 * one["expected_l"], 1)])
    check("everything else to have at hand is there",
          [one["what"] for one in plan["shopping"]["sundries"] if one["what"] not in bought])


def main(arguments):
    if not arguments or len(arguments) % 2:
        print(__doc__, file=sys.stderr)
        return 2
    for folder, plan in zip(arguments[::2], arguments[1::2]):
        try:
            judge(Path(folder), json.loads(Path(plan).read_text(encoding="utf-8")))
        except OSError as error:
            print(f"csv_tables: {error}", file=sys.stderr)
            return 2
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
