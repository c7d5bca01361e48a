# Installs the current build to a fresh prefix, then builds and runs the outside project against it.
#   cmake -D build=... -D work=... -D generator=... -D compiler=... -D flags=... -P run.cmake
file(REMOVE_RECURSE ${work})
set(step COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --install ${build} --prefix ${work}/prefix --component development
  OUTPUT_QUIET ${step})
execute_process(COMMAND ${CMAKE_COMMAND} -G ${generator} -S ${CMAKE_CURRENT_LIST_DIR} -B ${work}/build
  -D CMAKE_PREFIX_PATH=${work}/prefix -D CMAKE_CXX_COMPILER=${compiler} -D CMAKE_CXX_FLAGS=${flags}
  -D CMAKE_EXPORT_NO_PACKAGE_REGISTRY=ON ${step})
execute_process(COMMAND ${CMAKE_COMMAND} --build ${work}/build ${step})
execute_process(COMMAND ${work}/build/consumer ${step})
