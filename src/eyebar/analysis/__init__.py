"""Forces: bars that cannot push or pull, the path of a growing load, and loads that move.

Kip and inch throughout; tension positive. See `docs/forces.md` for the method and its checks.
"""
