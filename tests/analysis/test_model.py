import numpy as np
import pytest

from eyebar.analysis.model import ModelBar, model_of
from eyebar.errors import OutOfRange, Unstable
from tests.analysis.solving import at_rest
from tests.analysis.trusses import bar, crossed_pratt, double_intersection, pratt

SQUARE = {"a": (0.0, 0.0), "b": (100.0, 0.0), "c": (100.0, 100.0), "d": (0.0, 100.0)}
SIDES = [bar("a", "b", 2.0), bar("b", "c", 2.0), bar("d", "c", 2.0), bar("a", "d", 2.0)]
FEET = {"a": (True, True), "b": (False, True)}


def test_a_square_without_a_diagonal_is_refused_by_joint_and_bars() -> None:
    with pytest.raises(Unstable) as refused:
        model_of(SQUARE, SIDES, FEET, truss="upstream")
    # By hand: the upper joints go sideways together; each has its post and the upper side.
    assert refused.value.joint in ("c", "d")
    post = {"c": "b-c", "d": "a-d"}[refused.value.joint]
    assert set(refused.value.bars) == {post, "d-c"}
    assert refused.value.truss == "upstream"
    said = str(refused.value)
    assert said.startswith(
        f"truss upstream is unstable: joint {refused.value.joint} can move sideways"
    )
    assert all(name in said for name in refused.value.bars)


def test_a_diagonal_makes_it_stand() -> None:
    model = model_of(SQUARE, [*SIDES, bar("a", "c", 1.0)], FEET)
    assert len(model.directions) == len(model.bars) == 5


def test_a_joint_with_one_bar_alone_is_named_with_the_way_it_goes() -> None:
    joints = {"a": (0.0, 0.0), "b": (100.0, 0.0), "far": (200.0, 0.0)}
    with pytest.raises(Unstable, match="joint far can move up and down") as refused:
        model_of(
            joints, [bar("a", "b", 1.0), bar("b", "far", 1.0)],
            {"a": (True, True), "b": (True, True)},
        )
    assert refused.value.bars == ("b-far",)


def test_a_truss_without_supports_is_refused() -> None:
    drawing = pratt(6)
    with pytest.raises(Unstable, match="no bar resists it"):
        model_of(drawing.joints, drawing.bars, {})


def test_a_double_intersection_truss_stands_without_two_diagonals_but_not_without_three() -> None:
    # By counting: 39 bars, 37 free directions, so two bars too many.
    whole = double_intersection()
    assert len(whole.bars) - len(whole.model().directions) == 2
    whole.without("U1-L3", "U4-L6").model()
    with pytest.raises(Unstable):
        whole.without("U1-L3", "U4-L6", "U2-L4").model()


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"area": 0.0}, "stiffness of bar a-b"),
        ({"area": -1.0}, "stiffness of bar a-b"),
        ({"area": float("nan")}, "stiffness of bar a-b"),
        ({"modulus": 0.0}, "stiffness of bar a-b"),
        ({"ends": ("a", "a")}, "length of bar a-b"),
        ({"can_push": False, "can_pull": False}, "bar a-b"),
        ({"initial_kip": 1.0, "gap_in": 0.1}, "bar a-b"),
    ],
)
def test_a_senseless_bar_is_refused_by_name(changed: dict[str, object], what: str) -> None:
    facts: dict[str, object] = {"name": "a-b", "ends": ("a", "b"), "area": 1.0, "modulus": 27e3}
    senseless = ModelBar(**(facts | changed))  # type: ignore[arg-type]
    with pytest.raises(OutOfRange) as refused:
        model_of(SQUARE, [senseless, *SIDES[1:], bar("a", "c", 1.0)], FEET)
    assert refused.value.what == what


def test_weights_on_supports_load_no_bar() -> None:
    # By hand: what hangs on a support goes straight into it.
    model = crossed_pratt().model()
    assert not model.loads({"L0": 100.0, "L6": 50.0}).any()


def test_the_arrays_of_a_model_are_read_only() -> None:
    model = crossed_pratt().model()
    with pytest.raises(ValueError, match="read-only"):
        model.influence[0, 0] = 1.0


def test_the_mutual_effect_of_slack_bars_is_a_part_of_an_orthogonal_projection() -> None:
    # Law: symmetrical, eigenvalues from 0 to 1, rank no more than the redundancy, here four.
    matrix = crossed_pratt().model().slack_matrix
    assert np.allclose(matrix, matrix.T, atol=1e-12)
    values = np.linalg.eigvalsh(matrix)
    assert values[0] > -1e-12
    assert values[-1] < 1.0 + 1e-12
    assert (values > 1e-9).sum() == 4


def test_bars_go_by_name_in_the_order_in_which_they_were_given() -> None:
    drawing = crossed_pratt()
    assert list(at_rest(drawing, {"L3": 10.0})) == drawing.names


def test_a_roller_that_holds_neither_way_is_no_support() -> None:
    drawing = pratt(6)
    with pytest.raises(Unstable):
        model_of(drawing.joints, drawing.bars, {"L0": (True, True), "L6": (False, False)})
