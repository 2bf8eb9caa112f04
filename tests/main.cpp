// The main function of the test runner where Catch2 version 2 leaves it to the project; version 3 brings its own.
#if !__has_include(<catch2/catch_all.hpp>)
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#endif
