#pragma once
// Results: structs that hold maps or other results. A table of their members gives Python properties,
// pickling, to_dict and from_dict; values.hpp does the same for plain values.

#include "arrays.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/risk.hpp"
#include "libtexture/process/edge.hpp"
#include "libtexture/process/history.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/process/press.hpp"
#include "values.hpp"

namespace libtexture::python {

/// The members of a result, in the order of the struct.
template <class T>
inline constexpr std::nullptr_t parts = nullptr;

template <class T>
concept HasParts = !std::is_null_pointer_v<std::remove_cvref_t<decltype(parts<T>)>>;

template <>
inline constexpr auto parts<Levelled> =
    std::tuple{optional("surface", &Levelled::surface),
               optional("removal_map_um", &Levelled::removal_map_um),
               optional("surfaces", &Levelled::surfaces),
               optional("removed_um", &Levelled::removed_um),
               optional("rms_um", &Levelled::rms_um),
               optional("peak_to_valley_um", &Levelled::peak_to_valley_um),
               optional("valley_depth_um", &Levelled::valley_depth_um),
               optional("contact_share", &Levelled::contact_share),
               optional("touched_share", &Levelled::touched_share),
               optional("increments", &Levelled::increments),
               optional("transform_pairs", &Levelled::transform_pairs),
               optional("residual", &Levelled::residual),
               optional("amplitude_error_um", &Levelled::amplitude_error_um)};

template <>
inline constexpr auto parts<Pressed> = std::tuple{optional("pressure_kpa", &Pressed::pressure_kpa),
                                                  optional("contact_share", &Pressed::contact_share),
                                                  optional("mean_gap_um", &Pressed::mean_gap_um),
                                                  optional("iterations", &Pressed::iterations),
                                                  optional("transform_pairs", &Pressed::transform_pairs),
                                                  optional("residual", &Pressed::residual)};

template <>
inline constexpr auto parts<DepthLaw> =
    std::tuple{optional("grooves", &DepthLaw::grooves), optional("area_share", &DepthLaw::area_share)};

template <>
inline constexpr auto parts<ScratchPopulation> = std::tuple{
    optional("figures", &ScratchPopulation::figures), optional("removal_um", &ScratchPopulation::removal_um)};

template <>
inline constexpr auto parts<Scratches> = std::tuple{optional("populations", &Scratches::populations)};

template <>
inline constexpr auto parts<History> = std::tuple{optional("start", &History::start),
                                                  optional("passes", &History::passes),
                                                  optional("steps", &History::steps),
                                                  optional("band_edges_mm", &History::band_edges_mm),
                                                  optional("before", &History::before),
                                                  optional("surfaces", &History::surfaces),
                                                  optional("scratches", &History::scratches),
                                                  optional("warnings", &History::warnings),
                                                  optional("transform_pairs", &History::transform_pairs)};

template <>
inline constexpr auto parts<EdgePressure> =
    std::tuple{optional("distance_mm", &EdgePressure::distance_mm),
               optional("pressure_kpa", &EdgePressure::pressure_kpa),
               optional("line_load_n_per_mm", &EdgePressure::line_load_n_per_mm),
               optional("plate_slope", &EdgePressure::plate_slope)};

template <>
inline constexpr auto parts<EdgeProfile> =
    std::tuple{optional("distance_mm", &EdgeProfile::distance_mm),
               optional("removal_um", &EdgeProfile::removal_um),
               optional("removed_area_mm2", &EdgeProfile::removed_area_mm2),
               optional("peak_removal_um", &EdgeProfile::peak_removal_um),
               optional("margin_mm", &EdgeProfile::margin_mm),
               optional("pixel_mm", &EdgeProfile::pixel_mm),
               optional("transform_pairs", &EdgeProfile::transform_pairs),
               optional("residual", &EdgeProfile::residual),
               optional("balance", &EdgeProfile::balance)};

template <>
inline constexpr auto parts<Film> =
    std::tuple{optional("total_um", &Film::total_um), optional("total_sd_um", &Film::total_sd_um),
               optional("clear_um", &Film::clear_um), optional("clear_sd_um", &Film::clear_sd_um)};

template <>
inline constexpr auto parts<RiskDraws> =
    std::tuple{optional("removed_um", &RiskDraws::removed_um),
               optional("levelling_um", &RiskDraws::levelling_um),
               optional("overshoot_um", &RiskDraws::overshoot_um),
               optional("debt_um", &RiskDraws::debt_um),
               optional("clear_before_um", &RiskDraws::clear_before_um),
               optional("removable_um", &RiskDraws::removable_um),
               optional("clear_left_um", &RiskDraws::clear_left_um),
               optional("clear_left_least_um", &RiskDraws::clear_left_least_um),
               optional("rms_um", &RiskDraws::rms_um),
               optional("touched_share", &RiskDraws::touched_share),
               optional("minutes", &RiskDraws::minutes),
               optional("discs", &RiskDraws::discs),
               optional("levelling_efficiency", &RiskDraws::levelling_efficiency),
               optional("step_efficiency", &RiskDraws::step_efficiency),
               optional("is_struck_through", &RiskDraws::is_struck_through),
               optional("is_budget_exceeded", &RiskDraws::is_budget_exceeded),
               optional("is_clear_left_short", &RiskDraws::is_clear_left_short),
               optional("is_short_before", &RiskDraws::is_short_before),
               optional("is_broken_by_work", &RiskDraws::is_broken_by_work),
               optional("is_target_missed", &RiskDraws::is_target_missed),
               optional("is_target_met_before", &RiskDraws::is_target_met_before)};

template <>
inline constexpr auto parts<Place> =
    std::tuple{optional("x_mm", &Place::x_mm), optional("y_mm", &Place::y_mm)};

template <>
inline constexpr auto parts<FilmPicture> = std::tuple{
    optional("corner", &FilmPicture::corner),     optional("pixel_mm", &FilmPicture::pixel_mm),
    optional("total_um", &FilmPicture::total_um), optional("total_sd_um", &FilmPicture::total_sd_um),
    optional("clear_um", &FilmPicture::clear_um), optional("clear_sd_um", &FilmPicture::clear_sd_um)};

template <>
inline constexpr auto parts<Catalogue> = std::tuple{
    optional("abrasives", &Catalogue::abrasives), optional("backings", &Catalogue::backings),
    optional("motions", &Catalogue::motions), optional("backing_ranges", &Catalogue::backing_ranges),
    optional("motion_ranges", &Catalogue::motion_ranges)};

/// A height field as plain values, and back.
inline py::dict plain_field(const HeightField& field) {
  py::dict plain;
  plain["pixel_mm"] = field.pixel_mm();
  plain["height_um"] = view(field.height_um(), py::none()).attr("tolist")();
  return plain;
}

template <class T>
T from_plain(py::handle plain, const std::string& owner, const std::string& name);

/// A member as plain values: dicts, lists, numbers and strings.
template <class T>
py::object plain_of(const T& value) {
  if constexpr (HasParts<T>) {
    py::dict plain;
    std::apply([&](const auto&... part) { ((plain[part.name] = plain_of(value.*part.member)), ...); },
               parts<T>);
    return plain;
  } else if constexpr (std::is_same_v<T, HeightField>) {
    return plain_field(value);
  } else if constexpr (std::is_same_v<T, Array2d>) {
    return view(value, py::none()).attr("tolist")();
  } else if constexpr (libtexture::detail::IsVector<T>::value) {
    py::list plain;
    for (const auto& element : value) plain.append(plain_of(element));
    return plain;
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string> ||
                       std::is_same_v<T, std::optional<double>>) {
    return py::cast(value);
  } else {
    return object_of(to_json(value));
  }
}

inline Array2d map_from_plain(py::handle rows, const std::string& owner, const std::string& name) {
  const py::object numbers = py::module_::import("numpy").attr("array")(rows, py::arg("dtype") = "float64");
  return map_of(numbers, owner, name);
}

template <class T>
T result_from_plain(py::handle plain, const std::string& owner) {
  require(py::isinstance<py::dict>(plain), owner, "fields", "must be a dict", std::string(py::repr(plain)));
  const auto given = py::reinterpret_borrow<py::kwargs>(plain);
  std::vector<std::string> known;
  std::apply([&](const auto&... part) { (known.emplace_back(part.name), ...); }, parts<T>);
  require_known(given, known, owner);
  const auto read = [&]<class Member>(const Field<T, Member>& part) {
    if (!given.contains(part.name)) throw_missing(owner, part.name);
    return from_plain<Member>(given[part.name], owner, part.name);
  };
  return std::apply([&](const auto&... part) { return T{read(part)...}; }, parts<T>);
}

/// The member that was made plain; ValueError names owner and member otherwise.
template <class T>
T from_plain(py::handle plain, const std::string& owner, const std::string& name) {
  if constexpr (HasParts<T>) {
    return result_from_plain<T>(plain, owner + "." + name);
  } else if constexpr (std::is_same_v<T, HeightField>) {
    require(py::isinstance<py::dict>(plain) && plain.contains("height_um") && plain.contains("pixel_mm"),
            owner, name, "must be a dict with height_um and pixel_mm", std::string(py::repr(plain)));
    return HeightField(map_from_plain(plain["height_um"], owner, "height_um"),
                       from_python<double>(plain["pixel_mm"], owner, "pixel_mm"));
  } else if constexpr (std::is_same_v<T, Array2d>) {
    return map_from_plain(plain, owner, name);
  } else if constexpr (libtexture::detail::IsVector<T>::value) {
    T values;
    for (const py::handle element : plain)
      values.push_back(from_plain<typename T::value_type>(element, owner, name));
    return values;
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string> ||
                       std::is_same_v<T, std::optional<double>>) {
    return from_python<T>(plain, owner, name);
  } else {
    return value_from<T>(json_of(plain), owner + "." + name);
  }
}

/// Adds the read-only properties of the parts, with their comments; maps and rows of numbers are views.
template <HasParts T, Name name>
void bind_part_properties(py::class_<T>& bound) {
  const auto bind_one = [&]<std::size_t I>(std::integral_constant<std::size_t, I>) {
    static constexpr auto part = std::get<I>(parts<T>);
    static constexpr const char* text = find_doc(name.text, part.name);
    using Member = std::remove_cvref_t<decltype(std::declval<T>().*part.member)>;
    if constexpr (std::is_same_v<Member, Array2d> || std::is_same_v<Member, std::vector<double>>)
      bound.def_property_readonly(
          part.name, [](const py::object& self) { return view(self.cast<const T&>().*part.member, self); },
          text);
    else
      bound.def_readonly(part.name, part.member, text);
  };
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (bind_one(std::integral_constant<std::size_t, I>{}), ...);
  }
  (std::make_index_sequence<std::tuple_size_v<std::remove_cvref_t<decltype(parts<T>)>>>{});
}

/// Binds a result by its table: bind_result<Levelled, "Levelled">(module).
template <HasParts T, Name name_>
py::class_<T> bind_result(py::module_& module) {
  const std::string name = name_.text;
  py::class_<T> bound(module, name_.text, doc<name_>);
  bind_part_properties<T, name_>(bound);
  bound.def("to_dict", &plain_of<T>, "The members as plain values; maps as lists of rows.")
      .def_static(
          "from_dict", [name](const py::dict& members) { return result_from_plain<T>(members, name); },
          py::arg("members"), "The result of such a dict; ValueError where a member is wrong.");
  def_html(bound);
  const auto members = [](const T& self) {
    return std::apply([&](const auto&... part) { return py::make_tuple(self.*part.member...); }, parts<T>);
  };
  const auto from_members = [](const py::tuple& state) {
    return [&]<std::size_t... I>(std::index_sequence<I...>) {
      return T{state[I]
                   .template cast<
                       std::remove_cvref_t<decltype(std::declval<T>().*std::get<I>(parts<T>).member)>>()...};
    }
    (std::make_index_sequence<std::tuple_size_v<std::remove_cvref_t<decltype(parts<T>)>>>{});
  };
  bound.def(py::pickle(members, from_members));
  return bound;
}

}  // namespace libtexture::python
