"""What a strength is: a check, and the axial force at which the bar reaches it."""

from dataclasses import dataclass

from eyebar.terms import Level, Method


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """How sound the superstructure is: its condition code 0-9 (None: not coded), and whether the
    loss of section was measured rather than guessed."""

    superstructure_condition: int | None
    loss_measured: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One check of a bar by one method and level.

    `sense` is +1 for pull, -1 for push; `force` [kip] the signed axial force (dead and live, each
    with its factor) at which the check is reached; `capacity` in `unit`: that force without its
    sign in `kip`, or 1 where the check is a `ratio`. `remarks` say what a reader must know: a safe
    side that was taken, a proportion that the rules do not like.
    """

    check: str
    method: Method
    level: Level
    sense: int
    force: float
    capacity: float
    unit: str
    remarks: tuple[str, ...] = ()
