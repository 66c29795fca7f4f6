"""The JSON contracts: whole results for machines, unrounded, versioned, with their schemas."""

from eyebar.documents.bracing import bracing_document
from eyebar.documents.check import check_document
from eyebar.documents.cross import cross_document
from eyebar.documents.describe import describe_document
from eyebar.documents.details import details_document
from eyebar.documents.explain import explain_document
from eyebar.documents.force_table import force_table_document
from eyebar.documents.forces import forces_document
from eyebar.documents.history import history_document
from eyebar.documents.how import how_document
from eyebar.documents.opened import opened
from eyebar.documents.rate import rate_document
from eyebar.documents.schemas import schema
from eyebar.documents.sheet import sheet_document
from eyebar.documents.slip import slip_document
from eyebar.documents.use import use_document
from eyebar.documents.vehicles import vehicles_document

__all__ = [
    "bracing_document", "check_document", "cross_document", "describe_document",
    "details_document", "explain_document", "force_table_document", "forces_document",
    "history_document", "how_document", "opened", "rate_document", "schema", "sheet_document",
    "slip_document",
    "use_document", "vehicles_document",
]
