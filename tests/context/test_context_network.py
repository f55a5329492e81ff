"""The chooser: beliefs are probabilities, alike in any batch and at any time; a network is what it was saved as."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.context.columns import Numbering, Types, Vocabulary, lay_out
from latingloss.context.network import DILATIONS, Network, Weights, _Layer, beside, shipped, softmax

FORMS = str.split("Vesper venit et stella prima lucet rosae templum sine gratia xyzzyq populus magna urbe ab homine")
batches = st.lists(st.lists(st.sampled_from(FORMS), max_size=7), max_size=6)


def believed(network: Network, batch: list[list[str]]) -> list[list[float]]:
    """Return the beliefs of every word of a batch."""
    types = Types(network.numbering)
    columns = lay_out([[types.id(form) for form in sentence] for sentence in batch], types)
    belief = network.believe(columns)
    assert belief.dtype == np.float32 and len(belief) == columns.readings.sum()
    return [belief[s : s + n].tolist() for s, n in zip(columns.start.tolist(), columns.readings.tolist(), strict=True)]


def untaught(random: np.random.Generator | None = None) -> Network:
    """A network that has learned nothing, or one of random weights."""
    numbering, size = Numbering(*(Vocabulary() for _ in Numbering._fields)), 4
    layers = len(DILATIONS)
    shapes = Weights(
        (1,), (1, size), (1, size), (1, size), (size,), (layers, 3 * size, size), (layers, size),
        (layers + 2, size), (layers + 2, size), (1, size), (1, size),
    )  # fmt: skip
    filled = (np.zeros(shape) if random is None else random.normal(0, 1, shape) for shape in shapes)
    weights = Weights(*(values.astype(np.float32) for values in filled))
    return Network(numbering, weights if random else weights._replace(prior=np.ones(1, np.float32)))


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
    assert together == apart


@settings(max_examples=25)
@given(st.integers(1, 64), st.integers(0, 2**32 - 1))
def test_layers_multiply_as_matrices_do(rows, state):
    random = np.random.default_rng(state)
    vectors = random.normal(0, 1, (rows, 64)).astype(np.float32)
    mixing = shipped().weights.mixing[0]
    product = _Layer.rounded(mixing).product(vectors)
    before, itself, after = np.split(mixing, 3)
    assert product == pytest.approx(vectors @ np.concatenate((before, itself, after), axis=1), abs=0.1)
    backwards = _Layer.rounded(mixing).product(np.ascontiguousarray(vectors[::-1]))
    assert np.array_equal(backwards[::-1], product)  # and add up alike wherever a row stands


def test_the_same_again():
    batch = [FORMS, FORMS[::-1]]
    assert believed(shipped(), batch) == believed(shipped(), batch)


def test_without_weights_the_prior_is_believed():
    for form, belief in zip(FORMS, believed(untaught(), [FORMS]), strict=True):
        types = Types(untaught().numbering)
        priors = [reading.prior for reading in types.readings(types.id(form))]
        assert belief == pytest.approx(priors, abs=1e-3)


def test_the_shipped_network_has_learned_from_context():
    alone, sentence = believed(shipped(), [["gratia"]])[0], believed(shipped(), [["sine", "gratia"]])[1]
    assert max(abs(a - b) for a, b in zip(alone, sentence, strict=True)) > 0.05


def test_a_network_comes_back_as_it_was_saved(tmp_path):
    network = shipped()
    network.save(tmp_path / "network.npz")
    again = Network.load(tmp_path / "network.npz")
    for old, new in zip(network.numbering, again.numbering, strict=True):
        assert new.names == old.names
    for old, new in zip(network.weights, again.weights, strict=True):
        assert np.array_equal(old, new)


def test_saving_keeps_weights_to_half_precision(tmp_path):
    network = untaught(np.random.default_rng(7))
    network.save(tmp_path / "network.npz")
    for old, new in zip(network.weights, Network.load(tmp_path / "network.npz").weights, strict=True):
        assert new.shape == old.shape
        assert np.abs(new - old).max() <= 0.003  # half precision has 11 bits


@given(st.lists(st.integers(0, 4), max_size=6), st.integers(-9, 9))
def test_the_word_beside_stands_in_the_same_sentence(lengths, distance):
    sentence = np.repeat(np.arange(len(lengths)), lengths).astype(np.int32)
    found = beside(sentence, distance)
    for word, other in enumerate(found.tolist()):
        inside = 0 <= word + distance < len(sentence) and sentence[word + distance] == sentence[word]
        assert other == (word + distance if inside else len(sentence))


def test_what_stands_beyond_the_reach_of_all_layers_changes_nothing():
    network, reach = shipped(), sum(DILATIONS)
    line = ["stella"] * (2 * reach + 3)
    for place, alike in ((reach, False), (reach + 1, True)):
        other = [*line[: 1 + place], "sine", *line[2 + place :]]
        assert (believed(network, [line])[1] == believed(network, [other])[1]) == alike


@pytest.mark.parametrize("shift", [0.0, -1000.0, 1000.0])
def test_softmax_bears_any_scores(shift):
    types = Types(untaught().numbering)
    columns = lay_out([[types.id("rosae"), types.id("et")]], types)
    scores = np.linspace(-50, 50, len(columns.word), dtype=np.float32) + np.float32(shift)
    belief = softmax(columns, scores)
    assert np.isfinite(belief).all()
    assert np.add.reduceat(belief, columns.start) == pytest.approx(1, abs=1e-5)
    assert (np.diff(belief[columns.word == 0]) >= 0).all()
