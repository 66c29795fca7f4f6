"""Laws of a whole bridge: strength put in and weight taken off, on an invented bridge.

Condition of the first: the same stiffness, weight and sizes, so that no force changes. Of the
second: only where no dead load relieves. For a bar that is so where dead and live load have one
sense and no bar changes between working and slack on the way, lighter or not; for the posting
where the part that governs it is the weaker for its dead load, which is tried.
"""

from functools import cache

from eyebar.documents.opened import opened
from eyebar.rating import BridgeRating, PartRating, rated_bridge
from eyebar.record import record_of
from eyebar.terms import BAR_KINDS, Method
from tests.documents import demos

NAME = "dovetansy"
VEHICLES = ("SU7", "Type 3", "H15")
STEEL, IRON = "yield: {} ksi\n    tensile: 72 ksi", "yield: {} ksi\n    tensile: 60 ksi"
"""Over the office's 26 and 52, 26 and 48 ksi, of steel before 1905 and of wrought iron."""
Key = tuple[str, str, str, str]


@cache
def rated(*changes: tuple[str, str]) -> BridgeRating:
    text = demos.record(NAME).read_text(encoding="utf-8")
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    one = opened(record_of(text.encode()))
    vehicles = {name: one.rated_vehicles[name] for name in VEHICLES}
    return rated_bridge(one.bridge, one.values, vehicles)


def ratings(of: BridgeRating, *, bars_alone: bool = False) -> dict[Key, PartRating]:
    return {
        (part.address, one.vehicle, one.method, one.level): one
        for part in of.parts if not bars_alone or part.kind in BAR_KINDS
        for one in part.ratings if one.factor is not None
    }


def never_less(before: BridgeRating, after: BridgeRating) -> None:
    tons, more = before.posting.exact_tons, after.posting.exact_tons
    assert tons is not None
    assert more is None or more >= tons * (1.0 - 1e-9)


def test_a_stronger_metal_at_the_same_stiffness_lowers_no_factor_and_no_posting() -> None:
    # Every metal of the record yields and breaks later than the office's table has it.
    before, after = rated(), rated(
        ("    metal: steel", f"    metal: steel\n    source: made\n    {STEEL.format('31.2')}"),
        ("    metal: wrought iron",
         f"    metal: wrought iron\n    source: made\n    {IRON.format('31.2')}"),
    )
    stronger, raised = ratings(after), 0
    for key, one in ratings(before).items():
        assert one.factor is not None
        now = stronger[key].factor
        assert now is not None
        assert now >= one.factor * (1.0 - 1e-9), key
        raised += now > one.factor * (1.0 + 1e-6)
    assert raised > 100
    never_less(before, after)


def test_weight_taken_off_lowers_no_factor_of_a_bar_that_dead_load_does_not_relieve() -> None:
    before = rated()
    after = rated((
        "surfacing: {kind: wearing planks, thickness: 2 in, weight: 50 lb/ft3",
        "surfacing: {kind: wearing planks, thickness: 2 in, weight: 25 lb/ft3",
    ))
    lighter, raised = ratings(after, bars_alone=True), 0
    for key, one in ratings(before, bars_alone=True).items():
        now = lighter[key]
        assert one.factor is not None
        assert now.factor is not None
        if one.dead is None or one.live is None or one.dead * one.live <= 0.0:
            continue
        if one.events or now.events or one.check == "dead load":
            continue
        assert now.factor >= one.factor * (1.0 - 1e-9), key
        raised += now.factor > one.factor * (1.0 + 1e-9)
    assert raised > 5
    never_less(before, after)
    assert {one.method for one in ratings(before).values()} == set(Method)
