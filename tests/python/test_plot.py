"""Pictures show the figures that they are made of, with their units."""

import matplotlib
import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES

matplotlib.use("agg")
from matplotlib.figure import Figure  # noqa: E402
from matplotlib.text import Text  # noqa: E402

from libtexture.plot.axes import COLOURS  # noqa: E402
from libtexture.plot.film import shortfall_chance  # noqa: E402

GRID = lt.Grid(rows=64, cols=64, pixel_mm=0.4)
JOB = EXAMPLES["Job"]().replace(patch=GRID)


@pytest.fixture(scope="module")
def predicted():
    return lt.predict(JOB)


@pytest.fixture
def ax():
    return Figure().subplots()


def test_lines_have_the_colours_that_colour_blind_people_tell_apart_too():
    # Okabe and Ito, "Color Universal Design" (2008), published: eight colours, of which yellow is too pale on white.
    published = "#000000 #E69F00 #56B4E9 #009E73 #F0E442 #0072B2 #D55E00 #CC79A7".split()
    assert set(COLOURS) == set(published) - {"#F0E442"}


def labels(ax):
    return [ax.get_xlabel(), ax.get_ylabel()]


def test_before_and_after_maps_share_their_colours(predicted):
    history = predicted.histories[0]
    before, after = lt.plot.height_maps(
        {"before": history.before, "after": history.surfaces[-1]}, Figure().subplots(1, 2)
    )
    assert before.images[0].get_clim() == after.images[0].get_clim()
    np.testing.assert_array_equal(before.images[0].get_array(), history.before.height_um - history.before.mean_um)
    assert before.get_title() == "before" and labels(before) == ["mm", "mm"]
    assert before.images[0].get_extent() == pytest.approx([0, 25.6, 25.6, 0])


def test_a_profile_shows_the_clear_between_before_and_after(predicted, ax):
    history = predicted.histories[0]
    lt.plot.profile_overlay(history.before, history.surfaces[-1], ax, row=3)
    top, bottom = (line.get_ydata() for line in ax.lines)
    np.testing.assert_allclose(top - bottom, history.before.height_um[3] - history.surfaces[-1].height_um[3])
    assert "mm" in ax.get_xlabel() and "µm" in ax.get_ylabel()


def test_texture_against_clear_has_a_line_a_prediction_and_the_budget(predicted, ax):
    lt.plot.texture_against_clear([predicted, predicted.prediction], ax)
    (panel,) = predicted.prediction.panels
    *lines, least = [line for line in ax.lines if not line.get_label().startswith("_")]
    assert len(lines) == 2
    assert least.get_ydata()[0] == pytest.approx(panel.start.rms_um) and least.get_ydata()[-1] == pytest.approx(
        0, abs=1e-6
    )
    for line in lines:  # no plan does better; tolerance: straight lines between 400 points of a curve that is hollow
        bound = np.interp(line.get_xdata(), least.get_xdata(), least.get_ydata())
        assert np.all(line.get_ydata() > bound - 1e-3)
    assert lines[0].get_xdata()[-1] == panel.removed_um and lines[0].get_ydata()[0] == panel.start.rms_um
    assert any(list(line.get_xdata()) == [panel.removable_um] * 2 for line in ax.lines)
    first, second = [one.get_datalim(ax.transData) for one in ax.collections]  # a band each
    curve = panel.risk.texture_left
    assert first.x1 == second.x1 == pytest.approx(curve[-1].removed_um)
    assert first.y1 == pytest.approx(max(point.rms_um.p95 for point in curve))
    assert first.y0 == pytest.approx(min(point.rms_um.p05 for point in curve))
    assert "µm" in ax.get_xlabel() and "µm rms" in ax.get_ylabel()


def test_the_ideal_cut_of_a_wave_is_its_closed_form():
    # A triangle wave of height 1 um cut at a share t from its top: heights are even, so that t^2/2 goes.
    heights = np.linspace(0, 1, 20001).reshape(1, -1)
    removed, left = lt.plot.ideal_cut(lt.HeightField(height_um=heights[:, :16000].copy(), pixel_mm=0.1))
    top = heights[0, 15999]
    share = np.sqrt(2 * removed / top)
    # min(h, z): even below z, a plateau of share t: variance of that mixture. Tolerance: 16000 points for a continuum.
    z = top * (1 - share)
    mean, square = z - z**2 / (2 * top), z**2 - 2 * z**3 / (3 * top)
    np.testing.assert_allclose(left, np.sqrt(np.maximum(square - mean**2, 0)), atol=1e-4)


def test_bars_are_the_bands_and_the_clear_of_the_steps(predicted):
    (panel,) = predicted.prediction.panels
    ax = lt.plot.band_amplitudes(predicted, Figure().subplots())
    heights = [[bar.get_height() for bar in bars] for bars in ax.containers]
    assert heights == [row.band_rms_um for row in [panel.start, *panel.steps]]
    ax = lt.plot.scratch_owed(predicted, Figure().subplots())
    needed, overshoot, owed = (np.array([bar.get_height() for bar in bars]) for bars in ax.containers)
    np.testing.assert_allclose(needed + overshoot, [row.removed_um for row in panel.steps], rtol=1e-12)
    assert list(overshoot) == [row.overshoot_um for row in panel.steps]
    assert list(owed) == [row.clear_owed_um for row in panel.steps]
    assert ax.get_ylabel() == "clear, µm"


def test_the_levelling_limit_of_a_half_space_is_where_pressure_over_stiffness_says(ax):
    backing = lt.Backing.half_space(modulus_mpa=0.5)
    lt.plot.backing_stiffness({"soft": backing}, ax, pressure_kpa=1.5, clear_per_e_fold_um=10)
    (dot,) = [line for line in ax.lines if line.get_marker() == "o"]
    # Closed form: S = E q/2 (poisson 0), so p/S = 10 um at the wavelength pi E 10 um/p. Tolerance: interpolation
    # between 400 points of a curve that is straight in logarithms is exact, but for rounding.
    assert dot.get_xdata()[0] == pytest.approx(np.pi * 0.5e6 * 10e-6 / 1.5e3 * 1e3, rel=1e-9)


def test_scratches_are_shown_by_the_share_of_the_surface_that_lies_deeper(predicted, ax):
    history = predicted.histories[0]
    lt.plot.scratch_populations(history, ax)
    line = ax.lines[0]
    # At depth 0: the share that is marked at all, which exponential depths give in closed form (Poisson).
    laws = lt.depth_laws(history.scratches[0])
    marked = sum(law.area_share * (1 - np.exp(-sum(one.coverage for one in law.grooves))) for law in laws)
    assert line.get_ydata()[0] == pytest.approx(100 * marked, rel=1e-12)
    assert all(np.diff(line.get_ydata()) < 0) and len(ax.lines) == len(history.steps) + 1
    assert labels(ax) == ["depth, µm", "surface in deeper grooves, %"]


def test_an_edge_section_shows_the_clear_and_the_margin(ax):
    clear = lt.EdgeClear(clear_um=45)
    profile = lt.edge_profile(
        EXAMPLES["Backing"](), EXAMPLES["Motion"](), removal_um=4.0, passes=1, overhang="straddle", clear=clear
    )
    lt.plot.edge_section(profile, ax, clear=clear)
    before, after = (line.get_ydata() for line in ax.lines[:2])
    np.testing.assert_allclose(before - after, profile.removal_um, atol=1e-12)
    assert before[0] == pytest.approx(36) and before[-1] == 45  # .8 of the clear at the edge, as EdgeClear says
    bare = lt.plot.edge_section(profile, Figure().subplots())
    assert list(bare.lines[0].get_ydata()) == list(profile.removal_um)
    assert labels(bare) == ["distance from the edge, mm", "clear removed, µm"]


def test_a_strip_of_reflections_has_a_picture_before_after_each_step_and_ideal(predicted):
    history = predicted.histories[0]
    axes = lt.plot.reflections(history, Figure().subplots(1, len(history.steps) + 2), rows=32, cols=32)
    pictures = [ax.images[0].get_array() for ax in axes]
    assert len(pictures) == len(history.steps) + 2 and all(picture.shape == (32, 32) for picture in pictures)
    assert pictures[1].std() < pictures[0].std()  # scratches veil the scene
    assert [axes[0].get_title(), axes[-1].get_title()] == ["before", "ideal"]


def test_one_call_gives_the_strip_as_arrays_and_as_a_png_of_one_exposure(predicted, tmp_path):
    from matplotlib.image import imread

    history = predicted.histories[0]
    pictures = lt.plot.reflection_strip(history, tmp_path / "strip.png", rows=24, cols=16)
    assert list(pictures) == ["before", *(f"after {row.name}" for row in history.steps), "ideal"]
    flat = lt.HeightField(height_um=np.zeros((8, 8)), pixel_mm=1.0)
    np.testing.assert_array_equal(pictures["ideal"], lt.render_reflection(flat, rows=24, cols=16))
    side_by_side = np.hstack(list(pictures.values())) ** (1 / 2.2)
    np.testing.assert_allclose(
        imread(tmp_path / "strip.png")[:, :, 0], side_by_side, atol=0.51 / 255
    )  # 8 bits, rounded


def test_the_mirrored_share_is_the_one_that_the_gloss_comes_from(predicted):
    history = predicted.histories[0]
    share = lt.plot.mirrored_share(history.scratches[-1], angle_deg=20)
    gloss_gu = lt.gloss_of_share_gu(angle_deg=20, refractive_index=1.5, specular_share=share)
    assert gloss_gu == pytest.approx(history.steps[-1].gloss_20_gu, rel=1e-12)


def test_a_saved_reflection_is_the_picture(predicted, tmp_path):
    from matplotlib.image import imread

    field = predicted.histories[0].before
    lt.plot.save_reflection(tmp_path / "door.png", field, rows=16, cols=24)
    expected = lt.render_reflection(field, rows=16, cols=24) ** (1 / 2.2)
    np.testing.assert_allclose(imread(tmp_path / "door.png")[:, :, 0], expected, atol=0.51 / 255)  # 8 bits, rounded


def test_a_film_map_shows_the_clear_left_with_its_readings(ax):
    readings = [lt.Reading(x_mm=x, y_mm=y, total_um=120 + x / 10) for x in (0, 400) for y in (0, 300)]
    panel, paint = EXAMPLES["Panel"]().replace(readings=readings), lt.Paint(kind="factory")
    lt.plot.film_map(panel, paint, ax, removed_um=5.0, pixels=16)
    np.testing.assert_allclose(ax.images[0].get_array(), lt.film_picture(panel, paint, pixels=16).clear_um - 5.0)
    assert {"120", "160"} <= {text.get_text() for text in ax.texts}
    assert ax.images[0].get_array().shape[1] == 16 > ax.images[0].get_array().shape[0]


def test_a_reading_over_filler_is_drawn_apart_and_is_no_safe_place(ax):
    readings = [lt.Reading(x_mm=x, y_mm=y, total_um=118) for x in (0, 400) for y in (0, 300)]
    panel = EXAMPLES["Panel"]().replace(readings=readings)
    paint = lt.Paint(kind="factory")
    before = lt.film_picture(panel, paint, pixels=16)
    filled = panel.replace(readings=[*readings, lt.Reading(x_mm=200, y_mm=150, total_um=800, over="filler")])
    assert lt.film_picture(filled, paint, pixels=16).clear_um.max() == before.clear_um.max()
    lt.plot.film_map(filled, paint, ax, pixels=16)
    assert "filler 800" in [text.get_text() for text in ax.texts]
    assert [line.get_marker() for line in ax.lines].count("x") == 1


def test_a_film_map_draws_lines_of_equal_chance_that_too_little_is_left(ax):
    readings = [lt.Reading(x_mm=x, y_mm=y, total_um=100 + x / 5) for x in (0, 400) for y in (0, 300)]
    panel, paint = EXAMPLES["Panel"]().replace(readings=readings), lt.Paint(kind="factory")
    picture = lt.film_picture(panel, paint, pixels=16)
    lt.plot.film_map(panel, paint, ax, clear_left_least_um=45.0, pixels=16)
    chance_percent = 100 * shortfall_chance(picture.clear_um, picture.clear_sd_um, 45.0)
    lines = [text for text in ax.findobj(Text) if text.get_text().endswith(" %")]
    assert lines and "dashed: chance that less than 45.0 µm is left" in ax.get_title()
    for text in lines:  # a line's label stands where its chance is, to what a pixel's neighbours differ by
        x_mm, y_mm = text.get_position()
        col, row = (x_mm - picture.corner_x_mm) / picture.pixel_mm, (y_mm - picture.corner_y_mm) / picture.pixel_mm
        near = chance_percent[int(row) : int(row) + 2, int(col) : int(col) + 2]
        assert near.min() - 0.5 <= float(text.get_text()[:-2]) <= near.max() + 0.5


def test_the_chance_of_a_shortfall_is_that_of_a_normal_thickness():
    # Quantiles of the normal distribution (standard tables): 5 % lie 1.645 standard deviations below the mean.
    chances = shortfall_chance(np.array([50.0, 50 + 1.645 * 4, 50 - 1.645 * 4]), 4.0, 50.0)
    np.testing.assert_allclose(chances, [0.5, 0.05, 0.95], atol=1e-4)  # the tables' three decimals


def test_a_film_map_says_so_where_the_chance_is_much_the_same_everywhere(ax):
    readings = [lt.Reading(x_mm=x, y_mm=y, total_um=300) for x in (0, 400) for y in (0, 300)]
    panel, paint = (
        EXAMPLES["Panel"]().replace(readings=readings),
        lt.Paint(kind="repaint", clear_um=100, clear_uncertainty_um=5),
    )
    lt.plot.film_map(panel, paint, ax, pixels=8)
    assert "chance under 0.1 % everywhere that less than 35.6 µm is left" in ax.get_title()
    assert ax.figure.axes[-1].get_ylabel() == "expected clear, µm"  # nothing was removed


def test_the_seventh_of_many_lines_differs_from_the_first(predicted, ax):
    backings = {f"pad {number}": lt.Backing.half_space(modulus_mpa=0.1 * number) for number in range(1, 8)}
    lt.plot.backing_stiffness(backings, ax)
    looks = [(line.get_color(), line.get_linestyle()) for line in ax.lines if line.get_label().startswith("pad")]
    assert len(set(looks)) == 7
    ax = lt.plot.texture_against_clear([predicted.prediction] * 7, Figure().subplots())
    named = predicted.prediction.sequence
    looks = [(line.get_color(), line.get_linestyle()) for line in ax.lines if line.get_label() == named]
    assert len(set(looks)) == 7


def test_what_is_not_there_is_not_drawn_but_named(predicted):
    with pytest.raises(ValueError, match="^texture_against_clear: predictions must hold at least one"):
        lt.plot.texture_against_clear([])
    with pytest.raises(ValueError, match="^backing_stiffness: backings must hold at least one"):
        lt.plot.backing_stiffness([])
    for draw in (lt.plot.texture_against_clear, lt.plot.band_amplitudes, lt.plot.scratch_owed):
        for number in (-1, 1):
            with pytest.raises(ValueError, match=f"^{draw.__name__}: panel must be 0 to 0.*got {number}"):
                draw(predicted, panel=number)


def test_a_backing_that_levels_all_or_none_of_the_waves_says_so(ax):
    rigid_as_steel, cloud = lt.Backing.half_space(modulus_mpa=2e5), lt.Backing.half_space(modulus_mpa=1e-4)
    lt.plot.backing_stiffness({"steel": rigid_as_steel, "cloud": cloud}, ax)
    names = [text.get_text() for text in ax.get_legend().get_texts()]
    assert names == ["steel: all of these", "cloud: none of these", "levelling limit"]
    assert not [line for line in ax.lines if line.get_marker() in "os"]


def test_beliefs_are_drawn_as_multiples_of_the_median_before(ax):
    old, new = (
        lt.Belief(median=0.1, least=0.05, most=0.2, log_sd=0.35),
        lt.Belief(median=0.15, least=0.12, most=0.18, log_sd=0.1),
    )
    lt.plot.belief_chart([("wear rate", "mm3/(N m)", old, new)], ax)
    drawn = [list(np.round(line.get_xdata(), 12)) for line in ax.lines]
    assert drawn == [[0.5, 2.0], [1.0], [1.2, 1.8], [1.5]]
    assert [text.get_text() for text in ax.get_yticklabels()] == ["wear rate"]


def test_a_plot_makes_its_own_axes_where_none_are_given(field):
    from matplotlib import pyplot

    ax = lt.plot.height_map(field)
    assert ax.figure.axes and labels(ax) == ["mm", "mm"]
    pyplot.close("all")


def test_dots_are_equally_likely_cases_that_can_be_counted(predicted, ax):
    left_um = np.asarray(predicted.draws[0].clear_left_um)
    for share in (0.25, 0.6):
        axes = Figure().subplots()
        must_stay_um = float(np.quantile(left_um, share))
        lt.plot.clear_left_dots(predicted, axes, must_stay_um=must_stay_um)
        short, enough = (np.asarray(dots.get_offsets()) for dots in axes.collections)
        # Quantile dots (Fernandes et al., "Uncertainty displays using quantile dotplots or CDFs improve transit
        # decision-making", CHI 2018): a dot is 1 of 20 cases, so the line parts them as it parts the draws.
        assert len(short) == pytest.approx(20 * share, abs=1) and len(short) + len(enough) == 20
        assert short[:, 0].max() < must_stay_um <= enough[:, 0].min()
        assert axes.get_title(loc="left").startswith(f"{len(short)} of 20 cases under")


def test_the_clear_spent_is_split_in_the_medians_of_its_parts(predicted, ax):
    lt.plot.clear_spent_split(predicted, ax)
    risk = predicted.prediction.panels[0].risk
    widths = [bar.get_width() for bar in ax.patches]
    assert widths == pytest.approx([risk.levelling_um.p50, risk.overshoot_um.p50, risk.debt_um.p50])
    assert "µm" in ax.get_xlabel()


def test_before_and_after_are_the_first_and_the_last_of_the_strip(predicted):
    history = predicted.histories[0]
    strip = lt.plot.reflection_strip(history, rows=40, cols=40)
    pair = lt.plot.before_and_after(history, rows=40, cols=40)
    titles = list(strip)
    assert list(pair) == [titles[0], titles[-2]]  # the last is the ideal
    for title, picture in pair.items():
        np.testing.assert_array_equal(picture, strip[title])
