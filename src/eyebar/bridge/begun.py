"""A record begun: from a form and a few sizes to a text that asks for all the rest.

What nobody has told is written `not measured`, so that the record is in order from its first line
and nothing is rated that was not looked at.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from eyebar.bridge.begun_bracing import bracing_of
from eyebar.bridge.begun_members import groups_of
from eyebar.bridge.depths import Missing, depths_of
from eyebar.bridge.form_rules import FORMS, broken_rules, broken_shape, shape_rule
from eyebar.bridge.forms import Layout, Sizes
from eyebar.errors import BadRecord, Fault
from eyebar.record import NOT_MEASURED
from eyebar.record.editing import quoted
from eyebar.record.form_words import CURVED, POINTED, SUBDIVIDED
from eyebar.record.trusses import TrussesEntry
from eyebar.record.wished import Wish, trusses_wished
from eyebar.terms import CurveShape, EndPosts, FloorOn, Form, RoadPlace, SubMembers
from eyebar.units import length, length_text

ASKED = "what is asked for"
"""Stands before a fault where a record's file would stand."""
PANELS_FT = (4.0, 60.0)
DEPTHS_FT = (3.0, 100.0)
"""What lies outside is a slip of the pen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginning:
    """What a record is begun from, each size as it was written."""

    form: Form
    panels: str
    depth: str
    place: RoadPlace = RoadPlace.THROUGH
    end_posts: EndPosts | None = None
    sub_members: SubMembers = SubMembers.STRUTS
    counters: str = ""
    hip: str = ""
    curve: CurveShape | None = None
    rise: str = ""
    sag: str = ""
    shoulder: str = ""
    name: str = ""
    built: str = NOT_MEASURED
    spacing: str = NOT_MEASURED
    clear_width: str = NOT_MEASURED

    @property
    def ends(self) -> EndPosts:
        """How the trusses end; a deck whose chord curves below can but hang, if nobody says."""
        if self.end_posts is not None:
            return self.end_posts
        hangs = self.place is RoadPlace.DECK and self.form in CURVED and self.form not in POINTED
        return EndPosts.NONE if hangs else EndPosts.INCLINED


@dataclass(frozen=True, slots=True, kw_only=True)
class _Laid:
    """The trusses as they were read, their layout, and the counters that it has."""

    wishes: Mapping[str, Wish]
    trusses: TrussesEntry
    layout: Layout
    counters: tuple[str, ...] = field(default=())


def begun(of: Beginning, today: date) -> str:
    """The text of a record, complete in its blocks.

    Raises BadRecord for sizes that cannot be read, make no bridge, or do not fit the form, each
    with its cure.
    """
    found = _laid(of)
    return "\n".join([
        *_heading(of, today), "", *_trusses(of, found), "", *_materials(), "", "members:",
        *groups_of(found.layout, deck=of.place is RoadPlace.DECK), "", *_floor(of),
        *bracing_of(of.place, found.layout.joints), "",
        *_entries(today), "",
    ])


def layout_of(of: Beginning) -> Layout:
    """The panel points and bars that a beginning makes. Raises BadRecord as `begun` does."""
    return _laid(of).layout


def _laid(of: Beginning) -> _Laid:
    """The layout; a form that is nothing without its counters has all of them."""
    wishes = dict(_wishes(of))
    trusses = trusses_wished(wishes, asked=ASKED)
    panels = [panel.number for panel in trusses.panels or ()]
    counters = trusses.counters or _usual_counters(of.form, len(panels))
    sizes = Sizes(
        panels=panels, depths={}, counters=counters, end_posts=of.ends, floor=trusses.floor_on,
        hip=0.0 if trusses.hip is None else trusses.hip.number, sub_members=of.sub_members,
    )
    _refuse_any((*_shape_faults(broken_rules(of.form, sizes)), *_senseless(trusses)))
    depths, faults = depths_of(trusses, panels)
    _refuse_any(faults)
    sizes = replace(sizes, depths=depths)
    layout = FORMS[of.form].lay(sizes)
    _refuse_any((
        *_shape_faults(broken_shape(of.form, sizes, layout)),
        *((("counters",), "is no counter of this form", counter,
           "name a diagonal that crosses a main one, upper joint first")
          for counter in layout.misplaced if trusses.counters),
    ))
    laid = tuple(name for name in sizes.counters if name not in layout.misplaced)
    return _Laid(wishes=wishes, trusses=trusses, layout=layout, counters=laid)


def _shape_faults(broken: Iterable[tuple[str, object, str]]) -> Iterator[Missing]:
    for what, got, limit in broken:
        rule, cure = shape_rule(what, limit)
        yield (what,), rule, got, cure


def _refuse_any(faults: Iterable[Missing]) -> None:
    """Raises BadRecord where there is a fault."""
    found = tuple(
        Fault(where=" > ".join(path), rule=rule, got=f"'{got}'" if got else "", cure=cure)
        for path, rule, got, cure in dict.fromkeys(faults)
    )
    if found:
        raise BadRecord(ASKED, found)


def _usual_counters(form: Form, count: int) -> tuple[str, ...]:
    if form is not Form.QUEEN_POST and form not in POINTED:
        return ()
    return tuple(
        f"U{upper}-L{lower}" for upper in range(1, count) for lower in (upper - 1, upper + 1)
        if 0 < lower < count
    )


def _wishes(of: Beginning) -> Iterator[tuple[str, Wish]]:
    """Keys of `trusses` with their texts, those alone that the form has a use for."""
    panels = tuple(part.strip() for part in of.panels.strip("[] ").split(","))
    yield "names", ("upstream", "downstream")
    yield "spacing", of.spacing
    yield "form", of.form
    yield "panels", panels if len(panels) > 1 else panels[0]
    yield "depth", of.depth
    if of.form is Form.HALF_HIP_PRATT or of.hip:
        yield "hip", of.hip or _half(panels[0])
    if of.form in CURVED or of.curve is not None or of.rise or of.sag or of.shoulder:
        shape = of.curve or (
            CurveShape.FIVE_SLOPES if of.form is Form.CAMELBACK else CurveShape.PARABOLA
        )
        given = {"shape": shape, "rise": of.rise, "sag": of.sag, "shoulder": of.shoulder}
        yield "curve", {key: text for key, text in given.items() if text}
    if of.ends is not EndPosts.INCLINED:
        yield "end posts", of.ends
    if of.form in SUBDIVIDED:
        yield "sub members", of.sub_members
    if of.place is RoadPlace.DECK:
        yield "floor", FloorOn.UPPER
    if of.counters:
        yield "counters", tuple(part.strip() for part in of.counters.strip("[] ").split(","))
    yield "bearings", {"zero": "fixed", "other": "free"}


def _half(panel: str) -> str:
    """Half of a panel, the last length of `4 at 15 ft`, where nobody says how far the hip is."""
    return length_text(length(panel.rpartition(" at ")[2]).exact / 2)


def _senseless(trusses: TrussesEntry) -> Iterator[Missing]:
    """Panels and depths of no truss."""
    panels, depth = trusses.panels or (), trusses.depth
    assert depth is not None
    slip = "look for a slip of the pen"
    for panel in panels:
        if not PANELS_FT[0] <= panel.in_unit("ft") <= PANELS_FT[1]:
            yield (("panels",), "is no panel of a truss: from {:g} to {:g} ft".format(*PANELS_FT),
                   panel, slip)
    most = min(DEPTHS_FT[1], sum(panel.in_unit("ft") for panel in panels))
    if not DEPTHS_FT[0] <= depth.in_unit("ft") <= most:
        yield (("depth",), f"is no depth of such a truss: from {DEPTHS_FT[0]:g} to {most:g} ft",
               depth, f"{slip}; it is measured between the centre lines of the chords")


def _heading(of: Beginning, today: date) -> list[str]:
    name = of.name or f"{of.form} truss, not named yet"
    return [
        "eyebar: 1",
        f"# Begun on {today} from a form and a few sizes. Every 'not measured' is a question:",
        "# write the size with its unit in its place. What is not measured is not assumed sound,",
        "# and what needs it is not rated. How many pieces a bar has and how they are joined is",
        "# what is usual: look at each. Move bars of other sizes into groups of their own.",
        f"name: {quoted(name)}",
        '# number: "the owner\'s"',
        "# owner: the county or town that answers for it",
        "# place: road, and what it crosses",
        f"built: {of.built}",
        "ends:",
        "  zero: the abutment from which panel points are counted   # name it: north abutment",
        "  other: the other abutment",
        "  skew: not measured             # 0 deg where the bridge is square to its road",
    ]


def _trusses(of: Beginning, found: _Laid) -> Iterator[str]:
    comments = {
        "names": "seen from the road, or by the stream", "spacing": "centre to centre",
        "depth": "greatest, between the centre lines of the chords",
        "hip": "taken as half a panel: measure it along the road" if not of.hip
        else "from the bearing, along the road",
        "bearings": "look whether rollers still move; else: frozen",
    }
    yield "trusses:"
    for key, wish in found.wishes.items():
        if key == "counters":
            continue
        yield _commented(f"  {key}: {_written(wish)}", comments.get(key, ""))
        if key == "depth":
            yield _commented(
                f"  counters: {_written(found.counters)}", "every counter that is there, by name"
            )


def _written(wish: Wish) -> str:
    if isinstance(wish, str):
        return str(wish)
    if isinstance(wish, Mapping):
        return "{" + ", ".join(f"{key}: {text}" for key, text in wish.items()) + "}"
    return f"[{', '.join(wish)}]"


def _commented(line: str, comment: str) -> str:
    return f"{line:<32} # {comment}" if comment else line


def _materials() -> list[str]:
    return [
        "materials:",
        "  iron:",
        "    metal: wrought iron          # or steel, with its year: look for marks, take coupons",
    ]


def _floor(of: Beginning) -> list[str]:
    return [
        "floor:",
        f"  clear width: {of.clear_width:<17} # between the curbs",
        "  curb to upstream truss: not measured   # face of curb to the truss's centre line",
        "  deck: {kind: plank, thickness: not measured, weight: 50 lb/ft3}",
        "  surfacing: {kind: gravel, thickness: not measured, weight: 120 lb/ft3, measured: false}",
        "  stringers: {number: not measured, size: not measured, weight: 50 lb/ft3,"
        " material: timber}",
        "  floorbeams: {weight: not measured}     # of one",
        "  railing: {weight: not measured}        # along each side",
        "  bracing: {weight: not measured}        # laterals, struts and portals together",
        "  utilities: {}",
        "  surface: rough                 # the safe side; smooth or minor depressions where it is",
        "",
        "traffic: {trucks a day: not measured}",
        "# condition: {deck: 6, superstructure: 5, substructure: 6}",
    ]


def _entries(today: date) -> list[str]:
    return [
        "inspections:",
        f"  - date: {today}",
        "    by: not named yet",
        "    note: record begun; nothing was read on this day",
        "    readings: []",
        "decisions: []",
    ]
