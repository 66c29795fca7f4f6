"""Laws of pins, on the invented bridges.

Condition of the first: no load but dead load and the vehicle, on joints; of the others: a pin's
size changes no stiffness and no weight of the model, nor any bar's strength.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from eyebar.bridge.parts import Pin, Truss
from eyebar.bridge.state import bridge_on
from eyebar.documents.rate import rate_document
from eyebar.office import office_values
from eyebar.rating.pin_checks import bears_on, pin_rows
from eyebar.record import record_of
from eyebar.terms import BAR_KINDS
from tests.documents import demos
from tests.rating.resolved import Resolved, trusses

each = pytest.mark.parametrize("name", demos.NAMES)


def pins(name: str) -> Iterator[tuple[Truss, Pin]]:
    text = demos.record(name).read_bytes()
    for truss in bridge_on(record_of(text, file=name), None, office_values()).trusses:
        for pin in truss.pins:
            yield truss, pin


def weights(again: Resolved, loads: Any) -> Mapping[tuple[str, int], float]:
    """(joint, axis) -> load [kip], of joints that are held in neither."""
    return dict(zip(again.equilibrium.rows, loads.tolist(), strict=True))


@each
def test_the_forces_on_a_pin_sum_to_nothing_at_every_place(name: str) -> None:
    # What the bars leave over is the load at the joint: half of it on half a packing; and with it
    # nothing is left in either plane.
    again = next(iter(trusses(name).values()))
    dead = again.dead({"dc": 1.0, "dw": 1.0})
    found = {pin.joint: pin for truss, pin in pins(name) if truss.name in trusses(name)}
    for at in again.places("HS20", 7.0, 2):
        loads = dead + again.axles("HS20", at)
        forces = dict(zip(again.drawing.names, again.forces(loads).tolist(), strict=True))
        down = weights(again, loads)
        for joint, pin in found.items():
            rows = pin_rows(pin)
            on_it = rows.loads @ np.array([forces[bar] for bar in rows.bars])
            assert np.abs(on_it.sum(axis=0)).max() < 1e-9
            assert np.abs(rows.shears[-1] @ [forces[bar] for bar in rows.bars]).max() < 1e-9
            if pin.whole == 1.0:
                assert np.abs(rows.moments[-1] @ [forces[bar] for bar in rows.bars]).max() < 1e-9
            if joint in again.drawing.supports:
                continue
            bars = sum(
                (one.share * forces[bar] * np.array(pin.toward[bar])
                 for one in pin.packing for bar in one.bars), np.zeros(2),
            )
            applied = np.array([down[joint, 0], down[joint, 1]])
            assert bars == pytest.approx(-pin.whole * applied, abs=1e-6)


def test_a_head_read_thin_bears_with_what_is_left_and_lies_where_it_lay() -> None:
    # By hand, from the record: U2-L4 lies 9/16 in thick at L4 and was read 15/32 in there in 2026.
    found = {pin.address: pin for _, pin in pins("quillmarsh")}
    for address, left in (("upstream/L4/pin", 15 / 32), ("downstream/L4/pin", 9 / 16)):
        one = next(one for one in found[address].packing if one.bars == ("U2-L4",))
        assert one.thickness == 9 / 16
        assert bears_on(one) == left
        assert one.along == pytest.approx(4 * (3 / 4 + 1 / 16) + 9 / 32)


@cache
def _with_pins(name: str, diameter: str, folder: Path) -> Mapping[str, Any]:
    """The rating of a demo with all its pins of one size; none worn."""
    text = demos.record(name).read_text()
    text = re.sub(r"(    joints: .*\n    diameter: )[^\n#]*", rf"\g<1>{diameter}", text)
    path = folder / f"{name}.yaml"
    path.write_text(re.sub(r"\n.*/pin, what: diameter.*", "", text))
    return rate_document(path)


def _factors(document: Mapping[str, Any], *, pins_only: bool = False) -> dict[Any, Any]:
    return {
        (part["part"], one["vehicle"], one["method"], one["level"]): one
        for part in document["parts"] if not pins_only or part["kind"] == "pin"
        for one in part.get("ratings", ()) if one["factor"] is not None
    }


@each
def test_thicker_pins_lower_no_factor_and_no_posting(name: str, tmp_path: Path) -> None:
    before, after = demos.rate(name), _with_pins(name, "3 1/4 in", tmp_path)
    thicker = _factors(after)
    for key, one in _factors(before).items():
        assert thicker[key]["factor"] >= one["factor"] * (1.0 - 1e-9), key
    tons = [document["posting"]["exact_tons"] for document in (before, after)]
    assert tons[1] is None or tons[1] >= tons[0]


@pytest.mark.parametrize("name", ["quillmarsh", "dovetansy"])
def test_no_equilibrium_at_a_pin_is_where_the_first_bar_loses_it(
    name: str, tmp_path: Path
) -> None:
    # With pins that nothing can break, equilibrium ends first; for them as early as for any bar.
    # Impact may differ: what multiplies the axles is compared.
    document = _with_pins(name, "60 in", tmp_path)
    ends: dict[Any, float] = {}
    for part in document["parts"]:
        if part["kind"] in BAR_KINDS:
            for one in part["ratings"]:
                if one["check"].endswith("no equilibrium"):
                    by = (part["truss"], one["vehicle"], one["method"], one["level"])
                    grown = one["factor"] * (1.0 + one["impact"])
                    ends[by] = min(ends.get(by, np.inf), grown)
    seen = 0
    for part in document["parts"]:
        for one in part.get("ratings", ()) if part["kind"] == "pin" else ():
            by = (part["truss"], one["vehicle"], one["method"], one["level"])
            if one["check"] == "no equilibrium" and by in ends:
                assert one["factor"] * (1.0 + one["impact"]) <= ends[by] * (1.0 + 1e-9), by
                seen += 1
    assert seen > 0 or not ends
