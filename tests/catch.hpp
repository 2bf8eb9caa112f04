#pragma once
// Catch2 as the system has it: the single header of version 2, or the headers of version 3.

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Matchers::ContainsSubstring;
#else
#include <catch2/catch.hpp>
inline auto ContainsSubstring(const std::string& text) { return Catch::Matchers::Contains(text); }
#endif

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
