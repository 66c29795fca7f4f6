"""Values of the office: shipped figures, the office's own, and the exceptions of one bridge."""

from eyebar.office.layers import Exceptions, office_values, values_of
from eyebar.office.shipped import shipped_values
from eyebar.office.values import Values

__all__ = ["Exceptions", "Values", "office_values", "shipped_values", "values_of"]
