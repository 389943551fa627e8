"""Gauge, absolute and difference cannot be mixed up: neither at run time nor before mypy."""

import operator
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.pressures import Absolute, Difference, Gauge

SURFACE = Absolute.of(14.7, "psi")
readings = st.integers(0, 10**8)

SNIPPET = """
from pressure.pressures import Absolute, Difference, Gauge

gauge, absolute, difference = Gauge(1.0), Absolute(2.0), Difference(1.0)
total: Absolute = gauge.absolute(absolute)
apart: Difference = total - absolute
higher: Absolute = absolute + difference
gauge + absolute  # type: ignore[operator]
absolute + gauge  # type: ignore[operator]
absolute + absolute  # type: ignore[operator]
absolute - gauge  # type: ignore[operator]
gauge < absolute  # type: ignore[operator]
absolute >= difference  # type: ignore[operator]
gauge == absolute  # type: ignore[comparison-overlap]
gauge.absolute(gauge)  # type: ignore[arg-type]
"""


def test_gauge_and_surface_make_absolute():
    """OpenStax College Physics 2e, §11.6: 34 psi gauge and 14.7 psi are 48.7 psi, 336 kPa."""
    total = Gauge.of(34, "psi").absolute(SURFACE)
    assert total.to("psi") == pytest.approx(48.7)
    assert total.to("kPa") == pytest.approx(336, abs=0.5)


def test_two_absolute_pressures_differ_by_a_difference():
    assert Absolute(300.0) - Absolute(100.0) == Difference(200.0)
    assert Gauge(300.0) - Gauge(100.0) == Difference(200.0)


@pytest.mark.parametrize(
    "deed",
    [
        *(operator.add, operator.sub, operator.lt, operator.le, operator.gt, operator.ge),
        *(operator.eq, operator.ne),
    ],
)
@pytest.mark.parametrize(("one", "other"), [(Gauge(1.0), Absolute(1.0)), (Absolute(1.0), Gauge(1.0))])
def test_gauge_and_absolute_refuse_each_other(deed, one, other):
    with pytest.raises(TypeError, match=r"name the surface pressure first"):
        deed(one, other)


def test_absolute_pressures_do_not_add_up():
    with pytest.raises(TypeError):
        Absolute(1.0) + Absolute(1.0)
    with pytest.raises(TypeError):
        Gauge(1.0) + Gauge(1.0)


@pytest.mark.parametrize("kind", [Gauge, Absolute, Difference])
def test_pressures_of_one_kind_compare(kind):
    low, high = kind(1.0), kind(2.0)
    assert low < high > low
    assert low <= high >= low
    assert low == kind(1.0) != high
    assert len({low, kind(1.0), high}) == 2
    assert low != 1.0


@pytest.mark.parametrize("kind", [Gauge, Absolute])
def test_a_difference_raises_and_lowers_a_pressure(kind):
    assert kind(2.0) + Difference(1.0) - Difference(3.0) == kind(0.0)
    assert Difference(2.0) - Difference(3.0) == -(Difference(0.5) + Difference(0.5))


@pytest.mark.parametrize("surface", [Gauge(1.0), Difference(1.0)])
def test_only_an_absolute_pressure_is_a_surface(surface):
    with pytest.raises(TypeError):
        Gauge(1.0).absolute(surface)
    with pytest.raises(TypeError):
        Absolute(1.0).gauge(surface)


def test_pressures_cannot_be_changed():
    with pytest.raises(AttributeError):
        SURFACE.pascals = 0.0


@given(readings)
def test_gauge_comes_back_from_absolute(pascals):
    assert Gauge(pascals).absolute(SURFACE).gauge(SURFACE).pascals == pytest.approx(pascals, abs=1e-6)


@given(readings, readings)
def test_a_deeper_gauge_is_a_deeper_absolute(one, other):
    assert (Gauge(one) <= Gauge(other)) == (Gauge(one).absolute(SURFACE) <= Gauge(other).absolute(SURFACE))


def test_mypy_refuses_every_mixture_and_nothing_else(tmp_path):
    (tmp_path / "mixtures.py").write_text(SNIPPET)
    (tmp_path / "mypy.ini").write_text("[mypy]\nstrict = true\n")
    run = subprocess.run(
        [
            *(sys.executable, "-m", "mypy", "--config-file", str(tmp_path / "mypy.ini")),
            *("--cache-dir", str(tmp_path / "cache"), str(tmp_path / "mixtures.py")),
        ],
        cwd=Path(__file__).resolve().parents[2],
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout
