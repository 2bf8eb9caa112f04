#pragma once
// The list of checks. Adding one is one file here, one line in registry.cpp, one test and one explanation in data/checks/.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

struct Prepared;

struct CheckInfo {
    std::string_view id;
    std::string_view words;                       ///< a few words for the list
    std::vector<Finding> (*run)(const Prepared&); ///< pure; one finding for each subject, the worst copy in it
};

const std::vector<CheckInfo>& all_checks();

} // namespace jointwright
