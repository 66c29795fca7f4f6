"""What a record says of each bar of a truss: its group's words, overrides laid over them."""

from dataclasses import dataclass
from typing import Any

from eyebar.record import (
    EndFixing,
    MemberGroup,
    OverrideEntry,
    Record,
    SectionEntry,
    TrussesEntry,
)
from eyebar.record.joined import PinPlateSizes, RivetHolesEntry, SpliceEntry
from eyebar.record.layout import images_of
from eyebar.terms import Kind
from eyebar.units import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Details:
    """How one bar is riveted, joined and held about its pins; None where nothing is said."""

    splice: SpliceEntry | None = None
    pin_plates: PinPlateSizes | None = None
    jaw: Quantity | None = None
    jaw_open: bool = False
    """True where the record says that the jaw was not measured."""
    rivet_holes: RivetHolesEntry | None = None
    other_pin_offset: Quantity | None = None
    side_offset: Quantity | None = None
    welded: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """What a record says of one bar.

    `pin_offset` [in] and `can_push` are None where nothing is said, `spliced_at` and
    `lateral_points` likewise; `path` is where it stands in the record.
    """

    bar: str
    group: str
    path: tuple[str, ...]
    kind: Kind
    section: SectionEntry
    material: str
    pin_offset: float | None
    spliced_at: frozenset[str] | None
    lateral_points: frozenset[str] | None
    ends: EndFixing
    can_push: bool | None
    can_pull: bool
    details: Details


def member(record: Record, truss: str, bar: str, group: str) -> Member:
    """One bar as its group has it, with what the record overrides for this part alone."""
    said = record.members[group]
    address = f"{truss}/{bar}"
    own = record.overrides.get(address)
    spliced = _with_images(record.trusses, said.spliced_at)
    lateral = _with_images(record.trusses, said.lateral_points)
    if own is None:
        return Member(
            bar=bar, group=group, path=("members", group), kind=said.kind, section=said.section,
            material=said.material, details=_details(said),
            pin_offset=None if said.pin_offset is None else said.pin_offset.number,
            spliced_at=spliced, lateral_points=lateral, ends=said.ends or EndFixing.PINNED,
            can_push=said.can_push, can_pull=said.can_pull is not False,
        )
    offset = said.pin_offset if own.pin_offset is None else own.pin_offset
    return Member(
        bar=bar, group=group, path=("overrides", address), kind=own.kind or said.kind,
        section=own.section or said.section, material=own.material or said.material,
        pin_offset=None if offset is None else offset.number,
        spliced_at=spliced if own.spliced_at is None else frozenset(own.spliced_at),
        lateral_points=lateral if own.lateral_points is None else frozenset(own.lateral_points),
        ends=own.ends or said.ends or EndFixing.PINNED,
        can_push=said.can_push if own.can_push is None else own.can_push,
        details=_details(own, said),
        can_pull=(said.can_pull if own.can_pull is None else own.can_pull) is not False,
    )


def _details(*entries: MemberGroup | OverrideEntry) -> Details:
    """Of each detail what the first entry says that says anything of it."""
    def first(name: str) -> Any:
        found = (getattr(entry, name) for entry in entries)
        return next((one for one in found if one is not None), None)

    jaws = [entry.jaw for entry in entries if "jaw" in entry.model_fields_set][:1]
    return Details(
        splice=first("splice"), pin_plates=first("pin_plates"), rivet_holes=first("rivet_holes"),
        jaw=next(iter(jaws), None), jaw_open=None in jaws,
        other_pin_offset=first("other_pin_offset"), side_offset=first("side_offset"),
        welded=first("welded"),
    )


def _with_images(
    trusses: TrussesEntry, joints: tuple[str, ...] | None
) -> frozenset[str] | None:
    """The joints of a group's list; of a mirrored half their images too."""
    if joints is None:
        return None
    if not trusses.mirrored:
        return frozenset(joints)
    return frozenset((*joints, *images_of(trusses, joints)))
