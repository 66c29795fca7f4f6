"""What the readings up to a date leave of pin plates and splices.

Of each measure the latest reading at each place holds; over the places, and over both ends of a
bar, the worst governs. A hole worn long has lost all it grew by beyond the pin.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from eyebar.bridge.timeline import Findings
from eyebar.record import What
from eyebar.sections.joined import PinPlates, Splice
from eyebar.sections.pieces import Plate


def pin_plates_left(built: PinPlates | None, findings: Findings) -> PinPlates | None:
    """Pin plates as they are left; None where none are recorded."""
    if built is None:
        return None
    hole = _worse(built.hole, What.PIN_PLATE_HOLE, findings, max)
    beyond = built.beyond
    if built.hole is not None and hole is not None and beyond is not None:
        beyond = max(beyond - (hole - built.hole), 0.0)
    return replace(
        built, hole=hole, beyond=_worse(beyond, What.PIN_PLATE_BEYOND_HOLE, findings, min),
        plate=None if built.plate is None else _plate(
            built.plate, findings, (What.PIN_PLATE_WIDTH, What.PIN_PLATE_THICKNESS)
        ),
    )


def splice_left(built: Splice | None, findings: Findings) -> Splice | None:
    """A splice as it is left, every plate of it no better than the worst that was read."""
    if built is None:
        return None
    words = (What.SPLICE_PLATE_WIDTH, What.SPLICE_PLATE_THICKNESS)
    return replace(built, plates=tuple(_plate(one, findings, words) for one in built.plates))


def _plate(plate: Plate, findings: Findings, words: tuple[What, What]) -> Plate:
    return replace(
        plate, width=_worse(plate.width, words[0], findings, min),
        thickness=_worse(plate.thickness, words[1], findings, min),
    )


def _worse(
    built: float | None, what: What, findings: Findings,
    worst: Callable[[list[float]], float],
) -> float | None:
    """The worst of what was built and of the latest readings, one for each place."""
    known = list(_latest(what, findings).values()) + ([] if built is None else [built])
    return worst(known) if known else None


def _latest(what: What, findings: Findings) -> Mapping[str, float]:
    """Place -> its latest reading [in]; of readings of one day the last that is written."""
    return {
        reading.place or reading.part.place: reading.value.number
        for _, reading in findings if reading.what is what
    }
