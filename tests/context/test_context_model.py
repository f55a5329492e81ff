"""The chooser: beliefs are probabilities, alike in any batch and at any time, and a model is what it was saved as."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.context.columns import Types, Vocabulary, lay_out
from latingloss.context.model import Model, Round, shipped, softmax

FORMS = str.split("Vesper venit et stella prima lucet rosae templum sine gratia xyzzyq populus magna urbe ab homine")
batches = st.lists(st.lists(st.sampled_from(FORMS), max_size=7), max_size=6)


def believed(model: Model, batch: list[list[str]]) -> list[list[float]]:
    """Return the beliefs of every word of a batch."""
    types = Types(model.tags, model.signs, model.memory)
    columns = lay_out([[types.id(form) for form in sentence] for sentence in batch], types)
    belief = model.believe(columns)
    assert belief.dtype == np.float32 and len(belief) == columns.readings.sum()
    return [belief[s : s + n].tolist() for s, n in zip(columns.start.tolist(), columns.readings.tolist(), strict=True)]


def trusting() -> Model:
    """A model of one round that has learned nothing."""
    names = [Vocabulary() for _ in range(3)]
    return Model(*names, (Round.zeros(*map(len, names)),))


@settings(max_examples=25)
@given(batches)
def test_beliefs_are_probabilities(batch):
    for word in believed(shipped(), batch):
        assert sum(word) == pytest.approx(1, abs=1e-5)
        assert all(0 <= p <= 1 for p in word)


@settings(max_examples=25)
@given(batches)
def test_a_sentence_is_read_alike_in_any_batch(batch):
    together = believed(shipped(), batch)
    apart = [word for sentence in batch for word in believed(shipped(), [sentence])]
    assert len(together) == len(apart)
    for one, other in zip(together, apart, strict=True):
        assert one == pytest.approx(other, abs=1e-5)


def test_the_same_again():
    batch = [FORMS, FORMS[::-1]]
    assert believed(shipped(), batch) == believed(shipped(), batch)


def test_without_weights_the_prior_is_believed():
    for form, belief in zip(FORMS, believed(trusting(), [FORMS]), strict=True):
        types = Types(*(Vocabulary() for _ in range(3)))
        priors = [reading.prior for reading in types.candidates[types.id(form)]]
        assert belief == pytest.approx(priors, abs=1e-3)


def test_the_shipped_model_has_learned_from_context():
    alone, sentence = believed(shipped(), [["gratia"]])[0], believed(shipped(), [["sine", "gratia"]])[1]
    assert max(abs(a - b) for a, b in zip(alone, sentence, strict=True)) > 0.05


def test_a_model_comes_back_as_it_was_saved(tmp_path):
    model = shipped()
    model.save(tmp_path / "model.npz")
    again = Model.load(tmp_path / "model.npz")
    for old, new in zip(model[:3], again[:3], strict=True):
        assert new.names == old.names
    assert len(again.rounds) == len(model.rounds)
    for old, new in zip(model.rounds, again.rounds, strict=True):
        for name, values in old._asdict().items():
            assert np.array_equal(getattr(new, name), values), name
    (tmp_path / "model.npz").unlink()


def test_saving_keeps_weights_to_half_precision(tmp_path):
    random = np.random.default_rng(7)
    model = trusting()
    weights = Round(*(random.normal(0, 1, w.shape).astype(np.float32) for w in model.rounds[0]))
    model._replace(rounds=(weights,)).save(tmp_path / "model.npz")
    (again,) = Model.load(tmp_path / "model.npz").rounds
    for old, new in zip(weights, again, strict=True):
        assert new.shape == old.shape
        assert np.abs(new - old).max() <= 0.03  # weights up to 0.02 are left out; half precision has 11 bits


@pytest.mark.parametrize("shift", [0.0, -1000.0, 1000.0])
def test_softmax_bears_any_scores(shift):
    types = Types(*(Vocabulary() for _ in range(3)))
    columns = lay_out([[types.id("rosae"), types.id("et")]], types)
    scores = np.linspace(-50, 50, len(columns.word), dtype=np.float32) + np.float32(shift)
    belief = softmax(columns, scores)
    assert np.isfinite(belief).all()
    assert np.add.reduceat(belief, columns.start) == pytest.approx(1, abs=1e-5)
    assert (np.diff(belief[columns.word == 0]) >= 0).all()
