"""How much one cross frame of a half-through bridge holds the upper chord with."""

from eyebar.bridge.bracing_parts import CrossFrame
from eyebar.bridge.floor_parts import Floorbeam, Timber
from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.resistance.cross_frames import (
    beam_flexibility,
    head_stiffness,
    joint_flexibility,
    lacing_flexibility,
    outrigger_flexibility,
    post_flexibility,
)
from eyebar.resistance.whole_column import stiffness_across
from eyebar.sections.properties import properties

HUNG = "hung"
INCHES = 12.0


def frame_stiffness(
    frame: CrossFrame, post: Bar, beam: Floorbeam, values: Values
) -> float:
    """What a cross frame holds the chord with [kip/in]: by its joint or by its outrigger, the
    more of the two. 0 where neither does. Raises NotMeasured."""
    if isinstance(beam.made_of, Timber):
        raise NotMeasured("", "floorbeam of metal")
    modulus, shape = post.material.modulus, properties(post.left)
    beam_inertia = min(properties(one.section).i_x for one in beam.stretches)
    beam_inertia *= beam.made_of.modulus / modulus
    inertia, sheared = stiffness_across(post)
    spacing = beam.span_ft * INCHES
    ways = []
    if frame.fastened and frame.fastened != HUNG:
        flexibility = (
            post_flexibility(frame.clear_height, modulus, inertia)
            + beam_flexibility(frame.height, spacing, modulus, beam_inertia)
            + joint_flexibility(values.number(f"bracing.turn.{frame.fastened}"), frame.height)
        )
        if sheared is not None:
            flexibility += lacing_flexibility(frame.clear_height, sheared)
        ways.append(head_stiffness(flexibility))
    if (held := frame.outrigger) is not None:
        head = min(held.head, frame.height)
        ways.append(head_stiffness(outrigger_flexibility(
            height=frame.height, head=head, length=held.bar.length, foot=held.foot,
            modulus=modulus,
            outrigger_area=properties(held.bar.left).area * held.bar.material.modulus / modulus,
            post_area=shape.area, spacing=spacing, beam_inertia=beam_inertia,
            post_inertia=inertia,
        )))
    return max(ways, default=0.0)
