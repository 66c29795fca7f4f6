"""CalculiX on every form whose bars statics alone does not tell, as its program lays it out."""

from pathlib import Path

import pytest

from eyebar.terms import EndPosts, FloorOn, Form, SubMembers
from tests.analysis import calculix
from tests.analysis.solving import at_rest
from tests.bridge.forms import bearings, drawing, form, redundancy

pytestmark = pytest.mark.calculix

UPPER = {"floor": FloorOn.UPPER}
HUNG = {"floor": FloorOn.UPPER, "end_posts": EndPosts.NONE}
UPRIGHT = {"end_posts": EndPosts.VERTICAL}
CASES: dict[str, tuple[Form, int, dict[str, object]]] = {
    "queen post, crossed": (Form.QUEEN_POST, 3, {"counters": ("U1-L2", "U2-L1")}),
    "small Pratt": (Form.SMALL_PRATT, 3, {}),
    "Pratt of seven panels with counters": (
        Form.PRATT, 7, {"counters": ("U3-L2", "U4-L5")},
    ),
    "Pratt that hangs": (Form.PRATT, 7, HUNG),
    "half-hip Pratt with counters": (Form.HALF_HIP_PRATT, 6, {"counters": ("U3-L2", "U3-L4")}),
    "double-intersection Pratt": (Form.DOUBLE_INTERSECTION_PRATT, 10, {}),
    "double-intersection Pratt, odd": (Form.DOUBLE_INTERSECTION_PRATT, 9, UPPER),
    "double-intersection Pratt that hangs": (Form.DOUBLE_INTERSECTION_PRATT, 8, HUNG),
    "Parker with counters": (Form.PARKER, 8, {"counters": ("U4-L3", "U4-L5")}),
    "Camelback": (Form.CAMELBACK, 7, {}),
    "Warren with verticals, odd": (Form.WARREN_WITH_VERTICALS, 5, UPRIGHT),
    "double-intersection Warren": (Form.DOUBLE_INTERSECTION_WARREN, 6, {}),
    "double-intersection Warren, odd": (Form.DOUBLE_INTERSECTION_WARREN, 7, UPRIGHT),
    "double-intersection Warren that hangs": (Form.DOUBLE_INTERSECTION_WARREN, 6, HUNG),
    "Howe, odd": (Form.HOWE, 7, {}),
    "Baltimore with a crossed middle": (Form.BALTIMORE, 10, {}),
    "Baltimore with counters": (Form.BALTIMORE, 8, {"counters": ("U4-M3", "U4-M5")}),
    "Pennsylvania with sub-ties": (
        Form.PENNSYLVANIA, 12, {"sub_members": SubMembers.TIES, "counters": ("M5-L4", "M7-L8")},
    ),
    "bowstring, crossed": (
        Form.BOWSTRING, 6,
        {"counters": ("U1-L2", "U2-L1", "U2-L3", "U3-L2", "U3-L4", "U4-L3", "U4-L5", "U5-L4")},
    ),
    "lenticular, crossed": (
        Form.LENTICULAR, 6,
        {"counters": ("U1-L2", "U2-L1", "U2-L3", "U3-L2", "U3-L4", "U4-L3", "U4-L5", "U5-L4")},
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_every_bar_of_a_form_with_bars_to_spare_has_calculixs_force(
    case: str, tmp_path: Path
) -> None:
    word, panels, how = CASES[case]
    layout = form(word, panels, **how)
    whole = drawing(layout)
    inner = [joint for joint, _ in layout.floor_joints if joint not in bearings(layout)]
    # Weights differ from joint to joint, so that no bar is idle by symmetry alone.
    loads = {joint: 3.0 + 2.0 * i for i, joint in enumerate(inner)}
    (by_calculix,) = calculix.forces(whole, [loads], tmp_path)
    most = max(abs(kip) for kip in by_calculix.values())
    found = at_rest(whole, loads)
    for name, kip in by_calculix.items():
        assert found[name] == pytest.approx(kip, abs=most * calculix.DIGITS), name


def test_those_forms_have_bars_to_spare() -> None:
    # By hand, bars + 3 - 2 joints: a form that statics tells is put to computer algebra instead.
    spare = {
        case: redundancy(form(word, count, **how)) for case, (word, count, how) in CASES.items()
    }
    assert [case for case, bars in spare.items() if bars < 1] == []
