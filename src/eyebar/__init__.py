"""eyebar: what an old pin-connected truss bridge may carry, measured, computed and explained."""

__version__ = "0.1.0"
