"""How members are joined: the rivets, splices and pin plates of built-up members.

All lengths in inches. `None` stands for what was never measured.
"""

from dataclasses import dataclass

from eyebar.sections.pieces import Plate


@dataclass(frozen=True, slots=True, kw_only=True)
class Rivets:
    """A group of rivets that share a force: `number` of them, each sheared on `cuts` sections."""

    number: int | None
    diameter: float | None
    cuts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """How the rivets of an end stand: in so many upright `lines`, `gauge` apart, `pitch` from one
    to the next in a line; their middle `off_centre` from the face that holds the end."""

    lines: int
    pitch: float | None
    gauge: float | None
    off_centre: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Splice:
    """How two lengths of a chord meet.

    `butted`: their ends bear on each other in push; in pull, and in push where they are not butted,
    the `plates` carry, fastened by the `rivets` on one side of the joint, of which `across` stand
    in one row across a plate. No plates: such a joint cannot pull.
    """

    butted: bool
    plates: tuple[Plate, ...] = ()
    rivets: Rivets | None = None
    across: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PinPlates:
    """The plates that strengthen each web of a member about its pin, and the hole in them.

    `plate`: their width and their thickness together, on one web. `beyond`: metal behind the hole
    along the member. `rivets`: those that hold the plates to one web.
    """

    plate: Plate | None
    hole: float | None
    beyond: float | None
    rivets: Rivets | None = None
