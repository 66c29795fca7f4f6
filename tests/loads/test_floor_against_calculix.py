"""Beams of the floor against CalculiX: stringers that run on, and a trussed floorbeam.

Beams are B32R, which CalculiX makes bricks of, slender enough that shear hardly gives; rods and
posts are T3D2. Its beams are bricks: agreement within one per cent of the greatest figure.
"""

import os
import subprocess
from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np
import pytest

from eyebar.loads.continuous import REACTION, ContinuousBeam
from eyebar.loads.trussed import give_of_trussing, moments_multiplied, rod_pull

pytestmark = pytest.mark.calculix

WIDTH, DEPTH, MODULUS = 2.0, 4.0, 1600.0
INERTIA, AREA = WIDTH * DEPTH**3 / 12, WIDTH * DEPTH
CLOSE = 0.01


def run(lines: Sequence[str], folder: Path) -> str:
    (folder / "beam.inp").write_text("\n".join([*lines, ""]), encoding="ascii")
    subprocess.run(
        ["ccx", "beam"], cwd=folder, check=True, capture_output=True, timeout=120,
        env=os.environ | {"OMP_NUM_THREADS": "1"},
    )
    return (folder / "beam.dat").read_text(encoding="ascii")


def beam_lines(length: float, elements: int) -> list[str]:
    """Nodes 1 ... along x and the beam's elements."""
    count = 2 * elements
    lines = ["*NODE, NSET=BEAM"]
    lines += [f"{i + 1},{length * i / count!r},0.,0." for i in range(count + 1)]
    lines += ["*MATERIAL, NAME=WOOD", "*ELASTIC", f"{MODULUS},0."]
    lines += ["*ELEMENT, TYPE=B32R, ELSET=STICK"]
    lines += [f"{e + 1},{2 * e + 1},{2 * e + 2},{2 * e + 3}" for e in range(elements)]
    return [*lines, "*BEAM SECTION, ELSET=STICK, MATERIAL=WOOD, SECTION=RECT",
            f"{WIDTH},{DEPTH}", "0.,0.,1."]


def figures(text: str, heading: str) -> Mapping[int, np.ndarray]:
    """First number of a line -> the others, of the last table under a heading."""
    table = text.rsplit(heading, maxsplit=1)[-1].splitlines()[1:]
    rows: dict[int, list[float]] = {}
    for line in table:
        parts = line.split()
        if parts and not parts[0].isdigit():
            break
        if parts:
            rows[int(parts[0])] = [float(one) for one in parts[1:]]
    return {key: np.array(row) for key, row in rows.items()}


@pytest.mark.parametrize("spans", [(180, 180), (144, 216, 180)])
def test_reactions_of_a_stringer_that_runs_on(spans: tuple[int, ...], tmp_path: Path) -> None:
    total, each = sum(spans), 12.0
    elements = round(total / each)
    supports = [round(2 * sum(spans[:i]) / each) + 1 for i in range(len(spans) + 1)]
    loaded = round(2 * 0.4 * spans[0] / each / 2) * 2 + 1
    lines = beam_lines(float(total), elements)
    lines += [f"*NSET, NSET=SUPPORTS\n{','.join(map(str, supports))}", "*BOUNDARY"]
    lines += ["BEAM,3,5", *(f"{node},2,2" for node in supports), "1,1,1"]
    lines += ["*STEP", "*STATIC", "*CLOAD", f"{loaded},2,-1.", "*NODE PRINT, NSET=SUPPORTS", "RF",
              "*END STEP"]
    found = figures(run(lines, tmp_path), "forces (fx,fy,fz)")
    beam = ContinuousBeam(spans_ft=tuple(one / 12.0 for one in spans))
    at = np.array([total * (loaded - 1) / (2 * elements) / 12.0])
    for i, node in enumerate(supports[1:-1], start=1):
        ours = beam.line(REACTION, float(beam.supports_ft[i]), i, at)[0]
        assert ours == pytest.approx(found[node][1], abs=CLOSE)


@pytest.mark.parametrize("load", [60.0, 120.0])
def test_the_pull_of_the_rods_under_a_floorbeam(load: float, tmp_path: Path) -> None:
    span, drop, rod, post, elements = 240.0, 20.0, 0.5, 8.0, 20
    last = 2 * elements + 1
    middle, foot = elements + 1, 1000
    loaded = round(load / span * 2 * elements) + 1
    lines = beam_lines(span, elements)
    lines += ["*NODE", f"{foot},{span / 2},{-drop},0.", "*MATERIAL, NAME=IRON", "*ELASTIC",
              "29000.,0.", "*ELEMENT, TYPE=T3D2, ELSET=RODS", f"101,1,{foot}",
              f"102,{foot},{last}", "*SOLID SECTION, ELSET=RODS, MATERIAL=IRON", f"{rod}",
              "*ELEMENT, TYPE=T3D2, ELSET=POST", f"103,{foot},{middle}",
              "*SOLID SECTION, ELSET=POST, MATERIAL=IRON", f"{post}", "*BOUNDARY", "BEAM,3,5",
              f"{foot},3,3", "1,1,2", f"{last},2,2", "*STEP", "*STATIC", "*CLOAD",
              f"{loaded},2,-1.", "*EL PRINT, ELSET=RODS", "S", "*END STEP"]
    text = run(lines, tmp_path).split("stresses")[-1].splitlines()[1:]
    rows = [line.split() for line in text if line.strip()]
    stress = np.mean([sum(float(one) for one in row[2:5]) for row in rows if row[0] == "101"])
    give = give_of_trussing(
        drop=drop, beam_span=span, to_post=span / 2, modulus=MODULUS, inertia=INERTIA, area=AREA,
        rod_modulus=29_000.0, rod_area=rod, posts=1.0, slopes=2.0, post_stiffness=29_000.0 * post,
    )
    along = rod_pull(
        moments_multiplied(min(load, span - load), span / 2, span, drop), MODULUS, INERTIA, give
    )
    slant = (1.0 + (drop / (span / 2)) ** 2) ** 0.5
    assert along * slant == pytest.approx(stress * rod, rel=CLOSE)
