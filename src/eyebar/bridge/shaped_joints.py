"""From splices, pin plates and rivet holes as they are written to what is computed with."""

from eyebar.bridge.shaped_built import plate, size
from eyebar.record.joined import PinPlateSizes, RivetHolesEntry, RivetSizes, SpliceEntry
from eyebar.sections.joined import PinPlates, Rivets, Splice
from eyebar.sections.punching import HoleLines, RivetHoles


def splice(entry: SpliceEntry | None) -> Splice | None:
    """How a chord is joined where it is cut; None where nobody says."""
    if entry is None:
        return None
    return Splice(
        butted=entry.butted, plates=tuple(plate(one) for one in entry.plates),
        rivets=_rivets(entry.rivets), across=entry.across,
    )


def pin_plates(sizes: PinPlateSizes | None) -> PinPlates | None:
    """What strengthens the webs about the pins; None where nobody says."""
    if sizes is None:
        return None
    return PinPlates(
        plate=None if sizes.plate is None else plate(sizes.plate), hole=size(sizes.hole),
        beyond=size(sizes.beyond_hole), rivets=_rivets(sizes.rivets),
    )


def _rivets(sizes: RivetSizes | None) -> Rivets | None:
    if sizes is None:
        return None
    return Rivets(number=sizes.number, diameter=size(sizes.diameter), cuts=sizes.sheared)


def rivet_holes(entry: RivetHolesEntry | None) -> RivetHoles | None:
    """The rivet holes of a bar; None where nobody says."""
    if entry is None:
        return None
    return RivetHoles(
        rivet=size(entry.rivet), lines=tuple(
            HoleLines(
                where=one.where, lines=one.lines, gauge=size(one.gauge),
                stagger=0.0 if one.stagger is None else one.stagger.number,
            )
            for one in entry.holes
        ),
    )
