"""Job generator: one random valid job for a seed, with its files and the features it has."""
import json
import math
import random
from datetime import date, timedelta

from .calendar_generator import calendar_of, people_of
from .finishing_data import CLASSES, METHODS, TOUCHES, figures_of, follow_rule
from .local_time import LocalTime
from .parts_generator import PartsList
from .shop_rules import covered_m2
from .weather_generator import air_of

# Zones with the days on which their clocks change, in the year of the plan and later ones.
ZONES = {"America/New_York": ["2027-03-14", "2027-11-07"], "Europe/Berlin": ["2027-03-28", "2027-10-31"],
         "Australia/Lord_Howe": ["2027-04-04", "2027-10-03"], "America/St_Johns": ["2027-03-14", "2027-11-07"],
         "Pacific/Chatham": ["2027-04-04", "2027-09-26"], "Asia/Kathmandu": [], "Asia/Tokyo": [], "UTC": [],
         "America/Santiago": ["2027-04-04", "2027-09-05"]}
TIMES = ["dust_free_after_h", "touch_after_h", "handle_after_h", "recoat_after_h", "sand_after_h", "light_use_after_h"]


class JobGenerator:
    def __init__(self, seed, folder):
        self.rng, self.folder, self.tags = random.Random(seed), folder, set()

    def write(self):
        """The job as an object; its files lie in the folder."""
        rng = self.rng
        zone = rng.choice(list(ZONES))
        clock = LocalTime(zone)
        days = rng.choices([10, 16, 24, 40, 70], [1, 3, 4, 2, 0.5])[0]
        now_text = self.begin_of(zone)
        now = clock.given(now_text)
        first_day = clock.date(now)
        if clock.offset(now) != clock.offset(now + days * 1440):
            self.tags.add("clocks change")
        job = {"tackfree_job": 1, "name": "Random job", "zone": zone, "now_at": now_text, "horizon_days": days,
               "parts_file": "parts.csv", "log_file": "log.jsonl",
               "units": rng.choice(["us", "metric", "both"])}
        if rng.random() < 0.5:
            job["grid_min"] = rng.choice([1, 2, 3, 5, 6, 10, 12, 15, 20, 30, 60])
            self.tags.add(f"grid {job['grid_min']}")
        self.coatings, job["coatings"], job["systems"] = {}, [], []
        for number in range(rng.choice([1, 1, 2])):
            job["systems"].append(self.system(number))
        job["coatings"] = list(self.coatings.values())
        job["batches"] = self.batches(job, clock, first_day, days)
        self.parts_of(job)
        self.rooms(job)
        job["room"] = self.room()
        job["air"], self.known_until = air_of(rng, self.folder, clock, now, days, self.tags)
        job["calendar"] = calendar_of(rng, self.folder, first_day, zone, self.tags)
        people = people_of(rng, self.folder, first_day, zone, self.tags)
        if people:
            job["people"] = people
        self.own_figures(job)
        if rng.random() < 0.15:
            self.tags.add("no coating on, job")
            pinned = [pin["on"] for batch in job["batches"] for pin in batch.get("pins", [])]
            day = (first_day + timedelta(days=rng.randint(0, 6))).isoformat()
            job["no_coating_on"] = [day] if day not in pinned else []
        if rng.random() < 0.2:
            self.tags.add("ready by, job")
            job["ready_by"] = (first_day + timedelta(days=rng.randint(5, days))).isoformat()
        (self.folder / "job.json").write_text(json.dumps(job, indent=1))
        return job

    def begin_of(self, zone):
        rng = self.rng
        if ZONES[zone] and rng.random() < 0.5:
            on = date.fromisoformat(rng.choice(ZONES[zone])) - timedelta(days=rng.randint(0, 5))
            on_text = on.isoformat()
        else:
            on_text = f"{rng.choice([2026, 2027, 2028, 2035])}-{rng.randint(1, 12):02}-{rng.randint(1, 28):02}"
        return f"{on_text}T{rng.randint(4, 22):02}:{rng.choice([0, 0, 15, 45, 7, 59]):02}"

    def system(self, number):
        """A chain of one to three classes that may follow each other."""
        rng = self.rng
        while True:
            chain = [rng.choice(list(CLASSES)) for _ in range(rng.choices([1, 2, 3], [5, 3, 1])[0])]
            allowed = all(self.may_follow(a, b) for a, b in zip(chain, chain[1:]))
            if allowed and not CLASSES[chain[-1]]["needs_top_coat"]:
                break
        steps = []
        for place, key in enumerate(chain):
            self.tags.add("class " + key)
            name = f"tin {number}{place}"
            self.coatings[name] = self.coating(name, key)
            if key == "shellac" and (chain[place + 1:] or rng.random() < 0.3):
                self.tags.add("dewaxed")
                self.coatings[name]["contains_wax"] = False
            most = self.coatings[name].get("label", {}).get("coats_max", figures_of(key)["coats_max"])
            coats = "by_film" if rng.random() < 0.2 else rng.randint(1, min(3, most))
            method = rng.choice(list(METHODS))
            self.tags.update({"method " + method, "by film" if coats == "by_film" else "coats by number"})
            step = {"name": f"step {place}", "coating": name, "method": method, "coats": coats}
            if rng.random() < 0.12:
                self.tags.add("fill pores")
                step["fill_pores"] = True
            if rng.random() < 0.2:
                step["first_coat_thinner_pct"] = rng.choice([0, 10, 50])
            steps.append(step)
        if len(chain) > 1:
            self.tags.add(f"system of {len(chain)} classes")
        system = {"name": f"system {number}", "wear": rng.choice(["light", "normal", "hard"]), "steps": steps}
        touches = [key for key, touch in TOUCHES.items()
                   if CLASSES[chain[-1]]["builds_film"] or not touch["on_films_only"]]
        if rng.random() < 0.1:
            system["after"] = rng.choice(touches)
        return system

    @staticmethod
    def may_follow(under, over):
        rule = follow_rule(under, CLASSES[under]["contains_wax"] and under != "shellac", over)
        return rule is None or rule["verdict"] != "refuse"

    def coating(self, name, key):
        rng, own = self.rng, figures_of(key)
        coating, label = {"name": name, "class": key}, {}
        if rng.random() < 0.35:
            self.tags.add("label times")
            scale = rng.choice([0.5, 0.8, 1.4])
            first = rng.randrange(4)
            for time in TIMES[first:first + rng.randint(1, 4)]:
                if time in own:
                    hours = max(0.05, round(own[time] * scale, 2))
                    label[time] = [round(hours / 2, 3) if hours > 0.2 else hours, hours] if rng.random() < 0.3 else hours
            if "recoat_after_h" in label and rng.random() < 0.6:
                self.unsanded(label, own)
        elif rng.random() < 0.15 and "recoat_after_h" in own:
            self.tags.add("label at temperatures")
            hours = own["recoat_after_h"]
            label["at_temperatures"] = [{"temp_c": 15, "recoat_after_h": round(hours * 1.8, 2)},
                                        {"temp_f": 73.4, "recoat_after_h": hours},
                                        {"temp_c": 30, "recoat_after_h": round(hours * 0.7, 2)}]
        if rng.random() < 0.15:
            self.tags.add("label conditions")
            label.update({"label_temp_c": rng.choice([20, 25]), "label_humidity_pct": rng.choice([40, 60])})
        if rng.random() < 0.2:
            self.tags.add("label limits")
            label.update(rng.choice([{"put_on_min_c": 12}, {"humidity_max_pct": 70}, {"dew_point_margin_k": 0},
                                     {"put_on_min_f": 46, "hold_min_f": 44}, {"hold_put_on_min_h": 6},
                                     {"dew_point_margin_k": 5}, {"put_on_max_c": 27}]))
        if rng.random() < 0.3 and "coats_a_day_max" in own:
            label["coats_a_day_max"] = rng.choice([1, 2])
        if rng.random() < 0.15 and "pot_life_h" in own:
            label["pot_life_h"] = 0.2
        if label:
            coating["label"] = label
        if rng.random() < 0.1:
            self.tags.add("measured")
            recoat = label.get("recoat_after_h", own.get("recoat_after_h", 0))
            recoat = max(recoat) if isinstance(recoat, list) else recoat
            coating["measured"] = {"light_use_after_h": max(30, round(2 * recoat, 1)), "clean_up_min": 7}
            if "light_use_after_h" not in own or "touch_after_h" in label:
                coating["measured"] = {"clean_up_min": 7}
        if rng.random() < 0.15:
            self.tags.add("earlier jobs")
            coating["earlier_jobs"] = {"drying_factor": rng.choice([0.8, 1.3]), "drying_coats": 4}
        if rng.random() < 0.3:
            coating["on_shelf"] = [{"volume": "500 ml", "opened_on": "2026-06-01"}, "250 ml"]
            coating["tins"] = [{"size": "0.75 L", "price": 20}, {"size": "2.5 L", "price": 55}]
        return coating

    def unsanded(self, label, own):
        """A tin whose next coat needs no sanding within a window."""
        if "grit_after_first" not in own:
            return
        self.tags.add("recoat window")
        recoat = label["recoat_after_h"]
        recoat = recoat[1] if isinstance(recoat, list) else recoat
        label.update({"needs_sanding_between": False,
                      "recoat_unsanded_within_h": round(recoat + self.rng.choice([3, 12, 48]), 2)})

    def batches(self, job, clock, first_day, days):
        rng, batches = self.rng, []
        for number in range(rng.choices([1, 2, 3], [5, 4, 1])[0]):
            system = rng.choice(job["systems"])
            batch = {"name": f"Batch {'ABC'[number]}", "system": system["name"],
                     "sides": rng.choice(["turn_over", "on_points"]), "show_side": rng.choice(["top", "bottom"])}
            self.tags.add("sides " + batch["sides"])
            if rng.random() < 0.2:
                self.tags.add("no hardware")
                batch["hardware"] = False
            if batches and rng.random() < 0.3:
                self.tags.add("after")
                batch["after"] = batches[-1]["name"]
            if rng.random() < 0.15:
                self.tags.add("not before")
                batch["not_before"] = (first_day + timedelta(days=rng.randint(0, 5))).isoformat() + rng.choice(["", "T14:00"])
            if rng.random() < 0.2:
                self.tags.add("no coating on")
                batch["no_coating_on"] = [(first_day + timedelta(days=rng.randint(0, 5))).isoformat()]
            if rng.random() < 0.25:
                self.tags.add("ready by")
                batch["ready_by"] = (first_day + timedelta(days=rng.randint(6, days))).isoformat() + rng.choice(["", "T12:00"])
            if rng.random() < 0.25:
                self.pin(batch, system, first_day)
            batches.append(batch)
        del clock
        return batches

    def pin(self, batch, system, first_day):
        rng = self.rng
        on = (first_day + timedelta(days=rng.randint(5, 8))).isoformat()
        if on in batch.get("no_coating_on", []):
            return
        self.tags.add("pin")
        step = system["steps"][-1]
        pin = {"step": step["name"], "coat": 1 if step["coats"] == "by_film" else rng.randint(1, step["coats"]), "on": on}
        if rng.random() < 0.4:
            pin.update({"from": "08:00", "to": "20:30"})
        if rng.random() < 0.2:
            pin["side"] = rng.choice(["back", "show"])
        batch["pins"] = [pin]

    def parts_of(self, job):
        parts = PartsList(self.rng, self.tags)
        self.rows = {batch["name"]: [parts.add(batch["name"]) for _ in range(self.rng.randint(1, 3))]
                     for batch in job["batches"]}
        parts.write(self.folder / "parts.csv")

    def rooms(self, job):
        """Rooms in which the largest batch just fits, or goes through in lots."""
        rng = self.rng
        if rng.random() < 0.5:
            return
        pieces = {name: [int(row["quantity"] or 1) for row in rows] for name, rows in self.rows.items()}
        spaces = {name: [covered_m2(row) for row in rows] for name, rows in self.rows.items()}
        largest = max(space for each in spaces.values() for space in each)
        whole = max(sum(q * s for q, s in zip(pieces[name], spaces[name])) for name in self.rows)
        job["rooms"] = []
        for number in range(rng.choice([1, 1, 2])):
            room = {"name": f"room {number}"}
            way = rng.choice(["space", "places", "free"])
            self.tags.add("room by " + way)
            if way == "space":
                space = max(largest * 1.05, whole * rng.choice([0.4, 0.7, 1.3]))
                room["drying_space_m2"] = max(0.02, math.ceil(space * 100) / 100)
            elif way == "places":
                most = max(sum(q) for q in pieces.values())
                room["drying_places"] = max(1, rng.choice([most, (most + 1) // 2, most + 2]))
            job["rooms"].append(room)
        if len(job["rooms"]) > 1:
            self.tags.add("two rooms")
        for batch in job["batches"]:
            room = rng.choice(job["rooms"])
            batch["room"] = room["name"]
            if rng.random() < 0.15 and "drying_space_m2" in room:
                self.tags.add("space of a batch")
                batch["space_m2"] = round(room["drying_space_m2"] * 0.6, 3)

    def room(self):
        rng = self.rng
        room = {}
        if rng.random() < 0.6:
            self.tags.add("fumes")
            room["volume_m3"] = rng.choice([30, 90, 400])
            if rng.random() < 0.6:
                room["airing"] = {"while_coating": rng.choice(["closed", "ajar", "open"]),
                                  "after": {"state": rng.choice(["ajar", "open"]), "hours": rng.choice([0, 2, 6])}}
        if rng.random() < 0.3:
            self.tags.add("air speed")
            room["air_speed_m_s"] = rng.choice([0, 0.3, 1.5])
        return room

    def own_figures(self, job):
        rng = self.rng
        if rng.random() < 0.25:
            self.tags.add("labour")
            job["labour"] = rng.choice([{"bare_tool": "hand"}, {"dust_settles_min": 90, "set_up_min": 25},
                                        {"fit_hardware_min": 0}, {"sand_between_m2_per_h": 3, "turn_over_min": 0},
                                        {"filler_dries_h": 6, "mix_pot_min": 15}, {"dust_settles_min": 0, "set_up_min": 0}])
        if rng.random() < 0.15:
            self.tags.add("methods")
            job["methods"] = {rng.choice(list(METHODS)): {"rate_m2_per_h": rng.choice([2, 30])}}
        if rng.random() < 0.1:
            self.tags.add("faster than label")
            job["faster_than_label"] = True
        if rng.random() < 0.2:
            self.tags.add("aim sessions")
            job["aim"] = "sessions"
        if rng.random() < 0.15:
            self.tags.add("recoat to spare")
            job["recoat_to_spare_h"] = rng.choice([1, 6])
