"""What a working is: figures made again, and the steps that made them."""

from dataclasses import dataclass

from eyebar.formula import Entry


@dataclass(frozen=True, slots=True, kw_only=True)
class Replay:
    """A rating's figures made again, and the steps that made them. Units as in PartRating."""

    steps: tuple[Entry, ...]
    limit_kip: float | None
    capacity: float | None
    share: float
    live_factor: float
    impact: float
    factor: float | None
    plain_factor: float | None
    tons: float | None
