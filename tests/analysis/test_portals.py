"""Portals under wind, by the method of the textbooks of 1900, worked by hand."""

import pytest

from eyebar.analysis.portals import KNEES, STRUT, Portal, PortalForces, portal_forces
from eyebar.errors import OutOfRange

LATTICE = "lattice"


def knees(**other: float) -> Portal:
    """Posts of 24 ft, 16 ft apart, knees 4 ft along and 6 ft down."""
    return Portal(form=KNEES, length=288.0, spacing=192.0, down=72.0, along=48.0, **other)


def test_a_portal_with_knees_on_hinges_by_hand() -> None:
    # By hand, 8 kip at the windward head:
    #   each post holds H = 8/2 = 4 kip at its foot;
    #   moments about the leeward foot: T x 16 ft = 8 x 24 ft, T = 12 kip;
    #   lowest fastening 24 - 6 = 18 ft up: M = 4 x 18 = 72 kip ft = 864 kip in;
    #   one post about its head: K x 6 ft = 4 x 24 ft, K = 16 kip across;
    #   knee of sqrt(4^2 + 6^2) = 7.2111 ft: 16 x 7.2111 / 4 = 28.844 kip;
    #   strut beside the windward post 8 + 16 - 4 = 20 kip push, the leeward 16 - 4 = 12 pull;
    #   the knee pulls the strut down with 16 x 6/4 = 24 kip, the post holds it up with the T of 12
    #   less 24, that is 12 down; at the knee 12 x 4 ft = 48 kip ft = 576 kip in, opposite at the
    #   other knee: 12 x (16 - 8)/2 = 48 by the shear between them as well.
    found = portal_forces(knees(), 8.0)
    assert found.shear == 4.0
    assert found.still == 0.0
    assert found.thrust == pytest.approx(12.0)
    assert found.foot == 0.0
    assert found.fastening == pytest.approx(864.0)
    assert found.knee == pytest.approx(28.844, abs=5e-4)
    assert found.strut == pytest.approx(20.0)
    assert found.strut_pull == pytest.approx(12.0)
    assert found.strut_moment == pytest.approx(576.0)


def test_feet_that_a_great_thrust_holds_halve_the_free_length() -> None:
    # By hand: still point 18/2 = 9 ft up; M = 4 x 9 = 36 kip ft at foot and fastening alike;
    # T = 8 x (24 - 9) / 16 = 7.5 kip; K = 4 x 15 / 6 = 10 kip.
    found = portal_forces(knees(thrust=1000.0, foot_width=10.0), 8.0)
    assert found.still == pytest.approx(108.0)
    assert found.foot == pytest.approx(432.0) == found.fastening
    assert found.thrust == pytest.approx(7.5)
    assert found.knee == pytest.approx(10.0 * 7.2111 / 4.0, abs=5e-4)


def test_feet_are_held_no_higher_than_their_thrust_holds_them() -> None:
    # By hand: 20 kip at the edge of 8 in hold 20 x 4 = 80 kip in; over H = 4 kip that is 20 in up.
    found = portal_forces(knees(thrust=20.0, foot_width=8.0), 8.0)
    assert found.still == pytest.approx(20.0)
    assert found.foot == pytest.approx(80.0)


def test_a_lattice_portal_by_hand() -> None:
    # By hand, 6 kip on posts of 25 ft, 15 ft apart, 5 ft deep: H = 3; T = 6 x 25/15 = 10 kip;
    # M = 3 x 20 = 60 kip ft; lower flange 3 x 25/5 = 15 kip; upper 6 + 15 - 3 = 18 kip push.
    found = portal_forces(
        Portal(form=LATTICE, length=300.0, spacing=180.0, down=60.0), 6.0
    )
    assert (found.thrust, found.fastening, found.knee, found.strut) == pytest.approx(
        (10.0, 720.0, 15.0, 18.0)
    )
    assert found.web_shear == pytest.approx(10.0)
    assert found.strut_moment == 0.0


def test_a_plain_strut_bends_as_its_posts_do_at_their_heads() -> None:
    # By hand, 6 kip on posts of 20 ft, 15 ft apart: H = 3, M = 3 x 20 = 60 kip ft on both.
    found = portal_forces(Portal(form=STRUT, length=240.0, spacing=180.0), 6.0)
    assert found.fastening == pytest.approx(720.0) == found.strut_moment
    assert found.strut == pytest.approx(3.0)
    assert found.knee == 0.0


@pytest.mark.parametrize("width", [0.0, 4.0, 9.0, 20.0])
def test_every_piece_of_a_portal_is_in_balance(width: float) -> None:
    # A law: the whole about the leeward foot, one post about its head, the strut's joints.
    portal, wind = knees(thrust=30.0, foot_width=width), 8.0
    found = portal_forces(portal, wind)
    assert found.thrust * portal.spacing + 2 * found.foot == pytest.approx(wind * portal.length)
    across = found.knee * portal.along / (portal.along**2 + portal.down**2) ** 0.5
    assert across * portal.down + found.foot == pytest.approx(found.shear * portal.length)
    assert found.strut - across == pytest.approx(found.shear)
    assert across - found.strut_pull == pytest.approx(found.shear)


def test_twice_the_wind_brings_twice_the_forces_on_hinges() -> None:
    one, two = portal_forces(knees(), 5.0), portal_forces(knees(), 10.0)
    for name in PortalForces.__dataclass_fields__:
        assert getattr(two, name) == pytest.approx(2 * getattr(one, name))


@pytest.mark.parametrize(
    "sizes",
    [{"down": 300.0}, {"along": 96.0}, {"down": 0.0}, {"spacing": 0.0}],
)
def test_a_portal_that_cannot_be_is_refused(sizes: dict[str, float]) -> None:
    with pytest.raises(OutOfRange):
        Portal(**{"form": KNEES, "length": 288.0, "spacing": 192.0, "down": 72.0, "along": 48.0}
               | sizes)  # type: ignore[arg-type]
