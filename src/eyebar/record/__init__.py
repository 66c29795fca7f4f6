"""Text <-> validated record, with the line of every key; the only room with pydantic and ruamel."""
