"""Finishing data: classes, laws, labour and rules of following, read from data/ for the checks."""
import json
import pathlib

FOLDER = pathlib.Path(__file__).resolve().parents[3] / "data"

STAGES = ["dust_free", "touch", "handle", "recoat", "sand", "light_use", "hardware", "stack", "full_cure"]
DEPTH = {"dust_free": "touch", "touch": "touch", "handle": "recoat", "recoat": "recoat", "sand": "recoat",
         "light_use": "through", "hardware": "through", "stack": "through", "full_cure": "through"}


def read(name):
    return json.loads((FOLDER / name).read_text())


CLASSES, LAWS = read("coatings.json"), read("drying_laws.json")
LABOUR, METHODS, FOLLOWS = read("labour.json"), read("methods.json"), read("follows.json")
TOUCHES = read("finishing_touches.json")


def value(figure):
    """A figure of data/ without its origin; of a range the upper end."""
    if isinstance(figure, list) and len(figure) > 1 and isinstance(figure[1], str):
        figure = figure[0]
    return figure


def figures_of(class_key):
    return {key: value(figure) for key, figure in CLASSES[class_key]["figures"].items()}


def follow_rule(under_class, under_has_wax, over_class):
    """The first rule that fits, as docs/file_formats.md says; None where there is none."""
    for rule in FOLLOWS.values():
        if rule.get("under_has_wax") and not under_has_wax:
            continue
        if rule["under"] and under_class not in rule["under"]:
            continue
        if rule["over"] and over_class not in rule["over"]:
            continue
        return rule
    return None


def pair_hours(under, over_class, as_planned):
    """How long another class waits over `under`, in hours at label conditions; None: no longer than recoat."""
    rule = follow_rule(under.key, under.wax, over_class)
    if rule is not None:
        return rule["dry_for_h"][0] if "dry_for_h" in rule else None
    return None if under.key == over_class else under.hours("stack", as_planned)


def celsius(given, key):
    """A temperature of an object that gives it in C or in F."""
    if key + "_c" in given:
        return float(given[key + "_c"])
    if key + "_f" in given:
        return (given[key + "_f"] - 32) / 1.8
    return None


class CoatingFigures:
    """What counts for one coating of a job: measured before label before class."""

    def __init__(self, job, coating):
        self.name, self.key = coating["name"], coating["class"]
        self.of_class = CLASSES[self.key]
        self.label, self.measured = coating.get("label", {}), coating.get("measured", {})
        self.own = figures_of(self.key)
        self.law = LAWS[self.of_class["law"]]
        self.wax = coating.get("contains_wax", self.of_class["contains_wax"])
        self.sands = self.label.get("needs_sanding_between", self.of_class["needs_sanding_between"])
        self.slowness = coating.get("earlier_jobs", {}).get("drying_factor", 1.0)
        self.label_temp = celsius(self.label, "label_temp")
        if self.label_temp is None:
            self.label_temp = float(self.of_class["label_temp_c"])
        self.label_humidity = self.label.get("label_humidity_pct", self.of_class["label_humidity_pct"]) / 100
        self.rows = self.label.get("at_temperatures", [])
        del job

    def figure(self, key):
        for given in (self.measured, self.label, self.own):
            if key in given:
                number = given[key]
                return max(number) if isinstance(number, list) and not key.startswith("grits") else number
        return None

    def temperature(self, key):
        for given in (self.measured, self.label, self.own):
            found = celsius(given, key)
            if found is not None:
                return found
        return None

    def stage_key(self, stage):
        return stage + ("_after_d" if stage in ("hardware", "stack", "full_cure") else "_after_h")

    def gives_times(self):
        return any(key.endswith(("_after_h", "_after_d", "_within_h")) for key in (*self.label, *self.measured))

    def hours(self, stage, as_planned):
        """Hours of the label. Where the tin gives some of them, the class's others may have to move to
        stay in order; those are taken as the plan prints them."""
        key = self.stage_key(stage)
        given = key in self.label or key in self.measured
        if not given and (self.gives_times() or self.rows):
            printed = as_planned["drying"].get(stage + "_after_h")
            return None if printed is None else printed["value"]
        number = self.figure(key)
        return None if number is None else number * (24 if key.endswith("_d") else 1)

    def stops_below(self):
        found = self.temperature("stops_below")
        return value(self.law["stops_below_c"]) if found is None else found
