"""Parts generator: a parts list of every shape and feature, small enough for an evening's work."""
import csv

COLUMNS = ["kind", "part", "quantity", "batch", "coat", "material", "wood", "surface", "length", "width",
           "thickness_mm", "diameter_mm", "inner_mm", "profile_factor", "stile_width_mm", "rail_width_mm", "panels",
           "set_back_top_mm", "set_back_bottom_mm", "slats", "slat_width_mm", "slat_thickness_mm", "estimate",
           "area_m2", "grain", "face", "run", "along", "depth_mm", "girth_mm", "rim", "masked", "note"]
SHAPES = ["board", "board", "board", "sheet", "round", "tube", "turned", "framed", "louvre", "estimate", "area"]
BOARD_COATS = ["all", "all", "faces", "faces edges", "top", "top+bottom", "all", "edges ends top", "bottom front"]


def measure(rng, mm):
    """The same length as people write it, and in metres."""
    way = rng.randrange(4)
    if way == 0:
        inches = round(mm / 25.4)
        text = f"{inches} {rng.choice(['1/4', '1/2', '3/8'])} in"
        return text
    if way == 1 and mm > 310:
        return f"{mm // 305} ft {rng.randint(0, 11)} in"
    return f"{mm} mm" if way == 2 else f"{mm / 10:g} cm"


class PartsList:
    def __init__(self, rng, tags):
        self.rng, self.tags, self.rows, self.count = rng, tags, [], 0

    def add(self, batch):
        """A part with its features; its space in m2, one piece, at most."""
        rng, self.count = self.rng, self.count + 1
        shape = rng.choice(SHAPES)
        self.tags.add("part " + shape)
        row = {"kind": shape, "part": f"part {self.count}", "quantity": rng.choice(["", 1, 2, 3, 4]), "batch": batch}
        length, width = rng.randint(250, 900), rng.randint(90, 400)
        if shape in ("board", "sheet"):
            row.update({"length": measure(rng, length), "width": measure(rng, width),
                        "thickness_mm": rng.choice([12, 18, 30]), "coat": rng.choice(BOARD_COATS)})
            if shape == "sheet":
                row["material"] = rng.choice(["plywood", "fibreboard"])
            else:
                row.update({"wood": rng.choice(["", "ring_porous"]), "surface": rng.choice(["", "", "rough"]),
                            "material": rng.choice(["", "solid", "plywood"])})
        elif shape in ("round", "tube", "turned"):
            row.update({"length": measure(rng, length), "diameter_mm": rng.randint(25, 70)})
            row["coat"] = rng.choice(["all", "all", "ends"] + (["outside inside"] if shape == "tube" else ["side"]))
            if shape == "tube":
                row["inner_mm"] = row["diameter_mm"] - 8
            if shape == "turned":
                row["profile_factor"] = rng.choice([0.75, 1, 1.32])
        elif shape == "area":
            row.update({"area_m2": round(rng.uniform(0.05, 0.5), 3), "coat": rng.choice(["faces", "top", "bottom"]),
                        "grain": rng.choice(["", "face", "end", "rough_face", "plywood_edge"])})
        else:
            row.update({"kind": rng.choice(["framed", "louvre"]) if shape == "estimate" else shape,
                        "length": measure(rng, length + 100), "width": measure(rng, width + 150),
                        "thickness_mm": 22, "coat": rng.choice(["all", "faces", "top"])})
            self.frame(row, shape)
        self.rows.append(row)
        if shape in ("board", "sheet") and rng.random() < 0.6:
            self.board_feature(row)
        if shape in ("round", "turned") and rng.random() < 0.4:
            self.tags.add("feature mask")
            self.rows.append({"kind": "mask", "part": row["part"], "length": "30 mm"})
        return row

    def frame(self, row, shape):
        if shape == "estimate":
            row["estimate"] = "yes"
            return
        row.update({"stile_width_mm": 45, "rail_width_mm": 50})
        if shape == "framed":
            row.update({"panels": self.rng.choice(["", 1, 2]), "set_back_top_mm": self.rng.choice(["", 5]),
                        "set_back_bottom_mm": self.rng.choice(["", 4])})
        else:
            row.update({"slats": self.rng.randint(3, 5), "slat_width_mm": 32, "slat_thickness_mm": 6})

    def board_feature(self, row):
        rng = self.rng
        kind = rng.choice(["cut-out", "hole", "groove", "rebate", "moulding", "mask"])
        self.tags.add("feature " + kind)
        feature = {"kind": kind, "part": row["part"]}
        if kind == "cut-out":
            feature.update({"length": "40 mm", "width": "20 mm", "rim": rng.choice(["", "no"]),
                            "quantity": rng.choice(["", 2])})
        elif kind == "hole":
            feature.update({"diameter_mm": 20, "rim": rng.choice(["yes", "no"]), "quantity": 2})
        elif kind == "groove":
            feature.update({"face": rng.choice(["", "bottom"]), "run": rng.choice(["", "width"]), "width": "6 mm",
                            "depth_mm": 5, "masked": rng.choice(["", "yes"])})
        elif kind == "rebate":
            feature.update({"along": rng.choice(["front", "left"]), "width": "10 mm", "depth_mm": 6})
        elif kind == "moulding":
            feature.update({"along": rng.choice(["back", "right"]), "girth_mm": 42})
        else:
            feature.update({"face": "top", "width": "20 mm", "run": "length"})
        self.rows.append(feature)

    def write(self, path):
        with open(path, "w", newline="", encoding="utf-8") as file:
            writer = csv.DictWriter(file, COLUMNS, lineterminator="\n")
            writer.writeheader()
            writer.writerows(self.rows)
