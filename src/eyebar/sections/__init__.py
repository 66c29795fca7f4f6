"""Shapes of sections, what follows from their measures, and what rust has taken from them."""
