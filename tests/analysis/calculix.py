"""CalculiX, a general finite element program, asked for the forces of a truss: T3D2 bars."""

import os
import subprocess
from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np

from tests.analysis.trusses import Drawing

DIGITS = 1e-6
"""CalculiX prints seven figures of a stress: forces are good to this part of the greatest."""


def deck(drawing: Drawing, cases: Sequence[Mapping[str, float]]) -> str:
    """The input for weights [kip, down] on joints, one step a case; every bar pulls and pushes."""
    number = {joint: n for n, joint in enumerate(drawing.joints, start=1)}
    lines = ["*NODE, NSET=ALL"]
    lines += [f"{number[j]},{x!r},{y!r},0." for j, (x, y) in drawing.joints.items()]
    lines += ["*MATERIAL, NAME=M", "*ELASTIC", f"{drawing.bars[0].modulus!r},0."]
    assert len({bar.modulus for bar in drawing.bars}) == 1, "one metal a deck"
    for n, bar in enumerate(drawing.bars, start=1):
        lines += [f"*ELEMENT, TYPE=T3D2, ELSET=B{n}"]
        lines += [f"{n},{number[bar.ends[0]]},{number[bar.ends[1]]}"]
        lines += [f"*SOLID SECTION, ELSET=B{n}, MATERIAL=M", f"{bar.area!r}"]
    lines += ["*ELSET, ELSET=BARS, GENERATE", f"1,{len(drawing.bars)}"]
    lines += ["*BOUNDARY", "ALL,3,3"]
    for joint, held in drawing.supports.items():
        lines += [f"{number[joint]},{axis + 1},{axis + 1}" for axis in (0, 1) if held[axis]]
    for case in cases:
        lines += ["*STEP", "*STATIC", "*CLOAD, OP=NEW"]
        # A joint on a support takes nothing into the truss; a step needs one weight at least.
        free = [joint for joint in drawing.joints if joint not in drawing.supports]
        lines += [f"{number[joint]},2,{-float(case.get(joint, 0.0))!r}" for joint in free]
        lines += ["*EL PRINT, ELSET=BARS", "S", "*END STEP"]
    return "\n".join([*lines, ""])


def forces(
    drawing: Drawing, cases: Sequence[Mapping[str, float]], folder: Path
) -> list[dict[str, float]]:
    """Bar -> force [kip] for each case, run in `folder`."""
    (folder / "truss.inp").write_text(deck(drawing, cases), encoding="ascii")
    subprocess.run(
        ["ccx", "truss"], cwd=folder, check=True, capture_output=True, timeout=60,
        env=os.environ | {"OMP_NUM_THREADS": "1"},
    )
    blocks = (folder / "truss.dat").read_text(encoding="ascii").split("stresses")[1:]
    assert len(blocks) == len(cases)
    return [_forces(drawing, block) for block in blocks]


def _forces(drawing: Drawing, block: str) -> dict[str, float]:
    """A bar's stress is the sum of the three direct ones, the same at all points of the element."""
    rows = [line.split() for line in block.splitlines()[1:] if line.strip()]
    table = np.array([[float(figure) for figure in row] for row in rows])
    stress = {int(n): table[table[:, 0] == n, 2:5].sum(axis=1).mean() for n in set(table[:, 0])}
    return {bar.name: bar.area * stress[n] for n, bar in enumerate(drawing.bars, start=1)}
