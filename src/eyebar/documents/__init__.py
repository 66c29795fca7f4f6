"""The JSON contracts: whole results for machines, unrounded, versioned, with their schemas.

Each document stands in a module of its own and is imported from there: a command makes one of
them, and waits for no other's libraries.
"""
