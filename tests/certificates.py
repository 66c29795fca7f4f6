"""A certificate for this machine, and the authority that a client may trust for it."""

import ssl
from dataclasses import dataclass
from pathlib import Path

import trustme


@dataclass(frozen=True, slots=True, kw_only=True)
class Certified:
    """The files of a server, and what a client takes to trust it."""

    certificate: Path
    key: Path
    trusting: ssl.SSLContext


def certified(folder: Path) -> Certified:
    """A new authority and a certificate of it for localhost."""
    authority = trustme.CA()
    made = authority.issue_cert("localhost")
    certificate, key = folder / "certificate.pem", folder / "key.pem"
    certificate.write_bytes(b"".join(one.bytes() for one in made.cert_chain_pems))
    key.write_bytes(made.private_key_pem.bytes())
    trusting = ssl.create_default_context()
    authority.configure_trust(trusting)
    return Certified(certificate=certificate, key=key, trusting=trusting)
