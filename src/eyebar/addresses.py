"""The one grammar of part addresses, bar names, runs of bars and places on a part.

    upstream/U2-L4            a bar: upper joint first, along a chord the lower number first
    upstream/U2-L4 loose      the loose pieces of a bar, which are a bar of their own
    upstream/L4/pin           also hanger, bearing and joint block
    floor/panel 6/stringer 4
    floor/L5/floorbeam
    floor/deck
    bracing/U3/strut          strut or portal overhead; of a half-through bridge the outriggers
    bracing/U2-U3/lateral     the crossed braces of one panel
    upstream/U2-L4 @ head L4  any of them with a place on it
    L0..L4                    a run of bars: L0-L1, L1-L2, L2-L3, L3-L4
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from eyebar.errors import Unreadable, did_you_mean, nearest
from eyebar.terms import Kind
from eyebar.units import length

LOOSE = " loose"
FLOOR = "floor"
BRACING = "bracing"
JOINT_ITEMS = (Kind.PIN, Kind.HANGER, Kind.BEARING, Kind.JOINT_BLOCK, Kind.BRACKET)
"""What a truss has at a joint."""
PLACES_AT_JOINT = ("head", "hole", "end", "pin plate", "thread", "clevis", "loop", "splice")
PLACES = ("mid", "turnbuckle", "thread", "lacing", "batten", "cover plate", "bottom plate")
LONGEST_RUN = 400
"""Bars in one run; more is taken for a slip of the pen."""

_JOINT = re.compile(r"[^\W\d_]+\d*")
_NUMBERED = re.compile(r"([^\W\d_]+)(\d+)")
_TRUSS = re.compile(r"[^\W\d_][\w ]*")
_RANKS = {"U": 0, "M": 1, "L": 3}
"""Upper, middle and lower joints; any other letter stands between M and L."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Address:
    """Where a part is. `str(address)` is its one spelling.

    `truss` is empty for parts of floor and bracing. A bar has `bar`, its two joints in order;
    what sits at a joint has `joint`; `panel` and `stringer` count from 1. `place` is a spot on the
    part, or "".
    """

    kind: Kind | None = None
    """What the address itself tells: pin, hanger, bearing, joint block, floorbeam, stringer, deck,
    strut, lateral; else None."""
    truss: str = ""
    bar: tuple[str, str] | None = None
    loose: bool = False
    joint: str = ""
    between: tuple[str, str] = ("", "")
    """The joints of the panel that a lateral stands in."""
    panel: int = 0
    stringer: int = 0
    place: str = ""

    @property
    def name(self) -> str:
        """The last piece of the part's address; for a bar its name, `U2-L4`."""
        return self.part.rsplit("/", 1)[1]

    @property
    def part(self) -> str:
        """The part's address as text, without the place on it."""
        if self.bar:
            return f"{self.truss}/{'-'.join(self.bar)}{LOOSE if self.loose else ''}"
        if self.kind is Kind.STRINGER:
            return f"{FLOOR}/panel {self.panel}/stringer {self.stringer}"
        if self.kind is Kind.DECK:
            return f"{FLOOR}/deck"
        if self.kind is Kind.LATERAL:
            return f"{BRACING}/{'-'.join(self.between)}/{self.kind}"
        if self.kind is Kind.STRUT:
            return f"{BRACING}/{self.joint}/{self.kind}"
        return f"{self.truss or FLOOR}/{self.joint}/{self.kind}"

    def at(self, place: str) -> "Address":
        """The same part with a place on it."""
        return replace(self, place=place_on_part(place) if place else "")

    def __str__(self) -> str:
        return f"{self.part} @ {self.place}" if self.place else self.part


def address(text: str) -> Address:
    """The part that a text names; raises Unreadable with the nearest known word."""
    part, at, place = (piece.strip() for piece in text.partition("@"))
    if at and not place:
        raise Unreadable(text, "has no place after the @", "write it like 'upstream/U2-L4 @ mid'")
    pieces = [" ".join(piece.split()) for piece in part.split("/")]
    if len(pieces) < 2 or not all(pieces):
        raise Unreadable(
            text, "is not the address of a part", "write it like 'upstream/U2-L4' or 'floor/deck'"
        )
    of_its_own = {FLOOR: _floor_part, BRACING: _bracing_part}
    return of_its_own.get(pieces[0], _truss_part)(text, pieces).at(place)


def bar_address(truss: str, bar: str) -> Address:
    """The address of a truss's bar, `("upstream", "U2-L4")`; raises Unreadable."""
    return address(f"{truss}/{bar}")


def truss_name(text: str) -> str:
    """The name of a truss, as written; raises Unreadable."""
    if not _TRUSS.fullmatch(text) or text in (FLOOR, BRACING):
        raise Unreadable(
            text, "cannot be the name of a truss", "use letters, figures and spaces, as in"
            f" 'upstream', and not {FLOOR!r} or {BRACING!r}",
        )
    return text


def joint_name(text: str) -> str:
    """The name of a joint, as written; raises Unreadable."""
    if not _JOINT.fullmatch(text):
        raise Unreadable(
            text, "cannot be the name of a joint", "use letters and then a number, as in 'L4'"
        )
    return text


def bar_name(text: str) -> str:
    """The one spelling of a bar's name: `L4-U2` is `U2-L4`, `L2-L1` is `L1-L2`; raises."""
    return "-".join(ends_of(text))


def ends_of(text: str) -> tuple[str, str]:
    """The two joints of a bar, upper first, lower number first; raises Unreadable."""
    ends = [piece.strip() for piece in text.split("-")]
    if len(ends) != 2 or not all(_JOINT.fullmatch(end) for end in ends):
        raise Unreadable(text, "is not the name of a bar", "write its two joints, like 'U2-L4'")
    if ends[0] == ends[1]:
        raise Unreadable(text, "begins and ends at the same joint", "write two joints, 'U2-L4'")
    first, second = sorted(ends, key=joint_order)
    return first, second


def joint_order(joint: str) -> tuple[int, str, int]:
    """The key that sorts joints: upper before middle before lower, then by number."""
    found = _NUMBERED.fullmatch(joint)
    letters, number = (found[1], int(found[2])) if found else (joint, -1)
    return _RANKS.get(letters.upper(), 2), letters, number


def bars_of(text: str) -> tuple[str, ...]:
    """The bars that a name or a run of bars stands for: `L0..L2` is L0-L1, L1-L2; raises."""
    if ".." not in text:
        return (bar_name(text),)
    ends = [_NUMBERED.fullmatch(piece.strip()) for piece in text.split("..")]
    if len(ends) != 2 or ends[0] is None or ends[1] is None or ends[0][1] != ends[1][1]:
        raise Unreadable(text, "is not a run of bars", "write it like 'L0..L4'")
    letters = ends[0][1]
    first, last = sorted((int(ends[0][2]), int(ends[1][2])))
    if not 1 <= last - first <= LONGEST_RUN:
        raise Unreadable(
            text, f"is a run of {last - first} bars", f"write a run of 1 to {LONGEST_RUN}"
        )
    return tuple(f"{letters}{i}-{letters}{i + 1}" for i in range(first, last))


def place_on_part(text: str) -> str:
    """The one spelling of a place on a part; raises Unreadable with the nearest known word.

    `mid`, `turnbuckle`, `thread`, `lacing`, `batten`, `cover plate`, `bottom plate`; `head L4`,
    `hole L4`, `end L4`, `pin plate L4`, `thread L4`, `clevis L4`, `loop L4`, `splice U3`; or
    `4 ft 6 in from L4`.
    """
    words = " ".join(text.split())
    if words in PLACES:
        return words
    distance, _, joint = words.partition(" from ")
    if joint and _JOINT.fullmatch(joint):
        return f"{length(distance).text} from {joint}"
    word, _, joint = words.rpartition(" ")
    if word in PLACES_AT_JOINT and _JOINT.fullmatch(joint):
        return f"{word} {joint}"
    near = nearest(word, PLACES_AT_JOINT) or nearest(words, (*PLACES, *PLACES_AT_JOINT))
    if near in PLACES_AT_JOINT:
        near = f"{near} {joint}" if _JOINT.fullmatch(joint) else f"{near} L4"
    cure = f"did you mean '{near}'?" if near else "write 'mid', 'head L4' or '4 ft 6 in from L4'"
    raise Unreadable(text, "is not a place on a part", cure)


def joint_of_place(place: str) -> str:
    """The joint that a place names, `L4` of `head L4`; empty when it names none."""
    last = place.rsplit(" ", 1)[-1] if place not in PLACES else ""
    return last if _JOINT.fullmatch(last) else ""


def nearest_part(written: str, known: Iterable[str]) -> str:
    """The cure for an address that no part has: the nearest of those that are known."""
    near = nearest(written, known)
    return f"did you mean '{near}'?" if near else "look at the bars of the members"


def _truss_part(text: str, pieces: list[str]) -> Address:
    """A bar, or what sits at a joint; raises Unreadable."""
    truss = truss_name(pieces[0])
    if len(pieces) == 2:
        loose = pieces[1].endswith(LOOSE)
        ends = ends_of(pieces[1].removesuffix(LOOSE))
        return Address(truss=truss, bar=ends, loose=loose)
    joint, item = joint_name(pieces[1]), pieces[2]
    if len(pieces) > 3 or item not in JOINT_ITEMS:
        raise Unreadable(
            text, f"names no part at joint {joint}", did_you_mean(item, JOINT_ITEMS)
        )
    return Address(truss=truss, joint=joint, kind=Kind(item))


def _floor_part(text: str, pieces: list[str]) -> Address:
    """Deck, floorbeam or stringer; raises Unreadable."""
    if pieces == [FLOOR, "deck"]:
        return Address(kind=Kind.DECK)
    if len(pieces) == 3:
        panel = re.fullmatch(r"panel ([1-9]\d{0,3})", pieces[1])
        stringer = re.fullmatch(r"stringer ([1-9]\d{0,3})", pieces[2])
        if panel and stringer:
            return Address(
                kind=Kind.STRINGER, panel=int(panel[1]), stringer=int(stringer[1])
            )
        if _JOINT.fullmatch(pieces[1]) and pieces[2] == Kind.FLOORBEAM:
            return Address(kind=Kind.FLOORBEAM, joint=pieces[1])
    raise Unreadable(
        text, "names no part of the floor",
        "write 'floor/deck', 'floor/L5/floorbeam' or 'floor/panel 6/stringer 4'",
    )


def _bracing_part(text: str, pieces: list[str]) -> Address:
    """A strut or the laterals of a panel; raises Unreadable."""
    if len(pieces) == 3 and pieces[2] == Kind.STRUT:
        return Address(kind=Kind.STRUT, joint=joint_name(pieces[1]))
    if len(pieces) == 3 and pieces[2] == Kind.LATERAL:
        return Address(kind=Kind.LATERAL, between=ends_of(pieces[1]))
    raise Unreadable(
        text, "names no part of the bracing",
        "write 'bracing/U3/strut' or 'bracing/U2-U3/lateral'",
    )
