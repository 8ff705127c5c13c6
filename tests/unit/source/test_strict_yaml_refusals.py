"""What the strict reader refuses: code, place, words."""

from __future__ import annotations

import pytest

from journeybook.diagnostics.problem import Level, Problem
from journeybook.source.strict_yaml import read_document


def problems_of(text: str | bytes) -> list[Problem]:
    data = text if isinstance(text, bytes) else text.encode("utf-8")
    return read_document(data, "bank.yml")[1]


def places_of(text: str | bytes) -> list[tuple[str, int, int, int]]:
    return [(one.code, one.place.line, one.place.column, one.place.length) for one in problems_of(text)]


def only(text: str | bytes) -> Problem:
    (problem,) = problems_of(text)
    assert problem.level is Level.FAULT
    assert problem.place.file == "bank.yml"
    return problem


def test_a_key_that_stands_twice_is_refused_and_the_first_is_named() -> None:
    problem = only("id: a\nright: a\nright: b\n")
    assert problem.message == "The key right stands twice, first on line 2."
    assert problem.mend == "Delete one of the two, or give it the name that was meant."
    assert (problem.code, problem.place.line, problem.place.column, problem.place.length) == ("S010", 3, 1, 5)
    assert [(place.line, place.column, place.length) for place in problem.also_at] == [(2, 1, 5)]


def test_a_key_that_stands_three_times_is_named_each_time() -> None:
    assert places_of("a: 1\na: 2\n'a': 3\n") == [("S010", 2, 1, 1), ("S010", 3, 1, 3)]


def test_the_same_key_in_two_mappings_is_no_fault() -> None:
    assert problems_of("- a: 1\n- a: 2\n") == []


def test_of_two_equal_keys_the_first_value_is_kept_with_its_place() -> None:
    document, _ = read_document(b"a: {b: 1}\nc: 2\na: {b: [3]}\nd: 4\n", "x.yml")
    assert document is not None
    assert document.root == {"a": {"b": 1}, "c": 2, "d": 4}
    assert document.place(document.root, "d").line == 4


@pytest.mark.parametrize(
    "word",
    [
        "yes",
        "Yes",
        "YES",
        "no",
        "No",
        "NO",
        "on",
        "On",
        "ON",
        "off",
        "OFF",
        "y",
        "Y",
        "n",
        "N",
        "True",
        "FALSE",
        "nO",
    ],
)
def test_words_that_some_read_as_true_or_false_are_refused(word: str) -> None:
    assert places_of(f"keep: {word}\n") == [("S016", 1, 7, len(word))]


def test_a_refused_word_is_explained_with_both_ways_out() -> None:
    problem = only("alarm: on\n")
    assert problem.message == "Some programs read on as true, others do not."
    assert problem.mend == 'Put it in quotes if it is text: "on"; or write true.'


@pytest.mark.parametrize(
    "number",
    [
        "012",
        "-012",
        "08",
        "0x1F",
        "0X1f",
        "0o7",
        "0b101",
        "1_000",
        "1:30",
        "12:30:45",
        "1:30.5",
        "1e3",
        "1E3",
        "1.5e+3",
        ".5",
        "5.",
        "+5",
        "-.5",
        ".inf",
        "-.INF",
        ".nan",
        "1_0.5",
        "00",
        "-0",
        "~",
        "Null",
        "NULL",
        "=",
        "<<",
        "2026-11-24T09:00:00Z",
        "1234567890123456",
        "0.1234567890123456",
    ],
)
def test_values_that_programs_read_differently_are_refused(number: str) -> None:
    assert places_of(f"- {number}\n") == [("S016", 1, 3, len(number))]


def test_a_moment_with_a_blank_in_it_is_refused() -> None:
    assert places_of("- 2001-12-14 21:59:43.10 -5\n") == [("S016", 1, 3, 25)]


@pytest.mark.parametrize(
    ("words", "reading"),
    [
        ("012", "a number to the base of 8"),
        ("1:30", "a number to the base of 60"),
        ("1e3", "a number"),
        ("~", "nothing"),
        ("=", "an instruction"),
        ("2026-11-24T09:00:00Z", "a date with a time"),
        ("1234567890123456", "a number with its last digits lost"),
    ],
)
def test_a_refused_value_is_explained(words: str, reading: str) -> None:
    assert only(f"- {words}\n").message == f"Some programs read {words} as {reading}, others do not."


def test_every_refused_value_of_a_file_is_reported() -> None:
    assert places_of("a: no\nb: [012, x, 1e3]\nc: {d: ~}\n") == [
        ("S016", 1, 4, 2),
        ("S016", 2, 5, 3),
        ("S016", 2, 13, 3),
        ("S016", 3, 8, 1),
    ]


@pytest.mark.parametrize("key", ["yes", "12", "1.5", "null", "true", "0x1F", "1:30"])
def test_keys_that_are_not_text_to_everybody_are_refused(key: str) -> None:
    problem = only(f"a: 1\n{key}: 2\n")
    assert problem.message == f"The key {key} is not text to every program."
    assert problem.mend == f'Put it in quotes: "{key}".'
    assert (problem.code, problem.place.line, problem.place.column, problem.place.length) == (
        "S011",
        2,
        1,
        len(key),
    )


def test_on_is_a_key_like_any_other_because_approvals_have_it() -> None:
    assert problems_of("approved: {by: T. Marrable, on: 2026-11-20}\n") == []


def test_such_a_key_is_refused_wherever_it_stands() -> None:
    assert places_of("- no: 1\n- no: 2\n") == [("S011", 1, 3, 2), ("S011", 2, 3, 2)]


def test_a_list_as_a_key_is_refused() -> None:
    assert places_of("? [a, b]\n: c\n") == [("S011", 1, 3, 1)]


def test_a_missing_key_is_refused() -> None:
    assert only("a: 1\n: x\n").message == "A key is missing before the colon."


def test_a_merge_key_is_refused() -> None:
    assert places_of("<<: {a: 1}\n") == [("S012", 1, 1, 2)]


def test_an_anchor_and_its_alias_are_both_refused() -> None:
    assert places_of("a: &b x\nc: *b\n") == [("S013", 1, 4, 2), ("S014", 2, 4, 2)]


@pytest.mark.parametrize("node", ["&a", "&a x", "&a 'x'", "&a [x]", "&a {x: 1}", "&a |\n  x", "&a\n  x: 1"])
def test_an_anchor_is_refused_before_every_kind_of_value(node: str) -> None:
    assert ("S013", 1, 6, 2) in places_of(f"key: {node}\n")


@pytest.mark.parametrize(
    "node", ["! x", "!t x", "!!str x", "!<tag:y> x", "!t", "!t 'x'", "!t [x]", "!t\n  x: 1"]
)
def test_a_tag_is_refused_before_every_kind_of_value(node: str) -> None:
    assert [(code, line, column) for code, line, column, _ in places_of(f"key: {node}\n")] == [("S015", 1, 6)]


def test_a_tag_and_an_anchor_before_one_value_are_each_named() -> None:
    assert places_of("key: !t &a x\n") == [("S015", 1, 6, 2), ("S013", 1, 9, 2)]


def test_emphasis_without_quotes_is_told_how_to_become_text() -> None:
    problem = only("ask: *Before* use, look.\n")
    assert problem.message == "*Before* is an alias: it would put in what stands elsewhere."
    assert problem.mend == "Write out what is meant; put a text that starts with * in quotes."


def test_a_second_document_is_refused() -> None:
    assert places_of("---\na: 1\n---\nb: 2\n") == [("S009", 3, 1, 3)]


def test_one_document_may_have_its_marks() -> None:
    assert problems_of("---\na: 1\n...\n") == []


def test_a_directive_is_refused() -> None:
    assert places_of("# note\n%YAML 1.1\n---\na: 1\n") == [("S032", 2, 1, 9)]


def test_a_file_of_more_than_eight_mebibytes_is_refused_as_a_whole() -> None:
    problem = only(b"a: " + b"x" * (8 * 1024 * 1024))
    assert (problem.code, problem.place.length) == ("S001", 0)
    assert problem.message == "The file has 8.0 MiB; the most is 8 MiB."


def test_a_file_of_exactly_eight_mebibytes_is_read() -> None:
    assert problems_of(b"a: " + b"x" * (8 * 1024 * 1024 - 3)) == []


def test_forty_levels_are_read_and_forty_one_refused() -> None:
    assert problems_of("[" * 40 + "a" + "]" * 40) == []
    assert places_of("[" * 41 + "a" + "]" * 41) == [("S019", 1, 41, 1)]


@pytest.mark.parametrize(
    ("encoding", "name"),
    [
        ("utf-16", "UTF-16"),
        ("utf-16-le", "UTF-16"),
        ("utf-16-be", "UTF-16"),
        ("utf-32", "UTF-32"),
        ("utf-32-le", "UTF-32"),
        ("utf-32-be", "UTF-32"),
    ],
)
def test_other_encodings_are_named(encoding: str, name: str) -> None:
    assert only("title: Alarms\n".encode(encoding)).message == f"The file is written in {name}."


def test_a_bad_byte_is_located_in_characters() -> None:
    problem = only("é: ok\nü: ".encode() + b"\xff\n")
    assert (problem.code, problem.place.line, problem.place.column) == ("S003", 2, 4)
    assert problem.message == "The byte FF here is not part of any character in UTF-8."


def test_a_byte_order_mark_at_the_start_is_no_part_of_the_text() -> None:
    document, problems = read_document(b"\xef\xbb\xbfa: 1\n", "x.yml")
    assert problems == []
    assert document is not None
    assert document.place(document.root, "a", on_key=True).column == 1


@pytest.mark.parametrize(
    "character", ["\x00", "\x07", "\x0b", "\x0c", "\x1b", "\x7f", "\x9f", "\ufeff", "\uffff"]
)
def test_characters_that_cannot_be_seen_are_refused_where_they_stand(character: str) -> None:
    assert places_of(f"a: 1\r\nb: é{character}x\n") == [("S004", 2, 5, 1)]


def test_such_a_character_is_also_refused_when_a_backslash_stands_for_it() -> None:
    assert places_of('a: "b\\0"\n') == [("S004", 1, 4, 5)]


@pytest.mark.parametrize("character", ["\x85", "\u2028", "\u2029"])
def test_line_breaks_that_editors_do_not_show_are_refused(character: str) -> None:
    assert places_of(f"a: x{character}b: y\n") == [("S005", 1, 5, 1)]


@pytest.mark.parametrize(
    "text", ["a:\n\tb: 1\n", "a:\n  \tb: 1\n", "\ta: 1\n", "a: [\n\tb]\n", "a: |\n\tb\n"]
)
def test_a_tab_in_the_indentation_is_refused(text: str) -> None:
    line = 1 if text.startswith("\t") else 2
    assert places_of(text) == [("S006", line, text.split("\n")[line - 1].index("\t") + 1, 1)]


def test_tabs_inside_texts_and_behind_keys_are_no_fault() -> None:
    assert problems_of("a:\tb\tc\nd: |\n  e\n  \tf\ng: 'h\n  \ti'\n") == []


@pytest.mark.parametrize("text", ["", "\n\n", "# later\n", "---\n", "null\n", "...\n"])
def test_a_file_with_no_keys_is_refused_as_a_whole(text: str) -> None:
    problem = only(text)
    assert (problem.code, problem.place.length) == ("S007", 0)


def test_a_file_of_one_text_is_refused() -> None:
    assert only("Alarms\n").message == "The file holds one text, not keys and values."


def test_a_text_that_takes_in_an_over_indented_item_is_refused_at_that_item() -> None:
    problem = only("steps:\n  - Open.\n   - Lift.\n")
    assert problem.message == "This line was read as part of the text that starts on line 2."
    assert problem.mend == "Indent the dash like the dashes it belongs with; or put the whole text in quotes."
    assert (problem.code, problem.place.line, problem.place.column) == ("S017", 3, 4)
    assert [(place.line, place.column) for place in problem.also_at] == [(2, 5)]


def test_a_text_that_takes_in_an_over_indented_key_is_refused_once() -> None:
    assert places_of("id: a\n  ask: b\n") == [("S017", 2, 3, 3)]


def test_texts_over_several_lines_in_quotes_or_blocks_are_welcome() -> None:
    assert problems_of("a: 'b\n  c'\nd: |\n  e\n  f\ng: >\n  h\n  i\n") == []


@pytest.mark.parametrize(
    ("text", "column"),
    [("ask: Part #3\n", 11), ("ask: #3\n", 6), ("- #3\n", 3), ("[a, b #3\n]\n", 7), ("a: b\t# c\n", 6)],
)
def test_text_that_would_be_lost_behind_a_hash_is_refused(text: str, column: int) -> None:
    assert [(code, line, at) for code, line, at, _ in places_of(text)] == [("S018", 1, column)]


def test_comments_where_nothing_can_be_lost_are_welcome() -> None:
    assert problems_of("# a\nb: 'c' # d\ne: [f] # g\nh: # i\n  - j\n  # k\nl: | # m\n  n # o\np: C#\n") == []


def test_a_quote_that_is_never_closed_is_reported_where_it_opens() -> None:
    problem = only("title: 'Alarms\nminutes: 6\n")
    assert problem.message == "The quote ' that opens here is never closed."
    assert (problem.code, problem.place.line, problem.place.column) == ("S020", 1, 8)


def test_a_quote_closed_by_the_next_one_is_reported_where_it_opens() -> None:
    assert places_of('a: "b\nc: d\ne: "f"\n') == [("S020", 1, 4, 2)]


def test_a_quote_that_swallows_keys_without_a_sound_is_reported() -> None:
    problem = only("a: 'b\nc: d'\n")
    assert problem.message == (
        "The quote ' that opens here is not closed on its line, so line 2 was taken for part of the text."
    )


def test_an_apostrophe_in_single_quotes_is_explained() -> None:
    problem = only("why: 'It's the seal.'\n")
    assert (problem.code, problem.place.column) == ("S021", 10)
    assert problem.mend == "Put the whole text in double quotes, or write the apostrophe twice: ''."


@pytest.mark.parametrize("escape", ["q", "{", "xZZ", "u12", "UFFFFFFFF", "ud800"])
def test_a_backslash_before_the_wrong_character_is_refused_where_it_stands(escape: str) -> None:
    assert places_of(f'a: "b\\{escape}"\n') == [("S022", 1, 6, 2)]


def test_a_colon_in_a_text_is_refused_where_it_stands() -> None:
    problem = only("ask: Step one: do it\n")
    assert (problem.code, problem.place.line, problem.place.column) == ("S023", 1, 14)
    assert problem.message == "The colon here makes the text before it look like a key."
    assert problem.mend == "Put the whole text in quotes."


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ("title:Alarms\n", 1, 1),
        ("a: 1\nb:2\nc: 3\n", 2, 1),
        ("a:\n  b:2\n  c: 3\n", 2, 3),
        ("- ask:What?\n", 1, 3),
        ("- ask:What?\n  right: a\n", 1, 3),
    ],
)
def test_a_missing_space_after_a_colon_is_found(text: str, line: int, column: int) -> None:
    assert [(code, at, start) for code, at, start, _ in places_of(text)] == [("S024", line, column)]


def test_colons_inside_words_are_no_fault() -> None:
    assert problems_of("- https://example.org/a\n- ratio 1:2\n- a:b\n") == []
    assert problems_of("see: https://example.org\nright: c:d\n") == []


def test_a_missing_space_after_a_dash_is_found() -> None:
    assert places_of("steps:\n  -Open.\n  -Lift.\n") == [("S025", 2, 3, 2)]
    assert places_of("step:\n  -Open.\n") == [("S025", 2, 3, 2)]


def test_a_negative_number_and_a_text_with_a_dash_are_no_fault() -> None:
    assert problems_of("low: -5\nsign: -x\nlist: [-1, -y]\n") == []


@pytest.mark.parametrize("sign", ["%3", "@home", "`x`", "]", "}", ",x", "? x"])
def test_signs_that_cannot_start_a_text_are_refused(sign: str) -> None:
    problem = only(f"a: {sign}\n")
    assert (problem.code, problem.place.line, problem.place.column) == ("S026", 1, 4)
    assert problem.message == f"The sign {sign[0]} cannot start a text without quotes."


def test_an_open_bracket_is_reported_where_it_opens() -> None:
    assert places_of("a: [b, c\nd: e\n") == [("S027", 1, 4, 1)]
    assert places_of("a: {b: c\n") == [("S027", 1, 4, 1)]


def test_a_missing_comma_is_reported_where_it_is_missing() -> None:
    problem = only('a: {b: "c" d: "e"}\n')
    assert (problem.code, problem.place.column) == ("S027", 12)
    assert problem.message == "A comma or the closing } is expected here."


def test_a_line_between_two_levels_is_refused() -> None:
    problem = only("a:\n   b: 1\n  c: 2\n")
    assert (problem.code, problem.place.line, problem.place.column) == ("S028", 3, 3)
    assert problem.message == (
        "This line has 2 spaces before it and fits nowhere: the group of keys of line 1 has no spaces."
    )


def test_a_key_among_items_is_refused() -> None:
    assert only("- a\nb: c\n").message == "A list starts on line 1, and this line does not start with a dash."


def test_a_line_without_a_colon_is_refused_whole() -> None:
    assert places_of("a: 1\nwhat to do\nb: 2\n") == [("S029", 2, 1, 10)]


def test_a_list_on_the_line_of_its_key_is_refused() -> None:
    assert places_of("steps: - Open.\n") == [("S030", 1, 8, 1)]


def test_text_behind_the_sign_of_a_block_is_refused() -> None:
    assert places_of("why: >170 L/min\n") == [("S031", 1, 6, 10)]


def test_more_faults_than_anyone_reads_end_the_list() -> None:
    codes = [code for code, *_ in places_of("- no\n" * 1000)]
    assert codes == ["S016"] * 200 + ["S033"]


def test_what_cannot_be_read_has_a_place_too() -> None:
    assert places_of("[a]\nb: c\n") == [("S034", 2, 1, 4)]


def test_lines_are_counted_alike_with_every_kind_of_line_end() -> None:
    assert places_of("a: 1\r\nb: 2\rc: 3\nd: no\r\n") == [("S016", 4, 4, 2)]


def test_columns_count_characters_not_bytes() -> None:
    assert places_of("\U0001f600é: no\n") == [("S016", 1, 5, 2)]
