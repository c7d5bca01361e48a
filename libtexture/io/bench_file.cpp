#include "libtexture/io/bench_file.hpp"

#include <cmath>
#include <map>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/io/csv_table.hpp"
#include "libtexture/io/values.hpp"

namespace libtexture {

namespace {

double needed_number(const CsvTable& table, const std::string& name) {
  if (!table.settings.count(name)) refuse_csv(table, 1, "a line \"# " + name + " = ...\" must be given");
  return csv_setting(table, name, 0);
}

std::string needed_text(const CsvTable& table, const std::string& name) {
  if (!table.settings.count(name)) refuse_csv(table, 1, "a line \"# " + name + " = ...\" must be given");
  return table.settings.at(name).text;
}

/// What `make` returns, its objection with the file and the line before it; line 0 = that of the field.
template <class Make>
auto placed(const CsvTable& table, int line, Make make) {
  try {
    return make();
  } catch (const InvalidInput& error) {
    if (line > 0) refuse_csv(table, line, error.what());
    refuse_csv_rule(table, error.what());
  }
}

/// um per unit of the column that holds the removal: a layer of 1 mg on 1 cm2 at 1 g/cm3 is 10 um.
std::pair<const char*, double> removal_column(const CsvTable& table, double area_cm2) {
  const bool um = has_column(table, "removed_um"), mg = has_column(table, "removed_mg");
  if (um == mg) refuse_csv(table, 1, "one of the columns removed_um and removed_mg must be given");
  if (um) return {"removed_um", 1};
  return {"removed_mg", 10 / (area_cm2 * needed_number(table, "density_g_per_cm3"))};
}

int pass_of(const CsvTable& table, const CsvRow& row) {
  const double pass = csv_number(table, row, "pass");
  if (pass < 1 || pass > 1e5 || pass != std::floor(pass))
    refuse_csv(table, row.line, "pass must be 1, 2, 3 ... (got " + csv_text(table, row, "pass") + ")");
  return static_cast<int>(pass);
}

std::vector<BenchRun> runs_of(const CsvTable& table, double area_cm2) {
  const auto [column, um] = removal_column(table, area_cm2);
  std::map<std::string, std::map<int, std::pair<double, int>>> passes;  // removal and line, by run and pass
  for (const CsvRow& row : table.rows) {
    const std::string repeat = csv_text(table, row, "repeat");
    const std::string name = csv_text(table, row, "disc") + (repeat.empty() ? "" : ", repeat " + repeat);
    const int pass = pass_of(table, row);
    if (!passes[name].emplace(pass, std::pair(um * csv_number(table, row, column), row.line)).second)
      refuse_csv(table, row.line, "pass " + std::to_string(pass) + " of disc " + name + " stands twice");
  }
  std::vector<BenchRun> runs;
  for (const auto& [name, by_pass] : passes) {
    BenchRun run{name, {}};
    for (const auto& [pass, removal] : by_pass) {
      if (pass != static_cast<int>(run.removed_um.size()) + 1)
        refuse_csv(
            table, removal.second,
            "disc " + name + " has pass " + std::to_string(pass) + " but not " + std::to_string(pass - 1));
      run.removed_um.push_back(removal.first);
    }
    runs.push_back(std::move(run));
  }
  return runs;
}

/// A key of TOML: JSON's strings are TOML's basic strings.
std::string quoted(const std::string& text) {
  std::string key;
  for (const char letter : Json(text).dump())
    letter == '\x7f' ? key.append("\\u007f") : key.append(1, letter);  // TOML escapes it, JSON does not
  return key;
}

}  // namespace

Bench read_bench(const std::filesystem::path& path) {
  const CsvTable table =
      read_csv_table(path, {"disc", "repeat", "pass", "removed_um", "removed_mg"},
                     {"abrasive", "grit", "wetness", "force_n", "sliding_m_per_s", "seconds_per_pass",
                      "area_cm2", "disc_area_cm2", "hardness_mpa", "density_g_per_cm3"});
  for (const char* column : {"disc", "pass"})
    if (!has_column(table, column))
      refuse_csv(table, 1, std::string("the column ") + column + " must be given");
  Bench bench;
  bench.abrasive = needed_text(table, "abrasive");
  const std::string grit = needed_text(table, "grit");
  bench.grit = placed(table, table.settings.at("grit").line, [&] { return Grit(grit); });
  if (const auto found = table.settings.find("wetness"); found != table.settings.end())
    bench.wetness = placed(table, found->second.line,
                           [&] { return from_name<Wetness>(found->second.text, "Bench", "wetness"); });
  bench.force_n = needed_number(table, "force_n");
  bench.sliding_m_per_s = needed_number(table, "sliding_m_per_s");
  bench.seconds_per_pass = needed_number(table, "seconds_per_pass");
  bench.area_cm2 = needed_number(table, "area_cm2");
  bench.disc_area_cm2 = needed_number(table, "disc_area_cm2");
  bench.hardness_mpa = csv_setting(table, "hardness_mpa", bench.hardness_mpa);
  bench.runs = runs_of(table, bench.area_cm2);
  return placed(table, 0, [&] {
    bench.validate();
    return bench;
  });
}

CompressionCurve read_compression(const std::filesystem::path& path) {
  const CsvTable table = read_csv_table(path, {"force_n", "deflection_mm"}, {"thickness_mm", "area_cm2"});
  CompressionCurve curve;
  curve.thickness_mm = needed_number(table, "thickness_mm");
  curve.area_cm2 = needed_number(table, "area_cm2");
  for (const CsvRow& row : table.rows) {
    curve.force_n.push_back(csv_number(table, row, "force_n"));
    curve.deflection_mm.push_back(csv_number(table, row, "deflection_mm"));
  }
  return placed(table, 0, [&] {
    curve.validate();
    return curve;
  });
}

std::string catalogue_entry(const Abrasive& abrasive) {
  abrasive.validate();
  const std::string heading = "[abrasive." + quoted(abrasive.name);
  std::string text = heading + "]\n", ranges;
  const Json fields = to_json(abrasive);
  for (const auto& [key, value] : fields.items()) {
    if (key == "name") continue;  // the table's own
    if (key == "ranges") {
      for (const auto& [field, range] : value.items()) ranges += field + " = " + range.dump() + "\n";
    } else if (value.is_object()) {
      text += key + " = { median_um = " + value["median_um"].dump() + " }\n";  // a grit without a grade
    } else {
      text += key + " = " + (value.is_string() ? quoted(value.get<std::string>()) : value.dump()) + "\n";
    }
  }
  return ranges.empty() ? text : text + heading + ".ranges]\n" + ranges;
}

}  // namespace libtexture
