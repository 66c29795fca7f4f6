"""Documents made by hand, in the form that docs/documents.md gives, with invented figures."""

from typing import Any

Document = dict[str, Any]

AT = {"front_axle_ft": 57.25, "direction": "up", "spacing_ft": [15.0, 4.0]}


def rating(**changes: Any) -> Document:
    """One entry of a part's ratings."""
    return {
        "vehicle": "Type 3",
        "method": "load-and-resistance",
        "level": "legal",
        "factor": 0.4567,
        "plain_factor": 0.4701,
        "tons": 11.4175,
        "check": "head of the eyebar",
        "capacity": 61.04,
        "unit": "kip",
        "dead": 18.26,
        "live": 21.94,
        "dead_factors": {"dc": 1.25, "dw": 1.5},
        "live_factor": 1.3,
        "impact": 0.2,
        "share": 0.8,
        "lanes": 1,
        "at": AT,
        "events": [{"factor": 0.31, "bar": "U5-L3", "goes": "taut"}],
        **changes,
    }


def posting(**changes: Any) -> Document:
    """A posting of six tons, provisional."""
    return {
        "closed": False,
        "provisional": True,
        "not_rated": ["upstream/L4/pin", "floor/deck"],
        "provisional_parts": [],
        "single_tons": 6,
        "combination_tons": None,
        "emergency": {"single_axle_tons": None, "tandem_tons": None, "gross_tons": None},
        "exact_tons": 6.7421,
        "method": "load-and-resistance",
        "level": "legal",
        "governed_by": {
            "part": "upstream/U2-L4", "check": "head of the eyebar", "vehicle": "Type 3",
            "method": "load-and-resistance", "level": "legal",
        },
        "sign": {"designation": "R12-1", "legend": "PROVISIONAL WEIGHT LIMIT\n6 TONS"},
        "vehicles": ["Type 3", "SU4"],
        **changes,
    }


def if_no_limit(tons: int | None, part: str, check: str) -> Document:
    """The posting if something were no limit."""
    return {
        "closed": False, "single_tons": tons, "combination_tons": tons, "exact_tons": None,
        "governed_by": {"part": part, "check": check, "vehicle": "Type 3"},
    }


def weakest() -> list[Document]:
    """Three lines of parts: one alone, two alike, one that limits nothing."""
    shared = {"vehicle": "Type 3", "method": "load-and-resistance", "level": "legal"}
    posting_made = if_no_limit(6, "upstream/U2-L4", "head of the eyebar")
    return [
        {
            "parts": ["upstream/U2-L4"], "kind": "diagonal", "safe_tons": 6.7421, "factor": 0.4567,
            "check": "head of the eyebar", **shared,
            "without": if_no_limit(8, "floor/panel 1/stringer 3", "bending of the timber"),
            "without_kind": if_no_limit(9, "upstream/U3-L3", "column"),
        },
        {
            "parts": ["floor/panel 1/stringer 3", "floor/panel 2/stringer 3"], "kind": "stringer",
            "safe_tons": 8.4, "factor": 0.6, "check": "bending of the timber", **shared,
            "without": posting_made, "without_kind": posting_made,
        },
        {
            "parts": ["upstream/U4-L4"], "kind": "post", "safe_tons": None, "factor": 1.2,
            "check": "thrust with bending", **shared,
            "without": posting_made, "without_kind": posting_made,
        },
    ]


def rate(**changes: Any) -> Document:
    """A `rate` document with two rated parts and three that are not."""
    return {
        "format": "eyebar/rate/1",
        "bridge": {"name": "Sedgebarrow Ford Bridge (invented)", "number": "03-02"},
        "date": "2026-06-09",
        "posting": posting(),
        "parts": [
            {
                "part": "upstream/U4-L4", "truss": "upstream", "kind": "post",
                "ratings": [
                    rating(factor=1.2, tons=30.0, check="thrust with bending", events=[]),
                    rating(vehicle="SU4", factor=None, tons=None, reason="no live effect"),
                ],
            },
            {
                "part": "upstream/U2-L4", "truss": "upstream", "kind": "diagonal",
                "ratings": [
                    rating(),
                    rating(vehicle="SU4", factor=0.5, tons=13.5),
                    rating(method="allowable-stress", level="operating", factor=0.39),
                ],
            },
            {
                "part": "upstream/U1-L1", "truss": "upstream", "kind": "hip vertical",
                "ratings": [rating(method="allowable-stress", level="operating", factor=0.9)],
            },
            *(
                {"part": part, "truss": None, "kind": "pin", "not_rated": "pins are not rated yet"}
                for part in ("upstream/L1/pin", "upstream/L2/pin", "upstream/L3/pin",
                             "upstream/L4/pin")
            ),
        ],
        "weakest": weakest(),
        "values_used": [
            {
                "name": "phi.tension.yield", "value": 0.95, "unit": "1", "layer": "shipped",
                "confirmed": False, "source": "LRFD 6.5.4.2, from memory",
            },
        ],
        "unconfirmed": ["phi.tension.yield"],
        "cautions": ["This is a calculation."],
        "record_hash": "0",
        "version": "0",
        **changes,
    }


def condition(word: str, **figures: float) -> Document:
    """One condition of a crossing."""
    usual = dict.fromkeys(("within_ft", "tons", "spacing_ft", "psf"))
    return {"condition": word, **usual, **figures}


def crossing(**changes: Any) -> Document:
    """The answer for a milk truck: yes on either of two sets of conditions."""
    held, part = [
        condition("alone"), condition("middle", within_ft=1.0), condition("fewer tons", tons=25.0),
        condition("permit"),
    ], {"decided_by": "upstream/U2-L4", "check": "head beyond the pin hole"}
    return {
        "vehicle": "milk truck", "tons": 28.0, "answer": "conditions", "reason": "", **part,
        "factor": 0.577, "method": "load-and-resistance", "level": "legal", "posted_tons": 9,
        "above_posting": "28 tons, over the limit of 9 tons", "conditions": held,
        "ways": [
            {"conditions": held, "tons": 25.0, "factor": 1.0187, **part},
            {
                "conditions": [condition("fewer tons", tons=17.0), condition("permit")],
                "tons": 17.0, "factor": 1.0126, **part,
            },
        ],
        "assumed": ["axles", "width"], "source": "a page", **changes,
    }


def cross() -> Document:
    """A `cross` document: a milk truck, a buggy, a combine too wide, a crowd too dense."""
    plain: Document = {"conditions": [], "ways": [], "assumed": []}
    less = condition("less by area", psf=70.0)
    return {
        "format": "eyebar/cross/1",
        "bridge": {"name": "Sedgebarrow Ford Bridge (invented)", "number": "03-02"},
        "date": "2026-06-09",
        "posting": posting(),
        "vehicles": [
            crossing(),
            crossing(
                vehicle="buggy", tons=1.35, answer="yes", factor=8.331, decided_by="floor/deck",
                above_posting="", **plain,
            ),
            crossing(
                vehicle="combine", tons=20.0, answer="no", factor=None, decided_by=None, check="",
                reason="it is 17 ft wide", **plain,
            ),
            crossing(
                vehicle="crowd", tons=None, factor=0.785, decided_by="floor/deck",
                posted_tons=None, above_posting="", assumed=[], conditions=[less],
                ways=[{"conditions": [less], "tons": None, "factor": 1.009,
                       "decided_by": "floor/deck", "check": "bending"}],
            ),
        ],
        "unconfirmed": ["phi.tension.yield"],
        "cautions": ["This is a calculation."],
        "record_hash": "0",
        "version": "0",
    }


def use() -> Document:
    """A `use` document: a curb is worth two tons, no surfacing is recorded."""
    then = {**if_no_limit(8, "upstream/U3-L3", "column"), "exact_tons": 8.7499}
    bare = {"use": "bare deck", "not_here": "no surfacing", "then": None, "gained_tons": None}
    return {
        **{key: of for key, of in cross().items() if key != "vehicles"}, "format": "eyebar/use/1",
        "uses": [{"use": "curb", "not_here": "", "then": then, "gained_tons": 2.0078}, bare],
    }


def slip() -> Document:
    """A `slip` document for the milk truck."""
    document = cross()
    one = document["vehicles"][0]
    return {
        **{key: document[key] for key in ("bridge", "date", "cautions", "record_hash", "version")},
        "format": "eyebar/slip/1", "day": "2026-10-04", "sign": "PROVISIONAL WEIGHT LIMIT 9 TONS",
        "provisional": True,
        "vehicle": {
            "name": "milk truck", "axles_kip": [16.0, 20.0, 20.0], "spacings_ft": [17.0, 4.5],
            "gauge_ft": 6.0, "width_ft": 8.5, "area_psf": None,
        },
        "crossing": one, "way": one["ways"][0],
        "signed": [{"role": "licensed engineer", "name": None, "on": None}],
    }


def forces() -> Document:
    """A `forces` document, as far as the tables read it: two trusses alike and a third apart."""
    live = {
        "Type 3": {
            "L0-L1": {"min": 0.0, "max": 20.04, "min_at": None, "max_at": AT},
            "U1-U2": {"min": -31.26, "max": 0.0, "min_at": AT, "max_at": None},
        },
        "H20": {
            "L0-L1": {"min": 0.0, "max": 22.0, "min_at": None, "max_at": AT},
            "U1-U2": {"min": -30.0, "max": 0.0, "min_at": AT, "max_at": None},
        },
        "EV3": None,
    }
    missing = {"EV3": {"reason": "no equilibrium", "panel": "panel 5"}}
    one = {
        "dead": {"L0-L1": 30.0, "U1-U2": -44.44},
        "live": live,
        "no_equilibrium": missing,
    }
    return {
        "format": "eyebar/forces/1",
        "date": "2026-06-09",
        "vehicles": [{"name": "Type 3"}, {"name": "H20"}, {"name": "EV3"}],
        "trusses": [
            {"truss": "upstream", **one},
            {"truss": "downstream", **one},
            {"truss": "third", **one, "dead": {"L0-L1": 31.0, "U1-U2": -44.44}},
        ],
        "cautions": ["This is a calculation."],
    }


def vehicles() -> Document:
    """A `vehicles` document with one vehicle of varied spacing and lane load."""
    return {
        "format": "eyebar/vehicles/1",
        "vehicles": [
            {
                "name": "HS20", "axles_kip": [8.0, 32.0, 32.0], "spacings_ft": [14.0, [14.0, 30.0]],
                "gauge_ft": 6.0, "width_ft": 8.0, "lane_kip_per_ft": 0.64,
                "lane_point_kip": [18.0, 26.0], "combine": "greater", "class": "design",
                "source": "from memory", "confirmed": False, "area_psf": None, "assumed": [],
            },
            {
                "name": "snow", "axles_kip": [], "spacings_ft": [], "gauge_ft": 0.0,
                "width_ft": 0.0, "lane_kip_per_ft": 0.0, "lane_point_kip": None,
                "combine": "area", "class": "everyday", "source": "from memory",
                "confirmed": False, "area_psf": 30.0, "assumed": ["load"],
            },
        ],
    }


def explain() -> Document:
    """An `explain` document: a formula inside a procedure, and a note."""
    return {
        "format": "eyebar/explain/1",
        "date": "2026-06-09",
        "part": "upstream/U2-L4",
        "kind": "diagonal",
        "rating": rating(),
        "remarks": ["a round head is taken"],
        "readings": ["caliper, 2026-06-09"],
        "steps": [
            {
                "entry": "procedure", "title": "head of an eyebar", "source": "by proportion",
                "steps": [
                    {
                        "entry": "formula", "title": "gross yield", "equation": "P = F_y × A",
                        "with_numbers": "P = 26 ksi × 2.5 in2 = 65 kip", "symbol": "P",
                        "symbols": {"F_y": {"meaning": "yield stress", "value": 26.0,
                                            "unit": "ksi"}},
                        "result": 65.0, "unit": "kip", "source": "mechanics",
                    },
                    {"entry": "note", "text": "tries", "symbol": "n", "value": 3.0, "unit": "1"},
                ],
            },
        ],
        "cautions": ["This is a calculation."],
    }
