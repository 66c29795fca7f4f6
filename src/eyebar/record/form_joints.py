"""The joints of a truss that is laid out by form, by name alone.

Joints are counted along each chord from end 0, U above and L below; what stands over one panel
point has one number, M is a joint in the middle of a diagonal. Where the joints of a chord stand
between the panel points (a Warren truss without verticals), the chord counts its own: U3 stands
over the middle of panel 3.
"""

from dataclasses import dataclass

from eyebar.record.form_words import SUBDIVIDED
from eyebar.terms import EndPosts, FloorOn, Form


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """What of a truss decides the names of its joints; `count` panels along the floor."""

    form: Form
    count: int
    end_posts: EndPosts = EndPosts.INCLINED
    floor: FloorOn = FloorOn.LOWER

    @property
    def hung(self) -> bool:
        """True where the truss hangs from the ends of its upper chord."""
        return self.end_posts is EndPosts.NONE


def between(pattern: Pattern) -> str:
    """The letters of joints that stand between panel points; empty for most forms."""
    if pattern.form is not Form.WARREN:
        return ""
    return "L" if pattern.hung else "U"


def upper_numbers(pattern: Pattern) -> tuple[int, ...]:
    """The numbers of the upper joints, from end 0."""
    last = pattern.count
    full = pattern.end_posts is not EndPosts.INCLINED or pattern.form is Form.HALF_HIP_PRATT
    if between(pattern) == "U":
        return tuple(range(last + 2) if full else range(1, last + 1))
    numbers = range(last + 1) if full else range(1, last)
    if pattern.form in SUBDIVIDED and pattern.floor is FloorOn.LOWER:
        return tuple(i for i in numbers if i % 2 == 0)
    return tuple(numbers)


def lower_numbers(pattern: Pattern) -> tuple[int, ...]:
    """The numbers of the lower joints, from end 0."""
    last = pattern.count
    if between(pattern) == "L":
        return tuple(range(1, last + 1))
    numbers = range(1, last) if pattern.hung else range(last + 1)
    if pattern.form in SUBDIVIDED and pattern.floor is FloorOn.UPPER:
        return tuple(i for i in numbers if i % 2 == 0)
    return tuple(numbers)


def middle_numbers(pattern: Pattern) -> tuple[int, ...]:
    """The numbers of the joints in the middle of diagonals, from end 0."""
    return tuple(range(1, pattern.count, 2)) if pattern.form in SUBDIVIDED else ()


def joints_of(pattern: Pattern) -> tuple[str, ...]:
    """All joints: lower, middle, upper, each from end 0."""
    return (
        *(f"L{i}" for i in lower_numbers(pattern)),
        *(f"M{i}" for i in middle_numbers(pattern)),
        *(f"U{i}" for i in upper_numbers(pattern)),
    )


def floor_of(pattern: Pattern) -> tuple[str, ...]:
    """The joints that carry the floor, from end 0.

    Where the upper chord does not reach over the bearings the floor of a deck truss goes on to the
    abutments, which are the bearings' joints: what lies there never comes into the truss.
    """
    if pattern.floor is FloorOn.LOWER:
        return tuple(f"L{i}" for i in lower_numbers(pattern))
    upper = tuple(f"U{i}" for i in upper_numbers(pattern))
    if pattern.end_posts is EndPosts.INCLINED:
        return ("L0", *upper, f"L{pattern.count}")
    return upper


def depth_joints(pattern: Pattern) -> tuple[str, ...]:
    """The joints at which a depth is measured: those of the chord that may be curved.

    The upper ones; of a truss that hangs from its upper chord the lower ones; of a lenticular truss
    both, each from the line between the bearings.
    """
    lower = tuple(f"L{i}" for i in lower_numbers(pattern))
    upper = tuple(f"U{i}" for i in upper_numbers(pattern))
    if pattern.hung:
        return lower
    if pattern.form is Form.LENTICULAR:
        return (*upper, *lower[1:-1])
    return upper
