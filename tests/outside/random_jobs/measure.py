"""Measure: lengths and areas of the parts list as the generator writes them, in metres."""
from fractions import Fraction

UNITS = {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "ft": 0.3048, "yd": 0.9144,
         "m2": 1.0, "cm2": 1e-4, "ft2": 0.3048 ** 2}


def metres_of(text):
    """48 1/4 in, 4 ft 2 1/2 in, 1226 mm."""
    total, number = 0.0, Fraction(0)
    for word in text.split():
        if word in UNITS:
            total += float(number) * UNITS[word]
            number = Fraction(0)
        else:
            number += Fraction(word)
    return total


def metres(row, column):
    """The field of that column, whose head may hold the unit."""
    for head, text in row.items():
        if head == column and text:
            return metres_of(text)
        if head and text and head.startswith(column + "_") and head[len(column) + 1:] in UNITS:
            return float(text) * UNITS[head[len(column) + 1:]]
    return 0.0
