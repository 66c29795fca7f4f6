"""The first root of a cubic: where a use that is a ratio of polynomials first reaches 1."""

import math

_SMALLEST_STEP = 4e-16
_STEPS = 100


def first_root(coefficients: tuple[float, float, float, float], upper: float) -> float | None:
    """The least x in [0, upper] at which c0 + c1 x + c2 x^2 + c3 x^3 is no longer above zero.

    0 where c0 is not above zero; None where the cubic stays above zero up to `upper`. Between
    turning points a cubic only rises or only falls, so that no root is stepped over.
    """
    c0, c1, c2, c3 = coefficients
    if c0 <= 0.0:
        return 0.0
    low = 0.0
    for high in (*_turning_points(c1, 2 * c2, 3 * c3, upper), upper):
        if _cubic(coefficients, high) <= 0.0:
            return _narrowed(coefficients, low, high)
        low = high
    return None


def _cubic(coefficients: tuple[float, float, float, float], x: float) -> float:
    c0, c1, c2, c3 = coefficients
    return c0 + x * (c1 + x * (c2 + x * c3))


def _turning_points(c1: float, c2: float, c3: float, upper: float) -> list[float]:
    """Zeros of c1 + c2 x + c3 x^2 between 0 and `upper`, in order."""
    if c3 == 0.0:
        found = [-c1 / c2] if c2 else []
    else:
        square = c2**2 - 4 * c3 * c1
        if square <= 0.0:
            return []
        # The form that does not subtract nearly equal numbers.
        half = -0.5 * (c2 + math.copysign(math.sqrt(square), c2))
        found = [half / c3] + ([c1 / half] if half else [])
    return sorted(x for x in found if 0.0 < x < upper)


def _narrowed(
    coefficients: tuple[float, float, float, float], low: float, high: float
) -> float:
    """Newton's steps, halving where they leave the bracket; above zero at low, not at high."""
    _, c1, c2, c3 = coefficients
    x = 0.5 * (low + high)
    for _ in range(_STEPS):
        value = _cubic(coefficients, x)
        if value > 0.0:
            low = x
        else:
            high = x
        slope = c1 + x * (2 * c2 + x * 3 * c3)
        step = x - value / slope if slope else low
        following = step if low < step < high else 0.5 * (low + high)
        if abs(following - x) <= _SMALLEST_STEP * abs(x):
            return following
        x = following
    return x
