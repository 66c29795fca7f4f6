"""What a truss is, told from its lines alone, and how old its details say it may be."""

from eyebar.history.age import Age, Detail, age
from eyebar.history.form import Recognised, recognised
from eyebar.history.lines import Lines, lines_of, mirrored

__all__ = ["Age", "Detail", "Lines", "Recognised", "age", "lines_of", "mirrored", "recognised"]
