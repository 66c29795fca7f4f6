"""What is riveted to a built-up section: plates on and under it, lacing, battens.

Also what pack rust leaves of such a joint: a plate that it has bent away carries nothing, angles
that it has parted bend each by itself.
"""

from dataclasses import replace

from eyebar.errors import OutOfRange
from eyebar.sections.shapes import (
    Angles,
    Channels,
    FlangedSegments,
    Placed,
    PlatesAndAngles,
    Section,
)
from eyebar.sections.worse import field_named, worse

Tied = Channels | PlatesAndAngles | Angles

ATTACHED = {
    "cover plate": "cover", "bottom plate": "bottom", "lacing": "lacing.bar",
    "batten": "battens.plate",
}
"""Words of a reading -> where it stands."""
PLATES = {"cover plate": "cover", "bottom plate": "bottom"}
TOUCHING = (Placed.BACK_TO_BACK, Placed.STAR)
"""Angles that lie close enough together for rust to pack between them."""


def attached_to(section: Section, what: str) -> bool:
    """Whether a measure is one of something attached, `cover plate width`."""
    return isinstance(section, Channels | PlatesAndAngles | Angles) and any(
        what.startswith(f"{name} ") for name in ATTACHED
    )


def with_attached(section: Tied, what: str, value: float) -> Tied:
    """The section with what one reading leaves of something attached to it. Raises OutOfRange."""
    name = next(name for name in ATTACHED if what.startswith(f"{name} "))
    size = field_named(
        what.removeprefix(f"{name} "), {"width": "width", "thickness": "thickness"}, f"a {name}"
    )
    field = ATTACHED[name]
    if getattr(section, field.partition(".")[0], None) is None:
        raise OutOfRange("a reading", f"of a {name}", "of something this member has")
    return worse(section, f"{field}.{size}", value)


def plates_on(section: Section) -> tuple[str, ...]:
    """The words of the plates that lie on and under a section."""
    if not isinstance(section, Channels | PlatesAndAngles):
        return ()
    return tuple(name for name, field in PLATES.items() if getattr(section, field) is not None)


def parted(section: Section, plate: str = "") -> Section:
    """What is left of a section that pack rust has bent apart, on the safe side.

    `plate` names the plate that it lies under, empty: every one there is; that plate is left out.
    Angles back to back or in a star bend each by itself; of a round column the flanges are left
    out. Other sections stay as they are.
    """
    if plates_on(section):
        assert isinstance(section, Channels | PlatesAndAngles)
        cover = None if plate in ("", "cover plate") else section.cover
        bottom = None if plate in ("", "bottom plate") else section.bottom
        return replace(section, cover=cover, bottom=bottom)
    if isinstance(section, Angles) and section.placed in TOUCHING:
        return replace(section, separate=True)
    if isinstance(section, FlangedSegments):
        return replace(
            section, segments=tuple(replace(one, flange=0.0) for one in section.segments)
        )
    return section
