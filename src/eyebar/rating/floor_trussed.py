"""A floorbeam trussed by rods from below: what the rods take off it, and what they bear."""

from dataclasses import dataclass, field
from math import hypot

from eyebar.bridge.floor_parts import Floorbeam
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.loads.trussed import give_of_trussing, moment_taken, moments_multiplied, rod_pull
from eyebar.office import Values
from eyebar.resistance import Condition, limits
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.sections.amounts import measured
from eyebar.sections.properties import area, properties

STIFF = 1e9
"""Modulus times area [kip] of a post that was not measured: stiff, which loads the rods more."""
ALIKE = 0.02
"""How much of the span two posts may stand unlike, for the rule of posts alike."""


@dataclass(slots=True, kw_only=True)
class Trussed:
    """The rods of one floorbeam. Lengths [in]; `give` of all parts to a unit pull [in/kip]."""

    beam: Floorbeam
    span: float
    to_post: float
    drop: float
    inertia: float
    area: float
    modulus: float
    give: float
    known: dict[float, float] = field(default_factory=dict)

    def along(self, load_ft: float) -> float:
        """Pull of the rods along the beam for a unit load [1]."""
        if load_ft not in self.known:
            near = min(load_ft, self.beam.span_ft - load_ft) * 12.0
            self.known[load_ft] = 0.0 if near <= 0.0 else rod_pull(
                moments_multiplied(near, self.to_post, self.span, self.drop), self.modulus,
                self.inertia, self.give,
            )
        return self.known[load_ft]

    def pull(self, load_ft: float) -> float:
        """Pull of the slanting rods for a unit load [1]."""
        return self.along(load_ft) * hypot(1.0, self.drop / self.to_post)

    def moment(
        self, strength: Strength, moment_ft: float, *, load_ft: float, at_ft: float
    ) -> float:
        """Moment [ft] that makes the fibre stress of bending and thrust together, in a sense."""
        along = self.along(load_ft)
        near = min(at_ft, self.beam.span_ft - at_ft) * 12.0
        taken = moment_taken(along, self.drop, near, self.to_post) / 12.0
        thrust = along * strength.divisor / self.area / 12.0
        return strength.sense * (moment_ft - taken) + thrust

    def strengths(
        self, by: FloorRules, values: Values, condition: Condition
    ) -> tuple[Strength, ...]:
        """Pull that the rods may bear."""
        rods = self.beam.truss_rods
        assert rods is not None
        return tuple(
            Strength(
                check=f"truss rods: {one.check}", effect=Effect.RODS, capacity=one.force,
                unit="kip", divisor=1.0, remarks=one.remarks,
            )
            for one in limits(
                rods.bar, method=by.bending.method, level=by.bending.level, dead_factor_dc=1.0,
                values=values, condition=condition,
            )
        )


def trussed(beam: Floorbeam) -> Trussed | None:
    """The rods of a floorbeam; None where it has none. Raises NotMeasured, OutOfRange."""
    rods = beam.truss_rods
    if rods is None:
        return None
    if beam.slant != 1.0:
        raise OutOfRange("trussed floorbeam", "on a skew bridge", "on a square one")
    span = beam.span_ft * 12.0
    posts = [place * 12.0 for place in rods.posts_ft]
    to_post = min(posts[0], span - posts[-1])
    if len(posts) > 2 or abs(posts[0] + posts[-1] - span) > ALIKE * span:
        raise OutOfRange("posts of the truss rods", len(posts), "one at the middle or two alike")
    made_of, built = beam.made_of, properties(beam.as_built)
    modulus = made_of.modulus
    if modulus is None:
        raise NotMeasured("", "modulus of the trussed beam")
    post = STIFF if rods.post_area is None else rods.post_area * measured(
        rods.post_modulus, "modulus of the posts")
    drop = measured(rods.drop, "drop of the truss rods")
    return Trussed(
        beam=beam, span=span, to_post=to_post, drop=drop, inertia=built.i_x, area=built.area,
        modulus=modulus,
        give=give_of_trussing(
            drop=drop, beam_span=span, to_post=to_post, modulus=modulus, inertia=built.i_x,
            area=built.area, rod_modulus=rods.bar.material.modulus,
            rod_area=area(rods.bar.as_built), posts=float(len(posts)),
            slopes=2.0 if len(posts) == 1 else 1.0, post_stiffness=post,
        ),
    )


