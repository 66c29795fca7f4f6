"""What a change does to the posting, in words."""

from eyebar.views.measure import effect
from eyebar.views.register import effect as posting_words

RATING = {"method": "allowable stress", "level": "operating", "check": "tension"}


def rate(tons: float, **factors: float) -> dict:
    """A `rate` document, as much of it as is looked at: by the posting's method one factor a part,
    and a smaller one at inventory."""
    posting = {
        "method": RATING["method"], "level": RATING["level"], "vehicles": ["H15"],
        "closed": tons < 3.0, "sign": None, "provisional": False, "exact_tons": tons,
        "governed_by": {"part": "a/U1-L2", "vehicle": "H15", **RATING, "factor": 0.5},
    }
    return {"posting": posting, "parts": [
        {"part": f"a/{name}", "ratings": [
            {**RATING, "vehicle": "H15", "factor": factor},
            {**RATING, "level": "inventory", "vehicle": "H15", "factor": factor / 2.0},
            {**RATING, "vehicle": "HS20", "factor": factor / 3.0},
        ]} for name, factor in factors.items()
    ]}


def test_a_safe_load_is_never_rounded_up() -> None:
    # A bridge that carries 2.999 tons does not carry three.
    said = posting_words({"posting": "Close this bridge", "exact_tons": 2.999, "refusal": None})
    assert said == "Close this bridge (least safe load 2.99 tons)"


def test_factors_that_move_are_those_of_the_posting_most_first() -> None:
    found = effect(rate(2.5, U1=1.0, U2=0.8, U3=0.6), rate(2.5, U1=0.9, U2=0.5, U3=0.6))
    assert found.parts == (("a/U2", "0.80", "0.50"), ("a/U1", "1.00", "0.90"))
    assert found.why == ()


def test_what_cannot_be_rated_says_all_that_is_wanting() -> None:
    found = effect(rate(2.5, U1=1.0), "text:3: no depth\ntext:9: no panels")
    assert found.after == "cannot be rated: text:3: no depth"
    assert found.why == ("text:3: no depth", "text:9: no panels")
    assert (found.parts, found.governed) == ((), "")
    assert effect("text:3: no depth", rate(2.5, U1=1.0)).before.startswith("cannot be rated")
