"""What wind asks of every part on its way down, and whether the part stands it."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from eyebar.analysis.portals import KNEES, STRUT
from eyebar.bridge.parts import Bar, Bridge
from eyebar.loads.wind import LOADED
from eyebar.rating.wind_paths import BOTTOM, TOP, FramePath, LateralPath, WindPath, named
from eyebar.rating.wind_strength import Judge, Verdict
from eyebar.rating.wind_trusses import TrussForces
from eyebar.terms import Kind

NO_BRACE = "the brace that this wind pulls is broken or loose"
NO_STRUT = "no strut that works stands here"
BENDS_BESIDES = "it bends under the floor besides: its push by wind is told, and not mixed in"
WEB = "the web of its lattice or plate is not recorded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stood:
    """One check of one part under one rule, its worst state and side.

    `what` the part is in the bracing; `steady` force without wind and `wind` by it [kip, pull
    positive]; `moment` by wind [kip in].
    """

    part: str
    what: str
    rule: str
    state: str
    windward: str
    steady: float
    wind: float
    moment: float
    verdict: Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class PartChecks:
    """What every part on one wind's way is asked; `why` there are no forces of the trusses."""

    bridge: Bridge
    judge: Judge
    forces: Mapping[str, TrussForces]
    why: str

    def of(self, path: WindPath) -> Iterator[Stood]:
        """Every check under one wind."""
        for lateral in path.laterals.values():
            yield from self._braces(path, lateral)
            yield from self._struts(path, lateral)
        for frame in path.frames:
            yield from self._frame(path, frame)
            yield from self._post(path, frame)
        yield from self._chords(path)

    def _stood(
        self, path: WindPath, part: str, what: str, verdict: Verdict, *, steady: float = 0.0,
        wind: float = 0.0, moment: float = 0.0,
    ) -> Stood:
        return Stood(
            part=part, what=what, rule=path.wind.rule, state=path.wind.state,
            windward=path.windward, steady=steady, wind=wind, moment=moment, verdict=verdict,
        )

    def _along(self, path: WindPath, bar: Bar | None, about: tuple[str, str, str], wind: float
               ) -> Stood:
        """A brace that wind alone pulls or pushes; `about` its part, what it is, why unknown."""
        part, what, unknown = about
        verdict = Verdict(unknown=unknown) if bar is None else self.judge.along(bar, 0.0, wind)
        return self._stood(path, part, what, verdict, wind=wind)

    def _braces(self, path: WindPath, lateral: LateralPath) -> Iterator[Stood]:
        forces = lateral.forces
        for i, panel in enumerate(lateral.laterals.panels):
            what = f"{lateral.level} lateral"
            if not forces.carried[i]:
                verdict = Verdict(check=NO_BRACE, capacity=0.0, margin=0.0)
                yield self._stood(path, panel.address, what, verdict, wind=abs(forces.shear[i]))
                continue
            about = (panel.address, what, panel.unknown)
            if forces.pull[i] > 0.0:
                yield self._along(path, panel.bar, about, forces.pull[i])
            if forces.push[i] > 0.0:
                yield self._along(path, panel.bar, about, -forces.push[i])

    def _struts(self, path: WindPath, lateral: LateralPath) -> Iterator[Stood]:
        """The inner struts; below they are the floorbeams, which bend besides."""
        assert self.bridge.bracing is not None
        sways = {frame.at.joint: frame for frame in path.frames if not frame.at.portal}
        for joint, push in list(
            zip(lateral.laterals.joints, lateral.forces.struts, strict=True)
        )[1:-1]:
            if lateral.level == BOTTOM:
                yield self._stood(
                    path, f"floor/{joint}/floorbeam", "bottom strut",
                    Verdict(unknown=BENDS_BESIDES), wind=-push,
                )
                continue
            if joint in lateral.unstrutted:
                verdict = Verdict(check=NO_STRUT, capacity=0.0, margin=0.0)
                yield self._stood(path, f"bracing/{joint}/strut", "top strut", verdict, wind=-push)
                continue
            strut = self.bridge.bracing.transverse[joint].strut
            frame = sways.get(joint)
            if frame is None or strut.bar is None:
                yield self._along(path, strut.bar, (strut.address, "top strut", strut.unknown),
                                  -push)
                continue
            both, moment = push + frame.forces.strut, frame.forces.strut_moment
            yield self._stood(
                path, strut.address, "top strut", self.judge.bent(
                    strut.bar, push=0.0, wind_push=both, moment=moment, across=False
                ), wind=-both, moment=moment,
            )

    def _frame(self, path: WindPath, frame: FramePath) -> Iterator[Stood]:
        """A portal's strut or flanges, and the knees of any frame."""
        strut, forces = frame.at.strut, frame.forces
        if frame.at.portal and frame.at.form in (STRUT, KNEES):
            verdict = Verdict(unknown=strut.unknown) if strut.bar is None else self.judge.bent(
                strut.bar, push=0.0, wind_push=forces.strut, moment=forces.strut_moment,
                across=False,
            )
            yield self._stood(path, strut.address, "portal strut", verdict, wind=-forces.strut,
                              moment=forces.strut_moment)
        elif frame.at.portal:
            about = (strut.address, "portal flange", strut.unknown)
            yield self._along(path, strut.bar, about, -forces.strut)
            yield self._along(path, strut.bar, about, forces.knee)
            yield self._stood(path, strut.address, "portal web", Verdict(unknown=WEB),
                              wind=forces.web_shear)
        if frame.at.knee is not None and frame.at.form == KNEES:
            knee = frame.at.knee
            about = (f"{strut.address}", "knee", knee.unknown)
            yield self._along(path, knee.bar, about, -forces.knee)
            yield self._along(path, knee.bar, about, forces.knee)

    def _post(self, path: WindPath, frame: FramePath) -> Iterator[Stood]:
        """The end post, or post under a sway frame, of the leeward truss."""
        moment = max(frame.forces.foot, frame.forces.fastening)
        what = "end post" if frame.at.portal else "post"
        for truss in self.bridge.trusses:
            if truss.name == path.windward:
                continue
            bar = named(truss, frame.post)
            if bar in truss.broken:
                continue
            steady = self._steady(path, truss.name, bar.name, push=True)
            thrust = frame.forces.thrust
            if steady is None:
                verdict = Verdict(unknown=self.why)
            elif not bar.can_push:
                continue
            else:
                verdict = self.judge.bent(
                    bar, push=-steady, wind_push=thrust, moment=moment, across=True
                )
            yield self._stood(path, bar.address, what, verdict, steady=steady or 0.0,
                              wind=-thrust, moment=moment)

    def _steady(self, path: WindPath, truss: str, bar: str, *, push: bool) -> float | None:
        """Force of a bar without wind: dead load, and a vehicle where that stands on it [kip]."""
        forces = self.forces.get(truss)
        if forces is None:
            return None
        live = (forces.pushed if push else forces.pulled)[bar]
        return forces.dead[bar] + (live if path.wind.state == LOADED else 0.0)

    def _chords(self, path: WindPath) -> Iterator[Stood]:
        """Chords as chords of the laterals: windward ones are pushed, leeward ones pulled."""
        overhead = path.laterals.get(TOP)
        below = path.laterals.get(BOTTOM)
        for truss in self.bridge.trusses:
            windward = truss.name == path.windward
            carried = path.transferred(truss)
            for bar in truss.bars:
                if overhead is not None and windward and bar.kind is Kind.TOP_CHORD:
                    yield from self._chord(path, truss.name, bar,
                                           -_in_panel(overhead, bar, windward=True))
                elif below is not None and bar.kind is Kind.BOTTOM_CHORD:
                    force = _in_panel(below, bar, windward=windward) + carried
                    yield from self._chord(path, truss.name, bar, -force if windward else force)

    def _chord(self, path: WindPath, truss: str, bar: Bar, wind: float) -> Iterator[Stood]:
        if math.isclose(wind, 0.0, abs_tol=1e-12):
            return
        # A windward lower chord is looked at with nothing on it: vehicles would only pull it.
        steady = self._steady(path, truss, bar.name, push=wind < 0.0)
        if steady is None:
            yield self._stood(path, bar.address, "chord", Verdict(unknown=self.why), wind=wind)
            return
        if wind < 0.0 and not bar.can_push:
            margin = max(steady / -wind, 0.0)
            verdict = Verdict(check="goes slack", capacity=0.0, margin=margin,
                              use=-wind / steady if steady > 0.0 else None)
        else:
            verdict = self.judge.along(bar, steady, wind)
        yield self._stood(path, bar.address, "chord", verdict, steady=steady, wind=wind)


def _in_panel(lateral: LateralPath, bar: Bar, *, windward: bool) -> float:
    """The size of a chord's force by wind between its joints [kip]; the greatest of any panel for
    a bar that is not one panel of the laterals."""
    forces = lateral.forces.windward if windward else lateral.forces.leeward
    joints = lateral.laterals.joints
    return max((
        forces[i] for i in range(len(joints) - 1)
        if {joints[i], joints[i + 1]} <= set(bar.ends)
    ), default=max(forces))
