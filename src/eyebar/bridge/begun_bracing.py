"""The bracing of a record that is begun: what is asked of it."""

from collections.abc import Iterator, Mapping

from eyebar.terms import RoadPlace


def bracing_of(
    place: RoadPlace, joints: Mapping[str, tuple[float, float]]
) -> Iterator[str]:
    """The lines of the block. A deck bridge has its floor on the chords in push: nothing is asked.

    Portals, struts and laterals overhead are what is usual; each is to be looked for.
    """
    upper = [joint for joint in joints if joint.startswith("U")]
    upper.sort(key=lambda joint: joints[joint][0])
    if place is RoadPlace.DECK or not upper:
        return
    yield ""
    yield "bracing:                         # look at each: is it there, and does it still work?"
    if place is RoadPlace.PONY:
        yield "  overhead: false                # nothing joins the upper chords"
        yield "  bases: hinged                  # or held: end posts on wide, anchored shoes"
        yield "  # stiff joints: []             splices with plates that carry the chord on, across"
        yield "  cross frames:"
        yield "    joint: hung                  # floorbeam to post; or riveted, stiffened, gusset"
        yield "    height: not measured         # from the floorbeam's middle to the chord's"
        yield "    # clear height: 6 ft         of the post that is free to bend"
        yield "    # outrigger: {foot: 16 in, head: 6 ft, section: ..., material: iron}"
        return
    yield "  overhead: true"
    yield "  portals:                       # or strut, strut with knees, plate; section, material"
    yield "    zero: {form: lattice, depth: not measured}"
    yield "    other: {form: lattice, depth: not measured}"
    inner = upper[1:-1]
    if inner:
        yield "  struts:"
        yield f"    overhead: {{at: [{', '.join(inner)}]}}   # section, material, knee"
    yield "  top laterals: {}               # section and material of one of the crossed braces"
    yield "  bottom laterals: {}"
