include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

if(NOT SKBUILD)
  install(TARGETS libtexture EXPORT libtextureTargets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT development)
  install(DIRECTORY libtexture/ DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/libtexture COMPONENT development
    FILES_MATCHING PATTERN "*.hpp")
  install(EXPORT libtextureTargets NAMESPACE libtexture:: DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/libtexture
    COMPONENT development)
  configure_package_config_file(cmake/libtextureConfig.cmake.in libtextureConfig.cmake
    INSTALL_DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/libtexture)
  write_basic_package_version_file(libtextureConfigVersion.cmake COMPATIBILITY SameMinorVersion)
  install(FILES ${CMAKE_CURRENT_BINARY_DIR}/libtextureConfig.cmake
    ${CMAKE_CURRENT_BINARY_DIR}/libtextureConfigVersion.cmake
    DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/libtexture COMPONENT development)
endif()
