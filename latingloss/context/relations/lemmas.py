"""Lists of lemmas that the search for relations goes by, such as verbs of saying (Bennett 1918, sections 327-331)."""

from __future__ import annotations

COPULAS = frozenset(("sum", "fīō", "appāreō", "maneō", "nāscor", "adsum", "absum"))
NAMING = frozenset(
    ("vocō", "appellō#1", "nōminō", "dīcō", "faciō", "creō", "putō", "habeō", "videō", "nūncupō", "ōrdinō")
)
MODAL = frozenset(
    """possum volō#1 nōlō mālō dēbeō coepī soleō incipiō audeō cupiō queō nequeō dēsinō cessō cōnor optō temptō
    properō festīnō""".split()
)
SAYING = frozenset(
    """dīcō putō crēdō sciō nesciō videō audiō jubeō sinō faciō volō#1 nōlō cognōscō intellegō sentiō arbitror exīstimō
    negō spērō cōnfīdō fateor cōnfiteor affirmō cōnstō oportet vetō patior cōgō cupiō nūntiō annūntiō respondeō
    scrībō trādō prōmittō jūrō cēnseō jūdicō reor opīnor simulō doceō permittō licet decet meminī dēcernō""".split()
)
# verbs without an object of their own, and those made from them with a prefix
INTRANSITIVE = frozenset(
    """sum veniō eō stō sedeō jaceō cadō currō vīvō ambulō dormiō maneō rēgnō surgō nāscor morior ēmorior oportet
    licet sileō taceō pergō proficīscor orior lateō fīō possum redeō exeō abeō ascendō dēscendō resurgō requiēscō
    habitō ingredior ēgredior accēdō recēdō dēcēdō prōcēdō cēdō gaudeō exsultō clāmō revertor crēscō perveniō
    conveniō adveniō ēveniō decet placeō noceō serviō pāreō""".split()
)
GIVING = frozenset(
    """dō dīcō trādō reddō ostendō dōnō loquor nūntiō annūntiō praebeō tribuō mittō respondeō ajō inquam prōmittō offerō
    afferō mōnstrō nārrō scrībō committō concēdō dēmōnstrō adjungō commendō condōnō dīmittō distribuō ērogō impertiō
    indicō jūrō largior mandō#1 pandō parō porrigō praestō praecipiō relinquō restituō solvō vēndō voveō""".split()
)
# verbs that say something of their own with one object: to give thanks (common practice, no source)
TOGETHER = {
    ("agō", "grātia"): "give",
    ("agō", "vīta"): "lead",
    ("faciō", "misericordia"): "show",
    ("faciō", "fidēs"): "give",
    ("gerō", "bellum"): "wage",
    ("committō", "proelium"): "join",
    ("capiō", "cōnsilium"): "form",
    ("ineō", "cōnsilium"): "form",
}
TIMES = frozenset(
    ("annus", "diēs", "hōra", "mēnsis", "nox", "noctū", "hebdomas", "saeculum", "aetās", "bīduum", "triduum")
)
POINTING = frozenset(("is", "hic", "ille", "iste", "ipse", "īdem"))
WITH_GENITIVE = frozenset(
    """plēnus memor immemor cupidus avidus perītus imperītus expers particeps reus cōnscius īnscius nescius studiōsus
    prūdēns dignus indignus similis dissimilis inops dīves fertilis compos capāx tenāx""".split()
)
LIGHT = frozenset(("enim", "autem", "quoque", "quidem", "vērō", "etiam", "ergō", "igitur", "nōn"))
PERSONS = frozenset(
    """king queen son daughter prophet apostle priest brother sister father mother wife husband servant slave god lord
    master emperor bishop saint friend prince disciple governor consul soldier virgin judge leader""".split()
)
PLACES = frozenset(
    ("city", "town", "village", "river", "mountain", "island", "province", "kingdom", "desert", "state", "sea")
)
KIN = frozenset(
    ("son", "daughter", "brother", "sister", "father", "mother", "wife", "husband", "servant", "slave", "friend")
)
