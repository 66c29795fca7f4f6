"""What a few tested coupons prove about the strength of all the metal of their kind.

Never a mean: half of the metal is weaker than that. With few coupons the scatter itself is
uncertain, and the tolerance factor of the sample size pays for it.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula, note, procedure

LEAST_COUPONS = 3
"""Two coupons say next to nothing about scatter: their factor is about 26 at 95 % confidence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Characteristic:
    """A value that `share` of the metal reaches, with `confidence`.

    `value`, `mean`, `deviation` in the sample's unit; `factor` deviations were taken off the mean
    of `number` coupons.
    """

    value: float
    mean: float
    deviation: float
    factor: float
    number: int
    share: float
    confidence: float

    @property
    def sentence(self) -> str:
        """How the value came about."""
        return (
            f"{self.number} coupons, mean {self.mean:.4g}, standard deviation {self.deviation:.3g}:"
            f" {self.share:.0%} of the metal reaches mean - {self.factor:.3f} deviations, with"
            f" {self.confidence:.0%} confidence"
        )


@formula(
    "x = m - k * s",
    result=Symbol("characteristic value", "ksi"),
    m=Symbol("mean of the coupons", "ksi", "mean"),
    k=Symbol("tolerance factor", "1", "factor"),
    s=Symbol("standard deviation of the coupons", "ksi", "deviation"),
    source="one-sided tolerance limit of a normal sample, ISO 16269-6, from memory",
)
def tolerance_limit(mean: float, factor: float, deviation: float) -> float:
    """Characteristic value of a sample [ksi].

    Mean, standard deviation [ksi], factor [1]; scalars or arrays. Limits: deviation 0 and more.
    """
    return mean - factor * deviation


@procedure(
    "one-sided tolerance factor of a normal sample",
    source="non-central t distribution: k = t(confidence; n - 1, z sqrt(n)) / sqrt(n)",
    steps=(
        "z: standard deviations that the wanted share of a normal population lies above",
        "t: quantile of the non-central t distribution at the wanted confidence",
        "k = t / sqrt(n)",
    ),
)
def tolerance_factor(number: int, *, share: float, confidence: float) -> float:
    """Standard deviations to take off the mean of `number` tests [1].

    Scalars. Limits: 3 tests and more, share and confidence between 0.5 and 1 (OutOfRange).
    """
    from scipy.special import nctdtrit, ndtri

    if number < LEAST_COUPONS:
        raise OutOfRange("number of coupons", number, f"{LEAST_COUPONS} or more")
    for what, value in (("share", share), ("confidence", confidence)):
        if not 0.5 <= value < 1.0:
            raise OutOfRange(f"{what} of a characteristic value", value, "from 0.5 to below 1")
    z = float(ndtri(share))
    quantile = float(nctdtrit(number - 1, z * math.sqrt(number), confidence))
    note("standard deviations of the wanted share", "z", z, "1")
    note("quantile of the non-central t distribution", "t", quantile, "1")
    return quantile / math.sqrt(number)


@procedure(
    "characteristic value of tested coupons",
    source="one-sided tolerance limit of a normal sample, ISO 16269-6, from memory",
    steps=("mean", "standard deviation", "tolerance factor", "characteristic value"),
)
def characteristic_value(
    sample: Sequence[float], *, share: float, confidence: float
) -> Characteristic:
    """The value that `share` of the metal reaches with `confidence` [ksi].

    Scalars; `sample` [ksi] has one for each coupon. Limits: 3 coupons and more, each above 0, and a
    scatter that leaves something (OutOfRange). The coupons are taken to be drawn at random from
    normally distributed metal of one kind.
    """
    if any(not math.isfinite(value) or value <= 0 for value in sample):
        raise OutOfRange("strength of a coupon", min(sample), "above 0")
    number = len(sample)
    factor = tolerance_factor(number, share=share, confidence=confidence)
    mean = math.fsum(sample) / number
    deviation = math.sqrt(math.fsum((value - mean) ** 2 for value in sample) / (number - 1))
    note("mean of the coupons", "m", mean, "ksi")
    note("standard deviation of the coupons", "s", deviation, "ksi")
    value = tolerance_limit(mean, factor, deviation)
    if value <= 0:
        raise OutOfRange(
            "characteristic value", f"{value:.3g} ksi",
            "above 0: the coupons scatter too much for their number, so test more of them",
        )
    return Characteristic(
        value=value, mean=mean, deviation=deviation, factor=factor, number=number, share=share,
        confidence=confidence,
    )
