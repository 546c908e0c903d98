"""Planted faults: one for each rule, put into good plans, to show that each is found.

Each function below takes a view of a plan and gives a changed plan, or None where the plan has nothing to
which it could be done. A fault may break other rules too; its own must be among those found.
"""
import copy
from datetime import timedelta

from .air_of_job import saturation
from .finishing_data import pair_hours
from .local_time import EPOCH, utc
from .one_job import OneJob, broken_rules
from .order_rules import OrderRules
from .plan_view import PlanView

# Plans in which each fault is planted, and seeds that are tried at most.
TIMES, SEEDS = 1, 400


def text_of(minute):
    return (EPOCH + timedelta(minutes=minute)).strftime("%Y-%m-%dT%H:%M:%SZ")


def moved(view, step, begin):
    """The plan with that step begun at `begin`, in one piece or in those it has."""
    plan = copy.deepcopy(view.plan)
    given = next(s for s in plan["steps"] if s["key"] == step.key)
    by = begin - step.begin
    for stretch in [given, *given["pieces"]]:
        stretch["begin_at"], stretch["end_at"] = (text_of(utc(stretch[end]) + by) for end in ("begin_at", "end_at"))
    return plan


def todo(view, *kinds):
    return [s for s in view.steps if s.kind in kinds and not s.done]


def first_minute(view, step, fits):
    """The first begin in the plan, on the grid, at which `fits`."""
    for begin in range(view.now, view.horizon - (step.end - step.begin), view.grid * 3):
        if fits(begin):
            return moved(view, step, begin)
    return None


def out_of_hours(view):
    for step in todo(view, "dust off", "turn over", "fit hardware"):
        return first_minute(view, step, lambda m: not view.hours.anybody(m, m + 1))
    return None


def sanding_in_quiet_hours(view):
    if view.job.get("labour", {}).get("bare_tool") == "hand":
        return None
    for step in todo(view, "sand bare"):
        return first_minute(view, step, lambda m: view.hours.is_quiet(m, m + 1))
    return None


def grits_in_wrong_order(view):
    steps = todo(view, "sand bare")
    return moved(view, steps[1], steps[0].begin) if len(steps) > 1 and steps[0].batch == steps[1].batch else None


def coat_an_hour_early(view):
    """Sanding or coating before the coat below is ready, by an hour."""
    for step in todo(view, "sand between", "coat"):
        place, number = view.place_of(step), step.coat
        below = view.coats_of(step.batch, place, number - 1) if number > 1 else {}
        sanded = any(s.kind == "sand between" and s.batch == step.batch and s.coat == number for s in view.steps)
        if not below or (step.kind == "coat" and sanded) or any(not c.placed or c.skipped for c in below.values()):
            continue
        ready = max(view.stage_at(c, "sand" if step.kind == "sand between" else "recoat") for c in below.values())
        if 0 < ready < view.horizon + 10000:
            return moved(view, step, ready - 60)
    return None


def turned_too_soon(view):
    for step in todo(view, "turn over"):
        if step.what != "turn-over":
            continue
        back = view.coats_of(step.batch, view.place_of(step), step.coat).get("back")
        if back and back.placed and not back.done:
            return moved(view, step, view.wet_until(back))
    return None


def hardware_too_soon(view):
    for step in todo(view, "fit hardware"):
        return moved(view, step, step.begin - 1440 * 2)
    return None


def pair_too_soon(view):
    for step in todo(view, "coat"):
        place = view.place_of(step)
        if place == 0 or step.coat != 1:
            continue
        below = view.coats_of(step.batch, place - 1, view.number_of_coats(step.batch, place - 1))
        for under in below.values():
            figures = view.coating_of(under)
            clock = view.clocks[under.given["coating"]]
            hours = pair_hours(figures, view.coating_of(step).key, clock.as_planned)
            if hours is not None and under.placed and not under.skipped:
                return moved(view, step, view.wet_until(under) + int(hours * 60) - 60)
    return None


def coat_in_bad_air(view):
    for step in todo(view, "coat"):
        figures = view.coating_of(step)
        low, high = figures.temperature("put_on_min") - 1.5, figures.temperature("put_on_max") + 1.5
        most = figures.figure("humidity_max_pct") + 4

        def unfit(minute):
            t, e = view.air.at(view.air.t, minute), view.air.at(view.air.e, minute)
            return not low < t < high or 100 * e / saturation(t) > most
        plan = first_minute(view, step, unfit)
        if plan:
            return plan
    return None


def sanding_before_a_coat(view):
    if view.labour("dust_settles_min") < 10:
        return None
    for coat in todo(view, "coat"):
        for sanding in todo(view, "sand bare", "sand between"):
            if view.room_of(coat.batch) is view.room_of(sanding.batch):
                return moved(view, sanding, coat.begin - (sanding.end - sanding.begin) - 5)
    return None


def two_things_at_once(view):
    steps = todo(view, "sand bare", "dust off", "turn over", "fit hardware", "coat")
    for one in steps:
        for other in steps:
            if one is not other and one.pieces[0][2] == other.pieces[0][2]:
                return moved(view, one, other.begin)
    return None


def cleaning_at_other_work(view):
    for number, session in enumerate(view.plan["sessions"]):
        if session["cleanings"]:
            plan = copy.deepcopy(view.plan)
            plan["sessions"][number]["cleanings"][0].update(
                {key: session["set_up"][key] for key in ("begin_at", "end_at")},
                **({"by": session["set_up"]["by"]} if "by" in session["set_up"] else {}))
            return plan
    return None


def tool_left_to_harden(view):
    for number, session in enumerate(view.plan["sessions"]):
        if session["cleanings"] and session["method"] == "hvlp":
            plan = copy.deepcopy(view.plan)
            plan["sessions"][number]["cleanings"] = []
            return plan
    return None


def lots_over_space(view):
    for coat in todo(view, "coat"):
        room = view.room_of(coat.batch)
        if room and ("drying_space_m2" in room or "drying_places" in room):
            job = copy.deepcopy(view.job)
            for each in job["rooms"]:
                for key in ("drying_space_m2", "drying_places"):
                    if key in each:
                        each[key] = each[key] / 50
            return view.plan, job
    return None


def piece_lost(view):
    plan = copy.deepcopy(view.plan)
    for part in plan["parts"]:
        if part["quantity"] > 1:
            part["quantity"] -= 1
            return plan
    return None


def before_the_first_door(view):
    for step in todo(view, "coat"):
        if "after" in view.batch_of[step.batch] and step.coat == 1 and view.place_of(step) == 0:
            return moved(view, step, view.now)
    return None


def pin_moved(view):
    for step in todo(view, "coat"):
        for pin in view.batch_of[step.batch].get("pins", []):
            if pin["coat"] == step.coat and pin.get("step", step.system_step).replace(" ", "-") == step.system_step \
                    and pin.get("side", step.side) == step.side:
                return moved(view, step, step.begin + 1440)
    return None


def on_a_closed_day(view):
    for step in todo(view, "coat"):
        days = view.batch_of[step.batch].get("no_coating_on", []) + view.job.get("no_coating_on", [])
        for day in days:
            return moved(view, step, view.clock.given(day + "T12:00"))
    return None


def begun_too_soon(view):
    for step in todo(view, "sand bare"):
        if "not_before" in view.batch_of[step.batch]:
            return moved(view, step, view.clock.given(view.batch_of[step.batch]["not_before"]) - 60)
    return None


def window_missed(view):
    for step in todo(view, "coat"):
        if step.coat < 2 or any(s.is_sanding() and s.batch == step.batch and s.coat == step.coat for s in view.steps):
            continue
        under = view.coats_of(step.batch, view.place_of(step), step.coat - 1).get(step.side)
        if under is None or not under.placed or under.skipped:
            continue
        figures = view.coating_of(under)
        hours = figures.figure("recoat_unsanded_within_h")
        if hours and figures.figure("grit_after_first") and not figures.sands:
            return moved(view, step, view.wet_until(under) + int(hours * 60) + 90)
    return None


def melting_too_soon(view):
    """As soon as the last coat alone is ready, though two that dry as one are not."""
    for step in todo(view, "sand between", "coat"):
        under = view.coats_of(step.batch, view.place_of(step), step.coat - 1) if step.coat > 2 else {}
        sanded = any(s.kind == "sand between" and s.batch == step.batch and s.coat == step.coat for s in view.steps)
        if (step.kind == "coat" and sanded) or any(not c.placed or c.skipped for c in under.values()):
            continue
        stage = "sand" if step.kind == "sand between" else "recoat"
        alone = max([view.stage_at(c, stage) for c in under.values()], default=0)
        as_one = [view.stage_at(each, stage, films) for c in under.values()
                  for films, each in enumerate(OrderRules(view).melted(c), 1)]
        if as_one and max(as_one) > alone:
            return moved(view, step, alone)
    return None


def too_many_in_a_day(view):
    for step in todo(view, "coat"):
        most = view.coating_of(step).figure("coats_a_day_max")
        before = [s for s in todo(view, "coat") if s.batch == step.batch and s.side == step.side
                  and s.begin < step.begin and view.coating_of(s).figure("coats_a_day_max")]
        same_day = [s for s in before if view.clock.local(s.begin)[0] == view.clock.local(before[-1].begin)[0]] if before else []
        if most and len(same_day) >= most:
            return moved(view, step, same_day[-1].begin + view.grid)
    return None


def out_of_session(view):
    plan = copy.deepcopy(view.plan)
    for session in plan["sessions"]:
        if len(session["steps"]) > 1:
            session["steps"].pop()
            return plan
    for session in plan["sessions"]:
        session["set_up"]["end_at"] = session["set_up"]["begin_at"]
        return plan if view.labour("set_up_min") > 0 else None
    return None


def wiped_too_late(view):
    for step in todo(view, "wipe off"):
        return moved(view, step, step.begin + 45)
    return None


def too_little_time(view):
    plan = copy.deepcopy(view.plan)
    for step in plan["steps"]:
        if step["work_min"] > 10 and not step.get("done"):
            step["pieces"][-1]["end_at"] = text_of(utc(step["pieces"][-1]["end_at"]) - 10)
            return plan
    return None


def filler_still_wet(view):
    for step in todo(view, "sand filler"):
        fill = view.by_key[step.prefix() + "/fill-pores"]
        if not fill.skipped:
            return moved(view, step, fill.end + 5)
    return None


def repaired_too_soon(view):
    for step in todo(view, "repair"):
        coat = view.by_key[step.prefix() + "/coat"]
        if ("runs" in step.what or "wrinkling" in step.what) and not coat.skipped:
            return moved(view, step, view.wet_until(coat) + 1)
    return None


def again_too_soon(view):
    """A coat that goes on again, over the one that went wrong and was not washed off."""
    for step in todo(view, "coat"):
        first = view.by_key.get(step.prefix() + "/coat")
        if step.what == "coat-again" and first and first.placed and not first.skipped \
                and not view.washed_off(first, step.begin) and view.stage_at(first, "recoat") > first.end + 5:
            return moved(view, step, first.end + 5)
    return None


def over_early_sanding(view):
    """A coat on a film that the log has sanded, or left unsanded, while it was wet."""
    for step in todo(view, "coat"):
        sanding = [s for s in view.steps if s.kind == "sand between" and s.batch == step.batch
                   and s.coat == step.coat and view.place_of(s) == view.place_of(step)]
        if step.coat < 2 or not sanding or not all(s.done for s in sanding):
            continue
        under = view.coats_of(step.batch, view.place_of(step), step.coat - 1).get(step.side)
        if under and under.placed and not under.skipped and view.stage_at(under, "recoat") > view.now:
            return moved(view, step, view.now)
    return None


def coat_left_out(view):
    for coat in reversed(todo(view, "coat")):
        if coat.coat < 2 or coat.what != "coat" or view.system_steps(coat.batch)[view.place_of(coat)]["coats"] == "by_film":
            continue
        plan = copy.deepcopy(view.plan)
        plan["steps"] = [s for s in plan["steps"] if s["key"] != coat.key]
        for session in plan["sessions"]:
            session["steps"] = [key for key in session["steps"] if key != coat.key]
        plan["sessions"] = [s for s in plan["sessions"] if s["steps"]]
        return plan
    return None


FAULTS = {out_of_hours: "hours", sanding_in_quiet_hours: "quiet", grits_in_wrong_order: "order",
          coat_an_hour_early: "drying", turned_too_soon: "drying", hardware_too_soon: "drying", pair_too_soon: "pair",
          coat_in_bad_air: "air", sanding_before_a_coat: "dust", two_things_at_once: "person",
          cleaning_at_other_work: "person", tool_left_to_harden: "session", lots_over_space: "space",
          piece_lost: "lots", before_the_first_door: "after", pin_moved: "pin", on_a_closed_day: "no_coating_on",
          begun_too_soon: "not_before", window_missed: "window", melting_too_soon: "melting",
          too_many_in_a_day: "coats_a_day", out_of_session: "session", wiped_too_late: "wiping",
          again_too_soon: "drying", over_early_sanding: "drying",
          too_little_time: "minutes", filler_still_wet: "filler", repaired_too_soon: "repair",
          coat_left_out: "complete"}


def planted(program, base):
    """0 when each fault was planted and each was found."""
    planted_in, missed = dict.fromkeys(FAULTS, 0), 0
    for seed in range(1, SEEDS + 1):
        wanting = [fault for fault in FAULTS if planted_in[fault] < TIMES]
        if not wanting:
            break
        job = OneJob(program, seed, base / f"seed{seed}", quick=True).go()
        if job.findings or not job.views:
            continue
        for view in job.views:
            for fault in [f for f in wanting if planted_in[f] < TIMES]:
                changed = fault(view)
                if changed is None:
                    continue
                plan, its_job = changed if isinstance(changed, tuple) else (changed, view.job)
                found = {rule for rule, _ in broken_rules(PlanView(its_job, view.folder, plan, like=view))}
                planted_in[fault] += 1
                if FAULTS[fault] not in found:
                    missed += 1
                    print(f"seed {seed}: {fault.__name__} is not found as {FAULTS[fault]}, but {sorted(found)}")
    for fault, count in planted_in.items():
        print(f"  {fault.__name__:24s} as {FAULTS[fault]:14s} planted {count} times")
    never = [fault.__name__ for fault, count in planted_in.items() if count == 0]
    print(f"{len(FAULTS)} faults, {sum(planted_in.values())} planted, {missed} missed, {len(never)} never planted {never}")
    return 1 if missed or never else 0
