"""A pin as a beam on its bearings, against SymPy's beams and against CalculiX.

Both are given nothing but loads along a bar: at the middle of each bearing, or spread over it. The
pin is one of an invented bridge, told from end to end or by half, under forces drawn at random.
"""

import os
import subprocess
from pathlib import Path

import numpy as np
import pytest
from sympy import Rational
from sympy.physics.continuum_mechanics.beam import Beam

from eyebar.analysis.pins import PinBeam, PinBearing, pin_beam

SLANT = 0.8
TOWARD = {
    "L3-L4": (-1.0, 0.0), "L4-L5": (1.0, 0.0), "U2-L4": (-0.6, SLANT), "U6-L4": (0.6, SLANT),
    "U4-L4": (0.0, 1.0),
}
PACKED = (("L4-L5", 0.75), ("L3-L4", 0.75), ("L4-L5", 0.75), ("L3-L4", 0.75), ("U2-L4", 0.5),
          ("", 1.25), ("U4-L4", 0.75), ("U6-L4", 1.0))
GAP = 0.25
"""Thicknesses and gaps are such that bearings begin and end at whole eighths of an inch."""


def the_pin() -> tuple[PinBeam, np.ndarray]:
    """Half a pin with all that comes together at a lower joint, and forces [kip] of its bars."""
    at, bearings = 0.0, []
    for bar, thickness in PACKED:
        share = 0.25 if bar in ("L3-L4", "L4-L5") else 0.5
        bearings.append(PinBearing(bar=bar, along=at + thickness / 2, thickness=thickness,
                                   share=share))
        at += thickness + GAP
    forces = np.random.default_rng(1886).normal(size=len(TOWARD)) * 40.0
    return pin_beam(TOWARD, bearings, whole=0.5, pin="upstream/L4/pin"), forces


@pytest.mark.parametrize("plane", [0, 1])
def test_moments_and_shears_are_those_of_sympys_beam(plane: int) -> None:
    # SymPy counts a load down as positive; its moment then has the other sign.
    pin, forces = the_pin()
    loads = pin.loads @ forces
    length = pin.bearings[-1].along + 2.0
    points, spread = Beam(length, 1, 1), Beam(length, 1, 1)
    for one, load in zip(pin.bearings, loads[:, plane].tolist(), strict=True):
        middle, half = Rational(one.along), Rational(one.thickness) / 2
        points.apply_load(load, middle, -1)
        spread.apply_load(load / one.thickness, middle - half, 0, end=middle + half)
    x = points.variable
    moment, shear, eased = points.bending_moment(), points.shear_force(), spread.bending_moment()
    for k, one in enumerate(pin.bearings):
        at = Rational(one.along)
        assert abs(moment.subs(x, at)) == pytest.approx(
            abs((pin.moments @ forces)[k, plane]), abs=1e-9)
        assert abs(shear.subs(x, at + Rational(1, 1000))) == pytest.approx(
            abs((pin.shears @ forces)[k, plane]), abs=1e-9)
        assert abs(eased.subs(x, at)) == pytest.approx(
            abs((pin.eased @ forces)[k, plane]), abs=1e-9)


STEP = 0.125
BEFORE = 2.0
"""The bar begins so far outside the first bearing; as far beyond the last it is held: the other
half of the pin."""
SIDE = 0.05
"""The bar is thin, so that shear bends it no further."""
MODULUS = 3e10


def _bent(pin: PinBeam, forces: np.ndarray, folder: Path, *, spread: bool) -> np.ndarray:
    """(n, 2) how far CalculiX's nodes go in both planes; three-node beams, a step long each."""
    count = round((pin.bearings[-1].along + 2.0 * BEFORE) / STEP)
    nodes = 2 * count + 1
    on = np.zeros((nodes, 2))
    for one, load in zip(pin.bearings, pin.loads @ forces, strict=True):
        if spread:
            first = round((BEFORE + one.along - one.thickness / 2) / STEP)
            elements = range(first, first + round(one.thickness / STEP))
            for element in elements:
                for node, part in zip((0, 1, 2), (1 / 6, 4 / 6, 1 / 6), strict=True):
                    on[2 * element + node] += part * load / len(elements)
        else:
            on[2 * round((BEFORE + one.along) / STEP)] += load
    lines = ["*NODE, NSET=ALL", *(f"{i + 1},{i * STEP / 2!r},0.,0." for i in range(nodes))]
    lines += ["*ELEMENT, TYPE=B32R, ELSET=PIN"]
    lines += [f"{i + 1},{2 * i + 1},{2 * i + 2},{2 * i + 3}" for i in range(count)]
    lines += ["*MATERIAL, NAME=M", "*ELASTIC", f"{MODULUS!r},0.",
              "*BEAM SECTION, ELSET=PIN, MATERIAL=M, SECTION=RECT", f"{SIDE!r},{SIDE!r}",
              "0.,0.,1.", "*BOUNDARY", f"{nodes},1,6", "*STEP", "*STATIC", "*CLOAD"]
    lines += [f"{i + 1},{axis + 2},{float(on[i, axis])!r}"
              for i in range(nodes) for axis in (0, 1) if on[i, axis]]
    lines += ["*NODE PRINT, NSET=ALL", "U", "*END STEP", ""]
    (folder / "pin.inp").write_text("\n".join(lines), encoding="ascii")
    subprocess.run(["ccx", "pin"], cwd=folder, check=True, capture_output=True, timeout=60,
                   env=os.environ | {"OMP_NUM_THREADS": "1"})
    rows = (folder / "pin.dat").read_text(encoding="ascii").split("displacements")[1]
    table = np.array([[float(x) for x in line.split()] for line in rows.splitlines()[1:]
                      if line.strip()])
    return table[table[:, 0].argsort()][::2, 2:4]


@pytest.mark.calculix
@pytest.mark.parametrize("spread", [False, True])
def test_calculix_bends_a_bar_by_the_same_moments(spread: bool, tmp_path: Path) -> None:
    # A bar's second difference is its moment over EI, and what the moment's own bend adds within
    # two steps: step x load / 6 at a load on one point, step^2 x load per inch / 12 under a spread
    # one. CalculiX prints seven figures, of which the difference loses three.
    pin, forces = the_pin()
    down = _bent(pin, forces, tmp_path, spread=spread)
    stiffness = MODULUS * SIDE**4 / 12.0
    moments = (pin.eased if spread else pin.moments) @ forces
    most = np.abs(moments).max()
    for k, one in enumerate(pin.bearings):
        i = round((BEFORE + one.along) / STEP)
        bent = stiffness * (down[i - 1] - 2.0 * down[i] + down[i + 1]) / STEP**2
        load = (pin.loads @ forces)[k]
        own = STEP**2 * load / one.thickness / 12.0 if spread else STEP * load / 6.0
        error = np.minimum(np.abs(bent - moments[k] - own), np.abs(bent + moments[k] + own))
        assert error.max() < 2e-3 * most
