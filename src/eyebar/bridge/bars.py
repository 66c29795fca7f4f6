"""The bars of one truss on a date, from what the record says of them up to that day."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from eyebar.addresses import LOOSE
from eyebar.bridge.forms import LaidBar
from eyebar.bridge.joints_left import pin_plates_left, splice_left
from eyebar.bridge.left import Left, left_of
from eyebar.bridge.lengths import Held
from eyebar.bridge.members import Member
from eyebar.bridge.metals import strength_unknown
from eyebar.bridge.parts import Bar, Material
from eyebar.bridge.pieces import only, piece_count
from eyebar.bridge.said import pushes
from eyebar.bridge.shaped import left_open, shaped
from eyebar.bridge.shaped_built import size
from eyebar.bridge.shaped_joints import pin_plates, rivet_holes, splice
from eyebar.bridge.timeline import PartState
from eyebar.errors import NotMeasured
from eyebar.record import DecisionEntry, SectionEntry
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import Channels, PlatesAndAngles, Section
from eyebar.terms import CHORD_KINDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """What one bar of the record became: itself, its loose pieces, what is out of the model."""

    bars: tuple[Bar, ...]
    broken: tuple[Bar, ...]
    rules: tuple[str, ...]
    sizes_read: bool


def made(
    truss: str, laid: LaidBar, joints: Mapping[str, tuple[float, float]], said: Member,
    *, state: PartState, held: Held, material: Material,
) -> Made:
    """One bar as it is on the date.

    Broken pieces are gone; a set with loose pieces works with its tight ones, and the loose ones
    are a bar of their own where their gap is known. Raises OutOfRange for readings and pieces that
    do not fit the section.
    """
    address = f"{truss}/{laid.name}"
    entry = state.section or said.section
    built = shaped(entry)
    left = left_of(address, built, state.readings)
    rules = [*state.rules, *left.rules]
    built, filled = _known(address, built, left)
    near, far = (joints[joint] for joint in laid.ends)
    offset, placed = _pin_offset(address, said, built)
    rules += [*filled, *placed]
    whole = Bar(
        name=laid.name, address=address, kind=said.kind, ends=laid.ends,
        length=math.dist(near, far), length_in_plane=math.dist(near, far),
        length_out_of_plane=held.out_of_plane, run=abs(far[0] - near[0]), as_built=built,
        left=left.section, material=material, can_push=bool(pushes(said)), can_pull=said.can_pull,
        pin_offset=offset, bow=left.bow, continuous=held.continuous,
        pull_kip=None if state.pull is None or state.pull.pull is None
        else state.pull.pull.number,
        not_rated="; ".join(
            (*_reasons(state, held if pushes(said) else None, material),
             *_not_read(left_open(entry), left.readings),
             *("length of its jaws not measured",) * said.details.jaw_open)
        ),
        readings=left.readings,
    )
    parted = _parted(_detailed(whole, said, entry, state), state)
    return replace(parted, rules=(*rules, *parted.rules), sizes_read=left.sizes_read)


def _detailed(bar: Bar, said: Member, entry: SectionEntry, state: PartState) -> Bar:
    """The bar with how it is riveted, joined and held about its pins, as that is left."""
    details = said.details
    joined = splice(details.splice) if said.kind in CHORD_KINDS and _spliced(said) else None
    return replace(
        bar, pin_plates=pin_plates_left(pin_plates(details.pin_plates), state.readings),
        jaw=size(details.jaw), splice=splice_left(joined, state.readings),
        holes=rivet_holes(details.rivet_holes),
        lacing_rivet=None if entry.lacing is None else size(entry.lacing.rivet),
        other_pin_offset=size(details.other_pin_offset),
        side_offset=size(details.side_offset) or 0.0, welded=details.welded or "",
    )


def _known(address: str, built: Section, left: Left) -> tuple[Section, list[str]]:
    """The section as built; where a size was not known then and was read since, as it was read."""
    try:
        area(built)
    except NotMeasured as missing:
        try:
            area(left.section)
        except NotMeasured:
            return built, []
        return left.section, [
            f"{address}: {missing.what} as built is not known; it is taken as it was read"
        ]
    return built, []


def _pin_offset(address: str, said: Member, built: Section) -> tuple[float, list[str]]:
    """Pins below the centre of gravity [in]; with plates at mid-depth where nobody says."""
    if said.pin_offset is not None:
        return said.pin_offset, []
    depth = _depth_of_webs(built)
    if depth is None:
        return 0.0, []
    try:
        offset = properties(built).y_bar - depth / 2.0
    except NotMeasured:
        return 0.0, []
    if abs(offset) < 1e-9:
        return 0.0, []
    what = "channels" if isinstance(built, Channels) else "webs"
    lifted = "below the centre of gravity that the cover plate lifts"
    if offset < 0:
        lifted = "above the centre of gravity that what is below draws down"
    return offset, [
        f"{address}: pin offset not recorded; the pins are taken at mid-depth of the {what},"
        f" {abs(offset):.2f} in {lifted}"
    ]


def _depth_of_webs(built: Section) -> float | None:
    """Depth of the channels or webs that pins go through [in]; None where there are none."""
    match built:
        case Channels(cover=None, bottom=None):
            return None
        case Channels():
            return built.near.depth
        case PlatesAndAngles():
            web = built.middle or built.near.web
            return None if web is None else web.width
        case _:
            return None


def _spliced(said: Member) -> bool:
    """Whether the bar ends where its chord is cut: everywhere, where nobody says."""
    ends = said.bar.split("-")
    return said.spliced_at is None or any(joint in said.spliced_at for joint in ends)


def _reasons(state: PartState, held: Held | None, material: Material) -> Iterator[str]:
    """Why a bar is not rated, as far as that is known before any strength is reckoned."""
    if state.crack:
        yield state.crack
    if state.gap:
        yield state.gap
    if unknown := strength_unknown(material):
        yield unknown
    if held is not None and held.not_held:
        yield held.not_held


def _not_read(left_out: tuple[str, ...], readings: tuple[str, ...]) -> Iterator[str]:
    """What was not measured when the record was written, nor read since."""
    for what in left_out:
        of_head = "thickness" if what == "head thickness" else what
        if not any(
            words.startswith(what) or (words.startswith(of_head) and " at head " in words)
            for words in readings
        ):
            yield f"{what} not measured"


def _parted(whole: Bar, state: PartState) -> Made:
    """Broken pieces taken out, loose ones set apart."""
    count = piece_count(whole.left)
    everything = frozenset(range(1, count + 1))
    gone = _pieces(state.broken, everything)
    loose = _pieces(state.loose, everything) - gone
    tight = everything - gone - loose
    bars: list[Bar] = []
    broken: list[Bar] = []
    rules: list[str] = []
    if state.broken is not None:
        reason = f"declared broken on {state.broken.date}"
        rules.append(f"{whole.address}: {_of(gone, count)} {reason}, out of the model")
        if gone == everything:
            return _made((), (_out(whole, reason),), rules)
    if tight:
        bars.append(_with(whole, tight))
    if loose and state.loose is not None:
        gap = state.loose.gap
        if gap is not None:
            name = whole.name + (LOOSE if tight else "")
            address = whole.address + (LOOSE if tight else "")
            bars.append(
                replace(
                    _with(whole, loose), name=name, address=address, gap_in=gap.number,
                    pull_kip=None,
                )
            )
            rules.append(
                f"{whole.address}: {_of(loose, count)} declared loose on {state.loose.date}, works"
                f" once it has stretched {gap}"
            )
            if whole.pull_kip is not None and not tight:
                rules.append(f"{whole.address}: its accepted pull is not used while it is loose")
        else:
            reason = f"declared loose on {state.loose.date}, its gap not measured"
            rules.append(f"{whole.address}: {_of(loose, count)} {reason}: it carries nothing")
            if not tight:
                broken.append(_out(_with(whole, loose), reason))
    first = bars or broken
    told = frozenset() if state.loose and state.loose.gap is None and tight else loose
    if idle := everything - tight - told:
        first[0] = replace(first[0], hanging=only(whole.as_built, idle))
    return _made(tuple(bars), tuple(broken), rules)


def _made(bars: tuple[Bar, ...], broken: tuple[Bar, ...], rules: list[str]) -> Made:
    return Made(bars=bars, broken=broken, rules=tuple(rules), sizes_read=False)


def _pieces(decision: DecisionEntry | None, everything: frozenset[int]) -> frozenset[int]:
    """The pieces that a decision speaks of: all of them, where it names none."""
    if decision is None:
        return frozenset()
    return everything if decision.pieces is None else frozenset(decision.pieces)


def _with(bar: Bar, pieces: frozenset[int]) -> Bar:
    return replace(bar, as_built=only(bar.as_built, pieces), left=only(bar.left, pieces))


def _out(bar: Bar, reason: str) -> Bar:
    return replace(bar, not_rated=reason)


def _of(pieces: frozenset[int], count: int) -> str:
    """The pieces in words: `pieces 1 and 2 of 4`, or nothing where it is the whole bar."""
    if len(pieces) == count:
        return "the whole bar"
    numbers = " and ".join(str(piece) for piece in sorted(pieces))
    return f"piece{'s' if len(pieces) > 1 else ''} {numbers} of {count}"
