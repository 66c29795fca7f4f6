"""Whether what is made of timber is said to be of timber, and nothing else is."""

from collections.abc import Iterator

from eyebar.addresses import address
from eyebar.errors import Fault
from eyebar.record.known import Known
from eyebar.record.sections import SectionEntry
from eyebar.record.tree import Path
from eyebar.terms import Metal


def wood_faults(known: Known) -> Iterator[Fault]:
    """Sticks of timber that are said to be of metal, and rolled or riveted shapes of timber."""
    record = known.record
    for name, group in record.members.items():
        yield from _unlike(known, ("members", name, "material"), group.section, group.material)
    for written, entry in record.overrides.items():
        part = address(written)
        name = known.bars.get(part.truss, {}).get("-".join(part.bar or ()), "")
        built = record.members.get(name)
        if built is not None and (entry.section or entry.material):
            yield from _unlike(
                known, ("overrides", written), entry.section or built.section,
                entry.material or built.material,
            )


def _unlike(known: Known, path: Path, section: SectionEntry, material: str) -> Iterator[Fault]:
    made = known.record.materials.get(material)
    if made is None or section.given is not None:
        return
    wood = made.metal is Metal.TIMBER
    if wood != (section.timber is not None):
        cure = "write the 'timber' that it is, or a metal" if wood else "name a material of timber"
        yield known.fault(path, f"is {made.metal}, and its section is {section.shape}",
                          got=material, cure=cure)
