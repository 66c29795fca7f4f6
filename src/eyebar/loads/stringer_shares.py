"""What a stringer takes of a vehicle."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class StringerShares:
    """Parts of a vehicle [1], without multiple presence: of its axles, by the table (the deck as
    simple spans where it has none); of an axle `beside` the support; of its lane load."""

    axles: float
    beside: float
    lane: float

    def times(self, presence: float) -> "StringerShares":
        """So many times."""
        return StringerShares(
            axles=self.axles * presence, beside=self.beside * presence, lane=self.lane * presence
        )

    def raised(self, least: float) -> "StringerShares":
        """None less than that."""
        return StringerShares(
            axles=max(self.axles, least), beside=max(self.beside, least),
            lane=max(self.lane, least),
        )

    def beside_for_all(self) -> "StringerShares":
        """The greater of the two shares of axles for every axle, and no less for the lane load."""
        most = max(self.axles, self.beside)
        return StringerShares(axles=most, beside=most, lane=max(self.lane, self.beside))

    def of(self, axles: float, lane: float, beside: float = 0.0) -> tuple[float, float]:
        """What the stringer takes of what axles, lane load and the axle beside its support do to
        it, and what part of all together that is."""
        whole = axles + beside + lane
        taken = axles * self.axles + beside * self.beside + lane * self.lane
        alike = {one for one, does in ((self.axles, axles), (self.beside, beside),
                                       (self.lane, lane)) if does}
        return taken, alike.pop() if len(alike) == 1 else taken / whole
