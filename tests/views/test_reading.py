"""The measure of reading itself."""

import pytest

from tests.views.reading import grade, syllables


def test_the_measure_of_reading_is_the_published_formula() -> None:
    # By hand: 6 words in 1 sentence, 6 syllables: 0.39 x 6 + 11.8 x 1 - 15.59 = -1.45.
    assert grade("The cat sat on the mat.") == pytest.approx(-1.45)
    # By hand: 3 words, 9 syllables (cal-cu-la-tion is 4, de-ter-mines 3, ca-pa-ci-ty ... ).
    assert [syllables(one) for one in ("bridge", "measured", "pulled", "final", "people")] == [
        1, 2, 1, 2, 2
    ]
