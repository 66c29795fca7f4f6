"""What people read, made from the documents: rounded strings for one table or page each.

Rounding happens here and nowhere else. A view is a frozen dataclass of strings; each field carries
its heading and a help text, which every printed form of it shares.
"""
