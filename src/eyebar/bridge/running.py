"""Chords that run on over their joints: which bars make one beam between two splices."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from eyebar.bridge.members import Member
from eyebar.bridge.parts import Bar, RunsOn, Span
from eyebar.errors import NotMeasured
from eyebar.sections.properties import properties
from eyebar.terms import CHORD_KINDS


def running_on(
    bars: Sequence[Bar], said: Mapping[str, Member], joints: Mapping[str, tuple[float, float]]
) -> tuple[Bar, ...]:
    """The bars, those of a chord that runs on told which run they are a span of.

    A chord is cut where the record says that it is spliced, and everywhere where it does not say.
    Bars that only pull hang from pins and make no beam; nor does a run with a size never measured.
    """
    chords = [bar for bar in bars if bar.kind in CHORD_KINDS and bar.can_push and bar.name in said]
    runs: dict[str, RunsOn] = {}
    for kind in CHORD_KINDS:
        alike = [bar for bar in chords if bar.kind is kind]
        for run in _runs(alike, said, joints):
            spans = _spans(run)
            if len(run) > 1 and spans is not None:
                runs |= {bar.name: RunsOn(spans=spans, place=i) for i, bar in enumerate(run)}
    return tuple(replace(bar, runs_on=runs.get(bar.name)) for bar in bars)


def _runs(
    bars: list[Bar], said: Mapping[str, Member], joints: Mapping[str, tuple[float, float]]
) -> Iterator[list[Bar]]:
    """The bars of one chord in order from end 0, cut where it is spliced."""
    run: list[Bar] = []
    for bar in sorted(bars, key=lambda bar: min(joints[joint][0] for joint in bar.ends)):
        if run and not _goes_through(run[-1], bar, said):
            yield run
            run = []
        run.append(bar)
    if run:
        yield run


def _goes_through(before: Bar, bar: Bar, said: Mapping[str, Member]) -> bool:
    """Whether two bars meet at a joint where neither is spliced."""
    shared = set(before.ends) & set(bar.ends)
    cuts = [said[one.name].spliced_at for one in (before, bar)]
    return bool(shared) and all(cut is not None and not shared & cut for cut in cuts)


def _spans(run: Sequence[Bar]) -> tuple[Span, ...] | None:
    """The spans of a run, as built; None where a size of one of them was never measured."""
    try:
        shapes = [properties(bar.as_built) for bar in run]
    except NotMeasured:
        return None
    return tuple(
        Span(
            length=bar.length, run=bar.length if bar.run is None else bar.run, area=shape.area,
            density=bar.material.density, inertia=shape.i_x,
        )
        for bar, shape in zip(run, shapes, strict=True)
    )
