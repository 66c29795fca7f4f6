from eyebar.record.tree import Node, tree_of

TEXT = """\
a: one   # a comment
b:
  c: {d: 'two words', e: [x, "y"]}
  f: |
    first
    second
g:
- h: ~
- null
"""


def tree(text: str) -> Node:
    found, faults = tree_of(text)
    assert found is not None
    assert faults == ()
    return found


def test_every_scalar_stays_text_and_only_a_bare_null_is_nothing() -> None:
    assert tree(TEXT).plain() == {
        "a": "one",
        "b": {"c": {"d": "two words", "e": ("x", "y")}, "f": "first\nsecond\n"},
        "g": ({"h": None}, None),
    }
    assert tree("a: 'null'\nb: 010\nc: yes\nd: 2021-06-15\n").plain() == {
        "a": "null", "b": "010", "c": "yes", "d": "2021-06-15",
    }


def test_every_key_knows_its_line() -> None:
    # Counted by hand in the text above, the first line being 1.
    marked = tree(TEXT)
    assert marked.line_of(("a",)) == 1
    assert marked.line_of(("b", "c", "e", 1)) == 3
    assert marked.line_of(("b", "f")) == 4
    assert marked.line_of(("g", 0, "h")) == 8
    assert marked.line_of(("g", 1)) == 9
    assert marked.line_of(("b", "nothing", "here")) == 2


def test_every_node_knows_where_it_stands_in_the_text() -> None:
    marked = tree(TEXT)

    def written(*path: str | int) -> str:
        node = marked.at(path)
        assert node is not None
        return TEXT[node.start:node.end]

    assert written("a") == "one"
    assert written("b", "c", "d") == "'two words'"
    assert written("b", "c") == "{d: 'two words', e: [x, \"y\"]}"
    assert written("b", "c", "e", 1) == '"y"'


def test_what_is_not_there_is_none() -> None:
    assert tree(TEXT).at(("b", "z", 3)) is None
    assert tree(TEXT).at(("g", 7)) is None
    assert tree(TEXT).at(("a", "deeper")) is None


def test_a_key_that_stands_twice_keeps_its_first_value() -> None:
    found, (fault,) = tree_of("a:\n  b: 1\n  b: 2\n")
    assert found is not None
    assert found.plain() == {"a": {"b": "1"}}
    assert (fault.where, fault.got, fault.line) == ("a", "'b'", 3)


def test_an_anchor_stands_for_the_same_entry_again() -> None:
    assert tree("a: &x {b: 1}\nc: [*x, *x]\n").plain() == {
        "a": {"b": "1"}, "c": ({"b": "1"}, {"b": "1"}),
    }


def test_blocks_that_nest_through_anchors_are_counted_as_deep_as_they_are_read() -> None:
    # By hand: x0 lies one block below the record, every next one holds the one before it. In the
    # block of the record, x10 makes 1 + 11 = 12 blocks, the limit; x11 would make 13.
    lines = ["x0: &x0 [a]"] + [f"x{i}: &x{i} [*x{i - 1}]" for i in range(1, 12)]
    assert tree_of("\n".join(lines[:11]))[1] == ()
    found, (fault,) = tree_of("\n".join(lines))
    assert found is None
    assert (fault.line, fault.rule) == (12, "nests deeper than 12 blocks by its anchors")


def test_a_key_that_stands_twice_is_told_with_the_whole_path_to_it() -> None:
    found, (fault,) = tree_of("a:\n  - b: 1\n  - c: {d: 1, d: 2}\n")
    assert found is not None
    assert (fault.where, fault.got, fault.line) == ("a > 2 > c", "'d'", 3)
    assert found.doubled == (("a", 1, "c", "d"),)
