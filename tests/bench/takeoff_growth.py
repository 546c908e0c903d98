#!/usr/bin/env python3
"""Prints what long parts lists cost: 2,000 and 20,000 rows through `area`, `check` and `plan`.

usage: takeoff_growth.py PROGRAM
For each command: CPU seconds (least of 3 runs), peak memory, and how both grow over ten times the rows.
`plan` adds litres, tins and a schedule to the takeoff. The exit code is 1 when 2,000 rows take more than
1 s or 128 MB, or when ten times the rows take more than 15 times as long. CPU time, not wall time: it is
steadier on a shared machine. The parts are invented; the rows hold every kind but the estimated.
"""
import json
import os
import pathlib
import sys
import tempfile

MOST_SECONDS, MOST_MB, MOST_GROWTH = 1.0, 128.0, 15.0
BATCHES = 20
HEAD = ("kind,part,quantity,batch,coat,material,length_mm,width_mm,thickness_mm,diameter_mm,depth_mm,"
        "girth_mm,along,masked,profile_factor,stile_width_mm,rail_width_mm,set_back_top_mm")


def rows(number):
    """Groups of ten rows: six parts, and four features in the first of them."""
    for i in range(number // 10):
        batch = f"batch {i % BATCHES}"
        yield f"board,top {i},1,{batch},all,solid,{600 + i % 900},{200 + i % 300},22,,,,,,,,,"
        yield f"cut-out,top {i},1,,,,80,25,,,,,,,,,,"
        yield f"groove,top {i},2,,,,,6,,,8,,,yes,,,,"
        yield f"rebate,top {i},,,,,,10,,,9,,back,,,,,"
        yield f"moulding,top {i},,,,,,,,,,31,front,,,,,"
        yield f"board,shelf {i},3,{batch},all,plywood,{500 + i % 400},300,18,,,,,,,,,"
        yield f"round,leg {i},4,{batch},side,solid,450,,,38,,,,,,,,"
        yield f"turned,post {i},2,{batch},side,solid,450,,,60,,,,,0.93,,,"
        yield f"framed,door {i},2,{batch},all,solid,700,450,22,,,,,,,70,80,6"
        yield f"board,\"rail, {i}\",2,{batch},faces edges,solid,400,90,22,,,,,,,,,"


def write_job(folder, number):
    job = {
        "tackfree_job": 1, "name": f"{number} rows", "zone": "Etc/UTC", "now_at": "2027-04-05T08:00",
        "parts_file": "parts.csv",
        "coatings": [{"name": "varnish", "class": "oil_polyurethane"}],
        "systems": [{"name": "clear", "steps": [{"coating": "varnish", "method": "brush", "coats": 2}]}],
        "batches": [{"name": f"batch {i}", "system": "clear", "sides": "on_points"} for i in range(BATCHES)],
        "air": {"constant": {"temperature_c": 20, "humidity_pct": 50}},
        "calendar": {"weekly": {day: ["00:00-24:00"] for day in ("mon", "tue", "wed", "thu", "fri", "sat", "sun")}},
    }
    (folder / "parts.csv").write_text("\n".join([HEAD, *rows(number)]) + "\n")
    (folder / "job.json").write_text(json.dumps(job))
    return str(folder / "job.json")


def one_run(arguments):
    pid = os.posix_spawn(arguments[0], arguments, os.environ,
                         file_actions=[(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)])
    _, status, usage = os.wait4(pid, 0)
    # A schedule of so many parts may run out of days; that is no fault here.
    if os.waitstatus_to_exitcode(status) not in (0, 3):
        sys.exit(f"{' '.join(arguments)} ended with {status}")
    return usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024


def cost(arguments):
    runs = [one_run(arguments) for _ in range(3)]
    return min(run[0] for run in runs), max(run[1] for run in runs)


def main():
    program = os.path.abspath(sys.argv[1])
    faults = []
    with tempfile.TemporaryDirectory() as name:
        for command in ("area", "check", "plan"):
            costs = []
            for number in (2000, 20000):
                folder = pathlib.Path(name) / str(number)
                folder.mkdir(exist_ok=True)
                job = write_job(folder, number)
                more = [] if command == "check" else ["--json", str(folder / "out.json")]
                costs.append(cost([program, command, job, *more]))
            (small, small_mb), (large, large_mb) = costs
            print(f"{command:5}  2000 rows {small:6.3f} s {small_mb:6.1f} MB   20000 rows {large:6.3f} s "
                  f"{large_mb:6.1f} MB   growth x {large / small:.1f} s, x {large_mb / small_mb:.1f} MB")
            if small > MOST_SECONDS or small_mb > MOST_MB:
                faults.append(f"{command}: 2000 rows take more than {MOST_SECONDS} s or {MOST_MB} MB")
            if large > MOST_GROWTH * small:
                faults.append(f"{command}: ten times the rows take more than {MOST_GROWTH} times as long")
    if faults:
        sys.exit("\n".join(faults))


main()
