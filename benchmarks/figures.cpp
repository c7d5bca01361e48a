#include "figures.hpp"

#include <algorithm>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "libtexture/io/whole_file.hpp"

namespace benchmark {

namespace {

bool is_missed(const Figure& figure) {
  return figure.most && !(figure.value <= *figure.most);
}

}  // namespace

void Figures::add(std::string name, double value) {
  figures_.push_back({std::move(name), value, {}});
}

void Figures::gate(std::string name, double value, double most) {
  figures_.push_back({std::move(name), value, most});
  std::printf("  gate: %s <= %g: %s\n", figures_.back().name.c_str(), most,
              is_missed(figures_.back()) ? "MISSED" : "met");
}

int Figures::missed_gates() const {
  return static_cast<int>(std::count_if(figures_.begin(), figures_.end(), is_missed));
}

void Figures::write(const std::filesystem::path& path) const {
  nlohmann::json all = nlohmann::json::array();
  for (const Figure& figure : figures_) {
    all.push_back({{"name", figure.name}, {"value", figure.value}});
    if (figure.most) all.back()["most"] = *figure.most;
  }
  libtexture::write_whole_file(path,
                               nlohmann::json{{"figures", all}, {"missed_gates", missed_gates()}}.dump(2));
}

}  // namespace benchmark
