"""The closed lists of words that every room shares."""

from enum import StrEnum


class Method(StrEnum):
    """The three rating methods of American practice."""

    ALLOWABLE_STRESS = "allowable-stress"
    LOAD_FACTOR = "load-factor"
    LOAD_AND_RESISTANCE = "load-and-resistance"


class Level(StrEnum):
    """How much of the strength a rating may use, and for how long."""

    INVENTORY = "inventory"
    OPERATING = "operating"
    LEGAL = "legal"
    PERMIT = "permit"


class Kind(StrEnum):
    """What a part does in the bridge."""

    END_POST = "end post"
    TOP_CHORD = "top chord"
    BOTTOM_CHORD = "bottom chord"
    POST = "post"
    HIP_VERTICAL = "hip vertical"
    DIAGONAL = "diagonal"
    COUNTER = "counter"
    PIN = "pin"
    HANGER = "hanger"
    FLOORBEAM = "floorbeam"
    STRINGER = "stringer"
    DECK = "deck"
    BEARING = "bearing"
    BRACKET = "bracket"
    JOINT_BLOCK = "joint block"
    STRUT = "strut"
    LATERAL = "lateral"


BAR_KINDS = (
    Kind.END_POST, Kind.TOP_CHORD, Kind.BOTTOM_CHORD, Kind.POST, Kind.HIP_VERTICAL,
    Kind.DIAGONAL, Kind.COUNTER,
)
"""The kinds that are bars of a plane truss."""

CHORD_KINDS = (Kind.TOP_CHORD, Kind.BOTTOM_CHORD)
"""Their loaded length is the whole span, and their lane load takes the moment's single weight."""


class Metal(StrEnum):
    """The metals and the timber that a member may be made of."""

    WROUGHT_IRON = "wrought iron"
    STEEL = "steel"
    CAST_IRON = "cast iron"
    TIMBER = "timber"


class VehicleClass(StrEnum):
    """Which law a vehicle stands under."""

    DESIGN = "design"
    SINGLE = "single"
    COMBINATION = "combination"
    EMERGENCY = "emergency"
    EVERYDAY = "everyday"


class Combine(StrEnum):
    """How a vehicle's axles and its lane load go together; a crowd is a load by area alone."""

    NONE = "none"
    GREATER = "greater"
    SUM = "sum"
    AREA = "area"


class Pace(StrEnum):
    """How fast a load moves over the bridge, for its shock."""

    ANY = "any pace"
    WALKING = "walking pace"
    STILL = "standing still"


class Answer(StrEnum):
    """Whether a vehicle may cross."""

    YES = "yes"
    CONDITIONS = "conditions"
    NO = "no"


class Condition(StrEnum):
    """What a crossing may depend on."""

    ALONE = "alone"
    MIDDLE = "middle"
    WALKING = "walking pace"
    SPREAD = "axles spread"
    FEWER_TONS = "fewer tons"
    LESS_BY_AREA = "less by area"
    PERMIT = "permit"


class RoadUse(StrEnum):
    """What may be changed in the use of a road, without mending any part."""

    CURB = "curb"
    WALKING = "walking pace"
    ALONE = "one at a time"
    BARE = "bare deck"
    TOGETHER = "together"


class Leaf(StrEnum):
    """What a drawing is laid out for: a sheet on a desk, or a narrow page of a field book."""

    SHEET = "sheet"
    FIELD_BOOK = "field-book"


class SheetName(StrEnum):
    """What a sheet shows."""

    ELEVATION = "elevation"
    STRESS = "stress"
    CROSS_SECTION = "cross-section"
    FLOOR = "floor"
    INFLUENCE = "influence"
    MEMBER = "member"
    PIN = "pin"
    SIGN = "sign"
    INSPECTION = "inspection"
    PROPORTION = "proportion"


class Working(StrEnum):
    """Of which parts a report shows the working."""

    GOVERNING = "governing"
    ALL = "all"
    NONE = "none"


class Board(StrEnum):
    """What a report says of who may cross: nothing, the answers, or with conditions looked for."""

    NONE = "none"
    ANSWERS = "answers"
    CONDITIONS = "conditions"


class Reader(StrEnum):
    """For whom a report is written."""

    ENGINEER = "engineer"
    PUBLIC = "public"
    OPERATOR = "operator"


class Direction(StrEnum):
    """Which way a vehicle travels: towards higher stations, or lower."""

    UP = "up"
    DOWN = "down"


class Form(StrEnum):
    """The forms of truss that are laid out from panels and depth."""

    KING_POST = "king post"
    QUEEN_POST = "queen post"
    PRATT = "Pratt"
    HALF_HIP_PRATT = "half-hip Pratt"
    SMALL_PRATT = "small Pratt"
    DOUBLE_INTERSECTION_PRATT = "double-intersection Pratt"
    PARKER = "Parker"
    CAMELBACK = "Camelback"
    WARREN = "Warren"
    WARREN_WITH_VERTICALS = "Warren with verticals"
    DOUBLE_INTERSECTION_WARREN = "double-intersection Warren"
    HOWE = "Howe"
    BALTIMORE = "Baltimore"
    PENNSYLVANIA = "Pennsylvania"
    BOWSTRING = "bowstring"
    LENTICULAR = "lenticular"


class EndPosts(StrEnum):
    """How a truss ends: posts that lean, posts that stand upright, or none, the truss hanging from
    the ends of its upper chord.
    """

    INCLINED = "inclined"
    VERTICAL = "vertical"
    NONE = "none"


class FloorOn(StrEnum):
    """Which chord carries the floor: the lower one of a through or pony truss, or a deck's."""

    LOWER = "on the lower chord"
    UPPER = "on the upper chord"


class SubMembers(StrEnum):
    """What holds the middle of a diagonal: a strut from below, or a tie from above."""

    STRUTS = "sub-struts"
    TIES = "sub-ties"


class CurveShape(StrEnum):
    """The line on which the joints of a curved chord lie."""

    PARABOLA = "parabola"
    CIRCLE = "circle"
    FIVE_SLOPES = "five slopes"


class RoadPlace(StrEnum):
    """Where the road runs: between trusses braced overhead, between low ones, or on top."""

    THROUGH = "through"
    PONY = "pony"
    DECK = "deck"


class Role(StrEnum):
    """What an account of a shared workbench may do; each may also what those before it may."""

    READER = "reader"
    MEASURER = "measurer"
    ENGINEER = "engineer"


class Scope(StrEnum):
    """What a token is good for."""

    READ = "read"
    WRITE = "write"
