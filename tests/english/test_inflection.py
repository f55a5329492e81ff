"""English inflection, against lists that every grammar of English prints, and over every gloss of the lexicon."""

from __future__ import annotations

import re

import pytest

from latingloss.english.bases import bases
from latingloss.english.grades import comparative, superlative
from latingloss.english.nouns import mass, plural
from latingloss.english.verbs import agree, past, past_participle, present_participle
from latingloss.morphology.lexicon import lexemes

# Present, past and participle as lists of irregular verbs give them, such as Murray, English Grammar (1795), on verbs;
# written from memory, not compared with the print
MURRAY = """
abide abode abode | arise arose arisen | be was been | bear bore borne | beat beat beaten | begin began begun
bind bound bound | bite bit bitten | blow blew blown | break broke broken | bring brought brought | build built built
buy bought bought | cast cast cast | catch caught caught | choose chose chosen | come came come | cut cut cut
do did done | draw drew drawn | drink drank drunk | drive drove driven | eat ate eaten | fall fell fallen
feed fed fed | fight fought fought | find found found | flee fled fled | fly flew flown | forsake forsook forsaken
give gave given | go went gone | grow grew grown | have had had | hide hid hidden | know knew known | lay laid laid
lead led led | lie lay lain | lose lost lost | make made made | read read read | rend rent rent | rise rose risen
run ran run | say said said | see saw seen | seek sought sought | sell sold sold | send sent sent | shake shook shaken
shine shone shone | sing sang sung | sit sat sat | slay slew slain | smite smote smitten | speak spoke spoken
spit spat spat | stand stood stood | strike struck struck | strive strove striven | swear swore sworn
swell swelled swollen | take took taken | teach taught taught | tear tore torn | think thought thought
throw threw thrown | tread trod trodden | wear wore worn | weave wove woven | weep wept wept | win won won
write wrote written
"""
VERBS = [row.split() for line in MURRAY.strip().splitlines() for row in line.split("|") if row.strip()]


def all_glosses(upos: str) -> set[str]:
    return {gloss for lexeme in lexemes() if lexeme.upos == upos for gloss in lexeme.gloss.split("; ") if gloss}


@pytest.mark.parametrize(("verb", "before", "done"), VERBS)
def test_irregular_verbs(verb: str, before: str, done: str) -> None:
    # abide has a regular past as well, and both are printed
    assert past(verb) in ({before, "abided"} if verb == "abide" else {before})
    assert past_participle(verb) in ({done, "abided"} if verb == "abide" else {done})


def test_phrases_inflect_their_verb() -> None:
    assert past("send away") == "sent away"
    assert past_participle("lay waste") == "laid waste"
    assert present_participle("be born") == "being born"
    assert past("solemnly promise") == "solemnly promised"
    assert agree("go before", person="3", number="Sing") == "goes before"
    assert [agree("be able", person=p, number="Sing") for p in "123"] == ["am able", "are able", "is able"]
    assert agree("be able", person="1", number="Plur", before=True) == "were able"


# Archaic forms as the Authorised Version (1611) prints them: Genesis 3-4, Psalm 23, John 1-3; from memory
@pytest.mark.parametrize(
    ("verb", "person", "before", "form"),
    [
        ("love", "2", False, "lovest"),
        ("love", "3", False, "loveth"),
        ("prepare", "2", False, "preparest"),
        ("anoint", "2", False, "anointest"),
        ("make", "3", False, "maketh"),
        ("lead", "3", False, "leadeth"),
        ("have", "2", False, "hast"),
        ("have", "3", False, "hath"),
        ("be", "2", False, "art"),
        ("go", "3", False, "goeth"),
        ("do", "3", False, "doth"),
        ("say", "3", False, "saith"),
        ("see", "2", False, "seest"),
        ("cry", "3", False, "crieth"),
        ("sit", "2", False, "sittest"),
        ("be", "2", True, "wast"),
        ("have", "2", True, "hadst"),
        ("come", "2", True, "camest"),
        ("give", "2", True, "gavest"),
        ("will", "2", False, "wilt"),
        ("shall", "2", False, "shalt"),
    ],
)
def test_archaic_forms_and_back(verb: str, person: str, before: bool, form: str) -> None:
    assert agree(verb, person=person, number="Sing", before=before, archaic=True) == form
    if not before:
        assert bases(form, "VERB") == (verb,)


def test_archaic_leaves_other_persons_alone() -> None:
    assert agree("love", person="1", number="Sing", archaic=True) == "love"
    assert agree("love", person="3", number="Plur", archaic=True) == "love"


# One-word plurals: as in Murray, English Grammar (1795), on number, from memory; phrases and mass nouns: common
# practice, no source
@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("child", "children"),
        ("ox", "oxen"),
        ("man", "men"),
        ("woman", "women"),
        ("Roman", "Romans"),
        ("people", "peoples"),
        ("stuntman", "stuntmen"),
        ("foot", "feet"),
        ("tooth", "teeth"),
        ("mouse", "mice"),
        ("goose", "geese"),
        ("sheep", "sheep"),
        ("deer", "deer"),
        ("loaf", "loaves"),
        ("wife", "wives"),
        ("city", "cities"),
        ("day", "days"),
        ("church", "churches"),
        ("hero", "heroes"),
        ("cherub", "cherubim"),
        ("brother-in-law", "brothers-in-law"),
        ("information", "information"),
        ("weapons", "weapons"),
        ("news", "news"),
        ("will", "wills"),
        ("many", "many"),  # never manies
        ("young man", "young men"),
        ("beast of burden", "beasts of burden"),
        ("going out", "goings out"),
        ("one who is healed", "those who are healed"),
        ("woman who bakes bread", "women who bake bread"),
        ("the dead", "the dead"),
        ("what is heard", "what is heard"),
    ],
)
def test_plurals(one: str, many: str) -> None:
    assert plural(one) == many


@pytest.mark.parametrize(
    ("word", "higher", "highest"),
    [
        ("high", "higher", "highest"),
        ("holy", "holier", "holiest"),
        ("big", "bigger", "biggest"),
        ("powerful", "more powerful", "most powerful"),
        ("good", "better", "best"),
        ("bad", "worse", "worst"),
        ("free", "freer", "freest"),
        ("noble", "nobler", "noblest"),
        ("splendid", "more splendid", "most splendid"),
        ("much", "more", "most"),
        ("bound", "more bound", "most bound"),
        ("very sharp", "sharper", "sharpest"),
        ("full of light", "more full of light", "most full of light"),
        ("nearer", "nearer", "nearest"),
    ],
)
def test_degrees(word: str, higher: str, highest: str) -> None:
    assert (comparative(word), superlative(word)) == (higher, highest)


def test_stuff_takes_no_article() -> None:
    assert mass("peace") and mass("mercy") and mass("holiness")
    assert not mass("city") and not mass("sheep") and not mass("wilderness")


def test_no_gloss_of_a_noun_gets_a_malformed_plural() -> None:
    malformed = re.compile(r"([^aeiou]ys|[sxz]s|shs|mans|childs|foots|tooths|oxs|mouses|sheeps|wifes)$")
    wrong = {
        g: plural(g)
        for g in all_glosses("NOUN")
        if g.isalpha() and g.islower() and malformed.search(plural(g)) and plural(g) != g
    }
    assert not wrong


def test_every_gloss_of_a_verb_inflects() -> None:
    """No doubled ending, no `beed`: the forms are traced back to the verb they were made from."""
    wrong = {}
    defective = {"must", "ought", "can", "beware"}  # they have no participles to trace
    for gloss in all_glosses("VERB"):
        verb = gloss.split(" ")[0]
        if verb in bases(verb, "VERB") and verb not in defective and len(gloss.split(" ")) < 4:
            for form in (past(verb), past_participle(verb), present_participle(verb)):
                if verb not in bases(form, "VERB"):
                    wrong[gloss] = form
    assert not wrong


def test_what_is_no_english_verb_has_no_base() -> None:
    assert bases("city", "VERB") == ()
    assert bases("priest", "VERB") == bases("truth", "VERB") == bases("tempest", "VERB") == ()
