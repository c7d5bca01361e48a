"""
The compiled core of libtexture.
"""
from __future__ import annotations
import collections.abc
import numpy
import numpy.typing
import numpy.random
import os
import typing
class NotConverged(RuntimeError):
    """
    A solve that did not reach its tolerance; carries the work done and the accuracy reached.
    """
class Statement:
    """
    One thing to say. Names that do not apply are empty.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Statement:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, kind: typing.Literal['target_met_before', 'target_mostly_missed', 'clear_struck_through', 'clear_short_before', 'budget_kept', 'too_much_removed', 'too_little_left', 'clear_share_unsure', 'film_between_unsure', 'gauge_unsure', 'removal_unsure', 'target_missed', 'waves_left', 'odd_reading', 'defect_leave_it', 'spends_least', 'probably_spends_least', 'alone_reaches', 'none_reaches', 'all_meet_before', 'spends_the_same', 'spends_more', 'spends_less', 'cheaper_in', 'difference_unsure', 'misses_target', 'no_tool_reaches', 'budget_bears_none', 'plan_spends', 'finest_is_cheapest', 'finest_is_not_cheapest', 'finest_is_riskier', 'no_backing_carries', 'clear_runs_out', 'rms_unmet', 'touch_unmet', 'clarity_unmet', 'defect_unmet', 'letter_unmet', 'no_letter_read', 'waves_resist', 'larger_disc_helps', 'stiffer_backing_helps', 'too_dear', 'too_many_passes', 'too_many_discs', 'too_many_minutes', 'grooves_unreached', 'step_not_worked', 'contact_small', 'foam_near_plateau', 'lanes_miss', 'lanes_leave_stripes', 'inertia_left_out', 'grain_extrapolated', 'edge_margin_of_flat', 'edge_margin_left_out', 'edge_margin_failed', 'marks_left', 'stop_is_not_target', 'seen_letter_fine', 'target_letter_fine', 'length_unusual', 'places_unusual', 'form_removed', 'map_not_periodic', 'spot_says_little', 'film_thicker_after', 'wear_rate_unexpected', 'texture_unexpected', 'stiffness_unexpected', 'feather_hidden', 'feather_shows', 'defect_round_hides', 'defect_round_unknown', 'defect_width_missing', 'defect_too_narrow', 'belief_by_readings', 'belief_by_looks', 'belief_by_texture', 'local_codes_prevail', 'predictions_are_estimates', 'clear_does_not_return', 'old_paint_harms', 'solvent_burns', 'vibration_harms', 'noise_harms', 'dust_harms', 'water_conducts', 'slurry_harms', 'compound_flings', 'wash', 'strip', 'mask_edges', 'set_light', 'make_test_spot', 'connect_extraction', 'keep_plugs_dry'], panel: str = '', sequence: str = '', other_sequence: str = '', step: str = '', abrasives: collections.abc.Sequence[str] = [], backing: str = '', field: str = '', figures: dict[str, float] = {}) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def __str__(self) -> str:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Statement:
        """
        The same value with some fields changed.
        """
    def text_in(self, symbols: str) -> str:
        """
        The sentence, led by the panel, step or abrasives that it does not name itself: "door: The clear ...".
        InvalidInput where it lacks a figure or a name that its kind needs.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasives(self) -> list[str]:
        """
        the abrasives that it is about
        """
    @property
    def backing(self) -> str:
        """
        the backing that it is about
        """
    @property
    def field(self) -> str:
        """
        the field of a job that it is about
        """
    @property
    def figures(self) -> dict[str, float]:
        """
        its figures by name; the name ends in the unit
        """
    @property
    def kind(self) -> str:
        """
        what it says
        """
    @property
    def other_sequence(self) -> str:
        """
        the sequence that it is set against
        """
    @property
    def panel(self) -> str:
        """
        the panel that it is about
        """
    @property
    def sequence(self) -> str:
        """
        the sequence that it is about
        """
    @property
    def step(self) -> str:
        """
        the step that it is about
        """
    @property
    def text(self) -> str:
        """
        The sentence, led by the panel, step or abrasives that it does not name itself: "door: The clear ...".
        InvalidInput where it lacks a figure or a name that its kind needs.
        """
class Grid:
    """
    A periodic patch of rows x cols square pixels; pixel centres at (i + 1/2) pixel_mm. One row is a profile.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Grid:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, rows: int, cols: int, pixel_mm: float) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Grid:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cols(self) -> int:
        """
        number of columns (x), 4 to 16384
        """
    @property
    def pixel_mm(self) -> float:
        """
        side of a pixel, > 0
        """
    @property
    def rows(self) -> int:
        """
        number of rows (y), 1 to 16384
        """
class HeightField:
    """
    Heights of the paint's top surface on a periodic grid of square pixels; one row is a profile. Immutable.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> HeightField:
        """
        The field of such a dict; ValueError where it is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __init__(self, *, height_um: typing.Any, pixel_mm: float, periodic: bool = True) -> None:
        """
        height_um: (rows, cols), finite [um]; pixel_mm > 0. periodic = false is refused for now: mirror or
        detrend first.
        """
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The heights, as a list of rows, and the pixel, as plain values.
        """
    def to_xarray(self) -> typing.Any:
        """
        An xarray.Dataset with coordinates in mm; ImportError where xarray is not installed.
        """
    @property
    def grid(self) -> Grid:
        """
        its grid
        """
    @property
    def height_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        (rows, cols) [um]
        """
    @property
    def mean_um(self) -> float:
        """
        mean height [um]
        """
    @property
    def peak_to_valley_um(self) -> float:
        """
        highest less lowest point, ISO 25178-2 Sz [um]
        """
    @property
    def pixel_mm(self) -> float:
        """
        [mm]
        """
    @property
    def rms_um(self) -> float:
        """
        root mean square about the mean, ISO 25178-2 Sq [um]
        """
    @property
    def valley_depth_um(self) -> float:
        """
        mean less lowest point, ISO 25178-2 Sv [um]
        """
class TextureBand:
    """
    One band of texture: a log-normal ring of the spectrum with random phases. The rms height per octave of
    wavelength is a Gaussian in log2(wavelength) about wavelength_mm with standard deviation
    bandwidth_octaves/2, cut at two standard deviations (half a per cent of the variance lies beyond).
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TextureBand:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, wavelength_mm: float, rms_um: float, bandwidth_octaves: float = 1.0, lay_deg: float | None = None, skewness: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TextureBand:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def bandwidth_octaves(self) -> float:
        """
        full width of the ring at one standard deviation either side [octaves], .1 to 4
        """
    @property
    def lay_deg(self) -> float | None:
        """
        direction that crests run along, 0 = along rows [degrees]; none = isotropic
        """
    @property
    def rms_um(self) -> float:
        """
        root mean square height of the band [um], >= 0, at most 100
        """
    @property
    def skewness(self) -> float:
        """
        of heights, -.9 to .9; < 0: rounded cells and narrow valleys
        """
    @property
    def wavelength_mm(self) -> float:
        """
        dominant wavelength [mm], > 0
        """
class Coat:
    """
    One coat of paint.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Coat:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str, thickness_um: float, uncertainty_um: float = 0.0, hardness_mpa: float = 200.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Coat:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def hardness_mpa(self) -> float:
        """
        Indentation hardness [MPa], > 0; clear coats 150-300 (ISO 14577 practice, memory). Only that of the
        clear is used: a coat under it that is laid bare is worn as clear.
        """
    @property
    def name(self) -> str:
        """
        "clear", "base", "primer", ...
        """
    @property
    def thickness_um(self) -> float:
        """
        mean thickness [um], > 0 to 5000
        """
    @property
    def uncertainty_um(self) -> float:
        """
        standard uncertainty of the mean [um], >= 0
        """
class Coating:
    """
    Coats from the top down; the first is the clear that is spent.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Coating:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, coats: collections.abc.Sequence[Coat | dict]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Coating:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def coats(self) -> list[Coat]:
        """
        at least one
        """
    @property
    def total_um(self) -> float:
        """
        thickness of all coats [um]
        """
class WetFilm:
    """
    A wet coat on a base. Its viscosity rises as viscosity_pa_s exp(t/viscosity_rise_s). Typical figures
    (memory): 60-100 um, 25-35 mN/m, .05-1 Pa s, volume solids .45-.65. Surface-tension gradients and sag are
    not modelled.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> WetFilm:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, thickness_um: float, surface_tension_mn_per_m: float, viscosity_pa_s: float, viscosity_rise_s: float, solids_share: float) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> WetFilm:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def solids_share(self) -> float:
        """
        volume that stays when the film dries, > 0 to 1
        """
    @property
    def surface_tension_mn_per_m(self) -> float:
        """
        [mN/m], > 0
        """
    @property
    def thickness_um(self) -> float:
        """
        mean wet thickness [um], > 0 to 5000
        """
    @property
    def viscosity_pa_s(self) -> float:
        """
        at the start [Pa s], > 0
        """
    @property
    def viscosity_rise_s(self) -> float:
        """
        time in which the viscosity grows e-fold [s], > 0
        """
class GroovePopulation:
    """
    Grooves of one kind. At a point the deepest of them is less deep than z with probability exp(-coverage
    exp(-z/depth)).
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> GroovePopulation:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, depth_um: float, coverage: float) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> GroovePopulation:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def coverage(self) -> float:
        """
        mean number of grooves over a point, >= 0
        """
    @property
    def depth_um(self) -> float:
        """
        mean depth of a groove [um], > 0
        """
class Viewer:
    """
    An eye before the panel, and the thing that it sees mirrored, as in ReflectionView.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Viewer:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, viewer_m: float = 1.0, scene_m: float = 2.0, pupil_mm: float = 3.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Viewer:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def pupil_mm(self) -> float:
        """
        the eye's pupil [mm], >= 0; 2-4 in daylight (from memory)
        """
    @property
    def scene_m(self) -> float:
        """
        surface to the mirrored thing [m], > 0
        """
    @property
    def viewer_m(self) -> float:
        """
        eye to surface [m], >= 0
        """
class Grit:
    """
    A grain size with the system that names it. Immutable, always valid.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> typing.Any:
        """
        The grit of such a dict.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __init__(self, name: str | None = None, *, median_um: float | None = None) -> None:
        """
        "P2500" (ISO 6344-3 / FEPA), "JIS 3000" (JIS R 6001), "CAMI 600" (ANSI B74.18).
        InvalidInput for a bare number, and for a grade that is not known.
        """
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        Its name, or its size where it has no grade.
        """
    @property
    def has_grade(self) -> bool:
        """
        whether a system names it; else its median does
        """
    @property
    def is_extrapolated(self) -> bool:
        """
        True where the median continues the table by a power law (P3000 and finer): not the standard's figure.
        """
    @property
    def median_um(self) -> float:
        """
        median grain diameter [um]
        """
    @property
    def name(self) -> str:
        """
        "P2500", or "3 um" without a grade
        """
class Abrasive:
    """
    The abrasive side of a step. Rates hold for a clear coat of 200 MPa hardness, used as made_for[0] says.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Abrasive:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str, grit: Grit | str, carrier: typing.Literal['film_disc', 'foam_disc', 'compound'] = 'film_disc', made_for: collections.abc.Sequence[typing.Literal['dry', 'damp', 'wet']] = ['dry'], wear_rate_mm3_per_n_m: float, worn_wear_rate_mm3_per_n_m: float, loading_um: float, groove_depth_um: float | None = None, groove_depth_cap: float = 7.0, groove_coverage: float = 5.0, groove_half_angle_deg: float = 75.0, groove_pressure_exponent: float = 0.25, stray_marks_per_dm2_um: float = 0.05, wear_rate_log_sd: float = 0.7, stated_grain_um: float | None = None, family: str = '', wear_rate_family_share: float = 0.735, wear_rate_of: typing.Literal['any_hand', 'this_hand'] = 'any_hand', groove_depth_log_sd: float | None = None, groove_depth_clear_share: float | None = None, groove_depth_of: typing.Literal['any_hand', 'this_hand'] = 'any_hand', ranges: dict[str, list[float]] = {}, source: str = 'estimate') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Abrasive:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def carrier(self) -> str:
        """
        film_disc, foam_disc, or compound on a pad
        """
    @property
    def family(self) -> str:
        """
        the product that this is a grade of; empty = its own name
        """
    @property
    def grit(self) -> Grit:
        """
        grain size
        """
    @property
    def groove_coverage(self) -> float:
        """
        mean coverage of a finished population; estimate 2-10
        """
    @property
    def groove_depth_cap(self) -> float:
        """
        deepest regular groove in units of the mean depth; estimate 5-9
        """
    @property
    def groove_depth_clear_share(self) -> float | None:
        """
        Share of its variance that all abrasives have in common on a clear; none = the job's.
        """
    @property
    def groove_depth_log_sd(self) -> float | None:
        """
        Standard deviation of ln(groove depth); none = that of the job's uncertainty.
        """
    @property
    def groove_depth_of(self) -> str:
        """
        this_hand: force, hardness and cap are in it already
        """
    @property
    def groove_depth_um(self) -> float | None:
        """
        mean groove depth at 1.4 kPa [um]; none = from the grain
        """
    @property
    def groove_half_angle_deg(self) -> float:
        """
        half-angle of the triangular groove [degrees]; estimate
        """
    @property
    def groove_pressure_exponent(self) -> float:
        """
        depth ~ pressure^m; estimate 0 (shared load) to 0.5 (fixed)
        """
    @property
    def loading_um(self) -> float:
        """
        clear removed per disc area over which the cut falls (1/e) [um], .1 to 10^6
        """
    @property
    def made_for(self) -> list[str]:
        """
        the first is the one that the rates were stated for
        """
    @property
    def name(self) -> str:
        """
        as in the catalogue
        """
    @property
    def ranges(self) -> dict[str, list[float]]:
        """
        plausible least and most, by field name
        """
    @property
    def source(self) -> str:
        """
        where the figures come from
        """
    @property
    def stated_grain_um(self) -> float | None:
        """
        Grain that the wear rates were stated for [um], where a law of size carried them to this one; none = its
        own. The exponent of that law is uncertain, and the more so counts the further the grains are apart.
        """
    @property
    def stray_marks_per_dm2_um(self) -> float:
        """
        rare deep marks per dm2 and um removed; estimate .01-.5
        """
    @property
    def wear_rate_family_share(self) -> float:
        """
        share of the variance of ln(wear rate) that a family has in
        common, 0 to 1; estimate: 0.6 of 0.7
        """
    @property
    def wear_rate_log_sd(self) -> float:
        """
        standard deviation of ln(wear rate) before a test spot; estimate
        """
    @property
    def wear_rate_mm3_per_n_m(self) -> float:
        """
        specific wear rate of the clear, fresh [mm3/(N m)], 1e-6 to 100
        """
    @property
    def wear_rate_of(self) -> str:
        """
        this_hand: force and hardness are in it already
        """
    @property
    def worn_wear_rate_mm3_per_n_m(self) -> float:
        """
        the same, loaded [mm3/(N m)], 0 to the fresh rate
        """
class Skin:
    """
    The carrier film, as a plate: D = E t^3 / (12 (1 - nu^2)) x coats_factor.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Skin:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, modulus_gpa: float, thickness_um: float, poisson: float, coats_factor: float = 1.0, tension_n_per_m: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Skin:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def coats_factor(self) -> float:
        """
        stiffening by grain and size coats, 1 to 100; estimate 1.5 (1-2)
        """
    @property
    def modulus_gpa(self) -> float:
        """
        Young's modulus [GPa], 10^-4 to 1500
        """
    @property
    def poisson(self) -> float:
        """
        Poisson's ratio, 0 to < .5
        """
    @property
    def tension_n_per_m(self) -> float:
        """
        membrane tension [N/m], 0 to 10^5
        """
    @property
    def thickness_um(self) -> float:
        """
        [um], .001 to 10^5
        """
class Layer:
    """
    One elastic layer, bonded to its neighbours.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Layer:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, modulus_mpa: float, thickness_mm: float, poisson: float, plateau_kpa: float | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Layer:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def modulus_mpa(self) -> float:
        """
        Young's modulus [MPa] (dynamic, small strain), 10^-5 to 1.5 10^6
        """
    @property
    def plateau_kpa(self) -> float | None:
        """
        Stress plateau of a foam [kPa], 10^-3 to 10^6; none = linear. About 0.05 E, docs/physics.md (10).
        """
    @property
    def poisson(self) -> float:
        """
        Poisson's ratio, 0 to < .5
        """
    @property
    def thickness_mm(self) -> float:
        """
        [mm], 10^-3 to 1000
        """
class Backing:
    """
    Skin (or none) on its support, bonded to a rigid plate that stays parallel to the mean plane.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Backing:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    @staticmethod
    def half_space(*, modulus_mpa: float, poisson: float = 0.0) -> Backing:
        """
        A deep elastic body of modulus [MPa], > 0, and Poisson's ratio, 0 to < .5.
        """
    @staticmethod
    def rigid() -> Backing:
        """
        An infinitely stiff face: it cuts the highest points only.
        """
    @staticmethod
    def springs(*, stiffness_kpa_per_um: float) -> Backing:
        """
        Independent springs: every wave meets the same stiffness [kPa/um], > 0.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str = '', skin: Skin | dict | None = None, layers: collections.abc.Sequence[Layer | dict] = [], support: typing.Literal['layers', 'springs', 'half_space', 'rigid'] = 'layers', spring_stiffness_kpa_per_um: float | None = None, half_space_modulus_mpa: float | None = None, half_space_poisson: float = 0.0, stiffness_factor: float = 1.0, stiffness_log_sd: float = 0.5, source: str = 'estimate') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def at_working_pressure(self, *, pressure_kpa: float) -> Backing:
        """
        The backing as texture feels it at a mean pressure [kPa], >= 0: foams with a plateau become linear layers
        of their tangent modulus E (1 - p/plateau). InvalidInput from collapse_share of a plateau on: the layer
        collapses.
        """
    def mean_approach_um(self, *, pressure_kpa: float) -> float:
        """
        Mean approach [um] under a mean pressure [kPa], >= 0, along each foam's own curve
        p = plateau (1 - exp(-M e/plateau)), M the modulus of a thin bonded layer, so that its slope is 1/S(0) of
        at_working_pressure. InvalidInput where a layer collapses, and on a half-space, which has no mean
        approach.
        """
    def replace(self, **changes: typing.Any) -> Backing:
        """
        The same value with some fields changed.
        """
    def stiffness_kpa_per_um(self, wavelength_mm: numpy.typing.ArrayLike) -> typing.Any:
        """
        Stiffness [kPa/um] by wavelength [mm], > 0: pressure per displacement of a wave.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def half_space_modulus_mpa(self) -> float | None:
        """
        support = half_space: Young's modulus [MPa], > 0
        """
    @property
    def half_space_poisson(self) -> float:
        """
        support = half_space: 0 to < .5
        """
    @property
    def layers(self) -> list[Layer]:
        """
        from the skin inwards (support = layers)
        """
    @property
    def name(self) -> str:
        """
        as in the catalogue; may be empty
        """
    @property
    def skin(self) -> Skin | None:
        """
        none = bare layers, shear-free top
        """
    @property
    def source(self) -> str:
        """
        where the figures come from
        """
    @property
    def spring_stiffness_kpa_per_um(self) -> float | None:
        """
        support = springs: [kPa/um], > 0
        """
    @property
    def stiffness_factor(self) -> float:
        """
        on the stiffness to any wave: a test spot sets it, > 0
        """
    @property
    def stiffness_log_sd(self) -> float:
        """
        standard deviation of ln(stiffness) before a test spot; estimate
        """
    @property
    def support(self) -> str:
        """
        what carries the skin
        """
class Motion:
    """
    How the disc is driven over the panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Motion:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str = '', disc_diameter_mm: float, orbit_mm: float, speed_rpm: float, force_n: float, feed_mm_per_s: float, step_over_mm: float, spin_rpm: float = 0.0, force_cv: float = 0.25, dwell_cv: float = 0.2, lean_share: float = 0.07, source: str = 'estimate') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Motion:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def disc_diameter_mm(self) -> float:
        """
        [mm], 1 to 1000
        """
    @property
    def dwell_cv(self) -> float:
        """
        spread of local dwell by the hand, 0 to 1; estimate. Lanes and lean come on top: see dose_cv()
        """
    @property
    def feed_mm_per_s(self) -> float:
        """
        travel along a lane [mm/s], .1 to 10 000
        """
    @property
    def force_cv(self) -> float:
        """
        spread of force between persons, coefficient of variation, 0 to 1; estimate
        """
    @property
    def force_n(self) -> float:
        """
        normal force, machine's weight included [N], > 0 to 500
        """
    @property
    def lean_share(self) -> float:
        """
        how far off the disc's centre the hand presses, over the disc's radius, standard deviation, 0 to 0.25;
        estimate: 5 mm on a disc of 150 mm, 0.27 of the mean pressure more at one rim
        """
    @property
    def name(self) -> str:
        """
        as in the catalogue; may be empty
        """
    @property
    def orbit_mm(self) -> float:
        """
        diameter of the orbit [mm], 0 to 100; 0 = rotary
        """
    @property
    def pressure_kpa(self) -> float:
        """
        Mean pressure on a flat panel [kPa]: force / disc face.
        """
    @property
    def sliding_m_per_s(self) -> float:
        """
        Mean sliding speed [m/s]: v_o (1 + <v_r^2>/(4 v_o^2)), v_o = pi orbit speed, <v_r^2> = (spin R)^2/2
        (directions are uncorrelated; within 6 % of the exact mean while <v_r^2> <= 4 v_o^2, beyond which a motion
        is refused); rotary: 2/3 omega R.
        """
    @property
    def source(self) -> str:
        """
        where the figures come from
        """
    @property
    def speed_rpm(self) -> float:
        """
        orbits (or turns, where orbit_mm = 0) per minute under load [1/min], 1 to 100 000
        """
    @property
    def spin_rpm(self) -> float:
        """
        free turning under load [1/min]; about 180 (50-400), estimate; 0 if rotary
        """
    @property
    def step_over_mm(self) -> float:
        """
        distance of lanes [mm], .1 to disc_diameter_mm
        """
class Sheet:
    """
    The sheet of a panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Sheet:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, material: typing.Literal['steel', 'aluminium', 'plastic'] = 'steel', thickness_mm: float | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Sheet:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def material(self) -> str:
        """
        steel, aluminium or plastic: 210, 70 or 2 GPa (metals: handbook values, from memory; plastic: estimate,
        1 to 3)
        """
    @property
    def thickness_mm(self) -> float | None:
        """
        [mm], 0.1 to 100; none = 0.7 for steel, 1.0 for aluminium, 3.0 for plastic (estimates); thick = it does
        not give
        """
class Crown:
    """
    A panel's crown: the mean radius of its curvature, and the sheet that is curved.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Crown:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, radius_m: float, sheet: Sheet | dict = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Crown:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def radius_m(self) -> float:
        """
        square root of the product of the main radii [m], > 0
        """
    @property
    def sheet(self) -> Sheet:
        """
        what the panel is made of
        """
class CrownContact:
    """
    How a flat disc meets a crowned panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> CrownContact:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, radius_mm: float, pressure_kpa: float, peak_kpa: float, is_small: bool = False) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> CrownContact:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def is_small(self) -> bool:
        """
        contact radius under half the disc's: warn
        """
    @property
    def peak_kpa(self) -> float:
        """
        pressure in its middle [kPa]; the mean where the whole face touches
        """
    @property
    def pressure_kpa(self) -> float:
        """
        mean pressure within it [kPa], > 0
        """
    @property
    def radius_mm(self) -> float:
        """
        contact radius, at most the disc's [mm], > 0
        """
class LaneDose:
    """
    What one pass does across its lanes, over its mean; the hand is not in it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> LaneDose:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, least: float = 0.0, most: float = 0.0, cv: float = 0.0, untouched_share: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> LaneDose:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cv(self) -> float:
        """
        coefficient of variation
        """
    @property
    def least(self) -> float:
        """
        where it does least
        """
    @property
    def most(self) -> float:
        """
        where it does most
        """
    @property
    def untouched_share(self) -> float:
        """
        share of the area that the contact never reaches
        """
class Levelled:
    """
    The worn patch, and how it got there: one value per report.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> Levelled:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    def to_xarray(self) -> typing.Any:
        """
        An xarray.Dataset with coordinates in mm; ImportError where xarray is not installed.
        """
    @property
    def amplitude_error_um(self) -> float:
        """
        what halving all increments still changed [um], at most the tolerance
        """
    @property
    def contact_share(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        share of the patch under pressure
        """
    @property
    def increments(self) -> int:
        """
        increments solved, trials included
        """
    @property
    def peak_to_valley_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        [um]
        """
    @property
    def removal_map_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        (rows, cols) clear removed [um], >= 0
        """
    @property
    def removed_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        mean removal of each report [um]
        """
    @property
    def residual(self) -> float:
        """
        largest rms(S u + p_mean - p)/p_mean of any increment
        """
    @property
    def rms_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        [um]
        """
    @property
    def surface(self) -> HeightField:
        """
        after removal_um; its mean has fallen by that
        """
    @property
    def surfaces(self) -> list[HeightField]:
        """
        the surface at each report
        """
    @property
    def touched_share(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        share that lost more than touched_beyond_um
        """
    @property
    def transform_pairs(self) -> int:
        """
        forward + inverse transforms, trials included
        """
    @property
    def valley_depth_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        [um]
        """
class Pressed:
    """
    Where a backing at rest touches, and how hard.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> Pressed:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_xarray(self) -> typing.Any:
        """
        An xarray.Dataset with coordinates in mm; ImportError where xarray is not installed.
        """
    @property
    def contact_share(self) -> float:
        """
        share of the patch under pressure
        """
    @property
    def iterations(self) -> int:
        """
        of the solver
        """
    @property
    def mean_gap_um(self) -> float:
        """
        mean distance between face and surface [um]
        """
    @property
    def pressure_kpa(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        (rows, cols), >= 0 [kPa]; its mean is the pressure asked for
        """
    @property
    def residual(self) -> float:
        """
        duality gap over pressure times rms height
        """
    @property
    def transform_pairs(self) -> int:
        """
        forward + inverse transforms spent
        """
class DepthLaw:
    """
    The grooves of one part of an area. A list of them describes an area of unlike parts: they mix by area,
    never by pooled roughness. One part of share 1 is a uniform surface.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> DepthLaw:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    @property
    def area_share(self) -> float:
        """
        share of the area, 0 to 1
        """
    @property
    def grooves(self) -> list[GroovePopulation]:
        """
        populations that lie over each other; none = unmarked
        """
class GrooveFigures:
    """
    The grooves that an abrasive cuts under given conditions.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> GrooveFigures:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, step: int, depth_um: float, coverage: float = 5.0, depth_cap: float = 7.0, half_angle_deg: float = 75.0, groove_length_mm: float, stray_marks_per_dm2_um: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> GrooveFigures:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def coverage(self) -> float:
        """
        mean coverage K_inf once finished, > 0; estimate 2-10
        """
    @property
    def depth_cap(self) -> float:
        """
        deepest regular groove in mean depths, > 0; estimate 5-9
        """
    @property
    def depth_um(self) -> float:
        """
        mean groove depth delta [um], > 0
        """
    @property
    def groove_length_mm(self) -> float:
        """
        length of one groove [mm], > 0
        """
    @property
    def half_angle_deg(self) -> float:
        """
        half-angle of the triangle [degrees], > 0 to < 90; estimate
        """
    @property
    def step(self) -> int:
        """
        which step of the sequence cuts them, from 0
        """
    @property
    def stray_marks_per_dm2_um(self) -> float:
        """
        rare deep marks per dm2 and um removed, >= 0
        """
class ScratchLimits:
    """
    What counts as a visible scratch.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> ScratchLimits:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, visible_depth_um: float = 0.1, marks_per_cm2: float = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> ScratchLimits:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def marks_per_cm2(self) -> float:
        """
        so few deeper grooves are let pass [1/cm2], > 0; estimate
        """
    @property
    def visible_depth_um(self) -> float:
        """
        shallower grooves are not seen [um], >= 0; estimate
        """
class ScratchPopulation:
    """
    The grooves of one step, with what the step has removed so far.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> ScratchPopulation:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    @property
    def figures(self) -> GrooveFigures:
        """
        its grooves
        """
    @property
    def removal_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        (rows, cols) clear removed by these grooves, >= 0 [um]; 1 x 1 = uniform
        """
class Scratches:
    """
    All scratches of a patch, oldest step first; all maps have one shape. Empty = unmarked.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> Scratches:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    @property
    def populations(self) -> list[ScratchPopulation]:
        """
        one per kind of groove
        """
class HistoryRow:
    """
    The patch after one pass, or after one step. Removals are those of the step so far.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> HistoryRow:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str = '', passes: int = 0, removed_um: float = 0.0, removed_p95_um: float = 0.0, removed_max_um: float = 0.0, total_removed_um: float = 0.0, overshoot_um: float = 0.0, rms_um: float = 0.0, peak_to_valley_um: float = 0.0, band_rms_um: collections.abc.Sequence[float] = [], touched_share: float = 0.0, clear_left_mean_um: float = 0.0, clear_left_least_um: float = 0.0, scratch_rms_nm: float = 0.0, deepest_scratch_um: float = 0.0, marks_per_cm2: float = 0.0, clear_owed_um: float = 0.0, stray_marks_per_dm2: float = 0.0, gloss_20_gu: float = 0.0, lamp_visibility: float = 0.0, image_clarity_percent: float = 0.0, image_clarity_by_comb_percent: collections.abc.Sequence[float] = [], image_wander_arcmin: float = 0.0, smallest_letter_mm: float | None = None, discs: int = 0, minutes: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> HistoryRow:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def band_rms_um(self) -> list[float]:
        """
        texture left between neighbouring History::band_edges_mm [um]
        """
    @property
    def clear_left_least_um(self) -> float:
        """
        [um]; where the clear is thinnest, often an untouched valley
        """
    @property
    def clear_left_mean_um(self) -> float:
        """
        [um]; below 0 = struck through
        """
    @property
    def clear_owed_um(self) -> float:
        """
        clear that taking out the scratches still asks for [um]
        """
    @property
    def deepest_scratch_um(self) -> float:
        """
        deepest regular groove expected on a dm2 [um]
        """
    @property
    def discs(self) -> int:
        """
        discs the step has used; pads of a compound are cleaned, not counted
        """
    @property
    def gloss_20_gu(self) -> float:
        """
        gloss at 20 degrees, ISO 2813, without diffuse light [GU]
        """
    @property
    def image_clarity_by_comb_percent(self) -> list[float]:
        """
        the same for combs of .125, .25, .5, 1 and 2 mm [%]
        """
    @property
    def image_clarity_percent(self) -> float:
        """
        image clarity, comb .5 mm, 45 degrees, along rows [%]
        """
    @property
    def image_wander_arcmin(self) -> float:
        """
        rms wander of a mirrored point, SimulateOptions::viewer [arcmin]
        """
    @property
    def lamp_visibility(self) -> float:
        """
        how clearly a mirrored lamp stands out at 45 degrees, 0 to 1
        """
    @property
    def marks_per_cm2(self) -> float:
        """
        grooves deeper than the visible limit [1/cm2]
        """
    @property
    def minutes(self) -> float:
        """
        machine time of the step so far [min]
        """
    @property
    def name(self) -> str:
        """
        of the step
        """
    @property
    def overshoot_um(self) -> float:
        """
        of it, cut by this step between meeting its stop rule and the next look [um]
        """
    @property
    def passes(self) -> int:
        """
        passes of the step so far
        """
    @property
    def peak_to_valley_um(self) -> float:
        """
        [um]
        """
    @property
    def removed_max_um(self) -> float:
        """
        [um]
        """
    @property
    def removed_p95_um(self) -> float:
        """
        95th percentile over the patch [um]
        """
    @property
    def removed_um(self) -> float:
        """
        mean clear removed by the step so far [um]
        """
    @property
    def rms_um(self) -> float:
        """
        texture left [um]
        """
    @property
    def scratch_rms_nm(self) -> float:
        """
        roughness of the scratches [nm]
        """
    @property
    def smallest_letter_mm(self) -> float | None:
        """
        smallest mirrored letter that this viewer can read [mm]; none = the scratches veil every letter
        """
    @property
    def stray_marks_per_dm2(self) -> float:
        """
        rare deep marks expected [1/dm2]
        """
    @property
    def total_removed_um(self) -> float:
        """
        mean clear removed since the sequence began [um]
        """
    @property
    def touched_share(self) -> float:
        """
        share that the step has cut by more than half its mean groove depth
        """
class History:
    """
    One patch through a sequence.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> History:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def band_edges_mm(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        edges of band_rms_um [mm]
        """
    @property
    def before(self) -> HeightField:
        """
        the surface at the start
        """
    @property
    def passes(self) -> list[HistoryRow]:
        """
        one row a pass
        """
    @property
    def removed_um(self) -> float:
        """
        Mean clear removed by the whole sequence [um].
        """
    @property
    def scratches(self) -> list[Scratches]:
        """
        the scratches after each step
        """
    @property
    def start(self) -> HistoryRow:
        """
        before the first pass
        """
    @property
    def steps(self) -> list[HistoryRow]:
        """
        one row a step: its last pass
        """
    @property
    def surfaces(self) -> list[HeightField]:
        """
        the surface after each step
        """
    @property
    def transform_pairs(self) -> int:
        """
        work done
        """
    @property
    def warnings(self) -> list[Statement]:
        """
        limits that a step came near
        """
class Stop:
    """
    What ends a step at a look, before its passes are used up: any one of these, or all. One that is met
    before the first pass leaves the step out. None given: all passes are made; in a job, a first step with a
    disc stops at the job's target.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Stop:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, touched_share: float | None = None, rms_um: float | None = None, band_mm: collections.abc.Sequence[float] | None = None, rms_share: float | None = None, removed_um: float | None = None, clear_owed_um: float | None = None, defect_um: float | None = None, when: typing.Literal['any', 'all'] = 'any') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Stop:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def band_mm(self) -> list[float] | None:
        """
        shortest and longest wavelength that rms_um counts [mm]
        """
    @property
    def clear_owed_um(self) -> float | None:
        """
        clear that earlier steps' grooves still ask for [um], >= 0
        """
    @property
    def defect_um(self) -> float | None:
        """
        mean clear removed by this step that takes out the defect of the job's target, best estimate [um], > 0
        to 1000; in each possible world of a plan the step ends once the defect is gone there
        """
    @property
    def removed_um(self) -> float | None:
        """
        mean clear removed by this step [um], > 0 to 1000
        """
    @property
    def rms_share(self) -> float | None:
        """
        texture left over that before the sequence, rms heights of all waves, > 0 to 1
        """
    @property
    def rms_um(self) -> float | None:
        """
        texture left [um], > 0; of band_mm where that is given
        """
    @property
    def touched_share(self) -> float | None:
        """
        area that the abrasive has touched, > 0 to 1
        """
    @property
    def when(self) -> str:
        """
        whether any of the rules that are given ends it, or all
        """
class Step:
    """
    One abrasive step: what cuts, what is behind it, how it is driven, and for how long.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Step:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str = '', abrasive: Abrasive | dict, backing: Backing | dict, motion: Motion | dict, wetness: typing.Literal['dry', 'damp', 'wet'] = 'dry', passes: int, look_every_passes: int = 1, stop: Stop | dict = ..., change_disc_below_share: float = 0.5) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Step:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> Abrasive:
        """
        what cuts
        """
    @property
    def backing(self) -> Backing:
        """
        what is behind it
        """
    @property
    def change_disc_below_share(self) -> float:
        """
        a disc is changed when its wear rate is below this share of fresh, 0 to .95; estimate
        """
    @property
    def look_every_passes(self) -> int:
        """
        the surface is wiped and judged every so many passes, 1 to 1000
        """
    @property
    def motion(self) -> Motion:
        """
        how it is driven
        """
    @property
    def name(self) -> str:
        """
        as results name it, one line; may be empty: then its abrasive's
        """
    @property
    def passes(self) -> int:
        """
        at most so many overlapped passes, 1 to 1000
        """
    @property
    def stop(self) -> Stop:
        """
        what ends the step at a look
        """
    @property
    def wetness(self) -> str:
        """
        one that the abrasive is made for
        """
class EdgeClear:
    """
    The clear near an edge, which is thinner there, and what must be left of it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> EdgeClear:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, clear_um: float, share_at_edge: float = 0.8, taper_mm: float = 25.0, clear_left_least_um: float = 35.6, removal_factor: float = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> EdgeClear:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_left_least_um(self) -> float:
        """
        [um], >= 0; published rule: 1.4 mil
        """
    @property
    def clear_um(self) -> float:
        """
        clear before work, away from the edge [um], > 0
        """
    @property
    def removal_factor(self) -> float:
        """
        factor on the removal, > 0: a quantile for a chosen confidence
        """
    @property
    def share_at_edge(self) -> float:
        """
        of that at the edge itself, > 0 to 1; estimate
        """
    @property
    def taper_mm(self) -> float:
        """
        distance over which it rises evenly to clear_um [mm], > 0; estimate
        """
class EdgePressure:
    """
    Pressure of a disc at one place over the section before wear, under the disc.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> EdgePressure:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def distance_mm(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        as in EdgeProfile
        """
    @property
    def line_load_n_per_mm(self) -> float:
        """
        pressure integrated within 1.5 mm of distance 0
        """
    @property
    def plate_slope(self) -> float:
        """
        tilt of the plate
        """
    @property
    def pressure_kpa(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        One per distance; its peak at an edge grows as pixels shrink: integrate it.
        """
class EdgeProfile:
    """
    What was removed across the section, one value per distance from where the flat ends (edge; negative on
    the rounding) or from the middle of the body line, which is worked alike on both sides.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> EdgeProfile:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def balance(self) -> float:
        """
        greatest error of a force (and moment) over the force
        """
    @property
    def distance_mm(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        rising
        """
    @property
    def margin_mm(self) -> float | None:
        """
        Least unsanded margin that keeps the clear asked for, if clear was given: the outermost distance up to
        which it would not be kept; 0 = the flat may be sanded to its end (leave the rounding itself); infinite
        = the flat does not keep it.
        """
    @property
    def peak_removal_um(self) -> float:
        """
        greatest of removal_um
        """
    @property
    def pixel_mm(self) -> float:
        """
        [mm]
        """
    @property
    def removal_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        >= 0
        """
    @property
    def removed_area_mm2(self) -> float:
        """
        Area of the section removed within 1.5 mm of distance 0 [mm2]: does not depend on the pixel.
        """
    @property
    def residual(self) -> float:
        """
        greatest rms error of a pressure over its rms
        """
    @property
    def transform_pairs(self) -> int:
        """
        forward + inverse transforms
        """
class Reading:
    """
    One reading of a film thickness gauge: everything above the metal.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Reading:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, x_mm: float | None = None, y_mm: float | None = None, total_um: float | None = None, total_mil: float | None = None, over: typing.Literal['panel', 'filler'] = 'panel') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Reading:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def over(self) -> str:
        """
        over filler a reading is shown, and teaches nothing of the clear
        """
    @property
    def total_mil(self) -> float | None:
        """
        total film [mil = 25.4 um]
        """
    @property
    def total_um(self) -> float | None:
        """
        total film [um], 15 to 5000; this or total_mil
        """
    @property
    def x_mm(self) -> float | None:
        """
        place on the panel [mm]; both or neither
        """
    @property
    def y_mm(self) -> float | None:
        """
        [mm]
        """
class Panel:
    """
    One panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Panel:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str, area_m2: float, crown_radius_m: float | None = None, sheet: Sheet | dict = ..., edge_length_m: float | None = None, readings: collections.abc.Sequence[Reading | dict]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Panel:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def area_m2(self) -> float:
        """
        area to be levelled [m2], 10^-4 to 100
        """
    @property
    def crown_radius_m(self) -> float | None:
        """
        sqrt of the product of the main radii [m], .05 to 10^6; none = flat
        """
    @property
    def edge_length_m(self) -> float | None:
        """
        length of edges and body lines that need a margin [m], >= 0
        """
    @property
    def name(self) -> str:
        """
        as results name it: one line, not empty
        """
    @property
    def readings(self) -> list[Reading]:
        """
        1 to 2000, at least one not over filler
        """
    @property
    def sheet(self) -> Sheet:
        """
        what the panel is made of: on its crown it gives under the disc
        """
class Estimate:
    """
    A figure and the interval that holds the truth in 95 % of cases (Student's t).
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Estimate:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, value: float = ..., least: float = ..., most: float = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Estimate:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def least(self) -> float:
        """
        2.5 % lie below
        """
    @property
    def most(self) -> float:
        """
        2.5 % lie above
        """
    @property
    def value(self) -> float:
        """
        the figure
        """
class SeenTexture:
    """
    A texture judged by eye: the distance of its waves, and the smallest letters that can be read in the
    reflection.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> SeenTexture:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, wavelength_mm: float, letter_mm: float, distance_m: float, eye_to_paint_m: float | None = None, bandwidth_octaves: float = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> SeenTexture:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def bandwidth_octaves(self) -> float:
        """
        as of TextureBand [octaves]
        """
    @property
    def distance_m(self) -> float:
        """
        whole path from the eye over the paint to the letters [m], > 0
        """
    @property
    def eye_to_paint_m(self) -> float | None:
        """
        of it, from the eye to the paint [m], >= 0; none = a third of it, as viewer_along() has it
        """
    @property
    def letter_mm(self) -> float:
        """
        height of the smallest letters that can be read [mm], > 0
        """
    @property
    def wavelength_mm(self) -> float:
        """
        dominant wavelength, waves counted along a ruler on the panel [mm], > 0
        """
class WetTexture:
    """
    A texture that formed when a wet film dried over a textured base.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> WetTexture:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, film: WetFilm | dict, base: collections.abc.Sequence[TextureBand | dict]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> WetTexture:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def base(self) -> list[TextureBand]:
        """
        texture of what the film was laid on; at least one band
        """
    @property
    def film(self) -> WetFilm:
        """
        as it was laid on
        """
class TextureSource:
    """
    Exactly one of bands, file, seen and wet_film.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TextureSource:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, bands: collections.abc.Sequence[TextureBand | dict] = [], file: str | None = None, form: typing.Literal['removed', 'kept'] = 'removed', seen: SeenTexture | dict | None = None, wet_film: WetTexture | dict | None = None, scale: float = 1.0, scale_log_sd: float | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TextureSource:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def bands(self) -> list[TextureBand]:
        """
        at least one, where this is the source
        """
    @property
    def file(self) -> str | None:
        """
        a measured surface; a job file's own folder is where a relative path starts
        """
    @property
    def form(self) -> str:
        """
        of a file: whether its plane and form are taken out
        """
    @property
    def scale(self) -> float:
        """
        factor on all heights, which a test spot sets, > 0 to 100
        """
    @property
    def scale_log_sd(self) -> float | None:
        """
        Standard deviation of ln(scale), 0 to 2; none = by the source: seen_log_sd() for a seen texture, .3 for
        a wet film, whose viscosities are rarely known, else .1, as panels vary from place to place; estimates.
        """
    @property
    def seen(self) -> SeenTexture | None:
        """
        judged by eye
        """
    @property
    def wet_film(self) -> WetTexture | None:
        """
        what dries over a textured base
        """
class Gauge:
    """
    The film thickness gauge.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Gauge:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, uncertainty_um: float = 2.0, gain_percent: float = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Gauge:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def gain_percent(self) -> float:
        """
        standard uncertainty of its scale [%], 0 to 50; estimate (ISO 2360:2003: within 10 %)
        """
    @property
    def uncertainty_um(self) -> float:
        """
        standard uncertainty of one reading [um], >= 0; estimate
        """
class Paint:
    """
    What is known of the paint besides the readings.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Paint:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, kind: typing.Literal['factory', 'repaint', 'unknown'], clear_um: float | None = None, clear_uncertainty_um: float | None = None, gauge: Gauge | dict = ..., hardness_mpa: float = 200.0, refractive_index: float = 1.5) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Paint:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_um(self) -> float | None:
        """
        thickness of the clear, mean over a panel [um], > 0 to 5000; none = from the kind's prior
        """
    @property
    def clear_uncertainty_um(self) -> float | None:
        """
        standard uncertainty of clear_um [um], > 0; none = 15 % of it, estimate
        """
    @property
    def gauge(self) -> Gauge:
        """
        what the readings were taken with
        """
    @property
    def hardness_mpa(self) -> float:
        """
        indentation hardness of the clear [MPa], > 0 to 10000 (ISO 14577 practice: 150-300)
        """
    @property
    def kind(self) -> str:
        """
        who painted
        """
    @property
    def refractive_index(self) -> float:
        """
        of the clear, for gloss and reflections, 1.4 to 1.7; clear coats have 1.50 to 1.54 (from memory)
        """
class Defect:
    """
    A scratch or an etch mark (depth_um), or a nib or a run (height_um); each panel of the job has one such.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Defect:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, depth_um: float | None = None, height_um: float | None = None, sd_um: float | None = None, width_mm: float | None = None, length_mm: float | None = None, patch_mm: float | None = None, feather_mm: float | None = None, x_mm: float | None = None, y_mm: float | None = None, level_within_um: float = 0.5) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Defect:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def depth_um(self) -> float | None:
        """
        how deep its bottom lies below the paint beside it [um], > 0; this or height_um
        """
    @property
    def feather_mm(self) -> float | None:
        """
        width of the ring about the patch over which the work fades to nothing [mm], > 0; none = the radius of
        the first step's disc
        """
    @property
    def height_um(self) -> float | None:
        """
        how high it stands above the paint about it [um], > 0; this or depth_um
        """
    @property
    def length_mm(self) -> float | None:
        """
        along it [mm], >= width_mm; none = as long as wide, and short against the waves of the texture
        """
    @property
    def level_within_um(self) -> float:
        """
        what may still stand above the paint where it counts as level [um], > 0; estimate
        """
    @property
    def patch_mm(self) -> float | None:
        """
        diameter of the patch that is worked [mm], > 0; none = the whole panel is
        """
    @property
    def sd_um(self) -> float | None:
        """
        standard uncertainty of that figure [um], >= 0; none = 25 % of it, an estimate. What is drawn is > 0.
        """
    @property
    def width_mm(self) -> float | None:
        """
        across it [mm], > 0: a groove from rim to rim, what stands above at half its height, which needs it
        """
    @property
    def x_mm(self) -> float | None:
        """
        place on the panel, as of its readings [mm]; both or neither
        """
    @property
    def y_mm(self) -> float | None:
        """
        [mm]
        """
class Target:
    """
    What is to be reached: at least one of rms_um, preset, image_clarity_percent, letter_mm, defect; all that
    are given.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Target:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, rms_um: float | None = None, band_mm: collections.abc.Sequence[float] | None = None, preset: typing.Literal['full', 'partial'] | None = None, image_clarity_percent: float | None = None, letter_mm: float | None = None, distance_m: float | None = None, eye_to_paint_m: float | None = None, defect: Defect | dict | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Target:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def band_mm(self) -> list[float] | None:
        """
        shortest and longest wavelength that rms_um counts [mm]
        """
    @property
    def defect(self) -> Defect | None:
        """
        a mark that is to be gone from each panel
        """
    @property
    def distance_m(self) -> float | None:
        """
        with letter_mm: from the eye over the paint to the letters [m], > 0
        """
    @property
    def eye_to_paint_m(self) -> float | None:
        """
        of it, from the eye to the paint [m], >= 0; none = a third of it, as viewer_along() has it
        """
    @property
    def image_clarity_percent(self) -> float | None:
        """
        at least [%], > 0 to 100
        """
    @property
    def letter_mm(self) -> float | None:
        """
        letters of this height can be read in the reflection [mm], > 0
        """
    @property
    def preset(self) -> str | None:
        """
        a share of levelling with a name
        """
    @property
    def rms_um(self) -> float | None:
        """
        texture left [um], > 0
        """
class Budget:
    """
    What may be spent: each rule that is given counts, and the clear itself always does.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Budget:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, clear_left_least_um: float | None = None, clear_removed_most_um: float | None = None, reserve_um: float = 0.0, clear_removed_most_share: float | None = None, clear_left_basis: typing.Literal['physics', 'published', 'practice', 'own', 'estimate'] = 'own', clear_removed_basis: typing.Literal['physics', 'published', 'practice', 'own', 'estimate'] = 'own', clear_share_basis: typing.Literal['physics', 'published', 'practice', 'own', 'estimate'] = 'own') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Budget:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_left_basis(self) -> str:
        """
        where clear_left_least_um comes from
        """
    @property
    def clear_left_least_um(self) -> float | None:
        """
        clear that stays [um], >= 0
        """
    @property
    def clear_removed_basis(self) -> str:
        """
        where clear_removed_most_um comes from
        """
    @property
    def clear_removed_most_share(self) -> float | None:
        """
        clear that may go as a share of what is there at the thinnest place, > 0 to 1; 1 = no such rule
        """
    @property
    def clear_removed_most_um(self) -> float | None:
        """
        clear that may go [um], > 0
        """
    @property
    def clear_share_basis(self) -> str:
        """
        where clear_removed_most_share comes from
        """
    @property
    def reserve_um(self) -> float:
        """
        kept for later corrections [um], >= 0
        """
class Labour:
    """
    How long this person takes, the [labour] table of a job. All defaults are estimates.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Labour:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, wipe_minutes_per_m2: float = 1.0, look_minutes: float = 0.5, disc_change_minutes: float = 0.5, edge_minutes_per_m_um: float = 0.5, masking_minutes_per_m: float = 1.0, cleaning_minutes_per_m2: float = 6.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Labour:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cleaning_minutes_per_m2(self) -> float:
        """
        washing and stripping before, rinsing after, >= 0; estimate
        """
    @property
    def disc_change_minutes(self) -> float:
        """
        [min], >= 0; estimate
        """
    @property
    def edge_minutes_per_m_um(self) -> float:
        """
        by hand, per metre of edge and um to remove, >= 0; estimate
        """
    @property
    def look_minutes(self) -> float:
        """
        judging it under the light, each look [min], >= 0; estimate
        """
    @property
    def masking_minutes_per_m(self) -> float:
        """
        taping edges and trim, per metre of edge [min/m], >= 0; estimate
        """
    @property
    def wipe_minutes_per_m2(self) -> float:
        """
        wiping the area dry for a look [min/m2], >= 0; estimate
        """
class EdgeWork:
    """
    How the panel's edges are, and how they are worked: the [edge] table of a job.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> EdgeWork:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, radius_mm: float = 3.0, overhang: typing.Literal['none', 'straddle'] = 'none', share_at_edge: float = 0.8, taper_mm: float = 25.0, confidence: float = 0.95) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> EdgeWork:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def confidence(self) -> float:
        """
        of sure_margin_mm, .5 to < 1
        """
    @property
    def overhang(self) -> str:
        """
        the user's habit
        """
    @property
    def radius_mm(self) -> float:
        """
        of the rounded edge [mm], > 0; estimate
        """
    @property
    def share_at_edge(self) -> float:
        """
        clear at the edge over that of the panel, > 0 to 1; estimate
        """
    @property
    def taper_mm(self) -> float:
        """
        distance over which it rises evenly [mm], > 0; estimate
        """
class Sequence:
    """
    Steps in order, under a name.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Sequence:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str, step: collections.abc.Sequence[Step | dict]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Sequence:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def name(self) -> str:
        """
        as results name it: one line, not empty
        """
    @property
    def step(self) -> list[Step]:
        """
        at least one; names that are given differ
        """
class Uncertainty:
    """
    The table [uncertainty] of a job; what is not given is an estimate. The spreads of wear rates, of
    stiffness, of force between persons and of local dwell stand with the abrasives, backings and motions,
    that of the texture with its source; those of the clear follow from the readings.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Uncertainty:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, samples: int = 4000, force_within_cv: float = 0.15, hardness_log_sd: float = 0.15, size_exponent_sd: float = 0.25, groove_depth_log_sd: float = 0.25, groove_cap_log_sd: float = 0.15, loading_log_sd: float = 0.5, clear_share: float = 0.4) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Uncertainty:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_share(self) -> float:
        """
        share of these three variances that all abrasives on one clear have in
        common, 0 to 1; estimate
        """
    @property
    def force_within_cv(self) -> float:
        """
        spread of one person's force from step to step, 0 to 1; estimate
        """
    @property
    def groove_cap_log_sd(self) -> float:
        """
        of ln(deepest groove over the mean), 0 to 1; estimate
        """
    @property
    def groove_depth_log_sd(self) -> float:
        """
        standard deviation of ln(groove depth), 0 to 1; estimate
        """
    @property
    def hardness_log_sd(self) -> float:
        """
        standard deviation of ln(the clear's hardness), 0 to 1; estimate: 150
        to 270 MPa about 200
        """
    @property
    def loading_log_sd(self) -> float:
        """
        of ln(room for swarf), 0 to 1; estimate
        """
    @property
    def samples(self) -> int:
        """
        possible worlds that are drawn, 100 to 1000000; 4000 fix a 5 % quantile's share to
        .35 % (one standard error, binomial)
        """
    @property
    def size_exponent_sd(self) -> float:
        """
        standard deviation of the exponent by which wear rates go with the
        grain, where they were stated for another one, 0 to 1; estimate
        """
class Job:
    """
    A job. Its lists are named as the tables of a job file, [[panel]] and [[sequence]].
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Job:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Job:
        """
        The job of a TOML file. Tools of steps are catalogue names, tables in full, or tables that say `like`;
        names are looked up in the shipped catalogue, which the file that the key `catalogue` names extends.
        Relative paths start at the job file's folder. A job with a measured map may leave `patch` out where the
        file states its pixel; thicknesses of clear may be given in mil (clear_left_least_mil). Readings of a
        panel are tables, plain numbers in um, or the name of a file of them (read_readings). Errors are one line
        that starts "rear_door.toml:42: "; FileMissing where there is no job file. A file that ends in .json is a
        job as save_job() writes it.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, schema: int, note: str | None = None, seed: int | numpy.random.Generator = 1, patch: Grid | dict, panel: collections.abc.Sequence[Panel | dict], coating: Paint | dict, texture: TextureSource | dict, target: Target | dict, budget: Budget | dict = ..., scratch_limits: ScratchLimits | dict = ..., viewer: Viewer | dict | None = None, uncertainty: Uncertainty | dict = ..., labour: Labour | dict = ..., edge: EdgeWork | dict = ..., sequence: collections.abc.Sequence[Sequence | dict] = [], catalogue: str | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Job:
        """
        The same value with some fields changed.
        """
    def save(self, path: str | os.PathLike[str]) -> None:
        """
        Writes a job as such a text, a whole file or none, for load_job() to read.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def budget(self) -> Budget:
        """
        what may be spent; without a rule of its own see budget_of()
        """
    @property
    def catalogue(self) -> str | None:
        """
        a catalogue file of the user's own that the tools were looked up in
        """
    @property
    def coating(self) -> Paint:
        """
        what is known of the paint
        """
    @property
    def edge(self) -> EdgeWork:
        """
        how the panels' edges are, and how they are worked
        """
    @property
    def labour(self) -> Labour:
        """
        how long this person takes for what is not sanding
        """
    @property
    def note(self) -> str | None:
        """
        Where its figures come from, or anything else that every answer is to say under its heading: "invented";
        at most 10 lines.
        """
    @property
    def panel(self) -> list[Panel]:
        """
        at least one; names differ
        """
    @property
    def patch(self) -> Grid:
        """
        the surface that is simulated; at most 2^24 pixels
        """
    @property
    def schema(self) -> int:
        """
        of the job file; 1
        """
    @property
    def scratch_limits(self) -> ScratchLimits:
        """
        what counts as a visible scratch
        """
    @property
    def seed(self) -> int:
        """
        of everything drawn at random
        """
    @property
    def sequence(self) -> list[Sequence]:
        """
        to predict and compare; names differ; one tool has one name
        """
    @property
    def target(self) -> Target:
        """
        what is to be reached; its band overlaps the patch's waves
        """
    @property
    def texture(self) -> TextureSource:
        """
        its waves fit the patch
        """
    @property
    def uncertainty(self) -> Uncertainty:
        """
        how many worlds are drawn, and how far apart they are
        """
    @property
    def viewer(self) -> Viewer | None:
        """
        who reads the mirrored letters; none = viewer_of() the job
        """
class Film:
    """
    Thickness at a place.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> Film:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    @property
    def clear_sd_um(self) -> float:
        """
        its standard deviation [um]
        """
    @property
    def clear_um(self) -> float:
        """
        expected clear [um]
        """
    @property
    def total_sd_um(self) -> float:
        """
        its standard deviation, error of the gauge's scale included [um]
        """
    @property
    def total_um(self) -> float:
        """
        expected total film [um]
        """
class BudgetRule:
    """
    One rule, and what it allows on a given clear.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> BudgetRule:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, limit: typing.Literal['clear_itself', 'clear_left', 'clear_removed', 'clear_share'] = 'clear_itself', basis: typing.Literal['physics', 'published', 'practice', 'own', 'estimate'] = 'physics', limit_um: float = 0.0, is_on: bool = True, is_binding: bool = False, removable_um: float = 0.0, limit_share: float | None = None, broken_probability: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> BudgetRule:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def basis(self) -> str:
        """
        where it comes from
        """
    @property
    def broken_probability(self) -> float:
        """
        in a prediction: chance that it is broken after work, 0 to 1
        """
    @property
    def is_binding(self) -> bool:
        """
        the one that allows least of those that are on, the first where several do; in a prediction the one that
        the work breaks in most worlds, where it breaks any
        """
    @property
    def is_on(self) -> bool:
        """
        whether the job's budget counts it; others are shown for information
        """
    @property
    def limit(self) -> str:
        """
        what it limits
        """
    @property
    def limit_share(self) -> float | None:
        """
        its figure where it is a share of the clear
        """
    @property
    def limit_um(self) -> float:
        """
        the rule's figure [um]; of a share, on the given clear
        """
    @property
    def removable_um(self) -> float:
        """
        clear that may be removed under it, reserve kept [um]; below 0 = already broken
        """
class Spread:
    """
    90 % of the possible cases lie between p05 and p95. In the unit of the field that it is.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Spread:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, p05: float = 0.0, p50: float = 0.0, p95: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Spread:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def p05(self) -> float:
        """
        5 % of the cases lie below
        """
    @property
    def p50(self) -> float:
        """
        half of them do
        """
    @property
    def p95(self) -> float:
        """
        95 % do
        """
class TextureLeft:
    """
    Texture left, where the curve of texture against clear passes a removal.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TextureLeft:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, removed_um: float = 0.0, rms_um: Spread | dict = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TextureLeft:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def removed_um(self) -> float:
        """
        mean clear removed by the sequence so far [um]
        """
    @property
    def rms_um(self) -> Spread:
        """
        texture left, all waves [um]; a world that ended before keeps what it ended with
        """
class VarianceShares:
    """
    Shares of the variance of the clear left at the thinnest place; they sum to 1.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> VarianceShares:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, clear_share: float = 0.0, map: float = 0.0, gauge: float = 0.0, removal: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> VarianceShares:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_share(self) -> float:
        """
        how much of the film is clear, 0 to 1
        """
    @property
    def gauge(self) -> float:
        """
        what the gauge reads: its scatter and its scale, 0 to 1
        """
    @property
    def map(self) -> float:
        """
        the film between the readings, 0 to 1
        """
    @property
    def removal(self) -> float:
        """
        what the work takes there, 0 to 1
        """
class PanelRisk:
    """
    What the draws say. removed = levelling + overshoot + debt in every draw (not in their quantiles).
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> PanelRisk:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, removed_um: Spread | dict = ..., levelling_um: Spread | dict = ..., overshoot_um: Spread | dict = ..., debt_um: Spread | dict = ..., clear_before_um: Spread | dict = ..., removable_um: Spread | dict = ..., clear_left_um: Spread | dict = ..., clear_left_least_um: Spread | dict = ..., rms_um: Spread | dict = ..., touched_share: Spread | dict = ..., minutes: Spread | dict = ..., discs: Spread | dict = ..., levelling_efficiency: Spread | dict = ..., step_efficiency: collections.abc.Sequence[Spread | dict] = [], texture_left: collections.abc.Sequence[TextureLeft | dict] = [], strike_through_probability: float = 0.0, budget_exceeded_probability: float = 0.0, clear_left_short_probability: float = 0.0, short_before_probability: float = 0.0, broken_by_work_probability: float = 0.0, target_missed_probability: float = 0.0, target_met_before_probability: float = 0.0, defect_left_um: Spread | dict | None = None, defect_left_probability: float | None = None, variance_shares: VarianceShares | dict = ..., samples: int = 0, node_solves: int = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> PanelRisk:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def broken_by_work_probability(self) -> float:
        """
        The work breaks a rule: of the worlds in which none is broken before, 0 to 1.
        """
    @property
    def budget_exceeded_probability(self) -> float:
        """
        a rule of the budget is broken, 0 to 1
        """
    @property
    def clear_before_um(self) -> Spread:
        """
        where it is thinnest before any work, mean over a disc's face [um]
        """
    @property
    def clear_left_least_um(self) -> Spread:
        """
        thinnest clear anywhere on the panel's area [um]; below 0 = struck through
        """
    @property
    def clear_left_short_probability(self) -> float:
        """
        of it, that too little clear stays, 0 to 1
        """
    @property
    def clear_left_um(self) -> Spread:
        """
        where it is thinnest, mean over a disc's face, which rules judge [um]
        """
    @property
    def debt_um(self) -> Spread:
        """
        of it, cut by the later steps, which take out scratches [um]
        """
    @property
    def defect_left_probability(self) -> float | None:
        """
        more of it stays than may, 0 to 1; none without one
        """
    @property
    def defect_left_um(self) -> Spread | None:
        """
        of the target's defect [um]; none without one
        """
    @property
    def discs(self) -> Spread:
        """
        discs used
        """
    @property
    def levelling_efficiency(self) -> Spread:
        """
        Least clear that any cutter needs for the same remaining texture, over the clear spent: 0 to 1.
        """
    @property
    def levelling_um(self) -> Spread:
        """
        of it, cut until the texture's target or stop was met [um]
        """
    @property
    def minutes(self) -> Spread:
        """
        machine time [min]
        """
    @property
    def node_solves(self) -> int:
        """
        levelling runs that the draws were interpolated from, for all panels together
        """
    @property
    def overshoot_um(self) -> Spread:
        """
        of it, cut between that moment and the next look [um]
        """
    @property
    def removable_um(self) -> Spread:
        """
        what the budget lets go, reserve kept; 0 = nothing [um]
        """
    @property
    def removed_um(self) -> Spread:
        """
        mean clear removed by the sequence [um]
        """
    @property
    def rms_um(self) -> Spread:
        """
        texture left, in the target's band [um]
        """
    @property
    def samples(self) -> int:
        """
        draws that this rests on
        """
    @property
    def short_before_probability(self) -> float:
        """
        too little clear is there before any work, 0 to 1
        """
    @property
    def step_efficiency(self) -> list[Spread]:
        """
        the same for each step alone
        """
    @property
    def strike_through_probability(self) -> float:
        """
        no clear left somewhere on the panel, 0 to 1
        """
    @property
    def target_met_before_probability(self) -> float:
        """
        all of it is reached before any work, 0 to 1
        """
    @property
    def target_missed_probability(self) -> float:
        """
        something that the target asks for is not reached, 0 to 1
        """
    @property
    def texture_left(self) -> list[TextureLeft]:
        """
        The curve of texture against clear; of predict(), else empty.
        """
    @property
    def touched_share(self) -> Spread:
        """
        area that the first step has touched
        """
    @property
    def variance_shares(self) -> VarianceShares:
        """
        What makes the clear left uncertain; of predict(), else 0.
        """
class RiskDraws:
    """
    One value per draw: entry i of each is what happens in possible world i. The same job and seed have the
    same worlds for every sequence, so that alternatives are compared world by world.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> RiskDraws:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def clear_before_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        where it is thinnest before any work, likewise [um]
        """
    @property
    def clear_left_least_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        thinnest clear anywhere on the panel [um]; below 0 = struck through
        """
    @property
    def clear_left_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        where it is thinnest, mean over a disc's face [um]
        """
    @property
    def debt_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        of it, cut by the later steps, which take out scratches [um]
        """
    @property
    def defect_left_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        of the target's defect [um]; empty without one
        """
    @property
    def defect_removed_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        clear removed beside it [um]; empty without one
        """
    @property
    def discs(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        discs used
        """
    @property
    def is_broken_by_work(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where a rule is broken, and none was before work
        """
    @property
    def is_budget_exceeded(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where a rule of the budget is broken
        """
    @property
    def is_clear_left_short(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        of them, 1 where too little clear stays
        """
    @property
    def is_defect_left(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where more of it stays than may; empty without one
        """
    @property
    def is_short_before(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where too little clear is there before any work
        """
    @property
    def is_struck_through(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where the clear is, anywhere; 0 elsewhere
        """
    @property
    def is_target_met_before(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where all of it is reached before any work
        """
    @property
    def is_target_missed(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        1 where something that the target asks for is not reached
        """
    @property
    def levelling_efficiency(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        least clear that any cutter needs over the clear spent
        """
    @property
    def levelling_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        of it, cut until the texture's target or stop was met [um]
        """
    @property
    def minutes(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        machine time [min]
        """
    @property
    def overshoot_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        of it, cut between that moment and the next look [um]
        """
    @property
    def removable_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        what the budget lets go, reserve kept; 0 = nothing [um]
        """
    @property
    def removed_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        mean clear removed by the sequence [um]
        """
    @property
    def rms_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        texture left, in the target's band [um]
        """
    @property
    def step_efficiency(self) -> list[list[float]]:
        """
        the same for each step alone: by step, then draw
        """
    @property
    def touched_share(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        area that the first step has touched
        """
class LabourMinutes:
    """
    Where the minutes go.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> LabourMinutes:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, sanding_minutes: float = 0.0, looking_minutes: float = 0.0, disc_change_minutes: float = 0.0, edge_minutes: float = 0.0, masking_minutes: float = 0.0, cleaning_minutes: float = 0.0, total_minutes: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> LabourMinutes:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cleaning_minutes(self) -> float:
        """
        before and after [min]
        """
    @property
    def disc_change_minutes(self) -> float:
        """
        [min]
        """
    @property
    def edge_minutes(self) -> float:
        """
        edges and body lines by hand [min]
        """
    @property
    def looking_minutes(self) -> float:
        """
        wiping and looking [min]
        """
    @property
    def masking_minutes(self) -> float:
        """
        [min]
        """
    @property
    def sanding_minutes(self) -> float:
        """
        machine time [min]
        """
    @property
    def total_minutes(self) -> float:
        """
        all of it [min]
        """
class DiscLife:
    """
    Discs of one step.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> DiscLife:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, step: str = '', discs: int = 0, change_after_minutes: float | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> DiscLife:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def change_after_minutes(self) -> float | None:
        """
        Sanding [min] after which a fresh disc (or clean pad) has lost so much of its cut that it should be
        changed (or cleaned); none = it never does.
        """
    @property
    def discs(self) -> int:
        """
        used on the panel; pads of a compound are cleaned, not counted
        """
    @property
    def step(self) -> str:
        """
        name of the step
        """
class DiscSizeMinutes:
    """
    What the steps with discs of one size take: a small disc needs more lanes, and loads sooner.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> DiscSizeMinutes:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, disc_diameter_mm: float = 0.0, discs: int = 0, sanding_minutes: float = 0.0, looking_minutes: float = 0.0, disc_change_minutes: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> DiscSizeMinutes:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def disc_change_minutes(self) -> float:
        """
        [min]
        """
    @property
    def disc_diameter_mm(self) -> float:
        """
        [mm]
        """
    @property
    def discs(self) -> int:
        """
        used; pads of a compound are cleaned, not counted
        """
    @property
    def looking_minutes(self) -> float:
        """
        wiping and looking [min]
        """
    @property
    def sanding_minutes(self) -> float:
        """
        machine time [min]
        """
class EdgeMargin:
    """
    What the sequence does at a straight edge of a flat panel. The panel's crown, which lets a disc touch less
    of the edge or press it harder, and its corners, where two edges are worn at once, are not in it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> EdgeMargin:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, peak_removal_um: float = 0.0, removed_area_mm2: float = 0.0, clear_at_edge_um: float = 0.0, margin_mm: float | None = None, sure_margin_mm: float | None = None, confidence: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> EdgeMargin:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_at_edge_um(self) -> float:
        """
        expected clear at the edge before work [um]
        """
    @property
    def confidence(self) -> float:
        """
        that confidence
        """
    @property
    def margin_mm(self) -> float | None:
        """
        Least unsanded margin that keeps every rule of the budget, by best estimates [mm]; 0 = the flat may be
        sanded to its end (leave the rounding itself); none = no margin helps: the flat does not keep the
        budget.
        """
    @property
    def peak_removal_um(self) -> float:
        """
        most clear removed anywhere across the edge [um]
        """
    @property
    def removed_area_mm2(self) -> float:
        """
        of the section within 1.5 mm of where the flat ends [mm2]
        """
    @property
    def sure_margin_mm(self) -> float | None:
        """
        the same at the confidence asked for, rule by rule [mm]
        """
class DefectWay:
    """
    What a way costs and gives, on one panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> DefectWay:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, way: typing.Literal['all over', 'patch', 'round', 'leave'] = 'leave', clear_um: Spread | dict = ..., left_um: Spread | dict = ..., minutes: Spread | dict = ..., discs: Spread | dict = ..., gone_probability: float = 0.0, hidden_probability: float | None = None, short_probability: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> DefectWay:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def clear_um(self) -> Spread:
        """
        clear spent beside the defect, all steps [um]
        """
    @property
    def discs(self) -> Spread:
        """
        discs used
        """
    @property
    def gone_probability(self) -> float:
        """
        no more of it stays than may, 0 to 1
        """
    @property
    def hidden_probability(self) -> float | None:
        """
        What stays is too shallow to be seen by its slope, 0 to 1; none where hidden_depth_um() has no answer.
        """
    @property
    def left_um(self) -> Spread:
        """
        what is left of the defect [um]
        """
    @property
    def minutes(self) -> Spread:
        """
        machine time [min]
        """
    @property
    def short_probability(self) -> float:
        """
        Less clear stays than must, at the defect on a patch, anywhere on the panel all over, 0 to 1.
        """
    @property
    def way(self) -> str:
        """
        which one
        """
class DefectAnswer:
    """
    The ways to deal with the target's defect on one panel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> DefectAnswer:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, size_um: Spread | dict = ..., worked_area_m2: float = 0.0, feather_mm: float | None = None, feather_shift_arcmin: float | None = None, hidden_um: float | None = None, ways: collections.abc.Sequence[DefectWay | dict] = [], notes: collections.abc.Sequence[Statement | dict] = []) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> DefectAnswer:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def feather_mm(self) -> float | None:
        """
        Width of the ring about a patch over which the work fades [mm]; none where the whole panel is worked.
        """
    @property
    def feather_shift_arcmin(self) -> float | None:
        """
        How far the slope of that ring shifts what is mirrored in it [arcmin], by the median removal; none
        likewise.
        """
    @property
    def hidden_um(self) -> float | None:
        """
        Depth of a groove that its flanks do not show [um]; none where hidden_depth_um() has no answer.
        """
    @property
    def notes(self) -> list[Statement]:
        """
        what shows of the feather, and of a rounded groove
        """
    @property
    def size_um(self) -> Spread:
        """
        how deep or how high it is [um]
        """
    @property
    def ways(self) -> list[DefectWay]:
        """
        the job's own first, leaving it last
        """
    @property
    def worked_area_m2(self) -> float:
        """
        area that the job works, a feather by its dose, as worked_panel() has it [m2]
        """
class PanelPrediction:
    """
    One panel: what its readings say of the clear, and what the sequence does to it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> PanelPrediction:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str = '', area_m2: float = 0.0, total_film_least_um: float = 0.0, clear_um: float = 0.0, clear_sd_um: float = 0.0, removed_um: float = 0.0, removed_max_um: float = 0.0, clear_left_mean_um: float = 0.0, clear_left_least_um: float = 0.0, removable_um: float = 0.0, budget: collections.abc.Sequence[BudgetRule | dict] = [], discs: int = 0, minutes: float = 0.0, labour: LabourMinutes | dict = ..., disc_lives: collections.abc.Sequence[DiscLife | dict] = [], edge: EdgeMargin | dict | None = None, defect: DefectAnswer | dict | None = None, risk: PanelRisk | dict = ..., start: HistoryRow | dict = ..., steps: collections.abc.Sequence[HistoryRow | dict] = [], passes: collections.abc.Sequence[HistoryRow | dict] = []) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> PanelPrediction:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def area_m2(self) -> float:
        """
        [m2]
        """
    @property
    def budget(self) -> list[BudgetRule]:
        """
        every rule, and which binds
        """
    @property
    def clear_left_least_um(self) -> float:
        """
        the thinnest clear of the patch, at that place [um]
        """
    @property
    def clear_left_mean_um(self) -> float:
        """
        at that place [um]; below 0 = struck through
        """
    @property
    def clear_sd_um(self) -> float:
        """
        its standard deviation [um]
        """
    @property
    def clear_um(self) -> float:
        """
        expected clear at that place [um]
        """
    @property
    def defect(self) -> DefectAnswer | None:
        """
        Ways to be rid of the target's defect, and what each costs; none without a defect.
        """
    @property
    def disc_lives(self) -> list[DiscLife]:
        """
        Of each step: discs, and when to change them.
        """
    @property
    def discs(self) -> int:
        """
        discs used
        """
    @property
    def edge(self) -> EdgeMargin | None:
        """
        The margin to leave unsanded, where the panel states the length of its edges.
        """
    @property
    def labour(self) -> LabourMinutes:
        """
        a person's time
        """
    @property
    def minutes(self) -> float:
        """
        machine time [min]
        """
    @property
    def name(self) -> str:
        """
        of the panel
        """
    @property
    def passes(self) -> list[HistoryRow]:
        """
        a row a pass
        """
    @property
    def removable_um(self) -> float:
        """
        what the budget lets go at that place, reserve kept [um]
        """
    @property
    def removed_max_um(self) -> float:
        """
        most clear removed at any point of the patch [um]
        """
    @property
    def removed_um(self) -> float:
        """
        mean clear removed by the sequence [um]
        """
    @property
    def risk(self) -> PanelRisk:
        """
        how sure all this is, and what may go wrong
        """
    @property
    def start(self) -> HistoryRow:
        """
        the texture before
        """
    @property
    def steps(self) -> list[HistoryRow]:
        """
        a row a step
        """
    @property
    def total_film_least_um(self) -> float:
        """
        thinnest reading; of a patch with a place, the film expected there [um]
        """
class Prediction:
    """
    A whole job by one sequence.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Prediction:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, sequence: str = '', note: str | None = None, verdict: typing.Literal['nothing to do', 'go', 'go with care', 'do not sand'] = 'do not sand', reasons: collections.abc.Sequence[Statement | dict] = [], knowledge: typing.Literal['estimates', 'own readings', 'own test spot'] = 'estimates', band_edges_mm: collections.abc.Sequence[float] = [], panels: collections.abc.Sequence[PanelPrediction | dict] = [], discs: int = 0, minutes: float = 0.0, discs_spread: Spread | dict = ..., minutes_spread: Spread | dict = ..., labour: LabourMinutes | dict = ..., disc_sizes: collections.abc.Sequence[DiscSizeMinutes | dict] = [], checklist: collections.abc.Sequence[Statement | dict] = [], warnings: collections.abc.Sequence[Statement | dict] = [], cautions: collections.abc.Sequence[Statement | dict] = [], step_cautions: collections.abc.Sequence[Statement | dict] = [], seed: int | numpy.random.Generator = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Prediction:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def band_edges_mm(self) -> list[float]:
        """
        edges of HistoryRow::band_rms_um [mm]
        """
    @property
    def cautions(self) -> list[Statement]:
        """
        of the whole job
        """
    @property
    def checklist(self) -> list[Statement]:
        """
        what to do before the first pass
        """
    @property
    def disc_sizes(self) -> list[DiscSizeMinutes]:
        """
        of it, what goes by the discs' size, smallest first
        """
    @property
    def discs(self) -> int:
        """
        discs used on all panels
        """
    @property
    def discs_spread(self) -> Spread:
        """
        how sure the discs are
        """
    @property
    def knowledge(self) -> str:
        """
        what its figures rest on
        """
    @property
    def labour(self) -> LabourMinutes:
        """
        a person's time on all panels
        """
    @property
    def minutes(self) -> float:
        """
        machine time on all panels [min]
        """
    @property
    def minutes_spread(self) -> Spread:
        """
        how sure the machine time is [min]
        """
    @property
    def note(self) -> str | None:
        """
        of the job: where its figures come from
        """
    @property
    def panels(self) -> list[PanelPrediction]:
        """
        as in the job
        """
    @property
    def reasons(self) -> list[Statement]:
        """
        why
        """
    @property
    def seed(self) -> int:
        """
        of the job
        """
    @property
    def sequence(self) -> str:
        """
        name of the sequence
        """
    @property
    def step_cautions(self) -> list[Statement]:
        """
        of each step, which they name
        """
    @property
    def verdict(self) -> str:
        """
        may it be levelled?
        """
    @property
    def warnings(self) -> list[Statement]:
        """
        limits that the model came near
        """
class Predicted:
    """
    A prediction with the surfaces that it came from.
    """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        plain values
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def draws(self) -> list[RiskDraws]:
        """
        one per panel: what happens in each possible world
        """
    @property
    def histories(self) -> list[History]:
        """
        one per panel: the patch before and after each step
        """
    @property
    def prediction(self) -> Prediction:
        """
        plain values
        """
class FilmPicture:
    """
    The map as pictures, over the rectangle that holds the readings' places.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> FilmPicture:
        """
        The picture of such a dict; ValueError where a member is wrong.
        """
    def __getstate__(self) -> typing.Any:
        ...
    def __setstate__(self, arg0: typing.Any) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    def to_xarray(self) -> typing.Any:
        """
        An xarray.Dataset with coordinates in mm; ImportError where xarray is not installed.
        """
    @property
    def clear_sd_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        its standard deviation [um]
        """
    @property
    def clear_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        expected clear [um]
        """
    @property
    def corner_x_mm(self) -> float:
        """
        centre of the pixel of row 0, column 0 [mm]; rows run along y
        """
    @property
    def corner_y_mm(self) -> float:
        """
        centre of the pixel of row 0, column 0 [mm]; rows run along y
        """
    @property
    def pixel_mm(self) -> float:
        """
        [mm]
        """
    @property
    def total_sd_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        its standard deviation [um]
        """
    @property
    def total_um(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        expected total film [um]
        """
class Reached:
    """
    One thing that a target asks for, on one surface. In the unit that the name of its field ends in.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Reached:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, asks: str = '', wanted: float = 0.0, found: float | None = None, is_met: bool = False) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Reached:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def asks(self) -> str:
        """
        field of Target: rms_um, preset, image_clarity_percent, letter_mm or defect; preset_rms for the texture
        of full
        """
    @property
    def found(self) -> float | None:
        """
        what the surface has; none = no letter can be read; defect: what is left of it [um], below 0 where the
        paint beside it lies deeper than its bottom
        """
    @property
    def is_met(self) -> bool:
        """
        whether that will do
        """
    @property
    def wanted(self) -> float:
        """
        what is asked; preset full: touched share; partial, preset_rms: rms height [um]; defect: what of it may
        stay [um]
        """
class Difference:
    """
    What an alternative costs more than the best one: quantiles of the difference in each world, which is
    known far better than either alone. Only worlds count in which both meet the target, as giving up early is
    not saving; all of them where those are under a twentieth.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Difference:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, removed_um: Spread | dict = ..., levelling_um: Spread | dict = ..., overshoot_um: Spread | dict = ..., debt_um: Spread | dict = ..., minutes: Spread | dict = ..., is_drowned: bool = False, worlds: int = 0, cheaper_worlds: int = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Difference:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cheaper_worlds(self) -> int:
        """
        of them, those in which the best one spends less
        """
    @property
    def debt_um(self) -> Spread:
        """
        of it, for the scratches that the first step left [um]
        """
    @property
    def is_drowned(self) -> bool:
        """
        5 % or more of the worlds say the opposite: nobody can tell which spends less
        """
    @property
    def levelling_um(self) -> Spread:
        """
        of it, for levelling [um]
        """
    @property
    def minutes(self) -> Spread:
        """
        machine time [min]
        """
    @property
    def overshoot_um(self) -> Spread:
        """
        of it, cut past the target before the next look [um]
        """
    @property
    def removed_um(self) -> Spread:
        """
        clear spent [um]
        """
    @property
    def worlds(self) -> int:
        """
        that the quantiles are over
        """
class Alternative:
    """
    One sequence: clear is the mean over all panels by area, the rest their sum or their worst.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Alternative:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, sequence: str = '', first_abrasive: str = '', first_grain_um: float = 0.0, verdict: typing.Literal['nothing to do', 'go', 'go with care', 'do not sand'] = 'do not sand', reasons: collections.abc.Sequence[Statement | dict] = [], removed_um: Spread | dict = ..., levelling_um: Spread | dict = ..., overshoot_um: Spread | dict = ..., debt_um: Spread | dict = ..., trouble_probability: float = 0.0, strike_through_probability: float = 0.0, budget_exceeded_probability: float = 0.0, broken_by_work_probability: float = 0.0, target_missed_probability: float = 0.0, minutes: Spread | dict = ..., discs: Spread | dict = ..., labour: LabourMinutes | dict = ..., disc_sizes: collections.abc.Sequence[DiscSizeMinutes | dict] = [], rms_um: Spread | dict = ..., marks_per_cm2: float = 0.0, target: collections.abc.Sequence[Reached | dict] = [], is_on_front: bool = False, more: Difference | dict = ..., is_reaching: bool = False, rank: int = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Alternative:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def broken_by_work_probability(self) -> float:
        """
        a rule is broken by the work, as PanelRisk has it, 0 to 1
        """
    @property
    def budget_exceeded_probability(self) -> float:
        """
        a rule of the budget is broken, before work or by it, 0 to 1
        """
    @property
    def debt_um(self) -> Spread:
        """
        for scratches of earlier steps [um]
        """
    @property
    def disc_sizes(self) -> list[DiscSizeMinutes]:
        """
        Of it, what goes by the discs' size, smallest first.
        """
    @property
    def discs(self) -> Spread:
        """
        on all panels
        """
    @property
    def first_abrasive(self) -> str:
        """
        of its first step
        """
    @property
    def first_grain_um(self) -> float:
        """
        median grain of it [um]
        """
    @property
    def is_on_front(self) -> bool:
        """
        no other is as good in clear, trouble, time, discs, texture
        and marks, and better in one (medians)
        """
    @property
    def is_reaching(self) -> bool:
        """
        misses the target in under a fifth of the worlds, as printed
        """
    @property
    def labour(self) -> LabourMinutes:
        """
        a person's time on all panels, best estimate
        """
    @property
    def levelling_um(self) -> Spread:
        """
        until the texture's target was met [um]
        """
    @property
    def marks_per_cm2(self) -> float:
        """
        visible grooves left, best estimate, worst panel [1/cm2]
        """
    @property
    def minutes(self) -> Spread:
        """
        machine time on all panels [min]
        """
    @property
    def more(self) -> Difference:
        """
        than the best alternative
        """
    @property
    def overshoot_um(self) -> Spread:
        """
        from that moment to the next look [um]
        """
    @property
    def rank(self) -> int:
        """
        1 = best: see Comparison::best
        """
    @property
    def reasons(self) -> list[Statement]:
        """
        of the verdict
        """
    @property
    def removed_um(self) -> Spread:
        """
        clear spent: levelling + overshoot + debt [um]
        """
    @property
    def rms_um(self) -> Spread:
        """
        texture left, in the target's band [um]
        """
    @property
    def sequence(self) -> str:
        """
        its name
        """
    @property
    def strike_through_probability(self) -> float:
        """
        no clear left somewhere, 0 to 1
        """
    @property
    def target(self) -> list[Reached]:
        """
        what it asks and what is reached, best estimate, worst panel
        """
    @property
    def target_missed_probability(self) -> float:
        """
        something that the target asks for is not reached, 0 to 1
        """
    @property
    def trouble_probability(self) -> float:
        """
        struck through, a rule broken by the work or the target missed, on any panel, 0 to 1
        """
    @property
    def verdict(self) -> str:
        """
        of the prediction
        """
class Comparison:
    """
    All sequences of a job.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Comparison:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, note: str | None = None, alternatives: collections.abc.Sequence[Alternative | dict] = [], best: str = '', headline: Statement | dict = ..., short_before_probability: float = 0.0, removable_um: float = 0.0, findings: collections.abc.Sequence[Statement | dict] = [], warnings: collections.abc.Sequence[Statement | dict] = [], cautions: collections.abc.Sequence[Statement | dict] = [], step_cautions: collections.abc.Sequence[Statement | dict] = [], samples: int = 0, node_solves: int = 0, seed: int | numpy.random.Generator = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Comparison:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    def to_pandas(self) -> typing.Any:
        """
        A pandas.DataFrame; ImportError where pandas is not installed.
        """
    @property
    def alternatives(self) -> list[Alternative]:
        """
        as in the job
        """
    @property
    def best(self) -> str:
        """
        The first by rank: those that reach the target, by the clear that they spend (median); then the others,
        by how often they miss it. Verdicts do not count.
        """
    @property
    def cautions(self) -> list[Statement]:
        """
        of the whole job
        """
    @property
    def findings(self) -> list[Statement]:
        """
        what each other sequence costs more than the best
        """
    @property
    def headline(self) -> Statement:
        """
        what was ranked, what came first
        """
    @property
    def node_solves(self) -> int:
        """
        levelling runs that the draws were read off, shared ones once; 0 = not told
        """
    @property
    def note(self) -> str | None:
        """
        of the job: where its figures come from
        """
    @property
    def removable_um(self) -> float:
        """
        what the budget lets go at the panel where it is least, reserve kept [um]
        """
    @property
    def samples(self) -> int:
        """
        possible worlds that all were drawn in
        """
    @property
    def seed(self) -> int:
        """
        of the job
        """
    @property
    def short_before_probability(self) -> float:
        """
        Too little clear is there before any work, on any panel: whatever the sequence, 0 to 1.
        """
    @property
    def step_cautions(self) -> list[Statement]:
        """
        of the steps, by the abrasives that they work with
        """
    @property
    def warnings(self) -> list[Statement]:
        """
        limits that the model came near
        """
class FirstStep:
    """
    A first step that was weighed; best estimates.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> FirstStep:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, abrasive: str = '', grain_um: float = 0.0, backing: str = '', levelling_um: float = 0.0, passes: int = 0, discs: float = 0.0, minutes: float = 0.0, is_reaching: bool = False, reasons: collections.abc.Sequence[Statement | dict] = []) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> FirstStep:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> str:
        """
        its name
        """
    @property
    def backing(self) -> str:
        """
        what it goes on
        """
    @property
    def discs(self) -> float:
        """
        on all panels
        """
    @property
    def grain_um(self) -> float:
        """
        median grain [um]
        """
    @property
    def is_reaching(self) -> bool:
        """
        reaches the target within the limits
        """
    @property
    def levelling_um(self) -> float:
        """
        clear until the target is met, mean over the panels, with the coarsest grain at hand; else all there was
        [um]
        """
    @property
    def minutes(self) -> float:
        """
        on all panels [min]
        """
    @property
    def passes(self) -> int:
        """
        on the panel that needs most
        """
    @property
    def reasons(self) -> list[Statement]:
        """
        why not; none where it does
        """
class Recommendation:
    """
    What to do.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Recommendation:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, note: str | None = None, verdict: typing.Literal['nothing to do', 'go', 'go with care', 'do not sand'] = 'do not sand', recommended: str = '', finest: str = '', reasons: collections.abc.Sequence[Statement | dict] = [], first_steps: collections.abc.Sequence[FirstStep | dict] = [], sequences: collections.abc.Sequence[Sequence | dict] = [], comparison: Comparison | dict = ..., cautions: collections.abc.Sequence[Statement | dict] = []) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Recommendation:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def cautions(self) -> list[Statement]:
        """
        of the whole job; those of the steps stand in the comparison
        """
    @property
    def comparison(self) -> Comparison:
        """
        of these sequences
        """
    @property
    def finest(self) -> str:
        """
        name of the sequence with the finest first step that reaches it
        """
    @property
    def first_steps(self) -> list[FirstStep]:
        """
        all that were weighed, finest first
        """
    @property
    def note(self) -> str | None:
        """
        of the job: where its figures come from
        """
    @property
    def reasons(self) -> list[Statement]:
        """
        why
        """
    @property
    def recommended(self) -> str:
        """
        name of the sequence; empty where none reaches it, and where there is nothing to do
        """
    @property
    def sequences(self) -> list[Sequence]:
        """
        of those that reach the target, finest first
        """
    @property
    def verdict(self) -> str:
        """
        of the recommended sequence; do not sand comes first
        """
class Machine:
    """
    Which motions of a catalogue are the machine at hand.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Machine:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, disc: str = '150 mm light', compound: str = '150 mm compound', polish: str = '150 mm finishing') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Machine:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def compound(self) -> str:
        """
        drives compound
        """
    @property
    def disc(self) -> str:
        """
        drives discs
        """
    @property
    def polish(self) -> str:
        """
        drives the last polish
        """
class Catalogue:
    """
    Tools by name. Its file has a table per tool, [abrasive."P2000 film"], [backing."..."], [motion."..."],
    whose keys are the fields of the struct. A table may say like = "another name" and then what differs; an
    abrasive like another with a new grit is that product at_grit(), before further keys override. A table may
    say `ranges` of its numbers; an abrasive holds its own, those of backings and motions stand here.
    """
    @staticmethod
    def from_dict(members: dict[str, typing.Any]) -> Catalogue:
        """
        The result of such a dict; ValueError where a member is wrong.
        """
    @staticmethod
    def shipped() -> Catalogue:
        """
        The catalogue shipped with the library: estimates with their ranges and sources.
        """
    def __getstate__(self) -> tuple[typing.Any, ...]:
        ...
    def __setstate__(self, arg0: tuple[typing.Any, ...]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def extended(self, path: str | os.PathLike[str]) -> Catalogue:
        """
        `base` with the tables of a file added; a name that `base` has already is replaced. Errors name file and
        line.
        """
    def to_dict(self) -> typing.Any:
        """
        The members as plain values; maps as lists of rows.
        """
    @property
    def abrasives(self) -> dict[str, Abrasive]:
        """
        by name
        """
    @property
    def backing_ranges(self) -> dict[str, dict[str, list[float]]]:
        """
        by name of the backing
        """
    @property
    def backings(self) -> dict[str, Backing]:
        """
        by name
        """
    @property
    def motion_ranges(self) -> dict[str, dict[str, list[float]]]:
        """
        by name of the motion
        """
    @property
    def motions(self) -> dict[str, Motion]:
        """
        by name
        """
class TestSpot:
    """
    A spot of the panel on which a step of the job was tried.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TestSpot:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, sequence: str = '', step: str = '', passes: int, area_m2: float = 0.04, before_um: collections.abc.Sequence[float], after_um: collections.abc.Sequence[float], spot_cv: float = 0.15, gloss_gone_passes: int | None = None, gloss_left_passes: int | None = None, gloss_log_sd: float = 0.12, rms_left_um: float | None = None, rms_left_log_sd: float = 0.15, marks_gone_passes: int | None = None, marks_left_passes: int | None = None, marks_log_sd: float = 0.12) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TestSpot:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def after_um(self) -> list[float]:
        """
        readings after, at the same places [um]
        """
    @property
    def area_m2(self) -> float:
        """
        area of the spot, which sets how discs load [m2], > 0 to 100; estimate
        """
    @property
    def before_um(self) -> list[float]:
        """
        readings of the total film before, all over the spot [um]
        """
    @property
    def gloss_gone_passes(self) -> int | None:
        """
        Passes at which no glossy valley was left anywhere on the spot, 1 to passes; none = not looked for.
        """
    @property
    def gloss_left_passes(self) -> int | None:
        """
        Passes at which some were still seen, 0 to passes and under gloss_gone_passes; none = one pass before.
        Alone: some were left at the end.
        """
    @property
    def gloss_log_sd(self) -> float:
        """
        of the removal at which the last one goes, between eyes and places; estimate
        """
    @property
    def marks_gone_passes(self) -> int | None:
        """
        Passes of the sequence's next step, with a fresh disc, at which no mark of the tried step was left on
        the spot, 1 to 1000; none = not looked for.
        """
    @property
    def marks_left_passes(self) -> int | None:
        """
        Passes of it at which some were still seen, 0 to 1000 and under marks_gone_passes; none = one pass
        before. Alone: some were left at the end.
        """
    @property
    def marks_log_sd(self) -> float:
        """
        of the removal at which the last one goes, between eyes and places;
        estimate
        """
    @property
    def passes(self) -> int:
        """
        overlapped passes made with fresh discs, 1 to 1000
        """
    @property
    def rms_left_log_sd(self) -> float:
        """
        how sure that is, standard deviation of its logarithm; estimate
        """
    @property
    def rms_left_um(self) -> float | None:
        """
        Texture left after all passes, rms [um], > 0 and no more than there was; none = not known.
        """
    @property
    def sequence(self) -> str:
        """
        of the job; empty = its first
        """
    @property
    def spot_cv(self) -> float:
        """
        how much spots worked alike differ, coefficient of variation, 0 to 1; estimate
        (one person's force)
        """
    @property
    def step(self) -> str:
        """
        title of the step that was tried; empty = the sequence's first
        """
class Belief:
    """
    A figure in the unit of the field that it is: half as likely above its median as below.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Belief:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, median: float = 0.0, least: float = 0.0, most: float = 0.0, log_sd: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Belief:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def least(self) -> float:
        """
        2.5 % lie below
        """
    @property
    def log_sd(self) -> float:
        """
        standard deviation of the figure's logarithm
        """
    @property
    def median(self) -> float:
        """
        half as likely above as below
        """
    @property
    def most(self) -> float:
        """
        2.5 % lie above
        """
class TaughtAbrasive:
    """
    What a spot says of another abrasive of the job.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TaughtAbrasive:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, abrasive: str = '', before: Belief | dict = ..., after: Belief | dict = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TaughtAbrasive:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> str:
        """
        its name
        """
    @property
    def after(self) -> Belief:
        """
        the same with the test spot
        """
    @property
    def before(self) -> Belief:
        """
        wear rate of fresh discs [mm3/(N m)]: the job's
        """
class TestSpotResult:
    """
    What a test spot says.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> TestSpotResult:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, abrasive: str = '', removed_um: float = 0.0, gauge_sd_um: float = 0.0, expected_um: float = 0.0, before: Belief | dict = ..., after: Belief | dict = ..., is_useful: bool = True, passes_needed: int = 0, readings_needed: int = 0, backing: str = '', texture_before: Belief | dict | None = None, texture_after: Belief | dict | None = None, stiffness_before: Belief | dict | None = None, stiffness_after: Belief | dict | None = None, groove_depth_before: Belief | dict | None = None, groove_depth_after: Belief | dict | None = None, others: collections.abc.Sequence[TaughtAbrasive | dict] = [], warnings: collections.abc.Sequence[Statement | dict] = []) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> TestSpotResult:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> str:
        """
        name of the abrasive that was tried
        """
    @property
    def after(self) -> Belief:
        """
        the same with the test spot
        """
    @property
    def backing(self) -> str:
        """
        name of the backing that was tried
        """
    @property
    def before(self) -> Belief:
        """
        wear rate of fresh discs, in this hand on this clear [mm3/(N m)]: the job's
        """
    @property
    def expected_um(self) -> float:
        """
        what the job's wear rate would remove [um]
        """
    @property
    def gauge_sd_um(self) -> float:
        """
        standard uncertainty of it from the gauge [um]
        """
    @property
    def groove_depth_after(self) -> Belief | None:
        """
        the same with the test spot
        """
    @property
    def groove_depth_before(self) -> Belief | None:
        """
        Mean groove depth at 1.4 kPa, in this hand on this clear [um], the job's; where marks were looked for.
        """
    @property
    def is_useful(self) -> bool:
        """
        the gauge leaves the wear rate less uncertain than the spot itself, by far
        """
    @property
    def others(self) -> list[TaughtAbrasive]:
        """
        the other abrasives of the job whose wear rate it moved
        """
    @property
    def passes_needed(self) -> int:
        """
        with as many readings, so many passes make the spot useful; at most 1000
        """
    @property
    def readings_needed(self) -> int:
        """
        with as many passes, so many readings before, and after, do
        """
    @property
    def removed_um(self) -> float:
        """
        mean before - mean after [um]; below 0 = it reads thicker after
        """
    @property
    def stiffness_after(self) -> Belief | None:
        """
        the same with the test spot
        """
    @property
    def stiffness_before(self) -> Belief | None:
        """
        Stiffness of the backing over that of the catalogue, the job's.
        """
    @property
    def texture_after(self) -> Belief | None:
        """
        the same with the test spot
        """
    @property
    def texture_before(self) -> Belief | None:
        """
        Rms of the texture before work [um], the job's; this and the next three only where texture was seen.
        """
    @property
    def warnings(self) -> list[Statement]:
        """
        what to mind before relying on it
        """
class Calibration:
    """
    What a test spot says, and the job that has learned it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Calibration:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getattr__(self, name: str) -> typing.Any:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, result: TestSpotResult | dict = ..., moved: Statement | dict = ..., job: Job | dict = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Calibration:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def job(self) -> Job:
        """
        the job as learned_from() has it
        """
    @property
    def moved(self) -> Statement:
        """
        what of the spot moved the belief in the wear rate most
        """
    @property
    def result(self) -> TestSpotResult:
        """
        what is believed before and after the spot
        """
class SpotAim:
    """
    The spot that is thought of, and how well the wear rate is to be known by it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> SpotAim:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, sequence: str = '', step: str = '', log_sd: float = 0.25, readings: int = 6, passes: int = 6, area_m2: float = 0.04, spot_cv: float = 0.15) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> SpotAim:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def area_m2(self) -> float:
        """
        of the spot [m2], > 0 to 100
        """
    @property
    def log_sd(self) -> float:
        """
        of ln(wear rate) after the spot, > 0 to 2: .25 is a factor of 1.6 in 95 of 100
        cases; estimate of what a plan is worth
        """
    @property
    def passes(self) -> int:
        """
        made, where the readings are asked for, 1 to 1000
        """
    @property
    def readings(self) -> int:
        """
        before, and as many after, 1 to 1000
        """
    @property
    def sequence(self) -> str:
        """
        of the job; empty = its first
        """
    @property
    def spot_cv(self) -> float:
        """
        how much spots worked alike differ, as in TestSpot
        """
    @property
    def step(self) -> str:
        """
        name of the step to try; empty = the sequence's first
        """
class SpotPlan:
    """
    What the spot needs.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> SpotPlan:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, abrasive: str = '', log_sd_before: float = 0.0, least_log_sd: float = 0.0, passes: int | None = None, slow_passes: int | None = None, aim_readings: int = 0, removed_um: float = 0.0, readings: int | None = None, log_sd_after: float | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> SpotPlan:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> str:
        """
        name of the abrasive that would be tried
        """
    @property
    def aim_readings(self) -> int:
        """
        those of the aim
        """
    @property
    def least_log_sd(self) -> float:
        """
        after the aim's passes, with any number of readings: what spot_cv leaves
        """
    @property
    def log_sd_after(self) -> float | None:
        """
        of ln(wear rate), expected after `passes`
        """
    @property
    def log_sd_before(self) -> float:
        """
        of ln(wear rate), in this hand on this clear, before the spot
        """
    @property
    def passes(self) -> int | None:
        """
        with the aim's readings; 0 = known so well already; none = no number does
        """
    @property
    def readings(self) -> int | None:
        """
        before, and after, with the aim's passes; as for passes
        """
    @property
    def removed_um(self) -> float:
        """
        what `passes` are expected to remove [um]
        """
    @property
    def slow_passes(self) -> int | None:
        """
        the same, where the disc cuts as slowly as 1 of 10 would
        """
class BenchRun:
    """
    A disc from fresh: what each pass removed, in order.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> BenchRun:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, name: str, removed_um: collections.abc.Sequence[float]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> BenchRun:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def name(self) -> str:
        """
        of the disc
        """
    @property
    def removed_um(self) -> list[float]:
        """
        mean clear removed by each pass, from the first [um], at least one
        """
class Bench:
    """
    One abrasive on the bench: every pass alike, every run a fresh disc.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> Bench:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, abrasive: str, grit: Grit | str, wetness: typing.Literal['dry', 'damp', 'wet'] = 'dry', force_n: float, sliding_m_per_s: float, seconds_per_pass: float, area_cm2: float, disc_area_cm2: float, hardness_mpa: float = 200.0, runs: collections.abc.Sequence[BenchRun | dict]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> Bench:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def abrasive(self) -> str:
        """
        name that the catalogue entry will have
        """
    @property
    def area_cm2(self) -> float:
        """
        area that a pass works [cm2], > 0
        """
    @property
    def disc_area_cm2(self) -> float:
        """
        face of the disc, which loads [cm2], > 0
        """
    @property
    def force_n(self) -> float:
        """
        [N], > 0
        """
    @property
    def grit(self) -> Grit:
        """
        grain size
        """
    @property
    def hardness_mpa(self) -> float:
        """
        indentation hardness of the clear [MPa], > 0
        """
    @property
    def runs(self) -> list[BenchRun]:
        """
        at least one, four passes or more in all
        """
    @property
    def seconds_per_pass(self) -> float:
        """
        [s], > 0
        """
    @property
    def sliding_m_per_s(self) -> float:
        """
        mean sliding speed [m/s], > 0
        """
    @property
    def wetness(self) -> str:
        """
        how wet the runs were worked
        """
class BenchResult:
    """
    What the runs say, for a clear of 200 MPa.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> BenchResult:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, wear_rate_mm3_per_n_m: Estimate | dict = ..., worn_wear_rate_mm3_per_n_m: Estimate | dict = ..., loading_um: Estimate | dict = ..., is_loading_seen: bool = False, loading_p: float = 1.0, residual_sd_um: float = 0.0, residuals_um: collections.abc.Sequence[list[float]] = [], run_mean_mm3_per_n_m: collections.abc.Sequence[float] = [], disc_log_sd: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> BenchResult:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def disc_log_sd(self) -> float:
        """
        standard deviation of ln(run's removal/curve's); 0 with one run
        """
    @property
    def is_loading_seen(self) -> bool:
        """
        F test against a wear rate that stays: p < .05, and no interval is wider than tenfold
        """
    @property
    def loading_p(self) -> float:
        """
        p value of that test
        """
    @property
    def loading_um(self) -> Estimate:
        """
        clear removed per disc area over which the cut falls (1/e) [um]; likewise
        """
    @property
    def residual_sd_um(self) -> float:
        """
        spread of passes about the curve [um]
        """
    @property
    def residuals_um(self) -> list[list[float]]:
        """
        removed - curve, by run and pass [um]
        """
    @property
    def run_mean_mm3_per_n_m(self) -> list[float]:
        """
        each run's own mean wear rate, all passes
        """
    @property
    def wear_rate_mm3_per_n_m(self) -> Estimate:
        """
        fresh
        """
    @property
    def worn_wear_rate_mm3_per_n_m(self) -> Estimate:
        """
        loaded; unset where no loading is seen
        """
class BenchComparison:
    """
    Welch's t test of the logarithms of two abrasives' runs: mean wear rates over all passes, loading
    included.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> BenchComparison:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, ratio: Estimate | dict = ..., p: float = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> BenchComparison:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def p(self) -> float:
        """
        chance of such a difference, or a greater one, between equal abrasives
        """
    @property
    def ratio(self) -> Estimate:
        """
        mean wear rate of the first over that of the second
        """
class CompressionCurve:
    """
    A sample pressed between flat plates, free to bulge.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> CompressionCurve:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, thickness_mm: float, area_cm2: float, force_n: collections.abc.Sequence[float], deflection_mm: collections.abc.Sequence[float]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> CompressionCurve:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def area_cm2(self) -> float:
        """
        [cm2], > 0
        """
    @property
    def deflection_mm(self) -> list[float]:
        """
        as many [mm], 0 to .6 x thickness: densification is not modelled
        """
    @property
    def force_n(self) -> list[float]:
        """
        [N], four or more
        """
    @property
    def thickness_mm(self) -> float:
        """
        of the sample [mm], > 0
        """
class CompressionResult:
    """
    What the curve says.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    @staticmethod
    def from_dict(fields: dict[str, typing.Any]) -> CompressionResult:
        """
        The value of such a dict; ValueError, with the path, where a field is wrong.
        """
    def __eq__(self, arg0: object) -> bool:
        ...
    def __getstate__(self) -> dict[str, typing.Any]:
        ...
    def __init__(self, *, modulus_mpa: Estimate | dict = ..., plateau_kpa: Estimate | dict = ..., is_plateau_seen: bool = False, plateau_p: float = 1.0, residual_sd_kpa: float = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: dict[str, typing.Any]) -> None:
        ...
    def _repr_html_(self) -> str:
        """
        A table, for notebooks.
        """
    def replace(self, **changes: typing.Any) -> CompressionResult:
        """
        The same value with some fields changed.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        The fields as plain values, as in JSON.
        """
    @property
    def is_plateau_seen(self) -> bool:
        """
        F test against a straight line: p < .05, and the plateau is fixed by the curve
        """
    @property
    def modulus_mpa(self) -> Estimate:
        """
        Young's modulus at small strain
        """
    @property
    def plateau_kpa(self) -> Estimate:
        """
        unset where no plateau is seen
        """
    @property
    def plateau_p(self) -> float:
        """
        p value of that test
        """
    @property
    def residual_sd_kpa(self) -> float:
        """
        spread about the curve [kPa]
        """
def _chance_text(probability: float, samples: int) -> str:
    """
    A probability (0 to 1) that was counted in so many samples: "37 of 100 cases", "4 of 1000 cases", "none of
    4000 cases", "all cases".
    """
def _increment(height: typing.Any, stiffness: typing.Any, removal: float) -> numpy.typing.NDArray[numpy.float64]:
    """
    For tests only. One implicit increment of levelling: pressure over its mean, (rows, cols), of a height (rows, cols) and a mean removal in the same unit; stiffness S/p_mean on the half spectrum [1/length].
    """
def _range_um_and_mil(least_um: float, most_um: float, symbols: str = 'ascii') -> str:
    """
    A range of lengths as both trades read it.
    """
def _saved_text(job: Job, path: str | os.PathLike[str]) -> str:
    """
    The same for a file at `path`: its paths start at that file's folder. The file's name must end in .json.
    """
def _um_and_mil(length_um: float, symbols: str = 'ascii') -> str:
    """
    A length as both trades read it.
    """
def _write_whole_files(contents: collections.abc.Sequence[tuple[str | os.PathLike[str], bytes]]) -> None:
    """
    Writes files (path, bytes), all of them or none.
    """
def abrasive_of(bench: Bench, result: BenchResult, *, like: Abrasive, source: str) -> Abrasive:
    """
    The abrasive as a catalogue holds it: rates with their ranges, wear_rate_log_sd from the fit and the
    spread of discs. What was not measured is that of `like`, a known abrasive of the same carrier, in the
    bench's grit: scratches, and where no loading is seen the share of the fresh rate that stays, and loading.
    """
def at_grit(abrasive: Abrasive, grit: Grit, *, exponent: float = 1.0) -> Abrasive:
    """
    The same product in another grit, with its ranges: wear rates scaled by (d/d0)^exponent, groove depth and
    loading by d/d0 (docs/physics.md (27), (27b) and (29)); the name takes the new grit in place of the
    old, the family stays. exponent: size effect of wear, about 1 for micro-grit (range 0.5 to 1.5; estimate).
    """
def band_rms_um(field: HeightField, *, edges_mm: collections.abc.Sequence[float]) -> numpy.typing.NDArray[numpy.float64]:
    """
    Rms height [um] of the waves between neighbouring edges, from the spectrum (Parseval): one value per pair
    edges_mm[i] <= wavelength < edges_mm[i + 1], so that the squares of neighbouring bands add up.
    edges_mm: at least two, > 0, increasing [mm]; the last may be infinite.
    """
def bench_cautions(*, wetness: str) -> list[Statement]:
    """
    Cautions of wearing discs on a bench, by how wet that is done.
    """
def budget_of(job: Job) -> Budget:
    """
    The rules that a job is judged by: its own; where it states none (a reserve is none), those of
    default_budget() for its paint, with its reserve.
    """
def budget_rules(budget: Budget, *, clear_um: float) -> list[BudgetRule]:
    """
    Every rule on a clear of so much [um], >= 0, at its least: those that the budget counts, the clear itself,
    and for information the known ones (published and practice) that those do not imply.
    """
def calibrate(job: Job, readings: TestSpot | str | os.PathLike[str], *, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> Calibration:
    """
    Judges a test spot as judge_test_spot() does, and teaches the job what it says: result, job, and what
    moved the belief, all from one set of curves.
    """
def catalogue_entry(abrasive: Abrasive) -> str:
    """
    An abrasive as a table of a catalogue file (TOML), its source line in it; read back it is the same
    abrasive.
    """
def clear_owed_by_population_um(scratches: Scratches, *, limits: ScratchLimits = ...) -> list[float]:
    """
    The same for each population alone [um], oldest first.
    """
def compare(job: Job, *, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> Comparison:
    """
    Predicts each sequence of a job, at least one, on a starting surface, in the same worlds, and compares.
    """
def compare_benches(first: Bench, second: Bench) -> BenchComparison:
    """
    InvalidInput with fewer than two runs each, runs of different numbers of passes, or different wetness.
    """
def crown_contact(motion: Motion, backing: Backing, *, crown: Crown | None = None) -> CrownContact:
    """
    Contact of the disc on a crowned panel (none = flat). Every place of the face is pressed in along its
    foams' own curves, and the panel's sheet gives as a plate on the springs of its crown (docs/physics.md,
    equations 11 to 11d), within 1 % of an independent solution; of the peak while the middle is pressed
    hardest. A half-space follows any crown and a rigid disc none: the whole face then counts as touching.
    """
def default_budget(kind: str) -> Budget:
    """
    The budget of a paint for which none is stated. Factory: the two published rules. Repaint: the published
    one of clear left, and at most a quarter of the clear that is there (estimate). Unknown: all three, so
    that the strictest counts.
    """
def depth_laws(scratches: Scratches) -> list[DepthLaw]:
    """
    The depth laws of the patch's parts: pixels of like coverages (within 1/32 of the finished one) form a
    part, with the exact area mean of each coverage; at the default coverage that grouping moves deeper_share
    by about .001, and by .003 per population at most.
    """
def dry(*, base: HeightField, wet_film: WetFilm) -> HeightField:
    """
    The dry top of a wet film over a base: each wave times its dry_amplitude_share. The mean is kept: heights
    count from the dry film's own reference plane.
    """
def dry_amplitude_share(wet_film: WetFilm, *, wavelength_mm: numpy.typing.ArrayLike) -> typing.Any:
    """
    Share of a wave of the base that the dry top shows. The wet top starts parallel to the base (share 1) and
    levels to w = wet_amplitude_share(infinity); then each column of the film shrinks to its solids, s (h + w
    b - b) over the base b, so that the top keeps s w + (1 - s): 1 - s where the film had levelled flat, 1
    where it never moved. docs/physics.md (59).
    """
def edge_pressure(backing: Backing, motion: Motion, *, centre_mm: float, removal_um: float, passes: int = 8, shape: typing.Literal['edge', 'body_line'] = 'edge', radius_mm: float = 3.0, turn_deg: float = 15.0, overhang: typing.Literal['none', 'straddle'] = 'none', is_tilting: bool = False, clear: EdgeClear | dict | None = None, pixel_mm: float | None = None, padding_radii: float = 2.0) -> EdgePressure:
    """
    Pressure of the disc with its centre at centre_mm, >= 0 [mm] (plate parallel to the panel unless tilting).
    InvalidInput for a half-space or rigid support, which have no mean approach; NotConverged if the contact
    is not found.
    
        removal_um: mean clear removed far from the edge [um], > 0 to 1000
        passes: equal passes that it takes, 1 to 1000; wear is followed pass by pass
        shape: what is at distance 0
        radius_mm: of the rounded edge or of the body line [mm], > 0; estimate
        turn_deg: body line: angle by which the panel turns [degrees], > 0 to 60; estimate
        overhang: edge: the innermost lane; lanes cross a body line anywhere
        is_tilting: edge: the disc tilts freely; over a body line it always does
        clear: given: find the margin that keeps it
        pixel_mm: none = the largest that resolves the edge [mm]; a larger one is refused
        padding_radii: half-length of the row that is solved, in disc radii, 2 to 4
    """
def edge_profile(backing: Backing, motion: Motion, *, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0, removal_um: float, passes: int = 8, shape: typing.Literal['edge', 'body_line'] = 'edge', radius_mm: float = 3.0, turn_deg: float = 15.0, overhang: typing.Literal['none', 'straddle'] = 'none', is_tilting: bool = False, clear: EdgeClear | dict | None = None, pixel_mm: float | None = None, padding_radii: float = 2.0) -> EdgeProfile:
    """
    Wears the section pass by pass (docs/physics.md, edges): lanes at the innermost place and, spread evenly,
    beyond; in each the disc's force is balanced over its chords. Foam layers get their tangent modulus at the
    flat's pressure.
    
        removal_um: mean clear removed far from the edge [um], > 0 to 1000
        passes: equal passes that it takes, 1 to 1000; wear is followed pass by pass
        shape: what is at distance 0
        radius_mm: of the rounded edge or of the body line [mm], > 0; estimate
        turn_deg: body line: angle by which the panel turns [degrees], > 0 to 60; estimate
        overhang: edge: the innermost lane; lanes cross a body line anywhere
        is_tilting: edge: the disc tilts freely; over a body line it always does
        clear: given: find the margin that keeps it
        pixel_mm: none = the largest that resolves the edge [mm]; a larger one is refused
        padding_radii: half-length of the row that is solved, in disc radii, 2 to 4
    """
def film_at(panel: Panel, paint: Paint, *, x_mm: float, y_mm: float) -> Film:
    """
    Film at a place.
    """
def film_picture(panel: Panel, paint: Paint, *, pixels: int = 64) -> FilmPicture:
    """
    Pictures of `pixels` along the longer side, 2 to 1000. InvalidInput where the readings' places span no
    area.
    """
def fresnel(*, angle_deg: float, refractive_index: float) -> float:
    """
    Share of unpolarised light that a smooth surface of an index > 1 to 4 mirrors at an angle from its normal,
    0 to < 90 degrees (Fresnel).
    """
def gaussian_comb_contrast(*, shift_sd_mm: float, comb_mm: float) -> float:
    """
    The closed form of comb_contrast for Gaussian shifts of a standard deviation >= 0 [mm] and no slit,
    docs/physics.md (52a): what a field of random waves comes to.
    """
def gloss_gu(*, angle_deg: float, refractive_index: float, roughness_nm: float = 0.0) -> float:
    """
    Gloss [GU] of a surface with an even roughness, Gaussian in height [nm rms], much finer than the receptor
    sees: specular share exp(-(4 pi roughness cos(angle)/light_wavelength)^2), docs/physics.md (47). Good
    while gloss_knows_roughness(); Python warns beyond (UserWarning). Never for texture that bends the image,
    nor for a few deep scratches: those have their own measures.
    """
def gloss_knows_roughness(*, angle_deg: float, roughness_nm: float) -> bool:
    """
    Whether the roughness is small enough for gloss_gu: rms phase 4 pi roughness cos(angle)/light_wavelength
    under 2. Beyond it the mirrored share (below 2 %) depends on the tails of the heights, and no roughness
    figure knows them.
    """
def gloss_of_share_gu(*, angle_deg: float, refractive_index: float, specular_share: float) -> float:
    """
    Gloss [GU] of a surface that mirrors `specular_share` (0 to 1) of what a smooth one would: 100 x its flux
    over that of glass of index 1.567 (ISO 2813), docs/physics.md (46). Scratches throw light outside the
    receptor: give their specular_share. Of the light that they scatter none is counted, though a meter's
    receptor takes some in: a matt clear, as after a foam-backed disc, reads a few GU more at 60 degrees.
    """
def haze_share(grooves: collections.abc.Sequence[GroovePopulation], *, angle_deg: float, from_deg: float, to_deg: float, flank_deg: float = 75.0) -> float:
    """
    Share (0 to 1) of the mirrored light that grooves scatter between two angles off the mirror direction,
    from_deg <= to_deg: our own haze, not that of ISO 13803. The lobe is stated, not computed: a groove
    scatters across itself, Gaussian in angle with standard deviation wavelength/(pi width), width 2 depth
    tan(flank_deg), cut at 90 degrees; populations share the scattered light as their coverages. From 0 to 90
    degrees it is 1 - specular_share. docs/physics.md (49).
    """
def image_clarity_by_comb_percent(field: HeightField, *, comb_mm: float = 0.5, distance_mm: float = 150.0, angle_deg: float = 45.0, slit_mm: float = 0.03, direction: typing.Literal['rows', 'columns'] = 'rows', grooves: collections.abc.Sequence[GroovePopulation | dict] = [], lens_half_angle_deg: float = 3.0) -> list[float]:
    """
    The same for each of standard_combs_mm [%]; options.comb_mm is not used.
    
        comb_mm: width of a line, half the comb's period: .125, .25, .5, 1, 2
        distance_mm: focal length of the lens that makes the image [mm], > 0
        angle_deg: from the normal; matters where there are grooves
        slit_mm: width of the slit's image [mm], >= 0
        direction: the plane of incidence holds this direction
        grooves: scratches too fine for the grid; none = smooth clear
        lens_half_angle_deg: scattered light within it veils the image; estimate
    """
def image_clarity_percent(field: HeightField, *, comb_mm: float = 0.5, distance_mm: float = 150.0, angle_deg: float = 45.0, slit_mm: float = 0.03, direction: typing.Literal['rows', 'columns'] = 'rows', grooves: collections.abc.Sequence[GroovePopulation | dict] = [], lens_half_angle_deg: float = 3.0) -> float:
    """
    Image clarity [%, 0 to 100]: each pixel shifts the slit's image by 2 distance_mm slope; M and m are the
    most and least light behind the comb while it moves across: 100 (M - m)/(M + m) x share/(share + scatter
    into the lens). Not monotone in amplitude once waves shift the image by more than half a line: a test, not
    a measure. docs/physics.md (51), (52).
    
        comb_mm: width of a line, half the comb's period: .125, .25, .5, 1, 2
        distance_mm: focal length of the lens that makes the image [mm], > 0
        angle_deg: from the normal; matters where there are grooves
        slit_mm: width of the slit's image [mm], >= 0
        direction: the plane of incidence holds this direction
        grooves: scratches too fine for the grid; none = smooth clear
        lens_half_angle_deg: scattered light within it veils the image; estimate
    """
def image_wander_arcmin(field: HeightField, *, direction: str = 'rows', footprint_mm: float = 0.0) -> float:
    """
    Rms wander [arcmin] of a distant mirrored point as the eye moves over the surface: twice the slope.
    footprint_mm as in slope(): waves shorter than what the pupil sees blur the image and do not move it.
    """
def judge_bench(bench: Bench) -> BenchResult:
    """
    Fits w_end + (w_0 - w_end) exp(-V/V_0) to all runs, integrated over each pass exactly. Intervals of the
    rates hold what passes and discs scatter, each with Student's t for their number; with one disc the discs'
    part is not known and is left out. That of loading takes passes as independent.
    """
def judge_compression(curve: CompressionCurve) -> CompressionResult:
    """
    Fits stress = plateau (1 - exp(-E strain/plateau)), as a Layer with a plateau behaves, or E strain.
    """
def judge_target(target: Target, *, before: HeightField, now: HeightField, touched_share: float, clarity_light: float = 1.0, contrast: float = 1.0) -> list[Reached]:
    """
    Judges a target on a surface that was worn from `before`; a defect by how far the mean height has fallen.
    InvalidInput for a defect that a disc follows, which is not on the surfaces. touched_share: what the
    levelling step has touched; of what the scratches leave, clarity_light: share of the texture's image
    clarity, contrast: that of letters. Letters are read in the worse of the two directions.
    The same at the end of a sequence, scratches included.
    """
def judge_test_spot(job: Job, readings: TestSpot | str | os.PathLike[str], *, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> TestSpotResult:
    """
    Bayes' rule by the trapezoid rule on a grid, for ln(wear rate) and, where texture is told, ln(texture
    scale) and ln(stiffness) with it. Priors are normal: wear_spread() of the step, scale_log_sd() of the
    texture, the backing's stiffness_log_sd. The mean removal is normal about that of the passes, discs
    loading and being changed, with the gauge's uncertainty, its scale, and spot_cv; looks bracket the removal
    at which the last glossy valley goes; the texture left is log-normal. Then kin of the abrasive, and, where
    marks were looked for, groove depth and the next step's wear rate (docs/physics.md, test spot). A belief
    whose median leaves its prior by more than two standard deviations, or that lies where the search ends, is
    warned of. InvalidInput where the job has no such step, where more texture is left than there was, where
    curves are needed and none are given, where marks were looked for and no step follows, and where the film
    reads thicker after by more than three times the gauge's uncertainty: then readings were mixed up.
    """
def lamp_visibility(specular_share: float, *, fill: float = 0.1) -> float:
    """
    How clearly a lamp stands out of the veil of scattered light: share/(share + 2 fill (1 - share)); above
    about .05 it can be made out (estimate). fill: share of the surroundings as bright as the lamp, .1
    (estimate). docs/physics.md (50).
    """
def lane_dose(motion: Motion, contact: CrownContact) -> LaneDose:
    """
    Lanes of the motion's step-over by a contact: at a place, the sum over lanes of the pressure along the
    line on which the disc passes it: its chords where the whole face touches evenly (docs/physics.md,
    equation 24a).
    """
def level(field: HeightField, backing: Backing, *, pressure_kpa: float, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0, removal_um: float, report_at_um: collections.abc.Sequence[float] = [], amplitude_tolerance_um: float = 0.001, touched_beyond_um: float = 0.0, disc_diameter_mm: float | None = None, grain_um: float = 0.0) -> Levelled:
    """
    Levels a patch at a mean pressure [kPa], > 0: dh/dR = -p/p_mean under unilateral contact with the backing
    as it is given: no foam plateau, crown, footprint or grains unless the options say so (docs/physics.md,
    levelling). A rigid backing cuts all above a plane. NotConverged where the tolerance is not met.
    
        removal_um: mean clear to remove [um], at least least_removal_um
        report_at_um: mean removals to report at [um], rising by least_removal_um and
    more, to removal_um; none = the end
        amplitude_tolerance_um: accuracy of rms, peak-to-valley and valley depth [um], > 0
        touched_beyond_um: a point counts as touched when it lost more than this [um], >= 0
        disc_diameter_mm: given: waves longer than about half a disc are followed, not levelled [mm], > 0
        grain_um: scale of the grains' heights [um], >= 0: they give as springs of p_mean/grain_um before the face, so
    that every wave costs so much more clear per e-fold; not on a rigid backing, the ideal cut
    """
def levelling_rate_per_s(*, wavelength_mm: numpy.typing.ArrayLike, thickness_um: float, surface_tension_mn_per_m: float, viscosity_pa_s: float, exact: bool = False) -> typing.Any:
    """
    Rate [1/s] at which a wave of a wet film dies: a(t) = a(0) exp(-rate t) while the viscosity stays. With q
    = 2 pi/ wavelength, X = q h: thin: sigma h^3 q^4/(3 eta), docs/physics.md (56); any: (sigma
    q/2 eta)(sinh X cosh X - X)/(cosh^2 X + X^2) (flow on a base without slip; tends to the first as X
    -> 0), docs/physics.md (57). All arguments > 0.
    """
def limit_of_sight_mm(distance_m: float) -> float:
    """
    Height [mm] of the smallest letter that normal sight reads at a distance [m], > 0: 5 arcmin, with strokes
    of 1 arcmin (ISO 8596).
    """
def must_stay_um(budget: Budget) -> float:
    """
    Clear that must stay at the thinnest place [um], reserve included; 0 where only the clear itself limits.
    """
def pareto_front(costs: collections.abc.Sequence[list[float]]) -> list[bool]:
    """
    Whether each alternative is on the front: no other is at least as good in every cost and better in one.
    costs[i] holds the costs of alternative i, less being better; all equally many. Equals stay together.
    """
def predict(job: Job, *, sequence: str = '', progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> Predicted:
    """
    Predicts a job, its sequence as worked_sequence() has it, on a starting surface (job.texture's own:
    surface_of() of libtexture/io). Histories, and the rows and sums of a panel, are of best estimates, with
    the clear at the panel's thinnest reading; risk and verdict are of all possible worlds (sample_risk). Both
    are worked on fewer pixels where these hold the surface (docs/physics.md, risk); a history's maps are on
    the surface's own grid.
    """
def press(field: HeightField, backing: Backing, *, pressure_kpa: float, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> Pressed:
    """
    Static contact of a backing with a patch under a mean pressure [kPa], > 0: no wear, pressure >= 0, gap >=
    0, never both (docs/physics.md, 14 and 15). The backing is taken as it is given. InvalidInput for a rigid
    one, which touches in a point. NotConverged for a skin so stiff that it rests on a few lines: levelling it
    has no such trouble.
    """
def published_budget() -> Budget:
    """
    The two published rules, of factory paint: 35.6 um (1.4 mil) left and 12.7 um (0.5 mil) removed; sources
    in docs/physics.md.
    """
def read_bench(path: str | os.PathLike[str]) -> Bench:
    """
    The bench of a file:
    
    # abrasive = my P2500          needed, as are the next six
    # grit = P2500                 with its system: P2500, JIS 3000, CAMI 600
    # force_n = 25
    # sliding_m_per_s = 2.6
    # seconds_per_pass = 20
    # area_cm2 = 200
    # disc_area_cm2 = 177
    # wetness = dry                optional, as is hardness_mpa
    disc,repeat,pass,removed_um
    A,1,1,0.92
    
    Each disc, and each repeat of it, is a fresh disc; its passes count 1, 2, 3 ... in any order of rows.
    repeat may be left out. Instead of removed_um: removed_mg, with the setting density_g_per_cm3 of the
    clear. InvalidInput names the file and the line; FileMissing the file.
    """
def read_compression(path: str | os.PathLike[str]) -> CompressionCurve:
    """
    A curve of force and deflection: settings thickness_mm and area_cm2, columns force_n and deflection_mm.
    """
def read_readings(path: str | os.PathLike[str]) -> list[Reading]:
    """
    The readings of a file, one per row. Columns: total_um or total_mil, and where they are known x_mm, y_mm
    and over (panel or filler); a gauge's own columns, number and date say, are left out, and so are rows
    without a reading. A column reading, thickness or value counts with its unit: "Thickness (um)", or a
    column unit beside it. Cells and numbers may be written as CsvTable says. InvalidInput names the file and
    the line; FileMissing the file.
    """
def read_surface(path: str | os.PathLike[str], *, pixel_mm: float | None = None) -> HeightField:
    """
    The surface of a file; the ending names the format.
    .npy  format 1 or 2, float32 or float64, little-endian, C order, shape (rows, cols), or (cols) for a
    profile. .csv  one line per row, numbers apart by comma, semicolon or tab (decimal point; a decimal
    comma too where commas do not part them), '#' lines are comments; one number
    per line is a profile. A comment "# pixel_mm = 0.1" gives the pixel.
    pixel_mm: side of a pixel [mm]; must be given where the file has none (.npy never has), and must be the
    file's own where it has one. InvalidInput names the file and the line or byte; FileMissing names a file
    that is not there.
    """
def read_test_spot(path: str | os.PathLike[str]) -> TestSpot:
    """
    The test spot of a file:
    
    # passes = 6                  needed
    # step = level                optional, as are sequence, area_m2 and spot_cv: see TestSpot
    # gloss_gone_passes = 5       optional: no glossy valley was left (and gloss_left_passes)
    # rms_left_um = 0.3           optional: texture left, where it was measured
    # marks_gone_passes = 4       optional: passes of the next step, made after the film was read, at which
    no mark of this one was left (and marks_left_passes)
    when,total_um
    before,262
    before,260
    after,256
    after,254
    
    Columns: when (before or after), and total_um or total_mil, or both with one filled in per row. Or side by
    side: before and after, in um, or before_mil and after_mil; the shorter one ends in empty cells. How cells
    and numbers may be written: CsvTable. InvalidInput names the file and the line; FileMissing the file.
    """
def recommend(job: Job, *, machine: Machine = ..., progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0, passes_most: int = 30, discs_per_m2_most: float = 10.0, minutes_per_m2_most: float = 75.0, look_every_passes: int = 2, refine_passes_most: int = 4, owed_left_um: float = 0.05, grain_ratio_most: float = 3.5) -> Recommendation:
    """
    Weighs every disc of the tools as the first step and compares those that reach the target, with what
    follows them, in the same worlds. Recommended is, of those with the mildest verdict that are on the front,
    the finest, unless a coarser one surely spends less. A target out of reach is an answer, "do not sand",
    that names the waves in the way and what would help. The job's own sequences are not used; its patch is
    its node_patch().
    
        passes_most: of the first step on any panel, 1 to 300; estimate
        discs_per_m2_most: discs used by it, > 0 [1/m2]; estimate
        minutes_per_m2_most: its machine time, > 0 [min/m2]; estimate
        look_every_passes: levelling is wiped and judged every so many passes; estimate
        refine_passes_most: passes of a refining step: more heat the paint and load the pad; estimate
        owed_left_um: clear that grooves of before may still ask for when a refining step ends
    and another follows, which takes that as well [um], >= 0; estimate
        grain_ratio_most: the next step's grain is at most so many times finer, >= 1; estimate: no compound straight after P1200
    """
def removable_um(budget: Budget, *, clear_um: float) -> float:
    """
    Clear that may be removed [um]: the least of the rules that are on; below 0 = nothing, and already broken.
    """
def render_reflection(field: HeightField, *, specular_share: float | numpy.typing.NDArray[numpy.float64] = 1.0, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0, angle_deg: float = 45.0, viewer_m: float = 1.0, scene_m: float = 2.0, pupil_mm: float = 3.0, width_mm: float = 500.0, rows: int = 512, cols: int = 512, refractive_index: float = 1.5, body_luminance: float = 0.002) -> numpy.typing.NDArray[numpy.float64]:
    """
    The picture (view.rows, view.cols) of a scene mirrored in the surface; linear luminance, 0 to 1 (clipped),
    row 0 on top (far side). Exposure is fixed: 1 is a lamp in a perfect mirror of this index at
    view.angle_deg, so pictures of one view compare. Each pixel is the mean of 16 rays over the pixel and the
    pupil, reflected by the local slope: F [share L_scene + (1 - share) L_mean] + body, docs/physics.md (54);
    waves shorter than the spot the pupil sees blur, longer ones bend, docs/physics.md (55). A 51 mm patch
    would mirror 150 mm of scene: the periodic patch is repeated over the whole view, and its repeats show.
    specular_share: 0 to 1, one value per pixel of the surface (matt and shiny spots mix by area), or (1, 1)
    for all. progress is called once a row.
    
        angle_deg: line of sight from the surface's normal, 0 to 80
        viewer_m: eye to surface [m], > 0
        scene_m: surface to scene [m], > 0
        pupil_mm: the eye's pupil, focused on the mirrored scene [mm], >= 0
        width_mm: of surface across the picture [mm], > 0: half a metre mirrors 1.5 m of scene
        rows: of the picture, 1 to 8192
        cols: of the picture, 1 to 8192
        refractive_index: of the clear
        body_luminance: of the paint under the clear, a lamp being 1: dark paint; estimate
    """
def rms_slope(field: HeightField, *, direction: str = 'rows', footprint_mm: float = 0.0) -> float:
    """
    Root mean square of slope(...).
    """
def runs_needed(*, difference_percent: float, log_sd: float, power: float = 0.8) -> int:
    """
    Runs of each abrasive that a two-sided t test at 5 % needs to find a difference [%], > 0, with a chance of
    `power`, where ln(wear rate) spreads by `log_sd` between discs: noncentral t distribution. At most 10000.
    """
def seen_letter_mm(wander_arcmin: float, viewer: Viewer, contrast: float = 1.0) -> float | None:
    """
    Height [mm] of the smallest mirrored letter that this viewer can read where the image wanders and blurs by
    so much together [arcmin, rms], which is seen_smear_arcmin(), behind a veil that leaves so much contrast;
    none where no letter is read. As smallest_letter_mm(), docs/physics.md (53).
    """
def seen_rms_um(seen: SeenTexture) -> Estimate:
    """
    Rms of a seen texture [um] with its 95 % interval.
    """
def seen_smear_arcmin(field: HeightField, viewer: Viewer) -> float:
    """
    Rms [arcmin] by which the surface moves and blurs a letter together: seen_wander_arcmin() as through a
    pinhole, which every wave moves.
    """
def seen_wander_arcmin(field: HeightField, viewer: Viewer) -> float:
    """
    Rms wander [arcmin] of a mirrored point as this viewer's eye moves over the surface, in the worse of the
    two directions: twice the slope, less the share of the path before the panel; waves below the spot that
    the pupil sees blur and do not count, docs/physics.md (53a).
    """
def simulate(*, surface: HeightField, coating: Coating, steps: collections.abc.Sequence[Step], progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0, area_m2: float = 0.25, crown_radius_m: float | None = None, sheet: Sheet | dict = ..., band_edges_mm: collections.abc.Sequence[float] = [0.5, 1.0, 2.0, 4.0, 8.0, 16.0], amplitude_tolerance_um: float = 0.005, rms_tolerance_share: float | None = None, refractive_index: float = 1.5, scratch_limits: ScratchLimits | dict = ..., viewer: Viewer | dict = ...) -> History:
    """
    Works a patch through the steps. A step takes the pressure that its motion gives on the crown, the foam's
    tangent modulus at that pressure, and the disc's footprint where the patch is larger than the disc. It
    stops at the first look that meets its stop rule, or after its passes. A struck-through clear is an
    answer, with clear left below zero.
    
        area_m2: area worked in one go, which sets how discs load [m2], > 0; estimate
        crown_radius_m: crown of the panel [m], > 0; none = flat
        sheet: what the panel is made of
        band_edges_mm: edges of the reported wavelength bands [mm], rising
        amplitude_tolerance_um: accuracy of texture amplitudes between looks [um], > 0
        rms_tolerance_share: given: only the rms height is accurate, to this share of what a step starts from, in about a third of
    the time, and amplitude_tolerance_um is not used; plans take 0.01
        refractive_index: of the clear, for gloss, > 1 to 4; as Paint has it
        scratch_limits: what counts as a visible scratch
        viewer: who reads the mirrored letters
    """
def size_exponent(benches: collections.abc.Sequence[Bench], results: collections.abc.Sequence[BenchResult]) -> Estimate:
    """
    How wear rate goes with grain size: exponent of wear ~ grain^exponent by a straight line through
    logarithms. InvalidInput with fewer than three abrasives, or all of one grain.
    """
def slope(field: HeightField, *, direction: str = 'rows', footprint_mm: float = 0.0) -> numpy.typing.NDArray[numpy.float64]:
    """
    Slope of the surface (rows, cols), as a ratio (um/um): the derivative of its waves, exact for each of
    them. footprint_mm >= 0: mean over a round spot of this diameter, which passes a wave by 2 J1(x)/x, x = pi
    footprint/ wavelength; 0 = the point itself. A profile has no slope along its column.
    """
def smallest_letter_mm(*, wander_arcmin: float, distance_m: float, contrast: float = 1.0) -> float | None:
    """
    Height [mm] of the smallest mirrored letter that can be read at a distance [m, whole path], or none where
    its contrast is below 0.05 (least_read_contrast). contrast, 0 to 1: what the veil of scattered light
    leaves, as lamp_visibility() has it. The letter is five strokes high, and its stroke is what normal sight
    resolves at that contrast, contrast^-0.4 arcmin, or the wander [arcmin, rms] where that is more.
    docs/physics.md (53).
    """
def specular_share(grooves: collections.abc.Sequence[GroovePopulation], *, angle_deg: float, wavelength_nm: float = 550.0) -> float:
    """
    Share (0 to 1) of the mirrored light that stays in the mirror direction: |A|^2 with
    A = 1 - i k int_0^inf exp(-i k z)(1 - exp(-G(z))) dz, k = 4 pi cos(angle)/wavelength, G(z) the sum of
    coverage exp(-z/depth): the mean phase of the depth law above, shadowing left out. One population of large
    coverage gives pi x/sinh(pi x), x = k depth; small depths give docs/physics.md (47). docs/physics.md (48).
    """
def specular_share_map(scratches: Scratches, *, angle_deg: float = 45.0) -> numpy.typing.NDArray[numpy.float64]:
    """
    Share of the mirrored light (0 to 1) that the scratches leave in the mirror direction at each pixel, by
    the depth law of its part: what render_reflection() takes. 1 x 1 where there are no scratches.
    """
def spot_plan(job: Job, aim: SpotAim = ...) -> SpotPlan:
    """
    What a spot of the job needs so that its wear rate is known as the aim asks, by film readings alone: what
    Bayes' rule leaves where the removal is the one that is expected (docs/physics.md, test spot).
    InvalidInput where the job has no such step.
    """
def surface_notes(job: Job) -> list[Statement]:
    """
    What there is to say of a measured map: the tilt and form that were taken out, heights that are unusual,
    edges that do not fit on to each other; nothing of other textures.
    """
def surface_of(job: Job) -> HeightField:
    """
    The starting surface of a job: drawn from its seed, dried from its wet film, or read from its file. A
    file's pixels must be those of the job's patch, and its plane and form are taken out (texture.form).
    InvalidInput for heights that are in another unit.
    """
def synthesize(*, bands: collections.abc.Sequence[TextureBand], grid: Grid, seed: int | numpy.random.Generator) -> HeightField:
    """
    The surface of some bands on a grid; the rms of each band is as asked to 1e-9 (relative), the mean is 0.
    One seed gives the same surface on a finer grid of the same size and for any number of threads, as long as
    the coarse grid resolves the whole ring (wavelength_mm >= 2^(1 + bandwidth_octaves) pixels). Lay:
    amplitudes are weighted by cos^2 of the angle between the wave vector and the normal of the lay (our
    choice; the lay is a direction of crests as in ISO 21920-1); a profile (one row) has no room for it and
    ignores it. Skewness: z -> sign (exp(sign a z) - 1)/a of the band at unit rms, a monotone map that makes
    Gaussian heights log-normal with exactly this skewness (a patch of few waves scatters about it); it adds
    weak overtones to the ring. InvalidInput where the grid cannot resolve a band (wavelength under 4 pixels)
    or hold it (over half the larger side).
    """
def target_stop(target: Target) -> Stop:
    """
    The stop rule that says what a target asks of height, touch and a defect, all parts together; no rule
    where it asks for sight alone, or for a defect that is followed, whose cost in clear depends on the step.
    """
def titles_of(steps: collections.abc.Sequence[Step]) -> list[str]:
    """
    Titles of the steps of a sequence, all different: of steps without a name whose abrasive comes again, the
    second is "P1500 film (2)".
    """
def unsanded_margin_mm(profile: EdgeProfile, clear: EdgeClear) -> float:
    """
    The margin of EdgeProfile::margin_mm, for another clear or confidence.
    """
def viewer_along(distance_m: float, eye_to_paint_m: float | None = None) -> Viewer:
    """
    The eye that looks along a path of distance_m [m], > 0, over the paint to what it reads, eye_to_paint_m of
    it before the paint [m], >= 0 and less than distance_m; none = a third of it, as Viewer has it.
    """
def viewer_of(job: Job) -> Viewer:
    """
    The eye that results are for: the job's viewer; else the one that judged its texture, so that the first
    row says what was seen; else the one that its target's letters are for; else Viewer's own defaults.
    """
def wet_amplitude_share(wet_film: WetFilm, *, wavelength_mm: numpy.typing.ArrayLike, time_s: float) -> typing.Any:
    """
    Share of a wave's amplitude left in the wet top after time_s (>= 0; may be infinite):
    exp(-rate rise (1 - exp(-time/rise))), with the rate of any depth at the starting viscosity,
    docs/physics.md (58).
    """
def what_moved_belief(job: Job, readings: TestSpot | str | os.PathLike[str], *, progress: bool | collections.abc.Callable[[float], object] | None = None, threads: int = 0) -> Statement:
    """
    What moved the belief in the wear rate most, by the logarithm of its median: the readings alone, what the
    glossy valleys add to them, or what the texture left adds to both. Curves as judge_test_spot() has them.
    """
def worked_sequence(job: Job, *, sequence: str = '') -> Sequence:
    """
    A sequence as it is worked on a starting surface: where its first step is a disc without a stop rule, it
    stops at the job's target. A defect that is followed is gone after the clear that its BumpCurve names. A
    target that asks for sight is then met at an rms height: the one that is left
    where the computed curve of levelling first meets it, on the panel that needs most; where it never does,
    all passes are made. All other steps stay as they are.
    """
def write_surface(field: HeightField, path: str | os.PathLike[str]) -> None:
    """
    Writes a surface so that read_surface gives the same numbers back, whole or not at all.
    """
__version__: str = '0.1.0'
_um_per_mil: float = 25.4
