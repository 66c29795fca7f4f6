"""The register: every revision of every record, kept so that nothing is lost or changed unseen.

The only room with SQL. Whoever imports it waits for SQLAlchemy, so commands do it inside.
"""
