"""What a reader must know of a bar beside its limits: slenderness, details prone to fatigue.

Members found above a slenderness are not thereby unsafe, and details prone to fatigue are named
here and rated by their own rules.
"""

from collections.abc import Iterable

from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.resistance.whole_column import shape_of
from eyebar.sections.shapes import Eyebars, Loops, Plates, Rods, Section, Thread, Timbers


def slender_in_pull(bar: Bar, values: Values) -> tuple[str, ...]:
    """A remark on a member in pull that is slenderer than the standards like.

    Rods, eyebars and flat plates are exempt.
    """
    if isinstance(bar.left, Eyebars | Rods | Plates | Timbers):
        return ()
    try:
        radius = shape_of(bar.left).r_least
    except NotMeasured:
        return ()  # a bar that only pulls needs no radius
    slenderness = max(bar.length_in_plane, bar.length_out_of_plane) / radius
    limit = values.number("slenderness.pull")
    if slenderness > limit:
        return (f"slenderness {slenderness:.0f} over {limit:g}, the limit in pull",)
    reversed_limit = values.number("slenderness.pull reversed")
    if bar.can_push and slenderness > reversed_limit:
        return (
            f"slenderness {slenderness:.0f} over {reversed_limit:g}, the limit where a pull"
            " turns into a push",
        )
    return ()


def prone_to_fatigue(bar: Bar) -> tuple[str, ...]:
    """The details of a bar that are prone to fatigue, by name, in one remark."""
    found = list(_details(bar.left))
    if bar.welded:
        found.append(f"welded later ({bar.welded})")
    return (f"prone to fatigue, not rated here: {', '.join(found)}",) if found else ()


def _details(section: Section) -> Iterable[str]:
    match section:
        case Eyebars():
            yield "forged heads of eyebars"
        case Rods():
            loops = {rod.loops for rod in section.rods if rod.looped}
            threads = {rod.threads for rod in section.rods}
            if Loops.WELDED in loops:
                yield "forge-welded loops"
            if Loops.BENT in loops:
                yield "bent loops"
            if Thread.CUT in threads:
                yield "threads cut into the body"
            if Thread.PLAIN in threads:
                yield "threads on ends not upset"
        case _:
            return
