"""What one rating of a bridge leaves for the next: forces that were followed, and strengths."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from eyebar.analysis.loaded import LoadedTruss, loaded_truss, same_truss
from eyebar.bridge.parts import Bridge, Truss
from eyebar.loads import joint_loads
from eyebar.office import Values
from eyebar.rating.asked import EVERYTHING, Wanted
from eyebar.rating.families import Sweeps
from eyebar.rating.floor_context import FloorKept
from eyebar.rating.half_through import held_by_posts
from eyebar.rating.pin_table import PinTable
from eyebar.rating.stiffness import stiffness_areas
from eyebar.rating.strengths import StrengthTable
from eyebar.resistance import Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """A truss with its counters as found slack (`none`), or with their measured pull."""

    pull: str
    loaded: LoadedTruss
    sweeps: Sweeps


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What serves again under another use of the road or with other vehicles. Values and dead load
    stay the same. `wanted`: by which methods and levels alone ratings are made."""

    values: Values
    condition: Condition
    table: StrengthTable
    pins: PinTable
    wanted: Wanted = EVERYTHING
    floor: FloorKept = field(default_factory=FloorKept)
    states: list[list[State]] = field(default_factory=list)
    loaded: dict[str, tuple[dict[str, LoadedTruss], list[str]]] = field(default_factory=dict)
    """Truss -> its states under dead load, and what was assumed."""
    posts: list[tuple[tuple[Truss, ...], list[str]]] = field(default_factory=list)
    """The trusses with their half-through chords held, and what to say of that, once found."""

    def held(self, bridge: Bridge) -> tuple[Bridge, list[str]]:
        """The bridge with the effective lengths of its half-through chords, and what to say."""
        if not self.posts:
            found, _, said = held_by_posts(
                bridge, lambda truss: self.states_of(bridge, truss)[0][0].loaded, self.values
            )
            self.posts.append((found.trusses, said))
        trusses, said = self.posts[0]
        return replace(bridge, trusses=trusses), said

    def states_of(self, bridge: Bridge, truss: Truss) -> tuple[list[State], list[str]]:
        """States of a truss, and what was assumed; those of one alike to it serve again."""
        if truss.name not in self.loaded:
            self.loaded[truss.name] = loaded_states(bridge, truss)
        loaded, assumed = self.loaded[truss.name]
        return _states(loaded, self.states), assumed


def kept_for(bridge: Bridge, values: Values, wanted: Wanted = EVERYTHING) -> Kept:
    """A beginning, nothing found yet."""
    watched = values.watched()
    condition = Condition(
        superstructure_condition=bridge.superstructure_condition,
        loss_measured=bridge.condition_measured,
    )
    return Kept(
        values=watched, condition=condition, wanted=wanted,
        table=StrengthTable(values=watched, condition=condition),
        pins=PinTable(values=watched, condition=condition),
    )


def loaded_states(bridge: Bridge, truss: Truss) -> tuple[dict[str, LoadedTruss], list[str]]:
    """The truss with its dead load: as found slack, and with the measured pulls where there are
    any; and what had to be assumed about sizes that were not measured."""
    areas, assumed = stiffness_areas(truss)
    loads = joint_loads(truss, bridge.weights[truss.name], areas)
    states = {"none": loaded_truss(truss, areas, loads)}
    pulls = {bar.name: bar.pull_kip for bar in truss.bars if bar.pull_kip is not None}
    if pulls:
        states["measured"] = loaded_truss(truss, areas, loads, pulls=pulls)
    return states, assumed


def _states(loaded: Mapping[str, LoadedTruss], known: list[list[State]]) -> list[State]:
    """States of a truss; those of one alike to it serve again."""
    for before in known:
        if [s.pull for s in before] == list(loaded) and all(
            same_truss(s.loaded, loaded[s.pull]) for s in before
        ):
            return before
    states = [
        State(pull=pull, loaded=one, sweeps=Sweeps(loaded=one)) for pull, one in loaded.items()
    ]
    known.append(states)
    return states
