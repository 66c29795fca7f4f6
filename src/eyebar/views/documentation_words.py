"""The words of a documentation sheet that are the same for every bridge: captions and prompts.

The outline is that of the public federal guidelines for the written history of engineering works:
who, where, when; why it matters; its history; its description; sources.
"""

KIND = "Documentation sheet"
OPEN = "to be written"
UNKNOWN = "not known"
IDENTITY = "Identity"
ASKED_AND_TOLD = ("Asked", "Told")
SIGNIFICANCE = "Why it matters"
HISTORY = "Part I: history"
LATER = "What the record tells of later years"
DESCRIPTION = "Part II: description"
GENERAL = "The bridge as a whole"
MEMBERS = "Members"
JOINTS = "How members are joined"
FLOOR = "Floor and road"
BRACING = "Bracing"
ENDS = "Ends and substructure"
DETAILS = "Inscriptions and details"
CONDITION = "Condition"
AGE = "Form and age, by what was found"
HOW = "How it works"
SOURCES = "Sources and limits"
ATTACHED = "Drawings attached"
CROSS_SECTION = "the cross-section of the roadway"
FLOOR_PLAN = "the floor plan"
NOT_DRAWN = "Not drawn"
NO_DRAWING = "The record has not the sizes for a drawing."

ASKED_OF_SIGNIFICANCE = (
    "What does it show: of its form, its maker, its road, the people who asked for it?",
    "How many of its form and age are left in county and state? By whose count, of when?",
    "What of it is as it was built, and what was changed? Do the changes matter by themselves?",
    "What sets it apart from its like: a detail, a patent, a span, a place?",
    "Is it on a register, or found eligible for one? By whom, when?",
)
ASKED_OF_HISTORY = (
    "How was the place crossed before, and who asked for a bridge?",
    "What do the county's minutes say of orders, bids, contract, price and acceptance?",
    "Who designed it, who made the iron and steel, who put it up? Which marks are on the metal?",
    "Was it built for this place, or moved here? From where, when?",
    "Who has owned it since, which road did it carry, and what befell it: floods, ice, loads?",
)
ASKED_OF_ENDS = (
    "Abutments and piers: of what, laid how, by whom, changed when? The record does not tell.",
)
ASKED_OF_DETAILS = (
    "Plaques, with their exact words and where they hang; names and marks rolled into the metal.",
    "Portals, finials, railings, lamp brackets: what is there, what is gone?",
)
ASKED_OF_SOURCES = (
    "Archives, newspapers, county books, maps and old photographs, each with place and number.",
    "People who were asked, with dates.",
    "Photographs made for this sheet: number, view, direction, date.",
)
NO_LATER = "The record tells of no change."
NO_BRACING = "The record does not tell what holds the trusses sideways."
NO_PINS = "The record tells no pins."
UNLIKE = "Parts that differ from their like, with the record's reason:"
SIGNED = ("Historian", "Date", "Measured by", "Photographs by")
CAN_PUSH = "Broad and hollow bars can push; thin bars only pull."
PLACES = {
    ("lower", True): (
        "The road runs between the trusses at their lower chords, and braces join the upper "
        "chords overhead: a through truss."
    ),
    ("lower", False): (
        "The road runs between the trusses at their lower chords, and nothing joins the upper "
        "chords overhead: a pony truss."
    ),
    ("lower", None): (
        "The road runs between the trusses at their lower chords; whether braces join the upper "
        "chords overhead is not recorded."
    ),
}
DECK = "The road runs on top of the trusses: a deck truss."
NEITHER = "The road runs between the levels of the chords."


def elevation(truss: str) -> str:
    """The name of a drawing: the elevation of a truss."""
    return f"the elevation of the {truss} truss"
