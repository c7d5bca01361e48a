file(GLOB_RECURSE libtexture_headers CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/libtexture/*.hpp)
file(GLOB_RECURSE libtexture_sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/libtexture/*.cpp)

# One small header, two back ends: the build picks which source implements numerics/fft.hpp.
if(LIBTEXTURE_FFT STREQUAL "FFTW")
  find_package(PkgConfig REQUIRED)
  pkg_check_modules(FFTW3 REQUIRED IMPORTED_TARGET fftw3)
  list(FILTER libtexture_sources EXCLUDE REGEX "fft_own\\.cpp$")
elseif(LIBTEXTURE_FFT STREQUAL "OWN")
  list(FILTER libtexture_sources EXCLUDE REGEX "fft_fftw\\.cpp$")
else()
  message(FATAL_ERROR "LIBTEXTURE_FFT must be FFTW or OWN (got ${LIBTEXTURE_FFT})")
endif()

# The catalogue is part of the library: no file to find at run time. Editing it configures again.
set(catalogue_path ${PROJECT_SOURCE_DIR}/data/catalogue.toml)
set_property(DIRECTORY ${PROJECT_SOURCE_DIR} APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${catalogue_path})
file(READ ${catalogue_path} catalogue_toml)
configure_file(${PROJECT_SOURCE_DIR}/cmake/catalogue_text.cpp.in ${PROJECT_BINARY_DIR}/catalogue_text.cpp @ONLY)
list(APPEND libtexture_sources ${PROJECT_BINARY_DIR}/catalogue_text.cpp)

add_library(libtexture STATIC ${libtexture_sources})
add_library(libtexture::libtexture ALIAS libtexture)
set_target_properties(libtexture PROPERTIES OUTPUT_NAME texture)
target_compile_features(libtexture PUBLIC cxx_std_20)
target_precompile_headers(libtexture PRIVATE <algorithm> <cmath> <optional> <string> <vector> <Eigen/Core>)
# Boost.Math looks for parallel algorithms that we do not use, and would then need another library to link.
target_compile_definitions(libtexture PUBLIC BOOST_NO_CXX17_HDR_EXECUTION)
target_include_directories(libtexture PUBLIC $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}> $<INSTALL_INTERFACE:include>)
target_link_libraries(libtexture PUBLIC Eigen3::Eigen Threads::Threads nlohmann_json::nlohmann_json
  PRIVATE $<BUILD_INTERFACE:Boost::headers>
          $<BUILD_INTERFACE:tomlplusplus::tomlplusplus> $<INSTALL_INTERFACE:tomlplusplus>
          $<BUILD_INTERFACE:libtexture_options>)
if(LIBTEXTURE_FFT STREQUAL "FFTW")
  target_link_libraries(libtexture PRIVATE $<BUILD_INTERFACE:PkgConfig::FFTW3> $<INSTALL_INTERFACE:fftw3>)
endif()
