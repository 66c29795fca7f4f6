"""The tangent of a pin's whole check: in which sense each bar's force brings it to its limit.

Bending and shear together grow neither as the moment nor as the shear alone: the lane load that is
worst for both is worst for the tangent of their sum, and for none of the two by itself.
"""

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.rating.pin_checks import PinCheck
from eyebar.terms import Method

NEAR, TINY = 0.5, 1e-290


def units(vectors: Floats) -> Floats:
    """(r, 2) unit vectors; across where there is none."""
    size = np.hypot(vectors[:, 0], vectors[:, 1])[:, None]
    some: Floats = np.where(size > 0.0, vectors / np.where(size > 0.0, size, 1.0), [1.0, 0.0])
    return some


def tangents(check: PinCheck, forces: Floats) -> Floats:
    """(c, b) what bending and shear together at a bearing grow by with each of the forces (b,), the
    shear on either side of it, where they are no less than `NEAR` as great as their limit; none
    where the two are checked apart, by tangents of their own."""
    if check.rules.method is Method.ALLOWABLE_STRESS:
        return np.zeros((0, len(forces)))
    both = check.rows.reshape(2, -1, len(forces))
    k = both.shape[1] // 3
    parts = (both @ forces)[:, : 2 * k]
    size = np.hypot(*parts)
    each: Floats = ((parts / np.maximum(size, TINY))[:, :, None] * both[:, : 2 * k]).sum(axis=0)
    shear = np.minimum(size[k:], 1.0)
    cut = 3.0 * (shear**2)[:, None] * each[k:]
    found = np.concatenate([each[:k] + cut, each[1:k] + cut[:-1]])
    sums = np.concatenate([size[:k] + shear**3, size[1:k] + shear[:-1] ** 3])
    near: Floats = found[sums >= NEAR * check.rules.together]
    return near
