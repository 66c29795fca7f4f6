"""The roadway in cross-section and plan, in words."""

from eyebar.units import length_text
from eyebar.views import section_words
from eyebar.views.columns import Document


def standing(across: Document) -> str:
    """Where a vehicle stands across, and for which part that is worst."""
    first, *_, last = across["wheels_ft"]
    vehicle = across["vehicle"]
    return (
        f"{vehicle['name']}, {_ft(vehicle['width_ft'])} wide, its wheel lines "
        f"{_ft(vehicle['gauge_ft'])} apart, stands where it is worst for {across['worst_for']}: "
        f"wheel lines {_ft(first)} and {_ft(last)} from the centre line of the first truss. "
        f"By the lever rule {across['worst_for']} then takes {across['share']:.2f} of each axle."
    )


def parts(document: Document, joint: str) -> list[tuple[str, str]]:
    """The parts of the floor at a panel point: their address or name, and what they are."""
    floor, road = document["floor"], document["road"]
    rows = [("clear width", _ft(road["clear_width_ft"])),
            ("between trusses", _ft(road["truss_spacing_ft"]))]
    rows += [
        (one["part"], f"{section_words.short(one['as_built'])}, {_ft(one['span_ft'])} long")
        for one in floor["floorbeams"] if one["joint"] == joint
    ]
    alike: dict[str, int] = {}
    panel = min((one["panel"] for one in floor["stringers"]), default=0)
    for one in floor["stringers"]:
        if one["panel"] == panel:
            words = section_words.short(one["as_built"])
            alike[words] = alike.get(words, 0) + 1
    rows += [("stringers of a panel", f"{count}, each {words}") for words, count in alike.items()]
    deck = floor["deck"]
    if deck is not None:
        thick = section_words.size(deck["built_in"])
        left = section_words.size(deck["left_in"])
        now = "" if thick == left else f", {left} in left"
        rows.append((deck["part"], f"{deck['kind']}, {thick} in{now}, runs {deck['runs']}"))
    return rows


def _ft(feet: float) -> str:
    return length_text(feet * 12.0, nearest=16)
