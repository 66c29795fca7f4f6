"""Trusses for tests: drawn here, as lists of bars, without anything of the rooms above analysis."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from eyebar.analysis.model import Floats, Model, ModelBar, model_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A truss on paper: joints [in], bars, supports, the joints that carry the road in order."""

    joints: Mapping[str, tuple[float, float]]
    bars: tuple[ModelBar, ...]
    supports: Mapping[str, tuple[bool, bool]]
    floor_joints: tuple[str, ...]

    @property
    def stations_ft(self) -> Floats:
        """Stations of the floor joints, from the first [ft]."""
        return np.array([self.joints[joint][0] for joint in self.floor_joints]) / 12.0

    @property
    def names(self) -> list[str]:
        """Names of the bars in order."""
        return [bar.name for bar in self.bars]

    def model(self) -> Model:
        """The model under test."""
        return model_of(self.joints, self.bars, self.supports)

    def with_bars(self, **changes: Mapping[str, object]) -> "Drawing":
        """With fields of some bars changed: `with_bars(area={"U1-L2": 3.0})`."""
        bars = [
            replace(bar, **{what: by[bar.name] for what, by in changes.items() if bar.name in by})
            for bar in self.bars
        ]
        return replace(self, bars=tuple(bars))

    def without(self, *names: str) -> "Drawing":
        """With some bars taken out."""
        return replace(self, bars=tuple(bar for bar in self.bars if bar.name not in names))

    def with_more(self, *bars: ModelBar) -> "Drawing":
        """With bars added at the end."""
        return replace(self, bars=(*self.bars, *bars))

    def mirrored(self) -> "Drawing":
        """Turned end for end; the names of joints and bars stay, the road is read from end 0."""
        far = max(x for x, _ in self.joints.values())
        joints = {joint: (far - x, y) for joint, (x, y) in self.joints.items()}
        return replace(self, joints=joints, floor_joints=self.floor_joints[::-1])


def bar(
    upper: str, lower: str, area: float, modulus: float = 27_000.0, **facts: object
) -> ModelBar:
    """A bar named after its joints, upper one first as bridge people do."""
    return ModelBar(
        name=f"{upper}-{lower}", ends=(upper, lower), area=area, modulus=modulus, **facts
    )


def _frame(pitches: Sequence[float], depth: float) -> dict[str, tuple[float, float]]:
    x = np.concatenate([[0.0], np.cumsum(pitches)])
    joints = {f"L{i}": (float(x[i]), 0.0) for i in range(len(x))}
    joints.update({f"U{i}": (float(x[i]), depth) for i in range(1, len(x) - 1)})
    return joints


def _drawing(
    joints: Mapping[str, tuple[float, float]], bars: Sequence[ModelBar], n: int
) -> Drawing:
    return Drawing(
        joints=joints,
        bars=tuple(bars),
        supports={"L0": (True, True), f"L{n}": (False, True)},
        floor_joints=tuple(f"L{i}" for i in range(n + 1)),
    )


def pratt(
    panels: int,
    *,
    counters: Sequence[str] | None = None,
    pitch: float = 180.0,
    depth: float = 240.0,
    slender: bool = True,
) -> Drawing:
    """A single Pratt through truss: diagonals fall towards the middle, from the hips.

    `counters` by name, `None` for crossed rods in every panel with two posts; the middle panel of
    an odd number always has both of its rods. `slender` diagonals and counters cannot push.
    """
    n, last = panels, panels - 1
    bars = [bar(f"L{i}", f"L{i + 1}", 4.0 + 0.5 * min(i, last - i)) for i in range(n)]
    bars += [bar(f"U{i}", f"U{i + 1}", 8.0) for i in range(1, last)]
    bars += [bar("U1", "L0", 8.0), bar(f"U{last}", f"L{n}", 8.0)]
    bars += [bar(f"U{i}", f"L{i}", 3.0) for i in range(1, n)]
    main = [(i, i + 1) for i in range(1, n // 2)] + [(n - i, n - i - 1) for i in range(1, n // 2)]
    crossed = [(j, i) for i, j in main]
    if n % 2:
        main += [(n // 2, n // 2 + 1), (n // 2 + 1, n // 2)]
    bars += [bar(f"U{i}", f"L{j}", 1.5, can_push=not slender) for i, j in main]
    extra = [f"U{i}-L{j}" for i, j in crossed] if counters is None else counters
    bars += [bar(*name.split("-"), 1.5, can_push=not slender) for name in extra]
    return _drawing(_frame([pitch] * n, depth), bars, n)


def crossed_pratt() -> Drawing:
    """The six-panel Pratt with crossed rods: 15 ft panels, 20 ft deep, E 27,000; lower chord 4,
    upper chord and end posts 8, verticals 3, rods 1.5 in2.
    """
    plain = pratt(6)
    return plain.with_bars(area={f"L{i}-L{i + 1}": 4.0 for i in range(6)})


LONG_DIAGONALS = ("U1-L3", "U2-L4", "U3-L5", "U4-L6", "U9-L7", "U8-L6", "U7-L5", "U6-L4")
SHORT_DIAGONALS = ("U1-L2", "U9-L8")


def double_intersection(
    *,
    counters: Sequence[str] = (),
    slender: bool = True,
    pitches: Sequence[float] = (180.0,) * 10,
    depth: float = 360.0,
) -> Drawing:
    """The ten-panel double-intersection Pratt: 15 ft panels, 30 ft deep, E 27,000; lower chord 6,
    upper 12, end posts 14, posts 4 (hip verticals 2), diagonals 3, counters 1.5 in2."""
    bars = [bar(f"L{i}", f"L{i + 1}", 6.0) for i in range(10)]
    bars += [bar(f"U{i}", f"U{i + 1}", 12.0) for i in range(1, 9)]
    bars += [bar("U1", "L0", 14.0), bar("U9", "L10", 14.0)]
    bars += [bar(f"U{i}", f"L{i}", 2.0 if i in (1, 9) else 4.0) for i in range(1, 10)]
    bars += [
        bar(*name.split("-"), 3.0, can_push=not slender)
        for name in (*SHORT_DIAGONALS, *LONG_DIAGONALS)
    ]
    bars += [bar(*name.split("-"), 1.5, can_push=False) for name in counters]
    return _drawing(_frame(pitches, depth), bars, 10)


COUNTERS = ("U5-L3", "U5-L7", "U4-L2", "U6-L8")


def countered() -> Drawing:
    """A lighter double-intersection truss of wrought iron with four counters, 26 ft deep."""
    areas = dict.fromkeys((*SHORT_DIAGONALS, *LONG_DIAGONALS), 2.4)
    areas.update({"U1-L2": 3.1, "U9-L8": 3.1, "U1-L3": 3.75, "U9-L7": 3.75, "U2-L4": 2.8})
    areas.update({"U8-L6": 2.8, "U1-L0": 11.0, "U9-L10": 11.0})
    areas.update({f"L{i}-L{i + 1}": (4.5, 4.5, 6.0, 9.75, 9.75)[min(i, 9 - i)] for i in range(10)})
    areas.update({f"U{i}-U{i + 1}": 11.0 for i in range(1, 9)})
    areas.update({f"U{i}-L{i}": 5.0 for i in range(2, 9)})
    areas.update(dict.fromkeys(COUNTERS, 1.23))
    plain = double_intersection(counters=COUNTERS, depth=312.0)
    iron = {bar.name: 27_900.0 for bar in plain.bars}
    eyebars = {f"L{i}-L{i + 1}": False for i in range(10)} | {"U1-L1": False, "U9-L9": False}
    return plain.with_bars(area=areas, modulus=iron, can_push=eyebars)


def dead_load(drawing: Drawing, *, floor_kip: float, roof_kip: float) -> dict[str, float]:
    """Weights [kip] on every free floor joint, and on every other free joint."""
    free = [joint for joint in drawing.joints if joint not in drawing.supports]
    return {joint: floor_kip if joint in drawing.floor_joints else roof_kip for joint in free}


def random_truss(rng: np.random.Generator) -> Drawing:
    """A truss of one of the forms, with areas, panels, gaps and lacks of fit drawn at random."""
    if rng.random() < 0.5:
        counters = rng.choice(COUNTERS, size=rng.integers(0, 5), replace=False)
        pitches = rng.uniform(140.0, 220.0, 10)
        drawing = double_intersection(
            counters=[str(name) for name in counters], pitches=pitches.tolist(),
            depth=float(rng.uniform(250.0, 400.0)),
        )
    else:
        drawing = pratt(int(rng.integers(4, 9)), depth=float(rng.uniform(180.0, 320.0)))
    area = {name: float(rng.uniform(0.8, 8.0)) for name in drawing.names}
    rods = [bar.name for bar in drawing.bars if not bar.can_push]
    unfit = [name for name in rods if rng.random() < 0.25]
    pulls = {name: float(rng.uniform(-6.0, 6.0)) for name in unfit}
    loose = {
        name: float(rng.uniform(0.0, 0.1))
        for name in drawing.names if name not in unfit and rng.random() < 0.1
    }
    return drawing.with_bars(area=area, initial_kip=pulls, gap_in=loose)


def wild_truss(number: int) -> Drawing:
    """A Pratt truss with crossed rods, numbered: areas drawn at random, of odd numbers over a
    factor of forty, with gaps and lacks of fit."""
    rng = np.random.default_rng(number)
    drawing = pratt(int(rng.integers(4, 9)), depth=float(rng.uniform(180.0, 320.0)))
    least, most = (np.log(0.3), np.log(12.0)) if number % 2 else (0.8, 8.0)
    drawn = {name: float(rng.uniform(least, most)) for name in drawing.names}
    area = {name: float(np.exp(by)) if number % 2 else by for name, by in drawn.items()}
    rods = [bar.name for bar in drawing.bars if not bar.can_push]
    unfit = [name for name in rods if rng.random() < 0.25]
    pulls = {name: float(rng.uniform(-6.0, 6.0)) for name in unfit}
    loose = {
        name: float(rng.uniform(0.0, 0.1))
        for name in drawing.names if name not in unfit and rng.random() < 0.1
    }
    return drawing.with_bars(area=area, initial_kip=pulls, gap_in=loose)
