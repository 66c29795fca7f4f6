"""Rivets that hold the end of a beam: alike where the force passes through their middle, by the
elastic rule of a group that turns where it passes beside it."""

from collections.abc import Iterator

from eyebar.bridge.floor_joined import Fastening
from eyebar.bridge.parts import Material
from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.rivets import WEAK_MEMORY, rivet_pull
from eyebar.sections.amounts import measured

COUNT = Symbol("rivets", "1", "count", low=2.0, high=20.0)
LINES = Symbol("upright lines of them", "1", "lines", low=1.0, high=3.0)
ROWS = Symbol("rivets in a line", "1", "rows", low=2.0, high=8.0)
GAUGE = Symbol("from line to line", "in", "gauge", low=2.0, high=6.0)
PITCH = Symbol("from rivet to rivet in a line", "in", "pitch", low=2.0, high=6.0)
ONE = Symbol("force that one carries", "kip", "one_rivet", low=2.0, high=12.0)
ELASTIC = ("rivets as springs alike, the group turning about its middle; so Handbook of Civil "
           "Engineering Calculations, eccentric load on a riveted connection, method 1")
ONE_SIDE = "rivets through what the end is riveted to are not recorded: not looked at"


@formula(
    "P = n * P_1",
    result=Symbol("force that the rivets carry together", "kip"),
    n=COUNT,
    P_1=ONE,
    source="alike in all of them",
)
def rivets_together(count: float, one_rivet: float) -> float:
    """What the rivets of an end carry together [kip].

    Number [1], force [kip]; scalars or arrays. Limits: the force passes through their middle.
    """
    return count * one_rivet


@formula(
    "J = n * (g**2 * (m**2 - 1) + p**2 * (r**2 - 1)) / 12",
    result=Symbol("sum of the squares of the rivets' distances from their middle", "in2"),
    n=COUNT,
    g=GAUGE,
    m=LINES,
    p=PITCH,
    r=ROWS,
    source="plane geometry: lines alike, evenly spaced",
)
def polar_moment(
    count: float, *, gauge: float, lines: float, pitch: float, rows: float
) -> float:
    """Polar moment of a group of rivets, each counted as one [in2].

    Numbers [1], lengths [in]; scalars or arrays. Limits: lines alike, evenly spaced.
    """
    return count * (gauge**2 * (lines**2 - 1) + pitch**2 * (rows**2 - 1)) / 12


@formula(
    "k = sqrt((1 / n + e * x / J)**2 + (e * y / J)**2)",
    result=Symbol("force on the worst rivet for a unit force on the group", "1"),
    n=COUNT,
    e=Symbol("force beside the middle of the group", "in", "off_centre", low=0.0, high=6.0),
    x=Symbol("outer line beside the middle", "in", "outer_line", low=0.0, high=6.0),
    J=Symbol("polar moment of the group", "in2", "polar", low=10.0, high=400.0),
    y=Symbol("outer rivet of a line above the middle", "in", "outer_rivet", low=1.0, high=15.0),
    source=ELASTIC,
)
def worst_rivet(
    count: float, off_centre: float, *, outer_line: float, polar: float, outer_rivet: float
) -> float:
    """Force on the rivet of a group that gets most, for a unit upright force beside its middle [1].

    Number [1], lengths [in], polar moment [in2]. Scalars. Limits: elastic, plates stiff, rivets
    alike; no pull along the rivets.
    """
    upright = 1 / count + off_centre * outer_line / polar
    level = off_centre * outer_rivet / polar
    worst: float = (upright**2 + level**2) ** 0.5
    return worst


@formula(
    "P = P_1 / k",
    result=Symbol("force that the group carries beside its middle", "kip"),
    P_1=ONE,
    k=Symbol("force on the worst rivet for a unit force", "1", "worst", low=0.05, high=1.0),
    source=ELASTIC,
)
def group_force(one_rivet: float, worst: float) -> float:
    """What a group of rivets carries when the worst of them is used up [kip].

    Force [kip], part [1]; scalars or arrays. Limits: none.
    """
    return one_rivet / worst


def end_rivets(
    fastening: Fastening, material: Material, by: FloorRules, values: Values, *, end: int = 0,
    effect: Effect = Effect.REACTION,
) -> Iterator[Strength]:
    """The rivets of a beam's end in shear and bearing, those on the other side of its end angles
    too. Raises NotMeasured; OutOfRange for a group that cannot hold a moment."""
    post = fastening.post
    remarks = (WEAK_MEMORY,) if post is not None else (WEAK_MEMORY, ONE_SIDE)
    for check, one, said in (
        ("rivets of the end", fastening, remarks),
        ("rivets through the post", post, (WEAK_MEMORY,)),
    ):
        if one is not None:
            yield Strength(
                check=check, effect=effect, unit="kip", end=end, divisor=1.0, remarks=said,
                capacity=_carried(one, material, by, values),
            )


def _carried(fastening: Fastening, material: Material, by: FloorRules, values: Values) -> float:
    rivets, group = fastening.rivets, fastening.group
    one = rivet_pull(
        by.shear, values, material, rivet=measured(rivets.diameter, "diameter of its end rivets"),
        cuts=rivets.cuts, thinner=measured(fastening.thinner, "thickness that its rivets hold"),
    )
    number = None if rivets.number is None else float(rivets.number)
    count = measured(number, "number of its end rivets")
    off = measured(
        group.off_centre, "'off centre', from the middle of its end rivets to the face that holds "
        "them,"
    )
    if off == 0.0:
        return rivets_together(count, one)
    if count == 1.0:
        raise OutOfRange("rivets of an end that is held beside their middle", "1", "2 at least")
    lines = float(group.lines)
    rows = count / lines
    pitch = measured(group.pitch, "pitch of its end rivets") if rows > 1.0 else 0.0
    gauge = measured(group.gauge, "gauge of its end rivets") if lines > 1.0 else 0.0
    polar = polar_moment(count, gauge=gauge, lines=lines, pitch=pitch, rows=rows)
    worst = worst_rivet(
        count, off, outer_line=gauge * (lines - 1.0) / 2.0, polar=polar,
        outer_rivet=pitch * (rows - 1.0) / 2.0,
    )
    return group_force(one, worst)
