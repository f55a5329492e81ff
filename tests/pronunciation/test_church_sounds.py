"""Church sounds against Liber usualis (1961), preface, "Rules for pronunciation"; its own examples unless said."""

import pytest

from latingloss.pronunciation import build_up, pronounce

LIBER_RULES = [
    ("caelum", "ˈt͡ʃe.lum", "c before ae"),
    ("Cæcília", "t͡ʃeˈt͡ʃi.li.a", "c before ae and i"),
    ("ecce", "ˈet.t͡ʃe", "cc before e is t-ch"),
    ("síccitas", "ˈsit.t͡ʃi.tas", "cc before i"),
    ("descéndit", "deʃˈʃen.dit", "sc before e is sh"),
    ("Cham", "ˈkam", "ch is k"),
    ("máchina", "ˈma.ki.na", "ch is k even before i"),
    ("cáritas", "ˈka.ri.tas", "c is k otherwise"),
    ("agnus", "ˈaɲ.ɲus", "gn"),
    ("regnum", "ˈreɲ.ɲum", "gn"),
    ("magi", "ˈma.d͡ʒi", "g before i is soft"),
    ("génitor", "ˈd͡ʒe.ni.tor", "g before e is soft"),
    ("gubernátor", "ɡu.berˈna.tor", "g is hard otherwise"),
    ("mihi", "ˈmi.ki", "h is k in mihi"),
    ("nihil", "ˈni.kil", "h is k in nihil"),
    ("hómines", "ˈo.mi.nes", "h is silent otherwise"),
    ("jam", "ˈjam", "j is y"),
    ("allelúja", "al.leˈlu.ja", "j is y"),
    ("patiéntia", "pat.t͡siˈen.t͡si.a", "ti before a vowel"),
    ("constitútio", "kon.stiˈtut.t͡si.o", "ti before a vowel"),
    ("modéstia", "moˈdes.ti.a", "not after s"),
    ("mixtio", "ˈmiks.ti.o", "not after x"),
    ("Thomas", "ˈto.mas", "th is t"),
    ("cathólicam", "kaˈto.li.kam", "th is t"),
    ("excélsis", "ekˈʃel.sis", "xc before e"),
    ("excussórum", "eks.kusˈso.rum", "xc before other vowels"),
    ("martyr", "ˈmar.tir", "y is i"),
    ("zizánia", "d͡zidˈd͡za.ni.a", "z is dz"),
    ("cui", "ˈku.i", "cui has two syllables"),
    ("qui", "ˈkwi", "u between q and a vowel"),
    ("sanguis", "ˈsan.ɡwis", "u between ng and a vowel"),
    ("lauda", "ˈlau̯.da", "au is one syllable"),
    ("mei", "ˈme.i", "ei is two syllables"),
    ("prout", "ˈpro.ut", "ou is two syllables"),
]


@pytest.mark.parametrize(("word", "ipa", "rule"), LIBER_RULES)
def test_a_rule_of_the_liber_usualis_holds(word: str, ipa: str, rule: str) -> None:
    assert pronounce(word).ipa == ipa, rule


@pytest.mark.parametrize(
    ("word", "respelling"),
    [
        ("caelum", "CHEH-loom"),
        ("gratia", "GRAH-tsee-ah"),
        ("descéndit", "deh-SHEHN-deet"),
        ("agnus", "AH-nyoos"),
        ("magníficat", "mah-NYEE-fee-kaht"),
        ("ecce", "EHT-cheh"),
        ("gaudium", "GOW-dee-oom"),
        ("et", "EHT"),
    ],
)
def test_the_respelling_parts_words_as_the_liber_usualis_does(word: str, respelling: str) -> None:
    assert pronounce(word).respelling == respelling


def test_church_syllables_keep_one_sound_together() -> None:
    """Common practice of church books: a-gnus, de-scen-dit, but om-nis as in the grammars."""
    assert pronounce("agnus").syllables == ("a", "gnus")
    assert pronounce("descéndit").syllables == ("de", "scén", "dit")


def test_practice_grows_from_the_last_syllable() -> None:
    assert build_up("caelum") == ("loom", "CHEH-loom")
    assert build_up("grátia") == ("ah", "tsee-ah", "GRAH-tsee-ah")
    assert build_up("et") == ("EHT",)
