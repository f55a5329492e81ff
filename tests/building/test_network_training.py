"""Training: the network learns what a rule says, and PyTorch and numpy compute the same."""

import numpy as np
import pytest

from latingloss.building.lessons import Lesson
from latingloss.context.columns import Columns, Numbering, Types, lay_out
from latingloss.morphology.ranking import candidates

pytestmark = pytest.mark.heavy


def lesson(sentences: list[str], types: Types, preposition_takes: str) -> Lesson:
    """A lesson in which every noun after a preposition has one case."""
    columns: Columns = lay_out([[types.id(form) for form in s.split()] for s in sentences], types)
    target = np.zeros(len(columns.word), np.float32)
    forms = [form for s in sentences for form in s.split()]
    for form, start in zip(forms, columns.start.tolist(), strict=True):
        wanted = [i for i, r in enumerate(candidates(form)) if r.features.get("Case") == preposition_takes]
        target[start + (wanted[0] if wanted else 0)] = 1
    return Lesson(columns, target, np.ones(len(target), np.float32))


def test_the_network_learns_which_case_a_preposition_takes_and_says_the_same_in_numpy():
    torch = pytest.importorskip("torch")
    from latingloss.building import network as training

    types = Types(Numbering.growing())
    nouns = ("villa", "stella", "silva", "rosa", "aqua", "unda", "terra", "luna")
    lessons = [lesson([f"sine {n}" for n in nouns[k:] + nouns[:k]], types, "Abl") for k in range(len(nouns))] * 40
    learned = training.train_network(lessons, types.numbering)
    fresh = Types(learned.numbering)
    columns = lay_out([[fresh.id("sine"), fresh.id("via")]], fresh)
    chosen = int(learned.believe(columns)[columns.start[1] :].argmax())
    assert fresh.readings(fresh.id("via"))[chosen].features["Case"] == "Abl"

    torch.manual_seed(2)
    chooser = training._Chooser(types.numbering).eval()
    one = lessons[0]
    by_torch = chooser(training._batch(one, np.ones(len(types.numbering.lemmas), np.float32))).detach().numpy()
    by_numpy = training.Network(types.numbering, chooser.weights()).scores(one.columns)
    assert by_numpy == pytest.approx(by_torch, abs=5e-3)  # numpy multiplies numbers of ten bits
