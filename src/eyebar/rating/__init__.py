"""Three methods, factors of every part, the posting."""

from eyebar.rating.asked import methods_of
from eyebar.rating.kept import loaded_states
from eyebar.rating.rate import rated_bridge
from eyebar.rating.rated import BridgeRating, Event, Facts, PartRating, Place, RatedPart
from eyebar.rating.replay import Replay
from eyebar.rating.working import replayed

__all__ = [
    "BridgeRating", "Event", "Facts", "PartRating", "Place", "RatedPart", "Replay",
    "loaded_states", "methods_of", "rated_bridge", "replayed",
]
