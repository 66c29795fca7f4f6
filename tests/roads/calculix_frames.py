"""CalculiX, a general finite element program, asked for the load at which a plane frame buckles.

Two chords side by side, stiff end battens, hinged ends, and between the chords either zigzag lacing
or battens. Everything is a beam of three nodes (B32R); lacing bars are thin enough in the plane to
be as good as pinned.
"""

import math
import os
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

PIECES = 2
"""Elements of one chord in one panel."""
THIN = 0.05
"""Thickness of a lacing bar in the plane of the frame [in]."""
STIFF = 4.0
"""How much deeper than the chords the end battens are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Panels `advance` long, chords `distance` apart; kip and inch.

    `lacing_area` of zigzag bars, one a panel, or else `batten_inertia` of battens at every panel
    point, with the area that goes with a depth of 6 in.
    """

    panels: int
    advance: float
    distance: float
    chord_area: float
    chord_inertia: float
    modulus: float
    lacing_area: float | None = None
    batten_inertia: float | None = None

    @property
    def length(self) -> float:
        """Length of the column."""
        return self.panels * self.advance

    def deck(self) -> str:
        """The input: a thrust of 1 on both chords together, one buckling step."""
        return "\n".join([*self._nodes(), *self._elements(), *self._sections(), *self._step(), ""])

    def buckling_load(self, folder: Path) -> float:
        """Least thrust on both chords together at which the frame buckles, run in `folder`."""
        (folder / "frame.inp").write_text(self.deck(), encoding="ascii")
        subprocess.run(
            ["ccx", "frame"], cwd=folder, check=True, capture_output=True, timeout=60,
            env=os.environ | {"OMP_NUM_THREADS": "1"},
        )
        table = (folder / "frame.dat").read_text(encoding="ascii").split("FACTOR")[-1]
        return float(table.split()[1])

    @property
    def _last(self) -> int:
        """Places along a chord from 0: ends and middles of its elements."""
        return 2 * PIECES * self.panels

    @staticmethod
    def _node(chord: int, place: int) -> int:
        return chord * 10000 + place + 1

    def _nodes(self) -> Iterator[str]:
        yield "*NODE, NSET=ALL"
        step = self.advance / (2 * PIECES)
        for chord in range(2):
            for place in range(self._last + 1):
                yield f"{self._node(chord, place)},{place * step!r},{chord * self.distance!r},0."
        for number, (first, second) in enumerate(self._ties()):
            along = (self._along(first) + self._along(second)) / 2
            yield f"{30001 + number},{along!r},{self.distance / 2!r},0."

    def _along(self, node: int) -> float:
        return (node % 10000 - 1) * self.advance / (2 * PIECES)

    def _ties(self) -> Iterator[tuple[int, int]]:
        """The nodes that each lacing bar or inner batten joins."""
        inner = range(self.panels) if self.lacing_area is not None else range(1, self.panels)
        for panel in inner:
            low = 2 * PIECES * panel
            if self.lacing_area is None:
                yield self._node(0, low), self._node(1, low)
            else:
                high = low + 2 * PIECES
                near, far = (0, 1) if panel % 2 == 0 else (1, 0)
                yield self._node(near, low), self._node(far, high)

    def _elements(self) -> Iterator[str]:
        number = 1
        yield "*ELEMENT, TYPE=B32R, ELSET=CHORD"
        for chord in range(2):
            for place in range(0, self._last, 2):
                nodes = [self._node(chord, place + one) for one in range(3)]
                yield f"{number},{nodes[0]},{nodes[1]},{nodes[2]}"
                number += 1
        yield "*ELEMENT, TYPE=B32R, ELSET=TIE"
        for tie, (first, second) in enumerate(self._ties()):
            yield f"{number},{first},{30001 + tie},{second}"
            number += 1
        yield "*ELEMENT, TYPE=B31, ELSET=END"
        for place in (0, self._last):
            yield f"{number},{self._node(0, place)},{self._node(1, place)}"
            number += 1

    def _sections(self) -> Iterator[str]:
        depth = math.sqrt(12 * self.chord_inertia / self.chord_area)
        width = self.chord_area / depth
        if self.lacing_area is not None:
            tie = (self.lacing_area / THIN, THIN)
        else:
            assert self.batten_inertia is not None
            tie = (12 * self.batten_inertia / 6.0**3, 6.0)
        yield from ("*MATERIAL, NAME=IRON", "*ELASTIC", f"{self.modulus!r},0.")
        for name, (out, within) in (
            ("CHORD", (width, depth)), ("TIE", tie), ("END", (width, STIFF * depth))
        ):
            yield f"*BEAM SECTION, ELSET={name}, MATERIAL=IRON, SECTION=RECT"
            yield from (f"{out!r},{within!r}", "0.,0.,1.")

    def _step(self) -> Iterator[str]:
        ends = [self._node(chord, place) for chord in range(2) for place in (0, self._last)]
        yield from ("*BOUNDARY", "ALL,3,5")
        yield from (f"{node},2" for node in ends)
        yield f"{self._node(0, self._last // 2)},1"
        yield from ("*STEP", "*BUCKLE", "2,1e-8,40,1000", "*CLOAD")
        yield from (
            f"{node},1,{0.5 if node % 10000 == 1 else -0.5}" for node in ends
        )
        yield from ("*NODE FILE", "U", "*END STEP")
