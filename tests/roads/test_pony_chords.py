"""Chords on elastic posts against a general finite element program's own eigenvalues."""

import math
import os
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from eyebar.analysis.elastic_posts import ElasticChord, Piece, buckling_multiple

pytestmark = pytest.mark.calculix

MODULUS = 29_000.0
SIDE = 3.0
"""A square bar, 3 in x 3 in: slim, so that shear takes nothing off."""
INERTIA = SIDE**4 / 12
PIECES = 4
"""Elements of three nodes in one panel, and in one post."""
HEIGHT = 100.0
THIN = 0.05
"""Length of a post and its thickness along the bridge [in]: it gives way across alone."""


def deck(panel: float, thrusts: tuple[float, ...], springs: tuple[float, ...]) -> Iterator[str]:
    """A straight chord held at its ends, on thin posts that are fast at their feet and do not let
    its joints twist: 12 E I / h^3 = spring. Its thrust grows joint by joint."""
    step = 2 * PIECES
    last = step * len(thrusts)
    yield "*NODE, NSET=ALL"
    yield from (f"{i + 1},{i * panel / step!r},0.,0." for i in range(last + 1))
    yield "*NODE"
    for post in range(1, len(springs) + 1):
        yield from (
            f"{1000 * post + i},{post * panel!r},0.,{-HEIGHT * i / step!r}"
            for i in range(1, step + 1)
        )
    yield "*ELEMENT, TYPE=B32R, ELSET=CHORD"
    yield from (f"{i // 2 + 1},{i + 1},{i + 2},{i + 3}" for i in range(0, last, 2))
    for post in range(1, len(springs) + 1):
        nodes = [post * step + 1, *(1000 * post + i for i in range(1, step + 1))]
        yield f"*ELEMENT, TYPE=B32R, ELSET=POST{post}"
        yield from (
            f"{1000 * post + i // 2},{nodes[i]},{nodes[i + 1]},{nodes[i + 2]}"
            for i in range(0, step, 2)
        )
    yield from ("*MATERIAL, NAME=IRON", "*ELASTIC", f"{MODULUS!r},0.")
    yield "*BEAM SECTION, ELSET=CHORD, MATERIAL=IRON, SECTION=RECT"
    yield from (f"{SIDE!r},{SIDE!r}", "0.,0.,1.")
    for post, spring in enumerate(springs, 1):
        depth = (spring * HEIGHT**3 / MODULUS / THIN) ** (1 / 3)
        yield f"*BEAM SECTION, ELSET=POST{post}, MATERIAL=IRON, SECTION=RECT"
        yield from (f"{depth!r},{THIN!r}", "0.,1.,0.")
    yield from ("*BOUNDARY", "ALL,3,5", "1,2", f"{last + 1},2")
    yield from (f"{1000 * post + step},1,6" for post in range(1, len(springs) + 1))
    yield f"{step * (len(thrusts) // 2) + 1},1"
    yield from ("*STEP", "*BUCKLE", "2,1e-8,60,2000", "*CLOAD")
    before = 0.0
    for i, thrust in enumerate((*thrusts, 0.0)):
        if i != len(thrusts) // 2:
            yield f"{i * step + 1},1,{thrust - before!r}"
        before = thrust
    yield from ("*NODE FILE", "U", "*END STEP", "")


def by_finite_elements(
    folder: Path, panel: float, thrusts: tuple[float, ...], springs: tuple[float, ...]
) -> float:
    (folder / "chord.inp").write_text("\n".join(deck(panel, thrusts, springs)), encoding="ascii")
    subprocess.run(
        ["ccx", "chord"], cwd=folder, check=True, capture_output=True, timeout=60,
        env=os.environ | {"OMP_NUM_THREADS": "1"},
    )
    table = (folder / "chord.dat").read_text(encoding="ascii").split("FACTOR")[-1]
    return float(table.split()[1])


@pytest.mark.parametrize(
    ("thrusts", "springs"),
    [
        ((1.0, 1.0, 1.0, 1.0), (0.05, 0.05, 0.05)),
        ((5.0, 8.0, 9.0, 9.0, 8.0, 5.0), (0.4, 0.4, 0.4, 0.4, 0.4)),
        ((5.0, 8.0, 9.0, 9.0, 8.0, 5.0), (2.0, 0.1, 2.0, 0.1, 2.0)),
        ((3.0, 4.0, 4.0, 3.0), (8.0, 8.0, 8.0)),
    ],
)
def test_the_load_at_which_the_chord_buckles(
    tmp_path: Path, thrusts: tuple[float, ...], springs: tuple[float, ...]
) -> None:
    panel, count = 144.0, len(thrusts)
    ours = buckling_multiple(ElasticChord(
        pieces=tuple(
            Piece(length=panel, rigidity=MODULUS * INERTIA, thrust=one) for one in thrusts
        ),
        springs=(math.inf, *springs, math.inf),
        hinged=(True, *(False,) * (count - 1), True),
    ))
    assert ours == pytest.approx(by_finite_elements(tmp_path, panel, thrusts, springs), rel=0.01)
