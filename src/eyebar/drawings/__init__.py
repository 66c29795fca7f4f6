"""Drawings in ink: made from documents alone, the same bytes every time."""

from eyebar.drawings.paper import Form
from eyebar.drawings.stress_sheet import Sheet, stress_sheet

__all__ = ["Form", "Sheet", "stress_sheet"]
