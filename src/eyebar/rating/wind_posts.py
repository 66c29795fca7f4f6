"""What the posts of a half-through bridge must hold sideways, and whether they do.

Each rule asks for a force across the bridge at the joints of the upper chord: so much for each
foot, a part of the chord's push, or the wind on the upper half of the truss.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from eyebar.analysis.portals import moment_at_foot
from eyebar.bridge.bracing_parts import CrossFrame
from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.formula import Symbol, formula
from eyebar.loads.wind import INCHES, POUNDS, Wind
from eyebar.office import Values
from eyebar.rating.wind_paths import named
from eyebar.rating.wind_strength import Judge, Verdict
from eyebar.rating.wind_trusses import TrussForces
from eyebar.terms import Kind

BY_FOOT = "so much for each foot"
BY_PUSH = "part of the chord's push"
BY_WIND = "wind on the upper chord"
HUNG = ("", "hung")
CHORDS = (Kind.TOP_CHORD, Kind.END_POST)
NOT_HELD = "the post hangs with its floorbeam and has no outrigger: nothing holds its head"
RIVETS = "the rivets that fasten the post to its floorbeam are not recorded"


@formula(
    "S = F * h * sqrt(g**2 + c**2) / (g * c)",
    result=Symbol("force of the outrigger", "kip"),
    F=Symbol("force across at the upper chord", "kip", "force", low=0.5, high=10.0),
    h=Symbol("height of the chord above the floorbeam's middle", "in", "height", low=60.0,
             high=120.0),
    g=Symbol("height of the outrigger's head above it", "in", "head", low=30.0, high=60.0),
    c=Symbol("from the truss to the outrigger's foot", "in", "foot", low=10.0, high=40.0),
    source="statics: post and outrigger hinged at their feet",
)
def outrigger_force(force: float, height: float, head: float, foot: float) -> float:
    """Push or pull of an outrigger that holds a post's head [kip].

    Force [kip], lengths [in]. Scalars or arrays. Limits: head and foot above 0.
    """
    return float(force * height * (head**2 + foot**2) ** 0.5 / (head * foot))


@formula(
    "N = F * h / c",
    result=Symbol("what the outrigger brings on its post", "kip"),
    F=Symbol("force across at the upper chord", "kip", "force", low=0.5, high=10.0),
    h=Symbol("height of the chord above the floorbeam's middle", "in", "height", low=60.0,
             high=120.0),
    c=Symbol("from the truss to the outrigger's foot", "in", "foot", low=10.0, high=40.0),
    source="statics",
)
def post_beside_outrigger(force: float, height: float, foot: float) -> float:
    """Push or pull of a post by its outrigger [kip].

    Force [kip], lengths [in]. Scalars or arrays. Limits: foot above 0.
    """
    return force * height / foot


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldPost:
    """The post at one joint under one rule: `force` across at its head [kip]; `post_moment` of the
    post and `joint_moment` at the floorbeam's middle [kip in]; `outrigger` push or pull, None where
    there is none [kip]. Verdicts on post, outrigger and joint."""

    truss: str
    joint: str
    bar: str
    rule: str
    force: float
    post_moment: float
    joint_moment: float
    outrigger: float | None
    verdicts: Mapping[str, Verdict]


def held_posts(
    bridge: Bridge, winds: list[Wind], forces: Mapping[str, TrussForces], *, values: Values,
    judges: tuple[Judge, Judge],
) -> Iterator[HeldPost]:
    """Every cross frame by every rule. `judges` without and with more stress for wind."""
    bracing = bridge.bracing
    if bracing is None or bracing.overhead:
        return
    for truss in bridge.trusses:
        for joint, frame in bracing.frames.get(truss.name, {}).items():
            post = named(truss, frame.post)
            asked = _asked(truss, joint, winds, forces.get(truss.name), values)
            for rule, force in asked.items():
                judge = judges[rule == BY_WIND]
                yield _held(truss, frame, post, rule=rule, force=force, judge=judge,
                            forces=forces.get(truss.name))


def _asked(
    truss: Truss, joint: str, winds: list[Wind], forces: TrussForces | None, values: Values
) -> dict[str, float]:
    """Rule -> force across at a joint of the upper chord [kip]."""
    beside = [bar for bar in truss.bars if bar.kind is Kind.TOP_CHORD and joint in bar.ends]
    length_ft = sum(bar.length for bar in beside) / 2.0 / INCHES
    found = {
        BY_FOOT: values.number("wind.half-through.posts by the foot") / POUNDS * length_ft,
        BY_WIND: max((wind.upper for wind in winds), default=0.0) / 2.0 * length_ft,
    }
    if forces is not None:
        push = max((
            -(forces.dead.get(bar.name, 0.0) + forces.pushed.get(bar.name, 0.0))
            for bar in truss.bars if bar.kind in CHORDS and joint in bar.ends
        ), default=0.0)
        found[BY_PUSH] = values.number("wind.half-through.posts by push") * max(push, 0.0)
    return found


def _held(
    truss: Truss, frame: CrossFrame, post: Bar, *, rule: str, force: float, judge: Judge,
    forces: TrussForces | None,
) -> HeldPost:
    joint_moment = moment_at_foot(force, frame.height)
    push = 0.0 if forces is None else max(
        -(forces.dead.get(post.name, 0.0) + forces.pushed.get(post.name, 0.0)), 0.0
    )
    verdicts: dict[str, Verdict] = {}
    outrigger = None
    beside = 0.0
    held = frame.outrigger
    moment = moment_at_foot(force, frame.clear_height)
    if held is not None:
        head = min(held.head, frame.height)
        outrigger = outrigger_force(force, frame.height, head, held.foot)
        beside = post_beside_outrigger(force, frame.height, held.foot)
        moment = moment_at_foot(force, frame.height - head)
        verdicts["outrigger"] = worse(
            judge.along(held.bar, 0.0, outrigger), judge.along(held.bar, 0.0, -outrigger)
        )
    if held is None and frame.fastened in HUNG:
        verdicts["post"] = Verdict(check=NOT_HELD, capacity=0.0, margin=0.0)
    elif forces is None:
        verdicts["post"] = Verdict(unknown="its push is not known")
    else:
        verdicts["post"] = judge.bent(
            post, push=push, wind_push=beside, moment=moment, across=True
        )
    if held is None:
        verdicts["joint"] = Verdict(unknown=RIVETS)
    return HeldPost(
        truss=truss.name, joint=frame.joint, bar=post.name, rule=rule, force=force,
        post_moment=moment, joint_moment=joint_moment, outrigger=outrigger, verdicts=verdicts,
    )


def worse(one: Verdict, other: Verdict) -> Verdict:
    """The less favourable of two verdicts; one that is not known before all."""
    return min((one, other), key=_rank)


def _rank(one: Verdict) -> tuple[int, float]:
    return (0 if one.unknown else 1, math.inf if one.margin is None else one.margin)
