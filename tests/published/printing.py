"""Printed figures: equal means within half a unit of the last printed digit."""

from decimal import Decimal


class Printed:
    """A figure as a source prints it, with the tolerance its print allows."""

    def __init__(self, text: str, tolerance: float, because: str) -> None:
        self.text = text
        self.value = float(text.replace(",", ""))
        self.tolerance = tolerance
        self.because = because

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | float):
            return NotImplemented
        # A hair more than the tolerance, for what binary fractions cannot hold exactly.
        return abs(other - self.value) <= self.tolerance * (1 + 1e-9) + 1e-12

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        reason = f", {self.because}" if self.because else ""
        return f"printed {self.text} (± {self.tolerance:g}{reason})"


def printed(
    text: str, *, unit: float | None = None, within: float | None = None, because: str = ""
) -> Printed:
    """The printed figure `text`, commas allowed: `4.515 == printed("4.515")`.

    `unit` is what one unit of the last meaning digit is worth where trailing zeros stand for
    nothing (`printed("13,700", unit=100)`). A looser tolerance, `within` in the figure's own unit,
    needs a sentence in `because`.
    """
    if within is not None:
        if not because:
            raise ValueError(f"the looser tolerance of {text} needs a sentence")
        return Printed(text, within, because)
    exponent = Decimal(text.replace(",", "")).as_tuple().exponent
    if not isinstance(exponent, int):
        raise ValueError(f"{text} is no printed figure")
    last = unit if unit is not None else 10.0**exponent
    return Printed(text, last / 2, because)
