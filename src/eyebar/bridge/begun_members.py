"""The groups of bars of a record that is begun: what iron usually is there, its sizes left open."""

from collections.abc import Iterable, Iterator

from eyebar.addresses import ends_of
from eyebar.bridge.forms import LaidBar, Layout
from eyebar.terms import Kind

OPEN = "not measured"
_CHANNELS = (
    f"channels: {{depth: {OPEN}, web: {OPEN}, flange: {OPEN}, flange thickness: {OPEN},"
    f" apart: {OPEN}, toes: out}}"
)
BOX = (
    _CHANNELS, f"cover plate: {OPEN}",
    f"lacing: {{bar: {OPEN}, pitch: {OPEN}, planes: 1}}   # or battens",
)
LACED = (_CHANNELS, f"lacing: {{bar: {OPEN}, pitch: {OPEN}, planes: 2}}   # or battens")
EYEBARS = (
    f"eyebars: {{number: 2, width: {OPEN}, thickness: {OPEN}, head: {OPEN}, hole: {OPEN}}}",
)
ROD = (
    f"rods: {{number: 1, diameter: {OPEN}, shape: round, threads: upset, root diameter: {OPEN},"
    f" turnbuckle: true, turnbuckle area: {OPEN}}}",
)
UPRIGHT_ROD = (
    f"rods: {{number: 2, diameter: {OPEN}, shape: round, threads: upset, root diameter: {OPEN}}}",
)
LOOPS = (f"loop rods: {{number: 2, diameter: {OPEN}, shape: round}}",)

USUAL = {
    "end post": BOX, "top chord": BOX, "bottom chord": EYEBARS, "post": LACED, "sub-post": LACED,
    "king post": LACED, "queen post": LACED, "vertical": LACED, "sub-strut": LACED,
    "brace": LACED, "counterbrace": LACED, "web diagonal": LACED, "hip vertical": LOOPS,
    "hanger": LOOPS, "sub-vertical": LOOPS, "king rod": UPRIGHT_ROD, "queen rod": UPRIGHT_ROD,
    "vertical rod": UPRIGHT_ROD, "counter": ROD, "middle counter": ROD, "middle half": ROD,
    "sub-tie": ROD,
}
"""What the trade calls a bar -> what it is usually made of; other diagonals are eyebars."""

NAMES = {
    "top chord": "top chord", "bottom chord": "bottom chord",
    "middle counter": "crossed rods of the middle panel",
    "middle half": "crossed rods of the middle panel",
}
"""Name of a group where it is not what its bars are called, with an s."""


def groups_of(layout: Layout, *, deck: bool) -> Iterator[str]:
    """Lines of the groups of a layout's bars, one group for each thing the trade has a word for."""
    groups: dict[str, list[LaidBar]] = {}
    for one in layout.bars.values():
        groups.setdefault(one.called, []).append(one)
    for called, bars in groups.items():
        # Either word may be right for some of a group: it takes one that is right for all.
        kind = next(
            kind for kind in bars[0].kinds if all(kind in one.kinds for one in bars)
        )
        yield f"  {NAMES.get(called, f'{called}s')}:"
        yield f"    kind: {kind}"
        yield f"    bars: [{', '.join(_runs(one.name for one in bars))}]"
        yield "    section:"
        yield from (f"      {line}" for line in USUAL.get(called, EYEBARS))
        yield "    material: iron"
        yield from _asked(called, kind, deck=deck)


def _asked(called: str, kind: Kind, *, deck: bool) -> Iterator[str]:
    """What else belongs to a group: said where it must be, asked in a comment where it may be."""
    if called == "counterbrace":
        yield "    can push: true"
    if called in ("brace", "counterbrace"):
        yield "    # can pull: false           where it only butts against its blocks"
    if kind in (Kind.TOP_CHORD, Kind.END_POST):
        yield "    # pin offset: 1/2 in        pins below the centre of gravity"
    if kind is Kind.TOP_CHORD:
        yield "    # spliced at: []            the joints where the chord is cut"
        if deck:
            yield "    # lateral points: []        joints that floorbeams, laterals hold sideways"


def _runs(names: Iterable[str]) -> Iterator[str]:
    """Names of bars in their order; neighbours along a chord as one run, `L0..L4`."""
    run: list[str] = []
    for name in names:
        if run and not (_next(run[-1]) == name and _next(name)):
            yield _as_run(run)
            run = []
        run.append(name)
    if run:
        yield _as_run(run)


def _next(name: str) -> str:
    """The bar that follows along a chord whose joints follow each other; empty for others."""
    first, last = ends_of(name)
    letter, number = last[0], int(last[1:])
    if first != f"{letter}{number - 1}":
        return ""
    return f"{last}-{letter}{number + 1}"


def _as_run(run: list[str]) -> str:
    return run[0] if len(run) == 1 else f"{ends_of(run[0])[0]}..{ends_of(run[-1])[1]}"
