"""Depths of a form at the joints of its curved chord: one for all, one by one, or by a curve."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate

from eyebar.bridge.curves import circle, circle_radius, parabola
from eyebar.errors import nearest
from eyebar.record import TrussesEntry
from eyebar.record.form_joints import depth_joints
from eyebar.record.form_words import CURVED, POINTED
from eyebar.record.layout import images_of
from eyebar.terms import CurveShape, Form

Missing = tuple[tuple[str, ...], str, object, str]
"""(path below `trusses`, rule, got, cure) of something wrong with the depths."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """A curved chord: the panel points [in], the two between which it curves, its shape.

    `shoulder` is the panel point at end 0 from which a chord of five slopes is level.
    """

    stations: Sequence[float]
    ends: tuple[int, int]
    shape: CurveShape
    shoulder: int = 0

    def height(self, number: int, rise: float) -> float:
        """Height at a panel point over the line between the ends [in], `rise` at the crown."""
        first, last = (self.stations[end] for end in self.ends)
        at, span = self.stations[number] - first, last - first
        if span <= 0.0:
            return rise
        match self.shape:
            case CurveShape.PARABOLA:
                return parabola(at, span, rise)
            case CurveShape.CIRCLE:
                return circle(at, span, rise, radius=circle_radius(span, rise))
            case CurveShape.FIVE_SLOPES:
                near = self.stations[self.shoulder] - first
                far = last - self.stations[sum(self.ends) - self.shoulder]
                return rise * min(1.0, at / near, (span - at) / far)


def depths_of(
    trusses: TrussesEntry, panels: Sequence[float]
) -> tuple[Mapping[str, float], tuple[Missing, ...]]:
    """Joint -> depth [in] of a record's form, and what is wrong with what it says of them."""
    pattern = trusses.pattern(len(panels))
    joints = depth_joints(pattern)
    if not joints:
        return {}, ()
    if trusses.curve is not None:
        faults = tuple(_curve_faults(trusses, joints))
        return ({}, faults) if faults else (_on_curve(trusses, panels, joints), ())
    if trusses.depth is not None:
        if pattern.form in CURVED:
            return {}, ((
                ("depth",), f"is one depth, and a {pattern.form} truss has many",
                trusses.depth, "write 'depths:' joint by joint, or the shape of its 'curve:' too",
            ),)
        return dict.fromkeys(joints, trusses.depth.number), ()
    return _given(trusses, joints)


def _given(
    trusses: TrussesEntry, joints: Sequence[str]
) -> tuple[Mapping[str, float], tuple[Missing, ...]]:
    written = trusses.depths or {}
    given = {joint: depth.number for joint, depth in written.items()}
    if trusses.mirrored:
        images = images_of(trusses, given)
        given = {**dict(zip(images, given.values(), strict=True)), **given}
    strange = [joint for joint in written if joint not in joints]
    faults: list[Missing] = [
        (("depths", joint), "has no depth to be given in this truss", joint,
         f"depths are those of {', '.join(joints)}")
        for joint in strange
    ]
    missing = [joint for joint in joints if joint not in given]
    meant = {nearest(joint, missing) for joint in strange}
    missing = [joint for joint in missing if joint not in meant]
    if missing:
        where = "upper" if joints[0][0] == "U" else "lower"
        faults.append((
            ("depths",), f"gives no depth at {', '.join(missing)}", "",
            f"write the depth at every {where} joint",
        ))
    return given, tuple(faults)


def _on_curve(
    trusses: TrussesEntry, panels: Sequence[float], joints: Sequence[str]
) -> Mapping[str, float]:
    """Joint -> depth [in] on a curve: `depth` at its crown, less by the rise at its ends."""
    curve, depth = trusses.curve, trusses.depth
    assert curve is not None
    assert depth is not None
    pointed = trusses.form in POINTED
    numbers = [int(joint[1:]) for joint in joints]
    arc = Arc(
        stations=(0.0, *accumulate(panels)), shape=curve.shape,
        ends=(0, len(panels)) if pointed else (numbers[0], numbers[-1]),
        shoulder=int(curve.shoulder[1:]) if curve.shoulder else 0,
    )
    rise = {"U": depth.number, "L": depth.number}
    if curve.rise is not None:
        rise = dict.fromkeys("UL", curve.rise.number)
    if trusses.form is Form.LENTICULAR:
        sag = depth.number / 2.0 if curve.sag is None else curve.sag.number
        rise = {"U": depth.number - sag, "L": sag}
    least = 0.0 if pointed else depth.number - rise["U"]
    return {
        joint: least + arc.height(number, rise[joint[0]])
        for joint, number in zip(joints, numbers, strict=True)
    }


def _curve_faults(trusses: TrussesEntry, joints: Sequence[str]) -> Iterator[Missing]:
    form, curve, depth = trusses.form, trusses.curve, trusses.depth
    assert curve is not None
    assert depth is not None
    if form not in CURVED:
        yield (("curve",), f"has no place in a {form} truss, whose chords are level", "",
               "leave it out")
        return
    if form in POINTED and curve.rise is not None:
        yield (("curve", "rise"), f"is the whole depth of a {form} truss", curve.rise,
               "leave it out")
    if form not in POINTED and curve.rise is None:
        yield (("curve",), "has no rise, from the first joint of the curved chord to its crown",
               "", "write 'rise: 6 ft'")
    if form is not Form.LENTICULAR and curve.sag is not None:
        yield ("curve", "sag"), "belongs to a lenticular truss alone", curve.sag, "leave it out"
    for name, part in (("rise", curve.rise), ("sag", curve.sag)):
        if part is not None and part.exact >= depth.exact:
            yield (("curve", name), f"leaves nothing of the depth of '{depth}'", part,
                   "'depth' is that of the crown, rise and sag included")
    yield from _shoulder_faults(trusses, joints)


def _shoulder_faults(trusses: TrussesEntry, joints: Sequence[str]) -> Iterator[Missing]:
    curve = trusses.curve
    assert curve is not None
    of_letter = [joint for joint in joints if joint[0] == joints[0][0]]
    able = of_letter[0 if trusses.form in POINTED else 1 : (len(of_letter) + 1) // 2]
    if curve.shape is not CurveShape.FIVE_SLOPES:
        if curve.shoulder is not None:
            yield (("curve", "shoulder"), "belongs to five slopes alone", curve.shoulder,
                   "leave it out")
    elif curve.shoulder not in able:
        yield (("curve",), "of five slopes needs the joint from which the chord is level",
               curve.shoulder or "", f"write 'shoulder:' with one of {', '.join(able)}")
