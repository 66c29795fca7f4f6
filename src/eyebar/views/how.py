"""How a truss works, in short sentences with its own numbers.

Written to be read by a twelve-year-old; a test measures how hard they are.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from eyebar.terms import Kind
from eyebar.views import sheet_words
from eyebar.views.columns import Document, text

KIP_IN_A_TON = 2.0
KIP_IN_IN_A_FOOT_TON = 24.0
NONE = 0.05
"""A force below this [kip] shows as nothing."""
RIGID = "Why it stands stiff"
WORK = "Which bars push and which pull"
WEBS = "Two webs share the load"
SIZES = "Why the bars are not all one size"
ALIKE = (
    "The bars of each kind have the same size here, though they do not all work alike. The one "
    "that works most set the size."
)
KEY = (
    "A broad, hollow bar is pushed, and its arrows meet. A thin, solid bar is pulled, and its "
    "arrows part. A bar with a broken line is slack. This is how it stands with no one on it."
)
SKETCHES = {
    RIGID: "An empty frame of four bars that leans, and the same with its slanting bar.",
    WEBS: "The truss twice; each time one of its webs is drawn heavy in one half.",
    SIZES: "A row of blocks, one for each bar of the chord, as high as the bar has metal; a heavy "
    "line across each is as high as the bar has force.",
}
"""What the sketches of a chapter show, for those who do not see them."""
WEIGHT_AND_TRUCK = (
    "The weight and the heaviest truck that we tried by numbers change it by"
)
WEIGHT = "The weight changes it by"
NO_VEHICLE = "No truck is counted here; the command 'forces' says why."
EMPTY_FRAME = "four bars: the frame leans"
WEB_NAMES = ("the first web", "the second web")


@dataclass(frozen=True, slots=True, kw_only=True)
class HowChapter:
    """One thing that is told."""

    heading: str = text("Heading", "What is told.")
    sentences: tuple[str, ...] = text("Sentences", "The same in short sentences.")


@dataclass(frozen=True, slots=True, kw_only=True)
class HowTruss:
    """How one truss works, or several that are alike."""

    title: str = text("Title", "The trusses, and their form.")
    chapters: tuple[HowChapter, ...] = text("Chapters", "What is told, one thing after the other.")


@dataclass(frozen=True, slots=True, kw_only=True)
class HowItWorks:
    """How the trusses of a bridge work."""

    bridge: str = text("Bridge", "Name and date.")
    trusses: tuple[HowTruss, ...] = text("Trusses", "One entry for trusses that are alike.")
    cautions: tuple[str, ...] = text("Cautions", "What belongs to every use of the result.")


def how_it_works(document: Document) -> HowItWorks:
    """The view of a `history-how` document."""
    alike: dict[tuple[HowChapter, ...], list[Document]] = {}
    for truss in document["trusses"]:
        alike.setdefault(chapters(truss), []).append(truss)
    return HowItWorks(
        bridge=f"{document['bridge']['name']}, as on {document['date']}.",
        trusses=tuple(
            HowTruss(title=title(trusses), chapters=told) for told, trusses in alike.items()
        ),
        cautions=tuple(document["cautions"]),
    )


def title(trusses: list[Document]) -> str:
    """`How the north and south trusses work (half-hip Pratt)`."""
    names = " and ".join(one["truss"] for one in trusses)
    several = "truss works" if len(trusses) == 1 else "trusses work"
    return f"How the {names} {several} ({trusses[0]['form'] or 'none of the known forms'})"


def chapters(truss: Document) -> tuple[HowChapter, ...]:
    """All that is told of one truss."""
    bars = {one["bar"]: one for one in truss["bars"]}
    found = (
        HowChapter(heading=RIGID, sentences=tuple(_rigid(truss))),
        HowChapter(heading=WORK, sentences=tuple(_work(truss, bars))),
        HowChapter(heading=WEBS, sentences=tuple(_webs(truss["webs"]))),
        HowChapter(heading=SIZES, sentences=tuple(_sizes(truss["grown"], bars))),
    )
    return tuple(one for one in found if one.sentences)


def with_bar(bar: str) -> str:
    """Under the frame with its slanting bar."""
    return f"{bar} across: it can not lean"


def strip_words(kind: str) -> str:
    """Under a strip of sizes."""
    return f"{kind}: a block is as high as it has metal, the heavy line as high as it has force"


def tons(kip: float) -> str:
    """A force [kip] in tons, without its sign: whole from ten on, else to one decimal."""
    found = abs(kip) / KIP_IN_A_TON
    return f"{found:.0f}" if found >= 10.0 - NONE else f"{found:.1f}"


def _exactly(kip: float) -> str:
    return f"{kip / KIP_IN_A_TON:.1f}"


def _rigid(truss: Document) -> Iterator[str]:
    yield (
        "Pin four bars into a frame and it leans over, like an empty box. Pin three, and they can "
        "not lean. A truss is made of threes."
    )
    panel = truss["panel"]
    if panel is None:
        return
    bar = panel["diagonal"]
    yield (
        f"Look at {panel['high']}, {panel['corner']} and {panel['low']} in the drawing. For the "
        f"frame to lean there by one inch, {bar} would have to change its length by "
        f"{panel['stretch_in']:.2f} inches."
    )
    if panel["works_in"] < 0.7 * panel["stretch_in"]:
        yield (
            f"{WEIGHT_AND_TRUCK if truss['vehicles'] else WEIGHT} {panel['works_in']:.2f} inches "
            "at most. So the frame keeps its shape."
        )


def _work(truss: Document, bars: dict[str, Document]) -> Iterator[str]:
    (first, here), (last, there) = truss["rests_kip"].items()
    yield (
        f"The truss and its share of the floor weigh {_exactly(truss['weight_kip'])} tons. "
        f"{_exactly(here)} tons of that rest on the bank at {first}, {_exactly(there)} tons at "
        f"{last}."
    )
    yield "A load bends the truss down. Then its top is squeezed and its bottom is stretched."
    if truss["middle"]:
        yield _middle(truss["middle"], bars)
    yield from _by_weight(truss["bars"])
    if truss["vehicles"]:
        yield from _by_trucks(truss["bars"])
    else:
        yield NO_VEHICLE


def _middle(middle: Document, bars: dict[str, Document]) -> str:
    upper, lower, near = middle["upper"], middle["lower"], middle["near"]
    push = tons(middle["chord_kip"])
    moment = middle["moment_kip_in"] / KIP_IN_IN_A_FOOT_TON
    head = (
        f"At {middle['upright']} the weight bends it with {moment:.0f} foot-tons. Top and bottom "
        f"are {middle['depth_in'] / 12.0:.1f} feet apart there. Divide the first by the second: "
        f"about {push} tons."
    )
    pushed = f"{upper} is pushed with {tons(bars[upper]['dead_kip'])} tons"
    pulled = f"{lower} is pulled with {tons(bars[lower]['dead_kip'])} tons"
    if len(near) > 1:
        return f"{head} So it is: {pushed}, and {pulled}."
    return f"{head} So it is: {pushed if near[0] == upper else pulled}."


def _by_weight(bars: list[Document]) -> Iterator[str]:
    work = {
        "pushed": [one for one in bars if one["dead_kip"] <= -NONE],
        "pulled": [one for one in bars if one["dead_kip"] >= NONE],
        "slack": [one for one in bars if abs(one["dead_kip"]) < NONE],
    }
    for word, alike in work.items():
        if alike:
            yield f"By the weight alone these are {word}: {_counted(alike)}."


def _counted(bars: list[Document]) -> str:
    counted = Counter(one["kind"] for one in bars)
    return ", ".join(
        f"{count} {sheet_words.several(kind) if count > 1 else kind}"
        for kind, count in counted.items()
    )


def _by_trucks(bars: list[Document]) -> Iterator[str]:
    web = [one for one in bars if one["kind"] in (Kind.DIAGONAL, Kind.POST)] or bars
    most = max(web, key=lambda one: round(one["greatest_kip"] - one["least_kip"], 3))
    yield (
        f"A truck makes the forces change as it drives. In {most['bar']} they change most: "
        f"{_from(most['least_kip'])} to {_from(most['greatest_kip'])}."
    )
    slack = [one for one in bars if abs(one["dead_kip"]) < NONE and _works(one)]
    if slack:
        woken = max(slack, key=lambda one: round(one["greatest_kip"] - one["least_kip"], 3))
        names = ", ".join(one["bar"] for one in slack)
        yield (
            f"Only a truck wakes the slack bars ({names}). Then {woken['bar']} gets up to "
            f"{tons(max(woken['greatest_kip'], -woken['least_kip']))} tons."
        )
    both = [one["bar"] for one in bars if one["least_kip"] < -NONE and one["greatest_kip"] > NONE]
    if both:
        yield f"Pushed at one time and pulled at another, so they must be stiff: {', '.join(both)}."


def _works(one: Document) -> bool:
    return bool(one["greatest_kip"] > NONE or one["least_kip"] < -NONE)


def _from(kip: float) -> str:
    """`a pull of 12 tons`, `a push of 3.1 tons`, `nothing`."""
    if abs(kip) < NONE:
        return "nothing"
    return f"a {'pull' if kip > 0 else 'push'} of {tons(kip)} tons"


def _webs(webs: list[Document]) -> Iterator[str]:
    if not webs:
        return
    one, other = webs
    hip = next(iter({*one["first"]} & {*other["first"]}), "the end")
    yield (
        "This truss has two webs, one laid over the other. Each has its own joints along the "
        "bottom. A wheel loads the web on whose joint it stands."
    )
    yield (
        f"In the half near {'end 0' if hip == 'the end' else hip} the first web has "
        f"{_and(one['panel_points'])}, the second {_and(other['panel_points'])}. Of the weight, "
        f"{_bar(one['first'])} brings {tons(one['brings_kip'])} tons up to {hip}, and "
        f"{_bar(other['first'])} brings {tons(other['brings_kip'])} tons."
    )
    yield (
        "How they share also hangs on how tight each bar is. That can only be felt at the bridge."
    )


def _bar(ends: list[str]) -> str:
    return "-".join(ends)


def _and(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _sizes(grown: list[Document], bars: dict[str, Document]) -> Iterator[str]:
    if not grown:
        yield ALIKE
    for one in grown:
        slight, stout = bars[one["slight"]], bars[one["stout"]]
        yield (
            f"{sheet_words.several(one['kind']).capitalize()}: {slight['bar']} gets up to "
            f"{tons(most(slight))} tons and has {slight['area_in2']:.1f} square inches of metal. "
            f"{stout['bar']} gets up to {tons(most(stout))} tons and has "
            f"{stout['area_in2']:.1f}."
        )
    against = [one["stout"] for one in grown if not _follows(one, bars)]
    if grown and not against:
        yield "The maker put the metal where the force is, and spared it where it is not."
    for bar in against:
        yield f"{bar} is the stouter, yet it works less. Was it changed later?"


def _follows(one: Document, bars: dict[str, Document]) -> bool:
    """Whether the stouter bar works as much at least."""
    return most(bars[one["stout"]]) >= most(bars[one["slight"]]) - NONE


def most(bar: Document) -> float:
    """The greatest force of a bar, without its sign [kip]."""
    return float(max(abs(bar["least_kip"]), abs(bar["greatest_kip"]), abs(bar["dead_kip"])))
