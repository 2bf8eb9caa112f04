# What the engine was built with and a program that links it needs too.
include(CMakeFindDependencyMacro)
find_dependency(fmt)
find_dependency(tomlplusplus)
include("${CMAKE_CURRENT_LIST_DIR}/jointwright.cmake")
