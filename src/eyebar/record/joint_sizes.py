"""Sizes of pin plates and splices by the words that a reading would use for them."""

from collections.abc import Iterator, Mapping

from eyebar.addresses import Address
from eyebar.record.doubt import in_doubt
from eyebar.record.joined import PinPlateSizes, SpliceEntry
from eyebar.record.known import Known
from eyebar.record.words import What
from eyebar.units import Quantity

BLOCKS = {"pin_plates": "pin plates", "splice": "splice"}


def joint_sizes(known: Known, part: Address) -> Mapping[What, Quantity | None] | None:
    """Word -> size as built, None where not measured, of the joints of a bar.

    A word that does not fit is not there; of splice plates the greatest counts. None where what the
    record says of these joints is in doubt.
    """
    name, record = "-".join(part.bar or ()), known.record
    address = f"{part.truss}/{name}"
    group = known.bars.get(part.truss, {}).get(name)
    if group is None or address in known.doubtful:
        return None
    owners = (("overrides", address), ("members", group))
    if any(in_doubt(record, *owner, block) for owner in owners for block in BLOCKS.values()):
        return None
    said = [record.overrides.get(address), record.members[group]]
    found: dict[What, Quantity | None] = {}
    for field in BLOCKS:
        blocks = (getattr(entry, field) for entry in said if entry is not None)
        found |= dict(_sizes(next(filter(None, blocks), None)))
    return found


def _sizes(block: PinPlateSizes | SpliceEntry | None) -> Iterator[tuple[What, Quantity | None]]:
    match block:
        case PinPlateSizes(plate=plate):
            yield What.PIN_PLATE_HOLE, block.hole
            yield What.PIN_PLATE_BEYOND_HOLE, block.beyond_hole
            if plate is not None:
                yield What.PIN_PLATE_WIDTH, plate.width
                yield What.PIN_PLATE_THICKNESS, plate.thickness
        case SpliceEntry(plates=plates) if plates:
            yield What.SPLICE_PLATE_WIDTH, _greatest(one.width for one in plates)
            yield What.SPLICE_PLATE_THICKNESS, _greatest(one.thickness for one in plates)
        case _:
            return


def _greatest(sizes: Iterator[Quantity | None]) -> Quantity | None:
    """The greatest; None where one of them is not measured."""
    known = list(sizes)
    return None if None in known else max(filter(None, known), key=lambda one: one.exact)
