# SPDX-License-Identifier: MIT
"""The revised NIOSH lifting equation a second time, written from the publication and without a look
at core/lifting, to hold the program against.

Source: Waters, Putz-Anderson, Garg: Applications Manual for the Revised NIOSH Lifting Equation,
DHHS (NIOSH) Publication 94-110, section 1 (formulas, tables 5 and 7). The rows of table 5 other than
0.2 and 0.5 are from memory, with single cells confirmed; the ISO 11228-1 reference masses are from memory.
"""

import math

KG_PER_LB = 0.45359237

# load constant; H from, to; V ideal, slope, to; D from, to, gain
CONSTANTS = {
    "metric": dict(lc=23.0, h0=25.0, h1=63.0, v=75.0, vs=0.003, v1=175.0, d0=25.0, d1=175.0, dg=4.5),
    "us": dict(lc=51.0, h0=10.0, h1=25.0, v=30.0, vs=0.0075, v1=70.0, d0=10.0, d1=70.0, dg=1.8),
}
REFERENCE_KG = {"any-age": 15.0, "mixed-adults": 20.0, "men-20-45": 25.0}

RATES = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]
# Columns of table 5: (duration, hands at or above 75 cm / 30 in)
FREQUENCY = {
    ("short", False): "1 .97 .94 .91 .88 .84 .80 .75 .70 .60 .52 .45 .41 .37 0 0 0",
    ("short", True): "1 .97 .94 .91 .88 .84 .80 .75 .70 .60 .52 .45 .41 .37 .34 .31 .28",
    ("moderate", False): ".95 .92 .88 .84 .79 .72 .60 .50 .42 .35 .30 .26 0 0 0 0 0",
    ("moderate", True): ".95 .92 .88 .84 .79 .72 .60 .50 .42 .35 .30 .26 .23 .21 0 0 0",
    ("long", False): ".85 .81 .75 .65 .55 .45 .35 .27 .22 .18 0 0 0 0 0 0 0",
    ("long", True): ".85 .81 .75 .65 .55 .45 .35 .27 .22 .18 .15 .13 0 0 0 0 0",
}
FREQUENCY = {key: [float(v) for v in row.split()] for key, row in FREQUENCY.items()}


def frequency_multiplier(rate, duration, upper):
    row = FREQUENCY[duration, upper]
    if rate <= RATES[0]:
        return row[0]
    for i, known in enumerate(RATES):
        if abs(rate - known) <= 1e-9:
            return row[i]
        if rate < known:
            if row[i] == 0.0:
                return 0.0
            return row[i - 1] + (row[i] - row[i - 1]) * (rate - RATES[i - 1]) / (known - RATES[i - 1])
    return 0.0


def coupling_multiplier(coupling, upper):
    return {"good": 1.0, "fair": 1.0 if upper else 0.95, "poor": 0.9}[coupling]


def end(units, reach, height, twist, travel, rate, duration, coupling, heaviest, assigned):
    """One end of a lift: every quantity by symbol; an index over a limit of 0 is infinite."""
    k = CONSTANTS[units]
    upper = height >= k["v"]
    q = {
        "HM": 1.0 if reach <= k["h0"] else k["h0"] / reach if reach <= k["h1"] else 0.0,
        "VM": 1.0 - k["vs"] * abs(height - k["v"]) if height <= k["v1"] else 0.0,
        "DM": 1.0 if travel <= k["d0"] else 0.82 + k["dg"] / travel if travel <= k["d1"] else 0.0,
        "AM": 1.0 - 0.0032 * twist if twist <= 135.0 else 0.0,
        "FM": frequency_multiplier(rate, duration, upper),
        "CM": coupling_multiplier(coupling, upper),
    }
    posture = q["HM"] * q["VM"] * q["DM"] * q["AM"] * q["CM"]
    reference = REFERENCE_KG[assigned] / (1.0 if units == "metric" else KG_PER_LB)

    def over(limit):
        return heaviest / limit if limit > 0.0 else math.inf

    q["FIRWL"] = k["lc"] * posture
    q["RWL"] = q["FIRWL"] * q["FM"]
    q["mR"] = reference * posture * q["FM"]
    q["LI"], q["FILI"], q["mR_ratio"] = over(q["RWL"]), over(q["FIRWL"]), over(q["mR"])
    return q


def lift(facts):
    """Quantities of a `lift` document that gives its duration as a class and its numbers bare."""
    units = facts["units"]
    origin, destination = facts["origin"], facts.get("destination")
    travel = facts["travel"] if destination is None else abs(destination["V"] - origin["V"])
    rate = facts["frequency"] if "frequency" in facts else facts["lifts"] / facts["in_minutes"]
    heaviest, typical = facts["load"]["heaviest"], facts["load"]["typical"]
    rest = (travel, rate, facts["duration"], facts["coupling"], heaviest,
            facts.get("assigned", "mixed-adults"))
    ends = {"origin": end(units, origin["H"], origin["V"], origin["A"], *rest)}
    if destination is not None and facts.get("control_at_destination", True):
        ends["destination"] = end(units, destination["H"], destination["V"], destination["A"], *rest)
    out = {f"{name}.{symbol}": value for name, q in ends.items() for symbol, value in q.items()}
    governing = min(ends, key=lambda name: ends[name]["RWL"])
    rwl = ends[governing]["RWL"]
    out.update(D=travel, F=rate, RWL=rwl, LI=ends[governing]["LI"],
               LI_typical=typical / rwl if rwl > 0.0 else math.inf)
    return out
