"""What cannot be read is refused by an error of the family that says what to do; what is odd is read all the same."""

import inspect
import time

import pytest

import latingloss
from latingloss import errors
from latingloss.errors import InputTypeError, LatinglossError, OptionError, TextError, UnknownLemmaError

FAMILY = [e for _, e in inspect.getmembers(errors, inspect.isclass) if issubclass(e, LatinglossError)]


@pytest.mark.parametrize("error", [e for e in FAMILY if e is not LatinglossError])
def test_every_error_is_of_the_family_and_a_builtin(error):
    builtins = [b for b in error.__mro__ if b.__module__ == "builtins"]
    assert builtins[0] in (ValueError, TypeError, LookupError, ImportError)


@pytest.mark.parametrize(
    ("latin", "error", "said"),
    [
        ("", TextError, "empty"),
        (" \n\t\u00a0", TextError, "white space"),
        ("λόγος", TextError, "Latin alphabet"),
        ("主祷文", TextError, "Latin alphabet"),
        ("123 456", TextError, "Latin alphabet"),
        ("\u202e\u200f", TextError, "Latin alphabet"),
        ("\x00\x07", TextError, "Latin alphabet"),
        (b"lux", InputTypeError, "decode"),
        (bytearray(b"lux"), InputTypeError, "decode"),
        (None, InputTypeError, "NoneType"),
        (3, InputTypeError, "int"),
        (["lux"], InputTypeError, "list"),
    ],
)
def test_what_is_no_latin_text(latin, error, said):
    with pytest.raises(error, match=said):
        latingloss.annotate(latin)
    if latin is not None:
        with pytest.raises(error, match=said):
            latingloss.annotate("Lux orta est.", latin)


def test_ten_megabytes_are_refused_at_once():
    text = "lux orta est. " * 750_000
    start = time.perf_counter()
    for arguments in ((text,), ("lux", text)):
        with pytest.raises(TextError, match="5,000,000"):
            latingloss.annotate(*arguments)
    assert time.perf_counter() - start < 1


def test_ten_megabytes_in_tokens_are_refused_at_once():
    for sentences in ([["lux" * 3_400_000]], [["lux", "orta"] * 50_000] * 15):
        with pytest.raises(TextError, match="5,000,000"):
            latingloss.annotate_tokens(sentences)


@pytest.mark.parametrize(
    ("latin", "english", "error"),
    [
        ("lux", None, InputTypeError),
        (b"lux", None, InputTypeError),
        (None, None, InputTypeError),
        (3, None, InputTypeError),
        (["lux"], None, InputTypeError),
        ([[b"lux"]], None, InputTypeError),
        ([[None]], None, InputTypeError),
        ([None], None, InputTypeError),
        (iter([["lux"]]), None, InputTypeError),
        ([["lux"]], "light", InputTypeError),
        ([["lux"]], ["light"], InputTypeError),
        ([["lux"]], [[b"light"]], InputTypeError),
        ([["lux"]], [], TextError),
        ([["lux"]], [["light"], ["dark"]], TextError),
        ([["lux", ""]], None, TextError),
        ([["lux", " "]], None, TextError),
        ([["lux"]], [[""]], TextError),
    ],
)
def test_what_is_no_list_of_tokens(latin, english, error):
    with pytest.raises(error):
        latingloss.annotate_tokens(latin, english)


NO_STRINGS = [None, b"lux", 3, ["lux"]]
OF_ONE_WORD = {
    "analyze": latingloss.analyze,
    "inflect": latingloss.inflect,
    "paradigms": latingloss.paradigms,
    "relatives": latingloss.relatives,
    "pronounce": latingloss.pronounce,
    "cognate_distance of": lambda value: latingloss.cognate_distance(value, "light"),
    "cognate_distance to": lambda value: latingloss.cognate_distance("lux", value),
    "align Latin": lambda value: latingloss.align([value], ["light"]),
    "align English": lambda value: latingloss.align(["lux"], [value]),
}


@pytest.mark.parametrize("value", NO_STRINGS, ids=repr)
@pytest.mark.parametrize("name", OF_ONE_WORD)
def test_what_is_no_word(name, value):
    with pytest.raises(InputTypeError):
        OF_ONE_WORD[name](value)


@pytest.mark.parametrize(
    ("latin", "english"),
    [("lux", ["light"]), (["lux"], "light"), (b"lux", ["light"]), (None, ["light"]), (["lux"], None)],
)
def test_align_wants_lists_of_tokens(latin, english):
    with pytest.raises(InputTypeError):
        latingloss.align(latin, english)


@pytest.mark.parametrize("form", ["", " ", "12", "—", "\u0301"])
def test_analyze_wants_a_letter(form):
    with pytest.raises(TextError):
        latingloss.analyze(form)


@pytest.mark.parametrize("form", ["lux orta", "lux.", "a\x00"])
def test_analyze_wants_one_word(form):
    try:
        readings = latingloss.analyze(form)
    except TextError:
        return
    assert all(r.guessed for r in readings) and readings[0].probability < 0.9


@pytest.mark.parametrize("lemma", ["", "12", "xyzzyq", "lux orta", "λόγος"])
@pytest.mark.parametrize("function", [latingloss.inflect, latingloss.paradigms])
def test_an_unknown_lemma_is_a_lookup_error(function, lemma):
    with pytest.raises(UnknownLemmaError) as caught:
        function(lemma)
    assert isinstance(caught.value, LookupError)
    assert repr(lemma) in str(caught.value)


@pytest.mark.parametrize("share", [-0.1, 1.1, float("nan"), float("inf")])
def test_a_share_is_from_0_to_1(share):
    with pytest.raises(OptionError, match="from 0 to 1"):
        latingloss.Annotator(emphasis_share=share)


@pytest.mark.parametrize("share", ["0.5", None, [0.5]])
def test_a_share_is_a_number(share):
    with pytest.raises(InputTypeError):
        latingloss.Annotator(emphasis_share=share)


ODD = {
    "NUL": "lux\x00 orta",
    "controls": "lux\x07 \x1b[0m orta",
    "right to left": "lux \u202eorta\u202c \u200fest",
    "a byte-order mark": "\ufefflux orta",
    "emoji": "lux 🙂 orta",
    "another alphabet": "lux λόγος 主 orta",
}


def test_half_a_character_is_refused():
    with pytest.raises(TextError, match="U\\+D800"):
        latingloss.annotate("lux \ud800 orta")
    with pytest.raises(TextError, match="U\\+DFFF"):
        latingloss.annotate_tokens([["lux", "or\udfffta"]])


@pytest.mark.parametrize("name", ODD)
def test_odd_characters_are_kept(name):
    document = latingloss.annotate(ODD[name])
    tokens = [t for p in document.passages for t in p.tokens]
    assert "".join(t.text for t in tokens) == "".join(ODD[name].split())


LONG = {
    name: (piece * (50_000 // len(piece) + 1))[:50_000]
    for name, piece in {
        "I": "I", "ae": "ae", "rosarum": "rosarum", "with breaks": "que\u00ad", "with lengths": "ā",
    }.items()
}  # fmt: skip


@pytest.mark.parametrize("name", LONG)
def test_a_word_of_50_000_letters_takes_no_more_than_two_seconds(name):
    latingloss.annotate("lux")  # loads the lexicon
    start = time.process_time()
    document = latingloss.annotate(LONG[name])
    assert time.process_time() - start <= 2
    assert sum(len(t.text) for t in document.passages[0].tokens) == len(LONG[name])


@pytest.mark.parametrize("text", ["a" + "\u0301" * 100_000, "lux " + "\u0301" * 100_000, "lux" + "\u200f" * 10_000])
def test_very_many_marks_take_no_more_than_two_seconds(text):
    latingloss.annotate("lux")
    start = time.process_time()
    document = latingloss.annotate(text)
    assert time.process_time() - start <= 2
    assert sum(len(t.text) for t in document.passages[0].tokens) == len("".join(text.split()))


def test_a_long_english_word_takes_no_more_than_two_seconds():
    latingloss.annotate("lux orta", "light risen")
    start = time.process_time()
    latingloss.annotate("lux orta", "rose" * 12_500)
    assert time.process_time() - start <= 2


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: latingloss.Annotator(engine="stanza"), "method read"),
        (lambda: latingloss.Annotator(reader="stella"), "latingloss.Reader"),
        (lambda: latingloss.course({"one": "Lux lucet."}), "latingloss.annotate"),
    ],
    ids=["engine", "reader", "course"],
)
def test_what_is_no_engine_reader_or_document_is_refused_at_once(call, said):
    with pytest.raises(InputTypeError, match=said):
        call()
