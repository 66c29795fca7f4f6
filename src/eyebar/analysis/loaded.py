"""One truss of a bridge with its dead load, ready for loads that move."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from eyebar.analysis.influence import InfluenceLines, unit_forces
from eyebar.analysis.model import Floats, Model, ModelBar, model_of
from eyebar.analysis.paths import SlackSets, solved, starting_sets, ties_split
from eyebar.analysis.pull import lack_of_fit
from eyebar.analysis.stability import collapse_under
from eyebar.bridge.parts import Truss
from eyebar.errors import Unstable


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedTruss:
    """A truss's model, its slack sets and influence lines, and its dead load kept in two parts.

    With e elements: `dc`, `dw` (e,) element forces of the two dead loads, all bars working [kip];
    `fixed` (e,) those of lack of fit, gaps and of the splitting of ties. `starts` and `deads` keep
    the slack set and the forces under each pair of dead-load factors.
    """

    truss: Truss
    model: Model
    sets: SlackSets
    lines: InfluenceLines
    dc: Floats
    dw: Floats
    fixed: Floats
    starts: dict[tuple[float, float], int] = field(default_factory=dict)
    deads: dict[tuple[float, float], Floats] = field(default_factory=dict)

    @property
    def floor_joints(self) -> tuple[str, ...]:
        """Names of the joints that carry the floor, in order of station."""
        return tuple(joint for joint, _ in self.truss.floor_joints)

    def dead(self, dc: float, dw: float) -> Floats:
        """(e,) element forces under factored dead load, all bars working [kip]."""
        pair = (dc, dw)
        if pair not in self.deads:
            self.deads[pair] = dc * self.dc + dw * self.dw + self.fixed
        return self.deads[pair]

    def start(self, dc: float, dw: float) -> int:
        """The slack set under factored dead load. Raises Unstable where there is no equilibrium."""
        pair = (dc, dw)
        if pair not in self.starts:
            found = starting_sets(self.sets, self.dead(dc, dw)[None])[0]
            if found is None:
                raise self._no_equilibrium(dc, dw)
            self.starts[pair] = found
        return self.starts[pair]

    def _no_equilibrium(self, dc: float, dw: float) -> Unstable:
        fall = collapse_under(self.sets, self.dead(dc, dw), self.floor_joints)
        return Unstable(
            f"truss {self.truss.name} finds no equilibrium under its dead load: {fall.sentence}; "
            "record the counter that is there, or look whether the bar can push",
            truss=self.truss.name,
            bars=fall.slack,
            panel=fall.panel,
        )


def loaded_truss(
    truss: Truss,
    areas: Mapping[str, float],
    dead_loads: Mapping[str, tuple[float, float]],
    *,
    pulls: Mapping[str, float] | None = None,
) -> LoadedTruss:
    """A truss with its dead load.

    Parameters: `areas` bar -> area for stiffness [in2]; `dead_loads` joint -> (DC, DW) [kip, down];
    `pulls` bar -> measured pull under unfactored dead load [kip] that was accepted.
    Raises Unstable and OutOfRange as `model_of` and `lack_of_fit` do.
    """
    bars = [
        ModelBar(
            name=bar.name,
            ends=bar.ends,
            area=areas[bar.name],
            modulus=bar.material.modulus,
            can_push=bar.can_push,
            can_pull=bar.can_pull,
            initial_kip=bar.initial_kip,
            gap_in=bar.gap_in,
        )
        for bar in truss.bars
    ]
    model = model_of(truss.joints, bars, truss.supports, truss=truss.name)
    both = [model.loads({j: pair[i] for j, pair in dead_loads.items()}) for i in (0, 1)]
    dc, dw = model.influence @ both[0], model.influence @ both[1]
    if pulls:
        fits = lack_of_fit(model, dc + dw, pulls)
        bars = [_fitted(bar, fits) for bar in bars]
        model = model_of(truss.joints, bars, truss.supports, truss=truss.name)
    stations = np.array([station for _, station in truss.floor_joints])
    joints = tuple(joint for joint, _ in truss.floor_joints)
    sets = SlackSets(model)
    return LoadedTruss(
        truss=truss,
        model=model,
        sets=sets,
        lines=InfluenceLines(sets, stations, unit_forces(model, joints)),
        dc=dc,
        dw=dw,
        fixed=model.fixed_forces + ties_split(model),
    )


def _fitted(bar: ModelBar, fits: Mapping[str, float]) -> ModelBar:
    if bar.name not in fits:
        return bar
    return ModelBar(
        name=bar.name,
        ends=bar.ends,
        area=bar.area,
        modulus=bar.modulus,
        can_push=bar.can_push,
        can_pull=bar.can_pull,
        initial_kip=fits[bar.name],
    )


def dead_forces(loaded: LoadedTruss, dc: float, dw: float) -> Floats:
    """(n,) bar forces under factored dead load with the bars that then work [kip]."""
    slack = loaded.sets.sets[loaded.start(dc, dw)]
    elements, _ = solved(loaded.model, slack, loaded.dead(dc, dw)[None])
    forces: Floats = loaded.model.bar_forces(elements)[0]
    return forces


def same_truss(first: LoadedTruss, second: LoadedTruss) -> bool:
    """True where two trusses are alike in bars, supports and dead load: one sweep serves both."""
    a, b = first.model, second.model
    return (
        a.bars == b.bars
        and dict(a.joints) == dict(b.joints)
        and dict(a.supports) == dict(b.supports)
        and first.truss.floor_joints == second.truss.floor_joints
        and np.array_equal(first.dc, second.dc)
        and np.array_equal(first.dw, second.dw)
    )
