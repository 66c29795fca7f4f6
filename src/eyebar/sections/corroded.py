"""What one reading leaves of a section: a changed copy, never a better one.

A reading that is smaller than what is there replaces it; one that is larger is kept out, so that
readings may be applied in any order and the worst of each measure stands. For a pin hole the
larger is the worse. A measure that was unknown takes the reading.
"""

from collections.abc import Mapping
from dataclasses import replace

from eyebar.errors import OutOfRange
from eyebar.sections.attached import attached_to, with_attached
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Eyebars,
    FlangedSegments,
    Given,
    Plates,
    PlatesAndAngles,
    Rods,
    Rolled,
    Section,
    Timbers,
)
from eyebar.sections.worse import changed_pieces, counted, field_named, worse, worse_all

HEAD_PLACES = ("head", "hole", "end")
"""First words of the places that belong to a head and not to the body."""

_BODY: Mapping[str, str] = {
    "thickness": "thickness", "width": "width", "head": "head", "hole": "hole",
    "beyond hole": "beyond", "head thickness": "head_thickness",
}
_HEAD: Mapping[str, str] = {**_BODY, "thickness": "head_thickness", "width": "head"}
_ROD: Mapping[str, str] = {
    "diameter": "size", "side": "size", "root diameter": "root_diameter",
    "turnbuckle area": "turnbuckle_area", "clevis width": "clevis.width",
    "clevis thickness": "clevis.thickness", "clevis hole": "clevis.hole",
}
_THREAD: Mapping[str, str] = {**_ROD, "diameter": "root_diameter"}
_ROLLED: Mapping[str, str] = {
    "depth": "depth", "web": "web", "flange": "flange", "flange thickness": "flange_thickness",
}
_TAPERED: Mapping[str, str] = {
    "depth": "depth", "web": "web", "flange": "flange", "flange edge": "taper.edge",
    "flange at web": "taper.at_web",
}
_PLATE: Mapping[str, str] = {"width": "width", "thickness": "thickness"}
_STICK: Mapping[str, str] = {"width": "width", "depth": "depth"}
_SEGMENT: Mapping[str, str] = {
    "thickness": "thickness", "flange": "flange", "flange thickness": "flange_thickness",
}
_ANGLE: Mapping[str, tuple[str, ...]] = {
    "thickness": ("upright_thickness", "level_thickness"),
    "upright leg": ("upright",), "level leg": ("level",),
    "upright leg thickness": ("upright_thickness",), "level leg thickness": ("level_thickness",),
}
_LEGS = ("upright_thickness", "level_thickness")


def corroded(
    section: Section, *, what: str, value: float, piece: int | None = None, place: str = ""
) -> Section:
    """The section as one reading leaves it.

    `what` was measured [in, or in2 for areas] at `place` ("mid", "head L4", "thread"; empty: on
    the body) on `piece`, counted from 1 (of two channels or sides 1 is the near one); without a
    piece it holds for all of them. Raises OutOfRange for a measure or a piece that the section has
    not.
    """
    if value < 0:
        raise OutOfRange(what, f"{value:g}", "0 or more")
    match section:
        case Channels() | PlatesAndAngles() | Angles() if attached_to(section, what):
            return with_attached(section, what, value)
        case Channels():
            fields = _ROLLED if section.near.taper is None else _TAPERED
            field = field_named(what, fields, "channels")
            near, far = changed_pieces(
                (section.near, section.far), piece, lambda one: worse(one, field, value)
            )
            return replace(section, near=near, far=far)
        case PlatesAndAngles():
            return _sides(section, what, value, piece)
        case Rolled():
            # Several rolled shapes are kept as one size: a reading on one of them holds for all.
            counted(piece, section.number)
            fields = _ROLLED if section.taper is None else _TAPERED
            return worse(section, field_named(what, fields, "rolled shapes"), value)
        case Given():
            counted(piece, 1)
            field = field_named(what, {"area": "area", "net area": "net_area"}, "given properties")
            return worse(section, field, value)
        case _:
            return _like_pieces(section, what, value, piece=piece, place=place)


def _like_pieces(
    section: Eyebars | Rods | Plates | Angles | FlangedSegments | Timbers, what: str,
    value: float, *, piece: int | None, place: str,
) -> Section:
    """A set of pieces of one kind, each with its own sizes."""
    match section:
        case Eyebars():
            fields = _HEAD if place.partition(" ")[0] in HEAD_PLACES else _BODY
            field = field_named(what, fields, "eyebars")
            return replace(section, bars=changed_pieces(
                section.bars, piece, lambda bar: worse(bar, field, value)))
        case Rods():
            field = field_named(what, _THREAD if place.startswith("thread") else _ROD, "rods")
            return replace(section, rods=changed_pieces(
                section.rods, piece, lambda rod: worse(rod, field, value)))
        case Plates():
            field = field_named(what, _PLATE, "plates")
            return replace(section, plates=changed_pieces(
                section.plates, piece, lambda one: worse(one, field, value)))
        case Angles():
            legs = field_named(what, _ANGLE, "angles")
            return replace(section, angles=changed_pieces(
                section.angles, piece, lambda one: worse_all(one, legs, value)))
        case FlangedSegments():
            field = field_named(what, _SEGMENT, "flanged segments")
            return replace(section, segments=changed_pieces(
                section.segments, piece, lambda one: worse(one, field, value)))
        case Timbers():
            field = field_named(what, _STICK, "timbers")
            return replace(section, sticks=changed_pieces(
                section.sticks, piece, lambda one: worse(one, field, value)))


def _sides(
    section: PlatesAndAngles, what: str, value: float, piece: int | None
) -> PlatesAndAngles:
    """The webs of a member of plates and angles, or its top or bottom angles.

    An angle's thickness is read on either leg and holds for both.
    """
    fields = {
        "depth": "web.width", "web": "web.thickness", "top angle thickness": "top",
        "bottom angle thickness": "bottom",
    }
    field = field_named(what, fields, "plates and angles")
    first, _, size = field.partition(".")
    if size and section.middle is not None:
        counted(piece, 2)
        return replace(section, middle=worse(section.middle, size, value))
    paths = (field,) if size else tuple(f"{first}.{leg}" for leg in _LEGS)
    if any(getattr(side, first) is None for side in (section.near, section.far)):
        raise OutOfRange("a reading", f"the {what}", "of something this member has")
    near, far = changed_pieces(
        (section.near, section.far), piece, lambda side: worse_all(side, paths, value)
    )
    return replace(section, near=near, far=far)
