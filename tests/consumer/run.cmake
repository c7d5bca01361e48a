# Installs the current build to a fresh prefix, then builds the outside project against it and runs its programs where
# the examples find their jobs.
#   cmake -D source=... -D build=... -D work=... -D version=... -D generator=... -D compiler=... -D flags=...
#     -P run.cmake
file(REMOVE_RECURSE ${work})
set(step COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --install ${build} --prefix ${work}/prefix --component development
  OUTPUT_QUIET ${step})
execute_process(COMMAND ${CMAKE_COMMAND} -G ${generator} -S ${CMAKE_CURRENT_LIST_DIR} -B ${work}/build
  -D CMAKE_PREFIX_PATH=${work}/prefix -D CMAKE_CXX_COMPILER=${compiler} -D CMAKE_CXX_FLAGS=${flags}
  -D examples=${source}/examples -D version=${version} -D CMAKE_RUNTIME_OUTPUT_DIRECTORY=${work}/programs
  -D CMAKE_EXPORT_NO_PACKAGE_REGISTRY=ON ${step})
execute_process(COMMAND ${CMAKE_COMMAND} --build ${work}/build ${step})
file(GLOB programs ${work}/programs/*)
list(LENGTH programs count)
if(count LESS 2)
  message(FATAL_ERROR "only ${count} programs were built")
endif()
foreach(program IN LISTS programs)
  execute_process(COMMAND ${program} WORKING_DIRECTORY ${source} ${step})
endforeach()
