"""Coverage: the features that random jobs are to have, so that one that never occurs is seen."""
from .calendar_generator import WEEKS
from .finishing_data import CLASSES, METHODS
from .log_generator import FAULTS
from .parts_generator import SHAPES

WORK = ["sand bare", "raise grain", "sand raised grain", "fill pores", "sand filler", "dust off", "coat",
        "wipe off", "turn over", "sand between", "fit hardware", "finishing touch", "repair", "coat again"]
HELD = ["now", "previous_step", "drying", "air", "calendar", "quiet_hours", "person", "dust", "coats_a_day",
        "order", "pin", "no_coating_day", "not_before", "space", "last_plan"]
TOLD = ["coat", "coat insisted", "done", "done insisted", "skip", "skip coat", "tin", "waste", "air", "note",
        "away", "free", "bought-all", "withdraw", "corrects", "test touch passed", "test touch failed", "test thumb passed", "test thumb failed"]

EXPECTED = [
    *("class " + key for key in CLASSES), *("method " + key for key in METHODS), *("part " + s for s in set(SHAPES)),
    *("feature " + f for f in ["cut-out", "hole", "groove", "rebate", "moulding", "mask"]),
    *("weather " + w for w in ["mild", "cold", "hot", "damp", "dry", "freezing"]),
    *("air " + a for a in ["constant", "rows", "epw", "days", "months", "mix", "replayed", "gap bridged"]),
    *("week " + week for week in WEEKS), *(f"people {n}" for n in (1, 2, 3)), *("step " + w for w in WORK),
    *("held by " + h for h in HELD), *(f"log {t} taken" for t in TOLD), *(f"log fault {f} taken" for f in FAULTS),
    *(f"grid {g}" for g in (1, 2, 3, 5, 6, 10, 12, 15, 20, 30, 60)),
    *("room by " + way for way in ("space", "places", "free")), *("busy " + b for b in ("day", "utc", "zone", "floating")),
    "clocks change", "lots", "two rooms", "space of a batch", "after", "pin", "not before", "no coating on",
    "no coating on, job", "ready by", "ready by, job", "days off", "added hours", "quiet hours", "busy calendar",
    "busy person", "busy repeats", "busy free or cancelled", "indoors", "heating", "boards", "fumes", "air speed",
    "label times", "label at temperatures", "label conditions", "label limits", "measured", "earlier jobs",
    "recoat window", "recoat to spare", "faster than label", "aim sessions", "labour", "methods", "fill pores",
    "by film", "coats by number", "system of 2 classes", "system of 3 classes", "sides turn_over", "sides on_points", "no hardware",
    "split sanding", "last plan", "exit 0", "exit 3",
]


def never(tags):
    """Those of the features that no job had."""
    return sorted(set(EXPECTED) - set(tags))
