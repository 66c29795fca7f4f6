"""What is unlike in a truss that fits none of the known forms, in words."""

from collections.abc import Iterator

from eyebar.history.lines import Bar, Lines


def unlike(lines: Lines) -> tuple[str, ...]:
    """What keeps these lines from every known form; at least one sentence."""
    return tuple(_unlike(lines)) or (
        "verticals and diagonals stand in an order that no known form has",
    )


def one_way(lines: Lines) -> bool:
    """Whether all diagonals, three at least, lean to the same side: no known form has that."""
    leans = {_leans(bar, lines) for bar in lines.diagonals}
    return len(lines.diagonals) > 2 and len(leans) == 1


def _unlike(lines: Lines) -> Iterator[str]:
    if not lines.diagonals:
        yield (
            "no diagonal stands between the chords: such a truss is held by stiff joints, or what "
            "was recorded is not all of it"
        )
    elif one_way(lines):
        yield "all diagonals lean to the same side, so that the halves do not mirror each other"
    if lines.inner:
        yield (
            f"{_counted(len(lines.inner), 'joint')} between the chords, where no known form has "
            "one"
        )
    if lines.diagonals and not lines.verticals:
        yield "no vertical stands between chords that are not both level, or diagonals cross"


def _leans(bar: Bar, lines: Lines) -> bool:
    """Whether a bar goes up to the right."""
    (_, y), (_, v) = sorted(lines.joints[joint] for joint in bar)
    return v > y


def _counted(count: int, what: str) -> str:
    return f"one {what} lies" if count == 1 else f"{count} {what}s lie"
