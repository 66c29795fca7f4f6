"""What a bar may carry in pull and in push, by each method and level, as it is left."""

from eyebar.resistance.limit import Condition, Limit
from eyebar.resistance.of_bar import limits

__all__ = ["Condition", "Limit", "limits"]
