"""One-sided tolerance factors of normal samples.

1. C. Zaiontz, "Tolerance Interval Example", real-statistics.com: sample of 40, mean 10, standard
   deviation .2, 90 % share, 99 % confidence: k = 1.9017 (non-central t), limit 9.6197.
2. D. B. Owen, *Factors for One-Sided Tolerance Limits and for Variables Sampling Plans*, Sandia
   Corporation SCR-607 (1963), from memory: the columns for 95 % share at 95 % and at 75 %
   confidence.
"""

import pytest

from eyebar.materials import tolerance_factor
from eyebar.materials.coupons import tolerance_limit
from tests.published.printing import printed


def test_the_example_of_forty_tests() -> None:
    factor = tolerance_factor(40, share=0.90, confidence=0.99)
    assert factor == printed("1.9017")
    assert tolerance_limit(10.0, factor, 0.2) == printed("9.6197")


@pytest.mark.parametrize(
    ("confidence", "number", "factor"),
    [
        (0.95, 3, "7.656"), (0.95, 5, "4.203"), (0.95, 10, "2.911"), (0.95, 20, "2.396"),
        (0.75, 3, "3.152"), (0.75, 5, "2.463"), (0.75, 10, "2.104"), (0.75, 20, "1.932"),
    ],
)
def test_the_table_for_95_percent(confidence: float, number: int, factor: str) -> None:
    assert tolerance_factor(number, share=0.95, confidence=confidence) == printed(factor)
