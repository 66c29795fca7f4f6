"""Areas for stiffness and weight: as built; where a size was never measured, that of like bars."""

from statistics import median

from eyebar.bridge.parts import Bar, Truss
from eyebar.errors import NotMeasured
from eyebar.sections.properties import area

NOTHING_KNOWN_IN2 = 4.0
"""Taken where no bar of the truss has an area; such a truss has no rated part at all."""


def stiffness_areas(truss: Truss) -> tuple[dict[str, float], list[str]]:
    """Bar -> area as built [in2], and a sentence for each that had to be assumed.

    A bar whose size is not known is not rated; but its weight and stiffness touch the others, so it
    is given the middle area of the bars of its kind.
    """
    known: dict[str, float] = {}
    unknown: list[Bar] = []
    for bar in (*truss.bars, *truss.broken):
        try:
            known[bar.name] = area(bar.as_built)
        except NotMeasured:
            unknown.append(bar)
    said, measured = [], dict(known)
    for bar in unknown:
        like = [measured[b.name] for b in truss.bars if b.name in measured and b.kind is bar.kind]
        taken = median(like or list(measured.values()) or [NOTHING_KNOWN_IN2])
        said.append(
            f"{bar.address} was not measured: for its weight and stiffness alone it is taken as "
            f"{taken:.2f} in2, like other bars of its kind"
        )
        known[bar.name] = taken
    return known, said
