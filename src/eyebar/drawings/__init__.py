"""Drawings in ink: made from documents alone, the same bytes every time."""

from eyebar.drawings.form_picture import Picture, form_picture
from eyebar.drawings.stress_sheet import Sheet, stress_sheet

__all__ = ["Picture", "Sheet", "form_picture", "stress_sheet"]
