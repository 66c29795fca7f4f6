"""Trusses, weights and trains for laws, drawn by Hypothesis."""

from hypothesis import strategies as st

from tests.analysis.trusses import COUNTERS, Drawing, double_intersection, pratt

areas = st.floats(0.8, 9.0)
pitches = st.floats(140.0, 220.0)


@st.composite
def snug_trusses(draw: st.DrawFn) -> Drawing:
    """A truss without gaps or lack of fit: crossed rods, counters, or a double intersection."""
    form = draw(st.sampled_from(["crossed", "countered", "double"]))
    if form == "double":
        some = draw(st.sets(st.sampled_from(COUNTERS)))
        drawing = double_intersection(
            counters=sorted(some), depth=draw(st.floats(240.0, 400.0)),
            pitches=draw(st.lists(pitches, min_size=10, max_size=10)),
        )
    else:
        panels = draw(st.integers(4, 9))
        middle = panels // 2
        counters = None if form == "crossed" else [f"U{middle}-L{middle - 1}"]
        drawing = pratt(panels, counters=counters, depth=draw(st.floats(180.0, 320.0)))
    return drawing.with_bars(area={name: draw(areas) for name in drawing.names})


@st.composite
def trusses(draw: st.DrawFn) -> Drawing:
    """A truss whose rods may be tight or loose, and any of whose bars may have a gap."""
    drawing = draw(snug_trusses())
    rods = [bar.name for bar in drawing.bars if not bar.can_push]
    unfit = draw(st.dictionaries(st.sampled_from(rods), st.floats(-6.0, 6.0), max_size=4))
    others = [name for name in drawing.names if name not in unfit]
    loose = draw(st.dictionaries(st.sampled_from(others), st.floats(0.0, 0.1), max_size=4))
    return drawing.with_bars(initial_kip=unfit, gap_in=loose)


@st.composite
def weights(draw: st.DrawFn, drawing: Drawing) -> dict[str, float]:
    """Weights [kip] on the free floor joints, from nothing to 20."""
    free = [joint for joint in drawing.floor_joints if joint not in drawing.supports]
    return {joint: draw(st.floats(0.0, 20.0)) for joint in free}


trains = st.sampled_from([
    ((26.0,), ()),
    ((8.0, 32.0), (14.0,)),
    ((16.0, 17.0, 17.0), (15.0, 4.0)),
    ((10.0, 15.5, 15.5, 15.5, 15.5), (11.0, 4.0, 22.0, 4.0)),
])
"""(axles [kip], spacings [ft]) of trucks as they are."""
