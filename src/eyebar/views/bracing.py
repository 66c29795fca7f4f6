"""What `bracing` says of a bridge: margins of its parts under wind, what holds its chords."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text

NOT_JUDGED = "not judged"
RULES = ("by the foot", "by area", "later")


@dataclass(frozen=True, slots=True, kw_only=True)
class MarginRow:
    """One part, or the least of all that do the same, with its margin by each rule."""

    what: str = text("What", "What the part is in the bracing.")
    part: str = text("Part", "Its address; in the short table that of the least.")
    by_the_foot: str = figure("By foot", "How many times the wind by the foot of chord it stands.")
    by_area: str = figure("By area", "The same by the pressure of the bridge's own time.")
    later: str = figure("Later", "The same by the pressure of later specifications.")
    check: str = text("Reached first", "What is reached first, or why it is not judged.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PostRow:
    """One post of a half-through bridge under what it must hold sideways."""

    joint: str = text("Joint", "Joint of the upper chord.")
    asked: str = text("Asked", "By which rule it must hold the chord.")
    force: str = figure("Kip", "Force across the bridge at its head.")
    post: str = figure("Post", "How many times that the post stands.")
    outrigger: str = figure("Outrigger", "How many times that its outrigger stands.")
    joint_moment: str = figure("kip ft", "Moment at the floorbeam's middle.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Braced:
    """The bracing of a bridge."""

    bridge: str = text("Bridge", "Name, number and date.")
    sentences: tuple[str, ...] = text("Told", "What is known of it, and what cannot be followed.")
    rows: tuple[MarginRow, ...] = text("Least", "The least margin of all that do the same.")
    every: tuple[MarginRow, ...] = text("Every part", "Every part, the least margin first.")
    posts: tuple[PostRow, ...] = text("Posts", "Posts of a half-through bridge, the least of each.")
    cautions: tuple[str, ...] = text("Cautions", "What belongs to every use of the result.")


def braced(document: Document) -> Braced:
    """The view of a `bracing` document."""
    bridge = document["bridge"]
    name = ", ".join(filter(None, (bridge["name"], bridge["number"])))
    members = document["members"]
    whats = dict.fromkeys(one["what"] for one in members)
    parts = dict.fromkeys((one["part"], one["what"]) for one in members)
    every = [
        _row([one for one in members if (one["part"], one["what"]) == key]) for key in parts
    ]
    return Braced(
        bridge=f"{name}, as on {document['date']}.",
        sentences=tuple(_sentences(document)),
        rows=tuple(_row([one for one in members if one["what"] == what]) for what in whats),
        every=tuple(row for _, row in sorted(
            zip((_least_of(members, key) for key in parts), every, strict=True),
            key=lambda both: both[0],
        )),
        posts=_posts(document["posts"]),
        cautions=tuple(document["cautions"]),
    )


def _least_of(members: list[Document], key: tuple[str, str]) -> float:
    return min(
        (_rank(one) for one in members if (one["part"], one["what"]) == key), default=math.inf
    )


def _rank(one: Document) -> float:
    return -1.0 if one["not_judged"] else math.inf if one["margin"] is None else one["margin"]


def _row(of: list[Document]) -> MarginRow:
    """A row of parts that do the same: the least by each rule, and what of it is the least."""
    judged = [one for one in of if not one["not_judged"]]
    least = min(judged or of, key=_rank)
    said = least["check"] or least["not_judged"]
    if judged and len(judged) < len(of):
        said += "; some are not judged"
    by_rule = {
        rule: _margin([one for one in of if one["rule"] == rule]) for rule in RULES
    }
    return MarginRow(
        what=least["what"], part=least["part"], by_the_foot=by_rule["by the foot"],
        by_area=by_rule["by area"], later=by_rule["later"], check=said,
    )


def _margin(of: list[Document]) -> str:
    """The least margin of some checks, as a figure."""
    if not of:
        return rounding.NOTHING
    judged = [one["margin"] for one in of if not one["not_judged"] and one["margin"] is not None]
    if not judged:
        return NOT_JUDGED
    return rounding.factor(min(judged))


def _sentences(document: Document) -> Iterable[str]:
    if document["not_followed"]:
        yield f"Wind is not followed: {document['not_followed']}."
        yield from _held(document["held"])
        return
    kind = "joined overhead" if document["overhead"] else "half-through"
    yield (
        f"The trusses are {kind}. Margins say how many times the wind a part stands, by allowable"
        f" stress at {document['level']}, {document['more_stress']:g} times as much for wind;"
        f" loaded with {', '.join(document['beside']) or 'nothing'}."
    )
    yield from (f"{said[0].upper()}{said[1:]}." for said in document["broken_paths"])
    yield from _held(document["held"])
    yield from (
        f"Wind {one['rule']} is not used: {one['not_used']}."
        for one in document["rules"] if one["not_used"]
    )
    turning = document["overturning"]
    if turning:
        least = min(turning, key=lambda one: float(one["factor"]))
        yield (
            f"Empty, it stays on its bearings {rounding.factor(least['factor'])} times the wind"
            f" {_by(least['rule'])} (from {least['windward']})."
        )


def _by(rule: str) -> str:
    return "of later specifications" if rule == "later" else rule


def _held(held: list[Document]) -> Iterable[str]:
    """Bars of upper chords and end posts that run unheld beyond their own length."""
    longer = [
        one for one in held if not one["not_rated"]
        and one["sideways_ft"] > one["length_ft"] * 1.001
    ]
    for effective in (False, True):
        of = [one for one in longer if one["effective"] is effective]
        if of:
            said = ", ".join(f"{one['part']} {rounding.feet(one['sideways_ft'])}" for one in of)
            yield (
                f"{'Effective lengths on elastic posts' if effective else 'Unheld sideways over'}"
                f" [ft]: {said}."
            )
    if held and not longer and not any(one["not_rated"] for one in held):
        yield "Every panel of the upper chords and every end post is held sideways at both ends."


def _posts(posts: list[Document]) -> tuple[PostRow, ...]:
    """The least of the trusses at each joint by each rule."""
    keys = dict.fromkeys((one["joint"], one["asked"]) for one in posts)
    rows = []
    for joint, asked in keys:
        of = [one for one in posts if (one["joint"], one["asked"]) == (joint, asked)]
        rows.append(PostRow(
            joint=joint, asked=asked, force=rounding.kip(max(one["force_kip"] for one in of)),
            post=_of(of, "post"), outrigger=_of(of, "outrigger"),
            joint_moment=rounding.kip(max(one["joint_moment_kip_ft"] for one in of)),
        ))
    return tuple(rows)


def _of(posts: list[Document], name: str) -> str:
    return _margin([
        {**check, "rule": ""} for one in posts for check in one["checks"] if check["of"] == name
    ])
