"""The forms that the gallery shows: what to type, and how each carries, in our words."""

from dataclasses import dataclass

from eyebar.terms import Form


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """One picture: its name, the arguments of `eyebar new`, two sentences."""

    name: str
    form: Form
    panels: str
    depth: str
    more: tuple[str, ...] = ()
    carries: str

    @property
    def arguments(self) -> tuple[str, ...]:
        """What is typed after `eyebar new`."""
        return ("--form", self.form, "--panels", self.panels, "--depth", self.depth, *self.more)

    @property
    def file(self) -> str:
        """Name of the picture's file."""
        words = self.name.lower().replace(",", "").split()
        return f"{'-'.join(words)}.svg"


PONY = ("--floor", "pony")
DECK = ("--floor", "deck")

SIMPLE = (
    Shown(
        name="King post", form=Form.KING_POST, panels="2 at 14 ft", depth="10 ft", more=PONY,
        carries="The floorbeam in the middle hangs on one upright, and two leaning posts bring its"
        " pull down to the bearings. The bottom chord ties their feet together: a triangle that no"
        " load can fold.",
    ),
    Shown(
        name="Queen post", form=Form.QUEEN_POST, panels="3 at 12 ft", depth="9 ft", more=PONY,
        carries="Two uprights hold two floorbeams, and a straining beam keeps the heads of the"
        " leaning posts apart. A load on one of them alone would fold the middle panel: its"
        " crossed rods prevent that, and without them the program refuses the truss.",
    ),
    Shown(
        name="Small Pratt", form=Form.SMALL_PRATT, panels="3 at 14 ft", depth="8 ft", more=PONY,
        carries="Three panels look like a queen post, but the middle one is a real web panel, with"
        " a rod for each direction of its shear. Whichever of the two is not pulled goes slack.",
    ),
    Shown(
        name="Half-hip Pratt", form=Form.HALF_HIP_PRATT, panels="4 at 15 ft", depth="7 ft",
        more=("--hip", "8 ft", "--counters", "U2-L1, U2-L3", *PONY),
        carries="A Pratt whose hip stands within the end panel, so that no upright hangs from it;"
        " the first diagonal hangs the end floorbeam instead. The end posts are short and steep,"
        " which leaves the end panels of the bottom chord little to pull.",
    ),
)

PRATTS = (
    Shown(
        name="Pratt", form=Form.PRATT, panels="7 at 16 ft", depth="20 ft",
        more=("--counters", "U3-L2, U4-L5"),
        carries="Long diagonals fall to the middle and are pulled, short posts are pushed: the"
        " slender bars are the ones that cannot buckle. Counters cross the diagonals where a load"
        " may turn the shear round, and stay slack until it does.",
    ),
    Shown(
        name="Double-intersection Pratt", form=Form.DOUBLE_INTERSECTION_PRATT,
        panels="10 at 15 ft", depth="28 ft",
        carries="Every diagonal passes one post and reaches over two panels, so that a deep truss"
        " keeps short panels and diagonals at a good slope. Two webs share the load, and how they"
        " share it depends on which bars are slack.",
    ),
    Shown(
        name="Parker", form=Form.PARKER, panels="8 at 20 ft", depth="32 ft",
        more=("--rise", "8 ft", "--counters", "U3-L2, U4-L3, U4-L5, U5-L6"),
        carries="The upper chord rises to the middle, as the moment does, and takes a part of the"
        " shear by its slope. The web has less to do than under a level chord, and a post may find"
        " itself pulled.",
    ),
    Shown(
        name="Camelback", form=Form.CAMELBACK, panels="7 at 18 ft", depth="26 ft",
        more=("--rise", "5 ft", "--shoulder", "U3", "--counters", "U3-L2, U4-L5"),
        carries="A Parker with five slopes in all: two end posts, two shoulders and a level"
        " middle. It gives up some of the curve's saving for fewer kinks in the chord.",
    ),
)

TRIANGLES = (
    Shown(
        name="Warren", form=Form.WARREN, panels="5 at 14 ft", depth="8 ft", more=PONY,
        carries="Diagonals up and down in turn, one pushed and one pulled, and no posts at all."
        " Near the middle the passing load turns their forces round, so that each must be made for"
        " both.",
    ),
    Shown(
        name="Warren with verticals", form=Form.WARREN_WITH_VERTICALS, panels="6 at 15 ft",
        depth="18 ft",
        carries="The same triangles, with uprights at every panel point: half of them hang a"
        " floorbeam from the upper chord, half stay that chord against buckling. These posts"
        " carry next to nothing but their chord.",
    ),
    Shown(
        name="Double-intersection Warren", form=Form.DOUBLE_INTERSECTION_WARREN,
        panels="6 at 14 ft", depth="10 ft", more=PONY,
        carries="Two Warren webs laid over each other, so that every panel has one diagonal"
        " pushed and one pulled. Statics alone does not tell how they share; their stiffness does.",
    ),
    Shown(
        name="Howe", form=Form.HOWE, panels="8 at 12 ft", depth="20 ft",
        carries="The Pratt turned round: the diagonals are stout braces that are pushed, the"
        " uprights rods that are pulled. It suits timber braces on cast-iron blocks, and rods that"
        " can be tightened.",
    ),
)

HALVED = (
    Shown(
        name="Baltimore", form=Form.BALTIMORE, panels="12 at 12 ft 6 in", depth="30 ft",
        more=("--counters", "U6-M5, U6-M7"),
        carries="A Pratt with long panels, each halved by a short upright under the middle of its"
        " diagonal, so that the floor has short spans. A strut from below holds that middle, and"
        " the lower half of the diagonal carries less than the upper.",
    ),
    Shown(
        name="Baltimore with sub-ties", form=Form.BALTIMORE, panels="8 at 12 ft", depth="26 ft",
        more=("--sub-members", "sub-ties"),
        carries="Here the middle of each diagonal hangs on a tie from the next upper panel point."
        " What is a push in a strut becomes a pull; in exchange both halves of the diagonal are"
        " pulled harder.",
    ),
    Shown(
        name="Pennsylvania", form=Form.PENNSYLVANIA, panels="12 at 15 ft", depth="36 ft",
        more=("--rise", "9 ft", "--counters", "U6-M5, U6-M7"),
        carries="Halved panels under a chord that rises to the middle: the longest spans of the"
        " pin-connected kind. The sloping chord takes shear away from the diagonals, so much that"
        " near the middle there may be need of counters under dead load alone.",
    ),
)

CURVES = (
    Shown(
        name="Bowstring", form=Form.BOWSTRING, panels="8 at 11 ft", depth="14 ft",
        carries="The upper chord is an arch, the lower one its string: under an even load they do"
        " all the work, and the web only hangs the floor. It is an uneven load that the crossed"
        " rods are for.",
    ),
    Shown(
        name="Lenticular", form=Form.LENTICULAR, panels="8 at 14 ft", depth="22 ft",
        more=("--sag", "11 ft"),
        carries="An arch above and a hanging chain below, the thrust of the one against the pull"
        " of the other, so that the bearings are only pressed down. Both chords have nearly one"
        " force from end to end under an even load.",
    ),
)

ENDS = (
    Shown(
        name="Pratt, deck", form=Form.PRATT, panels="6 at 15 ft", depth="16 ft",
        more=("--counters", "U3-L2, U3-L4", *DECK),
        carries="The floor lies on the upper chord, and the inner posts push its load down into"
        " the web. The uprights next to the ends, which hang a floorbeam in a through truss, only"
        " hold up the bottom chord here.",
    ),
    Shown(
        name="Parker, hung", form=Form.PARKER, panels="8 at 14 ft", depth="16 ft",
        more=("--rise", "5 ft", *DECK),
        carries="A deck truss without end posts: it hangs from the ends of its upper chord, and"
        " the curve is below. The first diagonals are pulled and bring the load up to the"
        " bearings.",
    ),
    Shown(
        name="Pratt with upright ends", form=Form.PRATT, panels="6 at 15 ft", depth="12 ft",
        more=("--end-posts", "vertical", *PONY),
        carries="The end posts stand upright, and the first diagonals bring the load to their"
        " heads. The bottom chord of the end panels has nothing to do under load from above.",
    ),
)

CHAPTERS = (
    ("Few panels", SIMPLE),
    ("The Pratt and its kin", PRATTS),
    ("Triangles and braces", TRIANGLES),
    ("Halved panels", HALVED),
    ("Two curves, or one and a string", CURVES),
    ("Other ends, other floors", ENDS),
)
