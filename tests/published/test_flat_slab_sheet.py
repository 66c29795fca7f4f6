"""Design of a flat slab, scribd.com document 171645838: constants of working stress design.

f'_c 3 ksi (f_c 1.35), f_s 20 ksi, n 9: k 0.378, j 0.874, R 0.223 ksi, the moment over b d² at which
bars and concrete reach their stresses together.
"""

import pytest

from eyebar.resistance.slabs import bars_modulus_of, concrete_modulus_of, pushed_part
from tests.published.printing import printed

PUSHED = 9 * 1.35 / (9 * 1.35 + 20)
BARS = PUSHED * 1.35 / 2 / 20
"""Area over depth at which both stresses are reached at once: C = T."""


def test_the_pushed_part_with_balanced_bars() -> None:
    assert pushed_part(9.0, BARS, 1.0) == printed("0.378")


def test_the_moment_of_both() -> None:
    assert 1.35 * concrete_modulus_of(1.0, PUSHED, 1.0) == printed("0.223")
    assert 20.0 * bars_modulus_of(1.0, BARS, 1.0, PUSHED) == printed("0.223")
    assert bars_modulus_of(1.0, BARS, 1.0, PUSHED) / BARS == printed("0.874")
    assert pytest.approx(0.01276, rel=1e-3) == BARS
