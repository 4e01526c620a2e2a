"""How containers, gyles, places and customers are named to the world: addresses that never change.

A container goes by its asset number (GRAI) in a GS1 Digital Link where the brewery has a company
prefix, else by the short link on its plate. Nothing else of ours has a number of GS1.
"""

from dataclasses import dataclass

from cellarapp.domain.asset_number import asset_number, link_to

UNKNOWN_KIND = "other_cask"


@dataclass(frozen=True)
class Names:
    """`web` is an address such as https://casks.example."""

    web: str
    company_prefix: str

    def container(self, number: str, kind: str | None) -> str:
        """Raises: NotAnAssetNumber when the prefix leaves no room for the kind."""
        if not self.company_prefix:
            return f"{self.web}/f/{number}"
        return link_to(self.web, asset_number(self.company_prefix, kind or UNKNOWN_KIND, number))

    def gyle(self, gyle: str) -> str:
        return f"{self.web}/gyle/{gyle}"

    def place(self, place: str) -> str:
        return f"{self.web}/place/{place}"

    def customer(self, customer: str) -> str:
        return f"{self.web}/customer/{customer}"

    def step(self, step: str) -> str:
        """A step for which the Core Business Vocabulary has no word."""
        return f"{self.web}/step/{step}"
